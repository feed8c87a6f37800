package cover

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A postCheck is one kind of check of a post.
type postCheck uint8

// The kinds, in the order of the report.
const (
	buckling postCheck = iota
	footBearing
	beamSeat
	postTension
	postChecks
)

// A postCase is what a post of a beam line must be checked with, before its size is
// known.
type postCase struct {
	post   int // index along the line
	line   int
	height float64     // in, from its foot to the underside of the beam
	ends   member.Ends // how it is held against swaying
	half   bool        // the beam is spliced over it: each piece has half of the seat
	force  postPeak    // lb, at its top
	seatOn peak        // lb, largest reaction of one piece of beam
}

// postCase says what post n of the line must be checked with.
func (f *beamFrame) postCase(m *model, lw *lineWork, n int, rafter, beam *wood) postCase {
	c := postCase{
		line: f.line, post: n, ends: m.ends, force: f.post(n),
		height: m.postHeight(f.line, rafter.section.Depth, beam.section.Depth),
	}
	pieces := 0
	for i := range f.pieces {
		s := n - f.pieces[i].firstPost
		if s < 0 || s > f.pieces[i].plan.Line().Spans() {
			continue
		}
		pieces++
		if at := lw.peaks[i].seat[s]; at.value > c.seatOn.value {
			c.seatOn = at
		}
	}
	c.half = pieces > 1
	return c
}

// endsOf returns how posts are held: by the worse of the two directions, because
// the input does not say which way a rectangular post is turned.
func endsOf(in Lateral) member.Ends {
	along, out := heldBy[*in.Along], heldBy[*in.Out]
	if along.Factor() > out.Factor() {
		return along
	}
	return out
}

// heldBy is how each lateral system holds the posts. Only the house keeps their tops
// from swaying: knee braces hold a top that sways against rotation, and posts in the
// ground stand by their embedment (NDS 2018 Appendix G).
var heldBy = map[string]member.Ends{
	"house_diaphragm": member.PinnedPinned,
	"knee_braces":     member.PinnedGuided,
	"embedded_posts":  member.FixedFree,
	"none":            member.FixedFree,
}

// column is how the post is held in both planes.
func (c *postCase) column() member.Column {
	a := member.Axis{Length: c.height, Ends: c.ends}
	return member.Column{Deep: a, Thin: a}
}

// seat is the contact of one piece of beam with the post top.
func (c *postCase) seat(post, beam *wood) member.Seat {
	length := post.section.Breadth
	if c.half {
		length /= 2
	}
	return member.Seat{Width: min(post.section.Breadth, beam.section.Breadth), Length: length}
}

// grade finds the worst check of every kind. It allocates nothing.
func (c *postCase) grade(post, beam *wood, g *[postChecks]found) {
	*g = [postChecks]found{}
	own := post.most * c.height
	for d := range durations {
		c.gradeTension(post, lumber.Duration(d), &g[postTension])
		at := c.force.press[d]
		if at.value <= 0 {
			continue
		}
		day := lumber.Duration(d)
		foot := at.value + own
		g[buckling].raise(found{
			ratio:  member.NewCompression(foot, &post.dry, day, c.column()).Ratio(),
			demand: foot, duration: day, by: at.by,
		})
		g[footBearing].raise(found{
			ratio:  member.NewEndBearing(foot, post.section.Area(), &post.seat, day, false).Ratio(),
			demand: foot, duration: day, by: at.by,
		})
	}
	if at := c.seatOn; at.value > 0 {
		g[beamSeat].raise(found{
			ratio:  member.NewBearing(at.value, &beam.seat, c.seat(post, beam)).Ratio(),
			demand: at.value, by: at.by,
		})
	}
}

// gradeTension checks the post in uplift under combinations of one duration.
func (c *postCase) gradeTension(post *wood, day lumber.Duration, worst *found) {
	up := c.force.lift[day]
	if up.value <= 0 {
		return
	}
	worst.raise(found{
		ratio:  member.NewTension(up.value, post.section.Area(), &post.dry, day).Ratio(),
		demand: up.value, duration: day, by: up.by,
	})
}

// result makes the worst check of a kind again, to be explained.
func (c *postCase) result(post, beam *wood, k postCheck, x found) calc.Result {
	switch k {
	case buckling:
		return member.NewCompression(x.demand, &post.dry, x.duration, c.column())
	case footBearing:
		return member.NewEndBearing(x.demand, post.section.Area(), &post.seat, x.duration, false)
	case beamSeat:
		return member.NewBearing(x.demand, &beam.seat, c.seat(post, beam))
	}
	return member.NewTension(x.demand, post.section.Area(), &post.dry, x.duration)
}
