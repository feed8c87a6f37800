package cover_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// partOf is a part of the way of the push by the words it begins with.
func partOf(t *testing.T, w cover.LateralWay, part string) cover.LateralStep {
	t.Helper()
	for _, s := range w.Path {
		if len(s.Part) >= len(part) && s.Part[:len(part)] == part {
			return s
		}
	}
	require.Fail(t, "no part "+part)
	return cover.LateralStep{}
}

// The way through the house: shear along the ledger, the roof's turning about it as a pull
// at its ends, the house, and the wind on the posts themselves into their feet.
func TestLateralPathThroughTheHouse(t *testing.T) {
	r := size(t, overhung())
	along := r.Lateral[0]
	assert.Equal(t, cover.OpenUp, along.Verdict, "the wall behind the ledger is not known in full")
	calctest.Close(t, along.Demand/20, partOf(t, along, "ledger").Demand, exact, 0, "of 20 ft")
	c := cover.MemberCheck{}
	c.Check.Lines = along.Lines
	// the roof pushes in its middle, 6 ft out, the posts at the beam line, 10 ft out
	posts := max(value(t, c, "F_post"), value(t, c, "p_min")*value(t, c, "A_post")) / value(t, c, "F")
	turn := along.Demand * (6*(1-posts) + 10*posts)
	calctest.Close(t, turn, value(t, c, "M_t"), exact, 0, "by hand")
	calctest.Close(t, 6*turn/(20*20), value(t, c, "t_L"), exact, 0, "6 M / L²")
	calctest.Close(t, turn/20, value(t, c, "T_c"), exact, 0, "a couple of the edge rafters")
	// half of the ledger with a pull that rises to its end: t (L/2) / 2
	calctest.Close(t, value(t, c, "t_L")*10/2, value(t, c, "T_d"), exact, 0)
	assert.NoError(t, calctest.Prove(along.Lines))
	assert.NoError(t, calctest.Prove(r.Lateral[1].Lines))
	house := partOf(t, along, "the house")
	assert.Equal(t, cover.NotChecked, house.Verdict, "not known is not OK")
	assert.Contains(t, house.Reason, "house_capacity_lb")
	assert.Positive(t, partOf(t, along, "post bases").Demand)
}

// The house is OK for the force that its design names, and over beyond it.
func TestHouseDesignedForTheCover(t *testing.T) {
	in := overhung()
	force := size(t, in).Lateral[1].Demand
	in.Lateral.HouseSource = new("letter of the engineer")
	for capacity, want := range map[float64]cover.Verdict{force * 1.01: cover.OK, force * 0.99: cover.Over} {
		in.Lateral.HouseCapacity = &capacity
		house := partOf(t, size(t, in).Lateral[1], "the house")
		assert.Equal(t, want, house.Verdict)
		assert.Contains(t, house.Reason, "letter of the engineer")
	}
	in.Lateral.HouseSource = nil
	_, err := cover.Size(in)
	assert.ErrorContains(t, err, "house_source", "a capacity without its source")
}

// The way through braces and through the ground names each part with its verdict, and is no
// better than the worst of them.
func TestLateralPathOfOwnPosts(t *testing.T) {
	r := size(t, standing())
	for _, w := range r.Lateral {
		worst := cover.OK
		for _, s := range w.Path {
			worst = worst.Worse(s.Verdict)
			assert.NotEmpty(t, s.Reason, s.Part)
			assert.Positive(t, s.Demand, s.Part)
		}
		assert.Equal(t, worst, w.Verdict)
		assert.Equal(t, member(t, r, "K").Verdict, partOf(t, w, "knee braces").Verdict)
		assert.Equal(t, member(t, r, "P").Verdict, partOf(t, w, "bending of the posts").Verdict)
		assert.NotEqual(t, cover.OK, partOf(t, w, "bolts").Verdict)
	}
	in := standing()
	in.Lateral.Along, in.Foundation.Kind = new("embedded_posts"), new("embedded")
	w := size(t, in).Lateral[0]
	assert.NotEmpty(t, partOf(t, w, "slab, footings and soil").Reason)
}

// Trap: a direction that nothing holds as silence. It is over, in both directions alike.
func TestTrapNothingHoldsIsOver(t *testing.T) {
	in := standing()
	in.Lateral = cover.Lateral{Along: new("none"), Out: new("none")}
	for _, w := range size(t, in).Lateral {
		assert.Equal(t, cover.Over, w.Verdict, w.Direction)
		assert.Contains(t, w.Reason, "nothing holds")
	}
}
