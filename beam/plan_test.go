package beam_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

func TestPlanRefuses(t *testing.T) {
	l, err := beam.NewLine(240, []float64{0, 120, 240})
	require.NoError(t, err)
	cases := []struct {
		name string
		line *beam.Line
		load beam.Load
		want string
	}{
		{"no line", new(beam.Line), beam.Point(0, 1), "line: missing: a line with supports"},
		{"point before the tip", l, beam.Point(-1, 1), "cases[1][1].at: -1 in is not 0 to 240 in"},
		{"point past the tip", l, beam.Point(241, 1), "cases[1][1].at: 241 in is not 0 to 240 in"},
		{"point nowhere", l, beam.Point(nan, 1), "cases[1][1].at: NaN in is not 0 to 240 in"},
		{"point unknown", l, beam.Point(1, nan), "cases[1][1].force: NaN lb is not"},
		{"point without end", l, beam.Point(1, -inf), "cases[1][1].force: -Inf lb is not"},
		{"line load past the tip", l, beam.Uniform(0, 250, 1), "cases[1][1].to: 250 in is not 0 to 240 in"},
		{"line load backward", l, beam.Uniform(100, 50, 1), "cases[1][1].to: 50 in is not 100 to 240 in"},
		{"line load unknown", l, beam.Linear(0, 50, nan, 1), "cases[1][1].start: NaN lb/in is not"},
		{"line load without end", l, beam.Linear(0, 50, 1, inf), "cases[1][1].end: +Inf lb/in is not"},
		{"line load nowhere", l, beam.Uniform(nan, nan, 1), "cases[1][1].from: NaN in is not 0 to 240 in"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p, err := beam.NewPlan(c.line, [][]beam.Load{nil, {beam.Point(1, 1), c.load}})
			assert.Nil(t, p)
			var input *calc.InputError
			require.ErrorAs(t, err, &input)
			assert.ErrorContains(t, err, c.want)
		})
	}
}

func TestPlanRefusesEveryWrongLoad(t *testing.T) {
	l, err := beam.NewLine(240, []float64{0, 240})
	require.NoError(t, err)
	_, err = beam.NewPlan(l, [][]beam.Load{{beam.Point(300, 1)}, {beam.Uniform(-9, 300, nan)}})
	var input *calc.InputError
	require.ErrorAs(t, err, &input)
	var paths []string
	for _, f := range input.Faults {
		paths = append(paths, f.Path)
	}
	assert.Equal(t, []string{
		"cases[0][0].at", "cases[1][0].from", "cases[1][0].to", "cases[1][0].start", "cases[1][0].end",
	}, paths)
}

// What was not solved is not answered.
func TestPlanPanicsUnset(t *testing.T) {
	var r beam.Response
	assert.PanicsWithValue(t, "beam: the plan was not set", func() { new(beam.Plan).Run(nil, 1, &r) })
	p := plan(t, 240, []float64{0, 240}, []beam.Load{beam.Uniform(0, 240, 10)})
	assert.PanicsWithValue(t, "beam: 2 factors for 1 cases", func() { p.Run([]float64{1, 1}, 1, &r) })
	require.Error(t, p.Set(p.Line(), [][]beam.Load{{beam.Point(-5, 1)}}))
	assert.PanicsWithValue(t, "beam: the plan was not set", func() { p.Run([]float64{1}, 1, &r) })
}

