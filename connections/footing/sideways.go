package footing

import "patiocover/calc"

// A Hold says what holds a footing against the shear at its top.
type Hold uint8

// The ways: the first where it suffices, else the better.
const (
	ByDepth  Hold = iota // the soil beside it alone, as beside a pole
	ByWeight             // friction or cohesion, the soil in front, and its weight against tipping
)

// A Shear is what pushes a footing sideways, and what the ground around it gives.
type Shear struct {
	Force    float64  // H, at grade, allowable stress design, lb
	Uplift   float64  // T, net uplift with it, lb
	Lateral  Pressure // s, lateral bearing pressure for each inch of depth, lb/in³
	Friction float64  // mu, factor
	Cohesion float64  // lb/in², on the base; at most half of the dead load counts (IBC 2018 1806.3.2)
	Loose    float64  // top of the ground that does not hold, in
}

// A Sideways is the check of a footing under a pinned post that is pushed sideways at
// its top.
type Sideways struct {
	Block
	Shear
	Weight  float64 // W, concrete and counted soil in the dry or the wet, times 0.6, lb
	Rest    float64 // N, what is left on the base under uplift, lb
	Height  float64 // z, of soil that holds, in
	Front   float64 // width of soil in front, in
	Passive float64 // R_p, soil in front, lb
	Base    float64 // R_b, friction or cohesion on the base, lb
	Slide   float64 // shear that sliding allows, lb
	Tip     float64 // shear that tipping about the edge of the kern allows, lb
	Reach   float64 // A, of the pole formula, in
	Pole    float64 // shear that a pole of this depth allows, lb
	Held    Hold    // which of the two holds more
	Holds   float64 // lb
}

// NewSideways checks the block against shear at its top. By weight it must neither slide
// nor tip: the soil in front presses with s z²/2 on its width (IBC 2018 1806.3), and the
// resultant on the base stays in the kern. By depth it is a pole without height (IBC 2018
// eq. 18-1 with h = 0, where d = A). The two are not added; the depth is taken where it
// suffices, because it leaves the base pressed evenly.
func NewSideways(f Shear, b Block) Sideways {
	up := NewUplift(f.Uplift, b)
	s := Sideways{Block: b, Shear: f, Weight: up.Resisting}
	s.Rest = max(0, s.Weight-f.Uplift)
	s.Height = max(0, b.Depth-f.Loose)
	s.Front = b.Width
	if b.Neck > 0 {
		s.Front = b.Neck
	}
	s.Passive = f.Lateral.Value * s.Height * s.Height / 2 * s.Front
	s.Base = f.Friction*s.Rest + min(f.Cohesion*b.Area(), s.Rest/2)
	s.Slide = s.Base + s.Passive
	kern := b.Width / 6
	if b.Shape == Round {
		kern = b.Width / 8
	}
	s.Tip = (s.Rest*kern + s.Passive*s.Height/3) / b.Depth
	s.Reach = s.Height * s.Height / (s.Height + loosened*f.Loose)
	s.Pole = f.Lateral.Value * min(s.Height, deepest) / 3 * b.across() * s.Reach / poleFactor
	s.Held, s.Holds = ByWeight, min(s.Slide, s.Tip)
	if s.Pole >= f.Force || s.Pole > s.Holds {
		s.Held, s.Holds = ByDepth, s.Pole
	}
	return s
}

// Moment is what the shear asks of the base, lb-in: nothing where the soil beside the
// footing holds it, and else what the soil in front leaves.
func (s Sideways) Moment() float64 {
	if s.Held == ByDepth {
		return 0
	}
	return max(0, s.Force*s.Depth-s.Passive*s.Height/3)
}

// Ratio is the shear over what the ground holds.
func (s Sideways) Ratio() float64 { return calc.Ratio(s.Force, s.Holds) }

// Explain writes the check out.
func (s Sideways) Explain() calc.Check {
	var sheet calc.Sheet
	sheet.Given("H", s.Force, "lb", "shear at the foot of the post, allowable stress design")
	s.lines(&sheet)
	sheet.Quoted("s", s.Lateral.Value/lateralUnit, "psf/ft", s.Lateral.Source+", no increase", s.Lateral.Status)
	sheet.Given("d_l", s.Loose/calc.Ft, "ft", "top of the ground that does not hold")
	sheet.Step("z", "max(0, d - d_l)", s.Height/calc.Ft, "ft", "soil that holds")
	if s.Held == ByDepth {
		s.poleLines(&sheet)
		return sheet.Check("footing pushed sideways, held by its depth", "H", "H_a")
	}
	s.weightLines(&sheet)
	return sheet.Check("footing pushed sideways, held by its weight", "H", "H_a")
}

func (s Sideways) poleLines(sheet *calc.Sheet) {
	symbol, words := "B", "IBC 2018 1807.3.2.1, diameter"
	if s.Neck > 0 {
		symbol = "B_n"
		sheet.Given("B_n", s.Neck/calc.Ft, "ft", "neck, side or diameter")
	}
	formula := symbol
	if s.Shape == Square {
		formula, words = symbol+" * sqrt(2)", "IBC 2018 1807.3.2.1, diagonal of a square"
	}
	sheet.Step("b", formula, s.across()/calc.Ft, "ft", words)
	sheet.Given("d_max", deepest/calc.Ft, "ft", "IBC 2018 1807.3.2.1, depth for the pressure at most")
	sheet.Step("S_1", "s * min(z, d_max) / 3", s.Lateral.Value*min(s.Height, deepest)/3/calc.PSF, "psf", "at a third of the depth")
	sheet.Step("A_p", "z * z / (z + 1.09 * d_l)", s.Reach/calc.Ft, "ft", "IBC 2018 eq. 18-1 solved for A")
	sheet.Step("H_a", "S_1 * b * A_p / 2.34", s.Holds, "lb", "IBC 2018 1807.3.2.1, A = 2.34 P / (S1 b)")
}

func (s Sideways) weightLines(sheet *calc.Sheet) {
	sheet.Given("W", s.Weight, "lb", "0.6 of the weight of the footing, from its uplift calculation")
	sheet.Given("T", s.Uplift, "lb", "net uplift with it")
	sheet.Step("N", "max(0, W - T)", s.Rest, "lb", "left on the base")
	sheet.Given("B_f", s.Front/calc.Ft, "ft", "width of soil in front")
	sheet.Step("R_p", "s * z * z / 2 * B_f", s.Passive, "lb", "IBC 2018 1806.3, pressure that grows with depth")
	sheet.Given("mu", s.Friction, "", "IBC 2018 Table 1806.2, friction")
	sheet.Given("c_s", s.Cohesion/calc.PSF, "psf", "IBC 2018 Table 1806.2, cohesion, at most half of the load (1806.3.2)")
	sheet.Step("R_b", "mu * N + min(c_s * A, N / 2)", s.Base, "lb", "sliding on the base")
	sheet.Step("H_s", "R_b + R_p", s.Slide, "lb", "before it slides")
	part := "6"
	if s.Shape == Round {
		part = "8"
	}
	sheet.Step("H_t", "(N * B / "+part+" + R_p * z / 3) / d", s.Tip, "lb", "before the resultant leaves the kern")
	sheet.Step("H_a", "min(H_s, H_t)", s.Holds, "lb", "the lesser")
}
