package dowel_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc/calctest"
	"patiocover/connections/dowel"
)

// nailValue is the reference lateral value of a nail through a side member of the same
// wood, deep in the main member, lb.
func nailValue(t testing.TB, diameter, gravity, side float64) float64 {
	t.Helper()
	f := nailOf(t, diameter, 4)
	wood := dowel.Member{Material: dowel.Wood, Gravity: gravity}
	thin, thick := wood, wood
	thin.Thickness, thick.Thickness = side, 100
	return dowel.NewLateral(f, dowel.Joint{Side: thin, Main: thick}).Value
}

// What common nails carry over what box nails of the same penny size carry, as a field
// guide of the trade prints it. The row that the guide took from older yield strengths
// must differ: if it came to agree, the equations would have been bent to it.
func TestNailRatioPublished(t *testing.T) {
	for _, r := range calctest.Published(t, "nail_ratio.csv") {
		got := nailValue(t, r.Num("common in"), r.Num("G"), r.Num("ts in")) /
			nailValue(t, r.Num("box in"), r.Num("G"), r.Num("ts in"))
		if r.Text("agrees") == "no" {
			assert.Greater(t, math.Abs(got-r.Num("want")), r.Num("within"), r.Text("source"))
			continue
		}
		calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("size"), r.Text("source"))
	}
}
