package web_test

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web"
)

// The list of what to buy can be read back behind notice and verdict, has every stick and
// every item once, and its rows come to its total.
func TestBuyList(t *testing.T) {
	in := report(t, "garden").Input
	in.Market.Prices = []cover.Price{
		{Item: new("2x6 Douglas Fir-Larch No.2"), Per: new("board_foot"), Dollars: new(1.15)},
		{Item: new("concrete"), Per: new("cubic_yard"), Dollars: new(190.0)},
		{Item: new("=1+1"), Per: new("each"), Dollars: new(1.0)},
	}
	in.Cover.Layers[0].Name, in.Cover.Layers[0].Weight = new("=1+1"), new(2.0)
	in.Cover.Layers[1].Name, in.Cover.Layers[1].Weight = new("two\nlines"), new(2.0)
	r, err := cover.Size(in)
	require.NoError(t, err)
	var b strings.Builder
	require.NoError(t, web.BuyList(&b, r))
	assert.True(t, strings.HasPrefix(b.String(), "# "+cover.Notice))
	assert.Contains(t, b.String(), "# verdict "+string(r.Verdict))
	assert.Contains(t, b.String(), "It leaves out")
	c := csv.NewReader(strings.NewReader(b.String()))
	c.Comment = '#'
	rows, err := c.ReadAll()
	require.NoError(t, err)
	sum, sticks, others, total := 0.0, 0, 0, 0.0
	for _, row := range rows[1:] {
		n, err := strconv.ParseFloat("0"+row[2], 64)
		require.NoError(t, err)
		cost, err := strconv.ParseFloat("0"+row[7], 64)
		require.NoError(t, err)
		assert.NotEqual(t, "=1+1", row[1], "no text is taken for a formula")
		switch row[0] {
		case "stick":
			sticks += int(n)
			sum += cost
		case "other":
			others++
			sum += cost
		case "total":
			total = cost
		}
	}
	want := 0
	for _, w := range r.TakeOff.Wood {
		want += w.Sticks
	}
	assert.Equal(t, want, sticks)
	assert.Len(t, r.TakeOff.Other, others)
	assert.Less(t, math.Abs(sum-total), 0.01*float64(len(rows)), "each row is rounded up to a cent")
	assert.Positive(t, total)
	assert.Error(t, web.BuyList(full{}, r))
}

// A piece that no stick is long enough for has a row of its own.
func TestBuyListNamesWhatIsTooLong(t *testing.T) {
	in := report(t, "desert").Input
	in.Market.StockLengths = []float64{8, 12}
	r, err := cover.Size(in)
	require.NoError(t, err)
	var b strings.Builder
	require.NoError(t, web.BuyList(&b, r))
	assert.Contains(t, b.String(), "no stick,4x6 Douglas Fir-Larch No.2,1,each,20,,,\n")
}
