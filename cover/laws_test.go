package cover_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/cover"
)

// slack is the relative difference that is taken for rounding.
const slack = 1e-9

// settled fixes the sizes that a cover was given by the program, so that one more
// pound cannot be answered by another size.
func settled(t *rapid.T, in cover.Input) (cover.Input, cover.Report) {
	in.Lateral.BracedRafters = new(2)
	r := answer(t, in)
	for _, m := range r.Members {
		switch m.Name {
		case "knee brace":
			in.Lateral.BraceSize = new(m.Size)
		case "rafter":
			in.Rafters.Size = new(m.Size)
		case "beam":
			in.Beams.Size = new(m.Size)
		case "post":
			in.Posts.Size = new(m.Size)
		}
	}
	return in, r
}

// answer sizes an input that must be valid.
func answer(t *rapid.T, in cover.Input) cover.Report {
	r, err := cover.Size(in)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// largest is the largest ratio of the members whose sizes were settled: the deck, and how
// many rafters a knee brace meets, are chosen anew for every load.
func largest(r cover.Report) cover.Ratio {
	most := cover.Ratio(0)
	for _, m := range r.Members {
		if strings.HasPrefix(m.Mark, "DK") || m.Name == "knee brace" {
			continue
		}
		most = max(most, m.Ratio)
	}
	return most
}

// With the sizes given, nothing gets better when more acts on the cover: faster wind,
// more snow, more live load, one more layer that may come off.
func TestRatiosNeverFallUnderMoreLoad(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in, before := settled(t, randomCover(t))
		what := rapid.SampledFrom([]string{"wind", "snow", "live", "dead"}).Draw(t, "what grows")
		by := tenth(t, 0.1, 20, "by")
		more := in
		switch what {
		case "wind":
			more.Site.WindSpeed = new(min(200, *in.Site.WindSpeed+by))
		case "snow":
			more.Site.RoofSnow = new(*in.Site.RoofSnow + by)
			if more.Site.Standard != nil && *more.Site.Standard == "ASCE 7-22" {
				more.Site.RoofSnowBasis = new("strength")
			}
		case "live":
			full, _ := in.Assume()
			more.Site.RoofLive = new(*full.Site.RoofLive + by)
		case "dead":
			more.Cover.Layers = append(slices.Clone(in.Cover.Layers), cover.Layer{Name: new("one more"), Weight: &by})
		}
		after := answer(t, more)
		if float64(largest(after)) < float64(largest(before))*(1-slack) {
			t.Fatalf("%s more by %v: the largest ratio fell from %v to %v", what, by, largest(before), largest(after))
		}
	})
}

// No rating falls when the wind is faster.
func TestRatingsNeverFallInFasterWind(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in, before := settled(t, randomCover(t))
		in.Site.WindSpeed = new(min(200, *in.Site.WindSpeed+tenth(t, 0.1, 30, "faster by")))
		after := answer(t, in)
		for i, l := range before.Links {
			more := after.Links[i]
			if more.Rating < l.Rating || more.Up.Value < l.Up.Value*(1-slack) {
				t.Fatalf("%s: %v lb, before %v lb", l.Mark, more.Up, l.Up)
			}
		}
	})
}

// No rating rises when something is fastened on for good, where no support is lifted by
// dead load itself.
func TestRatingsNeverRiseUnderCertainDeadLoad(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in, before := settled(t, randomCover(t))
		for _, x := range before.Reactions {
			for _, c := range x.ByCase {
				if c.Case == "dead load at its least" && c.Force < 0 {
					t.Skip("dead load lifts", x.Support)
				}
			}
		}
		in.Cover.Layers = append(slices.Clone(in.Cover.Layers), cover.Layer{
			Name: new("fastened"), Weight: new(tenth(t, 0.1, 20, "weight")), Certain: new(true),
		})
		after := answer(t, in)
		for i, l := range before.Links {
			if after.Links[i].Rating > l.Rating {
				t.Fatalf("%s: rating %v, before %v", l.Mark, after.Links[i].Rating, l.Rating)
			}
		}
	})
}

