package cover

import (
	"fmt"
	"math"
)

// closureLimit is the largest gap between applied load and reactions that is taken
// for rounding; a larger one is a mistake of ours and stops the report.
const closureLimit = 0.001

// closure compares, for every load case, the load applied, from areas and pressures,
// with the reactions of the ledger and the posts, from the statics.
func (m *model) closure(d *design) ([]Closure, error) {
	p := &m.plan
	area := p.width * p.projection
	var out []Closure
	add := func(name string, applied, reactions float64) {
		gap := math.Abs(applied-reactions) / max(math.Abs(applied), 1)
		out = append(out, Closure{Case: name, Applied: applied, Reactions: reactions, Gap: gap})
	}
	for _, least := range []bool{false, true} {
		name, rafter, beam := "dead load at its most", d.rafter.most, d.beam.most
		if least {
			name, rafter, beam = "dead load at its least", d.rafter.least, d.beam.least
		}
		length := p.slope(p.projection)
		applied := m.layers(least)*p.width*length + rafter*length*float64(len(p.rafters)) +
			beam*p.width*float64(len(p.lines))
		add(name, applied, m.deadReactions(d, least))
	}
	if m.live > 0 {
		add("roof live load", m.live*area, m.planReactions(m.live))
	}
	if m.snow > 0 {
		add("snow", m.snow*area, m.planReactions(m.snow))
	}
	for _, c := range m.wind.across {
		add(c.name, (c.high+c.low)/2*area, m.windReactions(c))
	}
	for _, b := range m.wind.along {
		add(b.name, m.bandLoad(b), m.bandReactions(b))
	}
	for _, c := range out {
		if !(c.Gap <= closureLimit) {
			return nil, fmt.Errorf("closure of %s: applied %.3f lb, reactions %.3f lb", c.Case, c.Applied, c.Reactions)
		}
	}
	return out, nil
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
	beam := d.beam.most
	if least {
		beam = d.beam.least
	}
	for _, l := range m.lines {
		layers, own := m.rafter.deadAt(m, l.support, &d.rafter, least)
		sum += l.onPosts(func(coef []float64) {
			coef[0] = beam
			l.uniform(coef, layers)
			coef[eachCase(len(l.bays))] = own
		})
	}
	return sum
}

// uniform gives every rafter of a line the same force.
func (f *beamFrame) uniform(coef []float64, force float64) {
	coef[allCase(len(f.bays))] = force
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
