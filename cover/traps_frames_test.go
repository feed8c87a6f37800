package cover_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// steep is the simple cover with a fall of some inches per foot.
func steep(fall float64) cover.Input {
	in := simple()
	in.Cover.Slope, in.Cover.HighEdge = &fall, new(14.0)
	return in
}

// tilt is the angle of a fall in inches per foot.
func tilt(fall float64) float64 { return math.Atan(fall / 12) }

// none reports that a member has no check of the name.
func none(t testing.TB, r cover.Report, mark, name string) bool {
	t.Helper()
	for _, c := range member(t, r, mark).Checks {
		if c.Name == name {
			return false
		}
	}
	return true
}

// Trap: shear within a depth of the support left out where the rafter hangs from a
// hanger, and the reaction with it (NDS 2018 3.4.3.1 is for members on a bearing). The
// shear of a simple rafter is half of all that acts across it.
func TestTrapShearNotReducedAtHangers(t *testing.T) {
	in := simple()
	in.Site.RoofLive = new(60.0)
	r := size(t, in)
	c := check(t, r, "R1", "shear")
	require.Equal(t, "D + Lr, all bays", c.Combination)
	slope, s := math.Hypot(1, 0.125/12), 2.0
	dead := (5 + weightOf2x8(19)/s) * slope
	calctest.Close(t, (dead+60)*s*10/2*math.Cos(tilt(0.125)), value(t, c, "V"), exact, 0, "w L / 2 cos, lb")
	assert.Equal(t, 1.5, value(t, check(t, r, "R1", "bearing"), "l_b"), "a hanger, IRC 2021 R802.6")
}

// Trap: a seat cut at the low end of a rafter checked with the depth that is left, but
// without the square of its part of the depth (NDS 2018 eq. 3.4-3).
func TestTrapSeatCutShear(t *testing.T) {
	r := size(t, steep(3))
	cos, full := math.Cos(tilt(3)), 5.5*3/12 // in, plumb, on a dressed 6x16
	left := 7.25 - full*cos
	c := check(t, r, "R1", "shear at the cut")
	calctest.Close(t, left, value(t, c, "d_n"), exact, 0, "the whole breadth of the beam")
	strength := value(t, c, "Fv_adj")
	calctest.Close(t, 2.0/3*strength*1.5*left*left*left/7.25/7.25, value(t, c, "V_r"), exact, 0, "NDS 2018 eq. 3.4-3")
	calctest.Close(t, 7.25/4, value(t, c, "cut_max"), exact, 0, "d/4")
	assert.True(t, none(t, r, "R1", "bending at the cut"), "no moment at the end")
}

// Trap: a seat cut deeper than a quarter of the depth at an end, or than a sixth over a
// support that the rafter runs beyond (NDS 2018 4.4.3).
func TestTrapSeatCutTooDeep(t *testing.T) {
	in := steep(3)
	in.Rafters.SeatCut = new(2.0) // 1.94 in across, above 7.25/4 = 1.81
	assert.Equal(t, cover.Over, check(t, size(t, in), "R1", "shear at the cut").Verdict)

	over := overhung()
	over.Cover.Slope, over.Cover.HighEdge, over.Rafters.SeatCut = new(3.0), new(14.0), new(1.3) // in, above 7.25/6
	c := check(t, size(t, over), "R1", "bending at the cut")
	assert.Equal(t, cover.Over, c.Verdict)
	assert.Contains(t, c.Combination, "0.6D + 0.6W", "uplift stretches the face with the cut")
	calctest.Close(t, 7.25/6, value(t, c, "cut_max"), exact, 0, "d/6")
	over.Rafters.SeatCut = nil
	c = check(t, size(t, over), "R1", "bending at the cut")
	assert.LessOrEqual(t, c.Ratio, cover.Ratio(1), "by itself no deeper than allowed")
	calctest.Close(t, 7.25/6, value(t, c, "cut"), exact, 0, "the seat is shorter than the beam is wide")
	bed := check(t, size(t, over), "R1", "bearing on the beam")
	calctest.Close(t, 7.25/6/math.Sin(tilt(3)), value(t, bed, "w_b"), exact, 0, "cut / sin")
}

