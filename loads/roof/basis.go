package roof

import (
	"math"

	"patiocover/calc"
	"patiocover/loads/wind"
)

// A Basis is a set of coefficients from which the uplift of a tie is worked. All are
// factors on the velocity pressure, positive upward.
type Basis struct {
	Name     string      // for the reader
	Windward float64     // g2, suction on the half that meets the wind, factor
	Leeward  float64     // g3, suction on the other half, factor
	Overhang float64     // go, net uplift of the windward overhang, both faces, factor
	Inside   Inside      // gi, internal pressure below the roof between the walls
	Source   string      // of the outside coefficients
	Status   calc.Status // of the outside coefficients
}

// Height, dead load and overhang behind IRC 2018 Table R802.11: its footnotes, from
// memory, and the constants with which the closed form reproduces it.
const (
	tableHeight   = 33 * calc.Ft  // mean roof height, in
	tableDead     = 15 * calc.PSF // roof and ceiling, lb/in² of plan
	tableOverhang = 2 * calc.Ft   // in
)

// TableBasis returns the coefficients with which a [Tie] reproduces IRC 2018 Table
// R802.11: its 80 cells of exposure B at 12 in. within 0.8 lb below 5 in 12 and 1.4
// lb from there on, the other spacings as their ratio. g2 of the low roof and gi are those of the
// end zone of an enclosed building; g3, go and g2 of the steep roof were fitted to
// those cells. For exposure C, other overhangs and other dead loads the fit is carried
// on: the table was not seen there.
func TableBasis(steep bool) Basis {
	inside, _ := Internal(Enclosed)
	b := Basis{
		Name: "residential code table, below 5 in 12", Windward: 1.07, Leeward: 0.64, Overhang: 1.75,
		Inside: inside, Source: "fitted to IRC 2018 Table R802.11, pitch below 5 in 12", Status: calc.Computed,
	}
	if steep {
		b.Name, b.Windward, b.Overhang = "residential code table, 5 in 12 and above", 1.0, 1.70
		b.Source = "fitted to IRC 2018 Table R802.11, pitch 5 in 12 and above"
	}
	return b
}

// PlainBasis returns the coefficients as the figure of low-rise buildings prints them
// (ASCE 7-16 Fig. 28.3-1), in the end zone or outside it; below the windward overhang
// stands 0.7 more (28.3.3). angle is the slope in degrees.
//
// Special case: false, and factors that are not numbers, outside 0 to 45 degrees and
// for an unknown class of enclosure.
func PlainBasis(angle float64, end bool, class Enclosure) (Basis, bool) {
	inside, known := Internal(class)
	windward, leeward := NewOutside(angle, false, end), NewOutside(angle, true, end)
	b := Basis{
		Name: "plain figure, interior zone", Windward: windward.Up, Leeward: leeward.Up,
		Overhang: windward.Up + wind.Soffit, Inside: inside,
		Source: "ASCE 7-16 Fig. 28.3-1, larger suction of both load cases; below the overhang 0.7, 28.3.3",
		Status: calc.Read,
	}
	if end {
		b.Name = "plain figure, end zone"
	}
	return b, known && !math.IsNaN(windward.Up+leeward.Up)
}

// PartBasis returns the coefficients of components and cladding for a strict uplift:
// those of a part of the roof on both halves, and of its overhang, whose coefficient
// is net, and neither below the least pressure on components. The effective area of both
// should be [wind.EffectiveArea] of the rafter.
//
// Special case: false, and factors that are not numbers, where either has no value or
// the second is not an overhang.
func PartBasis(part, overhang Component) (Basis, bool) {
	b := Basis{
		Name: "components and cladding", Windward: part.lift(), Leeward: part.lift(), Overhang: overhang.lift(),
		Inside: part.Inside, Source: "ASCE 7 components: " + part.source() + "; " + overhang.source(),
		Status: part.status().Weakest(overhang.status()),
	}
	if !overhang.Part.Overhang || part.Part.Overhang {
		b.Windward, b.Leeward, b.Overhang = math.NaN(), math.NaN(), math.NaN()
	}
	return b, !math.IsNaN(b.Windward + b.Overhang + b.Inside.Factor)
}
