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
	assert.LessOrEqual(t, recalled, 99)
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
