package cover_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/cover"
)

// edited is the simple cover as JSON with one value set at a path of keys.
func edited(t testing.TB, x any, path ...string) string {
	t.Helper()
	var top map[string]any
	require.NoError(t, json.Unmarshal(marshal(t, simple()), &top))
	at := top
	for _, name := range path[:len(path)-1] {
		next, ok := at[name].(map[string]any)
		if !ok {
			next = map[string]any{}
			at[name] = next
		}
		at = next
	}
	at[path[len(path)-1]] = x
	return string(marshal(t, top))
}

// faults are those of a text, which must have some.
func faults(t testing.TB, text string) []calc.Fault {
	t.Helper()
	_, err := cover.Read(strings.NewReader(text))
	var input *calc.InputError
	require.ErrorAs(t, err, &input)
	require.NotEmpty(t, input.Faults)
	for _, f := range input.Faults {
		assert.NotEmpty(t, f.Path, f)
		assert.NotEmpty(t, f.Given, f)
		assert.NotEmpty(t, f.Allowed, f)
	}
	return input.Faults
}

// One wrong value gives one fault, at its path, that says what was given and what is
// allowed.
func TestWrongValues(t *testing.T) {
	cases := []struct {
		name  string
		value any
		path  string
		given string // part of it
	}{
		{"negative", -5, "site.wind_speed_mph", "-5 mph"},
		{"zero", 0, "site.wind_speed_mph", "0 mph"},
		{"absurd", 1e30, "cover.width_ft", "ft"},
		{"just above", 200.001, "site.wind_speed_mph", "200.001 mph"},
		{"just below", 84.999, "site.wind_speed_mph", "84.999 mph"},
		{"inches for feet", 120, "cover.projection_ft", "120 ft"},
		{"a number in quotes", "105", "site.wind_speed_mph", `"105"`},
		{"a number with its unit", "105 mph", "site.wind_speed_mph", `"105 mph"`},
		{"metric", "3.8 m", "cover.projection_ft", `"3.8 m"`},
		{"a word for a number", "fast", "site.wind_speed_mph", `"fast"`},
		{"true for a number", true, "site.wind_speed_mph", "true"},
		{"a list for a number", []int{105}, "site.wind_speed_mph", "[105]"},
		{"an object for a number", map[string]int{"v": 1}, "site.wind_speed_mph", `{"v":1}`},
		{"a number for a word", 3, "site.exposure", "3"},
		{"another word", "E", "site.exposure", `"E"`},
		{"a word in small letters", "c", "site.exposure", `"c"`},
		{"an empty word", "", "site.exposure", `""`},
		{"a number for a flag", 1, "site.patio_appendix_adopted", "1"},
		{"a word for a flag", "yes", "site.patio_appendix_adopted", `"yes"`},
		{"half a post", 2.5, "posts.count", "2.5"},
		{"one post", 1, "posts.count", "1"},
		{"an object for a list", map[string]int{}, "beams.lines_ft", "{}"},
		{"a number for a list", 9, "beams.lines_ft", "9"},
		{"a list that falls", []float64{9, 4}, "beams.lines_ft", "[9,4]"},
		{"a line that is not at the overhang", []float64{4}, "beams.lines_ft", "last line at 4 ft"},
		{"no lines that stand", []float64{}, "beams.lines_ft", ""},
		{"a species that is no wood", "Granite", "rafters.species", `"Granite"`},
		{"a grade that is none", "No.7", "rafters.grade", `"No.7"`},
		{"a size that is none", "5x", "rafters.size", `"5x"`},
		{"a list for a group", []int{}, "site", "[]"},
		{"a text for a group", "flat", "cover", `"flat"`},
		{"a control character", "a\u0000b", "job.name", `"a`},
		{"a text too long", strings.Repeat("x", 401), "job.name", `"xxx`},
		{"no layers", []int{}, "cover.layers", "0 layers"},
		{"a layer that is a number", []int{5}, "cover.layers[0]", "5"},
		{"another format", 2, "schema", "2"},
		{"a source for nothing", map[string]string{"speed": "x"}, "site.sources.speed", "an unknown key"},
		{"a source that is a number", map[string]int{"exposure": 3}, "site.sources.exposure", "3"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			text := edited(t, c.value, strings.Split(strings.TrimSuffix(c.path, "[0]"), ".")...)
			if strings.HasPrefix(c.path, "site.sources") {
				text = edited(t, c.value, "site", "sources")
			}
			if c.name == "no lines that stand" { // an empty list was not said
				_, err := cover.Read(strings.NewReader(text))
				require.NoError(t, err)
				return
			}
			all := faults(t, text)
			i := 0
			for i < len(all) && all[i].Path != c.path {
				i++
			}
			require.Less(t, i, len(all), "no fault at %s: %v", c.path, all)
			assert.Contains(t, all[i].Given, c.given)
		})
	}
}

