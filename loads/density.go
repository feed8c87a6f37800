package loads

import "patiocover/calc"

// densityPCF is the density of wood in lb/ft³ (NDS Supplement 2018 3.1.3). The form
// is from memory; its results agree with every printed weight that was read.
func densityPCF(gravity, moisture float64) float64 {
	return 62.4 * gravity / (1 + 0.009*gravity*moisture) * (1 + moisture/100)
}

// Density returns the density of wood, lb/in³, from its specific gravity G on
// oven-dry weight and volume and its moisture content in percent (NDS Supplement
// 2018 3.1.3). It rises with both.
func Density(gravity, moisture float64) float64 {
	return densityPCF(gravity, moisture) * calc.PCF
}

// DensityLines writes up the density that Density returns, in lb/ft³.
func DensityLines(gravity, moisture float64) []calc.Line {
	var s calc.Sheet
	s.Given("G", gravity, "", "specific gravity, oven-dry, NDS Supplement 2018")
	s.Given("MC", moisture, "%", "moisture content")
	s.Quoted("gamma_w", 62.4, "pcf", "density of water", calc.Read)
	s.Step("rho", "gamma_w * G / (1 + 0.009 * G * MC) * (1 + MC / 100)",
		densityPCF(gravity, moisture), "pcf", "NDS Supplement 2018 3.1.3")
	return s.Lines()
}
