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
	pressedBent
	pulledBent
	netPress
	footBearing
	beamSeat
	postTension
	tongueBent
	postShear
	postChecks
)

// A postFound is the worst of one kind of check of a post, with what it takes to make it
// again.
type postFound struct {
	ratio    float64
	demand   float64 // lb
	duration lumber.Duration
	by       int  // arrangement; of an earthquake its row
	quake    bool // the earthquake brings it
	bend     bend
}

func (f *postFound) raise(x postFound) {
	if x.ratio > f.ratio {
		*f = x
	}
}

// A bend is what bends a post beside its axial force.
type bend struct {
	direction           int     // of the push; of none the plane in which the least eccentricity is taken
	along, out          float64 // lb-in, moments in the planes along the house and out from it
	alongOff, outOff    float64 // in, eccentricities of the axial force in the two planes
	turned              bool    // the depth lies out from the house
	windPart, quakePart float64 // factors of the combination on wind and earthquake
}

// A postCase is what a post of a beam line must be checked with, before its size is
// known.
type postCase struct {
	post   int // index along the line
	line   int
	height float64 // in, from its foot to the underside of the beam
	half   bool    // the beam is spliced over it: each piece has half of the seat
	top    topJoint
	force  postPeak // lb, at its top
	seatOn peak     // lb, largest reaction of one piece of beam
}

