package cover

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"patiocover/calc"
)

// maxInput is the largest input that Read takes, in bytes.
const maxInput = 1 << 20

// maxDepth is the deepest nesting of an input.
const maxDepth = 16

// maxText is the longest text of a field, in characters.
const maxText = 400

// A SyntaxError says that a text is not JSON at all, so that no field of it can
// be named.
type SyntaxError struct {
	Reason string // what is wrong, in words
}

// Error returns the reason.
func (e *SyntaxError) Error() string { return "the input is not valid JSON: " + e.Reason }

// Read decodes one input from JSON. A text that is not JSON gives a
// [*SyntaxError]. Otherwise every fault is listed at once in a
// [*calc.InputError]: unknown and repeated keys, wrong types, values outside
// their range, missing values, and values that contradict each other.
func Read(r io.Reader) (Input, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxInput+1))
	if err != nil {
		return Input{}, fmt.Errorf("reading the input: %w", err)
	}
	if len(text) > maxInput {
		return Input{}, &SyntaxError{Reason: fmt.Sprintf("more than %d bytes", maxInput)}
	}
	var f calc.Fields
	tree, err := parse(text, &f)
	if err != nil {
		return Input{}, err
	}
	return build(tree, &f)
}

// build turns a tree of JSON values into a valid input, or lists its faults
// together with those already in f.
func build(tree map[string]any, f *calc.Fields) (Input, error) {
	clean := prune(tree, reflect.TypeFor[Input](), "", f)
	text, err := json.Marshal(clean)
	if err != nil {
		return Input{}, fmt.Errorf("writing the pruned input: %w", err)
	}
	var in Input
	if err := json.Unmarshal(text, &in); err != nil {
		return Input{}, fmt.Errorf("reading the pruned input: %w", err)
	}
	return in, merge(f.Err(), in.Validate())
}

// merge joins the faults of the shape with those of the values. A field that
// already has a fault of shape gets no second one.
func merge(shape, values error) error {
	var first, second *calc.InputError
	if !errors.As(shape, &first) {
		return values
	}
	if !errors.As(values, &second) {
		return shape
	}
	all := slices.Clone(first.Faults)
	for _, v := range second.Faults {
		same := func(s calc.Fault) bool { return s.Path == v.Path }
		if !slices.ContainsFunc(first.Faults, same) {
			all = append(all, v)
		}
	}
	return &calc.InputError{Faults: all}
}

// parse reads one JSON object, recording repeated keys as faults.
func parse(text []byte, f *calc.Fields) (map[string]any, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	tree, err := parseValue(d, "", 0, f)
	if err != nil {
		return nil, syntax(err)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return nil, &SyntaxError{Reason: "something follows the closing brace"}
	}
	top, ok := tree.(map[string]any)
	if !ok {
		return nil, &SyntaxError{Reason: "an input is an object in braces"}
	}
	return top, nil
}

func syntax(err error) error {
	var own *SyntaxError
	if errors.As(err, &own) {
		return own
	}
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return &SyntaxError{Reason: "it ends too early"}
	}
	return &SyntaxError{Reason: err.Error()}
}

func parseValue(d *json.Decoder, path string, depth int, f *calc.Fields) (any, error) {
	if depth > maxDepth {
		return nil, &SyntaxError{Reason: fmt.Sprintf("nested deeper than %d", maxDepth)}
	}
	t, err := d.Token()
	if err != nil {
		return nil, err
	}
	switch t {
	case json.Delim('{'):
		return parseObject(d, path, depth, f)
	case json.Delim('['):
		return parseList(d, path, depth, f)
	}
	return t, nil
}

func parseObject(d *json.Decoder, path string, depth int, f *calc.Fields) (any, error) {
	object := map[string]any{}
	for d.More() {
		t, err := d.Token()
		if err != nil {
			return nil, err
		}
		name := t.(string) // the decoder lets only strings through here
		at := under(path, name)
		x, err := parseValue(d, at, depth+1, f)
		if err != nil {
			return nil, err
		}
		if _, twice := object[name]; twice {
			f.Add(at, "given twice", "given once")
		}
		object[name] = x
	}
	_, err := d.Token()
	return object, err
}

