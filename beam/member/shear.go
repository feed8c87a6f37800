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
