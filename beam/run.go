package beam

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/floats"
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
	sums, fresh := p.sums[:n], true
	var waits []float64 // a case that waits for the next one, as they are added in pairs
	var by float64
	for k, f := range factors {
		if !(-heaviest <= f && f <= heaviest) {
			return false
		}
		if f == 0 {
			continue
		}
		from := p.numbers[k*p.size:][:n]
		switch {
		case waits == nil:
			waits, by = from, f
			continue
		case fresh:
			addTwo(sums, by, waits, f, from)
		default:
			addTwo(p.pair[:n], by, waits, f, from)
			floats.Add(sums, p.pair[:n])
		}
		waits, fresh = nil, false
	}
	switch {
	case waits != nil && fresh:
		floats.ScaleTo(sums, by, waits)
	case waits != nil:
		floats.AddScaled(sums, by, waits)
	case fresh:
		clear(sums)
	}
	return true
}

// addTwo leaves f times a plus g times b in to.
func addTwo(to []float64, f float64, a []float64, g float64, b []float64) {
	floats.ScaleTo(to, f, a)
	floats.AddScaled(to, g, b)
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
