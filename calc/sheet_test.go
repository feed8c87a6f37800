package calc_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
)

func TestSheetKeepsOrderAndStatus(t *testing.T) {
	var s calc.Sheet
	s.Given("M", 12000, "lb-in", "beam B1")
	s.Quoted("Fb", 900, "psi", "a table", calc.Recalled)
	s.Step("fb", "M / S", 917, "psi", "a clause")
	assert.Equal(t, []calc.Line{
		{Symbol: "M", X: 12000, Unit: "lb-in", Source: "beam B1", Status: calc.Read},
		{Symbol: "Fb", X: 900, Unit: "psi", Source: "a table", Status: calc.Recalled},
		{Symbol: "fb", Formula: "M / S", X: 917, Unit: "psi", Source: "a clause", Status: calc.Computed},
	}, s.Lines())
}

func TestSheetZeroValueIsEmpty(t *testing.T) {
	var s calc.Sheet
	assert.Empty(t, s.Lines())
}

func TestSheetCheckTakesTheLastLineOfASymbol(t *testing.T) {
	var s calc.Sheet
	s.Given("fb", 100, "psi", "first")
	s.Given("Fb", 1000, "psi", "")
	s.Given("fb", 700, "psi", "second")
	c := s.Check("bending", "fb", "Fb")
	assert.Equal(t, 700.0, c.Demand)
	assert.Equal(t, 1000.0, c.Capacity)
	assert.Equal(t, "psi", c.Unit)
	assert.Len(t, c.Lines, 3)
}

func TestSheetCheckPanicsOnOurOwnMistake(t *testing.T) {
	cases := []struct {
		name             string
		demand, capacity string
		want             string
	}{
		{"no demand line", "fv", "Fb", `calc: the sheet has no line "fv"`},
		{"no capacity line", "fb", "Fv", `calc: the sheet has no line "Fv"`},
		{"units differ", "fb", "M", `calc: check "x" compares fb in "psi" with M in "lb-in"`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var s calc.Sheet
			s.Given("fb", 700, "psi", "")
			s.Given("Fb", 1000, "psi", "")
			s.Given("M", 12000, "lb-in", "")
			assert.PanicsWithValue(t, c.want, func() { s.Check("x", c.demand, c.capacity) })
		})
	}
}

func TestSheetAppend(t *testing.T) {
	given := func(x float64, unit string, s calc.Status) calc.Line {
		return calc.Line{Symbol: "L", X: x, Unit: unit, Status: s}
	}
	cases := []struct {
		name string
		have calc.Line
		more calc.Line
		want []calc.Line
	}{
		{"the same is written once", given(12, "in", calc.Read), given(12, "in", calc.Read),
			[]calc.Line{given(12, "in", calc.Read)}},
		{"another value is written", given(12, "in", calc.Read), given(13, "in", calc.Read),
			[]calc.Line{given(12, "in", calc.Read), given(13, "in", calc.Read)}},
		{"the same number in another unit is written", given(12, "in", calc.Read), given(12, "ft", calc.Read),
			[]calc.Line{given(12, "in", calc.Read), given(12, "ft", calc.Read)}},
		{"a recalled value stays marked", given(12, "in", calc.Read), given(12, "in", calc.Recalled),
			[]calc.Line{given(12, "in", calc.Recalled)}},
		{"a mark is not washed off", given(12, "in", calc.Recalled), given(12, "in", calc.Read),
			[]calc.Line{given(12, "in", calc.Recalled)}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var s calc.Sheet
			s.Append([]calc.Line{c.have})
			s.Append([]calc.Line{c.more})
			assert.Equal(t, c.want, s.Lines())
		})
	}
}

func TestSheetAppendLeavesTheOtherSheetAlone(t *testing.T) {
	var one, two calc.Sheet
	one.Given("L", 12, "in", "")
	two.Append(one.Lines())
	two.Append([]calc.Line{{Symbol: "L", X: 12, Unit: "in", Status: calc.Recalled}})
	assert.Equal(t, calc.Read, one.Lines()[0].Status)
	assert.Equal(t, calc.Recalled, two.Lines()[0].Status)
}

// A simple span: w L²/8 on a section modulus, statics.
func ExampleSheet() {
	var s calc.Sheet
	s.Given("w", 4, "lb/in", "loads on the rafter")
	s.Given("L", 120, "in", "plan")
	s.Given("S", 21.390625, "in³", "1.5 x 9.25")
	s.Step("M", "w * pow(L, 2) / 8", 7200, "lb-in", "statics")
	s.Step("fb", "M / S", 7200/21.390625, "psi", "NDS 2018 eq. 3.3-2")
	s.Given("Fb_adj", 900, "psi", "assumed for this example")
	c := s.Check("bending", "fb", "Fb_adj")
	for _, l := range c.Lines {
		fmt.Printf("%-6s %-17s %8.1f %-5s %s\n", l.Symbol, l.Formula, l.X, l.Unit, l.Source)
	}
	fmt.Printf("%s: %.3f\n", c.Name, c.Ratio())
	// Output:
	// w                             4.0 lb/in loads on the rafter
	// L                           120.0 in    plan
	// S                            21.4 in³   1.5 x 9.25
	// M      w * pow(L, 2) / 8   7200.0 lb-in statics
	// fb     M / S                336.6 psi   NDS 2018 eq. 3.3-2
	// Fb_adj                      900.0 psi   assumed for this example
	// bending: 0.374
}
