package beam_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"patiocover/beam"
)

// unitMoment returns the moment at x under a load of 1 at the place, both in inches, of
// a beam on the first and the last support alone.
func unitMoment(line *beam.Line, at, x float64) float64 {
	a, b := line.Support(0), line.Support(line.Spans())
	left := (b - at) / (b - a) // reactions of the simple beam
	m := 0.0
	for _, f := range [...]struct{ at, force float64 }{{a, left}, {b, 1 - left}, {at, -1}} {
		if x > f.at {
			m += f.force * (x - f.at)
		}
	}
	return m
}

// deflectionByWork integrates M m / E I by Gauss and Legendre between the places where
// either moment bends, in inches.
func deflectionByWork(p *beam.Plan, stiffness, at float64) float64 {
	cuts := append(p.AppendCuts(nil), at)
	slices.Sort(cuts)
	sum := 0.0
	for i := 1; i < len(cuts); i++ {
		if cuts[i]-cuts[i-1] < 1e-9 {
			continue
		}
		sum += quad.Fixed(func(x float64) float64 {
			return p.At([]float64{1}, stiffness, x).Moment * unitMoment(p.Line(), at, x)
		}, cuts[i-1], cuts[i], 5, quad.Legendre{}, 0)
	}
	return sum / stiffness
}

// The deflected shape of a continuous beam by virtual work, integrated numerically: the
// same as from the plan everywhere, and nothing over each support, which shows that the
// support moments are the right ones.
func TestDeflectionByVirtualWork(t *testing.T) {
	const stiffness = 3e8 // lb-in²
	rapid.Check(t, func(t *rapid.T) {
		left := rapid.Float64Range(0, 40).Draw(t, "left overhang")
		supports := []float64{left}
		for range rapid.IntRange(1, 4).Draw(t, "spans") {
			supports = append(supports, supports[len(supports)-1]+rapid.Float64Range(40, 200).Draw(t, "span"))
		}
		length := supports[len(supports)-1] + rapid.Float64Range(0, 40).Draw(t, "right overhang")
		place := rapid.Float64Range(0, 1)
		from, to := place.Draw(t, "from")*length, place.Draw(t, "to")*length
		loads := []beam.Load{
			beam.Uniform(0, length, 2),
			beam.Point(place.Draw(t, "rafter")*length, rapid.Float64Range(-500, 900).Draw(t, "force")),
			beam.Linear(min(from, to), max(from, to), rapid.Float64Range(-5, 5).Draw(t, "start"), 12),
		}
		if to == from {
			loads = loads[:2]
		}
		line, err := beam.NewLine(length, supports)
		if err != nil {
			t.Fatal(err)
		}
		p, err := beam.NewPlan(line, [][]beam.Load{loads})
		if err != nil {
			t.Fatal(err)
		}
		size := 1e-9 * 3000 * math.Pow(length, 3) / stiffness
		x := place.Draw(t, "x") * length
		want := deflectionByWork(p, stiffness, x)
		if got := p.At([]float64{1}, stiffness, x).Deflection; math.Abs(got-want) > size {
			t.Fatalf("at %v in: %v in, by virtual work %v", x, got, want)
		}
		for _, s := range supports {
			if moved := deflectionByWork(p, stiffness, s); math.Abs(moved) > size {
				t.Fatalf("the support at %v moves by %v in", s, moved)
			}
		}
	})
}
