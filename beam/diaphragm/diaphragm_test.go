package diaphragm_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/diaphragm"
	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// standing is a deck panel with nails that the table knows.
func standing(t testing.TB, thickness, diameter, length, spacing float64, blocked bool) diaphragm.Nominal {
	row, ok := diaphragm.Tabulated(thickness, diameter, length)
	require.True(t, ok)
	n, ok := row.At(spacing, blocked)
	require.True(t, ok)
	return n
}

// What the codes printed as allowable under earthquake is half of the nominal value; the
// edition of 2021 comes to the same within the rounding of its own table, and to no more.
func TestShearPublished(t *testing.T) {
	for _, r := range calctest.Published(t, "diaphragm_shear.csv") {
		n := standing(t, r.Num("thickness in"), r.Num("diameter in"), r.Num("length in"), r.Num("spacing in"), r.Text("blocked") == "yes")
		s := diaphragm.NewShear(diaphragm.Push{Force: 1, Length: 1, Load: diaphragm.Earthquake}, n, 0.5)
		calctest.Near(t, r.Num("want plf"), s.Older/calc.PLF, r.Num("within"), r.Text("source"))
		calctest.Close(t, s.Older, s.Newer, 0.01, 0, "the two editions")
		assert.Equal(t, min(s.Older, s.Newer), s.Allowable)
	}
}

// Trap: the column of the first case taken for a push along the panel joints. On 15/32
// panels with 8d nails that column prints 240 plf, and the push along the house has 180.
func TestTrapPushAlongTheJointsIsNotTheFirstCase(t *testing.T) {
	n := standing(t, 15.0/32, 0.131, 2.5, 6, false)
	s := diaphragm.NewShear(diaphragm.Push{Force: 1, Length: 1, Load: diaphragm.Earthquake}, n, 0.5)
	calctest.Near(t, 180, s.Allowable/calc.PLF, 0.5, "IBC 2006 Table 2306.3.1")
}

// Trap: thin or short nails counted by their penny weight. A box nail 8d is 0.113 in thick
// and counts as a common nail 6d; a nail that ends in the panel counts as none.
func TestTrapNailsCountByDiameterAndDepth(t *testing.T) {
	box, ok := diaphragm.Tabulated(15.0/32, 0.113, 2.5)
	require.True(t, ok)
	assert.Equal(t, "6d", box.Nail)
	_, ok = diaphragm.Tabulated(23.0/32, 0.131, 1.75)
	assert.False(t, ok, "1-1/32 in of depth")
	_, ok = diaphragm.Tabulated(15.0/32, 0.099, 2)
	assert.False(t, ok, "thinner than 6d common")
	_, ok = diaphragm.Tabulated(0.25, 0.131, 2.5)
	assert.False(t, ok, "thinner than every panel of the table")
	_, ok = box.At(8, false)
	assert.False(t, ok, "nails at 8 in")
	_, ok = box.At(math.NaN(), true)
	assert.False(t, ok, "spacing unknown")
}

// Trap: light framing at the values of heavy wood. With G 0.42 there is 92 percent of it
// (SDPWS 2015 Table 4.2A note 2), and with G above 0.5 no more than the table.
func TestTrapLightFramingHoldsLess(t *testing.T) {
	n := standing(t, 15.0/32, 0.131, 2.5, 6, false)
	p := diaphragm.Push{Force: 1, Length: 1, Load: diaphragm.Wind}
	heavy := diaphragm.NewShear(p, n, 0.5).Allowable
	calctest.Close(t, 0.92*heavy, diaphragm.NewShear(p, n, 0.42).Allowable, 1e-12, 0)
	assert.Equal(t, heavy, diaphragm.NewShear(p, n, 0.55).Allowable)
}

// Trap: a deck that reaches farther out than it is wide counted as held. The limits are
// those of IBC 2305.2.5: a square, and 25 ft.
func TestTrapDeckReachesNoFartherThanItIsWide(t *testing.T) {
	for _, c := range []struct {
		out, width, want float64
		exempt           bool
	}{
		{12, 20, 0.6, false}, {20, 20, 1, false}, {21, 20, 1.05, false}, {6, 5, 1.2, true}, {30, 60, 1.2, false}, {20, 40, 0.8, false},
	} {
		r := diaphragm.NewReach(c.out*calc.Ft, c.width*calc.Ft)
		calctest.Close(t, c.want, r.Ratio(), 1e-12, 0, "IBC 2305.2.5")
		assert.Equal(t, c.exempt, r.Exempt)
		assert.NoError(t, calctest.Prove(r.Explain().Lines))
		assert.Equal(t, r.Ratio(), r.Explain().Ratio())
	}
}

func TestShearIsProvedAndLawful(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row, ok := diaphragm.Tabulated(rapid.Float64Range(5.0/16, 1).Draw(t, "thickness"),
			rapid.Float64Range(0.113, 0.2).Draw(t, "diameter"), 3.5)
		require.True(t, ok)
		n, ok := row.At(rapid.Float64Range(2, 6).Draw(t, "spacing"), rapid.Bool().Draw(t, "blocked"))
		require.True(t, ok)
		p := diaphragm.Push{
			Force:  rapid.Float64Range(1, 1e5).Draw(t, "force"),
			Length: rapid.Float64Range(calc.Ft, 100*calc.Ft).Draw(t, "length"),
			Load:   rapid.SampledFrom([]diaphragm.Load{diaphragm.Wind, diaphragm.Earthquake}).Draw(t, "load"),
			Method: rapid.SampledFrom([]lumber.Method{lumber.ASD, lumber.LRFD}).Draw(t, "method"),
		}
		g := rapid.Float64Range(0.31, 0.73).Draw(t, "G")
		s := diaphragm.NewShear(p, n, g)
		require.NoError(t, calctest.Prove(s.Explain().Lines))
		require.Equal(t, s.Ratio(), s.Explain().Ratio())
		wider, heavier := p, p
		wider.Length *= 2
		heavier.Force *= 2
		require.InEpsilon(t, s.Unit/2, diaphragm.NewShear(wider, n, g).Unit, 1e-12, "a wider ledger lowers the unit shear")
		require.InEpsilon(t, 2*s.Ratio(), diaphragm.NewShear(heavier, n, g).Ratio(), 1e-12)
		if p.Method == lumber.LRFD && p.Load == diaphragm.Earthquake {
			require.Equal(t, s.Newer, s.Allowable, "the newer edition is the smaller under earthquake")
		}
	})
}

var sink float64

func TestShearAllocatesNothing(t *testing.T) {
	n := diaphragm.Straight()
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink = diaphragm.NewShear(diaphragm.Push{Force: 1000, Length: 240}, n, 0.5).Ratio() + diaphragm.NewReach(120, 240).Ratio()
	}))
}

// A push of 3,600 lb of earthquake along a ledger of 20 ft comes to 180 plf, which panels
// of 15/32 in with 8d nails hold without blocking (IBC 2006 Table 2306.3.1: 180 plf).
func ExampleNewShear() {
	row, _ := diaphragm.Tabulated(15.0/32, 0.131, 2.5)
	n, _ := row.At(6, false)
	s := diaphragm.NewShear(diaphragm.Push{Force: 3600, Length: 20 * calc.Ft, Load: diaphragm.Earthquake}, n, 0.5)
	fmt.Printf("%.0f plf of %.0f by one edition, %.1f by the other\n", s.Unit/calc.PLF, s.Older/calc.PLF, s.Newer/calc.PLF)
	// Output: 180 plf of 180 by one edition, 180.4 by the other
}
