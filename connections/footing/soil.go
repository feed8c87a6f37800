package footing

import (
	_ "embed" // soil.csv
	"slices"

	"patiocover/calc"
)

//go:embed soil.csv
var soilCSV string

// A Soil is one class of the presumptive values (IBC 2018 Table 1806.2).
type Soil struct {
	Class    string      // name of the class, shortened
	Symbols  string      // symbols of the Unified Soil Classification, empty for rock
	Bearing  float64     // allowable foundation pressure, lb/in²
	Lateral  float64     // lateral bearing pressure gained for each inch of depth, lb/in³ (psf per ft)
	Friction float64     // coefficient of sliding friction, factor; 0 for clay
	Cohesion float64     // sliding resistance of the contact area, lb/in²; 0 but for clay
	Source   string      // standard, table, row
	Status   calc.Status // how the values came into the project
}

// lateralUnit turns psf per foot of depth into pounds and inches.
const lateralUnit = calc.PSF / calc.Ft

var soils = calc.ReadTable("soil.csv", soilCSV, func(r calc.Row) Soil {
	return Soil{
		Class: r.Text("class"), Symbols: r.Text("symbols"), Bearing: r.Num("bearing psf") * calc.PSF,
		Lateral: r.Num("lateral psf per ft") * lateralUnit, Friction: r.Num("friction"),
		Cohesion: r.Num("cohesion psf") * calc.PSF, Source: r.Text("source"), Status: r.Status(),
	}
})

// SoilNamed returns the class of that name.
func SoilNamed(class string) (Soil, bool) {
	i := slices.IndexFunc(soils, func(s Soil) bool { return s.Class == class })
	if i < 0 {
		return Soil{}, false
	}
	return soils[i], true
}