// postCase says what post n of the line must be checked with.
func (f *beamFrame) postCase(m *model, lw *lineWork, n int, rafter, beam *wood) postCase {
	c := postCase{
		line: f.line, post: n, top: m.top, force: f.post(n),
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

// heldBy is how each lateral system holds the posts. Only the house keeps their tops
// from swaying: knee braces hold a top that sways against rotation, and posts in the
// ground stand by their embedment (NDS 2018 Appendix G).
var heldBy = map[string]member.Ends{
	"house_diaphragm": member.PinnedPinned,
	"knee_braces":     member.PinnedGuided,
	"embedded_posts":  member.FixedFree,
	"none":            member.FixedFree,
}

// column is how the post is held in both planes, each by the system of its direction. A
// post that stands by its embedment is as long as down to where it is clamped.
func (m *model) column(c *postCase, turned bool) member.Column {
	var axes [directions]member.Axis
	for d := range axes {
		axes[d] = member.Axis{Length: c.height, Ends: m.ends[d]}
		if m.racking[d].system == "embedded_posts" {
			axes[d].Length += m.effectOn(d, c.line, c.post).below
		}
	}
	if turned {
		return member.Column{Deep: axes[outward], Thin: axes[alongHouse]}
	}
	return member.Column{Deep: axes[alongHouse], Thin: axes[outward]}
}

// A grading grades one post of one size.
type grading struct {
	m          *model
	c          *postCase
	beam, post *wood
	worst      *[postChecks]postFound
	floor      float64 // ratio up to which the exact one is of no interest
	slim       float64 // see slimness
}

// gradePost finds the worst check of every kind. It allocates nothing.
//
// floor is the ratio up to which the search need not know axial force with bending any
// better: what cannot be above it is left out.
func (m *model) gradePost(c *postCase, w trio, floor float64, worst *[postChecks]postFound) {
	*worst = [postChecks]postFound{}
	g := grading{m: m, c: c, beam: w.beam, post: w.post, worst: worst, floor: floor}
	g.slim = g.slimness()
	post := w.post
	from, to := c.ways(post)
	for turned := from; turned <= to; turned++ {
		g.turned(turned == 1)
	}
	own, net := post.most*c.height, c.net(post)
	for d := range durations {
		if at := c.force.press[d]; at.value > 0 {
			x := postFound{demand: at.value + own, duration: lumber.Duration(d), by: at.by}
			g.plain(netPress, x, net, post.dry.Compression.At(x.duration))
			g.plain(footBearing, x, post.section.Area(), member.Unplated*post.seat.Compression.At(x.duration))
		}
		if up := c.force.lift[d]; up.value > 0 {
			x := postFound{demand: up.value, duration: lumber.Duration(d), by: up.by}
			g.plain(postTension, x, net, post.dry.Tension.At(x.duration))
			if c.top.joint == "notched" {
				g.raise(tongueBent, x)
			}
		}
	}
}

// cutAtKnee is the shear of the post above a brace, beside the bolts of the brace in the
// middle of its side.
func (m *model) cutAtKnee(post *wood, x *postFound) member.JointShear {
	a := post.dry
	a.Section.Depth = side(post, x.bend.direction, x.bend.turned)
	a.Section.Breadth = side(post, 1-x.bend.direction, x.bend.turned)
	middle := a.Section.Depth / 2
	return member.NewJointShear(x.demand, &a, x.duration, member.Joint{Lowest: middle, Highest: middle, FromEnd: m.knee.drop})
}

// turned grades what depends on how the post is turned.
func (g *grading) turned(turned bool) {
	g.bent(turned)
	for d := range directions {
		if v := g.m.factored(g.m.effectOn(d, g.c.line, g.c.post).cut); v > 0 {
			g.raise(postShear, postFound{demand: v, duration: lumber.TenMinutes, bend: bend{direction: d, turned: turned}})
		}
	}
	own := g.post.most * g.c.height
	for d := range durations {
		at := g.c.force.press[d]
		if g.floor > 0 && g.square() && g.pressed((at.value+own)/g.post.section.Area(), lumber.Duration(d)) <= g.floor {
			continue
		}
		if at.value > 0 {
			g.raise(buckling, postFound{
				demand: at.value + own, duration: lumber.Duration(d), by: at.by, bend: bend{turned: turned},
			})
		}
	}
	if at := g.c.seatOn; at.value > 0 && g.c.top.joint != "side_bolted" {
		g.raise(beamSeat, postFound{demand: at.value, by: at.by, bend: bend{turned: turned}})
	}
}

// raise grades one kind of check for one demand.
func (g *grading) raise(k postCheck, x postFound) {
	x.ratio = g.m.ratioOf(g.c, g.beam, g.post, k, &x)
	g.worst[k].raise(x)
}

// ratioOf is the ratio of one check, without the boxing of a result.
func (m *model) ratioOf(c *postCase, beam, post *wood, k postCheck, x *postFound) float64 {
	switch k {
	case buckling:
		return m.buckles(c, post, x).Ratio()
	case pressedBent, pulledBent:
		return m.bends(c, post, x).Ratio()
	case netPress:
		return member.NewNetSection(x.demand, c.net(post), &post.dry, x.duration).Ratio()
	case footBearing:
		return c.foot(post, x).Ratio()
	case beamSeat:
		return c.seated(beam, post, x).Ratio()
	case tongueBent:
		return c.pulls(beam, post, x).Ratio()
	case postShear:
		if m.racking[x.bend.direction].braced() {
			return m.cutAtKnee(post, x).Ratio()
		}
		return member.NewShear(x.demand, &post.dry, x.duration).Ratio()
	}
	return member.NewTension(x.demand, c.net(post), &post.dry, x.duration).Ratio()
}

// postResult makes the worst check of a kind again, to be explained.
func (m *model) postResult(c *postCase, beam, post *wood, k postCheck, x postFound) calc.Result {
	switch k {
	case buckling:
		return m.buckles(c, post, &x)
	case pressedBent, pulledBent:
		return m.bends(c, post, &x)
	case netPress:
		return member.NewNetSection(x.demand, c.net(post), &post.dry, x.duration)
	case footBearing:
		return c.foot(post, &x)
	case beamSeat:
		return c.seated(beam, post, &x)
	case tongueBent:
		return c.pulls(beam, post, &x)
	case postShear:
		if m.racking[x.bend.direction].braced() {
			return m.cutAtKnee(post, &x)
		}
		return member.NewShear(x.demand, &post.dry, x.duration)
	}
	return member.NewTension(x.demand, c.net(post), &post.dry, x.duration)
}

func (m *model) buckles(c *postCase, post *wood, x *postFound) member.Compression {
	return member.NewCompression(x.demand, &post.dry, x.duration, m.column(c, x.bend.turned))
}

func (c *postCase) foot(post *wood, x *postFound) member.EndBearing {
	return member.NewEndBearing(x.demand, post.section.Area(), &post.seat, x.duration, c.top.plate)
}

func (c *postCase) seated(beam, post *wood, x *postFound) member.Bearing {
	return member.NewBearing(x.demand, &beam.seat, c.seat(post, beam, x.bend.turned))
}

// bends is the post under axial force and bending; a pulling force is negative.
func (m *model) bends(c *postCase, post *wood, x *postFound) member.Combined {
	b := &x.bend
	a := member.Actions{
		Force: x.demand, Edgewise: b.along, Flatwise: b.out, EdgeOffset: b.alongOff, FlatOffset: b.outOff,
	}
	if b.turned {
		a.Edgewise, a.Flatwise, a.EdgeOffset, a.FlatOffset = b.out, b.along, b.outOff, b.alongOff
	}
	stay := member.Stay{Column: m.column(c, b.turned), Bracing: c.bracing(), Net: c.net(post)}
	return member.NewCombined(a, &post.dry, &post.flat, x.duration, stay)
}

// bracing is that of a post's edges, for a moment to either side: of an unbalanced layup
// of glued wood the weaker counts. A post that stands by its embedment has one point of
// zero moment, so that twice its height is safe for C_V (NDS 2018 5.3.6).
func (c *postCase) bracing() member.Bracing {
	return member.Bracing{Unbraced: c.height, Zeros: 2 * c.height, Hogging: true}
}

// pulls is the tongue of a notched post in uplift: the bolts pull at the middle of the
// beam, off the middle of the tongue, so that it bends as well (statics).
func (c *postCase) pulls(beam, post *wood, x *postFound) member.Combined {
	turned := post.section.Breadth != post.section.Depth && c.top.faced && c.top.faceOut
	leg := post.dry
	leg.Section.Depth = c.tongue(post, turned)
	leg.Section.Breadth = side(post, alongHouse, turned)
	off := (leg.Section.Depth + beam.section.Breadth) / 2
	held := c.bracing()
	held.Held = true
	stay := member.Stay{Bracing: held, Net: max(0, leg.Section.Breadth-c.top.holes) * leg.Section.Depth}
	return member.NewCombined(member.Actions{Force: -x.demand, Edgewise: x.demand * off}, &leg, &leg, x.duration, stay)
}

// postNames names the kinds of check in the report.
var postNames = [postChecks]string{
	"compression with buckling", "compression with bending", "tension with bending", "compression at the bolt holes",
	"end bearing at the foot", "beam seat on the post", "tension in uplift", "tongue in uplift", "shear under the push",
}
