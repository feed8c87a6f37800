package cover

import (
	"slices"

	"patiocover/calc"
	"patiocover/connections/footing"
)

// soilRows names the rows of the table of presumptive values by the words of the input.
var soilRows = map[string]string{
	"bedrock": "crystalline bedrock", "foliated_rock": "sedimentary and foliated rock",
	"gravel": "gravel", "sand": "sand", "clay": "clay",
}

// presumptive returns the row of the soil that was said; false where it has none.
func (s Site) presumptive() (footing.Soil, bool) {
	if s.SoilClass == nil {
		return footing.Soil{}, false
	}
	return footing.SoilNamed(soilRows[*s.SoilClass])
}

// assumeSoil fills the values of the soil that was said from the table.
func (in *Input) assumeSoil(note func(path, value, why string)) {
	row, ok := in.Site.presumptive()
	if !ok {
		return
	}
	for _, v := range []struct {
		path string
		at   **float64
		x    float64
	}{
		{"site.soil_bearing_psf", &in.Site.SoilBearing, row.Bearing / calc.PSF},
		{"site.soil_lateral_pcf", &in.Site.SoilLateral, row.Lateral / calc.PCF},
	} {
		if *v.at == nil {
			whole := calc.RoundDown(v.x, 1)
			*v.at = &whole
			note(v.path, calc.Number(whole), "The presumptive value of the soil that was said")
		}
	}
}

// A bed is what the ground gives, and what may not be done in it.
type bed struct {
	bearing  footing.Pressure
	lateral  footing.Pressure
	friction float64 // factor; 0 where the soil is not known
	cohesion float64 // lb/in²; 0 where the soil is not known
	frost    footing.Frost
	line     float64 // frost depth, in
	water    float64 // ground water below grade, in
	concrete float64 // f'c, lb/in²
	why      string  // why no size holds good without a geotechnical report
	steel    string  // why plain concrete does not do
}

// newBed reads the ground from the input. A soil that is not known rubs nowhere.
func (m *model) newBed() bed {
	s, f := m.in.Site, m.in.Foundation
	b := bed{
		bearing: m.pressure("soil_bearing_psf", *s.SoilBearing*calc.PSF),
		lateral: m.pressure("soil_lateral_pcf", *s.SoilLateral*calc.PCF),
		line:    *s.FrostDepth * calc.In, water: *s.GroundWater * calc.Ft, concrete: *f.Concrete * calc.PSI,
		frost: footing.NewFrost(footing.Standing{
			Attached: m.plan.attached, Asked: *f.FrostExempt, Area: m.plan.width * m.plan.projection, Eave: m.plan.high,
		}),
	}
	if row, ok := s.presumptive(); ok {
		b.friction, b.cohesion = row.Friction, row.Cohesion
	}
	if *s.SoilClass == "fill" || *s.SoilClass == "expansive" {
		b.why = "soil said to be " + *s.SoilClass + " has no presumptive value (IBC 2018 1806.2 and 1808.6): " +
			"a geotechnical report must say how to build on it"
	}
	if c := s.SeismicCategory; c != nil && slices.Contains([]string{"D", "E", "F"}, *c) {
		b.steel = "in seismic category " + *c + " footings need steel (IRC 2021 R403.1.3, from memory), which is not designed"
	}
	return b
}

// pressure is a value of the soil with its source.
func (m *model) pressure(key string, x float64) footing.Pressure {
	source := "input site." + key
	if own, ok := m.in.Site.Sources[key]; ok {
		source += ", " + own
	}
	return footing.Pressure{Value: x, Source: source + "; presumptive values: IBC 2018 Table 1806.2", Status: calc.Read}
}
