package loads

import "patiocover/calc"

// quakes16 are the combinations of ASCE 7-16 2.4.5. The second also holds where the
// standard would let a light snow load off (flat roof snow of 30 psf or less).
var quakes16 = []Combination{
	{
		Name: "D + 0.7Ev + 0.7Eh", Clause: "ASCE 7-16 2.4.5 (8)", Dead: 1,
		Earthquake: 0.7, EarthquakeUp: 0.7, Duration: durationWind, Status: calc.Read,
	},
	{
		Name: "D + 0.525Ev + 0.525Eh + 0.75S", Clause: "ASCE 7-16 2.4.5 (9)", Dead: 1, Snow: 0.75,
		Earthquake: 0.525, EarthquakeUp: 0.525, Duration: durationWind, Status: calc.Read,
	},
	{
		Name: "0.6D - 0.7Ev + 0.7Eh", Clause: "ASCE 7-16 2.4.5 (10)", Dead: 0.6, DeadLeast: true,
		Earthquake: 0.7, EarthquakeUp: -0.7, Duration: durationWind, Status: calc.Read,
	},
}

// quakes22 are those of ASCE 7-22 2.4.5, where little of the snow, of strength level,
// goes with the earthquake.
var quakes22 = []Combination{
	{
		Name: "D + 0.7Ev + 0.7Eh", Clause: "ASCE 7-22 2.4.5 (8)", Dead: 1,
		Earthquake: 0.7, EarthquakeUp: 0.7, Duration: durationWind,
	},
	{
		Name: "D + 0.525Ev + 0.525Eh + 0.1S", Clause: "ASCE 7-22 2.4.5 (9)", Dead: 1, Snow: 0.1,
		Earthquake: 0.525, EarthquakeUp: 0.525, Duration: durationWind,
	},
	{
		Name: "0.6D - 0.7Ev + 0.7Eh", Clause: "ASCE 7-22 2.4.5 (10)", Dead: 0.6, DeadLeast: true,
		Earthquake: 0.7, EarthquakeUp: -0.7, Duration: durationWind,
	},
}

// ASDEarthquake returns the combinations of allowable stress design with earthquake of
// an edition, for loads of a roof without floor live load. Eh and Ev are of strength
// level; Ev is 0.2 SDS D. The first is the one without snow. The list is shared and must
// not be changed.
//
// The factors of 7-16 were read in public restatements of 2.4.5. Those of 7-22 are from
// memory; public programs agree with them, but no text of the standard was seen.
func ASDEarthquake(e Edition) []Combination {
	if e == ASCE722 {
		return quakes22
	}
	return quakes16
}
