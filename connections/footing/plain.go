package footing

import (
	"math"

	"patiocover/calc"
)

// Plain concrete in bending (ACI 318-19 chapter 14, from memory).
const (
	plainPhi    = 0.60        // phi, strength reduction (21.2.1)
	plainRoot   = 5           // of lambda sqrt(f'c), modulus of rupture in bending (14.5.2.1a)
	againstSoil = 2 * calc.In // of thickness that does not count, cast against soil (14.5.1.7)
	strength    = 1 / 0.6     // factor from allowable to strength level: that of wind, the largest (ASCE 7 2.3.1 and 2.4.1)
)

// A Plain is the bending of the projection of a pad without reinforcement.
type Plain struct {
	Block
	Force    float64 // P, from the post, lb, allowable level
	Above    float64 // b, width of the post or neck, in
	Concrete float64 // f'c, lb/in²
	Arm      float64 // c, projection, in; for a circle that of the square of equal area
	Side     float64 // B_e, side of the square of equal area, in
	Pressure float64 // q_u, under the pad, strength level, lb/in²
	Moment   float64 // M_u, at the face, lb-in
	Counted  float64 // h, thickness that counts, in
	Capacity float64 // phi M_n, lb-in
}

// NewPlain bends the projection of the pad beyond a post or neck of a width above, in,
// under the force, lb, on concrete of a strength, lb/in². The force is raised by
// 1/0.6 whatever it is made of.
func NewPlain(force, above, concrete float64, b Block) Plain {
	p := Plain{Block: b, Force: force, Above: max(above, b.Neck), Concrete: concrete}
	p.Side = math.Sqrt(b.Area())
	p.Arm = max(0, (p.Side-p.Above)/2)
	p.Pressure = strength * force / b.Area()
	p.Moment = p.Pressure * p.Side * p.Arm * p.Arm / 2
	p.Counted = max(0, b.Thickness-againstSoil)
	p.Capacity = plainPhi * plainRoot * math.Sqrt(concrete) * p.Side * p.Counted * p.Counted / 6
	return p
}

// Ratio is the moment over the capacity.
func (p Plain) Ratio() float64 { return calc.Ratio(p.Moment, p.Capacity) }

// Explain writes the check out, in inches.
func (p Plain) Explain() calc.Check {
	var s calc.Sheet
	s.Given("P", p.Force, "lb", "from the post, the largest of all combinations")
	s.Given("f_u", strength, "", "to strength level: from 0.6W to 1.0W, the largest of ASCE 7 2.3.1 over 2.4.1")
	s.Given("B", p.Width, "in", p.Shape.String()+" footing, side or diameter")
	s.Given("b", p.Above, "in", "width of the post or the neck")
	s.Step("A", p.Shape.formula("B"), p.Area(), "in²", "geometry")
	s.Step("B_e", "sqrt(A)", p.Side, "in", "side of the square of the same area")
	s.Step("q_u", "f_u * P / A", p.Pressure, "psi", "the footing's own weight bends nothing")
	s.Step("c", "max(0, (B_e - b) / 2)", p.Arm, "in", "projection")
	s.Step("M_u", "q_u * B_e * c * c / 2", p.Moment, "lb-in", "statics, at the face of the post or neck")
	s.Given("t", p.Thickness, "in", "thickness of the concrete")
	s.Quoted("t_s", againstSoil, "in", "ACI 318-19 14.5.1.7, cast against soil", calc.Recalled)
	s.Step("h", "max(0, t - t_s)", p.Counted, "in", "ACI 318-19 14.5.1.7")
	s.Given("f_c", p.Concrete, "psi", "strength of the concrete")
	s.Quoted("phi", plainPhi, "", "ACI 318-19 21.2.1, plain concrete", calc.Recalled)
	s.Step("phiM_n", "phi * 5 * sqrt(f_c) * B_e * h * h / 6", p.Capacity, "lb-in", "ACI 318-19 eq. 14.5.2.1a")
	return s.Check("bending of the plain footing", "M_u", "phiM_n")
}
