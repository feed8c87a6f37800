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

// groundCheck finds a check of a foundation or its anchor by its name.
func groundCheck(t testing.TB, f cover.FoundationAt, name string) cover.MemberCheck {
	t.Helper()
	for _, c := range append(f.Checks[:len(f.Checks):len(f.Checks)], f.Anchor...) {
		if strings.HasPrefix(c.Name, name) {
			return c
		}
	}
	require.Fail(t, f.Post+" has no check "+name)
	return cover.MemberCheck{}
}

// heaviest is the foundation with the largest uplift.
func heaviest(r cover.Report) cover.FoundationAt {
	worst := r.Foundations[0]
	for _, f := range r.Foundations {
		if f.Uplift.Value > worst.Uplift.Value {
			worst = f
		}
	}
	return worst
}

// The scenarios: the desert post may not stand on the slab and a footing is named
// instead; the snow piers go below 36 in of frost; the pad near the coast holds by its
// weight, 845 lb / (0.6 x 145 pcf) or 9.7 ft³.
func TestScenarioFoundations(t *testing.T) {
	for _, f := range size(t, demo(t, "desert")).Foundations {
		assert.Equal(t, cover.Over, f.Verdict, f.Post)
		assert.Contains(t, f.Instead, "in square")
	}
	for _, f := range size(t, demo(t, "snow")).Foundations {
		assert.Equal(t, cover.OK, f.Verdict, f.Reason)
		assert.GreaterOrEqual(t, f.Depth, 36.0)
	}
	r := size(t, demo(t, "coast"))
	pad := heaviest(r)
	assert.Equal(t, cover.OK, pad.Verdict, pad.Reason)
	assert.GreaterOrEqual(t, pad.Concrete, pad.Uplift.Value/(0.6*145), "by hand")
	assert.Less(t, pad.Concrete, 1.1*pad.Uplift.Value/(0.6*145), "in steps of 2 in")
	sum := 0.0
	for _, f := range r.Foundations {
		volume := f.Width * f.Width * f.Depth / 1728
		calctest.Close(t, volume, f.Concrete, exact, 0, f.Post)
		sum += volume
	}
	calctest.Close(t, sum/27, r.Concrete.Yards, exact, 0)
	assert.Equal(t, len(r.Foundations), r.Concrete.Count)
}

// The footing chosen has the least concrete: every neighbor in steps of 2 in that needs
// less of it is over.
func TestLessConcreteFails(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"coast", "snow"} {
		in := demo(t, name)
		in.Foundation.OneSize = new(false)
		for _, f := range size(t, in).Foundations {
			for dw := -4.0; dw <= 4; dw += 2 {
				for dd := -4.0; dd <= 4; dd += 2 {
					w, d := f.Width+dw, f.Depth+dd
					if !(w*w*d < f.Width*f.Width*f.Depth) || f.Shape == "square" && d > w {
						continue
					}
					in.Foundation.Width, in.Foundation.Depth = &w, &d
					for _, g := range size(t, in).Foundations {
						if g.Post == f.Post {
							assert.Equal(t, cover.Over, g.Verdict, "%s: %v by %v does where %s was chosen", f.Post, w, d, f.Size)
							assert.True(t, g.Given)
						}
					}
				}
			}
		}
	}
}

// Trap 14: soil counted above the footing, which the floor of a patio covers, or the
// weight of the post counted as footing.
func TestTrapOnlyTheFootingHoldsDown(t *testing.T) {
	f := heaviest(size(t, demo(t, "coast")))
	c := groundCheck(t, f, "uplift on the footing")
	calctest.Close(t, 0.6*145*f.Width*f.Width*f.Depth/1728, value(t, c, "R_up"), exact, 0, "0.6 of the concrete, once")
	assert.Zero(t, value(t, c, "W_s"))
	assert.LessOrEqual(t, f.Uplift.Value, value(t, c, "R_up"))
}

