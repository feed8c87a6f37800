package cover

import (
	"math"

	"patiocover/beam"
	"patiocover/loads"
)

// A rafterFrame is the statics of one rafter, along the slope. Its cases are one
// pound per inch across the member on everything (0), on each bay, on the high half,
// on the low half, on the edge strips at both ends, between them, and one pound across
// it at each point of maintenance.
//
// Vertical loads on the roof act across the rafter with the cosine of the slope,
// and a plan load meets the rafter over the cosine of its length. A support takes a
// vertical load straight down, so its vertical reaction is the reaction across the
// rafter over the cosine; of wind, which acts across the roof, it is the reaction
// times the cosine.
type rafterFrame struct {
	*frame
	points   []pointAt // where the maintenance load is tried
	placed   []float64 // largest reaction of unit loads placed on bays, by support, lb
	along    []float64 // force along the rafter by arrangement, without its own weight, lb
	supports int
}

// A pointAt is one place of the maintenance load.
type pointAt struct {
	name string
	x    float64 // in along the rafter
}

// newRafterFrame makes the statics of the rafters and everything they must carry.
func newRafterFrame(m *model) (*rafterFrame, error) {
	p := &m.plan
	length := p.slope(p.projection)
	supports := m.room.copied(p.supports())
	for i, y := range supports {
		supports[i] = p.slope(y)
	}
	bays := m.room.baysOf(length, supports)
	r := &m.room.rafter
	*r = rafterFrame{points: m.room.pointsOf(bays), supports: len(supports)}
	for i, x := range supports {
		r.points = append(r.points, pointAt{m.bearsOn(i), x})
	}
	f, err := newFrame(m.room, length, supports, math.Cos(p.angle), append(
		m.room.rafterCases(length, p.slope(m.wind.strip.Width), bays, r.points), m.heapLoads()...))
	if err != nil {
		return nil, err
	}
	r.frame, f.atCuts = f, true
	r.place()
	r.arrange(m, m.wind.rafter, 1)
	r.fix(0)
	r.arrangeThrust()
	r.swing()
	return r, nil
}

// findHull finds what can bring the peaks of the rafters.
func (r *rafterFrame) findHull(m *model) {
	woods := extremesOf(m.rafterWoods)
	var corners []corner
	for _, w := range woods.ends() {
		corners = append(corners, corner{wood: w})
	}
	r.hull = r.newHull(corners, woods, woods.apart)
}

// rafterCases lists the load cases after case 0; strip is the width of the edge strips
// along the rafter.
func (r *room) rafterCases(length, strip float64, bays []bay, points []pointAt) [][]beam.Load {
	cases := r.cases.take(len(bays) + 4 + len(points))[:0]
	from := 0.0
	for _, b := range bays {
		var on []beam.Load
		if b.length > 0 {
			on = r.load(beam.Uniform(from, from+b.length, 1))
		}
		cases = append(cases, on)
		from += b.length
	}
	half := length / 2
	strip = min(strip, half)
	ends := append(r.loads.take(2)[:0], beam.Uniform(0, strip, 1), beam.Uniform(length-strip, length, 1))
	var middle []beam.Load
	if length-2*strip > tiny {
		middle = r.load(beam.Uniform(strip, length-strip, 1))
	}
	cases = append(cases, r.load(beam.Uniform(0, half, 1)), r.load(beam.Uniform(half, length, 1)), ends, middle)
	for _, at := range points {
		cases = append(cases, r.load(beam.Point(at.x, 1)))
	}
	return cases
}

// pointsOf places the maintenance load at the middle of each span and at each tip.
// The supports, where it asks most of the joints, are added by name.
func (r *room) pointsOf(bays []bay) []pointAt {
	out := r.points.take(2 * len(bays))[:0] // with room for the supports
	from := 0.0
	for i, b := range bays {
		switch {
		case b.length == 0:
		case !b.cantilever:
			out = append(out, pointAt{"at mid span", from + b.length/2})
		case i == 0:
			out = append(out, pointAt{"at the high tip", 0})
		default:
			out = append(out, pointAt{"at the tip", from + b.length})
		}
		from += b.length
	}
	return out
}

