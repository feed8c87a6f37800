package seismic

import (
	_ "embed" // systems.csv
	"slices"
	"strings"

	"patiocover/calc"
)

//go:embed systems.csv
var systemsCSV string

// A System is what resists the earthquake in one direction.
type System struct {
	Name       string      // in the words of the table
	Response   float64     // R, factor
	Height     float64     // largest height of the structure, in
	Categories []string    // seismic design categories in which it is permitted
	Source     string      // table
	Status     calc.Status // how the row is known
}

// systems holds the rows of systems.csv.
var systems = calc.ReadTable("systems.csv", systemsCSV, func(r calc.Row) System {
	return System{
		Name: r.Text("system"), Response: r.Num("R"), Height: r.Num("height ft") * calc.Ft,
		Categories: strings.Split(r.Text("categories"), "|"), Source: r.Text("source"), Status: r.Status(),
	}
})

// OwnPosts returns the system of a cover that stands on its own posts, embedded or
// braced by knee braces, for which the standard has no row of its own.
func OwnPosts() System { return systems[0] }

// HouseWalls returns the system of a cover that the walls of the house hold.
func HouseWalls() System { return systems[1] }

// A Refusal is why a system may not be used.
type Refusal uint8

// The refusals.
const (
	Permitted    Refusal = iota // none
	NotPermitted                // not in this seismic design category
	TooTall                     // higher than the table allows
)

// String words the refusal.
func (r Refusal) String() string {
	return [...]string{
		"permitted",
		"the system is not permitted in this seismic design category",
		"the structure is higher than the system may be",
	}[r]
}

// Permits tells whether the system may be used in a category at a height, in.
func (s System) Permits(category string, height float64) Refusal {
	switch {
	case !slices.Contains(s.Categories, category):
		return NotPermitted
	case !(height <= s.Height):
		return TooTall
	}
	return Permitted
}
