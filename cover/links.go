package cover

import (
	"math"

	"patiocover/calc"
	"patiocover/connections"
	"patiocover/loads"
)

// A joint is one link with what it takes to write it down.
type joint struct {
	kind    connections.Kind
	line    int // beam line, 0 for links that have none
	count   int
	per     string
	demands []connections.Demand
	lift    lift   // the arrangement that lifts most, or comes nearest to it
	prying  prying // the worst of the other combinations
}

// A lift is the wind and dead load of the arrangement that lifts a link most.
type lift struct {
	net        float64 // vertical, lb, + down
	dead       float64 // unfactored least dead load, lb
	windFactor float64
	deadFactor float64
}

// lower keeps the arrangement that lifts more.
func (l *lift) lower(x lift) {
	if l.windFactor == 0 || x.net < l.net {
		*l = x
	}
}

// links writes down every link of the load path.
func (m *model) links(ws *workspace, d *design) []Link {
	var out []Link
	for _, kind := range connections.Path(m.plan.attached) {
		out = append(out, m.linksOf(kind, d)...)
	}
	m.connect(out, d)
	return append(out, m.kneeLinks(ws, d)...)
}

// linksOf writes down the links of one kind, without what makes them.
func (m *model) linksOf(kind connections.Kind, d *design) []Link {
	var out []Link
	switch kind {
	case connections.DeckToRafter:
		return []Link{m.deckLink()}
	case connections.RafterToLedger:
		return []Link{m.write(m.rafterJoint(kind, 0, 0, d), "")}
	case connections.LedgerToHouse:
		return []Link{m.ledgerLink(d)}
	case connections.HouseFraming:
		return []Link{m.houseLink(m.ledgerLink(d))}
	case connections.RafterToBeam:
		for i, l := range m.lines {
			out = append(out, m.write(m.rafterJoint(kind, i, l.support, d), ""))
		}
		return out
	}
	for i := range m.lines {
		out = append(out, m.postLink(kind, i, d))
	}
	if kind == connections.BeamToPost && len(m.plan.splices) > 0 {
		for i := range m.lines {
			out = append(out, m.spliceLink(i, d))
		}
	}
	return out
}

// rafterJoint collects the demands on the joint of one rafter at a support.
func (m *model) rafterJoint(kind connections.Kind, line, support int, d *design) joint {
	return m.tippedRafter(kind, line, support, d, share{})
}

// tippedRafter collects them for a rafter that the push of a braced cover presses and lifts
// there as well, either way, by tip, lb of strength level.
func (m *model) tippedRafter(kind connections.Kind, line, support int, d *design, tip share) joint {
	j := joint{kind: kind, line: line, count: len(m.plan.rafters), per: PerJoint}
	along, out := m.sideways.at(kind)
	stands := burden{along: along.quake, out: out.quake, tip: tip.quake}
	stands.dead = m.rafter.reactionOf(&m.rafter.arr[0], support, &d.rafter).total()
	for i := range m.rafter.arr {
		a := &m.rafter.arr[i]
		r := m.rafter.reactionOf(a, support, &d.rafter)
		tipped := tip.wind * a.wind
		j.demand(a, r.total()+tipped, along, out)
		if kind == connections.LedgerToHouse {
			j.demands[len(j.demands)-1].Single = m.rafter.singleAt(a, support)
		}
		if tipped > 0 {
			j.demand(a, r.total()-tipped, along, out)
		}
		stands.snow = max(stands.snow, a.snowOf(r.total(), stands.dead))
		if a.least && a.self > 0 {
			j.lift.lower(lift{net: r.total() - tipped, dead: r.dead / a.self, windFactor: a.wind, deadFactor: a.self})
		}
	}
	j.shake(m, []burden{stands})
	return j
}

// demand adds what one arrangement asks. Sideways force comes with the wind.
func (j *joint) demand(a *arrangement, vertical float64, along, out share) {
	j.prying.raise(a, vertical)
	j.demands = append(j.demands, connections.Demand{
		Combination: a.name(), Duration: a.duration, Vertical: vertical, Along: along.wind * a.wind, Out: out.wind * a.wind,
	})
}

