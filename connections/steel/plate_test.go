package steel_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/connections/steel"
)

var sink float64

// stock is a thickness that is sold.
func stock(t testing.TB, thickness float64) steel.Stock {
	for _, s := range steel.Stocks() {
		if s.Thickness == thickness {
			return s
		}
	}
	t.Fatalf("no plate of %v in", thickness)
	return steel.Stock{}
}

var limitNames = map[string]steel.Limit{
	"yielding": steel.Yielding, "rupture": steel.Rupture, "block": steel.Block, "bearing": steel.Bearing,
	"shear": steel.Shearing, "buckling": steel.Buckling,
}

func TestPlatePublished(t *testing.T) {
	for _, r := range calctest.Published(t, "steel_plate.csv") {
		p := steel.NewPlate(1000, steel.Shape{
			Stock: stock(t, r.Num("t in")), Width: r.Num("w in"), Diameter: r.Num("D in"), Count: int(r.Num("n")),
			Spacing: r.Num("s in"), End: r.Num("e in"), Free: r.Num("L in"),
		})
		calctest.Near(t, r.Num("want"), p.Allowed[limitNames[r.Text("limit")]], r.Num("within"), r.Text("source"))
	}
}

// drawn is a pair of plates of any kind.
func drawn(t *rapid.T) steel.Shape {
	return steel.Shape{
		Stock:    rapid.SampledFrom(steel.Stocks()).Draw(t, "stock"),
		Width:    rapid.Float64Range(1, 6).Draw(t, "width"),
		Diameter: rapid.SampledFrom([]float64{0.5, 0.625, 0.75, 0.875, 1}).Draw(t, "diameter"),
		Count:    rapid.IntRange(1, 6).Draw(t, "count"), Spacing: rapid.Float64Range(1, 8).Draw(t, "spacing"),
		End: rapid.Float64Range(0.5, 4).Draw(t, "end"), Free: rapid.Float64Range(0, 40).Draw(t, "free"),
	}
}

func TestPlateIsWrittenAsItIsFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := steel.NewPlate(rapid.Float64Range(1, 30000).Draw(t, "force"), drawn(t))
		check := p.Explain()
		assert.NoError(t, calctest.Prove(check.Lines))
		assert.Equal(t, p.Ratio(), check.Ratio())
		assert.True(t, check.Recalled(), "the steel is from memory")
	})
}

// A thicker or wider plate is never weaker, a longer free length never stronger, and the
// ratio goes with the force.
func TestPlateLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := drawn(r)
		p := steel.NewPlate(1000, s)
		wide, long := s, s
		wide.Width++
		long.Free++
		assert.GreaterOrEqual(t, steel.NewPlate(1000, wide).Capacity, p.Capacity)
		assert.LessOrEqual(t, steel.NewPlate(1000, long).Capacity, p.Capacity)
		assert.Equal(t, p.Capacity, steel.NewPlate(-1000, s).Capacity, "it pulls and presses in turn")
		if p.Limit != steel.NoValue {
			calctest.Close(t, 2*p.Ratio(), steel.NewPlate(2000, s).Ratio(), 1e-12, 0)
		}
	})
}

// Trap: a thin plate taken at its yield in compression. Over a free length of 12 in a plate
// of 1/4 in buckles far below.
func TestTrapPlatesBuckle(t *testing.T) {
	s := steel.Shape{Stock: stock(t, 0.25), Width: 3, Diameter: 0.5, Count: 2, Spacing: 2, End: 1, Free: 12}
	p := steel.NewPlate(1000, s)
	slender := 1.2 * 12 / (0.25 / math.Sqrt(12))
	calctest.Close(t, 0.877*math.Pi*math.Pi*29e6/(slender*slender)*1.5/1.67, p.Allowed[steel.Buckling], 1e-12, 0, "eq. E3-3")
	assert.Less(t, p.Allowed[steel.Buckling], p.Allowed[steel.Yielding]/4)
	assert.Equal(t, steel.Buckling, p.Limit)
}

// Trap: a hole too near the edge of the plate given a value all the same.
func TestTrapPlateEdge(t *testing.T) {
	ok := steel.Shape{Stock: stock(t, 0.25), Width: 3, Diameter: 0.5, Count: 2, Spacing: 2, End: 0.75}
	assert.Positive(t, steel.NewPlate(1, ok).Capacity)
	for name, change := range map[string]func(*steel.Shape){
		"end": func(s *steel.Shape) { s.End = 0.74 }, "edge": func(s *steel.Shape) { s.Width = 1.48 },
		"spacing": func(s *steel.Shape) { s.Spacing = 1.3 }, "size": func(s *steel.Shape) { s.Diameter = 0.4 },
		"none": func(s *steel.Shape) { s.Count = 0 },
	} {
		s := ok
		change(&s)
		p := steel.NewPlate(1, s)
		assert.Equal(t, steel.NoValue, p.Limit, name)
		assert.True(t, math.IsInf(p.Ratio(), 1), name)
	}
}

func TestPlateAllocatesNothing(t *testing.T) {
	s := steel.Shape{Stock: stock(t, 0.25), Width: 3, Diameter: 0.5, Count: 2, Spacing: 2, End: 1, Free: 12}
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink = steel.NewPlate(1000, s).Ratio() }))
}

// The thicknesses ascend.
func TestStocks(t *testing.T) {
	last := 0.0
	for _, s := range steel.Stocks() {
		assert.Greater(t, s.Thickness, last, s.Name)
		last = s.Thickness
	}
}

// Two plates of 1/4 in by 3 in with two 1/2 in bolts: 36 ksi on 1.5 in² over 1.67.
func ExampleNewPlate() {
	p := steel.NewPlate(5000, steel.Shape{
		Stock: steel.Stocks()[1], Width: 3 * calc.In, Diameter: 0.5 * calc.In, Count: 2, Spacing: 2 * calc.In, End: 1 * calc.In,
	})
	fmt.Printf("yielding %.0f lb, rupture %.0f lb\n", p.Allowed[steel.Yielding], p.Allowed[steel.Rupture])
	// Output: yielding 32335 lb, rupture 34438 lb
}
