package anchor

import (
	"math"

	"patiocover/calc"
)

// A Break is the breakout of one anchor sheared toward an edge.
type Break struct {
	Toward  int     // which edge: 0 west, 1 east, 2 south, 3 north
	To      float64 // c_a1, to the edge, in
	Counted float64 // c_a1 that counts, in: less where both sides and the thickness are near
	Left    float64 // c_a2 on one side, in
	Right   float64 // c_a2 on the other, in
	Area    float64 // A_Vc, in²
	Whole   float64 // A_Vco, in²
	Edge    float64 // psi_ed, factor
	Thin    float64 // psi_h, factor
	Crack   float64 // psi_c, factor
	Bearing float64 // l_e, in
	Basic   float64 // V_b, lb
	Nominal float64 // V_cb, lb
}

// newBreak works out the breakout toward one edge (ACI 318-19 17.7.2).
func newBreak(toward int, b Bolt, c Concrete) Break {
	all := [...]float64{c.West, c.East, c.South, c.North}
	k := Break{Toward: toward, To: all[toward], Left: all[2], Right: all[3], Crack: 1, Thin: 1}
	if toward >= 2 {
		k.Left, k.Right = all[0], all[1]
	}
	k.Counted = k.To
	if max(k.Left, k.Right, c.Thickness) < 1.5*k.To {
		k.Counted = max(k.Left, k.Right, c.Thickness) / 1.5 // 17.7.2.1.2
	}
	reach := 1.5 * k.Counted
	k.Area = (min(k.Left, reach) + min(k.Right, reach)) * min(reach, c.Thickness)
	k.Whole = 4.5 * k.Counted * k.Counted // eq. 17.7.2.1.3
	k.Edge = min(1, 0.7+0.3*min(k.Left, k.Right)/reach)
	if c.Thickness < reach {
		k.Thin = math.Sqrt(reach / c.Thickness) // eq. 17.7.2.6.1
	}
	if c.Uncracked {
		k.Crack = 1.4 // 17.7.2.5
	}
	k.Bearing = min(b.Embedment, 8*b.Diameter)
	k.Basic = min(7*math.Pow(k.Bearing/b.Diameter, 0.2)*math.Sqrt(b.Diameter), 9) *
		math.Sqrt(c.strength(b.Kind)) * math.Pow(k.Counted, 1.5) // eq. 17.7.2.2.1a and b
	k.Nominal = k.Area / k.Whole * k.Edge * k.Crack * k.Thin * k.Basic
	return k
}

// A Shear is the check of one anchor pushed sideways, toward its worst edge.
type Shear struct {
	Bolt
	Concrete
	Break
	Strengths         // phi V_n of Steel, Breakout, Pryout
	Cone      Cone    // its breakout in tension, for the pryout
	Demand    float64 // V_ua, strength level, lb
	Fault     Fault   // why the anchor counts for nothing
	Pry       float64 // k_cp, factor
}

// NewShear checks an anchor against a push of strength level, lb, whose direction is
// not known: the weakest edge counts (ACI 318-19 17.7). The base stands on the concrete,
// without a grout pad or a lever arm.
func NewShear(demand float64, b Bolt, c Concrete) Shear {
	c = c.within()
	v := Shear{Bolt: b, Concrete: c, Demand: demand, Fault: faultOf(b, c)}
	if v.Fault != Sound {
		return v
	}
	v.Cone = newCone(b, c)
	v.Break = newBreak(0, b, c)
	for i := 1; i < 4; i++ {
		if k := newBreak(i, b, c); k.Nominal < v.Break.Nominal {
			v.Break = k
		}
	}
	v.Pry = 2
	if b.Embedment < 2.5*calc.In {
		v.Pry = 1 // 17.7.3.1
	}
	_, steel := b.phiSteel()
	v.set(Steel, steel*0.6*b.Area*b.Tensile) // eq. 17.7.1.2b
	v.set(Breakout, phiConcrete*v.Break.Nominal)
	v.set(Pryout, phiConcrete*v.Pry*v.Cone.Nominal) // eq. 17.7.3.1a
	v.govern()
	return v
}

// Ratio is the push over the least strength.
func (v Shear) Ratio() float64 { return calc.Ratio(v.Demand, v.Capacity) }

