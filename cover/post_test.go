package cover_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// braced is the simple cover on two beam lines with small posts far enough apart that knee
// braces fit, in little wind.
func braced() cover.Input {
	in := standing()
	in.Site.WindSpeed = new(85.0)
	in.Site.Exposure = new("B")
	return in
}

// Trap: a buckling length factor of 1 for posts whose tops may sway (NDS 2018 Appendix
// G), and one factor for both planes: knee braces give a pinned foot and a guided top,
// 2.4, posts in the ground 2.1, the house 1, each in its own direction.
func TestTrapSwayingPosts(t *testing.T) {
	cases := []struct {
		along, out string
		want       [2]float64
	}{
		{"knee_braces", "knee_braces", [2]float64{2.4, 2.4}},
		{"none", "none", [2]float64{2.1, 2.1}},
		{"knee_braces", "none", [2]float64{2.4, 2.1}},
		{"none", "knee_braces", [2]float64{2.1, 2.4}},
		{"embedded_posts", "knee_braces", [2]float64{2.1, 2.4}},
	}
	for _, c := range cases {
		t.Run(c.along+" and "+c.out, func(t *testing.T) {
			in := standing()
			in.Lateral = cover.Lateral{Along: &c.along, Out: &c.out}
			if c.along == "embedded_posts" {
				in.Foundation.Kind = new("embedded")
			}
			r := size(t, in)
			post := check(t, r, "P", "compression with buckling")
			assert.Equal(t, c.want, [2]float64{value(t, post, "K_e_1"), value(t, post, "K_e_2")}, "along in the plane of the depth")
			for i, n := range []string{"1", "2"} {
				most := c.want[i] * member(t, r, "P").Length * 12 / 5.5
				if strings.HasPrefix([]string{c.along, c.out}[i], "embedded") {
					assert.Greater(t, value(t, post, "slenderness_"+n), most, "longer by what is below the ground")
					continue
				}
				calctest.Close(t, most, value(t, post, "slenderness_"+n), exact, 0, "Ke l / d")
			}
		})
	}
	r := size(t, overhung())
	post := check(t, r, "P", "compression with buckling")
	calctest.Close(t, member(t, r, "P").Length*12/5.5, value(t, post, "slenderness"), exact, 0, "the house keeps the tops in place")
}

// Trap: the larger side taken as d in le/d. A rectangular post is checked by its way of
// standing, and by the worse where that is not said.
func TestTrapRectangularPostByItsThinSide(t *testing.T) {
	in := overhung()
	in.Posts.Size = new("6x8")
	in.Lateral.Along = new("knee_braces")
	slender := func(face *string) [2]float64 {
		in.Posts.WideFace = face
		c := check(t, size(t, in), "P", "compression with buckling")
		return [2]float64{value(t, c, "slenderness_1"), value(t, c, "slenderness_2")}
	}
	height := member(t, size(t, in), "P").Length * 12
	along, out := slender(new("along")), slender(new("out"))
	calctest.Close(t, 2.4*height/7.5, along[0], exact, 0, "the wide face along the house, where it sways")
	calctest.Close(t, height/5.5, along[1], exact, 0)
	calctest.Close(t, height/7.5, out[0], exact, 0)
	calctest.Close(t, 2.4*height/5.5, out[1], exact, 0, "the thin side where it sways")
	assert.Equal(t, out, slender(nil), "not said: the worse")
}

// Trap: a beam at the side of the post without its eccentricity, (post + beam)/2.
func TestTrapSideMountedBeamIsEccentric(t *testing.T) {
	in := overhung()
	seated := check(t, size(t, in), "P", "compression with bending")
	in.Beams.OnPost = new("side_bolted")
	r := size(t, in)
	c := check(t, r, "P", "compression with bending")
	assert.InDelta(t, (5.5+5.5)/2, value(t, c, "e_2"), 1e-9, "6x6 post, 6x16 beam")
	assert.Greater(t, float64(c.Ratio), 2*float64(seated.Ratio))
	assert.NotEqual(t, cover.OK, member(t, r, "P").Verdict, "the bolts are not checked here")
	for _, x := range member(t, r, "P").Checks {
		assert.NotEqual(t, "beam seat on the post", x.Name, "it hangs, and has no seat")
	}
}

