package cover

import (
	"fmt"

	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// How far the nails of ties and hangers reach in the wood: asked for in the notes, and
// counted in the checks of the wood beside them.
const (
	tieBelowTop = 1.5 * calc.In  // in: highest nail of a tie below the top edge of a rafter
	nailEdge    = 0.75 * calc.In // in: lowest nail above the bottom edge
	hangerReach = 0.6            // highest nail of a hanger over the depth of the rafter, ratio
	halfDepth   = 0.5            // nails of a tie on a beam over its depth, ratio
)

// connectRafter makes the link of each rafter to a beam line.
func (m *model) connectRafter(l *Link, d *design) {
	in := m.in.Connections
	if m.plan.flush {
		m.connectHanger(l, d, in.TieUp, in.TieSide, nil)
		return
	}
	switch *in.Tie {
	case "none":
		l.refuse(Over, "nothing ties the rafters to the beam: choose a tie")
	case "toenails":
		l.refuse(Over, "toe-nails are not accepted as a new uplift connection: they split the heel, and the code's "+
			"nailing schedule does not cover open roofs (IRC 2021 R802.11.1)")
	case "straps":
		c := m.straps(l, d)
		m.woodAtTie(l, &c, d)
		l.hold(c)
	default:
		c := m.rate(l, rated{"rafter tie", in.TieUp, in.TieSide, min(woodGravity(&d.rafter), woodGravity(&d.beam))})
		m.woodAtTie(l, &c, d)
		l.hold(c)
	}
}

// woodAtTie checks rafter and beam beside the nails of a tie in uplift (NDS 2018
// 3.4.3.3): the rafter is held down, the beam is pulled up.
func (m *model) woodAtTie(l *Link, c *Connector, d *design) {
	support := m.lines[l.joint.line].support
	x := m.plan.slope(m.plan.supports()[support])
	onRafter := member.Joint{
		Lowest: nailEdge, Highest: d.rafter.section.Depth - tieBelowTop, Down: true,
		FromEnd: min(x, m.plan.slope(m.plan.projection)-x),
	}
	r, name := worstOf(l.joint.demands, func(q connections.Demand) member.JointShear {
		return member.NewJointShear(upward(q), &d.rafter.dry, q.Duration, onRafter)
	})
	c.add("rafter beside the nails", name, "at the tie", r)
	onBeam := member.Joint{Lowest: halfDepth * d.beam.section.Depth, Highest: d.beam.section.Depth - nailEdge}
	b, name := worstOf(l.joint.demands, func(q connections.Demand) member.JointShear {
		return member.NewJointShear(upward(q), &d.beam.dry, q.Duration, onBeam)
	})
	c.add("beam beside the nails", name, "at the tie of an end rafter", b)
	c.Notes = append(c.Notes, "Nails of the tie reach to within 1-1/2 in of the top of the rafter and down to half the depth of the beam")
}

// connectHanger makes a link of the end of each rafter in a hanger.
func (m *model) connectHanger(l *Link, d *design, up, side, down *float64) {
	if *m.in.Connections.Hanger == "none" {
		l.refuse(Over, "nothing holds the rafters at their upper end: choose a hanger")
		return
	}
	c := m.rate(l, rated{"hanger", up, side, woodGravity(&d.rafter)})
	l.bear(&c, down)
	joint := member.Joint{Lowest: nailEdge, Highest: hangerReach * d.rafter.section.Depth, Down: true}
	r, name := worstOf(l.joint.demands, func(q connections.Demand) member.JointShear {
		return member.NewJointShear(upward(q), &d.rafter.seat, q.Duration, joint)
	})
	c.add("rafter beside the nails", name, "at its end in the hanger", r)
	h, name := worstOf(l.joint.demands, func(q connections.Demand) member.HungLoad {
		return member.NewHungLoad(max(0, q.Vertical), d.rafter.section.Depth, hangerReach*d.rafter.section.Depth)
	})
	c.add("load hung on the ledger", name, "at the hanger", h)
	c.Notes = append(c.Notes, fmt.Sprintf("The hanger and its nails reach to %.0f %% of the depth of rafter and ledger, "+
		"and its seat is 1-1/2 in or more", hangerReach*100))
	l.hold(c)
}

// leastStrapNails and mostStrapNails are how many 8d nails an end of a strap may have.
const (
	leastStrapNails = 2
	mostStrapNails  = 12
)

// straps ties each rafter with a plain strap on one side, on both sides where one is
// not enough, and takes the side force by two toe-nails that count for nothing else.
func (m *model) straps(l *Link, d *design) Connector {
	in := m.in.Connections
	sheet, _ := dowel.FindSheet(*in.StrapGauge)
	nail, _ := dowel.FindNail("common", "8d")
	wood := dowel.Member{Gravity: min(woodGravity(&d.rafter), woodGravity(&d.beam)), Thickness: d.rafter.section.Breadth}
	v := dowel.NewLateral(nail, dowel.Joint{Side: dowel.Member{Material: dowel.Steel, Thickness: sheet.Thickness()}, Main: wood})
	width := *in.StrapWidth * calc.In
	wet := d.rafter.dry.Use.Wet || d.beam.dry.Use.Wet
	strap := func(nails, sides int) (dowel.Strap, string) {
		return worstOf(l.joint.demands, func(q connections.Demand) dowel.Strap {
			f := dowel.LateralFactors(nail.Kind, m.conditions(q.Duration, wet))
			return dowel.NewStrap(dowel.NewShear(upward(q)/float64(sides), v, f, nails), sheet, width, 1)
		})
	}
	c := Connector{Basis: ProposedFasteners}
	nails, sides := leastStrapNails, 1
	if in.StrapNails != nil {
		c.Basis, nails = GivenHardware, *in.StrapNails
	}
	best, name := strap(nails, sides)
	for best.Ratio() > 1 && in.StrapNails == nil && (nails < mostStrapNails || sides == 1) {
		if nails++; nails > mostStrapNails {
			nails, sides = leastStrapNails, 2
		}
		best, name = strap(nails, sides)
	}
	c.What = fmt.Sprintf("%s of %s gauge by %s in with %d 8d common nails at each end", strapCount(sides), *in.StrapGauge,
		inchWords(width), nails)
	c.add("strap", name, "each", best)
	c.part(fmt.Sprintf("strap %s gauge by %s in", *in.StrapGauge, inchWords(width)), sides, l.Count)
	c.part("8d common nail", 2*nails*sides, l.Count)
	m.toenails(l, &c, d)
	return c
}

func strapCount(sides int) string {
	if sides == 2 {
		return "a plain strap on each side"
	}
	return "a plain strap"
}

// toenails takes the side force by toe-nails, which are not counted in uplift.
func (m *model) toenails(l *Link, c *Connector, d *design) {
	const count = 2
	nail, _ := dowel.FindNail("common", "16d")
	holding := dowel.Member{Gravity: woodGravity(&d.beam), Thickness: d.beam.section.Depth}
	toe := dowel.NewToenail(nail, holding, dowel.Member{Gravity: woodGravity(&d.rafter)})
	wet := d.rafter.dry.Use.Wet || d.beam.dry.Use.Wet
	worst, name := worstOf(l.joint.demands, func(q connections.Demand) dowel.ToenailCheck {
		return dowel.NewToenailShear(aside(q), toe, m.conditions(q.Duration, wet), count)
	})
	if worst.Demand == 0 {
		return
	}
	c.add("toe-nails sideways", name, "each", worst)
	c.part("16d common nail", count, l.Count)
	c.What += ", and two 16d toe-nails for the side force alone"
}
