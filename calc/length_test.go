package calc_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
)

// A length and its inches, by the definition 1 ft = 12 in = 304.8 mm.
func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		text string
		unit float64
		want float64
	}{
		{`12' 6"`, calc.Ft, 150},
		{`12'-6½"`, calc.Ft, 150.5},
		{`12'-6 1/2"`, calc.In, 150.5},
		{`12' - 6-1/2"`, calc.Ft, 150.5},
		{`12-6`, calc.Ft, 150},
		{`12-6`, calc.In, 150},
		{`12-6.5`, calc.In, 150.5},
		{`12-6 1/2`, calc.Ft, 150.5},
		{`12-6½`, calc.Ft, 150.5},
		{`12ft 6in`, calc.Ft, 150},
		{`12 FT. 6 IN.`, calc.Ft, 150},
		{`12 feet 6 inches`, calc.Ft, 150},
		{`12'6`, calc.Ft, 150},
		{`12′ 6″`, calc.Ft, 150},
		{`12’ 6”`, calc.Ft, 150},
		{`12' 6''`, calc.Ft, 150},
		{`12’ 6’’`, calc.Ft, 150},
		{`12′ 6′′`, calc.Ft, 150},
		{`12' 0 1/2"`, calc.Ft, 144.5},
		{`12' 1/2"`, calc.Ft, 144.5},
		{`12' ½"`, calc.Ft, 144.5},
		{`12'`, calc.In, 144},
		{`12.5'`, calc.In, 150},
		{`150.5"`, calc.Ft, 150.5},
		{`6-1/2"`, calc.Ft, 6.5},
		{`6 1/2"`, calc.Ft, 6.5},
		{`6½ in`, calc.Ft, 6.5},
		{`6 1/2`, calc.In, 6.5},
		{`1/2`, calc.In, 0.5},
		{`12.5`, calc.Ft, 150},
		{`12.5`, calc.In, 12.5},
		{`.5`, calc.Ft, 6},
		{`0`, calc.Ft, 0},
		{`3.81 m`, calc.Ft, 150},
		{`381 cm`, calc.Ft, 150},
		{`3810mm`, calc.In, 150},
		{" 12\u00a0' \t6 \" ", calc.Ft, 150},
	} {
		got, err := calc.ParseLength(c.text, c.unit)
		require.NoError(t, err, c.text)
		calctest.Close(t, c.want, got, 1e-12, 0, c.text)
	}
}

func TestParseLengthRefuses(t *testing.T) {
	for _, text := range []string{
		"", " ", "'", `"`, "ft", "m", "NaN", "Inf", "+Inf", "-1", "- 1", "+1", "0x1p4", "1e3", "1_000", "12,5", "3,8 m",
		"1/0", "3/2", "6 3/2", "1/", "/2", "12' 14\"", "12' 12\"", "12-12", "12.5' 6\"", "12' 6' 3\"", "6\" 12'", "12 6",
		"twelve", "12 yd", "12' 6 m", "12' -6\" x", "99999999999", "1.2.3", "12'--6\"", "<b>", "12\x00", "½½", "٣",
	} {
		_, err := calc.ParseLength(text, calc.Ft)
		var wrong *calc.LengthError
		require.ErrorAs(t, err, &wrong, text)
		assert.Equal(t, text, wrong.Text)
		assert.Contains(t, err.Error(), "is not a length such as")
	}
}

// 6-1/2 without a mark is 6 ft 0 1/2 in. on a drawing and 6 1/2 in. on a tape.
func TestTrapDashWithoutAMarkIsAmbiguous(t *testing.T) {
	_, err := calc.ParseLength("6-1/2", calc.Ft)
	assert.Error(t, err)
	got, err := calc.ParseLength(`6-1/2"`, calc.Ft)
	assert.NoError(t, err)
	assert.Equal(t, 6.5, got)
}

func TestFeetInches(t *testing.T) {
	for _, c := range []struct {
		inches float64
		want   string
	}{
		{150, `12'-6"`},
		{150.5, `12'-6 1/2"`},
		{0, `0'-0"`},
		{5.5, `0'-5 1/2"`},
		{11.5 / 16, `0'-0 3/4"`},
		{143.97, `12'-0"`}, // the sixteenth carries to the inch, the inch to the foot
		{143 + 15.4/16, `11'-11 15/16"`},
		{-6.25, `-0'-6 1/4"`},
		{-0.01, `0'-0"`},
		{math.NaN(), "?"},
		{math.Inf(-1), "?"},
	} {
		assert.Equal(t, c.want, calc.FeetInches(c.inches), "%v", c.inches)
	}
}

// What FeetInches writes, ParseLength reads to within half a sixteenth, in any
// unit; what ParseLength reads exactly comes back unchanged.
func TestFeetInchesRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.Float64Range(0, 1e6).Draw(t, "inches")
		unit := rapid.SampledFrom([]float64{calc.Ft, calc.In}).Draw(t, "unit")
		text := calc.FeetInches(want)
		got, err := calc.ParseLength(text, unit)
		if err != nil || !(math.Abs(got-want) <= calc.Sixteenth/2+1e-9) {
			t.Fatalf("%v is written %s and read %v, %v", want, text, got, err)
		}
		if again := calc.FeetInches(got); again != text {
			t.Fatalf("%s comes back as %s", text, again)
		}
	})
}

// A length in feet is the same length in inches, centimeters or millimeters.
func TestParseLengthUnitsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.IntRange(0, 1e6).Draw(t, "mm")
		a, err1 := calc.ParseLength(fmt.Sprintf("%d mm", mm), calc.Ft)
		b, err2 := calc.ParseLength(fmt.Sprintf("%d.%d cm", mm/10, mm%10), calc.In)
		c, err3 := calc.ParseLength(fmt.Sprintf("%d.%03dm", mm/1000, mm%1000), calc.In)
		if err1 != nil || err2 != nil || err3 != nil || math.Abs(a-b) > 1e-6 || math.Abs(a-c) > 1e-6 {
			t.Fatalf("%d mm: %v %v %v", mm, a, b, c)
		}
	})
}

func FuzzParseLength(f *testing.F) {
	for _, text := range []string{`12'-6½"`, "12-6", "3.8 m", "1/0", "\xff'", "999999999' 11 999/999"} {
		f.Add(text, true)
	}
	f.Fuzz(func(t *testing.T, text string, feet bool) {
		unit := calc.In
		if feet {
			unit = calc.Ft
		}
		x, err := calc.ParseLength(text, unit)
		if err != nil {
			assert.Zero(t, x)
			return
		}
		assert.True(t, x >= 0 && x <= 1e9*calc.Meter, "%q gives %v", text, x)
		assert.True(t, strings.ContainsAny(text, "0123456789½¼¾⅛⅜⅝⅞⅓⅔"), text)
		back, err := calc.ParseLength(calc.FeetInches(x), unit)
		assert.NoError(t, err, text)
		calctest.Near(t, x, back, calc.Sixteenth/2+1e-6*(1+x/1e6), text)
	})
}

func ExampleParseLength() {
	inches, _ := calc.ParseLength("12-6½", calc.Ft)
	fmt.Println(inches, calc.FeetInches(inches))
	_, err := calc.ParseLength("12 yards", calc.Ft)
	fmt.Println(err)
	// Output:
	// 150.5 12'-6 1/2"
	// "12 yards" is not a length such as 12' 6", 12-6, 12'-6 1/2", 150.5", 12.5 or 3.8 m
}
