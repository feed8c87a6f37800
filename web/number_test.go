package web

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/cover"
)

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		x    float64
		unit string
		want string
	}{
		{0, "lb", "0"},
		{1681.875, "psi", "1,682"},
		{1_600_000, "psi", "1,600,000"},
		{999.9, "lb", "1,000"},
		{57.4, "psi", "57.4"}, // never fewer than three digits that count
		{7.5625, "in³", "7.56"},
		{1.25, "", "1.25"},
		{1, "", "1"},
		{0.00256, "", "0.00256"},
		{-20.77237, "psf", "−20.8"},
		{120.104117, "in", "120.104"},
		{-0.0000000001, "in", "0"},
		{math.Inf(1), "psi", "∞"},
		{math.Inf(-1), "psi", "−∞"},
		{math.NaN(), "psi", "unknown"},
	} {
		assert.Equal(t, c.want, number(c.x, c.unit), "%v %s", c.x, c.unit)
	}
}

func TestRatioIsWrittenUp(t *testing.T) {
	for r, want := range map[cover.Ratio]string{
		0: "0.00", 0.8922: "0.90", 1: "1.00", 1.0000001: "1.01", 2.749: "2.75", 250: "over 99",
		cover.Ratio(math.Inf(1)): "no capacity", cover.Ratio(math.NaN()): "no capacity",
	} {
		assert.Equal(t, want, ratio(r), "%v", r)
	}
}

// What is printed never looks better than what was computed: a ratio above 1 is not
// printed as 1.00, a demand not below itself, a clear height not above itself.
func TestTrapRoundingToTheUnsafeSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(1.0001, 5).Draw(t, "ratio")
		if ratio(cover.Ratio(x)) == "1.00" {
			t.Fatalf("%v is printed as 1.00", x)
		}
	})
	assert.Equal(t, "751", pounds(750.2))
	assert.Equal(t, "−313", pounds(-312.1))
	assert.Equal(t, "2,455", pounds(2454.896))
	assert.Equal(t, `6'-7 15/16"`, clearHeight(79.999))
	assert.Equal(t, `6'-8"`, clearHeight(80))
}

// Two values that differ are told apart where they are compared.
func TestTrapEqualWordsForUnequalValues(t *testing.T) {
	a, b := compared(750.3, 750, "lb")
	assert.Equal(t, "750.3", a)
	assert.Equal(t, "750", b)
	a, b = compared(750, 750, "lb")
	assert.Equal(t, a, b)
	a, b = compared(math.Inf(1), 750, "lb")
	assert.NotEqual(t, a, b)
}

func TestPercent(t *testing.T) {
	assert.Equal(t, "below 0.0001 %", percent(1e-16))
	assert.Equal(t, "0.2500 %", percent(0.0025))
}
