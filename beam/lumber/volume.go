package lumber

import (
	"math"

	"patiocover/calc"
)

// volumeRule says how Fb falls with the volume of the piece.
type volumeRule struct {
	divisor  float64 // x of glued laminated timber: exponents 1/x; 0: not by volume
	exponent float64 // of the depth, given with values; 0: none
	depth    float64 // in: where the given factor is 1
	unknown  bool    // given values without a factor
	source   string
	status   calc.Status
}

// The piece whose volume factor is 1 (NDS 2018 5.3.6).
const (
	volumeLength  = 21 * calc.Ft
	volumeDepth   = 12.0  // in
	volumeBreadth = 5.125 // in
)

// volumeBranch is the rule that a Volume follows.
type volumeBranch uint8

const (
	volumeNone    volumeBranch = iota // no factor: sawn lumber, loads on the side
	volumeFactor                      // glued laminated timber
	volumeDepths                      // given: by depth alone
	volumeShallow                     // given without a factor, no deeper than 12 in.
	volumeUnknown                     // given without a factor, and deeper: no capacity
	volumeLost                        // length between points of zero moment not known: no capacity
)

// Volume is the factor on Fb for the wood under stress: C_V of glued laminated timber
// (NDS 2018 5.3.6), or the depth factor that is given with an evaluation report's
// values. It never exceeds 1, and where both are below 1 the lesser of C_V and C_L
// counts, not their product.
type Volume struct {
	Length    float64 // L, in: between points of zero moment
	Breadth   float64 // b, in
	Depth     float64 // d, in
	Divisor   float64 // x, ratio: 10, Southern Pine 20; 0 where there is none
	Exponent  float64 // of the depth factor, ratio; 0 where there is none
	Reference float64 // in: depth at which the depth factor is 1; 0 where there is none
	Factor    float64 // C_V, factor; 0 when it is not known
	source    string
	status    calc.Status
	branch    volumeBranch
}

// NewVolume returns the volume factor of the piece on edge for a moment diagram whose
// points of zero moment lie length apart, in inches; the full length of the member is
// safe. Sawn lumber, and a piece used flat, has the factor 1.
func NewVolume(a *Adjusted, length float64) Volume {
	r := &a.volume
	v := Volume{
		Length: length, Breadth: a.Section.Ply(), Depth: a.Section.Depth, Divisor: r.divisor,
		Exponent: r.exponent, Reference: r.depth, source: r.source, status: r.status, Factor: 1,
	}
	switch {
	case a.Use.Flat:
	case r.unknown && v.Depth > volumeDepth:
		v.branch, v.Factor = volumeUnknown, 0
	case r.unknown:
		v.branch = volumeShallow
	case r.exponent > 0:
		v.branch = volumeDepths
		v.Factor = math.Min(1, math.Pow(r.depth/v.Depth, r.exponent))
	case r.divisor > 0 && !(length > 0):
		v.branch, v.Factor = volumeLost, 0
	case r.divisor > 0:
		v.branch = volumeFactor
		volume := volumeLength / length * (volumeDepth / v.Depth) * (volumeBreadth / v.Breadth)
		v.Factor = math.Min(1, math.Pow(volume, 1/r.divisor)) // eq. 5.3-1
	}
	return v
}

// Applies reports whether the piece has a volume or depth factor at all.
func (v Volume) Applies() bool { return v.branch != volumeNone }

// Lines writes the factor as C_V; nothing for a piece that has none.
func (v Volume) Lines() []calc.Line {
	var s calc.Sheet
	switch v.branch {
	case volumeFactor:
		s.Given("L_0", v.Length, "in", "between points of zero moment")
		s.Step("L_ft", "L_0 / 12", v.Length/calc.Ft, "ft", "unit")
		s.Given("b_V", v.Breadth, "in", "size")
		s.Given("d_V", v.Depth, "in", "size")
		s.Quoted("x", v.Divisor, "", v.source, v.status)
		s.Step("C_V", "min(1, pow(21 / L_ft * (12 / d_V) * (5.125 / b_V), 1 / x))", v.Factor, "", "NDS 2018 eq. 5.3-1")
	case volumeDepths:
		s.Given("d_V", v.Depth, "in", "size")
		s.Given("d_ref", v.Reference, "in", v.source)
		s.Given("m_V", v.Exponent, "", v.source)
		s.Step("C_V", "min(1, pow(d_ref / d_V, m_V))", v.Factor, "", v.source)
	case volumeShallow:
		s.Given("C_V", v.Factor, "", "no depth factor given, and none taken up to 12 in. deep")
	case volumeUnknown:
		s.Given("C_V", v.Factor, "", "deeper than 12 in. without a depth factor: no capacity")
	case volumeLost:
		s.Given("C_V", v.Factor, "", "NDS 2018 5.3.6, length between points of zero moment not known: no capacity")
	}
	return s.Lines()
}
