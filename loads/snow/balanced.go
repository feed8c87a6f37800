package snow

import (
	"math"

	"patiocover/calc"
)

// lowSlope is the slope below which a monoslope, hip or gable roof carries the least
// load, degrees (ASCE 7-16 7.3.4, 7-22 7.3.3).
const lowSlope = 15

// A Balanced is the snow that lies evenly on the cover, and how it was found.
type Balanced struct {
	Site       Site    // as given
	Roof       Roof    // as given
	Reason     Reason  // Found, NoSnow, or a refusal
	Exposure   float64 // Ce, factor; 0 where the authority sets the roof snow
	Thermal    float64 // Ct, factor
	Importance float64 // Is, factor; 1 in ASCE 7-22
	Flat       float64 // pf, lb/in²
	Slope      float64 // Cs, factor; 1 where the authority sets the roof snow
	Sloped     float64 // ps, lb/in² of plan; the load that drift and sliding add to
	Rain       float64 // surcharge of rain on snow, lb/in²; 0 where none is due
	Minimum    float64 // pm, least load of low slopes, lb/in²; 0 where none is due

	exposure, thermal, category, slope int  // rows of the tables
	set                                bool // the authority sets the roof snow
	rains, least                       bool // rain on snow is due, the least load is due
}

// NewBalanced returns the balanced snow ps = Cs pf with pf = 0.7 Ce Ct Is pg (ASCE 7-16
// eq. 7.3-1, 7.4-1; Is is gone from ASCE 7-22), the least load of low slopes and the
// surcharge of rain on snow.
//
// A roof snow set by the authority stands for pf and is not reduced by slope; with no
// ground snow beside it, it stands for the least load too, and rain on snow is added
// wherever the slope calls for it.
//
// Special cases: all loads are 0 where no snow falls, and not a number where the
// Reason is a refusal.
func NewBalanced(site Site, roof Roof) Balanced {
	b := Balanced{Site: site, Roof: roof, set: site.RoofBasis != NotGiven, Reason: site.refusal()}
	if b.Reason == NoSnow {
		return b
	}
	if b.look(); b.Reason != Found {
		unknown := math.NaN()
		b.Flat, b.Sloped, b.Rain, b.Minimum = unknown, unknown, unknown, unknown
		return b
	}
	c := &categories[b.category]
	b.Thermal, b.Importance = thermalFactors[b.thermal].value, c.importance
	b.Flat, b.Slope = site.Roof, 1
	if !b.set {
		s := &slopes[b.slope]
		b.Exposure = exposures[b.exposure].value
		b.Flat = 0.7 * b.Exposure * b.Thermal * b.Importance * site.Ground // eq. 7.3-1
		b.Slope = max(0, min(1, (s.none-roof.degrees())/(s.none-s.full)))  // Fig. 7.4-1
	}
	b.Sloped = b.Slope * b.Flat // eq. 7.4-1
	b.surcharge(c)
	return b
}

// look finds the rows of the tables, or what is missing for them.
func (b *Balanced) look() {
	if b.Reason != Found {
		return
	}
	b.exposure = find(exposures, b.Site.Terrain, b.Site.Sheltering.String())
	b.thermal = find(thermalFactors, b.Site.Edition.String(), b.Roof.Thermal.String())
	b.category = findCategory(b.Site.Edition, b.Site.Category)
	switch {
	case !(b.Roof.Angle >= 0 && b.Roof.Angle < math.Pi/2) || !positive(b.Roof.EaveToRidge):
		b.Reason = NoGeometry
	case b.category < 0:
		b.Reason = NoCategory
	case b.thermal < 0:
		b.Reason = NoThermal
	case b.exposure < 0 && !b.set:
		b.Reason = NoExposure
	default:
		b.slope = findSlope(thermalFactors[b.thermal].value, b.Roof.Slippery)
	}
}

// surcharge adds rain on snow (7.10) and the least load of low slopes (7.3.4).
func (b *Balanced) surcharge(c *category) {
	known, ground := b.Site.GroundBasis != NotGiven, b.Site.Ground
	if b.Roof.degrees() < b.Roof.EaveToRidge/calc.Ft/50 {
		b.rains = !known || ground > 0 && ground <= c.rainUpTo
	}
	if b.rains {
		b.Rain = c.rain
	}
	if b.least = known && b.Roof.degrees() < lowSlope; b.least {
		b.Minimum = c.importance * min(ground, c.ceiling)
	}
}

