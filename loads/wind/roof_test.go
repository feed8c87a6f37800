package wind_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/loads/wind"
)

// cover is a monoslope roof of ordinary proportions.
func cover(angle float64) wind.Roof {
	return wind.Roof{Angle: angle, Height: 9 * calc.Ft, Depth: 12 * calc.Ft, Width: 20 * calc.Ft}
}

// roof draws a roof within the method.
func roof(t *rapid.T) wind.Roof {
	return wind.Roof{
		Angle:  rapid.Float64Range(0, 45).Draw(t, "theta"),
		Height: rapid.Float64Range(7, 40).Draw(t, "h") * calc.Ft,
		Depth:  rapid.Float64Range(6, 60).Draw(t, "depth") * calc.Ft,
		Width:  rapid.Float64Range(6, 60).Draw(t, "width") * calc.Ft,
	}
}

// The method ends at 45 degrees, 60 ft and 200 mph; outside the printed h/L the
// figures are used and the report says so.
func TestLimitsOfTheMethod(t *testing.T) {
	for _, c := range []struct {
		name  string
		roof  wind.Roof
		speed float64
		want  []wind.Limit
	}{
		{"ordinary", cover(2), 115, nil},
		{"all at the limit", wind.Roof{Angle: 45, Height: 60 * calc.Ft, Depth: 60 * calc.Ft, Width: 240 * calc.Ft}, 200, nil},
		{"steep", cover(45.1), 115, []wind.Limit{wind.TooSteep}},
		{"falls to the house", cover(-3), 115, []wind.Limit{wind.TooSteep}},
		{"angle unknown", cover(math.NaN()), 115, []wind.Limit{wind.TooSteep}},
		{"fast", cover(2), 201, []wind.Limit{wind.TooFast}},
		{"speed unknown", cover(2), math.NaN(), []wind.Limit{wind.TooFast}},
		{
			"high", wind.Roof{Angle: 2, Height: 61 * calc.Ft, Depth: 70 * calc.Ft, Width: 70 * calc.Ft}, 115,
			[]wind.Limit{wind.TooHigh},
		},
		{
			"height unknown", wind.Roof{Angle: 2, Height: math.NaN(), Depth: 70 * calc.Ft, Width: 70 * calc.Ft}, 115,
			[]wind.Limit{wind.TooHigh},
		},
		{
			"narrow and tall", wind.Roof{Angle: 2, Height: 9 * calc.Ft, Depth: 8 * calc.Ft, Width: 20 * calc.Ft}, 115,
			[]wind.Limit{wind.TooTall},
		},
		{
			"low and sloped", wind.Roof{Angle: 10, Height: 8 * calc.Ft, Depth: 12 * calc.Ft, Width: 40 * calc.Ft}, 115,
			[]wind.Limit{wind.TooLow},
		},
		{"low and flat", wind.Roof{Angle: 2, Height: 8 * calc.Ft, Depth: 40 * calc.Ft, Width: 40 * calc.Ft}, 115, nil},
		{
			"very long and flat", wind.Roof{Angle: 2, Height: 8 * calc.Ft, Depth: 40 * calc.Ft, Width: 200 * calc.Ft}, 115,
			[]wind.Limit{wind.TooLong},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.roof.Outside(c.speed)
			assert.Equal(t, c.want, got)
			for _, l := range got {
				assert.NotEmpty(t, l.String())
			}
		})
	}
}

// Beyond the limit there is no coefficient rather than an extrapolated one.
func TestNothingIsExtrapolated(t *testing.T) {
	v := wind.NewVelocity(place())
	for _, angle := range []float64{45.01, 60, math.NaN()} {
		assert.Empty(t, wind.Halves(cover(angle)))
		c := wind.NewComponent(v, cover(angle), calc.SqFt, wind.Interior, []wind.Flow{wind.Clear})
		assert.True(t, math.IsNaN(c.Suction) && math.IsNaN(c.Pressure), "theta %v", angle)
	}
	c := wind.NewComponent(v, cover(-1), calc.SqFt, wind.Interior, []wind.Flow{wind.Clear})
	assert.True(t, math.IsNaN(c.Suction))
}
