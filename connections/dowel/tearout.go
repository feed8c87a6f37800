package dowel

import (
	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A TearOut is the check of one row of dowels along the grain that pulls out toward the
// end of its member, plug by plug (NDS 2018 11.1.2 and Appendix E.3).
type TearOut struct {
	Pull      float64         // T, lb, toward the end
	Count     int             // n_i, dowels in the row
	Thickness float64         // t, in, of the member
	End       float64         // a, in, end distance
	Spacing   float64         // s, in, between the dowels
	Critical  float64         // s_crit, in, the lesser of both
	Strength  lumber.Property // Fv with its factors, psi
	Duration  lumber.Duration // of the combination
	Allowable float64         // Fv', psi
	Capacity  float64         // Z_RT', lb
}

// A Plug is the row and the member that it may tear out of, in inches.
type Plug struct {
	Count     int     // dowels in the row
	Thickness float64 // in, of the member
	End       float64 // in, end distance
	Spacing   float64 // in, between the dowels; of a single one it does not count
}

// NewTearOut checks the pull, lb, of either sign. Two planes of shear stand beside each
// dowel with a triangle of stress, so that n Fv' t s_crit remains (eq. E.3-2). It
// allocates nothing.
func NewTearOut(pull float64, p Plug, a *lumber.Adjusted, duration lumber.Duration) TearOut {
	t := TearOut{
		Pull: max(pull, -pull), Count: p.Count, Thickness: p.Thickness, End: p.End, Spacing: p.Spacing, Critical: p.End,
		Strength: a.ShearAtCuts, Duration: duration, Allowable: a.ShearAtCuts.At(duration),
	}
	if p.Count > 1 {
		t.Critical = min(p.End, p.Spacing)
	}
	t.Capacity = float64(p.Count) * t.Allowable * p.Thickness * t.Critical // eq. E.3-2
	return t
}

// Ratio is T / Z_RT'.
func (t TearOut) Ratio() float64 { return calc.Ratio(t.Pull, t.Capacity) }

// Explain writes the check out.
func (t TearOut) Explain() calc.Check {
	var s calc.Sheet
	s.Given("T", t.Pull, "lb", "toward the end of the member")
	s.Given("n_i", float64(t.Count), "", "bolts in the row")
	s.Given("t_m", t.Thickness, "in", "thickness of the member")
	s.Given("a_e", t.End, "in", "end distance")
	critical := "a_e"
	if t.Count > 1 {
		s.Given("s_b", t.Spacing, "in", "spacing of the bolts")
		critical = "min(a_e, s_b)"
	}
	s.Step("s_crit", critical, t.Critical, "in", "NDS 2018 Appendix E.3")
	s.Append(t.Strength.LinesAt(t.Duration))
	s.Step("Fv_adj", t.Strength.FormulaAt(), t.Allowable, "psi", "NDS 2018 Table 4.3.1")
	s.Append([]calc.Line{{
		Symbol: "Z_RT", Formula: "n_i * Fv_adj * t_m * s_crit", X: t.Capacity, Unit: "lb",
		Source: "NDS 2018 eq. E.3-2, two planes beside each bolt", Status: calc.Recalled,
	}})
	return s.Check("row tear-out", "T", "Z_RT")
}
