package wind

import (
	"math"

	"patiocover/calc"
)

// insidePressure is GCpi of a partially enclosed building, which acts either way (ASCE
// 7-16 Table 26.13-1), factor.
const insidePressure = 0.55

// An Enclosed is the net pressure on the roof of a cover whose sides screens or walls
// close in part: the end zone of a low-rise building above, the pressure of a partially
// enclosed one below. Strength level.
type Enclosed struct {
	Velocity Velocity // at the roof, envelope procedure
	Angle    float64  // slope, degrees
	Push     float64  // GCpf downward, factor; 0 up to 20 degrees
	Suction  float64  // upward, lb/in², positive
	Pressure float64  // downward, lb/in²
}

// NewEnclosed returns the net pressures q (1.07 + 0.55) upward and q (GCpf + 0.55)
// downward (ASCE 7-16 28.3), not less than 16 psf either way, on the whole roof, the
// safe side. The velocity pressure is that of the envelope procedure.
//
// Special case: the pressures are not numbers outside 0 to 45 degrees.
func NewEnclosed(s Site, angle float64) Enclosed {
	s.Envelope = true
	e := Enclosed{Velocity: NewVelocity(s), Angle: angle, Suction: math.NaN(), Pressure: math.NaN()}
	if angle > levelTop {
		e.Push = topPressure
	}
	if 0 <= angle && angle <= maxAngle {
		e.Suction = max(leastNet, e.Velocity.Pressure*(topSuction+insidePressure))
		e.Pressure = max(leastNet, e.Velocity.Pressure*(e.Push+insidePressure))
	}
	return e
}

// Lines writes the pressures up, without the velocity pressure, which has lines of its
// own.
func (e Enclosed) Lines() []calc.Line {
	var s calc.Sheet
	clause := e.Velocity.Site.Edition.String() + " "
	s.Given("q_h", e.Velocity.Pressure/calc.PSF, "psf", "velocity pressure at the roof, envelope procedure")
	s.Given("theta", e.Angle, "deg", "slope, 0 to 45 degrees")
	s.Quoted("GC_top", topSuction, "", clause+"Fig. 28.3-1, surface 2E, upward", calc.Read)
	s.Quoted("GC_push", e.Push, "", clause+"Fig. 28.3-1, surface 2E, downward; none up to 20 degrees", calc.Read)
	s.Quoted("GC_i", insidePressure, "", clause+"Table 26.13-1, partially enclosed", calc.Read)
	s.Quoted("p_min", leastNet/calc.PSF, "psf", clause+"30.2.2", calc.Read)
	s.Step("p_up", "max(p_min, q_h * (GC_top + GC_i))", e.Suction/calc.PSF, "psf", clause+"eq. 28.3-1, strength level")
	s.Step("p_down", "max(p_min, q_h * (GC_push + GC_i))", e.Pressure/calc.PSF, "psf", clause+"eq. 28.3-1, strength level")
	return s.Lines()
}
