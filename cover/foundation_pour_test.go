package cover_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// A cover without a word about anchors gets a bolt in its footings. By hand, 1/2 in and 7
// in deep in 2500 psi: pullout 0.70 x 8 x 0.291 x 2500 = 4074 lb is the least in tension.
func TestBoltIsChosen(t *testing.T) {
	r := size(t, demo(t, "coast"))
	for _, f := range r.Foundations {
		require.Equal(t, cover.OK, f.AnchorVerdict, f.AnchorReason)
		assert.True(t, f.AnchorChosen)
		assert.Equal(t, []float64{0.5, 7}, []float64{f.AnchorDiameter, f.AnchorDepth}, f.Post)
		pull := groundCheck(t, f, "anchor in tension")
		calctest.Close(t, f.Pull/4074, float64(pull.Ratio), 1e-9, 0, f.Post)
		assert.Contains(t, f.AnchorReason, "headed bolt of 1/2 in cast in 7 in deep, chosen for cracked concrete of 2,500 psi")
		room := groundCheck(t, f, "concrete around the anchor")
		calctest.Near(t, 7+0.5+3, value(t, room, "h_req"), 1e-9, "3 in of cover below the head")
	}
	assert.Equal(t, "headed bolt of 1/2 in cast in 7 in deep", r.Footings.Bolt)
	assert.Equal(t, cover.OK, linkOf(t, r, "A1").Verdict)

	var buy []cover.BuyLine
	for _, b := range r.TakeOff.Other {
		if strings.Contains(b.Item, "anchor bolt") || strings.HasPrefix(b.Item, "base to concrete") {
			buy = append(buy, b)
		}
	}
	require.Len(t, buy, 1, "the bolts are bought once, in one size")
	assert.Equal(t, "headed anchor bolt 0.5 in, 7 in in the concrete, with nut and washer", buy[0].Item)
	calctest.Near(t, float64(len(r.Foundations)), buy[0].Quantity, exact)

	thick := demo(t, "coast")
	thick.Foundation.AnchorDiameter = new(0.75)
	f := heaviest(size(t, thick))
	assert.Equal(t, []float64{0.75, 7}, []float64{f.AnchorDiameter, f.AnchorDepth}, "what is said is kept")
	deep := demo(t, "coast")
	deep.Foundation.AnchorEmbedment = new(24.0)
	f = heaviest(size(t, deep))
	assert.Equal(t, cover.Over, f.AnchorVerdict, "through the bottom of the footing")
	assert.Contains(t, f.AnchorReason, "no headed bolt of the list holds")
}

// Trap 19: a bolt chosen at 0.6W against a strength with phi, in uncracked concrete, or as
// if it were ductile for an earthquake; one proposed for a slab as if it were cast in.
func TestTrapChosenAnchorAtStrengthLevel(t *testing.T) {
	in := demo(t, "coast")
	f := heaviest(size(t, in))
	pull := groundCheck(t, f, "anchor in tension")
	assert.Greater(t, value(t, pull, "N_ua"), f.Uplift.Value/0.6, "0.9D + 1.0W")
	calctest.Near(t, 24, value(t, pull, "k_c"), exact)
	calctest.Near(t, 1, value(t, pull, "psi_c"), exact, "cracked")
	calctest.Close(t, f.Width/2, value(t, pull, "c_w"), exact, 0, "in the middle of the footing")
	in.Foundation.AnchorEdge = new(4.0)
	edge := groundCheck(t, heaviest(size(t, in)), "anchor in tension")
	calctest.Near(t, 4, value(t, edge, "c_w"), exact)
	assert.Less(t, value(t, edge, "phiN_cb"), value(t, pull, "phiN_cb"))

	in = demo(t, "coast")
	for _, category := range []string{"C", "D", "F"} {
		in.Site.SeismicCategory = &category
		f = heaviest(size(t, in))
		assert.Equal(t, cover.NotChecked, f.AnchorVerdict, category)
		assert.Contains(t, f.AnchorReason, "17.10")
		assert.True(t, f.AnchorChosen)
	}
	for _, name := range []string{"desert", "survey"} {
		f := size(t, demo(t, name)).Foundations[0]
		assert.Equal(t, cover.NotChecked, f.AnchorVerdict, name)
		assert.Contains(t, f.AnchorReason, "evaluation report for cracked concrete")
		assert.False(t, f.AnchorChosen)
		assert.Empty(t, f.Anchor, "nothing is computed for an anchor that nobody named")
	}
	slab := size(t, demo(t, "desert")).Foundations[0]
	assert.Contains(t, slab.Instead, "with a headed bolt of", "a footing instead takes a bolt")
}

// All footings are poured in one size, which does for every post; each post's own size
// needs no more, and is poured where one size is not wanted.
func TestOneSizeOfFooting(t *testing.T) {
	for _, name := range []string{"coast", "snow", "garden"} {
		in := demo(t, name)
		one := size(t, in)
		require.True(t, one.Footings.OneSize, "assumed")
		in.Foundation.OneSize = new(false)
		own := size(t, in)
		for i, f := range one.Foundations {
			assert.Equal(t, one.Footings.Size, f.Size, f.Post)
			assert.Equal(t, cover.OK, f.Verdict, f.Reason)
			assert.Equal(t, own.Foundations[i].Size, f.Own, f.Post)
			assert.Empty(t, own.Foundations[i].Own)
			assert.LessOrEqual(t, own.Foundations[i].Concrete, f.Concrete)
		}
		calctest.Close(t, one.Footings.All.Feet, one.Concrete.Feet, exact, 0, name)
		calctest.Close(t, one.Footings.Each.Feet, own.Concrete.Feet, exact, 0, name)
		assert.Equal(t, one.Footings.Size, own.Footings.Size)
		assert.Less(t, one.Footings.Each.Feet, one.Footings.All.Feet, "corner posts need less")
	}
	given := demo(t, "coast")
	given.Foundation.Width, given.Foundation.Depth = new(36.0), new(36.0)
	assert.Nil(t, size(t, given).Footings, "nothing to choose")
	assert.Nil(t, size(t, demo(t, "desert")).Footings, "on a slab")
}

// A pier of 10 in, taken as 8.86 in square, takes a cone of 4.43/1.5 = 2.95 in, phi N_cb =
// 0.70 x 24 x 50 x 2.95^1.5 = 4263 lb; one of 12 in 5604 lb. For 5000 lb it is widened. By
// hand, ACI 318-19 17.6.2.1.2.
func TestPierIsWidenedForItsBolt(t *testing.T) {
	width, diameter := cover.WidenedPier(4000)
	assert.Equal(t, []float64{10, 0.5}, []float64{width, diameter})
	width, diameter = cover.WidenedPier(5000)
	assert.Equal(t, []float64{12, 0.625}, []float64{width, diameter}, "pullout of 1/2 in is 4074 lb")
}
