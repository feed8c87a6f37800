package calc

import "math"

// slack is the part of a step, dimensionless, by which the arithmetic may miss a
// value that sits on a step without being pushed over to the next one.
const slack = 1e-9

// RoundUp returns the smallest multiple of step that is not below x, within a
// billionth of a step: for demands and for ratings that must be reached. step is
// positive and in the unit of x. Whatever is above zero, however little, is
// rounded up to at least one step.
func RoundUp(x, step float64) float64 {
	n := x / step
	return step * math.Ceil(n-slack*min(1, math.Abs(n)))
}

// RoundDown returns the largest multiple of step that is not above x, within a
// billionth of a step: for capacities. step is positive and in the unit of x.
func RoundDown(x, step float64) float64 {
	n := x / step
	return step * math.Floor(n+slack*min(1, math.Abs(n)))
}
