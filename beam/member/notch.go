package member

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A Notch is a rectangular cut at the end of a bending member, at its support. Cuts
// away from the ends are the matter of [NewCutBending].
type Notch struct {
	Remaining   float64 // dn, in: depth left at the notch
	Compression bool    // the cut is on the compression face; else on the tension face
	Extension   float64 // e, in: how far the cut runs past the inner edge of the support
}

// cut is the branch of NDS 2018 3.4.3.2.
type cut uint8

const (
	cutUnknown     cut = iota // no depth left, or more than there was: no capacity
	cutTooDeep                // deeper than the end limit: not allowed, 4.4.3, 5.4.5
	cutTension                // tension face, eq. 3.4-3
	cutCompression            // compression face, e <= dn, eq. 3.4-5
	cutLong                   // compression face, e > dn: the depth dn alone
)

// NotchShear is the check of shear at an end notch, NDS 2018 3.4.3.2: V <= Vr'.
type NotchShear struct {
	Force     float64         // V, lb, its magnitude
	Breadth   float64         // b, in
	Depth     float64         // d, in
	Notch     Notch           // the cut
	Limit     float64         // deepest notch allowed, in
	Strength  lumber.Property // Fv with its factors, psi
	Duration  lumber.Duration // load duration of the combination
	Allowable float64         // Fv', psi
	Capacity  float64         // Vr', lb; 0 when the notch is not allowed
	cut       cut
	rule      cutRule
}

// NewNotchShear checks the shear force, in lb of either sign, at the notched end.
// The lower end of a rafter on a birdsmouth is a tension face notch; under net
// uplift the faces change places.
func NewNotchShear(force float64, a *lumber.Adjusted, duration lumber.Duration, notch Notch) NotchShear {
	n := NotchShear{
		Force: math.Abs(force), Breadth: a.Section.Breadth, Depth: a.Section.Depth,
		Notch: notch, Strength: a.ShearAtCuts, Duration: duration,
	}
	n.Limit, n.rule = endLimit(woodOf(a), n.Depth, !notch.Compression)
	n.Allowable = n.Strength.At(duration)
	b, d, dn, e := n.Breadth, n.Depth, notch.Remaining, notch.Extension
	switch n.cut = cutOf(notch, d, n.Limit); n.cut {
	case cutTension:
		n.Capacity = 2.0 / 3 * n.Allowable * b * dn * (dn / d) * (dn / d) // eq. 3.4-3
	case cutCompression:
		n.Capacity = 2.0 / 3 * n.Allowable * b * (d - (d-dn)/dn*e) // eq. 3.4-5
	case cutLong:
		n.Capacity = 2.0 / 3 * n.Allowable * b * dn // 3.4.3.2(e)
	}
	return n
}

func cutOf(n Notch, depth, limit float64) cut {
	switch {
	case !(0 < n.Remaining && n.Remaining <= depth) || !(n.Extension >= 0):
		return cutUnknown
	case !(limit > 0) || depth-n.Remaining > limit:
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
	n.rule.write(&s, n.Limit)
	s.Step("cut", "d - d_n", n.Depth-n.Notch.Remaining, "in", "NDS 2018 4.4.3")
	explainShear(&s, n.Strength, n.Duration, n.Allowable)
	switch n.cut {
	case cutUnknown:
		s.Given("V_r", n.Capacity, "lb", "NDS 2018 3.4.3.2, notch not known: no capacity")
	case cutTooDeep:
		s.Given("V_r", n.Capacity, "lb", "NDS 2018 4.4.3, 5.4.5, a deeper end notch is not allowed")
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
