package roof

import (
	"math"

	"patiocover/calc"
	"patiocover/loads/wind"
)

// A Part is a piece of a house roof: a panel of sheathing, a rafter, a fastener.
type Part struct {
	Figures  Figures // edition of the figures
	Shape    Shape   // of the roof
	Angle    float64 // theta, slope, degrees
	Zone     Zone    // where it lies
	Overhang bool    // on the overhang past the wall: net of top and under side
	Area     float64 // effective wind area, in²
}

// A Component is the wind pressure on a part of a house roof, of strength level.
type Component struct {
	Part     Part          // as given
	Inside   Inside        // GCpi; not counted on an overhang
	Velocity wind.Velocity // at the roof
	Down     float64       // GCp downward, factor; not a number without a curve for it
	Up       float64       // GCp upward, factor, negative
	Pressure float64       // downward, lb/in²; not a number without a curve for it
	Suction  float64       // upward, lb/in², positive
	down, up reading
}

// NewComponent returns the pressures p = q (GCp − GCpi) on a part (ASCE 7-16 eq.
// 30.3-1), not less than 16 psf either way. On an overhang the figure gives the net
// suction alone. The velocity pressure of 7-10 has the floor of exposure B, that of
// 7-16 and 7-22 has not (chapter 30), whatever the site says.
//
// Special case: false, and a suction that is not a number, where no figure is known for
// the edition, shape, slope or zone, where the area is not positive, and where the
// class of enclosure or the exposure is unknown.
func NewComponent(s wind.Site, p Part, class Enclosure) (Component, bool) {
	s.Envelope = p.Figures == Figures710
	inside, _ := Internal(class)
	c := Component{Part: p, Inside: inside, Velocity: wind.NewVelocity(s)}
	c.up = read(p.row(p.Zone, false), p.Area)
	c.Up = c.up.factor
	internal := inside.Factor
	if p.Overhang {
		internal = 0
	}
	q := c.Velocity.Pressure
	c.Suction = max(wind.LeastNet, q*(internal-c.Up))
	c.down = read(p.row(allZones, true), p.Area)
	c.Down = c.down.factor
	c.Pressure = max(wind.LeastNet, q*(c.Down+internal))
	return c, !math.IsNaN(c.Suction)
}

// lift is the coefficient of the suction without the internal one, factor, positive
// upward: that of the figure, or that of the least pressure where it governs.
func (c *Component) lift() float64 {
	internal := c.Inside.Factor
	if c.Part.Overhang {
		internal = 0
	}
	if least := wind.LeastNet/c.Velocity.Pressure - internal; least > -c.Up {
		return least
	}
	return -c.Up
}

// row finds the row of zones.csv of the part, or −1.
func (p *Part) row(zone Zone, down bool) int {
	for i := range zoneRows {
		z := &zoneRows[i]
		if z.zone == zone && z.down == down && z.overhang == p.Overhang && z.holds(p.Figures, p.Shape, p.Angle) {
			return i
		}
	}
	return -1
}

// source names the figure of the suction.
func (c *Component) source() string {
	if c.up.row < 0 {
		return c.Part.Figures.String() + ", no figure is known"
	}
	source := zoneRows[c.up.row].source + ", " + c.zone()
	if c.lift() > -c.Up {
		source += ", raised to 16 psf, ASCE 7-16 30.2.2"
	}
	return source
}

// status is how the row of the suction is known.
func (c *Component) status() calc.Status {
	if c.up.row < 0 {
		return calc.Recalled
	}
	return zoneRows[c.up.row].status
}

// zone words where the part lies.
func (c *Component) zone() string {
	if c.Part.Overhang {
		return "zone " + string(c.Part.Zone) + " of an overhang"
	}
	return "zone " + string(c.Part.Zone)
}

// Lines writes the pressures up, without the velocity pressure, which has lines of its
// own.
func (c Component) Lines() []calc.Line {
	var s calc.Sheet
	edition := c.Part.Figures.String()
	equation := edition + " eq. 30.3-1"
	if c.Part.Figures == Figures710 {
		equation = edition + " eq. 30.4-1"
	}
	s.Given("q_h", c.Velocity.Pressure/calc.PSF, "psf", "velocity pressure at the house roof, above")
	s.Given("A_e", c.Part.Area/calc.SqFt, "ft²", "effective wind area, "+edition+" 26.2")
	s.Quoted("p_min", wind.LeastNet/calc.PSF, "psf", edition+" 30.2.2", calc.Read)
	c.up.write(&s, "GC_up", c.zone())
	if c.Part.Overhang {
		s.Step("p_up", "max(p_min, -q_h * GC_up)", c.Suction/calc.PSF, "psf", equation+", net of both faces, strength level")
		return s.Lines()
	}
	s.Quoted("GC_i", c.Inside.Factor, "", c.Inside.Source+", "+string(c.Inside.Class), c.Inside.Status)
	s.Step("p_up", "max(p_min, q_h * (GC_i - GC_up))", c.Suction/calc.PSF, "psf", equation+", upward, strength level")
	if c.down.row < 0 {
		return s.Lines()
	}
	c.down.write(&s, "GC_down", "all zones")
	s.Step("p_down", "max(p_min, q_h * (GC_down + GC_i))", c.Pressure/calc.PSF, "psf", equation+", downward, strength level")
	return s.Lines()
}
