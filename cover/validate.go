package cover

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"patiocover/calc"
)

// MaxList is the most elements of a list in an input, a limit of this program.
const MaxList = 60

// Validate lists every fault of the input at once, as a [*calc.InputError]:
// first each field against its row of fields.csv, then the fields against each
// other. It returns nil for an input that Size can answer.
func (in Input) Validate() error {
	var f calc.Fields
	visit(reflect.ValueOf(in), "", func(path string, v reflect.Value) { checkField(path, v, &f) })
	in.checkSources(&f)
	in.checkSite(&f)
	in.checkSnow(&f)
	in.checkCover(&f)
	in.checkBeamLines(&f)
	in.checkFlush(&f)
	in.checkCuts(&f)
	in.checkPosts(&f)
	in.checkProducts(&f)
	in.checkLumber(&f)
	in.checkDeck(&f)
	in.checkConnections(&f)
	in.checkHold(&f)
	in.checkProductUse(&f)
	in.checkBraces(&f)
	in.checkOldRoof(&f)
	return f.Err()
}

// checkField checks one value against its row of fields.csv.
func checkField(path string, v reflect.Value, f *calc.Fields) {
	d, ok := FieldOf(path)
	if !ok {
		return // a map or a list of structs, checked by its own rule
	}
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			if d.Need == NeedRequired {
				f.Missing(path, d.Allowed())
			}
			return
		}
		v = v.Elem()
	}
	switch v.Kind() {
	case reflect.Float64:
		f.Within(path, v.Float(), d.Low, d.High, d.Unit)
	case reflect.Int:
		f.Within(path, float64(v.Int()), d.Low, d.High, d.Unit)
	case reflect.String:
		checkText(path, v.String(), d, f)
	case reflect.Slice:
		checkNumbers(path, v, d, f)
	}
}

// checkText checks a choice against its words, and free text against its length.
func checkText(path, text string, d Field, f *calc.Fields) {
	if d.Kind == KindChoice {
		f.OneOf(path, text, d.Choices...)
		return
	}
	control := func(r rune) bool { return unicode.IsControl(r) && r != '\n' }
	n := utf8.RuneCountInString(text)
	if n < 1 || n > maxText || !utf8.ValidString(text) || strings.ContainsFunc(text, control) {
		f.Add(path, shown(text), anyText+" without control characters")
	}
}

// checkNumbers checks a list of numbers, which must rise.
func checkNumbers(path string, v reflect.Value, d Field, f *calc.Fields) {
	if v.Len() > MaxList {
		f.Add(path, strconv.Itoa(v.Len())+" numbers", fmt.Sprintf("up to %d numbers", MaxList))
		return
	}
	for i := range v.Len() {
		f.Within(path+"["+strconv.Itoa(i)+"]", v.Index(i).Float(), d.Low, d.High, d.Unit)
	}
	list := v.Interface().([]float64)
	if !slices.IsSortedFunc(list, strictly) {
		f.Add(path, shown(list), "a list that rises from each number to the next")
	}
}

// strictly orders equal numbers as out of order.
func strictly(a, b float64) int {
	if a < b {
		return -1
	}
	return 1
}

// checkSources lets the user cite only keys of the site.
func (in Input) checkSources(f *calc.Fields) {
	for _, name := range slices.Sorted(maps.Keys(in.Site.Sources)) {
		path := "site.sources." + name
		if _, ok := fieldAt["site."+name]; !ok {
			f.Add(path, "an unknown key", "a key of site")
			continue
		}
		checkText(path, in.Site.Sources[name], Field{Kind: KindText}, f)
	}
}
