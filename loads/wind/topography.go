package wind

import (
	_ "embed" // topography.csv
	"math"

	"patiocover/calc"
)

//go:embed topography.csv
var topographyCSV string

type shapeRow struct {
	shape, exposure             string
	k1, gamma, upwind, downwind float64 // factors of Fig. 26.8-1
	source                      string
	status                      calc.Status
}

// shapeRows holds the rows of topography.csv.
var shapeRows = calc.ReadTable("topography.csv", topographyCSV, func(r calc.Row) shapeRow {
	return shapeRow{
		shape: r.Text("shape"), exposure: r.Text("exposure"), k1: r.Num("K1 over H/Lh"), gamma: r.Num("gamma"),
		upwind: r.Num("mu upwind"), downwind: r.Num("mu downwind"), source: r.Text("source"), status: r.Status(),
	}
})

// steepest is the H/Lh from which a hill is taken as no steeper (ASCE 7-16 Fig.
// 26.8-1 note 2).
const steepest = 0.5

// A Hill is an isolated ridge, escarpment or hill that speeds the wind up.
type Hill struct {
	Shape    string  // ridge, escarpment or hill
	Exposure string  // B, C or D
	Height   float64 // H, in
	Half     float64 // Lh, distance upwind of the crest to half of the height, in
	Distance float64 // x, distance of the site from the crest, in, not negative
	Downwind bool    // the site lies beyond the crest
	Above    float64 // z, height above the ground at the site, in
}

// A SpeedUp is the topographic factor of a site on a hill.
type SpeedUp struct {
	Hill   Hill    // as given
	Slope  float64 // H/Lh as used, at most 0.5, ratio
	Length float64 // Lh as used, not less than 2H, in
	Reach  float64 // mu, factor
	Shape  float64 // K1, factor
	Place  float64 // K2, factor
	Rise   float64 // K3, factor
	Factor float64 // Kzt, factor
	row    int     // of topography.csv, or −1
}

// unknownShape stands for a shape or exposure that is not in the table.
var unknownShape = shapeRow{
	k1: math.NaN(), gamma: math.NaN(), upwind: math.NaN(), downwind: math.NaN(), source: "unknown shape or exposure",
}

// figure is the row of the hill.
func (s SpeedUp) figure() *shapeRow {
	if s.row < 0 {
		return &unknownShape
	}
	return &shapeRows[s.row]
}

// NewSpeedUp returns Kzt = (1 + K1 K2 K3)² (ASCE 7-16 eq. 26.8-1). The conditions
// under which a hill counts at all are not tested: a hill that is given counts.
//
// Special case: the factor is not a number for a shape or exposure that is not in the
// figure, so that nothing passes by it.
func NewSpeedUp(h Hill) SpeedUp {
	s := SpeedUp{Hill: h, row: -1}
	for i := range shapeRows {
		if shapeRows[i].shape == h.Shape && shapeRows[i].exposure == h.Exposure {
			s.row = i
		}
	}
	r := s.figure()
	s.Slope = min(steepest, h.Height/h.Half)
	s.Length = max(h.Half, 2*h.Height)
	s.Reach = r.upwind
	if h.Downwind {
		s.Reach = r.downwind
	}
	s.Shape = r.k1 * s.Slope
	s.Place = max(0, 1-h.Distance/(s.Reach*s.Length))
	s.Rise = math.Exp(-r.gamma * h.Above / s.Length)
	s.Factor = (1 + s.Shape*s.Place*s.Rise) * (1 + s.Shape*s.Place*s.Rise)
	return s
}

// Lines writes the factor up.
func (s SpeedUp) Lines() []calc.Line {
	var sheet calc.Sheet
	r := s.figure()
	source := r.source + ", " + r.shape + " in exposure " + r.exposure
	sheet.Given("H", s.Hill.Height/calc.Ft, "ft", "height of the hill, input site.hill_height_ft")
	sheet.Given("L_0", s.Hill.Half/calc.Ft, "ft", "to half of the height, input site.hill_half_length_ft")
	sheet.Given("x", s.Hill.Distance/calc.Ft, "ft", "distance from the crest, input site.hill_distance_ft")
	sheet.Given("z_hill", s.Hill.Above/calc.Ft, "ft", "mean roof height, geometry")
	sheet.Quoted("k_1", r.k1, "", source, r.status)
	sheet.Quoted("gamma", r.gamma, "", source, r.status)
	sheet.Quoted("mu", s.Reach, "", source, r.status)
	sheet.Step("s_hill", "min(0.5, H / L_0)", s.Slope, "", "ASCE 7-16 Fig. 26.8-1 note 2")
	sheet.Step("L_h", "max(L_0, 2 * H)", s.Length/calc.Ft, "ft", "ASCE 7-16 Fig. 26.8-1 note 2")
	sheet.Step("K_1", "k_1 * s_hill", s.Shape, "", "ASCE 7-16 Fig. 26.8-1")
	sheet.Step("K_2", "max(0, 1 - x / (mu * L_h))", s.Place, "", "ASCE 7-16 Fig. 26.8-1")
	sheet.Step("K_3", "exp(-gamma * z_hill / L_h)", s.Rise, "", "ASCE 7-16 Fig. 26.8-1")
	sheet.Step("K_zt", "pow(1 + K_1 * K_2 * K_3, 2)", s.Factor, "", "ASCE 7-16 eq. 26.8-1")
	return sheet.Lines()
}
