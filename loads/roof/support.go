package roof

import (
	"patiocover/calc"
	"patiocover/loads"
	"patiocover/loads/wind"
)

// A Place is where a rafter with supports between the walls bears.
type Place uint8

// The places.
const (
	AtEave  Place = iota // on the wall, with one bay behind it and the overhang before it
	AtInner              // on a beam or wall between, on one slope of the roof
	AtRidge              // on a beam or wall below the ridge
)

var placeNames = [...]string{AtEave: "eave", AtInner: "interior support", AtRidge: "ridge"}

// String names the place.
func (p Place) String() string { return placeNames[p] }

// Bays are the spans of a rafter beside one of its supports.
type Bays struct {
	Place   Place   // of the support
	Before  float64 // L1, span on the outer side, in; the only one at the eave
	After   float64 // L2, span on the inner side, in; 0 at the eave
	RunsOn  bool    // the rafter runs on over the support, so that it draws more there
	Outside float64 // o, overhang past the wall, in; counts at the eave only
}

// A Support is the wind uplift of a rafter at one of several supports, of allowable
// stress level. A rafter on its two walls alone is a [Tie].
type Support struct {
	Joint    Joint         // site, spacing and dead load; the spans are those of Bays
	Basis    Basis         // coefficients
	Bays     Bays          // the spans beside the support
	Velocity wind.Velocity // at the roof, by the envelope procedure
	Pressure float64       // q, 0.6 of the velocity pressure, lb/in²
	Hold     float64       // 0.6 D, lb/in²
	Near     float64       // w2, net uplift of the slope that meets the wind, lb/in²
	Far      float64       // w3, net uplift beyond the ridge, lb/in²
	Eave     float64       // wo, net uplift of the windward overhang, lb/in²
	Draw     float64       // m, moment of a strip over a support that it runs on over, lb-in per in of width
	Balance  float64       // U, uplift, lb; negative when the dead load holds the roof down
	Uplift   float64       // lb, not negative
}

// NewSupport returns the uplift at a support. At the eave the bay behind counts as
// simply supported, which leaves out what a rafter that runs on relieves there:
// s [w2 L1/2 + wo o (1 + o/2 L1)]. Between the walls it is s [w L1/2 + w' L2/2 + m (1/L1
// + 1/L2)] with m = (w L1³ + w' L2³) / 8 (L1 + L2), the three-moment equation of two
// spans, 0 where rafters end on the support: with equal spans 1.25 w L. Further spans
// would lower it. The bays of an inner support lie on the slope that meets the wind;
// at the ridge one lies beyond it.
//
// Special case: the uplift is not a number when a coefficient, or the velocity
// pressure, is not.
func NewSupport(j Joint, b Basis, bays Bays) Support {
	j.Site.Envelope = true
	u := Support{Joint: j, Basis: b, Bays: bays, Velocity: wind.NewVelocity(j.Site), Hold: loads.HoldsDown * j.Dead}
	u.Pressure = loads.WindASD * u.Velocity.Pressure
	u.Near = u.Pressure*(b.Windward+b.Inside.Factor) - u.Hold
	u.Far = u.Near
	if bays.Place == AtRidge {
		u.Far = u.Pressure*(b.Leeward+b.Inside.Factor) - u.Hold
	}
	u.Eave = u.Pressure*b.Overhang - u.Hold
	l1, l2 := bays.Before, bays.After
	if bays.Place == AtEave {
		o := bays.Outside
		u.Balance = j.Spacing * (u.Near*l1/2 + u.Eave*o*(1+o/(2*l1)))
		u.Uplift = max(0, u.Balance)
		return u
	}
	if bays.RunsOn {
		u.Draw = max(0, (u.Near*l1*l1*l1+u.Far*l2*l2*l2)/(8*(l1+l2)))
	}
	u.Balance = j.Spacing * (u.Near*l1/2 + u.Far*l2/2 + u.Draw*(1/l1+1/l2))
	u.Uplift = max(0, u.Balance)
	return u
}

