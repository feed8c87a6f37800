package cover_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
)

// Trap: a light roof taken with the heavy dead load of a table. Only what is certain to
// stay resists uplift (ASCE 7-16 2.4.1 (7)), so that a layer which is not certain, such
// as ballast or old roofing, changes the gravity and not the uplift.
func TestTrapLightRoof(t *testing.T) {
	bare, loose, fixed := overhung(), overhung(), overhung()
	loose.Cover.Layers = append(loose.Cover.Layers, cover.Layer{Name: new("ballast"), Weight: new(8.0)})
	fixed.Cover.Layers = append(fixed.Cover.Layers, cover.Layer{Name: new("tile"), Weight: new(8.0), Certain: new(true)})
	a, b, c := size(t, bare), size(t, loose), size(t, fixed)
	for _, mark := range []string{"T1", "H1", "L1", "C1", "B1", "A1", "F1"} {
		assert.Equal(t, linkOf(t, a, mark).Up, linkOf(t, b, mark).Up, "%s: what may go does not hold down", mark)
		assert.Less(t, linkOf(t, c, mark).Up.Value, linkOf(t, a, mark).Up.Value, mark)
	}
	assert.Greater(t, linkOf(t, b, "T1").Down.Value, linkOf(t, a, "T1").Down.Value)
	calctest.Close(t, 0.6*beamEnd(8, 2, 10, 2)*math.Hypot(1, 0.125/12),
		linkOf(t, a, "T1").Up.Value-linkOf(t, c, "T1").Up.Value, exact, 0, "0.6 of what is certain")
}

// Trap: only one case or two directions of the wind. Every combination with wind must
// meet both cases, both flows, both sides, and the wind along the house from both ends.
func TestTrapEveryWindIsTried(t *testing.T) {
	r := size(t, overhung())
	var names []string
	for _, c := range r.Loads.Cases {
		names = append(names, c.Name)
	}
	all := strings.Join(names, "\n")
	for _, words := range []string{
		"from the house side, case A, clear", "from the house side, case A, obstructed", "from the house side, case B, clear",
		"from the house side, case B, obstructed", "from the garden side, case A, clear", "from the garden side, case A, obstructed",
		"from the garden side, case B, clear", "from the garden side, case B, obstructed", "along the house, case A, clear",
		"along the house, case A, obstructed", "along the house, case B, clear", "along the house, case B, obstructed",
	} {
		assert.Contains(t, all, words)
	}
	var cases []string
	for _, c := range reaction(t, r, "P1").ByCase {
		cases = append(cases, c.Case)
	}
	assert.Contains(t, cases, "wind along the house, case A, obstructed, from the left")
	assert.Contains(t, cases, "wind along the house, case A, obstructed, from the right")
	left := byCase(t, reaction(t, r, "P1"), "wind along the house, case A, obstructed, from the left")
	right := byCase(t, reaction(t, r, "P1"), "wind along the house, case A, obstructed, from the right")
	assert.Less(t, left, right, "the windward post lifts more")

	clear := overhung()
	clear.Cover.Flow = new("clear")
	for _, c := range size(t, clear).Loads.Cases {
		assert.NotContains(t, c.Name, "obstructed", "one flow is what was asked for")
	}
}

// Trap: the mean of the two halves for a rafter's end. With the windward half at CN -1.1
// and the other at -0.1 (ASCE 7-16 Fig. 27.3-4, case B, clear) the end lifts far more
// than half of the load.
func TestTrapHalvesAreNotAveraged(t *testing.T) {
	r := size(t, simple())
	up := byCase(t, reaction(t, r, "ledger"), "wind from the house side, case B, clear")
	mean := byCase(t, reaction(t, r, "BM1"), "wind from the house side, case B, clear")
	q := velocityC(105) * 0.85
	calctest.Close(t, -q*2*10*(1.1*3/8+0.1/8), up, exact, 0, "p1 L/2 (3/4) + p2 L/2 (1/4)")
	assert.Less(t, up, (up+mean)/2*1.3)
}

