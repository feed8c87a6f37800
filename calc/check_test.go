package calc_test

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
)

var (
	inf = math.Inf(1)
	nan = math.NaN()
)

func TestRatio(t *testing.T) {
	cases := []struct {
		name             string
		demand, capacity float64
		want             float64
	}{
		{"half used", 50, 100, 0.5},
		{"exactly used", 100, 100, 1},
		{"over", 150, 100, 1.5},
		{"nothing demanded", 0, 100, 0},
		{"nothing demanded of nothing", 0, 0, 0},
		{"demand the other way", -50, 100, 0},
		{"demand the other way of nothing", -50, 0, 0},
		{"no capacity", 1, 0, inf},
		{"negative capacity", 1, -5, inf},
		{"unknown demand", nan, 100, inf},
		{"unknown capacity", 50, nan, inf},
		{"unknown capacity, nothing demanded", 0, nan, inf},
		{"both unknown", nan, nan, inf},
		{"boundless demand", inf, 100, inf},
		{"boundless demand of boundless capacity", inf, inf, inf},
		{"boundless capacity", 50, inf, 0},
		{"smallest demand of smallest capacity", math.SmallestNonzeroFloat64, math.SmallestNonzeroFloat64, 1},
		{"quotient overflows", math.MaxFloat64, math.SmallestNonzeroFloat64, inf},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.want, calc.Ratio(c.demand, c.capacity))
			assert.Equal(t, c.want, calc.Check{Demand: c.demand, Capacity: c.capacity}.Ratio())
		})
	}
}

// A ratio is a number from 0 up, and never falls when the demand grows.
func TestRatioLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		demand, capacity := rapid.Float64().Draw(t, "demand"), rapid.Float64().Draw(t, "capacity")
		r := calc.Ratio(demand, capacity)
		if !(r >= 0) {
			t.Fatalf("ratio %v of %v over %v", r, demand, capacity)
		}
		more := demand + rapid.Float64Range(0, 1e6).Draw(t, "more")
		if calc.Ratio(more, capacity) < r {
			t.Fatalf("more demand lowered the ratio of %v over %v", demand, capacity)
		}
	})
}

func TestRatioAllocatesNothing(t *testing.T) {
	var sink float64
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink += calc.Ratio(sink+1, 100) }))
}

func TestRecalledIsSeenInAnyLine(t *testing.T) {
	line := func(s calc.Status) calc.Line { return calc.Line{Symbol: "x", Status: s} }
	cases := []struct {
		name  string
		lines []calc.Line
		want  bool
	}{
		{"no lines", nil, false},
		{"read and computed", []calc.Line{line(calc.Read), line(calc.Computed)}, false},
		{"one recalled at the end", []calc.Line{line(calc.Read), line(calc.Recalled)}, true},
		{"a line without a status counts as recalled", []calc.Line{{Symbol: "x"}}, true},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, calc.Check{Lines: c.lines}.Recalled()) })
	}
}

func TestCheckInJSON(t *testing.T) {
	text, err := json.Marshal(bending(833, 1000).Explain())
	require.NoError(t, err)
	assert.JSONEq(t, `{
		"name": "bending", "demand_symbol": "fb", "capacity_symbol": "Fb_adj",
		"demand": 833, "capacity": 1000, "unit": "psi",
		"lines": [
			{"symbol": "fb", "value": 833, "unit": "psi", "source": "test", "status": "read"},
			{"symbol": "Fb_adj", "value": 1000, "unit": "psi", "source": "test", "status": "recalled"}
		]}`, string(text))
	var back calc.Check
	require.NoError(t, json.Unmarshal(text, &back))
	assert.Equal(t, bending(833, 1000).Explain(), back)
}

// stresses is the least thing that is a Result.
type stresses struct{ demand, capacity float64 }

func bending(demand, capacity float64) calc.Result { return stresses{demand, capacity} }

func (b stresses) Ratio() float64 { return calc.Ratio(b.demand, b.capacity) }

func (b stresses) Explain() calc.Check {
	var s calc.Sheet
	s.Given("fb", b.demand, "psi", "test")
	s.Quoted("Fb_adj", b.capacity, "psi", "test", calc.Recalled)
	return s.Check("bending", "fb", "Fb_adj")
}

func BenchmarkRatio(b *testing.B) {
	sink := 0.0
	for b.Loop() {
		sink += calc.Ratio(833, 1000)
	}
	if !(sink > 0) {
		b.Fatal(sink)
	}
}
