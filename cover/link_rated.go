package cover

import (
	"fmt"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// A rated is hardware that is bought with a rating.
type rated struct {
	item     string // such as rafter tie
	up, side *float64
	gravity  float64 // of the lightest wood it is nailed to
}

// sideShare is the part of a rated tie that is kept for its side force when both are
// asked for, so that the sum of the ratios stays within 1, ratio. Ties have far lower
// ratings sideways than up.
const sideShare = 0.25

// asWind is a force as if it were wind, lb: ratings hold for wind, and a longer load
// asks for more of them (NDS 2018 11.3.2).
func asWind(force float64, d lumber.Duration) float64 {
	return force * lumber.TenMinutes.Factor() / min(lumber.TenMinutes.Factor(), d.Factor())
}

// rate checks given ratings against every demand, or states the ratings that are asked
// for. Uplift, and one side force at a time, act together.
func (m *model) rate(l *Link, r rated) Connector {
	c := Connector{Basis: SpecifiedRating}
	rating := dowel.Rating{Gravity: *m.in.Connections.RatedGravity}
	up, side := 0.0, 0.0
	for _, d := range l.joint.demands {
		up, side = max(up, asWind(upward(d), d.Duration)), max(side, asWind(aside(d), d.Duration))
	}
	switch {
	case r.up != nil || r.side != nil:
		c.Basis = GivenHardware
		rating.Up, rating.Along = orZero(r.up), orZero(r.side)
	case up > 0 && side > 0:
		rating.Up, rating.Along = connections.Rating(up/(1-sideShare)), connections.Rating(side/sideShare)
	default:
		rating.Up, rating.Along = connections.Rating(up), connections.Rating(side)
	}
	if c.Basis == SpecifiedRating {
		rating.Gravity = min(rating.Gravity, r.gravity) // the column of the wood that is there
		c.Up, c.Side = rating.Up, rating.Along
	}
	c.What = r.words(rating)
	tie, name := worstOf(l.joint.demands, func(d connections.Demand) dowel.Tie {
		f := dowel.Forces{Up: asWind(upward(d), d.Duration), Along: asWind(aside(d), d.Duration)}
		return dowel.NewTie(f, rating, r.gravity)
	})
	c.add(ratingCheck, name, "each", tie)
	c.part(r.item+ratingWords(rating), 1, l.Count)
	c.Notes = append(c.Notes, fmt.Sprintf("Rated for wood of G %s or lighter, all holes filled with the nails of its list; "+
		"no other factor on the rating, no sharing with nails beside it", calc.Number(min(rating.Gravity, r.gravity))))
	if rating.Up > oneSided {
		c.Notes = append(c.Notes, "Above about 600 lb use ties in pairs, or alternate sides: a one-sided tie twists the wood")
	}
	return c
}

// oneSided is the uplift above which ties are used in pairs, lb (judgement).
const oneSided = 600 * calc.Lb

// words says what is asked for or given.
func (r rated) words(x dowel.Rating) string {
	return r.item + ratingWords(x) + " (ASD, wind)"
}

// ratedPounds writes a rating in whole pounds, never more than it is.
func ratedPounds(x float64) string { return pounds(calc.RoundDown(x, 1)) }

// ratingWords words the ratings of hardware.
func ratingWords(x dowel.Rating) string {
	switch {
	case x.Up > 0 && x.Along > 0:
		return " rated " + ratedPounds(x.Up) + " lb up and " + ratedPounds(x.Along) + " lb sideways, or more"
	case x.Up > 0:
		return " rated " + ratedPounds(x.Up) + " lb up, or more"
	case x.Along > 0:
		return " rated " + ratedPounds(x.Along) + " lb sideways, or more"
	}
	return ", by the schedule of nailing: nothing lifts or pushes"
}

// A bearer is the check of hardware that carries a load down by its rating for loads of
// ten years.
type bearer struct {
	force  float64         // lb
	last   lumber.Duration // of the load
	rating float64         // lb at C_D = 1
}

// demand is the force as if it lasted ten years, lb. A rating is not raised for shorter
// loads beyond what its own list says, which is not known here.
func (b bearer) demand() float64 { return b.force / min(1, b.last.Factor()) }

// Ratio is the demand over the rating.
func (b bearer) Ratio() float64 { return calc.Ratio(b.demand(), b.rating) }

// Explain writes the check out.
func (b bearer) Explain() calc.Check {
	var s calc.Sheet
	s.Given("R", b.force, "lb", "downward reaction of the combination")
	s.Given("C_D", b.last.Factor(), "", "NDS 2018 Table 2.3.2: a rating is not raised for shorter loads here")
	s.Step("R_10", "R / min(1, C_D)", b.demand(), "lb", "as if for ten years, NDS 2018 11.3.2")
	s.Given("R_down", b.rating, "lb", "rating downward at C_D = 1")
	return s.Check("downward rating", "R_10", "R_down")
}

// bear adds the downward rating, given or asked for.
func (l *Link) bear(c *Connector, given *float64) {
	most := 0.0
	for _, d := range l.joint.demands {
		most = max(most, bearer{force: max(0, d.Vertical), last: d.Duration}.demand())
	}
	rating := connections.Rating(most)
	if given != nil {
		rating = *given
	}
	if given == nil && c.Basis == GivenHardware {
		rating = 0 // a rating that was left out of given hardware is none
	}
	worst, name := worstOf(l.joint.demands, func(d connections.Demand) bearer {
		return bearer{max(0, d.Vertical), d.Duration, rating}
	})
	if c.Basis == SpecifiedRating && given == nil {
		c.Down = rating
	}
	c.add(downCheck, name, "each", worst)
	c.What += ", and " + ratedPounds(rating) + " lb down (C_D = 1)"
}
