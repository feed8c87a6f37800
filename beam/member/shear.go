package member

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// Shear is the check of NDS 2018 3.4.2: fv <= Fv'. It
// does not leave out the load within d of the support (3.4.3.1), which is not
// allowed for members on hangers, bolts or notches.
type Shear struct {
	Force     float64         // V, lb, its magnitude
	Area      float64         // A, in²
	Breadth   float64         // b, in
	Depth     float64         // d, in
	Stress    float64         // fv, psi
	Strength  lumber.Property // Fv with its factors, psi
	Duration  lumber.Duration // load duration of the combination
	Allowable float64         // Fv', psi
	round     bool            // depth is the diameter
}

// NewShear checks the shear force, in lb of either sign, on the full section.
func NewShear(force float64, a *lumber.Adjusted, duration lumber.Duration) Shear {
	s := Shear{
		Force: math.Abs(force), Area: a.Section.Area(), Breadth: a.Section.Breadth,
		Depth: a.Section.Depth, Strength: a.Shear, Duration: duration,
	}
	s.Stress = 3 * s.Force / (2 * s.Area) // eq. 3.4-2
	if s.round = a.Section.Round; s.round {
		s.Stress = 4 * s.Force / (3 * s.Area) // 3.4.2, circle
	}
	s.Allowable = s.Strength.At(duration)
	return s
}

// Ratio is fv / Fv'.
func (s Shear) Ratio() float64 { return calc.Ratio(s.Stress, s.Allowable) }

// Explain writes the check out.
func (s Shear) Explain() calc.Check {
	var sheet calc.Sheet
	sheet.Given("V", s.Force, "lb", "shear force of the combination")
	s.explainStress(&sheet)
	explainShear(&sheet, s.Strength, s.Duration, s.Allowable)
	return sheet.Check("shear", "f_v", "Fv_adj")
}

// explainStress writes fv of the rectangle or the circle.
func (s Shear) explainStress(sheet *calc.Sheet) {
	if s.round {
		explainDiameter(sheet, s.Depth)
		sheet.Step("A", "pi / 4 * pow(D, 2)", s.Area, "in²", "NDS 2018 3.4.2, circle")
		sheet.Step("f_v", "4 * V / (3 * A)", s.Stress, "psi", "NDS 2018 3.4.2, circle")
		return
	}
	sheet.Given("b", s.Breadth, "in", "size")
	sheet.Given("d", s.Depth, "in", "size")
	sheet.Step("A", "b * d", s.Area, "in²", "NDS 2018 3.4.2")
	sheet.Step("f_v", "3 * V / (2 * A)", s.Stress, "psi", "NDS 2018 eq. 3.4-2")
}

func explainShear(s *calc.Sheet, p lumber.Property, d lumber.Duration, allowable float64) {
	s.Append(p.LinesAt(d))
	s.Step("Fv_adj", p.FormulaAt(), allowable, "psi", "NDS 2018 Table 4.3.1")
}

// A Notch is a rectangular cut at the end of a bending member, at its support. Away
// from the ends a cut is limited to d/6, is not allowed in the middle third, and on
// the tension face of members 3-1/2 in. and thicker not at all (NDS 2018 4.4.3);
// that is not checked here.
type Notch struct {
	Remaining   float64 // dn, in: depth left at the notch
	Compression bool    // the cut is on the compression face; else on the tension face
	Extension   float64 // e, in: how far the cut runs past the inner edge of the support
}

// cut is the branch of NDS 2018 3.4.3.2.
type cut uint8

const (
	cutUnknown     cut = iota // no depth left, or more than there was: no capacity
	cutTooDeep                // deeper than d/4: not allowed, 4.4.3
	cutTension                // tension face, eq. 3.4-3
	cutCompression            // compression face, e <= dn, eq. 3.4-5
	cutLong                   // compression face, e > dn: the depth dn alone
)

// deepestCut is the deepest end notch of sawn lumber as a part of the depth (NDS
// 2018 4.4.3).
const deepestCut = 1.0 / 4

