package wind

import (
	"math"
	"strings"

	"patiocover/calc"
	"patiocover/loads"
)

// Net are the net coefficients of an attached canopy as the user read them from the
// figure. The figure plots them by effective wind area and by the height of the canopy
// over that of the eave; this package does not have it and supplies none.
type Net struct {
	Up     float64 // GCpn upward, factor, not positive
	Down   float64 // GCpn downward, factor, not negative
	Source string  // the user's own words for where they stand; without it they do not count
}

// usable reports whether the coefficients may be used.
func (n *Net) usable() bool {
	return n.Up <= 0 && n.Down >= 0 && strings.TrimSpace(n.Source) != ""
}

// A Canopy is the net pressure on a canopy attached to the wall of a house, strength
// level.
type Canopy struct {
	Velocity Velocity // at the mean roof height of the house
	Net      Net      // as given
	Pressure float64  // downward, lb/in²
	Suction  float64  // upward, lb/in², positive
}

// NewCanopy returns p = qh GCpn on a nearly level canopy on the wall of a building up to
// 60 ft (ASCE 7-16 30.11, 7-22 30.9), not less than 16 psf either way. The height of
// the site is the mean roof height of the house. There is no floor of exposure B.
//
// Special case: false, and pressures that are not numbers, for coefficients without a
// source, with the wrong sign or that are not finite, and for a house above 60 ft.
func NewCanopy(s Site, n Net) (Canopy, bool) {
	s.Envelope = false
	c := Canopy{Velocity: NewVelocity(s), Net: n, Pressure: math.NaN(), Suction: math.NaN()}
	if !n.usable() || !(s.Height <= maxHeight) {
		return c, false
	}
	c.Pressure = max(LeastNet, c.Velocity.Pressure*n.Down)
	c.Suction = max(LeastNet, c.Velocity.Pressure*-n.Up)
	known := c.Pressure+c.Suction < math.Inf(1)
	if !known {
		c.Pressure, c.Suction = math.NaN(), math.NaN()
	}
	return c, known
}

// canopyClause is the section of attached canopies, which the 2022 edition moved.
func canopyClause(e loads.Edition) string {
	if e == loads.ASCE722 {
		return "ASCE 7-22 30.9"
	}
	return "ASCE 7-16 30.11"
}

// View is the canopy as one way to see a cover.
func (c Canopy) View() View {
	return newView(AttachedCanopy, c.Suction, c.Pressure,
		canopyClause(c.Velocity.Site.Edition)+", coefficients from the user")
}

// Lines writes the pressures up, without the velocity pressure, which has lines of its
// own.
func (c Canopy) Lines() []calc.Line {
	var s calc.Sheet
	clause := canopyClause(c.Velocity.Site.Edition)
	s.Given("q_h", c.Velocity.Pressure/calc.PSF, "psf", "velocity pressure at the mean roof height of the house, above")
	s.Given("GC_up", c.Net.Up, "", c.Net.Source)
	s.Given("GC_down", c.Net.Down, "", c.Net.Source)
	s.Quoted("p_min", LeastNet/calc.PSF, "psf", c.Velocity.Site.Edition.String()+" 30.2.2", calc.Read)
	s.Step("p_up", "max(p_min, -q_h * GC_up)", c.Suction/calc.PSF, "psf", clause+", upward, strength level")
	s.Step("p_down", "max(p_min, q_h * GC_down)", c.Pressure/calc.PSF, "psf", clause+", downward, strength level")
	return s.Lines()
}
