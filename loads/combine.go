package loads

import "patiocover/calc"

// A Sense says which directions of the wind a combination counts.
type Sense uint8

// The senses.
const (
	NoWind     Sense = iota // the combination has no wind
	EitherWay               // downward and upward
	Downward                // downward only: upward wind would relieve it
	UpwardOnly              // upward only
)

// Load duration factors C_D of NDS 2018 Table 2.3.2 (read in a reference page on it;
// roof live load counts as construction load, NDS commentary C2.3.2). A combination
// takes the largest of the loads in it.
const (
	durationDead = 0.9
	durationSnow = 1.15
	durationLive = 1.25
	durationWind = 1.6
)

// The factors of 0.6D + 0.6W, the combination of uplift (ASCE 7 2.4.1 (7)), for what is
// no combination of its own. The first holds the whole safety of a weight: it is not
// divided again.
const (
	HoldsDown = 0.6 // on dead load that resists
	WindASD   = 0.6 // on wind of strength level
)

// A Combination is one row of factors, of allowable stress design or of strength
// design. Wind and earthquake in it are of strength level. A load that it does not name
// has the factor 0.
type Combination struct {
	Name      string  // as the standard prints it
	Clause    string  // edition, section, number
	Dead      float64 // factor on dead load, the most or the least
	RoofLive  float64 // factor on roof live load
	Snow      float64 // factor on snow
	Wind      float64 // factor on wind
	DeadLeast bool    // the least dead load counts, because it resists
	Sense     Sense   // which wind counts
	Duration  float64 // C_D, load duration factor of wood; 0 in strength design

	Earthquake   float64     // factor on Eh, the earthquake sideways, which acts either way
	EarthquakeUp float64     // factor on Ev, up and down, as printed: above 0 it presses down, below 0 it lifts
	TimeEffect   float64     // lambda, time effect factor of wood (NDS 2018 N3.3); 0 in allowable stress design
	Status       calc.Status // how the factors on the loads are known
}

// combinations16 are those of ASCE 7-16 2.4.1 that can govern a patio cover, which
// has no floor live load. Where the standard says Lr or S there is a row for each.
var combinations16 = []Combination{
	{Name: "D", Clause: "ASCE 7-16 2.4.1 (1)", Dead: 1, Duration: durationDead, Status: calc.Read},
	{Name: "D + Lr", Clause: "ASCE 7-16 2.4.1 (3)", Dead: 1, RoofLive: 1, Duration: durationLive, Status: calc.Read},
	{Name: "D + S", Clause: "ASCE 7-16 2.4.1 (3)", Dead: 1, Snow: 1, Duration: durationSnow, Status: calc.Read},
	{Name: "D + 0.6W", Clause: "ASCE 7-16 2.4.1 (5)", Dead: 1, Wind: 0.6, Sense: EitherWay, Duration: durationWind, Status: calc.Read},
	{
		Name: "D + 0.75Lr + 0.75(0.6W)", Clause: "ASCE 7-16 2.4.1 (6)",
		Dead: 1, RoofLive: 0.75, Wind: 0.75 * 0.6, Sense: Downward, Duration: durationWind, Status: calc.Read,
	},
	{
		Name: "D + 0.75S + 0.75(0.6W)", Clause: "ASCE 7-16 2.4.1 (6)",
		Dead: 1, Snow: 0.75, Wind: 0.75 * 0.6, Sense: Downward, Duration: durationWind, Status: calc.Read,
	},
	{
		Name: "0.6D + 0.6W", Clause: "ASCE 7-16 2.4.1 (7)",
		Dead: 0.6, Wind: 0.6, DeadLeast: true, Sense: UpwardOnly, Duration: durationWind, Status: calc.Read,
	},
}

// combinations22 are those of ASCE 7-22 2.4.1, whose snow load is of strength level.
var combinations22 = []Combination{
	{Name: "D", Clause: "ASCE 7-22 2.4.1 (1a)", Dead: 1, Duration: durationDead, Status: calc.Read},
	{Name: "D + Lr", Clause: "ASCE 7-22 2.4.1 (3a)", Dead: 1, RoofLive: 1, Duration: durationLive, Status: calc.Read},
	{Name: "D + 0.7S", Clause: "ASCE 7-22 2.4.1 (3a)", Dead: 1, Snow: 0.7, Duration: durationSnow, Status: calc.Read},
	{Name: "D + 0.6W", Clause: "ASCE 7-22 2.4.1 (5a)", Dead: 1, Wind: 0.6, Sense: EitherWay, Duration: durationWind, Status: calc.Read},
	{
		Name: "D + 0.75Lr + 0.75(0.6W)", Clause: "ASCE 7-22 2.4.1 (6a)",
		Dead: 1, RoofLive: 0.75, Wind: 0.75 * 0.6, Sense: Downward, Duration: durationWind, Status: calc.Read,
	},
	{
		Name: "D + 0.75(0.7S) + 0.75(0.6W)", Clause: "ASCE 7-22 2.4.1 (6a)",
		Dead: 1, Snow: 0.75 * 0.7, Wind: 0.75 * 0.6, Sense: Downward, Duration: durationWind, Status: calc.Read,
	},
	{
		Name: "0.6D + 0.6W", Clause: "ASCE 7-22 2.4.1 (7a)",
		Dead: 0.6, Wind: 0.6, DeadLeast: true, Sense: UpwardOnly, Duration: durationWind, Status: calc.Read,
	},
}

// ASD returns the combinations of allowable stress design of an edition, for loads
// of a roof without floor live load. The first is dead load alone. The list is shared
// and must not be changed.
//
// The factors of 7-16 2.4.1 (1) to (7) were read in public restatements of it, those
// of 7-22 (3a) and (6a) in a structural engineering magazine, the rest of 7-22 in a
// public restatement; the numbers (1a), (5a) and (7a) follow the pattern of the others.
// Snow of the 2022 edition is of strength level: a roof snow load of the older kind must
// not be combined by it, nor the other way round.
func ASD(e Edition) []Combination {
	if e == ASCE722 {
		return combinations22
	}
	return combinations16
}
