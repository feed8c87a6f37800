package calc

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// A Fault is one wrong field of an input: where it is, what was given, what is
// allowed.
type Fault struct {
	Path    string `json:"path"`    // path as the user wrote it, such as rafters.spacing_in
	Given   string `json:"given"`   // what was given, as text; "nothing" when it is missing
	Allowed string `json:"allowed"` // what is allowed, with its unit
}

// String writes the fault as one clause behind the path of its field.
func (f Fault) String() string { return f.Path + ": " + f.Words() }

// Words says what is wrong without the path: what was given is not what is allowed,
// or what is missing.
func (f Fault) Words() string {
	if f.Given == nothing {
		return "missing: " + f.Allowed
	}
	return f.Given + " is not " + f.Allowed
}

// nothing stands for what was given where a field is missing.
const nothing = "nothing"

// An InputError lists every fault of an input, in the order of its fields.
type InputError struct {
	Faults []Fault `json:"faults"` // at least one
}

// Error joins the faults with semicolons.
func (e *InputError) Error() string {
	all := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		all[i] = f.String()
	}
	return strings.Join(all, "; ")
}

// Fields collects the faults of an input. The zero value is ready to use.
type Fields struct {
	faults *[]Fault
	prefix string
}

// In returns a collector for the fields below name; its faults are added to f.
func (f *Fields) In(name string) *Fields {
	return &Fields{faults: f.list(), prefix: f.path(name) + "."}
}

// At returns a collector for element i of the list called name.
func (f *Fields) At(name string, i int) *Fields {
	return f.In(name + "[" + strconv.Itoa(i) + "]")
}

// Within records a fault unless low ≤ x ≤ high. A value that is not a number, or
// not finite, is always a fault.
func (f *Fields) Within(name string, x, low, high float64, unit string) {
	if low <= x && x <= high && !math.IsInf(x, 0) {
		return
	}
	given := Number(x)
	if round := strconv.FormatFloat(x, 'g', 6, 64); len(round) < len(given) && !between(round, low, high) {
		given = round
	}
	f.Add(name, join(given, unit), join(Number(low)+" to "+Number(high), unit))
}

// between reports whether the number that a text says is within limits.
func between(text string, low, high float64) bool {
	x, err := strconv.ParseFloat(text, 64)
	return err == nil && low <= x && x <= high
}

// OneOf records a fault unless given is one of the allowed words.
func (f *Fields) OneOf(name, given string, allowed ...string) {
	if slices.Contains(allowed, given) {
		return
	}
	f.Add(name, strconv.Quote(given), "one of "+strings.Join(allowed, ", "))
}

// Add records a fault in the field called name.
func (f *Fields) Add(name, given, allowed string) {
	list := f.list()
	*list = append(*list, Fault{Path: f.path(name), Given: given, Allowed: allowed})
}

// Missing records that the field called name was not given.
func (f *Fields) Missing(name, allowed string) { f.Add(name, nothing, allowed) }

// Any reports whether a fault was recorded.
func (f *Fields) Any() bool { return f.faults != nil && len(*f.faults) > 0 }

// Err returns nil when there was no fault, else an *[InputError].
func (f *Fields) Err() error {
	if !f.Any() {
		return nil
	}
	return &InputError{Faults: *f.faults}
}

func (f *Fields) list() *[]Fault {
	if f.faults == nil {
		f.faults = new([]Fault)
	}
	return f.faults
}

func (f *Fields) path(name string) string {
	if name == "" {
		return strings.TrimSuffix(f.prefix, ".")
	}
	return f.prefix + name
}

// Number writes x in the shortest form that reads back as x.
func Number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

func join(value, unit string) string {
	if unit == "" {
		return value
	}
	return fmt.Sprintf("%s %s", value, unit)
}
