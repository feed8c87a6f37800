package beam

// A segment is a piece of the member between two cuts. Within it the line load is
// linear, so that every quantity is a polynomial of the distance s from its left
// end. Slope and deflection are multiplied by the stiffness.
type segment struct {
	length     float64 // h, in
	shear      float64 // V at the left end, lb
	moment     float64 // M at the left end, lb-in
	slope      float64 // E I y' at the left end, lb-in²
	deflection float64 // E I y at the left end, lb-in³
	load       float64 // w at the left end, lb/in
	change     float64 // growth of w, lb/in²
}

// shearAt returns V, lb, from dV/ds = -w.
func (g segment) shearAt(s float64) float64 {
	return g.shear - s*(g.load+s*g.change/2)
}

// momentAt returns M, lb-in, from dM/ds = V.
func (g segment) momentAt(s float64) float64 {
	return g.moment + s*(g.shear-s*(g.load/2+s*g.change*(1.0/6)))
}

// slopeAt returns E I y', lb-in², from E I y" = -M.
func (g segment) slopeAt(s float64) float64 {
	return g.slope - s*(g.moment+s*(g.shear/2-s*(g.load*(1.0/6)+s*g.change*(1.0/24))))
}

// deflectionAt returns E I y, lb-in³.
func (g segment) deflectionAt(s float64) float64 {
	return g.deflection + s*(g.slope-s*(g.moment/2+
		s*(g.shear*(1.0/6)-s*(g.load*(1.0/24)+s*g.change*(1.0/120)))))
}

// from returns the part of the segment that begins s from its left end.
func (g segment) from(s float64) segment {
	return segment{
		length: g.length - s, shear: g.shearAt(s), moment: g.momentAt(s), slope: g.slopeAt(s),
		deflection: g.deflectionAt(s), load: g.load + s*g.change, change: g.change,
	}
}
