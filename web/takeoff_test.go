package web_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web"
)

// The total says what it leaves out, on the page and in the text alike.
func TestTotalSaysWhatItLeavesOut(t *testing.T) {
	in := report(t, "desert").Input
	for _, c := range []struct {
		prices []cover.Price
		want   string
	}{
		{nil, "No prices were given, so nothing is priced."},
		{
			[]cover.Price{{Item: new("2x6 Douglas Fir-Larch No.2"), Per: new("board_foot"), Dollars: new(1.1)}},
			"Total of the lines with a price: $167.20. It leaves out 13 without a price: waterproof membrane, smooth bituminous;",
		},
	} {
		in.Market.Prices = c.prices
		r, err := cover.Size(in)
		require.NoError(t, err)
		var b strings.Builder
		require.NoError(t, web.Text(&b, r))
		page, err := web.Page{Report: &r}.Render()
		require.NoError(t, err)
		assert.Contains(t, strings.Join(strings.Fields(b.String()), " "), c.want)
		assert.Contains(t, text(string(page)), c.want)
	}
}
