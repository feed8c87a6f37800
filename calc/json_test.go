package calc_test

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
)

// A share of no capacity is written and read back; a finite line is written as before.
func TestJSONOfWhatIsNotFinite(t *testing.T) {
	line := calc.Line{Symbol: "r", Formula: "M / 0", X: inf, Source: "test", Status: calc.Computed}
	text, err := json.Marshal(calc.Check{Name: "c", Demand: inf, Capacity: 1, Lines: []calc.Line{line}})
	require.NoError(t, err)
	assert.Contains(t, string(text), `"value":null`)
	assert.Contains(t, string(text), `"demand":null`)
	assert.Contains(t, string(text), `"capacity":1`)
	assert.Contains(t, string(text), `"formula":"M / 0"`)

	var back calc.Line
	for _, x := range []float64{inf, 12.5, 0} {
		line.X = x
		text, err := json.Marshal(line)
		require.NoError(t, err)
		require.NoError(t, json.Unmarshal(text, &back))
		assert.Equal(t, line, back)
	}
	text, err = json.Marshal(calc.Line{Symbol: "r", X: nan})
	require.NoError(t, err)
	assert.Contains(t, string(text), `"value":null`)
}

// What is written is, byte for byte, what the encoder makes of the tags, with every sign
// that it escapes and every size of number.
func TestJSONIsThatOfTheTags(t *testing.T) {
	words := rapid.OneOf(
		rapid.SampledFrom([]string{"", "Fb_adj", "in³", "A ≤ B", "a < b & c > \"d\" \\",
			"\n\t\x00", "\xff bad", "\u2028", "\ufffd", "\x7f"}),
		rapid.String(),
	)
	numbers := rapid.OneOf(
		rapid.SampledFrom([]float64{0, math.Copysign(0, -1), 1e-6, 9.99e-7, 1e-7, -1e-10,
			1e20, 1e21, -1e21, 1e300, 5e-324, inf, -inf, nan}),
		rapid.Float64(),
	)
	rapid.Check(t, func(t *rapid.T) {
		line := func(t *rapid.T) calc.Line {
			return calc.Line{
				Symbol: words.Draw(t, "symbol"), Formula: words.Draw(t, "formula"), X: numbers.Draw(t, "x"),
				Unit: words.Draw(t, "unit"), Source: words.Draw(t, "source"), Status: calc.Status(rapid.IntRange(0, 2).Draw(t, "status")),
			}
		}
		c := calc.Check{
			Name: words.Draw(t, "name"), DemandSymbol: words.Draw(t, "demand"), CapacitySymbol: words.Draw(t, "capacity"),
			Demand: numbers.Draw(t, "d"), Capacity: numbers.Draw(t, "c"), Unit: words.Draw(t, "unit"),
		}
		if rapid.Bool().Draw(t, "lines") {
			c.Lines = rapid.SliceOfN(rapid.Custom(line), 0, 4).Draw(t, "list")
		}
		for _, l := range c.Lines {
			want, err := calctest.LineByTags(l)
			require.NoError(t, err)
			got, err := json.Marshal(l)
			require.NoError(t, err)
			require.Equal(t, string(want), string(got))
		}
		want, err := calctest.CheckByTags(c)
		require.NoError(t, err)
		got, err := json.Marshal(c)
		require.NoError(t, err)
		require.Equal(t, string(want), string(got))
	})
}

// A status that is none of the three is an error, not a word.
func TestJSONRefusesAnUnknownStatus(t *testing.T) {
	line := calc.Line{Symbol: "r", Status: 9}
	_, err := json.Marshal(line)
	assert.ErrorContains(t, err, "Status(9)")
	_, err = json.Marshal(calc.Check{Lines: []calc.Line{line}})
	assert.ErrorContains(t, err, "Status(9)")
}