// Trap 15: the slab rule taken for uplift too. A post that passes the 750 lb is not OK
// while what the slab around it weighs does not hold its uplift, or while nobody knows how
// near the edge is.
func TestTrapSlabRuleWithUplift(t *testing.T) {
	light := func(edge, across *float64) cover.FoundationAt {
		in := demo(t, "survey")
		in.Foundation.SlabEdge, in.Foundation.SlabAcross = edge, across
		return size(t, in).Foundations[0]
	}
	unknown := light(nil, nil)
	assert.Equal(t, cover.OK, unknown.Slab, "439 lb of 750")
	assert.Equal(t, cover.NotChecked, unknown.Verdict)
	assert.Contains(t, unknown.Reason, "give foundation.slab_edge_in")
	assert.Equal(t, cover.NotChecked, light(new(10.0), nil).Verdict, "one of two distances, and an edge does not do")
	assert.Equal(t, cover.Over, light(new(0.0), new(0.0)).Verdict, "a corner holds 0.6 x 193 lb, not 222")
	inside := light(new(24.0), new(24.0))
	assert.Equal(t, cover.OK, inside.Verdict, inside.Reason)
	calctest.Close(t, 0.6*145*16*4/12, value(t, groundCheck(t, inside, "uplift on the slab"), "R_up"), exact, 0, "16 sq ft of 4 in")
	in := demo(t, "survey")
	in.Site.FrostDepth, in.Foundation.SlabEdge, in.Foundation.SlabAcross = new(6.0), new(60.0), new(60.0)
	assert.Equal(t, cover.Over, size(t, in).Foundations[0].Verdict, "frost")
}

// Trap 9: the path broken at the slab while every tie above it holds. The lowest links
// say what the worst foundation and the worst anchor of their line say.
func TestTrapPathEndsInTheGround(t *testing.T) {
	for _, name := range demos {
		r := size(t, demo(t, name))
		ground, anchors := cover.OK, cover.OK
		for _, f := range r.Foundations {
			ground, anchors = ground.Worse(f.Verdict), anchors.Worse(f.AnchorVerdict)
		}
		assert.Equal(t, ground, linkOf(t, r, "F1").Verdict, name)
		assert.Equal(t, anchors, linkOf(t, r, "A1").Verdict, name)
		assert.NotEmpty(t, linkOf(t, r, "F1").Reason)
	}
	in := demo(t, "coast")
	in.Foundation.Width, in.Foundation.Depth = new(16.0), new(12.0)
	assert.Equal(t, cover.Over, linkOf(t, size(t, in), "F1").Verdict)
}

// embedded is the standing cover on posts in the ground, in one direction and the other.
func embedded() cover.Input {
	in := standing()
	in.Foundation = cover.Foundation{Kind: new("embedded")}
	in.Lateral = cover.Lateral{Along: new("embedded_posts"), Out: new("embedded_posts")}
	return in
}

// Traps 16 to 18: b, S1 at a third of the depth found, nothing doubled nor raised by a
// third; the loose top does not count and lifts the force.
func TestTrapEmbeddedPosts(t *testing.T) {
	r := size(t, embedded())
	f := r.Foundations[0]
	require.Equal(t, cover.OK, f.Verdict, f.Reason)
	c := groundCheck(t, f, "embedment")
	p, b, d := value(t, c, "P"), f.Width/12, value(t, c, "d_s")
	assert.Equal(t, "round", f.Shape, "b is the diameter of the collar")
	calctest.Close(t, 100*d/3, value(t, c, "S_1"), exact, 0, "IBC 2018 1807.3.2.1, neither doubled nor raised")
	a := 2.34 * p / (100 * d / 3 * b)
	h := 9 - 2*0.125/12 + 1 // the roof above the inner line, and 1 ft of loose ground
	calctest.Close(t, d, a/2*(1+math.Sqrt(1+4.36*h/a)), exact, 0, "the depth returns itself at the height of the roof")
	calctest.Close(t, d+1, value(t, c, "d_req"), exact, 0)
	most := max(r.Lateral[0].Demand, r.Lateral[1].Demand)
	calctest.Close(t, most/4, p, 0.02, 0, "a quarter of the push on each of four posts")
	held := embedded()
	held.Foundation.HeldBySlab = new(true)
	assert.Less(t, value(t, groundCheck(t, size(t, held).Foundations[0], "embedment"), "d_req"), value(t, c, "d_req"))
	icy := embedded()
	icy.Site.FrostDepth = new(36.0)
	assert.GreaterOrEqual(t, value(t, groundCheck(t, size(t, icy).Foundations[0], "embedment"), "d_l"), 3.0, "what freezes holds nothing")
}

