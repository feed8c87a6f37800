package cover

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/loads"
)

// bracedDesert is the demonstration in the desert on posts of its own.
func bracedDesert(tb testing.TB) Input {
	in := desert(tb)
	in.Cover.Attachment, in.Posts.Size, in.Site.WindSpeed = new("freestanding"), new("8x8"), new(90.0)
	in.Lateral = Lateral{Along: new("knee_braces"), Out: new("knee_braces")}
	return in
}

// Trap: the moment of one combination mixed with the axial force of another. Each
// arrangement has its own factor on wind: tried one by one they give the ratio of the
// report, and the largest moment with the largest force of all gives more.
func TestTrapForceAndMomentOfOneCombination(t *testing.T) {
	m, ws, d := chosen(t, bracedDesert(t))
	w := d.woods()
	var kind [postChecks]postFound
	for line, l := range m.lines {
		for n := range m.plan.posts {
			c := &ws.lines[line].posts[n].with
			g := grading{m: m, c: c, beam: w.beam, post: w.post, worst: &kind}
			most, mixed := 0.0, 0.0
			own := w.post.most * c.height
			for dir := range directions {
				b := bend{direction: dir}
				b.alongOff, b.outOff = c.offsets(w.post, w.beam, dir, false)
				e := m.effectOn(dir, line, n)
				tip := max(e.foot.wind, e.top.wind)
				high := 0.0
				for i := range l.arr {
					a := &l.arr[i]
					b.moment(a.wind * e.moment.wind)
					if force := l.forces[i][n] + a.wind*tip; force > 0 {
						x := postFound{demand: force + own, duration: a.duration, bend: b}
						most = max(most, m.ratioOf(c, w.beam, w.post, pressedBent, &x))
						high = max(high, force+own)
					}
				}
				b.moment(loads.WindASD * e.moment.wind)
				x := postFound{demand: high, duration: lumber.TenMinutes, bend: b}
				mixed = max(mixed, m.ratioOf(c, w.beam, w.post, pressedBent, &x))
				g.quake(e, b)
			}
			most = max(most, kind[pressedBent].ratio)
			kind = [postChecks]postFound{}
			require.InEpsilon(t, most, ws.lines[line].posts[n].worst[pressedBent].ratio, 1e-12, "post %d of line %d", n, line)
			assert.Greater(t, mixed, 0.0)
		}
	}
}

// The bound that spares the search the exact ratio is never below it.
func TestBoundIsNeverBelowTheRatio(t *testing.T) {
	m, ws, d := chosen(t, bracedDesert(t))
	posts := m.posts
	posts.size = ""
	woods := posts.candidates(postSizes)
	rapid.Check(t, func(t *rapid.T) {
		w := &woods[rapid.IntRange(0, len(woods)-1).Draw(t, "size")]
		c := ws.lines[0].posts[0].with
		c.height = rapid.Float64Range(30, 120).Draw(t, "height")
		g := grading{m: m, c: &c, beam: &d.beam, post: w}
		g.slim = g.slimness()
		x := postFound{
			demand:   rapid.Float64Range(-20000, 20000).Draw(t, "force"),
			duration: rapid.SampledFrom(lumber.Durations()).Draw(t, "duration"),
			bend: bend{
				along: rapid.Float64Range(0, 40000).Draw(t, "along"), out: rapid.Float64Range(0, 40000).Draw(t, "out"),
				alongOff: rapid.Float64Range(0, 4).Draw(t, "along off"), outOff: rapid.Float64Range(0, 4).Draw(t, "out off"),
			},
		}
		k := pressedBent
		if x.demand < 0 {
			k = pulledBent
			x.bend.alongOff, x.bend.outOff = x.bend.alongOff/4, x.bend.outOff/4
		}
		bound, exact := g.atMost(&x), m.ratioOf(&c, &d.beam, w, k, &x)
		if bound < exact*(1-1e-12) {
			t.Fatalf("bound %v below %v: %s %+v height %v", bound, exact, w.section.Name, x, c.height)
		}
		if g.square() && x.demand > 0 {
			alone := m.ratioOf(&c, &d.beam, w, buckling, &x)
			if most := g.pressed(x.demand/w.section.Area(), x.duration); most < alone*(1-1e-12) {
				t.Fatalf("bound %v of buckling below %v", most, alone)
			}
		}
	})
	c := ws.lines[0].posts[0].with
	c.height = 96
	g := grading{m: m, c: &c, beam: &d.beam, post: &woods[slices.IndexFunc(woods, func(w wood) bool { return w.section.Name == "8x8" })]}
	g.slim = g.slimness()
	bound := g.atMost(&postFound{demand: 2000, duration: lumber.TenMinutes, bend: bend{along: 2000, out: 2000}})
	assert.Less(t, bound, 1.0, "it says something of a light load")
}

// A cover on posts of its own is graded without allocation too.
func TestBracedNumbersAllocateNothing(t *testing.T) {
	m, ws, d := chosen(t, bracedDesert(t))
	assert.Zero(t, testing.AllocsPerRun(20, func() { kept += m.numbers(ws, &d.rafter, &d.beam, &d.post) }))
	r, err := Size(bracedDesert(t))
	require.NoError(t, err)
	most := 0.0
	for _, x := range r.Members {
		most = max(most, float64(x.Ratio))
	}
	assert.InEpsilon(t, most, m.numbers(ws, &d.rafter, &d.beam, &d.post), 1e-12)
}
