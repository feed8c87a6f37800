package wind

import (
	_ "embed" // exposure.csv
	"math"

	"patiocover/calc"
	"patiocover/loads"
)

//go:embed exposure.csv
var exposureCSV string

type terrain struct {
	edition, exposure                   string
	alpha, gradient, coefficient, least float64 // dimensionless, in, factor, in
	source                              string
	status                              calc.Status
}

// terrains holds the rows of exposure.csv.
var terrains = calc.ReadTable("exposure.csv", exposureCSV, func(r calc.Row) terrain {
	return terrain{
		edition: r.Text("edition"), exposure: r.Text("exposure"), alpha: r.Num("alpha"),
		gradient: r.Num("zg ft") * calc.Ft, coefficient: r.Num("coef"), least: r.Num("z_min ft") * calc.Ft,
		source: r.Text("source"), status: r.Status(),
	}
})

// Directionality is Kd of buildings and open roofs (ASCE 7-16 Table 26.6-1).
const Directionality = 0.85

// Gust is G of a rigid structure (ASCE 7-16 26.11.1).
const Gust = 0.85

// A Site is where the wind blows.
type Site struct {
	Edition   loads.Edition
	Exposure  string  // B, C or D
	Speed     float64 // V, mph, ultimate 3-second gust
	Hill      float64 // Kzt, factor
	Elevation float64 // Ke, factor
	Height    float64 // h, mean roof height, in
}

// A Velocity is the velocity pressure at the mean roof height.
type Velocity struct {
	Site     Site
	Height   float64 // z, in: the roof height, not less than 15 ft
	Exposure float64 // Kz, factor
	Pressure float64 // q, lb/in², with Kd in it for either edition
	terrain  int     // row of exposure.csv
}

// NewVelocity returns q = 0.00256 Kz Kzt Kd Ke V² (ASCE 7-16 eq. 26.10-1). The 2022
// edition moves Kd from q into each pressure; the product is the same, and q here
// has it. The height is not taken below 15 ft; the higher floor of exposure B belongs
// to the envelope procedure of low-rise buildings and not to open roofs.
func NewVelocity(s Site) Velocity {
	v := Velocity{Site: s, terrain: terrainOf(s)}
	t := &terrains[v.terrain]
	v.Height = max(s.Height, t.least)
	v.Exposure = t.coefficient * math.Pow(v.Height/t.gradient, 2/t.alpha)
	v.Pressure = 0.00256 * v.Exposure * s.Hill * Directionality * s.Elevation * s.Speed * s.Speed * calc.PSF
	return v
}

// terrainOf finds the row of an edition and exposure; an unknown exposure takes the
// windiest.
func terrainOf(s Site) int {
	last := 0
	for i := range terrains {
		if terrains[i].edition != s.Edition.String() {
			continue
		}
		last = i
		if terrains[i].exposure == s.Exposure {
			return i
		}
	}
	return last
}

// Lines writes the pressure up.
func (v Velocity) Lines() []calc.Line {
	var s calc.Sheet
	t := &terrains[v.terrain]
	clause := v.Site.Edition.String() + " "
	s.Given("h", v.Site.Height/calc.Ft, "ft", "mean roof height, geometry")
	s.Quoted("z_min", t.least/calc.Ft, "ft", t.source, t.status)
	s.Step("z", "max(h, z_min)", v.Height/calc.Ft, "ft", clause+"Table 26.10-1")
	s.Quoted("c_z", t.coefficient, "", clause+"Table 26.10-1", t.status)
	s.Quoted("alpha", t.alpha, "", t.source, t.status)
	s.Quoted("z_g", t.gradient/calc.Ft, "ft", t.source, t.status)
	s.Step("K_z", "c_z * pow(z / z_g, 2 / alpha)", v.Exposure, "", clause+"Table 26.10-1, exposure "+t.exposure)
	s.Given("K_zt", v.Site.Hill, "", clause+"26.8, input site.topographic_factor")
	s.Quoted("K_d", Directionality, "", clause+"Table 26.6-1", calc.Read)
	s.Given("K_e", v.Site.Elevation, "", clause+"26.9, input site.elevation_factor")
	s.Given("V", v.Site.Speed, "mph", "input site.wind_speed_mph")
	where := clause + "eq. 26.10-1"
	if v.Site.Edition == loads.ASCE722 {
		where += ", with K_d of the pressure equations in it"
	}
	s.Step("q_h", "0.00256 * K_z * K_zt * K_d * K_e * V * V", v.Pressure/calc.PSF, "psf", where)
	return s.Lines()
}
