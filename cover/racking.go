package cover

import (
	"math"

	"patiocover/beam/brace"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/footing"
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
	out[outward].columns = m.plan.columns()
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
func (p *plan) columns() []float64 {
	out := make([]float64, len(p.posts))
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

// An effect is what the push of one direction does to one post, lb or lb-in of strength
// level, by wind and by earthquake. All but the shear act either way.
type effect struct {
	shear  share   // lb, push at the top of the post, and at its foot
	brace  share   // lb, horizontal force of one brace
	moment share   // lb-in, the largest in the post
	foot   share   // lb, in the post below its braces, up or down
	top    share   // lb, between beam and post, up or down
	joint  share   // lb, sideways between beam and post
	cut    share   // lb, the largest shear in the post that the push brings
	below  float64 // in below the foot where the post is clamped in the ground
}

// by takes a force or moment per pound of the push.
func (s share) by(factor float64) share { return share{s.wind * factor, s.quake * factor} }

// leans reports whether the posts hold the cover sideways in any direction.
func (m *model) leans() bool {
	return !m.racking[alongHouse].byHouse() || !m.racking[outward].byHouse()
}

// A trio is the wood of the three kinds of member.
type trio struct{ rafter, beam, post *wood }

// woods are those of a design.
func (d *design) woods() trio { return trio{&d.rafter, &d.beam, &d.post} }

// lean works out what the push does to every post of these sizes. It allocates nothing.
func (m *model) lean(w trio) {
	if !m.leans() {
		m.leanOnHouse(w)
		return
	}
	m.sideways = newSideways(m, w)
	for d := range m.racking {
		r := &m.racking[d]
		m.lineShares(r, w, &m.parts[d])
		for line := range m.plan.lines {
			for n := range m.plan.posts {
				at := &m.effects[d][line*len(m.plan.posts)+n]
				switch r.system {
				case "house_diaphragm":
					*at = effect{moment: m.ownWind(line, w)}
				case "knee_braces":
					*at = m.braceEffect(d, line, n, w)
				default:
					*at = m.cantilever(d, line, n, w)
				}
			}
		}
	}
}

// leanOnHouse is what the wind does to posts whose tops the house holds.
func (m *model) leanOnHouse(w trio) {
	n := len(m.plan.posts)
	for line := range m.plan.lines {
		moment := m.ownWind(line, w)
		for d := range m.effects {
			for i := range n {
				m.effects[d][line*n+i] = effect{moment: moment}
			}
		}
	}
}

// ownWind is the moment of the wind on the post itself between foot and top, w h²/8, lb-in
// of strength level.
func (m *model) ownWind(line int, w trio) share {
	h := m.postHeight(line, w.rafter.section.Depth, w.beam.section.Depth)
	return share{wind: m.wind.velocity.OnFlatSides() * w.post.section.Widest() * h * h / 8}
}

// lineShares is the largest part of a push in each line, by equal lines or by their
// stiffness: lower posts are stiffer (statics of a post that bends between its joints).
func (m *model) lineShares(r *racking, w trio, out *[maxLines]float64) {
	n := len(m.plan.lines)
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

// braceEffect is the effect of a push on one braced post.
func (m *model) braceEffect(d, line, n int, w trio) effect {
	post, part := m.rowPost(d, line, n)
	h := m.postHeight(line, w.rafter.section.Depth, w.beam.section.Depth)
	roof := max(m.plan.mean(), h)
	knee := brace.NewKnee(brace.Knee{
		Shear: post.Shear * part, Height: h, Drop: m.knee.drop, Angle: m.knee.angle, Braces: 1,
	})
	push := share{m.sideways.push(d).wind.Force, m.sideways.push(d).quake.Force}
	return effect{
		shear:  push.by(post.Shear * part),
		brace:  push.by(post.Brace * part * h / m.knee.drop).orNothing(knee.Horizontal),
		moment: push.by(knee.Moment),
		foot:   push.by(post.Foot * part * roof / m.knee.reach),
		top:    push.by(part * (post.Top*h + post.Foot*(roof-h)) / m.knee.reach),
		joint:  push.by(max(knee.Top, post.Shear*part)),
		cut:    push.by(max(knee.Top, post.Shear*part)),
	}
}

// orNothing is not a number where x is none, so that nothing passes by it.
func (s share) orNothing(x float64) share { return share{s.wind + 0*x, s.quake + 0*x} }

// cantilever is the effect on a post that stands by its embedment. Where nothing holds the
// cover a post has no moment to give, and the direction itself is over.
func (m *model) cantilever(d, line, n int, w trio) effect {
	part := m.parts[d][line]
	if d == outward {
		part *= m.racking[d].columns[n]
	} else {
		part /= float64(len(m.plan.posts))
	}
	push := share{m.sideways.push(d).wind.Force, m.sideways.push(d).quake.Force}
	e := effect{shear: push.by(part)}
	e.joint = e.shear
	if m.racking[d].system == "embedded_posts" {
		h := m.poleHeight(line)
		var cut float64
		e.below, cut = m.clamp(m.asd(e.shear), h, w.post)
		e.moment, e.cut = e.shear.by(h+e.below), e.shear.by(cut)
	}
	return e
}

// A clampGround is what holds posts that stand in the ground, as far as their size does
// not matter.
type clampGround struct {
	hold  footing.Ground
	least float64 // in, depth that frost and code ask for, or that was given
}

// newClampGround reads it from the input.
func (m *model) newClampGround() clampGround {
	if *m.in.Foundation.Kind != "embedded" {
		return clampGround{}
	}
	g := m.newBed()
	p := m.planOf("embedded", &g, &footingNeed{thick: 1})
	return clampGround{hold: p.hold, least: max(p.shallowest, p.depth)}
}

// clamp is how far below the ground a post in it is as good as clamped, in, when it is set
// as deep as the push, lb of allowable stress design, asks of the post without a collar: the
// deeper a post stands, the more it bends.
//
// cut is the largest shear in the post over the push.
func (m *model) clamp(push, height float64, post *wood) (below, cut float64) {
	hold := &m.clamped.hold
	switch {
	case push <= 0 || hold.Constrained:
		return hold.Loose, 1
	case hold.Lateral.Value == 0:
		return 0, 1 // not in the ground: the foundation says so, and the direction is over
	}
	pole := footing.NewPole(push, height, footing.Shaft{Shape: footing.Square, Width: post.section.Breadth}, *hold)
	depth := max(pole.Embedded, m.clamped.least-hold.Loose)
	f := brace.NewFixity(brace.Fixity{Push: push, Height: height + hold.Loose, Depth: depth})
	return hold.Loose + f.Below, f.Shear / push
}

// push is that of a direction.
func (s *sideways) push(direction int) *push {
	if direction == outward {
		return &s.out
	}
	return &s.along
}

// effectOn is the effect of the push of a direction on a post.
func (m *model) effectOn(direction, line, post int) *effect {
	return &m.effects[direction][line*len(m.plan.posts)+post]
}

// shearAt is the push through one post of a direction: of its base, and of its foot. Where
// the house holds the roof it is that of the posts' own share.
func (m *model) shearAt(direction, line, post int) share {
	if m.racking[direction].byHouse() {
		return m.sideways.through(m.sideways.push(direction), m.sideways.posts)
	}
	return m.effectOn(direction, line, post).shear
}

// jointAt is the sideways force between a post and its beam.
func (m *model) jointAt(direction, line, post int) share {
	if m.racking[direction].byHouse() {
		return m.shearAt(direction, line, post)
	}
	return m.effectOn(direction, line, post).joint
}

// tip is what the push adds to the axial force of a post, up or down, lb of strength
// level: at its top between beam and post, else below its braces. Of the two directions
// the larger counts, for wind and for earthquake.
func (m *model) tip(line, post int, top bool) share {
	var most share
	for d := range directions {
		at := m.effectOn(d, line, post).foot
		if top {
			at = m.effectOn(d, line, post).top
		}
		most = share{max(most.wind, at.wind), max(most.quake, at.quake)}
	}
	return most
}

// throughPost is what the push asks of a link of one post: sideways in both directions,
// and up or down.
func (m *model) throughPost(kind connections.Kind, line, post int) (along, out, tip share) {
	if kind == connections.BeamToPost {
		return m.jointAt(alongHouse, line, post), m.jointAt(outward, line, post), m.tip(line, post, true)
	}
	return m.shearAt(alongHouse, line, post), m.shearAt(outward, line, post), m.tip(line, post, false)
}

// tipOf is the largest force, up or down, that the push adds to a link of the posts of one
// line, lb of allowable stress design; 0 where nothing is braced.
func (m *model) tipOf(kind connections.Kind, line int) float64 {
	most := 0.0
	for n := range m.plan.posts {
		most = max(most, m.asd(m.tip(line, n, kind == connections.BeamToPost)))
	}
	return most
}

// asd is the larger of wind and earthquake at allowable stress level.
func (m *model) asd(s share) float64 {
	quake := 0.0
	if m.quaking {
		quake = m.sideways.along.rule.Earthquake * s.quake
	}
	return max(asdWind*s.wind, quake)
}