// Every fault is listed at once.
func TestAllFaultsAtOnce(t *testing.T) {
	got := map[string]bool{}
	for _, f := range faults(t, `{"schema": 1, "site": {"wind_speed_mph": -1, "exposure": "Z", "storey": 2},
		"cover": {"layers": [{"name": "slate of the moon"}], "width_ft": "wide"}, "posts": {"count": 99}, "extra": null}`) {
		assert.False(t, got[f.Path], "%s twice", f.Path)
		got[f.Path] = true
	}
	for _, path := range []string{
		"site.wind_speed_mph", "site.exposure", "site.storey", "site.roof_snow_psf", "cover.layers[0].psf", "cover.width_ft",
		"cover.projection_ft", "posts.count", "posts.species", "rafters.spacing_in", "foundation.kind", "lateral.along_house", "extra",
	} {
		assert.True(t, got[path], path)
	}
}

// An empty object lacks every value that is required, and nothing else.
func TestEmptyObject(t *testing.T) {
	got := map[string]string{}
	for _, f := range faults(t, `{}`) {
		got[f.Path] = f.Given
	}
	for _, f := range cover.Fields() {
		if f.Need == cover.NeedRequired && !strings.Contains(f.Path, "[]") {
			assert.Contains(t, got, f.Path)
		}
	}
	assert.Contains(t, got, "cover.layers")
	assert.Contains(t, got, "posts.count")
}

// An unknown key is named at any depth, with the keys that are known there.
func TestUnknownKeys(t *testing.T) {
	for _, path := range []string{
		"x", "job.x", "site.x", "cover.x", "rafters.x", "beams.x", "posts.x", "foundation.x", "lateral.x", "house.x",
	} {
		all := faults(t, edited(t, 1, strings.Split(path, ".")...))
		require.Len(t, all, 1, path)
		assert.Equal(t, path, all[0].Path)
		assert.Equal(t, "an unknown key", all[0].Given)
		assert.Contains(t, all[0].Allowed, "one of ")
	}
	for _, c := range []struct{ value, path string }{
		{`[{"name": "a", "psf": 1, "thick": 2}]`, "cover.layers[0].thick"},
	} {
		all := faults(t, edited(t, json.RawMessage(c.value), "cover", "layers"))
		require.Len(t, all, 1)
		assert.Equal(t, c.path, all[0].Path)
	}
	all := faults(t, edited(t, json.RawMessage(`[{"mark": "A", "seen": true}]`), "house", "joints"))
	assert.Equal(t, "house.joints[0].seen", all[0].Path)
}

