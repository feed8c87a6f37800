package table

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/footing"
	"patiocover/cover"
)

// A Cell is one answer of the table with what it was asked. What a part does not use is
// zero or empty.
type Cell struct {
	Index   int         `json:"index"`                     // number of the cell
	Part    string      `json:"part"`                      // rafter, beam, post, footing or tie
	Load    Load        `json:"load"`                      // gravity load
	Speed   float64     `json:"wind_mph"`                  // mph
	Wood    cover.Wood  `json:"wood,omitzero"`             // of rafters, beams and posts
	Size    string      `json:"size,omitempty"`            // of rafters, asked; of beams and posts, the answer
	Spacing float64     `json:"spacing_in,omitempty"`      // in on center
	Span    float64     `json:"rafter_span_ft,omitempty"`  // ft on plan
	Bay     float64     `json:"post_spacing_ft,omitempty"` // ft
	Area    float64     `json:"area_sqft,omitempty"`       // ft² of plan on one post
	Height  float64     `json:"height_ft,omitempty"`       // ft
	Soil    float64     `json:"soil_psf,omitempty"`        // psf
	Answer  float64     `json:"answer,omitempty"`          // in Unit: the longest span, the least width, the rating
	Unit    string      `json:"unit,omitempty"`            // in or lb; empty where the answer is a size
	None    bool        `json:"none,omitempty"`            // no span, size or width of the list passes
	Governs string      `json:"governs"`                   // the check that stops the next inch, or the largest at the answer
	Ratio   cover.Ratio `json:"ratio"`                     // largest ratio at the answer, or of the largest size
}

// The parts of a table, in the order of their cells.
const (
	RafterPart  = "rafter"
	BeamPart    = "beam"
	PostPart    = "post"
	FootingPart = "footing"
	TiePart     = "tie"
)

// carried is the width of roof that bears on the outer line, in, from the span of the
// rafters to it and their overhang, on plan: the whole load turns about the house.
func carried(span, overhang float64) float64 {
	return (span + overhang) * (span + overhang) / (2 * span)
}

// rafter is one rafter of the table.
func (t *Table) rafter(c *column, p *piece, spacing float64) line {
	return line{
		piece: p, shares: c.small, width: spacing, sloped: true, cosine: c.cosine, held: *t.criteria.Service.Joined,
		seat: t.criteria.Rafters.Seat * calc.In, brace: t.criteria.Rafters.Brace * calc.Ft, limits: t.criteria.Limits,
		worker: c.worker, plan: c.plan, dead: c.dead,
	}
}

// rafterCell finds the longest span.
func (t *Table) rafterCell(c *column, wood, size, spacing int) Cell {
	r := t.criteria.Rafters
	s := r.Spacings[spacing] * calc.In
	p := &t.rafters[wood][size]
	if s > t.shared {
		p = &t.alone[wood][size]
	}
	l := t.rafter(c, p, s)
	inches, at, stops := l.longest(t.criteria.Service.Longest * calc.Ft)
	return Cell{
		Part: RafterPart, Wood: r.Woods[wood], Size: r.Sizes[size], Spacing: r.Spacings[spacing],
		Answer: inches, Unit: "in", None: inches == 0, Governs: stops, Ratio: cover.Ratio(at.ratio),
	}
}

// beamCell finds the least size.
func (t *Table) beamCell(c *column, wood, span, bay int) Cell {
	b := t.criteria.Beams
	out := Cell{Part: BeamPart, Wood: b.Woods[wood], Span: b.Spans[span], Bay: b.Bays[bay]}
	width := carried(b.Spans[span]*calc.Ft, b.Overhang*calc.Ft)
	for i := range t.beams[wood] {
		l := line{
			piece: &t.beams[wood][i], shares: c.large, width: width, cosine: 1, seat: b.Seat * calc.In, below: c.below,
			limits: t.criteria.Limits, worker: c.worker, plan: c.plan, dead: c.dead / c.cosine,
		}
		f := l.grade(b.Bays[bay] * calc.Ft)
		out.Size, out.Governs, out.Ratio, out.None = b.Sizes[i], f.check, cover.Ratio(f.ratio), f.ratio > 1
		if !out.None {
			break
		}
	}
	return out
}

