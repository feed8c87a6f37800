package member

import "patiocover/calc"

// Explain writes the check out: the axial force, bending in each plane, and the two
// conditions.
func (c Combined) Explain() calc.Check {
	var s calc.Sheet
	switch c.branch {
	case bendingPressed:
		s.Append(c.Compression.Explain().Lines)
	case bendingPulled:
		s.Append(c.Tension.Explain().Lines)
	case bendingOnly:
		s.Given("P", c.Actions.Force, "lb", "axial force of the combination")
	}
	s.Given("side_1", c.Edge.Depth, "in", "size in the plane of the depth")
	s.Given("side_2", c.Flat.Depth, "in", "size in the plane of the breadth")
	s.Given("A_g", c.Area, "in²", "gross area")
	c.explainPlane(&s, c.Edge, "1", c.Actions.EdgeOffset, c.EdgeOff, c.EdgeStress)
	if c.Edge.lateral == lateralSlender && c.EdgeStress > 0 {
		s.Step("F_bE1", "F_bE", c.Edge.Critical, "psi", "NDS 2018 3.3.3.8")
		s.Step("twist", "pow(s_1 / F_bE1, 2)", c.Twist, "", "NDS 2018 eq. 3.9-4, 15.4-2")
	}
	if c.Edge.lateral != lateralSlender || c.EdgeStress == 0 {
		s.Given("twist", c.Twist, "", "NDS 2018 3.3.3, the member cannot turn over sideways, or has no moment that would")
	}
	c.explainPlane(&s, c.Flat, "2", c.Actions.FlatOffset, c.FlatOff, c.FlatStress)
	if c.branch == bendingPulled {
		c.explainPulled(&s)
	}
	if c.branch != bendingPulled {
		c.explainPressed(&s)
	}
	s.Step("interaction", "max(sum_1, sum_2)", max(c.Sum, c.Second), "", "NDS 2018 3.9")
	s.Given("limit", 1, "", "NDS 2018 3.9")
	return s.Check("combined stress", "interaction", "limit")
}

// explainPlane writes bending in plane n with the eccentricity of the force there.
func (c Combined) explainPlane(s *calc.Sheet, b Bending, n string, offset, off, total float64) {
	if total == 0 {
		s.Given("s_"+n, total, "psi", "no moment and no eccentricity in this plane")
		return
	}
	s.Append(b.Explain().Lines)
	s.Step("f_b"+n, "f_b", b.Stress, "psi", "NDS 2018 3.9")
	s.Step("Fb_"+n, "Fb_adj", b.Allowable, "psi", "NDS 2018 3.9")
	if c.branch == bendingPulled {
		b.explainPulled(s, n)
	}
	if off == 0 {
		s.Step("s_"+n, "f_b"+n, total, "psi", "NDS 2018 3.9, no eccentricity in this plane")
		return
	}
	axial, shape := "f_c", calc.Number(c.shape())
	if c.branch == bendingPulled {
		axial = "f_t"
	}
	s.Given("e_"+n, offset, "in", "eccentricity of the force")
	s.Append([]calc.Line{{
		Symbol: "f_e" + n, Formula: axial + " * " + shape + " * abs(e_" + n + ") / side_" + n, X: off, Unit: "psi",
		Source: "NDS 2018 15.4.1", Status: calc.Recalled,
	}})
	s.Step("s_"+n, "f_b"+n+" + f_e"+n, total, "psi", "NDS 2018 15.4.1")
}

// explainPulled writes Fb* and Fb** of plane n.
func (b Bending) explainPulled(s *calc.Sheet, n string) {
	star, held := "Fb_star * C_fu", "Fb_star * C_L * C_fu"
	if b.Volume.Applies() {
		s.Append(b.Volume.Lines())
		star = "Fb_star * C_V * C_fu"
	}
	if b.lateral == lateralUnknown || b.lateral == lateralTooSlim {
		held = "0"
	}
	s.Step("Fb_star_"+n, star, b.stretched(), "psi", "NDS 2018 3.9.1, without C_L")
	s.Step("Fb_star2_"+n, held, b.pressed(), "psi", "NDS 2018 3.9.1, Fb**: without C_V")
}

