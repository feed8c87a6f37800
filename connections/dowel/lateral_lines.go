package dowel

import (
	"strings"

	"patiocover/calc"
)

// Sources of the lateral value.
const (
	yieldEquations = "NDS 2018 Table 12.3.1A"
	gapEquations   = "AWC Technical Report 12 Table 1-1"
	reductionTerms = "NDS 2018 Table 12.3.1B (seen restated)"
)

// Lines writes the lateral value out; its last line is Z.
func (v Lateral) Lines() []calc.Line {
	var s calc.Sheet
	v.Fastener.write(&s)
	v.writeLengths(&s)
	if v.Mode == NoMode {
		s.Step("Z", "0", v.Value, "lb", "NDS 2018 12.1: no value, the least penetration or a bearing length is missed")
		return s.Lines()
	}
	v.Main.write(&s, "m")
	v.Side.write(&s, "s")
	v.writeReductions(&s)
	if v.Joint.Gap > 0 {
		v.writeApart(&s)
	}
	if !(v.Joint.Gap > 0) {
		v.writeTouching(&s)
	}
	v.writeLeast(&s)
	return s.Lines()
}

// writeLengths writes the penetration and the bearing lengths.
func (v *Lateral) writeLengths(s *calc.Sheet) {
	const geometry = "the pieces as built"
	f, j := &v.Fastener, &v.Joint
	s.Given("t_s", j.Side.Thickness, "in", geometry)
	s.Given("t_m", j.Main.Thickness, "in", geometry)
	s.Given("g", j.Gap, "in", geometry)
	if f.Kind == Bolt {
		s.Step("l_m", "t_m", v.MainLength, "in", "NDS 2018 12.3.5")
		s.Step("l_s", "t_s", v.SideLength, "in", "NDS 2018 12.3.5")
		return
	}
	s.Given("L", f.Length, "in", "length of the "+f.Kind.String())
	s.Given("E", f.Tip, "in", "tapered tip, NDS 2018 Appendix L")
	within, other := "m", "s"
	beyond := "L - t_s - g"
	if j.Double {
		within, other, beyond = "s", "m", "L - t_s - t_m - 2 * g"
	}
	s.Step("p", beyond, v.Beyond, "in", geometry)
	if f.Kind == LagScrew {
		s.Step("p_in", "min(p - E, t_"+within+")", v.Penetration, "in", "NDS 2018 12.1.4.6, without the tip")
		s.Step("p_min", "4 * D", v.Least, "in", "NDS 2018 12.1.4.6")
	}
	if f.Kind != LagScrew {
		s.Step("p_in", "min(p, t_"+within+")", v.Penetration, "in", "NDS 2018 12.1.5.6, 12.1.6.5, with the tip")
		s.Step("p_min", "6 * D", v.Least, "in", "NDS 2018 12.1.5.6, 12.1.6.5")
	}
	lengths := map[string]float64{"m": v.MainLength, "s": v.SideLength}
	s.Step("l_"+within, "min(p - E / 2, t_"+within+")", lengths[within], "in", "NDS 2018 12.3.5.3")
	s.Step("l_"+other, "t_"+other, lengths[other], "in", "NDS 2018 12.3.5")
}

// writeReductions writes the reduction terms.
func (v *Lateral) writeReductions(s *calc.Sheet) {
	term := func(symbol, formula string, x float64) {
		s.Append([]calc.Line{{Symbol: symbol, Formula: formula, X: x, Source: reductionTerms, Status: calc.Read}})
	}
	formulas := [3]string{"4 * K_theta", "3.6 * K_theta", "3.2 * K_theta"}
	switch v.reduction {
	case smallDowel:
		term("K_D", "max(2.2, 10 * D + 0.5)", v.SmallFactor)
		formulas = [3]string{"K_D", "K_D", "K_D"}
	case threadedDowel:
		term("K_D", "max(2.2, 10 * D_r + 0.5)", v.SmallFactor)
		formulas = [3]string{"K_D * K_theta", "K_D * K_theta", "K_D * K_theta"}
	}
	if v.reduction != smallDowel {
		s.Given("theta_max", v.Angle, "deg", "larger angle of load to grain of the members")
		term("K_theta", "1 + 0.25 * (theta_max / 90)", v.AngleFactor)
	}
	for i, symbol := range [3]string{"R_d_I", "R_d_II", "R_d_III"} {
		term(symbol, formulas[i], v.Reductions[i])
	}
}

// perPlane puts the number of planes of shear before a formula.
func (v *Lateral) perPlane(formula string) string {
	if v.Joint.Double {
		return "2 * " + formula
	}
	return formula
}

// equation writes the value of one mode. The equations were seen restated, but for the
// turning of a dowel across a gap, whose restatement has a slip: it follows from the statics
// of the others.
func (v *Lateral) equation(s *calc.Sheet, m Mode, formula, source string) {
	known := calc.Read
	if source == gapEquations && m == Rotation {
		known = calc.Computed
	}
	source += " (seen restated)"
	s.Append([]calc.Line{{Symbol: "Z_" + m.String(), Formula: formula, X: v.Values[m], Unit: "lb", Source: source, Status: known}})
}

