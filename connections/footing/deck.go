package footing

import (
	"math"

	"patiocover/calc"
)

// DeckWidth returns the side or diameter of the footing of a deck post, in, by the area
// rule behind IRC Table R507.3.1: load times tributary area over the allowable pressure,
// all in pounds and inches. It leaves out the weight of the footing and any uplift, and is
// for comparison only.
func DeckWidth(s Shape, load, tributary, allowable float64) float64 {
	area := load * tributary / allowable
	if s == Round {
		return math.Sqrt(area * 4 / math.Pi)
	}
	return math.Sqrt(area)
}

// RoundCapacity returns what a round footing of a diameter, in, bears by its area alone,
// lb: no weight of its own is taken off.
func RoundCapacity(diameter, allowable float64) float64 {
	return Round.area(diameter) * allowable / calc.Lb
}
