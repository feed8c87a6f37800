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

// Trap: a repetitive member factor of 1.15 on rafters that do not share their load:
// beyond 24 in. on center, or below slats (NDS 2018 4.3.9).
func TestTrapRepetitiveFactor(t *testing.T) {
	cases := []struct {
		name     string
		spacing  float64
		covering string
		width    float64
		want     float64
	}{
		{"three or more at 24 in. under a deck", 24, "solid", 20, 1.15},
		{"at 16 in. under a deck", 16, "solid", 20, 1.15},
		{"at 32 in. under a deck", 32, "solid", 20, 1},
		{"at 24 in. under lattice", 24, "lattice", 20, 1},
		{"at 16 in. under lattice", 16, "lattice", 20, 1},
		{"two rafters only", 24, "solid", 3, 1.15}, // 3 ft at 24 in. has three
		{"two rafters", 36, "solid", 3, 1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			in := simple()
			in.Rafters.Spacing, in.Cover.Covering, in.Cover.Width = &c.spacing, &c.covering, &c.width
			r := size(t, in)
			assert.Equal(t, c.want, value(t, check(t, r, "R1", "bending"), "C_r"), "NDS 2018 4.3.9")
			assert.Equal(t, 1.0, value(t, check(t, r, "BM1", "bending"), "C_r"), "never on a beam")
		})
	}
}

// Trap: the deck braces the top edge, so that under uplift CL is taken as 1. The
// bottom edge is free over the whole span, or between the braces that are given.
func TestTrapUpliftBottomEdgeUnbraced(t *testing.T) {
	in := overhung()
	in.Site.WindSpeed, in.Rafters.Size, in.Cover.Layers[0].Weight = new(170.0), new("2x10"), new(2.0)
	free := check(t, size(t, in), "R1", "bending")
	assert.Contains(t, free.Combination, "0.6D + 0.6W", "uplift governs here")
	assert.Less(t, value(t, free, "C_L"), 0.6, "a 2x10 over 10 ft")
	calctest.Close(t, 120*math.Hypot(1, 0.125/12), value(t, free, "l_u"), exact, 0, "the whole span, along the slope")

	in.Rafters.Brace = new(2.0)
	braced := check(t, size(t, in), "R1", "bending")
	assert.Less(t, braced.Ratio, free.Ratio)
	note := strings.Join(member(t, size(t, in), "R1").Notes, "; ")
	assert.Contains(t, note, "braced every 2'-0\"")
}

// Trap: the duration factor of the shortest load on everything. Dead load alone must
// pass at 0.9, dead and roof live at 1.25, dead and snow at 1.15 (NDS 2018 2.3.2).
func TestTrapEachCombinationHasItsOwnDuration(t *testing.T) {
	want := map[string]float64{
		"D": 0.9, "D + Lr": 1.25, "D + S": 1.15, "D + 0.6W": 1.6, "D + 0.75Lr + 0.75(0.6W)": 1.6,
		"D + 0.75S + 0.75(0.6W)": 1.6, "0.6D + 0.6W": 1.6,
	}
	in := simple()
	in.Site.RoofSnow, in.Cover.Layers[0].Weight, in.Rafters.Size = new(10.0), new(100.0), new("2x12")
	r := size(t, in)
	got := map[string]float64{}
	for _, c := range r.Loads.Combinations {
		if c.Used && c.Method == "ASD" {
			got[c.Name] = c.Duration
		}
	}
	assert.Equal(t, want, got, "NDS 2018 Table 2.3.2")
	heavy := check(t, r, "R1", "bending")
	assert.Equal(t, "D", heavy.Combination, "100 psf of dead load governs alone: 100/0.9 is more than 120/1.25")
	assert.Equal(t, 0.9, value(t, heavy, "C_D"))

	in = simple()
	in.Site.RoofSnow = new(60.0)
	snowy := check(t, size(t, in), "R1", "bending")
	assert.Equal(t, 1.15, value(t, snowy, "C_D"), snowy.Combination)
}

