package web_test

import (
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web"
)

// poison writes the evil words into every text below a value, numbered from n, and returns
// the number after the last.
func poison(v reflect.Value, n int) int {
	words := func() string { n++; return evil + strconv.Itoa(n) }
	switch v.Kind() {
	case reflect.String:
		v.SetString(words())
	case reflect.Pointer:
		if !v.IsNil() {
			own := reflect.New(v.Type().Elem()) // of what several share each gets its own
			own.Elem().Set(v.Elem())
			n = poison(own.Elem(), n)
			v.Set(own)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				n = poison(v.Field(i), n)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			n = poison(v.Index(i), n)
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			v.SetMapIndex(key, reflect.ValueOf(words()))
		}
	}
	return n
}

// Whatever a report says, in any of its texts, is shown as text: none becomes a tag.
func TestTrapMarkupInEveryTextOfAReport(t *testing.T) {
	for _, name := range []string{"survey", "garden"} {
		r := report(t, name)
		require.Greater(t, poison(reflect.ValueOf(&r).Elem(), 0), 1000, name)
		raw, err := web.Page{Values: cover.ToForm(r.Input), Report: &r}.Render()
		require.NoError(t, err, name)
		page := string(raw)
		assert.Empty(t, pageFaults(page), name)
		for _, tag := range []string{"<script>alert", "<img"} {
			assert.False(t, strings.Contains(page, tag), "%s: %s", name, tag)
		}
		assert.Greater(t, strings.Count(page, "&lt;script&gt;alert(1)"), 1000, name)
	}
}
