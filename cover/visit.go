package cover

import (
	"reflect"
	"strconv"
	"strings"
)

// key returns the name of a struct field in JSON.
func key(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return name
}

// visit calls leaf for every value of an input below v, in the order of the
// fields: pointers (nil or not), plain numbers, lists of numbers and maps. The
// elements of a list of structs are visited one by one.
func visit(v reflect.Value, path string, leaf func(path string, v reflect.Value)) {
	for i := range v.NumField() {
		at := key(v.Type().Field(i))
		if path != "" {
			at = path + "." + at
		}
		f := v.Field(i)
		switch {
		case f.Kind() == reflect.Struct:
			visit(f, at, leaf)
		case f.Kind() == reflect.Slice && f.Type().Elem().Kind() == reflect.Struct:
			for n := range f.Len() {
				visit(f.Index(n), at+"["+strconv.Itoa(n)+"]", leaf)
			}
		default:
			leaf(at, f)
		}
	}
}
