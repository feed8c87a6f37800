package web_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web"
)

// BenchmarkReportJSON writes one report for a program.
func BenchmarkReportJSON(b *testing.B) {
	r := report(b, "desert")
	b.ReportAllocs()
	for b.Loop() {
		text, err := json.Marshal(r)
		require.NoError(b, err)
		b.SetBytes(int64(len(text)))
	}
}

// BenchmarkReportHTML writes the same report for a person: the whole page, with the form
// that asked for it and both drawings.
func BenchmarkReportHTML(b *testing.B) {
	r := report(b, "desert")
	p := web.Page{Values: cover.ToForm(r.Input), Report: &r}
	b.ReportAllocs()
	for b.Loop() {
		text, err := p.Render()
		require.NoError(b, err)
		b.SetBytes(int64(len(text)))
	}
}
