package cover

import (
	"patiocover/loads/wind"
)

// onBays are the pressures on each bay of a beam line as a component of its own area; a
// short bay feels more than a long one. Overhangs go with the span beside them.
func (w *windLoads) onBays(p *plan, line int) []wind.Component {
	depth := p.slope(p.strip(line))
	out := w.room.parts.take(len(p.posts) + 1)
	for i := 1; i < len(p.posts); i++ {
		area := wind.EffectiveArea(p.posts[i]-p.posts[i-1], depth)
		out[i] = wind.NewComponent(w.velocity, w.roof, area, wind.Interior, w.flows)
	}
	out[0], out[len(out)-1] = out[1], out[len(out)-2]
	return out
}

// onPost is the pressure on the strip of roof that one post carries, as a component of its
// own area: at the ends of a line that of a corner.
func (w *windLoads) onPost(p *plan, line, post int) wind.Component {
	lo, hi := p.postStrip(post)
	at := wind.Interior
	if post == 0 || post == len(p.posts)-1 {
		at = wind.SideEdge
	}
	return wind.NewComponent(w.velocity, w.roof, (hi-lo)*p.slope(p.strip(line)), at, w.flows)
}

// byBay appends the ways that the wind loads a beam line bay by bay, down and up; none
// where all bays feel the same.
func (w *windLoads) byBay(out []windOn, m *model, line, support int) []windOn {
	bays := w.bays[line]
	even := true
	for i := range bays {
		even = even && bays[i].Pressure == bays[0].Pressure && bays[i].Suction == bays[0].Suction
	}
	if even || w.only {
		return out
	}
	for _, sign := range []float64{1, -1} {
		on := windOn{name: w.room.say(phrase{"beam as a component bay by bay, zone 2 ", senseOf(sign)}), perBay: true}
		for b := range bays {
			if bays[b].Area < largeTributary {
				on.bays[b] = m.rafter.windAt(m, support, componentAlone(bays[b], bays[b], sign))
			}
		}
		out = append(out, on)
	}
	return out
}

// senseOf words the sense of a pressure.
func senseOf(sign float64) string {
	if sign < 0 {
		return "up"
	}
	return "down"
}

// spread adds the wind on a line to the factors of a stick.
func (w *windOn) spread(coef []float64, n int, factor float64) {
	coef[allCase(n)] += factor * w.force
	for band, force := range w.bands {
		if w.side > 0 {
			coef[bandCase(n, w.side, band)] += factor * force
		}
	}
	for b := range n {
		if w.perBay {
			coef[bayCase(b)] += factor * w.bays[b]
		}
	}
}

// ownWinds keeps, for every arrangement, how much more the wind takes hold of each post on
// the strip that it carries than the beam above it feels as a whole, lb: an end post and
// the posts of a short bay have a small area, where the gusts are stronger.
func (f *beamFrame) ownWinds(m *model) {
	winds := m.wind.posts[f.line]
	all := allCase(len(f.bays))
	for i := range f.pieces {
		p := &f.pieces[i]
		p.gusts = p.room.table(len(f.arr), len(p.unit))
		for a := range p.gusts {
			t := &f.terms[a]
			if t.wind < 0 || m.wind.only {
				continue
			}
			for s := range p.unit {
				c := winds[p.firstPost+s]
				p.gusts[a][s] = t.combo.Wind * f.windOn[t.wind].less(m, f.support, c) * p.unit[s][all]
			}
		}
	}
}

// less is how much less a line feels of one way of the wind than a post as a component, lb
// per rafter, with the sign of the wind; 0 where it feels more, and for wind along the
// house, which has no component.
func (w *windOn) less(m *model, support int, c wind.Component) float64 {
	if w.side > 0 || w.perBay || c.Area >= largeTributary {
		return 0
	}
	sign := 1.0
	if w.force < 0 {
		sign = -1
	}
	own := m.rafter.windAt(m, support, componentAlone(c, c, sign))
	return sign * max(0, sign*(own-w.force))
}
