package cover_test

import (
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
)

// paths lists every path of a type that holds a value, with its type.
func paths(t reflect.Type, path string, out map[string]reflect.Type) {
	switch t.Kind() {
	case reflect.Pointer:
		paths(t.Elem(), path, out)
	case reflect.Struct:
		for i := range t.NumField() {
			name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
			if path != "" {
				name = path + "." + name
			}
			paths(t.Field(i).Type, name, out)
		}
	case reflect.Slice:
		if t.Elem().Kind() == reflect.Struct {
			paths(t.Elem(), path+"[]", out)
			return
		}
		out[path] = t
	default:
		out[path] = t
	}
}

// listNumber is the number of an element in a path.
var listNumber = regexp.MustCompile(`\[\d+\]`)

// kindOf are the kinds of field that suit a type.
var kindOf = map[string][]string{
	"float64": {cover.KindNumber}, "int": {cover.KindInteger}, "bool": {cover.KindFlag}, "[]float64": {cover.KindNumbers},
	"string": {cover.KindText, cover.KindChoice},
}

// The table of fields and the input type name the same values, and agree on what they
// are.
func TestFieldsAreThoseOfTheInput(t *testing.T) {
	typed := map[string]reflect.Type{}
	paths(reflect.TypeFor[cover.Input](), "", typed)
	seen := map[string]bool{}
	for _, f := range cover.Fields() {
		assert.False(t, seen[f.Path], "%s stands twice", f.Path)
		seen[f.Path] = true
		if of, ok := typed[f.Path]; assert.True(t, ok, "%s is no value of an input", f.Path) {
			assert.Contains(t, kindOf[of.String()], f.Kind, f.Path)
		}
	}
	for path, of := range typed {
		if of.Kind() != reflect.Map {
			assert.True(t, seen[path], "%s is not in the table of fields", path)
		}
	}
}

// The key of a number tells its unit.
func TestFieldKeysNameTheirUnit(t *testing.T) {
	ending := map[string]string{"ft": "_ft", "in": "_in", "psf": "psf", "mph": "_mph", "in/ft": "_in_per_ft", "in/h": "_in_per_hour"}
	for _, f := range cover.Fields() {
		if f.Kind == cover.KindNumber || f.Kind == cover.KindNumbers {
			if end, ok := ending[f.Unit]; ok {
				assert.True(t, strings.HasSuffix(f.Path, end), "%s is in %s", f.Path, f.Unit)
			}
		}
	}
}

// Every row holds together: a range that is one, a default inside it, words to choose
// from, a label for people, and a reason and a source for what is assumed.
func TestFieldRows(t *testing.T) {
	for _, f := range cover.Fields() {
		t.Run(f.Path, func(t *testing.T) {
			assert.NotEmpty(t, f.Label)
			assert.Contains(t, []string{cover.NeedRequired, cover.NeedAssumed, cover.NeedOpen}, f.Need)
			assert.NotEmpty(t, f.Allowed())
			number := f.Kind == cover.KindNumber || f.Kind == cover.KindInteger || f.Kind == cover.KindNumbers
			if number {
				assert.LessOrEqual(t, f.Low, f.High)
			}
			assert.Equal(t, f.Kind == cover.KindChoice, len(f.Choices) > 1, "words are for a choice")
			assert.Equal(t, f.Need == cover.NeedAssumed, f.Default != "", "a default is what is assumed")
			if f.Need != cover.NeedAssumed {
				return
			}
			assert.NotEmpty(t, f.Why)
			assert.NotEmpty(t, f.Source)
			switch f.Kind {
			case cover.KindNumber, cover.KindInteger:
				x, err := strconv.ParseFloat(f.Default, 64)
				require.NoError(t, err)
				assert.True(t, f.Low <= x && x <= f.High, "%v is not in %s", x, f.Allowed())
			case cover.KindChoice:
				assert.Contains(t, f.Choices, f.Default)
			case cover.KindFlag:
				_, err := strconv.ParseBool(f.Default)
				require.NoError(t, err)
			}
		})
	}
}

// Every assumption is listed with its reason, in the order of the fields, and nothing
// that was said is assumed.
func TestAssumptionsAreListed(t *testing.T) {
	for _, in := range []cover.Input{simple(), standing(), demo(t, "desert"), demo(t, "survey")} {
		full, list := in.Assume()
		said, filled := cover.ToForm(in), cover.ToForm(full)
		var order []string
		for _, f := range cover.Fields() {
			order = append(order, f.Path)
		}
		last := -1
		for _, a := range list {
			assert.NotContains(t, said, a.Path)
			assert.Equal(t, filled[a.Path], a.Value, a.Path)
			assert.NotEmpty(t, a.Why, a.Path)
			assert.NotEmpty(t, a.Label, a.Path)
			at := slices.Index(order, listNumber.ReplaceAllString(a.Path, "[]"))
			require.GreaterOrEqual(t, at, 0, a.Path)
			if at == last && strings.Contains(a.Path, "[") {
				continue // another element of the list
			}
			assert.Greater(t, at, last, "%s is out of order", a.Path)
			last = at
		}
		assert.NotEmpty(t, list)
		again, none := full.Assume()
		assert.Equal(t, full, again, "a filled input stays as it is")
		assert.Empty(t, none)
	}
}

// Filling an input, and answering it, leave the one that was given as it was.
func TestAssumeChangesNothingOfItsOwner(t *testing.T) {
	for _, name := range demos {
		in := demo(t, name)
		before := string(marshal(t, in))
		full, _ := in.Assume()
		for i := range full.Cover.Layers {
			full.Cover.Layers[i].Name = new("another")
		}
		for i := range full.House.Joints {
			full.House.Joints[i].Mark = new("another")
		}
		for i := range full.Beams.Lines {
			full.Beams.Lines[i]++
		}
		for i := range full.Posts.Positions {
			full.Posts.Positions[i]++
		}
		size(t, in)
		assert.Equal(t, before, string(marshal(t, in)), name)
	}
	list := cover.Fields()
	list[0].Path = "changed"
	assert.Equal(t, "schema", cover.Fields()[0].Path)
}
