package calc_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
)

func TestFieldsWithoutFault(t *testing.T) {
	var f calc.Fields
	f.Within("speed", 85, 85, 250, "mph")
	f.Within("speed", 250, 85, 250, "mph")
	f.OneOf("exposure", "C", "B", "C", "D")
	f.In("rafters").Within("spacing", 24, 12, 32, "in")
	assert.False(t, f.Any())
	assert.NoError(t, f.Err())
}

func TestFieldsListEveryFaultInOrder(t *testing.T) {
	var f calc.Fields
	f.Within("speed_mph", nan, 85, 250, "mph")
	f.Within("speed_mph", inf, 85, inf, "mph")
	f.Within("speed_mph", -inf, -inf, 250, "mph")
	site := f.In("site")
	site.OneOf("exposure", "E", "B", "C", "D")
	f.At("joints", 3).In("tie").Within("rating_lb", -1, 0, 5000, "lb")
	site.In("snow").Missing("ground_psf", "0 to 300 psf")
	site.At("sources", 0).Add("", "a list", "a text")
	f.Within("slope", 0.0625, 0.25, 12, "")
	f.OneOf("covering", "", "open", "solid")

	require.True(t, f.Any())
	var input *calc.InputError
	require.ErrorAs(t, f.Err(), &input)
	assert.Equal(t, []calc.Fault{
		{Path: "speed_mph", Given: "NaN mph", Allowed: "85 to 250 mph"},
		{Path: "speed_mph", Given: "+Inf mph", Allowed: "85 to +Inf mph"},
		{Path: "speed_mph", Given: "-Inf mph", Allowed: "-Inf to 250 mph"},
		{Path: "site.exposure", Given: `"E"`, Allowed: "one of B, C, D"},
		{Path: "joints[3].tie.rating_lb", Given: "-1 lb", Allowed: "0 to 5000 lb"},
		{Path: "site.snow.ground_psf", Given: "nothing", Allowed: "0 to 300 psf"},
		{Path: "site.sources[0]", Given: "a list", Allowed: "a text"},
		{Path: "slope", Given: "0.0625", Allowed: "0.25 to 12"},
		{Path: "covering", Given: `""`, Allowed: "one of open, solid"},
	}, input.Faults)
}

// A collector taken before the first fault reports to the one it came from.
func TestFieldsShareOneList(t *testing.T) {
	var f calc.Fields
	below := f.In("a").At("b", 2)
	assert.False(t, below.Any())
	below.Missing("c", "1 to 2 in")
	assert.True(t, f.Any())
	assert.EqualError(t, f.Err(), "a.b[2].c: missing: 1 to 2 in")
	assert.Equal(t, f.Err(), below.Err())
}

func TestWithinRefusesWhatIsOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low, high := rapid.Float64Range(-1e6, 0).Draw(t, "low"), rapid.Float64Range(0, 1e6).Draw(t, "high")
		x := rapid.Float64().Draw(t, "x")
		var f calc.Fields
		f.Within("x", x, low, high, "in")
		if inside := x >= low && x <= high; f.Any() == inside {
			t.Fatalf("%v against %v to %v: fault %v", x, low, high, f.Any())
		}
	})
}

func TestInputErrorInJSON(t *testing.T) {
	var f calc.Fields
	f.In("rafters").Within("spacing_in", 40, 12, 32, "in")
	text, err := json.Marshal(f.Err())
	require.NoError(t, err)
	assert.JSONEq(t, `{"faults": [{"path": "rafters.spacing_in", "given": "40 in", "allowed": "12 to 32 in"}]}`, string(text))
}

func TestNumberReadsBack(t *testing.T) {
	cases := []struct {
		x    float64
		want string
	}{
		{0, "0"}, {24, "24"}, {0.1, "0.1"}, {-2.5, "-2.5"}, {1e6, "1000000"}, {1e-7, "0.0000001"},
		{nan, "NaN"}, {inf, "+Inf"}, {-inf, "-Inf"},
	}
	for _, c := range cases {
		assert.Equal(t, c.want, calc.Number(c.x))
	}
}

// Every wrong field is named, with what was given and what is allowed.
func ExampleInputError() {
	var f calc.Fields
	f.Within("site.wind_speed_mph", 300, 85, 200, "mph")
	f.At("joints", 1).OneOf("seen", "maybe", "yes", "no")

	var input *calc.InputError
	err := fmt.Errorf("cover.json: %w", f.Err())
	if errors.As(err, &input) {
		for _, fault := range input.Faults {
			fmt.Println(fault)
		}
	}
	// Output:
	// site.wind_speed_mph: 300 mph is not 85 to 200 mph
	// joints[1].seen: "maybe" is not one of yes, no
}
