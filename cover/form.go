package cover

import (
	"encoding/json"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"patiocover/calc"
)

// FromForm reads an input from the fields of a form, whose keys are the paths of
// the input: cover.projection_ft, cover.layers[0].name. An empty text was not
// said. Lengths may be written in feet and inches; understood holds for each of
// them how it was read. Faults are listed as Read lists them.
func FromForm(form map[string][]string) (in Input, understood map[string]string, err error) {
	var f calc.Fields
	understood = map[string]string{}
	tree := map[string]any{"schema": json.Number(strconv.Itoa(SchemaVersion))}
	for _, path := range slices.Sorted(maps.Keys(form)) {
		if path == JointsTable {
			plantJoints(tree, strings.Join(form[path], "\n"), &f)
			continue
		}
		text := strings.TrimSpace(strings.Join(form[path], ", "))
		if text == "" || path == "schema" {
			continue
		}
		d, ok := FieldOf(path)
		if !ok && !strings.HasPrefix(path, "site.sources.") {
			f.Add(path, "an unknown field", "a field of the form")
			continue
		}
		x, heard, ok := formValue(text, d)
		if !ok {
			f.Add(path, shown(text), d.Allowed()+d.manner())
			continue
		}
		if heard != "" {
			understood[path] = heard
		}
		if !plant(tree, strings.Split(path, "."), x) {
			f.Add(path, "a list number out of range", "lists numbered from 0 without a gap")
		}
	}
	dropGaps(tree)
	in, err = build(tree, &f)
	return in, understood, err
}

// formValue turns the text of a form field into the value that JSON would carry,
// and tells how a length was understood.
func formValue(text string, d Field) (x any, heard string, ok bool) {
	switch {
	case d.Kind == KindNumbers:
		return formNumbers(text, d)
	case d.Length():
		n, err := calc.ParseLength(text, unitOf(d))
		if err != nil {
			return nil, "", false
		}
		return number(n / unitOf(d)), calc.FeetInches(n), true
	case d.Kind == KindNumber, d.Kind == KindInteger:
		n, err := strconv.ParseFloat(text, 64)
		plain := !strings.ContainsAny(text, "xXpPnN_")
		if err != nil && d.Unit == perFoot {
			n, ok := fall(text)
			return number(n), calc.Number(n) + " in per ft", ok
		}
		return number(n), "", err == nil && plain
	case strings.HasSuffix(d.Path, ".size"), strings.HasSuffix(d.Path, ".tail_size"):
		size := sizeWords.Replace(text)
		if size != text {
			heard = size
		}
		return size, heard, true
	case d.Kind == KindFlag:
		b, err := strconv.ParseBool(text)
		return b, "", err == nil
	}
	return text, "", true
}

// perFoot is the unit of a slope.
const perFoot = "in/ft"

// sizeWords writes a nominal size as the table of sizes does.
var sizeWords = strings.NewReplacer(" ", "", "X", "x", "×", "x")

// fall reads a slope as it is spoken of: 1/2, 1/2:12 or 2/12, in of fall per ft.
func fall(text string) (inches float64, ok bool) {
	for _, run := range []string{":12", "/12", " in 12"} {
		if rise, found := strings.CutSuffix(text, run); found {
			text = strings.TrimSpace(rise)
			break
		}
	}
	if strings.ContainsFunc(text, unicode.IsLetter) || strings.ContainsAny(text, "'′’:") {
		return 0, false
	}
	n, err := calc.ParseLength(text, calc.In)
	return n / calc.In, err == nil
}

// manner says how to write the value in a form.
func (f Field) manner() string {
	switch {
	case f.Kind == KindNumbers:
		return ", with commas between"
	case f.Length() && f.Unit == "ft":
		return `, written 12' 6", 12-6, 12.5 or 3.8 m`
	case f.Length():
		return `, written 24, 19.2, 1' 6" or 610 mm`
	case f.Unit == perFoot:
		return ", written 0.5, 1/2 or 1/2:12"
	case f.Kind == KindNumber || f.Kind == KindInteger:
		return ", written with a point and without its unit"
	}
	return ""
}

func formNumbers(text string, d Field) (x any, heard string, ok bool) {
	var list []any
	var all []string
	for part := range strings.SplitSeq(text, ",") {
		n, err := calc.ParseLength(strings.TrimSpace(part), unitOf(d))
		if err != nil {
			return nil, "", false
		}
		list = append(list, number(n/unitOf(d)))
		all = append(all, calc.FeetInches(n))
	}
	return list, strings.Join(all, ", "), true
}

// unitOf is the unit of a length field, in.
func unitOf(d Field) float64 {
	if d.Unit == "ft" {
		return calc.Ft
	}
	return calc.In
}

func number(x float64) json.Number { return json.Number(strconv.FormatFloat(x, 'g', -1, 64)) }

// plant sets the value at a path of a tree, making objects and lists on the way.
// It reports false when a list number is too high.
func plant(tree map[string]any, path []string, x any) bool {
	name, at, isList := strings.Cut(path[0], "[")
	if len(path) == 1 {
		tree[name] = x
		return true
	}
	if !isList {
		next, ok := tree[name].(map[string]any)
		if !ok {
			next = map[string]any{}
			tree[name] = next
		}
		return plant(next, path[1:], x)
	}
	i, err := strconv.Atoi(strings.TrimSuffix(at, "]"))
	if err != nil || i >= MaxList {
		return false
	}
	list, _ := tree[name].([]any)
	for len(list) <= i {
		list = append(list, map[string]any{})
	}
	tree[name] = list
	return plant(list[i].(map[string]any), path[1:], x)
}

// dropGaps removes the empty elements of lists, which are rows of the form that
// were left blank.
func dropGaps(tree map[string]any) {
	for name, x := range tree {
		switch x := x.(type) {
		case map[string]any:
			dropGaps(x)
		case []any:
			tree[name] = slices.DeleteFunc(x, func(e any) bool {
				object, ok := e.(map[string]any)
				return ok && len(object) == 0
			})
		}
	}
}

// ToForm writes an input as the texts of a form, by path. FromForm reads them
// back to the same input, lengths to a billionth of their unit.
func ToForm(in Input) map[string]string {
	out := map[string]string{}
	visit(reflect.ValueOf(in), "", func(path string, v reflect.Value) {
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				return
			}
			v = v.Elem()
		}
		switch v.Kind() {
		case reflect.Float64:
			out[path] = formNumber(path, v.Float())
		case reflect.Int:
			out[path] = strconv.FormatInt(v.Int(), 10)
		case reflect.Bool:
			out[path] = strconv.FormatBool(v.Bool())
		case reflect.String:
			out[path] = v.String()
		case reflect.Slice:
			if list := v.Interface().([]float64); len(list) > 0 {
				all := make([]string, len(list))
				for i, x := range list {
					all[i] = formNumber(path, x)
				}
				out[path] = strings.Join(all, ", ")
			}
		case reflect.Map:
			for name, text := range v.Interface().(map[string]string) {
				out[path+"."+name] = text
			}
		}
	})
	return out
}

// formNumber writes a number of the field at path: a length with no more digits than
// one may be written with.
func formNumber(path string, x float64) string {
	if d, ok := FieldOf(path); ok && d.Length() {
		x = math.Round(x*1e9) / 1e9
	}
	return calc.Number(x)
}
