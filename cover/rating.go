package cover

import (
	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections"
)

// A rating is the uplift rating that a link asks for: that of the uplift combination,
// or of another one that lifts it more, such as a worker at the tip of an overhang or
// live load on every second bay. Ratings of ties hold for wind; a longer load asks
// for more of them (NDS 2018 11.3.2).
type rating struct {
	wind   connections.Uplift
	other  float64 // uplift of another combination, lb; 0 when none lifts
	longer float64 // C_D of that combination, factor
	name   string  // that combination
	need   float64 // uplift as if under wind, lb
	rating float64 // lb, rounded up
}

// newRating takes the worse of the uplift combination and the rest.
func newRating(wind connections.Uplift, rest prying) rating {
	r := rating{wind: wind, need: wind.Net, rating: wind.Rating}
	if rest.asWind > wind.Net {
		r.other, r.longer, r.name = rest.uplift, rest.duration, rest.name
		r.need, r.rating = rest.asWind, connections.Rating(rest.asWind)
	}
	return r
}

// Explain writes the rating out.
func (r rating) Explain() calc.Check {
	if r.other == 0 {
		return r.wind.Explain()
	}
	var s calc.Sheet
	s.Given("T_wind", r.wind.Net, "lb", "net uplift under 0.6D + 0.6W, ASCE 7 2.4.1, from the same statics")
	s.Given("T_other", r.other, "lb", "uplift under "+r.name+", from the statics of the members above")
	s.Given("C_D", r.longer, "", "NDS 2018 Table 2.3.2, of that combination")
	s.Given("C_D_wind", lumber.TenMinutes.Factor(), "", "NDS 2018 Table 2.3.2, held in the rating")
	s.Step("T", "max(T_wind, T_other * C_D_wind / C_D)", r.need, "lb", "NDS 2018 11.3.2: as if under wind")
	s.Given("r", ratingStep, "lb", "step of ratings, common practice")
	s.Step("R_req", "ceil(T / r - 1e-9 * min(1, T / r)) * r", r.rating, "lb",
		"rounded up: the tie must be rated for at least this, for wind")
	return s.Check("required uplift rating", "T", "R_req")
}

// ratingStep is the step of connections.Rating, lb.
var ratingStep = connections.Rating(1)

// A prying is the worst uplift of the combinations other than the uplift one.
type prying struct {
	uplift   float64 // lb
	duration float64 // C_D, factor
	asWind   float64 // lb, as if under wind
	name     string  // the arrangement
}

// raise takes the vertical force of an arrangement, lb, + down.
func (p *prying) raise(a *arrangement, vertical float64) {
	factor := a.duration.Factor()
	asWind := -vertical * lumber.TenMinutes.Factor() / factor
	if a.least || asWind <= p.asWind {
		return
	}
	*p = prying{-vertical, factor, asWind, a.name()}
}
