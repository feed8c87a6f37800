package rain

import (
	_ "embed" // slopes.csv
	"slices"

	"patiocover/calc"
)

//go:embed slopes.csv
var slopesCSV string

// A Covering is a kind of roof covering with the slope it needs.
type Covering struct {
	Key    string      // word of the input
	Name   string      // in the words of the code
	Least  float64     // least slope, in of fall per ft
	Double float64     // slope below which the underlayment is doubled, in of fall per ft; 0 for none
	Source string      // code, edition, section
	Status calc.Status // how the row is known
}

// coverings holds the rows of slopes.csv.
var coverings = calc.ReadTable("slopes.csv", slopesCSV, func(r calc.Row) Covering {
	return Covering{
		Key: r.Text("covering"), Name: r.Text("name"), Least: r.Num("least in/ft"),
		Double: r.Num("double below in/ft"), Source: r.Text("source"), Status: r.Status(),
	}
})

// CoveringOf returns the covering with the key.
func CoveringOf(key string) (Covering, bool) {
	i := slices.IndexFunc(coverings, func(c Covering) bool { return c.Key == key })
	if i < 0 {
		return Covering{}, false
	}
	return coverings[i], true
}

// A Slope is the check of a covering's least slope.
type Slope struct {
	Covering Covering // what covers the roof
	Given    float64  // in of fall per ft
}

// NewSlope checks the slope of a roof, in of fall per ft, for its covering.
func NewSlope(c Covering, given float64) Slope { return Slope{Covering: c, Given: given} }

// Doubled reports whether the underlayment must be doubled.
func (s Slope) Doubled() bool { return s.Given < s.Covering.Double }

// Ratio is the least slope over the slope given.
func (s Slope) Ratio() float64 { return calc.Ratio(s.Covering.Least, s.Given) }

// Explain writes the two slopes.
func (s Slope) Explain() calc.Check {
	var sheet calc.Sheet
	sheet.Quoted("s_min", s.Covering.Least, "in/ft", s.Covering.Source+", "+s.Covering.Name, s.Covering.Status)
	sheet.Given("s", s.Given, "in/ft", "input cover.slope_in_per_ft")
	return sheet.Check("least slope of the covering", "s_min", "s")
}