// Trap: a notched post taken at full area: the seat is what the tongue leaves, the load
// stands off center by half of the tongue, and in uplift the tongue alone pulls and bends.
func TestTrapNotchedPostIsNotWhole(t *testing.T) {
	in := overhung()
	whole := check(t, size(t, in), "P", "beam seat on the post")
	in.Beams.OnPost, in.Posts.Tongue = new("notched"), new(2.0)
	r := size(t, in)
	seat := check(t, r, "P", "beam seat on the post")
	calctest.Close(t, 5.5/3.5*float64(whole.Ratio), float64(seat.Ratio), exact, 0, "5.5 in. less the tongue")
	assert.InDelta(t, 1, value(t, check(t, r, "P", "compression with bending"), "e_2"), 1e-9)
	tongue := check(t, r, "P", "tongue in uplift")
	calctest.Close(t, (5.5-0.6875)*2, value(t, tongue, "A_n"), exact, 0)
	pull := value(t, tongue, "T")
	calctest.Close(t, pull*(2+5.5)/2, value(t, tongue, "M"), exact, 0, "the bolts pull at the middle of the beam")
	assert.Greater(t, float64(tongue.Ratio), 5*float64(check(t, r, "P", "tension in uplift").Ratio))
	in.Posts.Tongue = nil
	assert.InDelta(t, 5.5/4, value(t, check(t, size(t, in), "P", "compression with bending"), "e_2"), 1e-9, "half of the post is left")
}

// The suggested least eccentricity is a sixth of the contact, and may be switched off; then
// the post of a cover that the house holds is bent by the wind on itself alone.
func TestLeastEccentricity(t *testing.T) {
	in := overhung()
	c := check(t, size(t, in), "P", "compression with bending")
	assert.InDelta(t, 5.5/6, math.Max(last(c, "e_1"), last(c, "e_2")), 1e-9)
	in.Posts.LeastEccentricity = new(false)
	off := check(t, size(t, in), "P", "compression with bending")
	assert.Less(t, float64(off.Ratio), float64(c.Ratio))
	h, q := member(t, size(t, in), "P").Length*12, velocityC(105)/144
	wind := q * 0.85 * 2 * 5.5 * h * h / 8 // G C_f d (ASCE 7-16 eq. 29.4-1), over a span of h
	calctest.Close(t, wind, value(t, off, "M_W"), 1e-6, 0)
}

// last is the value of the last line with the symbol, 0 where there is none.
func last(c cover.MemberCheck, symbol string) float64 {
	x := 0.0
	for _, l := range c.Check.Lines {
		if l.Symbol == symbol {
			x = l.X
		}
	}
	return x
}

// Trap: a post is OK for its axial load while it stands by bending. What bends it is
// checked with what presses it, and small posts are over.
func TestTrapPostsThatBendAreChecked(t *testing.T) {
	in := overhung()
	assert.Equal(t, cover.OK, member(t, size(t, in), "P").Verdict, "the house holds the tops")
	for _, system := range []string{"knee_braces", "embedded_posts"} {
		in.Lateral.Out = &system
		if system == "embedded_posts" {
			in.Foundation.Kind = new("embedded")
		}
		r := size(t, in)
		bent := check(t, r, "P", "compression with bending")
		assert.Greater(t, float64(bent.Ratio), 1.0, system)
		push := r.Lateral[1].Demand / 0.6 / 2 // two posts share it
		h := member(t, r, "P").Length * 12
		if system == "knee_braces" {
			calctest.Close(t, push*(h-24), value(t, bent, "M_W"), 1e-6, 0, "V (H - a)")
		} else {
			assert.Greater(t, value(t, bent, "M_W"), push*h*1.05, "clamped below the ground")
		}
	}
}