// Trap: deflection of live load only, without the creep of what lies there always
// (NDS 2018 3.5.2): 1.5 for wood that was dry, 2 for green or wet wood.
func TestTrapCreepOfLongTermLoad(t *testing.T) {
	cases := []struct {
		name       string
		green, wet bool
		want       float64
	}{
		{"dry", false, false, 1.5}, {"installed green", true, false, 2}, {"wet", false, true, 2}, {"both", true, true, 2},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			in := simple()
			in.Rafters.Green, in.Rafters.Wet = &c.green, &c.wet
			in.Beams.Green, in.Beams.Wet = &c.green, &c.wet
			r := size(t, in)
			for _, mark := range []string{"R1", "BM1"} {
				sag := check(t, r, mark, "long-term deflection")
				assert.Equal(t, c.want, value(t, sag, "K_cr"), "NDS 2018 3.5.2")
				lasting, variable := value(t, sag, "delta_LT"), value(t, sag, "delta_ST")
				calctest.Close(t, math.Abs(c.want*lasting+variable), sag.Check.Demand, exact, 0, "eq. 3.5-1")
				assert.NotZero(t, lasting)
			}
		})
	}
}

// Trap: lengths on plan and along the slope mixed up. On a slope of 6 in 12 a plan
// load bends the rafter as on its plan span, dead load by one over the cosine more, and
// deflection is judged on the slope.
func TestTrapSlopeAndPlanLengths(t *testing.T) {
	in := simple()
	in.Cover.Slope, in.Cover.HighEdge, in.Site.RoofLive = new(6.0), new(14.0), new(60.0)
	in.Rafters.Size = new("2x12")
	r := size(t, in)
	slope := math.Hypot(1, 0.5)
	density := 62.4 * 0.50 / (1 + 0.009*0.50*19) * 1.19
	dead := 5*2 + density*1.5*11.25/144 // plf of slope
	bending := check(t, r, "R1", "bending")
	assert.Equal(t, "D + Lr, all bays", bending.Combination)
	calctest.Close(t, (dead*slope+60*2)*100/8*12, value(t, bending, "M"), exact, 0, "(D/cos + Lr) L²/8")
	calctest.Close(t, 120*slope, value(t, check(t, r, "R1", "live or snow deflection"), "l"), exact, 0, "span along the slope")
	calctest.Close(t, (dead*slope+120)*10/2, reactionUnder(t, r, "H1", "D + Lr"), exact, 0, "the whole load on plan, halved")
	calctest.Close(t, 10*slope, member(t, r, "R1").Length, exact, 0, "cut length")

	q := velocityAt(t, r) * 0.85
	along := byCase(t, reaction(t, r, "BM1"), "wind along the house, case A, obstructed")
	calctest.Close(t, -1.2*q*2*10/2, along, exact, 0, "normal to the longer slope: its vertical part is that of the plan")
}

// velocityAt is the velocity pressure that the report derives, psf.
func velocityAt(t testing.TB, r cover.Report) float64 {
	t.Helper()
	for _, d := range r.Loads.Derivations {
		for _, l := range d.Lines {
			if l.Symbol == "q_h" {
				return l.X
			}
		}
	}
	t.Fatal("no velocity pressure")
	return 0
}

// reactionUnder is the largest downward demand on a link under one combination, lb.
func reactionUnder(t testing.TB, r cover.Report, mark, combination string) float64 {
	t.Helper()
	most := 0.0
	for _, d := range linkOf(t, r, mark).Demands {
		if name, _, _ := strings.Cut(d.Combination, ", "); name == combination {
			most = max(most, d.Vertical)
		}
	}
	return most
}

