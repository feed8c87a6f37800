package calc_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
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
