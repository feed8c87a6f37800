package loads_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
)

var _ calc.Result = loads.SlabRule{}

// The rule of the patio cover appendix: frost depth zero, 3-1/2 in, 750 lb.
func TestSlabRule(t *testing.T) {
	for _, c := range []struct {
		name                string
		force, frost, depth float64
		fault               loads.SlabFault
		ratio               float64
	}{
		{"at the limit", 750, 0, 3.5, loads.SlabSound, 1},
		{"half of it", 375, 0, 4, loads.SlabSound, 0.5},
		{"8 ft by 5 ft of tributary at 22 psf is 880 lb", 880, 0, 3.5, loads.SlabSound, 880.0 / 750},
		{"frost", 100, 6, 3.5, loads.SlabFrost, math.Inf(1)},
		{"thin", 100, 0, 3.25, loads.SlabTooThin, math.Inf(1)},
		{"frost and thin", 100, 12, 2, loads.SlabFrost, math.Inf(1)},
		{"frost unknown", 100, math.NaN(), 3.5, loads.SlabFrost, math.Inf(1)},
		{"thickness unknown", 100, 0, math.NaN(), loads.SlabTooThin, math.Inf(1)},
		{"load unknown", math.NaN(), 0, 3.5, loads.SlabSound, math.Inf(1)},
		{"nothing on it", 0, 0, 3.5, loads.SlabSound, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := loads.NewSlabRule(c.force, c.frost, c.depth, false)
			assert.Equal(t, c.fault, r.Fault)
			assert.Equal(t, c.ratio, r.Ratio())
			assert.Equal(t, r.Ratio(), r.Explain().Ratio())
		})
	}
}

// Trap: 750 lb of live and dead load taken for the building code, which says loads,
// and the frost depth forgotten.
func TestTrapSlabRuleWording(t *testing.T) {
	residential := loads.NewSlabRule(700, 0, 3.5, false).Explain()
	building := loads.NewSlabRule(700, 0, 3.5, true).Explain()
	assert.NoError(t, calctest.Prove(residential.Lines))
	assert.NoError(t, calctest.Prove(building.Lines))
	assert.NotEqual(t, source(t, residential, "P"), source(t, building, "P"), "each wording counts its own loads")
	assert.Contains(t, source(t, residential, "P_lim"), "IRC")
	assert.Contains(t, source(t, building, "P_lim"), "IBC")
	assert.False(t, residential.Recalled())
	assert.True(t, building.Recalled(), "the wording of the building code is from memory")
	assert.Contains(t, source(t, loads.NewSlabRule(1, 12, 3.5, false).Explain(), "P_lim"), "frost depth is not zero")
	assert.Contains(t, source(t, loads.NewSlabRule(1, 0, 3, false).Explain(), "P_lim"), "thinner than 3-1/2 in")
}

// source is the source of the line with the symbol.
func source(t *testing.T, c calc.Check, symbol string) string {
	t.Helper()
	for _, l := range c.Lines {
		if l.Symbol == symbol {
			return l.Source
		}
	}
	t.Fatalf("no line %q", symbol)
	return ""
}

func TestSlabRuleAllocatesNothing(t *testing.T) {
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink = loads.NewSlabRule(700, 0, 4, true).Ratio() }))
}
