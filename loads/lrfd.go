package loads

import "patiocover/calc"

// Time effect factors lambda of NDS 2018 Table N3, by combination (read in public
// restatements of the table, one of them of a university course).
const (
	timeDead = 0.6 // 1.4D
	timeRoof = 0.8 // roof live load or snow in full
	timeWind = 1   // wind or earthquake in full
)

// strength16 are the combinations of ASCE 7-16 2.3.1 and 2.3.6 that can govern a patio
// cover. Where the standard says Lr or S there is a row for each. Combination (2), whose
// full load is floor live load, asks less than (3) in every load when there is none.
var strength16 = []Combination{
	{Name: "1.4D", Clause: "ASCE 7-16 2.3.1 (1)", Dead: 1.4, TimeEffect: timeDead, Status: calc.Read},
	{Name: "1.2D + 1.6Lr", Clause: "ASCE 7-16 2.3.1 (3)", Dead: 1.2, RoofLive: 1.6, TimeEffect: timeRoof, Status: calc.Read},
	{Name: "1.2D + 1.6S", Clause: "ASCE 7-16 2.3.1 (3)", Dead: 1.2, Snow: 1.6, TimeEffect: timeRoof, Status: calc.Read},
	{
		Name: "1.2D + 1.6Lr + 0.5W", Clause: "ASCE 7-16 2.3.1 (3)",
		Dead: 1.2, RoofLive: 1.6, Wind: 0.5, Sense: Downward, TimeEffect: timeRoof, Status: calc.Read,
	},
	{
		Name: "1.2D + 1.6S + 0.5W", Clause: "ASCE 7-16 2.3.1 (3)",
		Dead: 1.2, Snow: 1.6, Wind: 0.5, Sense: Downward, TimeEffect: timeRoof, Status: calc.Read,
	},
	{
		Name: "1.2D + 1.0W + 0.5Lr", Clause: "ASCE 7-16 2.3.1 (4)",
		Dead: 1.2, RoofLive: 0.5, Wind: 1, Sense: Downward, TimeEffect: timeWind, Status: calc.Read,
	},
	{
		Name: "1.2D + 1.0W + 0.5S", Clause: "ASCE 7-16 2.3.1 (4)",
		Dead: 1.2, Snow: 0.5, Wind: 1, Sense: Downward, TimeEffect: timeWind, Status: calc.Read,
	},
	{
		Name: "0.9D + 1.0W", Clause: "ASCE 7-16 2.3.1 (5)",
		Dead: 0.9, Wind: 1, DeadLeast: true, Sense: UpwardOnly, TimeEffect: timeWind, Status: calc.Read,
	},
	{
		Name: "1.2D + Ev + Eh", Clause: "ASCE 7-16 2.3.6 (6), without snow",
		Dead: 1.2, Earthquake: 1, EarthquakeUp: 1, TimeEffect: timeWind, Status: calc.Read,
	},
	{
		Name: "1.2D + Ev + Eh + 0.2S", Clause: "ASCE 7-16 2.3.6 (6)",
		Dead: 1.2, Snow: 0.2, Earthquake: 1, EarthquakeUp: 1, TimeEffect: timeWind, Status: calc.Read,
	},
	{
		Name: "0.9D - Ev + Eh", Clause: "ASCE 7-16 2.3.6 (7)",
		Dead: 0.9, DeadLeast: true, Earthquake: 1, EarthquakeUp: -1, TimeEffect: timeWind, Status: calc.Read,
	},
}

// strength22 are those of ASCE 7-22, whose snow load is of strength level. The rows of
// 2.3.6 are from memory.
var strength22 = []Combination{
	{Name: "1.4D", Clause: "ASCE 7-22 2.3.1 (1a)", Dead: 1.4, TimeEffect: timeDead, Status: calc.Read},
	{Name: "1.2D + 1.6Lr", Clause: "ASCE 7-22 2.3.1 (3a)", Dead: 1.2, RoofLive: 1.6, TimeEffect: timeRoof, Status: calc.Read},
	{Name: "1.2D + 1.0S", Clause: "ASCE 7-22 2.3.1 (3a)", Dead: 1.2, Snow: 1, TimeEffect: timeRoof, Status: calc.Read},
	{
		Name: "1.2D + 1.6Lr + 0.5W", Clause: "ASCE 7-22 2.3.1 (3a)",
		Dead: 1.2, RoofLive: 1.6, Wind: 0.5, Sense: Downward, TimeEffect: timeRoof, Status: calc.Read,
	},
	{
		Name: "1.2D + 1.0S + 0.5W", Clause: "ASCE 7-22 2.3.1 (3a)",
		Dead: 1.2, Snow: 1, Wind: 0.5, Sense: Downward, TimeEffect: timeRoof, Status: calc.Read,
	},
	{
		Name: "1.2D + 1.0W + 0.5Lr", Clause: "ASCE 7-22 2.3.1 (4a)",
		Dead: 1.2, RoofLive: 0.5, Wind: 1, Sense: Downward, TimeEffect: timeWind, Status: calc.Read,
	},
	{
		Name: "1.2D + 1.0W + 0.3S", Clause: "ASCE 7-22 2.3.1 (4a)",
		Dead: 1.2, Snow: 0.3, Wind: 1, Sense: Downward, TimeEffect: timeWind, Status: calc.Read,
	},
	{
		Name: "0.9D + 1.0W", Clause: "ASCE 7-22 2.3.1 (5a)",
		Dead: 0.9, Wind: 1, DeadLeast: true, Sense: UpwardOnly, TimeEffect: timeWind, Status: calc.Read,
	},
	{
		Name: "1.2D + Ev + Eh", Clause: "ASCE 7-22 2.3.6 (6), without snow",
		Dead: 1.2, Earthquake: 1, EarthquakeUp: 1, TimeEffect: timeWind,
	},
	{
		Name: "1.2D + Ev + Eh + 0.15S", Clause: "ASCE 7-22 2.3.6 (6)",
		Dead: 1.2, Snow: 0.15, Earthquake: 1, EarthquakeUp: 1, TimeEffect: timeWind,
	},
	{
		Name: "0.9D - Ev + Eh", Clause: "ASCE 7-22 2.3.6 (7)",
		Dead: 0.9, DeadLeast: true, Earthquake: 1, EarthquakeUp: -1, TimeEffect: timeWind,
	},
}

// LRFD returns the combinations of strength design of an edition, for loads of a roof
// without floor live load, with the time effect factor of wood. The first is dead load
// alone. The list is shared and must not be changed.
//
// Wind beside roof live load or snow counts downward only, because upward it would
// relieve; 0.9D + 1.0W is the row of uplift. The factors of 7-16 2.3.1 and 2.3.6 and of
// 7-22 2.3.1 were read in public restatements; those of 7-22 2.3.6 are from memory.
func LRFD(e Edition) []Combination {
	if e == ASCE722 {
		return strength22
	}
	return strength16
}
