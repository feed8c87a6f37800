package cover

import (
	"math"

	"patiocover/calc"
	"patiocover/cover/cutting"
)

// lengths are the least lengths of stock that pieces are cut from, by what they are cut to:
// the same for every species and grade.
type lengths struct {
	m       *model
	sticks  []cutting.Stick
	rafters map[float64]stockLength // of one ply of all rafters with the ledger, by depth
	beams   stockLength             // of one ply of all beams
}

// A stockLength is what the pieces of a lot ask of the yard.
type stockLength struct {
	used  float64 // in, of the pieces; infinite where one is longer than any stock
	least float64 // in, of the sticks that they are cut from, or what is surely no more
}

// newLengths lays out the beams.
func newLengths(m *model) lengths {
	l := lengths{m: m, rafters: map[float64]stockLength{}}
	for _, ft := range m.in.Market.StockLengths {
		l.sticks = append(l.sticks, cutting.Stick{Length: ft * calc.Ft, Price: ft})
	}
	var pieces lot
	for range m.plan.lines {
		for _, q := range m.plan.pieces() {
			pieces.add("", q[1]-q[0], 1)
		}
	}
	l.beams = l.of(&pieces)
	return l
}

// of lays pieces into stock.
func (l *lengths) of(pieces *lot) stockLength {
	plan := cutting.New(pieces.pieces, l.sticks, sawKerf)
	for _, n := range plan.Unmet {
		if n > 0 {
			return stockLength{math.Inf(1), math.Inf(1)}
		}
	}
	if !plan.Exact {
		return stockLength{plan.Used, plan.Used}
	}
	return stockLength{plan.Used, plan.Bought}
}

// times is the length for plies of the same pieces: sticks may be shared between plies.
func (s stockLength) times(plies int) stockLength {
	if plies == 1 {
		return s
	}
	return stockLength{s.used * float64(plies), s.used * float64(plies)}
}

// rafterBound is the least that all rafters and the ledger cost, in the measure of the front.
func (l *layout) rafterBound(c *stick) float64 {
	p, depth := &l.main.m.plan, c.wood.section.Depth
	at, known := l.lots.rafters[depth]
	if !known {
		var pieces lot
		pieces.add("", p.slope(p.projection)+depth*p.rise, len(p.rafters)) // both plumb cuts
		if p.attached && *l.full.Cover.Attachment == "ledger" {
			n := math.Ceil(p.width/l.main.m.longestStick() - leastBay)
			pieces.add("", p.width/n, int(n))
		}
		at = l.lots.of(&pieces)
		l.lots.rafters[depth] = at
	}
	return l.bound(c, at.times(c.wood.plies()))
}

// beamBound is that of all beams.
func (l *layout) beamBound(c *stick) float64 { return l.bound(c, l.lots.beams.times(c.wood.plies())) }

// postCost is that of all posts below rafters and beams of these depths, in.
func (l *layout) postCost(c *stick, rafter, beam float64) float64 {
	m := l.main.m
	var pieces lot
	for i := range m.plan.lines {
		pieces.add("", m.postHeight(i, rafter, beam), len(m.plan.posts))
	}
	return l.bound(c, l.lots.of(&pieces).times(c.wood.plies()))
}

// bound is the least that a length of a stick costs. Of wood that members of another kind
// may be cut from as well, only what is used surely counts.
func (l *layout) bound(c *stick, at stockLength) float64 {
	if math.IsInf(at.used, 1) {
		return at.used
	}
	if l.yard.shared[c.item] {
		return at.used * c.rate
	}
	return at.least * c.rate
}
