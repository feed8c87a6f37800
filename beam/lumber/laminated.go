package lumber

import (
	_ "embed"
	"fmt"
	"math"
	"strings"

	"patiocover/calc"
)

//go:embed table5a.csv
var table5aCSV string

//go:embed laminated.csv
var laminatedCSV string

// laminatedName begins the species of glued laminated timber; the wood of the outer
// and core laminations follows, as stamped.
const laminatedName = "Glulam "

// sideValues are the values of glued laminated timber loaded on its side, parallel to
// the wide faces of the laminations; zero for everything else.
type sideValues struct{ bending, bearing, shear, elasticity, stability Quoted }

// laminatedRows holds the rows of Table 5A.
var laminatedRows = calc.ReadTable("table5a.csv", table5aCSV, func(r calc.Row) Values {
	known := confirmed(r)
	quote := func(column string) Quoted {
		name := strings.TrimSuffix(column, " psi")
		return Quoted{Value: r.Num(column), Status: max(r.Status(), known[name])}
	}
	v := Values{
		Species: laminatedName + r.Text("wood"), Grade: r.Text("combination"), Row: r.Text("combination"),
		Table: Table5A, Shape: Manufactured, Source: r.Text("source"),
		Bending: quote("Fbx+ psi"), Reversed: quote("Fbx- psi"), Shear: quote("Fvx psi"),
		Bearing:    lesser(quote("Fc_perp x tension psi"), quote("Fc_perp x compression psi")),
		Elasticity: quote("Ex psi"), Stability: quote("Ey min psi"),
		Tension: quote("Ft psi"), Compression: quote("Fc psi"), Gravity: quote("G"),
		side: sideValues{
			bending: quote("Fby psi"), bearing: quote("Fc_perp y psi"), shear: quote("Fvy psi"),
			elasticity: quote("Ey psi"), stability: quote("Ey min psi"),
		},
	}
	v.volume = volumeRule{divisor: r.Num("x"), source: "NDS 2018 5.3.6", status: calc.Read}
	if across := quote("Ex min psi"); across.Value < v.Stability.Value {
		panic(fmt.Sprintf("lumber: table5a.csv %s: Ex min below Ey min", v.Grade))
	}
	return v
})

// lesser returns the smaller of two values, with the weaker status.
func lesser(a, b Quoted) Quoted {
	return Quoted{Value: math.Min(a.Value, b.Value), Status: a.Status.Weakest(b.Status)}
}

// A laminatedSize is one width of glued laminated timber.
type laminatedSize struct {
	wood       string
	width      float64 // in
	lamination float64 // in: depths are multiples
	status     calc.Status
}

func (l laminatedSize) known() calc.Status { return l.status }

var laminatedSizes = calc.ReadTable("laminated.csv", laminatedCSV, func(r calc.Row) laminatedSize {
	return laminatedSize{
		wood: r.Text("wood"), width: r.Num("width in"), lamination: r.Num("lamination in"), status: r.Status(),
	}
})

// fewestLaminations is the least number of laminations that is made.
const fewestLaminations = 3

// LaminatedSpecies returns the species of glued laminated timber, in the order of Table
// 5A: Glulam DF/DF is of Douglas Fir outside and within, Glulam any of any softwood.
func LaminatedSpecies() []string {
	var all []string
	for _, v := range laminatedRows {
		if len(all) == 0 || all[len(all)-1] != v.Species {
			all = append(all, v.Species)
		}
	}
	return all
}

// Laminated reports whether the species is one of glued laminated timber.
func Laminated(species string) bool { return strings.HasPrefix(species, laminatedName) }

// woodOf returns the rows of sizes that serve a species of glued laminated timber.
func woodOf(species string) string {
	if strings.Contains(species, "SP/SP") {
		return southernPine
	}
	return "western"
}

// LaminatedSections returns the standard sizes of a species of glued laminated timber
// up to the depth, in, the shallow ones first for each width.
func LaminatedSections(species string, depth float64) []Section {
	var all []Section
	for _, l := range laminatedSizes {
		if l.wood != woodOf(species) {
			continue
		}
		for n := fewestLaminations; float64(n)*l.lamination <= depth; n++ {
			if s, ok := gluedOf(l.width, float64(n)*l.lamination); ok {
				all = append(all, s)
			}
		}
	}
	return all
}

// findLaminated returns the values of a combination for a section of standard width
// and of whole laminations; plies of it are as their single piece.
func findLaminated(species, grade string, s Section) (Values, error) {
	if !standardLaminated(species, s) {
		return Values{}, &NotListed{
			What: "size of " + species, Given: s.Name, Allowed: namesOf(LaminatedSections(species, 24)),
		}
	}
	var grades []string
	for _, v := range laminatedRows {
		if v.Species != species {
			continue
		}
		if v.Grade == grade {
			return v, nil
		}
		grades = append(grades, v.Grade)
	}
	return Values{}, &NotListed{What: "combination of " + species, Given: grade, Allowed: grades}
}

func standardLaminated(species string, s Section) bool {
	if s.Class != Manufactured {
		return false
	}
	for _, l := range laminatedSizes {
		n := s.Depth / l.lamination
		whole := n == math.Trunc(n) && n >= fewestLaminations
		if l.wood == woodOf(species) && l.width == s.Ply() && whole {
			return true
		}
	}
	return false
}

func namesOf(sections []Section) []string {
	all := make([]string, len(sections))
	for i, s := range sections {
		all[i] = s.Name
	}
	return all
}

// shearAtCuts is C_vr, on Fvx of glued laminated timber at notches, at fasteners by
// 3.4.3.3, and under impact (NDS 2018 5.3.10).
const shearAtCuts = 0.72

// flatDepth is the side below which glued laminated timber gains by flat use, in (NDS
// Supp. 2018 Table 5A).
const flatDepth = 12.0

// laminatedFlat returns C_fu = (12/d)^(1/9) of glued laminated timber on its side, d
// being the side parallel to the wide faces of the laminations; never below 1 here,
// because sides of 12 in. and more have no factor.
func laminatedFlat(side float64) float64 {
	return math.Max(1, math.Pow(flatDepth/side, 1.0/9)) // Table 5A, flat use
}
