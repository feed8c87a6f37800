package beam_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

var (
	inf = math.Inf(1)
	nan = math.NaN()
)

func TestLineIsMeasured(t *testing.T) {
	l, err := beam.NewLine(408, []float64{24, 144, 264, 384})
	require.NoError(t, err)
	assert.Equal(t, 408.0, l.Length())
	assert.Equal(t, 3, l.Spans())
	for k, want := range []float64{24, 120, 120, 120, 24} {
		assert.Equal(t, want, l.Span(k), k)
	}
	for i, want := range []float64{24, 144, 264, 384} {
		assert.Equal(t, want, l.Support(i), i)
	}
}

func TestLineRefuses(t *testing.T) {
	cases := []struct {
		name     string
		length   float64
		supports []float64
		want     string
	}{
		{"length zero", 0, []float64{0, 1}, "length: 0 in is not more than 0 in, up to 1000000 in"},
		{"length negative", -1, []float64{0, 1}, "length: -1 in is not more than 0 in, up to 1000000 in"},
		{"length unknown", nan, []float64{0, 1}, "length: NaN in is not more than 0 in, up to 1000000 in"},
		{"length without end", inf, []float64{0, 1}, "length: +Inf in is not more than 0 in, up to 1000000 in"},
		{"no supports", 120, nil, "supports: 0 is not at least 2"},
		{"one support", 120, []float64{60}, "supports: 1 is not at least 2"},
		{"support before the tip", 120, []float64{-1, 60},
			"supports[0]: -1 in is not on the member, 0 to 120 in"},
		{"support past the tip", 120, []float64{0, 60, 121},
			"supports[2]: 121 in is not on the member, 0 to 120 in"},
		{"support unknown", 120, []float64{0, nan, 120},
			"supports[1]: NaN in is not on the member, 0 to 120 in; " +
				"supports[2]: 120 in is not past the support before it by a millionth of the length"},
		{"support at no end", 120, []float64{0, inf}, "supports[1]: +Inf in is not on the member, 0 to 120 in"},
		{"one place twice", 120, []float64{0, 60, 60},
			"supports[2]: 60 in is not past the support before it by a millionth of the length"},
		{"almost one place", 120, []float64{0, 60, 60.0001},
			"supports[2]: 60.0001 in is not past the support before it by a millionth of the length"},
		{"out of order", 120, []float64{60, 0},
			"supports[1]: 0 in is not past the support before it by a millionth of the length"},
		{"everything", -5, []float64{nan}, "length: -5 in is not more than 0 in, up to 1000000 in; " +
			"supports: 1 is not at least 2; supports[0]: NaN in is not on the member, 0 to 1000000 in"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			l, err := beam.NewLine(c.length, c.supports)
			assert.Nil(t, l)
			var input *calc.InputError
			require.ErrorAs(t, err, &input)
			assert.EqualError(t, err, c.want)
		})
	}
}

// A refused geometry changes nothing.
func TestLineStaysAfterAnError(t *testing.T) {
	l, err := beam.NewLine(240, []float64{0, 120, 240})
	require.NoError(t, err)
	require.Error(t, l.Set(240, []float64{0, 120, 500}))
	assert.Equal(t, 240.0, l.Support(2))
	p, err := beam.NewPlan(l, [][]beam.Load{{beam.Uniform(0, 240, 10)}})
	require.NoError(t, err)
	var r beam.Response
	p.Run([]float64{1}, 1, &r)
	calctest.Close(t, 1500, r.Reactions[1], 1e-12, 0)
}

// A support that rounding has put beside a tip stands under the tip.
func TestLineSnapsSupportsToTips(t *testing.T) {
	l, err := beam.NewLine(240, []float64{-1e-9, 120, 240 + 1e-9})
	require.NoError(t, err)
	assert.Zero(t, l.Span(0))
	assert.Zero(t, l.Span(3))
	l, err = beam.NewLine(240, []float64{1e-9, 120, 240 - 1e-9})
	require.NoError(t, err)
	assert.Zero(t, l.Span(0))
	assert.Zero(t, l.Span(3))
}

// Spans that come back after others are factored anew: the answer is that of a new
// line.
func TestLineSetEqualsNew(t *testing.T) {
	geometries := []struct {
		length   float64
		supports []float64
	}{
		{408, []float64{24, 144, 264, 384}},
		{400.2, []float64{16.2, 136.2, 256.2, 376.2}}, // same spans, other overhangs
		{240, []float64{0, 240}},
		{300, []float64{0, 120, 300}},
		{408, []float64{24, 144, 264, 384}},
	}
	kept, err := beam.NewLine(100, []float64{0, 50, 100})
	require.NoError(t, err)
	var p beam.Plan
	for _, g := range geometries {
		cases := [][]beam.Load{{beam.Uniform(0, g.length, 10), beam.Point(100, 500)}}
		require.NoError(t, kept.Set(g.length, g.supports))
		require.NoError(t, p.Set(kept, cases))
		var got, want beam.Response
		p.Run([]float64{1}, 1e8, &got)
		plan(t, g.length, g.supports, cases...).Run([]float64{1}, 1e8, &want)
		require.Len(t, got.Reactions, len(want.Reactions))
		for i := range want.Reactions {
			calctest.Close(t, want.Reactions[i], got.Reactions[i], 1e-10, 1e-9, g.supports)
		}
		for i := range want.Bays {
			calctest.Close(t, want.Bays[i].DeflectionMax, got.Bays[i].DeflectionMax, 1e-10, 1e-12, g.supports)
		}
	}
}

// A plan keeps the geometry it was made with.
func TestPlanOutlivesItsLine(t *testing.T) {
	l, err := beam.NewLine(240, []float64{0, 120, 240})
	require.NoError(t, err)
	p, err := beam.NewPlan(l, [][]beam.Load{{beam.Uniform(0, 240, 10)}})
	require.NoError(t, err)
	require.NoError(t, l.Set(999, []float64{1, 333, 666, 998}))
	var r beam.Response
	p.Run([]float64{1}, 1, &r)
	calctest.Close(t, 1500, r.Reactions[1], 1e-12, 0)
	assert.Equal(t, 240.0, p.Line().Length())
}
