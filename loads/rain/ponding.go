package rain

import (
	"math"

	"patiocover/calc"
)

const (
	water         = 62.4 * calc.PCF // weight of water, lb/in³
	amplification = 1.1             // largest growth of a sag by the water in it, ratio; choice of this project
	creepDivisor  = 2.0             // on E I, for wet or green lumber, factor; the safe side
)

// A Ponding is the check that a member is stiff enough not to gather water: the sag
// under water that fills the sag itself must not grow the first sag by more than a
// tenth.
type Ponding struct {
	Width     float64 // tributary width, in
	Span      float64 // in, between supports
	Stiffness float64 // E I, lb-in²
	Critical  float64 // load of water per sag over stiffness against it, ratio; unstable from 1
	Growth    float64 // factor on the sag; +Inf when unstable
}

// NewPonding checks one span. The water follows a half sine wave, for which the beam
// answers in the same shape: the ratio is w s L⁴ / (π⁴ E I), with E I halved for creep.
func NewPonding(width, span, stiffness float64) Ponding {
	p := Ponding{Width: width, Span: span, Stiffness: stiffness}
	p.Critical = water * width * span * span * span * span / (math.Pi * math.Pi * math.Pi * math.Pi * stiffness / creepDivisor)
	p.Growth = math.Inf(1)
	if p.Critical < 1 {
		p.Growth = 1 / (1 - p.Critical)
	}
	return p
}

// allowed is the critical ratio at which the growth reaches its limit.
const allowed = 1 - 1/amplification

// Ratio is the critical ratio over that at which the sag grows by a tenth.
func (p Ponding) Ratio() float64 { return calc.Ratio(p.Critical, allowed) }

// Explain writes the check out.
func (p Ponding) Explain() calc.Check {
	var s calc.Sheet
	s.Given("gamma_w", water/calc.PCF, "pcf", "weight of water")
	s.Step("g_w", "gamma_w / 1728", water, "lb/in³", "1728 in³ to the cubic foot")
	s.Given("s_t", p.Width, "in", "tributary width, geometry")
	s.Given("L", p.Span, "in", "span, geometry")
	s.Given("EI", p.Stiffness, "lb-in²", "E' I of the member")
	s.Given("k_cr", creepDivisor, "", "creep of green or wet lumber, NDS 2018 3.5.2")
	s.Step("c_p", "g_w * s_t * pow(L, 4) / (pow(pi, 4) * EI / k_cr)", p.Critical, "", "beam under its own pond, half sine wave, derived")
	s.Given("a_lim", amplification, "", "growth of the sag, choice of this project")
	s.Step("c_lim", "1 - 1 / a_lim", allowed, "", "from 1 / (1 - c_p)")
	return s.Check("ponding", "c_p", "c_lim")
}

// A Fall is the check that water still runs off when the members have sagged: the slope
// at the flattest place of a sagged span must stay above nothing.
type Fall struct {
	Slope float64 // fall over run, ratio
	Sag   float64 // long-term sag of the span that lies along the fall, in
	Span  float64 // in
	Turn  float64 // largest slope of the sagged span against the fall, ratio
}

// NewFall checks one span that runs along the fall of the roof. A sag of the shape of a
// uniformly loaded beam turns its end by 3.2 sag/span.
func NewFall(slope, sag, span float64) Fall {
	return Fall{Slope: slope, Sag: sag, Span: span, Turn: endTurn * sag / span}
}

// endTurn is the slope at the end of a uniformly loaded simple beam over its sag per
// span: (wL³/24EI) / (5wL⁴/384EI) · L = 16/5, exact.
const endTurn = 16.0 / 5

// Ratio is the turn against the fall over the fall.
func (f Fall) Ratio() float64 { return calc.Ratio(f.Turn, f.Slope) }

// Explain writes the check out.
func (f Fall) Explain() calc.Check {
	var s calc.Sheet
	s.Given("delta", f.Sag, "in", "long-term sag of the rafter between supports")
	s.Given("L", f.Span, "in", "span, geometry")
	s.Step("t_end", "16 / 5 * delta / L", f.Turn, "", "end slope of a uniformly loaded beam, statics")
	s.Given("r", f.Slope, "", "slope, fall over run, input cover.slope_in_per_ft")
	return s.Check("fall left after sag", "t_end", "r")
}

// Flow returns the flow at the gutter, gallons per minute, from a roof of plan area in
// in² under a rainfall in inches per hour: 1 in/h on 100 ft² is 1.04 gpm.
func Flow(area, rainfall float64) float64 { return area / calc.SqFt * rainfall / 96.25 }
