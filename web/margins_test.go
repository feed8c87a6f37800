package web_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web"
)

// Text and page say the same of the margins; where there is no answer they say NOT CHECKED
// and why.
func TestMarginsInWords(t *testing.T) {
	r, err := cover.SizeAndMargins(report(t, "glued").Input)
	require.NoError(t, err)
	r.Margins[0] = cover.Margin{Path: r.Margins[0].Path, What: r.Margins[0].What, Unit: "ft", Now: 12, Missing: "no answer there"}
	var b strings.Builder
	require.NoError(t, web.Text(&b, r))
	page, err := web.Page{Report: &r}.Render()
	require.NoError(t, err)
	for _, words := range []string{
		"NOT CHECKED", "no answer there", "137.7 mph", "beyond 120.4 mph: P2 footings, uplift on the footing",
		"nothing that was tried: the answers of this program end there", "the sizes of a product are those of its maker",
		"is over: BM1 bending at ratio 1.01",
	} {
		assert.Contains(t, b.String(), words)
		assert.Contains(t, string(page), words)
	}
}
