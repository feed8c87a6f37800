package cover

import (
	"fmt"
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// connect makes every link: it proposes hardware, or checks what was given.
func (m *model) connect(links []Link, d *design) {
	for i := range links {
		l := &links[i]
		switch l.joint.kind {
		case connections.DeckToRafter:
			m.connectDeck(l, d)
		case connections.RafterToLedger:
			in := m.in.Connections
			m.connectHanger(l, d, in.HangerUp, in.HangerSide, in.HangerDown)
		case connections.LedgerToHouse:
			m.connectLedger(l, d)
		case connections.RafterToBeam:
			m.connectRafter(l, d)
		case connections.BeamToPost, connections.BeamSplice:
			m.connectPostTop(l, d)
		case connections.PostToBase:
			m.connectBase(l, d)
		}
	}
	for i := range links {
		if c := &links[i].Connector; len(c.Checks) > 0 {
			c.Notes = append(c.Notes, "Of this and all other fasteners and connectors: "+m.coating())
			return
		}
	}
}

// spliceLink is the tie of each piece of a beam at a splice: as strong as that of the
// worst post, for each of the two pieces, which is on the safe side.
func (m *model) spliceLink(line int, d *design) Link {
	out := m.postLink(connections.BeamToPost, line, d)
	kind := connections.BeamSplice
	out.joint.kind = kind
	out.Mark, out.Name, out.From, out.To = mark(kind.Letter(), line), kind.String(), kind.From(), kind.To()
	out.Stage, out.Per, out.Count = kind.Stage(), PerPost, 2*len(m.plan.splices)
	out.joint.count = out.Count
	out.Hardware = hardware(kind.Hardware(), out.joint, out.Rating)
	return out
}

// capReach is how high the side plates of a cap reach on the beam over its depth, ratio,
// and capBelowTop how far below its top where that is not enough, in: asked for in the
// notes.
const (
	capReach    = 2.0 / 3
	capBelowTop = 1.5 * calc.In
)

// connectPostTop makes the link of the beam to its posts, or of each piece at a splice.
func (m *model) connectPostTop(l *Link, d *design) {
	in := m.in.Connections
	splice := l.joint.kind == connections.BeamSplice
	switch {
	case splice && *in.Splice == "none":
		l.refuse(Over, "a piece of the beam is not tied down at its splice: the path of the uplift ends there")
		return
	case *in.PostTop == "none":
		l.refuse(Over, "nothing holds the beam on the posts: choose a cap or a bolted notch")
		return
	case *in.PostTop == "notch" && !splice:
		m.notch(l, d)
		return
	}
	item := "post cap"
	if splice {
		item = "tie of each piece at the splice"
	}
	c := m.rate(l, rated{item, in.CapUp, in.CapSide, min(woodGravity(&d.beam), woodGravity(&d.post))})
	joint := member.Joint{Lowest: nailEdge, Highest: capReach * d.beam.section.Depth, Down: true}
	if !splice {
		joint.FromEnd = min(m.plan.posts[0], m.plan.width-m.plan.posts[len(m.plan.posts)-1])
	}
	beside := func() (member.JointShear, string) {
		return worstOf(l.joint.demands, func(q connections.Demand) member.JointShear {
			return member.NewJointShear(upward(q), &d.beam.seat, q.Duration, joint)
		})
	}
	b, name := beside()
	if high := d.beam.section.Depth - capBelowTop; b.Ratio() > 1 && high > joint.Highest {
		joint.Highest = high
		b, name = beside()
	}
	c.add("beam beside the fasteners", name, "at an end post", b)
	c.Notes = append(c.Notes, fmt.Sprintf("Side plates or straps on both sides of the beam, reaching to %s in above its bottom edge, "+
		"their fasteners spread up to there", inchWords(calc.RoundUp(joint.Highest, 1.0/8))))
	if !splice && len(m.plan.splices) > 0 {
		c.What += "; at a splice each piece of beam is tied down on its own"
	}
	l.hold(c)
}

// Steel side plates of post bases, and the bolts that go through them.
const (
	basePlate  = 0.179 * calc.In // 7 gauge
	baseBolt   = "1/2"
	mostInBase = 3 // bolts, one above the other
)

// connectBase makes the link of the post to its base: a rating, and through-bolts that
// the post must have room for.
func (m *model) connectBase(l *Link, d *design) {
	in := m.in.Connections
	switch {
	case *m.in.Foundation.Kind == "embedded":
		l.Connector = Connector{Basis: NoConnector, What: "none"}
		l.Reason = "the post has no base: what holds it in its footing is judged with the ground"
		return
	case *in.Base == "none":
		l.refuse(Over, "nothing holds the posts at their feet: choose a post base")
		return
	}
	c := m.rate(l, rated{"post base", in.BaseUp, in.BaseSide, woodGravity(&d.post)})
	bolt, _ := dowel.FindBolt(baseBolt)
	v := throughPlates(bolt, &d.post)
	end := 7 * bolt.Diameter // full end distance in tension, NDS 2018 Table 12.5.1A
	breadth := min(d.post.section.Breadth, d.post.section.Depth)
	spacing := 4 * bolt.Diameter // full spacing
	bolts := func(n int) (dowel.Shear, string) {
		return worstOf(l.joint.demands, func(q connections.Demand) dowel.Shear {
			row := dowel.Row{
				Count: n, Spacing: spacing, Diameter: bolt.Diameter, Steel: true,
				MainModulus: d.post.seat.Elasticity.Value, SideModulus: steelModulus,
				MainArea: d.post.section.Area(), SideArea: 2 * basePlate * (breadth / 2),
			}
			needs := dowel.NewNeeds(bolt, v.SideLength, dowel.TowardEnd)
			place := dowel.Place{End: end, Top: breadth / 2, Bottom: breadth / 2, Spacing: spacing, Row: math.Inf(1)}
			f := dowel.LateralFactors(bolt.Kind, m.conditions(q.Duration, true))
			return dowel.NewShear(upward(q), v, f.With(dowel.NewGroup(row).Factor, dowel.NewLayout(needs, place).Factor), n)
		})
	}
	n := 1
	best, name := bolts(n)
	for best.Ratio() > 1 && n < mostInBase {
		n++
		best, name = bolts(n)
	}
	c.add("bolts through post and base", name, "each, foot taken as wet", best)
	c.part("1/2 in through-bolt with nut", n, l.Count)
	c.What += ", with " + several(n, "1/2 in through-bolt") + ", or fasteners by its list"
	c.Notes = append(c.Notes, fmt.Sprintf("The lowest bolt %s in above the foot of the post, the others %s in apart; "+
		"the foot stands 1 in clear of the concrete", inchWords(end), inchWords(spacing)))
	l.hold(c)
}

// throughPlates is a bolt through a post between two steel plates.
func throughPlates(bolt dowel.Fastener, post *wood) dowel.Lateral {
	return dowel.NewLateral(bolt, dowel.Joint{
		Main: dowel.Member{Gravity: woodGravity(post), Thickness: min(post.section.Breadth, post.section.Depth)},
		Side: dowel.Member{Material: dowel.Steel, Thickness: basePlate}, Double: true,
	})
}

// notchBolts is how many bolts go through beam and leg.
const notchBolts = 2

// notch checks a beam that sits in a notch of the post and is held by two bolts through
// the leg that stays: the seat carries what presses, the bolts what lifts.
func (m *model) notch(l *Link, d *design) {
	post, beam := d.post.section, d.beam.section
	leg := min(post.Breadth, post.Depth) - beam.Breadth
	if leg < min(post.Breadth, post.Depth)/2 {
		l.refuse(Over, fmt.Sprintf("a notch for a beam of %s in leaves %s in of the post: less than half of it",
			calc.Number(beam.Breadth), calc.Number(max(0, leg))))
		return
	}
	c := Connector{Basis: ProposedFasteners}
	bolt, _ := dowel.FindBolt("1/2")
	v := dowel.NewLateral(bolt, dowel.Joint{
		Main: dowel.Member{Gravity: woodGravity(&d.beam), Angle: 90, Thickness: beam.Breadth},
		Side: dowel.Member{Gravity: woodGravity(&d.post), Thickness: leg},
	})
	layout := notchLayout(bolt, v, beam.Depth, post)
	held, name := worstOf(l.joint.demands, func(q connections.Demand) dowel.Shear {
		with := m.conditions(q.Duration, true)
		with.Rows = true // one above the other, across the grain of the beam
		return dowel.NewShear(upward(q), v, dowel.LateralFactors(bolt.Kind, with).With(1, layout), notchBolts)
	})
	c.add("bolts in uplift", name, "each", held)
	joint := member.Joint{Lowest: 4 * bolt.Diameter, Highest: beam.Depth - 4*bolt.Diameter, Down: true}
	joint.FromEnd = min(m.plan.posts[0], m.plan.width-m.plan.posts[len(m.plan.posts)-1])
	b, name := worstOf(l.joint.demands, func(q connections.Demand) member.JointShear {
		return member.NewJointShear(upward(q), &d.beam.seat, q.Duration, joint)
	})
	c.add("beam beside the bolts", name, "at an end post", b)
	tongue, name := worstOf(l.joint.demands, func(q connections.Demand) legCheck {
		shape := legShape{leg: leg, width: max(post.Breadth, post.Depth), beam: beam.Breadth, hole: bolt.Diameter + boltHole}
		return newLegCheck(upward(q), shape, &d.post.seat, q.Duration)
	})
	c.add("leg of the post", name, "at the bolts", tongue)
	side := l.Out.Value // a notch holds one way only
	c.What = fmt.Sprintf("notch with a seat for the beam and %s in a leg of %s in",
		several(notchBolts, "1/2 in through-bolt"), calc.Number(leg))
	c.part("1/2 in through-bolt with nut and two washers", notchBolts, l.Count)
	c.Notes = append(c.Notes, fmt.Sprintf("Bolts 2 in from the top and bottom edge of the beam, and %s in or more below the top of the leg",
		inchWords(7*bolt.Diameter)), "The beam bears on the whole seat; the bolts carry uplift only")
	l.hold(c)
	if side > 0 {
		l.Verdict = l.Verdict.Worse(NotChecked)
		l.Reason += "; the side force of " + pounds(side) + " lb across the beam is not checked on a notch"
	}
}

// notchLayout is C_Delta of two bolts one above the other: in the beam the bottom edge is
// loaded in uplift, in the leg the bolts pull toward its end.
func notchLayout(bolt dowel.Fastener, v dowel.Lateral, depth float64, post lumber.Section) float64 {
	edge := 4 * bolt.Diameter
	length := min(v.MainLength, v.SideLength)
	inBeam := dowel.NewLayout(dowel.NewNeeds(bolt, length, dowel.TowardBottom),
		dowel.Place{End: math.Inf(1), Top: edge, Bottom: edge, Spacing: depth - 2*edge, Row: math.Inf(1)})
	middle := max(post.Breadth, post.Depth) / 2
	inLeg := dowel.NewLayout(dowel.NewNeeds(bolt, length, dowel.TowardEnd),
		dowel.Place{End: edge, Top: middle, Bottom: middle, Spacing: depth - 2*edge, Row: math.Inf(1)})
	return min(inBeam.Factor, inLeg.Factor)
}

// A legCheck is the leg of a notched post in tension with the bending that comes of its
// distance from the beam (NDS 2018 3.9.1): net section at the bolts.
type legCheck struct {
	pull           float64 // T, lb
	leg, width     float64 // in, thickness and width of the leg
	hole           float64 // in
	offset         float64 // e, in, from the middle of the leg to that of the beam
	area, modulus  float64 // in², in³, net
	tension, bend  float64 // psi
	strength       lumber.Property
	bending        lumber.Property
	duration       lumber.Duration
	allowT, allowB float64 // psi
}

// A legShape is the leg and the beam beside it, all in in.
type legShape struct{ leg, width, beam, hole float64 }

// boltHole is how much a bolt hole is wider than the bolt, in (NDS 2018 12.1.3.2).
const boltHole = 1.0 / 16 * calc.In

// newLegCheck checks the leg, in lb and inches. The moment is the pull times the distance
// between the middles of leg and beam.
func newLegCheck(pull float64, at legShape, a *lumber.Adjusted, duration lumber.Duration) legCheck {
	leg, width := at.leg, at.width
	c := legCheck{
		pull: pull, leg: leg, width: width, hole: at.hole, offset: (leg + at.beam) / 2,
		strength: a.Tension, bending: a.Bending, duration: duration,
	}
	c.area = leg * (width - c.hole)
	c.modulus = c.area * leg / 6
	c.tension, c.bend = pull/c.area, pull*c.offset/c.modulus
	c.allowT, c.allowB = a.Tension.At(duration), a.Bending.At(duration)
	return c
}

// Ratio is f_t/F_t' + f_b/F_b', which may not exceed 1.
func (c legCheck) Ratio() float64 {
	return calc.Ratio(c.tension, c.allowT) + calc.Ratio(c.bend, c.allowB)
}

// Explain writes the check out.
func (c legCheck) Explain() calc.Check {
	var s calc.Sheet
	s.Given("T", c.pull, "lb", "uplift of the combination")
	s.Given("t", c.leg, "in", "leg that stays of the post")
	s.Given("w", c.width, "in", "width of the leg")
	s.Given("d_h", c.hole, "in", "bolt hole, 1/16 in. over the bolt (NDS 2018 12.1.3.2)")
	s.Given("e", c.offset, "in", "between the middles of leg and beam")
	s.Step("A_n", "t * (w - d_h)", c.area, "in2", "NDS 2018 3.1.2, net section")
	s.Step("S_n", "A_n * t / 6", c.modulus, "in3", "geometry")
	s.Step("f_t", "T / A_n", c.tension, "psi", "NDS 2018 3.8")
	s.Step("f_b", "T * e / S_n", c.bend, "psi", "statics of the eccentric pull")
	s.Append(c.strength.LinesAt(c.duration))
	s.Step("Ft_adj", c.strength.FormulaAt(), c.allowT, "psi", "NDS 2018 Table 4.3.1")
	s.Append(c.bending.LinesAt(c.duration))
	s.Step("Fb_adj", c.bending.FormulaAt(), c.allowB, "psi", "NDS 2018 Table 4.3.1, leg bent over its thickness")
	s.Step("sum", "f_t / Ft_adj + f_b / Fb_adj", c.Ratio(), "", "NDS 2018 eq. 3.9-1")
	s.Given("sum_max", 1, "", "NDS 2018 eq. 3.9-1")
	return s.Check("leg in tension and bending", "sum", "sum_max")
}
