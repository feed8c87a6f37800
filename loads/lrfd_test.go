package loads_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
)

// methods are the lists of combinations, by the word of the published rows.
var methods = map[string]func(loads.Edition) []loads.Combination{
	"ASD": loads.ASD, "ASD earthquake": loads.ASDEarthquake, "LRFD": loads.LRFD,
}

// everyRow calls f with each row of every list.
func everyRow(f func(method string, e loads.Edition, c loads.Combination)) {
	for _, e := range editions {
		for _, m := range []string{"ASD", "ASD earthquake", "LRFD"} {
			for _, c := range methods[m](e) {
				f(m, e, c)
			}
		}
	}
}

// The published rows and the lists are the same, row by row, in the same order.
func TestCombinationsPublished(t *testing.T) {
	at := map[string]int{}
	for _, r := range calctest.Published(t, "combinations.csv") {
		edition := loads.ASCE716
		if r.Text("edition") == loads.ASCE722.String() {
			edition = loads.ASCE722
		}
		list := methods[r.Text("method")](edition)
		key := r.Text("method") + r.Text("edition")
		require.Less(t, at[key], len(list), key)
		c := list[at[key]]
		at[key]++
		assert.Equal(t, r.Text("name"), c.Name)
		assert.Equal(t, r.Text("edition")+" "+r.Text("number"), c.Clause, c.Name)
		assert.Equal(t, r.Status(), c.Status, "%s: the status is that of the published row", c.Clause)
		for column, got := range map[string]float64{
			"want D": c.Dead, "want Lr": c.RoofLive, "want S": c.Snow, "want W": c.Wind,
			"want Eh": c.Earthquake, "want Ev": c.EarthquakeUp,
		} {
			calctest.Near(t, r.Num(column), got, r.Num("within"), column, c.Clause, c.Name, r.Text("source"))
		}
	}
	for _, e := range editions {
		for m, list := range methods {
			assert.Len(t, list(e), at[m+e.String()], "%s %v has rows that no published row stands for", m, e)
		}
	}
}

// fullLoad is the load that has its whole factor in a row of strength design, by the
// word of the published time effect factors: the one that acts shortest.
func fullLoad(c loads.Combination) string {
	switch {
	case c.Earthquake != 0:
		return "earthquake"
	case c.Wind == 1:
		return "wind"
	case c.RoofLive >= 1 || c.Snow >= 1:
		return "roof"
	}
	return "dead"
}

func TestTimeEffectPublished(t *testing.T) {
	seen := map[string]bool{}
	rows := calctest.Published(t, "time_effect.csv")
	for _, r := range rows {
		for _, e := range editions {
			for _, c := range loads.LRFD(e) {
				if fullLoad(c) == r.Text("full") {
					seen[r.Text("full")] = true
					calctest.Near(t, r.Num("want"), c.TimeEffect, r.Num("within"), c.Clause, c.Name, r.Text("source"))
				}
			}
		}
	}
	assert.Len(t, seen, len(rows), "a published factor that no row uses")
}

// Trap 16: one duration factor for the member. In allowable stress design each row has
// its own C_D and no lambda, in strength design its own lambda and no C_D: wind in a
// row of half of it does not make a roof load short (NDS 2018 Table 2.3.2, Table N3).
func TestTrapDurationAndTimeEffectByRow(t *testing.T) {
	everyRow(func(m string, e loads.Edition, c loads.Combination) {
		if m != "LRFD" {
			assert.Zero(t, c.TimeEffect, c.Clause)
			assert.Contains(t, []float64{0.9, 1.15, 1.25, 1.6}, c.Duration, c.Clause)
			assert.Equal(t, c.Wind != 0 || c.Earthquake != 0, c.Duration == 1.6, c.Clause)
			return
		}
		assert.Zero(t, c.Duration, c.Clause)
		assert.Equal(t, c.Wind == 1 || c.Earthquake == 1, c.TimeEffect == 1, c.Clause)
	})
	for _, e := range editions {
		lambda := map[string]float64{}
		for _, c := range loads.LRFD(e) {
			lambda[c.Name] = c.TimeEffect
		}
		assert.Equal(t, 0.6, lambda["1.4D"])
		assert.Equal(t, 0.8, lambda["1.2D + 1.6Lr"])
		assert.Equal(t, 0.8, lambda["1.2D + 1.6Lr + 0.5W"], "half the wind is a companion")
		assert.Equal(t, 1.0, lambda["1.2D + 1.0W + 0.5Lr"])
	}
}

