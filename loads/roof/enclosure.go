package roof

import (
	_ "embed" // enclosure.csv
	"math"

	"patiocover/calc"
)

//go:embed enclosure.csv
var enclosureCSV string

// An Enclosure is the class of a building by its openings.
type Enclosure string

// The classes of ASCE 7-16 26.12. Missing panes, a large opening, or a deck of boards
// that leaks air make a house partially enclosed.
const (
	Open              Enclosure = "open"
	Enclosed          Enclosure = "enclosed"
	PartiallyEnclosed Enclosure = "partially enclosed"
	PartiallyOpen     Enclosure = "partially open"
)

// An Inside is the internal pressure coefficient of a class; it acts either way.
type Inside struct {
	Class  Enclosure   // of the building
	Factor float64     // GCpi without its sign, factor
	Source string      // table
	Status calc.Status // how the row is known
}

// insides holds the rows of enclosure.csv.
var insides = calc.ReadTable("enclosure.csv", enclosureCSV, func(r calc.Row) Inside {
	return Inside{
		Class: Enclosure(r.Text("class")), Factor: r.Num("GCpi"), Source: r.Text("source"), Status: r.Status(),
	}
})

// Internal returns GCpi of a class (ASCE 7-16 Table 26.13-1).
//
// Special case: false, and a factor that is not a number, for an unknown class.
func Internal(class Enclosure) (Inside, bool) {
	for i := range insides {
		if insides[i].Class == class {
			return insides[i], true
		}
	}
	return Inside{Class: class, Factor: math.NaN(), Source: "unknown class of enclosure"}, false
}
