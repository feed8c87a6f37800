package drawing_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
	"patiocover/web/drawing"
)

// covers are the whole inputs that the drawings are tried on.
var covers = []string{"desert", "coast", "snow", "survey", "drift", "ranch", "garden"}

// read returns the input of a cover of the test data.
func read(t testing.TB, name string) cover.Input {
	t.Helper()
	f, err := os.Open(filepath.Join(calctest.Root(t), "testdata", "covers", name+".json"))
	require.NoError(t, err)
	defer f.Close()
	in, err := cover.Read(f)
	require.NoError(t, err)
	return in
}

// report sizes a cover of the test data after a change to its input.
func report(t testing.TB, name string, change func(*cover.Input)) cover.Report {
	t.Helper()
	in := read(t, name)
	if change != nil {
		change(&in)
	}
	r, err := cover.Size(in)
	require.NoError(t, err)
	return r
}

func svg(t testing.TB, s drawing.Scene, id string) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, drawing.SVG(&b, s, id))
	return b.String()
}

func TestPlanOfTheDesertCover(t *testing.T) {
	s := drawing.Plan(report(t, "desert", nil))
	for _, want := range []string{
		"HOUSE (EXISTING)", `20'-0"`, `11'-0"`, `10'-0"`, `1'-0"`, `9'-6"`, `0'-6"`, `2x6 @ 24" O.C.`,
		"Douglas Fir-Larch No.2", "BM1  4x6", "P1", "P2", "P3", "D1", "H1", "L1", "T1", "C1", "rafter to beam, 11",
		"beam to post, 3", "PLAN", `Scale 3/16" = 1'-0"`,
	} {
		assert.True(t, s.Has(want), "%s is missing in %q", want, s.Words())
	}
}

func TestSectionOfTheDesertCover(t *testing.T) {
	s := drawing.Section(report(t, "desert", nil))
	for _, want := range []string{
		`9'-0" TOP OF RAFTERS`, `8'-7 7/8" TOP AT EDGE`, `7'-9 3/16" CLEAR`, `6'-8" ASKED`, `10'-0"`, `1'-0"`, `11'-0"`,
		"12", "1/2", `2x6 @ 24" O.C.`, "BM1 4x6", "4x4 POST", `SLAB 4"`, "LEDGER", `5'-8"`,
		"D1", "H1", "L1", "T1", "C1", "B1", "A1", "F1", "SECTION A-A", `Scale 1/4" = 1'-0"`,
	} {
		assert.True(t, s.Has(want), "%s is missing in %q", want, s.Words())
	}
	assert.False(t, s.Has("OVER"))
}

func TestSectionSaysWhatIsNotAsItShouldBe(t *testing.T) {
	snow := drawing.Section(report(t, "snow", nil))
	assert.True(t, snow.Has(`6'-8" ASKED: OVER`), "headroom of 6'-3 5/16\" is short of 6'-8\"")
	assert.True(t, snow.Has(`PIER 28" DIA x 50" DEEP`))
	assert.True(t, snow.Has(`FROST DEPTH 36"`))
	assert.True(t, snow.Has(`1/2" BOLT, 7" IN CONCRETE`))
	assert.True(t, snow.Has("SLAB (EXISTING)"), "no thickness was given")
	for kind, words := range map[string]string{"footing": "FOOTING", "pier": "PIER", "embedded": "COLLAR"} {
		r := report(t, "snow", func(in *cover.Input) { in.Foundation.Kind = &kind })
		assert.True(t, drawing.Section(r).Has(words+" "), kind)
		for i := range r.Foundations {
			r.Foundations[i].Width, r.Foundations[i].Verdict = 0, cover.NotChecked
		}
		assert.True(t, drawing.Section(r).Has(words+", NOT SIZED HERE"), kind)
	}
	narrow := report(t, "snow", func(in *cover.Input) { in.Foundation.Width, in.Foundation.Depth = new(12.0), new(36.0) })
	assert.True(t, drawing.Section(narrow).Has(`PIER 12" DIA x 36" DEEP: OVER`))
}