// Companions: never roof live load and snow together, never wind and earthquake; with
// wind in full, roof load at its companion share and downward only; with roof load in
// full, half the wind; where dead load resists, nothing else presses down.
func TestCompanions(t *testing.T) {
	share := map[loads.Edition][2]float64{loads.ASCE716: {0.5, 0.5}, loads.ASCE722: {0.5, 0.3}}
	everyRow(func(m string, e loads.Edition, c loads.Combination) {
		assert.False(t, c.RoofLive != 0 && c.Snow != 0, c.Clause)
		assert.False(t, c.Wind != 0 && c.Earthquake != 0, c.Clause)
		assert.Equal(t, c.Wind != 0, c.Sense != loads.NoWind, c.Clause)
		assert.Equal(t, c.Dead < 1, c.DeadLeast, c.Clause)
		if c.DeadLeast {
			assert.Zero(t, c.RoofLive+c.Snow, c.Clause)
			assert.LessOrEqual(t, c.EarthquakeUp, -c.Earthquake, "an earthquake lifts where dead load resists: %s", c.Clause)
		}
		if m != "LRFD" || c.Wind == 0 || c.DeadLeast {
			return
		}
		assert.Equal(t, loads.Downward, c.Sense, c.Clause)
		if c.Wind == 1 {
			assert.InDelta(t, 1, c.RoofLive/share[e][0]+c.Snow/share[e][1], 1e-12, c.Clause)
			return
		}
		assert.Equal(t, 0.5, c.Wind, c.Clause)
		assert.GreaterOrEqual(t, c.RoofLive+c.Snow, 1.0, c.Clause)
	})
}

// Trap: snow of one edition under the factors of the other, where snow of 2022 is of
// strength level: 1.0 in full where 2016 has 1.6, 0.3 as companion of wind for 0.5, 0.7
// in allowable stress design for 1.0, and with an earthquake 0.15 for 0.2 and 0.1 for
// 0.75. Nothing else tells the editions apart.
func TestTrapSnowFactorsOfTheEditions(t *testing.T) {
	want := map[float64]float64{1.6: 1, 0.5: 0.3, 1: 0.7, 0.75: 0.75 * 0.7, 0.2: 0.15, 0: 0}
	for m, list := range methods {
		old, young := list(loads.ASCE716), list(loads.ASCE722)
		require.Len(t, young, len(old))
		for i, c := range old {
			snow := want[c.Snow]
			if m == "ASD earthquake" && c.Snow != 0 {
				snow = 0.1
			}
			assert.InDelta(t, snow, young[i].Snow, 1e-12, c.Clause)
			c.Name, c.Clause, c.Snow, c.Status = young[i].Name, young[i].Clause, young[i].Snow, young[i].Status
			assert.Equal(t, c, young[i])
		}
	}
}

// The earthquake works both ways: what presses down in one row lifts in another with
// the same factor, and the part up and down goes with the part sideways.
func TestEarthquakeIsSymmetric(t *testing.T) {
	for _, e := range editions {
		for _, list := range [][]loads.Combination{loads.ASDEarthquake(e), loads.LRFD(e)} {
			down, up := 0.0, 0.0
			for _, c := range list {
				assert.Equal(t, c.Earthquake, max(c.EarthquakeUp, -c.EarthquakeUp), c.Clause)
				down, up = max(down, c.EarthquakeUp), min(up, c.EarthquakeUp)
			}
			assert.Positive(t, down)
			assert.Equal(t, down, -up, e)
		}
		for _, c := range loads.ASD(e) {
			assert.Zero(t, c.Earthquake+c.EarthquakeUp, c.Clause)
		}
	}
}

