package footing

import (
	"patiocover/calc"
	"patiocover/loads"
)

// An Uplift is the check that the weight of a footing holds a post down.
type Uplift struct {
	Block
	Net       float64 // T, net uplift of the post at the footing, 0.6W less 0.6D above it, lb
	Concrete  float64 // W_c, lb
	Soil      float64 // W_s, soil straight above the pad, lb; 0 where it does not count
	Buoyancy  float64 // W_w, weight of the water that concrete and soil displace, lb
	Resisting float64 // 0.6 (W_c + W_s - W_w), lb
}

// NewUplift weighs the footing against the net uplift net, lb, of allowable stress
// design. The soil above the pad counts only straight above it and only where the block
// says that it stays; there is no cone.
func NewUplift(net float64, b Block) Uplift {
	u := Uplift{Block: b, Net: net, Concrete: concreteLeast * b.Volume()}
	over := b.Depth - b.Thickness
	aside := b.Area() - b.Shape.area(b.Neck)
	wet := max(0, b.Depth-b.Water)
	pad := min(b.Thickness, wet)
	sunk := b.Area()*pad + b.Shape.area(b.Neck)*(wet-pad)
	if b.SoilOver {
		u.Soil = soilWeight * aside * over
		sunk += aside * (wet - pad)
	}
	u.Buoyancy = waterWeight * sunk
	u.Resisting = max(0, loads.HoldsDown*(u.Concrete+u.Soil-u.Buoyancy))
	return u
}

// Ratio is the net uplift over the resisting weight.
func (u Uplift) Ratio() float64 { return calc.Ratio(u.Net, u.Resisting) }

// Explain writes the check out.
func (u Uplift) Explain() calc.Check {
	var s calc.Sheet
	s.Given("T", u.Net, "lb", "net uplift of the post, with 0.6 of the least dead load above the footing taken off")
	u.lines(&s)
	u.weigh(&s)
	return s.Check("uplift on the footing", "T", "R_up")
}

// weigh writes the weight that holds down.
func (u Uplift) weigh(s *calc.Sheet) {
	s.Given("gamma_c", concreteLeast/calc.PCF, "pcf", "plain concrete that resists, low end of 145 to 150 pcf, common practice")
	s.Step("W_c", "gamma_c * V", u.Concrete, "lb", "weight of the concrete")
	u.soilLine(s)
	u.waterLines(s)
	s.Given("f_D", loads.HoldsDown, "", "ASCE 7 2.4.1, 0.6D + 0.6W, factor on the dead load that resists")
	s.Step("R_up", "max(0, f_D * (W_c + W_s - W_w))", u.Resisting, "lb", "ASCE 7 2.4.1: the 0.6 holds the safety")
}

func (u Uplift) soilLine(s *calc.Sheet) {
	if !u.SoilOver || u.Depth <= u.Thickness {
		s.Given("W_s", 0, "lb", "no soil counts: none lies above the pad, or it may be dug out or lies below a slab")
		return
	}
	s.Given("gamma_s", soilWeight/calc.PCF, "pcf", "soil, unless a report says more, common practice")
	s.Step("W_s", "gamma_s * (A - A_n) * (d - t)", u.Soil, "lb", "soil straight above the projection, no cone")
}

func (u Uplift) waterLines(s *calc.Sheet) {
	if u.Buoyancy == 0 {
		s.Given("W_w", 0, "lb", "ground water stays below the footing")
		return
	}
	s.Given("d_w", u.Water/calc.Ft, "ft", "ground water below grade")
	s.Given("gamma_w", waterWeight/calc.PCF, "pcf", "fresh water")
	s.Step("h_w", "d - d_w", (u.Depth-u.Water)/calc.Ft, "ft", "depth of the bottom in the water")
	sunk := "A * min(t, h_w)"
	switch {
	case u.Depth <= u.Thickness:
	case u.SoilOver:
		sunk = "A * h_w"
	default:
		sunk += " + A_n * max(0, h_w - t)"
	}
	s.Step("V_w", sunk, u.Buoyancy/waterWeight/cubicFoot, "ft³", "concrete and counted soil below the water")
	s.Step("W_w", "gamma_w * V_w", u.Buoyancy, "lb", "buoyancy")
}