// The line that shows the span of the rafters runs clear of every post.
func TestSpanOfTheRaftersKeepsOffThePosts(t *testing.T) {
	for _, name := range covers {
		var spans, posts []drawing.Point
		for _, item := range drawing.Plan(report(t, name, nil)).Items {
			path, ok := item.(drawing.Path)
			switch {
			case ok && path.Closed && path.Pen.Fill == drawing.Black && len(path.Points) == 4:
				posts = append(posts, path.Points[0])
			case ok && len(path.Points) == 2 && path.Pen.Width > 1 && path.Points[1].Y-path.Points[0].Y > 60:
				spans = append(spans, path.Points[1])
			}
		}
		require.Len(t, spans, 1, name)
		require.NotEmpty(t, posts, name)
		met := 0
		for _, p := range posts {
			if math.Abs(p.Y-spans[0].Y) < 10 { // not the black pieces of the scale
				met++
				assert.Greater(t, math.Abs(p.X-spans[0].X), 6.0, name)
			}
		}
		assert.GreaterOrEqual(t, met, 2, name)
	}
}

// Freestanding covers have no house, no ledger and a mark for every line.
func TestFreestanding(t *testing.T) {
	r := report(t, "desert", func(in *cover.Input) {
		kind, braces := "freestanding", "knee_braces"
		in.Cover.Attachment, in.Beams.Lines = &kind, []float64{1, 10}
		in.Lateral = cover.Lateral{Along: &braces, Out: &braces}
	})
	plan, section := drawing.Plan(r), drawing.Section(r)
	assert.False(t, plan.Has("HOUSE"))
	assert.False(t, section.Has("LEDGER"))
	for _, m := range []string{"T1", "T2", "C1", "C2", "BM1", "BM2"} {
		assert.True(t, plan.Has(m), m)
		assert.True(t, section.Has(m), m)
	}
	for _, m := range []string{"P1", "P3", "P4", "P6"} {
		assert.True(t, plan.Has(m), m)
	}
	for _, m := range []string{"B1", "B2", "A1", "A2", "F1", "F2"} {
		assert.True(t, section.Has(m), m)
	}
}

// A brace is shown with its size, and only where it was said to be.
func TestKneeBraces(t *testing.T) {
	braces := "knee_braces"
	for _, c := range []struct {
		lateral cover.Lateral
		want    bool
	}{
		{cover.Lateral{Along: &braces, Out: &braces}, true},
		{cover.Lateral{Along: &braces, Out: read(t, "desert").Lateral.Out}, false},
	} {
		r := report(t, "desert", func(in *cover.Input) { in.Lateral = c.lateral })
		size := ""
		for _, m := range r.Members {
			if m.Name == "knee brace" {
				size = m.Size
			}
		}
		assert.NotEmpty(t, size)
		assert.Equal(t, c.want, drawing.Section(r).Has("K "+size+" KNEE BRACE"))
	}
}

// Trap: a brace drawn at a usual length and angle. It rises as said, is as deep as its wood
// on the scale of the post, and its middle meets that of the post at the drop of the report.
func TestTrapBraceDrawnInItsPlace(t *testing.T) {
	for _, angle := range []float64{40, 50, 60} {
		braces, drop := "knee_braces", 1.5
		r := report(t, "desert", func(in *cover.Input) {
			in.Lateral = cover.Lateral{Along: &braces, Out: &braces, BraceAngle: &angle, BraceDrop: &drop}
		})
		rise := math.Tan(angle * math.Pi / 180)
		calctest.Close(t, rise, r.Geometry.KneeDrop/r.Geometry.KneeReach, 1e-9, 0)
		wood := woodShapes(drawing.Section(r))
		found := 0
		for _, p := range wood {
			if dx, dy := p[2].X-p[1].X, p[2].Y-p[1].Y; p[0].X != p[1].X || dx == 0 || math.Abs(math.Abs(dy/dx)-rise) > 1e-6 {
				continue
			}
			found++
			perInch := math.Abs(p[0].Y-p[1].Y) / (r.Geometry.KneeDepth * math.Hypot(1, rise))
			half := r.Geometry.Lines[0].PostWidth / 2 * perInch
			foot := (p[0].Y+p[1].Y)/2 + half*rise
			calctest.Close(t, drop*12, (foot-postTop(t, wood, p[0].X, 2*half))/perInch, 1e-6, 0, angle)
		}
		assert.Equal(t, len(r.Geometry.Lines), found, "one brace at the post of an attached cover")
	}
}

