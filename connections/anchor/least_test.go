package anchor_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/connections/anchor"
)

var _ calc.Result = anchor.Room{}

// middle is a block with its edges at one distance.
func middle(edge, thickness float64) anchor.Concrete {
	return anchor.Concrete{Strength: 2500, Thickness: thickness, West: edge, East: edge, South: edge, North: edge}
}

func TestLeastPublished(t *testing.T) {
	for _, r := range calctest.Published(t, "anchor_least.csv") {
		load := []anchor.Load{{Pull: r.Num("pull lb"), Push: r.Num("push lb")}}
		b, used := anchor.Least(load, anchor.Wanted{}, middle(r.Num("edge in"), r.Num("thickness in")))
		assert.LessOrEqual(t, used, 1.0)
		got := map[string]float64{"diameter": b.Diameter, "embedment": b.Embedment}[r.Text("quantity")]
		calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("source"))
	}
}

// 1/2 in needs max(6 x 0.5, 3 + 0.5) = 3.5 in to an edge, 1 in 6 in; 7 in deep asks for
// 7 + 0.5 + 3 = 10.5 in of concrete. By hand, ACI 318-19 17.9.2 and Table 20.5.1.3.1.
func TestRoom(t *testing.T) {
	half, _ := anchor.SizeOf(0.5)
	inch, _ := anchor.SizeOf(1)
	for _, c := range []struct {
		size                         anchor.Size
		edge, thickness, depth, want float64
	}{
		{half, 7, 21, 7, 0.5}, {half, 3.5, 36, 7, 1}, {half, 2, 36, 7, 1.75}, {half, 20, 10.5, 7, 1},
		{inch, 6, 36, 7, 1}, {inch, 12, 11, 7, 1},
	} {
		calctest.Near(t, c.want, anchor.NewRoom(anchor.HeadedOf(c.size, c.depth), middle(c.edge, c.thickness)).Ratio(), 1e-12, c)
	}
}

// A larger pull or push never asks for a smaller bolt in the same concrete, a load more
// never either, and what is found holds every load by each of its checks.
func TestLeastLaws(t *testing.T) {
	rank := func(b anchor.Bolt) float64 { return 100*b.Diameter + b.Embedment/100 }
	rapid.Check(t, func(t *rapid.T) {
		c := middle(rapid.Float64Range(2, 30).Draw(t, "edge"), rapid.Float64Range(8, 60).Draw(t, "thickness"))
		l := anchor.Load{Pull: rapid.Float64Range(0, 15000).Draw(t, "pull"), Push: rapid.Float64Range(0, 8000).Draw(t, "push")}
		b, used := anchor.Least([]anchor.Load{l}, anchor.Wanted{}, c)
		more := anchor.Load{Pull: l.Pull * rapid.Float64Range(1, 2).Draw(t, "up"), Push: l.Push * rapid.Float64Range(1, 2).Draw(t, "side")}
		next, over := anchor.Least([]anchor.Load{more}, anchor.Wanted{}, c)
		both, _ := anchor.Least([]anchor.Load{l, more}, anchor.Wanted{}, c)
		if used > 1 {
			if over <= 1 {
				t.Fatalf("%v holds where %v does not", more, l)
			}
			return
		}
		if over <= 1 && (rank(next) < rank(b) || both != next) {
			t.Fatalf("%v for %v, %v for %v, %v for both", b, l, next, more, both)
		}
		pull, push := anchor.NewTension(l.Pull, b, c), anchor.NewShear(l.Push, b, c)
		worst := max(pull.Ratio(), push.Ratio(), anchor.NewInteraction(pull, push).Ratio(), anchor.NewRoom(b, c).Ratio())
		if worst != used || worst > 1 {
			t.Fatalf("used %v, but %v", used, worst)
		}
		if b.Diameter < 0.5 || b.Embedment < 7 {
			t.Fatalf("below the residential code: %v", b)
		}
	})
}

// Concrete that takes no bolt gives none, and what is wanted is kept.
func TestLeastEnds(t *testing.T) {
	_, used := anchor.Least([]anchor.Load{{Pull: 100}}, anchor.Wanted{}, middle(12, 6))
	assert.True(t, math.IsInf(used, 1), "6 in of concrete takes no 7 in")
	_, used = anchor.Least([]anchor.Load{{Pull: 1e6}}, anchor.Wanted{}, middle(12, 36))
	assert.Greater(t, used, 1.0)
	b, used := anchor.Least([]anchor.Load{{Pull: 100}}, anchor.Wanted{Diameter: 0.375, Embedment: 5}, middle(12, 36))
	assert.LessOrEqual(t, used, 1.0)
	assert.Equal(t, []float64{0.375, 5}, []float64{b.Diameter, b.Embedment})
}

func TestRoomIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, c := draw(t)
		r := anchor.NewRoom(b, c)
		check := r.Explain()
		if err := calctest.Prove(check.Lines); err != nil {
			t.Fatal(err)
		}
		if check.Ratio() != r.Ratio() {
			t.Fatalf("ratio %v explained as %v", r.Ratio(), check.Ratio())
		}
	})
}

func TestChoosingABoltAllocatesNothing(t *testing.T) {
	loads, c, sink := []anchor.Load{{Pull: 3000, Push: 2500}}, middle(20, 36), 0.0
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		_, used := anchor.Least(loads, anchor.Wanted{}, c)
		sink += used
	}))
	assert.Positive(t, sink)
}

// 4100 lb in the middle of a block 40 in square: the head of 1/2 in holds 4074 lb, that of
// 5/8 in 6356 lb (ACI 318-19 eq. 17.6.3.2.2a).
func ExampleLeast() {
	b, used := anchor.Least([]anchor.Load{{Pull: 4100}}, anchor.Wanted{}, anchor.Concrete{
		Strength: 2500, Thickness: 36, West: 20, East: 20, South: 20, North: 20,
	})
	fmt.Printf("%s, %g in by %g in, ratio %.3f\n", b.Kind, b.Diameter, b.Embedment, used)
	// Output: headed bolt cast in, 0.625 in by 7 in, ratio 0.645
}
