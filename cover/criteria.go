package cover

import (
	"reflect"
	"strings"
)

// criteria lists every value of the site with its source: the user's own words
// where there are any.
func criteria(in, full Input) []Criterion {
	said := map[string]bool{}
	visit(reflect.ValueOf(in), "", func(path string, v reflect.Value) {
		said[path] = v.Kind() != reflect.Pointer || !v.IsNil()
	})
	texts := ToForm(full)
	var out []Criterion
	for _, f := range fields {
		name, ok := strings.CutPrefix(f.Path, "site.")
		value, filled := texts[f.Path]
		if !ok || !filled || !in.concerns(f.Path) {
			continue
		}
		c := Criterion{Path: f.Path, Label: f.Label, Value: value, Unit: f.Unit, Given: said[f.Path]}
		switch own, cited := in.Site.Sources[name]; {
		case cited:
			c.Source = own
		case c.Given:
			c.Source = "as given; no source stated"
		default:
			c.Source = "assumed: " + f.Source
		}
		out = append(out, c)
	}
	return out
}
