package member_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// laid returns the values of the same piece on its other face.
func laid(t testing.TB, a *lumber.Adjusted) *lumber.Adjusted {
	t.Helper()
	use := a.Use
	use.Flat = !use.Flat
	return inUse(t, a, use)
}

// inUse returns the values of the same piece in another use.
func inUse(t rapid.TB, a *lumber.Adjusted, use lumber.Use) *lumber.Adjusted {
	t.Helper()
	v, err := lumber.Find(a.Species, a.Grade, a.Section)
	if err != nil {
		t.Fatal(err)
	}
	b := lumber.Adjust(v, a.Section, use)
	return &b
}

// onBothFaces draws a piece and returns its values on edge and laid flat.
func onBothFaces(t *rapid.T) (edge, flat *lumber.Adjusted) {
	a := piece(t)
	use := a.Use
	use.Method = rapid.SampledFrom([]lumber.Method{lumber.ASD, lumber.LRFD}).Draw(t, "method")
	use.Flat = false
	edge = inUse(t, a, use)
	use.Flat = true
	return edge, inUse(t, a, use)
}

// drawActions draws what acts, each part present or not.
func drawActions(t *rapid.T) member.Actions {
	part := func(name string, low, high float64) float64 {
		if rapid.Bool().Draw(t, "no "+name) {
			return 0
		}
		return rapid.Float64Range(low, high).Draw(t, name)
	}
	return member.Actions{
		Force: part("P", -20_000, 20_000), Edgewise: part("M1", -100_000, 100_000),
		Flatwise: part("M2", -50_000, 50_000), EdgeOffset: part("e1", -6, 6), FlatOffset: part("e2", -6, 6),
	}
}

func drawStay(t *rapid.T) member.Stay {
	form := rapid.SampledFrom([]member.Form{member.SawnColumn, member.RoundColumn, member.GluedColumn})
	long := func(name string) member.Axis {
		a := axis(t, name)
		if a.Length < 2 {
			a.Length = 0 // not known; the printed formula loses its digits just above
		}
		return a
	}
	return member.Stay{
		Column:  member.Column{Deep: long("deep"), Thin: long("thin"), Form: form.Draw(t, "form")},
		Bracing: bracing(t),
		Net:     rapid.SampledFrom([]float64{0, 1, 4}).Draw(t, "An"),
	}
}

func TestCombinedIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge, flat := onBothFaces(t)
		proved(t, member.NewCombined(drawActions(t), edge, flat, anyDuration(t), drawStay(t)))
	})
}

// Every kind of stress more never lowers the ratio, and no sign of a moment matters.
// Tension is left out: more of it takes from the compressed edge.
func TestCombinedGrowsWithEveryAction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge, flat := onBothFaces(t)
		x, stay, term := drawActions(t), drawStay(t), anyDuration(t)
		x.Force = math.Abs(x.Force)
		first := member.NewCombined(x, edge, flat, term, stay).Ratio()
		more := x
		grow := rapid.Float64Range(1, 3).Draw(t, "times")
		which := rapid.IntRange(0, 4).Draw(t, "which")
		part := []*float64{&more.Force, &more.Edgewise, &more.Flatwise, &more.EdgeOffset, &more.FlatOffset}[which]
		*part *= grow
		if second := member.NewCombined(more, edge, flat, term, stay).Ratio(); second < first*(1-1e-12) {
			t.Fatalf("%v gives %v, %v gives %v", x, first, more, second)
		}
		turned := x
		turned.Edgewise, turned.FlatOffset = -x.Edgewise, -x.FlatOffset
		if got := member.NewCombined(turned, edge, flat, term, stay).Ratio(); got != first {
			t.Fatalf("turned %v, first %v", got, first)
		}
	})
}

// Each action alone is the check of that action.
func TestCombinedOfOneActionIsItsCheck(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge, flat := onBothFaces(t)
		stay, term := drawStay(t), anyDuration(t)
		stay.Net = 0
		force := rapid.Float64Range(1, 20_000).Draw(t, "force")
		alone := func(x member.Actions) float64 { return member.NewCombined(x, edge, flat, term, stay).Sum }
		same := func(name string, want, got float64) {
			if !(math.IsInf(want, 1) && math.IsInf(got, 1)) && math.Abs(want-got) > 1e-9*want {
				t.Fatalf("%s: %v, want %v", name, got, want)
			}
		}
		pressed := member.NewCompression(force, edge, term, stay.Column).Ratio()
		same("pressed", pressed*pressed, alone(member.Actions{Force: force}))
		same("pulled", member.NewTension(force, edge.Section.Area(), edge, term).Ratio(), alone(member.Actions{Force: -force}))
		same("edgewise", member.NewBending(force, edge, term, stay.Bracing).Ratio(), alone(member.Actions{Edgewise: force}))
		same("flatwise", member.NewBending(force, flat, term, member.Bracing{}).Ratio(), alone(member.Actions{Flatwise: force}))
	})
}

