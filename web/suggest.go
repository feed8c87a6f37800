package web

import (
	"html/template"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/loads"
)

// suggestions names the list that a text field picks from, empty if it has none.
func suggestions(path string) string {
	last := path[strings.LastIndex(path, ".")+1:]
	switch {
	case path == "cover.layers[].name", path == "house.old_roof.layers[].name":
		return "known-layers"
	case last == "species", last == "tail_species", last == "rated_for":
		return "known-species"
	case last == "grade", last == "tail_grade":
		return "known-grades"
	case last == "size", last == "tail_size":
		return "known-sizes"
	}
	return ""
}

// A suggested is a list of suggestions.
type suggested struct {
	ID    string
	Words []string
}

// known are the lists of suggestions, whose words are those of the tables. They are
// the same on every page, so they are written once.
var known = datalists([]suggested{
	{"known-layers", names(loads.Layers(), func(l loads.Layer) string { return l.Name })},
	{"known-species", append(lumber.Species(), lumber.LaminatedSpecies()...)},
	{"known-grades", grades()},
	{"known-sizes", names(lumber.Sections(), func(s lumber.Section) string { return s.Name })},
})

func datalists(all []suggested) template.HTML {
	var b []byte
	for _, l := range all {
		b = append(b, `<datalist id="`...)
		b = appendEscaped(b, l.ID)
		b = append(b, `">`...)
		for _, w := range l.Words {
			b = append(b, `<option value="`...)
			b = appendEscaped(b, w)
			b = append(b, `"></option>`...)
		}
		b = append(b, "</datalist>\n"...)
	}
	return template.HTML(b)
}

func names[T any](list []T, name func(T) string) []string {
	out := make([]string, len(list))
	for i, x := range list {
		out[i] = name(x)
	}
	return out
}

// grades lists every grade of every species once, in the order of the tables, and the
// machine grades.
func grades() []string {
	var out []string
	seen := map[string]bool{}
	for _, s := range append(lumber.Species(), lumber.LaminatedSpecies()...) {
		for _, g := range lumber.Grades(s) {
			if !seen[g] {
				seen[g] = true
				out = append(out, g)
			}
		}
	}
	return append(out, lumber.MachineGrades()...)
}
