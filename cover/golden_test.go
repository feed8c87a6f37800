package cover_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
)

var update = flag.Bool("update", false, "rewrite the reports in testdata/covers")

// digits is the relative difference that still counts as the same four digits;
// least is the difference below which two numbers are both nothing.
const (
	digits = 5e-5
	least  = 1e-9
)

// The reports of the demonstration covers are kept whole, and compared as
// numbers: the last digits differ between machines.
func TestGoldenReports(t *testing.T) {
	t.Parallel()
	for _, name := range demos {
		t.Run(name, func(t *testing.T) {
			got, err := json.MarshalIndent(size(t, demo(t, name)), "", "  ")
			require.NoError(t, err)
			file := demoPath(t, name+".report.json")
			if *update {
				require.NoError(t, os.WriteFile(file, append(got, '\n'), 0o644))
			}
			want, err := os.ReadFile(file)
			require.NoError(t, err)
			for _, fault := range differences("", tree(t, want), tree(t, got)) {
				t.Error(fault)
			}
		})
	}
}

// tree decodes JSON keeping numbers as they are written.
func tree(t testing.TB, text []byte) any {
	t.Helper()
	var out any
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	require.NoError(t, d.Decode(&out))
	return out
}

// differences lists where two trees differ, numbers to four digits.
func differences(path string, want, got any) []string {
	switch w := want.(type) {
	case map[string]any:
		if g, ok := got.(map[string]any); ok {
			return objectDifferences(path, w, g)
		}
	case []any:
		g, ok := got.([]any)
		if !ok || len(g) != len(w) {
			return []string{fmt.Sprintf("%s: another length of the list", path)}
		}
		var out []string
		for i := range w {
			out = append(out, differences(fmt.Sprintf("%s[%d]", path, i), w[i], g[i])...)
		}
		return out
	case json.Number:
		if g, ok := got.(json.Number); ok && sameNumber(w, g) {
			return nil
		}
	}
	if want == got && comparable(want) {
		return nil
	}
	return []string{fmt.Sprintf("%s: want %v, got %v", path, want, got)}
}

// comparable reports whether a value is no list and no object.
func comparable(x any) bool {
	switch x.(type) {
	case map[string]any, []any:
		return false
	}
	return true
}

func objectDifferences(path string, want, got map[string]any) []string {
	var out []string
	keys := slices.Collect(maps.Keys(want))
	for name := range got {
		if _, ok := want[name]; !ok {
			keys = append(keys, name)
		}
	}
	slices.Sort(keys)
	for _, name := range keys {
		w, inWant := want[name]
		g, inGot := got[name]
		if inWant != inGot {
			out = append(out, fmt.Sprintf("%s.%s: only on one side", path, name))
			continue
		}
		out = append(out, differences(path+"."+name, w, g)...)
	}
	return out
}

func sameNumber(want, got json.Number) bool {
	w, err := want.Float64()
	if err != nil {
		return false
	}
	g, err := got.Float64()
	return err == nil && math.Abs(w-g) <= least+digits*math.Max(math.Abs(w), math.Abs(g))
}

// The comparison itself must see what it is for.
func TestDifferencesAreSeen(t *testing.T) {
	cases := []struct {
		name      string
		want, got string
		faults    int
	}{
		{"the fifth digit", `{"a": 1.00001}`, `{"a": 1.00002}`, 0},
		{"the fourth digit", `{"a": 1.001}`, `{"a": 1.002}`, 1},
		{"noise about nothing", `{"a": 1e-16}`, `{"a": 0}`, 0},
		{"nothing against something", `{"a": 0}`, `{"a": 1e-3}`, 1},
		{"beyond any limit against a number", `{"a": null}`, `{"a": 1}`, 1},
		{"beyond any limit twice", `{"a": null}`, `{"a": null}`, 0},
		{"a letter", `{"a": "OK"}`, `{"a": "OVER"}`, 1},
		{"a key more", `{"a": 1}`, `{"a": 1, "b": 2}`, 1},
		{"a key less", `{"a": 1, "b": 2}`, `{"a": 1}`, 1},
		{"a longer list", `[1, 2]`, `[1, 2, 3]`, 1},
		{"deep down", `[{"a": [1, {"b": true}]}]`, `[{"a": [1, {"b": false}]}]`, 1},
		{"a list against an object", `[]`, `{}`, 1},
		{"an object against nothing", `{}`, `null`, 1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			assert.Len(t, differences("", tree(t, []byte(c.want)), tree(t, []byte(c.got))), c.faults)
		})
	}
}

// What was read and written again is the same input.
func TestInputRoundTrip(t *testing.T) {
	t.Parallel()
	for _, name := range demos {
		t.Run(name, func(t *testing.T) {
			first := demo(t, name)
			again, err := cover.Read(bytes.NewReader(marshal(t, first)))
			require.NoError(t, err)
			assert.Equal(t, first, again)
			one, two := size(t, first), size(t, again)
			assert.Equal(t, one.Stamp, two.Stamp)
			assert.Len(t, one.Stamp.InputHash, 64)
			echoed, err := cover.Read(bytes.NewReader(marshal(t, one.Input)))
			require.NoError(t, err)
			assert.Equal(t, first, echoed, "the report shows the input as it was given")
		})
	}
}

// A report that was stored can be read back, with ratios beyond any limit.
func TestReportRoundTrip(t *testing.T) {
	t.Parallel()
	for _, name := range demos {
		t.Run(name, func(t *testing.T) {
			text := marshal(t, size(t, demo(t, name)))
			var back cover.Report
			require.NoError(t, json.Unmarshal(text, &back))
			assert.True(t, bytes.Equal(text, marshal(t, back)), "read back it is another report")
		})
	}
}

// Two inputs that differ in anything have different hashes.
func TestHashTellsInputsApart(t *testing.T) {
	seen := map[string]string{}
	for _, name := range demos {
		hash := size(t, demo(t, name)).Stamp.InputHash
		assert.Empty(t, seen[hash], name)
		seen[hash] = name
	}
	in := demo(t, "desert")
	in.Job.Note = new("another note")
	assert.Empty(t, seen[size(t, in).Stamp.InputHash])
}

// Every check and every line of the reports is written, byte for byte, as the encoder
// writes it by the tags.
func TestChecksAreWrittenByTheirTags(t *testing.T) {
	t.Parallel()
	for _, name := range demos {
		r := size(t, demo(t, name))
		count := 0
		eachWritten(reflect.ValueOf(r), func(x any) {
			count++
			got, err := json.Marshal(x)
			require.NoError(t, err)
			var want []byte
			switch x := x.(type) {
			case calc.Check:
				want, err = calctest.CheckByTags(x)
			case calc.Line:
				want, err = calctest.LineByTags(x)
			}
			require.NoError(t, err)
			assert.Equal(t, string(want), string(got), name)
		})
		assert.Greater(t, count, 100, name)
	}
}

// eachWritten visits every check and every line in a value.
func eachWritten(v reflect.Value, visit func(any)) {
	switch v.Kind() {
	case reflect.Struct:
		switch x := v.Interface().(type) {
		case calc.Line:
			visit(x)
			return
		case calc.Check:
			visit(x)
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				eachWritten(v.Field(i), visit)
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			eachWritten(v.Elem(), visit)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			eachWritten(v.Index(i), visit)
		}
	}
}