// postJoint collects the demands on a link of the posts of one line: the worst post.
func (m *model) postJoint(kind connections.Kind, line int, d *design) joint {
	l := m.lines[line]
	j := joint{kind: kind, line: line, count: l.posts, per: PerPost}
	height := 0.0
	if kind != connections.BeamToPost {
		height = m.postHeight(line, d.rafter.section.Depth, d.beam.section.Depth)
	}
	dead, stands := l.leastDead(m, d.woods()), make([]burden, l.posts)
	for i := range l.arr {
		a := &l.arr[i]
		own := d.post.weight(a.least) * height * a.self
		for n, force := range l.forces[i] {
			along, out, tip := m.throughPost(kind, line, n)
			if i == 0 {
				stands[n] = burden{dead: force + own, along: along.quake, out: out.quake, tip: tip.quake}
			}
			stands[n].snow = max(stands[n].snow, a.snowOf(force+own, stands[n].dead))
			tipped := tip.wind * a.wind
			j.demand(a, force+own+tipped, along, out)
			if tipped > 0 {
				j.demand(a, force+own-tipped, along, out)
			}
			if a.least && a.self > 0 {
				j.lift.lower(lift{
					net: force + own - tipped, dead: dead[n] + d.post.least*height,
					windFactor: a.wind, deadFactor: a.self,
				})
			}
		}
	}
	j.shake(m, stands)
	return j
}

// leastDead is the least dead load on each post, lb.
// The list is good until it is asked for again.
func (f *beamFrame) leastDead(m *model, w trio) []float64 {
	clear(f.leasts)
	for i := range f.pieces {
		p := &f.pieces[i]
		clear(p.leasts)
		f.dead(p.leasts, m, w, true)
		p.plan.Forces(p.leasts, &p.frame.forces)
		for s, r := range p.frame.forces.Reactions {
			f.leasts[p.firstPost+s] += r
		}
	}
	return f.leasts
}

// write condenses a joint to the link of the report.
func (m *model) write(j joint, reason string) Link {
	g := connections.Govern(j.demands)
	u := newRating(connections.NewUplift(windUp(j.lift), j.lift.dead, j.lift.windFactor, j.lift.deadFactor), j.prying)
	out := Link{
		Mark: mark(j.kind.Letter(), j.line), Name: j.kind.String(), From: j.kind.From(), To: j.kind.To(),
		Count: j.count, Per: j.per, Demands: condense(j.demands), Down: force(g.Down), Up: force(g.Up),
		Along: force(g.Along), Out: force(g.Out), Rating: u.rating, Hardware: hardware(m.joining(j.kind), j, u.rating),
		Stage: j.kind.Stage(), Verdict: NotChecked, Reason: reason, Calculation: u.Explain(),
		joint: j,
	}
	if reason == "" {
		out.Reason = "what makes it is not said"
	}
	return out
}

// windUp is the upward wind on a link at strength level, lb.
func windUp(l lift) float64 {
	if l.windFactor == 0 {
		return 0
	}
	return max(0, (l.deadFactor*l.dead-l.net)/l.windFactor)
}

// condense keeps, for each kind of combination, the arrangement with the largest
// downward and the one with the largest upward force, in the order of the list.
func condense(all []connections.Demand) []Demand {
	type pair struct{ down, up int }
	best := map[string]*pair{}
	for i, d := range all {
		p, ok := best[combinationOf(d.Combination)]
		if !ok {
			best[combinationOf(d.Combination)] = &pair{i, i}
			continue
		}
		if whole(d) > whole(all[p.down]) {
			p.down = i
		}
		if whole(d) < whole(all[p.up]) {
			p.up = i
		}
	}
	var out []Demand
	for i, d := range all {
		p := best[combinationOf(d.Combination)]
		lifts, presses := i == p.up && whole(d) < 0, i == p.down && whole(d) >= 0
		if !lifts && !presses {
			continue
		}
		out = append(out, Demand{Combination: d.Combination, Vertical: d.Vertical, Single: d.Single, Along: d.Along, Out: d.Out})
	}
	return out
}

// whole is the vertical force of a demand with what stands at one place, lb.
func whole(q connections.Demand) float64 { return q.Vertical + q.Single }

func force(p connections.Peak) Force { return Force{Value: p.Force, Combination: p.Combination} }

// joining says what makes a link. A post that is set in the ground has no base.
func (m *model) joining(kind connections.Kind) string {
	onBase := kind == connections.PostToBase || kind == connections.BaseToGround
	if onBase && *m.in.Foundation.Kind == "embedded" {
		return "hold of the footing on the post set in it, without a post base"
	}
	return kind.Hardware()
}

// hardware words what is asked for, and for how much of the cover where the joint is
// not one piece.
func hardware(joining string, j joint, rating float64) string {
	switch {
	case rating == 0:
		return joining + "; no net uplift"
	case j.kind == connections.Ground:
		return joining + " of " + pounds(rating/loads.HoldsDown) + " lb or more at each post: 0.6 of it must hold " +
			pounds(rating) + " lb of net uplift (ASD)"
	case j.per == PerFoot:
		return joining + ", rated " + pounds(rating) + " lb uplift or more for each foot of ledger (ASD, wind)"
	}
	return joining + ", rated " + pounds(rating) + " lb uplift or more (ASD, wind)"
}