// Posts that are to hold the cover by their embedment do not do so on a post base.
func TestPostBaseHoldsNoMoment(t *testing.T) {
	in := embedded()
	in.Foundation.Kind = new("footing")
	f := size(t, in).Foundations[0]
	assert.Equal(t, cover.Over, f.Verdict)
	assert.Contains(t, f.Reason, "a post base holds no moment")
}

// withBolt is the cover near the coast with an anchor in its footings.
func withBolt(t *testing.T, kind string, change func(*cover.Input)) cover.FoundationAt {
	in := demo(t, "coast")
	in.Foundation.AnchorKind, in.Foundation.AnchorDiameter, in.Foundation.AnchorEmbedment = &kind, new(0.5), new(7.0)
	if change != nil {
		change(&in)
	}
	return heaviest(size(t, in))
}

// Trap 19: the pull on an anchor at 0.6W against a strength with phi, an edge of the
// concrete or of the slab overlooked, a drilled anchor taken as cast in.
func TestTrapAnchorAtStrengthLevel(t *testing.T) {
	f := withBolt(t, "headed", nil)
	assert.Equal(t, cover.OK, f.AnchorVerdict, f.AnchorReason)
	l := linkOf(t, size(t, demo(t, "coast")), "F1")
	wind, dead := value(t, cover.MemberCheck{Check: l.Calculation}, "W_up"), value(t, cover.MemberCheck{Check: l.Calculation}, "D_min")
	calctest.Close(t, wind-0.9*dead, f.Pull, 1e-6, 0, "0.9D + 1.0W (ASCE 7-16 2.3.1 (5))")
	assert.Greater(t, f.Pull, f.Uplift.Value/0.6)
	pull := groundCheck(t, f, "anchor in tension")
	calctest.Close(t, f.Pull, value(t, pull, "N_ua"), exact, 0)
	calctest.Close(t, 24, value(t, pull, "k_c"), exact, 0)
	calctest.Close(t, f.Width/2, value(t, pull, "c_w"), exact, 0, "in the middle of the footing")

	near := withBolt(t, "headed", func(in *cover.Input) { in.Foundation.AnchorEdge = new(2.0) })
	assert.Less(t, value(t, groundCheck(t, near, "anchor in tension"), "phiN_cb"), value(t, pull, "phiN_cb"))
	drilled := withBolt(t, "drilled", func(in *cover.Input) { in.Foundation.AnchorCategory = new(1) })
	assert.Equal(t, cover.NotChecked, drilled.AnchorVerdict, "only with its report")
	assert.Contains(t, drilled.AnchorReason, "evaluation report")
	calctest.Close(t, 17, value(t, groundCheck(t, drilled, "anchor in tension"), "k_c"), exact, 0)
	quake := withBolt(t, "headed", func(in *cover.Input) { in.Site.SeismicCategory = new("D") })
	assert.Equal(t, cover.NotChecked, quake.AnchorVerdict, "ACI 318-19 17.10 is not checked")

	onSlab := demo(t, "survey")
	onSlab.Foundation.AnchorKind, onSlab.Foundation.AnchorDiameter, onSlab.Foundation.AnchorEmbedment = new("headed"), new(0.5), new(2.0)
	assert.Equal(t, cover.NotChecked, size(t, onSlab).Foundations[0].AnchorVerdict, "the edge is not known")
	onSlab.Foundation.SlabEdge, onSlab.Foundation.SlabAcross = new(24.0), new(24.0)
	assert.Equal(t, cover.OK, size(t, onSlab).Foundations[0].AnchorVerdict)
	onSlab.Foundation.AnchorEmbedment = new(3.5)
	assert.Equal(t, cover.Over, size(t, onSlab).Foundations[0].AnchorVerdict, "through the slab")
}

// Under the earthquake alone a braced post is lifted by 0.7 E - 0.6 D and 0.7 x 0.2 SDS D,
// and its anchor pulled by E - 0.9 D and 0.2 SDS D (ASCE 7-16 2.4.5 (10) and 2.3.6 (7)):
// the pull is the uplift over 0.7 less (0.9 - 0.6/0.7) D.
func TestAnchorPullOfTheEarthquake(t *testing.T) {
	in := standing()
	in.Cover.Layers = []cover.Layer{{Name: new("tile"), Weight: new(12.0), Certain: new(true)}}
	in.Site.WindSpeed, in.Site.SeismicCategory = new(85.0), new("D")
	in.Site.SeismicShort, in.Site.SeismicSecond, in.Site.SeismicMapped = new(3.9), new(2.0), new(1.5)
	r := size(t, in)
	f := heaviest(r)
	require.Contains(t, f.Uplift.Combination, "E", "the earthquake governs")
	dead := value(t, cover.MemberCheck{Check: linkOf(t, r, "F1").Calculation}, "D_min")
	calctest.Close(t, f.Uplift.Value/0.7-(0.9-0.6/0.7)*dead, f.Pull, 1e-3, 0)
}