// woodShapes are the outlines of timber in a drawing.
func woodShapes(s drawing.Scene) [][]drawing.Point {
	var out [][]drawing.Point
	for _, item := range s.Items {
		if p, ok := item.(drawing.Path); ok && p.Closed && p.Pen.Fill == drawing.Wood && len(p.Points) == 4 {
			out = append(out, p.Points)
		}
	}
	return out
}

// postTop is the top on paper of the post of a width that has an edge at x.
func postTop(t testing.TB, wood [][]drawing.Point, x, width float64) float64 {
	t.Helper()
	for _, p := range wood {
		left, right, top := math.Inf(1), math.Inf(-1), math.Inf(1)
		for _, q := range p {
			left, right, top = min(left, q.X), max(right, q.X), min(top, q.Y)
		}
		edge := math.Abs(left-x) < 1e-6 || math.Abs(right-x) < 1e-6
		if edge && math.Abs(right-left-width) < 1e-6 {
			return top
		}
	}
	t.Fatal("no post beside the brace")
	return 0
}

func TestRafterTailsAndFlushBeams(t *testing.T) {
	tails, flush := "rafter_tails", "flush"
	r := report(t, "desert", func(in *cover.Input) {
		in.Cover.Attachment, in.Beams.Position, in.Cover.Overhang = &tails, &flush, new(0.0)
	})
	assert.True(t, drawing.Plan(r).Has("RAFTER TAILS (EXISTING)"))
	assert.Contains(t, svg(t, drawing.Section(r), "s"), "BM1")
}

// unmarked lists the links of the report that the two drawings do not show twice: at
// the joint and in the key. A beam line has its own key row but may share a joint's.
func unmarked(r cover.Report) []string {
	words := append(drawing.Plan(r).Words(), drawing.Section(r).Words()...)
	var out []string
	for _, l := range r.Links {
		count, named := 0, false
		for _, w := range words {
			if w == l.Mark {
				count++
			}
			named = named || strings.HasPrefix(w, l.Name)
		}
		if count < 2 || !named {
			out = append(out, l.Mark)
		}
	}
	return out
}

func TestEveryLinkIsMarked(t *testing.T) {
	for _, name := range covers {
		assert.Empty(t, unmarked(report(t, name, nil)), name)
	}
}

// On a cover that a person can walk under, of any shape, every mark finds a place.
func TestEveryLinkOfAnOrdinaryCoverIsMarked(t *testing.T) {
	base := report(t, "desert", nil)
	rapid.Check(t, func(t *rapid.T) {
		r := anyReport(t, base, ordinary)
		if missing := unmarked(r); len(missing) > 0 {
			t.Fatalf("no room for %v", missing)
		}
	})
}

// A phone shows a scene 370 pixels wide: no letter may then be below 9 pixels.
func TestLettersAreLegibleOnAPhone(t *testing.T) {
	const shown, least = 370.0, 9.0 // px
	for _, name := range covers {
		r := report(t, name, nil)
		for _, s := range []drawing.Scene{drawing.Plan(r), drawing.Section(r)} {
			for _, text := range texts(s) {
				assert.GreaterOrEqual(t, text.Size*shown/s.Width, least, "%s: %s", s.Title, text.Words)
			}
		}
	}
}

func TestScenesAreTheSameTwice(t *testing.T) {
	r := report(t, "snow", nil)
	assert.Equal(t, drawing.Plan(r), drawing.Plan(r))
	assert.Equal(t, svg(t, drawing.Section(r), "a"), svg(t, drawing.Section(r), "a"))
}

