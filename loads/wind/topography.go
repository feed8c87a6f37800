package wind

import (
	_ "embed" // topo.csv
	"fmt"
	"math"

	"patiocover/calc"
)

//go:embed topo.csv
var topoCSV string

type topoRow struct {
	shape, exposure    string
	slope, attenuation float64 // K1 over H/Lh, gamma; factors
	upwind, downwind   float64 // mu, factors
	source             string
	status             calc.Status
}

// topoRows holds the rows of topo.csv.
var topoRows = calc.ReadTable("topo.csv", topoCSV, func(r calc.Row) topoRow {
	return topoRow{
		shape: r.Text("shape"), exposure: r.Text("exposure"), slope: r.Num("slope factor"),
		attenuation: r.Num("gamma"), upwind: r.Num("mu upwind"), downwind: r.Num("mu downwind"),
		source: r.Text("source"), status: r.Status(),
	}
})

// The smallest hills that count (ASCE 7-16 26.8.1, from memory), and the steepness
// beyond which a hill is treated as one of that steepness (Fig. 26.8-1 note).
const (
	leastSteepness = 0.2          // H/Lh, ratio
	mostSteepness  = 0.5          // H/Lh, ratio
	leastHillB     = 60 * calc.Ft // H in exposure B, in
	leastHill      = 15 * calc.Ft // H in exposures C and D, in
)

// A Shape is the form of a hill.
type Shape string

// The shapes of ASCE 7-16 Fig. 26.8-1.
const (
	Ridge      Shape = "ridge"      // two-dimensional, falls on both sides
	Escarpment Shape = "escarpment" // two-dimensional, level behind the crest
	Mound      Shape = "hill"       // round
)

// A Hill is an isolated rise of the ground and where the cover stands on it.
type Hill struct {
	Shape    Shape   // of Fig. 26.8-1
	Exposure string  // B, C or D
	Rise     float64 // H, height above the upwind terrain, in
	Half     float64 // Lh, from the crest upwind to half the height, in
	Distance float64 // x, from the crest to the cover, in, not negative
	Downwind bool    // the cover stands behind the crest
	Height   float64 // z, height above the ground at the cover, in
}

// A HillState says whether a hill speeds the wind up.
type HillState uint8

// The states.
const (
	HillCounts HillState = iota // K1, K2 and K3 apply
	HillFlat                    // H/Lh below 0.2
	HillSmall                   // lower than 60 ft in exposure B, 15 ft in C and D
)

// String words the state.
func (s HillState) String() string {
	return [...]string{
		"the wind speeds up over it", "too gentle to count: H/Lh is below 0.2",
		"too low to count in its exposure",
	}[s]
}

// A Topography is the topographic factor at a cover.
type Topography struct {
	Hill      Hill      // as given
	State     HillState // whether it counts
	Steepness float64   // H/Lh, ratio, not above 0.5
	Length    float64   // Lh of K2 and K3, in: not less than 2H
	Crest     float64   // K1, factor
	Away      float64   // K2, factor
	Above     float64   // K3, factor
	Factor    float64   // Kzt, factor
	row       int       // row of topo.csv, or −1
}

// NewTopography returns Kzt = (1 + K1 K2 K3)² (ASCE 7-16 26.8.2), and 1 for a hill
// that is too gentle or too low to count (26.8.1). Whether the hill is isolated and
// twice as high as its surroundings, and whether the cover stands in its upper half,
// is for a person to say; without that it counts here, the safe side.
//
// Special case: the factor is not a number for a shape or an exposure that is not in
// the figure.
func NewTopography(h Hill) Topography {
	t := Topography{Hill: h, Factor: 1, row: -1}
	for i := range topoRows {
		if topoRows[i].shape == string(h.Shape) && topoRows[i].exposure == h.Exposure {
			t.row = i
		}
	}
	if t.row < 0 {
		t.Factor = math.NaN()
		return t
	}
	if h.Rise < t.leastRise() {
		t.State = HillSmall
		return t
	}
	if h.Rise/h.Half < leastSteepness {
		t.State = HillFlat
		return t
	}
	r := &topoRows[t.row]
	t.Steepness = min(h.Rise/h.Half, mostSteepness)
	t.Length = max(h.Half, h.Rise/mostSteepness)
	t.Crest = r.slope * t.Steepness
	t.Away = max(0, 1-h.Distance/(t.reach()*t.Length))
	t.Above = math.Exp(-r.attenuation * h.Height / t.Length)
	t.Factor = (1 + t.Crest*t.Away*t.Above) * (1 + t.Crest*t.Away*t.Above) // eq. 26.8-1
	return t
}

// leastRise is the height below which the hill does not count, in.
func (t Topography) leastRise() float64 {
	if t.Hill.Exposure == "B" {
		return leastHillB
	}
	return leastHill
}

// reach is mu, the horizontal attenuation factor on the side of the cover.
func (t Topography) reach() float64 {
	if t.Hill.Downwind {
		return topoRows[t.row].downwind
	}
	return topoRows[t.row].upwind
}

// Lines writes the factor up.
func (t Topography) Lines() []calc.Line {
	var s calc.Sheet
	if t.row < 0 {
		s.Given("K_zt", t.Factor, "", "the figure has no such shape or exposure")
		return s.Lines()
	}
	s.Given("H", t.Hill.Rise/calc.Ft, "ft", "height of the hill, site")
	s.Given("L_h", t.Hill.Half/calc.Ft, "ft", "from the crest upwind to half the height, site")
	if t.State != HillCounts {
		s.Quoted("H_min", t.leastRise()/calc.Ft, "ft", "ASCE 7-16 26.8.1", calc.Recalled)
		s.Quoted("K_zt", t.Factor, "", "ASCE 7-16 26.8.1: "+t.State.String(), calc.Recalled)
		return s.Lines()
	}
	r := &topoRows[t.row]
	source := fmt.Sprintf("%s, %s, exposure %s", r.source, t.Hill.Shape, t.Hill.Exposure)
	s.Given("x", t.Hill.Distance/calc.Ft, "ft", "from the crest to the cover, site")
	s.Given("z", t.Hill.Height/calc.Ft, "ft", "height above the ground at the cover")
	s.Quoted("k", r.slope, "", source, r.status)
	s.Quoted("gamma", r.attenuation, "", source, r.status)
	s.Quoted("mu", t.reach(), "", source, r.status)
	s.Step("S", "min(H / L_h, 0.5)", t.Steepness, "", r.source+" note")
	s.Step("L", "max(L_h, 2 * H)", t.Length/calc.Ft, "ft", r.source+" note")
	s.Step("K_1", "k * S", t.Crest, "", r.source)
	s.Step("K_2", "max(0, 1 - x / (mu * L))", t.Away, "", r.source)
	s.Step("K_3", "exp(-gamma * z / L)", t.Above, "", r.source)
	s.Step("K_zt", "pow(1 + K_1 * K_2 * K_3, 2)", t.Factor, "", "ASCE 7-16 eq. 26.8-1")
	return s.Lines()
}
