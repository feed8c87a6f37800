package roof

import "patiocover/calc"

// A Hung is what a cover on the rafter tails of a house does to one of its rafters.
type Hung struct {
	Reaction float64 // R, net uplift of the cover on the tail, lb; negative when it weighs
	Span     float64 // L, wall to wall, in
	Overhang float64 // o, from the wall to the cover, in
	Near     float64 // added uplift of the tie at the wall nearby, lb
	Far      float64 // added uplift of the tie at the far wall, lb; negative: pressed down
	Moment   float64 // added to the rafter at the wall nearby, lb-in; positive lifts the tail
}

// NewHung returns the reactions of a rafter on two walls to a force on its tail:
// R (1 + o/L) nearby, −R o/L at the far wall, and R o in the rafter (statics). The
// uplift is of the level of the reaction.
func NewHung(reaction, span, overhang float64) Hung {
	return Hung{
		Reaction: reaction, Span: span, Overhang: overhang,
		Near: reaction * (1 + overhang/span), Far: -reaction * overhang / span, Moment: reaction * overhang,
	}
}

// Lines writes the reactions up.
func (h Hung) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("R", h.Reaction, "lb", "net uplift of the cover on one rafter tail, from the cover")
	s.Given("L", h.Span/calc.Ft, "ft", "wall to wall, geometry")
	s.Given("o", h.Overhang/calc.Ft, "ft", "from the wall to the cover, geometry")
	s.Step("U_near", "R * (1 + o / L)", h.Near, "lb", "tie at the wall nearby, statics")
	s.Step("U_far", "-R * o / L", h.Far, "lb", "tie at the far wall, statics")
	s.Step("M_tail", "R * o", h.Moment/calc.LbFt, "lb-ft", "rafter at the wall nearby, statics")
	return s.Lines()
}
