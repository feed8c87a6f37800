package diaphragm

import (
	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A Load is what pushes.
type Load uint8

// The loads that a diaphragm has values for.
const (
	Wind Load = iota
	Earthquake
)

// String names the load.
func (l Load) String() string {
	if l == Earthquake {
		return "earthquake"
	}
	return "wind"
}

// Factors on the nominal unit shear (SDPWS 2015 4.2.3, SDPWS 2021 4.1.4, from memory).
const (
	divisor      = 2.0 // ASD, both editions for wind, that of 2015 for earthquake as well
	quakeDivisor = 2.8 // ASD, that of 2021 for earthquake, of the value for wind
	resistance   = 0.8 // LRFD, both editions for wind, that of 2015 for earthquake as well
	quakeResist  = 0.5 // LRFD, that of 2021 for earthquake, of the value for wind
)

// reference is the specific gravity of the framing that the tables are for,
// dimensionless (SDPWS 2015 Table 4.2A note 2).
const reference = 0.5

// A Push is what acts on the held side of a deck.
type Push struct {
	Force  float64       // H, lb, at the level of the method
	Length float64       // L, in, of the held side, along the push
	Load   Load          // what pushes
	Method lumber.Method // ASD or LRFD
}

// A Shear is the check of SDPWS 4.2.3: the push spread over the held side against the
// unit shear of the deck.
type Shear struct {
	Push      Push    // what acts
	Nominal   Nominal // unit shears of the table
	Gravity   float64 // G of the framing, specific gravity, dimensionless
	Species   float64 // k_G, factor for framing lighter than the table's, up to 1
	Unit      float64 // v, lb/in
	Older     float64 // by the edition of 2015, lb/in
	Newer     float64 // by the edition of 2021, lb/in
	Allowable float64 // the smaller, lb/in
}

// NewShear checks the push. gravity is the specific gravity of the framing.
func NewShear(p Push, n Nominal, gravity float64) Shear {
	s := Shear{Push: p, Nominal: n, Gravity: gravity, Species: min(1, 1-(reference-gravity)), Unit: p.Force / p.Length}
	older := n.Wind
	if p.Load == Earthquake {
		older = n.Earthquake
	}
	byOlder, byNewer := factors(p)
	s.Older, s.Newer = older*s.Species*byOlder, n.Wind*s.Species*byNewer
	s.Allowable = min(s.Older, s.Newer)
	return s
}

// factors are those on the nominal values by the two editions.
func factors(p Push) (older, newer float64) {
	quake := p.Load == Earthquake
	switch {
	case p.Method == lumber.LRFD && quake:
		return resistance, quakeResist
	case p.Method == lumber.LRFD:
		return resistance, resistance
	case quake:
		return 1 / divisor, 1 / quakeDivisor
	}
	return 1 / divisor, 1 / divisor
}

// Ratio is the unit shear over the smaller of the two allowable ones.
func (s Shear) Ratio() float64 { return calc.Ratio(s.Unit/calc.PLF, s.Allowable/calc.PLF) }

// Explain writes the check out.
func (s Shear) Explain() calc.Check {
	var sheet calc.Sheet
	sheet.Given("H", s.Push.Force, "lb", "push along the held side, "+s.Push.Load.String()+", "+s.Push.Method.String())
	sheet.Given("L", s.Push.Length/calc.Ft, "ft", "length of the held side")
	sheet.Step("v", "H / L", s.Unit/calc.PLF, "plf", "statics: spread evenly")
	n := s.Nominal
	sheet.Quoted("v_s", n.Earthquake/calc.PLF, "plf", n.Source+", nominal, earthquake", n.Status)
	sheet.Quoted("v_w", n.Wind/calc.PLF, "plf", n.Source+", nominal, wind", n.Status)
	sheet.Given("G", s.Gravity, "", "specific gravity of the framing, NDS 2018 Table 12.3.3A")
	sheet.Quoted("G_0", reference, "", "SDPWS 2015 Table 4.2A note 2, framing of the table", calc.Recalled)
	sheet.Step("k_G", "min(1, 1 - (G_0 - G))", s.Species, "", "SDPWS 2015 Table 4.2A note 2")
	older, newer := "v_w", "v_w"
	if s.Push.Load == Earthquake {
		older = "v_s"
	}
	byOlder, byNewer := factors(s.Push)
	if s.Push.Method == lumber.LRFD {
		sheet.Quoted("phi_1", byOlder, "", "SDPWS 2015 4.2.3", calc.Recalled)
		sheet.Quoted("phi_2", byNewer, "", "SDPWS 2021 4.1.4", calc.Recalled)
		older, newer = "phi_1 * "+older+" * k_G", "phi_2 * "+newer+" * k_G"
	} else {
		sheet.Quoted("R_1", 1/byOlder, "", "SDPWS 2015 4.2.3", calc.Recalled)
		sheet.Quoted("R_2", 1/byNewer, "", "SDPWS 2021 4.1.4", calc.Recalled)
		older, newer = older+" * k_G / R_1", newer+" * k_G / R_2"
	}
	sheet.Step("v_1", older, s.Older/calc.PLF, "plf", "SDPWS 2015 4.2.3")
	sheet.Step("v_2", newer, s.Newer/calc.PLF, "plf", "SDPWS 2021 4.1.4")
	sheet.Step("v_adj", "min(v_1, v_2)", s.Allowable/calc.PLF, "plf", "the smaller of the two editions")
	return sheet.Check("shear in the plane of the deck", "v", "v_adj")
}
