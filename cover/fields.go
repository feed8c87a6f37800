package cover

import (
	_ "embed" // fields.csv
	"regexp"
	"slices"
	"strconv"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

//go:embed fields.csv
var fieldsCSV string

// fields holds the rows of fields.csv in order.
var fields = calc.ReadTable("fields.csv", fieldsCSV, newField)

// fieldAt finds the place of a field by its path without list numbers.
var fieldAt = func() map[string]int {
	m := make(map[string]int, len(fields))
	for i := range fields {
		m[fields[i].Path] = i
	}
	return m
}()

// The kinds of field.
const (
	KindNumber  = "number"  // one number in Unit
	KindInteger = "integer" // one whole number
	KindNumbers = "numbers" // a list of numbers in Unit
	KindText    = "text"    // free words
	KindChoice  = "choice"  // one of Choices
	KindFlag    = "flag"    // true or false
)

// The needs of a field.
const (
	NeedRequired = "required" // must be given
	NeedAssumed  = "assumed"  // Default is taken and listed when it is not given
	NeedOpen     = "open"     // may be left open: chosen, or not there
)

// A Field describes one field of an input: the single home of its range, its
// words, its default and the reason for it.
type Field struct {
	Path    string      // path in the input, with [] for each element of a list
	Kind    string      // one of the Kind constants
	Unit    string      // unit of a number, empty when dimensionless
	Low     float64     // least allowed number, in Unit
	High    float64     // largest allowed number, in Unit
	Choices []string    // allowed words of a choice
	Need    string      // one of the Need constants
	Default string      // what is assumed, as text
	Label   string      // what it is, for people
	Why     string      // reason for the default or the limit
	Source  string      // the rule behind it
	Status  calc.Status // how the rule came into the project
}

// Fields returns every field of an input in the order of the form.
func Fields() []Field { return slices.Clone(fields) }

// Length reports whether the field is a length that may be written in feet and
// inches.
func (f Field) Length() bool {
	return (f.Kind == KindNumber || f.Kind == KindNumbers) && (f.Unit == "ft" || f.Unit == "in")
}

// Allowed words what the field accepts.
func (f Field) Allowed() string {
	span := calc.Number(f.Low) + " to " + calc.Number(f.High)
	if f.Unit != "" {
		span += " " + f.Unit
	}
	switch f.Kind {
	case KindNumber:
		return "a number from " + span
	case KindInteger:
		return "a whole number from " + span
	case KindNumbers:
		return "a list of numbers from " + span
	case KindChoice:
		return "one of " + strings.Join(f.Choices, ", ")
	case KindFlag:
		return "true or false"
	}
	switch _, name, _ := strings.Cut(f.Path, "."); name {
	case "species":
		return "one of " + strings.Join(append(lumber.Species(), lumber.LaminatedSpecies()...), ", ") +
			", or the name of a product whose values you give"
	case "grade":
		return "the grade of the stamp, such as No.2 or 24F-V4, or " + givenGrade
	case "size":
		return "a size, such as 2x6, 3-2x10 or 5-1/8x12"
	}
	return anyText
}

// anyText words what a field of free text accepts.
var anyText = "text of 1 to " + strconv.Itoa(maxText) + " characters"

func newField(r calc.Row) Field {
	f := Field{
		Path: r.Text("path"), Kind: r.Text("kind"), Unit: r.Text("unit"),
		Need: r.Text("need"), Default: r.Text("default"), Label: r.Text("label"),
		Why: r.Text("why"), Source: r.Text("source"), Status: r.Status(),
	}
	if r.Has("low") {
		f.Low, f.High = r.Num("low"), r.Num("high")
	}
	if r.Has("choices") {
		f.Choices = strings.Split(r.Text("choices"), "|")
	}
	return f
}

var listNumber = regexp.MustCompile(`\[\d+\]`)

// FieldOf returns the field of a path as the user wrote it, with list numbers.
func FieldOf(path string) (Field, bool) {
	i, ok := fieldAt[withoutNumbers(path)]
	if !ok {
		return Field{}, false
	}
	return fields[i], true
}

// withoutNumbers takes the list numbers out of a path.
func withoutNumbers(path string) string {
	if !strings.Contains(path, "[") {
		return path
	}
	return listNumber.ReplaceAllString(path, "[]")
}
