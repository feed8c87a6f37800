package cover_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/cover"
)

// What the search leaves out never brings a peak: over random covers the peaks of the
// arrangements that are tried are those of all, for every candidate.
func TestHullKeepsEveryPeak(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		faults, err := cover.HullFaults(randomCover(t))
		if err != nil {
			t.Fatal(err)
		}
		if len(faults) > 0 {
			t.Fatal(faults)
		}
	})
}

// The hull is worth its work: it leaves out most of what there is.
func TestHullLeavesMostOut(t *testing.T) {
	for _, name := range demos {
		kept, all, err := cover.HullSizes(demo(t, name))
		require.NoError(t, err)
		assert.Less(t, kept, all/2, "%s: %d of %d", name, kept, all)
	}
}