// Trap: 10 psf of roof live load everywhere. It needs the appendix, which only the user
// can say is adopted; and the 300 lb of a worker are never left out.
func TestTrapLightLiveLoad(t *testing.T) {
	in := simple()
	in.Site.RoofLive = new(10.0)
	_, err := cover.Size(in)
	assert.ErrorContains(t, err, "site.roof_live_psf: 10 psf is not 20 psf or more where the patio cover appendix is not adopted")

	in.Site.PatioAppendix = new(true)
	r := size(t, in)
	calctest.Near(t, 10, loadCase(t, r, "roof live load").Value, exact, "IRC 2018 Appendix H")
	assert.Contains(t, check(t, r, "R1", "bending").Combination, "300 lb", "a worker governs a light cover")
	assert.True(t, skipped(r, "openness for the patio cover appendix"), "the appendix has its own conditions")

	in.Site.RoofLive = nil
	calctest.Near(t, 10, loadCase(t, size(t, in), "roof live load").Value, exact, "what the appendix gives")
	in.Site.PatioAppendix = nil
	calctest.Near(t, 20, loadCase(t, size(t, in), "roof live load").Value, exact, "what is taken otherwise")
}

// Trap: the slab rule of 750 lb at any frost, on any slab, or on the loads of the other
// code's wording; and as if it covered uplift.
func TestTrapSlabRule(t *testing.T) {
	cases := []struct {
		name         string
		frost, depth float64
		rule         string
		posts        int
		width        float64
		want         cover.Verdict
		why          string
	}{
		{"frost", 1, 4, "live_and_dead", 4, 12, cover.Over, "the frost depth is not zero"},
		{"thin slab", 0, 3.4, "live_and_dead", 4, 12, cover.Over, "the slab is thinner than 3-1/2 in"},
		{"light posts", 0, 3.5, "live_and_dead", 4, 12, cover.OK, "of the 750 lb allowed"},
		{"the same with every load", 0, 3.5, "all_loads", 4, 12, cover.Over, "more than the 750 lb that a slab may"},
		{"heavy posts", 0, 4, "live_and_dead", 2, 20, cover.Over, "more than the 750 lb that a slab may"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			in := overhung()
			in.Foundation = cover.Foundation{Kind: new("slab"), SlabThickness: &c.depth, SlabRule: &c.rule}
			in.Site.PatioAppendix, in.Site.RoofLive = new(true), new(20.0)
			in.Site.FrostDepth, in.Posts.Count, in.Cover.Width = &c.frost, &c.posts, &c.width
			in.Posts.Size, in.Beams.Size, in.Cover.Projection = new("4x4"), new("4x6"), new(8.0)
			r := size(t, in)
			worst := cover.FoundationAt{}
			for _, f := range r.Foundations {
				if f.Gravity.Value > worst.Gravity.Value {
					worst = f
				}
			}
			assert.Equal(t, c.want, worst.Slab, worst.SlabWhy)
			assert.Contains(t, worst.SlabWhy, c.why)
			assert.Contains(t, worst.SlabWhy, "the rule says nothing of the", "uplift is said aloud")
			assert.Positive(t, worst.Uplift.Value)

			in.Site.PatioAppendix = nil
			for _, f := range size(t, in).Foundations {
				assert.NotEqual(t, cover.OK, f.Slab, "the rule is that of the appendix (IRC 2018 Appendix H)")
			}
		})
	}
}

// Trap: the appendix and its 10 psf on a cover that it does not know: above 12 ft (IRC
// 2018 Appendix H).
func TestTrapAppendixAboveTwelveFeet(t *testing.T) {
	in := simple()
	in.Site.PatioAppendix, in.Cover.HighEdge = new(true), new(12.5)
	_, err := cover.Size(in)
	assert.ErrorContains(t, err, "cover.high_edge_ft: 12.5 ft is not 12 ft or less")
	in.Site.PatioAppendix = nil
	size(t, in)
	in.Site.PatioAppendix, in.Cover.HighEdge = new(true), new(12.0)
	size(t, in)
}

