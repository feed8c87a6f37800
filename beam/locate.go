package beam

import "slices"

// An Extreme is a value and the place where it is reached.
type Extreme struct {
	Value float64 // in the unit of the quantity: lb, lb-in or in
	At    float64 // in from the left tip
}

// Extrema are the extreme values of one bay under the rules of [Bay], with the
// places where they are reached; of several equal ones the leftmost.
type Extrema struct {
	ShearMax      Extreme // largest V, lb
	ShearMin      Extreme // least V, lb
	MomentMax     Extreme // largest M, lb-in
	MomentMin     Extreme // least M, lb-in
	DeflectionMax Extreme // largest y, downward, in
	DeflectionMin Extreme // least y, in
}

// A Location is what [Plan.Locate] finds. The zero value is ready to be filled.
type Location struct {
	Bays []Extrema // 0 the left overhang, 1 the first span, …, the last the right overhang
}

// Locate fills in the extrema that [Plan.Run] finds, with their places, for a
// report. It takes several times as long. The rules for arguments are those of Run.
func (p *Plan) Locate(factors []float64, stiffness float64, l *Location) {
	l.Bays = slices.Grow(l.Bays[:0], len(p.bays))[:len(p.bays)]
	sane := p.combine(factors, p.size) && sound(stiffness)
	for i, b := range p.bays {
		e := &l.Bays[i]
		*e = Extrema{}
		switch {
		case !sane:
			x := Extreme{nan, nan}
			*e = Extrema{x, x, x, x, x, x}
		case !b.missing():
			p.extrema(b, stiffness, fine, e)
		}
	}
}

// bay returns the values without their places.
func (e Extrema) bay(left, right float64) Bay {
	return Bay{
		ShearMax: e.ShearMax.Value, ShearMin: e.ShearMin.Value, ShearLeft: left, ShearRight: right,
		MomentMax: e.MomentMax.Value, MomentMin: e.MomentMin.Value,
		DeflectionMax: e.DeflectionMax.Value, DeflectionMin: e.DeflectionMin.Value,
	}
}

// segment returns the segment that begins at station i under the combination.
func (p *Plan) segment(i int) segment { return p.sum.segment(i, p.lengths[i]) }

// segment returns the segment of the length that begins at station i.
func (s *state) segment(i int, length float64) segment {
	g := segment{
		length: length, shear: s.shear[i], moment: s.moment[i], slope: s.slope[i],
		deflection: s.deflection[i], load: s.load[i],
	}
	if len(s.change) > 0 {
		g.change = s.change[i]
	}
	return g
}

// extrema fills in shear, moment and deflection of a bay of any loads; the zeros of
// the slope are found to the tolerance.
func (p *Plan) extrema(b bay, stiffness, tolerance float64, e *Extrema) {
	p.forceExtrema(b, e)
	first := Extreme{p.sum.deflection[b.first], p.at[b.first]}
	high, low := first, first
	for i := b.first; i < b.last; i++ {
		g := p.segment(i)
		slope, moment := p.sum.slope[i+1], p.sum.moment[i+1]
		if (g.slope > 0) == (slope > 0) && g.steep(slope, moment) {
			continue
		}
		widen(&high, &low, g.deflection, p.at[i]) // where rounding may hide a change of sign
		zeros := g.slopeZeros(tolerance)
		for _, s := range zeros.at[:zeros.n] {
			widen(&high, &low, g.deflectionAt(s), p.at[i]+s)
		}
	}
	widen(&high, &low, p.sum.deflection[b.last], p.at[b.last])
	high.Value, low.Value = high.Value/stiffness, low.Value/stiffness
	e.DeflectionMax, e.DeflectionMin = high, low
}

// forceExtrema fills in shear and moment of a bay of any loads.
func (p *Plan) forceExtrema(b bay, e *Extrema) {
	v, m := Extreme{p.sum.shear[b.first], p.at[b.first]}, Extreme{p.sum.moment[b.first], p.at[b.first]}
	e.ShearMax, e.ShearMin, e.MomentMax, e.MomentMin = v, v, m, m
	for i := b.first; i < b.last; i++ {
		g, x := p.segment(i), p.at[i]
		widen(&e.ShearMax, &e.ShearMin, g.shear, x)
		turns := g.loadZero()
		for _, s := range turns.at[:turns.n] {
			widen(&e.ShearMax, &e.ShearMin, g.shearAt(s), x+s)
		}
		widen(&e.ShearMax, &e.ShearMin, g.shearAt(g.length), x+g.length)
		widen(&e.MomentMax, &e.MomentMin, g.moment, x)
		turns = g.shearZeros()
		for _, s := range turns.at[:turns.n] {
			widen(&e.MomentMax, &e.MomentMin, g.momentAt(s), x+s)
		}
	}
	widen(&e.MomentMax, &e.MomentMin, p.sum.moment[b.last], p.at[b.last])
}

// widen makes the value the new extreme if it goes beyond one of the two.
func widen(high, low *Extreme, value, at float64) {
	if value > high.Value {
		*high = Extreme{value, at}
	}
	if value < low.Value {
		*low = Extreme{value, at}
	}
}
