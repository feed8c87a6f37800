package steel

import "patiocover/calc"

// Explain writes the check out.
func (p Plate) Explain() calc.Check {
	var s calc.Sheet
	p.given(&s)
	if p.Limit == NoValue {
		s.Quoted("P_a", 0, "lb", "AISC 360-16 J3.3, J3.4: a distance is below its least, no value", calc.Recalled)
		return s.Check("steel plates", "P", "P_a")
	}
	p.stretched(&s)
	p.holes(&s)
	p.pressed(&s)
	s.Step("P_a", "min(P_y, P_u, P_bs, P_br, P_v, P_c)", p.Capacity, "lb", "the least governs")
	return s.Check("steel plates", "P", "P_a")
}

// given writes the pair and its steel.
func (p *Plate) given(s *calc.Sheet) {
	h := &p.Shape
	s.Given("P", p.Force, "lb", "force along the plates, pulling and pressing in turn")
	s.Quoted("t_p", h.Stock.Thickness, "in", h.Stock.Name+" in. plate on each side, "+h.Stock.source, h.Stock.status)
	s.Given("w_p", h.Width, "in", "least width of each plate across the force")
	s.Given("D", h.Diameter, "in", "bolts")
	s.Given("n", float64(h.Count), "", "bolts in a row along the force")
	s.Given("s_p", h.Spacing, "in", "spacing of the bolts")
	s.Given("e_p", h.End, "in", "last bolt to the end of the plate")
	s.Given("L_p", h.Free, "in", "between the bolts on either side of the joint, geometry")
	edge := least(h.Diameter)
	s.Quoted("e_min", edge.least, "in", edge.source+": least of e_p and half of w_p; spacing 2-2/3 D or more by J3.3", edge.status)
	s.Quoted("F_y", yield, "psi", "ASTM A36 (seen transcribed)", calc.Read)
	s.Quoted("F_u", ultimate, "psi", "ASTM A36 (seen transcribed)", calc.Read)
	s.Quoted("F_nv", boltShear, "psi", "AISC 360-16 Table J3.2, ASTM A307", calc.Recalled)
	s.Quoted("E_s", modulus, "psi", "AISC 360-16 E3", calc.Recalled)
	s.Quoted("Omega_y", omegaYield, "", "AISC 360-16 D2, E1", calc.Recalled)
	s.Quoted("Omega_u", omegaRupture, "", "AISC 360-16 D2, J3, J4.3", calc.Recalled)
}

// stretched writes yielding, rupture and block shear.
func (p *Plate) stretched(s *calc.Sheet) {
	h := &p.Shape
	s.Step("d_h", "D + 1.0 / 16", p.Hole, "in", "AISC 360-16 Table J3.3, standard hole")
	s.Step("A_g", "2 * w_p * t_p", p.Gross, "in2", "both plates")
	s.Step("A_e", "min(2 * (w_p - d_h - 1.0 / 16) * t_p, 0.85 * A_g)", p.Net, "in2", "AISC 360-16 B4.3b and J4.1")
	s.Step("P_y", "F_y * A_g / Omega_y", p.Allowed[Yielding], "lb", "AISC 360-16 eq. D2-1")
	s.Step("P_u", "F_u * A_e / Omega_u", p.Allowed[Rupture], "lb", "AISC 360-16 eq. D2-2")
	formula := "e_p"
	if h.Count > 1 {
		formula = "e_p + (n - 1) * s_p"
	}
	s.Step("L_v", formula, p.Along, "in", "along the row to the end of the plate")
	s.Step("A_gv", "2 * L_v * t_p", p.Planes, "in2", "AISC 360-16 J4.3, one plane in each plate")
	s.Step("A_nv", "2 * (L_v - (n - 0.5) * (d_h + 1.0 / 16)) * t_p", p.Torn, "in2", "AISC 360-16 J4.3")
	s.Step("A_nt", "2 * (w_p / 2 - (d_h + 1.0 / 16) / 2) * t_p", p.Pulled, "in2", "AISC 360-16 J4.3, to one edge")
	s.Step("P_bs", "(min(0.6 * F_u * A_nv, 0.6 * F_y * A_gv) + F_u * A_nt) / Omega_u", p.Allowed[Block], "lb",
		"AISC 360-16 eq. J4-5, U_bs = 1")
}

// holes writes bearing, tear-out and the bolts in shear.
func (p *Plate) holes(s *calc.Sheet) {
	clear := "e_p - d_h / 2"
	if p.Shape.Count > 1 {
		clear = "min(e_p - d_h / 2, s_p - d_h)"
	}
	s.Step("l_c", clear, p.Clear, "in", "least clear distance, AISC 360-16 J3.10")
	s.Step("P_br", "n * 2 * min(2.4 * D, 1.2 * l_c) * t_p * F_u / Omega_u", p.Allowed[Bearing], "lb",
		"AISC 360-16 eq. J3-6a and J3-6c, each bolt as the worst")
	s.Step("P_v", "n * 2 * F_nv * pi / 4 * pow(D, 2) / Omega_u", p.Allowed[Shearing], "lb", "AISC 360-16 eq. J3-1, two planes")
}

// pressed writes the buckling by the branch that was taken.
func (p *Plate) pressed(s *calc.Sheet) {
	s.Quoted("K", clamped, "", "AISC 360-16 Table C-A-7.1 (c): ends may move sideways but not turn", calc.Recalled)
	s.Step("KL_r", "K * L_p / (t_p / sqrt(12))", p.Slender, "", "slenderness across the plate")
	switch p.slender {
	case stocky:
		s.Step("F_cr", "F_y", p.Critical, "psi", "AISC 360-16 J4.4, K L / r up to 25")
	case plastic:
		s.Step("F_e", "pow(pi, 2) * E_s / pow(KL_r, 2)", p.Euler, "psi", "AISC 360-16 eq. E3-4")
		s.Step("F_cr", "pow(0.658, F_y / F_e) * F_y", p.Critical, "psi", "AISC 360-16 eq. E3-2")
	case elastic:
		s.Step("F_e", "pow(pi, 2) * E_s / pow(KL_r, 2)", p.Euler, "psi", "AISC 360-16 eq. E3-4")
		s.Step("F_cr", "0.877 * F_e", p.Critical, "psi", "AISC 360-16 eq. E3-3")
	}
	s.Step("P_c", "F_cr * A_g / Omega_y", p.Allowed[Buckling], "lb", "AISC 360-16 eq. E3-1")
}