// place keeps the largest reactions of unit loads placed on bays.
func (r *rafterFrame) place() {
	r.placed = r.room.numbers.take(r.supports)
	all := r.room.patterns(r.bays)
	for s := range r.placed {
		for _, p := range all {
			r.placed[s] = max(r.placed[s], r.onBays(s, p))
		}
	}
}

// onBays is the reaction across the rafter under unit load on some of its bays, lb.
func (r *rafterFrame) onBays(support int, p pattern) float64 {
	sum := 0.0
	for b := range r.bays {
		if p.bays>>b&1 == 1 {
			sum += r.unit[support][r.bayCase(b)]
		}
	}
	return sum
}

// The indices of the rafter's cases.
func (r *rafterFrame) bayCase(b int) int   { return 1 + b }
func (r *rafterFrame) highCase() int       { return 1 + len(r.bays) }
func (r *rafterFrame) lowCase() int        { return 2 + len(r.bays) }
func (r *rafterFrame) endsCase() int       { return 3 + len(r.bays) }
func (r *rafterFrame) middleCase() int     { return 4 + len(r.bays) }
func (r *rafterFrame) pointCase(i int) int { return 5 + len(r.bays) + i }
func (r *rafterFrame) heapCase(k int) int  { return r.pointCase(len(r.points)) + k }

// arrange lists every combination with every placing of its loads, on a rafter that has
// some share of a full tributary width under loads other than wind.
func (r *rafterFrame) arrange(m *model, winds []windCase, share float64) {
	all := m.allPlacings(r.bays)
	list, none := r.room.list()
	for i := range m.rules.combos {
		c := &m.rules.combos[i]
		if m.idle(c) {
			continue
		}
		for _, p := range m.placings(c, all) {
			if c.Wind == 0 {
				list = append(list, r.strength(m, c, p, windCase{}, share))
				continue
			}
			for _, w := range winds {
				if suits(c, w.down(), w.up()) {
					list = append(list, r.strength(m, c, p, w, w.share))
				}
			}
		}
	}
	for i := range r.points {
		list = append(list, r.worker(m, i, share))
	}
	r.arr, _ = r.room.keep(list, none)
	r.arrangeSag(m, all, share)
	r.arrangeBlows(m, winds)
}

// strength is one combination with its loads placed.
func (r *rafterFrame) strength(m *model, c *loads.Combination, p pattern, w windCase, share float64) arrangement {
	cos := r.cosine
	width := m.plan.spacing * share
	a := newArrangement(c, p, w.name)
	a.coef = r.room.numbers.take(len(r.normal))
	a.coef[0] = c.Dead * m.layers(c.DeadLeast) * width * cos
	onPlan := m.onPlan(c, p.set) * width * cos * cos
	for b := range r.bays {
		if p.bays>>b&1 == 1 {
			a.coef[r.bayCase(b)] = onPlan
		}
	}
	if c.Snow != 0 && m.snow.sets[p.set].heap >= 0 {
		k := m.snow.sets[p.set].heap
		a.coef[r.heapCase(k)] = c.Snow * m.snow.heaps[k].peak * width * cos * cos
	}
	a.coef[r.highCase()] = c.Wind * w.high * width
	a.coef[r.lowCase()] = c.Wind * w.low * width
	a.coef[r.endsCase()] = c.Wind * w.ends * width
	a.coef[r.middleCase()] = c.Wind * w.middle * width
	return a
}

