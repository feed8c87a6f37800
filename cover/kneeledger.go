package cover

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/connections"
)

// atKnee is where the checks of a rafter at a braced post stand.
const atKnee = "rafter at a braced post to ledger"

// ledgerTip is the largest force, up or down, that the braces out from the house bring to
// the ledger end of the rafters at one post, lb of strength level; none where no brace leans
// on a ledger.
func (m *model) ledgerTip() share {
	r := &m.racking[outward]
	if !r.braced() || r.first == 0 {
		return share{}
	}
	most, p := share{}, &m.sideways.out
	for line := range m.plan.lines {
		for _, column := range r.columns {
			part := column * m.parts[outward][line] * float64(len(m.plan.lines)) * r.row.Posts[0].Foot * m.roofLever(line) / m.knee.reach
			most = share{max(most.wind, p.wind.Force*part), max(most.quake, p.quake.Force*part)}
		}
	}
	return most
}

// roofLever is the height above the feet of a line at which the push on the roof acts, in.
func (m *model) roofLever(line int) float64 {
	return max(m.plan.mean(), m.postHeight(line, m.onTrial.rafter.section.Depth, m.onTrial.beam.section.Depth))
}

// tipOn is the force of the braces on the ledger beside a demand, lb, in its sense: all of
// it with any wind or earthquake, which is safe where only a part of the wind acts.
func (m *model) tipOn(q *connections.Demand) float64 {
	if q.Duration != lumber.TenMinutes {
		return 0
	}
	return m.asd(m.ledgerTip())
}

// ledgerKnee is the joint of the rafters at a braced post to the ledger: what every rafter
// asks there, and what the braces bring on top, up or down.
func (m *model) ledgerKnee(d *design) []Link {
	tip := m.ledgerTip()
	if tip == (share{}) {
		return nil
	}
	j := m.tippedRafter(connections.RafterToLedger, 0, 0, d, tip)
	j.count = len(m.plan.posts)
	l := m.write(j, "")
	l.Mark, l.Name, l.From, l.To, l.Count = kneeMark+"2", atKnee, "rafter", "ledger", j.count
	m.hangAtKnee(&l, d)
	return []Link{l}
}

// hangAtKnee hangs the rafters side by side at a braced post in one hanger of a rating of its
// own. The fasteners of the ledger behind it are checked with the ledger.
func (m *model) hangAtKnee(l *Link, d *design) {
	if *m.in.Cover.Attachment == "rafter_tails" {
		l.refuse(NotChecked, "it presses and lifts single tails of the old roof, which are not checked for that")
		return
	}
	group := *d
	group.rafter.seat.Section.Breadth *= float64(m.kneed.plies)
	m.connectHanger(l, &group, nil, nil, nil)
	if l.Connector.Basis == NoConnector {
		return
	}
	seat := member.Seat{Width: group.rafter.seat.Section.Breadth, Length: hangerSeat}
	pressed, name := worstOf(l.joint.demands, func(q connections.Demand) member.Bearing {
		return member.NewBearing(max(0, q.Vertical), &d.rafter.seat, seat)
	})
	c := l.Connector
	c.add("rafter on the seat of the hanger", name, "at a braced post", pressed)
	c.Notes = append(c.Notes, "It takes all rafters side by side at the post, and stands beside or in place of the ordinary hanger")
	l.hold(c)
}
