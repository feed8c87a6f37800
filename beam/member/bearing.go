package member

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A Seat is the contact area of a bearing.
type Seat struct {
	Width   float64 // in, across the member: the smaller of the two pieces' contact
	Length  float64 // lb, in, along the grain of the piece that is checked
	FromEnd float64 // in, from the member's end to the nearest edge of the seat; 0 at the end
}

// The conditions of the bearing area factor (NDS 2018 3.10.4).
const (
	longSeat = 6.0 // in: C_b = 1 from this length
	endSeat  = 3.0 // in: C_b = 1 closer than this to the member's end
)

// anyTime stands for the duration where none acts: on Fc_perp, in either method.
const anyTime = lumber.TenYears

// Bearing is the check of NDS 2018 3.10.2, compression perpendicular to grain:
// fc_perp <= Fc_perp'. Neither the load duration factor nor the time effect factor
// applies.
type Bearing struct {
	Force     float64         // R, lb
	Seat      Seat            // contact area
	Area      float64         // in²
	Stress    float64         // fc_perp, psi
	Strength  lumber.Property // Fc_perp with its factors, psi
	Spread    float64         // Cb, factor
	Allowable float64         // Fc_perp', psi
	short     bool            // Cb > 1 by eq. 3.10-2
}

// NewBearing checks the reaction, in lb and pressing, on the seat. A reaction that
// lifts demands nothing here: the tie carries it.
func NewBearing(force float64, a *lumber.Adjusted, seat Seat) Bearing {
	b := Bearing{Force: force, Seat: seat, Area: seat.Width * seat.Length, Strength: a.Bearing, Spread: 1}
	if seat.Length < longSeat && seat.FromEnd >= endSeat {
		b.short = true
		b.Spread = (seat.Length + 0.375) / seat.Length // eq. 3.10-2
	}
	b.Allowable = b.Strength.At(anyTime) * b.Spread
	b.Stress = stress(force, b.Area)
	return b
}

// stress returns the force over the area, and an infinite stress where a force
// has no area or the area is not known.
func stress(force, area float64) float64 {
	switch {
	case force <= 0:
		return 0
	case !(area > 0):
		return math.Inf(1)
	}
	return force / area
}

// Ratio is fc_perp / Fc_perp'.
func (b Bearing) Ratio() float64 { return calc.Ratio(b.Stress, b.Allowable) }

// Explain writes the check out.
func (b Bearing) Explain() calc.Check {
	var s calc.Sheet
	explainSeat(&s, b.Force, b.Seat, b.Area, b.Stress)
	s.Append(b.Strength.LinesAt(anyTime))
	if b.short {
		s.Append([]calc.Line{{
			Symbol: "C_b", Formula: "(l_b + 0.375) / l_b", X: b.Spread,
			Source: "NDS 2018 eq. 3.10-2", Status: calc.Recalled,
		}})
	}
	if !b.short {
		s.Given("C_b", b.Spread, "", "NDS 2018 3.10.4, at the end or 6 in. long")
	}
	s.Step("Fc_perp_adj", b.Strength.FormulaAt()+" * C_b", b.Allowable, "psi", "NDS 2018 Table 4.3.1")
	return s.Check("bearing", "f_c", "Fc_perp_adj")
}

// explainSeat writes the force, the contact area and the stress.
func explainSeat(s *calc.Sheet, force float64, seat Seat, area, pressure float64) {
	s.Given("R", force, "lb", "reaction of the combination")
	s.Given("w_b", seat.Width, "in", "width of the seat")
	s.Given("l_b", seat.Length, "in", "length of the seat")
	s.Step("A_b", "w_b * l_b", area, "in²", "NDS 2018 3.10.2")
	s.Step("f_c", "max(0, R) / A_b", pressure, "psi", "NDS 2018 3.10.2")
}

// Hankinson returns Ftheta', the value at an angle to the grain between the value
// parallel, Fc*, and the value perpendicular, Fc_perp' (NDS 2018 eq. 3.10-1). The
// angle between load and grain is in degrees: 0 gives the first, 90 the second.
func Hankinson(parallel, perpendicular, angle float64) float64 {
	sin, cos := math.Sincos(angle * math.Pi / 180) // degrees
	return parallel * perpendicular / (parallel*sin*sin + perpendicular*cos*cos)
}

// BearingAtAngle is the check of NDS 2018 3.10.3: fc <= Ftheta', such as of the
// seat of a sloped rafter.
type BearingAtAngle struct {
	Force         float64         // R, lb
	Seat          Seat            // contact area
	Area          float64         // in²
	Stress        float64         // fc, psi
	Angle         float64         // theta, degrees between load and grain, 0 to 90
	Crushing      lumber.Property // Fc with its factors, psi
	Strength      lumber.Property // Fc_perp with its factors, psi
	Duration      lumber.Duration // load duration of the combination, on Fc only
	Parallel      float64         // Fc*, psi
	Perpendicular float64         // Fc_perp', psi, without Cb
	Allowable     float64         // Ftheta', psi
}