// postLink writes a link of the posts of one line.
func (m *model) postLink(kind connections.Kind, line int, d *design) Link {
	out := m.write(m.postJoint(kind, line, d), "")
	if kind == connections.BeamToPost && len(m.plan.splices) > 0 {
		out.Hardware += "; at a splice each piece of beam is tied down on its own"
	}
	if tip := m.tipOf(kind, line); tip > 0 {
		more := "; the demands hold up to " + pounds(tip) + " lb up or down from the tipping of the braced cover"
		out.Hardware += more
		out.Reason += more
		out.aside = more
	}
	return out
}

// ledgerLink writes what the ledger hands to the house, per foot of ledger, with the
// maintenance load, which stands at one rafter, beside it. The ledger is taken to be as deep
// as the rafters; its weight helps nothing in uplift.
func (m *model) ledgerLink(d *design) Link {
	j := m.rafterJoint(connections.LedgerToHouse, 0, 0, d)
	perFoot := calc.Ft / m.plan.spacing
	j.count, j.per = int(math.Ceil(m.plan.width/calc.Ft)), PerFoot
	for i := range j.demands {
		q := &j.demands[i]
		q.Vertical = (q.Vertical - q.Single) * perFoot
		if q.Vertical > 0 {
			q.Vertical += d.rafter.most * calc.Ft
		}
	}
	j.lift.net *= perFoot
	j.lift.dead *= perFoot
	j.prying.uplift *= perFoot
	j.prying.asWind *= perFoot
	out := m.write(j, "the fasteners and the house framing behind the ledger are not checked")
	if why, refused := refusedWalls[*m.in.House.Wall]; refused {
		out.Verdict, out.Reason = Over, why
	}
	if *m.in.House.Wall == "unknown" {
		out.Verdict, out.Reason = OpenUp, "what stands behind the ledger is not known: open the wall or find the drawings"
	}
	if *m.in.Cover.Attachment == "rafter_tails" {
		out.To = "existing rafter tails"
		out.Reason = "the existing rafter tails, their heel joints and their seat cuts must be seen, and are not checked here"
	}
	return out
}

// refusedWalls are walls that a ledger must not be fastened to.
var refusedWalls = map[string]string{
	"brick_veneer": "a ledger may not be carried by brick veneer" + insteadOfVeneer,
	"stone_veneer": "a ledger may not be carried by stone veneer" + insteadOfVeneer,
}

// insteadOfVeneer cites the rule, which is that of deck ledgers, and what to do.
const insteadOfVeneer = " (IRC 2012 R507.2.2): use stand-offs designed through it, or a beam line at the wall"

// deckLink writes what the deck's fasteners must hold per square foot, at a corner
// of the roof. The framing does not count against the uplift of the deck.
func (m *model) deckLink() Link {
	j := joint{kind: connections.DeckToRafter, per: PerSquareFoot}
	j.count = int(math.Ceil(m.plan.width * m.plan.slope(m.plan.projection) / calc.SqFt))
	corner := []windCase{
		m.room.component("corner", m.wind.deck, m.wind.deck, 1), m.room.component("corner", m.wind.deck, m.wind.deck, -1),
	}
	for i := range m.rules.combos {
		c := &m.rules.combos[i]
		switch {
		case m.idle(c):
		case c.Wind == 0:
			m.onDeck(&j, c, windCase{})
		default:
			for _, w := range corner {
				if suits(c, w.down(), w.up()) {
					m.onDeck(&j, c, w)
				}
			}
		}
	}
	reason := "the nailing of the deck and the deck itself are not checked"
	if kind := m.deckKind(); kind != "" && kind != anotherDeck {
		reason = "the nailing of the deck is not checked; the deck itself is member " + deckMark
	}
	out := m.write(j, reason)
	out.Rating = 0
	out.Hardware = connections.DeckToRafter.Hardware()
	return out
}

// onDeck adds what one combination asks of a square foot of deck.
func (m *model) onDeck(j *joint, c *loads.Combination, w windCase) {
	a := newArrangement(c, pattern{}, w.name)
	cos := math.Cos(m.plan.angle)
	dead := m.layers(c.DeadLeast) * calc.SqFt
	if c.DeadLeast {
		dead *= cos // the wind lifts across the roof; of the weight only this share holds against it
	}
	force := c.Dead*dead + m.deckSnow(c)*cos*calc.SqFt + c.Wind*w.ends*calc.SqFt
	j.demand(&a, force, share{}, share{})
	if c.DeadLeast {
		j.lift.lower(lift{net: force, dead: dead, windFactor: c.Wind, deadFactor: c.Dead})
	}
}