// The mirror of a cover has the mirrored answer. Rafters are laid out from the left, so
// that only a width of whole spaces has a mirror, and beams are cut from the left.
func TestMirrorGivesMirroredAnswer(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := randomCover(t)
		full, _ := in.Assume()
		width := float64(rapid.IntRange(4, 12).Draw(t, "spaces")) * *in.Rafters.Spacing / 12
		in.Cover.Width, in.Posts.Count, in.Posts.EndInset = &width, nil, nil
		at := []float64{tenth(t, 0, 2, "first") + 0.05} // never over a rafter, where a splice has to choose a side
		for len(at) < 5 {
			next := at[len(at)-1] + tenth(t, 2, 8, "bay")
			if next > width {
				break
			}
			at = append(at, next)
		}
		if *full.Beams.Splices == "by_stock" {
			in.Beams.Splices = new("every_post")
		}
		in.Posts.Positions = at
		other := in
		other.Posts.Positions = make([]float64, len(at))
		for i, x := range at {
			other.Posts.Positions[len(at)-1-i] = width - x
		}
		if in.Validate() != nil || other.Validate() != nil {
			t.Skip("too few posts")
		}
		one, two := answer(t, in), answer(t, other)
		mirrored(t, one, two, len(at))
	})
}

// A post below a rafter has its mirror too.
func TestMirrorOfPostsBelowRafters(t *testing.T) {
	one, two := overhung(), overhung()
	one.Posts.Count, two.Posts.Count = nil, nil
	one.Posts.Positions, two.Posts.Positions = []float64{4, 8, 16}, []float64{4, 12, 16}
	a, b := size(t, one), size(t, two)
	for i, f := range a.Foundations {
		g := b.Foundations[len(a.Foundations)-1-i]
		assert.InDelta(t, f.Uplift.Value, g.Uplift.Value, 1e-6, f.Post)
		assert.InDelta(t, f.Gravity.Value, g.Gravity.Value, 1e-6, f.Post)
		assert.InDelta(t, f.Every.Value, g.Every.Value, 1e-6, f.Post)
	}
	for _, name := range []string{"bending", "shear", "live or snow deflection", "long-term deflection"} {
		assert.InDelta(t, float64(check(t, a, "BM1", name).Ratio), float64(check(t, b, "BM1", name).Ratio), 1e-9, name)
	}
}

// mirrored compares the reports of a cover and its mirror.
func mirrored(t *rapid.T, one, two cover.Report, posts int) {
	same := func(what string, a, b float64) {
		if d := a - b; d > 1e-6*(1+a) || -d > 1e-6*(1+a) {
			t.Fatalf("%s: %v, in the mirror %v", what, a, b)
		}
	}
	for i, m := range one.Members {
		if two.Members[i].Size != m.Size {
			t.Fatalf("%s: %s, in the mirror %s", m.Mark, m.Size, two.Members[i].Size)
		}
		for k, c := range m.Checks {
			same(m.Mark+" "+c.Name, float64(c.Ratio), float64(two.Members[i].Checks[k].Ratio))
		}
	}
	for i, l := range one.Links {
		same(l.Mark+" up", l.Up.Value, two.Links[i].Up.Value)
		same(l.Mark+" down", l.Down.Value, two.Links[i].Down.Value)
	}
	for i, f := range one.Foundations {
		line, post := i/posts, i%posts
		g := two.Foundations[line*posts+posts-1-post]
		same(f.Post+" gravity", f.Gravity.Value, g.Gravity.Value)
		same(f.Post+" every load", f.Every.Value, g.Every.Value)
		same(f.Post+" uplift", f.Uplift.Value, g.Uplift.Value)
	}
}

