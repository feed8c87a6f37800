package beam

import "slices"

// A Response is what a combination of cases causes. The zero value is ready to be
// filled by [Plan.Run] or [Plan.Forces], which reuse its storage.
type Response struct {
	Bays           []Bay     // 0 the left overhang, 1 the first span, …, the last the right overhang
	Reactions      []float64 // at each support from the left, upward, lb
	SupportMoments []float64 // M over each support from the left, lb-in
	LeftTip        float64   // deflection of the left tip, downward, in; 0 without overhang
	RightTip       float64   // deflection of the right tip, downward, in; 0 without overhang
}

// A Bay holds the exact extrema of one span or overhang, both ends included. All
// are 0 in an overhang that does not exist.
//
// Shear counts on both faces of every point load inside the bay, but not beyond a
// load at the very tip. The deflection of a span is measured from the straight line
// between its supports, so that its largest is never below 0 and its least never
// above. After [Plan.Forces] the deflections are not numbers.
type Bay struct {
	ShearMax      float64 // largest V, lb
	ShearMin      float64 // least V, lb
	ShearLeft     float64 // V just right of the left end, lb
	ShearRight    float64 // V just left of the right end, lb
	MomentMax     float64 // largest M, sagging, lb-in
	MomentMin     float64 // least M, hogging when negative, lb-in
	DeflectionMax float64 // largest y, downward, in
	DeflectionMin float64 // least y, upward when negative, in
}

// ShearAbs returns the larger magnitude of the two extrema of shear, lb.
func (b Bay) ShearAbs() float64 { return larger(b.ShearMax, -b.ShearMin) }

// MomentAbs returns the larger magnitude of the two extrema of moment, lb-in.
func (b Bay) MomentAbs() float64 { return larger(b.MomentMax, -b.MomentMin) }

// DeflectionAbs returns the larger magnitude of the two extrema of deflection, in.
func (b Bay) DeflectionAbs() float64 { return larger(b.DeflectionMax, -b.DeflectionMin) }

// larger returns the larger of two values, and not a number if either is none.
func larger(a, b float64) float64 { return max(a, b) }

// fit makes room for the plan's bays and supports.
func (r *Response) fit(p *Plan) {
	bays, supports := len(p.bays), len(p.line.supports)
	r.Bays = slices.Grow(r.Bays[:0], bays)[:bays]
	r.Reactions = slices.Grow(r.Reactions[:0], supports)[:supports]
	r.SupportMoments = slices.Grow(r.SupportMoments[:0], supports)[:supports]
}

// spoil fills the response with what is not a number.
func (r *Response) spoil() {
	for i := range r.Bays {
		r.Bays[i] = Bay{nan, nan, nan, nan, nan, nan, nan, nan}
	}
	for i := range r.Reactions {
		r.Reactions[i], r.SupportMoments[i] = nan, nan
	}
	r.LeftTip, r.RightTip = nan, nan
}
