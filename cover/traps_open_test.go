package cover_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
)

// Trap: a wall that nobody opened, judged by what is said about its framing. As long as the
// wall is unknown the ledger is to be opened up, whatever gap, wood and spacing are given.
func TestTrapUnknownWallWithKnownFraming(t *testing.T) {
	in := fastened()
	for wall, want := range map[string]cover.Verdict{"rim": cover.OK, "unknown": cover.OpenUp, "brick_veneer": cover.Over} {
		in.House.Wall = &wall
		l := linkOf(t, size(t, in), "L1")
		assert.Equal(t, want, l.Verdict, "%s: %s", wall, l.Reason)
	}
}

// Trap: the suction on a deck nail taken for less roof than it holds. A nail at 6 in. along
// rafters at 24 in. holds 1 ft², at the inner support of a panel over two spans 1.25 of it.
func TestTrapDeckNailHoldsMoreThanItsShare(t *testing.T) {
	in := fastened()
	in.Connections.DeckNail, in.Connections.DeckNailSize, in.Connections.DeckSpacing = new("common"), new("8d"), new(6.0)
	l := linkOf(t, size(t, in), "D1")
	pull := linkCheck(t, l, "withdrawal")
	calctest.Close(t, 1.25*l.Up.Value, value(t, pull, "T"), exact, 0, "statics of two equal spans, 0.5 ft by 2 ft")
}

// Trap: the whole weight of a footing against uplift. The weight that is asked for is the
// net uplift over 0.6 (ASCE 7-16 2.4.1, combination 7).
func TestTrapWholeWeightAgainstUplift(t *testing.T) {
	l := linkOf(t, size(t, overhung()), "F1")
	assert.Positive(t, l.Rating)
	assert.Contains(t, l.Hardware, "of "+calc.Grouped(strconv.Itoa(int(math.Ceil(l.Rating/0.6))))+" lb or more at each post", l.Hardware)
}

// Trap: a freestanding cover near a higher roof taken for one in the open: snow drifts onto
// it too (ASCE 7-16 7.7.2). As long as nothing is said of that roof, the snow is open.
func TestTrapDriftOntoAFreestandingCover(t *testing.T) {
	open := func(in cover.Input) bool { return skipped(size(t, in), "near by drifts snow") }
	in := standing()
	assert.False(t, open(in), "no snow")
	in.Site.RoofSnow = new(30.0)
	assert.True(t, open(in))
	in.House.RoofEdge, in.House.RoofLength, in.House.Gap = new(12.0), new(30.0), new(60.0)
	assert.False(t, open(in), "said")
}
