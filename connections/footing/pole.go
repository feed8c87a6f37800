package footing

import (
	"math"

	"patiocover/calc"
)

// The pole formulas of IBC 2018 1807.3.2 (read in a public code text).
const (
	deepest    = 12 * calc.Ft // depth for the lateral pressure at most
	poleFactor = 2.34         // in A = 2.34 P / (S1 b)
	loosened   = 1.09         // a quarter of 4.36, in eq. 18-1 solved for A: d² = A (d + 1.09 h)
	floorTimes = 4.25         // in eq. 18-3, d² = 4.25 Mg / (S3 b)
)

// A Ground says what holds a pole at grade.
type Ground struct {
	Lateral     Pressure // s, lateral bearing pressure for each inch of depth, lb/in³, neither doubled nor raised by a third
	Constrained bool     // a rigid floor lies against the post and takes its thrust; not one with a joint around it
	Loose       float64  // top of the ground that does not hold: loose fill or the depth of frost, in
}

// A Shaft is what stands in the ground.
type Shaft struct {
	Shape Shape   // of the part in the ground
	Width float64 // side or diameter of it, in
	Depth float64 // d, from grade to its bottom, in
}

// across is b: the diameter, or the diagonal of a square (IBC 2018 1807.3.2.1), in.
func (s Shaft) across() float64 {
	if s.Shape == Square {
		return s.Width * math.Sqrt2
	}
	return s.Width
}

// A Pole is the check of the embedment of a post or pole that stands by itself.
type Pole struct {
	Shaft
	Ground
	Force    float64 // P, allowable stress design, lb
	Height   float64 // h, of P above grade, in
	Across   float64 // b, in
	Lever    float64 // h_l, of P above the ground that holds, in
	Moment   float64 // Mg, at the ground that holds, lb-in
	Embedded float64 // d, least depth in the ground that holds, in
	Pressure float64 // S1 at a third of d, or S3 at d, lb/in²
	Reach    float64 // A, in; 0 when constrained
	Required float64 // depth from grade with the loose top, in
}

// NewPole finds the least embedment under the force, lb, at height above grade, in. S1
// and S3 grow with the depth that is looked for, down to 12 ft, so that the formula is
// solved for the depth that satisfies itself. Height and loose top together lift the
// force above the ground that holds.
func NewPole(force, height float64, s Shaft, g Ground) Pole {
	p := Pole{Shaft: s, Ground: g, Force: force, Height: height, Across: s.across(), Lever: height + g.Loose}
	p.Moment = force * p.Lever
	rate := g.Lateral.Value
	switch {
	case force <= 0 || g.Constrained && p.Moment <= 0:
		p.Embedded = 0
	case g.Constrained:
		p.Embedded = math.Cbrt(floorTimes * p.Moment / (rate * p.Across))
		if p.Embedded > deepest {
			p.Embedded = math.Sqrt(floorTimes * p.Moment / (rate * deepest * p.Across))
		}
		p.Pressure = rate * min(p.Embedded, deepest)
	default:
		p.Embedded = selfSatisfied(3*poleFactor*force/(rate*p.Across), p.Lever)
		if p.Embedded > deepest {
			p.Embedded = nonconstrained(poleFactor*force/(rate*deepest/3*p.Across), p.Lever)
		}
		p.Pressure = rate * min(p.Embedded, deepest) / 3
		p.Reach = poleFactor * force / (p.Pressure * p.Across)
	}
	p.Required = p.Embedded + g.Loose
	return p
}

// nonconstrained is eq. 18-1, d = A/2 (1 + √(1 + 4.36 h/A)), in.
func nonconstrained(reach, lever float64) float64 {
	return reach / 2 * (1 + math.Sqrt(1+4*loosened*lever/reach))
}

// selfSatisfied solves eq. 18-1 with S1 at a third of d: A = k/d makes it
// d³ = k (d + 1.09 h), which has one positive root; Newton's rule from above falls on it
// without passing it.
func selfSatisfied(k, lever float64) float64 {
	d := math.Sqrt(k) + math.Cbrt(k*loosened*lever)
	for range 60 {
		next := d - (d*d*d-k*(d+loosened*lever))/(3*d*d-k)
		if !(next < d) {
			break
		}
		d = next
	}
	return d
}

// Ratio is the required depth over the depth.
func (p Pole) Ratio() float64 { return calc.Ratio(p.Required/calc.Ft, p.Depth/calc.Ft) }

// Explain writes the check out.
func (p Pole) Explain() calc.Check {
	var s calc.Sheet
	s.Given("P", p.Force, "lb", "sideways force, allowable stress design")
	s.Given("h", p.Height/calc.Ft, "ft", "of the force above grade")
	s.Given("d_l", p.Loose/calc.Ft, "ft", "top of the ground that does not hold")
	s.Step("h_l", "h + d_l", p.Lever/calc.Ft, "ft", "above the ground that holds")
	s.Given("B", p.Width/calc.Ft, "ft", p.Shape.String()+" in the ground, side or diameter")
	if p.Shape == Square {
		s.Step("b", "B * sqrt(2)", p.Across/calc.Ft, "ft", "IBC 2018 1807.3.2.1, diagonal of a square")
	}
	if p.Shape == Round {
		s.Step("b", "B", p.Across/calc.Ft, "ft", "IBC 2018 1807.3.2.1, diameter")
	}
	s.Quoted("s", p.Lateral.Value/lateralUnit, "psf/ft", p.Lateral.Source+", neither doubled nor raised", p.Lateral.Status)
	s.Given("d_max", deepest/calc.Ft, "ft", "IBC 2018 1807.3.2.1, depth for the pressure at most")
	p.depthLines(&s)
	s.Step("d_req", "d_s + d_l", p.Required/calc.Ft, "ft", "from grade")
	s.Given("d", p.Depth/calc.Ft, "ft", "depth from grade")
	return s.Check("embedment", "d_req", "d")
}

// depthLines writes the depth in the ground that holds.
func (p Pole) depthLines(s *calc.Sheet) {
	switch {
	case p.Embedded == 0:
		s.Given("d_s", 0, "ft", "no sideways force that asks for depth")
	case p.Constrained:
		s.Given("d_0", p.Embedded/calc.Ft, "ft", "depth found by repetition")
		s.Step("M_g", "P * h_l", p.Moment/calc.LbFt, "lb-ft", "moment at the ground that holds")
		s.Step("S_3", "s * min(d_0, d_max)", p.Pressure/calc.PSF, "psf", "IBC 2018 1807.3.2.2, at the depth")
		s.Step("d_s", "sqrt(4.25 * M_g / (S_3 * b))", p.Embedded/calc.Ft, "ft", "IBC 2018 eq. 18-3: the depth assumed")
	default:
		s.Given("d_0", p.Embedded/calc.Ft, "ft", "depth found by repetition")
		s.Step("S_1", "s * min(d_0, d_max) / 3", p.Pressure/calc.PSF, "psf", "IBC 2018 1807.3.2.1, at a third of the depth")
		s.Step("A", "2.34 * P / (S_1 * b)", p.Reach/calc.Ft, "ft", "IBC 2018 1807.3.2.1")
		s.Step("d_s", "A / 2 * (1 + sqrt(1 + 4.36 * h_l / A))", p.Embedded/calc.Ft, "ft", "IBC 2018 eq. 18-1: the depth assumed")
	}
}
