package member

import (
	"patiocover/beam/lumber"
	"patiocover/calc"
)

// Tension is the check of NDS 2018 3.8: ft <= Ft', parallel to grain.
type Tension struct {
	Force     float64         // T, lb
	Area      float64         // An, in²: net area, less holes and notches
	Stress    float64         // ft, psi
	Strength  lumber.Property // Ft with its factors, psi
	Duration  lumber.Duration // load duration of the combination
	Allowable float64         // Ft', psi
}

// NewTension checks the axial force, in lb and pulling, on the net area, in in²
// (NDS 2018 3.1.2). Compression demands nothing here.
func NewTension(force, area float64, a *lumber.Adjusted, duration lumber.Duration) Tension {
	t := Tension{Force: force, Area: area, Strength: a.Tension, Duration: duration}
	t.Stress = stress(force, area)
	t.Allowable = t.Strength.At(duration)
	return t
}

// Ratio is ft / Ft'.
func (t Tension) Ratio() float64 { return calc.Ratio(t.Stress, t.Allowable) }

// Explain writes the check out.
func (t Tension) Explain() calc.Check {
	var s calc.Sheet
	s.Given("T", t.Force, "lb", "axial force of the combination")
	s.Given("A_n", t.Area, "in²", "net area, NDS 2018 3.1.2")
	s.Step("f_t", "max(0, T) / A_n", t.Stress, "psi", "NDS 2018 3.8.1")
	s.Append(t.Strength.LinesAt(t.Duration))
	s.Step("Ft_adj", t.Strength.FormulaAt(), t.Allowable, "psi", "NDS 2018 Table 4.3.1")
	return s.Check("tension", "f_t", "Ft_adj")
}