// postCell finds the least size.
func (t *Table) postCell(c *column, wood, area, height int) Cell {
	q := t.criteria.Posts
	out := Cell{Part: PostPart, Wood: q.Woods[wood], Area: q.Areas[area], Height: q.Heights[height]}
	for i := range t.posts[wood] {
		f := c.postRatio(&t.posts[wood][i], q.Areas[area]*calc.SqFt, q.Heights[height]*calc.Ft)
		out.Size, out.Governs, out.Ratio, out.None = q.Sizes[i], f.check, cover.Ratio(f.ratio), f.ratio > 1
		if !out.None {
			break
		}
	}
	return out
}

// postRatio checks a post, pinned at both ends, under an area of roof, in², by its height, in.
func (c *column) postRatio(p *piece, area, height float64) found {
	var f found
	axis := member.Axis{Length: height, Ends: member.PinnedPinned}
	for i := range c.large {
		s := &c.large[i]
		down := c.onPost(s, area) + s.self*p.weight(s.least)*height
		f.raise(member.NewCompression(down, &p.values, s.duration, member.Column{Deep: axis, Thin: axis}).Ratio(),
			"compression with buckling")
	}
	return f
}

// onPost is the vertical force of an area of roof on a post, lb, + down. The framing
// counts where it presses alone.
func (c *column) onPost(s *share, area float64) float64 {
	if s.least {
		return s.upright * area
	}
	return (s.upright + s.self*c.below) * area
}

// The widths of footings that are tried, in.
const (
	narrowest = 8 * calc.In
	widest    = 96 * calc.In
)

// footingCell finds the least width in whole inches, or the check that is over at the
// width that comes nearest.
func (t *Table) footingCell(c *column, area, soil int) Cell {
	g := t.criteria.Footings
	out := Cell{Part: FootingPart, Area: g.Areas[area], Soil: g.Soils[soil], Unit: "in"}
	down, up := 0.0, 0.0
	for i := range c.large {
		f := c.onPost(&c.large[i], g.Areas[area]*calc.SqFt)
		down, up = max(down, f), max(up, -f)
	}
	best := found{ratio: math.Inf(1)}
	for width := narrowest; width <= widest; width += calc.In { // wide ones must be thick: it is no matter of halving
		f := g.grade(width, down, up, g.Soils[soil]*calc.PSF)
		if f.ratio <= 1 {
			out.Answer, best = width, f
			break
		}
		if f.ratio < best.ratio {
			best = f
		}
	}
	out.None, out.Governs, out.Ratio = out.Answer == 0, best.check, cover.Ratio(best.ratio)
	return out
}

// grade checks a footing of a width, in, that is concrete from its bottom to grade.
func (g *Footings) grade(width, down, up, soil float64) found {
	b := footing.Block{Width: width, Thickness: g.Depth * calc.In, Depth: g.Depth * calc.In, Water: math.Inf(1)}
	if g.Shape == "round" {
		b.Shape = footing.Round
	}
	var f found
	f.raise(footing.NewBearing(footing.Press{Force: down, Soil: footing.Pressure{Value: soil}}, b).Ratio(), "bearing on the soil")
	f.raise(footing.NewUplift(up, b).Ratio(), "uplift on the footing")
	f.raise(footing.NewThickness(b, g.Post*calc.In).Ratio(), "thickness")
	f.raise(footing.NewProjection(b, g.Post*calc.In).Ratio(), "projection")
	f.raise(footing.NewDepth(b.Depth, g.Frost*calc.In, footing.FrostCounts).Ratio(), "depth")
	return f
}

// tieCell finds the rating of the tie at the outer end of a rafter.
func (t *Table) tieCell(c *column, span, spacing int) Cell {
	q := t.criteria.Ties
	area := carried(q.Spans[span]*calc.Ft, q.Overhang*calc.Ft) * q.Spacings[spacing] * calc.In
	out := Cell{
		Part: TiePart, Span: q.Spans[span], Spacing: q.Spacings[spacing], Unit: "lb", Governs: "no net uplift",
	}
	for i := range c.small {
		s := &c.small[i]
		if s.wind >= 0 || !s.least {
			continue
		}
		u := connections.NewUplift(-s.wind*area, s.dead*area, s.factor, s.self)
		if u.Rating > out.Answer {
			out.Answer, out.Governs, out.Ratio = u.Rating, s.name, cover.Ratio(u.Ratio())
		}
	}
	return out
}

// sharedSpacing is the widest spacing of rafters that share their load (NDS 2018 4.3.9).
func sharedSpacing(joined bool) float64 {
	const three = 3 // rafters or more, which every cover of the table has
	widest := 0.0
	for _, s := range []float64{6, 12, 16, 19.2, 24} {
		if lumber.Repetitive(three, s*calc.In, joined) {
			widest = s * calc.In
		}
	}
	return widest
}
