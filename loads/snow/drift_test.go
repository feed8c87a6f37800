package snow_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
	"patiocover/loads/snow"
)

// roofAbove is a metal roof of 20 psf, 20 ft from eave to ridge, 4 in 12.
func roofAbove() snow.Above {
	return snow.Above{Flat: 20 * calc.PSF, EaveToRidge: 20 * calc.Ft, Angle: math.Atan(4.0 / 12), Slippery: true}
}

// Trap: ground snow of one edition by the rules of the other, or taken for roof snow.
// A ground snow of strength level is about 1.6 times the older one, and the other way
// round a load is 40 % too small, so it is refused and not converted.
func TestTrapEditionsMixed(t *testing.T) {
	old, now := place(), newer(32)
	old.GroundBasis, now.GroundBasis = snow.ByASCE722, snow.ByASCE716
	for _, site := range []snow.Site{old, now} {
		b := snow.NewBalanced(site, flat())
		assert.Equal(t, snow.EditionsMixed, b.Reason)
		assert.True(t, math.IsNaN(b.Governing().Load))
		assert.Equal(t, snow.EditionsMixed, snow.NewDrift(b, step(), snow.Leeward).Reason)
	}
	b := snow.NewBalanced(place(), flat())
	calctest.Near(t, 0.756*20, b.Sloped/calc.PSF, 1e-9, "0.7 Ce Ct of pg, not pg (ASCE 7-16 eq. 7.3-1)")
	calctest.Near(t, 20, b.Governing().Load/calc.PSF, 1e-9, "and still pg where the slope is low (7.3.4)")
}

// Trap: the drift at the house left out. The cover is open to the air beside a heated
// house, so it takes Ct 1.2 and the drift as well: 15.12 + 32.2 psf at the wall.
func TestTrapDriftAtTheHouseIgnored(t *testing.T) {
	b := snow.NewBalanced(place(), flat())
	calctest.Near(t, 1.2, b.Thermal, 0, "ASCE 7-16 Table 7.3-2")
	d := snow.Drifts(b, step()).Larger()
	require.Equal(t, snow.Found, d.Reason)
	assert.Equal(t, snow.Leeward, d.Kind)
	// 0.43·40^⅓·30^¼ − 1.5 = 1.9415 ft, below hc = 4 − 0.911 = 3.089 ft, at 16.6 pcf.
	calctest.Near(t, 1.9415, d.Height/calc.Ft, 1e-3, "ASCE 7-16 Fig. 7.6-1 by hand")
	calctest.Near(t, 32.23, d.Peak/calc.PSF, 0.02, "16.6 pcf of it")
	assert.Greater(t, b.Sloped+d.Peak, 2*b.Governing().Load, "more than twice the even load at the wall")
}

// Trap: the tail of the sliding snow cut off. A cover of 10 ft takes 10/15 of it, on all
// of its depth, and the balanced snow stays below it.
func TestTrapSlidingTailCut(t *testing.T) {
	s := snow.NewSliding(loads.ASCE716, roofAbove(), 10*calc.Ft, 0)
	require.Equal(t, snow.Found, s.Reason)
	calctest.Near(t, 160, s.Line/calc.PLF, 1e-9, "0.4·20·20 (ASCE 7-16 7.9)")
	calctest.Near(t, 160.0/15, s.Pressure/calc.PSF, 1e-9)
	calctest.Near(t, 10.0/15, s.Share, 1e-12)
	calctest.Near(t, 160.0*10/15, s.Pressure*s.Loaded/calc.PLF, 1e-9, "what lands is the part, not the whole and not less")
	b := snow.NewBalanced(place(), flat())
	calctest.Near(t, 15.12+160.0/15, (b.Sloped+s.Pressure)/calc.PSF, 1e-9, "on top of the balanced snow")
	assert.NoError(t, calctest.Prove(s.Lines()))
}

