package member

import (
	"patiocover/beam/lumber"
	"patiocover/calc"
)

// NetSection is the check of NDS 2018 3.6.3 for compression where holes or notches
// reduce a post at a point that is held against buckling: fc <= Fc*, without C_P.
// Elsewhere along the post C_P itself must count the reduced section.
type NetSection struct {
	Force    float64         // P, lb
	Area     float64         // An, in²: area left by holes and notches
	Stress   float64         // fc, psi
	Strength lumber.Property // Fc with its factors, psi
	Duration lumber.Duration // load duration of the combination
	Star     float64         // Fc*, psi
}

// NewNetSection checks the axial force, in lb and pressing, on the net area, in in².
// Tension is the matter of [NewTension].
func NewNetSection(force, area float64, a *lumber.Adjusted, duration lumber.Duration) NetSection {
	return NetSection{
		Force: force, Area: area, Stress: stress(force, area), Strength: a.Compression,
		Duration: duration, Star: a.Compression.At(duration),
	}
}

// Ratio is fc / Fc*.
func (n NetSection) Ratio() float64 { return calc.Ratio(n.Stress, n.Star) }

// Explain writes the check out.
func (n NetSection) Explain() calc.Check {
	var s calc.Sheet
	s.Given("P", n.Force, "lb", "axial force of the combination")
	s.Given("A_n", n.Area, "in²", "net area, NDS 2018 3.1.2")
	s.Step("f_c", "max(0, P) / A_n", n.Stress, "psi", "NDS 2018 3.6.3")
	explainCrushing(&s, n.Strength, n.Duration, n.Star)
	return s.Check("compression of the net section", "f_c", "Fc_star")
}
