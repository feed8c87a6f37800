package springs

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"patiocover/calc/calctest"
)

// singly solves a beam with two free ends on springs one by one, by equilibrium and the
// deflection at each spring (Macaulay's brackets): row i of the answer is what spring i takes
// of one pound at each of the places.
func singly(t *testing.T, r Row, count int, places []float64) [][]float64 {
	t.Helper()
	n := count
	a, b := mat.NewDense(n+2, n+2, nil), mat.NewDense(n+2, len(places), nil)
	cube := func(x float64) float64 { return math.Pow(max(0, x), 3) / 6 }
	at := func(i int) float64 { return r.Beyond/r.Apart + float64(i) } // lengths in spring distances, E I of 1
	k := r.Spring * math.Pow(r.Apart, 3) / r.Stiffness
	for i := range n {
		spring := k
		if i == 0 || i == n-1 {
			spring *= r.First
		}
		for j := range n {
			a.Set(i, j, cube(at(i)-at(j)))
		}
		a.Set(i, i, 1/spring)
		a.Set(i, n, -1)
		a.Set(i, n+1, -at(i))
		a.Set(n, i, 1)
		a.Set(n+1, i, at(i))
		for j, x := range places {
			b.Set(i, j, cube(at(i)-x/r.Apart))
		}
	}
	for j, x := range places {
		b.Set(n, j, 1)
		b.Set(n+1, j, x/r.Apart)
	}
	var x mat.Dense
	require.NoError(t, x.Solve(a, b))
	out := make([][]float64, n)
	for i := range out {
		out[i] = mat.Row(nil, i, &x)
	}
	return out
}

// rows are ledgers from the softest to the stiffest: lambda s from 0.2 to 4, springs 4 to
// 48 in apart, the first of them single or double.
func rows(each func(name string, r Row, count int)) {
	for _, u := range []float64{0.2, 0.3, 0.5, 0.7, 1, 1.3, 1.6, 2, 3, 4} {
		for _, apart := range []float64{4, 6, 8, 12, 16, 24, 48} {
			for _, first := range []float64{1, 2} {
				r := Row{Apart: apart, Stiffness: 3e7, Beyond: 4, First: first}
				r.Spring = 4 * apart * r.Stiffness * math.Pow(u/apart, 4)
				each(fmt.Sprintf("lambda s %v, springs %v in apart, first %v", u, apart, first), r, int(max(10, 12/u)))
			}
		}
	}
}

// The first spring under a load on the end, and under loads that begin there, against
// springs solved one by one.
func TestEndAgainstSingleSprings(t *testing.T) {
	rows(func(name string, r Row, count int) {
		length := 2*r.Beyond + float64(count-1)*r.Apart
		calctest.Close(t, singly(t, r, count, []float64{0})[0][0], r.End(), 2e-4, 0, name)
		for _, apart := range []float64{12, 16, 24, 48} {
			var places []float64
			for x := 0.0; x < length; x += apart {
				places = append(places, x)
			}
			want := 0.0
			for i, part := range singly(t, r, count, places)[0] {
				if i == 0 {
					part /= 2
				}
				want += part
			}
			calctest.Close(t, want, r.EvenAtEnd(apart), 1e-3, 0, "%s, loads %v in apart", name, apart)
		}
	})
}

// No spring takes more of one load, wherever it stands, than the part inside, or than the end
// takes for each of its fasteners: the springs next to an end feel it too.
func TestInsideAndEndCoverEverySpring(t *testing.T) {
	rows(func(name string, r Row, count int) {
		var places []float64
		for x := 0.0; x < r.Beyond+float64(count/2)*r.Apart; x += r.Apart / 16 {
			places = append(places, x)
		}
		for i, parts := range singly(t, r, count, places)[:count/2] {
			most := 0.0
			for _, part := range parts {
				most = max(most, part)
			}
			if i == 0 {
				assert.LessOrEqual(t, most, r.End()*1.001, name)
				continue
			}
			assert.LessOrEqual(t, most, max(r.Inside(), r.End()/r.First)*1.001, "%s, spring %d", name, i)
		}
	})
}

// Equal loads: no spring inside takes more than the closed form says, whatever their place
// against the springs.
func TestEvenAgainstSingleSprings(t *testing.T) {
	rows(func(name string, r Row, count int) {
		for _, apart := range []float64{12, 16, 24, 48} {
			count := count + int(4*apart/r.Apart)
			middle := r.Beyond + float64(count/2)*r.Apart
			most := 0.0
			for phase := 0.0; phase < 1; phase += 1.0 / 8 {
				var places []float64
				for i := -math.Ceil(middle / apart); i*apart <= middle; i++ {
					if x := middle + (i+phase)*apart; x > 0 && x < 2*middle-r.Apart {
						places = append(places, x)
					}
				}
				sum := 0.0
				for _, part := range singly(t, r, count, places)[count/2] {
					sum += part
				}
				most = max(most, sum)
			}
			assert.LessOrEqual(t, most, r.Even(apart)*1.001, "%s, loads %v in apart", name, apart)
		}
	})
}

// Where the springs stand close and begin at the end, the end takes four times the part of a
// spring inside (Hetenyi 1946, from memory: the half beam under a force on its end sinks four
// times as deep as the infinite beam); where they are stiff, the first span is held at its
// second spring, and the first one takes 1 + (1 + 2 - sqrt 3) a/s (three moments of a beam
// without end, each support moment 2 - sqrt 3 of the one before).
func TestEndAtItsLimits(t *testing.T) {
	r := Row{Apart: 1, Stiffness: 1, First: 0.5}
	r.Spring = 4 * math.Pow(0.02, 4)
	assert.InEpsilon(t, 4*r.Inside()/slack*0.5, r.End(), 0.02, "half a spring at the end of the bed")
	stiff := Row{Apart: 24, Stiffness: 1, Beyond: 4, First: 1, Spring: 1e6}
	calctest.Close(t, 1+(3-math.Sqrt(3))*4/24, stiff.End(), 1e-3, 0)
}

// The search tries many rows.
func TestRowAllocatesNothing(t *testing.T) {
	r := Row{Apart: 16, Spring: 60_000, Stiffness: 3e7, Beyond: 4, First: 2}
	sum := 0.0
	assert.Zero(t, testing.AllocsPerRun(20, func() { sum += r.Inside() + r.Even(24) + r.End() + r.EvenAtEnd(24) }))
	assert.Positive(t, sum)
}
