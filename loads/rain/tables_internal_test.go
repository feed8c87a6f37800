package rain

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
)

// What must hold of every row of the table of coverings.
func TestEveryCovering(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range coverings {
		assert.False(t, seen[c.Key], c.Key)
		seen[c.Key] = true
		assert.Positive(t, c.Least, c.Key)
		assert.True(t, c.Double == 0 || c.Double > c.Least, c.Key)
		assert.NotEmpty(t, c.Source, c.Key)
		assert.Equal(t, calc.Read, c.Status, "the table was read: its status may not fall")
	}
	assert.Len(t, seen, 10, "each is compared with the print in TestSlopePublished")
}
