package roof

import (
	_ "embed" // gcpf.csv
	"math"

	"patiocover/calc"
)

//go:embed gcpf.csv
var gcpfCSV string

type gcpfRow struct {
	along        bool    // load case 2
	angle        float64 // degrees
	leeward, end bool
	factor       float64 // GCpf
	source       string
	status       calc.Status
}

// gcpfRows holds the rows of gcpf.csv, in rising angles for each surface.
var gcpfRows = calc.ReadTable("gcpf.csv", gcpfCSV, func(r calc.Row) gcpfRow {
	return gcpfRow{
		along: r.Text("case") == "2", angle: r.Num("theta deg"), leeward: r.Text("surface") == "3",
		end: r.Text("end") == "yes", factor: r.Num("GCpf"), source: r.Text("source"), status: r.Status(),
	}
})

// An Outside is the external coefficient of one half of the roof of a low-rise
// building, of both load cases.
type Outside struct {
	Angle     float64 // theta, slope, degrees
	Leeward   bool    // surface 3, away from the wind; else surface 2
	End       bool    // in the end zone, 2a from a gable end
	Across    float64 // GCpf of load case 1, wind across the ridge, factor
	Along     float64 // GCpf of load case 2, wind along it, factor
	Up        float64 // the larger suction of the two, factor, positive upward
	low, high int     // rows of load case 1, or −1
	row       int     // row of load case 2, or −1
}

// NewOutside returns GCpf of a half of the roof (ASCE 7-16 Fig. 28.3-1), between the
// printed angles by a straight line. The suction of surface 2 counts on the whole
// half, though the figure ends it at 2.5 eave heights from the edge: the safe side.
//
// Special case: the factors are not numbers outside 0 to 45 degrees.
func NewOutside(angle float64, leeward, end bool) Outside {
	o := Outside{Angle: angle, Leeward: leeward, End: end, Across: math.NaN(), Along: math.NaN()}
	o.low, o.high = o.rows(false)
	o.row, _ = o.rows(true)
	if o.low >= 0 {
		low, high := &gcpfRows[o.low], &gcpfRows[o.high]
		o.Across = low.factor
		if o.low != o.high {
			o.Across += (angle - low.angle) / (high.angle - low.angle) * (high.factor - low.factor)
		}
		o.Along = gcpfRows[o.row].factor
	}
	o.Up = max(-o.Across, -o.Along)
	return o
}

// rows finds the rows below and above the angle, equal where they print the same.
func (o *Outside) rows(along bool) (low, high int) {
	low, high = -1, -1
	for i := range gcpfRows {
		r := &gcpfRows[i]
		if r.along != along || r.leeward != o.Leeward || r.end != o.End {
			continue
		}
		if r.angle <= o.Angle {
			low = i
		}
		if r.angle >= o.Angle {
			high = i
			break
		}
	}
	if low < 0 || high < 0 {
		return -1, -1
	}
	if gcpfRows[low].factor == gcpfRows[high].factor {
		high = low
	}
	return low, high
}

// Lines writes the coefficient up.
func (o Outside) Lines() []calc.Line {
	var s calc.Sheet
	if o.low < 0 {
		s.Given("g_up", o.Up, "", "ASCE 7-16 Fig. 28.3-1: no row for the slope")
		return s.Lines()
	}
	low, high, along := &gcpfRows[o.low], &gcpfRows[o.high], &gcpfRows[o.row]
	where := ", surface 2"
	if o.Leeward {
		where = ", surface 3"
	}
	if o.End {
		where += "E"
	}
	s.Given("theta", o.Angle, "deg", "slope of the house roof, geometry")
	if o.low == o.high {
		s.Quoted("GC_1", o.Across, "", low.source+where+", load case 1", low.status)
	}
	if o.low != o.high {
		s.Quoted("theta_1", low.angle, "deg", low.source+", angle below", low.status)
		s.Quoted("theta_2", high.angle, "deg", high.source+", angle above", high.status)
		s.Quoted("GC_a", low.factor, "", low.source+where+", angle below", low.status)
		s.Quoted("GC_b", high.factor, "", high.source+where+", angle above", high.status)
		s.Step("GC_1", "GC_a + (theta - theta_1) / (theta_2 - theta_1) * (GC_b - GC_a)",
			o.Across, "", low.source+", load case 1, straight between the angles")
	}
	s.Quoted("GC_2", o.Along, "", along.source+where+", load case 2", along.status)
	s.Step("g_up", "max(-GC_1, -GC_2)", o.Up, "", "the larger suction of the load cases")
	return s.Lines()
}
