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

// inertia returns I in the direction of bending, in⁴.
func (s *Strip) inertia() float64 {
	if s.Piece.Use.Flat {
		return s.Piece.Section.InertiaFlat()
	}
	return s.Piece.Section.Inertia()
}

// A Carried is what one piece of deck carries under one action, from rafter to rafter.
type Carried struct {
	Action Action  // what acts
	Span   float64 // l, in
	Width  float64 // t, in
	Share  float64 // k, factor
	Load   float64 // w, lb/in, + down
	Layup  Layup   // coefficients of the demands
}

// carry returns what the piece carries under the action.
func (s *Strip) carry(a *Action) Carried {
	return Carried{Action: *a, Span: s.Span, Width: s.Width, Share: s.Share, Layup: s.Layup, Load: a.Net() * s.Width}
}

// A demand is what a piece of deck must hold, as it is written.
type demand struct {
	symbol string
	x      float64 // lb or lb-in, by unit
	unit   string
	even   string // formula of the even load, with the coefficient of the layup
	worker string // formula of the worker, added where one stands on the piece
	note   string // what the source says beside the layup
}

// explain writes the demand, with a coefficient of the layup, from the pressure on the
// deck, and the check of the piece that it goes into.
func (c *Carried) explain(d demand, symbol string, coefficient float64, check calc.Check) calc.Check {
	var s calc.Sheet
	r := c.Layup.row()
	c.Action.write(&s)
	s.Given("t", c.Width, "in", "strip of roof that one piece carries")
	s.Step("w", "p_in * t", c.Load, "lb/in", "geometry")
	s.Given("l", c.Span, "in", "span, rafters center to center")
	s.Quoted(symbol, coefficient, "", r.source, r.status)
	formula := d.even
	if c.Action.Worker > 0 {
		s.Quoted("f_P", c.Action.Stands, "", c.Action.Clause+", "+c.Action.Name, c.Action.Status)
		s.Quoted("P", c.Action.Worker, "lb", "ASCE 7-16 Table 4.3-1, roofs subject to maintenance workers", calc.Recalled)
		s.Given("k", c.Share, "", "part of it on one piece: see the notes of the deck")
		formula += " + " + d.worker
	}
	s.Step(d.symbol, formula, d.x, d.unit, "statics, "+r.name+d.note)
	return closed(&s, check)
}

// closed closes a sheet with the lines of a check that its last value goes into.
func closed(s *calc.Sheet, c calc.Check) calc.Check {
	s.Append(c.Lines)
	return s.Check(c.Name, c.DemandSymbol, c.CapacitySymbol)
}

// A Bending is the check of a piece of deck in bending: the moment of its load, and
// NDS 2018 3.3.
type Bending struct {
	Carried
	Moment float64        // M, lb-in, its magnitude
	Check  member.Bending // fb against Fb'
}

// NewBending checks the piece under the action. The edge that counts is the one that
// the action compresses at mid span.
func NewBending(a *Action, s *Strip) Bending {
	b := Bending{Carried: s.carry(a)}
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
	return b.explain(demand{
		symbol: "M", x: b.Moment, unit: "lb-in", even: "c_M * abs(w) * pow(l, 2)", worker: "k * f_P * P * l / 4",
	}, "c_M", b.Layup.row().moment, b.Check.Explain())
}

// A Shear is the check of a piece of deck in shear, NDS 2018 3.4.
type Shear struct {
	Carried
	Force float64      // V, lb, its magnitude
	Check member.Shear // fv against Fv'
}

// NewShear checks the piece under the action, with the worker beside a rafter.
func NewShear(a *Action, s *Strip) Shear {
	v := Shear{Carried: s.carry(a)}
	v.Force = s.Layup.row().shear*max(v.Load, -v.Load)*s.Span + s.Share*a.concentrated()
	v.Check = member.NewShear(v.Force, s.Piece, a.Duration)
	return v
}

// Ratio is fv / Fv'.
func (v Shear) Ratio() float64 { return v.Check.Ratio() }

// Explain writes the check out, from the pressure on the deck.
func (v Shear) Explain() calc.Check {
	return v.explain(demand{
		symbol: "V", x: v.Force, unit: "lb", even: "c_V * abs(w) * l", worker: "k * f_P * P",
	}, "c_V", v.Layup.row().shear, v.Check.Explain())
}