// A factor or a stiffness out of reason spoils every number: none is taken for safe.
func TestRunSpoilsWhatIsUnknown(t *testing.T) {
	p := plan(t, 264, []float64{12, 132, 252}, []beam.Load{beam.Uniform(0, 264, 10)}, []beam.Load{beam.Point(50, 1)})
	cases := []struct {
		name      string
		factors   []float64
		stiffness float64
		forces    bool // whether forces are spoilt too
	}{
		{"factor unknown", []float64{1, nan}, 1e8, true},
		{"first factor unknown", []float64{nan, 0}, 1e8, true},
		{"factor without end", []float64{inf, 1}, 1e8, true},
		{"factor beyond reason", []float64{1, -1e101}, 1e8, true},
		{"stiffness unknown", []float64{1, 1}, nan, false},
		{"stiffness zero", []float64{1, 1}, 0, false},
		{"stiffness negative", []float64{1, 1}, -1e8, false},
		{"stiffness without end", []float64{1, 1}, inf, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var r beam.Response
			var l beam.Location
			p.Run(c.factors, c.stiffness, &r)
			assertSpoilt(t, r)
			p.Locate(c.factors, c.stiffness, &l)
			for _, e := range l.Bays {
				assert.True(t, math.IsNaN(e.MomentMax.Value) && math.IsNaN(e.DeflectionMin.At))
			}
			s := p.At(c.factors, c.stiffness, 60)
			assert.True(t, math.IsNaN(s.Moment) && math.IsNaN(s.ShearLeft) && math.IsNaN(s.Deflection))
			p.Forces(c.factors, &r)
			assert.Equal(t, c.forces, math.IsNaN(r.Bays[1].MomentMax))
			assert.True(t, math.IsNaN(r.Bays[1].DeflectionMax))
			if c.forces {
				assertSpoilt(t, r)
			}
		})
	}
}

func assertSpoilt(t *testing.T, r beam.Response) {
	t.Helper()
	for _, b := range r.Bays {
		for _, x := range []float64{
			b.ShearMax, b.ShearMin, b.ShearLeft, b.ShearRight, b.MomentMax, b.MomentMin, b.DeflectionMax,
			b.DeflectionMin, b.ShearAbs(), b.MomentAbs(), b.DeflectionAbs(), r.LeftTip, r.RightTip,
		} {
			assert.True(t, math.IsNaN(x))
		}
	}
	for i := range r.Reactions {
		assert.True(t, math.IsNaN(r.Reactions[i]) && math.IsNaN(r.SupportMoments[i]))
	}
}

// The largest loads and factors that are let in still give numbers.
func TestRunStaysFiniteAtTheLimits(t *testing.T) {
	p := plan(t, 1e6, []float64{0, 5e5, 1e6}, []beam.Load{beam.Linear(0, 1e6, 1e100, -1e100)},
		[]beam.Load{beam.Uniform(0, 1e6, -1e100)})
	var r beam.Response
	p.Run([]float64{1e100, 1e100}, 1, &r)
	for _, b := range r.Bays[1:3] {
		for _, x := range []float64{b.ShearMax, b.ShearMin, b.MomentMax, b.MomentMin, b.DeflectionMax, b.DeflectionMin} {
			assert.False(t, math.IsNaN(x) || math.IsInf(x, 0))
		}
	}
}

func TestNothingIsNothing(t *testing.T) {
	var r beam.Response
	for _, p := range []*beam.Plan{
		plan(t, 264, []float64{12, 132, 252}),
		plan(t, 264, []float64{12, 132, 252}, nil),
		plan(t, 264, []float64{12, 132, 252}, []beam.Load{{}, beam.Point(50, 0), beam.Linear(30, 30, 5, 7)}),
	} {
		p.Run(slices.Repeat([]float64{1}, p.Cases()), 1e8, &r)
		assert.Equal(t, make([]beam.Bay, 4), r.Bays)
		assert.Equal(t, make([]float64, 3), r.Reactions)
		assert.Equal(t, make([]float64, 3), r.SupportMoments)
	}
}

// What one combination left behind does not show in the next.
func TestRunForgetsTheLastCombination(t *testing.T) {
	p := plan(t, 264, []float64{12, 132, 252}, []beam.Load{beam.Uniform(0, 264, 10)}, []beam.Load{beam.Point(60, 500)},
		[]beam.Load{beam.Point(99, 700)})
	var r, fresh beam.Response
	for _, factors := range [][]float64{{1, 1, 1}, {0, 0, 0}, {0, 1, 0}, {1, 0, 1}, {0, 0, 0}, {0, 0, 2}} {
		p.Run(factors, 1e8, &r)
		plan(t, 264, []float64{12, 132, 252}, []beam.Load{
			beam.Uniform(0, 264, 10*factors[0]), beam.Point(60, 500*factors[1]), beam.Point(99, 700*factors[2]),
		}).Run([]float64{1}, 1e8, &fresh)
		for i, want := range fresh.Bays {
			calctest.Close(t, want.MomentMax, r.Bays[i].MomentMax, 1e-12, 1e-9, factors, i)
			calctest.Close(t, want.ShearMin, r.Bays[i].ShearMin, 1e-12, 1e-9, factors, i)
			calctest.Close(t, want.DeflectionMax, r.Bays[i].DeflectionMax, 1e-12, 1e-12, factors, i)
		}
	}
}

