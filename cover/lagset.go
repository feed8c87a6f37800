package cover

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/springs"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// pryingLever is the part of the distance from the far edge of the ledger to a fastener
// that is its lever against prying, ratio (statics, with the pressed edge as a wedge).
const pryingLever = 0.85

// A lagSet is one way to fasten the ledger, prepared for the checks of its lag screws inside
// or at an end.
type lagSet struct {
	m      *model
	way    lagging
	link   *Link
	design *design
	wall   wall
	depth  float64 // of the ledger, in
	at     station
	pulled dowel.Withdrawal // W of one lag screw
	group  float64          // C_g, factor
}

// A lagPair is the two places of one way to fasten the ledger.
type lagPair struct {
	inside, end lagSet
	row         springs.Row
	whole       bool // the end is prepared
}

// newLagPair prepares a way to fasten the ledger, its end only when it is asked for.
func (m *model) newLagPair(g lagging, l *Link, d *design) lagPair {
	row := g.row(d.rafter.dry.Elasticity.Value * g.thick * math.Pow(d.rafter.section.Depth, 3) / 12)
	rafters := m.plan.spacing
	return lagPair{row: row, inside: m.newLagSet(g, l, d, station{
		where: "each stud or spacing", feet: g.spacing / calc.Ft,
		even: row.Even(rafters) * rafters / calc.Ft, single: row.Inside(), tip: 1,
	})}
}

// atEnd is the set of the first and the last place. It takes what stands on the tip of the
// ledger, a rafter with half a strip of roof among it.
func (p *lagPair) atEnd() *lagSet {
	if p.whole {
		return &p.end
	}
	in := &p.inside
	rafters, single := in.m.plan.spacing, p.row.End()
	p.whole, p.end = true, in.m.newLagSet(in.way.atEnd(), in.link, in.design, station{
		where: "the first and the last", feet: (p.row.Apart/2 + in.way.fromEnd()) / calc.Ft,
		even: p.row.EvenAtEnd(rafters) * rafters / calc.Ft, single: single, tip: max(1, single),
	})
	return &p.end
}

// newLagSet prepares the lag screws of a station.
func (m *model) newLagSet(g lagging, l *Link, d *design, at station) lagSet {
	s := lagSet{m: m, way: g, link: l, design: d, wall: m.wallBehind(), depth: d.rafter.section.Depth, at: at}
	held := min(g.lag.Length-g.thick-s.wall.gap, s.wall.main.Thickness)
	s.pulled = dowel.NewWithdrawal(g.lag, s.wall.main.Gravity, held, false)
	s.group = g.group(s.wall, d)
	return s
}

// on is a demand as it comes to the lag screws.
func (s *lagSet) on(q *connections.Demand) lagDemand {
	return s.way.onLags(*q, s.depth, s.wall.gap, &s.at, s.m.tipOn(q))
}

// shear is the check of n of the lag screws sideways under a force, lb.
func (s *lagSet) shear(x *lagDemand, force float64, n int) dowel.Shear {
	side, main := dowel.Member{Gravity: woodGravity(&s.design.rafter), Thickness: s.way.thick}, s.wall.main
	side.Angle, main.Angle = 90-x.angle, x.angle // stud: the vertical load runs along its grain
	if !s.wall.studs {
		main.Angle = side.Angle
	}
	if s.wall.blocked && x.along > 0 {
		main.Angle = max(x.angle, 90-x.angle) // shared with blocking, whose grain runs the other way
	}
	lag := s.way.lag
	v := dowel.NewLateral(lag, dowel.Joint{Side: side, Main: main, Gap: s.wall.gap})
	f := dowel.LateralFactors(lag.Kind, s.m.lagConditions(s.way, x, s.design))
	return dowel.NewShear(force, v, f.With(s.group, s.way.placed(*x, s.wall, s.depth)), n)
}

// pull is the check of n of the lag screws in withdrawal under a force, lb.
func (s *lagSet) pull(x *lagDemand, force float64, n int) dowel.Pull {
	return dowel.NewPull(force, s.pulled, dowel.WithdrawalFactors(s.way.lag.Kind, s.m.lagConditions(s.way, x, s.design)), n)
}

// all is the check of the lag screws at a stud or spacing, sideways.
func (s *lagSet) all(x *lagDemand) dowel.Shear { return s.shear(x, x.shear, s.way.each) }

