package cover

import (
	"encoding/json"
	"reflect"
)

// Schema returns the JSON Schema (draft 2020-12) of an input, made from the same
// table that validates it. Rules between fields are not part of it.
func Schema() []byte {
	top := schemaOf(reflect.TypeFor[Input](), "")
	top["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	top["title"] = "Patio cover input"
	text, err := json.MarshalIndent(top, "", "  ")
	if err != nil {
		panic("cover: schema: " + err.Error()) // only plain maps go in
	}
	return append(text, '\n')
}

func schemaOf(t reflect.Type, path string) map[string]any {
	switch t.Kind() {
	case reflect.Pointer:
		return schemaOf(t.Elem(), path)
	case reflect.Struct:
		return schemaOfStruct(t, path)
	case reflect.Map:
		return map[string]any{"type": "object", "additionalProperties": map[string]any{"type": "string"}}
	case reflect.Slice:
		if t.Elem().Kind() == reflect.Struct {
			return map[string]any{"type": "array", "maxItems": MaxList, "items": schemaOf(t.Elem(), path+"[]")}
		}
	}
	d, _ := FieldOf(path)
	return schemaOfField(d)
}

func schemaOfStruct(t reflect.Type, path string) map[string]any {
	properties := map[string]any{}
	required := []string{}
	for i := range t.NumField() {
		name := key(t.Field(i))
		at := under(path, name)
		properties[name] = schemaOf(t.Field(i).Type, at)
		if needed(t.Field(i).Type, at) {
			required = append(required, name)
		}
	}
	out := map[string]any{"type": "object", "additionalProperties": false, "properties": properties}
	if len(required) > 0 {
		out["required"] = required
	}
	return out
}

// needed reports whether a field, or any field of a group, must be given.
func needed(t reflect.Type, path string) bool {
	if t.Kind() == reflect.Slice {
		return path == "cover.layers"
	}
	if t.Kind() != reflect.Struct {
		d, _ := FieldOf(path)
		return d.Need == NeedRequired
	}
	for i := range t.NumField() {
		if needed(t.Field(i).Type, under(path, key(t.Field(i)))) {
			return true
		}
	}
	return false
}

func schemaOfField(d Field) map[string]any {
	number := map[string]any{"type": "number", "minimum": d.Low, "maximum": d.High}
	out := map[string]any{}
	switch d.Kind {
	case KindNumber:
		out = number
	case KindInteger:
		out = number
		out["type"] = "integer"
	case KindNumbers:
		out["type"], out["items"], out["maxItems"] = "array", number, MaxList
	case KindFlag:
		out["type"] = "boolean"
	case KindChoice:
		out["enum"] = d.Choices
	default:
		out["type"], out["minLength"], out["maxLength"] = "string", 1, maxText
	}
	out["description"] = d.Label
	if d.Unit != "" {
		out["description"] = d.Label + ", " + d.Unit
	}
	if d.Need == NeedAssumed {
		out["description"] = out["description"].(string) + "; assumed " + d.Default + " when left out"
	}
	return out
}