// setting returns the axes and bracing of a row of combined.csv.
func setting(r calc.Row) member.Stay {
	plane := func(column string) member.Axis {
		switch r.Text(column) {
		case "held", "":
			return member.Axis{Held: true}
		}
		return member.Axis{Length: r.Num(column), Ends: member.PinnedPinned}
	}
	stay := member.Stay{Column: member.Column{Deep: plane("l1 in"), Thin: plane("l2 in")}}
	stay.Bracing.Held = r.Text("lu in") == "held" || r.Text("lu in") == ""
	if !stay.Bracing.Held {
		stay.Bracing.Unbraced = r.Num("lu in")
		stay.Bracing.Loading = map[string]member.Loading{
			"uniform": member.UniformSpan, "center": member.CenterUnbraced,
		}[r.Text("loading")]
	}
	return stay
}

func TestPublishedCombined(t *testing.T) {
	for _, r := range calctest.Published(t, "combined.csv") {
		t.Run(r.Text("id")+" "+r.Text("quantity"), func(t *testing.T) {
			edge := adjusted(t, r.Text("species"), r.Text("grade"), r.Text("size"), lumber.Use{})
			term := duration(t, r.Text("duration"))
			x := member.Actions{Force: r.Num("P lb"), Edgewise: r.Num("M1 lb-in"), Flatwise: r.Num("M2 lb-in")}
			c := member.NewCombined(x, edge, laid(t, edge), term, setting(r))
			got := map[string]float64{
				"sum": c.Sum, "CL": c.Edge.Stability, "CP": c.Compression.Stability,
				"ratio": c.Compression.Ratio(),
			}
			if r.Has("plies") {
				post := built(t, r.Text("species"), r.Text("grade"), r.Text("plies")+"-"+r.Text("size"), lumber.Nailed, lumber.Use{})
				got["CP"] = member.NewCompression(x.Force, post, term, setting(r).Column).Stability
				post.Section.Plies, post.Section.Fastening = 0, lumber.Unfastened
				got["CP solid"] = member.NewCompression(x.Force, post, term, setting(r).Column).Stability
			}
			require.Contains(t, got, r.Text("quantity"))
			calctest.Near(t, r.Num("want"), got[r.Text("quantity")], r.Num("within"), r.Text("source"))
		})
	}
}

// A 6x6 of Douglas Fir-Larch No.2, 8 ft, pinned, with 2000 lb at 4.5 in. off center:
// NDS 2018 eq. 15.4-1 worked out apart from the program.
func TestEccentricPostByHand(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "6x6", lumber.Use{})
	pinned := member.Axis{Length: 96, Ends: member.PinnedPinned}
	stay := member.Stay{Column: member.Column{Deep: pinned, Thin: pinned}}
	c := member.NewCombined(member.Actions{Force: 2000, FlatOffset: 4.5}, a, laid(t, a), lumber.SevenDays, stay)

	fc := 2000 / 30.25
	euler := 0.822 * 470_000 / math.Pow(96/5.5, 2) // Emin 470,000 psi
	star := 700 * 1.25
	alpha := euler / star
	cp := (1+alpha)/1.6 - math.Sqrt(math.Pow((1+alpha)/1.6, 2)-alpha/0.8)
	bend := fc * 6 * 4.5 / 5.5
	want := math.Pow(fc/(star*cp), 2) + bend*(1+0.234*fc/euler)/(a.Bending.Value*1.25*(1-fc/euler))
	calctest.Close(t, want, c.Sum, 1e-12, 0, "NDS 2018 eq. 15.4-1")
	assert.Greater(t, c.Sum, 0.3, "concentric it would be (fc/Fc')², one part in a hundred")
	assert.Less(t, math.Pow(fc/(star*cp), 2), 0.011)
}

func TestCombinedRefusals(t *testing.T) {
	edge := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	flat := laid(t, edge)
	pinned, held := member.Axis{Length: 120, Ends: member.PinnedPinned}, member.Axis{Held: true}
	sure := member.Stay{Column: member.Column{Deep: pinned, Thin: held}, Bracing: member.Bracing{Held: true}}
	for name, c := range map[string]struct {
		x    member.Actions
		stay member.Stay
	}{
		"force not a number":       {member.Actions{Force: math.NaN()}, sure},
		"moment not a number":      {member.Actions{Edgewise: math.NaN()}, sure},
		"offset not a number":      {member.Actions{Force: 10, EdgeOffset: math.NaN()}, sure},
		"pressed, column unknown":  {member.Actions{Force: 10}, member.Stay{}},
		"bent, bracing unknown":    {member.Actions{Edgewise: 10}, member.Stay{Column: sure.Column}},
		"off center, bracing open": {member.Actions{Force: 10, EdgeOffset: 1}, member.Stay{Column: sure.Column}},
		"beyond the buckling load": {member.Actions{Force: 1.01 * 0.822 * 470_000 / math.Pow(120/7.25, 2) * 10.875, Edgewise: 1}, sure},
	} {
		assert.True(t, math.IsInf(member.NewCombined(c.x, edge, flat, lumber.TenYears, c.stay).Ratio(), 1), name)
	}
	calm := member.NewCombined(member.Actions{Force: -100}, edge, flat, lumber.TenYears, member.Stay{})
	assert.False(t, math.IsInf(calm.Ratio(), 1), "tension needs no column")
	assert.Zero(t, member.NewCombined(member.Actions{}, edge, flat, lumber.TenYears, member.Stay{}).Ratio())
}

