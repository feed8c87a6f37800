package roof

import (
	"patiocover/calc"
	"patiocover/loads"
	"patiocover/loads/wind"
)

// A Joint is one rafter on the wall of a house and what stands on it.
type Joint struct {
	Site     wind.Site // at the mean height of the house roof
	Span     float64   // L, wall to wall on plan, in
	Overhang float64   // o, past each wall on plan, in
	Spacing  float64   // s, of the ties along the wall, in
	Dead     float64   // D, least dead load of roof and ceiling, lb/in² of plan
}

// TableJoint returns the joint that IRC 2018 Table R802.11 stands for. exposure is B
// or C, speed V in mph; span and spacing are in inches.
func TableJoint(exposure string, speed, span, spacing float64) Joint {
	return Joint{
		Site: wind.Site{
			Edition: loads.ASCE716, Exposure: exposure, Speed: speed, Hill: 1, Elevation: 1, Height: tableHeight,
		},
		Span: span, Overhang: tableOverhang, Spacing: spacing, Dead: tableDead,
	}
}

// A Tie is the wind uplift of one joint at the wall that the wind meets, of allowable
// stress level: 0.6D + 0.6W. Older handouts take two thirds of 10 psf: never mix the two.
type Tie struct {
	Joint    Joint         // as given
	Basis    Basis         // coefficients
	Velocity wind.Velocity // at the roof, by the envelope procedure
	Pressure float64       // q, 0.6 of the velocity pressure, lb/in²
	Hold     float64       // 0.6 D, lb/in²
	Near     float64       // w2, net uplift of the windward half, lb/in²
	Far      float64       // w3, net uplift of the leeward half, lb/in²
	Eave     float64       // wo, net uplift of the windward overhang, lb/in²
	Back     float64       // wl, net uplift of the leeward overhang, lb/in²
	Moment   float64       // of all about the far wall, lb-in
	Balance  float64       // U, uplift, lb; negative when the dead load holds the roof down
	Uplift   float64       // lb, not negative
}

// NewTie returns the uplift of a rafter, simply supported on two walls, about the far
// wall: U = s [w2 (L/2)(3L/4) + w3 (L/2)(L/4) + wo o (L + o/2) − wl o²/2] / L. The
// overhang that does not meet the wind has no pressure below it. The velocity pressure
// is that of the envelope procedure, whose exposure B has a floor, whatever the site
// says. Wind may come from either side, so that every tie takes this uplift.
//
// Special case: the uplift is not a number when a coefficient, or the velocity
// pressure, is not, so that nothing passes by it.
func NewTie(j Joint, b Basis) Tie {
	j.Site.Envelope = true
	t := Tie{Joint: j, Basis: b, Velocity: wind.NewVelocity(j.Site), Hold: loads.HoldsDown * j.Dead}
	t.Pressure = loads.WindASD * t.Velocity.Pressure
	t.Near = t.Pressure*(b.Windward+b.Inside.Factor) - t.Hold
	t.Far = t.Pressure*(b.Leeward+b.Inside.Factor) - t.Hold
	t.Eave = t.Pressure*b.Overhang - t.Hold
	t.Back = t.Pressure*b.Leeward - t.Hold
	l, o := j.Span, j.Overhang
	t.Moment = j.Spacing * (t.Near*(l/2)*(3*l/4) + t.Far*(l/2)*(l/4) + t.Eave*o*(l+o/2) - t.Back*o*o/2)
	t.Balance = t.Moment / l
	t.Uplift = max(0, t.Balance)
	return t
}

// Lines writes the uplift up, without the velocity pressure, which has lines of its own.
func (t Tie) Lines() []calc.Line {
	var s calc.Sheet
	b, j := t.Basis, t.Joint
	edition := j.Site.Edition.String()
	combination := edition + " 2.4.1, 0.6D + 0.6W"
	s.Given("q_h", t.Velocity.Pressure/calc.PSF, "psf", "velocity pressure at the house roof, envelope procedure")
	s.Given("f_W", loads.WindASD, "", combination)
	s.Given("f_D", loads.HoldsDown, "", combination)
	s.Given("D", j.Dead/calc.PSF, "psf", "least dead load of the house roof, per area of plan")
	s.Given("L", j.Span/calc.Ft, "ft", "wall to wall, geometry")
	s.Given("o", j.Overhang/calc.Ft, "ft", "overhang past each wall, geometry")
	s.Given("s", j.Spacing/calc.Ft, "ft", "spacing of the ties, geometry")
	s.Quoted("g_2", b.Windward, "", b.Source, b.Status)
	s.Quoted("g_3", b.Leeward, "", b.Source, b.Status)
	s.Quoted("g_o", b.Overhang, "", b.Source, b.Status)
	s.Quoted("g_i", b.Inside.Factor, "", b.Inside.Source+", "+string(b.Inside.Class), b.Inside.Status)
	s.Step("q", "f_W * q_h", t.Pressure/calc.PSF, "psf", combination)
	s.Step("d", "f_D * D", t.Hold/calc.PSF, "psf", combination)
	s.Step("w_2", "q * (g_2 + g_i) - d", t.Near/calc.PSF, "psf", "windward half, "+edition+" eq. 28.3-1")
	s.Step("w_3", "q * (g_3 + g_i) - d", t.Far/calc.PSF, "psf", "leeward half, "+edition+" eq. 28.3-1")
	s.Step("w_o", "q * g_o - d", t.Eave/calc.PSF, "psf", "windward overhang, "+edition+" 28.3.3")
	s.Step("w_l", "q * g_3 - d", t.Back/calc.PSF, "psf", "leeward overhang, nothing below it")
	s.Step("M", "s * (w_2 * (L / 2) * (3 * L / 4) + w_3 * (L / 2) * (L / 4) + w_o * o * (L + o / 2) - w_l * o * o / 2)",
		t.Moment/calc.LbFt, "lb-ft", "about the far wall, statics")
	s.Step("U_0", "M / L", t.Balance, "lb", "statics; negative where the dead load holds")
	s.Step("U", "max(0, U_0)", t.Uplift, "lb", "uplift of the tie, allowable stress level")
	return s.Lines()
}