// Trap 25: the dead load of another area, or 2/3 of it, taken off the wind. The uplift at
// a foot is 0.6 of the wind less 0.6 of the least dead load of that very post.
func TestTrapDeadLoadOfTheSamePost(t *testing.T) {
	r := size(t, demo(t, "coast"))
	f := heaviest(r)
	post := reaction(t, r, f.Post)
	c := cover.MemberCheck{Check: linkOf(t, r, "F1").Calculation}
	own := value(t, c, "D_min") - byCase(t, post, "dead load at its least")
	assert.Greater(t, own, 0.0, "the post itself")
	assert.Less(t, own, 120.0, "a 6x6 of 8 ft, by hand 60 lb")
	calctest.Close(t, 0.6*value(t, c, "W_up")-0.6*value(t, c, "D_min"), f.Uplift.Value, 1e-9, 0)
}

// Trap 30: the frost exemption of freestanding covers claimed for an attached one.
func TestTrapFrostExemptionClaimedForAnAttachedCover(t *testing.T) {
	in := overhung()
	in.Site.FrostDepth, in.Foundation.FrostExempt = new(36.0), new(true)
	f := size(t, in).Foundations[0]
	assert.GreaterOrEqual(t, f.Depth, 36.0)
	assert.Contains(t, groundCheck(t, f, "depth").Check.Lines[2].Source, "the cover is attached")
	in = standing()
	in.Site.FrostDepth, in.Foundation.FrostExempt = new(36.0), new(true)
	calctest.Near(t, 12, value(t, groundCheck(t, size(t, in).Foundations[0], "depth"), "d_req"), exact, "280 sq ft, 9 ft high")
	in.Foundation.FrostExempt = nil
	assert.GreaterOrEqual(t, size(t, in).Foundations[0].Depth, 36.0, "not claimed")
}

// The soil: unknown rubs nowhere, a class brings its row, fill and expansive soil are
// never OK.
func TestSoil(t *testing.T) {
	at := func(class *string) cover.FoundationAt {
		in := demo(t, "coast")
		in.Site.SoilBearing, in.Site.SoilClass = nil, class
		return heaviest(size(t, in))
	}
	for _, c := range []struct {
		class   *string
		bearing float64
		lateral float64
		want    cover.Verdict
	}{
		{nil, 1500, 100, cover.OK}, {new("unknown"), 1500, 100, cover.OK}, {new("sand"), 2000, 150, cover.OK},
		{new("gravel"), 3000, 200, cover.OK}, {new("bedrock"), 12000, 1200, cover.OK},
		{new("fill"), 1500, 100, cover.NotChecked}, {new("expansive"), 1500, 100, cover.NotChecked},
	} {
		f := at(c.class)
		calctest.Near(t, c.bearing, value(t, groundCheck(t, f, "bearing"), "q_a"), 1e-6, "IBC 2018 Table 1806.2")
		calctest.Near(t, c.lateral, value(t, groundCheck(t, f, "footing pushed"), "s"), 1e-6, "IBC 2018 Table 1806.2")
		assert.Equal(t, c.want, f.Verdict, f.Reason)
	}
	assert.Contains(t, at(new("fill")).Reason, "geotechnical report")
}

