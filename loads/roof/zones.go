package roof

import (
	_ "embed" // zones.csv
	"math"
	"slices"

	"patiocover/calc"
)

//go:embed zones.csv
var zonesCSV string

// Figures is an edition of the figures of components, which need not be that of the
// site: the tables of IRC 2012 to 2018 stand on 7-10.
type Figures uint8

// The editions.
const (
	Figures716 Figures = iota // ASCE 7-16
	Figures710                // ASCE 7-10
	Figures722                // ASCE 7-22
)

var figureNames = [...]string{Figures716: "7-16", Figures710: "7-10", Figures722: "7-22"}

// String names the edition, such as ASCE 7-16.
func (f Figures) String() string { return "ASCE " + figureNames[f] }

// A Shape is the form of a house roof.
type Shape uint8

// The shapes. A flat roof counts as a gable. A monoslope roof up to 3 degrees takes
// the figure of flat roofs (title of ASCE 7-16 Fig. 30.3-5A, from memory).
const (
	Gable Shape = iota
	Monoslope
)

var shapeNames = [...]string{Gable: "gable", Monoslope: "monoslope"}

// String names the shape.
func (s Shape) String() string { return shapeNames[s] }

// flatMonoslope is the slope up to which a monoslope roof counts as flat, degrees.
const flatMonoslope = 3.0

// A Zone is a zone of a roof as the figure prints it. Zones with e lie at the eave, n
// at the gable end, r at the ridge; primed zones of a monoslope roof at the high edge.
type Zone string

// The zones. Which of them a figure has, Zones tells.
const (
	Zone1      Zone = "1"
	Zone1Prime Zone = "1'" // of flat roofs of 7-16, beyond 1.2 h from the edge
	Zone2      Zone = "2"
	Zone2Prime Zone = "2'"
	Zone2Eave  Zone = "2e"
	Zone2End   Zone = "2n"
	Zone2Ridge Zone = "2r"
	Zone3      Zone = "3"
	Zone3Prime Zone = "3'"
	Zone3Eave  Zone = "3e"
	Zone3Ridge Zone = "3r"
	allZones   Zone = "all" // of the downward curves
)

// most is the largest number of printed points of a curve.
const most = 3

type zoneRow struct {
	figures  string
	shape    string
	from, to float64 // degrees: above from, up to to
	zone     Zone
	overhang bool
	down     bool
	area     [most]float64 // in²
	factor   [most]float64 // GCp
	points   int
	source   string
	status   calc.Status
}

// zoneRows holds the rows of zones.csv in order.
var zoneRows = calc.ReadTable("zones.csv", zonesCSV, func(r calc.Row) zoneRow {
	z := zoneRow{
		figures: r.Text("figures"), shape: r.Text("shape"), from: r.Num("from deg"), to: r.Num("to deg"),
		zone: Zone(r.Text("zone")), overhang: r.Text("overhang") == "yes", down: r.Text("direction") == "down",
		source: r.Text("source"), status: r.Status(),
	}
	for i, n := range [most]string{"1", "2", "3"} {
		if r.Has("A" + n + " ft2") {
			z.area[i], z.factor[i] = r.Num("A"+n+" ft2")*calc.SqFt, r.Num("GCp A"+n)
			z.points = i + 1
		}
	}
	return z
})

// holds reports whether the row is of the figure for the shape and slope.
func (z *zoneRow) holds(f Figures, shape Shape, angle float64) bool {
	if shape == Monoslope && angle <= flatMonoslope {
		shape = Gable
	}
	above := angle > z.from || z.from == 0 && angle >= 0
	return z.figures == figureNames[f] && z.shape == shapeNames[shape] && above && angle <= z.to
}

// Zones returns the zones that a figure has for a shape and a slope in degrees, in its
// order, on the roof or on its overhang. There are none where no figure is known.
func Zones(f Figures, shape Shape, angle float64, overhang bool) []Zone {
	var out []Zone
	for i := range zoneRows {
		z := &zoneRows[i]
		if !z.down && z.overhang == overhang && z.holds(f, shape, angle) && !slices.Contains(out, z.zone) {
			out = append(out, z.zone)
		}
	}
	return out
}

// A reading is a point on a curve of a figure.
type reading struct {
	row    int     // of zones.csv, or −1
	first  int     // printed point below the area; −1 when the curve is level there
	share  float64 // of the way to the next point, by the logarithm of the area, ratio
	factor float64 // GCp
}

// read finds the coefficient of an area in in² on the curve of a row.
func read(row int, area float64) reading {
	none := reading{row: -1, first: -1, factor: math.NaN()}
	if row < 0 || !(area > 0) {
		return none
	}
	z := &zoneRows[row]
	last := z.points - 1
	switch {
	case area <= z.area[0]:
		return reading{row: row, first: -1, factor: z.factor[0]}
	case area >= z.area[last]:
		return reading{row: row, first: -1, factor: z.factor[last]}
	}
	i := 0
	for area > z.area[i+1] {
		i++
	}
	share := math.Log(area/z.area[i]) / math.Log(z.area[i+1]/z.area[i])
	return reading{
		row: row, first: i, share: share,
		factor: z.factor[i] + share*(z.factor[i+1]-z.factor[i]),
	}
}

// write puts the coefficient on a sheet as symbol; A_e must stand above. The share is
// proved by the area that it gives back.
func (r reading) write(s *calc.Sheet, symbol, zone string) {
	if r.row < 0 {
		s.Given(symbol, r.factor, "", "no figure is known")
		return
	}
	z := &zoneRows[r.row]
	source := z.source + ", " + zone
	if r.first < 0 {
		s.Quoted(symbol, r.factor, "", source+", level part of the curve", z.status)
		return
	}
	a, b := r.first, r.first+1
	s.Quoted("A_1", z.area[a]/calc.SqFt, "ft²", source, z.status)
	s.Quoted("A_2", z.area[b]/calc.SqFt, "ft²", source, z.status)
	s.Quoted(symbol+"_1", z.factor[a], "", source+", at A_1", z.status)
	s.Quoted(symbol+"_2", z.factor[b], "", source+", at A_2", z.status)
	s.Given("u", r.share, "", "share of the way from A_1 to A_2 by the logarithm of the area; the next line is A_e again")
	area := z.area[a] * math.Pow(z.area[b]/z.area[a], r.share)
	s.Step("A_back", "A_1 * pow(A_2 / A_1, u)", area/calc.SqFt, "ft²", source+", logarithmic scale")
	s.Step(symbol, symbol+"_1 + u * ("+symbol+"_2 - "+symbol+"_1)", r.factor, "", source+", straight on the logarithmic scale")
}
