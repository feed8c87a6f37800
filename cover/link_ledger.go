package cover

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
	"patiocover/connections/survey"
)

// The wall behind a ledger as it is taken where nothing better is known, in.
const (
	studBreadth  = 1.5 * calc.In
	studDepth    = 3.5 * calc.In
	rimThickness = 1.5 * calc.In
	sheathing    = 0.5 * calc.In
	stucco       = 0.875 * calc.In
	wideStuds    = 24 * calc.In
)

// A wall is what the ledger is fastened to.
type wall struct {
	studs   bool
	blocked bool
	gap     float64      // in between ledger and framing
	main    dowel.Member // framing
}

// connectLedger fastens the ledger to the house.
func (m *model) connectLedger(l *Link, d *design) {
	if l.Verdict == OpenUp || l.Verdict == Over || *m.in.Cover.Attachment == "rafter_tails" {
		l.Connector = Connector{Basis: NoConnector, What: "none"}
		return // an unknown or refused wall, or tails that are judged with the old roof
	}
	switch {
	case *m.in.Connections.Ledger == "none":
		l.refuse(Over, "nothing fastens the ledger to the house: choose its fasteners")
		return
	case *m.in.House.Wall == "masonry":
		l.refuse(NotChecked, "anchors of a ledger in masonry are not checked: their report and the wall decide")
		return
	}
	c := m.lagLedger(m.chooseLags(l, d), l, d)
	if m.in.Connections.LagSize != nil {
		c.Basis = GivenHardware
	}
	l.hold(c)
	unknown := m.unknownWall()
	switch {
	case l.Verdict == Over && len(unknown) > 0:
		l.Verdict = OpenUp
		l.Reason += "; the wall is taken at its weakest: see it, and give " + strings.Join(unknown, ", ")
	case m.in.Connections.WallGap == nil:
		l.Verdict = l.Verdict.Worse(OpenUp)
		l.Reason += "; what lies between ledger and framing is not known: see it, and give connections.wall_gap_in"
	}
	if m.alongStuds(l) {
		l.Verdict = l.Verdict.Worse(NotChecked)
		l.Reason += "; the force along the house pushes across the studs, closer to their edge than a lag screw may stand: " +
			"blocking between the studs must take it"
	}
}

// unknownWall lists what is not known of the wall.
func (m *model) unknownWall() []string {
	in := m.in.Connections
	var out []string
	if in.LagSpacing == nil && *m.in.House.Wall != "rim" {
		out = append(out, "connections.ledger_spacing_in")
	}
	if in.WallGap == nil {
		out = append(out, "connections.wall_gap_in")
	}
	if in.WallSpecies == nil {
		out = append(out, "connections.wall_species")
	}
	return out
}

// alongStuds reports whether a force along the house reaches studs without blocking.
func (m *model) alongStuds(l *Link) bool {
	return *m.in.House.Wall != "rim" && !*m.in.Connections.WallBlocked && l.Along.Value > 0
}

// wallBehind is the wall behind the ledger.
func (m *model) wallBehind() wall {
	in := m.in.Connections
	w := wall{studs: *m.in.House.Wall != "rim", blocked: *in.WallBlocked, gap: sheathing}
	w.main = dowel.Member{Gravity: survey.UnknownGravity, Thickness: studDepth}
	if !w.studs {
		w.main.Thickness = rimThickness
	}
	if *m.in.House.Wall == "stucco_on_studs" {
		w.gap += stucco
	}
	if in.WallGap != nil {
		w.gap = *in.WallGap * calc.In
	}
	if in.WallSpecies != nil {
		w.main.Gravity = gravityOf(*in.WallSpecies).Value // a species of the tables, checked with the input
	}
	return w
}

// chooseLags picks the first way to fasten the ledger that holds, or else the one with
// the least ratio. It only calculates; what it picks is written up by [model.lagLedger].
func (m *model) chooseLags(l *Link, d *design) lagging {
	all := m.laggings(d)
	over, first := math.Nextafter(1, 2), 0
	for _, g := range all {
		p := m.newLagPair(g, l, d)
		if p.ratio(over, &first) < over {
			return g
		}
	}
	best, least := all[0], math.Inf(1)
	for _, g := range all {
		p := m.newLagPair(g, l, d)
		if ratio := p.ratio(least, &first); ratio < least {
			best, least = g, ratio
		}
	}
	return best
}

