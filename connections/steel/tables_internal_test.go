package steel

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
)

// The number of rows from memory may only fall.
func TestRecalledRows(t *testing.T) {
	recalled := 0
	for _, s := range stocks {
		if s.status == calc.Recalled {
			recalled++
		}
	}
	last := 0.0
	for _, r := range edgeRows {
		if r.status == calc.Recalled {
			recalled++
		}
		assert.Greater(t, r.least, r.diameter, "an edge is more than the bolt away")
		assert.Greater(t, r.diameter, last, "ascending")
		last = r.diameter
	}
	t.Logf("%d rows of the tables of steel are recalled", recalled)
	assert.LessOrEqual(t, recalled, 5)
}
