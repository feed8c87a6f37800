package roof

import (
	"math"

	"patiocover/calc"
)

// Openings are what stands open or may break in the wind: areas on the wall that
// meets it, and on the rest of the house.
type Openings struct {
	Wall     float64   // Ao, openings in the wall that meets the wind, in²
	WallArea float64   // Ag, gross area of that wall, in²
	Rest     float64   // Aoi, openings in all other walls and the roof, in²
	RestArea float64   // Agi, gross area of those, in²
	Least    float64   // smaller of 4 ft² and 1 % of Ag, in²
	Share    float64   // Aoi / Agi, ratio
	Class    Enclosure // what follows
}

// Limits of the definition of a partially enclosed building.
const (
	moreThanRest = 1.10          // Ao over Aoi, factor
	leastOpening = 4 * calc.SqFt // in²
	leastPart    = 0.01          // of Ag, ratio
	mostRest     = 0.20          // Aoi over Agi, ratio
)

// definition is where the limits stand; read in a public restatement of the section.
const definition = "ASCE 7-16 26.2"

// NewOpenings classes a house by the openings of one wall: partially enclosed where
// that wall has more than 1.10 of the openings of all the rest, more than the smaller of
// 4 ft² and 1 % of itself, and the rest is open by 20 % at most; enclosed otherwise. An
// open building is not a house and is not looked for. Areas are in in².
//
// Special case: partially enclosed, the larger inside pressure, when a number is
// missing or an area is not positive.
func NewOpenings(wall, wallArea, rest, restArea float64) Openings {
	o := Openings{Wall: wall, WallArea: wallArea, Rest: rest, RestArea: restArea, Class: PartiallyEnclosed}
	o.Least = min(leastOpening, leastPart*wallArea)
	o.Share = rest / restArea
	if !(wallArea > 0 && restArea > 0) || math.IsNaN(wall+rest) {
		return o
	}
	if !(wall > moreThanRest*rest) || !(wall > o.Least) || !(o.Share <= mostRest) {
		o.Class = Enclosed
	}
	return o
}

// Lines writes the classification up.
func (o Openings) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("A_o", o.Wall/calc.SqFt, "ft²", "openings in the wall that meets the wind, survey")
	s.Given("A_g", o.WallArea/calc.SqFt, "ft²", "gross area of that wall, survey")
	s.Given("A_oi", o.Rest/calc.SqFt, "ft²", "openings in all other walls and the roof, survey")
	s.Given("A_gi", o.RestArea/calc.SqFt, "ft²", "gross area of those, survey")
	s.Quoted("k_o", moreThanRest, "", definition, calc.Read)
	s.Step("A_lim", "k_o * A_oi", moreThanRest*o.Rest/calc.SqFt, "ft²", definition+": partially enclosed above it, and")
	s.Step("A_min", "min(4, 0.01 * A_g)", o.Least/calc.SqFt, "ft²", definition+": above this too, and")
	s.Step("r_oi", "A_oi / A_gi", o.Share, "", definition+": with no more than 0.20 here; the house is "+string(o.Class))
	return s.Lines()
}