// Trap: drift and sliding from the higher house roof forgotten. Without the house roof
// the report says that they are not computed; with it the ledger carries the triangle.
func TestTrapDriftFromTheHouseRoof(t *testing.T) {
	in := simple()
	assert.False(t, skipped(size(t, in), "drift"), "no snow, no drift")
	in.Site.RoofSnow, in.Site.GroundSnow, in.Site.GroundSnowBasis = new(28.0), new(30.0), new("ASCE 7-16")
	plain := size(t, in)
	assert.True(t, skipped(plain, "drift"))

	in.House.RoofEdge, in.House.RoofLength = new(*in.Cover.HighEdge+8), new(40.0)
	r := size(t, in)
	assert.False(t, skipped(r, "so drift is not computed"))
	// By hand, ASCE 7-16 7.7.1: hd = 0.43 · 40^(1/3) · 40^(1/4) − 1.5 = 2.198 ft, density
	// 0.13 · 30 + 14 = 17.9 pcf, peak 39.35 psf at the wall, width 4 hd = 8.793 ft.
	const peak, width = 39.350, 8.7932
	applied := 0.0
	for _, c := range r.Closure {
		if c.Case == "leeward drift" {
			applied = c.Applied
		}
	}
	calctest.Close(t, peak*width/2**in.Cover.Width, applied, 1e-4, 0)
	assert.Empty(t, plain.Loads.Heaps)
	require.Len(t, r.Loads.Heaps, 1)
	heap := r.Loads.Heaps[0]
	assert.Equal(t, "leeward drift", heap.Name)
	calctest.Close(t, peak, heap.Peak, 1e-4, 0)
	calctest.Close(t, width, heap.Reach, 1e-4, 0)
	calctest.Near(t, 0, heap.Far, 0)
	calctest.Close(t, 28, heap.Even, 1e-9, 0, "the roof snow that was given")
	// A triangle of resultant at a third of its width, on a span of 10 ft, for one rafter.
	spacing := *in.Rafters.Spacing / 12
	extra := peak * width / 2 * spacing * (1 - width/3/10)
	got := byCase(t, reaction(t, r, "ledger"), "snow with leeward drift") - byCase(t, reaction(t, r, "ledger"), "snow")
	calctest.Close(t, extra, got, 1e-3, 0)
	assert.Greater(t, reaction(t, r, "ledger").Down.Value, reaction(t, plain, "ledger").Down.Value)
}

// Trap: the least roof snow of a county taken where its ground snow asks for more: pf =
// 0.7 Ce Ct pg = 0.7 x 1.1 x 1.2 x 60 psf in sheltered terrain C (ASCE 7-16 eq. 7.3-1).
func TestTrapLeastRoofSnowBelowThatOfTheGround(t *testing.T) {
	in := simple()
	in.Site.RoofSnow, in.Site.GroundSnow, in.Site.GroundSnowBasis = new(30.0), new(60.0), new("ASCE 7-16")
	snow := loadCase(t, size(t, in), "snow, balanced")
	calctest.Near(t, 0.7*1.1*1.2*60, snow.Value, exact)
	assert.Contains(t, snow.Source, "ground_snow_psf")
	in.Site.GroundSnow = new(30.0)
	snow = loadCase(t, size(t, in), "snow, balanced")
	calctest.Near(t, 30, snow.Value, exact, "27.7 psf by the ground")
	assert.Equal(t, "input site.roof_snow_psf", snow.Source)
}

// Trap: ground snow of one edition put into the rules of the other, or no roof snow at all
// beside ground snow.
func TestTrapGroundSnowOfTheOtherEdition(t *testing.T) {
	cases := []struct {
		name, standard, basis string
		roof                  *float64
	}{
		{"newer maps, older rules", "ASCE 7-16", "ASCE 7-22", nil},
		{"older maps, newer rules", "ASCE 7-22", "ASCE 7-16", nil},
		{"no roof snow beside ground snow", "ASCE 7-16", "ASCE 7-16", new(0.0)},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			in := simple()
			in.Site.Standard, in.Site.GroundSnow, in.Site.GroundSnowBasis = &c.standard, new(30.0), &c.basis
			in.Site.RoofSnow = c.roof
			_, err := cover.Size(in)
			var faults *calc.InputError
			require.ErrorAs(t, err, &faults)
		})
	}
}

