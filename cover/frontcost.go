package cover

import (
	"math"

	"patiocover/calc"
	"patiocover/cover/cutting"
)

// lengths are the least lengths of stock that pieces are cut from, by what they are cut to:
// the same for every species and grade.
type lengths struct {
	sticks  []cutting.Stick
	rafters map[cutTo]stockLength // of all rafters with the ledger
	beams   map[cutTo]stockLength // of all beams; no depth
}

// A cutTo is what the length of pieces depends on.
type cutTo struct {
	depth float64 // in
	plies int
}

// A stockLength is what the pieces of a lot ask of the yard.
type stockLength struct {
	used  float64 // in, of the pieces; infinite where one is longer than any stock
	least float64 // in, of the sticks that they are cut from, or what is surely no more
}

// newLengths takes the stock lengths of the market.
func newLengths(m *model) lengths {
	l := lengths{rafters: map[cutTo]stockLength{}, beams: map[cutTo]stockLength{}}
	for _, ft := range m.in.Market.StockLengths {
		l.sticks = append(l.sticks, cutting.Stick{Length: ft * calc.Ft, Price: ft})
	}
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

// A price is the least that the pieces of one kind cost: where they are cut from sticks of
// their own, and where others may share their sticks, so that only what is used surely counts.
type price struct {
	alone  float64
	shared float64
}

// of prices a length of a stick, which may cost nothing.
func (s stockLength) of(c *stick) price {
	if math.IsInf(s.used, 1) {
		return price{s.used, s.used}
	}
	return price{s.least * c.rate, s.used * c.rate}
}

// rafterPrice is that of all rafters and the ledger, in the measure of the front.
func (l *layout) rafterPrice(c *stick) price {
	p, key := &l.main.m.plan, cutTo{c.wood.section.Depth, c.wood.plies()}
	at, known := l.lots.rafters[key]
	if !known {
		var pieces lot
		pieces.add("", p.slope(p.projection)+key.depth*p.rise, len(p.rafters)*key.plies) // both plumb cuts
		if p.attached && *l.full.Cover.Attachment == "ledger" {
			n := math.Ceil(p.width/l.main.m.longestStick() - leastBay)
			pieces.add("", p.width/n, int(n))
		}
		at = l.lots.of(&pieces)
		l.lots.rafters[key] = at
	}
	return at.of(c)
}

// beamPrice is that of all beams.
func (l *layout) beamPrice(c *stick) price {
	p, key := &l.main.m.plan, cutTo{plies: c.wood.plies()}
	at, known := l.lots.beams[key]
	if !known {
		var pieces lot
		for _, q := range p.pieces() {
			pieces.add("", q[1]-q[0], len(p.lines)*key.plies)
		}
		at = l.lots.of(&pieces)
		l.lots.beams[key] = at
	}
	return at.of(c)
}

// postPrice is that of all posts below rafters and beams of these depths, in.
func (l *layout) postPrice(c *stick, rafter, beam float64) price {
	m := l.main.m
	var pieces lot
	for i := range m.plan.lines {
		pieces.add("", m.postHeight(i, rafter, beam), len(m.plan.posts)*c.wood.plies())
	}
	return l.lots.of(&pieces).of(c)
}

// postPrices are those of each post under a class and a beam.
func (l *layout) postPrices(c, b int) []price {
	rafter, beam := &l.rafters[l.classes[c].sticks[0]], &l.beams[b]
	at := &l.byPost[rafter.depth*l.depths+beam.depth]
	if *at == nil {
		*at = make([]price, len(l.posts))
		for p := range l.posts {
			(*at)[p] = l.postPrice(l.posts[p].stick, rafter.wood.section.Depth, beam.wood.section.Depth)
		}
	}
	return *at
}

// least is the least that the wood of a cover costs.
func (l *layout) least(r, b, p int, posts []price) float64 {
	rafter, beam, post := &l.rafters[r], &l.beams[b], &l.posts[p]
	sum := 0.0
	add := func(x price, shared bool) {
		if shared {
			sum += x.shared
		} else {
			sum += x.alone
		}
	}
	add(rafter.price, rafter.mixed && (rafter.lot == beam.lot || rafter.lot == post.lot))
	add(beam.price, beam.mixed && (beam.lot == rafter.lot || beam.lot == post.lot))
	add(posts[p], post.mixed && (post.lot == rafter.lot || post.lot == beam.lot))
	return sum
}

// pairLeast is the least that the wood of any cover of a class on a beam costs.
func (l *layout) pairLeast(c, b int) float64 {
	posts, class := l.postPrices(c, b), &l.classes[c]
	least := math.Inf(1)
	if class.mixed || l.beams[b].mixed || l.mixed {
		for _, r := range class.sticks {
			for p := range posts {
				least = min(least, l.least(r, b, p, posts))
			}
		}
		return least
	}
	for _, x := range posts {
		least = min(least, x.alone)
	}
	return l.rafters[class.sticks[0]].alone + l.beams[b].alone + least
}
