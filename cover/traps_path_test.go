package cover_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// twoSpans is the overhung cover on three posts at 10 ft, its beam in one piece or
// spliced over the middle one.
func twoSpans(splices string) cover.Input {
	in := overhung()
	in.Posts.Count, in.Beams.Splices = new(3), &splices
	return in
}

// Trap: the path broken at a beam splice, at a post top, or at the slab. Every cover
// must have every link, and a spliced beam is tied down piece by piece.
func TestTrapPathIsWhole(t *testing.T) {
	cases := []struct {
		name string
		in   cover.Input
		want []string
	}{
		{"attached", overhung(), []string{"D1", "H1", "L1", "W1", "T1", "C1", "B1", "A1", "F1"}},
		{"freestanding", standing(), []string{"D1", "T1", "T2", "C1", "C2", "B1", "B2", "A1", "A2", "F1", "F2", "K1"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var marks []string
			for _, l := range size(t, c.in).Links {
				marks = append(marks, l.Mark)
				if !strings.HasPrefix(l.Mark, "F") {
					assert.True(t, l.Verdict != cover.OK || shown(l), "%s: the capacity is not shown", l.Mark)
				}
				assert.NotEmpty(t, l.Reason, l.Mark)
				assert.NotEmpty(t, l.Stage, l.Mark)
				assert.Positive(t, l.Count, l.Mark)
			}
			assert.Equal(t, c.want, marks)
		})
	}
	assert.Contains(t, linkOf(t, size(t, twoSpans("every_post")), "C1").Hardware, "each piece of beam is tied down")
	assert.NotContains(t, linkOf(t, size(t, twoSpans("none")), "C1").Hardware, "each piece")
}

// Trap: the interior post of a beam over two spans taken with 1.0 w l. It is 1.25 w l;
// exactly, a load P at a from the outer support of a span l gives the middle one
// P a (3 l² - a²) / 2 l³.
func TestTrapInteriorPostOfTwoSpans(t *testing.T) {
	const l = 10.0
	r := size(t, twoSpans("none"))
	each := beamEnd(20, 2, 10, 2) // of one rafter at 2 ft
	want := each                  // the rafter over the post
	for a := 2.0; a < l; a += 2 {
		want += 2 * each * a * (3*l*l - a*a) / (2 * l * l * l)
	}
	got := byCase(t, reaction(t, r, "P2"), "roof live load")
	calctest.Close(t, want, got, exact, 0, "statics of two equal spans")
	calctest.Close(t, 1.25*each/2*l, got, 0.02, 0, "1.25 w l of a uniform load")
	outer := byCase(t, reaction(t, r, "P1"), "roof live load")
	calctest.Close(t, 2*l*each/2, got+2*outer, exact, 0, "the sum is the load")

	spliced := byCase(t, reaction(t, size(t, twoSpans("every_post")), "P2"), "roof live load")
	calctest.Close(t, each/2*l, spliced, exact, 0, "1.0 w l where the beam is cut over it")
	up, cut := linkOf(t, r, "C1").Up.Value, linkOf(t, size(t, twoSpans("every_post")), "C1").Up.Value
	assert.Greater(t, up, 1.15*cut, "uplift likewise")
}

// Trap: the reaction at an outer support with an overhang taken as u s L/2, or by
// tributary width L/2 + a.
func TestTrapOverhangReaction(t *testing.T) {
	r := size(t, overhung())
	got := byCase(t, reaction(t, r, "BM1"), "wind along the house, case A, obstructed")
	u := velocityC(105) * 0.85 * 1.2
	calctest.Close(t, -beamEnd(u, 2, 10, 2), got, exact, 0, "u s (L+a)²/2L")
	assert.Greater(t, -got, 1.4*u*2*10/2, "44 % more than u s L/2")
	assert.Greater(t, -got, u*2*(5+2), "more than by tributary width")
}

// Trap: the slab rule used for uplift, or where the ground freezes; named in the rows of
// the slab rule. Here: the uplift of every post is printed beside it.
func TestTrapSlabRuleSaysNothingOfUplift(t *testing.T) {
	in := twoSpans("none")
	in.Foundation = cover.Foundation{Kind: new("slab"), SlabThickness: new(4.0)}
	for _, f := range size(t, in).Foundations {
		assert.Positive(t, f.Uplift.Value, f.Post)
		assert.Contains(t, f.SlabWhy, "uplift")
	}
}

// Trap: ballast, old layers or an unsure ceiling as resisting dead load. Nothing that
// was not said to be certain resists.
func TestTrapUnsureLayersDoNotResist(t *testing.T) {
	in := overhung()
	in.Cover.Layers = []cover.Layer{
		{Name: new("gravel"), Weight: new(50.0)}, {Name: new("old roofing"), Weight: new(10.0), Certain: new(false)},
	}
	r := size(t, in)
	calctest.Near(t, 0, loadCase(t, r, "dead load of the layers, least").Value, exact)
	calctest.Near(t, 60, loadCase(t, r, "dead load of the layers, most").Value, exact)
	wood := 0.6 * beamEnd(weightOf2x8(10)/2, 2, 10, 2) * math.Hypot(1, 0.125/12)
	wind := value(t, cover.MemberCheck{Check: linkOf(t, r, "T1").Calculation}, "W_up")
	calctest.Close(t, 0.6*wind-wood, linkOf(t, r, "T1").Up.Value, exact, 0, "only the rafter itself holds down")
}

