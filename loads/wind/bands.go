package wind

import (
	_ "embed" // bands.csv

	"patiocover/calc"
)

//go:embed bands.csv
var bandsCSV string

// A Band is one load case of wind along the ridge: net coefficients by distance from
// the windward edge.
type Band struct {
	Case   string      // A or B
	Flow   Flow        // below the roof
	Net    [3]float64  // CN up to h from the edge, to 2h, and beyond; factors
	Source string      // figure
	Status calc.Status // how the rows are known
}

// bandRows holds the cases of bands.csv.
var bandRows = gatherBands()

func gatherBands() []Band {
	var out []Band
	for _, r := range calc.ReadTable("bands.csv", bandsCSV, func(r calc.Row) calc.Row { return r }) {
		i := 0
		for i < len(out) && (out[i].Case != r.Text("case") || string(out[i].Flow) != r.Text("flow")) {
			i++
		}
		if i == len(out) {
			out = append(out, Band{
				Case: r.Text("case"), Flow: Flow(r.Text("flow")), Source: r.Text("source"), Status: r.Status(),
			})
		}
		out[i].Net[int(r.Num("band"))] = r.Num("CN")
		out[i].Status = out[i].Status.Weakest(r.Status())
	}
	return out
}

// Bands returns every load case of wind along the ridge (ASCE 7-16 Fig. 27.3-7),
// for free roofs of any slope up to 45 degrees and for either direction.
func Bands() []Band { return AppendBands(nil) }

// AppendBands appends those of [Bands] to a list.
func AppendBands(out []Band) []Band { return append(out, bandRows...) }

// Lines writes the net pressures of the bands up.
func (b Band) Lines(v Velocity) []calc.Line {
	var s calc.Sheet
	v.basis(&s)
	clause := v.Site.Edition.String() + " eq. 27.3-2"
	for i, where := range [...]string{"up to h from the edge", "from h to 2h", "beyond 2h"} {
		n := string(rune('1' + i))
		s.Quoted("CN_"+n, b.Net[i], "", b.Source+", "+where, b.Status)
		s.Step("p_"+n, "q_h * G * CN_"+n, v.Net(b.Net[i])/calc.PSF, "psf", clause+", "+where)
	}
	return s.Lines()
}
