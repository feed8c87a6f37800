package cover

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/connections"
)

// A ledgerShear is the check of the ledger beside its fasteners at one place.
type ledgerShear struct {
	where       string
	shear       member.JointShear
	combination string
}

// ledgerWood checks the ledger beside its fasteners, where splitting begins at the row
// that is farthest from the loaded edge (NDS 2018 3.4.3.3). It spans from stud to stud,
// and a rafter may stand right beside one. At either end, where splitting is nearer, two
// lag screws stand one above the other.
func (m *model) ledgerWood(g lagging, l *Link, d *design) [2]ledgerShear {
	depth, one := d.rafter.section.Depth, d.rafter.seat.OnePly()
	feet := max(m.plan.spacing, 1.25*g.spacing/2) / calc.Ft
	at := func(where string, rows lagging, fromEnd float64) ledgerShear {
		edge := rows.edge(depth)
		shear, name := worstOf(l.joint.demands, func(q connections.Demand) member.JointShear {
			force := q.Vertical*feet + q.Single
			joint := member.Joint{Lowest: min(edge, depth-edge), Highest: max(edge, depth-edge), Down: force < 0, FromEnd: fromEnd}
			return member.NewJointShear(math.Abs(force)+m.tipOn(&q), &one, q.Duration, joint)
		})
		return ledgerShear{where, shear, name}
	}
	return [...]ledgerShear{at("along the ledger", g, 5*depth), at("at the ends of the ledger", g.atEnd(), 0)}
}

// bentLedger is the worst bending of the ledger between its fastenings, with its combination.
func (m *model) bentLedger(g lagging, l *Link, d *design) (ledgerBent, string) {
	edge, flat := alone(d.rafter.seat.OnePly()), alone(d.rafter.flat.OnePly())
	if flat.Bending.Value > edge.Bending.Value {
		flat.Bending = edge.Bending // it may stay wet
	}
	return worstOf(l.joint.demands, func(q connections.Demand) ledgerBent { return m.newLedgerBent(g, q, &edge, &flat) })
}

// A ledgerBent is a ledger that spans from one fastening to the next, bent edgewise by the
// rafters and flat by what pulls it from the wall or presses it.
type ledgerBent struct {
	member.Combined
	every, rafters float64 // in, between fastenings and between rafters
	line, out      float64 // lb/in, along the ledger, from the rafters and out from the wall
	tip            float64 // lb, what knee braces bring at one rafter
	single         float64 // lb, what stands at one place
	end            float64 // in, from the end of the ledger to its first fastening
}

// newLedgerBent takes the ledger as cut at every fastening, so that the moment over none is
// counted; one edge is held by the rafters, which hang in its face, and by the wall.
func (m *model) newLedgerBent(g lagging, q connections.Demand, edge, flat *lumber.Adjusted) ledgerBent {
	b := ledgerBent{
		every: g.spacing, rafters: m.plan.spacing, line: math.Abs(q.Vertical) / calc.Ft, out: math.Abs(q.Out) / calc.Ft, tip: m.tipOn(&q),
		single: math.Abs(q.Single), end: g.fromEnd(),
	}
	one := (b.tip + b.single) * max(b.every/4, b.end)
	a := member.Actions{Edgewise: spanned(b.line, b.every, b.rafters, b.end) + one, Flatwise: b.out * b.every * b.every / 8}
	b.Combined = member.NewCombined(a, edge, flat, q.Duration, member.Stay{Bracing: member.Bracing{Unbraced: g.spacing, Zeros: g.spacing}})
	return b
}

// spanned is the largest moment in a simple span under forces that stand apart, lb-in: one
// force in the middle where no two stand on the span, or half of one on the end of the ledger
// beyond its first fastening, else more than any place of them brings, w s²/8 for the load
// spread out and P s/8 for its standing in points (statics). load is lb/in.
func spanned(load, span, apart, end float64) float64 {
	force := load * apart
	if apart >= span {
		return force * max(span/4, end/2)
	}
	return load*span*span/8 + force*span/8
}

// Explain writes the moments before the check.
func (b ledgerBent) Explain() calc.Check {
	var s calc.Sheet
	s.Given("w", b.line, "lb/in", "load of the rafters along the ledger")
	s.Given("s_r", b.rafters, "in", "between rafters, geometry")
	s.Given("s", b.every, "in", "between the fastenings of the ledger")
	s.Given("a", b.end, "in", "from the end of the ledger to its first fastening")
	formula, why := "w * s_r * max(s / 4, a / 2)", "statics: one rafter in a simple span, or half of one on the end of the ledger"
	if b.rafters < b.every {
		formula, why = "w * pow(s, 2) / 8 + w * s_r * s / 8", "statics: the load spread out, and its standing in points anywhere"
	}
	if b.tip > 0 || b.single > 0 {
		formula += " + (R_k + R_1) * max(s / 4, a)"
		why += "; the braces, and what stands at one place, at one of them or at the end of the ledger"
		s.Given("R_k", b.tip, "lb", "what the knee braces bring at the rafter of a braced post, statics of the row")
		s.Given("R_1", b.single, "lb", "load at one place")
	}
	s.Step("M_e", formula, b.Actions.Edgewise, "lb-in", why)
	s.Given("w_o", b.out, "lb/in", "pull out from the wall, or pressure into it")
	s.Step("M_f", "w_o * pow(s, 2) / 8", b.Actions.Flatwise, "lb-in", "statics: a simple span, laid flat")
	return behind(s.Lines(), b.Combined.Explain())
}
