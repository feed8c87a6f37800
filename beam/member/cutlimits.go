package member

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A cutWood is the kind of wood by whose rules cuts are limited.
type cutWood uint8

const (
	cutUnruled cutWood = iota // poles, and products whose report would have to say it: none is allowed
	cutSawn                   // sawn lumber, NDS 2018 4.4.3
	cutGlued                  // glued laminated timber, NDS 2018 5.4.5
)

// woodOf returns the rules that the piece falls under. Of manufactured wood only glued
// laminated timber has shear values for cuts.
func woodOf(a *lumber.Adjusted) cutWood {
	switch {
	case a.Section.Round:
		return cutUnruled
	case a.ShearAtCuts.Cut > 0:
		return cutGlued
	case a.Section.Class == lumber.Manufactured:
		return cutUnruled
	}
	return cutSawn
}

// The deepest cuts as a part of the depth, and the thickness from which sawn lumber has
// none on the tension face but at the ends (NDS 2018 4.4.3, 5.4.5).
const (
	deepestAtEnd     = 1.0 / 4
	deepestInSpan    = 1.0 / 6
	thickPiece       = 3.5      // in, 4 in. nominal
	deepestGlued     = 1.0 / 10 // tension face, at the end
	mostGlued        = 3.0      // in, tension face, at the end
	deepestGluedFlat = 2.0 / 5  // pressed face, at the end
)

// A cutRule says which limit a cut is held to.
type cutRule uint8

const (
	ruleUnplaced     cutRule = iota
	ruleUnruled              // no rule for the wood
	ruleEnd                  // sawn: d/4 at the ends
	ruleSeat                 // sawn: d/4 over a support, on the pressed face
	ruleSpan                 // sawn: d/6 elsewhere
	ruleThick                // sawn: none on the tension face of 4 in. nominal and more
	ruleMiddle               // sawn: none in the middle third
	ruleGluedTension         // glued: d/10 and 3 in. at the ends
	ruleGluedPressed         // glued: 2 d/5 at the ends
	ruleGluedInside          // glued: none away from the ends
)

var cutRules = [...]struct {
	formula, source string
	status          calc.Status
}{
	ruleUnplaced:     {"", "place of the cut not stated: none is allowed", calc.Read},
	ruleUnruled:      {"", "no rule for cuts in this wood: none is allowed", calc.Read},
	ruleEnd:          {"d / 4", "NDS 2018 4.4.3, at the end", calc.Computed},
	ruleSeat:         {"d / 4", "NDS 2018 4.4.3, at the support on the pressed face, taken as an end", calc.Computed},
	ruleSpan:         {"d / 6", "NDS 2018 4.4.3, away from the ends", calc.Computed},
	ruleThick:        {"", "NDS 2018 4.4.3, none on the tension face of 4 in. nominal and thicker but at the ends", calc.Read},
	ruleMiddle:       {"", "NDS 2018 4.4.3, none in the middle third of the span", calc.Read},
	ruleGluedTension: {"min(d / 10, 3)", "NDS 2018 5.4.5, tension face, at the end", calc.Recalled},
	ruleGluedPressed: {"2 * d / 5", "NDS 2018 5.4.5, pressed face, at the end", calc.Recalled},
	ruleGluedInside:  {"", "NDS 2018 5.4.5, none away from the ends", calc.Recalled},
}

// write adds the line of the limit, as cut_max.
func (r cutRule) write(s *calc.Sheet, limit float64) {
	row := cutRules[r]
	s.Append([]calc.Line{{
		Symbol: "cut_max", Formula: row.formula, X: limit, Unit: "in", Source: row.source, Status: row.status,
	}})
}

// endLimit returns the deepest cut allowed at the end of a piece of the depth, in, and
// the rule.
func endLimit(w cutWood, depth float64, tension bool) (float64, cutRule) {
	switch {
	case w == cutUnruled:
		return 0, ruleUnruled
	case w == cutGlued && tension:
		return math.Min(depth*deepestGlued, mostGlued), ruleGluedTension
	case w == cutGlued:
		return depth * deepestGluedFlat, ruleGluedPressed
	}
	return depth * deepestAtEnd, ruleEnd
}

// limit returns the deepest cut allowed, in, in a piece of the size, in, and the rule.
func (c Cut) limit(w cutWood, breadth, depth float64) (float64, cutRule) {
	switch {
	case c.Place == CutUnplaced:
		return 0, ruleUnplaced
	case c.Place == CutAtEnd || w == cutUnruled:
		return endLimit(w, depth, c.Tension)
	case w == cutGlued:
		return 0, ruleGluedInside
	case c.Tension && breadth >= thickPiece:
		return 0, ruleThick
	case c.Place == CutMiddleThird:
		return 0, ruleMiddle
	case c.Place == CutOverSupport && !c.Tension:
		return depth * deepestAtEnd, ruleSeat
	}
	return depth * deepestInSpan, ruleSpan
}
