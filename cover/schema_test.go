package cover_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
)

// The schema names every field, refuses other keys, and takes the demonstrations.
func TestSchema(t *testing.T) {
	var schema map[string]any
	require.NoError(t, json.Unmarshal(cover.Schema(), &schema))
	named := map[string]bool{}
	schemaPaths(schema, "", named)
	for _, f := range cover.Fields() {
		assert.True(t, named[f.Path], "%s is not in the schema", f.Path)
		delete(named, f.Path)
	}
	delete(named, "site.sources")
	assert.Empty(t, named, "the schema knows more than the table")
	for _, in := range []cover.Input{demo(t, "desert"), demo(t, "snow"), demo(t, "coast"), demo(t, "survey"), simple(), standing()} {
		assert.Empty(t, against(schema, tree(t, marshal(t, in)), ""))
	}
}

// What the schema can see, it refuses as the program does.
func TestSchemaRefuses(t *testing.T) {
	var schema map[string]any
	require.NoError(t, json.Unmarshal(cover.Schema(), &schema))
	for _, c := range []struct {
		value any
		path  string
	}{
		{"fast", "site.wind_speed_mph"}, {-5, "site.wind_speed_mph"}, {"E", "site.exposure"}, {1, "site.storey"},
		{2.5, "posts.count"}, {99, "posts.count"}, {[]int{}, "site"}, {1, "site.patio_appendix_adopted"}, {"", "rafters.species"},
		{nil, "cover.width_ft"}, {make([]float64, 61), "beams.lines_ft"}, {2, "schema"},
	} {
		text := edited(t, c.value, strings.Split(c.path, ".")...)
		assert.NotEmpty(t, against(schema, tree(t, []byte(text)), ""), c.path)
		assert.NotEmpty(t, faults(t, text), c.path)
	}
	assert.NotEmpty(t, against(schema, tree(t, []byte(`{}`)), ""))
}

// schemaPaths lists the paths of the values that a schema names.
func schemaPaths(schema map[string]any, path string, out map[string]bool) {
	if items, ok := schema["items"].(map[string]any); ok && items["type"] == "object" {
		schemaPaths(items, path+"[]", out)
		return
	}
	properties, ok := schema["properties"].(map[string]any)
	if !ok {
		out[path] = true
		return
	}
	for name, x := range properties {
		at := name
		if path != "" {
			at = path + "." + name
		}
		schemaPaths(x.(map[string]any), at, out)
	}
}

// against lists what a value has against a schema; it knows the words that ours uses.
func against(schema map[string]any, x any, path string) []string {
	var out []string
	say := func(format string, about ...any) { out = append(out, path+": "+fmt.Sprintf(format, about...)) }
	if words, ok := schema["enum"].([]any); ok && !slices.Contains(words, x) {
		say("%v is none of %v", x, words)
	}
	switch v := x.(type) {
	case map[string]any:
		out = append(out, objectAgainst(schema, v, path)...)
	case []any:
		if most, ok := schema["maxItems"].(float64); schema["type"] != "array" || ok && len(v) > int(most) {
			say("a list of %d", len(v))
		}
		items, _ := schema["items"].(map[string]any)
		for i, e := range v {
			out = append(out, against(items, e, fmt.Sprintf("%s[%d]", path, i))...)
		}
	case json.Number:
		n, err := v.Float64()
		low, isNumber := schema["minimum"].(float64)
		high, _ := schema["maximum"].(float64)
		if err != nil || !isNumber || !(low <= n && n <= high) || schema["type"] == "integer" && n != float64(int(n)) {
			say("%v", v)
		}
	case string:
		if _, ok := schema["enum"]; !ok && (schema["type"] != "string" || v == "" && schema["minLength"] != nil) {
			say("%q", v)
		}
	case bool:
		if schema["type"] != "boolean" {
			say("%v", v)
		}
	default:
		say("%v", x)
	}
	return out
}

func objectAgainst(schema, x map[string]any, path string) []string {
	var out []string
	properties, _ := schema["properties"].(map[string]any)
	rest, open := schema["additionalProperties"].(map[string]any)
	for name, e := range x {
		inner, ok := properties[name].(map[string]any)
		if !ok && !open {
			out = append(out, path+"."+name+": unknown")
			continue
		}
		if !ok {
			inner = rest
		}
		out = append(out, against(inner, e, path+"."+name)...)
	}
	required, _ := schema["required"].([]any)
	for _, name := range required {
		if _, ok := x[name.(string)]; !ok {
			out = append(out, path+"."+name.(string)+": missing")
		}
	}
	return out
}
