package wind

import (
	_ "embed" // zones.csv
	"fmt"
	"math"

	"patiocover/calc"
	"patiocover/loads"
)

//go:embed zones.csv
var zonesCSV string

type zoneRow struct {
	angle    float64 // degrees
	area     int     // 0 up to a², 1 up to 4a², 2 larger
	flow     Flow
	zone     int
	down, up float64 // CN, factors
	source   string
	status   calc.Status
}

// zoneRows holds the rows of zones.csv, in rising angles.
var zoneRows = calc.ReadTable("zones.csv", zonesCSV, func(r calc.Row) zoneRow {
	return zoneRow{
		angle: r.Num("theta deg"), area: int(r.Num("area")), flow: Flow(r.Text("flow")), zone: int(r.Num("zone")),
		down: r.Num("CN down"), up: r.Num("CN up"),
		source: r.Text("source"), status: r.Status(),
	}
})

// LeastNet is the least net pressure on components, either way, strength level (ASCE
// 7-16 30.2.2; read as 0.77 kPa in a restatement of a national code after ASCE 7-10).
const LeastNet = 16 * calc.PSF

// perimeterAngle is the slope from which the whole edge strip is taken as zone 3,
// because the plan of zones changes there (the safe side), degrees.
const perimeterAngle = 10.0

// ZoneWidth returns a, the width of the edge zones of a roof, in: the smaller of a tenth
// of the least plan dimension, in, and 0.4 of the mean roof height, in, but not less than
// 0.04 of the least dimension or 3 ft (ASCE 7-16 Fig. 28.3-1, 30.3-2 and 30.7-1, notes).
func ZoneWidth(least, height float64) float64 {
	return max(min(0.1*least, 0.4*height), 0.04*least, 3*calc.Ft)
}

// EffectiveArea returns the effective wind area of a member, in²: its span times its
// tributary width, which need not be less than a third of the span (ASCE 7-16 26.2).
// That of a fastener is the area that it holds, without this.
func EffectiveArea(span, width float64) float64 { return span * max(width, span/3) }

// A Place is where a component lies on the roof.
type Place uint8

// The places.
const (
	Interior Place = iota // in the edge strip, away from the corners
	SideEdge              // in a corner of the roof, or anywhere along a side
	Middle                // inside the edge strips
)

// zone is the zone of a place: from 10 degrees, where the plan of the zones changes,
// the whole edge strip counts as zone 3 and the inside as zone 2, the safe side.
func (p Place) zone(angle float64) int {
	zone := [...]int{Interior: 2, SideEdge: 3, Middle: 1}[p]
	if angle >= perimeterAngle {
		zone = min(3, zone+1)
	}
	return zone
}

// A Component is the net pressure on a part of the roof.
type Component struct {
	Velocity Velocity // at the roof
	Roof     Roof     // that it lies on
	Area     float64  // effective wind area, in²
	Width    float64  // a, in
	Zone     int      // 1 inside, 2 in the edge strip, 3 in a corner; one more from 10 degrees
	Class    int      // 0 up to a², 1 up to 4a², 2 larger
	Down     float64  // CN downward, factor
	Up       float64  // CN upward, factor, negative
	Pressure float64  // downward, lb/in², strength level
	Suction  float64  // upward, lb/in², strength level, positive
	down, up pair     // rows behind the coefficients
}

// A pair is two neighboring rows of zones.csv, or one twice, or none: −1.
type pair struct{ low, high int }

// NewComponent returns the net pressures p = q G CN on a part (ASCE 7-16 30.7, 7-22
// 30.5), not less than 16 psf either way. area is its effective wind area in in².
// flows are the flows to be enveloped, one or both. Between rows the angle is
// interpolated.
//
// Special case: without a flow, and for an angle outside 0 to 45 degrees, the
// pressures are not numbers, so that nothing passes by them.
func NewComponent(v Velocity, r Roof, area float64, at Place, flows []Flow) Component {
	c := Component{Velocity: v, Roof: r, Area: area, Width: ZoneWidth(min(r.Depth, r.Width), r.Height), Zone: at.zone(r.Angle)}
	switch square := c.Width * c.Width; {
	case area > 4*square:
		c.Class = 2
	case area > square:
		c.Class = 1
	}
	c.envelope(flows)
	c.Pressure = max(LeastNet, v.Net(c.Down))
	c.Suction = max(LeastNet, v.Net(-c.Up))
	return c
}

