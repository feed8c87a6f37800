package cover_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
)

// shaken is the simple cover where the earth shakes, with snow on it, psf.
func shaken(standard string, snow float64) cover.Input {
	in := simple()
	in.Site.Standard, in.Site.RoofSnow = &standard, &snow
	if standard == "ASCE 7-22" {
		in.Site.RoofSnowBasis = new("strength")
	}
	in.Site.SeismicCategory, in.Site.SeismicShort = new("D"), new(1.0)
	in.Site.SeismicSecond, in.Site.SeismicMapped = new(0.6), new(0.5)
	return in
}

// factorRow is the row of factors with the name.
func factorRow(t testing.TB, r cover.Report, name string) cover.CombinationLine {
	t.Helper()
	for _, c := range r.Loads.Combinations {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no combination %q", name)
	return cover.CombinationLine{}
}

// The rows stand in the order in use, earthquake, strength design; those of strength
// design are never used, those of the earthquake where the site gives its values.
func TestCombinationsAreListed(t *testing.T) {
	cases := []struct {
		name             string
		in               cover.Input
		asd, quake, lrfd int
		used             int
	}{
		{"no snow, no earthquake", simple(), 5, 2, 7, 5},
		{"snow and earthquake, 7-16", shaken("ASCE 7-16", 30), 7, 3, 11, 10},
		{"snow and earthquake, 7-22", shaken("ASCE 7-22", 30), 7, 3, 11, 10},
		{"earthquake without snow", shaken("ASCE 7-16", 0), 5, 2, 7, 7},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			used, order := 0, ""
			for _, row := range size(t, c.in).Loads.Combinations {
				switch {
				case row.Method == "LRFD":
					order += "L"
					assert.Equal(t, row.Earthquake == 0 || c.in.Site.SeismicCategory != nil, row.Used, row.Name)
					assert.Zero(t, row.Duration, row.Name)
					assert.Positive(t, row.TimeEffect, row.Name)
				case row.Earthquake != 0:
					order += "E"
					assert.Equal(t, 1.6, row.Duration, row.Name)
				default:
					order += "A"
					assert.True(t, row.Used, row.Name)
				}
				if row.Used && row.Method == "ASD" {
					used++
				}
				assert.False(t, row.Snow != 0 && *c.in.Site.RoofSnow == 0, "%s names snow that there is not", row.Name)
			}
			want := strings.Repeat("A", c.asd) + strings.Repeat("E", c.quake) + strings.Repeat("L", c.lrfd)
			assert.Equal(t, want, order)
			assert.Equal(t, c.used, used)
		})
	}
}

// Trap 16: one duration factor for all rows. Each row used has its own C_D, and a row
// of strength design has lambda in its place (NDS 2018 Table 2.3.2, Table N3).
func TestTrapStrengthRowsHaveNoDuration(t *testing.T) {
	r := size(t, shaken("ASCE 7-16", 30))
	for name, want := range map[string][2]float64{
		"D": {0.9, 0}, "D + S": {1.15, 0}, "D + 0.7Ev + 0.7Eh": {1.6, 0},
		"1.4D": {0, 0.6}, "1.2D + 1.6S + 0.5W": {0, 0.8}, "1.2D + 1.0W + 0.5S": {0, 1},
	} {
		row := factorRow(t, r, name)
		assert.Equal(t, want, [2]float64{row.Duration, row.TimeEffect}, name)
	}
}

// The demands with earthquake on the tie of a rafter, by hand: SDS = 1, so Ev is 0.2 D;
// the snow on half of 10 ft at 2 ft is 10 ft² times its pressure (ASCE 7-16 and 7-22
// 2.4.5, 12.4.2.2).
func TestEarthquakeDemandsByHand(t *testing.T) {
	const snow = 30 // psf
	cases := []struct {
		standard, companion string
		share               float64 // of the snow
		status              calc.Status
	}{
		{"ASCE 7-16", "D + 0.525Ev + 0.525Eh + 0.75S", 0.75, calc.Read},
		{"ASCE 7-22", "D + 0.525Ev + 0.525Eh + 0.1S", 0.1, calc.Recalled},
	}
	for _, c := range cases {
		t.Run(c.standard, func(t *testing.T) {
			r := size(t, shaken(c.standard, snow))
			dead := reactionUnder(t, r, "T1", "D")
			calctest.Close(t, (1+0.7*0.2)*dead, reactionUnder(t, r, "T1", "D + 0.7Ev + 0.7Eh"), 1e-9, 0)
			calctest.Close(t, (1+0.525*0.2)*dead+c.share*snow*10, reactionUnder(t, r, "T1", c.companion), 1e-9, 0)
			assert.Equal(t, c.status, factorRow(t, r, c.companion).Status)
			least := reactionUnder(t, r, "T1", "0.6D - 0.7Ev + 0.7Eh")
			assert.Greater(t, (0.6-0.7*0.2)*dead, least, "the least dead load, not the most")
			assert.Positive(t, least)
		})
	}
}

// Every joint below the deck has a demand under each row with earthquake in use, in the
// proportion of its factor sideways; without values of the site there is none.
func TestEarthquakeDemandsFollowTheRows(t *testing.T) {
	for _, standard := range []string{"ASCE 7-16", "ASCE 7-22"} {
		r := size(t, shaken(standard, 30))
		for _, l := range r.Links {
			if strings.HasPrefix(l.Mark, "D") {
				continue // the deck hands its own mass on: not computed
			}
			base := map[string]float64{}
			for _, d := range l.Demands {
				base[d.Combination] = max(base[d.Combination], d.Along/0.7, d.Out/0.7)
			}
			for _, row := range r.Loads.Combinations {
				if row.Used && row.Method == "ASD" && row.Earthquake != 0 {
					force, demanded := base[row.Name]
					assert.True(t, demanded, "%s: %s", l.Mark, row.Name)
					calctest.Close(t, base["D + 0.7Ev + 0.7Eh"]*row.Earthquake/0.7, force, 1e-9, 0, l.Mark, row.Name)
				}
			}
		}
	}
	for _, l := range size(t, simple()).Links {
		for _, d := range l.Demands {
			assert.NotContains(t, d.Combination, "Eh", l.Mark)
		}
	}
}

// Trap: the earthquake set beside dead load only. Under snow the companion row presses
// harder than dead load with the whole earthquake.
func TestTrapEarthquakeWithoutSnow(t *testing.T) {
	r := size(t, shaken("ASCE 7-16", 30))
	for _, mark := range []string{"T1", "C1", "B1", "F1"} {
		alone := reactionUnder(t, r, mark, "D + 0.7Ev + 0.7Eh")
		assert.Greater(t, reactionUnder(t, r, mark, "D + 0.525Ev + 0.525Eh + 0.75S"), alone, mark)
	}
}
