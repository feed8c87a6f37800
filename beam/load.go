package beam

// A Load is one force on the member, downward when positive. The zero value is no
// load at all.
type Load struct {
	From  float64 // where it begins, in from the left tip
	To    float64 // where it ends, in from the left tip; From for a point load
	Start float64 // intensity at From, lb/in; for a point load the force, lb
	End   float64 // intensity at To, lb/in; for a point load 0 lb/in
	point bool
}

// Point returns the force P, in lb, at x, in inches from the left tip.
func Point(x, force float64) Load { return Load{From: x, To: x, Start: force, point: true} }

// Uniform returns the line load w, in lb/in, between two positions in inches from
// the left tip.
func Uniform(from, to, intensity float64) Load {
	return Load{From: from, To: to, Start: intensity, End: intensity}
}

// Linear returns a line load that varies evenly from start to end, in lb/in,
// between two positions in inches from the left tip: a trapezoid, or a triangle
// when one of the two is 0.
func Linear(from, to, start, end float64) Load {
	return Load{From: from, To: to, Start: start, End: end}
}

// Concentrated reports whether the load is a point load.
func (l Load) Concentrated() bool { return l.point }

// Total returns the resultant force, lb.
func (l Load) Total() float64 {
	if l.point {
		return l.Start
	}
	return (l.To - l.From) * (l.Start + l.End) / 2
}

// Moment returns the moment of the load about the left tip, lb-in, positive when
// it turns the member clockwise.
func (l Load) Moment() float64 {
	if l.point {
		return l.Start * l.From
	}
	h := l.To - l.From
	return l.Total()*l.From + h*h*(l.Start+2*l.End)/6
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
