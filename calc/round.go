package calc

import "math"

// slack is the relative error of the arithmetic that must not push a value that
// sits on a step over to the next one.
const slack = 1e-9

// RoundUp returns the smallest multiple of step that is not below x: for demands
// and for ratings that must be reached. step is positive.
func RoundUp(x, step float64) float64 { return step * math.Ceil(x/step-slack) }

// RoundDown returns the largest multiple of step that is not above x: for
// capacities. step is positive.
func RoundDown(x, step float64) float64 { return step * math.Floor(x/step+slack) }
