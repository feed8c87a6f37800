package loads_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/loads"
)

var editions = []loads.Edition{loads.ASCE716, loads.ASCE722}

// named is the combination with the name.
func named(t *testing.T, e loads.Edition, name string) loads.Combination {
	t.Helper()
	for _, c := range loads.ASD(e) {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("%v has no combination %q", e, name)
	return loads.Combination{}
}

func TestEditionNames(t *testing.T) {
	assert.Equal(t, "ASCE 7-16", loads.ASCE716.String())
	assert.Equal(t, "ASCE 7-22", loads.ASCE722.String())
	var zero loads.Edition
	assert.Equal(t, loads.ASCE716, zero)
}

// The factors of ASCE 7-16 and 7-22 2.4.1, for D, Lr, S, W.
func TestCombinations(t *testing.T) {
	for _, c := range []struct {
		edition                    loads.Edition
		name                       string
		dead, live, snow, windward float64
	}{
		{loads.ASCE716, "D", 1, 0, 0, 0},
		{loads.ASCE716, "D + Lr", 1, 1, 0, 0},
		{loads.ASCE716, "D + S", 1, 0, 1, 0},
		{loads.ASCE716, "D + 0.6W", 1, 0, 0, 0.6},
		{loads.ASCE716, "D + 0.75Lr + 0.75(0.6W)", 1, 0.75, 0, 0.45},
		{loads.ASCE716, "D + 0.75S + 0.75(0.6W)", 1, 0, 0.75, 0.45},
		{loads.ASCE716, "0.6D + 0.6W", 0.6, 0, 0, 0.6},
		{loads.ASCE722, "D", 1, 0, 0, 0},
		{loads.ASCE722, "D + Lr", 1, 1, 0, 0},
		{loads.ASCE722, "D + 0.7S", 1, 0, 0.7, 0},
		{loads.ASCE722, "D + 0.6W", 1, 0, 0, 0.6},
		{loads.ASCE722, "D + 0.75Lr + 0.75(0.6W)", 1, 0.75, 0, 0.45},
		{loads.ASCE722, "D + 0.75(0.7S) + 0.75(0.6W)", 1, 0, 0.525, 0.45},
		{loads.ASCE722, "0.6D + 0.6W", 0.6, 0, 0, 0.6},
	} {
		got := named(t, c.edition, c.name)
		assert.InDeltaSlice(t, []float64{c.dead, c.live, c.snow, c.windward},
			[]float64{got.Dead, got.RoofLive, got.Snow, got.Wind}, 1e-12, "%v %s", c.edition, c.name)
	}
}

func TestCombinationsHoldTogether(t *testing.T) {
	for _, e := range editions {
		list := loads.ASD(e)
		require.Len(t, list, 7)
		assert.Equal(t, "D", list[0].Name, "the first is dead load alone")
		for _, c := range list {
			about := e.String() + " " + c.Name
			assert.True(t, strings.HasPrefix(c.Clause, e.String()+" 2.4.1 ("), about)
			assert.False(t, c.RoofLive > 0 && c.Snow > 0, "%s: one of Lr and S at a time", about)
			assert.Equal(t, c.Wind > 0, c.Sense != loads.NoWind, about)
			assert.Equal(t, c.Dead < 1, c.DeadLeast, "%s: the least dead load where it resists", about)
			assert.Equal(t, c.DeadLeast, c.Sense == loads.UpwardOnly, about)
		}
	}
}

// The factors that stand alone are those of the printed combination of uplift.
func TestUpliftFactors(t *testing.T) {
	for _, e := range []loads.Edition{loads.ASCE716, loads.ASCE722} {
		i := slices.IndexFunc(loads.ASD(e), func(c loads.Combination) bool { return c.Name == "0.6D + 0.6W" })
		require.GreaterOrEqual(t, i, 0, e)
		assert.Equal(t, loads.ASD(e)[i].Dead, loads.HoldsDown, e)
		assert.Equal(t, loads.ASD(e)[i].Wind, loads.WindASD, e)
	}
}

// Wind counts both ways in combination 5, downward in 6, upward in 7: upward wind in 6
// would only relieve.
func TestWindSense(t *testing.T) {
	for _, e := range editions {
		assert.Equal(t, loads.EitherWay, named(t, e, "D + 0.6W").Sense)
		assert.Equal(t, loads.Downward, named(t, e, "D + 0.75Lr + 0.75(0.6W)").Sense)
		assert.Equal(t, loads.UpwardOnly, named(t, e, "0.6D + 0.6W").Sense)
		assert.Equal(t, loads.NoWind, named(t, e, "D + Lr").Sense)
		assert.Zero(t, named(t, e, "0.6D + 0.6W").RoofLive+named(t, e, "0.6D + 0.6W").Snow)
	}
}

// Trap: snow of the 2022 edition, of strength level, under the factors of 2016 or the
// other way round. The pressure on the roof differs by the 0.7.
func TestTrapSnowOfTheOtherEdition(t *testing.T) {
	old, young := loads.ASD(loads.ASCE716), loads.ASD(loads.ASCE722)
	for i := range old {
		assert.InDelta(t, 0.7*old[i].Snow, young[i].Snow, 1e-12, old[i].Name)
		assert.Equal(t, old[i].Snow > 0, old[i].Name != young[i].Name, "the name tells the editions apart")
	}
}

// Trap: one load duration factor for the whole member. Each combination takes the
// largest of the loads in it (NDS 2018 2.3.2), so D + Lr, D + S and D alone keep
// their own below the 1.6 of wind.
func TestTrapDurationTakenOnce(t *testing.T) {
	seen := map[float64]bool{}
	for _, e := range editions {
		for _, c := range loads.ASD(e) {
			want := 0.9 // dead load, NDS 2018 Table 2.3.2
			if c.Snow > 0 {
				want = max(want, 1.15)
			}
			if c.RoofLive > 0 {
				want = max(want, 1.25)
			}
			if c.Wind > 0 {
				want = max(want, 1.6)
			}
			assert.Equal(t, want, c.Duration, c.Name)
			seen[c.Duration] = true
		}
	}
	assert.Len(t, seen, 4)
}

func TestASDAllocatesNothing(t *testing.T) {
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink = loads.ASD(loads.ASCE722)[1].RoofLive }))
}
