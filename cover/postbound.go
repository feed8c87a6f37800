package cover

import (
	"math"

	"patiocover/beam/lumber"
)

// bend grades axial force with bending, unless it is sure to stay below the floor.
func (g *grading) bend(k postCheck, x postFound) {
	if g.floor > 0 && g.atMost(&x) <= g.floor {
		return
	}
	g.raise(k, x)
}

// atMost is a ratio that axial force with bending cannot be above, in a few steps; beyond
// any for a post that is no square timber, whose edge may turn over or whose values go by
// other rules.
//
// It takes the worse plane of buckling for both, and the c of sawn posts, the least there
// is (NDS 2018 3.7.1, 3.9, 15.4.1).
func (g *grading) atMost(x *postFound) float64 {
	p, b := g.post, &x.bend
	size := p.section.Depth
	if !g.square() {
		return math.Inf(1)
	}
	bending := min(p.dry.Bending.At(x.duration), p.flat.Bending.At(x.duration))
	area, modulus := size*size, size*size*size/6
	if x.demand < 0 {
		pull := -x.demand / g.c.net(p)
		stress := (b.along+b.out)/modulus + pull*6*(b.alongOff+b.outOff)/size
		return pull/p.dry.Tension.At(x.duration) + stress/bending
	}
	axial := x.demand / area
	share := axial / (g.slim * p.dry.Stability.At(x.duration))
	if !(share < 1) {
		return math.Inf(1)
	}
	pressed := g.pressed(axial, x.duration)
	stress := (b.along+b.out)/modulus + axial*6*(b.alongOff+b.outOff)/size*(1+0.234*share)
	return max(pressed*pressed+stress/(bending*(1-share)), share) // eq. 3.9-3 and 3.9-4
}

// pressed is a ratio that the stress alone, psi, cannot be above on a square post.
func (g *grading) pressed(axial float64, day lumber.Duration) float64 {
	star := g.post.dry.Compression.At(day)
	alpha := g.slim * g.post.dry.Stability.At(day) / star
	if !(alpha > 0) {
		return math.Inf(1)
	}
	half := (1 + alpha) / (2 * leastC)
	return axial / (star * (half - math.Sqrt(half*half-alpha/leastC)))
}

// square reports whether the bounds hold for the post: a square timber.
func (g *grading) square() bool {
	s := &g.post.section
	return s.Breadth == s.Depth && !s.Round && s.Plies <= 1 && s.Class != lumber.Manufactured
}

// plain grades a force on an area, unless it is sure to stay below the floor. strength is
// at most what the check allows, psi.
func (g *grading) plain(k postCheck, x postFound, area, strength float64) {
	if g.floor > 0 && x.demand <= g.floor*area*strength {
		return
	}
	g.raise(k, x)
}

// leastC is c in the column formula of sawn posts (NDS 2018 3.7.1.5).
const leastC = 0.8

// slimness is 0.822 / (le/d)² of a square post in the worse plane, factor (NDS 2018
// 3.7.1.5); 0 where it is too slim to be allowed.
func (g *grading) slimness() float64 {
	column := g.m.column(g.c, false)
	long := max(column.Deep.Ends.Factor()*column.Deep.Length, column.Thin.Ends.Factor()*column.Thin.Length)
	slenderness := long / g.post.section.Depth
	if !(slenderness <= 50) { // 3.7.1.4
		return 0
	}
	return 0.822 / (slenderness * slenderness)
}
