package cover

import (
	"fmt"
	"math"
)

// closureLimit is the largest gap between applied load and reactions that is taken
// for rounding; a larger one is a mistake of ours and stops the report.
const closureLimit = 0.001

// A balance is the applied load of one case and the reactions under it, lb, + down.
type balance struct {
	name               string
	applied, reactions float64
}

// plus returns the sum of two balances, the second with a factor.
func (b balance) plus(factor float64, other balance) balance {
	b.applied += factor * other.applied
	b.reactions += factor * other.reactions
	return b
}

// closure compares, for every load case and combination, the load applied, from areas
// and pressures, with the reactions of the ledger and the posts, from the statics.
func (m *model) closure(d *design) ([]Closure, error) {
	area := m.plan.width * m.plan.projection
	most, least := m.deadBalance(d, false), m.deadBalance(d, true)
	live := balance{"roof live load", m.live * area, m.planReactions(m.live)}
	even := m.snow.even(0)
	snow := balance{"snow", even * area, m.planReactions(even)}
	var winds []balance
	for _, c := range m.wind.across {
		winds = append(winds, balance{c.name, (c.high + c.low) / 2 * area, m.windReactions(c)})
	}
	for _, b := range m.wind.along {
		winds = append(winds, balance{b.name, m.bandLoad(b), m.bandReactions(b)})
	}
	all := append([]balance{most, least, live, snow}, winds...)
	for i, h := range m.snow.heaps {
		all = append(all, balance{h.name, h.total() * m.plan.width, m.heapReactions(i)})
	}
	for i := range m.rules.combos {
		c := &m.rules.combos[i]
		if m.idle(c) {
			continue
		}
		dead := most
		if c.DeadLeast {
			dead = least
		}
		sum := balance{name: c.Name}.plus(c.Dead, dead).plus(c.RoofLive, live).plus(c.Snow, snow)
		if c.Wind == 0 {
			all = append(all, sum)
			continue
		}
		for _, w := range winds {
			if suits(c, w.applied > 0, w.applied < 0) {
				sum := sum.plus(c.Wind, w)
				sum.name = c.Name + ", " + w.name
				all = append(all, sum)
			}
		}
	}
	return written(all)
}

// written turns balances into the rows of the report, and stops at a gap.
func written(all []balance) ([]Closure, error) {
	var out []Closure
	for _, b := range all {
		c := Closure{
			Case: b.name, Applied: b.applied, Reactions: b.reactions,
			Gap: math.Abs(b.applied-b.reactions) / max(math.Abs(b.applied), 1),
		}
		if !(c.Gap <= closureLimit) {
			return nil, fmt.Errorf("closure of %s: applied %.3f lb, reactions %.3f lb", c.Case, c.Applied, c.Reactions)
		}
		out = append(out, c)
	}
	return out, nil
}

// deadBalance is the balance of the dead load: layers by the area of the slope, wood by
// its length.
func (m *model) deadBalance(d *design, least bool) balance {
	p := &m.plan
	length := p.slope(p.projection)
	applied := m.layers(least)*p.width*length + d.rafter.weight(least)*length*float64(len(p.rafters)) +
		d.beam.weight(least)*p.width*float64(len(p.lines))
	return balance{deadName(least), applied, m.deadReactions(d, least)}
}

// onLedger is the sum over all rafters of a vertical ledger reaction that goes with
// the tributary width, and one that each rafter has once.
func (m *model) onLedger(byWidth, each float64) float64 {
	if !m.plan.attached {
		return 0
	}
	sum := each * float64(len(m.plan.rafters))
	for _, share := range m.plan.shares {
		sum += byWidth * share
	}
	return sum
}

// onPosts is the sum of the post forces of a line, with the factors set by fill.
func (f *beamFrame) onPosts(fill func(coef []float64)) float64 {
	sum := 0.0
	for i := range f.pieces {
		p := &f.pieces[i]
		coef := make([]float64, len(p.normal))
		fill(coef)
		p.plan.Forces(coef, &p.frame.forces)
		for _, r := range p.frame.forces.Reactions {
			sum += r
		}
	}
	return sum
}

func (m *model) deadReactions(d *design, least bool) float64 {
	layers, own := m.rafter.deadAt(m, 0, &d.rafter, least)
	sum := m.onLedger(layers, own)
	for _, l := range m.lines {
		sum += l.onPosts(func(coef []float64) { l.dead(coef, m, d.woods(), least) })
	}
	return sum
}

// planReactions are the reactions under a load on all of the plan.
func (m *model) planReactions(onPlan float64) float64 {
	unit := onPlan * m.plan.spacing * m.rafter.cosine
	sum := m.onLedger(unit*m.rafter.unit[0][0], 0)
	for _, l := range m.lines {
		sum += l.onPosts(func(coef []float64) { l.uniform(coef, unit*m.rafter.unit[l.support][0]) })
	}
	return sum
}

// heapReactions are the reactions under a heap of snow alone.
func (m *model) heapReactions(k int) float64 {
	unit := m.snow.heaps[k].peak * m.plan.spacing * m.rafter.cosine
	c := m.rafter.heapCase(k)
	sum := m.onLedger(unit*m.rafter.unit[0][c], 0)
	for _, l := range m.lines {
		sum += l.onPosts(func(coef []float64) { l.uniform(coef, unit*m.rafter.unit[l.support][c]) })
	}
	return sum
}

func (m *model) windReactions(w windCase) float64 {
	sum := m.onLedger(m.rafter.windAt(m, 0, w), 0)
	for _, l := range m.lines {
		sum += l.onPosts(func(coef []float64) { l.uniform(coef, m.rafter.windAt(m, l.support, w)) })
	}
	return sum
}

// bandLoad is the load of wind along the house from the areas of its bands.
func (m *model) bandLoad(b windBand) float64 {
	h := m.plan.mean()
	sum, from := 0.0, 0.0
	for i, net := range b.net {
		to := min(m.plan.width, float64(i+1)*h)
		if i == bands-1 {
			to = m.plan.width
		}
		sum += net * max(0, to-from) * m.plan.projection
		from = max(from, to)
	}
	return sum
}

func (m *model) bandReactions(b windBand) float64 {
	sum := 0.0
	if m.plan.attached {
		for i := range m.plan.rafters {
			for band, share := range m.bandShares(i, 1) {
				sum += share * m.rafter.windAt(m, 0, windCase{high: b.net[band], low: b.net[band]})
			}
		}
	}
	for _, l := range m.lines {
		n := len(l.bays)
		sum += l.onPosts(func(coef []float64) {
			for band, net := range b.net {
				coef[bandCase(n, 1, band)] = m.rafter.windAt(m, l.support, windCase{high: net, low: net})
			}
		})
	}
	return sum
}