// envelope finds the worse coefficients of the flows.
func (c *Component) envelope(flows []Flow) {
	c.Down, c.Up = math.NaN(), math.NaN()
	c.down, c.up = pair{-1, -1}, pair{-1, -1}
	for i, f := range flows {
		p := c.rows(f)
		down, up := math.NaN(), math.NaN()
		if p.low >= 0 {
			low, high := &zoneRows[p.low], &zoneRows[p.high]
			b := between{low: low.angle, high: high.angle, theta: c.Roof.Angle}
			down, up = b.at(low.down, high.down), b.at(low.up, high.up)
		}
		if i == 0 || math.IsNaN(down) || down > c.Down {
			c.Down, c.down = down, p
		}
		if i == 0 || math.IsNaN(up) || up < c.Up {
			c.Up, c.up = up, p
		}
	}
}

// rows finds the rows below and above the angle of the roof.
func (c *Component) rows(f Flow) pair {
	p := pair{-1, -1}
	for i := range zoneRows {
		row := &zoneRows[i]
		if row.area != c.Class || row.zone != c.Zone || row.flow != f {
			continue
		}
		if row.angle <= c.Roof.Angle {
			p.low = i
		}
		if row.angle >= c.Roof.Angle {
			p.high = i
			break
		}
	}
	if p.low < 0 || p.high < 0 {
		return pair{-1, -1}
	}
	return p
}

// chapter is the section of components of open buildings, which the 2022 edition
// moved.
func chapter(e loads.Edition) string {
	if e == loads.ASCE722 {
		return "30.5"
	}
	return "30.7"
}

// Lines writes the pressures up.
func (c Component) Lines() []calc.Line {
	var s calc.Sheet
	edition := c.Velocity.Site.Edition
	clause := edition.String() + " "
	figure := fmt.Sprintf("%sFig. %s-1", clause, chapter(edition))
	c.Velocity.basis(&s)
	s.Given("b_min", min(c.Roof.Depth, c.Roof.Width)/calc.Ft, "ft", "least plan dimension, geometry")
	s.Given("h", c.Roof.Height/calc.Ft, "ft", "mean roof height, geometry")
	s.Step("a", "max(min(0.1 * b_min, 0.4 * h), 0.04 * b_min, 3)", c.Width/calc.Ft, "ft", figure+" notes")
	s.Given("A_e", c.Area/calc.SqFt, "ft²", "effective wind area, "+clause+"26.2")
	c.coefficient(&s, "CN_down", figure, c.down, func(r *zoneRow) float64 { return r.down }, c.Down)
	c.coefficient(&s, "CN_up", figure, c.up, func(r *zoneRow) float64 { return r.up }, c.Up)
	s.Quoted("p_min", LeastNet/calc.PSF, "psf", clause+"30.2.2", calc.Read)
	equation := fmt.Sprintf("%seq. %s-1", clause, chapter(edition))
	s.Step("p_down", "max(p_min, q_h * G * CN_down)", c.Pressure/calc.PSF, "psf", equation)
	s.Step("p_up", "max(p_min, -q_h * G * CN_up)", c.Suction/calc.PSF, "psf", equation+", upward")
	return s.Lines()
}

// areaClasses words the classes of effective area.
var areaClasses = [...]string{"area up to a²", "area up to 4a²", "area above 4a²"}

// coefficient writes one net coefficient with the rows that it comes from.
func (c *Component) coefficient(s *calc.Sheet, symbol, figure string, p pair, of func(*zoneRow) float64, x float64) {
	if p.low < 0 {
		s.Given(symbol, x, "", figure+": no row for the flow or the slope")
		return
	}
	low, high := &zoneRows[p.low], &zoneRows[p.high]
	source := fmt.Sprintf("%s (%s), zone %d, %s, %s flow", figure, low.source, c.Zone, areaClasses[c.Class], low.flow)
	b := between{
		low: low.angle, high: high.angle, theta: c.Roof.Angle, source: source, status: low.status.Weakest(high.status),
	}
	if p.low == p.high {
		s.Quoted(symbol, x, "", source, b.status)
		return
	}
	b.angles(s)
	b.step(s, symbol, of(low), of(high), x)
}
