package snow

import (
	"math"

	"patiocover/loads"
)

// A Basis is by which edition a snow load was mapped or set.
type Basis uint8

// The bases. The zero value says that no load was given.
const (
	NotGiven Basis = iota
	ByASCE716
	ByASCE722
)

// fits reports whether a load of this basis may be used by the rules of an edition.
func (b Basis) fits(e loads.Edition) bool {
	return b == ByASCE716 && e == loads.ASCE716 || b == ByASCE722 && e == loads.ASCE722
}

// A Sheltering is how the wind reaches the roof (ASCE 7-16 Table 7.3-1).
type Sheltering uint8

// The shelterings. The zero value is unknown.
const (
	UnknownSheltering Sheltering = iota
	FullyExposed
	PartiallyExposed
	Sheltered
)

var shelterings = [...]string{"unknown", "fully exposed", "partially exposed", "sheltered"}

// String names the sheltering as exposure.csv does.
func (s Sheltering) String() string {
	if int(s) < len(shelterings) {
		return shelterings[s]
	}
	return shelterings[UnknownSheltering]
}

// A Thermal is the thermal condition of the roof (ASCE 7-16 Table 7.3-2).
type Thermal uint8

// The thermal conditions. The zero value is that of a patio cover, which is open to
// the air even beside a heated house.
const (
	OpenAir        Thermal = iota // unheated or open to the air
	ColdVentilated                // just above freezing, or a cold ventilated roof of R 25 or more
	Heated                        // any other
	Freezer                       // kept below freezing
)

var thermals = [...]string{"open air", "cold ventilated", "heated", "freezer"}

// String names the condition as thermal.csv does.
func (t Thermal) String() string {
	if int(t) < len(thermals) {
		return thermals[t]
	}
	return "unknown"
}

// A Category is a risk category (ASCE 7-16 Table 1.5-1), 1 to 4. The zero value is
// unknown.
type Category uint8

// The risk categories.
const (
	RiskI Category = iota + 1
	RiskII
	RiskIII
	RiskIV
)

// A Site is where the snow falls.
type Site struct {
	Edition     loads.Edition // of the rules
	Ground      float64       // pg, ground snow load, lb/in²
	GroundBasis Basis         // edition that maps pg; NotGiven when there is none
	Roof        float64       // roof snow set by the authority in place of pf, lb/in² of plan
	RoofBasis   Basis         // level of Roof, as an edition; NotGiven when none is set
	Terrain     string        // B, C or D, surface roughness
	Sheltering  Sheltering    // of the roof
	Category    Category      // risk category
	WinterWind  float64       // W2, share of winter with wind above 10 mph, ratio; 0 when not given
}

// A Roof is what the snow lies on.
type Roof struct {
	Thermal     Thermal // zero value: open air
	Angle       float64 // slope from the horizontal, rad
	Slippery    bool    // smooth and unobstructed, so that snow slides off the eave
	EaveToRidge float64 // W, horizontal distance from eave to ridge, in; that of a monoslope roof is its whole depth
}

// degrees is the slope in degrees.
func (r Roof) degrees() float64 { return r.Angle * 180 / math.Pi }

// refusal tells what the site lacks for a balanced load, or Found.
func (s Site) refusal() Reason {
	ground, roof := s.GroundBasis != NotGiven, s.RoofBasis != NotGiven
	switch {
	case !ground && !roof:
		return NoLoad
	case ground && !s.GroundBasis.fits(s.Edition), roof && !s.RoofBasis.fits(s.Edition):
		return EditionsMixed
	case ground && !positive(s.Ground), roof && !positive(s.Roof):
		return NoLoad
	case (!roof || s.Roof == 0) && (!ground || s.Ground == 0):
		return NoSnow
	}
	return Found
}

// positive reports whether x is a finite number from 0 up.
func positive(x float64) bool { return x >= 0 && !math.IsInf(x, 1) }
