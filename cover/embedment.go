package cover

import (
	"math"

	"patiocover/beam/brace"
	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections/footing"
)

// An embedment is the ground around posts that hold the cover by standing in it, and how
// deep they are built: what asks for depth, be it the push, uplift, frost or what was
// given, decides how far below the ground they bend.
type embedment struct {
	bed    bed
	hold   footing.Ground
	needs  []footingNeed
	depths []float64 // in from grade, of every post of every line, of the sizes tried last
	taken  bool      // the depths are those of the model by allowable stress design
}

// newEmbedment reads the ground from the input; empty where no post is to hold the cover
// by it.
func (m *model) newEmbedment() embedment {
	if *m.in.Foundation.Kind != "embedded" || !m.systemIs("embedded_posts") {
		return embedment{}
	}
	n := len(m.plan.lines) * len(m.plan.posts)
	e := embedment{bed: m.newBed(), needs: make([]footingNeed, n), depths: make([]float64, n)}
	e.hold = m.planOf("embedded", &e.bed, &footingNeed{thick: 1}).hold
	for i := range e.depths {
		e.depths[i] = math.NaN()
	}
	return e
}

// systemIs reports whether a system is said for either direction.
func (m *model) systemIs(system string) bool {
	return is(m.in.Lateral.Along, system) || is(m.in.Lateral.Out, system)
}

// planted reports whether posts in the ground hold the cover.
func (m *model) planted() bool { return len(m.embedded.depths) > 0 }

// dig finds how deep the posts of these sizes are built, for the loads that they were
// graded with last. Foundations are of allowable stress design: another method takes the
// depths from a model of that one. Depths that cannot be found are not numbers, so that
// nothing passes.
func (m *model) dig(ws *workspace, w trio) {
	e := &m.embedded
	switch {
	case e.taken:
		return
	case m.rules.method != lumber.ASD:
		clearTo(e.depths, math.NaN())
		d := design{rafter: *w.rafter, beam: *w.beam, post: *w.post}
		if asd, err := m.recast(lumber.ASD, &d); err == nil {
			copy(e.depths, asd.m.embedded.depths)
		}
		return
	}
	perLine := len(m.plan.posts)
	for i, l := range m.lines {
		dead := l.leastDead(m, w)
		for n := range perLine {
			var f FoundationAt
			e.needs[i*perLine+n] = m.asks(&f, &ws.lines[i].posts[n].with, w.post, dead[n])
		}
	}
	p := m.planOf("embedded", &e.bed, &e.needs[0]) // every post has the same section
	if *m.in.Foundation.OneSize {
		same, _ := e.bed.choose(e.needs, p)
		clearTo(e.depths, same.Depth)
		return
	}
	for i := range e.needs {
		own, _ := e.bed.choose(e.needs[i:i+1], p)
		e.depths[i] = own.Depth
	}
}

// clearTo sets every number of a list to x.
func clearTo(list []float64, x float64) {
	for i := range list {
		list[i] = x
	}
}

// depthOfPost is how deep a post is built, in from grade.
func (m *model) depthOfPost(line, post int) float64 {
	return m.embedded.depths[line*len(m.plan.posts)+post]
}

// clamp is how far below the ground a post in it is as good as clamped, in, at the depth
// that it is built, and cut the largest shear in it over a push at a height, in. The deeper
// a post stands the more it bends, and the less it is sheared.
func (m *model) clamp(height float64, line, post int) (below, cut float64) {
	if !m.planted() {
		return 0, 1 // not in the ground: the foundation says so, and the direction is over
	}
	hold, built := &m.embedded.hold, m.depthOfPost(line, post)
	if built <= hold.Loose {
		return built, 1 // in loose ground alone: the foundation is over
	}
	f := brace.NewFixity(brace.Fixity{
		Push: calc.Lb, Height: height + hold.Loose, Depth: built - hold.Loose, Paved: hold.Constrained,
	})
	return hold.Loose + f.Below, f.Shear
}