// pried is the check of the row that prying pulls at, in withdrawal.
func (s *lagSet) pried(x *lagDemand) dowel.Pull { return s.pull(x, x.pull, s.way.pulling()) }

// one is the check of a lag screw of that row, sideways and outward at once.
func (s *lagSet) one(x *lagDemand) dowel.Slanted {
	return dowel.NewSlanted(s.shear(x, x.shear/float64(s.way.each), 1), s.pull(x, x.pull/float64(s.way.pulling()), 1))
}

// steel is the check of that row in tension.
func (s *lagSet) steel(x *lagDemand) dowel.Rod {
	return dowel.NewRod(x.pull, s.way.lag, lumber.ASD, s.way.pulling())
}

// ratio is the largest ratio of the checks, or one of them that reaches enough. It begins
// with the demand that first says, and leaves there the one that reached enough: what broke
// one way to fasten the ledger mostly breaks the next.
func (p *lagPair) ratio(enough float64, first *int) float64 {
	in := &p.inside
	demands := in.link.joint.demands
	most := p.under(&demands[*first], enough)
	for i := 0; most < enough && i < len(demands); i++ {
		if most = max(most, p.under(&demands[i], enough)); most >= enough {
			*first = i
		}
	}
	if most >= enough {
		return most
	}
	for _, w := range in.m.ledgerWood(in.way, in.link, in.design) {
		most = max(most, w.shear.Ratio())
	}
	bent, _ := in.m.bentLedger(in.way, in.link, in.design)
	most = max(most, bent.Ratio())
	return most
}

// under is the largest ratio of the lag screws of both places under one demand, or that of
// one place if it reaches enough.
func (p *lagPair) under(q *connections.Demand, enough float64) float64 {
	most := p.inside.under(q)
	if most < enough {
		most = max(most, p.atEnd().under(q))
	}
	return most
}

// under is the largest ratio of the lag screws under one demand.
func (s *lagSet) under(q *connections.Demand) float64 {
	x := s.on(q)
	one := s.one(&x)
	all := dowel.NewShear(x.shear, one.Shear.Lateral, one.Shear.Factors, s.way.each)
	return max(all.Ratio(), s.pried(&x).Ratio(), one.Ratio(), s.steel(&x).Ratio())
}

// write writes up the worst check of each kind.
func (p *lagPair) write(c *Connector) {
	writeLags(c, p, "lag screws in shear", (*lagSet).all)
	writeLags(c, p, "lag screws in withdrawal, with prying", (*lagSet).pried)
	writeLags(c, p, "one lag screw in shear and withdrawal", (*lagSet).one)
	writeLags(c, p, "steel of the lag screws", (*lagSet).steel)
}

func writeLags[T calc.Result](c *Connector, p *lagPair, name string, check func(*lagSet, *lagDemand) T) {
	worst := func(s *lagSet) (T, string) {
		return worstOf(s.link.joint.demands, func(q connections.Demand) T {
			x := s.on(&q)
			return check(s, &x)
		})
	}
	inside, by := worst(&p.inside)
	end, byEnd := worst(p.atEnd())
	if end.Ratio() > inside.Ratio() {
		c.add(name, byEnd, p.end.at.where, end)
		return
	}
	c.add(name, by, p.inside.at.where, inside)
}

// lagConditions are those of the lag screws under a demand.
func (m *model) lagConditions(g lagging, x *lagDemand, d *design) dowel.Conditions {
	c := m.conditions(x.duration, d.rafter.dry.Use.Wet)
	c.Rows = g.each > 1
	return c
}

// group is C_g of the lag screws at a stud, of the weakest framing. The ledger is
// loaded across its grain, so that a strip of it counts (NDS 2018 11.3.6.3).
func (g lagging) group(w wall, d *design) float64 {
	least := dowel.NewNeeds(g.lag, g.thick, dowel.TowardEnd).Row.Least
	return dowel.NewGroup(dowel.Row{
		Count: g.each, Spacing: g.between(d.rafter.section.Depth), Diameter: g.lag.Diameter,
		MainModulus: softest, SideModulus: d.rafter.dry.Elasticity.Value,
		MainArea: studBreadth * w.main.Thickness, SideArea: dowel.CrossArea(g.thick, 0, least),
	}).Factor
}

// softest is the modulus of framing whose grade is not known, psi (NDS 2018 Supplement
// Table 4A: the lowest of the lightest species).
const softest = 0.8e6 * calc.PSI