// Trap: the moment of an overhang checked on the whole depth though the seat cut takes
// from the rafter at just that place. The moment is that of dead and live load on the
// overhang, w a² / 2; the section is what the cut leaves.
func TestTrapOverhangMomentAtTheCut(t *testing.T) {
	in := overhung()
	in.Cover.Slope, in.Cover.HighEdge, in.Rafters.SeatCut = new(2.0), new(12.0), new(1.0)
	in.Site.WindSpeed = new(85.0)
	in.Cover.Flow = new("clear")
	r := size(t, in)
	c := check(t, r, "R1", "bending at the cut")
	require.Equal(t, "at beam line BM1", c.Where)
	calctest.Close(t, 7.25-math.Cos(tilt(2)), value(t, c, "d_n"), exact, 0, "7.25 in less the cut")
	assert.Greater(t, float64(c.Ratio), 0.0)
	whole := 1.5 * 7.25 * 7.25 / 6
	assert.Less(t, value(t, c, "S_n"), whole*0.75, "the section at the cut")
}

// Trap: the pattern with live load on the overhang alone missed. It brings the largest
// moment over the beam, w a² / 2 with live load, and tilts the inner end up.
func TestTrapOverhangPatterns(t *testing.T) {
	in := overhung()
	in.Cover.Projection, in.Cover.Overhang, in.Rafters.SeatCut = new(14.0), new(4.0), new(0.1)
	in.Rafters.Size, in.Site.RoofLive = new("2x12"), new(100.0)
	in.Site.WindSpeed = new(85.0)
	r := size(t, in)
	c := check(t, r, "R1", "bending at the cut")
	require.True(t, strings.HasPrefix(c.Combination, "D + Lr"), c.Combination)
	calctest.Close(t, -100*2*4*4/2.0*12*math.Cos(tilt(0.125))*math.Cos(tilt(0.125))*math.Pow(math.Hypot(1, 0.125/12), 2),
		value(t, c, "M_L"), exact, 0, "w a²/2, lb-in")
	tip := check(t, r, "R1", "live or snow deflection")
	assert.Equal(t, "overhang at the end", tip.Where, "the tip, against 2a / 240")
	assert.Equal(t, "live or snow on alternate bays from the second", tip.Combination)

	span := reaction(t, r, "ledger")
	dead := byCase(t, span, "dead load at its most")
	live := 100 * 2 * 4 * 4 / (2 * 10.0) // lb up at the inner end under live load on the overhang
	worst := math.Inf(1)
	for _, d := range linkOf(t, r, "H1").Demands {
		if strings.HasPrefix(d.Combination, "D + Lr") {
			worst = min(worst, d.Vertical)
		}
	}
	assert.Greater(t, worst, dead-live-1e-6, "what lies on the span presses more")
}

// Trap: the length along the slope used for loads on plan, or that on plan for wind,
// which acts across the roof. At 6 in. per ft a 10 ft rafter is 11.18 ft long.
func TestTrapSlopedSpans(t *testing.T) {
	in := steep(6)
	in.Cover.WindView = new("overhang") // one pressure all over
	in.Rafters.Size, in.Site.RoofLive = new("2x10"), new(60.0)
	r := size(t, in)
	const plan, s = 10.0, 2.0
	along := plan / math.Cos(tilt(6))
	live := check(t, r, "R1", "bending")
	require.True(t, strings.HasPrefix(live.Combination, "D + Lr"), live.Combination)
	calctest.Close(t, 60*s*plan*plan/8*12, value(t, live, "M_L"), exact, 0, "w L²/8 with the plan length")
	gust := check(t, r, "R1", "deflection under wind")
	pressure := 0.0
	for _, c := range r.Loads.Cases {
		if strings.Contains(c.Name, "up") && strings.Contains(c.Name, "overhang") {
			pressure = max(pressure, math.Abs(c.Value))
		}
	}
	inertia := 1.5 * 9.25 * 9.25 * 9.25 / 12
	modulus := 1.6e6 // DF-L No.2, NDS Supplement 2018 Table 4A
	want := 5 * pressure * s / 12 * math.Pow(along*12, 4) / (384 * modulus * inertia)
	calctest.Close(t, want, value(t, gust, "delta_W"), 1e-6, 0, "5 w L⁴/384EI with the sloped length")
	calctest.Close(t, 0.42*want, value(t, gust, "delta"), 1e-6, 0, "IBC 2018 Table 1604.3 note f")
}

