package deck

import (
	"patiocover/beam/member"
	"patiocover/calc"
)

// endSeat is how far the end of a piece reaches onto a rafter, in: half of the thinnest
// rafter, 2 in. nominal, so that the next piece has the other half. A piece that runs on
// has twice the seat for twice the force.
const endSeat = 0.75 * calc.In

// A Bearing is the check of a piece of deck where it sits on a rafter, NDS 2018 3.10.2.
type Bearing struct {
	Carried
	Force float64        // R, lb; not positive where the piece lifts
	Check member.Bearing // fc_perp against Fc_perp'
}

// NewBearing checks the end of the piece under the action, with the worker over it.
func NewBearing(a *Action, s *Strip) Bearing {
	b := Bearing{Carried: s.carry(a)}
	b.Force = s.Layup.row().shear*b.Load*s.Span + s.Share*a.concentrated()
	b.Check = member.NewBearing(b.Force, s.Piece, member.Seat{Width: across(s.Piece), Length: endSeat})
	return b
}

// Ratio is fc_perp / Fc_perp'.
func (b Bearing) Ratio() float64 { return b.Check.Ratio() }

// Explain writes the check out, from the pressure on the deck.
func (b Bearing) Explain() calc.Check {
	return b.explain(demand{
		symbol: "R", x: b.Force, unit: "lb", even: "c_V * w * l", worker: "k * f_P * P",
		note: ", on the half of a rafter that a piece ends on",
	}, "c_V", b.Layup.row().shear, b.Check.Explain())
}
