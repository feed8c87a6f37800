package cover

import (
	"math"

	"patiocover/beam/brace"
	"patiocover/calc"
)

// The two directions of a push.
const (
	alongHouse = iota
	outward
	directions
)

// A racking is how the push of one direction comes down to the posts, as far as the plan
// alone decides.
type racking struct {
	system  string
	row     brace.Row // of one row of braced posts; empty without knee braces
	first   int       // support of the row at which its posts begin
	columns []float64 // largest part of the push on each post of a line, for a push out from the house, ratio
}

// braced reports whether knee braces hold this direction.
func (r *racking) braced() bool { return r.system == "knee_braces" }

// byHouse reports whether the house holds this direction.
func (r *racking) byHouse() bool { return r.system == "house_diaphragm" }

// A kneeShape is the geometry of every knee brace, alike at all posts.
type kneeShape struct {
	drop  float64 // a, in, from the underside of the beam to the joint on the post
	angle float64 // phi, degrees from the horizontal
	reach float64 // c, in, from the post to the joint on the beam or rafter
}

// newKneeShape is the shape of the braces of a filled input; zero where there are none.
func newKneeShape(in Lateral) kneeShape {
	if in.BraceDrop == nil {
		return kneeShape{}
	}
	k := kneeShape{drop: *in.BraceDrop * calc.Ft, angle: *in.BraceAngle}
	k.reach = k.drop / math.Tan(k.angle*math.Pi/180)
	return k
}

// newRackings works out both directions.
func newRackings(m *model) ([directions]racking, error) {
	var out [directions]racking
	out[alongHouse].system, out[outward].system = *m.in.Lateral.Along, *m.in.Lateral.Out
	out[outward].columns = m.plan.columns(m.room)
	if m.plan.attached {
		out[outward].first = 1
	}
	for d := range out {
		if !out[d].braced() {
			continue
		}
		var err error
		if out[d].row, err = brace.NewRow(m.rowOf(d)); err != nil {
			return out, err
		}
	}
	return out, nil
}

// columns is the largest part of a push out from the house on each post of a line: an
// equal part, or that of its strip of the roof.
func (p *plan) columns(r *room) []float64 {
	out := r.numbers.take(len(p.posts))
	for i := range p.posts {
		lo, hi := p.postStrip(i)
		out[i] = max(1/float64(len(p.posts)), (hi-lo)/p.width)
	}
	return out
}

// postStrip is the strip of the roof, in x, that post i of every line carries by area.
func (p *plan) postStrip(i int) (lo, hi float64) {
	lo, hi = tributary(p.posts, i)
	if i == 0 {
		lo = 0
	}
	if i == len(p.posts)-1 {
		hi = p.width
	}
	return lo, hi
}

// lineStrip is the strip of the roof, in y, that a line carries by area; the first one of a
// cover at a house as if there were no ledger.
func (p *plan) lineStrip(i int) (lo, hi float64) {
	lo, hi = tributary(p.lines, i)
	if i == 0 {
		lo = 0
	}
	if i == len(p.lines)-1 {
		hi = p.projection
	}
	return lo, hi
}

// aboutDepth is the depth of rafter and beam for the height of a braced row, whose sizes
// are not known yet, in. It only shares the push among posts.
const aboutDepth = 14 * calc.In

// rowOf is the geometry of a row of posts: along the house under a beam, or out from it
// under a rafter.
func (m *model) rowOf(direction int) brace.Geometry {
	p := &m.plan
	g := brace.Geometry{
		Length: p.width, Supports: p.posts, Splices: p.splices,
		Height: max(p.topAt(p.projection)-aboutDepth, 2*m.knee.drop), Drop: m.knee.drop, Reach: m.knee.reach,
	}
	if direction == outward {
		g.Length, g.Supports, g.Splices = p.projection, p.supports(), nil
	}
	for i := range g.Supports {
		g.Posts = append(g.Posts, direction == alongHouse || p.lineOf(i) >= 0)
	}
	return g
}

// braceRoom is the largest reach of a brace along its beam or rafter that the bays leave,
// in: half of a bay between two braced posts, nearly all of one toward a ledger.
func (p *plan) braceRoom(in Lateral) float64 {
	room := math.Inf(1)
	if is(in.Along, "knee_braces") {
		for i := 1; i < len(p.posts); i++ {
			room = min(room, (p.posts[i]-p.posts[i-1])/2)
		}
	}
	if is(in.Out, "knee_braces") {
		s := p.supports()
		for i := 1; i < len(s); i++ {
			span := (s[i] - s[i-1]) / 2
			if p.lineOf(i-1) < 0 {
				span = nearly * (s[i] - s[i-1])
			}
			room = min(room, span)
		}
	}
	return room
}

// nearly keeps a brace off the ledger, ratio.
const nearly = 0.9

// leans reports whether the posts hold the cover sideways in any direction.
func (m *model) leans() bool {
	return !m.racking[alongHouse].byHouse() || !m.racking[outward].byHouse()
}

// lineShares is the largest part of a push in each line, by equal lines or by their
// stiffness: lower posts are stiffer (statics of a post that bends between its joints). A
// push along the house may also come to each line from its own strip of the roof, where
// the deck does not share it out.
func (m *model) lineShares(direction int, w trio, out *[maxLines]float64) {
	r, n := &m.racking[direction], len(m.plan.lines)
	sum := 0.0
	for i := range n {
		h := m.postHeight(i, w.rafter.section.Depth, w.beam.section.Depth)
		bent := h
		if r.braced() {
			bent = h - m.knee.drop
		}
		out[i] = 1 / (bent * bent * h)
		sum += out[i]
	}
	for i := range n {
		out[i] = max(out[i]/sum, 1/float64(n))
		if direction == alongHouse {
			lo, hi := m.plan.lineStrip(i)
			out[i] = max(out[i], (hi-lo)/m.plan.projection)
		}
	}
}

// rowPost is a braced post in its row, and the part of the push that its row takes.
func (m *model) rowPost(direction, line, post int) (*brace.Post, float64) {
	r := &m.racking[direction]
	if direction == alongHouse {
		return &r.row.Posts[post], m.parts[direction][line]
	}
	return &r.row.Posts[r.first+line], r.columns[post] * m.parts[direction][line] * float64(len(m.plan.lines))
}
