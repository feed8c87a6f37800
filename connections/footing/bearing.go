package footing

import "patiocover/calc"

// A Press is what presses a footing on the soil.
type Press struct {
	Force  float64  // P, from the post, the largest of all combinations, lb
	Moment float64  // M, about the bottom from shear that the weight holds, lb-in
	Soil   Pressure // q_a, lb/in²
	Gross  bool     // the weight of the soil that the concrete replaces is not taken off
}

// A Pressure is an allowable pressure with its source.
type Pressure struct {
	Value  float64     // lb/in², or lb/in³ where it grows with depth
	Source string      // where it stands
	Status calc.Status // how it came into the project
}

// A Bearing is the check of the pressure on the soil. The soil gets no increase for wind.
type Bearing struct {
	Block
	Press
	Concrete  float64 // W_c, lb
	Displaced float64 // W_d, weight of the soil whose place the concrete took, lb; 0 where gross
	Total     float64 // N, lb, on the soil beyond what lay on it before
	Modulus   float64 // S, of the base, in³
	Kern      float64 // largest distance of the resultant that keeps the whole base pressed, in
	Offset    float64 // e, of the resultant from the center, in
	Most      float64 // q, largest pressure, lb/in²
	Allowable float64 // q_a, lb/in²; 0 where the base would lift on one side
}

// NewBearing presses the block with p (IBC 2018 1806.2; q = N/A + M/S while the whole
// base stays pressed). A base that would lift on one side has no capacity here.
func NewBearing(p Press, b Block) Bearing {
	c := Bearing{Block: b, Press: p, Concrete: concreteMost * b.Volume(), Allowable: p.Soil.Value}
	c.Kern, c.Modulus = b.Width/6, b.Width*b.Area()/6 // rectangle
	if b.Shape == Round {
		c.Kern, c.Modulus = b.Width/8, b.Width*b.Area()/8 // circle
	}
	if !p.Gross {
		c.Displaced = soilWeight * b.Volume()
	}
	c.Total = p.Force + c.Concrete - c.Displaced
	c.Offset = p.Moment / c.Total
	c.Most = c.Total/b.Area() + p.Moment/c.Modulus
	if !(c.Offset <= c.Kern) {
		c.Allowable = 0
	}
	return c
}

// Ratio is the pressure over the allowable pressure.
func (c Bearing) Ratio() float64 { return calc.Ratio(c.Most/calc.PSF, c.Allowable/calc.PSF) }

// Explain writes the check out.
func (c Bearing) Explain() calc.Check {
	var s calc.Sheet
	s.Given("P", c.Force, "lb", "from the post, the largest of all combinations, with its weight")
	c.lines(&s)
	s.Quoted("gamma_c", concreteMost/calc.PCF, "pcf", "concrete that presses, ASCE 7-16 Table C3.1-2", calc.Recalled)
	s.Step("W_c", "gamma_c * V", c.Concrete, "lb", "weight of the concrete")
	if c.Gross {
		s.Given("W_d", 0, "lb", "the soil dug out is not taken off")
	}
	if !c.Gross {
		s.Given("gamma_s", soilWeight/calc.PCF, "pcf", "soil, unless a report says more, common practice")
		s.Step("W_d", "gamma_s * V", c.Displaced, "lb", "weight of the soil dug out for the concrete")
	}
	s.Step("N", "P + W_c - W_d", c.Total, "lb", "added to the soil")
	if c.Moment == 0 {
		s.Step("q", "N / A", c.Most/calc.PSF, "psf", "centered load")
	}
	if c.Moment != 0 {
		c.bent(&s)
	}
	source := c.Soil.Source + ", no increase for wind"
	if c.Allowable == 0 {
		source += "; 0: the base would lift on one side"
	}
	s.Quoted("q_a", c.Allowable/calc.PSF, "psf", source, c.Soil.Status)
	return s.Check("bearing on the soil", "q", "q_a")
}

// bent writes the pressure under a moment.
func (c Bearing) bent(s *calc.Sheet) {
	part := "6"
	if c.Shape == Round {
		part = "8"
	}
	s.Given("M", c.Moment/calc.LbFt, "lb-ft", "shear at the top times the depth, less what the soil in front takes")
	s.Step("S", "B * A / "+part, c.Modulus/cubicFoot, "ft³", "section modulus of the base")
	s.Step("e", "M / N", c.Offset/calc.Ft, "ft", "of the resultant from the center")
	s.Step("e_k", "B / "+part, c.Kern/calc.Ft, "ft", "kern: beyond it the base lifts on one side")
	s.Step("q", "N / A + M / S", c.Most/calc.PSF, "psf", "largest pressure")
}