func TestAtPlaces(t *testing.T) {
	// A point load P at the middle of a simple span, with an overhang to the right.
	p := plan(t, 150, []float64{0, 120}, []beam.Load{beam.Point(60, 100)})
	cases := []struct {
		name                        string
		x, left, right, moment, sag float64
	}{
		{"left tip and support", 0, 0, 50, 0, 0},
		{"in the first half", 30, 50, 50, 1500, 100 * 120 * 120 * 120 / 48.0 * 11 / 16},
		{"under the load", 60, 50, -50, 3000, 100 * 120 * 120 * 120 / 48.0},
		{"right support", 120, -50, 0, 0, 0},
		{"right tip", 150, 0, 0, 0, -100 * 120 * 120 / 16.0 * 30},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := p.At([]float64{1}, 1, c.x)
			calctest.Near(t, c.left, s.ShearLeft, 1e-9)
			calctest.Near(t, c.right, s.ShearRight, 1e-9)
			calctest.Near(t, c.moment, s.Moment, 1e-9)
			calctest.Near(t, c.sag, s.Deflection, 1e-6)
		})
	}
	for _, x := range []float64{-1, 151, nan, inf} {
		assert.True(t, math.IsNaN(p.At([]float64{1}, 1, x).Moment), x)
	}
	assert.Equal(t, []float64{7, 0, 60, 120, 150}, p.AppendCuts([]float64{7}))
	assert.Equal(t, 1, p.Cases())
}

func TestLoadResultants(t *testing.T) {
	cases := []struct {
		name          string
		load          beam.Load
		total, moment float64
		point         bool
	}{
		{"nothing", beam.Load{}, 0, 0, false},
		{"point", beam.Point(30, 100), 100, 3000, true},
		{"uniform", beam.Uniform(10, 30, 5), 100, 2000, false},
		{"rising triangle", beam.Linear(10, 40, 0, 6), 90, 90 * 30, false},
		{"falling triangle", beam.Linear(10, 40, 6, 0), 90, 90 * 20, false},
		{"couple", beam.Linear(0, 60, -1, 1), 0, 2 * 15 * 20, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			calctest.Near(t, c.total, c.load.Total(), 1e-12)
			calctest.Near(t, c.moment, c.load.Moment(), 1e-9)
			assert.Equal(t, c.point, c.load.Concentrated())
		})
	}
}

func TestSetAllocatesNothing(t *testing.T) {
	w := span3()
	line, err := beam.NewLine(w.length, w.supports)
	require.NoError(t, err)
	var p beam.Plan
	require.NoError(t, p.Set(line, w.cases))
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		if line.Set(w.length, w.supports) != nil || p.Set(line, w.cases) != nil {
			panic("refused")
		}
	}))
	shifted := []float64{24.7, 144.7, 264.7, 384.7} // the same spans after rounding
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		if line.Set(w.length+1, shifted) != nil {
			panic("refused")
		}
	}))
}

func TestRunAllocatesNothing(t *testing.T) {
	varying := [][]beam.Load{{beam.Linear(0, 408, 1, -2)}, {beam.Point(100, 50), beam.Uniform(30, 200, -3)}}
	cases := []struct {
		name string
		plan *beam.Plan
	}{
		{"uniform", new(workload(span3())).plan(t)},
		{"varying", plan(t, 408, []float64{24, 144, 264, 384}, varying...)},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var r beam.Response
			var l beam.Location
			factors := []float64{1, 28}
			c.plan.Run(factors, 1e8, &r)
			c.plan.Locate(factors, 1e8, &l)
			assert.Zero(t, testing.AllocsPerRun(100, func() { c.plan.Run(factors, 1e8, &r) }))
			assert.Zero(t, testing.AllocsPerRun(100, func() { c.plan.Forces(factors, &r) }))
			assert.Zero(t, testing.AllocsPerRun(100, func() { c.plan.Locate(factors, 1e8, &l) }))
			assert.Zero(t, testing.AllocsPerRun(100, func() { kept += c.plan.At(factors, 1e8, 77).Moment }))
		})
	}
}
