package member_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// inches reads a printed span such as 8-11, ft-in, in inches; a note is +Inf.
func inches(t testing.TB, text string) float64 {
	t.Helper()
	if text == "note" {
		return math.Inf(1)
	}
	ft, in, ok := strings.Cut(text, "-")
	require.True(t, ok, text)
	whole, err := strconv.Atoi(ft)
	require.NoError(t, err)
	rest, err := strconv.Atoi(in)
	require.NoError(t, err)
	return float64(whole)*calc.Ft + float64(rest)
}

// Two whole span tables of the codes and one of a deck guide follow from the values, the
// factors and the checks, entry by entry, to the inch. The two that differ lie at half an
// inch, within what the values themselves are rounded by.
func TestSpanTablesEntryByEntry(t *testing.T) {
	entries, misses := 0, map[string]float64{}
	for _, r := range calctest.Published(t, "span_tables.csv") {
		for _, size := range []string{"2x4", "2x6", "2x8", "2x10", "2x12"} {
			if !r.Has(size) {
				continue
			}
			entries++
			want, got, limit := inches(t, r.Text(size)), tableSpan(t, r, size), r.Num("limit ft")*calc.Ft
			switch {
			case math.IsInf(want, 1):
				assert.Greater(t, got, limit, "%s %s %s is not listed", r.Text("species"), r.Text("grade"), size)
			case math.Round(math.Min(got, limit)) != want:
				misses[strings.Join([]string{
					r.Text("table"), r.Text("species"), r.Text("grade"), size, r.Text("spacing in"), r.Text("dead psf"),
				}, " ")] = got - want
			}
		}
	}
	assert.Equal(t, 338+36, entries)
	assert.Len(t, misses, 2, "%v", misses)
	for entry, by := range misses {
		assert.Contains(t, []string{
			"IRC Southern Pine Select Structural 2x10 19.2 10", "IBC Hem-Fir No.1 2x6 12 20",
		}, entry)
		calctest.Near(t, 0.5, by, 0.005, "rounded down in print", entry)
	}
}

// tableSpan returns the span, in, by bending and by live load deflection, the least of
// the species.
func tableSpan(t testing.TB, r calc.Row, size string) float64 {
	t.Helper()
	s, err := lumber.SectionNamed(size)
	require.NoError(t, err)
	live := r.Num("live psf") * calc.PSF * r.Num("spacing in")
	total := live + r.Num("dead psf")*calc.PSF*r.Num("spacing in")
	least := math.Inf(1)
	for species := range strings.SplitSeq(r.Text("species"), "; ") {
		v, err := lumber.Find(species, r.Text("grade"), s)
		require.NoError(t, err)
		if r.Has("Fb other psi") {
			v.Bending.Value = r.Num("Fb other psi")
		}
		a := lumber.Adjust(v, s, lumber.Use{Repetitive: true, Wet: r.Has("wet"), Incised: r.Has("incised")})
		span := spanOf(t, &a, loads{total, live}, duration(t, r.Text("duration")), r.Num("divisor"))
		least = math.Min(least, span)
	}
	return least
}
