package loads

import "math"

// OnPlan turns a load per area of slope, such as dead load, into one per area of
// plan, in the same unit. angle is from the horizontal, in radians, below a right
// angle.
func OnPlan(perSlope, angle float64) float64 { return perSlope / math.Cos(angle) }

// OnSlope turns a load per area of plan, such as live load and snow, into one per
// area of slope, in the same unit. angle is from the horizontal, in radians.
func OnSlope(perPlan, angle float64) float64 { return perPlan * math.Cos(angle) }

// Across returns the part of a vertical load per area of slope that acts square to
// the slope, in the same unit; it bends the rafter. angle is from the horizontal, in
// radians.
func Across(perSlope, angle float64) float64 { return perSlope * math.Cos(angle) }
