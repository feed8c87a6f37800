package wind

import "patiocover/calc"

// Coefficients of the horizontal force on an open roof.
const (
	fasciaWindward = 1.5           // GCpn, ASCE 7-16 27.3.2 and 27.3.4, for slopes up to 5 degrees
	fasciaLeeward  = 1.0           // GCpn, likewise, away from the roof
	flatSided      = 2.0           // Cf of slender flat-sided members, ASCE 7-16 Fig. 29.4-2
	leastSideways  = 16 * calc.PSF // on the projected area, ASCE 7-16 27.1.5
)

// A Sideways is the horizontal wind force on an open cover in one direction,
// strength level.
type Sideways struct {
	Velocity Velocity // at the roof
	Angle    float64  // slope, degrees
	Edge     float64  // area of roof edge seen from one side, in²
	Posts    float64  // area of posts and beams seen from one side, in²
	Plan     float64  // plan area whose pressure has a share in this direction, in²; 0 along the ridge
	Net      float64  // largest mean net roof pressure, lb/in², positive
	Rise     float64  // slope, fall over run, ratio
	OnEdge   float64  // lb
	OnPosts  float64  // lb
	OnRoof   float64  // lb, horizontal share of the roof pressure
	Seen     float64  // Af, area projected on a plane square to the wind, in²
	Least    float64  // lb, the minimum of open buildings
	Force    float64  // lb
	low      bool     // the slope is within the rule of the fascia
}

// NewSideways adds the forces up: on the windward and the leeward edge at once, as
// inverted parapets; on the posts; the horizontal share of the roof pressure; and not
// less than 16 psf on all that is seen. The areas are in the fields of the argument:
// Edge, Posts, Plan; Net and Rise go with Plan.
//
// The rule of the fascia ends at 5 degrees. Above, the same coefficients are carried
// on, because both edges still stand in the wind and one flat-sided member would
// come to less (1.7 for 2.5).
func NewSideways(s Sideways) Sideways {
	q := s.Velocity.Pressure
	s.low = s.Angle <= bothAbove
	s.OnEdge = q * (fasciaWindward + fasciaLeeward) * s.Edge
	s.OnPosts = s.Velocity.Net(flatSided) * s.Posts
	s.OnRoof = s.Net * s.Plan * s.Rise
	s.Seen = s.Edge + s.Posts + s.Plan*s.Rise
	s.Least = leastSideways * s.Seen
	s.Force = max(s.Least, s.OnEdge+s.OnPosts+s.OnRoof)
	return s
}

// OnFlatSides returns the wind pressure on a slender flat-sided member such as a post,
// lb/in² of the area square to the wind, strength level (ASCE 7-16 eq. 29.4-1).
func (v Velocity) OnFlatSides() float64 { return v.Net(flatSided) }

// Lines writes the force up.
func (s Sideways) Lines() []calc.Line {
	var sheet calc.Sheet
	clause := s.Velocity.Site.Edition.String() + " "
	fascia := clause + "27.3.2"
	if !s.low {
		fascia += ", carried on above 5 degrees, more than one flat-sided member"
	}
	sheet.Given("q_h", s.Velocity.Pressure/calc.PSF, "psf", "velocity pressure, above")
	sheet.Given("A_edge", s.Edge/calc.SqFt, "ft²", "roof edge seen from one side, geometry")
	sheet.Given("A_post", s.Posts/calc.SqFt, "ft²", "posts and beams seen from one side, geometry")
	sheet.Quoted("C_f", flatSided, "", clause+"Fig. 29.4-2, flat-sided members", calc.Read)
	sheet.Quoted("G", Gust, "", clause+"26.11.1", calc.Read)
	sheet.Quoted("GC_w", fasciaWindward, "", fascia+", windward edge", calc.Read)
	sheet.Quoted("GC_l", fasciaLeeward, "", fascia+", leeward edge", calc.Read)
	sheet.Step("F_edge", "q_h * (GC_w + GC_l) * A_edge", s.OnEdge, "lb", fascia)
	sheet.Step("F_post", "q_h * G * C_f * A_post", s.OnPosts, "lb", clause+"eq. 29.4-1")
	sheet.Given("p_net", s.Net/calc.PSF, "psf", "largest mean net roof pressure")
	sheet.Given("A_plan", s.Plan/calc.SqFt, "ft²", "plan area whose pressure leans this way; 0 along the ridge")
	sheet.Given("r", s.Rise, "", "slope, fall over run")
	sheet.Step("F_roof", "p_net * A_plan * r", s.OnRoof, "lb", "horizontal share of the pressure, geometry")
	sheet.Step("A_f", "A_edge + A_post + A_plan * r", s.Seen/calc.SqFt, "ft²", clause+"27.1.5, area square to the wind")
	sheet.Quoted("p_min", leastSideways/calc.PSF, "psf", clause+"27.1.5", calc.Read)
	sheet.Step("F_min", "p_min * A_f", s.Least, "lb", clause+"27.1.5")
	sheet.Step("F", "max(F_min, F_edge + F_post + F_roof)", s.Force, "lb", "strength level")
	return sheet.Lines()
}
