package wind_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads/wind"
)

// By hand, ASCE 7-16 28.3: q at 115 mph, exposure C, 15 ft is 0.00256 · 0.8489 · 0.85 ·
// 115² = 24.43 psf; upward 1.62 q, downward 0.55 q but at least 16 psf.
func TestEnclosedByHand(t *testing.T) {
	s := wind.Site{Exposure: "C", Speed: 115, Hill: 1, Elevation: 1, Height: 10 * calc.Ft}
	e := wind.NewEnclosed(s, 3)
	calctest.Near(t, 1.62*24.43, e.Suction/calc.PSF, 0.02)
	calctest.Near(t, 16, e.Pressure/calc.PSF, 1e-9)
	calctest.Near(t, (0.27+0.55)*24.43, wind.NewEnclosed(s, 30).Pressure/calc.PSF, 0.02)
	assert.True(t, math.IsNaN(wind.NewEnclosed(s, 50).Suction))
}

// A cover that is closed in lifts more than the free roof, at any slope of the figures.
func TestEnclosedIsProvedAndLiftsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := wind.Site{
			Exposure: rapid.SampledFrom([]string{"B", "C", "D"}).Draw(t, "exposure"), Hill: 1, Elevation: 1,
			Speed: rapid.Float64Range(85, 200).Draw(t, "V"), Height: rapid.Float64Range(90, 240).Draw(t, "h"),
		}
		e := wind.NewEnclosed(s, rapid.Float64Range(0, 45).Draw(t, "theta"))
		if err := calctest.Prove(e.Lines()); err != nil {
			t.Fatal(err)
		}
		faster := s
		faster.Speed += 5
		if wind.NewEnclosed(faster, e.Angle).Suction < e.Suction {
			t.Fatal("a faster wind lifts less")
		}
	})
}
