package loads

import (
	_ "embed" // layers.csv
	"math"
	"slices"

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
	Weight  float64 // lb/in² of the surface, along the slope
	Certain bool    // fastened and sure to stay: it resists uplift
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

// OnPlan turns a load per area of slope into one per area of plan, in the same unit.
// angle is from the horizontal, in radians.
func OnPlan(perSlope, angle float64) float64 { return perSlope / math.Cos(angle) }

// Density returns the density of wood, lb/in³, from its specific gravity G on
// oven-dry weight and volume and its moisture content in percent (NDS Supplement
// 2018 3.1.3; the form is from memory, its results agree with printed weights).
func Density(gravity, moisture float64) float64 {
	pcf := 62.4 * gravity / (1 + 0.009*gravity*moisture) * (1 + moisture/100)
	return pcf * calc.PCF
}
