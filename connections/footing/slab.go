package footing

import (
	"patiocover/calc"
	"patiocover/loads"
)

// slabReach is how far from a post a slab without reinforcement is taken to be lifted
// with it, in: judgment, about what its bending carries.
const slabReach = 2 * calc.Ft

// A SlabWeight is the check that the part of a slab around a post holds it down.
type SlabWeight struct {
	Net       float64 // T, net uplift of the post, lb
	Slab      float64 // t_s, thickness, in
	Edge      float64 // a, from the post to the nearest edge, joint or crack, in
	Second    float64 // b, to the nearest one at right angles to it, in
	Area      float64 // of slab that is lifted, in²
	Concrete  float64 // its weight, lb
	Resisting float64 // 0.6 of it, lb
}

// NewSlabWeight weighs a slab of a thickness, in, around a post that pulls with net, lb.
// edge and second are the distances to the nearest edge, joint or crack and to the
// nearest one across, in; on the far sides the slab must go on for 2 ft. A distance that
// is not known is 0. No soil counts below it or beside it.
func NewSlabWeight(net, thickness, edge, second float64) SlabWeight {
	w := SlabWeight{Net: net, Slab: thickness, Edge: edge, Second: second}
	w.Area = (min(edge, slabReach) + slabReach) * (min(second, slabReach) + slabReach)
	w.Concrete = concreteLeast * thickness * w.Area
	w.Resisting = loads.HoldsDown * w.Concrete
	return w
}

// Ratio is the net uplift over the resisting weight.
func (w SlabWeight) Ratio() float64 { return calc.Ratio(w.Net, w.Resisting) }

// Explain writes the check out.
func (w SlabWeight) Explain() calc.Check {
	var s calc.Sheet
	s.Given("T", w.Net, "lb", "net uplift of the post, with 0.6 of the least dead load taken off")
	s.Given("t_s", w.Slab/calc.Ft, "ft", "thickness of the slab")
	s.Given("a", w.Edge/calc.Ft, "ft", "from the post to the nearest edge, joint or crack")
	s.Given("b", w.Second/calc.Ft, "ft", "to the nearest one at right angles")
	s.Given("r", slabReach/calc.Ft, "ft", "reach of a slab without reinforcement, judgment; on the far sides it must go on as far")
	s.Step("A", "(min(a, r) + r) * (min(b, r) + r)", w.Area/calc.SqFt, "ft²", "slab lifted with the post")
	s.Given("gamma_c", concreteLeast/calc.PCF, "pcf", "plain concrete that resists, low end of 145 to 150 pcf, common practice")
	s.Step("W_c", "gamma_c * t_s * A", w.Concrete, "lb", "its weight; neither soil nor the slab beyond counts")
	s.Given("f_D", loads.HoldsDown, "", "ASCE 7 2.4.1, 0.6D + 0.6W, factor on the dead load that resists")
	s.Step("R_up", "f_D * W_c", w.Resisting, "lb", "ASCE 7 2.4.1: the 0.6 holds the safety")
	return s.Check("uplift on the slab", "T", "R_up")
}