// A CaseKind says which of the even snow loads a case is.
type CaseKind uint8

// The kinds of even loads.
const (
	BalancedCase CaseKind = iota // balanced, with rain on snow where it is due
	MinimumCase                  // the least load of low slopes, never with drift, sliding or partial loading
)

// A Case is one even snow load on the whole cover, apart from the others.
type Case struct {
	Kind CaseKind // which load it is
	Load float64  // lb/in² of plan
}

// Cases lists the even loads, balanced first; the least load only where it is due.
func (b Balanced) Cases() []Case {
	all := []Case{{BalancedCase, b.Sloped + b.Rain}}
	if b.least {
		all = append(all, Case{MinimumCase, b.Minimum})
	}
	return all
}

// Governing returns the largest even load, the balanced one when they are equal.
func (b Balanced) Governing() Case {
	if b.Minimum > b.Sloped+b.Rain {
		return Case{MinimumCase, b.Minimum}
	}
	return Case{BalancedCase, b.Sloped + b.Rain}
}

// Lines writes the loads up. A refusal has no lines.
func (b Balanced) Lines() []calc.Line {
	var s calc.Sheet
	edition := b.Site.Edition.String()
	switch b.Reason {
	case NoSnow:
		s.Given("p_s", 0, "psf", "input site: "+b.Reason.String())
		return s.Lines()
	case Found:
	default:
		return nil
	}
	c := &categories[b.category]
	if b.Site.GroundBasis != NotGiven {
		s.Given("p_g", b.Site.Ground/calc.PSF, "psf", "input site.ground_snow_psf, by "+edition)
	}
	s.Quoted("I_s", b.Importance, "", c.source, c.status)
	s.Given("theta", b.Roof.degrees(), "deg", "slope of the roof, geometry")
	b.flatLines(&s, edition)
	s.Given("W", b.Roof.EaveToRidge/calc.Ft, "ft", "eave to ridge, geometry")
	s.Step("theta_r", "W / 50", b.Roof.EaveToRidge/calc.Ft/50, "deg", edition+" 7.10")
	if b.rains {
		s.Quoted("p_rain", b.Rain/calc.PSF, "psf", c.rainSource, c.rainStatus)
	} else {
		s.Step("p_rain", "0", 0, "psf", edition+" 7.10, none at this slope and ground snow")
	}
	s.Step("p_u", "p_s + p_rain", (b.Sloped+b.Rain)/calc.PSF, "psf", edition+" 7.10, balanced load with rain on snow")
	if b.least {
		s.Quoted("p_cap", c.ceiling/calc.PSF, "psf", c.source, c.status)
		s.Step("p_m", "I_s * min(p_g, p_cap)", b.Minimum/calc.PSF, "psf", edition+" low-slope roofs, a case of its own")
	}
	return s.Lines()
}

// flatLines writes pf and ps.
func (b Balanced) flatLines(s *calc.Sheet, edition string) {
	if b.set {
		s.Given("p_f", b.Flat/calc.PSF, "psf", "input site.roof_snow_psf, set by the authority")
		s.Step("p_s", "p_f", b.Sloped/calc.PSF, "psf", "set by the authority, not reduced by slope")
		return
	}
	e, t, c := &exposures[b.exposure], &thermalFactors[b.thermal], &slopes[b.slope]
	s.Quoted("C_e", b.Exposure, "", e.source, e.status)
	s.Quoted("C_t", b.Thermal, "", t.source, t.status)
	s.Step("p_f", "0.7 * C_e * C_t * I_s * p_g", b.Flat/calc.PSF, "psf", edition+" eq. 7.3-1")
	s.Quoted("theta_1", c.full, "deg", c.source, c.status)
	s.Quoted("theta_0", c.none, "deg", c.source, c.status)
	s.Step("C_s", "max(0, min(1, (theta_0 - theta) / (theta_0 - theta_1)))", b.Slope, "", edition+" Fig. 7.4-1")
	s.Step("p_s", "C_s * p_f", b.Sloped/calc.PSF, "psf", edition+" eq. 7.4-1")
}
