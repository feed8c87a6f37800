package web

import (
	"patiocover/calc"
	"patiocover/cover"
	jurisdiction "patiocover/cover/table"
)

// MaxGridCells is the most cells that a page shows: beyond, the command line writes
// them to a file.
const MaxGridCells = 3000

// A Tabling is the page that makes the prescriptive table of a jurisdiction.
type Tabling struct {
	Text   string              // criteria as typed
	Faults []calc.Fault        // what is wrong with them
	Reason string              // why there is no table, where no field is named
	Table  *jurisdiction.Table // the answer, nil before there is one
}

// Render writes the page whole. An error is a fault of this program.
func (p Tabling) Render() ([]byte, error) {
	v := struct {
		Tabling
		Title, Notice string
		Notes         []string
		Grids         []jurisdiction.Grid
	}{Tabling: p, Title: "Patio cover: table of a jurisdiction", Notice: cover.Notice, Notes: jurisdiction.Notes}
	if p.Table != nil {
		v.Grids, v.Notes = p.Table.Grids(), p.Table.Notes()
	}
	return execute("tabling", usualPage, v)
}
