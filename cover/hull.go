package cover

import (
	"math"
	"slices"

	"patiocover/beam"
)

// A hull lists what can bring a peak of a member, whichever of its candidates it is
// made of. Every demand is a convex function of the factors of the load cases, and
// these depend evenly on the weight of the wood; so an arrangement that is behind
// another one with the lightest and with the heaviest candidate is behind it with all
// between them, and need not be tried.
type hull struct {
	strength     []int // arrangements
	sag          []int // placings of live or snow load for deflection
	light, heavy *wood // candidates that bound the weight; nil for none
	kcr          float64
	strange      bool // what the member carries lies outside the bounds
}

// A corner is one set of extreme weights: what loads the member, and the member.
type corner struct {
	load func() // nil where nothing but the wood counts
	wood *wood
}

// bounds returns the lightest and the heaviest of the candidates.
func bounds(candidates []wood) (light, heavy *wood) {
	light, heavy = &candidates[0], &candidates[0]
	for i := range candidates {
		w := &candidates[i]
		if w.most < light.most {
			light = w
		}
		if w.most > heavy.most {
			heavy = w
		}
	}
	return light, heavy
}

// distinct leaves out the second of two that are one.
func distinct(light, heavy *wood) []*wood {
	if light == heavy {
		return []*wood{light}
	}
	return []*wood{light, heavy}
}

// between reports whether the weights of the wood lie on the line from the lightest to
// the heaviest candidate.
func between(w, light, heavy *wood) bool {
	const near = 1e-9 // of a weight, ratio
	t := 0.0
	if heavy.most > light.most {
		t = (w.most - light.most) / (heavy.most - light.most)
	}
	apart := math.Abs(light.most+t*(heavy.most-light.most)-w.most) +
		math.Abs(light.least+t*(heavy.least-light.least)-w.least)
	return -near <= t && t <= 1+near && apart <= near*w.most
}

// covers reports whether the hull holds for the wood.
func (h *hull) covers(w *wood) bool {
	return !h.strange && h.light != nil && w.seasoning().Kcr() == h.kcr && between(w, h.light, h.heavy)
}

// newHull finds what can bring a peak at any weight between the corners.
func (f *frame) newHull(corners []corner, light, heavy *wood) hull {
	h := hull{light: light, heavy: heavy, kcr: light.seasoning().Kcr()}
	strength := contest{
		f: f, corners: corners, count: len(f.arr), readings: f.strengthReadings(), solve: f.plan.Forces,
		factors: func(i int, w *wood) []float64 { return f.factors(&f.arr[i], w) },
		class:   func(i int) int { return int(f.arr[i].duration) },
	}
	sag := contest{
		f: f, corners: corners, count: len(f.sag), readings: f.sagReadings(),
		solve:   func(n []float64, r *beam.Response) { f.plan.Run(n, 1, r) },
		factors: f.sagFactors,
		class:   func(int) int { return 0 },
	}
	h.strength, h.sag = strength.winners(), sag.winners()
	return h
}

// A reading is one demand that is read from the forces of a member, with the sign that
// makes it count.
type reading struct {
	kind readingKind
	at   int // bay or support
	sign float64
}

type readingKind uint8

const (
	momentIn    readingKind = iota // in a bay
	shearOf                        // anywhere
	moveIn                         // deflection in a bay
	momentOver                     // at a support
	shearBeside                    // at a support, that of a reaction that presses or holds down
)

// strengthReadings lists the demands that strength is graded by.
func (f *frame) strengthReadings() []reading {
	out := []reading{{shearOf, 0, 1}, {shearOf, 0, -1}}
	for b := range f.bays {
		if f.bays[b].length > 0 {
			out = append(out, reading{momentIn, b, 1}, reading{momentIn, b, -1})
		}
	}
	for s := 0; f.atCuts && s < len(f.unit); s++ {
		out = append(out, reading{momentOver, s, 1}, reading{momentOver, s, -1},
			reading{shearBeside, s, 1}, reading{shearBeside, s, -1})
	}
	return out
}

// sagReadings lists the deflections that are graded.
func (f *frame) sagReadings() []reading {
	var out []reading
	for b, bay := range f.bays {
		if bay.length > 0 {
			out = append(out, reading{moveIn, b, 1})
			if !bay.cantilever {
				out = append(out, reading{moveIn, b, -1})
			}
		}
	}
	return out
}

// of is the demand under solved forces.
func (q reading) of(r *beam.Response) float64 {
	high, low := 0.0, 0.0
	switch q.kind {
	case momentIn:
		high, low = r.Bays[q.at].MomentMax, r.Bays[q.at].MomentMin
	case moveIn:
		high, low = r.Bays[q.at].DeflectionMax, r.Bays[q.at].DeflectionMin
	case shearOf:
		for b := range r.Bays {
			high, low = max(high, r.Bays[b].ShearMax), min(low, r.Bays[b].ShearMin)
		}
	case momentOver:
		high, low = r.SupportMoments[q.at], r.SupportMoments[q.at]
	case shearBeside:
		left, right := r.Bays[q.at].ShearRight, r.Bays[q.at+1].ShearLeft
		high, low = max(right, -left), min(right, -left)
	}
	if q.sign < 0 {
		return -low
	}
	return high
}

// where is the place at which the demand is reached, by the places of all extremes.
func (q reading) where(f *frame, l *beam.Location) float64 {
	if q.kind == momentOver || q.kind == shearBeside {
		return f.plan.Line().Support(q.at)
	}
	pick := func(high, low beam.Extreme) beam.Extreme {
		if q.sign < 0 {
			return low
		}
		return high
	}
	at := l.Bays[q.at]
	switch q.kind {
	case momentIn:
		return pick(at.MomentMax, at.MomentMin).At
	case moveIn:
		return pick(at.DeflectionMax, at.DeflectionMin).At
	}
	best := pick(l.Bays[0].ShearMax, l.Bays[0].ShearMin)
	for _, b := range l.Bays {
		if x := pick(b.ShearMax, b.ShearMin); q.sign*x.Value > q.sign*best.Value {
			best = x
		}
	}
	return best.At
}

// atPlace is the demand at one place, which is never above that of the whole member and
// grows evenly with the factors: of shear, the left or the right side of the place.
func (q reading) atPlace(p *beam.Plan, factors []float64, x float64, left bool) float64 {
	s := p.At(factors, 1, x)
	switch {
	case q.kind == momentIn || q.kind == momentOver:
		return q.sign * s.Moment
	case q.kind == moveIn:
		return q.sign * s.Deflection
	case left && q.kind == shearBeside:
		return -q.sign * s.ShearLeft
	case left:
		return q.sign * s.ShearLeft
	}
	return q.sign * s.ShearRight
}

// A contest finds which of the arrangements of a member can bring a peak.
type contest struct {
	f        *frame
	corners  []corner
	count    int // of arrangements
	readings []reading
	factors  func(i int, w *wood) []float64
	class    func(i int) int // below durations; only arrangements of one class are compared
	solve    func(factors []float64, r *beam.Response)
	demands  [][]float64 // by corner; of arrangement i the readings from i times their number
	leaders  []leader
}

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
			var best [durations]int // by class, from 1
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
