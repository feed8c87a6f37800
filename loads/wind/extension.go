package wind

import (
	"math"

	"patiocover/calc"
)

// Coefficients of the end zone of a low-rise building on a windward overhang (ASCE 7-16
// Fig. 28.3-1 and 28.3.3, the second read in two public programs).
const (
	topSuction  = 1.07 // −GCpf of surface 2E, the larger of both load cases up to 45 degrees, factor
	soffit      = 0.7  // GCp below, factor
	topPressure = 0.27 // GCpf of surface 2E from 30 degrees, the largest up to 45 degrees, factor
	levelTop    = 20.0 // degrees: up to here the figure presses no windward roof down
)

// An Extension is the net pressure on a cover taken as an overhang of the house roof:
// its rafters are those of the house, or lie in the same plane without a gap. Strength
// level.
type Extension struct {
	Velocity Velocity // at the mean roof height of the house, envelope procedure
	Angle    float64  // slope, degrees
	Push     float64  // GCpf downward, factor; 0 up to 20 degrees
	Suction  float64  // upward, lb/in², positive
	Pressure float64  // downward, lb/in²
}

// NewExtension returns the net pressures: on top −1.07 and below 0.7 together upward;
// downward, from 20 degrees, 0.27. Neither is less than 16 psf, the least of
// components (30.2.2), the safe side for a whole roof. The velocity pressure is that
// of the envelope procedure, whatever the site says.
//
// Special case: the pressures are not numbers outside 0 to 45 degrees.
func NewExtension(s Site, angle float64) Extension {
	s.Envelope = true
	e := Extension{Velocity: NewVelocity(s), Angle: angle, Suction: math.NaN(), Pressure: math.NaN()}
	if angle > levelTop {
		e.Push = topPressure
	}
	if 0 <= angle && angle <= maxAngle {
		e.Suction = max(leastNet, e.Velocity.Pressure*(topSuction+soffit))
		e.Pressure = max(leastNet, e.Velocity.Pressure*e.Push)
	}
	return e
}

// View is the overhang as one way to see a cover.
func (e Extension) View() View {
	return newView(RoofExtension, e.Suction, e.Pressure, e.Velocity.Site.Edition.String()+" 28.3.3")
}

// Lines writes the pressures up, without the velocity pressure, which has lines of its
// own.
func (e Extension) Lines() []calc.Line {
	var s calc.Sheet
	clause := e.Velocity.Site.Edition.String() + " "
	s.Given("q_h", e.Velocity.Pressure/calc.PSF, "psf", "velocity pressure at the house roof, envelope procedure")
	s.Given("theta", e.Angle, "deg", "slope, 0 to 45 degrees")
	s.Quoted("GC_top", topSuction, "", clause+"Fig. 28.3-1, surface 2E, upward", calc.Read)
	s.Quoted("GC_sof", soffit, "", clause+"28.3.3, below the overhang", calc.Read)
	s.Quoted("GC_push", e.Push, "", clause+"Fig. 28.3-1, surface 2E, downward; none up to 20 degrees", calc.Read)
	s.Quoted("p_min", leastNet/calc.PSF, "psf", clause+"30.2.2", calc.Read)
	s.Step("p_up", "max(p_min, q_h * (GC_top + GC_sof))", e.Suction/calc.PSF, "psf", clause+"28.3.3, strength level")
	s.Step("p_down", "max(p_min, q_h * GC_push)", e.Pressure/calc.PSF, "psf", clause+"eq. 28.3-1, strength level")
	return s.Lines()
}
