package cover

import (
	"patiocover/calc"
	"patiocover/loads"
)

// A probe is the long-term deflection of a beam at one place under one placing of its loads,
// times E I: a bound from below of its largest, whatever the rafters and the beam weigh. It
// grows evenly with both.
type probe struct {
	line    int
	sign    float64
	lasting float64 // of the layers and what else lasts, lb-in³
	rafter  float64 // of a rafter's own weight on the beam, lb-in³ for each lb
	self    float64 // of the beam's own weight, lb-in³ for each lb/in
	live    float64 // lb-in³
}

// probe finds the places where beams sag most at the corners of their candidates.
func (l *layout) probe() {
	m := l.main.m
	for i, line := range m.lines {
		for p := range line.pieces {
			f := line.pieces[p].frame
			for _, rafter := range line.carried.ends() {
				line.load(m, rafter)
				for _, beam := range f.hull.woods.ends() {
					l.probeAt(i, f, beam)
				}
			}
		}
	}
	l.loaded = 0
}

// probeAt adds a probe where the piece sags most under what it is loaded with.
func (l *layout) probeAt(line int, f *frame, beam *wood) {
	var at peaks
	at.clear(len(f.bays))
	for i := range f.sag {
		f.settle(i, beam, 1, &at)
	}
	worst := at.total[0]
	for _, x := range at.total[:len(f.bays)] {
		if x.value > worst.value {
			worst = x
		}
	}
	if worst.value == 0 {
		return
	}
	x := f.farthest(f.sagFactors(worst.by, beam), 1, worst.bay)
	move := func(factors []float64) float64 { return f.plan.At(factors, 1, x).Deflection }
	p := probe{line: line, sign: 1, live: move(f.sag[worst.by].coef)}
	first := &f.arr[0]
	own := eachCase(len(l.main.m.lines[line].bays))
	unit := make([]float64, len(f.normal))
	unit[0] = first.self * f.cosine
	p.self = move(unit)
	unit[0], unit[own] = 0, first.self
	p.rafter = move(unit)
	copy(unit, first.coef)
	unit[own] = 0
	p.lasting = move(unit)
	if move(f.sagFactors(worst.by, beam)) < 0 {
		p.sign = -1
	}
	l.probes = append(l.probes, p)
}

// sagBound is a bound from below of the sag of the beam under the class, in. It allocates
// nothing.
func (l *layout) sagBound(c, b int) float64 {
	own, beam := l.classes[c].own, &l.beams[b]
	kcr, most := beam.wood.seasoning().Kcr(), 0.0
	for i := range l.probes {
		p := &l.probes[i]
		most = max(most, p.sign*(kcr*(p.lasting+p.rafter*own[p.line]+p.self*beam.wood.most)+p.live))
	}
	return most / beam.stiff
}

// sag is the largest long-term deflection of the beams under the rafters of the class, in.
// It allocates nothing.
func (l *layout) sag(c, b int) float64 {
	at := &l.sags[c*len(l.beams)+b]
	if *at >= 0 {
		return *at
	}
	l.load(c)
	*at = 0
	beam := &l.beams[b].wood
	for i, line := range l.main.m.lines {
		for p := range line.pieces {
			f, peaks := line.pieces[p].frame, &l.main.ws.lines[i].peaks[p]
			peaks.clear(len(f.bays))
			f.deflections(beam, false, peaks)
			for n := range f.bays {
				*at = max(*at, peaks.total[n].value)
			}
		}
	}
	return *at
}

// holdsUp reports whether the beam holds under the rafters of the class. Every demand is
// convex in the weight of the rafters: a beam that holds under the lightest and the heaviest
// holds under all between. Where knee braces bend the beams by a push that depends on the
// posts, the whole cover tells. It allocates nothing.
func (l *layout) holdsUp(c, b int) bool {
	m := l.main.m
	if m.racking[alongHouse].braced() {
		return true
	}
	if l.slabs {
		return l.holdsOnSlab(c, b)
	}
	if l.always[b] == untried {
		l.always[b] = came(l.holdsAtEnds(b))
	}
	if l.always[b] == holds {
		return true
	}
	at := &l.strong[c*len(l.beams)+b]
	if *at == untried {
		l.load(c)
		*at = came(m.gradeBeams(l.main.ws, &l.beams[b].wood) <= 1)
	}
	return *at == holds
}

// holdsOnSlab does so where every post must stand on the slab, which may carry no more than
// its rule allows: a post without its own weight is the least of it.
func (l *layout) holdsOnSlab(c, b int) bool {
	at := &l.strong[c*len(l.beams)+b]
	if *at == untried {
		l.load(c)
		*at = came(l.main.m.gradeBeams(l.main.ws, &l.beams[b].wood) <= 1 && !l.main.m.overSlab())
	}
	return *at == holds
}

// overSlab reports whether a post without its own weight is more than the slab below it may
// carry, under the beams that were graded last.
func (m *model) overSlab() bool {
	in := m.in.Foundation
	all := *in.SlabRule == "all_loads"
	for _, l := range m.lines {
		for n := range l.posts {
			force := l.post(n)
			counted := force.rest.value
			for day := 0; all && day < durations; day++ {
				counted = max(counted, force.press[day].value)
			}
			rule := loads.NewSlabRule(counted, *m.in.Site.FrostDepth*calc.In, *in.SlabThickness*calc.In, all)
			if rule.Ratio() > 1 {
				return true
			}
		}
	}
	return false
}

// holdsAtEnds reports whether the beam holds under the lightest and the heaviest rafters.
func (l *layout) holdsAtEnds(b int) bool {
	m := l.main.m
	l.loaded = 0
	for _, rafter := range m.lines[0].carried.ends() {
		m.loadBeams(rafter)
		if m.gradeBeams(l.main.ws, &l.beams[b].wood) > 1 {
			return false
		}
	}
	return true
}

// carries reports whether rafter r holds on beam b.
func (l *layout) carries(r, b int) bool {
	seats := len(l.seated) / len(l.rafters)
	at := &l.seated[r*seats+l.beams[b].seat]
	if *at == untried {
		*at = came(l.main.m.gradeRafter(l.main.ws, &l.rafters[r].wood, &l.beams[b].wood) <= 1)
	}
	return *at == holds
}
