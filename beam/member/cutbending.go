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
	c.Limit, c.rule = cut.limit(woodOf(a), c.Full.Breadth, c.Full.Depth)
	c.Remaining = c.Full.Depth - cut.Depth
	c.Modulus = c.Full.Breadth * c.Remaining * c.Remaining / 6 // rectangle
	c.Stress = math.Abs(moment) / c.Modulus
	if 0 <= cut.Depth && cut.Depth <= c.Limit && c.Limit > 0 && !a.Use.Flat {
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
	if a := c.Full; a.round {
		s.Given("Fb_n", c.Allowable, "psi", "cuts in round poles are not allowed here")
		return s.Check("bending at the cut", "f_b", "Fb_n")
	}
	s.Given("cut", c.Cut.Depth, "in", "depth of the cut")
	c.rule.write(&s, c.Limit)
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
