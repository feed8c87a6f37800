package wind

import (
	_ "embed" // halves.csv

	"patiocover/calc"
)

//go:embed halves.csv
var halvesCSV string

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
	Angle     float64     // theta that the coefficients are for, degrees
	Case      string      // A or B
	MeetsLow  bool        // the wind meets the low edge (gamma 180), else the high one
	Flow      Flow        // below the roof
	Windward  float64     // CNW, factor
	Leeward   float64     // CNL, factor
	Source    string      // figure
	Status    calc.Status // how the row is known
	low, high int         // rows of halves.csv when it lies between two, else equal
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

// halves holds the rows of halves.csv: eight cases an angle, in rising angles, in the
// same order at each.
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
// degrees, and for an angle that is not a number, there are none.
//
// A roof below 5 degrees that is lower than a quarter of its depth takes Fig. 27.3-7
// instead, its first band on both halves, the safe side of that figure.
func Halves(r Roof) []Half { return AppendHalves(nil, r) }

// MostHalves is the most that a roof has, for the length of a list.
const MostHalves = 2 * casesPerAngle

// AppendHalves appends those of [Halves] to a list.
func AppendHalves(out []Half, r Roof) []Half {
	switch {
	case !(r.Angle <= maxAngle):
		return out
	case r.Angle < bothAbove && r.Height < lowRatio*r.Depth:
		return lowFlat(out, r.Angle)
	case r.Angle < bothAbove:
		return append(out, halves[:casesPerAngle]...)
	case r.Angle < flatBelow:
		return append(out, halves[:2*casesPerAngle]...)
	}
	i := casesPerAngle
	for i+2*casesPerAngle < len(halves) && halves[i+casesPerAngle].Angle <= r.Angle {
		i += casesPerAngle
	}
	first := len(out)
	out = append(out, halves[i:i+casesPerAngle]...)
	for k := range casesPerAngle {
		out[first+k].move(i+k, i+casesPerAngle+k, r.Angle)
	}
	return out
}

// move puts the case between two rows of the figure.
func (h *Half) move(low, high int, angle float64) {
	h.low, h.high = low, high
	next := &halves[high]
	b := between{low: h.Angle, high: next.Angle, theta: angle}
	h.Windward, h.Leeward = b.at(h.Windward, next.Windward), b.at(h.Leeward, next.Leeward)
	h.Angle, h.Status = angle, h.Status.Weakest(next.Status)
}

// lowFlat are the cases of a flat roof whose height is below a quarter of its depth.
func lowFlat(out []Half, angle float64) []Half {
	for _, low := range []bool{false, true} {
		for _, b := range bandRows {
			out = append(out, Half{
				Angle: angle, Case: b.Case, MeetsLow: low, Flow: b.Flow,
				Windward: b.Net[0], Leeward: b.Net[0], Source: b.Source, Status: b.Status,
			})
		}
	}
	return out
}

// Lines writes the net pressures on both halves up.
func (h Half) Lines(v Velocity) []calc.Line {
	var s calc.Sheet
	v.basis(&s)
	if h.low == h.high {
		s.Quoted("CN_W", h.Windward, "", h.Source, h.Status)
		s.Quoted("CN_L", h.Leeward, "", h.Source, h.Status)
	} else {
		low, high := &halves[h.low], &halves[h.high]
		b := between{low: low.Angle, high: high.Angle, theta: h.Angle, source: h.Source, status: h.Status}
		b.angles(&s)
		b.step(&s, "CN_W", low.Windward, high.Windward, h.Windward)
		b.step(&s, "CN_L", low.Leeward, high.Leeward, h.Leeward)
	}
	clause := v.Site.Edition.String() + " eq. 27.3-2"
	s.Step("p_W", "q_h * G * CN_W", v.Net(h.Windward)/calc.PSF, "psf", clause+", windward half")
	s.Step("p_L", "q_h * G * CN_L", v.Net(h.Leeward)/calc.PSF, "psf", clause+", leeward half")
	return s.Lines()
}
