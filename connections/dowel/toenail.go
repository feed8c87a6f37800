package dowel

import (
	"math"

	"patiocover/calc"
)

// Toe-nails are driven at about 30 degrees to the member, started a third of their
// length from its end (NDS 2018 12.1.6.3, 12.5.4).
const (
	toenailAngle   = 30.0 // deg
	toenailPull    = 0.67 // C_tn in withdrawal, factor (NDS 2018 12.5.4.1)
	toenailLateral = 0.83 // C_tn sideways, factor (NDS 2018 12.5.4.2)
)

// A Toenail is the reference value of one toe-nail, with C_tn in it.
type Toenail struct {
	Fastener Fastener   // a nail
	Holding  Member     // plate or beam that takes the tip; Thickness measured along the toed member, in
	Toed     Member     // member that is held
	Start    float64    // L/3, in: from the end of the toed member to where the nail enters
	Below    float64    // in: length of the nail in the holding member, along the nail
	Depth    float64    // in: how deep the tip is in the holding member
	Pull     Withdrawal // before C_tn
	Lateral  Lateral    // with l_s = L/3
	Uplift   float64    // lb: withdrawal times C_tn
	Sideways float64    // lb: lateral value times C_tn
}

// NewToenail returns what one toe-nail holds. holding is the plate or beam below, toed
// the member that is nailed to it. A tip that would come out below the holding member
// holds only within it.
//
// Uplift and Sideways take no part of each other, and the wet service factor does not
// apply to Uplift (NDS 2018 Table 11.3.1 note 2): see [Factors].
func NewToenail(f Fastener, holding, toed Member) Toenail {
	t := Toenail{Fastener: f, Holding: holding, Toed: toed, Start: f.Length / 3}
	cos := math.Cos(toenailAngle * math.Pi / 180)
	t.Below = max(0, min(f.Length-t.Start/cos, holding.Thickness/cos))
	t.Depth = max(0, min(f.Length*cos-t.Start, holding.Thickness))
	t.Pull = NewWithdrawal(f, holding.Gravity, t.Below, false)
	toed.Thickness = t.Start
	straight := f
	straight.Length = t.Start + t.Depth
	t.Lateral = NewLateral(straight, Joint{Main: holding, Side: toed})
	t.Uplift = toenailPull * t.Pull.Value
	t.Sideways = toenailLateral * t.Lateral.Value
	return t
}

// UpliftLines writes the value in withdrawal out; its last line is W_tn.
func (t Toenail) UpliftLines() []calc.Line {
	var s calc.Sheet
	t.writeGeometry(&s)
	s.Step("l_h", "max(0, min(L_n - L_n / 3 / cosd(30), t_h / cosd(30)))", t.Below, "in", toenailGeometry)
	s.Append(t.Pull.Lines())
	s.Quoted("C_tn", toenailPull, "", "NDS 2018 12.5.4.1, toe-nail in withdrawal", calc.Recalled)
	s.Step("W_tn", "C_tn * W_1", t.Uplift, "lb", "NDS 2018 12.5.4.1: value of one toe-nail")
	return s.Lines()
}

// SidewaysLines writes the lateral value out; its last line is Z_tn.
func (t Toenail) SidewaysLines() []calc.Line {
	var s calc.Sheet
	t.writeGeometry(&s)
	s.Step("t_s", "L_n / 3", t.Start, "in", toenailGeometry)
	s.Step("L", "L_n / 3 + max(0, min(L_n * cosd(30) - L_n / 3, t_h))", t.Start+t.Depth, "in", toenailGeometry)
	s.Append(t.Lateral.Lines())
	s.Quoted("C_tn", toenailLateral, "", "NDS 2018 12.5.4.2, toe-nail sideways", calc.Recalled)
	s.Step("Z_tn", "C_tn * Z", t.Sideways, "lb", "NDS 2018 12.5.4.2: value of one toe-nail")
	return s.Lines()
}

// toenailGeometry is where the shape of a toe-nail stands.
const toenailGeometry = "NDS 2018 12.5.4 and 12.1.6.3: at 30 degrees, started at L/3"

func (t *Toenail) writeGeometry(s *calc.Sheet) {
	s.Given("L_n", t.Fastener.Length, "in", "length of the nail")
	s.Given("t_h", t.Holding.Thickness, "in", "thickness of the member that holds")
}

// A ToenailCheck is the check of a group of like toe-nails in one sense.
type ToenailCheck struct {
	Demand   float64 // lb, on the group
	Toenail  Toenail // one of them
	Factors  Factors // of withdrawal or of shear
	Count    int     // n, how many
	One      float64 // lb, of one, adjusted
	Capacity float64 // lb, of n
	sideways bool
}

// NewToenailPull compares an uplift, lb, with n toe-nails in withdrawal. They hold
// nothing sideways at the same time that is counted here.
func NewToenailPull(demand float64, t Toenail, c Conditions, n int) ToenailCheck {
	c.Toenail = true
	f := WithdrawalFactors(Nail, c)
	k := ToenailCheck{Demand: demand, Toenail: t, Factors: f, Count: n, One: t.Uplift * f.Product}
	k.Capacity = float64(n) * k.One
	return k
}

// NewToenailShear compares a side force, lb, with n toe-nails.
func NewToenailShear(demand float64, t Toenail, c Conditions, n int) ToenailCheck {
	c.Toenail = true
	f := LateralFactors(Nail, c)
	k := ToenailCheck{Demand: demand, Toenail: t, Factors: f, Count: n, One: t.Sideways * f.Product, sideways: true}
	k.Capacity = float64(n) * k.One
	return k
}

// Ratio is the demand over what the toe-nails hold.
func (c ToenailCheck) Ratio() float64 { return calc.Ratio(c.Demand, c.Capacity) }

// Explain writes the check out.
func (c ToenailCheck) Explain() calc.Check {
	var s calc.Sheet
	name, value, lines := "toe-nails in withdrawal", "W_tn", c.Toenail.UpliftLines
	if c.sideways {
		name, value, lines = "toe-nails sideways", "Z_tn", c.Toenail.SidewaysLines
	}
	s.Append(lines())
	product := c.Factors.write(&s)
	s.Step("T_1", value+" * "+product, c.One, "lb", "NDS 2018 Table 11.3.1")
	s.Given("n", float64(c.Count), "", "how many")
	s.Given("T", c.Demand, "lb", "demand on the group")
	s.Step("T_adj", "n * T_1", c.Capacity, "lb", "NDS 2018 11.1.2")
	return s.Check(name, "T", "T_adj")
}
