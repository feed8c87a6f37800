package member_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam"
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc/calctest"
)

// solved returns what loads of one combination cause in a member.
func solved(t testing.TB, length float64, supports []float64, stiffness float64, loads ...beam.Load) beam.Response {
	t.Helper()
	line, err := beam.NewLine(length, supports)
	require.NoError(t, err)
	p, err := beam.NewPlan(line, [][]beam.Load{loads})
	require.NoError(t, err)
	var r beam.Response
	p.Run([]float64{1}, stiffness, &r)
	return r
}

// A sloped rafter in closed form: plan loads bend it like its plan span, w L²/8, press
// on its supports square to it with V = R cos t, and let it sag by 5 w L⁴/(384 E I cos² t)
// square to itself; wind square to the slope acts on the sloped length.
func TestSlopedRafterClosedForm(t *testing.T) {
	for _, slope := range []float64{0, 4.76, 18.43, 30, 45} { // degrees: flat, 1, 4, 7 and 12 in 12
		const plan, w, stiffness = 144.0, 3.0, 6e7 // in; lb/in of plan; lb-in²
		cos := math.Cos(slope * math.Pi / 180)
		sloped := plan / cos
		r := solved(t, sloped, []float64{0, sloped}, stiffness, beam.Uniform(0, sloped, w*cos*cos))
		calctest.Close(t, w*plan*plan/8, r.Bays[1].MomentMax, 1e-12, 0, slope)
		calctest.Close(t, w*plan/2*cos, r.Bays[1].ShearMax, 1e-12, 0, slope)
		calctest.Close(t, 5*w*math.Pow(plan, 4)/(384*stiffness*cos*cos), r.Bays[1].DeflectionMax, 1e-10, 0, slope)
		wind := solved(t, sloped, []float64{0, sloped}, stiffness, beam.Uniform(0, sloped, w))
		calctest.Close(t, w*sloped*sloped/8, wind.Bays[1].MomentMax, 1e-12, 0, slope)
	}
}

// The sloped length is for wind and the plan span for dead and live load: to change them
// is wrong by 1/cos² of the slope, a third at 30 degrees.
func TestTrapSlopedLengthForPlanLoads(t *testing.T) {
	const plan, w, stiffness = 144.0, 3.0, 6e7 // in; lb/in of plan; lb-in²
	cos := math.Cos(math.Pi / 6)
	sloped := plan / cos
	right := solved(t, sloped, []float64{0, sloped}, stiffness, beam.Uniform(0, sloped, w*cos*cos))
	wrong := solved(t, sloped, []float64{0, sloped}, stiffness, beam.Uniform(0, sloped, w))
	calctest.Close(t, 4.0/3, wrong.Bays[1].MomentMax/right.Bays[1].MomentMax, 1e-12, 0)
	calctest.Close(t, w*plan/2, right.Reactions[0]/cos, 1e-12, 0, "the vertical reaction does not know the slope")
}

// The three patterns of a span with an overhang each govern something: all for the inner
// reaction, the span alone for its moment and sag, the overhang alone for its own moment,
// its tip, and the uplift at the far end.
func TestTrapOverhangPatternMissed(t *testing.T) {
	const span, over, w, stiffness = 96.0, 60.0, 5.0, 1e8
	supports := []float64{0, span}
	inner, outer := beam.Uniform(0, span, w), beam.Uniform(span, span+over, w)
	all := solved(t, span+over, supports, stiffness, inner, outer)
	only := solved(t, span+over, supports, stiffness, inner)
	tip := solved(t, span+over, supports, stiffness, outer)
	assert.Greater(t, all.Reactions[1], max(only.Reactions[1], tip.Reactions[1]))
	assert.Greater(t, only.Bays[1].MomentMax, all.Bays[1].MomentMax)
	assert.Greater(t, only.Bays[1].DeflectionMax, all.Bays[1].DeflectionMax)
	assert.Greater(t, tip.RightTip, all.RightTip)
	assert.Negative(t, tip.Reactions[0], "the far end lifts")
	calctest.Close(t, -w*over*over/(2*span), tip.Reactions[0], 1e-12, 0, "w2 a²/2L")
	calctest.Close(t, -w*over*over/2, tip.SupportMoments[1], 1e-12, 0, "w2 a²/2")
	calctest.Close(t, over*w*over*over*(4*span+3*over)/(24*stiffness), tip.RightTip, 1e-12, 0, "a w2 a² (4L+3a)/24EI")
	assert.Positive(t, all.Reactions[0], "hidden when all is loaded")
}

// A rafter held at its low end is pressed and bent, hung from its ledger pulled and bent:
// the held one is never used less, since its force makes the sag grow.
func TestRafterHeldLowOrHung(t *testing.T) {
	edge := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	flat := laid(t, edge)
	rapid.Check(t, func(t *rapid.T) {
		load := rapid.Float64Range(10, 900).Draw(t, "W")
		slope := rapid.Float64Range(1, 45).Draw(t, "theta")
		middle := load * math.Sin(slope*math.Pi/180) / 2 // lb, where the moment is largest
		stay := member.Stay{
			Column:  member.Column{Deep: member.Axis{Length: 144, Ends: member.PinnedPinned}, Thin: member.Axis{Held: true}},
			Bracing: member.Bracing{Held: true},
		}
		x := member.Actions{Force: middle, Edgewise: load * 144 / 8}
		low := member.NewCombined(x, edge, flat, lumber.SevenDays, stay)
		bare := member.NewBending(x.Edgewise, edge, lumber.SevenDays, stay.Bracing)
		x.Force = -middle
		hung := member.NewCombined(x, edge, flat, lumber.SevenDays, stay)
		if low.Ratio() < bare.Ratio() || hung.Ratio() < bare.Ratio() {
			t.Fatalf("bent only %v, held low %v, hung %v", bare.Ratio(), low.Ratio(), hung.Ratio())
		}
	})
}

// A 2x4 of Southern Pine No.2, 3 ft, under 900 lb, bent about both axes: example E1.8 of
// the AWC Structural Wood Design Examples 2015/2018, which prints 0.98.
func ExampleNewCombined() {
	s, err := lumber.SectionNamed("2x4")
	if err != nil {
		fmt.Println(err)
		return
	}
	values, err := lumber.Find("Southern Pine", "No.2", s)
	if err != nil {
		fmt.Println(err)
		return
	}
	edge, flat := lumber.Adjust(values, s, lumber.Use{}), lumber.Adjust(values, s, lumber.Use{Flat: true})
	axis := member.Axis{Length: 36, Ends: member.PinnedPinned}
	c := member.NewCombined(
		member.Actions{Force: 900, Edgewise: 1080, Flatwise: 1350}, &edge, &flat, lumber.TenMinutes,
		member.Stay{
			Column:  member.Column{Deep: axis, Thin: axis},
			Bracing: member.Bracing{Unbraced: 36, Loading: member.CenterUnbraced},
		})
	fmt.Printf("fc/Fc' %.3f, edgewise %.3f, flatwise %.3f\n", c.Compression.Ratio(), c.EdgePart, c.FlatPart)
	fmt.Printf("interaction %.2f\n", c.Sum)
	// Output:
	// fc/Fc' 0.255, edgewise 0.213, flatwise 0.698
	// interaction 0.98
}