// NewBearingAtAngle checks the reaction, in lb and pressing, on the seat. angle is
// between load and grain in degrees: 90 less the slope for a rafter that rests on a
// level seat under vertical load. The bearing area factor is left out, to be safe.
func NewBearingAtAngle(
	force float64, a *lumber.Adjusted, duration lumber.Duration, seat Seat, angle float64,
) BearingAtAngle {
	b := BearingAtAngle{
		Force: force, Seat: seat, Area: seat.Width * seat.Length, Angle: angle,
		Crushing: a.Compression, Strength: a.Bearing, Duration: duration,
		Parallel: a.Compression.At(duration), Perpendicular: a.Bearing.At(duration),
	}
	b.Allowable = Hankinson(b.Parallel, b.Perpendicular, angle)
	b.Stress = stress(force, b.Area)
	return b
}

// Ratio is fc / Ftheta'.
func (b BearingAtAngle) Ratio() float64 { return calc.Ratio(b.Stress, b.Allowable) }

// Explain writes the check out.
func (b BearingAtAngle) Explain() calc.Check {
	var s calc.Sheet
	explainSeat(&s, b.Force, b.Seat, b.Area, b.Stress)
	s.Given("theta", b.Angle, "deg", "angle between load and grain")
	explainCrushing(&s, b.Crushing, b.Duration, b.Parallel)
	s.Append(b.Strength.LinesAt(b.Duration))
	s.Step("Fc_perp_adj", b.Strength.FormulaAt(), b.Perpendicular, "psi", "NDS 2018 Table 4.3.1")
	s.Step("F_theta", "Fc_star * Fc_perp_adj / "+
		"(Fc_star * pow(sind(theta), 2) + Fc_perp_adj * pow(cosd(theta), 2))",
		b.Allowable, "psi", "NDS 2018 eq. 3.10-1")
	return s.Check("bearing at an angle to grain", "f_c", "F_theta")
}

// explainCrushing writes Fc*, Fc with every factor but C_P.
func explainCrushing(s *calc.Sheet, p lumber.Property, d lumber.Duration, star float64) {
	s.Append(p.LinesAt(d))
	s.Step("Fc_star", p.FormulaAt(), star, "psi", "NDS 2018 3.7.1.5")
}

// EndBearing is the check of NDS 2018 3.10.1, compression parallel to grain at the
// end of a post: fc <= Fc*. Above 0.75 Fc* the end must bear on a metal plate, so
// without one the capacity stops there.
type EndBearing struct {
	Force     float64         // P, lb
	Area      float64         // A, in²: contact area less holes and notches
	Plate     bool            // bears on a metal plate or strap of the required stiffness
	Stress    float64         // fc, psi
	Strength  lumber.Property // Fc with its factors, psi
	Duration  lumber.Duration // load duration of the combination
	Star      float64         // Fc*, psi
	Allowable float64         // Fc*, or 0.75 Fc* without a plate, psi
}

// Unplated is the part of Fc* above which end grain needs a metal bearing plate, factor
// (NDS 2018 3.10.1.3).
const Unplated = 0.75

// NewEndBearing checks the force, in lb and pressing, on the contact area, in in².
func NewEndBearing(
	force, area float64, a *lumber.Adjusted, duration lumber.Duration, plate bool,
) EndBearing {
	e := EndBearing{Force: force, Area: area, Plate: plate, Strength: a.Compression, Duration: duration}
	e.Stress = stress(force, area)
	e.Star = e.Strength.At(duration)
	e.Allowable = e.Star
	if !plate {
		e.Allowable = Unplated * e.Star
	}
	return e
}

// Ratio is fc over its allowable value.
func (e EndBearing) Ratio() float64 { return calc.Ratio(e.Stress, e.Allowable) }

// Explain writes the check out.
func (e EndBearing) Explain() calc.Check {
	var s calc.Sheet
	s.Given("P", e.Force, "lb", "axial force of the combination")
	s.Given("A", e.Area, "in²", "contact area")
	s.Step("f_c", "max(0, P) / A", e.Stress, "psi", "NDS 2018 3.10.1")
	explainCrushing(&s, e.Strength, e.Duration, e.Star)
	formula, source := "Fc_star", "NDS 2018 3.10.1.1, on a metal plate"
	if !e.Plate {
		formula, source = "0.75 * Fc_star", "NDS 2018 3.10.1.3, without a metal plate"
	}
	s.Step("F_end", formula, e.Allowable, "psi", source)
	return s.Check("end bearing", "f_c", "F_end")
}
