package cover_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/cover"
)

// form turns the texts of ToForm into what a browser sends.
func form(texts map[string]string) map[string][]string {
	out := map[string][]string{}
	for path, text := range texts {
		out[path] = []string{text}
	}
	return out
}

// What was written into a form is read back as the same input.
func TestFormRoundTrip(t *testing.T) {
	inputs := []cover.Input{simple(), overhung(), standing()}
	for _, name := range demos {
		inputs = append(inputs, demo(t, name))
	}
	for _, in := range inputs {
		back, understood, err := cover.FromForm(form(cover.ToForm(in)))
		require.NoError(t, err)
		assert.Equal(t, in, back)
		assert.NotEmpty(t, understood["cover.width_ft"])
	}
}

func TestFormRoundTripOfRandomCovers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := randomCover(t)
		back, _, err := cover.FromForm(form(cover.ToForm(in)))
		if err != nil {
			t.Fatal(err)
		}
		if !assert.ObjectsAreEqual(near(t, in), near(t, back)) {
			t.Fatalf("sent %s, came back %s", near(t, in), near(t, back))
		}
	})
}

// near writes an input with its numbers rounded to what no tape measures, because a
// length goes through inches and back.
func near(t *rapid.T, in cover.Input) string {
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	text, err = json.Marshal(rounded(tree))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func rounded(x any) any {
	switch x := x.(type) {
	case float64:
		return math.Round(x*1e9) / 1e9
	case []any:
		for i := range x {
			x[i] = rounded(x[i])
		}
	case map[string]any:
		for k := range x {
			x[k] = rounded(x[k])
		}
	}
	return x
}

// Lengths are understood as they are written on a tape, and what was understood is said.
func TestFormLengths(t *testing.T) {
	cases := []struct {
		path, text string
		want       float64 // in the unit of the field
		heard      string
	}{
		{"cover.width_ft", "20", 20, `20'-0"`},
		{"cover.width_ft", `12' 6"`, 12.5, `12'-6"`},
		{"cover.width_ft", "12-6", 12.5, `12'-6"`},
		{"cover.width_ft", " 12'-6 1/2\" ", 12 + 6.5/12, `12'-6 1/2"`},
		{"cover.width_ft", "150 in", 12.5, `12'-6"`},
		{"cover.width_ft", "3.81 m", 12.5, `12'-6"`},
		{"rafters.spacing_in", "16", 16, `1'-4"`},
		{"rafters.spacing_in", "1'-4\"", 16, `1'-4"`},
		{"rafters.spacing_in", "19.2", 19.2, ""},
	}
	for _, c := range cases {
		t.Run(c.path+" "+c.text, func(t *testing.T) {
			f := form(cover.ToForm(simple()))
			f[c.path] = []string{c.text}
			in, understood, err := cover.FromForm(f)
			require.NoError(t, err)
			got := *in.Cover.Width
			if c.path == "rafters.spacing_in" {
				got = *in.Rafters.Spacing
			}
			assert.InDelta(t, c.want, got, 1e-9)
			if c.heard != "" {
				assert.Equal(t, c.heard, understood[c.path])
			}
		})
	}
}

// A form is as strict as a file.
func TestFormFaults(t *testing.T) {
	cases := []struct{ path, text, given string }{
		{"cover.width_ft", "wide", `"wide"`},
		{"cover.width_ft", "-20", `"-20"`},
		{"cover.width_ft", "12'6'6", ""},
		{"cover.width_ft", "1e400", ""},
		{"site.wind_speed_mph", "105 mph", `"105 mph"`},
		{"site.wind_speed_mph", "NaN", `"NaN"`},
		{"site.wind_speed_mph", "Inf", ""},
		{"site.wind_speed_mph", "0x69", `"0x69"`},
		{"site.wind_speed_mph", "1_05", `"1_05"`},
		{"site.wind_speed_mph", "1e999", ""},
		{"site.patio_appendix_adopted", "yes please", `"yes please"`},
		{"posts.count", "3.5", "3.5"},
		{"posts.count", "-2", "-2"},
		{"site.exposure", "E", `"E"`},
		{"site.color", "red", "an unknown field"},
		{"site.sources.speed", "a", "an unknown key"},
		{"cover.layers[60].name", "a", ""},
		{"cover.layers[-1].name", "a", ""},
		{"cover.layers[1e9].name", "a", ""},
		{"cover.layers[99999999999].name", "a", ""},
		{"cover.layers[].name", "a", ""},
		{"cover.layers[x].name", "a", ""},
		{"cover.layers.name", "a", ""},
		{"cover", "a", ""},
		{"", "a", ""},
		{".", "a", ""},
		{"cover.", "a", ""},
		{"beams.lines_ft", "4, , 9", ""},
		{"beams.lines_ft", "9, 4", ""},
	}
	for _, c := range cases {
		t.Run(c.path+" "+c.text, func(t *testing.T) {
			f := form(cover.ToForm(simple()))
			f[c.path] = []string{c.text}
			_, _, err := cover.FromForm(f)
			var input *calc.InputError
			require.ErrorAs(t, err, &input)
			var words []string
			for _, x := range input.Faults {
				words = append(words, x.Path+"|"+x.Given)
				assert.NotEmpty(t, x.Allowed)
			}
			assert.Contains(t, strings.Join(words, "\n"), c.path+"|"+c.given)
		})
	}
}

// An empty field was not said, rows left blank between others are dropped, and the
// format version is that of the form.
func TestFormLeavesBlanksOut(t *testing.T) {
	f := form(cover.ToForm(simple()))
	f["rafters.size"], f["schema"], f["job.note"] = []string{" "}, []string{"7"}, []string{""}
	f["cover.layers[3].name"], f["cover.layers[3].psf"] = []string{"tile"}, []string{"9"}
	f["cover.layers[1].name"], f["cover.layers[2].psf"] = []string{""}, []string{""}
	in, _, err := cover.FromForm(f)
	require.NoError(t, err)
	assert.Nil(t, in.Rafters.Size)
	assert.Nil(t, in.Job.Note)
	assert.Equal(t, cover.SchemaVersion, in.Schema)
	require.Len(t, in.Cover.Layers, 2)
	assert.Equal(t, "tile", *in.Cover.Layers[1].Name)
}

// A fault in a list is shown where it stands in the form, with blank rows before it.
func TestFormFaultKeepsItsRow(t *testing.T) {
	f := form(cover.ToForm(simple()))
	f["cover.layers[2].name"], f["cover.layers[2].psf"] = []string{"tile"}, []string{"heavy"}
	_, _, err := cover.FromForm(f)
	assert.ErrorContains(t, err, "cover.layers[2].psf: \"heavy\"")
}

// What is written on a slab is read: a slope as it is spoken of, a size with blanks.
// A rise over 12 is not a fraction of an inch: 2/12 falls 2 in per ft.
func TestTrapSlopeOverTwelveReadAsFraction(t *testing.T) {
	for text, want := range map[string]float64{
		"0.5": 0.5, "1/2": 0.5, `1/2"`: 0.5, "½": 0.5, "1/2:12": 0.5, "2/12": 2, "2:12": 2, "1 1/2:12": 1.5, "3 in 12": 3,
	} {
		entries := form(cover.ToForm(simple()))
		entries["cover.slope_in_per_ft"] = []string{text}
		in, _, err := cover.FromForm(entries)
		require.NoError(t, err, text)
		assert.InDelta(t, want, *in.Cover.Slope, 1e-12, text)
	}
	for _, text := range []string{"half", "2 ft", "2'", "1:2", "2:12:12", ":12", "1e999", "NaN"} {
		entries := form(cover.ToForm(simple()))
		entries["cover.slope_in_per_ft"] = []string{text}
		_, _, err := cover.FromForm(entries)
		assert.ErrorContains(t, err, "written 0.5, 1/2 or 1/2:12", text)
	}
}

func TestFormSizeWithBlanks(t *testing.T) {
	for _, text := range []string{"2 x 6", "2X6", "2×6", "2x6"} {
		entries := form(cover.ToForm(simple()))
		entries["rafters.size"] = []string{text}
		in, _, err := cover.FromForm(entries)
		require.NoError(t, err, text)
		assert.Equal(t, "2x6", *in.Rafters.Size)
	}
}

// A fault of a grade lists the grades of that species, not those of a size that
// nobody gave.
func TestGradeFaultListsGrades(t *testing.T) {
	entries := form(cover.ToForm(simple()))
	entries["rafters.grade"] = []string{"#2"}
	delete(entries, "rafters.size")
	_, _, err := cover.FromForm(entries)
	require.ErrorContains(t, err, `rafters.grade: "#2" is not a grade of Douglas Fir-Larch: Select Structural, `)
	assert.ErrorContains(t, err, "No.2")
}
