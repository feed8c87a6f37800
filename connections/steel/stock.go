package steel

import (
	_ "embed"

	"patiocover/calc"
)

// Steel of the plates and of the bolts (AISC 360-16 Table J3.2 and ASTM A36, from memory).
const (
	yield     = 36_000 * calc.PSI     // F_y of ASTM A36
	ultimate  = 58_000 * calc.PSI     // F_u of ASTM A36
	modulus   = 29_000_000 * calc.PSI // E
	boltShear = 27_000 * calc.PSI     // F_nv of ASTM A307
)

//go:embed plates.csv
var plateCSV string

//go:embed edges.csv
var edgeCSV string

// A Stock is a thickness in which plate is sold.
type Stock struct {
	Name      string  // such as 1/4, in inches
	Thickness float64 // t, in
	source    string
	status    calc.Status
}

var stocks = calc.ReadTable("plates.csv", plateCSV, func(r calc.Row) Stock {
	return Stock{Name: r.Text("name"), Thickness: r.Num("t in"), source: r.Text("source"), status: r.Status()}
})

type edgeRow struct {
	diameter, least float64 // in
	source          string
	status          calc.Status
}

var edgeRows = calc.ReadTable("edges.csv", edgeCSV, func(r calc.Row) edgeRow {
	return edgeRow{diameter: r.Num("D in"), least: r.Num("least in"), source: r.Text("source"), status: r.Status()}
})

// Stocks returns the thicknesses, the thinnest first.
func Stocks() []Stock { return append([]Stock(nil), stocks...) }

// least is the row of the least edge distance of a bolt; of one that the table does not
// have it is that of no bolt, whose distance nothing meets.
func least(diameter float64) edgeRow {
	for _, r := range edgeRows {
		if r.diameter == diameter {
			return r
		}
	}
	return edgeRow{}
}
