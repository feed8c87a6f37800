package web

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"

	"patiocover/calc"
	"patiocover/cover"
)

// buyHead names the columns of what to buy as a table of values.
var buyHead = []string{"kind", "item", "quantity", "unit", "length_ft", "cut_each_into", "board_feet", "cost_dollars"}

// The kinds of rows of what to buy.
const (
	stickKind = "stick"    // to be cut as the row says
	shortKind = "no stick" // pieces that no stick is long enough for
	otherKind = "other"
	totalKind = "total"
)

// BuyList writes what to buy for a report as comma separated values behind the notice, the
// verdict and what the total leaves out. Quantities and costs are rounded up. The error is
// that of w.
func BuyList(w io.Writer, r cover.Report) error {
	t := &r.TakeOff
	if _, err := fmt.Fprintf(w, "# %s\n# %s; %s; input %s\n# verdict %s\n# %s\n", r.Notice, r.Stamp.Program, r.Stamp.Standards,
		r.Stamp.InputHash, r.Verdict, oneLine(totalOf(*t))); err != nil {
		return err
	}
	for _, n := range t.Notes {
		if _, err := fmt.Fprintf(w, "# %s\n", oneLine(n)); err != nil {
			return err
		}
	}
	rows := [][]string{buyHead}
	for i := range t.Wood {
		rows = append(rows, stickRows(t, &t.Wood[i])...)
	}
	for _, b := range t.Other {
		rows = append(rows, []string{otherKind, b.Item, plainNumber(b.Quantity), b.Unit, "", "", "", cents(b.Cost)})
	}
	rows = append(rows, []string{totalKind, "", "", "", "", "", plainNumber(calc.RoundUp(t.BoardFeet, 0.1)), cents(t.Cost)})
	for _, row := range rows {
		for i := range row {
			row[i] = cellText(row[i])
		}
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// stickRows writes the sticks of one wood, each way to cut one in a row of its own with its
// part of board feet and cost, and the pieces that are too long.
func stickRows(t *cover.TakeOff, w *cover.WoodLine) [][]string {
	var rows [][]string
	for _, c := range w.Cuts {
		part := float64(c.Count) * c.Stick / w.Bought
		var cost *float64
		if w.Cost != nil {
			cost = new(*w.Cost * part)
		}
		rows = append(rows, []string{
			stickKind, w.Item, strconv.Itoa(c.Count), "each", plainNumber(c.Stick), pieces(c),
			plainNumber(calc.RoundUp(w.BoardFeet*part, 0.1)), cents(cost),
		})
	}
	for _, p := range t.Pieces {
		if p.Item == w.Item && tooLong(w, p.Length) {
			rows = append(rows, []string{shortKind, w.Item, strconv.Itoa(p.Count), "each", plainNumber(p.Length), "", "", ""})
		}
	}
	return rows
}

// tooLong reports whether no stick of a wood is long enough for a piece.
func tooLong(w *cover.WoodLine, ft float64) bool {
	const alike = 1e-6 // ft, below which lengths are cut as one
	return slices.ContainsFunc(w.TooLong, func(x float64) bool { return math.Abs(x-ft) < alike })
}

// cents writes a cost up to the next cent, and nothing where there is none.
func cents(x *float64) string {
	if x == nil {
		return ""
	}
	return plainNumber(calc.RoundUp(*x, 0.01))
}
