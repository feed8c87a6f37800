package wind_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads/wind"
)

// Printed multipliers of the figure, two decimals: K1 of a ridge in exposure C at
// H/Lh = 0.40, and K3 of a ridge at z/Lh = 0.20 (ASCE 7-05 figure in a foreign reprint,
// the same as ASCE 7-16 Fig. 26.8-1).
func TestSpeedUpPublished(t *testing.T) {
	s := wind.NewSpeedUp(wind.Hill{Shape: "ridge", Exposure: "C", Height: 40, Half: 100, Above: 20})
	calctest.Near(t, 0.58, s.Shape, 0.005, "K1")
	calctest.Near(t, 0.55, s.Rise, 0.005, "K3")
}

func TestSpeedUpByHand(t *testing.T) {
	cases := []struct {
		name string
		hill wind.Hill
		want float64 // Kzt by eq. 26.8-1, by hand
	}{
		{"crest", wind.Hill{Shape: "hill", Exposure: "B", Height: 20, Half: 100}, (1 + 0.19) * (1 + 0.19)},
		{"beyond reach upwind", wind.Hill{Shape: "ridge", Exposure: "D", Height: 20, Half: 100, Distance: 150}, 1},
		{"downwind of an escarpment", wind.Hill{Shape: "escarpment", Exposure: "C", Height: 20, Half: 100, Distance: 200, Downwind: true},
			(1 + 0.17*0.5) * (1 + 0.17*0.5)},
		{"steep", wind.Hill{Shape: "ridge", Exposure: "C", Height: 100, Half: 100}, (1 + 0.725) * (1 + 0.725)},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			calctest.Near(t, c.want, wind.NewSpeedUp(c.hill).Factor, 1e-12)
		})
	}
}

func TestSpeedUpIsProvedAndMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := wind.Hill{
			Shape:    rapid.SampledFrom([]string{"ridge", "escarpment", "hill"}).Draw(t, "shape"),
			Exposure: rapid.SampledFrom([]string{"B", "C", "D"}).Draw(t, "exposure"),
			Height:   rapid.Float64Range(15, 1000).Draw(t, "height") * calc.Ft,
			Half:     rapid.Float64Range(20, 5000).Draw(t, "half") * calc.Ft,
			Distance: rapid.Float64Range(0, 5000).Draw(t, "distance") * calc.Ft,
			Downwind: rapid.Bool().Draw(t, "downwind"), Above: rapid.Float64Range(8, 30).Draw(t, "z") * calc.Ft,
		}
		s := wind.NewSpeedUp(h)
		if err := calctest.Prove(s.Lines()); err != nil {
			t.Fatal(err)
		}
		if s.Factor < 1 {
			t.Fatalf("Kzt %v below 1", s.Factor)
		}
		far := h
		far.Distance += 10 * calc.Ft
		if wind.NewSpeedUp(far).Factor > s.Factor {
			t.Fatal("farther from the crest the wind is faster")
		}
	})
}

func TestSpeedUpAllocatesNothing(t *testing.T) {
	var sink float64
	h := wind.Hill{Shape: "ridge", Exposure: "C", Height: 400, Half: 1000}
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink += wind.NewSpeedUp(h).Factor }))
}
