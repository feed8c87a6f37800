package dowel

import (
	"math"

	"patiocover/calc"
)

// A Slanted is the check of a group of like lag screws, wood screws or nails that are
// pulled and pushed sideways at once (NDS 2018 12.4).
type Slanted struct {
	Shear    Shear   // sideways
	Pull     Pull    // outward
	Angle    float64 // alpha, deg, of the load from the surface of the wood
	Demand   float64 // lb, resultant on the group
	One      float64 // Z_alpha', lb, of one
	Capacity float64 // lb, of the group
	squared  bool    // cos² and sin², of lag screws
}

// NewSlanted combines the demands of two checks of the same group. Lag screws follow
// the Hankinson form (eq. 12.4-1); wood screws and nails the linear one (eq. 12.4-2).
func NewSlanted(shear Shear, pull Pull) Slanted {
	c := Slanted{Shear: shear, Pull: pull, squared: shear.Lateral.Fastener.Kind == LagScrew}
	v, t := max(0, shear.Demand), max(0, pull.Demand)
	c.Demand = math.Sqrt(math.Pow(v, 2) + math.Pow(t, 2))
	if c.Demand == 0 {
		return c
	}
	c.Angle = math.Atan2(t, v) * 180 / math.Pi
	cos, sin := v/c.Demand, t/c.Demand
	if c.squared {
		cos, sin = math.Pow(cos, 2), math.Pow(sin, 2)
	}
	if base := pull.One*cos + shear.One*sin; base > 0 {
		c.One = pull.One * shear.One / base // eq. 12.4-1, 12.4-2
	}
	c.Capacity = float64(shear.Count) * c.One
	return c
}

// Ratio is the resultant over the capacity.
func (c Slanted) Ratio() float64 { return calc.Ratio(c.Demand, c.Capacity) }

// Explain writes the check out, after the two values that it combines.
func (c Slanted) Explain() calc.Check {
	var s calc.Sheet
	s.Append(c.Shear.Explain().Lines)
	s.Append(c.Pull.Explain().Lines)
	s.Step("R", "sqrt(pow(max(0, V), 2) + pow(max(0, T), 2))", c.Demand, "lb", "NDS 2018 12.4.1")
	const values, outward, sideways = "W_adj * Z_adj / (W_adj * ", "max(0, T) / R", "max(0, V) / R"
	switch {
	case c.Demand == 0 || c.One == 0:
		s.Step("Z_alpha", "0", c.One, "lb", "nothing is demanded, or one of the two values is none")
	case c.squared:
		s.Step("Z_alpha", values+"pow("+sideways+", 2) + Z_adj * pow("+outward+", 2))", c.One, "lb", "NDS 2018 eq. 12.4-1")
	default:
		s.Step("Z_alpha", values+"("+sideways+") + Z_adj * ("+outward+"))", c.One, "lb", "NDS 2018 eq. 12.4-2")
	}
	s.Step("R_adj", "n * Z_alpha", c.Capacity, "lb", "NDS 2018 11.1.2")
	return s.Check("shear and withdrawal at once", "R", "R_adj")
}
