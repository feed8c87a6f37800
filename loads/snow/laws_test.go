package snow_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
	"patiocover/loads/snow"
)

// anySite draws a site with ground snow, of either edition.
func anySite(t *rapid.T) snow.Site {
	s := snow.Site{
		Ground: rapid.Float64Range(0.5, 120).Draw(t, "pg") * calc.PSF, GroundBasis: snow.ByASCE716,
		Terrain:    rapid.SampledFrom([]string{"B", "C", "D"}).Draw(t, "terrain"),
		Sheltering: rapid.SampledFrom([]snow.Sheltering{snow.FullyExposed, snow.PartiallyExposed, snow.Sheltered}).Draw(t, "sheltering"),
		Category:   rapid.SampledFrom([]snow.Category{snow.RiskI, snow.RiskII, snow.RiskIII, snow.RiskIV}).Draw(t, "category"),
	}
	if rapid.Bool().Draw(t, "newer") {
		s.Edition, s.GroundBasis = loads.ASCE722, snow.ByASCE722
		s.WinterWind = rapid.Float64Range(0.2, 0.7).Draw(t, "W2")
	}
	if rapid.Bool().Draw(t, "set") {
		s.Roof, s.RoofBasis = rapid.Float64Range(1, 80).Draw(t, "roof")*calc.PSF, s.GroundBasis
	}
	return s
}

// anyRoof draws a roof open to the air.
func anyRoof(t *rapid.T) snow.Roof {
	return snow.Roof{
		Angle:       rapid.Float64Range(0, 80).Draw(t, "angle") * degree,
		Slippery:    rapid.Bool().Draw(t, "slippery"),
		EaveToRidge: rapid.Float64Range(4, 200).Draw(t, "W") * calc.Ft,
	}
}

// anyStep draws a step and the roofs on both sides.
func anyStep(t *rapid.T) snow.Step {
	s := snow.Step{
		Height: rapid.Float64Range(-2, 20).Draw(t, "h") * calc.Ft, House: rapid.Float64Range(5, 300).Draw(t, "house") * calc.Ft,
		Cover: rapid.Float64Range(4, 40).Draw(t, "cover") * calc.Ft,
	}
	if rapid.Bool().Draw(t, "apart") {
		s.Gap = rapid.Float64Range(0.1, 25).Draw(t, "gap") * calc.Ft
	}
	return s
}

// near reports whether two numbers are the same but for the order of arithmetic.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-12+1e-9*math.Abs(a) }

var allKinds = []snow.Kind{snow.Leeward, snow.Windward, snow.Parapet}

// The balanced load is proved, never falls when the ground snow grows, and its largest
// case is the largest.
func TestBalancedLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		site, roof := anySite(t), anyRoof(t)
		b := snow.NewBalanced(site, roof)
		assert.Equal(t, snow.Found, b.Reason)
		assert.NoError(t, calctest.Prove(b.Lines()))
		more := site
		more.Ground *= rapid.Float64Range(1, 3).Draw(t, "more")
		assert.GreaterOrEqual(t, snow.NewBalanced(more, roof).Flat, b.Flat)
		assert.GreaterOrEqual(t, snow.NewBalanced(more, roof).Minimum, b.Minimum)
		assert.LessOrEqual(t, b.Sloped, b.Flat)
		largest := 0.0
		for _, c := range b.Cases() {
			largest = max(largest, c.Load)
		}
		assert.Equal(t, largest, b.Governing().Load)
	})
}

// Cs stays within 0 and 1, never rises with the slope, and has no jump: the steepest
// line falls by 1 over 25 degrees. A slippery roof never holds more.
func TestSlopeFactorLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		roof := anyRoof(t)
		roof.Thermal = rapid.SampledFrom([]snow.Thermal{snow.OpenAir, snow.ColdVentilated, snow.Heated, snow.Freezer}).Draw(t, "thermal")
		b := snow.NewBalanced(place(), roof)
		assert.True(t, 0 <= b.Slope && b.Slope <= 1)
		by, steeper := rapid.Float64Range(0, 5).Draw(t, "by"), roof
		steeper.Angle += by * degree
		s := snow.NewBalanced(place(), steeper)
		assert.LessOrEqual(t, s.Slope, b.Slope)
		assert.LessOrEqual(t, b.Slope-s.Slope, by/25+1e-12)
		rough, smooth := roof, roof
		rough.Slippery, smooth.Slippery = false, true
		assert.LessOrEqual(t, snow.NewBalanced(place(), smooth).Slope, snow.NewBalanced(place(), rough).Slope)
	})
}

