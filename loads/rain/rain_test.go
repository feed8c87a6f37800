package rain_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads/rain"
)

// Least slopes as read in the California Residential Code 2013, R905.
func TestSlopePublished(t *testing.T) {
	cases := []struct {
		key   string
		least float64 // in/ft
	}{
		{"asphalt_shingle", 2}, {"tile", 2.5}, {"metal_shingle", 3}, {"mineral_roll", 1}, {"slate", 4}, {"wood_shingle", 3},
		{"membrane", 0.25}, {"metal_panel", 3}, {"metal_panel_sealed", 0.5}, {"standing_seam", 0.25},
	}
	for _, c := range cases {
		row, ok := rain.CoveringOf(c.key)
		assert.True(t, ok, c.key)
		calctest.Near(t, c.least, row.Least, 0, c.key)
		assert.LessOrEqual(t, rain.NewSlope(row, c.least).Ratio(), 1.0)
		assert.Greater(t, rain.NewSlope(row, c.least-0.1).Ratio(), 1.0)
	}
	_, ok := rain.CoveringOf("straw")
	assert.False(t, ok)
	tile, _ := rain.CoveringOf("tile")
	assert.True(t, rain.NewSlope(tile, 3).Doubled())
	assert.False(t, rain.NewSlope(tile, 4).Doubled())
}

// The closed form against a beam that fills with water step by step: a fixed point of
// sag and load, integrated numerically for a half sine wave.
func TestPondingAgainstIteration(t *testing.T) {
	p := rain.NewPonding(24, 240, 3.2e8)
	sag, first := 1.0, 1.0
	for range 200 {
		load := 62.4 * calc.PCF * p.Width * sag                        // amplitude, lb/in
		sag = first + load*math.Pow(p.Span/math.Pi, 4)/(p.Stiffness/2) // half sine on a simple beam
	}
	calctest.Close(t, sag, p.Growth, 1e-9, 0)
}

func TestPondingLaws(t *testing.T) {
	assert.True(t, math.IsInf(rain.NewPonding(120, 360, 1e6).Growth, 1), "unstable")
	assert.Greater(t, rain.NewPonding(120, 360, 1e6).Ratio(), 1.0)
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(12, 200).Draw(t, "width")
		l := rapid.Float64Range(24, 300).Draw(t, "span")
		ei := rapid.Float64Range(1e6, 1e9).Draw(t, "EI")
		p := rain.NewPonding(w, l, ei)
		if err := calctest.Prove(p.Explain().Lines); err != nil {
			t.Fatal(err)
		}
		stiffer, longer := rain.NewPonding(w, l, ei*2).Ratio(), rain.NewPonding(w, l+1, ei).Ratio()
		if p.Explain().Ratio() != p.Ratio() || stiffer > p.Ratio() || longer < p.Ratio() {
			t.Fatal("not monotone")
		}
		if (p.Ratio() <= 1) != (p.Growth <= 1.1+1e-9) {
			t.Fatalf("ratio %v but growth %v", p.Ratio(), p.Growth)
		}
	})
}

// End slope of a uniformly loaded simple beam: wL³/24EI, with sag 5wL⁴/384EI (AWC
// Design Aid No. 6, Fig. 1, from memory).
func TestFallByBeamFormula(t *testing.T) {
	w, l, ei := 10.0, 120.0, 3.2e7
	f := rain.NewFall(0.02, 5*w*math.Pow(l, 4)/(384*ei), l)
	calctest.Close(t, w*l*l*l/(24*ei), f.Turn, 1e-12, 0)
	assert.NoError(t, calctest.Prove(f.Explain().Lines))
	assert.Equal(t, f.Ratio(), f.Explain().Ratio())
}

func TestChecksAllocateNothing(t *testing.T) {
	var sink float64
	row, _ := rain.CoveringOf("membrane")
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink += rain.NewPonding(24, 120, 3e7).Ratio() + rain.NewFall(0.02, 0.3, 120).Ratio() + rain.NewSlope(row, 0.5).Ratio()
	}))
}

// One inch an hour on 100 square feet.
func ExampleFlow() {
	fmt.Printf("%.2f gpm\n", rain.Flow(100*calc.SqFt, 1))
	// Output: 1.04 gpm
}