// The whole of the eccentric terms is recalled, and marks the check; without
// eccentricity nothing of 15.4.1 is used.
func TestEccentricityMarksTheCheck(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "4x4", lumber.Use{})
	held := member.Axis{Held: true}
	stay := member.Stay{Column: member.Column{Deep: held, Thin: held}}
	x := member.Actions{Force: 1000, Edgewise: 100}
	marked := func() bool {
		for _, l := range member.NewCombined(x, a, laid(t, a), lumber.TenYears, stay).Explain().Lines {
			if l.Status == calc.Recalled && l.Symbol == "f_e1" {
				return true
			}
		}
		return false
	}
	assert.False(t, marked())
	x.EdgeOffset = 1
	assert.True(t, marked())
}

func TestNetSectionIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term := piece(t), anyDuration(t)
		force := rapid.Float64Range(-5000, 50_000).Draw(t, "P")
		area := rapid.Float64Range(0, 150).Draw(t, "An")
		n := member.NewNetSection(force, area, a, term)
		if area > 0 {
			proved(t, n)
		}
		if less := member.NewNetSection(force, 0.8*area, a, term); less.Ratio() < n.Ratio() {
			t.Fatalf("a hole helped: %v, %v", less.Ratio(), n.Ratio())
		}
	})
}

// A round post takes the square of equal area and c = 0.85 (NDS 2018 3.7.3).
func TestRoundColumn(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "8x8", lumber.Use{})
	round := *a
	side := math.Sqrt(math.Pi * 64 / 4) // of the square with the area of the circle
	round.Section.Breadth, round.Section.Depth = side, side
	pinned := member.Axis{Length: 144, Ends: member.PinnedPinned}
	c := member.NewCompression(5000, &round, lumber.TenYears, member.Column{Deep: pinned, Thin: pinned, Form: member.RoundColumn})
	calctest.Close(t, 144/(8*0.886227), c.Slenderness, 1e-6, 0, "d = 0.886 D")
	euler := 0.822 * a.Stability.Value / math.Pow(c.Slenderness, 2)
	h := (1 + euler/c.Star) / 1.7
	calctest.Close(t, h-math.Sqrt(h*h-euler/c.Star/0.85), c.Stability, 1e-9, 0, "NDS 2018 eq. 3.7-1, c 0.85")
	sawn := member.NewCompression(5000, &round, lumber.TenYears, member.Column{Deep: pinned, Thin: pinned})
	glued := member.NewCompression(5000, &round, lumber.TenYears, member.Column{Deep: pinned, Thin: pinned, Form: member.GluedColumn})
	assert.Less(t, sawn.Stability, c.Stability)
	assert.Less(t, c.Stability, glued.Stability)
	proved(t, glued)
}

func TestCombinedAllocatesNothing(t *testing.T) {
	edge := adjusted(t, "Hem-Fir", "No.2", "4x6", lumber.Use{})
	flat := laid(t, edge)
	pinned := member.Axis{Length: 96, Ends: member.PinnedPinned}
	stay := member.Stay{
		Column:  member.Column{Deep: pinned, Thin: pinned},
		Bracing: member.Bracing{Unbraced: 96, Loading: member.UniformSpan},
	}
	x := member.Actions{Force: 3000, Edgewise: 4000, EdgeOffset: 1, FlatOffset: 1}
	pulled := member.Actions{Force: -3000, Edgewise: 4000}
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink += member.NewCombined(x, edge, flat, lumber.TenMinutes, stay).Ratio()
		sink += member.NewCombined(pulled, edge, flat, lumber.TenMinutes, stay).Ratio()
		sink += member.NewNetSection(3000, 10, edge, lumber.TenMinutes).Ratio()
	}))
}

func BenchmarkCombined(b *testing.B) {
	edge := adjusted(b, "Hem-Fir", "No.2", "4x6", lumber.Use{})
	flat := laid(b, edge)
	pinned := member.Axis{Length: 96, Ends: member.PinnedPinned}
	stay := member.Stay{Column: member.Column{Deep: pinned, Thin: pinned}, Bracing: member.Bracing{Held: true}}
	x := member.Actions{Force: 3000, Edgewise: 4000, FlatOffset: 1}
	for b.Loop() {
		sink += member.NewCombined(x, edge, flat, lumber.TenMinutes, stay).Ratio()
	}
}
