package wind_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads/wind"
)

// pick is the case of a list.
func pick(t require.TestingT, list []wind.Half, name string, low bool, f wind.Flow) wind.Half {
	for _, h := range list {
		if h.Case == name && h.MeetsLow == low && h.Flow == f {
			return h
		}
	}
	require.Fail(t, "no such case", "%s, low %v, %s", name, low, f)
	return wind.Half{}
}

// cases are the eight of the figure: two directions, two cases, two flows.
func cases() (all []wind.Half) {
	for _, name := range []string{"A", "B"} {
		for _, low := range []bool{false, true} {
			for _, f := range []wind.Flow{wind.Clear, wind.Obstructed} {
				all = append(all, wind.Half{Case: name, MeetsLow: low, Flow: f})
			}
		}
	}
	return all
}

// Every cell of ASCE 7-16 Fig. 27.3-4 against an independent transcription of it.
func TestHalvesPublished(t *testing.T) {
	rows := calctest.Published(t, "free_roof_halves.csv")
	assert.Len(t, rows, 7*8, "seven angles, eight cases")
	for _, r := range rows {
		list := wind.Halves(cover(r.Num("theta deg")))
		h := pick(t, list, r.Text("case"), r.Num("gamma deg") == 180, wind.Flow(r.Text("flow")))
		about := fmt.Sprint(r.Num("theta deg"), r.Text("case"), r.Num("gamma deg"), r.Text("flow"))
		calctest.Near(t, r.Num("want"), h.Windward, r.Num("within"), "CNW", about, r.Text("source"))
		calctest.Near(t, r.Num("want lee"), h.Leeward, r.Num("within"), "CNL", about, r.Text("source"))
	}
}

// The net pressures of a roof of 15 degrees: 115 mph, exposure C, h 20 ft, 40 ft along
// the wind, clear flow.
func TestFreeRoofPressurePublished(t *testing.T) {
	s := place()
	s.Height = 20 * calc.Ft
	v := wind.NewVelocity(s)
	r15 := wind.Roof{Angle: 15, Height: s.Height, Depth: 40 * calc.Ft, Width: 100 * calc.Ft}
	for _, r := range calctest.Published(t, "free_roof_pressure.csv") {
		want, got := []float64{r.Num("want"), r.Num("want next")}, []float64(nil)
		if r.Text("direction") == "across" {
			h := pick(t, wind.Halves(r15), r.Text("case"), r.Num("gamma deg") == 180, wind.Clear)
			got = []float64{v.Net(h.Windward), v.Net(h.Leeward)}
		}
		for _, b := range wind.Bands() {
			if got == nil && b.Flow == wind.Clear && b.Case == r.Text("case") {
				want = append(want, r.Num("want last"))
				got = []float64{v.Net(b.Net[0]), v.Net(b.Net[1]), v.Net(b.Net[2])}
			}
		}
		require.Len(t, got, len(want))
		for i := range want {
			calctest.Near(t, want[i], got[i]/calc.PSF, r.Num("within"), r.Text("direction"), r.Text("case"), r.Text("source"))
		}
	}
	assert.Contains(t, r15.Outside(115), wind.TooLow, "h/L along the ridge is 0.20, which is said")
}

// Suction is wind under a raised edge, pressure is wind on top of a lowered one: that
// is how gamma 0 and 180 of the figure are read.
func TestHighEdgeLiftsLowEdgePresses(t *testing.T) {
	for _, angle := range []float64{7.5, 15, 22.5, 30, 37.5, 45} {
		for _, h := range wind.Halves(cover(angle)) {
			if h.MeetsLow && h.Flow == wind.Clear {
				assert.Positive(t, h.Windward, "%v degrees, case %s", angle, h.Case)
			}
			if !h.MeetsLow {
				assert.Negative(t, h.Windward, "%v degrees, case %s", angle, h.Case)
			}
		}
	}
}

// Trap: one case, one direction or one flow alone. Every list has all eight, and the
// worst uplift of a flat roof is not in the case of the worst downward load.
func TestTrapOneCaseAlone(t *testing.T) {
	for _, angle := range []float64{0, 4.9, 7.5, 12, 45} {
		list := wind.Halves(cover(angle))
		assert.Len(t, list, 8)
		for _, c := range cases() {
			pick(t, list, c.Case, c.MeetsLow, c.Flow)
		}
	}
	flat := wind.Halves(cover(2))
	assert.Positive(t, pick(t, flat, "A", false, wind.Clear).Windward)
	assert.Negative(t, pick(t, flat, "B", false, wind.Clear).Windward)
}

// Trap: wind along the ridge left out. Its first band lifts all of a flat roof as much
// as wind across lifts its worse half: 41 % more than the mean of the two halves.
func TestTrapWindAlongTheRidgeLeftOut(t *testing.T) {
	along, point, mean := 0.0, 0.0, 0.0
	for _, b := range wind.Bands() {
		along = min(along, b.Net[0])
	}
	for _, h := range wind.Halves(cover(2)) {
		point = min(point, h.Windward, h.Leeward)
		mean = min(mean, (h.Windward+h.Leeward)/2)
	}
	assert.Equal(t, -1.2, along, "ASCE 7-16 Fig. 27.3-7, case A, obstructed, up to h")
	assert.Equal(t, along, point)
	calctest.Close(t, 1.2/0.85, along/mean, 1e-12, 0, "-0.5 and -1.2 of case A, obstructed")
}