// Trap: dead load per slope taken per plan. On 6 in 12 it is 1.118 times as much on the
// plan, and roof live load and snow are not.
func TestTrapDeadLoadIsPerSlope(t *testing.T) {
	in := simple()
	in.Cover.Slope, in.Cover.HighEdge, in.Site.RoofSnow = new(6.0), new(14.0), new(20.0)
	r := size(t, in)
	slope := math.Hypot(1, 0.5)
	for _, c := range r.Closure {
		switch c.Case {
		case "roof live load", "snow":
			calctest.Close(t, 20*10*20, c.Applied, exact, 0, "20 psf of plan")
		case "dead load at its most":
			assert.Greater(t, c.Applied, 5*10*20*slope, "5 psf of slope and the wood")
		}
	}
	ledger := reaction(t, r, "ledger")
	calctest.Close(t, (5*2+weightOf2x8(19))*slope*10/2, byCase(t, ledger, "dead load at its most"), exact, 0, "per slope")
	calctest.Close(t, 20*2*10/2, byCase(t, ledger, "snow"), exact, 0, "per plan")
}

// Trap 14: the angle missing on roof live load. Per plan it acts across the rafter with its
// square of the cosine on each foot of slope, in vertical reactions with none; with the plan
// span in place of the slope a rafter would sag cos² too little, by hand a fifth at 6 in 12.
func TestTrapAngleMissingOnRoofLive(t *testing.T) {
	in := simple()
	in.Cover.Slope, in.Cover.HighEdge, in.Site.RoofLive = new(6.0), new(14.0), new(60.0)
	in.Rafters.Size = new("2x12")
	r := size(t, in)
	cos := 1 / math.Hypot(1, 0.5)
	calctest.Close(t, 60*2*10.0/2, byCase(t, reaction(t, r, "ledger"), "roof live load"), exact, 0, "w L / 2 with the plan length")
	bending := check(t, r, "R1", "bending")
	calctest.Close(t, 60*2*10*10.0/8*12, value(t, bending, "M_L"), exact, 0, "w cos² (L / cos)² / 8")
	shear := check(t, r, "R1", "shear")
	calctest.Close(t, 60*2*10.0/2*cos, value(t, shear, "V_L"), exact, 0, "across the rafter, the reaction times the cosine")
	w, inertia := 60*2.0/12, 1.5*11.25*11.25*11.25/12
	plan := 5 * w * math.Pow(120, 4) / (384 * 1.6e6 * inertia)
	sag := value(t, check(t, r, "R1", "live or snow deflection"), "delta")
	calctest.Close(t, plan/(cos*cos), sag, 1e-6, 0, "5 w cos² (L / cos)⁴ / 384EI")
	calctest.Close(t, 0.8, plan/sag, 1e-6, 0, "what the plan span would give")
	in.Site.RoofLive, in.Site.RoofLiveReducible = new(20.0), new(true)
	reduced := appliedUnder(t, size(t, in), "roof live load")
	calctest.Close(t, 20*(1.2-0.05*6)*20*10, reduced, exact, 0, "R2 of 6 in 12 is 0.9 (ASCE 7-16 4.8.2)")
}

// appliedUnder is what a load case puts on the whole roof, lb.
func appliedUnder(t testing.TB, r cover.Report, name string) float64 {
	t.Helper()
	for _, c := range r.Closure {
		if c.Case == name {
			return c.Applied
		}
	}
	t.Fatal("no case " + name)
	return 0
}

// Trap: the duration of the wind for a member that lives with less. The long-term
// checks and the check under dead load alone stand beside those with wind.
func TestTrapGravityIsCheckedWithoutWind(t *testing.T) {
	in := simple()
	in.Site.WindSpeed, in.Site.RoofLive = new(85.0), new(100.0)
	r := size(t, in)
	for _, mark := range []string{"R1", "BM1"} {
		bending := check(t, r, mark, "bending")
		assert.Equal(t, 1.25, value(t, bending, "C_D"), "%s: %s", mark, bending.Combination)
	}
}

