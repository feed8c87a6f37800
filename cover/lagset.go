package cover

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// pryingLever is the part of the distance from the far edge of the ledger to a fastener
// that is its lever against prying, ratio (statics, with the pressed edge as a wedge).
const pryingLever = 0.85

// A lagSet is one way to fasten the ledger, prepared for the checks of its lag screws.
type lagSet struct {
	m      *model
	way    lagging
	link   *Link
	design *design
	wall   wall
	depth  float64          // of the ledger, in
	share  float64          // ft of ledger that load the fasteners right behind a rafter
	pulled dowel.Withdrawal // W of one lag screw
	group  float64          // C_g, factor
}

// newLagSet prepares a way to fasten the ledger.
func (m *model) newLagSet(g lagging, l *Link, d *design) lagSet {
	s := lagSet{m: m, way: g, link: l, design: d, wall: m.wallBehind(), depth: d.rafter.section.Depth}
	stiffness := d.rafter.dry.Elasticity.Value * g.thick * math.Pow(s.depth, 3) / 12
	s.share = g.spread(m.plan.spacing, stiffness) * m.plan.spacing / calc.Ft
	held := min(g.lag.Length-g.thick-s.wall.gap, s.wall.main.Thickness)
	s.pulled = dowel.NewWithdrawal(g.lag, s.wall.main.Gravity, held, false)
	s.group = g.group(s.wall, d)
	return s
}

// on is a demand as it comes to the lag screws.
func (s *lagSet) on(q *connections.Demand) lagDemand {
	return s.way.onLags(*q, s.depth, s.wall.gap, s.share, s.m.tipOn(q))
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
func (s *lagSet) ratio(enough float64, first *int) float64 {
	demands := s.link.joint.demands
	most := s.under(&demands[*first])
	for i := 0; most < enough && i < len(demands); i++ {
		if most = max(most, s.under(&demands[i])); most >= enough {
			*first = i
		}
	}
	if most >= enough {
		return most
	}
	for _, w := range s.m.ledgerWood(s.way, s.link, s.design) {
		most = max(most, w.shear.Ratio())
	}
	bent, _ := s.m.bentLedger(s.way, s.link, s.design)
	most = max(most, bent.Ratio())
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
func (s *lagSet) write(c *Connector) {
	writeLags(c, s, "lag screws in shear", s.all)
	writeLags(c, s, "lag screws in withdrawal, with prying", s.pried)
	writeLags(c, s, "one lag screw in shear and withdrawal", s.one)
	writeLags(c, s, "steel of the lag screws", s.steel)
}

func writeLags[T calc.Result](c *Connector, s *lagSet, name string, check func(*lagDemand) T) {
	worst, by := worstOf(s.link.joint.demands, func(q connections.Demand) T {
		x := s.on(&q)
		return check(&x)
	})
	c.add(name, by, "each stud or spacing", worst)
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
