package cover

import (
	"math"
	"slices"

	"patiocover/beam"
)

// A contest finds which of the arrangements of a member can bring a peak.
type contest struct {
	f        *frame
	corners  []corner
	count    int // of arrangements
	readings []reading
	factors  func(i int, w *wood) []float64
	class    func(i int) int // below classes; only arrangements of one class are compared
	solve    func(factors []float64, r *beam.Response)
	demands  [][]float64 // by corner; of arrangement i the readings from i times their number
	leaders  []leader
}

// classes is the most classes of a contest.
const classes = 2 * durations

// A leader is an arrangement that brings the largest reading at a corner, with what it
// surely brings, at one place, at every corner.
type leader struct {
	by, reading, corner int
	place               float64
	left                bool
	sure                []float64 // by corner
}

// winners returns the arrangements that can bring a peak, in order.
func (c *contest) winners() []int {
	c.measure()
	c.lead()
	c.assure()
	won := make([]bool, c.count)
	for _, l := range c.leaders {
		won[l.by] = true
	}
	var out []int
	for i := range c.count {
		if won[i] || c.stands(i) {
			out = append(out, i)
		}
	}
	return out
}

// measure reads every demand of every arrangement at every corner.
func (c *contest) measure() {
	for _, k := range c.corners {
		k.set()
		all := make([]float64, 0, c.count*len(c.readings))
		for i := range c.count {
			c.solve(c.factors(i, k.wood), &c.f.forces)
			for _, q := range c.readings {
				all = append(all, q.of(&c.f.forces))
			}
		}
		c.demands = append(c.demands, all)
	}
}

// set loads the member for the corner.
func (k corner) set() {
	if k.load != nil {
		k.load()
	}
}

func (c *contest) demand(corner, i, q int) float64 { return c.demands[corner][i*len(c.readings)+q] }

// lead finds the leaders: for each class and reading the first of the largest at every
// corner.
func (c *contest) lead() {
	for q := range c.readings {
		for k := range c.corners {
			var best [classes]int // by class, from 1
			for i := range c.count {
				at := best[c.class(i)]
				if d := c.demand(k, i, q); d > 0 && (at == 0 || d > c.demand(k, at-1, q)) {
					best[c.class(i)] = i + 1
				}
			}
			for _, at := range best {
				if at > 0 && !c.leads(at-1, q) {
					c.leaders = append(c.leaders, leader{by: at - 1, reading: q, corner: k})
				}
			}
		}
	}
}

// leads reports whether the arrangement is a leader of the reading already.
func (c *contest) leads(i, q int) bool {
	return slices.ContainsFunc(c.leaders, func(l leader) bool { return l.by == i && l.reading == q })
}

// assure finds what each leader surely brings: its reading at the place where it is
// largest at its own corner.
func (c *contest) assure() {
	slices.SortStableFunc(c.leaders, func(a, b leader) int { return a.by - b.by })
	var l beam.Location
	for k, at := range c.corners {
		at.set()
		last := -1
		for n := range c.leaders {
			lead := &c.leaders[n]
			if lead.corner != k {
				continue
			}
			q := c.readings[lead.reading]
			factors := c.factors(lead.by, at.wood)
			if lead.by != last {
				last = lead.by
				c.f.plan.Locate(factors, 1, &l)
			}
			lead.place = q.where(c.f, &l)
			lead.left = q.atPlace(c.f.plan, factors, lead.place, true) > q.atPlace(c.f.plan, factors, lead.place, false)
		}
	}
	for _, at := range c.corners {
		at.set()
		for n := range c.leaders {
			lead := &c.leaders[n]
			lead.sure = append(lead.sure,
				c.readings[lead.reading].atPlace(c.f.plan, c.factors(lead.by, at.wood), lead.place, lead.left))
		}
	}
}

// stands reports whether arrangement i is ahead of every leader in some reading.
func (c *contest) stands(i int) bool {
	for q := range c.readings {
		if c.positive(i, q) && !c.behind(i, q) {
			return true
		}
	}
	return false
}

// positive reports whether a reading of the arrangement is above zero at some corner.
func (c *contest) positive(i, q int) bool {
	for k := range c.corners {
		if c.demand(k, i, q) > 0 {
			return true
		}
	}
	return false
}

// behind reports whether some leader is ahead of arrangement i at all corners.
func (c *contest) behind(i, q int) bool {
	const rounding = 1e-12 // ratio
	for n := range c.leaders {
		l := &c.leaders[n]
		ahead := l.reading == q && c.class(l.by) == c.class(i)
		for k := 0; ahead && k < len(c.corners); k++ {
			d := c.demand(k, i, q)
			ahead = d <= l.sure[k]+rounding*math.Abs(d)
		}
		if ahead {
			return true
		}
	}
	return false
}
