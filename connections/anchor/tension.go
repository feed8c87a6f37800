package anchor

import (
	"math"

	"patiocover/calc"
)

// A Cone is the breakout of one anchor in tension.
type Cone struct {
	Edges   int     // how many lie within 1.5 h_ef
	Farther float64 // c_a,max, the largest distance to one of them, in; 0 without
	Counted float64 // h_ef that counts, in: less than the embedment where 3 edges or more are near
	Nearest float64 // c_a,min, in
	Area    float64 // A_Nc, in²
	Whole   float64 // A_Nco, in²
	Edge    float64 // psi_ed, factor
	Crack   float64 // psi_c, factor
	Split   float64 // psi_cp, factor
	Basic   float64 // N_b, lb
	Nominal float64 // N_cb, lb
}

// newCone works out the breakout (ACI 318-19 17.6.2).
func newCone(b Bolt, c Concrete) Cone {
	k := Cone{Counted: b.Embedment, Nearest: c.nearest(), Crack: 1, Split: 1}
	for _, e := range [...]float64{c.West, c.East, c.South, c.North} {
		if e < 1.5*b.Embedment {
			k.Edges++
			k.Farther = max(k.Farther, e)
		}
	}
	if k.Edges >= 3 {
		k.Counted = k.Farther / 1.5 // 17.6.2.1.2
	}
	reach := 1.5 * k.Counted
	k.Area = (min(c.West, reach) + min(c.East, reach)) * (min(c.South, reach) + min(c.North, reach))
	k.Whole = 9 * k.Counted * k.Counted // eq. 17.6.2.1.4
	k.Edge = min(1, 0.7+0.3*k.Nearest/reach)
	if c.Uncracked {
		k.Crack = 1.25 // 17.6.2.5.1
		if b.Kind == Drilled {
			k.Crack = 1.4
			critical := 4 * k.Counted                        // c_ac, 17.9.5, torque-controlled
			k.Split = min(1, max(k.Nearest, reach)/critical) // eq. 17.6.2.6.1b
		}
	}
	k.Basic = b.breakoutFactor() * math.Sqrt(c.strength(b.Kind)) * math.Pow(k.Counted, 1.5) // eq. 17.6.2.2.1
	k.Nominal = k.Area / k.Whole * k.Edge * k.Crack * k.Split * k.Basic
	return k
}

// A Tension is the check of one anchor pulled out.
type Tension struct {
	Bolt
	Concrete
	Cone
	Strengths         // phi N_n of Steel, Breakout, Pullout, Blowout
	Demand    float64 // N_ua, strength level, 0.9D + 1.0W, lb
	Fault     Fault   // why the anchor counts for nothing
	First     float64 // c_a1 of the blowout, the nearest edge, in
	Second    float64 // c_a2, the nearer edge across, in
}

// NewTension checks an anchor against a pull of strength level, lb (ACI 318-19 17.6).
// The pullout of a drilled anchor comes from its evaluation report alone and is not
// counted here.
func NewTension(demand float64, b Bolt, c Concrete) Tension {
	c = c.within()
	t := Tension{Bolt: b, Concrete: c, Demand: demand, Fault: faultOf(b, c), First: c.nearest()}
	if t.Fault != Sound {
		return t
	}
	t.Cone = newCone(b, c)
	steel, _ := b.phiSteel()
	t.set(Steel, steel*b.Area*b.Tensile) // eq. 17.6.1.2
	t.set(Breakout, b.phi()*t.Nominal)
	crack := 1.0
	if c.Uncracked {
		crack = 1.4 // psi_cP, 17.6.3.3
	}
	if b.Kind == Headed {
		t.set(Pullout, b.phi()*crack*8*b.Head*c.strength(b.Kind)) // eq. 17.6.3.2.2a
	}
	if b.Kind == Hooked {
		t.set(Pullout, b.phi()*crack*0.9*c.strength(b.Kind)*min(b.Hook, 4.5*b.Diameter)*b.Diameter) // eq. 17.6.3.2.2b
	}
	t.Second = min(c.South, c.North)
	if t.First == t.Second {
		t.Second = min(c.West, c.East)
	}
	if b.Kind == Headed && b.Embedment > 2.5*t.First {
		near := 160 * t.First * math.Sqrt(b.Head) * math.Sqrt(c.strength(b.Kind)) // eq. 17.6.4.1
		t.set(Blowout, b.phi()*near*t.corner())
	}
	t.govern()
	return t
}

// corner is the reduction of the blowout near a corner, factor (17.6.4.1.1).
func (t *Tension) corner() float64 {
	if t.Second >= 3*t.First {
		return 1
	}
	return (1 + t.Second/t.First) / 4
}

// Ratio is the pull over the least strength.
func (t Tension) Ratio() float64 { return calc.Ratio(t.Demand, t.Capacity) }

// Explain writes the check out.
func (t Tension) Explain() calc.Check {
	var s calc.Sheet
	s.Given("N_ua", t.Demand, "lb", "pull of strength level, 0.9D + 1.0W")
	if t.Fault != Sound {
		s.Given("phiN_n", 0, "lb", "ACI 318-19 17.9 and 17.3: "+t.Fault.String())
		return s.Check("anchor in tension", "N_ua", "phiN_n")
	}
	t.steelLines(&s)
	t.coneLines(&s)
	list := "phiN_sa, phiN_cb"
	if t.Counts[Pullout] {
		t.pulloutLines(&s)
		list += ", phiN_p"
	}
	if t.Counts[Blowout] {
		t.blowoutLines(&s)
		list += ", phiN_sb"
	}
	s.Step("phiN_n", "min("+list+")", t.Capacity, "lb", "ACI 318-19 17.5.2, governed by "+t.Governs.String())
	return s.Check("anchor in tension", "N_ua", "phiN_n")
}

