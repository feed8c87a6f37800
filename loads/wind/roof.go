package wind

import "patiocover/calc"

// The limits of the figures for free roofs (ASCE 7-16 27.3.2 and 30.7) and of the
// speeds mapped.
const (
	maxAngle  = 45.0         // degrees
	maxHeight = 60 * calc.Ft // in
	maxSpeed  = 200.0        // mph
	flatBelow = 7.5          // degrees: below, the row of 0 degrees serves
	bothAbove = 5.0          // degrees: from here to 7.5 both rows are used
	lowRatio  = 0.25         // h/L, ratio
	flatRatio = 0.05         // h/L of a roof below 5 degrees, ratio
	highRatio = 1.0          // h/L, ratio
)

// A Roof is a monoslope free roof.
type Roof struct {
	Angle  float64 // theta, degrees from the horizontal, 0 to 45
	Height float64 // h, mean roof height, in
	Depth  float64 // plan dimension across the ridge, in: out from the house
	Width  float64 // plan dimension along the ridge, in
}

// BetweenRows reports whether two rows of the figures serve, that of 0 degrees and that
// of 7.5, because the figures do not interpolate between them.
func (r Roof) BetweenRows() bool { return bothAbove <= r.Angle && r.Angle < flatBelow }

// A Limit is a reason why the figures do not hold for a roof.
type Limit uint8

// The limits. Those up to TooFast end the method, and the ranges of an input keep them
// out; the others are outside the printed range of h/L, where the figure is used as it
// is and the report says so.
const (
	TooSteep Limit = iota // above 45 degrees
	TooHigh               // above 60 ft
	TooFast               // above 200 mph
	TooTall               // h/L above 1
	TooLow                // h/L below 0.25 on a sloped roof
	TooLong               // h/L below 0.05 on a flat roof
)

// String words the limit.
func (l Limit) String() string {
	return [...]string{
		"roof steeper than 45 degrees: the figures for free roofs end there",
		"roof higher than 60 ft: the figures for free roofs end there",
		"wind faster than 200 mph: beyond the mapped speeds",
		"roof height over a side of the roof is above 1: outside the figures for free roofs, used as they are",
		"roof height over a side of a sloped roof is below 0.25: outside the figures for free roofs, used as they are",
		"roof height over a side of the roof is below 0.05: outside the figures for free roofs, used as they are",
	}[l]
}

// Outside returns the limits that the roof does not keep at a speed in mph. What is not
// a number keeps none of the first three.
func (r Roof) Outside(speed float64) []Limit {
	var out []Limit
	for _, q := range []struct {
		limit Limit
		broke bool
	}{
		{TooSteep, !(0 <= r.Angle && r.Angle <= maxAngle)},
		{TooHigh, !(r.Height <= maxHeight)},
		{TooFast, !(speed <= maxSpeed)},
		{TooTall, r.Height > highRatio*min(r.Depth, r.Width)},
		{TooLow, r.Height < lowRatio*max(r.Depth, r.Width) && r.Angle >= bothAbove},
		{TooLong, r.Height < flatRatio*max(r.Depth, r.Width) && r.Angle < bothAbove},
	} {
		if q.broke {
			out = append(out, q.limit)
		}
	}
	return out
}
