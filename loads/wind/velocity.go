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

// nowhere stands for an exposure that is not in the table: nothing is known of it.
var nowhere = terrain{
	alpha: math.NaN(), gradient: math.NaN(), coefficient: math.NaN(), least: math.NaN(), source: "unknown exposure",
}

// Directionality is Kd of buildings and open roofs (ASCE 7-16 Table 26.6-1).
const Directionality = 0.85

// Gust is G of a rigid structure (ASCE 7-16 26.11.1).
const Gust = 0.85

// envelopeFloor is the least Kz of exposure B in the envelope procedure, factor
// (footnote of ASCE 7-16 and 7-22 Table 26.10-1, read as quoted). The footnote ends at
// 30 ft, where the power law of 7-22 gives 0.69; the floor is kept above, the safe
// side, so that the pressure never falls with the height.
const envelopeFloor = 0.70

// A Site is where the wind blows.
type Site struct {
	Edition   loads.Edition // of the load standard
	Exposure  string        // B, C or D
	Speed     float64       // V, mph, ultimate 3-second gust
	Hill      float64       // Kzt, factor
	Elevation float64       // Ke, factor
	Height    float64       // h, mean roof height, in
	Envelope  bool          // for the envelope procedure of low-rise buildings, chapter 28
}

// A Velocity is the velocity pressure at the mean roof height.
type Velocity struct {
	Site     Site    // as given
	Height   float64 // z, in: the roof height, not less than 15 ft
	Power    float64 // Kz by the power law, factor
	Exposure float64 // Kz, factor: not below 0.70 in the envelope procedure of exposure B
	Bare     float64 // q without Kd, lb/in²
	Pressure float64 // q, lb/in², with Kd in it for either edition
	floored  bool    // the floor of the envelope procedure was looked at
	terrain  int     // row of exposure.csv, or −1
}

// NewVelocity returns q = 0.00256 Kz Kzt Kd Ke V² (ASCE 7-16 eq. 26.10-1). The 2022
// edition moves Kd from q into each pressure; the product is the same, and Pressure
// has it. The height is not taken below 15 ft. The higher floor of exposure B is that
// of the envelope procedure (chapter 28) alone, so it holds for open roofs in neither
// edition.
//
// Special case: the pressure is not a number for an exposure other than B, C and D,
// so that nothing passes by it.
func NewVelocity(s Site) Velocity {
	v := Velocity{Site: s, terrain: terrainOf(s)}
	t := v.ground()
	v.Height = max(s.Height, t.least)
	v.Power = t.coefficient * math.Pow(v.Height/t.gradient, 2/t.alpha)
	v.Exposure = v.Power
	if s.Envelope && s.Exposure == "B" {
		v.floored = true
		v.Exposure = max(v.Power, envelopeFloor)
	}
	v.Bare = 0.00256 * v.Exposure * s.Hill * s.Elevation * s.Speed * s.Speed * calc.PSF // eq. 26.10-1
	v.Pressure = v.Bare * Directionality
	return v
}

// Net returns the net pressure q G CN, lb/in², positive downward like the coefficient
// (ASCE 7-16 eq. 27.3-2).
func (v Velocity) Net(coefficient float64) float64 { return v.Pressure * Gust * coefficient }

// terrainOf finds the row of an edition and exposure, or −1.
func terrainOf(s Site) int {
	for i := range terrains {
		if terrains[i].exposure == s.Exposure && terrains[i].edition == s.Edition.String() {
			return i
		}
	}
	return -1
}

// ground is the row of the exposure table.
func (v Velocity) ground() *terrain {
	if v.terrain < 0 {
		return &nowhere
	}
	return &terrains[v.terrain]
}

// Lines writes the pressure up.
func (v Velocity) Lines() []calc.Line {
	var s calc.Sheet
	t := v.ground()
	clause := v.Site.Edition.String() + " "
	s.Given("h", v.Site.Height/calc.Ft, "ft", "mean roof height, geometry")
	s.Quoted("z_min", t.least/calc.Ft, "ft", clause+"Table 26.10-1 note 1", t.status)
	s.Step("z", "max(h, z_min)", v.Height/calc.Ft, "ft", clause+"Table 26.10-1 note 1")
	s.Quoted("c_z", t.coefficient, "", clause+"Table 26.10-1 note 1", t.status)
	s.Quoted("alpha", t.alpha, "", t.source, t.status)
	s.Quoted("z_g", t.gradient/calc.Ft, "ft", t.source, t.status)
	where := clause + "Table 26.10-1 note 1, exposure " + v.Site.Exposure
	if v.floored {
		s.Step("K_pow", "c_z * pow(z / z_g, 2 / alpha)", v.Power, "", where)
		s.Quoted("K_28", envelopeFloor, "", clause+"Table 26.10-1 footnote, chapter 28", calc.Read)
		s.Step("K_z", "max(K_pow, K_28)", v.Exposure, "", clause+"Table 26.10-1 footnote")
	} else {
		s.Step("K_z", "c_z * pow(z / z_g, 2 / alpha)", v.Exposure, "", where)
	}
	s.Given("K_zt", v.Site.Hill, "", clause+"26.8, input site.topographic_factor")
	s.Quoted("K_d", Directionality, "", clause+"Table 26.6-1", calc.Read)
	s.Given("K_e", v.Site.Elevation, "", clause+"26.9, input site.elevation_factor")
	s.Given("V", v.Site.Speed, "mph", "input site.wind_speed_mph")
	if v.Site.Edition == loads.ASCE722 {
		s.Step("q", "0.00256 * K_z * K_zt * K_e * V * V", v.Bare/calc.PSF, "psf", clause+"eq. 26.10-1")
		s.Step("q_h", "q * K_d", v.Pressure/calc.PSF, "psf", clause+"eq. 27.3-2, its K_d taken with q")
		return s.Lines()
	}
	s.Step("q_h", "0.00256 * K_z * K_zt * K_d * K_e * V * V", v.Pressure/calc.PSF, "psf", clause+"eq. 26.10-1")
	return s.Lines()
}
