package member

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
)

// The rows known from memory only may only become fewer: confirm a row in a text
// that prints it, note that in the table, and lower the number here.
func TestRecalledRowsOnlyFall(t *testing.T) {
	lengths, ends := 0, 0
	for _, r := range lengthRows {
		if r.status == calc.Recalled {
			lengths++
		}
	}
	for _, r := range endRows[FixedFixed:] {
		if r.status == calc.Recalled {
			ends++
		}
	}
	t.Logf("le.csv: %d of %d rows are recalled; ke.csv: %d of %d", lengths, len(lengthRows), ends, len(endRows)-1)
	assert.LessOrEqual(t, lengths, 0)
	assert.LessOrEqual(t, ends, 6)
}

// What must hold of every row of Table 3.3.3: one row for each loading, the two
// expressions meet at lu/d = 7 to 0.2 %, and so do those at 14.3.
func TestEveryEffectiveLength(t *testing.T) {
	assert.Len(t, lengthRows, int(loadings))
	names := map[string]bool{}
	for l := range loadings {
		r := lengthRows[l]
		assert.False(t, names[r.name], r.name)
		names[r.name] = true
		assert.InEpsilon(t, shortReach*r.short, shortReach*r.long+r.depths, 0.002, r.name)
		if r.slender > 0 {
			assert.InEpsilon(t, slenderReach*r.slender, slenderReach*r.long+r.depths, 0.002, r.name)
		}
	}
}

// Every end condition has a row, in the order of the constants.
func TestEveryEndCondition(t *testing.T) {
	for e := FixedFixed; e < endings; e++ {
		assert.NotEmpty(t, endRows[e].source, e.String())
		assert.Positive(t, e.Factor(), e.String())
	}
}
