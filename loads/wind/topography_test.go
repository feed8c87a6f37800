package wind_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads/wind"
)

func TestSpeedUpPublished(t *testing.T) {
	for _, r := range calctest.Published(t, "topography.csv") {
		half := 400 * calc.Ft
		s := wind.NewSpeedUp(wind.Hill{
			Shape: r.Text("shape"), Exposure: "C", Half: half,
			Height: r.Num("H/Lh") * half, Above: r.Num("z/Lh") * half,
		})
		got := s.Shape
		if r.Text("quantity") == "K3" {
			got = s.Rise
		}
		calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("shape"), r.Num("H/Lh"), r.Text("source"))
	}
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

func TestUnknownHillIsNoNumber(t *testing.T) {
	for _, h := range []wind.Hill{
		{Shape: "dune", Exposure: "C", Height: 50 * calc.Ft, Half: 100 * calc.Ft},
		{Shape: "ridge", Exposure: "A", Height: 50 * calc.Ft, Half: 100 * calc.Ft},
		{Height: 50 * calc.Ft, Half: 100 * calc.Ft},
	} {
		s := wind.NewSpeedUp(h)
		assert.True(t, math.IsNaN(s.Factor))
		assert.Error(t, calctest.Prove(s.Lines()), "and cannot be written as if it were known")
		site := place()
		site.Hill = s.Factor
		assert.True(t, math.IsNaN(wind.NewVelocity(site).Pressure), "nothing passes by it")
	}
}

func TestSpeedUpAllocatesNothing(t *testing.T) {
	h := wind.Hill{Shape: "ridge", Exposure: "C", Height: 400, Half: 1000}
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink = wind.NewSpeedUp(h).Factor }))
}
