package wind

import (
	_ "embed" // halves.csv and bands.csv

	"patiocover/calc"
)

//go:embed halves.csv
var halvesCSV string

//go:embed bands.csv
var bandsCSV string

// A Flow is how freely the air passes below the roof.
type Flow string

// The flows. Obstructed: more than half of the space below is blocked.
const (
	Clear      Flow = "clear"
	Obstructed Flow = "obstructed"
)

// A Half is one load case of wind across the ridge: a net coefficient on the half of
// the roof that the wind meets first and one on the other.
type Half struct {
	Angle    float64 // theta of the figure's row, degrees
	Case     string  // A or B
	MeetsLow bool    // the wind meets the low edge (gamma 180), else the high one
	Flow     Flow
	Windward float64     // CNW, net coefficient
	Leeward  float64     // CNL, net coefficient
	Source   string      // figure
	Status   calc.Status // how the row is known
}

// High returns the coefficient on the half of the roof at its high edge.
func (h Half) High() float64 {
	if h.MeetsLow {
		return h.Leeward
	}
	return h.Windward
}

// Low returns the coefficient on the half of the roof at its low edge.
func (h Half) Low() float64 {
	if h.MeetsLow {
		return h.Windward
	}
	return h.Leeward
}

// halves holds the rows of halves.csv: eight cases an angle, in rising angles.
var halves = calc.ReadTable("halves.csv", halvesCSV, func(r calc.Row) Half {
	return Half{
		Angle: r.Num("theta deg"), Case: r.Text("case"), MeetsLow: r.Num("gamma deg") == 180,
		Flow: Flow(r.Text("flow")), Windward: r.Num("CNW"), Leeward: r.Num("CNL"),
		Source: r.Text("source"), Status: r.Status(),
	}
})

// casesPerAngle is the number of rows of halves.csv at each angle.
const casesPerAngle = 8

// Halves returns every load case of wind across the ridge (ASCE 7-16 Fig. 27.3-4):
// both directions, both cases, both flows. Below 5 degrees they are those of a flat
// roof; from 5 to 7.5 degrees those of both neighboring rows, because the figure
// does not interpolate there; from 7.5 to 45 degrees they are interpolated. Above 45
// degrees there are none. A flat roof lower than a quarter of its depth takes the
// first band of Fig. 27.3-7 on both halves, the safe side of that figure.
func Halves(r Roof) []Half {
	switch {
	case !(r.Angle <= maxAngle):
		return nil
	case r.Angle < bothAbove && r.Height < lowRatio*r.Depth:
		return lowFlat(r.Angle)
	case r.Angle < bothAbove:
		return append([]Half(nil), halves[:casesPerAngle]...)
	case r.Angle < flatBelow:
		return append([]Half(nil), halves[:2*casesPerAngle]...)
	}
	i := casesPerAngle
	for i+2*casesPerAngle < len(halves) && halves[i+casesPerAngle].Angle <= r.Angle {
		i += casesPerAngle
	}
	out := append([]Half(nil), halves[i:i+casesPerAngle]...)
	for k := range out {
		out[k].between(halves[i+casesPerAngle+k], r.Angle)
	}
	return out
}

// between moves the case toward the next row of the figure.
func (h *Half) between(next Half, angle float64) {
	share := (angle - h.Angle) / (next.Angle - h.Angle)
	h.Windward += share * (next.Windward - h.Windward)
	h.Leeward += share * (next.Leeward - h.Leeward)
	h.Angle, h.Status = angle, h.Status.Weakest(next.Status)
}

// lowFlat are the cases of a flat roof whose height is below a quarter of its depth.
func lowFlat(angle float64) []Half {
	var out []Half
	for _, low := range []bool{false, true} {
		for _, b := range Bands() {
			out = append(out, Half{
				Angle: angle, Case: b.Case, MeetsLow: low, Flow: b.Flow,
				Windward: b.Net[0], Leeward: b.Net[0], Source: b.Source, Status: b.Status,
			})
		}
	}
	return out
}

// A Band is one load case of wind along the ridge: net coefficients by distance from
// the windward edge.
type Band struct {
	Case   string // A or B
	Flow   Flow
	Net    [3]float64  // CN up to h from the edge, to 2h, and beyond; coefficients
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
func Bands() []Band { return append([]Band(nil), bandRows...) }
