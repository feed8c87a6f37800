package snow

import (
	"math"

	"patiocover/calc"
	"patiocover/loads"
)

// slideReach is how far from the eave above sliding snow is spread, in (ASCE 7-16 7.9,
// read in a summary of ASCE 7-22 7.9).
const slideReach = 15 * calc.Ft

// Slopes above which snow slides, in of rise per in (ASCE 7-16 7.9, from memory).
const (
	slipperySlides = 0.25 * calc.In / calc.Ft // ¼ in 12
	roughSlides    = 2 * calc.In / calc.Ft    // 2 in 12
)

// An Above is the roof of the house above the cover, where it falls towards the cover.
type Above struct {
	Flat        float64 // pf of that roof, lb/in²
	EaveToRidge float64 // W of that roof, horizontal, in
	Angle       float64 // its slope, rad
	Slippery    bool    // metal, membrane or other smooth surface
}

// A Sliding is the snow that slides from the roof above onto the cover. It is added to
// the balanced snow, without taking off for snow that lies there, and not to drift,
// partial loading, rain on snow or the least load.
type Sliding struct {
	Edition  loads.Edition // of the rules
	Above    Above         // the roof that the snow leaves
	Depth    float64       // depth of the cover, in
	Gap      float64       // s, between the eave above and the near edge of the cover on plan, in
	Reason   Reason        // Found, NoSnow, TooFar, DoesNotSlide, or a refusal
	Line     float64       // whole sliding snow per length of eave, lb/in
	Reach    float64       // of the snow beyond the gap, in
	Loaded   float64       // length of the cover under it, from the near edge, in
	Pressure float64       // on that length, lb/in² of plan
	Share    float64       // part of the line load that the cover carries, ratio
}

// NewSliding returns the sliding snow 0.4 pf W over 15 ft from the eave above (ASCE 7
// 7.9). A cover that is not as deep takes that part of it that lands there; a gap takes
// the part that falls into it, whatever the height of the fall.
//
// Special cases: no load where that roof is not steep enough; Line, Pressure and Share
// are not numbers where a number is missing.
func NewSliding(e loads.Edition, above Above, depth, gap float64) Sliding {
	s := Sliding{Edition: e, Above: above, Depth: depth, Gap: gap, Reason: Found}
	s.Reach = slideReach - gap
	switch {
	case !positive(above.Flat) || !positive(above.EaveToRidge) || !positive(depth) || !positive(gap),
		!(above.Angle >= 0 && above.Angle < math.Pi/2):
		s.Reason = NoGeometry
		s.Line, s.Pressure, s.Share = math.NaN(), math.NaN(), math.NaN()
		return s
	case above.Flat == 0:
		s.Reason = NoSnow
	case math.Tan(above.Angle) <= above.limit():
		s.Reason = DoesNotSlide
	case s.Reach <= 0:
		s.Reason = TooFar
	}
	if s.Reason != Found {
		return s
	}
	s.Line = 0.4 * above.Flat * above.EaveToRidge // 7.9
	s.Pressure = s.Line / slideReach
	s.Loaded = min(depth, s.Reach)
	s.Share = s.Loaded / slideReach
	return s
}

// limit is the slope above which snow slides off, rise over run.
func (a Above) limit() float64 {
	if a.Slippery {
		return slipperySlides
	}
	return roughSlides
}

// Lines writes the sliding snow up. A refusal has no lines.
func (s Sliding) Lines() []calc.Line {
	if !s.Reason.Known() {
		return nil
	}
	var l calc.Sheet
	clause := s.Edition.String() + " 7.9"
	l.Given("p_fu", s.Above.Flat/calc.PSF, "psf", "flat roof snow of the roof above")
	l.Given("theta_u", s.Above.Angle*180/math.Pi, "deg", "slope of the roof above, geometry")
	l.Quoted("r_0", s.Above.limit()*calc.Ft, "in/ft", clause+", slope from which snow slides", calc.Recalled)
	l.Step("r_u", "12 * tand(theta_u)", math.Tan(s.Above.Angle)*calc.Ft, "in/ft", "geometry")
	if s.Reason != Found {
		l.Step("p_sl", "0", 0, "psf", clause+": "+s.Reason.String())
		return l.Lines()
	}
	l.Given("W_u", s.Above.EaveToRidge/calc.Ft, "ft", "eave to ridge of the roof above, geometry")
	l.Given("d", s.Depth/calc.Ft, "ft", "depth of the cover, geometry")
	l.Given("s", s.Gap/calc.Ft, "ft", "gap between eave and cover, geometry")
	l.Quoted("b", slideReach/calc.Ft, "ft", clause+", in a summary", calc.Read)
	l.Step("S_L", "0.4 * p_fu * W_u", s.Line/calc.PLF, "plf", clause)
	l.Step("p_sl", "S_L / b", s.Pressure/calc.PSF, "psf", clause+", on top of the balanced snow")
	l.Step("w_s", "min(d, b - s)", s.Loaded/calc.Ft, "ft", clause)
	l.Step("k_s", "w_s / b", s.Share, "", clause+", part that lands on the cover")
	return l.Lines()
}