// Trap: the couple of the sideways push on braced posts forgotten, or put on every post as
// if it were an outer one. A push H at the height h of the roof gives H h / l at the two
// ends of a row and nothing at a post in its middle.
func TestTrapBracedPostsHoldTheTipping(t *testing.T) {
	in := standing()
	in.Lateral.Along = new("none")
	r := size(t, in)
	h := 9 - 14*0.125/12/2 // mean roof height, ft
	couple := r.Lateral[1].Demand * h / 10 / 2
	still := in
	still.Lateral.Out = new("none")
	free := size(t, still)
	calctest.Close(t, couple, linkOf(t, r, "B1").Up.Value-linkOf(t, free, "B1").Up.Value, 0.02, 0)
	calctest.Close(t, couple, r.Foundations[0].Uplift.Value-free.Foundations[0].Uplift.Value, 0.02, 0)
	assert.GreaterOrEqual(t, linkOf(t, r, "B1").Rating, linkOf(t, r, "B1").Up.Value)
	assert.NotContains(t, linkOf(t, size(t, overhung()), "B1").Reason, "tipping")

	row := standing()
	row.Posts.Count, row.Lateral.Out, row.Beams.Splices = new(3), new("none"), new("none")
	r = size(t, row)
	still = row
	still.Lateral.Along = new("none")
	free = size(t, still)
	tip := func(post int) float64 { return r.Foundations[post].Uplift.Value - free.Foundations[post].Uplift.Value }
	end := r.Lateral[0].Demand / 2 * h / 20 // of each of two lines, over 20 ft
	calctest.Close(t, end, tip(0), 0.02, 0)
	calctest.Close(t, end, tip(2), 0.02, 0)
	assert.InDelta(t, 0, tip(1), 0.01*end, "the middle post has none")
}

// Trap: the force of a knee brace taken as the push on its post. It is V H / (a cos phi),
// presses and pulls, bends beam and post, and asks more of the post top than of its foot.
func TestTrapKneeBraceForceIsNotThePush(t *testing.T) {
	in := braced()
	in.Lateral.Out = new("none")
	r := size(t, in)
	k := member(t, r, "K")
	assert.Equal(t, 4, k.Count, "one at each post of two bays")
	push := r.Lateral[0].Demand / 4 // two posts on two lines
	h := member(t, r, "P").Length * 12
	force := check(t, r, "K", "tension at the bolts")
	calctest.Close(t, push*h/24*math.Sqrt2, value(t, force, "T"), 0.05, 0, "the lower line takes a little more")
	assert.GreaterOrEqual(t, value(t, force, "T"), push*h/24*math.Sqrt2*(1-1e-9)*0.95)
	assert.Equal(t, value(t, force, "T"), value(t, check(t, r, "K", "compression with buckling"), "P"))
	joint := linkOf(t, r, "K1")
	assert.GreaterOrEqual(t, joint.Rating, value(t, force, "T"))
	assert.Equal(t, joint.Connector.Ratio.Verdict(), joint.Verdict, "it follows from its checks")
	assert.Contains(t, joint.Hardware, "bolts of")
	assert.NoError(t, calctest.Prove(joint.Calculation.Lines))
	assert.Equal(t, value(t, force, "T"), joint.Calculation.Demand, "both senses at each end")
	assert.Greater(t, linkOf(t, r, "C1").Along.Value, 2*linkOf(t, r, "B1").Along.Value)
	assert.Greater(t, float64(check(t, r, "BM1", "bending with the knee braces").Ratio), 0.0)
	for _, c := range member(t, r, "BM1").Checks {
		assert.NoError(t, calctest.Prove(c.Check.Lines), c.Name)
	}
}

// A brace out from the house meets a rafter, hangs on the ledger with it, and asks for as
// many rafters side by side as it takes.
func TestBraceOutFromTheHouse(t *testing.T) {
	in := overhung()
	in.Site.WindSpeed, in.Site.Exposure = new(85.0), new("B")
	in.Lateral.Out = new("knee_braces")
	in.Posts.Size = new("8x8")
	r := size(t, in)
	k := member(t, r, "K")
	assert.Equal(t, 2, k.Count, "one toward the ledger at each post")
	assert.Contains(t, strings.Join(k.Notes, "\n"), "side by side")
	bent := check(t, r, "K", "bending of the rafters that a brace meets")
	require.NoError(t, calctest.Prove(bent.Check.Lines))
	one, three := in, in
	one.Lateral.BracedRafters, three.Lateral.BracedRafters = new(1), new(3)
	few := check(t, size(t, one), "K", "bending of the rafters that a brace meets")
	many := check(t, size(t, three), "K", "bending of the rafters that a brace meets")
	assert.Greater(t, float64(few.Ratio), float64(many.Ratio))
	hang, ledger := linkOf(t, r, "K2"), linkOf(t, r, "H1")
	h := 9 - 12*0.125/12/2
	calctest.Close(t, r.Lateral[1].Demand/2*h/10, hang.Up.Value-ledger.Up.Value, 0.01, 0, "V h / l at the ledger too")
	assert.Equal(t, 2, hang.Count)
}

