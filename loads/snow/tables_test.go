package snow

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
	"patiocover/loads"
)

// What must hold of every row, whatever its source.
func TestTables(t *testing.T) {
	seen := map[string]bool{}
	for _, rows := range [][]factor{exposures, thermalFactors} {
		for _, r := range rows {
			assert.False(t, seen[r.key+r.name], "%s %s twice", r.key, r.name)
			seen[r.key+r.name] = true
			assert.True(t, 0.7 <= r.value && r.value <= 1.3, "%s %s", r.key, r.name)
			assert.NotEmpty(t, r.source)
		}
	}
	for _, terrain := range []string{"B", "C", "D"} {
		before := 0.0
		for s := FullyExposed; s <= Sheltered; s++ {
			i := find(exposures, terrain, s.String())
			if assert.GreaterOrEqual(t, i, 0, "%s %s", terrain, s) {
				assert.Greater(t, exposures[i].value, before, "less wind holds more snow")
				before = exposures[i].value
			}
		}
	}
	for _, e := range []loads.Edition{loads.ASCE716, loads.ASCE722} {
		assert.GreaterOrEqual(t, find(thermalFactors, e.String(), OpenAir.String()), 0)
		for c := RiskI; c <= RiskIV; c++ {
			assert.GreaterOrEqual(t, findCategory(e, c), 0)
		}
	}
	for _, s := range slopes {
		assert.Less(t, s.full, s.none)
	}
}

// The rows still from memory: their number may only fall.
func TestRecalledRows(t *testing.T) {
	recalled := 0
	count := func(s calc.Status) {
		if s == calc.Recalled {
			recalled++
		}
	}
	for _, rows := range [][]factor{exposures, thermalFactors} {
		for _, r := range rows {
			count(r.status)
		}
	}
	for _, c := range categories {
		count(c.status)
		count(c.rainStatus)
	}
	for _, s := range slopes {
		count(s.status)
	}
	t.Logf("%d rows are recalled", recalled)
	assert.LessOrEqual(t, recalled, 5)
}
