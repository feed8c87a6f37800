package loads

import (
	_ "embed" // layers.csv
	"fmt"
	"slices"
	"strings"

	"patiocover/calc"
)

//go:embed layers.csv
var layersCSV string

// layers holds the rows of layers.csv in order.
var layers = calc.ReadTable("layers.csv", layersCSV, func(r calc.Row) Layer {
	return Layer{
		Name: r.Text("layer"), Weight: r.Num("psf") * calc.PSF,
		Source: r.Text("source"), Status: r.Status(),
	}
})

// A Layer is one part of a roof and its weight.
type Layer struct {
	Name   string      // as in the table of weights
	Weight float64     // lb/in² of the surface itself, along the slope
	Source string      // table or density behind the weight
	Status calc.Status // how the weight is known
}

// Layers returns the table of weights in its order.
func Layers() []Layer { return slices.Clone(layers) }

// LayerNamed returns the row of the table with the name.
func LayerNamed(name string) (Layer, bool) {
	i := slices.IndexFunc(layers, func(l Layer) bool { return l.Name == name })
	if i < 0 {
		return Layer{}, false
	}
	return layers[i], true
}

// A Part is one layer as it counts for a roof.
type Part struct {
	Weight  float64     // lb/in² of the surface, along the slope
	Certain bool        // fastened and sure to stay: it resists uplift
	Source  string      // whence the weight comes; empty for the input
	Status  calc.Status // how the weight is known
}

// A Dead is the dead load of a roof without its framing.
type Dead struct {
	Most  float64 // everything that may be there, lb/in² of slope; acts downward
	Least float64 // what is certain, lb/in² of slope; resists uplift
}

// NewDead adds the parts up.
func NewDead(parts []Part) Dead {
	var d Dead
	for _, p := range parts {
		d.Most += p.Weight
		if p.Certain {
			d.Least += p.Weight
		}
	}
	return d
}

// Lines writes the sums of the parts up; parts are those that the load was made of.
func (d Dead) Lines(parts []Part) []calc.Line {
	var s calc.Sheet
	var all, certain []string
	for i, p := range parts {
		symbol := fmt.Sprintf("w_%d", i+1)
		all = append(all, symbol)
		if p.Certain {
			certain = append(certain, symbol)
		}
		if p.Source == "" {
			s.Given(symbol, p.Weight/calc.PSF, "psf", fmt.Sprintf("input cover.layers[%d]", i))
			continue
		}
		s.Quoted(symbol, p.Weight/calc.PSF, "psf", p.Source, p.Status)
	}
	s.Step("D_most", sum(all), d.Most/calc.PSF, "psf", "all layers, per area of slope")
	s.Step("D_least", sum(certain), d.Least/calc.PSF, "psf", "layers that are certain, per area of slope")
	return s.Lines()
}

// sum is the formula that adds the symbols up.
func sum(symbols []string) string {
	if len(symbols) == 0 {
		return "0"
	}
	return strings.Join(symbols, " + ")
}
