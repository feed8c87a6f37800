package beam

import (
	"fmt"
	"math"
)

var nan = math.NaN()

// Run fills r with the sum of the cases, each times its factor: reactions, support
// moments, tip deflections, and in every bay the exact extrema of shear, moment and
// deflection. stiffness is E I, lb-in², positive. It allocates nothing once r has
// held as many bays before.
//
// If a factor or the stiffness is not a finite number within reason (magnitude up
// to 1e100, stiffness above 0), every value of r is not a number, which no check
// takes for safe. Run panics if there are not as many factors as cases, or if the plan
// was not set.
func (p *Plan) Run(factors []float64, stiffness float64, r *Response) {
	r.fit(p)
	if !p.combine(factors, p.size) || !sound(stiffness) {
		r.spoil()
		return
	}
	for i, b := range p.bays {
		out := &r.Bays[i]
		*out = Bay{}
		switch {
		case b.missing():
		case p.varying:
			var e Extrema
			p.extrema(b, stiffness, coarse, &e)
			*out = e.bay(p.sum.shear[b.first], p.sum.shear[b.last])
		default:
			p.forces(b, out)
			p.deflections(b, stiffness, out)
		}
	}
	p.supports(r)
	r.LeftTip, r.RightTip = p.tips(stiffness)
}

// Forces fills r as [Plan.Run] does, but for the deflections, which are left as not
// a number. It takes a third of the time.
func (p *Plan) Forces(factors []float64, r *Response) {
	r.fit(p)
	if !p.combine(factors, p.forceSize()) {
		r.spoil()
		return
	}
	for i, b := range p.bays {
		out := &r.Bays[i]
		*out = Bay{}
		switch {
		case b.missing():
		case p.varying:
			var e Extrema
			p.forceExtrema(b, &e)
			*out = e.bay(p.sum.shear[b.first], p.sum.shear[b.last])
		default:
			p.forces(b, out)
		}
		out.DeflectionMax, out.DeflectionMin = nan, nan
	}
	p.supports(r)
	r.LeftTip, r.RightTip = nan, nan
}

// sound reports whether the stiffness can be divided by.
func sound(stiffness float64) bool { return 0 < stiffness && stiffness <= math.MaxFloat64 }

// forceSize is the number of leading numbers of a state without slope and deflection.
func (p *Plan) forceSize() int { return p.size - 2*len(p.at) }

// combine leaves the sum of the cases, each times its factor, in the first n numbers
// of p.sums. It reports whether all factors are within reason.
func (p *Plan) combine(factors []float64, n int) bool {
	if !p.solved {
		panic("beam: the plan was not set")
	}
	if len(factors) != p.count {
		panic(fmt.Sprintf("beam: %d factors for %d cases", len(factors), p.count))
	}
	to := p.sums[:n]
	clear(to)
	for k := 0; k < len(factors); k++ {
		f := factors[k]
		if !(-heaviest <= f && f <= heaviest) {
			return false
		}
		if f == 0 {
			continue
		}
		add(to, f, p.numbers[k*p.size:k*p.size+n])
	}
	return true
}

// add adds f times the numbers from to the numbers to.
func add(to []float64, f float64, from []float64) {
	from = from[:len(to)]
	for i := range to {
		to[i] += f * from[i]
	}
}

// supports fills in reactions and support moments.
func (p *Plan) supports(r *Response) {
	copy(r.Reactions, p.sum.reaction)
	for i := range r.SupportMoments {
		if b := p.bays[i+1]; !b.missing() {
			r.SupportMoments[i] = p.sum.moment[b.first]
			continue
		}
		r.SupportMoments[i] = p.sum.moment[p.bays[i].last]
	}
}

// tips returns the deflections of the two tips, in.
func (p *Plan) tips(stiffness float64) (left, right float64) {
	if b := p.bays[0]; !b.missing() {
		left = p.sum.deflection[b.first] / stiffness
	}
	if b := p.bays[len(p.bays)-1]; !b.missing() {
		right = p.sum.deflection[b.last] / stiffness
	}
	return left, right
}

