package diaphragm

import (
	_ "embed" // panels.csv, boards.csv

	"patiocover/calc"
)

//go:embed panels.csv
var panelsCSV string

//go:embed boards.csv
var boardsCSV string

// A Nominal is a pair of nominal unit shears and whence they come.
type Nominal struct {
	Earthquake float64     // v_s, lb/in, as the edition of 2015 prints it
	Wind       float64     // v_w, lb/in
	Source     string      // standard, edition, table, and what of it
	Status     calc.Status // how the numbers are known
}

// A Row is one panel thickness with one nail, on framing of 2 in. nominal.
type Row struct {
	Nail        string  // penny weight of the common nail, such as 8d
	Diameter    float64 // in, of its shank
	Penetration float64 // in, least depth in the framing
	Thickness   float64 // in, thinnest panel
	Unblocked   Nominal // edges between the rafters free, load along the continuous joints
	Blocked     Nominal // every edge on framing, nails at 6 in
	Close       Nominal // likewise, nails at 4 in on boundaries and continuous joints
}

// rows holds the rows of panels.csv.
var rows = calc.ReadTable("panels.csv", panelsCSV, func(r calc.Row) Row {
	pair := func(name string) Nominal {
		return Nominal{
			Earthquake: r.Num(name+" seismic plf") * calc.PLF, Wind: r.Num(name+" wind plf") * calc.PLF,
			Source: r.Text("source") + ", " + r.Text("nail") + " nails, " + name, Status: r.Status(),
		}
	}
	return Row{
		Nail: r.Text("nail"), Diameter: r.Num("diameter in"), Penetration: r.Num("penetration in"), Thickness: r.Num("thickness in"),
		Unblocked: pair("unblocked"), Blocked: pair("blocked"), Close: pair("close"),
	}
})

// straight is the row of boards.csv.
var straight = calc.ReadTable("boards.csv", boardsCSV, func(r calc.Row) Nominal {
	return Nominal{
		Earthquake: r.Num("seismic plf") * calc.PLF, Wind: r.Num("wind plf") * calc.PLF,
		Source: r.Text("source") + ", " + r.Text("layup"), Status: r.Status(),
	}
})[0]

// Straight returns the nominal unit shears of planks laid straight across the framing.
func Straight() Nominal { return straight }

// Tabulated returns the strongest row that a panel of the thickness with nails of the
// diameter and length, all in, comes up to; none where the nails are thinner or shorter
// than the least of the table. A nail between two rows counts as the thinner one.
func Tabulated(thickness, diameter, length float64) (Row, bool) {
	var best Row
	found := false
	for _, r := range rows {
		fits := thickness >= r.Thickness && diameter >= r.Diameter && length-thickness >= r.Penetration
		if fits && (!found || r.Unblocked.Earthquake > best.Unblocked.Earthquake) {
			best, found = r, true
		}
	}
	return best, found
}

// Spacings of the nails on the edges, in, with which the columns of the table begin.
const (
	widestSpacing = 6 * calc.In // of every column
	closeSpacing  = 4 * calc.In // of the column of close nails
)

// At returns the nominal unit shears with nails at the spacing, in, on all edges.
// blocked: framing or blocking of 2 in. nominal lies below every edge. None where the
// nails are farther apart than the table allows.
func (r Row) At(spacing float64, blocked bool) (Nominal, bool) {
	switch {
	case !(spacing <= widestSpacing):
		return Nominal{}, false
	case !blocked:
		return r.Unblocked, true
	case spacing <= closeSpacing:
		return r.Close, true
	}
	return r.Blocked, true
}
