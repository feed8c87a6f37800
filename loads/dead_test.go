package loads_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
)

// Douglas Fir-Larch, G 0.50, at 15 percent moisture: Wood Structural Design Data
// prints 33.6 pcf.
func ExampleDensity() {
	fmt.Printf("%.1f pcf\n", loads.Density(0.50, 15)/calc.PCF)
	// Output: 33.6 pcf
}

// Shingles that are sure to stay and a second layer that may come: all of it acts
// downward, the first alone resists uplift.
func ExampleNewDead() {
	first, _ := loads.LayerNamed("asphalt shingles laminated, 1 layer + felt")
	second, _ := loads.LayerNamed("additional shingle layer")
	d := loads.NewDead([]loads.Part{
		{Weight: first.Weight, Certain: true, Source: first.Source, Status: first.Status},
		{Weight: second.Weight, Source: second.Source, Status: second.Status},
	})
	fmt.Printf("most %.1f psf, least %.1f psf\n", d.Most/calc.PSF, d.Least/calc.PSF)
	// Output: most 5.5 psf, least 3.0 psf
}

func TestDensityPublished(t *testing.T) {
	for _, r := range calctest.Published(t, "density.csv") {
		got := loads.Density(r.Num("G"), r.Num("moisture percent")) / calc.PCF
		calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("species"), r.Text("source"))
	}
}

func TestDensityLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.Float64Range(0.3, 0.75).Draw(t, "G")
		mc := rapid.Float64Range(0, 30).Draw(t, "MC")
		assert.Greater(t, loads.Density(g, mc+1), loads.Density(g, mc), "wetter is heavier")
		assert.Greater(t, loads.Density(g+0.01, mc), loads.Density(g, mc), "denser is heavier")
	})
	calctest.Close(t, 62.4*0.5, loads.Density(0.5, 0)/calc.PCF, 1e-12, 0, "oven-dry: G times the weight of water")
}

func TestLayersTable(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range loads.Layers() {
		assert.False(t, seen[l.Name], "%s twice", l.Name)
		seen[l.Name] = true
		assert.Positive(t, l.Weight, l.Name)
		assert.Less(t, l.Weight, 25*calc.PSF, l.Name)
		assert.NotEmpty(t, l.Source, l.Name)
	}
	assert.Len(t, seen, 46)
}

// A row from memory becomes read, never the other way: the count may only fall.
func TestLayersFromMemoryOnlyFall(t *testing.T) {
	n := 0
	for _, l := range loads.Layers() {
		if l.Status == calc.Recalled {
			n++
		}
	}
	t.Logf("%d of %d layers are from memory", n, len(loads.Layers()))
	assert.LessOrEqual(t, n, 6)
}

func TestLayersIsACopy(t *testing.T) {
	first := loads.Layers()[0].Name
	loads.Layers()[0].Name = "changed"
	assert.Equal(t, first, loads.Layers()[0].Name)
}

func TestLayerNamed(t *testing.T) {
	l, ok := loads.LayerNamed("built-up 4-ply felt and gravel")
	require.True(t, ok)
	calctest.Near(t, 5.5, l.Weight/calc.PSF, 1e-12, l.Source)
	assert.Equal(t, calc.Read, l.Status)
	_, ok = loads.LayerNamed("thatch")
	assert.False(t, ok)
}

func parts(t *rapid.T) []loads.Part {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) loads.Part {
		return loads.Part{
			Weight:  rapid.Float64Range(0, 20).Draw(t, "psf") * calc.PSF,
			Certain: rapid.Bool().Draw(t, "certain"),
			Source:  rapid.SampledFrom([]string{"", "a table"}).Draw(t, "source"),
			Status:  calc.Recalled,
		}
	}), 0, 8).Draw(t, "parts")
}

func TestDeadLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := parts(t)
		d := loads.NewDead(p)
		assert.LessOrEqual(t, d.Least, d.Most, "what is certain is part of all")
		assert.NoError(t, calctest.Prove(d.Lines(p)))
		more := loads.NewDead(append(p, loads.Part{Weight: calc.PSF}))
		assert.Greater(t, more.Most, d.Most)
		assert.Equal(t, d.Least, more.Least, "an uncertain layer never resists uplift")
	})
}

// A weight from memory stays marked in the written sum.
func TestDeadLinesKeepTheStatus(t *testing.T) {
	p := []loads.Part{
		{Weight: 2 * calc.PSF, Certain: true, Source: "ASCE 7-16 Table C3.1-1a", Status: calc.Recalled},
		{Weight: 1 * calc.PSF},
	}
	lines := loads.NewDead(p).Lines(p)
	assert.Equal(t, calc.Recalled, lines[0].Status)
	assert.Equal(t, "w_1 + w_2", lines[2].Formula)
	assert.Equal(t, "w_1", lines[3].Formula)
	assert.Equal(t, 2.0, lines[3].X)
}

var sink float64

func TestDeadAllocatesNothing(t *testing.T) {
	p := []loads.Part{{Weight: 1, Certain: true}, {Weight: 2}}
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink = loads.NewDead(p).Most }))
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink = loads.Density(0.5, 19) }))
}
