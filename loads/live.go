package loads

import "patiocover/calc"

// MaintenanceLoad is the concentrated load of a worker on a roof, lb, not together
// with the uniform roof live load (ASCE 7-16 Table 4.3-1, from memory).
const MaintenanceLoad = 300 * calc.Lb

// AppendixLive is the least live load of the patio cover appendix, lb/in² of plan,
// where it is adopted; it is not reduced further (IRC 2018 Appendix H, read in a
// state's code).
const AppendixLive = 10 * calc.PSF

// leastRoofLive is the floor of the reduced roof live load (ASCE 7-16 4.8.2; read in
// a reference page on the same clause of ASCE 7-22).
const leastRoofLive = 12 * calc.PSF

// A RoofLive is a roof live load and how it was found.
type RoofLive struct {
	Base      float64 // L0, lb/in² of plan
	Area      float64 // At, tributary area of the member, in²
	Rise      float64 // F, in of rise per ft
	ByArea    float64 // R1, factor
	BySlope   float64 // R2, factor
	Reducible bool    // R1 and R2 are used
	Load      float64 // Lr, lb/in² of plan
}

// NewRoofLive returns the roof live load of a member (ASCE 7-16 4.8.2). base is the
// load of the place in lb/in²; area the member's tributary area on plan in in²; rise
// in inches per foot. Where the load may not be reduced, or is that of the patio
// cover appendix, the base stands.
func NewRoofLive(base, area, rise float64, reducible bool) RoofLive {
	l := RoofLive{Base: base, Area: area, Rise: rise, ByArea: 1, BySlope: 1, Reducible: reducible, Load: base}
	if !reducible {
		return l
	}
	l.ByArea = min(1, max(0.6, 1.2-0.001*area/calc.SqFt)) // R1
	l.BySlope = min(1, max(0.6, 1.2-0.05*rise))           // R2
	l.Load = max(leastRoofLive, base*l.ByArea*l.BySlope)  // eq. 4.8-1
	return l
}

// Lines writes the load up.
func (l RoofLive) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("L_0", l.Base/calc.PSF, "psf", "input site.roof_live_psf")
	if !l.Reducible {
		s.Step("L_r", "L_0", l.Load/calc.PSF, "psf", "not reduced")
		return s.Lines()
	}
	s.Given("A_t", l.Area/calc.SqFt, "ft²", "tributary area of the member, geometry")
	s.Given("F", l.Rise, "in/ft", "input cover.slope_in_per_ft")
	s.Quoted("L_min", leastRoofLive/calc.PSF, "psf", "ASCE 7-16 4.8.2", calc.Read)
	s.Step("R_1", "min(1, max(0.6, 1.2 - 0.001 * A_t))", l.ByArea, "", "ASCE 7-16 4.8.2")
	s.Step("R_2", "min(1, max(0.6, 1.2 - 0.05 * F))", l.BySlope, "", "ASCE 7-16 4.8.2")
	s.Step("L_r", "max(L_min, L_0 * R_1 * R_2)", l.Load/calc.PSF, "psf", "ASCE 7-16 eq. 4.8-1")
	return s.Lines()
}