// lagLedger writes up one way to fasten the ledger.
func (m *model) lagLedger(g lagging, l *Link, d *design) Connector {
	p := m.newLagPair(g, l, d)
	c := Connector{Basis: ProposedFasteners, lags: &g}
	at := "each stud"
	if !p.inside.wall.studs {
		at = inchWords(g.spacing) + " in along the rim"
	}
	c.What = fmt.Sprintf("%s at %s", several(g.each, fastenerWords(g.lag)), at)
	p.write(&c)
	for _, w := range m.ledgerWood(g, l, d) {
		c.add("ledger beside the lag screws, "+w.where, w.combination, w.where, w.shear)
	}
	bent, name := m.bentLedger(g, l, d)
	c.add("ledger between the lag screws", name, "between two studs or spacings", bent)
	joints := int(math.Ceil(m.plan.width/g.spacing-leastBay)) + 1
	c.part(fastenerWords(g.lag)+" with washer", g.each, joints)
	if more := g.ends - g.each; more > 0 {
		c.What += ", " + several(g.ends, "lag screw") + " at the first and the last"
		c.Parts[len(c.Parts)-1].Total += 2 * more
	}
	c.Notes = append(c.Notes, g.notes(p.inside.wall, p.inside.depth)...)
	return c
}

// notes say how the ledger is fastened and what was taken of the wall.
func (g lagging) notes(w wall, depth float64) []string {
	notes := []string{
		fmt.Sprintf("Rows %s in from the top and bottom edge, staggered; the last %s in from the ends; "+
			"lead holes of 40 to 70 %% of the diameter for the thread, washers under the heads",
			inchWords(calc.RoundUp(g.edge(depth), 1.0/16)), inchWords(g.fromEnd())),
		fmt.Sprintf("Taken of the wall: framing of G %s, %s in between it and the ledger, lag screws in the middle of the studs",
			calc.Number(w.main.Gravity), calc.Number(w.gap)),
		"The table of deck ledgers (IRC 2021 R507.9.1.3) is for floor loads downward and is not used",
	}
	if !w.studs {
		notes[1] = fmt.Sprintf("Taken of the wall: a rim of 1-1/2 in, G %s, %s in between it and the ledger",
			calc.Number(w.main.Gravity), calc.Number(w.gap))
	}
	return slices.Clip(notes)
}

// single is the largest load of the demands that stands at one place, down, and up where a
// foot of dead load does not hold it, lb.
func (j *joint) single() (down, up float64) {
	for _, q := range j.demands {
		down = max(down, q.Single)
		if whole(q) < 0 {
			up = max(up, -q.Single)
		}
	}
	return down, up
}

// houseLink says what the house behind the ledger must carry: a link of its own, which
// is not good because the ledger is well fastened.
func (m *model) houseLink(ledger Link) Link {
	out := ledger
	out.joint.kind = connections.HouseFraming
	kind := connections.HouseFraming
	out.Mark, out.Name, out.From, out.To = mark(kind.Letter(), 0), kind.String(), kind.From(), kind.To()
	out.Stage, out.Hardware = kind.Stage(), hardware(kind.Hardware(), out.joint, out.Rating)
	out.Connector = Connector{Basis: NoConnector, What: "none"}
	switch {
	case *m.in.House.Wall == "unknown":
		out.Verdict, out.Reason = OpenUp, "what stands behind the ledger is not known: open the wall or find the drawings"
	case *m.in.Connections.WallFraming == "verified":
		out.Verdict = OK
		out.Connector = Connector{Basis: GivenHardware, What: "framing that drawings or an engineer show to carry the forces of this link"}
		out.Reason = "given as verified: the studs, plates and their own ties down to the foundation carry the forces of this link"
	default:
		out.Verdict = NotChecked
		out.Reason = "the studs or the rim, the plates and their ties down to the foundation are not checked: " +
			"show that they carry the forces of this link, up as well as down"
	}
	down, up := ledger.joint.single()
	if down > 0 {
		out.Reason += ", and " + pounds(down) + " lb more down at any one place"
	}
	if up > 0 {
		out.Reason += ", or " + pounds(up) + " lb more up"
	}
	if tip := m.asd(m.ledgerTip()); tip > 0 {
		out.Reason += ", and " + pounds(tip) + " lb more either way behind the rafter at each braced post"
	}
	return out
}