// worker is dead load with the maintenance load at one place.
func (r *rafterFrame) worker(m *model, i int, share float64) arrangement {
	a := newArrangement(&m.rules.worker, pattern{}, "")
	a.words[1], a.spaced = r.points[i].name, true
	a.onPlan, a.coef = m.rules.stands, r.room.numbers.take(len(r.normal))
	a.coef[0] = a.self * m.layers(false) * m.plan.spacing * share * r.cosine
	a.coef[r.pointCase(i)] = a.onPlan * loads.MaintenanceLoad * r.cosine
	return a
}

// arrangeSag lists the placings of live or snow load for deflection.
func (r *rafterFrame) arrangeSag(m *model, all []pattern, share float64) {
	width := m.plan.spacing * share * r.cosine * r.cosine
	list, none := r.room.list()
	for _, p := range all {
		a := p.forSag(r.room.numbers.take(len(r.normal)))
		even := max(m.live, m.snow.even(0))
		if p.set > 0 {
			even = m.snow.even(p.set)
		}
		for b := range r.bays {
			if p.bays>>b&1 == 1 {
				a.coef[r.bayCase(b)] = even * width
			}
		}
		if p.set > 0 && m.snow.sets[p.set].heap >= 0 {
			k := m.snow.sets[p.set].heap
			a.coef[r.heapCase(k)] = m.snow.heaps[k].peak * width
		}
		list = append(list, a)
	}
	r.sag, _ = r.room.keep(list, none)
}

// A reaction is the vertical reaction of a rafter at one support, lb, + down, by
// what causes it; the factors of the combination are in it.
type reaction struct {
	dead float64 // layers and own weight
	plan float64 // live, snow, or the maintenance load
	wind float64
}

func (r reaction) total() float64 { return r.dead + r.plan + r.wind }

// reactionOf returns the vertical reaction at a support under one arrangement.
func (r *rafterFrame) reactionOf(a *arrangement, support int, w *wood) reaction {
	u := r.unit[support]
	out := reaction{dead: (a.coef[0]/r.cosine + a.self*w.weight(a.least)) * u[0]}
	for c := 1; c < len(u); c++ {
		if c >= r.highCase() && c <= r.middleCase() {
			out.wind += a.coef[c] * u[c] * r.cosine
			continue
		}
		out.plan += a.coef[c] * u[c] / r.cosine
	}
	return out
}

// singleAt is the part of the vertical reaction at a support that the maintenance load brings
// under one arrangement, lb.
func (r *rafterFrame) singleAt(a *arrangement, support int) float64 {
	sum := 0.0
	for i := range r.points {
		c := r.pointCase(i)
		sum += a.coef[c] * r.unit[support][c] / r.cosine
	}
	return sum
}

// deadAt returns the vertical reactions at a support under dead load, lb: of the
// layers on a rafter of full tributary width, and of one rafter's own weight.
func (r *rafterFrame) deadAt(m *model, support int, w *wood, least bool) (layers, own float64) {
	return r.layersAt(m, support, least), r.ownAt(support, w, least)
}

func (r *rafterFrame) layersAt(m *model, support int, least bool) float64 {
	return m.layers(least) * m.plan.spacing * r.unit[support][0]
}

func (r *rafterFrame) ownAt(support int, w *wood, least bool) float64 {
	return w.weight(least) * r.unit[support][0]
}

// planAt is the largest vertical reaction at a support under a plan load placed for
// it, lb, on a rafter of full tributary width; onPlan is in lb/in².
func (r *rafterFrame) planAt(m *model, support int, onPlan float64) float64 {
	return r.placed[support] * onPlan * m.plan.spacing * r.cosine
}

// windAt is the vertical reaction at a support under one wind case, on a rafter of full
// tributary width, lb.
func (r *rafterFrame) windAt(m *model, support int, w windCase) float64 {
	u := r.unit[support]
	across := w.high*u[r.highCase()] + w.low*u[r.lowCase()] + w.ends*u[r.endsCase()] + w.middle*u[r.middleCase()]
	return across * m.plan.spacing * r.cosine
}
