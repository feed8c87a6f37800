package beam

// A start is what is known at the left end of a bay, added to a walk that began
// with nothing.
type start struct {
	shear      float64 // lb
	moment     float64 // lb-in
	slope      float64 // E I y', lb-in²
	deflection float64 // E I y, lb-in³
}

// solve finds the state of case k under its loads.
func (p *Plan) solve(k int, loads []Load) error {
	s := p.of(k)
	p.place(s, loads)
	for _, b := range p.bays {
		p.walk(s, b)
	}
	left, right := p.bays[0], p.bays[len(p.bays)-1]
	p.supportMoments(s)
	for i := 1; i+1 < len(p.bays); i++ {
		p.joinSpan(s, i)
	}
	if !left.missing() {
		p.joinLeft(s, left)
	}
	if !right.missing() {
		p.joinRight(s, right)
	}
	p.react(s)
	return p.closure(k, s, loads)
}

// place puts the loads of a case on its stations. A point load over a support goes
// to the reaction and to nothing else.
func (p *Plan) place(s state, loads []Load) {
	clear(p.points)
	near := 0
	for i := range loads {
		l := &loads[i]
		near = p.search(l.From, near)
		from := &p.cuts[near]
		switch {
		case !l.point:
			near = p.spread(s, l, near)
		case from.support >= 0:
			s.reaction[from.support] += l.Start
		default:
			p.points[from.begin] += l.Start
		}
	}
}

// spread puts a line load on the segments from cut a to its end, and returns the
// cut at the end.
func (p *Plan) spread(s state, l *Load, a int) int {
	b := p.search(l.To, a)
	if a == b {
		return b
	}
	if l.Start == l.End {
		for _, c := range p.cuts[a:b] {
			s.load[c.begin] += l.Start
		}
		return b
	}
	change := (l.End - l.Start) / (p.cuts[b].x - p.cuts[a].x)
	for _, c := range p.cuts[a:b] {
		s.load[c.begin] += l.Start + change*(c.x-p.cuts[a].x)
		s.change[c.begin] += change
	}
	return b
}

// walk carries shear, moment, slope and deflection through a bay, from zero at its
// left end, by the polynomials of [segment].
func (p *Plan) walk(s state, b bay) {
	if b.missing() {
		return
	}
	points, h, w := p.points[b.first:b.last], p.lengths[b.first:b.last], s.load[b.first:b.last]
	shear, moment := s.shear[b.first:b.last+1], s.moment[b.first:b.last+1]
	slope, deflection := s.slope[b.first:b.last+1], s.deflection[b.first:b.last+1]
	var v, m, t, y float64
	for i, h := range h {
		v -= points[i]
		shear[i], moment[i], slope[i], deflection[i] = v, m, t, y
		wh := w[i] * h
		y += h * (t - h*(m*0.5+h*(v*(1.0/6)-wh*(1.0/24))))
		t -= h * (m + h*(v*0.5-wh*(1.0/6)))
		m += h * (v - wh*0.5)
		v -= wh
		if p.varying {
			ch := s.change[b.first+i] * h * h
			v -= ch * 0.5
			m -= ch * h * (1.0 / 6)
			t += ch * h * h * (1.0 / 24)
			y += ch * h * h * h * (1.0 / 120)
		}
	}
	last := b.last - b.first
	shear[last], moment[last], slope[last], deflection[last] = v, m, t, y
}

// simpleSlopes returns the end slopes, times E I, of a span cut free of its
// neighbors, from a walk that began with nothing: with the simple reaction -m/L
// added the far moment vanishes, with the left slope added the far deflection does.
func simpleSlopes(s state, b bay) (left, right float64) {
	m, l := s.moment[b.last], b.length
	left = -(s.deflection[b.last] + m*l*l*(1.0/6)) / l
	return left, s.slope[b.last] + left + m*l/2
}

// leftMoment returns the moment over the first support, from the left overhang.
func (p *Plan) leftMoment(s state) float64 {
	b := p.bays[0]
	if b.missing() {
		return 0
	}
	return s.moment[b.last]
}

// rightStart returns shear and moment right of the last support, which bring both
// to nothing beyond the right tip.
func (p *Plan) rightStart(s state) start {
	b := p.bays[len(p.bays)-1]
	if b.missing() {
		return start{}
	}
	v := p.points[b.last] - s.shear[b.last]
	return start{shear: v, moment: -(s.moment[b.last] + v*b.length)}
}

// supportMoments leaves the moments over the inner supports in p.terms. The terms of
// the equations of three moments are the kinks that simple spans would have over the
// supports; the known end moments move to the right-hand side.
func (p *Plan) supportMoments(s state) {
	n := len(p.terms)
	if n == 0 {
		return
	}
	_, before := simpleSlopes(s, p.bays[1])
	for i := range n {
		left, right := simpleSlopes(s, p.bays[i+2])
		p.terms[i] = 6 * (left - before)
		before = right
	}
	p.terms[0] += p.bays[1].length * p.leftMoment(s)
	p.terms[n-1] += p.bays[n+1].length * p.rightStart(s).moment
	p.line.moments(p.terms, p.work)
}

// joinSpan adds to span i, whose supports carry moments, what makes its ends meet
// the supports.
func (p *Plan) joinSpan(s state, i int) {
	b := p.bays[i]
	left, right := p.leftMoment(s), p.rightStart(s).moment
	if i > 1 {
		left = p.terms[i-2]
	}
	if i-1 < len(p.terms) {
		right = p.terms[i-1]
	}
	simple, _ := simpleSlopes(s, b)
	p.add(s, b, start{
		shear:  (right - left - s.moment[b.last]) / b.length,
		moment: left,
		slope:  simple + b.length*(2*left+right)*(1.0/6),
	})
	s.moment[b.last], s.deflection[b.last] = right, 0
}

// joinLeft turns the left overhang until it meets the first span without a kink.
func (p *Plan) joinLeft(s state, b bay) {
	slope := s.slope[p.bays[1].first] - s.slope[b.last]
	p.add(s, b, start{slope: slope, deflection: -(s.deflection[b.last] + slope*b.length)})
	s.deflection[b.last] = 0
}

// joinRight turns the right overhang until it meets the last span without a kink.
func (p *Plan) joinRight(s state, b bay) {
	from := p.rightStart(s)
	from.slope = s.slope[p.bays[len(p.bays)-2].last]
	p.add(s, b, from)
	s.moment[b.last] = 0
}

// add superposes on a bay what the values at its left end cause further on.
func (p *Plan) add(s state, b bay, from start) {
	at := p.at[b.first : b.last+1]
	shear, moment := s.shear[b.first:][:len(at)], s.moment[b.first:][:len(at)]
	slope, deflection := s.slope[b.first:][:len(at)], s.deflection[b.first:][:len(at)]
	v, m, t, y := from.shear, from.moment, from.slope, from.deflection
	for i, x := range at {
		x -= at[0]
		shear[i] += v
		moment[i] += m + v*x
		slope[i] += t - x*(m+x*v*0.5)
		deflection[i] += y + x*(t-x*(m*0.5+x*v*(1.0/6)))
	}
}

// react adds to each reaction the jump of shear over its support.
func (p *Plan) react(s state) {
	for i := range s.reaction {
		if b := p.bays[i]; !b.missing() {
			s.reaction[i] -= s.shear[b.last]
		}
		if b := p.bays[i+1]; !b.missing() {
			s.reaction[i] += s.shear[b.first]
		}
	}
}
