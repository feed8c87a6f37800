package web

import (
	"html/template"
	"math"
	"strconv"
	"strings"

	"patiocover/cover"
)

// glyph is the sign that stands beside a verdict, so that no color is needed.
func glyph(v cover.Verdict) string {
	switch v {
	case cover.OK:
		return "✓"
	case cover.Over:
		return "✕"
	case cover.OpenUp:
		return "?"
	}
	return "–"
}

// class is the name by which the style sheet knows a verdict.
func class(v cover.Verdict) string {
	switch v {
	case cover.OK:
		return "ok"
	case cover.Over:
		return "over"
	case cover.OpenUp:
		return "open-up"
	}
	return "not-checked"
}

// count says how many findings there are of each verdict, the worst first.
func count(all []cover.Finding) string {
	n := map[cover.Verdict]int{}
	for _, f := range all {
		n[f.Verdict]++
	}
	parts := make([]string, 0, 4)
	for _, v := range []cover.Verdict{cover.Over, cover.OpenUp, cover.NotChecked, cover.OK} {
		parts = append(parts, strconv.Itoa(n[v])+" "+string(v))
	}
	return "Of " + strconv.Itoa(len(all)) + " findings: " + strings.Join(parts, ", ")
}

// barEnd is the ratio at which the bar ends.
const barEnd = 1.25

// bar draws a ratio as a bar with a stroke at 1. The number stands beside it.
func bar(r cover.Ratio) template.HTML {
	x := float64(r)
	if !(x <= barEnd) {
		x = barEnd
	}
	width := strconv.FormatFloat(100*math.Max(0, x)/barEnd, 'f', 1, 64)
	b := []byte(`<svg class="bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">`)
	b = append(b, `<rect class="ground" width="100" height="10"/><rect class="part" width="`...)
	b = append(b, width...)
	return template.HTML(append(b, `" height="10"/><rect class="limit" x="79.4" width="1.2" height="10"/></svg>`...))
}