// What keeps plain concrete from being OK, and what to mind in a slab, is said.
func TestCautionsOfTheGround(t *testing.T) {
	in := demo(t, "coast")
	for category, want := range map[string]cover.Verdict{"C": cover.OK, "D": cover.NotChecked, "E": cover.NotChecked} {
		in.Site.SeismicCategory = &category
		f := heaviest(size(t, in))
		assert.Equal(t, want, f.Verdict, f.Reason)
		assert.Equal(t, want != cover.OK, strings.Contains(f.Reason, "R403.1.3"), category)
	}
	on := demo(t, "survey")
	assert.Contains(t, size(t, on).Foundations[0].AnchorReason, "at most 2.5 in deep, 3.75 in or more from edges", "two thirds of 4 in")
	on.Foundation.AnchorKind, on.Foundation.AnchorDiameter, on.Foundation.AnchorEmbedment = new("drilled"), new(0.375), new(2.5)
	on.Foundation.SlabEdge, on.Foundation.SlabAcross = new(3.5), new(24.0)
	f := size(t, on).Foundations[0]
	assert.Contains(t, f.AnchorReason, "keep it 3.75 in or more from edges")
	assert.Contains(t, f.AnchorReason, "hold nothing until they are tested")
	on.Foundation.SlabEdge = new(4.0)
	assert.NotContains(t, size(t, on).Foundations[0].AnchorReason, "keep it")
}

// A pad with a neck down to the frost takes less concrete than a solid block where bearing
// governs, the soil over it counts only when it is said to stay, and the anchor sits in
// the neck.
func TestPadWithANeck(t *testing.T) {
	in := simple()
	in.Cover.Width, in.Posts.Count, in.Site.FrostDepth, in.Site.SoilClass = new(40.0), new(3), new(48.0), new("sand")
	in.Site.RoofSnow, in.Site.WindSpeed = new(80.0), new(90.0)
	solid := size(t, in)
	in.Foundation.Neck = new(10.0)
	r := size(t, in)
	f, s := heaviest(r), heaviest(solid)
	require.Equal(t, cover.OK, f.Verdict, f.Reason)
	assert.Less(t, f.Concrete, s.Concrete)
	calctest.Close(t, (f.Width*f.Width*f.Pad+100*(f.Depth-f.Pad))/1728, f.Concrete, exact, 0, "pad and neck")
	assert.Contains(t, f.Size, "below a neck of 10 in")
	assert.Zero(t, value(t, groundCheck(t, f, "uplift on the footing"), "W_s"))
	in.Foundation.SoilOver = new(true)
	g := heaviest(size(t, in))
	calctest.Close(t, 100*(g.Width*g.Width-100)*(g.Depth-g.Pad)/1728, value(t, groundCheck(t, g, "uplift on the footing"), "W_s"), exact, 0)
	assert.LessOrEqual(t, g.Concrete, f.Concrete)
	in.Foundation.AnchorKind, in.Foundation.AnchorDiameter, in.Foundation.AnchorEmbedment = new("headed"), new(0.5), new(7.0)
	calctest.Close(t, 5, value(t, groundCheck(t, heaviest(size(t, in)), "anchor in tension"), "c_w"), exact, 0)

	in.Foundation.Kind = new("embedded")
	assert.ErrorContains(t, in.Validate(), "foundation.neck_in: 10 in is not left open")
	in = simple()
	in.Foundation.PadThickness = new(8.0)
	assert.ErrorContains(t, in.Validate(), "foundation.neck_in: missing")
}

// Ground water takes weight, so that more concrete is asked for.
func TestGroundWaterAsksForMore(t *testing.T) {
	in := demo(t, "coast")
	dry := size(t, in).Concrete.Feet
	in.Site.GroundWater = new(0.0)
	assert.Greater(t, size(t, in).Concrete.Feet, 1.3*dry)
}

// An anchor is said whole, in a diameter that is made.
func TestAnchorIsSaidWhole(t *testing.T) {
	in := simple()
	in.Foundation.AnchorKind = new("headed")
	assert.ErrorContains(t, in.Validate(), "foundation.anchor_diameter_in: missing")
	in.Foundation.AnchorDiameter, in.Foundation.AnchorEmbedment = new(0.45), new(7.0)
	assert.ErrorContains(t, in.Validate(), "foundation.anchor_diameter_in: 0.45 in is not one of 0.375, 0.5")
	in.Foundation.AnchorDiameter = new(0.5)
	assert.NoError(t, in.Validate())
	in.Foundation = cover.Foundation{Kind: new("footing"), AnchorKind: new("embedded_base")}
	assert.Equal(t, cover.NotChecked, size(t, in).Foundations[0].AnchorVerdict)
}

func TestChoosingAFootingAllocatesNothing(t *testing.T) {
	assert.Zero(t, cover.FootingAllocations(func(f func()) float64 { return testing.AllocsPerRun(10, f) }))
}