// The force along a steep rafter by hand: all that acts vertically times the sine, in
// both readings; the interaction is that of NDS 2018 3.9.
func TestForceAlongTheSlopeByHand(t *testing.T) {
	in := steep(12)
	in.Rafters.Size, in.Cover.Projection, in.Cover.HighEdge = new("2x8"), new(8.0), new(18.0)
	r := size(t, in)
	c := check(t, r, "R1", "bending with force along the slope")
	sin := math.Sin(math.Pi / 4)
	along := 8 * math.Sqrt2
	weight := 2*5*along + weightOf2x8(19)*along
	symbol := "P"
	if none := value(t, c, "interaction"); none == 0 {
		t.Fatal("no interaction")
	}
	for _, l := range c.Check.Lines {
		if l.Symbol == "T" && l.Formula == "W_v * sin_theta" {
			symbol = "T"
		}
	}
	if strings.HasPrefix(c.Combination, "D + Lr") {
		calctest.Close(t, (weight+20*2*8)*sin, value(t, c, symbol), 1e-9, 0, "W sin")
	}
	assert.GreaterOrEqual(t, value(t, c, symbol), (weight+0.75*20*2*8)*sin*(1-1e-9))
	assert.Greater(t, float64(c.Ratio), float64(check(t, r, "R1", "bending").Ratio))
}

// A rafter below slats, too slender sideways to be pressed, must be held at its high end.
func TestSlenderRaftersHang(t *testing.T) {
	in := simple()
	in.Cover.Covering = new("lattice")
	r := size(t, in)
	assert.Contains(t, strings.Join(member(t, r, "R1").Notes, "; "), "hangers or ties must hold that force at the high end")
	c := check(t, r, "R1", "bending with force along the slope")
	assert.Less(t, float64(c.Ratio), 10.0, "pulled, not pressed")
	for _, l := range c.Check.Lines {
		assert.NotEqual(t, "C_P", l.Symbol)
	}
}

// Trap: span tables look at live load alone. Under a heavy roof the sag that is seen is
// that of the dead load with its creep, and it may be over where the live load passes.
func TestTrapHeavyRoofSags(t *testing.T) {
	in := simple()
	in.Cover.Layers[0].Weight, in.Rafters.Green, in.Rafters.Size = new(25.0), new(true), new("2x8")
	r := size(t, in)
	live, long := check(t, r, "R1", "live or snow deflection"), check(t, r, "R1", "long-term deflection")
	assert.Equal(t, 2.0, value(t, long, "K_cr"), "NDS 2018 3.5.2")
	assert.Greater(t, value(t, long, "delta_T"), 2*value(t, live, "delta"))
	assert.Greater(t, long.Ratio, live.Ratio)
	code := check(t, r, "R1", "dead plus live deflection by the code")
	assert.Equal(t, 1.0, value(t, code, "k_creep"), "IBC 2018 Table 1604.3 note d, installed green")
	calctest.Close(t, value(t, long, "delta_LT"), value(t, code, "delta_D"), 1e-6, 0, "the same dead load")
	calctest.Close(t, 120.0/120, value(t, code, "allowed")/math.Hypot(1, 0.125/12), exact, 0, "10 ft / 120, no ceiling")
}

// Trap: nominal sizes in formulas.
func TestTrapDressedSizes(t *testing.T) {
	r := size(t, steep(3))
	c := check(t, r, "R1", "bending")
	assert.Equal(t, 1.5, value(t, c, "b"))
	assert.Equal(t, 7.25, value(t, c, "d"))
	bed := check(t, r, "R1", "bearing on the beam")
	calctest.Close(t, 5.5, value(t, bed, "w_b"), exact, 0, "a dressed 6x16")
	calctest.Close(t, 1.5, value(t, bed, "l_b"), exact, 0, "a dressed 2x8")
}