// A key that stands twice is a fault, because one of the two would be lost.
func TestRepeatedKeys(t *testing.T) {
	text := string(marshal(t, simple()))
	for _, c := range []struct{ old, twice, path string }{
		{`"schema":1`, `"schema":1,"schema":1`, "schema"},
		{`"wind_speed_mph":105`, `"wind_speed_mph":105,"wind_speed_mph":90`, "site.wind_speed_mph"},
		{`"psf":5`, `"psf":5,"psf":5`, "cover.layers[0].psf"},
		{`"posts":{`, `"posts":{},"posts":{`, "posts"},
	} {
		require.Contains(t, text, c.old)
		all := faults(t, strings.Replace(text, c.old, c.twice, 1))
		require.Len(t, all, 1, c.path)
		assert.Equal(t, calc.Fault{Path: c.path, Given: "given twice", Allowed: "given once"}, all[0])
	}
}

// A text that is not one JSON object has no fields to name.
func TestNotAnInput(t *testing.T) {
	whole := string(marshal(t, simple()))
	cases := []struct{ name, text, reason string }{
		{"nothing", "", "it ends too early"},
		{"space", " \n\t", "it ends too early"},
		{"null", "null", "an input is an object in braces"},
		{"a list", "[]", "an input is an object in braces"},
		{"a list of inputs", "[" + whole + "]", "an input is an object in braces"},
		{"a number", "105", "an input is an object in braces"},
		{"a text", `"cover"`, "an input is an object in braces"},
		{"cut short", whole[:len(whole)/2], "it ends too early"},
		{"the last brace missing", whole[:len(whole)-1], "it ends too early"},
		{"something behind", whole + "x", "something follows the closing brace"},
		{"two inputs", whole + whole, "something follows the closing brace"},
		{"not a number", `{"schema": NaN}`, "invalid character"},
		{"infinite", `{"schema": Infinity}`, "invalid character"},
		{"a comma too many", `{"schema": 1,}`, "invalid character"},
		{"single quotes", `{'schema': 1}`, "invalid character"},
		{"a key without quotes", `{schema: 1}`, "invalid character"},
		{"a brace for a bracket", `{"a": [1}}`, "invalid character"},
		{"a wrong brace", `{]`, "invalid character"},
		{"nested without end", strings.Repeat(`{"a":`, 100000), "nested deeper than 16"},
		{"brackets without end", `{"a":` + strings.Repeat(`[`, 100000), "nested deeper than 16"},
		{"2 MB", `{"job": {"note": "` + strings.Repeat("x", 2<<20) + `"}}`, "more than 1048576 bytes"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			in, err := cover.Read(strings.NewReader(c.text))
			var syntax *cover.SyntaxError
			require.ErrorAs(t, err, &syntax)
			assert.Contains(t, syntax.Reason, c.reason)
			assert.Equal(t, cover.Input{}, in)
		})
	}
}

// A number that no machine can hold is a wrong value, not a number.
func TestNumbersBeyondRange(t *testing.T) {
	whole := string(marshal(t, simple()))
	for _, digits := range []string{"1e999", "-1e999", strings.Repeat("9", 400)} {
		all := faults(t, strings.Replace(whole, `"wind_speed_mph":105`, `"wind_speed_mph":`+digits, 1))
		require.Len(t, all, 1)
		assert.Equal(t, "site.wind_speed_mph", all[0].Path)
	}
}

// A reader that fails is not the fault of the input.
func TestReaderFails(t *testing.T) {
	_, err := cover.Read(failing{})
	assert.ErrorIs(t, err, errFailing)
}

type failing struct{}

var errFailing = errors.New("the line is cut")

func (failing) Read([]byte) (int, error) { return 0, errFailing }

// Reading is not fooled by the byte order mark of some editors, nor by case.
func TestReadIsStrict(t *testing.T) {
	whole := string(marshal(t, simple()))
	_, err := cover.Read(strings.NewReader(strings.Replace(whole, `"schema"`, `"Schema"`, 1)))
	assert.ErrorContains(t, err, "Schema: an unknown key")
	_, err = cover.Read(bytes.NewReader(append([]byte("\ufeff"), whole...)))
	var syntax *cover.SyntaxError
	assert.ErrorAs(t, err, &syntax)
}