// explainPressed writes the conditions under compression, or without axial force.
func (c Combined) explainPressed(s *calc.Sheet) {
	s.Append(c.buckling("1", c.Stay.Column.Deep, c.EdgeCritical, c.EdgeShare))
	s.Append(c.buckling("2", c.Stay.Column.Thin, c.FlatCritical, c.FlatShare))
	axial := "0"
	if c.branch == bendingPressed {
		axial = "pow(f_c / Fc_adj, 2)"
	}
	s.Step("r_c", axial, c.AxialPart, "", "NDS 2018 eq. 3.9-3")
	writeGrown(s, "1", "1 + 0.234 * g_1", c.EdgeOff, c.EdgeGrown)
	writePart(s, "r_1", "h_1", "Fb_1 * (1 - g_1)", c.EdgeGrown, c.EdgePart)
	writeGrown(s, "2", "1 + 0.234 * g_2 + 0.234 * twist", c.FlatOff, c.FlatGrown)
	writePart(s, "r_2", "h_2", "Fb_2 * (1 - g_2 - twist)", c.FlatGrown, c.FlatPart)
	s.Step("sum_1", "r_c + r_1 + r_2", c.Sum, "", "NDS 2018 eq. 3.9-3, 15.4-1")
	s.Step("sum_2", "g_2 + twist", c.Second, "", "NDS 2018 eq. 3.9-4, 15.4-2")
}

// buckling writes FcE and fc/FcE of plane n.
func (c Combined) buckling(n string, a Axis, critical, part float64) []calc.Line {
	var s calc.Sheet
	switch {
	case c.branch == bendingOnly:
		s.Given("g_"+n, part, "", "NDS 2018 3.9.2, no axial force")
	case c.Compression.governing == columnUnknown:
		s.Given("g_"+n, part, "", "NDS 2018 3.7.1, length or ends not given: no capacity in compression")
	case a.Held:
		s.Given("g_"+n, part, "", "NDS 2018 3.9.2, held along its length in this plane")
	default:
		p := c.Compression.Stiffness
		s.Append(p.LinesAt(c.Compression.Duration))
		s.Step("Emin_adj", p.FormulaAt(), p.At(c.Compression.Duration), "psi", "NDS 2018 Table 4.3.1")
		share := ""
		if n == "2" && c.Compression.governing == columnPlies {
			share = " * K_f"
		}
		s.Step("F_cE"+n, "0.822 * Emin_adj"+share+" / pow(slenderness_"+n+", 2)", critical, "psi", "NDS 2018 3.9.2")
		s.Step("g_"+n, "f_c / F_cE"+n, part, "", "NDS 2018 3.9.2")
	}
	return s.Lines()
}

// writeGrown writes the stress of plane n with the growth of its eccentric part.
func writeGrown(s *calc.Sheet, n, growth string, off, total float64) {
	if off == 0 {
		s.Step("h_"+n, "s_"+n, total, "psi", "NDS 2018 3.9.2")
		return
	}
	s.Append([]calc.Line{{
		Symbol: "h_" + n, Formula: "f_b" + n + " + f_e" + n + " * (" + growth + ")", X: total, Unit: "psi",
		Source: "NDS 2018 eq. 15.4-1", Status: calc.Recalled,
	}})
}

// writePart writes the share of one stress in a sum.
func writePart(s *calc.Sheet, symbol, stress, capacity string, demand, x float64) {
	if demand <= 0 {
		s.Given(symbol, x, "", "NDS 2018 3.9, no stress of this kind")
		return
	}
	s.Step(symbol, stress+" / max(0, "+capacity+")", x, "", "NDS 2018 3.9")
}

// explainPulled writes the conditions under tension.
func (c Combined) explainPulled(s *calc.Sheet) {
	s.Step("r_t", "f_t / Ft_adj", c.AxialPart, "", "NDS 2018 eq. 3.9-1")
	writePart(s, "r_1", "s_1", "Fb_star_1", c.EdgeStress, c.EdgePart)
	writePart(s, "r_2", "s_2", "Fb_star_2", c.FlatStress, c.FlatPart)
	s.Step("sum_1", "r_t + r_1 + r_2", c.Sum, "", "NDS 2018 eq. 3.9-1")
	s.Step("f_g", "T / A_g", c.Relief, "psi", "NDS 2018 eq. 3.9-2, over the gross area")
	writePart(s, "q_1", "(s_1 - f_g)", "Fb_star2_1", c.EdgeStress-c.Relief,
		calc.Ratio(c.EdgeStress-c.Relief, c.Edge.pressed()))
	writePart(s, "q_2", "s_2", "Fb_star2_2 * (1 - twist)", c.FlatStress,
		calc.Ratio(c.FlatStress, c.Flat.pressed()*(1-c.Twist)))
	s.Step("sum_2", "q_1 + q_2", c.Second, "", "NDS 2018 eq. 3.9-2")
}
