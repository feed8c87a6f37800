package cover_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// Trap: lag screws counted through 1-1/2 in of ledger where a thicker one is bought. The
// ledger is a stick of the wood of the rafters: the length of a lag screw that it takes is
// not in the stud.
func TestTrapLedgerIsAsThickAsItIsBought(t *testing.T) {
	for size8, thick := range map[string]float64{"2x8": 1.5, "3x8": 2.5, "4x8": 3.5} {
		in := overhung()
		in.Rafters.Size = &size8
		in.Connections.LagSize, in.Connections.LagLength, in.Connections.LagsEach = new("3/8"), new(6.0), new(2)
		in.Connections.WallGap = new(0.5)
		r := size(t, in)
		bought := false
		for _, p := range r.TakeOff.Pieces {
			bought = bought || p.Mark == "ledger" && p.Item == size8+" Douglas Fir-Larch No.2"
		}
		assert.True(t, bought, size8)
		l := linkOf(t, r, "L1")
		calctest.Near(t, thick, value(t, linkCheck(t, l, "lag screws in shear"), "t_s"), exact, size8)
		calctest.Near(t, 6-0.5-thick, value(t, linkCheck(t, l, "lag screws in shear"), "p"), exact, "%s: in the stud", size8)
	}
}

// The ledger between its fastenings, by hand: rafters at 24 in and studs at 24 in leave one
// rafter in the middle of a span, M = P s / 4; at 16 in no place of the rafters brings more
// than w s^2/8 + P s/8, and two of them brought to their worst place, P (s - a/2)^2 / 2s each
// (statics of two forces that roll over a beam), stay below it.
func TestLedgerBetweenItsFastenings(t *testing.T) {
	at := func(spacing float64) (m, w float64) {
		in := overhung()
		in.Rafters.Spacing, in.Connections.LagSpacing = &spacing, new(24.0)
		c := linkCheck(t, linkOf(t, size(t, in), "L1"), "ledger between the lag screws")
		return value(t, c, "M_e"), value(t, c, "w")
	}
	m, w := at(24)
	calctest.Close(t, w*24*24/4, m, exact, 0)
	m, w = at(16)
	calctest.Close(t, w*24*24/8+w*16*24/8, m, exact, 0)
	rolling := w * 16 * (24 - 8) * (24 - 8) / (2 * 24)
	assert.GreaterOrEqual(t, m, max(rolling, w*16*24/4))
	assert.LessOrEqual(t, m, 1.5*max(rolling, w*16*24/4))
}

// Trap: the maintenance load on every rafter, or shared on both sides of the last one. It is
// 300 lb at one place (ASCE 7-16 Table 4.3-1), beside dead load by the foot. Of the lag screws
// at an end of the ledger, 4 in from it with the rafter 3/4 in, the first ones take more than
// all of it where studs stand 24 in apart: 1 + (3 - sqrt 3) a/s for a ledger on firm supports.
func TestTrapMaintenanceLoadStandsAtOnePlace(t *testing.T) {
	in := simple()
	in.Rafters.Spacing, in.Site.WindSpeed, in.Site.RoofLive = new(12.0), new(85.0), new(20.0)
	in.Connections.LagSpacing, in.Connections.WallGap = new(24.0), new(0.5)
	r := size(t, in)
	dead := byCase(t, reaction(t, r, "ledger"), "dead load at its most")
	l := linkOf(t, r, "L1")
	assert.Less(t, l.Down.Value, 300.0, "not on each rafter of a foot")
	for _, mark := range []string{"L1", "W1"} {
		i := slices.IndexFunc(linkOf(t, r, mark).Demands, func(q cover.Demand) bool { return q.Combination == "D + 300 lb at the ledger" })
		require.GreaterOrEqual(t, i, 0, mark)
		q := linkOf(t, r, mark).Demands[i]
		calctest.Near(t, 300, q.Single, 1e-6, mark)
		assert.Less(t, q.Vertical, dead+10, "dead load of one rafter to the foot, and the ledger: %s", mark)
	}
	assert.Contains(t, linkOf(t, r, "W1").Reason, "300 lb more down at any one place")
	c := linkCheck(t, l, "lag screws in shear")
	require.Equal(t, "the first and the last", c.Where)
	require.Equal(t, "D + 300 lb at the ledger", c.Combination)
	firm := 300 * (1 + (3-math.Sqrt(3))*3.25/24)
	demand := c.Check.Demand
	assert.Greater(t, demand, 0.93*firm)
	assert.Less(t, demand, firm+2.1*(dead+10), "with the dead load of the end rafter and the next")
}

// A push along the house comes to a line of posts from its own strip of the roof, where that
// is more than an equal part: of 14 ft with lines at 1 and 10 ft the outer one has 8.5.
func TestTrapLineTakesItsStripOfThePush(t *testing.T) {
	in := embedded()
	in.Lateral.Out, in.Cover.Overhang, in.Beams.Lines = new("knee_braces"), new(4.0), []float64{1, 10}
	r := size(t, in)
	for _, f := range r.Foundations {
		strip := 5.5 / 14
		if f.Y > 6 {
			strip = 8.5 / 14
		}
		part := value(t, groundCheck(t, f, "embedment"), "P") / r.Lateral[0].Demand
		assert.GreaterOrEqual(t, part, max(strip, 0.5)/2-1e-9, f.Post)
	}
}

// A check of this cover that was left out is never OK as a whole. The garden cover holds, and
// what its report does not answer no report does.
func TestTrapLeftOutIsNotOK(t *testing.T) {
	r := size(t, demo(t, "garden"))
	require.Equal(t, cover.OK, r.Verdict)
	require.NotEmpty(t, r.NotChecked)
	for _, s := range r.NotChecked {
		assert.True(t, s.Standing, s.What)
	}
	for what, change := range map[string]func(*cover.Input){
		"roof deck and its nailing": func(in *cover.Input) { in.Deck = cover.Deck{} },
		"earthquake":                func(in *cover.Input) { in.Site.SeismicCategory = nil },
		"wind":                      func(in *cover.Input) { in.Cover.Sides = new("screened") },
		"sideways force on the old ties": func(in *cover.Input) {
			in.House = demo(t, "survey").House
			in.House.Joints = in.House.Joints[:1]
		},
	} {
		in := demo(t, "garden")
		change(&in)
		r := size(t, in)
		left := false
		for _, s := range r.NotChecked {
			left = left || s.What == what && !s.Standing
		}
		said := false
		for _, f := range r.Summary {
			said = said || f.Verdict != cover.OK
		}
		assert.True(t, left, what)
		assert.True(t, said, "%s is a finding", what)
		assert.NotEqual(t, cover.OK, r.Verdict, what)
	}
}
