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
	t.Parallel()
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

// It never does so for candidates of several species, whose weights at low and at high
// moisture do not go together.
func TestHullOfSeveralSpeciesKeepsEveryPeak(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := smallSpace()
		s.Spacings, s.PostCounts = []float64{24}, nil
		s.RafterWoods = append(s.RafterWoods, cover.Wood{Species: "Western Cedars", Grade: "No.2"})
		s.BeamWoods = append(s.BeamWoods, cover.Wood{Species: "Southern Pine", Grade: "No.2"}, spf)
		faults, err := cover.HullFaultsOfYard(randomCover(t), s)
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
