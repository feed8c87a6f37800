package cover

import (
	"math"

	"patiocover/beam/lumber"
)

// gusts is the most factors on wind that the combinations of one edition have.
const gusts = 3

// A gust is the axial force of a post under all combinations with one factor on wind, so
// that the moment of that wind goes with a force of its own combination and of no other.
type gust struct {
	factor   float64         // on wind; 0 where there is none
	duration lumber.Duration // of these combinations
	press    peak            // lb
	lift     peak            // lb
}

// A postPeak is the axial force of a post: by duration, by factor on wind, and the
// extremes.
type postPeak struct {
	press [durations]peak // lb
	lift  [durations]peak // lb
	windy [gusts]gust
	rest  peak    // lb, dead with live or snow only
	dead  float64 // lb, dead load alone
	snow  float64 // lb, largest snow without factors
}

// post condenses the forces on post i.
func (f *beamFrame) post(i int) postPeak {
	p := postPeak{dead: f.forces[0][i]}
	for a := range f.arr {
		at := &f.arr[a]
		force := f.forces[a][i]
		p.press[at.duration].raise(force, a, i)
		p.lift[at.duration].raise(-force, a, i)
		if at.wind > 0 {
			w := p.gustOf(at)
			w.press.raise(force, a, i)
			w.lift.raise(-force, a, i)
		}
		if at.duration != lumber.TenMinutes {
			p.rest.raise(force, a, i)
		}
		p.snow = max(p.snow, at.snowOf(force, p.dead))
	}
	return p
}

// gustOf finds the peaks of the factor on wind and the duration of an arrangement. More of
// them than the combinations have are a mistake of ours.
func (p *postPeak) gustOf(a *arrangement) *gust {
	for i := range p.windy {
		w := &p.windy[i]
		if w.factor == 0 {
			*w = gust{a.wind, a.duration, peak{value: math.Inf(-1)}, peak{value: math.Inf(-1)}}
		}
		if w.factor == a.wind && w.duration == a.duration {
			return w
		}
	}
	panic("cover: more factors on wind than a post keeps")
}

// bent checks the post under axial force and bending: off center under loads that do not
// bend it, and with the push of each direction under wind and earthquake.
func (g *grading) bent(turned bool) {
	c := g.c
	own := g.post.most * c.height
	for d := range directions {
		b := bend{direction: d, turned: turned}
		b.alongOff, b.outOff = c.offsets(g.post, g.beam, d, turned)
		for day := range durations {
			if at := c.force.press[day]; at.value > 0 && day != int(lumber.TenMinutes) && !c.outweighed(day, g.m.rules.method) {
				g.bend(pressedBent, postFound{demand: at.value + own, duration: lumber.Duration(day), by: at.by, bend: b})
			}
		}
		e := g.m.effectOn(d, c.line, c.post)
		for i := range c.force.windy {
			if w := &c.force.windy[i]; w.factor > 0 {
				b.windPart = w.factor
				b.moment(w.factor * e.moment.wind)
				g.sway(w, b, w.factor*max(e.foot.wind, e.top.wind))
			}
		}
		if g.m.shakes(d) {
			b.windPart = 0
			g.quake(e, b)
		}
	}
}

// shakes reports whether the earthquake acts on the posts of a direction.
func (m *model) shakes(direction int) bool {
	return m.quaking && !m.racking[direction].byHouse()
}

// outweighed reports whether another load that lasts at least as long in proportion asks
// more of the post: with a larger force, and a larger one over its duration factor.
func (c *postCase) outweighed(day int, method lumber.Method) bool {
	factorOf := func(d int) float64 { return method.TimeFactor(lumber.Compression, lumber.Duration(d)) }
	mine, factor := c.force.press[day].value, factorOf(day)
	for other := range durations {
		more, by := c.force.press[other].value, factorOf(other)
		if other != day && other != int(lumber.TenMinutes) && more > mine && more/by > mine/factor {
			return true
		}
	}
	return false
}

// moment is the moment of the push in the plane of its direction.
func (b *bend) moment(x float64) {
	b.along, b.out = x, 0
	if b.direction == outward {
		b.along, b.out = 0, x
	}
}

// sway checks both senses of the axial force under one factor on wind. tip is what the
// push adds to it, lb.
func (g *grading) sway(w *gust, b bend, tip float64) {
	own := g.post.most * g.c.height
	if press := w.press.value + tip; press > 0 {
		g.bend(pressedBent, postFound{demand: press + own, duration: w.duration, by: w.press.by, bend: b})
	}
	if lift := w.lift.value + tip; lift > 0 {
		g.bend(pulledBent, postFound{demand: -lift, duration: w.duration, by: w.lift.by, bend: b})
	}
}

// quake checks the post under the combinations with earthquake. Where the least dead load
// counts none is counted, the safe side.
func (g *grading) quake(e *effect, b bend) {
	m, force := g.m, &g.c.force
	tip := max(e.foot.quake, e.top.quake)
	dead := force.dead + g.post.most*g.c.height
	for i := range m.rules.quakes {
		q := &m.rules.quakes[i]
		if m.idle(q) {
			continue
		}
		b.quakePart = q.Earthquake
		b.moment(q.Earthquake * e.moment.quake)
		x := postFound{duration: lumber.TenMinutes, by: i, quake: true, bend: b}
		if !q.DeadLeast {
			x.demand = (q.Dead+q.EarthquakeUp*m.sideways.vertical)*dead + q.Snow*force.snow + q.Earthquake*tip
			g.bend(pressedBent, x)
			continue
		}
		if x.demand = -q.Earthquake * tip; x.demand < 0 {
			g.bend(pulledBent, x)
		}
	}
}
