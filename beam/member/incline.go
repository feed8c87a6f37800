package member

import (
	"math"

	"patiocover/calc"
)

// Rolled are the moments of a member whose section leans, such as a purlin square to a
// slope, in the planes of its own depth and breadth. They go into [Actions].
type Rolled struct {
	Vertical   float64 // lb-in, moment of the vertical loads, positive downward
	Horizontal float64 // lb-in, moment of the horizontal loads, positive down the slope
	Lean       float64 // degrees between the depth of the section and the vertical
	Edgewise   float64 // M1, lb-in, in the plane of the depth
	Flatwise   float64 // M2, lb-in, in the plane of the breadth
}

// NewRolled resolves the moments, in lb-in, of vertical and of horizontal loads on a
// member that leans down the slope by the angle, in degrees. A plumb beam under a
// sloped roof leans by 0 and takes the horizontal part of the wind flatwise.
func NewRolled(vertical, horizontal, lean float64) Rolled {
	sin, cos := math.Sincos(lean * math.Pi / 180) // degrees
	return Rolled{
		Vertical: vertical, Horizontal: horizontal, Lean: lean,
		Edgewise: vertical*cos - horizontal*sin, Flatwise: vertical*sin + horizontal*cos,
	}
}

// Lines writes the resolution out.
func (r Rolled) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("M_v", r.Vertical, "lb-in", "moment of the vertical loads")
	s.Given("M_h", r.Horizontal, "lb-in", "moment of the horizontal loads, down the slope")
	s.Given("theta", r.Lean, "degrees", "lean of the section")
	s.Step("M_1", "M_v * cosd(theta) - M_h * sind(theta)", r.Edgewise, "lb-in", "statics")
	s.Step("M_2", "M_v * sind(theta) + M_h * cosd(theta)", r.Flatwise, "lb-in", "statics")
	return s.Lines()
}

// A Hold says which end of a sloped rafter takes the force along the slope.
type Hold uint8

// The holds. The zero value is not known: both extremes are taken.
const (
	HoldUnknown Hold = iota // not stated: as if held low and as if hung
	HoldLow                 // held at the low end: the rafter is pressed
	HoldHigh                // hung from the high end: the rafter is pulled
)

// Incline is the force along a sloped rafter of one span under vertical load that is
// even along the plan: it grows from the free end to the held one.
type Incline struct {
	Load      float64 // W, lb, whole vertical load on the span
	Slope     float64 // theta, degrees
	Along     float64 // W sin theta, lb, largest force along the rafter, at the held end
	Middle    float64 // half of it, lb, where the moment is largest
	Shear     float64 // V, lb, across the rafter at its ends: W cos theta / 2
	Reaction  float64 // lb, vertical, at each end
	Pressed   float64 // lb, largest pressing force; 0 when hung
	Pulled    float64 // lb, largest pulling force; 0 when held low
	pressHeld bool
	pullHeld  bool
}

// NewIncline returns the forces of a rafter under the vertical load, in lb on the whole
// span, at the slope, in degrees. The bending moment is W L/8 with the span on plan.
func NewIncline(load, slope float64, hold Hold) Incline {
	sin, cos := math.Sincos(slope * math.Pi / 180) // degrees
	i := Incline{
		Load: load, Slope: slope, Along: load * sin, Middle: load * sin / 2, Shear: load * cos / 2,
		Reaction: load / 2, pressHeld: hold != HoldHigh, pullHeld: hold != HoldLow,
	}
	if i.pressHeld {
		i.Pressed = i.Along
	}
	if i.pullHeld {
		i.Pulled = i.Along
	}
	return i
}

// Lines writes the forces out.
func (i Incline) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("W", i.Load, "lb", "vertical load on the span")
	s.Given("theta", i.Slope, "degrees", "slope")
	s.Step("R", "W / 2", i.Reaction, "lb", "statics")
	s.Step("V", "W * cosd(theta) / 2", i.Shear, "lb", "statics, across the rafter")
	s.Step("N", "W * sind(theta)", i.Along, "lb", "statics, along the rafter at the held end")
	s.Step("N_mid", "N / 2", i.Middle, "lb", "statics, where the moment is largest")
	for _, side := range [...]struct {
		symbol, source string
		held           bool
		x              float64 // lb
	}{
		{"P", "pressing, held at the low end", i.pressHeld, i.Pressed},
		{"T", "pulling, hung from the high end", i.pullHeld, i.Pulled},
	} {
		formula := "0"
		if side.held {
			formula = "N"
		}
		s.Step(side.symbol, formula, side.x, "lb", side.source)
	}
	return s.Lines()
}
