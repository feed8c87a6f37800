package dowel

import (
	_ "embed"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// Sheet steel of straps and ties: ASTM A653 structural grade 33.
const (
	sheetYield    = 33_000 * calc.PSI // F_y
	sheetUltimate = 45_000 * calc.PSI // F_u
	holeOver      = 3.0 / 32          // in over the nail: 1/32 of clearance (practice), 1/16 of damage (AISC 360-16 B4.3b)
)

//go:embed gauges.csv
var gaugeCSV string

type gaugeRow struct {
	gauge, source string
	thickness     float64 // in
	status        calc.Status
}

var gaugeRows = calc.ReadTable("gauges.csv", gaugeCSV, func(r calc.Row) gaugeRow {
	return gaugeRow{gauge: r.Text("gauge"), thickness: r.Num("t in"), source: r.Text("source"), status: r.Status()}
})

// A Sheet is sheet steel of one gauge.
type Sheet struct{ row gaugeRow }

// FindSheet returns the steel of a gauge, such as 20. It reports whether the table has
// it.
func FindSheet(gauge string) (Sheet, bool) {
	for _, r := range gaugeRows {
		if r.gauge == gauge {
			return Sheet{r}, true
		}
	}
	return Sheet{}, false
}

// Thickness of the sheet, in, without coating.
func (s Sheet) Thickness() float64 { return s.row.thickness }

// A Strap is the check of a plain strap, nailed at each end, in tension: the weaker of
// its nails and its steel.
type Strap struct {
	Nails    Shear   // of the end with fewer nails, with its demand
	Sheet    Sheet   // steel
	Width    float64 // in
	Holes    int     // nails abreast in one section
	Gross    float64 // A_g, in²
	Net      float64 // A_n, in²
	Yielding float64 // lb, of the gross section
	Rupture  float64 // lb, of the net section
	Capacity float64 // lb
	method   lumber.Method
}

// NewStrap checks a strap whose nails are checked already: their side member is the
// sheet. Allowable stress takes 0.6 F_y on the gross and 0.5 F_u on the net section,
// load and resistance factor design 0.9 and 0.75 (AISC 360-16 D2). No factor of load
// duration stands on the steel.
func NewStrap(nails Shear, sheet Sheet, width float64, abreast int) Strap {
	s := Strap{Nails: nails, Sheet: sheet, Width: width, Holes: abreast, method: nails.Factors.Conditions.Method}
	s.Gross = width * sheet.row.thickness
	s.Net = max(0, width-float64(abreast)*(nails.Lateral.Fastener.Diameter+holeOver)) * sheet.row.thickness
	yielding, rupture := s.parts()
	s.Yielding, s.Rupture = yielding*sheetYield*s.Gross, rupture*sheetUltimate*s.Net
	s.Capacity = min(nails.Capacity, s.Yielding, s.Rupture)
	return s
}

// parts are the parts of F_y and F_u that count, factors.
func (c *Strap) parts() (yielding, rupture float64) {
	if c.method == lumber.LRFD {
		return resistanceRod, 0.75 // AISC 360-16 D2
	}
	return allowableRod, 0.5 // AISC 360-16 D2
}

// Ratio is the demand on the nails over the capacity of the strap.
func (c Strap) Ratio() float64 { return calc.Ratio(c.Nails.Demand, c.Capacity) }

// Explain writes the check out.
func (c Strap) Explain() calc.Check {
	var s calc.Sheet
	s.Append(c.Nails.Explain().Lines)
	s.Quoted("t_1", c.Sheet.row.thickness, "in", c.Sheet.row.gauge+" gauge, "+c.Sheet.row.source, c.Sheet.row.status)
	s.Given("w", c.Width, "in", "width of the strap")
	s.Given("n_h", float64(c.Holes), "", "nails abreast")
	s.Quoted("F_y", sheetYield, "psi", "ASTM A653 Grade 33", calc.Recalled)
	s.Quoted("F_u", sheetUltimate, "psi", "ASTM A653 Grade 33", calc.Recalled)
	yielding, rupture := c.parts()
	s.Quoted("f_y", yielding, "", "AISC 360-16 D2, "+c.method.String(), calc.Recalled)
	s.Quoted("f_u", rupture, "", "AISC 360-16 D2, "+c.method.String(), calc.Recalled)
	s.Step("A_g", "w * t_1", c.Gross, "in2", "gross section")
	s.Step("A_n", "max(0, w - n_h * (D + 3.0 / 32)) * t_1", c.Net, "in2", "AISC 360-16 B4.3b, holes 1/32 in. over the nail")
	s.Step("T_y", "f_y * F_y * A_g", c.Yielding, "lb", "AISC 360-16 eq. D2-1")
	s.Step("T_u", "f_u * F_u * A_n", c.Rupture, "lb", "AISC 360-16 eq. D2-2")
	s.Step("T_adj", "min(V_adj, T_y, T_u)", c.Capacity, "lb", "weaker of nails and steel")
	return s.Check("strap in tension", "V", "T_adj")
}