// Explain writes the check out.
func (v Shear) Explain() calc.Check {
	var s calc.Sheet
	s.Given("V_ua", v.Demand, "lb", "push of strength level")
	if v.Fault != Sound {
		s.Given("phiV_n", 0, "lb", "ACI 318-19 17.9 and 17.3: "+v.Fault.String())
		return s.Check("anchor in shear", "V_ua", "phiV_n")
	}
	s.Given("d_a", v.Diameter, "in", v.Kind.String())
	s.Given("A_se", v.Bolt.Area, "in²", "tensile stress area")
	s.Quoted("f_uta", v.Tensile, "psi", "tensile strength of the steel, at most 125,000 psi", calc.Recalled)
	_, steel := v.phiSteel()
	s.Quoted("phi_s", steel, "", v.steelWords()+", in shear", calc.Recalled)
	s.Step("phiV_sa", "phi_s * 0.6 * A_se * f_uta", v.Designs[Steel], "lb", "ACI 318-19 eq. 17.7.1.2b")
	v.breakLines(&s)
	s.Given("N_cb", v.Cone.Nominal, "lb", "breakout in tension, from the check in tension")
	s.Quoted("k_cp", v.Pry, "", "ACI 318-19 17.7.3.1, by the embedment against 2.5 in", calc.Recalled)
	s.Step("phiV_cp", "phi_c * k_cp * N_cb", v.Designs[Pryout], "lb", "ACI 318-19 eq. 17.7.3.1a")
	s.Step("phiV_n", "min(phiV_sa, phiV_cb, phiV_cp)", v.Capacity, "lb", "ACI 318-19 17.5.2, governed by "+v.Governs.String())
	return s.Check("anchor in shear", "V_ua", "phiV_n")
}

func (v Shear) breakLines(s *calc.Sheet) {
	k := v.Break
	s.Given("f_c", v.strength(v.Kind), "psi", "strength of the concrete that counts")
	s.Given("h_a", v.Thickness, "in", "thickness of the concrete")
	s.Given("c_1", k.To, "in", "to the edge it is pushed toward, the weakest of four")
	s.Given("c_l", k.Left, "in", "to the edge on one side")
	s.Given("c_r", k.Right, "in", "to the edge on the other side")
	counted, source := "c_1", "ACI 318-19 17.7.2.1"
	if k.Counted < k.To {
		counted, source = "max(c_l, c_r, h_a) / 1.5", "ACI 318-19 17.7.2.1.2, both sides and the thickness are near"
	}
	s.Step("c_a1", counted, k.Counted, "in", source)
	s.Step("A_Vc", "(min(c_l, 1.5 * c_a1) + min(c_r, 1.5 * c_a1)) * min(1.5 * c_a1, h_a)", k.Area, "in²", "ACI 318-19 17.7.2.1.1")
	s.Step("A_Vco", "4.5 * c_a1 * c_a1", k.Whole, "in²", "ACI 318-19 eq. 17.7.2.1.3")
	s.Step("psi_ed", "min(1, 0.7 + 0.3 * min(c_l, c_r) / (1.5 * c_a1))", k.Edge, "", "ACI 318-19 eq. 17.7.2.4.1")
	s.Quoted("psi_c", k.Crack, "", "ACI 318-19 17.7.2.5 (318-14 17.5.2.7 seen restated), no edge reinforcement"+crackWords(v.Uncracked),
		calc.Read)
	s.Step("psi_h", "sqrt(max(1, 1.5 * c_a1 / h_a))", k.Thin, "", "ACI 318-19 eq. 17.7.2.6.1")
	s.Given("l_e", k.Bearing, "in", "embedment, at most 8 diameters")
	s.Step("V_b", "min(7 * pow(l_e / d_a, 0.2) * sqrt(d_a), 9) * sqrt(f_c) * pow(c_a1, 1.5)", k.Basic, "lb",
		"ACI 318-19 eq. 17.7.2.2.1a and b, normal weight")
	s.Step("V_cb", "A_Vc / A_Vco * psi_ed * psi_c * psi_h * V_b", k.Nominal, "lb", "ACI 318-19 eq. 17.7.2.1a")
	s.Quoted("phi_c", phiConcrete, "", "ACI 318-19 17.5.3 (318-14 17.3.3 seen restated), shear, no supplementary reinforcement", calc.Read)
	s.Step("phiV_cb", "phi_c * V_cb", v.Designs[Breakout], "lb", "ACI 318-19 17.5.2")
}