func texts(s drawing.Scene) []drawing.Text {
	var out []drawing.Text
	for _, item := range s.Items {
		if text, ok := item.(drawing.Text); ok {
			out = append(out, text)
		}
	}
	return out
}

// extent is where a text is read, with letters as wide as the narrowest usual face.
func extent(text drawing.Text) (left, top, right, bottom float64) {
	wide, rise := 0.47*text.Size*float64(len([]rune(text.Words))), 0.72*text.Size
	before := map[drawing.Anchor]float64{drawing.Start: 0, drawing.Middle: wide / 2, drawing.End: wide}[text.Anchor]
	if text.Angle == -90 {
		return text.At.X - rise, text.At.Y - wide + before, text.At.X, text.At.Y + before
	}
	return text.At.X - before, text.At.Y - rise, text.At.X + wide - before, text.At.Y
}

// A complainer is a test, of this or of the random kind.
type complainer interface {
	Helper()
	Errorf(format string, args ...any)
}

// legible fails when a text leaves the paper or covers another one.
func legible(t complainer, s drawing.Scene) {
	t.Helper()
	all := texts(s)
	for i, a := range all {
		l, u, r, b := extent(a)
		if !(l >= 0 && u >= 0 && r <= s.Width && b <= s.Height) {
			t.Errorf("%s: %q leaves the paper", s.Title, a.Words)
		}
		for _, o := range all[:i] {
			ol, ou, or, ob := extent(o)
			if l < or && ol < r && u < ob && ou < b {
				t.Errorf("%s: %q covers %q", s.Title, a.Words, o.Words)
			}
		}
	}
}

// limits bound the shape of a cover, ft.
type limits struct {
	leastWidth, mostWidth, leastProjection, mostProjection float64
	leastHigh, leastLow                                    float64
	mostLines                                              int
}

var (
	allowed  = limits{3, 100, 3, 40, 6, 2, 4} // by the input, the low edge 2 ft up or more
	ordinary = limits{8, 60, 6, 24, 8, 6, 2}  // a person walks under it
)

// anyGeometry is a cover of any shape within the limits.
func anyGeometry(t *rapid.T, within limits) cover.Geometry {
	near := func(low, high float64, name string) float64 {
		return math.Round(rapid.Float64Range(low, high).Draw(t, name)*16) / 16
	}
	g := cover.Geometry{
		Attachment: rapid.SampledFrom([]string{"ledger", "rafter_tails", "freestanding"}).Draw(t, "attachment"),
		Width:      near(within.leastWidth, within.mostWidth, "width"),
		Projection: near(within.leastProjection, within.mostProjection, "projection"),
		HighEdge:   near(within.leastHigh, 20, "high"), RafterSize: "2x8", RafterDepth: 7.25, RafterWidth: 1.5,
	}
	g.Slope = near(0.125, min(12, (g.HighEdge-within.leastLow)*12/g.Projection), "slope")
	g.Angle = math.Atan(g.Slope/12) * 180 / math.Pi
	g.LowEdge = g.HighEdge - g.Slope*g.Projection/12
	spacing := near(1, 4, "spacing")
	for x := 0.0; x < g.Width; x += spacing {
		g.Rafters = append(g.Rafters, x)
	}
	g.Rafters = append(g.Rafters, g.Width)
	posts := rapid.IntRange(2, 20).Draw(t, "posts")
	lines := rapid.IntRange(1, within.mostLines).Draw(t, "lines")
	uneven := rapid.Bool().Draw(t, "uneven")
	for i := range lines {
		y := g.Projection * (float64(i) + rapid.Float64Range(0.6, 1).Draw(t, "y")) / float64(lines)
		top := g.HighEdge - g.Slope*y/12 - 7.25/12
		l := cover.BeamLine{
			Mark: fmt.Sprintf("BM%d", i+1), Y: y, Size: "4x10", Depth: 9.25, Breadth: 3.5, Top: top, Bottom: top - 9.25/12,
			PostSize: "6x6", PostWidth: 5.5, Flush: rapid.Bool().Draw(t, "flush"),
		}
		for n := range posts {
			part := float64(n) / float64(posts-1)
			if uneven {
				part *= part
			}
			l.Posts = append(l.Posts, part*g.Width)
			l.PostMarks = append(l.PostMarks, fmt.Sprintf("P%d", i*posts+n+1))
		}
		g.Lines = append(g.Lines, l)
	}
	return g
}

