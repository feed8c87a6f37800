package roof_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
	"patiocover/loads/roof"
)

// plain is the end zone of a flat house, enclosed.
func plain(t testing.TB) roof.Basis {
	b, ok := roof.PlainBasis(0, true, roof.Enclosed)
	require.True(t, ok)
	return b
}

// level is a joint with 20 psf of allowable velocity pressure and 10 psf of dead load.
func level(t testing.TB, spacing float64) roof.Joint {
	j := roof.TableJoint("C", 100, 10*calc.Ft, spacing)
	j.Dead = 10 * calc.PSF
	j.Site.Speed *= math.Sqrt(20 * calc.PSF / roof.NewTie(j, plain(t)).Pressure)
	return j
}

// Trap: an overhang whose uplift is taken as u s L/2. By hand, 20 psf and 10 psf of dead
// load in the end zone: w2 = 20 x 1.25 - 6 = 19, wo = 20 x 1.77 - 6 = 29.4 psf; bay 10 ft,
// overhang 2 ft, spacing 2 ft: U = 2 (19 x 5 + 29.4 x 2 x 1.1) = 319.36 lb against 190 lb
// without the overhang.
func TestTrapOverhangOfTheEave(t *testing.T) {
	j := level(t, 2*calc.Ft)
	bays := roof.Bays{Place: roof.AtEave, Before: 10 * calc.Ft, Outside: 2 * calc.Ft}
	calctest.Near(t, 319.36, roof.NewSupport(j, plain(t), bays).Uplift, 1e-9)
	bays.Outside = 0
	calctest.Near(t, 190, roof.NewSupport(j, plain(t), bays).Uplift, 1e-9)
}

// Trap: an inner support of two spans at 1.0 w L where the rafters run on over it: 1.25
// w L. With 19 psf, 10 ft and 2 ft of spacing 475 lb, and 380 lb where they end on it.
func TestTrapInnerSupportOfTwoSpans(t *testing.T) {
	j := level(t, 2*calc.Ft)
	bays := roof.Bays{Place: roof.AtInner, Before: 10 * calc.Ft, After: 10 * calc.Ft, RunsOn: true}
	calctest.Near(t, 475, roof.NewSupport(j, plain(t), bays).Uplift, 1e-9)
	bays.RunsOn = false
	calctest.Near(t, 380, roof.NewSupport(j, plain(t), bays).Uplift, 1e-9)
}

func TestSupportLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, b := house(t), basis(t)
		bays := roof.Bays{
			Place:  roof.Place(rapid.IntRange(0, 2).Draw(t, "place")),
			Before: rapid.Float64Range(3, 30).Draw(t, "L1") * calc.Ft, After: rapid.Float64Range(3, 30).Draw(t, "L2") * calc.Ft,
			RunsOn: rapid.Bool().Draw(t, "runs on"), Outside: rapid.Float64Range(0, 6).Draw(t, "o") * calc.Ft,
		}
		u := roof.NewSupport(j, b, bays)
		assert.NoError(t, calctest.Prove(u.Lines()))
		light := j
		light.Dead /= 2
		assert.GreaterOrEqual(t, roof.NewSupport(light, b, bays).Uplift, u.Uplift, "less dead load never lowers the uplift")
		fast := j
		fast.Site.Speed *= 1.1
		assert.GreaterOrEqual(t, roof.NewSupport(fast, b, bays).Balance, u.Balance-1e-9*(1+math.Abs(u.Balance)))
		if bays.Place != roof.AtEave {
			mirrored := bays
			mirrored.Before, mirrored.After = bays.After, bays.Before
			if bays.Place == roof.AtInner {
				near(t, u.Balance, roof.NewSupport(j, b, mirrored).Balance, 1e-6, "the same from either side")
			}
			ends := bays
			ends.RunsOn = false
			assert.LessOrEqual(t, roof.NewSupport(j, b, ends).Balance, u.Balance, "running on never lowers it")
		}
		j.Site.Exposure = "unknown"
		assert.True(t, math.IsNaN(roof.NewSupport(j, b, bays).Uplift), "unknown is no number")
	})
}