func parseList(d *json.Decoder, path string, depth int, f *calc.Fields) (any, error) {
	list := []any{}
	for d.More() {
		x, err := parseValue(d, path+"["+strconv.Itoa(len(list))+"]", depth+1, f)
		if err != nil {
			return nil, err
		}
		list = append(list, x)
	}
	_, err := d.Token()
	return list, err
}

func under(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// prune returns x with everything left out that does not fit the type, each with
// a fault. A null counts as not said.
func prune(x any, t reflect.Type, path string, f *calc.Fields) any {
	switch t.Kind() {
	case reflect.Pointer:
		return prune(x, t.Elem(), path, f)
	case reflect.Struct:
		return pruneObject(x, t, path, f)
	case reflect.Slice:
		return pruneList(x, t, path, f)
	case reflect.Map:
		return pruneTexts(x, path, f)
	}
	return pruneLeaf(x, t, path, f)
}

func pruneObject(x any, t reflect.Type, path string, f *calc.Fields) any {
	object, ok := x.(map[string]any)
	if !ok {
		f.Add(path, shown(x), "an object in braces")
		return map[string]any{}
	}
	known := map[string]reflect.Type{}
	names := make([]string, t.NumField())
	for i := range t.NumField() {
		names[i] = key(t.Field(i))
		known[names[i]] = t.Field(i).Type
	}
	out := map[string]any{}
	for _, name := range slices.Sorted(maps.Keys(object)) {
		at := under(path, name)
		ft, ok := known[name]
		if !ok {
			f.Add(at, "an unknown key", "one of "+strings.Join(names, ", "))
			continue
		}
		if object[name] == nil {
			continue
		}
		if y := prune(object[name], ft, at, f); y != nil {
			out[name] = y
		}
	}
	return out
}

func pruneList(x any, t reflect.Type, path string, f *calc.Fields) any {
	list, ok := x.([]any)
	if !ok {
		f.Add(path, shown(x), "a list in brackets")
		return nil
	}
	if len(list) > MaxList {
		f.Add(path, strconv.Itoa(len(list))+" elements", fmt.Sprintf("a list of at most %d", MaxList))
		return nil
	}
	out := []any{}
	for i, e := range list {
		if y := prune(e, t.Elem(), path+"["+strconv.Itoa(i)+"]", f); y != nil {
			out = append(out, y)
		}
	}
	return out
}

func pruneTexts(x any, path string, f *calc.Fields) any {
	object, ok := x.(map[string]any)
	if !ok {
		f.Add(path, shown(x), "an object in braces")
		return nil
	}
	out := map[string]any{}
	for _, name := range slices.Sorted(maps.Keys(object)) {
		if text, ok := object[name].(string); ok {
			out[name] = text
			continue
		}
		f.Add(under(path, name), shown(object[name]), "text in quotes")
	}
	return out
}

func pruneLeaf(x any, t reflect.Type, path string, f *calc.Fields) any {
	allowed := map[reflect.Kind]string{
		reflect.Float64: "a number", reflect.Int: "a whole number",
		reflect.String: "text in quotes", reflect.Bool: "true or false",
	}[t.Kind()]
	if d, ok := FieldOf(path); ok {
		allowed = d.Allowed()
	}
	if fits(x, t.Kind()) {
		return x
	}
	f.Add(path, shown(x), allowed)
	return nil
}

func fits(x any, kind reflect.Kind) bool {
	n, isNumber := x.(json.Number)
	switch kind {
	case reflect.Float64:
		if !isNumber {
			return false
		}
		_, err := n.Float64()
		return err == nil
	case reflect.Int:
		if !isNumber {
			return false
		}
		_, err := strconv.Atoi(n.String())
		return err == nil
	case reflect.String:
		_, ok := x.(string)
		return ok
	case reflect.Bool:
		_, ok := x.(bool)
		return ok
	}
	return false
}

// shown writes a value as it was given, shortened.
func shown(x any) string {
	text, err := json.Marshal(x)
	if err != nil {
		return fmt.Sprintf("%v", x)
	}
	const most = 60
	if r := []rune(string(text)); len(r) > most {
		return string(r[:most]) + "…"
	}
	return string(text)
}