// headroomOf measures the clear height below the outer beam.
func headroomOf(t *rapid.T, g *cover.Geometry) cover.Headroom {
	l := g.Lines[len(g.Lines)-1]
	fall := rapid.Float64Range(0, 0.5/12).Draw(t, "fall")
	return cover.Headroom{
		Clear: (l.Bottom + fall*l.Y) * 12, Required: 80, Verdict: cover.Over,
		Check: calc.Check{Lines: []calc.Line{{Symbol: "y", X: l.Y * 12}, {Symbol: "r_slab", X: fall}}},
	}
}

// anyReport is the report with the geometry of another cover, of any shape, and the
// links and ground that go with it.
func anyReport(t *rapid.T, base cover.Report, within limits) cover.Report {
	r := base
	r.Geometry = anyGeometry(t, within)
	r.Headroom = headroomOf(t, &r.Geometry)
	r.Links = nil
	for _, l := range base.Links {
		once := strings.Contains("DHLW", l.Mark[:1])
		if r.Geometry.Attachment == "freestanding" && strings.Contains("HLW", l.Mark[:1]) {
			continue
		}
		for i := range r.Geometry.Lines {
			if once && i > 0 {
				break
			}
			l.Mark = fmt.Sprintf("%s%d", l.Mark[:1], i+1)
			r.Links = append(r.Links, l)
		}
	}
	kind := rapid.SampledFrom([]string{"slab", "footing", "pier", "embedded"}).Draw(t, "kind")
	r.Foundations = []cover.FoundationAt{{Kind: kind}}
	if kind != "slab" && rapid.Bool().Draw(t, "sized") {
		r.Foundations = nil
		for _, l := range r.Geometry.Lines {
			r.Foundations = append(r.Foundations, cover.FoundationAt{
				Kind: kind, X: l.Posts[0], Y: l.Y, Shape: rapid.SampledFrom([]string{"square", "round"}).Draw(t, "shape"),
				Width: rapid.Float64Range(10, 60).Draw(t, "B"), Depth: rapid.Float64Range(12, 72).Draw(t, "d"), Verdict: cover.Over,
			})
		}
	}
	r.Lateral = []cover.LateralWay{{
		Direction: "out from the house", System: rapid.SampledFrom([]string{"knee_braces", "none"}).Draw(t, "lateral"),
	}}
	frost := rapid.SampledFrom([]float64{0, 12, 36, 60}).Draw(t, "frost")
	r.Input.Site.FrostDepth = &frost
	r.Loads.Heaps = anyHeaps(t, r.Geometry.Projection)
	return r
}

// Whatever the shape of the cover, no words leave the paper or cover other words.
func TestWordsKeepApart(t *testing.T) {
	base := report(t, "desert", nil)
	rapid.Check(t, func(t *rapid.T) {
		r := anyReport(t, base, allowed)
		for _, s := range []drawing.Scene{drawing.Plan(r), drawing.Section(r)} {
			var b bytes.Buffer
			if err := drawing.SVG(&b, s, "x"); err != nil {
				t.Fatal(err)
			}
			legible(t, s)
		}
	})
}

func TestWordsKeepApartInTheCovers(t *testing.T) {
	for _, name := range covers {
		r := report(t, name, nil)
		legible(t, drawing.Plan(r))
		legible(t, drawing.Section(r))
	}
}

