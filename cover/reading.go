package cover

import "patiocover/beam"

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
