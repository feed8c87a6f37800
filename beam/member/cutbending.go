package member

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A CutPlace is where along a bending member a notch or seat cut lies.
type CutPlace uint8

// The places. The zero value is not known and has no capacity.
const (
	CutUnplaced    CutPlace = iota // not stated
	CutAtEnd                       // at the end of the member, on its support
	CutOverSupport                 // over a support with an overhang beyond, as a bird's-mouth
	CutOuterThird                  // in the span, in its outer thirds
	CutMiddleThird                 // in the middle third of the span
)

// A Cut is a notch or seat cut that a moment must pass.
type Cut struct {
	Depth   float64  // in, across the edge
	Tension bool     // on the face that the moment stretches; else on the pressed face
	Place   CutPlace // where it lies
}

// The deepest cuts of sawn lumber in a span as a part of the depth, and the thickness
// from which no cut is allowed on the tension face but at the ends (NDS 2018 4.4.3).
const (
	deepestInSpan = 1.0 / 6
	thickPiece    = 3.5 // in, 4 in. nominal
)

// limit returns the deepest cut allowed, in, in a piece of the size, in, and why.
func (c Cut) limit(breadth, depth float64) (float64, cutRule) {
	switch {
	case c.Place == CutUnplaced:
		return 0, ruleUnplaced
	case c.Place == CutAtEnd:
		return deepestCut * depth, ruleEnd
	case c.Tension && breadth >= thickPiece:
		return 0, ruleThick
	case c.Place == CutMiddleThird:
		return 0, ruleMiddle
	case c.Place == CutOverSupport && !c.Tension:
		return deepestCut * depth, ruleSeat
	}
	return deepestInSpan * depth, ruleSpan
}

// A cutRule says which limit of NDS 2018 4.4.3 a cut is held to.
type cutRule uint8

const (
	ruleUnplaced cutRule = iota
	ruleEnd              // d/4 at the ends
	ruleSeat             // d/4 over a support, on the pressed face
	ruleSpan             // d/6 elsewhere
	ruleThick            // none on the tension face of 4 in. nominal and more
	ruleMiddle           // none in the middle third
)

var cutRules = [...]struct{ formula, source string }{
	ruleUnplaced: {"", "place of the cut not stated: none is allowed"},
	ruleEnd:      {"d / 4", "NDS 2018 4.4.3, at the end"},
	ruleSeat:     {"d / 4", "NDS 2018 4.4.3, at the support on the pressed face, taken as an end"},
	ruleSpan:     {"d / 6", "NDS 2018 4.4.3, away from the ends"},
	ruleThick:    {"", "NDS 2018 4.4.3, none on the tension face of 4 in. nominal and thicker but at the ends"},
	ruleMiddle:   {"", "NDS 2018 4.4.3, none in the middle third of the span"},
}

// CutBending is the check of bending past a notch or seat cut on what is left of the
// depth, NDS 2018 3.2.3 and 4.4.3: fb <= Fb'. C_L is that of the full depth.
type CutBending struct {
	Full      Bending // the same moment on the full section
	Cut       Cut     // what is cut away
	Limit     float64 // deepest cut allowed, in
	Remaining float64 // dn, in
	Modulus   float64 // Sn, in³, of the remaining depth
	Stress    float64 // fb, psi, on it
	Allowable float64 // Fb', psi; 0 when the cut is not allowed
	rule      cutRule
}

// NewCutBending checks the moment, in lb-in of either sign, at the cut of a piece on
// edge. A rafter over a beam line with an overhang has its seat cut on the pressed face
// under gravity, and on the tension face under net uplift: check both.
func NewCutBending(
	moment float64, a *lumber.Adjusted, duration lumber.Duration, bracing Bracing, cut Cut,
) CutBending {
	c := CutBending{Full: NewBending(moment, a, duration, bracing), Cut: cut}
	c.Limit, c.rule = cut.limit(c.Full.Breadth, c.Full.Depth)
	c.Remaining = c.Full.Depth - cut.Depth
	c.Modulus = c.Full.Breadth * c.Remaining * c.Remaining / 6 // rectangle
	c.Stress = math.Abs(moment) / c.Modulus
	if 0 <= cut.Depth && cut.Depth <= c.Limit && !a.Use.Flat {
		c.Allowable = c.Full.Allowable
	}
	return c
}

// Ratio is fb / Fb' on the remaining depth.
func (c CutBending) Ratio() float64 { return calc.Ratio(c.Stress, c.Allowable) }

// Explain writes the check out.
func (c CutBending) Explain() calc.Check {
	var s calc.Sheet
	s.Append(c.Full.Explain().Lines)
	s.Given("cut", c.Cut.Depth, "in", "depth of the cut")
	r := cutRules[c.rule]
	if r.formula == "" {
		s.Given("cut_max", c.Limit, "in", r.source)
	}
	if r.formula != "" {
		s.Step("cut_max", r.formula, c.Limit, "in", r.source)
	}
	s.Step("d_n", "d - cut", c.Remaining, "in", "depth left")
	s.Step("S_n", "b * pow(d_n, 2) / 6", c.Modulus, "in³", "NDS 2018 3.2.3")
	s.Step("f_bn", "M / S_n", c.Stress, "psi", "NDS 2018 eq. 3.3-2 on the depth left")
	if c.Allowable == 0 {
		s.Given("Fb_n", c.Allowable, "psi", "NDS 2018 4.4.3, the cut or the member is not allowed")
	}
	if c.Allowable > 0 {
		s.Step("Fb_n", "Fb_adj", c.Allowable, "psi", "NDS 2018 Table 4.3.1")
	}
	return s.Check("bending at the cut", "f_bn", "Fb_n")
}
