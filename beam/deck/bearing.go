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
	Action Action         // what acts
	Span   float64        // l, in
	Width  float64        // t, in
	Share  float64        // k, factor
	Load   float64        // w, lb/in, + down
	Force  float64        // R, lb; not positive where the piece lifts
	Layup  Layup          // coefficients of the reaction
	Check  member.Bearing // fc_perp against Fc_perp'
}

// NewBearing checks the end of the piece under the action, with the worker over it.
func NewBearing(a *Action, s *Strip) Bearing {
	b := Bearing{Action: *a, Span: s.Span, Width: s.Width, Share: s.Share, Layup: s.Layup, Load: s.line(a)}
	b.Force = s.Layup.row().shear*b.Load*s.Span + s.Share*a.concentrated()
	b.Check = member.NewBearing(b.Force, s.Piece, member.Seat{Width: across(s.Piece), Length: endSeat})
	return b
}

// Ratio is fc_perp / Fc_perp'.
func (b Bearing) Ratio() float64 { return b.Check.Ratio() }

// Explain writes the check out, from the pressure on the deck.
func (b Bearing) Explain() calc.Check {
	var s calc.Sheet
	r := b.Layup.row()
	writeLoad(&s, &b.Action, b.Width, b.Load)
	s.Given("l", b.Span, "in", "span, rafters center to center")
	s.Quoted("c_V", r.shear, "", r.source, r.status)
	formula := "c_V * w * l"
	if b.Action.Worker > 0 {
		writeWorker(&s, &b.Action, b.Share)
		formula += " + k * f_P * P"
	}
	s.Step("R", formula, b.Force, "lb", "statics, "+r.name+", on the half of a rafter that a piece ends on")
	c := b.Check.Explain()
	s.Append(c.Lines)
	return s.Check(c.Name, c.DemandSymbol, c.CapacitySymbol)
}
