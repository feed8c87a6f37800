package cover_test

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/cover"
)

// A list may be long in bytes and is then refused by its length, not item by item.
func TestHugeLists(t *testing.T) {
	list := strings.Repeat("1,", 100000) + "1"
	for _, c := range []struct{ path, text string }{
		{"beams.lines_ft", edited(t, json.RawMessage("["+list+"]"), "beams", "lines_ft")},
		{"posts.positions_ft", edited(t, json.RawMessage("["+list+"]"), "posts", "positions_ft")},
		{"cover.layers", edited(t, json.RawMessage(`[`+strings.Repeat(`{"name":"a","psf":1},`, 20000)+`{}]`), "cover", "layers")},
		{"house.joints", edited(t, json.RawMessage(`[`+strings.Repeat(`{"mark":"a"},`, 20000)+`{"mark":"b"}]`), "house", "joints")},
	} {
		all := faults(t, c.text)
		assert.LessOrEqual(t, len(all), 2, "%s: a list too long is one fault", c.path)
		assert.Equal(t, c.path, all[0].Path)
		assert.Contains(t, all[0].Allowed, "at most 60")
	}
}

// So is a list that a program built.
func TestHugeListsInTheInput(t *testing.T) {
	in := simple()
	in.House.Joints = make([]cover.Joint, 61)
	for i := range in.House.Joints {
		in.House.Joints[i].Mark = new("A")
	}
	assert.ErrorContains(t, in.Validate(), "house.joints: 61 joints")
	in.House.Joints, in.Posts.Count, in.Posts.Positions = nil, nil, make([]float64, 100000)
	var input *calc.InputError
	require.ErrorAs(t, in.Validate(), &input)
	assert.Len(t, input.Faults, 1)
}

// What a program builds rather than reads is checked alike: not a number, no bound.
func TestNumbersThatAreNone(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for _, f := range cover.Fields() {
			if f.Kind != cover.KindNumber || strings.Contains(f.Path, "[]") {
				continue
			}
			in := simple()
			set(t, &in, f.Path, x)
			_, err := cover.Size(in)
			assert.ErrorContains(t, err, f.Path+": ", "%v", x)
		}
		in := simple()
		in.Beams.Lines = []float64{x}
		assert.ErrorContains(t, in.Validate(), "beams.lines_ft[0]")
		in.Beams.Lines, in.Posts.Count, in.Posts.Positions = nil, nil, []float64{0, x}
		assert.ErrorContains(t, in.Validate(), "posts.positions_ft[1]")
		in.Posts.Positions, in.Cover.Layers[0].Weight = []float64{0, 20}, &x
		assert.ErrorContains(t, in.Validate(), "cover.layers[0].psf")
	}
}

// set writes a number at a path of an input, by the names of its keys.
func set(t testing.TB, in *cover.Input, path string, x float64) {
	t.Helper()
	v := reflect.ValueOf(in).Elem()
	for name := range strings.SplitSeq(path, ".") {
		field := -1
		for i := range v.NumField() {
			if key, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ","); key == name {
				field = i
			}
		}
		require.GreaterOrEqual(t, field, 0, path)
		v = v.Field(field)
	}
	v.Set(reflect.ValueOf(&x))
}
