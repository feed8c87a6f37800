package roof_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads/roof"
)

func TestOutside(t *testing.T) {
	for _, c := range []struct {
		angle        float64 // degrees
		leeward, end bool
		across, up   float64 // ASCE 7-16 Fig. 28.3-1
	}{
		{0, false, true, -1.07, 1.07},
		{3, true, true, -0.53, 0.53},
		{5, true, false, -0.37, 0.37},
		{12.5, true, true, -0.61, 0.61}, // midway from 5 to 20 degrees
		{12.5, true, false, -0.425, 0.425},
		{12.5, false, false, -0.69, 0.69},
		{20, true, true, -0.69, 0.69},
		{25, false, true, -0.40, 1.07}, // load case 2 keeps its suction
		{35, false, false, 0.21, 0.69},
		{45, true, true, -0.53, 0.53},
	} {
		o := roof.NewOutside(c.angle, c.leeward, c.end)
		calctest.Near(t, c.across, o.Across, 1e-12, c)
		calctest.Near(t, c.up, o.Up, 1e-12, c)
		assert.NoError(t, calctest.Prove(o.Lines()))
	}
}

// Answers of a published guide to ASCE 7-22 28.3 for an enclosed building, q 29.35 psf.
// The slope was not read; 4 in 12 fits both of its halves.
func TestGuideOfTheEnvelopeProcedure(t *testing.T) {
	const q, inside, angle = 29.35, 0.18, 18.43
	for _, c := range []struct {
		leeward, end bool
		want         float64 // psf, upward
	}{{false, false, 25.5}, {true, false, 19.0}, {false, true, 36.7}, {true, true, 25.0}} {
		calctest.Near(t, c.want, q*(roof.NewOutside(angle, c.leeward, c.end).Up+inside), 0.06, c)
	}
}

func TestOutsideLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle, leeward := rapid.Float64Range(0, 45).Draw(t, "theta"), rapid.Bool().Draw(t, "leeward")
		end, inner := roof.NewOutside(angle, leeward, true), roof.NewOutside(angle, leeward, false)
		assert.NoError(t, calctest.Prove(end.Lines()))
		assert.Greater(t, end.Up, inner.Up, "the end zone is the worse")
		assert.GreaterOrEqual(t, end.Up, -end.Across)
		assert.GreaterOrEqual(t, roof.NewOutside(angle, false, true).Up, roof.NewOutside(angle, true, true).Up)
	})
	for _, angle := range []float64{-0.1, 45.1, math.NaN()} {
		o := roof.NewOutside(angle, false, true)
		assert.True(t, math.IsNaN(o.Up), angle)
		assert.Error(t, calctest.Prove(o.Lines()))
	}
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink = roof.NewOutside(12, true, true).Up }))
}

func TestInternal(t *testing.T) {
	for class, want := range map[roof.Enclosure]float64{
		roof.Open: 0, roof.Enclosed: 0.18, roof.PartiallyEnclosed: 0.55, roof.PartiallyOpen: 0.18,
	} {
		i, ok := roof.Internal(class)
		require.True(t, ok)
		calctest.Near(t, want, i.Factor, 0, "ASCE 7-16 Table 26.13-1")
	}
	i, ok := roof.Internal("")
	assert.False(t, ok)
	assert.True(t, math.IsNaN(i.Factor))
}

// Widths by hand, for a house of 30 by 60 ft with eaves at 10 ft.
func TestWidths(t *testing.T) {
	flat, ok := roof.NewWidths(roof.Figures716, roof.Gable, 5, 10*calc.Ft, 30*calc.Ft)
	require.True(t, ok)
	calctest.Near(t, 6*calc.Ft, flat.Edge, 1e-9, "0.6 h")
	calctest.Near(t, 2*calc.Ft, flat.Depth, 1e-9, "0.2 h")
	calctest.Near(t, 12*calc.Ft, flat.Inner, 1e-9, "1.2 h")
	old, ok := roof.NewWidths(roof.Figures710, roof.Gable, 5, 10*calc.Ft, 30*calc.Ft)
	require.True(t, ok)
	calctest.Near(t, 3*calc.Ft, old.Edge, 1e-9, "a tenth of 30 ft")
	big, ok := roof.NewWidths(roof.Figures716, roof.Gable, 20, 10*calc.Ft, 120*calc.Ft)
	require.True(t, ok)
	calctest.Near(t, 4.8*calc.Ft, big.Edge, 1e-9, "0.04 of 120 ft above 0.4 h")
	for _, w := range []roof.Widths{flat, old, big} {
		assert.NoError(t, calctest.Prove(w.Lines()))
	}
}

func TestUnknownPlanOfZones(t *testing.T) {
	for _, c := range []struct {
		figures roof.Figures
		shape   roof.Shape
		angle   float64
	}{
		{roof.Figures722, roof.Gable, 5}, {roof.Figures716, roof.Monoslope, 3.1}, {roof.Figures716, roof.Gable, 27.1},
		{roof.Figures710, roof.Monoslope, 8}, {roof.Figures710, roof.Gable, math.NaN()}, {roof.Figures716, roof.Gable, -1},
	} {
		_, ok := roof.NewWidths(c.figures, c.shape, c.angle, 120, 360)
		assert.False(t, ok, "%v", c)
	}
}
