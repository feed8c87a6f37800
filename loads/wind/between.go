package wind

import "patiocover/calc"

// A line of a figure is interpolated between two of its rows.
type between struct {
	low, high float64 // theta of the rows, degrees
	theta     float64 // of the roof, degrees
	source    string
	status    calc.Status
}

// at returns the coefficient at the angle of the roof. On a row it is that of the row.
func (b between) at(low, high float64) float64 {
	if b.low == b.high {
		return low
	}
	return low + (b.theta-b.low)/(b.high-b.low)*(high-low)
}

// angles writes the angles that step uses.
func (b between) angles(s *calc.Sheet) {
	s.Given("theta", b.theta, "deg", "slope")
	s.Quoted("theta_1", b.low, "deg", b.source+", row below", b.status)
	s.Quoted("theta_2", b.high, "deg", b.source+", row above", b.status)
}

// step writes one coefficient with the symbol, its rows and the line between them.
func (b between) step(s *calc.Sheet, symbol string, low, high, x float64) {
	s.Quoted(symbol+"_1", low, "", b.source+", row below", b.status)
	s.Quoted(symbol+"_2", high, "", b.source+", row above", b.status)
	s.Step(symbol, symbol+"_1 + (theta - theta_1) / (theta_2 - theta_1) * ("+symbol+"_2 - "+symbol+"_1)",
		x, "", b.source+", linear between rows")
}

// basis writes what every net pressure starts from.
func (v Velocity) basis(s *calc.Sheet) {
	s.Given("q_h", v.Pressure/calc.PSF, "psf", "velocity pressure, above")
	s.Quoted("G", Gust, "", v.Site.Edition.String()+" 26.11.1", calc.Read)
}