// forces fills in shear and moment of a bay in whose segments the line load is
// constant: extrema stand at the ends of segments, or where shear changes sign.
func (p *Plan) forces(b bay, out *Bay) {
	v := p.sum.shear[b.first : b.last+1]
	m := p.sum.moment[b.first : b.last+1][:len(v)]
	w := p.sum.load[b.first : b.last+1][:len(v)]
	h := p.lengths[b.first : b.last+1][:len(v)]
	vMax, vMin, mMax, mMin := v[0], v[0], m[0], m[0]
	for i, left := range v {
		right := left - w[i]*h[i] // at the end of the bay h is 0
		if left > vMax {
			vMax = left
		}
		if right > vMax {
			vMax = right
		}
		if left < vMin {
			vMin = left
		}
		if right < vMin {
			vMin = right
		}
		at := m[i]
		if at > mMax {
			mMax = at
		}
		if at < mMin {
			mMin = at
		}
		if (left > 0) != (right > 0) { // then w is not 0
			turn := at + left*left/(2*w[i])
			if turn > mMax {
				mMax = turn
			}
			if turn < mMin {
				mMin = turn
			}
		}
	}
	out.ShearMax, out.ShearMin, out.MomentMax, out.MomentMin = vMax, vMin, mMax, mMin
	out.ShearLeft, out.ShearRight = v[0], v[len(v)-1]
}

// deflections fills in the deflections of a bay in whose segments the line load is
// constant: extrema stand at its ends, or where slope changes sign.
func (p *Plan) deflections(b bay, stiffness float64, out *Bay) {
	v := p.sum.shear[b.first : b.last+1]
	m := p.sum.moment[b.first : b.last+1][:len(v)]
	w := p.sum.load[b.first : b.last+1][:len(v)]
	h := p.lengths[b.first : b.last+1][:len(v)]
	t := p.sum.slope[b.first : b.last+1][:len(v)]
	y := p.sum.deflection[b.first : b.last+1][:len(v)]
	last := len(v) - 1
	yMax, yMin := y[0], y[0]
	if y[last] > yMax {
		yMax = y[last]
	}
	if y[last] < yMin {
		yMin = y[last]
	}
	for i := 0; i < last; i++ {
		turns := (t[i] > 0) != (t[i+1] > 0)
		bends := (m[i] > 0) != (m[i+1] > 0)
		right := v[i] - w[i]*h[i]
		if !bends && (v[i] > 0) != (right > 0) {
			bends = (m[i]+v[i]*v[i]/(2*w[i]) > 0) != (m[i] > 0)
		}
		if !turns && !bends {
			continue
		}
		g := segment{h[i], v[i], m[i], t[i], y[i], w[i], 0}
		if !bends {
			at := g.turn(t[i+1])
			if at > yMax {
				yMax = at
			}
			if at < yMin {
				yMin = at
			}
			continue
		}
		if !turns && g.steep(t[i+1], m[i+1]) {
			continue
		}
		zeros := g.slopeZeros(coarse)
		for _, s := range zeros.at[:zeros.n] {
			at := g.deflectionAt(s)
			yMax, yMin = max(yMax, at), min(yMin, at)
		}
	}
	out.DeflectionMax, out.DeflectionMin = yMax/stiffness, yMin/stiffness
}

// steep reports that the slope, of one sign at both ends, cannot come to zero
// between them, because the moment is too small to turn it so far. It may say no
// where the slope does not come to zero either.
func (g segment) steep(slope, moment float64) bool {
	h := g.length
	arch := abs(g.load) + h*abs(g.change) // no less than the largest |w|
	bound := h * (larger(abs(g.moment), abs(moment)) + h*h*arch/8)
	return abs(g.slope) > bound || abs(slope) > bound
}

// turn returns the deflection, times E I, where the slope changes sign in a segment
// of constant line load whose moment does not; slope is that at the right end.
func (g segment) turn(slope float64) float64 {
	half, third := g.shear/2, g.load*(1.0/6)
	s := g.length * (g.slope / (g.slope - slope))
	for range 8 {
		value := g.slope - s*(g.moment+s*(half-s*third))
		step := value / (g.moment + s*(g.shear-s*g.load/2))
		s += step
		if abs(step) <= coarse*g.length {
			if s < 0 || s > g.length {
				break
			}
			return g.deflectionAt(s)
		}
	}
	return g.deflectionAt(g.zero(slopeOf, bracket{0, g.length, g.slope, slope}, coarse))
}
