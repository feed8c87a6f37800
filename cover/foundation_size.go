package cover

import (
	"fmt"

	"patiocover/calc"
	"patiocover/connections/footing"
)

// Sizes of footings in the trade's steps, in.
const (
	footingStep  = 2 * calc.In  // of width and depth
	leastSquare  = 12 * calc.In // width of a square footing
	leastPier    = 10 * calc.In // diameter of a pier
	widestChosen = 60 * calc.In
	deeperBy     = 72 * calc.In // a pier may go deeper than frost and code ask for
)

// A footingNeed is what one post asks of its foundation, allowable stress design.
type footingNeed struct {
	press  float64 // lb, largest of all combinations, with the post
	lift   float64 // lb, net uplift at the foot
	shear  float64 // lb, sideways at the foot of a post with a pinned base
	top    float64 // lb, sideways at the roof on a post that stands by its embedment
	height float64 // in, of that force above grade
	thin   float64 // in, lesser width of the post
	thick  float64 // in, greater width of the post

	section float64 // in², of the post
}

// A footingChecks is every check of one block under one post.
type footingChecks struct {
	bearing    footing.Bearing
	uplift     footing.Uplift
	sideways   footing.Sideways
	depth      footing.Depth
	thickness  footing.Thickness
	projection footing.Projection
	plain      footing.Plain
	pole       footing.Pole
	embedded   bool // the pole counts
}

// check puts a post on a block. It allocates nothing.
func (g *bed) check(n *footingNeed, b footing.Block, hold footing.Ground) footingChecks {
	c := footingChecks{
		uplift: footing.NewUplift(n.lift, b), depth: footing.NewDepth(b.Depth, g.line, g.frost),
		thickness: footing.NewThickness(b, n.thin), projection: footing.NewProjection(b, n.thick),
		plain: footing.NewPlain(n.press, n.thin, g.concrete, b), embedded: n.top > 0,
	}
	c.sideways = footing.NewSideways(footing.Shear{
		Force: n.shear, Uplift: n.lift, Lateral: g.lateral, Friction: g.friction, Cohesion: g.cohesion,
	}, b)
	c.bearing = footing.NewBearing(footing.Press{Force: n.press, Moment: c.sideways.Moment(), Soil: g.bearing}, b)
	if c.embedded {
		c.pole = footing.NewPole(n.top, n.height, footing.Shaft{Shape: b.Shape, Width: b.Width, Depth: b.Depth}, hold)
	}
	return c
}

// ratio is the largest ratio of the checks.
func (c *footingChecks) ratio() float64 {
	most := max(c.bearing.Ratio(), c.uplift.Ratio(), c.sideways.Ratio(), c.depth.Ratio(), c.thickness.Ratio(),
		c.projection.Ratio(), c.plain.Ratio())
	if c.embedded {
		most = max(most, c.pole.Ratio())
	}
	return most
}

// results lists the checks in the order of the report.
func (c *footingChecks) results() []calc.Result {
	all := []calc.Result{c.bearing, c.uplift, c.sideways, c.depth, c.thickness, c.projection, c.plain}
	if c.embedded {
		all = append(all, c.pole)
	}
	return all
}

// A footingPlan is which blocks may be tried.
type footingPlan struct {
	shape      footing.Shape
	least      float64 // in, least width
	shallowest float64 // in
	core       float64 // in², section of a post that stands in the concrete
	asWide     bool    // no deeper than wide, unless frost asks for it
	width      float64 // in, as given; 0 to be chosen
	depth      float64 // in, as given; 0 to be chosen
	neck       float64 // in, of a spread footing; 0 for solid concrete
	thickness  float64 // in, of its pad, as given; 0 to be chosen
	soilOver   bool    // the soil above the pad counts
	hold       footing.Ground
}

