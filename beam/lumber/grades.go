package lumber

import (
	_ "embed"
	"fmt"
	"strings"

	"patiocover/calc"
)

//go:embed table4a.csv
var table4aCSV string

//go:embed table4b.csv
var table4bCSV string

//go:embed table4d.csv
var table4dCSV string

// A row is one row of a table of values with the sizes that it serves.
type row struct {
	values            Values
	narrowest, widest float64 // in, nominal width; dimension lumber only
	shapes            string  // timbers only: a class, or all timbers
}

// rows holds the tables 4A, 4B and 4D, in the order printed.
var rows = readRows()

func readRows() []row {
	dimension := func(table Table) func(calc.Row) row {
		return func(r calc.Row) row {
			v := readValues(r, table)
			v.Shape = Dimension
			return row{values: v, narrowest: r.Num("narrowest in"), widest: r.Num("widest in")}
		}
	}
	all := calc.ReadTable("table4a.csv", table4aCSV, dimension(Table4A))
	all = append(all, calc.ReadTable("table4b.csv", table4bCSV, dimension(Table4B))...)
	return append(all, calc.ReadTable("table4d.csv", table4dCSV, func(r calc.Row) row {
		return row{values: readValues(r, Table4D), shapes: r.Text("shape")}
	})...)
}

func readValues(r calc.Row, table Table) Values {
	known := confirmed(r)
	quote := func(name, unit string) Quoted {
		return Quoted{Value: r.Num(name + unit), Status: max(r.Status(), known[name])}
	}
	return Values{
		Species: r.Text("species"), Grade: r.Text("grade"), Row: r.Text("grade"), Table: table,
		Bending: quote("Fb", " psi"), Tension: quote("Ft", " psi"), Shear: quote("Fv", " psi"),
		Bearing: quote("Fc_perp", " psi"), Compression: quote("Fc", " psi"),
		Elasticity: quote("E", " psi"), Stability: quote("Emin", " psi"),
		Gravity: quote("G", ""), Source: r.Text("source"), Reversed: quote("Fb", " psi"),
	}
}

// confirmed reads the column of that name: "Fb computed; Fc_perp read; Emin from
// E". A modulus from E is as sure as E is, at most computed.
func confirmed(r calc.Row) map[string]calc.Status {
	known := map[string]calc.Status{}
	fromE := false
	for word := range strings.SplitSeq(r.Text("confirmed"), ";") {
		word = strings.TrimSpace(word)
		if word == "" || word == "Emin from E" {
			fromE = fromE || word != ""
			continue
		}
		at := strings.LastIndex(word, " ")
		var s calc.Status
		if err := s.UnmarshalText([]byte(word[at+1:])); err != nil {
			panic(fmt.Sprintf("lumber: %s: %v", word, err))
		}
		known[strings.TrimSpace(word[:max(0, at)])] = s
	}
	if fromE {
		known["Emin"] = calc.Computed.Weakest(max(r.Status(), known["E"]))
	}
	return known
}

// serves reports whether the row is for sections of this size and shape.
func (r row) serves(s Section) bool {
	if r.values.Table == Table4D {
		return s.Class.Timber() && (r.shapes == "all timbers" || r.shapes == s.Class.String())
	}
	return s.Class == Dimension && r.narrowest <= s.NominalWidth && s.NominalWidth <= r.widest
}
