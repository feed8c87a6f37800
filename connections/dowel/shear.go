package dowel

import "patiocover/calc"

// A Shear is the check of a group of like dowels loaded sideways (NDS 2018 11.3).
type Shear struct {
	Demand   float64 // V, lb, on the group
	Lateral  Lateral // Z of one
	Factors  Factors // what it is multiplied with
	Count    int     // n, how many
	One      float64 // Z', lb, of one
	Capacity float64 // n Z', lb
	concrete bool    // bearing on concrete, which takes no C_D, was asked
}

// NewShear compares the demand, lb, with n dowels. Where the dowel bears on concrete,
// the mode in which the concrete crushes takes no load duration factor above 1 (NDS
// 2018 11.3.2); the values of steel plates hold one of 1.6 already.
func NewShear(demand float64, v Lateral, f Factors, n int) Shear {
	s := Shear{Demand: demand, Lateral: v, Factors: f, Count: n, One: v.Value * f.Product}
	if v.Main.Member.Material == Concrete && v.Mode != NoMode {
		s.concrete = true
		s.One = min(s.One, v.Values[BearingMain]*f.Product/f.Time*min(1, f.Time))
	}
	s.Capacity = float64(n) * s.One
	return s
}

// Ratio is the demand over n Z'.
func (c Shear) Ratio() float64 { return calc.Ratio(c.Demand, c.Capacity) }

// Explain writes the check out.
func (c Shear) Explain() calc.Check {
	var s calc.Sheet
	s.Append(c.Lateral.Lines())
	c.finish(&s)
	return s.Check("fasteners in shear", "V", "V_adj")
}

// finish writes the factors, the demand and the capacity.
func (c *Shear) finish(s *calc.Sheet) {
	product := c.Factors.write(s)
	if c.concrete {
		s.Step("C_hard", "min(1, "+c.timeFormula()+")", min(1, c.Factors.Time), "", "NDS 2018 11.3.2: concrete takes no more")
		s.Step("Z_adj", "min(Z * "+product+", Z_Im * ("+product+") / ("+c.timeFormula()+") * C_hard)", c.One, "lb", "NDS 2018 Table 11.3.1")
	}
	if !c.concrete {
		s.Step("Z_adj", "Z * "+product, c.One, "lb", "NDS 2018 Table 11.3.1")
	}
	s.Given("n", float64(c.Count), "", "how many")
	s.Given("V", c.Demand, "lb", "demand on the group")
	s.Step("V_adj", "n * Z_adj", c.Capacity, "lb", "NDS 2018 11.1.2")
}

// timeFormula is the product of the symbols of the time of loading.
func (c *Shear) timeFormula() string {
	if c.Factors.Conditions.Method == 0 {
		return "C_D"
	}
	return "K_F * phi_z * lambda"
}

// A Pull is the check of a group of like dowels in withdrawal (NDS 2018 12.2).
type Pull struct {
	Demand     float64    // T, lb, on the group
	Withdrawal Withdrawal // W of one
	Factors    Factors    // what it is multiplied with
	Count      int        // n, how many
	One        float64    // W' p_t, lb, of one
	Capacity   float64    // n W' p_t, lb
}

// NewPull compares the demand, lb, with n dowels.
func NewPull(demand float64, w Withdrawal, f Factors, n int) Pull {
	p := Pull{Demand: demand, Withdrawal: w, Factors: f, Count: n, One: w.Value * f.Product}
	p.Capacity = float64(n) * p.One
	return p
}

// Ratio is the demand over n W' p_t.
func (c Pull) Ratio() float64 { return calc.Ratio(c.Demand, c.Capacity) }

// Explain writes the check out.
func (c Pull) Explain() calc.Check {
	var s calc.Sheet
	s.Append(c.Withdrawal.Lines())
	product := c.Factors.write(&s)
	s.Step("W_adj", "W_1 * "+product, c.One, "lb", "NDS 2018 Table 11.3.1")
	s.Given("n", float64(c.Count), "", "how many")
	s.Given("T", c.Demand, "lb", "demand on the group")
	s.Step("T_adj", "n * W_adj", c.Capacity, "lb", "NDS 2018 11.1.2")
	return s.Check("fasteners in withdrawal", "T", "T_adj")
}
