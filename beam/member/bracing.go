package member

import (
	_ "embed"
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A Loading is a row of NDS 2018 Table 3.3.3: how a bending member is carried and
// loaded, which decides its effective length.
type Loading uint8

// The loadings. The zero value is the row for any loading that is not listed.
const (
	AnyLoading        Loading = iota // any other loading, span or cantilever
	UniformSpan                      // span, uniform load
	CenterUnbraced                   // span, load at the center, not braced there
	CenterBraced                     // span, load at the center, braced there
	ThirdPoints                      // span, 2 equal loads at 1/3 points, braced there
	QuarterPoints                    // span, 3 equal loads at 1/4 points, braced there
	FifthPoints                      // span, 4 equal loads at 1/5 points, braced there
	SixthPoints                      // span, 5 equal loads at 1/6 points, braced there
	SeventhPoints                    // span, 6 equal loads at 1/7 points, braced there
	ManyPoints                       // span, 7 or more equal loads, braced there
	EndMoments                       // span, equal end moments
	CantileverUniform                // cantilever, uniform load
	CantileverTip                    // cantilever, load at the free end
	loadings
)

//go:embed le.csv
var leCSV string

// A lengthRow is one row of the effective lengths.
type lengthRow struct {
	name         string
	short, long  float64 // factor on lu below and from lu/d = 7
	depths       float64 // multiple of d added from lu/d = 7
	slender      float64 // factor on lu above lu/d = 14.3; 0: no such branch
	shortFormula string  // as written, by branch
	longFormula  string
	slimFormula  string
	source       string
	status       calc.Status
}

// lengthRows holds the rows in the order of the constants.
var lengthRows = calc.ReadTable("le.csv", leCSV, func(r calc.Row) lengthRow {
	row := lengthRow{
		name: r.Text("member") + ", " + r.Text("load"), short: r.Num("short"), long: r.Num("long"),
		depths: r.Num("depths"), shortFormula: r.Text("short") + " * l_u",
		longFormula: r.Text("long") + " * l_u", source: r.Text("source"), status: r.Status(),
	}
	if row.depths > 0 {
		row.longFormula += " + " + r.Text("depths") + " * d"
	}
	if r.Has("slender") {
		row.slender = r.Num("slender")
		row.slimFormula = r.Text("slender") + " * l_u"
	}
	return row
})

// String names the loading as the table does.
func (l Loading) String() string { return lengthRows[l].name }

// The ratios lu/d at which Table 3.3.3 changes its expression.
const (
	shortReach   = 7.0
	slenderReach = 14.3
)

// A reach is the branch of Table 3.3.3.
type reach uint8

const (
	shortLength reach = iota
	longLength
	slenderLength
)

// effective returns le, in, and the branch of Table 3.3.3 for the unbraced length
// and the depth, both in inches.
func (l Loading) effective(unbraced, depth float64) (float64, reach) {
	r := &lengthRows[l]
	switch {
	case unbraced < shortReach*depth:
		return r.short * unbraced, shortLength
	case r.slender > 0 && unbraced > slenderReach*depth:
		return r.slender * unbraced, slenderLength
	}
	return r.long*unbraced + r.depths*depth, longLength
}

// formula returns the expression of the branch in symbols.
func (l Loading) formula(b reach) string {
	switch b {
	case shortLength:
		return lengthRows[l].shortFormula
	case slenderLength:
		return lengthRows[l].slimFormula
	}
	return lengthRows[l].longFormula
}

// A Bracing says how the compression edge of a bending member is kept from moving
// sideways, for one direction of the moment: a deck on top braces the top edge and
// nothing else. The zero value is unknown and has no capacity.
//
// Glued laminated timber also wants to know which face the moment stretches, since
// Fbx- of an unbalanced layup is less, and how far apart the moment is zero, for C_V;
// without that length it has no capacity. Sawn lumber needs neither.
type Bracing struct {
	Unbraced float64 // lu, in: longest part of the compression edge without support
	Loading  Loading // row of Table 3.3.3
	Held     bool    // the edge is held along its whole length, and the ends against rotation
	Zeros    float64 // L, in: between points of zero moment; the whole length of the member is safe
	Hogging  bool    // the moment stretches the top face, also where it is given without a sign
}

// A Restraint is what NDS 2018 4.4.1.2 asks of a sawn bending member so that C_L
// may be taken as 1, by the ratio of its nominal depth to its nominal breadth.
type Restraint uint8

// The restraints, rising with the ratio.
const (
	NoRestraint     Restraint = iota // up to 2
	EndsHeld                         // up to 4
	EdgeHeld                         // up to 5
	EdgeAndBlocking                  // up to 6
	BothEdgesHeld                    // up to 7
	BeyondRules                      // above 7: only the calculation of C_L serves
)

var restraints = [...]string{
	NoRestraint:     "no lateral support",
	EndsHeld:        "ends held in position against rotation",
	EdgeHeld:        "compression edge held along its length, ends held against rotation",
	EdgeAndBlocking: "compression edge and ends held, and bridging or blocking every 8 ft at most",
	BothEdgesHeld:   "both edges held along their length, ends held against rotation",
	BeyondRules:     "beyond the rules: calculate the lateral stability",
}

// String returns what must be built.
func (r Restraint) String() string { return restraints[r] }

// RestraintOf returns what the approximate rules of NDS 2018 4.4.1.2 ask of the
// section on edge, by nominal size.
func RestraintOf(s lumber.Section) Restraint {
	ratio := s.NominalWidth / s.NominalThickness
	for r, limit := range [...]float64{
		NoRestraint: 2, EndsHeld: 4, EdgeHeld: 5, EdgeAndBlocking: 6, BothEdgesHeld: 7,
	} {
		if ratio <= limit {
			return Restraint(r)
		}
	}
	return BeyondRules
}

// stability returns the root that C_L and C_P share: with a the critical over the
// crushing stress, (1+a)/2c - sqrt(((1+a)/2c)² - a/c) (NDS 2018 eq. 3.3-6 with
// c = 0.95, eq. 3.7-1). It is written as a quotient, which does not lose digits
// where a is large; an infinite a gives 1.
func stability(a, c float64) float64 {
	if math.IsInf(a, 1) {
		return 1
	}
	h := (1 + a) / (2 * c)
	return a / (c * h * (1 + math.Sqrt(1-a/(c*h*h))))
}
