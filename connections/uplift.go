package connections

import "patiocover/calc"

// ratingStep is the step to which a required tie rating is rounded up, lb: common
// practice, so that a schedule asks for few different ties.
const ratingStep = 25 * calc.Lb

// Rating returns the uplift rating that a tie must have, lb: the net uplift rounded
// up to 25 lb, 0 when nothing lifts. The rating is an allowable value for wind, with
// the load duration factor of 1.6 already in it.
func Rating(uplift float64) float64 {
	if uplift <= 0 {
		return 0
	}
	return calc.RoundUp(uplift, ratingStep)
}

// An Uplift is the net uplift of a link and the rating it asks for.
type Uplift struct {
	Wind       float64 // upward force of the wind on the link, strength level, lb
	Dead       float64 // least dead load that is fastened above the link, lb
	WindFactor float64 // factor on the wind, 0.6
	DeadFactor float64 // factor on the dead load, 0.6
	Net        float64 // net uplift, lb; 0 when the dead load holds it down
	Rating     float64 // required rating, lb
}

// NewUplift nets the upward wind against the least dead load with the factors of
// the uplift combination (ASCE 7-16 2.4.1 combination 7: 0.6D + 0.6W).
func NewUplift(wind, dead, windFactor, deadFactor float64) Uplift {
	net := max(0, windFactor*wind-deadFactor*dead)
	return Uplift{
		Wind: wind, Dead: dead, WindFactor: windFactor, DeadFactor: deadFactor,
		Net: net, Rating: Rating(net),
	}
}

// Ratio is the net uplift over the required rating, at most 1 by its making: the
// capacity of the hardware is another check.
func (u Uplift) Ratio() float64 { return calc.Ratio(u.Net, u.Rating) }

// Explain writes out the net uplift and the rating.
func (u Uplift) Explain() calc.Check {
	var s calc.Sheet
	s.Given("W_up", u.Wind, "lb", "wind reaction at the link, strength level, from the statics of the members above")
	s.Given("D_min", u.Dead, "lb", "least dead load fastened above the link, from the same statics")
	s.Given("f_W", u.WindFactor, "", "ASCE 7 2.4.1, 0.6D + 0.6W")
	s.Given("f_D", u.DeadFactor, "", "ASCE 7 2.4.1, 0.6D + 0.6W")
	s.Step("T", "max(0, f_W * W_up - f_D * D_min)", u.Net, "lb", "ASCE 7 2.4.1, 0.6D + 0.6W")
	s.Given("r", ratingStep, "lb", "step of ratings, common practice")
	s.Step("R_req", "ceil(T / r - 1e-9 * min(1, T / r)) * r", u.Rating, "lb",
		"rounded up: the tie must be rated for at least this, for wind")
	return s.Check("required uplift rating", "T", "R_req")
}
