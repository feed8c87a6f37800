package web_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web"
)

// The total says what it leaves out, on the page and in the text alike. By hand: eleven
// rafters of 11 ft from sticks of 12 ft and a ledger in two pieces of 10 ft from two more, 156
// board feet at 1.10; the beam of 20 ft has no stick.
func TestTotalSaysWhatItLeavesOut(t *testing.T) {
	in := report(t, "desert").Input
	in.Market.StockLengths = []float64{8, 12, 16}
	for _, c := range []struct {
		prices []cover.Price
		want   string
	}{
		{nil, "No prices were given, so nothing is priced."},
		{
			[]cover.Price{{Item: new("2x6 Douglas Fir-Larch No.2"), Per: new("board_foot"), Dollars: new(1.1)}},
			"Total of the lines with a price: $171.60. It leaves out 13 without a price: waterproof membrane, smooth bituminous;",
		},
	} {
		in.Market.Prices = c.prices
		r, err := cover.Size(in)
		require.NoError(t, err)
		var b strings.Builder
		require.NoError(t, web.Text(&b, r))
		page, err := web.Page{Report: &r}.Render()
		require.NoError(t, err)
		for _, words := range []string{c.want, "Pieces that no stick is long enough for are not in the sums."} {
			assert.True(t, strings.Contains(strings.Join(strings.Fields(b.String()), " "), words), "the text says %q", words)
			assert.True(t, strings.Contains(text(string(page)), words), "the page says %q", words)
		}
	}
}