// What a brace out from the house brings to the ledger is judged: by the rating of its own
// hanger with the wood beside it, and by the lag screws and the ledger right behind it.
// By hand, the force stands in the middle between two studs, R s / 4, on top of what the
// rafters bring, and is all of it added to the shear on the screws of one stud.
func TestRafterAtABracedPostIsJudged(t *testing.T) {
	in := overhung()
	in.Site.WindSpeed, in.Site.Exposure, in.Posts.Size = new(85.0), new("B"), new("8x8")
	in.Connections.LagSpacing, in.Connections.WallGap = new(16.0), new(0.5)
	in.Connections.LagSize, in.Connections.LagLength, in.Connections.LagsEach = new("1/2"), new(6.0), new(3)
	in.Lateral.Out = new("knee_braces")
	r := size(t, in)
	k := linkOf(t, r, "K2")
	assert.Equal(t, k.Connector.Ratio.Verdict(), k.Verdict, k.Reason)
	assert.Equal(t, cover.SpecifiedRating, k.Connector.Basis)
	for _, name := range []string{
		"rating", "downward rating", "rafter beside the nails", "load hung on the ledger", "rafter on the seat of the hanger",
	} {
		assert.NoError(t, calctest.Prove(linkCheck(t, k, name).Check.Lines), name)
	}
	tip := k.Up.Value - linkOf(t, r, "H1").Up.Value
	require.Greater(t, tip, 100.0)
	bent := linkCheck(t, linkOf(t, r, "L1"), "ledger between the lag screws")
	require.NoError(t, calctest.Prove(bent.Check.Lines))
	w, s := value(t, bent, "w"), 16.0
	calctest.Close(t, tip, value(t, bent, "R_k"), 1e-3, 0)
	calctest.Close(t, w*24*s/4+tip*s/4, value(t, bent, "M_e"), 1e-3, 0)
	without := in
	without.Lateral.Out = new("house_diaphragm")
	before := linkCheck(t, linkOf(t, size(t, without), "L1"), "steel of the lag screws")
	after := linkCheck(t, linkOf(t, r, "L1"), "steel of the lag screws")
	assert.Greater(t, after.Check.Demand, before.Check.Demand, "for which no shorter duration counts")
	assert.Contains(t, linkOf(t, r, "W1").Reason, "more either way behind the rafter at each braced post")
}

// What the braces need and what does not fit is told.
func TestBracesThatDoNotFit(t *testing.T) {
	in := braced()
	in.Posts.Count, in.Cover.Width = new(8), new(20.0)
	assumed := size(t, in)
	room := 0.0
	for _, a := range assumed.Assumed {
		if a.Path == "lateral.brace_drop_ft" {
			room = 1
			assert.Contains(t, a.Why, "fits")
		}
	}
	assert.Equal(t, 1.0, room, "2 ft do not fit into bays of 2.9 ft")
	in.Lateral.BraceDrop = new(1.5)
	_, err := cover.Size(in)
	assert.ErrorContains(t, err, "lateral.brace_drop_ft")
	in.Lateral.BraceDrop, in.Lateral.BraceSize = nil, new("huge")
	_, err = cover.Size(in)
	assert.ErrorContains(t, err, "lateral.brace_size")
	in.Lateral.BraceSize, in.Lateral.HouseSource = nil, new("a letter")
	_, err = cover.Size(in)
	assert.ErrorContains(t, err, "house_capacity_lb")
}