// Trap: interpolating between the flat row and that of 7.5 degrees. Below 5 degrees
// the flat row stands; from there to 7.5 both rows do.
func TestTrapInterpolatingBelowSevenAndAHalf(t *testing.T) {
	assert.Equal(t, wind.Halves(cover(0)), wind.Halves(cover(4.99)))
	both := wind.Halves(cover(6))
	assert.Len(t, both, 16)
	assert.Equal(t, wind.Halves(cover(0)), both[:8])
	for _, h := range both[8:] {
		assert.Equal(t, 7.5, h.Angle)
		row := pick(t, wind.Halves(cover(7.5)), h.Case, h.MeetsLow, h.Flow)
		assert.Equal(t, [2]float64{row.Windward, row.Leeward}, [2]float64{h.Windward, h.Leeward})
	}
}

// Trap: the two halves averaged. The windward half of a flat roof has −1.1 where the
// leeward has −0.1, so the anchors on one side carry far more than half.
func TestTrapHalvesAveraged(t *testing.T) {
	h := pick(t, wind.Halves(cover(2)), "B", false, wind.Clear)
	assert.Equal(t, -1.1, h.High(), "the wind meets the high edge")
	assert.Equal(t, -0.1, h.Low())
	h = pick(t, wind.Halves(cover(2)), "B", true, wind.Clear)
	assert.Equal(t, -1.1, h.Low(), "the wind meets the low edge")
	assert.Equal(t, -0.1, h.High())
}

// Trap: a roof lower than a quarter of its depth read in the figure of taller ones.
func TestTrapLowRoofInTheWrongFigure(t *testing.T) {
	low := wind.Roof{Angle: 2, Height: 8 * calc.Ft, Depth: 33 * calc.Ft, Width: 40 * calc.Ft}
	list := wind.Halves(low)
	assert.Len(t, list, 8)
	for _, h := range list {
		assert.Equal(t, h.Windward, h.Leeward)
		assert.Contains(t, h.Source, "27.3-7")
	}
	assert.Equal(t, -1.2, pick(t, list, "A", false, wind.Obstructed).Leeward)
	low.Depth = 32 * calc.Ft // h/L 0.25
	assert.Contains(t, wind.Halves(low)[0].Source, "27.3-4")
	sloped := wind.Roof{Angle: 6, Height: 8 * calc.Ft, Depth: 33 * calc.Ft, Width: 40 * calc.Ft}
	assert.Contains(t, sloped.Outside(115), wind.TooLow, "a sloped one is flagged")
}

// From 7.5 degrees the coefficients are continuous, and at each row they are the row's.
func TestHalvesAreContinuous(t *testing.T) {
	const step, steepest = 1e-7, 0.2 // degrees; CN per degree, above every slope of the figure
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.OneOf(rapid.Float64Range(7.5, 45-step), rapid.SampledFrom([]float64{15, 22.5, 30, 37.5})).Draw(t, "theta")
		before, after := wind.Halves(cover(angle)), wind.Halves(cover(angle+step))
		if angle-step > 7.5 {
			before = wind.Halves(cover(angle - step))
		}
		for i := range before {
			assert.InDelta(t, before[i].Windward, after[i].Windward, 2*step*steepest)
			assert.InDelta(t, before[i].Leeward, after[i].Leeward, 2*step*steepest)
		}
	})
}

func TestHalvesAreProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, r := wind.NewVelocity(site(t)), roof(t)
		for _, h := range wind.Halves(r) {
			lines := h.Lines(v)
			assert.NoError(t, calctest.Prove(lines))
			assert.Equal(t, v.Net(h.Leeward)/calc.PSF, lines[len(lines)-1].X)
		}
		for _, b := range wind.Bands() {
			assert.NoError(t, calctest.Prove(b.Lines(v)))
		}
	})
}

// Uplift never falls when the wind is faster, the roof higher or the hill steeper.
func TestUpliftNeverFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := site(t)
		more := s
		more.Speed *= rapid.Float64Range(1, 1.5).Draw(t, "faster")
		more.Hill *= rapid.Float64Range(1, 1.5).Draw(t, "hill")
		more.Height += rapid.Float64Range(0, 20).Draw(t, "higher") * calc.Ft
		v, w := wind.NewVelocity(s), wind.NewVelocity(more)
		for _, h := range wind.Halves(cover(rapid.Float64Range(0, 45).Draw(t, "theta"))) {
			for _, cn := range []float64{h.Windward, h.Leeward} {
				assert.GreaterOrEqual(t, max(0, -w.Net(cn)), max(0, -v.Net(cn)))
			}
		}
	})
}

// The bands grow weaker away from the windward edge, in every case.
func TestBands(t *testing.T) {
	list := wind.Bands()
	assert.Len(t, list, 4)
	for _, b := range list {
		up := b.Net[0] < 0
		assert.Equal(t, b.Case == "A", up, "case A lifts, B presses")
		for i := 1; i < 3; i++ {
			assert.LessOrEqual(t, b.Net[i]*b.Net[0], b.Net[i-1]*b.Net[0])
			assert.Equal(t, up, b.Net[i] < 0)
		}
	}
	list[0].Net[0] = 9
	assert.NotEqual(t, 9.0, wind.Bands()[0].Net[0], "the list is a copy")
	halves := wind.Halves(cover(0))
	halves[0].Windward = 9
	assert.NotEqual(t, 9.0, wind.Halves(cover(0))[0].Windward, "the list is a copy")
}