func (t Tension) steelLines(s *calc.Sheet) {
	s.Given("d_a", t.Diameter, "in", t.Kind.String())
	s.Given("A_se", t.Bolt.Area, "in²", "tensile stress area")
	s.Quoted("f_uta", t.Tensile, "psi", "tensile strength of the steel, at most 125,000 psi", calc.Recalled)
	steel, _ := t.phiSteel()
	s.Quoted("phi_s", steel, "", t.steelWords(), calc.Recalled)
	s.Step("phiN_sa", "phi_s * A_se * f_uta", t.Designs[Steel], "lb", "ACI 318-19 eq. 17.6.1.2")
}

func (t Tension) coneLines(s *calc.Sheet) {
	s.Given("f_c", t.strength(t.Kind), "psi", "strength of the concrete that counts")
	s.Given("h_0", t.Embedment, "in", "embedment")
	for _, e := range []struct {
		symbol string
		x      float64
	}{{"c_w", t.West}, {"c_e", t.East}, {"c_s", t.South}, {"c_n", t.North}} {
		s.Given(e.symbol, e.x, "in", "to the edge, joint or crack on this side")
	}
	hef := "ACI 318-19 17.6.2.1"
	if t.Edges >= 3 {
		s.Given("c_max", t.Farther, "in", "farthest of the edges within 1.5 h")
		s.Step("h_ef", "c_max / 1.5", t.Counted, "in", "ACI 318-19 17.6.2.1.2, three edges or more are near")
	}
	if t.Edges < 3 {
		s.Step("h_ef", "h_0", t.Counted, "in", hef)
	}
	s.Step("A_Nc", "(min(c_w, 1.5 * h_ef) + min(c_e, 1.5 * h_ef)) * (min(c_s, 1.5 * h_ef) + min(c_n, 1.5 * h_ef))",
		t.Cone.Area, "in²", "ACI 318-19 17.6.2.1.1")
	s.Step("A_Nco", "9 * h_ef * h_ef", t.Whole, "in²", "ACI 318-19 eq. 17.6.2.1.4")
	s.Step("c_min", "min(c_w, c_e, c_s, c_n)", t.Nearest, "in", "nearest edge")
	s.Step("psi_ed", "min(1, 0.7 + 0.3 * c_min / (1.5 * h_ef))", t.Edge, "", "ACI 318-19 eq. 17.6.2.4.1")
	s.Quoted("psi_c", t.Crack, "", "ACI 318-19 17.6.2.5 (318-14 17.4.2.6 seen restated)"+crackWords(t.Uncracked), calc.Read)
	s.Given("psi_cp", t.Split, "", "ACI 318-19 17.6.2.6"+crackWords(t.Uncracked))
	s.Quoted("k_c", t.breakoutFactor(), "", "ACI 318-19 17.6.2.2.1 (318-14 17.4.2.2 seen restated), "+t.Kind.String(), calc.Read)
	s.Step("N_b", "k_c * sqrt(f_c) * pow(h_ef, 1.5)", t.Basic, "lb", "ACI 318-19 eq. 17.6.2.2.1, normal weight")
	s.Step("N_cb", "A_Nc / A_Nco * psi_ed * psi_c * psi_cp * N_b", t.Nominal, "lb", "ACI 318-19 eq. 17.6.2.1a")
	known := calc.Recalled
	if t.Kind == Drilled {
		known = calc.Read // by category, seen restated
	}
	s.Quoted("phi_c", t.phi(), "", "ACI 318-19 17.5.3, "+t.Kind.String()+", no supplementary reinforcement", known)
	s.Step("phiN_cb", "phi_c * N_cb", t.Designs[Breakout], "lb", "ACI 318-19 17.5.2")
}

func crackWords(uncracked bool) string {
	if uncracked {
		return ", uncracked concrete"
	}
	return ", cracked concrete"
}

func (t Tension) pulloutLines(s *calc.Sheet) {
	crack := 1.0
	if t.Uncracked {
		crack = 1.4
	}
	s.Quoted("psi_cP", crack, "", "ACI 318-19 17.6.3.3"+crackWords(t.Uncracked), calc.Recalled)
	if t.Kind == Headed {
		s.Given("A_brg", t.Head, "in²", "net bearing area of the head")
		s.Step("phiN_p", "phi_c * psi_cP * 8 * A_brg * f_c", t.Designs[Pullout], "lb", "ACI 318-19 eq. 17.6.3.2.2a")
		return
	}
	s.Given("e_h", t.Hook, "in", "inside of the shaft to the tip of the hook; more than 4.5 diameters do not count")
	s.Step("phiN_p", "phi_c * psi_cP * 0.9 * f_c * min(e_h, 4.5 * d_a) * d_a", t.Designs[Pullout], "lb", "ACI 318-19 eq. 17.6.3.2.2b")
}

func (t Tension) blowoutLines(s *calc.Sheet) {
	s.Given("c_a1", t.First, "in", "nearest edge, less than h_ef / 2.5")
	s.Given("c_a2", t.Second, "in", "nearer edge across")
	s.Step("r_c", "min(1, (1 + min(3, c_a2 / c_a1)) / 4)", t.corner(), "", "ACI 318-19 17.6.4.1.1, corner")
	s.Step("phiN_sb", "phi_c * 160 * c_a1 * sqrt(A_brg) * sqrt(f_c) * r_c", t.Designs[Blowout], "lb", "ACI 318-19 eq. 17.6.4.1")
}
