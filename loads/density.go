package loads

import "patiocover/calc"

// Moisture of wood for its weight, percent (common practice): high where weight acts
// down, low where it resists uplift.
const (
	MoistureHigh = 19
	MoistureLow  = 10
)

// Density returns the density of wood, lb/in³, from its specific gravity G on
// oven-dry weight and volume and its moisture content in percent (NDS Supplement
// 2018 3.1.3; the form is from memory, its results agree with every printed weight that
// was read). It rises with both.
func Density(gravity, moisture float64) float64 {
	return 62.4 * gravity / (1 + 0.009*gravity*moisture) * (1 + moisture/100) * calc.PCF
}
