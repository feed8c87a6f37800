package beam

// A Section is what a combination causes at one place of the member.
type Section struct {
	At         float64 // in from the left tip
	ShearLeft  float64 // V just left of the place, lb; 0 beyond the left tip
	ShearRight float64 // V just right of the place, lb; 0 beyond the right tip
	Moment     float64 // M, lb-in
	Slope      float64 // dy/dx, radians, positive where the deflection grows to the right
	Deflection float64 // y, downward, in
}

// At returns what the combination causes at x, in inches from the left tip. The
// rules for the other arguments are those of [Plan.Run]; a place off the member
// gives values that are not numbers. It is meant for diagrams.
func (p *Plan) At(factors []float64, stiffness, x float64) Section {
	tolerance := coincident * p.line.length
	on := -tolerance <= x && x <= p.line.length+tolerance
	if !p.combine(factors, p.size) || !sound(stiffness) || !on {
		return Section{x, nan, nan, nan, nan, nan}
	}
	i := p.search(x, 0)
	c := p.cuts[i]
	if c.x-x > tolerance {
		g, from := p.segment(p.cuts[i-1].begin), p.cuts[i-1].x
		return g.section(x, x-from, stiffness)
	}
	return p.sectionAtCut(i, stiffness)
}

// section returns the section at x, which lies s inside the segment.
func (g segment) section(x, s, stiffness float64) Section {
	v := g.shearAt(s)
	return Section{
		At: x, ShearLeft: v, ShearRight: v, Moment: g.momentAt(s),
		Slope: g.slopeAt(s) / stiffness, Deflection: g.deflectionAt(s) / stiffness,
	}
}

// sectionAtCut returns the section at cut i, where shear may jump.
func (p *Plan) sectionAtCut(i int, stiffness float64) Section {
	c := p.cuts[i]
	s := p.segment(c.begin).section(c.x, 0, stiffness)
	s.ShearLeft = 0
	if i > 0 {
		left := p.segment(p.cuts[i-1].begin)
		s.ShearLeft = left.shearAt(left.length)
	}
	if i == len(p.cuts)-1 {
		s.ShearRight = 0
	}
	return s
}