// NotchShear is the check of shear at an end notch, NDS 2018 3.4.3.2: V <= Vr'.
type NotchShear struct {
	Force     float64         // V, lb, its magnitude
	Breadth   float64         // b, in
	Depth     float64         // d, in
	Notch     Notch           // the cut
	Strength  lumber.Property // Fv with its factors, psi
	Duration  lumber.Duration // load duration of the combination
	Allowable float64         // Fv', psi
	Capacity  float64         // Vr', lb; 0 when the notch is not allowed
	cut       cut
}

// NewNotchShear checks the shear force, in lb of either sign, at the notched end.
// The lower end of a rafter on a birdsmouth is a tension face notch; under net
// uplift the faces change places.
func NewNotchShear(force float64, a *lumber.Adjusted, duration lumber.Duration, notch Notch) NotchShear {
	n := NotchShear{
		Force: math.Abs(force), Breadth: a.Section.Breadth, Depth: a.Section.Depth,
		Notch: notch, Strength: a.Shear, Duration: duration,
	}
	n.Allowable = n.Strength.At(duration)
	b, d, dn, e := n.Breadth, n.Depth, notch.Remaining, notch.Extension
	switch n.cut = cutOf(notch, d); n.cut {
	case cutTension:
		n.Capacity = 2.0 / 3 * n.Allowable * b * dn * (dn / d) * (dn / d) // eq. 3.4-3
	case cutCompression:
		n.Capacity = 2.0 / 3 * n.Allowable * b * (d - (d-dn)/dn*e) // eq. 3.4-5
	case cutLong:
		n.Capacity = 2.0 / 3 * n.Allowable * b * dn // 3.4.3.2(e)
	}
	return n
}

func cutOf(n Notch, depth float64) cut {
	switch {
	case !(0 < n.Remaining && n.Remaining <= depth) || !(n.Extension >= 0):
		return cutUnknown
	case depth-n.Remaining > deepestCut*depth:
		return cutTooDeep
	case !n.Compression:
		return cutTension
	case n.Extension > n.Remaining:
		return cutLong
	}
	return cutCompression
}

// Ratio is V / Vr'.
func (n NotchShear) Ratio() float64 { return calc.Ratio(n.Force, n.Capacity) }

// Explain writes the check out.
func (n NotchShear) Explain() calc.Check {
	var s calc.Sheet
	s.Given("V", n.Force, "lb", "shear force of the combination")
	s.Given("b", n.Breadth, "in", "size")
	s.Given("d", n.Depth, "in", "size")
	s.Given("d_n", n.Notch.Remaining, "in", "depth left at the notch")
	s.Step("cut_max", "d / 4", n.Depth*deepestCut, "in", "NDS 2018 4.4.3")
	s.Step("cut", "d - d_n", n.Depth-n.Notch.Remaining, "in", "NDS 2018 4.4.3")
	explainShear(&s, n.Strength, n.Duration, n.Allowable)
	switch n.cut {
	case cutUnknown:
		s.Given("V_r", n.Capacity, "lb", "NDS 2018 3.4.3.2, notch not known: no capacity")
	case cutTooDeep:
		s.Given("V_r", n.Capacity, "lb", "NDS 2018 4.4.3, end notch deeper than d/4 is not allowed")
	case cutTension:
		s.Step("V_r", "2 / 3 * Fv_adj * b * d_n * pow(d_n / d, 2)", n.Capacity, "lb", "NDS 2018 eq. 3.4-3")
	case cutCompression:
		s.Given("e", n.Notch.Extension, "in", "notch past the inner edge of the support")
		s.Step("V_r", "2 / 3 * Fv_adj * b * (d - (d - d_n) / d_n * e)", n.Capacity, "lb", "NDS 2018 eq. 3.4-5")
	case cutLong:
		s.Given("e", n.Notch.Extension, "in", "notch past the inner edge of the support")
		s.Step("V_r", "2 / 3 * Fv_adj * b * d_n", n.Capacity, "lb", "NDS 2018 3.4.3.2, e above d_n")
	}
	return s.Check("shear at the notch", "V", "V_r")
}
