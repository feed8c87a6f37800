package diaphragm

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
)

// The values for wind are those for earthquake raised by 40 percent (IBC 2306.2, read in
// the text of a state's building code), to the nearest 5 plf; thicker panels and more
// nails are never weaker.
func TestTables(t *testing.T) {
	recalled := 0
	all := append([]Nominal{}, straight)
	for i, r := range rows {
		all = append(all, r.Unblocked, r.Blocked, r.Close)
		assert.Less(t, r.Unblocked.Earthquake, r.Blocked.Earthquake, r.Nail)
		assert.Less(t, r.Blocked.Earthquake, r.Close.Earthquake, r.Nail)
		if i > 0 {
			before := rows[i-1]
			assert.Less(t, before.Unblocked.Earthquake, r.Unblocked.Earthquake, "the weakest first")
		}
	}
	for _, n := range all {
		assert.InDelta(t, 1.4*n.Earthquake/calc.PLF, n.Wind/calc.PLF, 2.5, n.Source)
		if n.Status == calc.Recalled {
			recalled++
		}
	}
	t.Logf("%d recalled pairs of unit shears", recalled)
	assert.LessOrEqual(t, recalled, 22)
}
