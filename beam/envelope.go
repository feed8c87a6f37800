package beam

import "math"

// forces fills in shear and moment of a bay in whose segments the line load is
// constant: extrema stand at the ends of segments, or where shear changes sign.
func (p *Plan) forces(b bay, out *Bay) {
	v := p.sum.shear[b.first : b.last+1]
	m := p.sum.moment[b.first : b.last+1][:len(v)]
	w := p.sum.load[b.first : b.last+1][:len(v)]
	h := p.lengths[b.first : b.last+1][:len(v)]
	last := len(v) - 1
	vMax, vMin, mMax, mMin := v[0], v[0], m[0], m[0]
	if m[last] > mMax {
		mMax = m[last]
	}
	if m[last] < mMin {
		mMin = m[last]
	}
	rising := v[0] > 0
	for i := 0; i < last; i++ {
		left := v[i]
		right := left - w[i]*h[i]
		high, low := left, right
		if right > left {
			high, low = right, left
		}
		if high > vMax {
			vMax = high
		}
		if low < vMin {
			vMin = low
		}
		if (left > 0) != rising { // M turns at the station
			rising = !rising
			if m[i] > mMax {
				mMax = m[i]
			}
			if m[i] < mMin {
				mMin = m[i]
			}
		}
		if (right > 0) != rising { // M turns in the segment, where w is not 0
			rising = !rising
			turn := m[i] + left*left/(2*w[i])
			if turn > mMax {
				mMax = turn
			}
			if turn < mMin {
				mMin = turn
			}
		}
	}
	out.ShearMax, out.ShearMin, out.MomentMax, out.MomentMin = vMax, vMin, mMax, mMin
	out.ShearLeft, out.ShearRight = v[0], v[last]
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
		if bends && !turns && (t[i] > 0) != (m[i] > 0) {
			continue // the only zero of moment is where slope is farthest from zero
		}
		if bends && t[i]*t[i+1] < 0 {
			// One zero of moment and so one extremum of slope: it changes sign once.
			g := p.segment(b.first + i)
			at := g.deflectionAt(g.zero(slopeOf, bracket{0, h[i], t[i], t[i+1]}, coarse))
			yMax, yMin = max(yMax, at), min(yMin, at)
			continue
		}
		right := v[i] - w[i]*h[i]
		if !bends && (v[i] > 0) != (right > 0) {
			bends = (m[i]+v[i]*v[i]/(2*w[i]) > 0) != (m[i] > 0)
		}
		if !turns && !bends {
			continue
		}
		if !bends {
			at := p.turn(b.first + i)
			if at > yMax {
				yMax = at
			}
			if at < yMin {
				yMin = at
			}
			continue
		}
		g := p.segment(b.first + i)
		if !turns && (g.steep(t[i+1], m[i+1]) || g.holds(m[i+1])) {
			continue
		}
		zeros := g.slopeZeros(coarse)
		for _, s := range zeros.at[:zeros.n] {
			at := g.deflectionAt(s)
			yMax, yMin = max(yMax, at), min(yMin, at)
		}
		// Slope may vanish at the end itself, where rounding hides its change of sign.
		yMax, yMin = max(yMax, y[i], y[i+1]), min(yMin, y[i], y[i+1])
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

// holds reports that the slope, of one sign at both ends, keeps it through the only zero of
// the moment, where it is nearest to zero; moment is that at the right end.
func (g segment) holds(moment float64) bool {
	if !(g.moment*moment < 0) {
		return false // none within, two, or one besides that at an end
	}
	s := g.zero(momentOf, bracket{0, g.length, g.moment, moment}, fine)
	return (g.slopeAt(s) > 0) == (g.slope > 0)
}

// turn returns the deflection, times E I, where the slope changes sign in the segment
// that begins at station i, whose line load is constant and whose moment does not
// change sign. A parabola through the slopes at both ends, curved as the moments there
// say, guesses the place; Halley's method betters it.
func (p *Plan) turn(i int) float64 {
	h, w := p.lengths[i], p.sum.load[i]
	v0, m0, m1 := p.sum.shear[i], p.sum.moment[i], p.sum.moment[i+1]
	t0, t1 := p.sum.slope[i], p.sum.slope[i+1]
	a := h * (m0 - m1) / 2
	b := t1 - t0 - a
	root := math.Copysign(math.Sqrt(b*b-4*a*t0), t1-t0)
	s := -2 * t0 * h / (b + root)
	for range 8 {
		v := v0 - s*w
		m := m0 + s*(v0-s*w*0.5)
		t := t0 - s*m0 - s*s*(v0*0.5-s*w*(1.0/6))
		step := 2 * t * m / (2*m*m + t*v)
		if to := s + step; !(0 <= to && to <= h) {
			break
		}
		bend := v * v * step * step
		if abs(step) <= short*h && bend <= straight*m*m && bend*abs(step) <= settled*h*m*m {
			y := p.sum.deflection[i] + s*t0 - s*s*(m0*0.5+s*(v0*(1.0/6)-s*w*(1.0/24)))
			return y + step*(t-step*(m*0.5+step*(v*(1.0/6)-step*w*(1.0/24))))
		}
		s += step
	}
	g := p.segment(i)
	return g.deflectionAt(g.zero(slopeOf, bracket{0, h, t0, t1}, coarse))
}

// The last step of Halley's method leaves an error of about (V / 2M)² - w / 6M times
// its cube, provided that M does not change much along it. With these bounds, parts
// of the segment and ratios, that is some millionths of the segment, and the
// deflection is wrong by the order of its square.
const (
	short    = 1e-2
	straight = 0.04
	settled  = 1e-5
)
