package dowel

import (
	"math"

	"patiocover/calc"
)

// A Row is a row of dowels in line with the load.
type Row struct {
	Count       int     // n in the row
	Spacing     float64 // s, in, center to center along the row
	Diameter    float64 // D, in
	MainModulus float64 // E of the main member, psi
	SideModulus float64 // E of the side members, psi
	MainArea    float64 // gross area of the main member, in²: see [CrossArea]
	SideArea    float64 // gross area of all side members, in²
	Steel       bool    // steel side plates
}

// CrossArea is the area that counts for a member loaded across its grain: its thickness
// times the width of the fastener group, and for a single row the least row spacing
// along the grain, both in (NDS 2018 11.3.6.3).
func CrossArea(thickness, group, leastRow float64) float64 { return thickness * max(group, leastRow) }

// A Group is the group action factor of a row.
type Group struct {
	Row      Row     // the row
	Modulus  float64 // gamma, load/slip modulus, lb/in
	Softer   float64 // R_EA, ratio of the axial stiffnesses, at most 1
	Slip     float64 // u, dimensionless
	Decay    float64 // m, dimensionless
	Factor   float64 // C_g, factor
	isolated bool    // one dowel in the row, or D < 1/4 in.
}

// NewGroup returns C_g (NDS 2018 eq. 11.3-1). It is 1 for a single dowel in the row and
// for dowels under 1/4 in.
func NewGroup(r Row) Group {
	g := Group{Row: r, Factor: 1}
	if r.Count <= 1 || r.Diameter < thick {
		g.isolated = true
		return g
	}
	g.Modulus = 180_000 * math.Pow(r.Diameter, 1.5) // 11.3.6.1
	if r.Steel {
		g.Modulus = 270_000 * math.Pow(r.Diameter, 1.5) // 11.3.6.1
	}
	main, side := r.MainModulus*r.MainArea, r.SideModulus*r.SideArea
	g.Softer = min(side/main, main/side)
	g.Slip = 1 + g.Modulus*r.Spacing/2*(1/main+1/side)
	g.Decay = g.Slip - math.Sqrt(math.Pow(g.Slip, 2)-1)
	n, m := float64(r.Count), g.Decay
	mn, m2n := math.Pow(m, n), math.Pow(m, 2*n)
	g.Factor = m * (1 - m2n) / (n * ((1+g.Softer*mn)*(1+m) - 1 + m2n)) * (1 + g.Softer) / (1 - m) // eq. 11.3-1
	return g
}

// Lines writes the factor out; its last line is C_g.
func (g Group) Lines() []calc.Line {
	var s calc.Sheet
	r := g.Row
	s.Given("n_r", float64(r.Count), "", "dowels in a row along the load")
	if g.isolated {
		s.Given("C_g", g.Factor, "", "NDS 2018 11.3.6.1: one in the row, or D under 1/4 in.")
		return s.Lines()
	}
	const clause = "NDS 2018 eq. 11.3-1"
	s.Given("s", r.Spacing, "in", "spacing in the row")
	s.Given("D", r.Diameter, "in", "diameter")
	s.Given("E_m", r.MainModulus, "psi", "modulus of the main member")
	s.Given("E_s", r.SideModulus, "psi", "modulus of the side members")
	s.Given("A_m", r.MainArea, "in2", "gross area of the main member")
	s.Given("A_s", r.SideArea, "in2", "gross area of the side members")
	formula, source, known := "180000 * pow(D, 1.5)", "NDS 2018 11.3.6.1", calc.Recalled
	if r.Steel {
		formula, source, known = "270000 * pow(D, 1.5)", source+" (seen restated)", calc.Read
	}
	s.Append([]calc.Line{{Symbol: "gamma", Formula: formula, X: g.Modulus, Unit: "lb/in", Source: source, Status: known}})
	s.Step("R_EA", "min(E_s * A_s / (E_m * A_m), E_m * A_m / (E_s * A_s))", g.Softer, "", clause)
	s.Step("u", "1 + gamma * s / 2 * (1 / (E_m * A_m) + 1 / (E_s * A_s))", g.Slip, "", clause)
	s.Step("m", "u - sqrt(pow(u, 2) - 1)", g.Decay, "", clause)
	s.Step("C_g", "m * (1 - pow(m, 2 * n_r)) / (n_r * ((1 + R_EA * pow(m, n_r)) * (1 + m) - 1 + pow(m, 2 * n_r)))"+
		" * (1 + R_EA) / (1 - m)", g.Factor, "", clause)
	return s.Lines()
}
