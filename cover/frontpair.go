package cover

import (
	"cmp"
	"math"

	"patiocover/connections"
)

// A pair is rafters of one class on one beam, with bounds from below.
type pair struct {
	cost, sag float64
	layout    int32
	class     int32
	beam      int32
}

// before orders pairs by their bounds, then by their places.
func (p pair) before(q pair) int {
	return cmp.Or(cmp.Compare(p.cost, q.cost), cmp.Compare(p.sag, q.sag), cmp.Compare(p.layout, q.layout),
		cmp.Compare(p.class, q.class), cmp.Compare(p.beam, q.beam))
}

// pair appends the pairs of the layout that the limits and the stock lengths allow.
func (l *layout) pair(to []pair, layout int) []pair {
	for c := range l.classes {
		if over(l.classes[c].rating, l.limits.Rating) {
			continue
		}
		for b := range l.beams {
			cost := l.pairLeast(c, b)
			if math.IsInf(cost, 1) || !l.clears(c, b) {
				continue
			}
			to = append(to, pair{
				cost: tidy(cost), sag: tidy(l.sagBound(c, b) - slack), layout: int32(layout), class: int32(c), beam: int32(b),
			})
		}
	}
	return to
}

// clears reports whether a class on a beam keeps the headroom and the limit of depth.
func (l *layout) clears(c, b int) bool {
	m, rafter, beam := l.main.m, l.classes[c].wood, &l.beams[b].wood
	return m.clearance(rafter, beam).Ratio() <= 1 && !over(m.depthOf(rafter, beam), l.limits.Depth)
}

// over reports whether a limit is set and passed.
func over(x, limit float64) bool { return limit > 0 && x > limit }

// promising weighs a pair, and reports whether it may be a point: the beam holds and nothing
// found beats the pair at its bounds. It allocates nothing.
func (l *layout) promising(p *pair) (FrontPoint, bool) {
	m, c, b := l.main.m, int(p.class), int(p.beam)
	q := FrontPoint{
		Cost: p.cost, Sag: p.sag, Posts: len(m.plan.lines) * len(m.plan.posts), Rating: l.classes[c].rating,
		Depth: m.depthOf(l.classes[c].wood, &l.beams[b].wood), order: l.order,
	}
	if l.front.beats(&q) || !l.holdsUp(c, b) {
		return q, false
	}
	q.Sag = tidy(l.sag(c, b))
	return q, !l.front.beats(&q)
}

// slack is what the bound of a sag is taken lower for the rounding of its digits, in.
const slack = 2 / tidyParts

// tieRating is the rating of the largest tie that a rafter asks for, lb. It allocates
// nothing.
func (m *model) tieRating(rafter *wood) float64 {
	most := 0.0
	for s := range m.rafter.supports {
		var j joint
		for i := range m.rafter.arr {
			a := &m.rafter.arr[i]
			r := m.rafter.reactionOf(a, s, rafter)
			j.prying.raise(a, r.total())
			if a.least && a.self > 0 {
				j.lift.lower(lift{net: r.total(), dead: r.dead / a.self, windFactor: a.wind, deadFactor: a.self})
			}
		}
		u := newRating(connections.NewUplift(windUp(j.lift), j.lift.dead, j.lift.windFactor, j.lift.deadFactor), j.prying)
		most = max(most, u.rating)
	}
	return most
}

// depthOf is the depth of the roof's frame, in.
func (m *model) depthOf(rafter, beam *wood) float64 {
	if m.plan.flush {
		return max(rafter.section.Depth, beam.section.Depth)
	}
	return rafter.section.Depth + beam.section.Depth
}
