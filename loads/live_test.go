package loads_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
)

// A slope of 12 in 12 on a member of little area: 12 psf, the floor of ASCE 7.
func Example() {
	l := loads.NewRoofLive(20*calc.PSF, 100*calc.SqFt, 12, true)
	fmt.Printf("R1 %.2f, R2 %.2f, Lr %.0f psf\n", l.ByArea, l.BySlope, l.Load/calc.PSF)
	// Output: R1 1.00, R2 0.60, Lr 12 psf
}

func TestRoofLivePublished(t *testing.T) {
	for _, r := range calctest.Published(t, "roof_live.csv") {
		l := loads.NewRoofLive(r.Num("base psf")*calc.PSF, r.Num("area ft2")*calc.SqFt, r.Num("rise in per ft"), true)
		calctest.Near(t, r.Num("want"), l.Load/calc.PSF, r.Num("within"), r.Text("source"))
	}
}

func TestRoofLiveLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := rapid.Float64Range(12, 40).Draw(t, "base") * calc.PSF
		area := rapid.Float64Range(0, 1000).Draw(t, "area") * calc.SqFt
		rise := rapid.Float64Range(0, 14).Draw(t, "rise")
		reducible := rapid.Bool().Draw(t, "reducible")
		l := loads.NewRoofLive(base, area, rise, reducible)
		assert.NoError(t, calctest.Prove(l.Lines()))
		assert.LessOrEqual(t, l.Load, base)
		assert.GreaterOrEqual(t, l.Load, min(base, 12*calc.PSF))
		assert.LessOrEqual(t, loads.NewRoofLive(base, 2*area, rise, reducible).Load, l.Load, "a larger area never loads more")
		assert.LessOrEqual(t, loads.NewRoofLive(base, area, rise+1, reducible).Load, l.Load, "a steeper roof never loads more")
	})
}

// Trap: 10 psf taken for every patio cover, or reduced once more by area and slope,
// and the load of a worker forgotten.
func TestTrapTenPsfAssumed(t *testing.T) {
	appendix := loads.NewRoofLive(loads.AppendixLive, 600*calc.SqFt, 12, false)
	calctest.Near(t, 10, appendix.Load/calc.PSF, 1e-12, "IRC 2018 Appendix H: 10 psf, not reduced")
	if got := loads.NewRoofLive(loads.AppendixLive, 600*calc.SqFt, 12, true).Load; got < 12*calc.PSF {
		t.Errorf("the reduction let %v psf through, below the floor of 12", got/calc.PSF)
	}
	assert.Equal(t, 300.0, loads.MaintenanceLoad, "ASCE 7-16 Table 4.3-1, lb")
}

func TestRoofLiveAllocatesNothing(t *testing.T) {
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink = loads.NewRoofLive(20*calc.PSF, 300*calc.SqFt, 5, true).Load
	}))
}