// Lines writes the uplift up, without the velocity pressure, which has lines of its own.
func (u Support) Lines() []calc.Line {
	var s calc.Sheet
	b, j, edition := u.Basis, u.Joint, u.Joint.Site.Edition.String()
	combination := edition + " 2.4.1, 0.6D + 0.6W"
	s.Given("q_h", u.Velocity.Pressure/calc.PSF, "psf", "velocity pressure at the house roof, envelope procedure")
	s.Given("f_W", loads.WindASD, "", combination)
	s.Given("f_D", loads.HoldsDown, "", combination)
	s.Given("D", j.Dead/calc.PSF, "psf", "least dead load of the house roof, per area of plan")
	s.Given("s", j.Spacing/calc.Ft, "ft", "spacing of the ties, geometry")
	s.Given("L_1", u.Bays.Before/calc.Ft, "ft", "span on the outer side of the support, geometry")
	s.Quoted("g_2", b.Windward, "", b.Source, b.Status)
	s.Quoted("g_i", b.Inside.Factor, "", b.Inside.Source+", "+string(b.Inside.Class), b.Inside.Status)
	s.Step("q", "f_W * q_h", u.Pressure/calc.PSF, "psf", combination)
	s.Step("d", "f_D * D", u.Hold/calc.PSF, "psf", combination)
	s.Step("w_2", "q * (g_2 + g_i) - d", u.Near/calc.PSF, "psf", "slope that meets the wind, "+b.Name)
	if u.Bays.Place == AtEave {
		u.writeEave(&s)
		return s.Lines()
	}
	u.writeInner(&s)
	return s.Lines()
}

// writeEave adds what counts on the wall.
func (u *Support) writeEave(s *calc.Sheet) {
	s.Given("o", u.Bays.Outside/calc.Ft, "ft", "overhang past the wall, geometry")
	s.Quoted("g_o", u.Basis.Overhang, "", u.Basis.Source, u.Basis.Status)
	s.Step("w_o", "q * g_o - d", u.Eave/calc.PSF, "psf", "windward overhang, both faces")
	s.Step("U_0", "s * (w_2 * L_1 / 2 + w_o * o * (1 + o / (2 * L_1)))", u.Balance, "lb", "statics of the first bay")
	s.Step("U", "max(0, U_0)", u.Uplift, "lb", "uplift at the eave, allowable stress level")
}

// writeInner adds what counts between the walls.
func (u *Support) writeInner(s *calc.Sheet) {
	s.Given("L_2", u.Bays.After/calc.Ft, "ft", "span on the inner side of the support, geometry")
	if u.Bays.Place == AtRidge {
		s.Quoted("g_3", u.Basis.Leeward, "", u.Basis.Source, u.Basis.Status)
		s.Step("w_3", "q * (g_3 + g_i) - d", u.Far/calc.PSF, "psf", "slope beyond the ridge")
	}
	if u.Bays.Place == AtInner {
		s.Step("w_3", "w_2", u.Far/calc.PSF, "psf", "the next bay, on the same slope")
	}
	if u.Bays.RunsOn {
		s.Step("m", "max(0, (w_2 * pow(L_1, 3) + w_3 * pow(L_2, 3)) / (8 * (L_1 + L_2)))", u.Draw, "lb",
			"rafter that runs on over the support: three-moment equation, statics")
	}
	if !u.Bays.RunsOn {
		s.Given("m", u.Draw, "lb", "rafters end on the support: no moment over it")
	}
	s.Step("U_0", "s * (w_2 * L_1 / 2 + w_3 * L_2 / 2 + m * (1 / L_1 + 1 / L_2))", u.Balance, "lb", "statics of the two bays")
	s.Step("U", "max(0, U_0)", u.Uplift, "lb", "uplift at the "+u.Bays.Place.String()+", allowable stress level")
}
