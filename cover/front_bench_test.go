package cover

import "testing"

// The space of the benchmarks, small: 2 species, 2 grades, 3 rafter sizes, 2 spacings, 6 beam
// sizes, 2 post counts, 2 post sizes.
func smallOfBench() Space {
	var woods []Wood
	for _, s := range []string{"Douglas Fir-Larch", "Hem-Fir"} {
		for _, g := range []string{"No.1", "No.2"} {
			woods = append(woods, Wood{s, g})
		}
	}
	return Space{
		RafterWoods: woods, RafterSizes: []string{"2x6", "2x8", "2x10"}, Spacings: []float64{16, 24},
		BeamWoods: woods, BeamSizes: []string{"4x8", "4x10", "4x12", "6x8", "6x10", "6x12"}, PostCounts: []int{3, 4},
		PostSizes: []string{"4x4", "6x6"},
	}
}

// BenchmarkFront searches a whole space.
func BenchmarkFront(b *testing.B) {
	in := desert(b)
	in.Foundation = Foundation{Kind: new("footing")}
	b.Run("small", func(b *testing.B) {
		for b.Loop() {
			f, err := Undominated(b.Context(), in, smallOfBench(), Limits{}, nil)
			if err != nil {
				b.Fatal(err)
			}
			kept += f.Points[0].Cost
		}
	})
}

// BenchmarkFrontBrute evaluates one option alone, from the input to whether it holds.
func BenchmarkFrontBrute(b *testing.B) {
	in, s := desert(b), smallOfBench()
	in.Foundation = Foundation{Kind: new("footing")}
	b.Run("one", func(b *testing.B) {
		var all []FrontPoint
		s.visit(func(q FrontPoint) { all = append(all, q) })
		n := 0
		for b.Loop() {
			q := all[n*7919%len(all)]
			n++
			if trialOf(in, &q, Limits{}) {
				kept += q.Cost
			}
		}
	})
}
