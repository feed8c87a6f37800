package beam

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The search for zeros keeps to its bracket where Newton's method would leave it.
func TestZeroKeepsToItsBracket(t *testing.T) {
	cases := []struct {
		name string
		g    segment
	}{
		{"flat at the left end", segment{length: 10, slope: -1e-6, shear: -1}},
		{"flat at the right end", segment{length: 10, slope: 50 - 1e-6, moment: 10, shear: -1}},
		{"steep and flat", segment{length: 100, slope: 1, moment: 1e-9, load: -1, shear: 1e-3}},
		{"varying", segment{length: 100, slope: 1e5, moment: 10, shear: -60, load: 5, change: -0.3}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			low, high := c.g.slopeAt(0), c.g.slopeAt(c.g.length)
			zeros := c.g.slopeZeros(fine)
			if (low > 0) != (high > 0) && zeros.n%2 != 1 {
				t.Fatalf("%d zeros between %v and %v", zeros.n, low, high)
			}
			scale := math.Abs(low) + math.Abs(high)
			for _, s := range zeros.at[:zeros.n] {
				if !(0 <= s && s <= c.g.length) || math.Abs(c.g.slopeAt(s)) > 1e-9*scale {
					t.Errorf("slope %v at %v", c.g.slopeAt(s), s)
				}
			}
		})
	}
}

// drawSegment draws a segment in which moment and slope are small enough to change
// sign.
func drawSegment(t *rapid.T, varying bool) segment {
	part := rapid.Float64Range(-1, 1)
	g := segment{
		length: rapid.Float64Range(0.01, 200).Draw(t, "h"),
		shear:  part.Draw(t, "V"), load: 4 * part.Draw(t, "w"),
	}
	if varying {
		g.change = 8 * part.Draw(t, "change") / (g.length * g.length)
	}
	g.load /= g.length
	g.moment = g.length * part.Draw(t, "M")
	g.slope = g.length * g.length * part.Draw(t, "slope")
	return g
}

// A segment that is called steep has no zero of slope: no sample is of another sign.
func TestSteepHasNoZero(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawSegment(t, rapid.Bool().Draw(t, "varying"))
		end, moment := g.slopeAt(g.length), g.momentAt(g.length)
		if (g.slope > 0) != (end > 0) || !g.steep(end, moment) {
			t.Skip("may turn")
		}
		for i := range 101 {
			if s := g.length * float64(i) / 100; (g.slopeAt(s) > 0) != (g.slope > 0) {
				t.Fatalf("slope %v at %v", g.slopeAt(s), s)
			}
		}
	})
}

// Samples of any quantity change sign no more often than there are zeros, and at each
// zero the quantity is one.
func TestZerosAreAllFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawSegment(t, rapid.Bool().Draw(t, "varying"))
		for c, zeros := range map[curve]zeroList{
			shearOf: g.shearZeros(), momentOf: g.momentZeros(), slopeOf: g.slopeZeros(fine),
		} {
			count := 0
			before, _ := g.at(c, 0)
			for i := 1; i <= 500; i++ {
				value, _ := g.at(c, min(g.length, g.length/500*float64(i)))
				if (value > 0) != (before > 0) {
					count++
				}
				before = value
			}
			if count > zeros.n {
				t.Fatalf("%d changes of sign of curve %d, zeros %v", count, c, zeros.at[:zeros.n])
			}
			size := math.Max(1, g.length*g.length) * 4
			for _, s := range zeros.at[:zeros.n] {
				if value, _ := g.at(c, s); !(0 <= s && s <= g.length && math.Abs(value) <= 1e-9*size) {
					t.Fatalf("curve %d is %v at %v, of %v", c, value, s, size)
				}
			}
		}
	})
}

// The short way to the deflection where the slope vanishes ends where the long way
// does, also where the moment is small there.
func TestTurnEqualsZero(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawSegment(t, false)
		end, moment := g.slopeAt(g.length), g.momentAt(g.length)
		if (g.slope > 0) == (end > 0) || g.momentZeros().n > 0 {
			t.Skip("does not turn once")
		}
		p := Plan{lengths: []float64{g.length, 0}}
		p.sum = state{
			shear: []float64{g.shear, 0}, moment: []float64{g.moment, moment}, load: []float64{g.load, 0},
			slope: []float64{g.slope, end}, deflection: []float64{g.deflection, 0},
		}
		want := g.deflectionAt(g.slopeZeros(fine).at[0])
		scale := math.Pow(g.length, 3)
		if got := p.turn(0); !(math.Abs(got-want) <= 1e-11*scale) {
			t.Fatalf("%v, want %v, of %v", got, want, scale)
		}
	})
}
