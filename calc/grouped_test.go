package calc_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
)

func TestGrouped(t *testing.T) {
	for number, want := range map[string]string{
		"": "", "0": "0", "999": "999", "1000": "1,000", "2081": "2,081", "123456": "123,456", "1234567": "1,234,567",
		"-1000": "-1,000", "−999": "−999", "+25000": "+25,000", "12345.678": "12,345.678", "0.12345": "0.12345",
		"NaN": "NaN", "+Inf": "+Inf", "-Inf": "-Inf",
	} {
		assert.Equal(t, want, calc.Grouped(number))
	}
}

// Without its commas a grouped number is the number, and no group is longer than
// three digits.
func TestGroupedLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := strconv.FormatFloat(rapid.Float64().Draw(t, "number"), 'f', rapid.IntRange(0, 4).Draw(t, "places"), 64)
		grouped := calc.Grouped(number)
		assert.Equal(t, number, strings.ReplaceAll(grouped, ",", ""))
		whole, _, _ := strings.Cut(strings.TrimLeft(grouped, "-"), ".")
		for i, group := range strings.Split(whole, ",") {
			assert.True(t, len(group) == 3 || i == 0 && len(group) < 3, grouped)
		}
	})
}
