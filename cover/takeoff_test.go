package cover_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// priced gives a cover the user's prices.
func priced(in cover.Input, prices ...cover.Price) cover.Input {
	in.Market.Prices = prices
	return in
}

func price(item, per string, dollars float64) cover.Price {
	return cover.Price{Item: &item, Per: &per, Dollars: &dollars}
}

// The simple cover by hand. Eleven rafters a little over 10 ft come out of 12 ft
// sticks, the ledger is one of 20 ft: 152 ft of 2x8. One 6x16 of 20 ft. Two posts of
// 9 ft less 1-1/4 in of fall, 7-1/4 in of rafter and 15-1/2 in of beam, 7 ft: one stick
// of 16 ft, because both with a saw cut are longer than 14 ft. A board foot is a foot of
// 1x12 (American softwood lumber standard, nominal sizes).
func TestTakeOffByHand(t *testing.T) {
	r := size(t, simple())
	require.Len(t, r.TakeOff.Wood, 3)
	for i, want := range []struct {
		item   string
		bought float64 // ft
		sticks int
		feet   float64 // board feet
	}{
		{"2x8 Douglas Fir-Larch No.2", 11*12 + 20, 12, 152 * 2 * 8 / 12.0},
		{"6x16 Douglas Fir-Larch No.2", 20, 1, 20 * 6 * 16 / 12.0},
		{"6x6 Douglas Fir-Larch No.2", 16, 1, 16 * 6 * 6 / 12.0},
	} {
		got := r.TakeOff.Wood[i]
		assert.Equal(t, want.item, got.Item)
		assert.Equal(t, want.sticks, got.Sticks, want.item)
		assert.True(t, got.Exact)
		calctest.Close(t, want.bought, got.Bought, 1e-9, 0, want.item)
		calctest.Close(t, want.feet, got.BoardFeet, 1e-9, 0, want.item)
	}
	assert.Nil(t, r.TakeOff.Cost, "nothing costs anything unless the user says so")
}

// A price per board foot, one per foot, one per square foot of roof: 202.67 board feet at
// 1.20, 20 ft at 9, 201 square feet at 0.75 (the roof of 200 ft² on plan, up to the next).
func TestTakeOffPrices(t *testing.T) {
	r := size(t, priced(simple(),
		price("2x8 Douglas Fir-Larch No.2", "board_foot", 1.2),
		price("6x16 Douglas Fir-Larch No.2", "foot", 9),
		price("deck and roofing", "square_foot", 0.75),
		price("2x8 Douglas Fur", "foot", 1),
	))
	require.NotNil(t, r.TakeOff.Cost)
	calctest.Close(t, 152*2*8/12.0*1.2+20*9+201*0.75, *r.TakeOff.Cost, 1e-9, 0)
	assert.Contains(t, r.TakeOff.Unpriced, "6x6 Douglas Fir-Larch No.2")
	assert.NotContains(t, r.TakeOff.Unpriced, "deck and roofing")
	assert.Contains(t, r.TakeOff.Notes[len(r.TakeOff.Notes)-1], "2x8 Douglas Fur", "a misspelt price is named")
}

// Stock that is too short is said, not stretched.
func TestTakeOffTooLong(t *testing.T) {
	in := simple()
	in.Market.StockLengths = []float64{8, 12}
	r := size(t, in)
	assert.Equal(t, []float64{20}, r.TakeOff.Wood[1].TooLong, "the beam")
	assert.Zero(t, r.TakeOff.Wood[1].Sticks)
	assert.Empty(t, r.TakeOff.Wood[0].TooLong, "the ledger is spliced")
}

// Whatever the cover, what is cut is what is needed, nothing is used that is not
// bought, and the posts are cut from no more wood than their number times the longest.
func TestTakeOffLaws(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := randomCover(t)
		r, err := cover.Size(in)
		if err != nil {
			t.Skip("not a valid cover")
		}
		for _, w := range r.TakeOff.Wood {
			needed, cut := 0, 0
			for _, p := range r.TakeOff.Pieces {
				if p.Item == w.Item {
					needed += p.Count
				}
			}
			for _, c := range w.Cuts {
				cut += c.Count * len(c.Pieces)
			}
			if len(w.TooLong) == 0 && needed != cut {
				t.Fatalf("%s: %d pieces needed, %d cut", w.Item, needed, cut)
			}
			if w.Used > w.Bought+1e-6 {
				t.Fatalf("%s: %v ft used of %v bought", w.Item, w.Used, w.Bought)
			}
		}
	})
}

// What stands in the ground is bought and poured: posts reach down to the bottom of their
// footings, and the concrete is one item by the cubic yard, of 27 ft³ each.
func TestTakeOffOfPostsInTheGround(t *testing.T) {
	in := embedded()
	r := size(t, priced(in, price("Concrete", "cubic_yard", 200)))
	longest := 0.0
	for _, p := range r.TakeOff.Pieces {
		if p.Mark == "P" {
			longest = max(longest, p.Length)
		}
	}
	assert.Greater(t, longest, r.Geometry.Lines[0].Bottom+r.Foundations[0].Depth/12-1e-9)
	feet := 0.0
	for _, f := range r.Foundations {
		feet += f.Concrete
	}
	require.NotNil(t, r.TakeOff.Cost)
	calctest.Near(t, 200*math.Ceil(feet/27*100)/100, *r.TakeOff.Cost, 1e-6)
	assert.Len(t, r.TakeOff.Notes, len(size(t, in).TakeOff.Notes), "the price of the concrete has its item")
}
