package lumber

import (
	_ "embed"
	"strings"

	"patiocover/calc"
)

// A Direction is a direction across the grain. Along the grain wood hardly
// shrinks, 0.1 to 0.2 % from green to dry.
type Direction uint8

// The directions across the grain.
const (
	AcrossWidth     Direction = iota // the wide face, such as the depth of a joist
	AcrossThickness                  // the narrow face
)

//go:embed shrinkage.csv
var shrinkageCSV string

// A shrinkageRow is the straight line S = a - b M of one kind of wood.
type shrinkageRow struct {
	species, direction string
	intercept, slope   float64 // a, percent; b, percent per percent
	source             string
	status             calc.Status
}

var shrinkageRows = calc.ReadTable("shrinkage.csv", shrinkageCSV, func(r calc.Row) shrinkageRow {
	return shrinkageRow{
		species: r.Text("species"), direction: r.Text("direction"),
		intercept: r.Num("a percent"), slope: r.Num("b percent per percent"),
		source: r.Text("source"), status: r.Status(),
	}
})

// A Shrinkage is the change of one side of a piece with its moisture content.
type Shrinkage struct {
	Size   float64 // side at moisture From, in
	From   float64 // moisture content at the start, percent
	To     float64 // moisture content at the end, percent
	Before float64 // shrinkage from green at From, percent of the green size
	After  float64 // shrinkage from green at To, percent of the green size
	Final  float64 // side at moisture To, in
	Change float64 // loss of size, in; negative when the piece swells
	row    shrinkageRow
}

// NewShrinkage returns how a side of the given size, in inches, changes when the
// moisture content goes from one percentage to another. The line was fitted from
// 8 to 19 %; below, it is extended, and above the content where it reaches zero,
// about 28 %, wood does not shrink. Redwood and cedars shrink less than the rest.
func NewShrinkage(species string, direction Direction, size, from, to float64) Shrinkage {
	s := Shrinkage{Size: size, From: from, To: to, row: shrinkageOf(species, direction)}
	s.Before = max(0, s.row.intercept-s.row.slope*from)
	s.After = max(0, s.row.intercept-s.row.slope*to)
	s.Final = size * (1 - s.After/100) / (1 - s.Before/100) // percent of the green size
	s.Change = size - s.Final
	return s
}

func shrinkageOf(species string, direction Direction) shrinkageRow {
	kind, face := "ordinary", "width"
	if species == "Redwood" || strings.HasSuffix(species, "Cedars") {
		kind = "redwood and cedar"
	}
	if direction == AcrossThickness {
		face = "thickness"
	}
	for _, r := range shrinkageRows {
		if r.species == kind && r.direction == face {
			return r
		}
	}
	panic("lumber: shrinkage.csv has no row " + kind + ", " + face)
}

// Lines writes the shrinkage up.
func (s Shrinkage) Lines() []calc.Line {
	var sheet calc.Sheet
	sheet.Given("d_1", s.Size, "in", "size at the start")
	sheet.Given("M_1", s.From, "percent", "moisture content at the start")
	sheet.Given("M_2", s.To, "percent", "moisture content at the end")
	sheet.Quoted("a", s.row.intercept, "percent", s.row.source, s.row.status)
	sheet.Quoted("b", s.row.slope, "", s.row.source, s.row.status)
	sheet.Step("S_1", "max(0, a - b * M_1)", s.Before, "percent", s.row.source)
	sheet.Step("S_2", "max(0, a - b * M_2)", s.After, "percent", s.row.source)
	sheet.Step("d_2", "d_1 * (1 - S_2 / 100) / (1 - S_1 / 100)", s.Final, "in", s.row.source)
	sheet.Step("change", "d_1 - d_2", s.Change, "in", s.row.source)
	return sheet.Lines()
}