func TestSlidingByHand(t *testing.T) {
	rough := func(rise float64) snow.Above {
		a := roofAbove()
		a.Slippery, a.Angle = false, math.Atan(rise/12)
		return a
	}
	unknown, bare := roofAbove(), roofAbove()
	unknown.Angle, bare.Flat = math.NaN(), 0
	shallow := roofAbove()
	shallow.Angle = math.Atan(0.25/12) * 0.999
	cases := []struct {
		name       string
		above      snow.Above
		depth, gap float64 // ft
		reason     snow.Reason
		loaded     float64 // ft
	}{
		{"whole", roofAbove(), 20, 0, snow.Found, 15},
		{"gap of 5 ft", roofAbove(), 20, 5, snow.Found, 10},
		{"gap of 5 ft, short cover", roofAbove(), 8, 5, snow.Found, 8},
		{"gap of 15 ft", roofAbove(), 20, 15, snow.TooFar, 0},
		{"rough, 2 in 12", rough(1.999), 20, 0, snow.DoesNotSlide, 0},
		{"rough, above 2 in 12", rough(2.01), 20, 0, snow.Found, 15},
		{"smooth, a quarter in 12", shallow, 20, 0, snow.DoesNotSlide, 0},
		{"no snow above", bare, 20, 0, snow.NoSnow, 0},
		{"slope unknown", unknown, 20, 0, snow.NoGeometry, 0},
		{"gap unknown", roofAbove(), 20, math.NaN(), snow.NoGeometry, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := snow.NewSliding(loads.ASCE716, c.above, c.depth*calc.Ft, c.gap*calc.Ft)
			assert.Equal(t, c.reason, s.Reason)
			calctest.Near(t, c.loaded, s.Loaded/calc.Ft, 1e-9, "ASCE 7-16 7.9")
			assert.Equal(t, !c.reason.Known(), math.IsNaN(s.Pressure))
			assert.NoError(t, calctest.Prove(s.Lines()))
		})
	}
}

// Each branch of ASCE 7 7.7 and 7.8, by hand for pg 20 psf: γ 16.6 pcf, hb 0.9108 ft,
// free heights 1.9415 ft (lu 40), 1.4424 ft (lu 25).
func TestDriftBranchesByHand(t *testing.T) {
	cases := []struct {
		name            string
		kind            snow.Kind
		h, cover, gap   float64 // ft
		reason          snow.Reason
		height, w, peak float64 // ft, ft, psf
		loaded, far     float64 // ft, psf
	}{
		{"whole", snow.Leeward, 4, 12, 0, snow.Found, 1.9415, 7.766, 32.229, 7.766, 0},
		{"cut off at the end of the cover", snow.Leeward, 4, 6, 0, snow.Found, 1.9415, 7.766, 32.229, 6, 7.329},
		{"bounded by the step", snow.Leeward, 2.4108, 12, 0, snow.Found, 1.5, 10.052, 24.9, 10.052, 0},
		{"bounded in width too", snow.Leeward, 1.4108, 12, 0, snow.Found, 0.5, 4, 8.3, 4, 0},
		{"windward, lu floor", snow.Windward, 4, 12, 0, snow.Found, 1.0818, 4.327, 17.958, 4.327, 0},
		{"parapet", snow.Parapet, 4, 12, 3, snow.Found, 1.0818, 4.327, 17.958, 4.327, 0},
		{"no step to speak of", snow.Leeward, 1.09, 12, 0, snow.TooLow, 0, 0, 0, 0, 0},
		{"cover above the eave", snow.Leeward, -1, 12, 0, snow.TooLow, 0, 0, 0, 0, 0},
		{"gap, free height", snow.Leeward, 4, 12, 6, snow.Found, 1.9415, 11.649, 32.229, 11.649, 0},
		{"gap, below the shadow", snow.Leeward, 2, 12, 6, snow.Found, 1, 6, 16.6, 6, 0},
		{"gap of 20 ft", snow.Leeward, 9, 12, 20, snow.TooFar, 0, 0, 0, 0, 0},
		{"gap of six steps", snow.Leeward, 2, 12, 12, snow.TooFar, 0, 0, 0, 0, 0},
		{"gap just past six steps", snow.Leeward, 2, 12, 12.05, snow.TooFar, 0, 0, 0, 0, 0},
		{"windward across a gap", snow.Windward, 4, 12, 2, snow.Found, 1.0818, 4.327, 9.658, 2.327, 0},
		{"windward falls into the gap", snow.Windward, 4, 12, 4.4, snow.TooFar, 1.0818, 4.327, 0, 0, 0},
	}
	b := snow.NewBalanced(place(), flat())
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			at := snow.Step{Height: c.h * calc.Ft, House: 40 * calc.Ft, Cover: c.cover * calc.Ft, Gap: c.gap * calc.Ft}
			d := snow.NewDrift(b, at, c.kind)
			require.Equal(t, c.reason, d.Reason)
			calctest.Near(t, c.height, d.Height/calc.Ft, 2e-3, "height")
			calctest.Near(t, c.w, d.Width/calc.Ft, 6e-3, "width")
			calctest.Near(t, c.peak, d.Peak/calc.PSF, 0.03, "peak")
			calctest.Near(t, c.loaded, d.Loaded/calc.Ft, 6e-3, "loaded")
			calctest.Near(t, c.far, d.Far/calc.PSF, 0.03, "far")
			assert.NoError(t, calctest.Prove(d.Lines()))
		})
	}
}

