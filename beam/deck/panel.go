package deck

import (
	_ "embed" // spans.csv, capacities.csv, shears.csv
	"slices"

	"patiocover/calc"
)

//go:embed spans.csv
var spansCSV string

//go:embed capacities.csv
var capacitiesCSV string

//go:embed shears.csv
var shearsCSV string

// A Quoted is one printed number and whence it comes.
type Quoted struct {
	Value  float64     // in the unit of the field, or a ratio
	Source string      // standard, edition, table
	Status calc.Status // how the number is known
}

// A Panel is a wood structural panel by its span rating, strength axis across the
// rafters. Values per width are the least of plywood and oriented strand board.
type Panel struct {
	Rating    string  // such as 32/16, or 24 oc for a single floor panel
	Thickness float64 // in, the thinnest of the rating
	Held      Quoted  // longest span with held edges, in
	Free      Quoted  // longest span with free edges, in
	Total     Quoted  // dead and live load printed for it, lb/in²
	Live      Quoted  // live load printed for it, lb/in²
	Strength  Quoted  // FbS, lb-in per in of width
	Stiffness Quoted  // EI, lb-in² per in of width
	Shear     Quoted  // Fs(Ib/Q), lb per in of width
	Sheathing bool    // rated as sheathing; else as a single floor
}

// byRating reads one of the tables of capacities.
func byRating(name, text string, columns ...string) map[string][]Quoted {
	out := map[string][]Quoted{}
	calc.ReadTable(name, text, func(r calc.Row) string {
		for _, c := range columns {
			q := Quoted{r.Num(c) / (calc.Ft / calc.In), r.Text("source"), r.Status()}
			out[r.Text("rating")] = append(out[r.Text("rating")], q)
		}
		return r.Text("rating")
	})
	return out
}

// panels holds the rows of the three tables, in the order of spans.csv.
var panels = func() []Panel {
	bending := byRating("capacities.csv", capacitiesCSV, "FbS lb-in/ft", "EI lb-in2/ft")
	shear := byRating("shears.csv", shearsCSV, "FsIbQ lb/ft")
	return calc.ReadTable("spans.csv", spansCSV, func(r calc.Row) Panel {
		rating, source, status := r.Text("rating"), r.Text("source"), r.Status()
		var bare calc.Status
		if err := bare.UnmarshalText([]byte(r.Text("bare status"))); err != nil {
			panic("deck: spans.csv: " + err.Error()) // the table is part of the program
		}
		if len(bending[rating]) != 2 || len(shear[rating]) != 1 {
			panic("deck: no capacities of panel " + rating) // likewise
		}
		return Panel{
			Rating: rating, Thickness: r.Num("thickness in"), Sheathing: slices.Contains(sheathing, rating),
			Held:     Quoted{r.Num("edges held in"), source, status},
			Free:     Quoted{r.Num("edges free in"), source, status.Weakest(bare)},
			Total:    Quoted{r.Num("total psf") * calc.PSF, source, status},
			Live:     Quoted{r.Num("live psf") * calc.PSF, source, status},
			Strength: bending[rating][0], Stiffness: bending[rating][1], Shear: shear[rating][0],
		}
	})
}()

// sheathing lists the ratings that are sold as roof sheathing, the least first.
var sheathing = []string{"24/0", "24/16", "32/16", "40/20", "48/24"}

// Panels returns every panel of the tables, sheathing first and the least first.
func Panels() []Panel { return slices.Clone(panels) }

// longest returns the longest span of the code table, in. held: the edges across the
// span are held by clips, blocking, or tongue and groove.
func (p *Panel) longest(held bool) Quoted {
	if held {
		return p.Held
	}
	return p.Free
}

// panelDensity is the weight of plywood and strand board, lb/in³: 3 psf for each inch
// (ASCE 7-16 Table C3.1-1a, from memory).
const panelDensity = 3 * calc.PSF / calc.In

// Weight returns the weight of the thinnest panel of the rating, lb/in² of deck.
func (p *Panel) Weight() float64 { return panelDensity * p.Thickness }