func TestSupportAllocatesNothing(t *testing.T) {
	j, b, sink := level(t, calc.Ft), plain(t), 0.0
	bays := roof.Bays{Place: roof.AtRidge, Before: 10 * calc.Ft, After: 12 * calc.Ft, RunsOn: true}
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink += roof.NewSupport(j, b, bays).Uplift }))
}

func TestPlaceNames(t *testing.T) {
	assert.Equal(t, "eave", roof.AtEave.String())
	assert.Equal(t, "interior support", roof.AtInner.String())
	assert.Equal(t, "ridge", roof.AtRidge.String())
}

// parts are the components of a rafter in the strip, in the field and on the overhang.
func parts(t testing.TB, area float64) (edge, field, overhang roof.Component) {
	part := func(z roof.Zone, over bool) roof.Component {
		s := place(115)
		s.Edition = loads.ASCE716
		c, ok := roof.NewComponent(s, roof.Part{Figures: roof.Figures716, Angle: 2, Zone: z, Overhang: over, Area: area}, roof.Enclosed)
		require.True(t, ok)
		return c
	}
	return part(roof.Zone2, false), part(roof.Zone1, false), part(roof.Zone1, true)
}

// The blend of two zones brings the moment of the strips added up one by one, and lies
// between the zones.
func TestBandedAgreesWithStrips(t *testing.T) {
	edge, field, overhang := parts(t, 50*calc.SqFt)
	for _, strip := range []float64{0, 2, 5.4, 10, 40} {
		span := 20.0 * calc.Ft
		w, ok := roof.NewBanded(edge, field, overhang, strip*calc.Ft, span)
		require.True(t, ok)
		assert.NoError(t, calctest.Prove(w.Lines()))
		const n = 100_000
		var near, far float64
		for i := range n {
			x := (float64(i) + 0.5) / n * span
			g := -field.Up
			if x < strip*calc.Ft || x > span-strip*calc.Ft {
				g = -edge.Up
			}
			if x < span/2 {
				near += g * (span - x) / n
				continue
			}
			far += g * (span - x) / n
		}
		calctest.Close(t, near, w.Basis.Windward*3*span/8, 1e-4, 0, strip)
		calctest.Close(t, far, w.Basis.Leeward*span/8, 1e-4, 0, strip)
		assert.GreaterOrEqual(t, w.Basis.Windward, -field.Up)
		assert.LessOrEqual(t, w.Basis.Windward, -edge.Up)
	}
	_, ok := roof.NewBanded(edge, field, field, calc.Ft, 20*calc.Ft)
	assert.False(t, ok, "the last one is no overhang")
}

// Houses of ASCE 7-16 26.2 by hand: one large door in a house otherwise shut is partially
// enclosed; the same with as many openings behind is not.
func TestOpeningsClass(t *testing.T) {
	cases := []struct {
		name                         string
		wall, wallArea, rest, shells float64 // ft²
		want                         roof.Enclosure
	}{
		{"a door of 40 ft² and nothing else", 40, 300, 0, 2500, roof.PartiallyEnclosed},
		{"as much behind", 40, 300, 40, 2500, roof.Enclosed},
		{"just above the limit of 1.10", 44.1, 300, 40, 2500, roof.PartiallyEnclosed},
		{"a slot of 2.9 ft² in 300", 2.9, 300, 0, 2500, roof.Enclosed},
		{"a slot of 3.1 ft² in 300: one percent", 3.1, 300, 0, 2500, roof.PartiallyEnclosed},
		{"a slot of 3.9 ft² in 1000: below 4 ft²", 3.9, 1000, 0, 2500, roof.Enclosed},
		{"the rest open by more than a fifth", 700, 800, 510, 2500, roof.Enclosed},
		{"no area given", 40, 0, 0, 2500, roof.PartiallyEnclosed},
		{"not a number", math.NaN(), 300, 0, 2500, roof.PartiallyEnclosed},
	}
	for _, c := range cases {
		o := roof.NewOpenings(c.wall*calc.SqFt, c.wallArea*calc.SqFt, c.rest*calc.SqFt, c.shells*calc.SqFt)
		assert.Equal(t, c.want, o.Class, c.name)
		if c.wallArea > 0 && c.wall == c.wall {
			assert.NoError(t, calctest.Prove(o.Lines()), c.name)
		}
	}
}