func TestDensityHasACeiling(t *testing.T) {
	deep := place()
	deep.Ground = 150 * calc.PSF
	d := snow.NewDrift(snow.NewBalanced(deep, flat()), step(), snow.Windward)
	calctest.Near(t, 30, d.Density/calc.PCF, 1e-9, "ASCE 7-16 eq. 7.7-1: 33.5 pcf but not above 30")
}

func TestDriftRefusals(t *testing.T) {
	b := snow.NewBalanced(place(), flat())
	nan := math.NaN()
	calm := newer(63)
	calm.WinterWind = 0
	cases := []struct {
		name string
		b    snow.Balanced
		step snow.Step
		kind snow.Kind
		want snow.Reason
	}{
		{"step unknown", b, snow.Step{Height: nan, House: 480, Cover: 144}, snow.Windward, snow.NoGeometry},
		{"house unknown", b, snow.Step{Height: 48, Cover: 144}, snow.Leeward, snow.NoGeometry},
		{"house not needed", b, snow.Step{Height: 48, Cover: 144}, snow.Windward, snow.Found},
		{"cover unknown", b, snow.Step{Height: 48, House: 480}, snow.Leeward, snow.NoGeometry},
		{"gap unknown", b, snow.Step{Height: 48, House: 480, Cover: 144, Gap: nan}, snow.Leeward, snow.NoGeometry},
		{"kind unknown", b, step(), snow.Parapet + 1, snow.NoGeometry},
		{"no winter wind", snow.NewBalanced(calm, flat()), step(), snow.Leeward, snow.NoWinterWind},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d := snow.NewDrift(c.b, c.step, c.kind)
			assert.Equal(t, c.want, d.Reason)
			assert.Equal(t, !c.want.Known(), math.IsNaN(d.Peak))
			assert.Equal(t, !c.want.Known(), len(d.Lines()) == 0)
		})
	}
	pair := snow.Drifts(b, snow.Step{Height: 48, Cover: 144})
	assert.Equal(t, snow.NoGeometry, pair.Larger().Reason, "what is unknown is not passed over")
}

// ASCE 7-16 takes the larger drift; ASCE 7-22, and either with a gap, looks at both.
func TestDriftsBoth(t *testing.T) {
	apart := step()
	apart.Gap = 12
	b, now := snow.NewBalanced(place(), flat()), snow.NewBalanced(newer(63), flat())
	assert.False(t, snow.Drifts(b, step()).Both)
	assert.True(t, snow.Drifts(b, apart).Both)
	assert.True(t, snow.Drifts(now, step()).Both)
	deep := step()
	deep.House, deep.Cover = 20*calc.Ft, 100*calc.Ft
	assert.Equal(t, snow.Windward, snow.Drifts(b, deep).Larger().Kind, "a long cover by a short house")
}