// writeTouching writes the yield limit equations.
func (v *Lateral) writeTouching(s *calc.Sheet) {
	re, rt := v.Main.Strength/v.Side.Strength, v.MainLength/v.SideLength
	s.Step("R_e", "Fe_m / Fe_s", re, "", yieldEquations)
	s.Step("R_t", "l_m / l_s", rt, "", yieldEquations)
	v.equation(s, BearingMain, "D_r * l_m * Fe_m / R_d_I", yieldEquations)
	v.equation(s, BearingSide, v.perPlane("D_r * l_s * Fe_s / R_d_I"), yieldEquations)
	if !v.Joint.Double {
		const k1 = "(sqrt(R_e + 2 * pow(R_e, 2) * (1 + R_t + pow(R_t, 2)) + pow(R_t, 2) * pow(R_e, 3)) - R_e * (1 + R_t)) / (1 + R_e)"
		const k2 = "(-1 + sqrt(2 * (1 + R_e) + 2 * F_yb * (1 + 2 * R_e) * pow(D_r, 2) / (3 * Fe_m * pow(l_m, 2))))"
		v.equation(s, Rotation, k1+" * D_r * l_s * Fe_s / R_d_II", yieldEquations)
		v.equation(s, BendingMain, k2+" * D_r * l_m * Fe_m / ((1 + 2 * R_e) * R_d_III)", yieldEquations)
	}
	const k3 = "(-1 + sqrt(2 * (1 + R_e) / R_e + 2 * F_yb * (2 + R_e) * pow(D_r, 2) / (3 * Fe_m * pow(l_s, 2))))"
	v.equation(s, BendingSide, v.perPlane(k3+" * D_r * l_s * Fe_m / ((2 + R_e) * R_d_III)"), yieldEquations)
	v.equation(s, BendingBoth, v.perPlane("pow(D_r, 2) / R_d_III * sqrt(2 * Fe_m * F_yb / (3 * (1 + R_e)))"), yieldEquations)
}

// writeApart writes the general dowel equations: each mode but bearing is the positive
// root of a quadratic.
func (v *Lateral) writeApart(s *calc.Sheet) {
	d := v.Fastener.Root
	s.Step("q_m", "Fe_m * D_r", v.Main.Strength*d, "lb/in", gapEquations)
	s.Step("q_s", "Fe_s * D_r", v.Side.Strength*d, "lb/in", gapEquations)
	s.Step("M_d", "F_yb * D_r * D_r * D_r / 6", v.Fastener.Yield*d*d*d/6, "lb-in", gapEquations)
	v.equation(s, BearingMain, "q_m * l_m / R_d_I", gapEquations)
	v.equation(s, BearingSide, v.perPlane("q_s * l_s / R_d_I"), gapEquations)
	quadratic := func(m Mode, a, b, c, reduction string) {
		p := strings.NewReplacer("A", "("+a+")", "B", "("+b+")", "C", "("+c+")").Replace("(-B + sqrt(pow(B, 2) - 4 * A * C)) / (2 * A)")
		v.equation(s, m, v.perPlane(p+" / "+reduction), gapEquations)
	}
	if !v.Joint.Double {
		quadratic(Rotation, "1 / (4 * q_s) + 1 / (4 * q_m)", "l_s / 2 + g + l_m / 2",
			"-q_s * pow(l_s, 2) / 4 - q_m * pow(l_m, 2) / 4", "R_d_II")
		quadratic(BendingMain, "1 / (2 * q_s) + 1 / (4 * q_m)", "g + l_m / 2",
			"-M_d - q_m * pow(l_m, 2) / 4", "R_d_III")
	}
	quadratic(BendingSide, "1 / (4 * q_s) + 1 / (2 * q_m)", "l_s / 2 + g", "-q_s * pow(l_s, 2) / 4 - M_d", "R_d_III")
	quadratic(BendingBoth, "1 / (2 * q_s) + 1 / (2 * q_m)", "g", "-2 * M_d", "R_d_III")
}

// writeLeast writes the least of the modes.
func (v *Lateral) writeLeast(s *calc.Sheet) {
	var all []string
	for m := range modes {
		if v.occurs(m) {
			all = append(all, "Z_"+m.String())
		}
	}
	least := "min(" + strings.Join(all, ", ") + ")"
	source := "NDS 2018 12.3.1, mode " + v.Mode.String()
	if v.Joint.Tabular && v.Fastener.Kind != Bolt {
		full := "10"
		if v.Fastener.Kind == LagScrew {
			full = "8"
		}
		s.Step("C_p", "min(1, p_in / ("+full+" * D))", v.Tables, "", "NDS 2018 Tables 12J to 12T, notes on the penetration")
		least += " * C_p"
	}
	s.Step("Z", least, v.Value, "lb", source)
}