// Trap: what is not known taken as good. An unknown wall behind the ledger is to be
// opened, veneer is refused, and a joint that nobody saw is not OK.
func TestTrapUnknownIsNeverOK(t *testing.T) {
	cases := []struct {
		wall *string
		want cover.Verdict
	}{
		{nil, cover.OpenUp}, {new("unknown"), cover.OpenUp}, {new("brick_veneer"), cover.Over}, {new("stone_veneer"), cover.Over},
		{new("studs"), cover.OpenUp}, {new("rim"), cover.OpenUp}, {new("masonry"), cover.NotChecked},
		{new("stucco_on_studs"), cover.OpenUp},
	}
	for _, c := range cases {
		in := overhung()
		in.House.Wall = c.wall
		r := size(t, in)
		l := linkOf(t, r, "L1")
		assert.Equal(t, c.want, l.Verdict, l.Reason)
		assert.NotEqual(t, cover.OK, r.Verdict)
		assert.Equal(t, r.Verdict, r.Verdict.Worse(c.want))
	}
	in := overhung()
	in.House.Joints = []cover.Joint{{Mark: new("A")}, {Mark: new("B"), Evidence: new("strap")}}
	r := size(t, in)
	assert.True(t, skipped(r, "existing joint A: "))
	assert.True(t, skipped(r, "existing joint B: "))
	assert.NotEqual(t, cover.OK, r.Verdict)
}

// Trap: a rating or a number of fasteners rounded down.
func TestTrapRatingsAreRoundedUp(t *testing.T) {
	for speed := 90.0; speed <= 180; speed += 3.7 {
		in := overhung()
		in.Site.WindSpeed = &speed
		for _, l := range size(t, in).Links {
			if l.Mark == "D1" {
				continue // per square foot: a demand, not a rating
			}
			assert.GreaterOrEqual(t, l.Rating, l.Up.Value-1e-6, l.Mark)
			assert.Less(t, l.Rating, l.Up.Value+25, l.Mark)
			calctest.Near(t, math.Round(l.Rating/25)*25, l.Rating, exact, "in steps of 25 lb")
		}
	}
	r := size(t, overhung())
	assert.Equal(t, 241, linkOf(t, r, "D1").Count, "12 ft by 20 ft of slope, a little over 240 ft²")
}

// A joint of the old roof that nobody saw is never passed over: the report is OPEN UP
// until it has been seen with its condition, and without the size of the old roof nothing
// is judged.
func TestTrapUnseenJointPassedOver(t *testing.T) {
	for evidence, want := range map[string]cover.Verdict{
		"unknown": cover.OpenUp, "none_seen": cover.NotChecked, "": cover.OpenUp, "strap": cover.OpenUp, "toenails": cover.OpenUp,
	} {
		in := simple()
		joint := cover.Joint{Mark: new("K7")}
		if evidence != "" {
			joint.Evidence = &evidence
		}
		in.House.Joints = []cover.Joint{joint}
		r := size(t, in)
		at := slices.IndexFunc(r.Summary, func(f cover.Finding) bool { return strings.Contains(f.Text, "joints K7") })
		require.GreaterOrEqual(t, at, 0, evidence)
		assert.Equal(t, want, r.Summary[at].Verdict, evidence)
		assert.Equal(t, r.Verdict, r.Verdict.Worse(want))
	}
}

// A low eave leaves no room for a cover that begins above it. The rule is geometry:
// one inch above the underside is over, at it is not.
func TestTrapCoverAboveTheEave(t *testing.T) {
	said := func(in cover.Input) bool {
		r := size(t, in)
		return slices.ContainsFunc(r.Summary, func(f cover.Finding) bool {
			return f.Verdict == cover.Over && strings.Contains(f.Text, "underside of the eave")
		})
	}
	in := demo(t, "desert")
	in.House.Eave = new(*in.Cover.HighEdge)
	assert.False(t, said(in))
	in.House.Eave = new(*in.Cover.HighEdge - 1.0/12)
	assert.True(t, said(in))
	assert.Equal(t, cover.Over, size(t, in).Verdict)
	in.House.Eave = nil
	assert.False(t, said(in), "no eave was given")
}

// Trap: the whole weight of a steep deck against wind that lifts across it. Only its share
// across the roof holds: 0.6 x 5 psf x cos of 6 in 12.
func TestTrapWeightAgainstUpliftOfASteepDeck(t *testing.T) {
	in := standing()
	in.Cover.Slope, in.Cover.HighEdge = new(6.0), new(15.0)
	light := linkOf(t, size(t, in), "D1").Up.Value
	in.Cover.Layers = append(in.Cover.Layers, cover.Layer{Name: new("more"), Weight: new(5.0), Certain: new(true)})
	heavy := linkOf(t, size(t, in), "D1").Up.Value
	calctest.Near(t, 0.6*5*12/math.Hypot(12, 6), light-heavy, 1e-9)
}