// planOf says which blocks a kind of foundation may be. The collar of an embedded post is
// at least twice as wide as the post (common practice).
func (m *model) planOf(kind string, g *bed, n *footingNeed) footingPlan {
	f := m.in.Foundation
	p := footingPlan{shape: footing.Round, least: leastPier}
	switch kind {
	case "footing":
		p.shape, p.least, p.asWide = footing.Square, leastSquare, true
	case "embedded":
		p.least, p.core = calc.RoundUp(2*n.thick, footingStep), n.section
		p.hold = footing.Ground{
			Lateral: g.lateral, Constrained: *f.HeldBySlab, Loose: *f.LooseTop * calc.In,
		}
		if g.frost != footing.FrostExempt {
			p.hold.Loose = max(p.hold.Loose, g.line)
		}
	}
	p.shallowest = calc.RoundUp(footing.NewDepth(1, g.line, g.frost).Required, footingStep)
	if kind == *f.Kind {
		p.width, p.depth = inchesOf(f.Width), inchesOf(f.Depth)
		p.least = max(p.least, inchesOf(f.Neck)+footingStep)
		p.neck, p.thickness, p.soilOver = inchesOf(f.Neck), inchesOf(f.PadThickness), *f.SoilOver
	}
	return p
}

func inchesOf(x *float64) float64 {
	if x == nil {
		return 0
	}
	return *x * calc.In
}

// choose returns the block of the least concrete that passes under every post of a list,
// the shallower of equals, with its largest ratio; where none passes, the one that comes
// nearest.
func (g *bed) choose(needs []footingNeed, p footingPlan) (footing.Block, float64) {
	var s sizing
	for width := first(p.width, p.least); width <= last(p.width, widestChosen); width += footingStep {
		deepest := p.shallowest + deeperBy
		if p.asWide && p.neck == 0 {
			deepest = max(p.shallowest, width)
		}
		for depth := first(p.depth, p.shallowest); depth <= last(p.depth, deepest); depth += footingStep {
			b := footing.Block{Shape: p.shape, Width: width, Thickness: depth, Depth: depth, Core: p.core, Water: g.water}
			thickness := first(p.thickness, thinnestPad)
			if p.neck == 0 || thickness > depth-footingStep {
				s.try(g, needs, b, p.hold) // solid up to grade, where a neck would be shorter than a step
				continue
			}
			b.Neck, b.SoilOver = p.neck, p.soilOver
			for b.Thickness = thickness; b.Thickness <= last(p.thickness, depth-footingStep); b.Thickness += footingStep {
				s.try(g, needs, b, p.hold)
			}
		}
	}
	return s.block, s.ratio
}

// thinnestPad is the least thickness of a pad that is chosen, in: that of plain concrete
// (ACI 318-19 14.3.2.1, from memory).
const thinnestPad = 8 * calc.In

// A sizing is the best block so far.
type sizing struct {
	block  footing.Block
	ratio  float64
	passes bool
}

// try takes a block that passes with less concrete, or comes nearer where none passes.
func (s *sizing) try(g *bed, needs []footingNeed, b footing.Block, hold footing.Ground) {
	if s.passes && b.Volume() >= s.block.Volume() {
		return
	}
	r := 0.0
	for i := range needs {
		c := g.check(&needs[i], b, hold)
		if r = max(r, c.ratio()); r > 1 && s.passes {
			return
		}
	}
	if r <= 1 || !s.passes && (s.block.Width == 0 || r < s.ratio) {
		s.block, s.ratio, s.passes = b, r, r <= 1
	}
}

// first is where a size begins: at what was given, or at the least.
func first(given, least float64) float64 {
	if given > 0 {
		return given
	}
	return least
}

// last is where it ends.
func last(given, most float64) float64 {
	if given > 0 {
		return given
	}
	return most
}

// blockWords says the size of a block.
func blockWords(b footing.Block) string {
	words := fmt.Sprintf("%s in %s, %s in deep", calc.Number(b.Width), b.Shape, calc.Number(b.Depth))
	if b.Neck > 0 {
		words += fmt.Sprintf(", pad %s in thick below a neck of %s in", calc.Number(b.Thickness), calc.Number(b.Neck))
	}
	return words
}