// The seat of a sloped rafter takes its load at an angle to the grain (NDS 2018 3.10.3).
func TestLevelSeatAtAnAngle(t *testing.T) {
	c := check(t, size(t, steep(3)), "R1", "bearing")
	if c.Where == "at beam line BM1" {
		calctest.Close(t, 90-tilt(3)*180/math.Pi, value(t, c, "theta"), exact, 0, "90 degrees less the slope")
		calctest.Close(t, value(t, c, "R_n")/math.Cos(tilt(3)), value(t, c, "R"), exact, 0, "vertical")
		return
	}
	assert.Equal(t, "at the ledger", c.Where)
	assert.Equal(t, 1.5, value(t, c, "l_b"))
}

// A notch in the underside of the beams: a quarter of the depth at the ends, and where a
// thick beam is lifted between its ends, none at all.
func TestBeamNotches(t *testing.T) {
	in := simple()
	in.Beams.Notch = new(4.5)
	assert.Equal(t, cover.Over, check(t, size(t, in), "BM1", "shear at the cut").Verdict, "above 15.5 / 4")
	in.Beams.Notch = new(1.0)
	r := size(t, in)
	assert.Equal(t, cover.OK, check(t, r, "BM1", "shear at the cut").Verdict)
	calctest.Close(t, 14.5, value(t, check(t, r, "BM1", "shear at the cut"), "d_n"), exact, 0, "15.5 - 1 in")
	in.Posts.Count, in.Site.WindSpeed = new(3), new(150.0)
	c := check(t, size(t, in), "BM1", "bending at the cut")
	assert.Equal(t, cover.Over, c.Verdict, "lifted over the middle post: NDS 2018 4.4.3")
	assert.True(t, none(t, size(t, simple()), "BM1", "shear at the cut"))
}

// Trap: a beam that hangs from bolts in the side of its posts checked for shear as if it
// sat on them. Only the depth from the top edge down to the lowest bolt carries, with the
// square of its part of the depth near the end (NDS 2018 eq. 3.4-6).
func TestTrapBeamBoltedToPosts(t *testing.T) {
	in := simple()
	in.Beams.OnPost, in.Beams.BoltLow, in.Beams.BoltHigh = new("side_bolted"), new(5.0), new(12.0)
	r := size(t, in)
	c := check(t, r, "BM1", "shear at the fasteners")
	require.Equal(t, 5.0, value(t, c, "y"), c.Combination)
	depth := 15.5 - 5
	want := 2.0 / 3 * value(t, c, "Fv_adj") * 5.5 * depth * math.Pow(depth/15.5, 2)
	calctest.Close(t, want, value(t, c, "V_r"), exact, 0, "NDS 2018 eq. 3.4-6")
	calctest.Close(t, value(t, check(t, r, "BM1", "shear"), "V"), value(t, c, "V"), exact, 0, "all of the shear")
	assert.Contains(t, strings.Join(member(t, r, "BM1").Notes, "; "), "more than 5 in apart")
	in.Beams.BoltLow = new(12.0)
	assert.Greater(t, check(t, size(t, in), "BM1", "shear at the fasteners").Ratio, c.Ratio, "a higher bolt holds less")
	assert.True(t, none(t, size(t, simple()), "BM1", "shear at the fasteners"))
}

// Green lumber says how much it will shrink (0.215 % of its width for each percent of
// moisture between the fitted ends).
func TestGreenMembersShrink(t *testing.T) {
	in := simple()
	in.Rafters.Green, in.Beams.Green = new(true), new(false)
	r := size(t, in)
	assert.Contains(t, strings.Join(member(t, r, "R1").Notes, "; "), "drying from 28 to 8 % it loses about 0.32 in of its depth")
	assert.NotContains(t, strings.Join(member(t, r, "BM1").Notes, "; "), "Installed green")
}

