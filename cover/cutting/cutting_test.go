package cutting_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover/cutting"
)

const kerf = 0.125 * calc.In

// yard is a set of stock lengths priced by length.
func yard(feet ...float64) []cutting.Stick {
	var out []cutting.Stick
	for _, ft := range feet {
		out = append(out, cutting.Stick{Length: ft * calc.Ft, Price: ft})
	}
	return out
}

func ExampleNew() {
	pieces := []cutting.Piece{{Length: 7.5 * calc.Ft, Count: 4}, {Length: 4 * calc.Ft, Count: 4}}
	p := cutting.New(pieces, yard(8, 12, 16), kerf)
	for _, c := range p.Cuts {
		fmt.Println(c.Count, "of stick", c.Stick, "each cut into", c.Pieces)
	}
	fmt.Printf("%.0f ft bought, %.0f ft used\n", p.Bought/calc.Ft, p.Used/calc.Ft)
	// Output:
	// 1 of stick 2 each cut into [2 0]
	// 2 of stick 2 each cut into [1 2]
	// 48 ft bought, 46 ft used
}

// The kerf decides whether two halves come out of one stick: two pieces of 8 ft need
// more than 16 ft, two of 7 ft 11-15/16 in just fit (geometry).
func TestKerf(t *testing.T) {
	for _, c := range []struct {
		name   string
		length float64 // in
		sticks int
	}{
		{"exact half of the stick", 8 * calc.Ft, 2},
		{"half less half of the cut", 8*calc.Ft - kerf/2, 1},
	} {
		p := cutting.New([]cutting.Piece{{Length: c.length, Count: 2}}, yard(16), kerf)
		assert.Equal(t, c.sticks, p.Sticks, c.name)
	}
	whole := cutting.New([]cutting.Piece{{Length: 16 * calc.Ft, Count: 3}}, yard(16), kerf)
	assert.Equal(t, 3, whole.Sticks, "a stick that fits to the length needs no cut")
	calctest.Near(t, whole.Used, whole.Bought, 1e-9)
}

func TestTooLong(t *testing.T) {
	p := cutting.New([]cutting.Piece{{Length: 22 * calc.Ft, Count: 2}, {Length: 9 * calc.Ft, Count: 1}}, yard(20), kerf)
	assert.Equal(t, []int{2, 0}, p.Unmet)
	assert.Equal(t, 1, p.Sticks, "the rest is still laid out")
	none := cutting.New(nil, yard(20), kerf)
	assert.Zero(t, none.Bought)
}

// Price goes before length: the long stick costs less a foot here.
func TestPriceBeforeLength(t *testing.T) {
	sticks := []cutting.Stick{{Length: 8 * calc.Ft, Price: 10}, {Length: 20 * calc.Ft, Price: 9}}
	p := cutting.New([]cutting.Piece{{Length: 8 * calc.Ft, Count: 1}}, sticks, kerf)
	assert.Equal(t, 1, p.Cuts[0].Stick)
	calctest.Near(t, 9, p.Price, 1e-12)
}

// brute tries every order of taking one pattern after another.
func brute(need []int, lengths []float64, sticks []cutting.Stick) float64 {
	done := true
	for _, n := range need {
		done = done && n == 0
	}
	if done {
		return 0
	}
	least := math.Inf(1)
	for _, s := range sticks {
		for a := 0; a <= need[0]; a++ {
			for b := 0; b <= need[1]; b++ {
				n := a + b
				length := float64(a)*lengths[0] + float64(b)*lengths[1] + float64(max(0, n-1))*kerf
				if n == 0 || length > s.Length+1e-9 {
					continue
				}
				least = min(least, s.Price+brute([]int{need[0] - a, need[1] - b}, lengths, sticks))
			}
		}
	}
	return least
}

// The plan costs what the cheapest of all plans costs, found by trying them all.
func TestEqualsBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lengths := []float64{
			rapid.Float64Range(12, 100).Draw(t, "first in"), rapid.Float64Range(12, 100).Draw(t, "second in"),
		}
		need := []int{rapid.IntRange(0, 3).Draw(t, "first"), rapid.IntRange(0, 3).Draw(t, "second")}
		sticks := []cutting.Stick{
			{Length: 100, Price: rapid.Float64Range(1, 20).Draw(t, "price of 100 in")},
			{Length: 170, Price: rapid.Float64Range(1, 20).Draw(t, "price of 170 in")},
		}
		p := cutting.New([]cutting.Piece{
			{Length: lengths[0], Count: need[0]}, {Length: lengths[1], Count: need[1]},
		}, sticks, kerf)
		assert.True(t, p.Exact)
		assert.True(t, math.Abs(brute(need, lengths, sticks)-p.Price) < 1e-9, "the cheapest of all plans")
	})
}

// Every piece comes out of the sticks exactly once, every stick holds what is cut from
// it, and the waste is not negative, in the exact search and beyond it.
func TestPlanIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var pieces []cutting.Piece
		for range rapid.IntRange(1, 4).Draw(t, "kinds") {
			pieces = append(pieces, cutting.Piece{
				Length: rapid.Float64Range(10, 260).Draw(t, "in"), Count: rapid.IntRange(0, 14).Draw(t, "count"),
			})
		}
		sticks := yard(8, 10, 12, 16, 20)
		p := cutting.New(pieces, sticks, kerf)
		got := make([]int, len(pieces))
		for _, c := range p.Cuts {
			length, n := 0.0, 0
			for i, k := range c.Pieces {
				got[i] += k * c.Count
				length += float64(k) * pieces[i].Length
				n += k
			}
			assert.LessOrEqual(t, length+float64(n-1)*kerf, sticks[c.Stick].Length+1e-6)
		}
		for i, at := range pieces {
			assert.Equal(t, at.Count, got[i]+p.Unmet[i])
		}
		assert.LessOrEqual(t, p.Used, p.Bought+1e-9)
	})
}

// Beyond the exact search each length is cut alone; the plan says so and costs no less.
func TestBeyondTheSearch(t *testing.T) {
	pieces := []cutting.Piece{{Length: 60, Count: 40}, {Length: 70, Count: 40}, {Length: 80, Count: 40}}
	p := cutting.New(pieces, yard(8, 16), kerf)
	assert.False(t, p.Exact)
	assert.Equal(t, []int{0, 0, 0}, p.Unmet)
	assert.GreaterOrEqual(t, p.Bought, p.Used)
}

func BenchmarkNew(b *testing.B) {
	pieces := []cutting.Piece{{Length: 11.2 * calc.Ft, Count: 31}, {Length: 7 * calc.Ft, Count: 8}}
	sticks := yard(8, 10, 12, 14, 16, 18, 20)
	for b.Loop() {
		cutting.New(pieces, sticks, kerf)
	}
}
