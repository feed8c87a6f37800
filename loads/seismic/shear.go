package seismic

import (
	"math"

	"patiocover/calc"
	"patiocover/loads"
)

// A Site holds the spectral values of the place.
type Site struct {
	Short      float64 // SDS, design spectral response at short periods, factor of gravity
	Second     float64 // SD1, at one second, factor of gravity
	Mapped     float64 // S1, mapped at one second, factor of gravity
	Importance float64 // Ie, factor
}

// strongS1 is the mapped value from which the floor near faults holds (ASCE 7-16
// eq. 12.8-6).
const strongS1 = 0.6

// A Shear is the base shear in one direction, strength level.
type Shear struct {
	Site   Site    // of the place
	System System  // what resists
	Weight float64 // W, effective seismic weight, lb
	Height float64 // hn, in
	Period float64 // T, seconds
	Plain  float64 // SDS over R/Ie, factor
	Cap    float64 // upper bound by the period, factor
	Floor  float64 // lower bound, factor
	Factor float64 // Cs, factor
	Force  float64 // V, lb
}

// NewShear returns V = Cs W (ASCE 7-16 12.8.1, from memory).
func NewShear(site Site, system System, weight, height float64) Shear {
	s := Shear{Site: site, System: system, Weight: weight, Height: height}
	r := system.Response / site.Importance
	s.Period = 0.02 * math.Pow(height/calc.Ft, 0.75) // eq. 12.8-7
	s.Plain = site.Short / r                         // eq. 12.8-2
	s.Cap = site.Second / (s.Period * r)             // eq. 12.8-3
	s.Floor = max(0.044*site.Short*site.Importance, 0.01)
	if site.Mapped >= strongS1 {
		s.Floor = max(s.Floor, 0.5*site.Mapped/r) // eq. 12.8-6
	}
	s.Factor = max(s.Floor, min(s.Plain, s.Cap))
	s.Force = s.Factor * weight
	return s
}

// Lines writes the base shear up.
func (s Shear) Lines() []calc.Line {
	var sheet calc.Sheet
	const from = calc.Recalled
	sheet.Given("S_DS", s.Site.Short, "", "input site.seismic_sds")
	sheet.Given("S_D1", s.Site.Second, "", "input site.seismic_sd1")
	sheet.Given("S_1", s.Site.Mapped, "", "input site.seismic_s1")
	sheet.Quoted("I_e", s.Site.Importance, "", "ASCE 7-16 Table 1.5-2", from)
	sheet.Quoted("R", s.System.Response, "", s.System.Source+": "+s.System.Name, s.System.Status)
	sheet.Given("h_n", s.Height/calc.Ft, "ft", "height of the roof, geometry")
	sheet.Quoted("C_t", 0.02, "", "ASCE 7-16 Table 12.8-2, other structures", from)
	sheet.Step("T", "C_t * pow(h_n, 0.75)", s.Period, "s", "ASCE 7-16 eq. 12.8-7")
	sheet.Step("Cs_0", "S_DS / (R / I_e)", s.Plain, "", "ASCE 7-16 eq. 12.8-2")
	sheet.Step("Cs_max", "S_D1 / (T * (R / I_e))", s.Cap, "", "ASCE 7-16 eq. 12.8-3")
	if s.Site.Mapped >= strongS1 {
		sheet.Step("Cs_min", "max(0.044 * S_DS * I_e, 0.01, 0.5 * S_1 / (R / I_e))", s.Floor, "", "ASCE 7-16 eq. 12.8-5, 12.8-6")
	} else {
		sheet.Step("Cs_min", "max(0.044 * S_DS * I_e, 0.01)", s.Floor, "", "ASCE 7-16 eq. 12.8-5")
	}
	sheet.Step("C_s", "max(Cs_min, min(Cs_0, Cs_max))", s.Factor, "", "ASCE 7-16 12.8.1.1")
	sheet.Given("W", s.Weight, "lb", "roof, beams, half of the posts, and the share of snow (ASCE 7-16 12.7.2)")
	sheet.Step("V", "C_s * W", s.Force, "lb", "ASCE 7-16 eq. 12.8-1, strength level")
	return sheet.Lines()
}

// SnowShare returns the part of the roof snow that counts as weight: a fifth where the
// flat roof snow load, in lb/in², is above 30 psf (ASCE 7-16 12.7.2; read as the older
// rule in a comparison of editions), or 0.15 above 45 psf by the 2022 edition.
func SnowShare(e loads.Edition, snow float64) float64 {
	newer := e == loads.ASCE722
	switch {
	case newer && snow > 45*calc.PSF:
		return 0.15
	case !newer && snow > 30*calc.PSF:
		return 0.2
	}
	return 0
}
