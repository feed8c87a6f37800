package wind

import "patiocover/calc"

// Coefficients of the horizontal force on an open roof.
const (
	fasciaWindward = 1.5           // GCpn, ASCE 7-16 27.3.2, for slopes up to 5 degrees
	fasciaLeeward  = 1.0           // GCpn, likewise, away from the roof
	flatSided      = 2.0           // Cf of slender flat-sided members, ASCE 7-16 Fig. 29.4-2
	leastSideways  = 16 * calc.PSF // on the projected area, ASCE 7-16 27.1.5
)

// A Sideways is the horizontal wind force on an open cover in one direction,
// strength level.
type Sideways struct {
	Velocity Velocity
	Angle    float64 // slope, degrees
	Edge     float64 // area of roof edge seen from one side, in²
	Posts    float64 // area of posts and beams seen from one side, in²
	Plan     float64 // plan area whose pressure has a share in this direction, in²; 0 along the ridge
	Net      float64 // largest mean net roof pressure, lb/in², positive
	Rise     float64 // slope, fall over run, ratio
	OnEdge   float64 // lb
	OnPosts  float64 // lb
	OnRoof   float64 // lb, horizontal share of the roof pressure
	Least    float64 // lb, the minimum of open buildings
	Force    float64 // lb
	fascia   bool    // the edges count as inverted parapets, both at once
}

// NewSideways adds the forces up: on the edges as inverted parapets where the slope
// is 5 degrees or less, else as flat-sided members; on the posts; the horizontal
// share of the roof pressure; and not less than 16 psf on all that is seen. The areas
// are in the fields of the argument: Edge, Posts, Plan; Net and Rise go with Plan.
func NewSideways(s Sideways) Sideways {
	q := s.Velocity.Pressure
	s.fascia = s.Angle <= bothAbove
	s.OnEdge = q * Gust * flatSided * s.Edge
	if s.fascia {
		s.OnEdge = q * (fasciaWindward + fasciaLeeward) * s.Edge
	}
	s.OnPosts = q * Gust * flatSided * s.Posts
	s.OnRoof = s.Net * s.Plan * s.Rise
	s.Least = leastSideways * (s.Edge + s.Posts)
	s.Force = max(s.Least, s.OnEdge+s.OnPosts+s.OnRoof)
	return s
}

// Lines writes the force up.
func (s Sideways) Lines() []calc.Line {
	var sheet calc.Sheet
	sheet.Given("q_h", s.Velocity.Pressure/calc.PSF, "psf", "velocity pressure, above")
	sheet.Given("A_edge", s.Edge/calc.SqFt, "ft²", "roof edge seen from one side, geometry")
	sheet.Given("A_post", s.Posts/calc.SqFt, "ft²", "posts and beams seen from one side, geometry")
	sheet.Quoted("C_f", flatSided, "", "ASCE 7-16 Fig. 29.4-2, flat-sided members", calc.Read)
	sheet.Quoted("G", Gust, "", "ASCE 7-16 26.11.1", calc.Read)
	if s.fascia {
		sheet.Quoted("GC_w", fasciaWindward, "", "ASCE 7-16 27.3.2, windward fascia", calc.Read)
		sheet.Quoted("GC_l", fasciaLeeward, "", "ASCE 7-16 27.3.2, leeward fascia", calc.Read)
		sheet.Step("F_edge", "q_h * (GC_w + GC_l) * A_edge", s.OnEdge, "lb", "ASCE 7-16 27.3.2")
	} else {
		sheet.Step("F_edge", "q_h * G * C_f * A_edge", s.OnEdge, "lb", "ASCE 7-16 eq. 29.4-1")
	}
	sheet.Step("F_post", "q_h * G * C_f * A_post", s.OnPosts, "lb", "ASCE 7-16 eq. 29.4-1")
	sheet.Given("p_net", s.Net/calc.PSF, "psf", "largest mean net roof pressure")
	sheet.Given("A_plan", s.Plan/calc.SqFt, "ft²", "plan area whose pressure leans this way; 0 along the ridge")
	sheet.Given("r", s.Rise, "", "slope, fall over run")
	sheet.Step("F_roof", "p_net * A_plan * r", s.OnRoof, "lb", "horizontal share of the pressure, geometry")
	sheet.Quoted("p_min", leastSideways/calc.PSF, "psf", "ASCE 7-16 27.1.5", calc.Read)
	sheet.Step("F_min", "p_min * (A_edge + A_post)", s.Least, "lb", "ASCE 7-16 27.1.5")
	sheet.Step("F", "max(F_min, F_edge + F_post + F_roof)", s.Force, "lb", "strength level")
	return sheet.Lines()
}
