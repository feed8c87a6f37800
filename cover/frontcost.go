package cover

import (
	"math"

	"patiocover/calc"
)

// bought is the length of the shortest stick that reaches, in; infinite where none does.
func (m *model) bought(length float64) float64 {
	least := math.Inf(1)
	for _, ft := range m.in.Market.StockLengths {
		if x := ft * calc.Ft; x >= length-tiny {
			least = min(least, x)
		}
	}
	return least
}

// rafterCost is the cost of all rafters and of the ledger, in the measure of the front.
func (m *model) rafterCost(c *stick) float64 {
	p := &m.plan
	slanted := p.slope(p.projection) + c.wood.section.Depth*p.rise // both plumb cuts
	sum := float64(len(p.rafters)*c.wood.plies()) * m.bought(slanted)
	if p.attached && *m.in.Cover.Attachment == "ledger" {
		n := math.Ceil(p.width/m.longestStick() - leastBay)
		sum += n * m.bought(p.width/n)
	}
	return sum * c.rate
}

// beamCost is that of the beams.
func (m *model) beamCost(c *stick) float64 {
	sum := 0.0
	for _, q := range m.plan.pieces() {
		sum += m.bought(q[1] - q[0])
	}
	return sum * float64(len(m.plan.lines)*c.wood.plies()) * c.rate
}

// postCost is that of the posts below rafters and beams.
func (m *model) postCost(c *stick, rafter, beam *wood) float64 {
	sum := 0.0
	for i := range m.plan.lines {
		sum += m.bought(m.postHeight(i, rafter.section.Depth, beam.section.Depth))
	}
	return sum * float64(len(m.plan.posts)*c.wood.plies()) * c.rate
}

// priced reports whether the user prices all wood of the space that has values.
func (s *Space) priced(in Input) bool {
	full, _ := in.Assume()
	all := func(woods []Wood, sizes []string, up makeup) bool {
		for _, w := range woods {
			st := newStock(&w.Species, &w.Grade, nil, false, false, "to_100F").made(up, full.Products)
			for _, size := range sizes {
				made, err := newWood(st, size)
				if err != nil {
					continue
				}
				if _, ok := rateOf(&made, w, full.Market.Prices, true); !ok {
					return false
				}
			}
		}
		return true
	}
	return all(s.RafterWoods, s.RafterSizes, full.Rafters.makeup()) && all(s.BeamWoods, s.BeamSizes, full.Beams.makeup()) &&
		all([]Wood{{*full.Posts.Species, *full.Posts.Grade}}, s.PostSizes, full.Posts.makeup())
}