// Trap: live load always on the whole rafter. The span sags more with the overhang
// bare, the tip counts twice its length, and a worker at the tip lifts the inner end.
func TestTrapOverhangPattern(t *testing.T) {
	in := overhung()
	in.Site.RoofLive, in.Cover.Overhang, in.Cover.Projection = new(60.0), new(3.0), new(13.0)
	r := size(t, in)
	assert.Equal(t, "D + Lr, alternate bays from the first", check(t, r, "R1", "bending").Combination)
	whole, bare := ledgerEnd(60, 2, 10, 3), 60*2*10/2.0
	assert.Greater(t, bare, whole)
	calctest.Close(t, bare, byCase(t, reaction(t, r, "ledger"), "roof live load"), exact, 0, "the overhang is bare")

	in.Cover.Projection, in.Cover.Overhang = new(12.0), new(6.0)
	tip := check(t, size(t, in), "R1", "live or snow deflection")
	assert.Equal(t, "overhang at the end", tip.Where)
	calctest.Close(t, 2*72*math.Hypot(1, 0.125/12)/240, tip.Check.Capacity, exact, 0, "IBC 2018 Table 1604.3 note: twice its length")
}

// Trap: negative reactions at the ledger ignored. With 6 ft beyond a span of 6 ft the
// dead load gives the ledger nothing and a worker of 300 lb at the tip lifts it by 300
// lb, which asks for a tie of 300 x 1.6/1.25 lb (NDS 2018 11.3.2: its rating is for wind).
func TestTrapWorkerAtTheTipLiftsTheInnerEnd(t *testing.T) {
	in := overhung()
	in.Cover.Projection, in.Cover.Overhang, in.Site.WindSpeed = new(12.0), new(6.0), new(85.0)
	r := size(t, in)
	h := linkOf(t, r, "H1")
	calctest.Near(t, 300, h.Up.Value, 1e-6, "300 a / L, dead load balanced")
	assert.Equal(t, "D + 300 lb at the tip", h.Up.Combination)
	calctest.Near(t, 400, h.Rating, 1e-6, "384 lb rounded up to 25 lb")
	for _, mark := range []string{"L1", "W1"} {
		most := 0.0
		for _, q := range linkOf(t, r, mark).Demands {
			most = min(most, q.Single)
		}
		calctest.Near(t, -300, most, 1e-6, "%s: the path goes on into the house, at one place", mark)
	}
	assert.Contains(t, linkOf(t, r, "W1").Reason, "300 lb more down at any one place, or 300 lb more up")
	calctest.Near(t, 200, linkOf(t, r, "L1").Rating, 1e-6, "192 lb a foot, rounded up")
	assert.NoError(t, calctest.Prove(h.Calculation.Lines))
}

// Trap: a worker who only ever stands at mid span. Over the support the joint takes all
// of the 300 lb, more than its share of 20 psf (ASCE 7-16 4.3.1: where it does most harm).
func TestTrapWorkerOverTheSupport(t *testing.T) {
	in := simple()
	in.Rafters.Spacing, in.Site.WindSpeed = new(12.0), new(85.0)
	r := size(t, in)
	dead := byCase(t, reaction(t, r, "ledger"), "dead load at its most")
	for mark, at := range map[string]string{"H1": "the ledger", "T1": "beam line BM1"} {
		down := linkOf(t, r, mark).Down
		calctest.Near(t, 300+dead, down.Value, 1e-6, "all of it on one rafter")
		assert.Equal(t, "D + 300 lb at "+at, down.Combination)
	}
}

