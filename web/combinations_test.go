package web_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web"
)

const (
	strength = "what holds the cover sideways rest on allowable stress design"
	unused   = "not used: the earthquake is not computed"
	recalled = "from memory, confirm against the print"
)

// plainText is the text of a report.
func plainText(t testing.TB, r cover.Report) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, web.Text(&b, r))
	return b.String()
}

// Each row of factors stands in its table with the factor of the wood that belongs to
// its method: C_D in allowable stress design, lambda in strength design.
func TestCombinationTables(t *testing.T) {
	for _, name := range covers {
		r := report(t, name)
		page := rendered(t, r)
		plain, folded, ok := strings.Cut(page, "Combinations of strength design (LRFD)")
		require.True(t, ok, name)
		assert.Contains(t, folded, strength, name)
		upper, lower, ok := strings.Cut(plainText(t, r), "COMBINATIONS OF STRENGTH DESIGN")
		require.True(t, ok, name)
		assert.Contains(t, strings.Join(strings.Fields(lower), " "), strength, name)
		for _, c := range r.Loads.Combinations {
			table, lines := plain, upper
			if c.Method == "LRFD" {
				table, lines = folded, lower
			}
			assert.Contains(t, table, `<tr><th scope="row">`+strings.ReplaceAll(c.Name, "+", "&#43;")+`</th>`, name)
			assert.Contains(t, lines, c.Name+"  ", name)
		}
	}
}

// A row that a check could use and does not, and a row from memory, say so.
func TestCombinationsSayWhatTheyAre(t *testing.T) {
	r := report(t, "snow")
	r.Loads.Combinations = []cover.CombinationLine{
		{Name: "D + 0.7Ev + 0.7Eh", Clause: "ASCE 7-16 2.4.5 (8)", Method: "ASD", Used: true, Status: calc.Read},
	}
	table := func(r cover.Report) string {
		_, rest, _ := strings.Cut(rendered(t, r), "<h3>Combinations</h3>")
		out, _, _ := strings.Cut(rest, "<h3>Reactions</h3>")
		out, _, _ = strings.Cut(out, "<details")
		return out
	}
	row := func(r cover.Report) string {
		_, rest, _ := strings.Cut(plainText(t, r), "COMBINATIONS, FACTORS")
		out, _, _ := strings.Cut(rest, "COMBINATIONS OF STRENGTH")
		return out
	}
	for _, words := range []string{table(r), row(r)} {
		assert.NotContains(t, words, unused)
		assert.NotContains(t, words, recalled)
		assert.Contains(t, words, "2.4.5 (8)")
	}
	r.Loads.Combinations[0].Used, r.Loads.Combinations[0].Status = false, calc.Recalled
	for _, words := range []string{table(r), row(r)} {
		assert.Contains(t, words, unused)
		assert.Contains(t, words, recalled)
	}
}
