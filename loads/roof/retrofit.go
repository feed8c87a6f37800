package roof

import (
	"math"

	"patiocover/calc"
)

// A Retrofit is the uplift that a state's rule for strengthening old houses asks of
// the joint of roof and wall near a corner, for comparison with a [Tie].
type Retrofit struct {
	Speed    float64 // V, mph, as the table heads it
	Span     float64 // L, of the roof, in
	Pressure float64 // net uplift of the roof, lb/in²
	Overhang float64 // net uplift of an overhang, lb/in²
	Wall     float64 // uplift along the wall, without the overhang, lb/in
}

// The fit to Florida Building Code, Existing Building, Table 708.8.1. 6 psf is 0.6 of
// 10 psf of dead load.
const (
	retrofitRoof     = 0.0024418 // psf/mph²
	retrofitDead     = 6.0       // psf
	retrofitOverhang = 0.003744  // psf/mph²
	retrofitLeast    = 85.0      // mph
	retrofitMost     = 100.0     // mph
)

// NewRetrofit returns p = 0.0024418 V² − 6 psf on half of the span, and 0.003744 V² on
// the overhang, allowable stress level: the forms that fit the table.
//
// Special case: false, and numbers that are none, outside 85 to 100 mph, where the
// table was not seen.
func NewRetrofit(speed, span float64) (Retrofit, bool) {
	if !(retrofitLeast <= speed && speed <= retrofitMost) {
		none := math.NaN()
		return Retrofit{Speed: speed, Span: span, Pressure: none, Overhang: none, Wall: none}, false
	}
	r := Retrofit{
		Speed: speed, Span: span,
		Pressure: (retrofitRoof*speed*speed - retrofitDead) * calc.PSF,
		Overhang: retrofitOverhang * speed * speed * calc.PSF,
	}
	r.Wall = r.Pressure * span / 2
	return r, true
}

// Lines writes the uplift up.
func (r Retrofit) Lines() []calc.Line {
	var s calc.Sheet
	const table = "fitted to Florida Building Code, Existing Building, Table 708.8.1"
	s.Given("V", r.Speed, "mph", "input, as the table heads it")
	s.Given("L", r.Span/calc.Ft, "ft", "span of the roof, geometry")
	s.Quoted("k_roof", retrofitRoof, "psf/mph²", table, calc.Computed)
	s.Quoted("p_dead", retrofitDead, "psf", table, calc.Computed)
	s.Quoted("k_over", retrofitOverhang, "psf/mph²", table, calc.Computed)
	s.Step("p", "k_roof * V * V - p_dead", r.Pressure/calc.PSF, "psf", table)
	s.Step("p_o", "k_over * V * V", r.Overhang/calc.PSF, "psf", table+", overhang")
	s.Step("U_wall", "p * L / 2", r.Wall/calc.PLF, "plf", table+", within 6 ft of a corner")
	return s.Lines()
}
