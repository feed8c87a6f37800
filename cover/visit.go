package cover

import (
	"reflect"
	"strconv"
	"strings"
	"sync"
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
	for _, b := range branchesOf(v.Type()) {
		at := b.path
		if path != "" {
			at = path + "." + at
		}
		f := v.FieldByIndex(b.index)
		if !b.list {
			leaf(at, f)
			continue
		}
		for n := range f.Len() {
			visit(f.Index(n), at+"["+strconv.Itoa(n)+"]", leaf)
		}
	}
}

// A branch is a value below a struct, through structs inside it.
type branch struct {
	path  string // by the keys in JSON
	index []int  // the fields that lead to it
	list  bool   // a list of structs
}

// branches holds those of every type of struct that was visited, by its type: finding
// them costs more than visiting them.
var branches sync.Map

func branchesOf(t reflect.Type) []branch {
	if known, ok := branches.Load(t); ok {
		return known.([]branch)
	}
	var out []branch
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Type.Kind() != reflect.Struct {
			list := f.Type.Kind() == reflect.Slice && f.Type.Elem().Kind() == reflect.Struct
			out = append(out, branch{key(f), []int{i}, list})
			continue
		}
		for _, b := range branchesOf(f.Type) {
			out = append(out, branch{key(f) + "." + b.path, append([]int{i}, b.index...), b.list})
		}
	}
	branches.Store(t, out)
	return out
}
