package connections_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc/calctest"
	"patiocover/connections"
)

func TestPathHasEveryLink(t *testing.T) {
	cases := []struct {
		name     string
		attached bool
		want     string
	}{
		{"attached", true, "DHLWTCBAF"},
		{"freestanding", false, "DTCBAF"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			letters := ""
			for _, k := range connections.Path(c.attached) {
				letters += k.Letter()
				assert.NotEmpty(t, k.String())
				assert.NotEmpty(t, k.From())
				assert.NotEmpty(t, k.To())
				assert.NotEmpty(t, k.Hardware())
				assert.NotEmpty(t, k.Stage())
			}
			assert.Equal(t, c.want, letters)
		})
	}
}

func TestPathIsACopy(t *testing.T) {
	connections.Path(true)[0] = connections.Ground
	assert.Equal(t, connections.DeckToRafter, connections.Path(true)[0])
}

func TestGovernNamesTheCombination(t *testing.T) {
	g := connections.Govern([]connections.Demand{
		{Combination: "D", Vertical: 100},
		{Combination: "D + Lr", Vertical: 320, Along: 5},
		{Combination: "0.6D + 0.6W", Vertical: -210, Along: 40, Out: 60},
		{Combination: "again", Vertical: -210, Along: 40, Out: 60},
	})
	assert.Equal(t, connections.Peak{Force: 320, Combination: "D + Lr"}, g.Down)
	assert.Equal(t, connections.Peak{Force: 210, Combination: "0.6D + 0.6W"}, g.Up)
	assert.Equal(t, connections.Peak{Force: 40, Combination: "0.6D + 0.6W"}, g.Along)
	assert.Equal(t, connections.Peak{Force: 60, Combination: "0.6D + 0.6W"}, g.Out)
	assert.Zero(t, connections.Govern(nil))
}

// Trap: rounding a required rating down.
func TestTrapRatingIsNeverRoundedDown(t *testing.T) {
	cases := []struct{ uplift, want float64 }{
		{0, 0}, {-50, 0}, {1, 25}, {25, 25}, {25.01, 50}, {175, 175}, {0.1 * 3 * 250, 75}, {301, 325},
	}
	for _, c := range cases {
		calctest.Near(t, c.want, connections.Rating(c.uplift), 1e-9, c.uplift)
	}
	rapid.Check(t, func(t *rapid.T) {
		up := rapid.Float64Range(0.01, 1e5).Draw(t, "uplift")
		r := connections.Rating(up)
		if !(r >= up*(1-1e-8) && r < up+25*(1+1e-6)) {
			t.Fatalf("rating %v for uplift %v", r, up)
		}
	})
}

// Trap: 2/3 D, or the design dead load, mixed with 0.6D + 0.6W.
func TestTrapUpliftNetsSixTenthsOfTheLeastDead(t *testing.T) {
	u := connections.NewUplift(500, 200, 0.6, 0.6)
	calctest.Near(t, 180, u.Net, 1e-9) // 0.6·500 − 0.6·200
	calctest.Near(t, 200, u.Rating, 1e-9)
	assert.Zero(t, connections.NewUplift(100, 200, 0.6, 0.6).Net)
}

func TestUpliftIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := connections.NewUplift(
			rapid.Float64Range(0, 1e5).Draw(t, "wind"), rapid.Float64Range(0, 1e5).Draw(t, "dead"), 0.6, 0.6)
		c := u.Explain()
		if err := calctest.Prove(c.Lines); err != nil {
			t.Fatal(err)
		}
		if c.Ratio() != u.Ratio() || u.Ratio() > 1+1e-8 {
			t.Fatalf("ratio %v explained as %v", u.Ratio(), c.Ratio())
		}
	})
}

// Monotone: more wind or less dead load never lowers the rating.
func TestUpliftIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(0, 5000).Draw(t, "wind")
		d := rapid.Float64Range(0, 5000).Draw(t, "dead")
		more := rapid.Float64Range(0, 500).Draw(t, "more")
		base := connections.NewUplift(w, d, 0.6, 0.6)
		if connections.NewUplift(w+more, d, 0.6, 0.6).Rating < base.Rating {
			t.Fatal("more wind lowered the rating")
		}
		if connections.NewUplift(w, max(0, d-more), 0.6, 0.6).Rating < base.Rating {
			t.Fatal("less dead load lowered the rating")
		}
	})
}

func TestUpliftAllocatesNothing(t *testing.T) {
	var sink float64
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink += connections.NewUplift(500, 200, 0.6, 0.6).Ratio() }))
}

// A tie at each 24 in on a 10 ft span with a 1 ft overhang under a net uplift of
// 6 psf: R = u s (L + a)² / 2L, statics of a propped overhang.
func ExampleRating() {
	u, s, l, a := 6.0, 2.0, 10.0, 1.0
	uplift := u * s * (l + a) * (l + a) / (2 * l)
	fmt.Printf("%.1f lb: tie rated %.0f lb or more\n", uplift, connections.Rating(uplift))
	// Output: 72.6 lb: tie rated 75 lb or more
}