// lawFaults lists what no report may break: the reactions carry the loads, nothing is
// OK while a link is not shown to hold, and the worst is said first.
func lawFaults(r cover.Report) []string {
	var out []string
	say := func(format string, about ...any) { out = append(out, fmt.Sprintf(format, about...)) }
	for _, c := range r.Closure {
		if !(c.Gap < 1e-9) {
			say("%s: applied %v, reactions %v", c.Case, c.Applied, c.Reactions)
		}
	}
	if len(r.Closure) < 10 {
		say("only %d cases are closed", len(r.Closure))
	}
	for _, l := range r.Links {
		if l.Verdict == cover.OK && !shown(l) || r.Verdict.Worse(l.Verdict) != r.Verdict {
			say("%s is %s, the cover %s", l.Mark, l.Verdict, r.Verdict)
		}
	}
	for i := 1; i < len(r.Summary); i++ {
		if a, b := r.Summary[i-1].Verdict, r.Summary[i].Verdict; a.Worse(b) != a {
			say("%s stands before %s", a, b)
		}
	}
	if r.Summary[0].Verdict != r.Verdict {
		say("the first sentence is %s, the verdict %s", r.Summary[0].Verdict, r.Verdict)
	}
	return out
}

// shown reports whether a link that is OK is shown to hold: by its own checks, by the
// foundations, or, behind the ledger, by what the user says is verified.
func shown(l cover.Link) bool {
	if strings.ContainsAny(l.Mark[:1], "AFW") {
		return true
	}
	if len(l.Connector.Checks) == 0 || l.Connector.What == "" {
		return false
	}
	return !slices.ContainsFunc(l.Connector.Checks, func(c cover.MemberCheck) bool { return c.Verdict != cover.OK || c.Ratio > 1 })
}

func TestLawsOfDemos(t *testing.T) {
	for _, name := range demos {
		assert.Empty(t, lawFaults(size(t, demo(t, name))), name)
	}
}

// The same input gives the same bytes, every time.
func TestSameInputSameBytes(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"survey", "drift"} {
		in := demo(t, name)
		first := marshal(t, size(t, in))
		for range 20 {
			require.True(t, bytes.Equal(first, marshal(t, size(t, in))), name)
		}
	}
	assert.True(t, json.Valid(cover.Schema()))
	assert.Equal(t, cover.Schema(), cover.Schema())
}

// The size chosen is the smallest that passes: the one tried before it is over, in the
// same cover, with the same check.
func TestNextSmallerSizeFails(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := randomCover(t)
		in.Rafters.Size, in.Beams.Size, in.Posts.Size = nil, nil, nil
		fixed, r := settled(t, in)
		for _, m := range r.Members {
			if len(m.Rejected) == 0 {
				continue
			}
			last := m.Rejected[len(m.Rejected)-1]
			if m.Name == "rafter" && last.Check == "bearing" {
				continue // a smaller rafter may be over only on the beam that comes below it
			}
			smaller := fixed
			switch m.Name {
			case "rafter":
				smaller.Rafters.Size = &last.Size
			case "beam":
				smaller.Beams.Size = &last.Size
			case "post":
				smaller.Posts.Size = &last.Size
			case "knee brace":
				smaller.Lateral.BraceSize = &last.Size
			case "deck panel":
				smaller.Deck.Rating = &last.Size
			default:
				smaller.Deck.Size = &last.Size
			}
			over := false
			for _, x := range answer(t, smaller).Members {
				over = over || x.Name == m.Name && x.Verdict == cover.Over
			}
			if !over {
				t.Fatalf("%s: %s is chosen, and %s passes too, rejected for %s", m.Mark, m.Size, last.Size, last.Check)
			}
		}
	})
}

// A beam whose edge is about to turn over gets no better in faster wind: beyond the
// critical stress bending both ways has no capacity left (NDS 2018 3.9.2, eq. 3.9-3), and
// the ratio is beyond any limit.
func TestBendingBothWaysNeverFalls(t *testing.T) {
	in := simple()
	in.Cover.Slope, in.Cover.HighEdge, in.Cover.Width = new(6.0), new(16.0), new(24.0)
	in.Beams.Size, in.Lateral.Out = new("4x6"), new("none")
	before := cover.Ratio(0)
	for mph := 85.0; mph <= 200; mph += 5 {
		in.Site.WindSpeed = &mph
		now := check(t, size(t, in), "BM1", "bending both ways").Ratio
		require.GreaterOrEqual(t, float64(now), float64(before)*(1-slack), "%v mph", mph)
		before = now
	}
	assert.Greater(t, float64(before), 1e3, "the edge has turned over on the way")
}