func TestSVGIsWellFormedAndNamed(t *testing.T) {
	for _, name := range covers {
		r := report(t, name, nil)
		for i, s := range []drawing.Scene{drawing.Plan(r), drawing.Section(r)} {
			text := svg(t, s, fmt.Sprintf("v%d", i))
			d := xml.NewDecoder(strings.NewReader(text))
			for {
				_, err := d.Token()
				if errors.Is(err, io.EOF) {
					break
				}
				require.NoError(t, err)
			}
			assert.Contains(t, text, fmt.Sprintf(`role="img" aria-labelledby="v%d-title v%[1]d-desc"`, i))
			assert.Contains(t, text, fmt.Sprintf(`<title id="v%d-title">%s</title>`, i, s.Title))
			assert.NotContains(t, text, "style=")
			assert.NotContains(t, text, "NaN")
			assert.Less(t, len(text), 60_000)
		}
	}
}

// A page whose policy forbids inline styles draws style= black, and a size from the
// report must not become markup.
func TestTrapMarkupInWords(t *testing.T) {
	r := report(t, "desert", nil)
	const evil = `<script>"&'`
	r.Geometry.RafterSize = evil
	r.Geometry.Lines[0].Mark = evil
	for _, s := range []drawing.Scene{drawing.Plan(r), drawing.Section(r)} {
		text := svg(t, s, `"><script>`)
		assert.NotContains(t, text, "<script")
		assert.Contains(t, text, "&lt;script&gt;&#34;&amp;&#39;")
	}
}

func TestSVGRefusesAPlaceThatIsNoNumber(t *testing.T) {
	for _, item := range []drawing.Item{
		drawing.Path{Points: []drawing.Point{{X: math.NaN()}}},
		drawing.Path{Points: []drawing.Point{{Y: math.Inf(1)}, {}}},
		drawing.Path{},
		drawing.Text{At: drawing.Point{X: math.Inf(-1)}},
	} {
		err := drawing.SVG(io.Discard, drawing.Scene{Title: "Plan", Items: []drawing.Item{item}}, "x")
		assert.ErrorContains(t, err, `item 0 of "Plan"`)
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestSVGTellsOfItsWriter(t *testing.T) {
	assert.ErrorIs(t, drawing.SVG(broken{}, drawing.Scene{}, "x"), io.ErrClosedPipe)
}

func TestInks(t *testing.T) {
	seen := map[string]drawing.Ink{}
	for i := drawing.None; i <= drawing.Tag; i++ {
		other, twice := seen[i.Hex()]
		assert.False(t, twice, "%d and %d look the same", i, other)
		seen[i.Hex()] = i
	}
	assert.Equal(t, "none", drawing.None.Hex())
}

func ExampleSVG() {
	s := drawing.Scene{Title: "Mark", Description: "A stroke & a word.", Width: 40, Height: 20, Items: []drawing.Item{
		drawing.Path{Points: []drawing.Point{{X: 2, Y: 2}, {X: 8.126, Y: 2}}, Pen: drawing.Pen{Stroke: drawing.Black, Width: 0.5}},
		drawing.Text{At: drawing.Point{X: 20, Y: 12}, Words: `2" <`, Anchor: drawing.Middle, Size: 9.5, Ink: drawing.Black},
	}}
	_ = drawing.SVG(os.Stdout, s, "m")
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" width="40pt" height="20pt" viewBox="0 0 40 20"
	// role="img" aria-labelledby="m-title m-desc"
	// font-family="Arial, Helvetica, sans-serif" fill="none" stroke-linejoin="round">
	// <title id="m-title">Mark</title>
	// <desc id="m-desc">A stroke &amp; a word.</desc>
	// <path fill="#ffffff" d="M0 0H40V20H0Z"/>
	// <path d="M2 2L8.13 2" stroke="#111111" stroke-width="0.5"/>
	// <text x="20" y="12" font-size="9.5" fill="#111111" text-anchor="middle">2&#34; &lt;</text>
	// </svg>
}

func BenchmarkPlanAndSection(b *testing.B) {
	r := report(b, "desert", nil)
	for b.Loop() {
		for _, s := range []drawing.Scene{drawing.Plan(r), drawing.Section(r)} {
			if err := drawing.SVG(io.Discard, s, "x"); err != nil {
				b.Fatal(err)
			}
		}
	}
}
