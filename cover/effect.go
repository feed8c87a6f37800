package cover

import (
	"patiocover/beam/brace"
	"patiocover/connections"
	"patiocover/loads"
)

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

// lean works out what the push does to every post of these sizes. It allocates nothing.
func (m *model) lean(w trio) {
	if !m.leans() {
		m.leanOnHouse(w)
		return
	}
	m.sideways = newSideways(m, w)
	for d := range m.racking {
		r := &m.racking[d]
		m.lineShares(d, w, &m.parts[d])
		for line := range m.plan.lines {
			for n := range m.plan.posts {
				at := &m.effects[d][line*len(m.plan.posts)+n]
				switch r.system {
				case "house_diaphragm":
					*at = effect{moment: m.ownWind(line, w)}
				case "knee_braces":
					*at = m.braceEffect(d, line, n, w)
				default:
					*at = m.cantilever(d, line, n)
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

// cantilever is the effect on a post that stands by its embedment. Where nothing holds the
// cover a post has no moment to give, and the direction itself is over.
func (m *model) cantilever(d, line, n int) effect {
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
		e.below, cut = m.clamp(h, line, n)
		e.moment, e.cut = e.shear.by(h+e.below), e.shear.by(cut)
	}
	return e
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
	return max(loads.WindASD*s.wind, quake)
}