// A beam that nothing but its posts holds outward bends about its weak axis under wind on
// a steep roof: by the tangent of the slope times the moment of the vertical part, which
// here is w L²/8 from rafters that nearly fill the span.
func TestBeamsBendBothWays(t *testing.T) {
	in := steep(6)
	in.Cover.WindView = new("overhang") // one pressure all over
	in.Lateral.Out, in.Posts.Count = new("embedded_posts"), new(2)
	r := size(t, in)
	c := check(t, r, "BM1", "bending both ways")
	calctest.Close(t, 0.6*0.5*value(t, c, "M_wind"), value(t, c, "M_side"), exact, 0, "0.6 tan")
	one := 0.0
	for _, by := range reaction(t, r, "BM1").ByCase {
		if strings.Contains(by.Case, "overhang of the house roof") {
			one = max(one, math.Abs(by.Force))
		}
	}
	calctest.Close(t, one/2*20*20/8*12, value(t, c, "M_wind"), exact, 0, "w L²/8 with a rafter at mid span, lb-in")
	assert.Greater(t, float64(c.Ratio), 0.0)
	in.Lateral.Out = new("house_diaphragm")
	assert.True(t, none(t, size(t, in), "BM1", "bending both ways"), "the house holds the rafters")
}

// The rafters at the side edges carry their own strip: with all else even, half of what
// an inner one carries, but their own weight in full.
func TestEdgeRafters(t *testing.T) {
	in := simple()
	in.Site.RoofLive = new(60.0)
	r := size(t, in)
	inner, edge := check(t, r, "R1", "shear"), check(t, r, "R2", "shear")
	calctest.Close(t, value(t, inner, "V_L")/2, value(t, edge, "V_L"), exact, 0, "half of the tributary width")
	own := weightOf2x8(19) * math.Hypot(1, 0.125/12) * 10 / 2 * math.Cos(tilt(0.125))
	calctest.Close(t, (value(t, inner, "V_D")-own)/2+own, value(t, edge, "V_D"), exact, 0, "the whole of its own weight")
	assert.Equal(t, 2, member(t, r, "R2").Count)
	assert.Equal(t, 11-2, member(t, r, "R1").Count)
	assert.LessOrEqual(t, member(t, r, "R2").Ratio, member(t, r, "R1").Ratio)
}

// Trap: a rafter just over the splice of a beam given to one stick alone. It may rest on
// either, so that both seats must carry it, and the post carries it once.
func TestTrapRafterOverTheSplice(t *testing.T) {
	in := simple()
	in.Posts.Count, in.Beams.Splices = new(3), new("every_post") // the middle post at 10 ft, under a rafter
	r := size(t, in)
	seat := check(t, r, "P", "beam seat on the post")
	bm := reaction(t, r, "BM1")
	rafter := byCase(t, bm, "dead load at its most") + byCase(t, bm, "roof live load")
	post := reaction(t, r, "P2")
	whole := byCase(t, post, "dead load at its most") + byCase(t, post, "roof live load")
	want := (whole-rafter)/2 + rafter
	if strings.HasPrefix(seat.Combination, "D + Lr") {
		calctest.Close(t, want, value(t, seat, "R"), 1e-9, 0, "half of the rest, and the rafter")
	} else {
		assert.GreaterOrEqual(t, value(t, seat, "R"), want*(1-1e-9))
	}
	notes := strings.Join(member(t, r, "BM1").Notes, "; ")
	assert.Contains(t, notes, "Piece 1, from 0'-0\" to 10'-0\": OK")
	assert.Contains(t, notes, "Piece 2, from 10'-0\" to 20'-0\": OK")
}

// Sprinklers wet the posts under any roof; the seat cut makes them a little longer.
func TestServiceAndLengthOfPosts(t *testing.T) {
	in := simple()
	assert.Equal(t, 1.0, value(t, check(t, size(t, in), "P", "compression with buckling"), "C_M"), "dry under a solid roof")
	in.Site.Sprinklers = new(true)
	c := check(t, size(t, in), "P", "compression with buckling")
	assert.Equal(t, 0.91, value(t, c, "C_M"), "wet timbers, NDS Supplement 2018 Table 4D")

	level := member(t, size(t, steep(3)), "P").Length * 12
	cos := math.Cos(tilt(3))
	low := 14*12 - 10*3.0 - 7.25/cos - 15.5 // to the underside of the beam below uncut rafters
	assert.GreaterOrEqual(t, level, low+5.5*3/12/2*(1-1e-9), "half of the heel on a 6x16")
	assert.Less(t, level, low+1.5)
	in = steep(3)
	in.Rafters.SeatCut = new(0.0)
	calctest.Close(t, low, member(t, size(t, in), "P").Length*12, 1e-9, 0, "no cut")
}