// Trap: a beam that only ever carries the strip of the roof. Where that is narrow and the
// bay long, a worker in the middle asks more: P L / 4 against w L^2 / 8.
func TestTrapWorkerOnTheBeam(t *testing.T) {
	in := simple()
	in.Cover.Projection, in.Site.WindSpeed, in.Cover.Covering = new(4.0), new(85.0), new("lattice")
	in.Site.PatioAppendix, in.Site.RoofLive = new(true), new(10.0)
	c := check(t, size(t, in), "BM1", "bending")
	assert.Equal(t, "D + 300 lb at mid span, span 1", c.Combination)
	at := slices.IndexFunc(c.Check.Lines, func(l calc.Line) bool { return l.Symbol == "M_L" })
	require.GreaterOrEqual(t, at, 0)
	moment := c.Check.Lines[at].X
	calctest.Near(t, 300*240/4, moment, 1e-6, "P L / 4 on two posts 20 ft apart")
	assert.Greater(t, moment, 10.0/144*24*240*240/8, "w L^2 / 8 of half the projection")
}

// Trap: posts in the ground taken as dry because the roof is solid and the climate dry.
// Where they bend most they are wet, and incised for their treatment (NDS 2018 4.1.4).
func TestTrapPostsInTheGroundAreWet(t *testing.T) {
	in := simple()
	in.Foundation.Kind = new("embedded")
	full, _ := in.Assume()
	assert.True(t, *full.Posts.Wet && *full.Posts.Incised)
	assert.False(t, *full.Beams.Wet)
	in.Posts.Wet = new(false)
	full, _ = in.Assume()
	assert.False(t, *full.Posts.Wet, "what is said stands")
}

// Trap: incising forgotten on wood in the rain. What lies below open lattice is treated, and
// Douglas Fir takes it through slits: 0.80 on Fb (NDS 2018 Table 4.3.8).
func TestTrapIncisedBelowLattice(t *testing.T) {
	in := simple()
	in.Cover.Covering = new("lattice")
	full, _ := in.Assume()
	assert.True(t, *full.Rafters.Incised && *full.Beams.Incised && *full.Posts.Incised)
	in.Beams.Species = new("Southern Pine")
	full, _ = in.Assume()
	assert.False(t, *full.Beams.Incised, "takes treatment without slits")
	in.Cover.Covering = new("solid")
	full, _ = in.Assume()
	assert.False(t, *full.Rafters.Incised, "dry")
}

// Trap: the pressures of the edge strip on the edge rafter alone, which has half a width.
// The strip is 3 ft wide or more (ASCE 7-16 Fig. 30.7-1 notes), so that at 16 in. the
// second rafter lies in it with a full width, and beyond 6 ft on center none does.
func TestTrapSecondRafterInTheEdgeStrip(t *testing.T) {
	for _, c := range []struct{ spacing, part float64 }{{12, 1}, {16, 1}, {24, 1}, {32, 20.0 / 32}, {48, 12.0 / 48}} {
		in := overhung()
		in.Rafters.Spacing, in.Cover.Width = &c.spacing, new(24.0) // whole spaces
		r, s := size(t, in), c.spacing/12
		ledger, side := reaction(t, r, "ledger"), 0.0
		inner := byCase(t, ledger, "inner rafter, zones 2 and 1 up")
		for _, x := range ledger.ByCase {
			if strings.HasPrefix(x.Case, "rafter in the side strip") && strings.HasSuffix(x.Case, "up") {
				side = x.Force
			}
		}
		// zone 3 and zone 2 are alike in this class of area: q G CN on all of its length
		class := -inner / ledgerEnd(1, s, 10, 2)
		full := pressureUp(t, r, "in an edge strip")
		calctest.Close(t, -(full*c.part+class*(1-c.part))*ledgerEnd(1, s, 10, 2), side, exact, 0, c.spacing)
		assert.GreaterOrEqual(t, linkOf(t, r, "H1").Rating, -0.6*side-0.6*byCase(t, ledger, "dead load at its least"))
	}
}

// pressureUp is the upward pressure that a derivation of wind on a rafter ends with, psf.
func pressureUp(t testing.TB, r cover.Report, title string) float64 {
	t.Helper()
	for _, d := range r.Loads.Derivations {
		if strings.Contains(d.Title, title) {
			return d.Lines[len(d.Lines)-1].X
		}
	}
	t.Fatal("no derivation " + title)
	return 0
}
