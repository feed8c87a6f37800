package wind

import (
	"math"

	"patiocover/calc"
)

// Coefficients of surface 2E, the end zone of the windward roof of a low-rise building
// (ASCE 7-16 Fig. 28.3-1).
const (
	topSuction  = 1.07 // −GCpf, the larger of both load cases up to 45 degrees, factor
	topPressure = 0.27 // GCpf from 30 degrees, the largest up to 45 degrees, factor
	levelTop    = 20.0 // degrees: up to here the figure presses no windward roof down
)

// An EndZone is the net pressure on a cover by the end zone of a low-rise building on
// top and by some pressure below. Strength level.
type EndZone struct {
	Velocity Velocity // at the roof, envelope procedure
	Angle    float64  // slope, degrees
	Push     float64  // GCpf downward, factor; 0 up to 20 degrees
	Suction  float64  // upward, lb/in², positive
	Pressure float64  // downward, lb/in²
}

// newEndZone returns the net pressures, not less than 16 psf either way, the least of
// components (30.2.2), on the whole roof, the safe side. lift and press are what the
// pressure below adds to the coefficients of the top, upward and downward, factors. The
// velocity pressure is that of the envelope procedure, whatever the site says.
//
// Special case: the pressures are not numbers outside 0 to 45 degrees.
func newEndZone(s Site, angle, lift, press float64) EndZone {
	s.Envelope = true
	z := EndZone{Velocity: NewVelocity(s), Angle: angle, Suction: math.NaN(), Pressure: math.NaN()}
	if angle > levelTop {
		z.Push = topPressure
	}
	if 0 <= angle && angle <= maxAngle {
		z.Suction = max(LeastNet, z.Velocity.Pressure*(topSuction+lift))
		z.Pressure = max(LeastNet, z.Velocity.Pressure*(z.Push+press))
	}
	return z
}

// edition is that of the site.
func (z *EndZone) edition() string { return z.Velocity.Site.Edition.String() }

// writeTop adds the velocity pressure, which has lines of its own, at a place in words,
// and the suction on top.
func (z *EndZone) writeTop(s *calc.Sheet, place string) {
	s.Given("q_h", z.Velocity.Pressure/calc.PSF, "psf", "velocity pressure at the "+place+", envelope procedure")
	s.Given("theta", z.Angle, "deg", "slope, 0 to 45 degrees")
	s.Quoted("GC_top", topSuction, "", z.edition()+" Fig. 28.3-1, surface 2E, upward", calc.Read)
}

// writePush adds the pressure on top.
func (z *EndZone) writePush(s *calc.Sheet) {
	s.Quoted("GC_push", z.Push, "", z.edition()+" Fig. 28.3-1, surface 2E, downward; none up to 20 degrees", calc.Read)
}

// writeNet adds the least pressure and the net pressures; up and down are the sums of
// coefficients, clause is that of the first.
func (z *EndZone) writeNet(s *calc.Sheet, up, clause, down string) {
	s.Quoted("p_min", LeastNet/calc.PSF, "psf", z.edition()+" 30.2.2", calc.Read)
	s.Step("p_up", "max(p_min, q_h * "+up+")", z.Suction/calc.PSF, "psf", z.edition()+" "+clause+", strength level")
	s.Step("p_down", "max(p_min, q_h * "+down+")", z.Pressure/calc.PSF, "psf", z.edition()+" eq. 28.3-1, strength level")
}
