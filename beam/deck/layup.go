package deck

import (
	_ "embed" // layups.csv
	"fmt"

	"patiocover/calc"
)

// A Layup is how the pieces of a deck run over the rafters.
type Layup uint8

// The layups, in the order of layups.csv.
const (
	SimpleSpan       Layup = iota // every piece ends on each rafter, or may
	TwoSpans                      // every piece runs over two spans
	ControlledRandom              // pieces end between rafters, staggered by the rules of the code
	layups
)

//go:embed layups.csv
var layupsCSV string

// A layupRow is one row of layups.csv.
type layupRow struct {
	name       string
	moment     float64 // c_M, factor on w l²
	shear      float64 // c_V, factor on w l
	deflection float64 // n_d, ratio w l⁴ / (E I delta)
	source     string
	status     calc.Status
}

var layupRows = calc.ReadTable("layups.csv", layupsCSV, func(r calc.Row) layupRow {
	return layupRow{
		name: r.Text("layup"), moment: r.Num("moment"), shear: r.Num("shear"),
		deflection: r.Num("deflection"), source: r.Text("source"), status: r.Status(),
	}
})

// String names the layup in words.
func (l Layup) String() string {
	if l < layups {
		return layupRows[l].name
	}
	return fmt.Sprintf("Layup(%d)", uint8(l))
}

// row returns the coefficients of the layup.
func (l Layup) row() *layupRow { return &layupRows[l] }