// A drift is never negative, lies on the cover, is proved, and falls in a straight line
// to nothing at its full width.
func TestDriftLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := anyStep(t)
		d := snow.NewDrift(snow.NewBalanced(anySite(t), anyRoof(t)), at, rapid.SampledFrom(allKinds).Draw(t, "kind"))
		assert.True(t, d.Reason.Known())
		assert.NoError(t, calctest.Prove(d.Lines()))
		assert.True(t, d.Peak >= 0 && d.Far >= 0 && d.Far <= d.Peak && d.Loaded >= 0 && d.Loaded <= at.Cover)
		if d.Loaded > 0 {
			steep := (d.Peak - d.Far) / d.Loaded
			assert.True(t, near(d.Peak, steep*(d.Width-d.Cut)), "a straight line to the full width")
		}
	})
}

// The drift has no jump in the height of the step but the one that the standard makes
// at a fifth of the balanced depth, which by ASCE 7-16 is no more than a fifth of ps.
func TestDriftIsContinuousInTheStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, at := snow.NewBalanced(anySite(t), anyRoof(t)), anyStep(t)
		kind := rapid.SampledFrom(allKinds).Draw(t, "kind")
		const little = 1e-6
		higher := at
		higher.Height += little
		low, high := snow.NewDrift(b, at, kind), snow.NewDrift(b, higher, kind)
		if low.Reason != snow.TooLow && high.Reason != snow.TooLow {
			assert.LessOrEqual(t, math.Abs(high.Peak-low.Peak), 20*low.Density*little+1e-12)
		}
		at.Height, at.Gap = 1.2*low.Depth*(1+1e-9)+1e-9, 0
		edge := snow.NewDrift(b, at, snow.Leeward)
		assert.LessOrEqual(t, edge.Peak, 0.2*b.Sloped*(1+1e-6)+1e-8)
	})
}

// More fetch never makes a smaller drift, and one that fits is four times as wide as
// high (ASCE 7-16 7.7.1).
func TestDriftFetchLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, at := snow.NewBalanced(anySite(t), anyRoof(t)), anyStep(t)
		longer := at
		longer.House *= rapid.Float64Range(1, 3).Draw(t, "longer")
		d, more := snow.NewDrift(b, at, snow.Leeward), snow.NewDrift(b, longer, snow.Leeward)
		assert.GreaterOrEqual(t, more.Peak, d.Peak)
		assert.GreaterOrEqual(t, more.Width, d.Width)
		if d.Reason == snow.Found && at.Gap == 0 && d.Free <= d.Clear {
			assert.True(t, near(4*d.Height, d.Width))
		}
	})
}

// Sliding snow is proved, scales with the snow above, and never passes its line load.
func TestSlidingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		above := snow.Above{
			Flat:        rapid.Float64Range(0, 100).Draw(t, "pf") * calc.PSF,
			EaveToRidge: rapid.Float64Range(0, 60).Draw(t, "W") * calc.Ft,
			Angle:       rapid.Float64Range(0, 60).Draw(t, "angle") * degree, Slippery: rapid.Bool().Draw(t, "slippery"),
		}
		depth, gap := rapid.Float64Range(1, 40).Draw(t, "depth")*calc.Ft, rapid.Float64Range(0, 20).Draw(t, "gap")*calc.Ft
		s := snow.NewSliding(loads.ASCE722, above, depth, gap)
		assert.NoError(t, calctest.Prove(s.Lines()))
		assert.True(t, s.Share >= 0 && s.Share <= 1 && s.Loaded <= depth)
		assert.True(t, near(s.Line*s.Share, s.Pressure*s.Loaded), "what lands")
		twice := above
		twice.Flat *= 2
		assert.True(t, near(2*s.Pressure, snow.NewSliding(loads.ASCE722, twice, depth, gap).Pressure))
	})
}
