package dowel

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
)

// The rows known from memory only may only become fewer: confirm a row in a text that
// prints it, note that in the table, and lower the number here.
func TestRecalledRowsOnlyFall(t *testing.T) {
	recalled := 0
	count := func(s calc.Status) {
		if s == calc.Recalled {
			recalled++
		}
	}
	sizes := append(append(append(Nails(), Screws()...), Lags()...), Bolts()...)
	for _, f := range sizes {
		count(f.status)
	}
	for _, r := range yieldRows {
		count(r.status)
	}
	for _, r := range hardRows {
		count(r.status)
	}
	for _, r := range wetRows {
		count(r.status)
	}
	for _, r := range heatRows {
		count(r.status)
	}
	for _, r := range distanceRows {
		count(r.status)
	}
	for _, r := range gaugeRows {
		count(r.status)
	}
	t.Logf("%d rows of the tables of dowels are recalled", recalled)
	assert.LessOrEqual(t, recalled, 83)
}

// What must hold of every size: a root no thicker than the shank, a bending yield
// strength, no name twice.
func TestEverySize(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range append(append(append(Nails(), Screws()...), Lags()...), Bolts()...) {
		assert.False(t, seen[f.Name], f.Name)
		seen[f.Name] = true
		assert.LessOrEqual(t, f.Root, f.Diameter, f.Name)
		assert.Positive(t, f.Root, f.Name)
		assert.GreaterOrEqual(t, f.Yield, 45000.0, f.Name)
		assert.LessOrEqual(t, f.Yield, 100000.0, f.Name)
	}
	for i := 1; i < len(lagLengths); i++ {
		assert.Greater(t, lagLengths[i].length, lagLengths[i-1].length)
		assert.LessOrEqual(t, lagLengths[i].thread, lagLengths[i].length)
	}
}

// Every kind has a row of C_M for every condition.
func TestEveryConditionHasItsFactor(t *testing.T) {
	for kind := Nail; kind <= Bolt; kind++ {
		for _, c := range []Conditions{
			{}, {Fabricated: Wet}, {Service: Wet}, {Fabricated: Wet, Service: Wet},
			{Rows: true}, {Rows: true, Fabricated: Wet}, {Rows: true, Service: Wet},
		} {
			f := newFactors(kind, c)
			assert.NotEmpty(t, f.wet.source, "%v %+v", kind, c)
			assert.NotEmpty(t, f.heat.source, "%v %+v", kind, c)
		}
	}
}

// The thread of a lag screw is half of its length and 1/2 in, at most 6 in (ASME B18.2.1, as
// an engineering handbook prints it); where the wood standard has another value it is the
// shorter.
func TestThreadOfALagScrew(t *testing.T) {
	for _, l := range lagLengths {
		formula := min(l.length/2+0.5, 6)
		if l.status == calc.Computed {
			assert.InDelta(t, formula, l.thread, 1e-9, "%v in", l.length)
		}
		assert.LessOrEqual(t, l.thread, formula, "%v in", l.length)
	}
}

// Roots of lag screws as ASME B18.2.1 prints them.
func TestRootsOfLagScrews(t *testing.T) {
	printed := map[float64]float64{
		0.25: 0.173, 0.3125: 0.227, 0.375: 0.265, 0.4375: 0.328, 0.5: 0.371, 0.625: 0.471, 0.75: 0.579, 0.875: 0.683, 1: 0.780,
	}
	assert.Len(t, Lags(), len(printed))
	for _, f := range Lags() {
		assert.InDelta(t, printed[f.Diameter], f.Root, 5e-4, f.Name)
	}
}
