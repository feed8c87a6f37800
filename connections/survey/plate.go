package survey

import "patiocover/calc"

// Steel of a strap nobody knows the name of: ASTM A653 Grade 33, the least of common
// galvanized straps (from memory), and the safety factors of allowable stress.
const (
	strapYield   = 33000 * calc.PSI // Fy
	strapTensile = 45000 * calc.PSI // Fu
	onYield      = 0.6              // of Fy on the gross section, factor
	onTensile    = 0.5              // of Fu on the net section, factor
	holeMore     = 1.0 / 16         // hole beyond the nail, in
)

// A Plate is the steel of a plain strap in tension. A duration of load is no matter of
// steel, so that no factor of 1.6 is put on it.
type Plate struct {
	Thickness float64 // t, in
	Width     float64 // w, in
	Hole      float64 // h, hole of one nail across the width, in
	Gross     float64 // Ag, in²
	Net       float64 // An, with one hole, in²
	Yielding  float64 // 0.6 Fy Ag, lb
	Rupture   float64 // 0.5 Fu An, lb
	Tension   float64 // the lesser, lb
}

// NewPlate returns what a strap of steel holds, with one nail hole across its width.
// Lengths are in in.
func NewPlate(thickness, width, nail float64) Plate {
	p := Plate{Thickness: thickness, Width: width, Hole: nail + holeMore}
	p.Gross = thickness * width
	p.Net = max(0, thickness*(width-p.Hole))
	p.Yielding = onYield * strapYield * p.Gross
	p.Rupture = onTensile * strapTensile * p.Net
	p.Tension = min(p.Yielding, p.Rupture)
	return p
}

// Lines writes the steel up; the last line is T_steel.
func (p Plate) Lines() []calc.Line {
	var s calc.Sheet
	const steel, rule = "ASTM A653 Grade 33, taken for a strap without a name", "allowable stress on the section, no C_D on steel"
	s.Given("t_s", p.Thickness, "in", "steel, survey")
	s.Given("w_s", p.Width, "in", "strap, survey")
	s.Given("h_s", p.Hole, "in", "hole of one nail, a sixteenth wider than it")
	s.Quoted("F_y", strapYield, "psi", steel, calc.Recalled)
	s.Quoted("F_u", strapTensile, "psi", steel, calc.Recalled)
	s.Step("A_g", "t_s * w_s", p.Gross, "in²", "gross section")
	s.Step("A_n", "max(0, t_s * (w_s - h_s))", p.Net, "in²", "net section")
	s.Step("T_y", "0.6 * F_y * A_g", p.Yielding, "lb", rule)
	s.Step("T_u", "0.5 * F_u * A_n", p.Rupture, "lb", rule)
	s.Step("T_steel", "min(T_y, T_u)", p.Tension, "lb", rule)
	return s.Lines()
}
