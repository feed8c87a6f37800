package deck

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A Strip is one piece of lumber that spans from rafter to rafter: a plank, a purlin or
// a slat. It is loaded on its wide face where its use says flat.
type Strip struct {
	Piece  *lumber.Adjusted // size, values and use
	Span   float64          // l, in: rafters, center to center
	Width  float64          // t, in: strip of roof that the piece carries
	Share  float64          // k, part of one worker that stands on this piece, factor
	Layup  Layup            // how the pieces run over the rafters
	Top    member.Bracing   // of the top edge, compressed by gravity
	Bottom member.Bracing   // of the bottom edge, compressed by uplift
}

// line returns w, the load of the piece, lb/in.
func (s *Strip) line(a *Action) float64 { return a.Net() * s.Width }

// inertia returns I in the direction of bending, in⁴.
func (s *Strip) inertia() float64 {
	if s.Piece.Use.Flat {
		return s.Piece.Section.InertiaFlat()
	}
	return s.Piece.Section.Inertia()
}

// A Bending is the check of a piece of deck in bending: the moment of its load, and
// NDS 2018 3.3.
type Bending struct {
	Action Action         // what acts
	Span   float64        // l, in
	Width  float64        // t, in
	Share  float64        // k, factor
	Load   float64        // w, lb/in, + down
	Moment float64        // M, lb-in, its magnitude
	Layup  Layup          // coefficients of the moment
	Check  member.Bending // fb against Fb'
}

// NewBending checks the piece under the action. The edge that counts is the one that
// the action compresses at mid span.
func NewBending(a *Action, s *Strip) Bending {
	b := Bending{Action: *a, Span: s.Span, Width: s.Width, Share: s.Share, Layup: s.Layup, Load: s.line(a)}
	b.Moment = moment(b.Load, s.Span, s.Share*a.concentrated(), s.Layup.row())
	edge := s.Top
	if b.Load < 0 {
		edge = s.Bottom
	}
	b.Check = member.NewBending(b.Moment, s.Piece, a.Duration, edge)
	return b
}

// Ratio is fb / Fb'.
func (b Bending) Ratio() float64 { return b.Check.Ratio() }

// Explain writes the check out, from the pressure on the deck.
func (b Bending) Explain() calc.Check {
	var s calc.Sheet
	r := b.Layup.row()
	writeLoad(&s, &b.Action, b.Width, b.Load)
	s.Given("l", b.Span, "in", "span, rafters center to center")
	s.Quoted("c_M", r.moment, "", r.source, r.status)
	formula := "c_M * abs(w) * pow(l, 2)"
	if b.Action.Worker > 0 {
		writeWorker(&s, &b.Action, b.Share)
		formula += " + k * f_P * P * l / 4"
	}
	s.Step("M", formula, b.Moment, "lb-in", "statics, "+r.name)
	c := b.Check.Explain()
	s.Append(c.Lines)
	return s.Check(c.Name, c.DemandSymbol, c.CapacitySymbol)
}

// writeLoad writes the load of a piece from the pressure on the deck.
func writeLoad(s *calc.Sheet, a *Action, width, load float64) {
	a.write(s)
	s.Given("t", width, "in", "strip of roof that one piece carries")
	s.Step("w", "p_in * t", load, "lb/in", "geometry")
}

// writeWorker writes the concentrated load and the part that one piece takes.
func writeWorker(s *calc.Sheet, a *Action, share float64) {
	s.Quoted("f_P", a.Stands, "", a.Clause+", "+a.Name, a.Status)
	s.Quoted("P", a.Worker, "lb", "ASCE 7-16 Table 4.3-1, roofs subject to maintenance workers", calc.Recalled)
	s.Given("k", share, "", "part of it on one piece: see the notes of the deck")
}

// A Shear is the check of a piece of deck in shear, NDS 2018 3.4.
type Shear struct {
	Action Action       // what acts
	Span   float64      // l, in
	Width  float64      // t, in
	Share  float64      // k, factor
	Load   float64      // w, lb/in, + down
	Force  float64      // V, lb, its magnitude
	Layup  Layup        // coefficients of the shear
	Check  member.Shear // fv against Fv'
}

// NewShear checks the piece under the action, with the worker beside a rafter.
func NewShear(a *Action, s *Strip) Shear {
	v := Shear{Action: *a, Span: s.Span, Width: s.Width, Share: s.Share, Layup: s.Layup, Load: s.line(a)}
	v.Force = s.Layup.row().shear*max(v.Load, -v.Load)*s.Span + s.Share*a.concentrated()
	v.Check = member.NewShear(v.Force, s.Piece, a.Duration)
	return v
}

// Ratio is fv / Fv'.
func (v Shear) Ratio() float64 { return v.Check.Ratio() }

// Explain writes the check out, from the pressure on the deck.
func (v Shear) Explain() calc.Check {
	var s calc.Sheet
	r := v.Layup.row()
	writeLoad(&s, &v.Action, v.Width, v.Load)
	s.Given("l", v.Span, "in", "span, rafters center to center")
	s.Quoted("c_V", r.shear, "", r.source, r.status)
	formula := "c_V * abs(w) * l"
	if v.Action.Worker > 0 {
		writeWorker(&s, &v.Action, v.Share)
		formula += " + k * f_P * P"
	}
	s.Step("V", formula, v.Force, "lb", "statics, "+r.name)
	c := v.Check.Explain()
	s.Append(c.Lines)
	return s.Check(c.Name, c.DemandSymbol, c.CapacitySymbol)
}
