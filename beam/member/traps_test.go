package member_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// A deck on top does not brace the bottom edge, which net uplift compresses: C_L
// of a 2x rafter over 12 ft is well under 0.5, not 1.
func TestTrapUpliftBottomEdgeUnbraced(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "2x8", lumber.Use{Repetitive: true})
	down := member.NewBending(10_000, a, lumber.SevenDays, member.Bracing{Held: true})
	up := member.NewBending(-10_000, a, lumber.TenMinutes, member.Bracing{Unbraced: 144, Loading: member.UniformSpan})
	assert.Equal(t, 1.0, down.Stability)
	assert.Less(t, up.Stability, 0.5, "12 ft without bottom bracing")
	assert.Less(t, up.Allowable, down.Allowable, "in spite of C_D 1.6 over 1.25")
}

// R_B takes l_e, and l_e is never shorter than l_u on a span; a long cantilever
// under uniform load is the only row that comes below it.
func TestTrapEffectiveLengthNotShorter(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "4x10", lumber.Use{})
	for _, load := range allLoadings {
		for _, lu := range []float64{10, 60, 64.75, 120, 132.3, 240} {
			b := member.NewBending(1, a, lumber.TenYears, member.Bracing{Unbraced: lu, Loading: load})
			assert.Greater(t, b.Effective, lu, "%v, lu %v", load, lu)
			assert.Greater(t, b.Slenderness, math.Sqrt(lu*9.25/(3.5*3.5)), "%v, lu %v", load, lu)
		}
	}
}

// C_D is on Fb, Fv, Ft and Fc, never on Fc_perp, E or Emin.
func TestTrapDurationOnBearingAndStiffness(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "4x6", lumber.Use{})
	wind, normal := lumber.TenMinutes, lumber.TenYears
	held, seat := member.Bracing{Held: true}, member.Seat{Width: 3.5, Length: 3.5}
	for name, ratio := range map[string]float64{
		"bending": member.NewBending(1, a, wind, held).Allowable / member.NewBending(1, a, normal, held).Allowable,
		"shear":   member.NewShear(1, a, wind).Allowable / member.NewShear(1, a, normal).Allowable,
		"tension": member.NewTension(1, 9, a, wind).Allowable / member.NewTension(1, 9, a, normal).Allowable,
		"end":     member.NewEndBearing(1, 9, a, wind, true).Allowable / member.NewEndBearing(1, 9, a, normal, true).Allowable,
	} {
		calctest.Close(t, 1.6, ratio, 1e-12, 0, name, "NDS 2018 Table 4.3.1")
	}
	for _, l := range member.NewBearing(1, a, seat).Explain().Lines {
		assert.NotEqual(t, "C_D", l.Symbol, "bearing takes no C_D")
	}
	long := member.Axis{Length: 160, Ends: member.PinnedPinned}
	post := member.Column{Deep: long, Thin: long}
	first, second := member.NewCompression(1, a, normal, post), member.NewCompression(1, a, wind, post)
	assert.Equal(t, first.Critical, second.Critical, "F_cE holds Emin, without C_D")
	slanted := member.NewBearingAtAngle(1, a, wind, seat, 90)
	calctest.Close(t, 405, slanted.Allowable, 1e-12, 0, "perpendicular to grain C_D has no say")
}

// Dead load alone at C_D 0.9 governs when D exceeds 0.72 of D + Lr at 1.25.
func TestTrapDeadLoadAloneAtItsOwnDuration(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	held := member.Bracing{Held: true}
	for _, c := range []struct {
		part float64 // D over D + Lr
		dead bool    // D alone governs
	}{{0.70, false}, {0.74, true}} {
		alone := member.NewBending(c.part*10_000, a, lumber.Permanent, held)
		both := member.NewBending(10_000, a, lumber.SevenDays, held)
		assert.Equal(t, c.dead, alone.Ratio() > both.Ratio(), "D is %v of D + Lr", c.part)
	}
}

// F_bE and F_cE hold Emin with 1.20 and 0.822; E would be 2.7 times too strong.
func TestTrapMeanModulusInBuckling(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.1", "4x10", lumber.Use{})
	b := member.NewBending(1, a, lumber.TenYears, member.Bracing{Unbraced: 240, Loading: member.UniformSpan})
	calctest.Close(t, 1.20*620_000, b.Critical*b.Slenderness*b.Slenderness, 1e-9, 0, "NDS 2018 3.3.3.8")
	x := member.Axis{Length: 120, Ends: member.PinnedPinned}
	c := member.NewCompression(1, a, lumber.TenYears, member.Column{Deep: x, Thin: x})
	calctest.Close(t, 0.822*620_000, c.Critical*c.Slenderness*c.Slenderness, 1e-9, 0, "NDS 2018 3.7.1.5")
	assert.Greater(t, a.Elasticity.Value/a.Stability.Value, 2.7)
}

// The load within d of the support stays in: the check does not know whether the
// beam hangs from bolts, a hanger, or a notched end.
func TestTrapShearIsNotReduced(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "4x12", lumber.Use{})
	calctest.Close(t, 1.5*2000/(3.5*11.25), member.NewShear(2000, a, lumber.TenYears).Stress, 1e-12, 0,
		"NDS 2018 eq. 3.4-2 with the whole reaction")
}

