package dowel_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/calc/calctest"
	"patiocover/connections/dowel"
)

var tearSink float64

// aFir is a 4x4 of No.2 fir with F_v 180 psi.
func aFir(t testing.TB) lumber.Adjusted {
	t.Helper()
	s, err := lumber.SectionNamed("4x4")
	require.NoError(t, err)
	g, err := lumber.Find("Douglas Fir-Larch", "No.2", s)
	require.NoError(t, err)
	return lumber.Adjust(g, s, lumber.Use{})
}

// Trap: only the bolts counted, not the plugs of wood between them. Two bolts of 1/2 in,
// 3-1/2 in from the end and 2 in apart, in 3-1/2 in of wood with F_v 180 psi under wind:
// 2 x 180 x 1.6 x 3.5 x 2 by hand (NDS 2018 eq. E.3-2).
func TestTrapRowTearOut(t *testing.T) {
	a := aFir(t)
	plug := dowel.Plug{Count: 2, Thickness: 3.5, End: 3.5, Spacing: 2}
	c := dowel.NewTearOut(-3000, plug, &a, lumber.TenMinutes)
	calctest.Close(t, 2*180*1.6*3.5*2, c.Capacity, 1e-12, 0)
	assert.Equal(t, 3000.0, c.Pull)
	plug.Count = 1
	calctest.Close(t, 180*1.6*3.5*3.5, dowel.NewTearOut(1, plug, &a, lumber.TenMinutes).Capacity, 1e-12, 0, "one: its end distance")
	plug.End = 0
	assert.Greater(t, dowel.NewTearOut(1, plug, &a, lumber.TenMinutes).Ratio(), 1e300, "no end, no value")
	assert.Zero(t, testing.AllocsPerRun(50, func() { tearSink = dowel.NewTearOut(1, plug, &a, lumber.TenMinutes).Ratio() }))
}

func TestTearOutIsWrittenAsItIsFound(t *testing.T) {
	a := aFir(t)
	rapid.Check(t, func(t *rapid.T) {
		c := dowel.NewTearOut(rapid.Float64Range(1, 20000).Draw(t, "pull"), dowel.Plug{
			Count: rapid.IntRange(1, 6).Draw(t, "n"), Thickness: rapid.Float64Range(1.5, 8).Draw(t, "t"),
			End: rapid.Float64Range(1, 10).Draw(t, "end"), Spacing: rapid.Float64Range(1, 6).Draw(t, "s"),
		}, &a, rapid.SampledFrom([]lumber.Duration{lumber.TenMinutes, lumber.TenYears, lumber.SevenDays}).Draw(t, "duration"))
		assert.NoError(t, calctest.Prove(c.Explain().Lines))
		assert.Equal(t, c.Ratio(), c.Explain().Ratio())
	})
}