// Trap: the uplift path ends at the ledger. A propped rafter pulls at the ledger too:
// the hanger and the ledger's fasteners have their own demand up and down.
func TestTrapUpliftReachesTheHouse(t *testing.T) {
	r := size(t, overhung())
	h, l := linkOf(t, r, "H1"), linkOf(t, r, "L1")
	assert.Positive(t, h.Up.Value)
	calctest.Close(t, h.Up.Value/2, l.Up.Value, exact, 0, "per foot of ledger at 2 ft spacing")
	assert.Positive(t, l.Out.Value, "and it is pulled from the wall")
	assert.NotEqual(t, cover.OK, l.Verdict, "the wall is not known")
	for _, link := range r.Links {
		assert.Positive(t, link.Up.Value, "%s %s", link.Mark, link.Name)
	}
}

// Trap: the open roof's wind below a cover that is screened or walled later. The roof then
// carries the inside pressure too, no tie asks for less, and the report is never OK.
func TestTrapScreenedCoverIsNotOpen(t *testing.T) {
	for _, sides := range []string{"screened", "walled"} {
		in := simple()
		assert.False(t, skipped(size(t, in), "close its sides"))
		in.Cover.Sides = &sides
		r := size(t, in)
		assert.True(t, skipped(r, "close its sides"), sides)
		assert.NotEqual(t, cover.OK, r.Verdict, sides)
		for _, mark := range []string{"T1", "C1", "F1"} {
			assert.GreaterOrEqual(t, rating(t, r, mark), rating(t, size(t, simple()), mark), sides)
		}
		names := ""
		for _, c := range r.Loads.Cases {
			names += c.Name + "\n"
		}
		assert.Contains(t, names, "as partially enclosed, up")
	}
}

// Trap: the two directions of the free roof figure taken the wrong way round. From 5
// degrees each case is carried with its halves exchanged too, so that neither reading is
// unsafe.
func TestTrapDirectionsOfTheFigureMisread(t *testing.T) {
	in := simple()
	in.Cover.Slope, in.Cover.HighEdge = new(2.0), new(11.0)
	cases := map[string]cover.LoadCase{}
	for _, c := range size(t, in).Loads.Cases {
		cases[c.Name] = c
	}
	pairs := 0
	for name, c := range cases {
		if exchanged, ok := cases[name+", halves exchanged"]; ok {
			pairs++
			calctest.Near(t, c.Value, exchanged.Second, 0, name)
			calctest.Near(t, c.Second, exchanged.Value, 0, name)
		}
	}
	assert.Equal(t, 8, pairs, "two directions, two cases, two flows")
}

// Trap: clear flow at the wall of a house, which takes a third off the uplift of wind
// along it (ASCE 7-16 Fig. 27.3-7: 0.8 for 1.2). It may be given, but not in silence.
func TestTrapClearFlowAtAWall(t *testing.T) {
	in := simple()
	in.Cover.Flow = new("clear")
	r := size(t, in)
	assert.True(t, skipped(r, "clear flow is given"))
	in.Cover.Flow = nil
	assert.False(t, skipped(size(t, in), "clear flow is given"))
	free := standing()
	free.Cover.Flow = new("clear")
	assert.False(t, skipped(size(t, free), "clear flow is given"))
}

// Trap: a load that nobody computed in a list at the end, and OK at the head of the report.
// What is open about the loads is a finding of its own, NOT CHECKED, whatever is OK beside.
func TestTrapOpenLoadsAreFindings(t *testing.T) {
	found := func(in cover.Input, about string) bool {
		return slices.ContainsFunc(size(t, in).Summary, func(f cover.Finding) bool {
			return f.Verdict == cover.NotChecked && strings.HasPrefix(f.Text, about+": ")
		})
	}
	for _, c := range []struct {
		about string
		open  func(*cover.Input)
	}{
		{"earthquake", func(in *cover.Input) { in.Site.SeismicMapped = nil }},
		{"snow from the house roof", func(in *cover.Input) { in.Site.RoofSnow = new(30.0) }},
		{"wind", func(in *cover.Input) { in.Cover.Sides = new("screened") }},
		{"wind below the roof", func(in *cover.Input) { in.Cover.Flow = new("clear") }},
	} {
		in := shaken("ASCE 7-16", 0)
		assert.False(t, found(in, c.about), c.about)
		c.open(&in)
		assert.True(t, found(in, c.about), c.about)
	}
}