// A tension face notch loses the square of dn/d besides the depth, and deeper than
// d/4 is not allowed: a 2x8 birdsmouth of 1-3/4 in. keeps 58 % of its 76 % depth.
func TestTrapNotchByDepthAlone(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	whole := member.NewNotchShear(1, a, lumber.TenYears, member.Notch{Remaining: 7.25})
	cut := member.NewNotchShear(1, a, lumber.TenYears, member.Notch{Remaining: 5.5})
	calctest.Close(t, math.Pow(5.5/7.25, 3), cut.Capacity/whole.Capacity, 1e-12, 0, "NDS 2018 eq. 3.4-3")
	deep := member.NewNotchShear(1, a, lumber.TenYears, member.Notch{Remaining: 5.25})
	assert.Zero(t, deep.Capacity, "2 in. is deeper than 7.25/4, NDS 2018 4.4.3")
	calctest.Close(t, whole.Capacity, member.NewShear(1, a, lumber.TenYears).Allowable*2/3*10.875, 1e-12, 0)
}

// le/d takes each side with its own length and the larger counts; a free-standing
// post without braces sways, and Ke 1.0 would give it several times too much.
func TestTrapLargerSideAndSwayInSlenderness(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "4x6", lumber.Use{})
	same := member.Axis{Length: 96, Ends: member.PinnedPinned}
	c := member.NewCompression(1, a, lumber.TenYears, member.Column{Deep: same, Thin: same})
	calctest.Close(t, 96/3.5, c.Slenderness, 1e-12, 0, "the thin side governs, not 96/5.5")
	short := member.Axis{Length: 48, Ends: member.PinnedPinned}
	braced := member.NewCompression(1, a, lumber.TenYears, member.Column{Deep: same, Thin: short})
	calctest.Close(t, 96/5.5, braced.Slenderness, 1e-12, 0, "braced halfway in the thin plane, the deep one governs")

	post := adjusted(t, "Douglas Fir-Larch", "No.2", "6x6", lumber.Use{})
	stands := member.Axis{Length: 108, Ends: member.FixedFree}
	pinned := member.Axis{Length: 108, Ends: member.PinnedPinned}
	sway := member.NewCompression(1, post, lumber.TenYears, member.Column{Deep: stands, Thin: stands})
	still := member.NewCompression(1, post, lumber.TenYears, member.Column{Deep: pinned, Thin: pinned})
	calctest.Close(t, 2.1, sway.Slenderness/still.Slenderness, 1e-12, 0, "NDS 2018 App. G")
	assert.Less(t, sway.Allowable, 0.5*still.Allowable)
}

// A roof that passes on live load alone may sag for good: Kcr on the dead load.
func TestTrapLiveOnlyDeflection(t *testing.T) {
	l := member.Limit{Length: 144, Divisor: 180, Source: "IBC 2018 Table 1604.3", Status: calc.Read}
	assert.Less(t, member.NewDeflection(0.3, l).Ratio(), 1.0, "live load alone passes")
	assert.Greater(t, member.NewSag(0.4, 0.3, member.Seasoning{Green: true}, l).Ratio(), 1.0,
		"green lumber under a heavy roof does not, NDS 2018 3.5.2")
}

// The stress is that of the actual size: a nominal 2x8 in the formulas would carry
// 62 % more than the dressed one.
func TestTrapNominalSizeInTheFormula(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	b := member.NewBending(10_000, a, lumber.TenYears, member.Bracing{Held: true})
	calctest.Close(t, 10_000/(1.5*7.25*7.25/6), b.Stress, 1e-12, 0, "PS 20 dressed size")
	full, err := lumber.Measured(2, 8, 2, 8)
	assert.NoError(t, err)
	rough := *a
	rough.Section = full
	calctest.Close(t, 2*8*8/(1.5*7.25*7.25), b.Stress/
		member.NewBending(10_000, &rough, lumber.TenYears, member.Bracing{Held: true}).Stress, 1e-12, 0)
}

// The bearing of a Southern Pine timber is checked on 375 psi.
func TestTrapBearingOfSouthernPineTimber(t *testing.T) {
	a := adjusted(t, "Southern Pine", "No.2", "6x6", lumber.Use{Wet: true})
	b := member.NewBearing(1, a, member.Seat{Width: 5.5, Length: 3.5})
	assert.Equal(t, 375.0, b.Allowable, "NDS Supp. 2018 Table 4D; the value is for wet service")
}

// A piece laid flat bends about its weak axis, with C_fu and C_L = 1.
func TestTrapFlatPieceOnItsWeakAxis(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x6", lumber.Use{Flat: true})
	b := member.NewBending(1000, a, lumber.TenYears, member.Bracing{})
	calctest.Close(t, 5.5*1.5*1.5/6, b.Modulus, 1e-12, 0, "S about the weak axis")
	assert.Equal(t, 1.0, b.Stability, "NDS 2018 3.3.3.1")
	calctest.Close(t, 850*1.3*1.15, b.Allowable, 1e-12, 0, "NDS Supp. 2018 Table 4A")
}
