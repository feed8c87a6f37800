package wind

import (
	_ "embed" // zones.csv
	"fmt"

	"patiocover/calc"
)

//go:embed zones.csv
var zonesCSV string

type zoneRow struct {
	angle    float64 // degrees
	area     int     // 0 up to a², 1 up to 4a², 2 larger
	flow     Flow
	zone     int
	down, up float64 // CN, net coefficients
	source   string
	status   calc.Status
}

// zoneRows holds the rows of zones.csv, in rising angles.
var zoneRows = calc.ReadTable("zones.csv", zonesCSV, func(r calc.Row) zoneRow {
	return zoneRow{
		angle: r.Num("theta deg"), area: int(r.Num("area")), flow: Flow(r.Text("flow")), zone: int(r.Num("zone")),
		down: r.Num("CN down"), up: r.Num("CN up"), source: r.Text("source"), status: r.Status(),
	}
})

// leastNet is the least net pressure on components, either way, strength level (ASCE
// 7-16 30.2.2, from memory).
const leastNet = 16 * calc.PSF

// perimeterAngle is the slope from which the whole edge strip is taken as zone 3,
// because the plan of zones changes there (the safe side), degrees.
const perimeterAngle = 10.0

// ZoneWidth returns a, the width of the edge zones, in: the smaller of a tenth of the
// least plan dimension and 0.4 h, but not less than 0.04 of the least dimension or 3
// ft (ASCE 7-16 Fig. 30.7-1 notes).
func ZoneWidth(r Roof) float64 {
	least := min(r.Depth, r.Width)
	return max(min(0.1*least, 0.4*r.Height), 0.04*least, 3*calc.Ft)
}

// EffectiveArea returns the effective wind area of a member, in²: its span times its
// tributary width, which need not be less than a third of the span (ASCE 7-16 26.2).
func EffectiveArea(span, width float64) float64 { return span * max(width, span/3) }

// A Place is where a component lies on the roof.
type Place uint8

// The places.
const (
	Interior Place = iota // in the edge strip, away from the corners
	SideEdge              // in a corner of the roof
	Middle                // inside the edge strips
)

// A Component is the net pressure on a part of the roof.
type Component struct {
	Velocity Velocity
	Roof     Roof
	Area     float64 // effective wind area, in²
	Width    float64 // a, in
	Zone     int     // 2 inside, 3 at edges, and inside too from 10 degrees
	Class    int     // 0 up to a², 1 up to 4a², 2 larger
	Down     float64 // CN downward, net coefficient
	Up       float64 // CN upward, net coefficient, negative
	Pressure float64 // downward, lb/in², strength level
	Suction  float64 // upward, lb/in², strength level, positive
	status   calc.Status
}

// NewComponent returns the net pressures p = q G CN on a part (ASCE 7-16 30.7),
// not less than 16 psf either way. flows are the flows to be enveloped, one or both.
// Between rows the angle is interpolated.
func NewComponent(v Velocity, r Roof, area float64, at Place, flows []Flow) Component {
	c := Component{Velocity: v, Roof: r, Area: area, Width: ZoneWidth(r), Zone: zoneOf(r, at), status: calc.Read}
	switch square := c.Width * c.Width; {
	case area > 4*square:
		c.Class = 2
	case area > square:
		c.Class = 1
	}
	for _, f := range flows {
		down, up, status := coefficients(r.Angle, c.Class, c.Zone, f)
		c.Down, c.Up = max(c.Down, down), min(c.Up, up)
		c.status = c.status.Weakest(status)
	}
	c.Pressure = max(leastNet, v.Pressure*Gust*c.Down)
	c.Suction = max(leastNet, -v.Pressure*Gust*c.Up)
	return c
}

// zoneOf is the zone of a place: from 10 degrees, where the plan of the zones
// changes, the whole edge strip counts as zone 3 and the inside as zone 2.
func zoneOf(r Roof, at Place) int {
	zone := [...]int{Interior: 2, SideEdge: 3, Middle: 1}[at]
	if r.Angle >= perimeterAngle {
		zone = min(3, zone+1)
	}
	return zone
}

// coefficients interpolates the figure.
func coefficients(angle float64, area, zone int, f Flow) (down, up float64, status calc.Status) {
	var below, above *zoneRow
	for i := range zoneRows {
		row := &zoneRows[i]
		if row.area != area || row.zone != zone || row.flow != f {
			continue
		}
		if row.angle <= angle {
			below = row
			continue
		}
		above = row
		break
	}
	if above == nil {
		return below.down, below.up, below.status
	}
	share := (angle - below.angle) / (above.angle - below.angle)
	return below.down + share*(above.down-below.down), below.up + share*(above.up-below.up),
		below.status.Weakest(above.status)
}

// Lines writes the pressures up.
func (c Component) Lines() []calc.Line {
	var s calc.Sheet
	source := fmt.Sprintf("%s Fig. 30.7-1, zone %d", c.Velocity.Site.Edition, c.Zone)
	s.Given("q_h", c.Velocity.Pressure/calc.PSF, "psf", "velocity pressure, above")
	s.Quoted("G", Gust, "", "ASCE 7-16 26.11.1", calc.Read)
	s.Given("b_min", min(c.Roof.Depth, c.Roof.Width)/calc.Ft, "ft", "least plan dimension, geometry")
	s.Given("h", c.Roof.Height/calc.Ft, "ft", "mean roof height, geometry")
	s.Step("a", "max(min(0.1 * b_min, 0.4 * h), 0.04 * b_min, 3)", c.Width/calc.Ft, "ft", "ASCE 7-16 Fig. 30.7-1 notes")
	s.Given("A_e", c.Area/calc.SqFt, "ft²", "effective wind area, ASCE 7-16 26.2")
	s.Given("theta", c.Roof.Angle, "deg", "slope")
	s.Quoted("CN_down", c.Down, "", source+", worse of the flows", c.status)
	s.Quoted("CN_up", c.Up, "", source+", worse of the flows", c.status)
	s.Quoted("p_min", leastNet/calc.PSF, "psf", "ASCE 7-16 30.2.2", calc.Recalled)
	s.Step("p_down", "max(p_min, q_h * G * CN_down)", c.Pressure/calc.PSF, "psf", "ASCE 7-16 eq. 30.7-1")
	s.Step("p_up", "max(p_min, -q_h * G * CN_up)", c.Suction/calc.PSF, "psf", "ASCE 7-16 eq. 30.7-1, upward")
	return s.Lines()
}
