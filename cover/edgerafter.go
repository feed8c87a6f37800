package cover

import "patiocover/calc"

// edgeMember writes up the rafters at the two side edges, which carry the strip of roof
// beside them only, in the zones of the edge. The rafters inside are graded under every
// arrangement of these as well, so that they never govern.
func (m *model) edgeMember(d *design) Member {
	w, h := &d.rafter, m.rafterHolding(&d.rafter, &d.beam)
	r := m.rafter.atEdge(m)
	out := m.newMember("R2", "edge rafter", w, m.rafters, nil)
	out.Count, out.Length = edgeRafters, m.plan.slope(m.plan.projection)/calc.Ft
	var p peaks
	r.demands(w, true, &p)
	var g graded
	r.grade(w, &p, h, &g)
	m.addRafterChecks(r, w, h, &g, &out)
	out.Notes = []string{"Carries " + inches(calc.RoundUp(m.plan.edgeShare()*m.plan.spacing, 0.1)) +
		" of roof; wind in the zones of the side edges"}
	return out
}

// edgeRafters are the rafters at the side edges.
const edgeRafters = 2

// atEdge is the statics of a rafter at a side edge.
func (r *rafterFrame) atEdge(m *model) *rafterFrame {
	inner := *r.frame
	e := &rafterFrame{frame: &inner, points: r.points, placed: r.placed, supports: r.supports}
	e.arr, e.sag, e.blows = nil, nil, nil
	share := m.plan.edgeShare()
	var winds []windCase
	for _, w := range m.wind.rafter {
		w.share = min(w.share, share)
		winds = append(winds, w)
	}
	e.arrange(m, winds, share)
	e.fix(0)
	e.arrangeThrust()
	e.swing()
	return e
}

// edgeShare is the larger tributary share of the rafters at the side edges.
func (p *plan) edgeShare() float64 {
	return max(p.shares[0], p.shares[len(p.shares)-1])
}