// Combination (2) of strength design, without floor live load, is left out because (3)
// or dead load alone asks at least as much of the wood, for any loads: demand over
// lambda, which for (2) is 0.8 as with floor live load of occupancy.
func TestRowsWithoutFloorLoadCoverCombinationTwo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dead := rapid.Float64Range(0.1, 50).Draw(t, "D psf")
		roof := rapid.Float64Range(0, 100).Draw(t, "Lr or S psf")
		for _, e := range editions {
			companion := (1.2*dead + 0.5*roof) / 0.8 // ASCE 7-16 2.3.1 (2), L = 0
			most := 0.0
			for _, c := range loads.LRFD(e) {
				if c.Wind == 0 && c.Earthquake == 0 {
					most = max(most, (c.Dead*dead+(c.RoofLive+c.Snow)*roof)/c.TimeEffect)
				}
			}
			if most < companion {
				t.Fatalf("%v: %g below %g", e, most, companion)
			}
		}
	})
}

// A row of strength design asks more than its counterpart of allowable stress design,
// for any loads; else the two lists would not be of one standard.
func TestStrengthIsAboveAllowableStress(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := rapid.SampledFrom(editions).Draw(t, "edition")
		acts := [5]float64{}
		for i := range acts {
			acts[i] = rapid.Float64Range(0, 60).Draw(t, "load")
		}
		asd := most(append(append([]loads.Combination{}, loads.ASD(e)...), loads.ASDEarthquake(e)...), acts)
		if strength := most(loads.LRFD(e), acts); strength < asd {
			t.Fatalf("%g in strength design, %g in allowable stress design", strength, asd)
		}
	})
}

// most is the largest sum that presses down, for D, Lr, S, W down, and Ev.
func most(list []loads.Combination, x [5]float64) float64 {
	out := 0.0
	for _, c := range list {
		out = max(out, c.Dead*x[0]+c.RoofLive*x[1]+c.Snow*x[2]+c.Wind*x[3]+c.EarthquakeUp*x[4])
	}
	return out
}

// Every clause names its edition and the section of its method; names are unique.
func TestCombinationNames(t *testing.T) {
	section := map[string][]string{"ASD": {"2.4.1"}, "ASD earthquake": {"2.4.5"}, "LRFD": {"2.3.1", "2.3.6"}}
	seen := map[string]bool{}
	everyRow(func(m string, e loads.Edition, c loads.Combination) {
		cited, _, _ := strings.Cut(strings.TrimPrefix(c.Clause, e.String()+" "), " (")
		assert.Contains(t, section[m], cited, c.Clause)
		assert.False(t, seen[e.String()+c.Name], "%v %s twice", e, c.Name)
		assert.NotContains(t, c.Name, ",", "what stands behind a comma is no part of the name")
		seen[e.String()+c.Name] = true
	})
}

// How many rows are from memory: the number may only fall.
func TestRecalledCombinations(t *testing.T) {
	recalled := 0
	everyRow(func(_ string, _ loads.Edition, c loads.Combination) {
		if c.Status == calc.Recalled {
			recalled++
		}
	})
	t.Logf("%d rows are recalled: ASCE 7-22 2.3.6 and 2.4.5", recalled)
	assert.LessOrEqual(t, recalled, 6)
}

func TestLRFDAllocatesNothing(t *testing.T) {
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink = loads.LRFD(loads.ASCE722)[1].RoofLive + loads.ASDEarthquake(loads.ASCE722)[0].Earthquake
	}))
}

// The combinations of ASCE 7-16 2.3.1 and 2.3.6 with the time effect factor of NDS
// 2018 Table N3.
func ExampleLRFD() {
	for _, c := range loads.LRFD(loads.ASCE716) {
		fmt.Printf("%-22s %.1f\n", c.Name, c.TimeEffect)
	}
	// Output:
	// 1.4D                   0.6
	// 1.2D + 1.6Lr           0.8
	// 1.2D + 1.6S            0.8
	// 1.2D + 1.6Lr + 0.5W    0.8
	// 1.2D + 1.6S + 0.5W     0.8
	// 1.2D + 1.0W + 0.5Lr    1.0
	// 1.2D + 1.0W + 0.5S     1.0
	// 0.9D + 1.0W            1.0
	// 1.2D + Ev + Eh         1.0
	// 1.2D + Ev + Eh + 0.2S  1.0
	// 0.9D - Ev + Eh         1.0
}
