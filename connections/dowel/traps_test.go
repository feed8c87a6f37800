package dowel_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/beam/lumber"
	"patiocover/calc/calctest"
	"patiocover/connections/dowel"
)

var (
	fir = dowel.Member{Gravity: 0.50, Thickness: 100}
	// across the grain
	ledger = dowel.Member{Gravity: 0.50, Angle: 90, Thickness: 1.5}
	rim    = dowel.Member{Gravity: 0.50, Angle: 90, Thickness: 100}
	wind   = dowel.Conditions{Duration: lumber.TenMinutes}
)

// Trap: toe-nail withdrawal without the factor 0.67, or with 0.83, which is that of
// the side force.
func TestTrapToenailFactor(t *testing.T) {
	nail := sized(t, "nail", "16d common", 0)
	toe := dowel.NewToenail(nail, fir, fir)
	straight := dowel.NewWithdrawal(nail, 0.50, toe.Below, false)
	calctest.Close(t, 0.67*straight.Value, toe.Uplift, 1e-12, 0, "NDS 2018 12.5.4.1")
	calctest.Close(t, 0.83*toe.Lateral.Value, toe.Sideways, 1e-12, 0, "NDS 2018 12.5.4.2")
}

// Trap: C_D of more than 1.6 on a connection, or any on the crushing of concrete.
func TestTrapDurationFactorOfConnections(t *testing.T) {
	assert.Equal(t, 1.6, dowel.LateralFactors(dowel.Nail, dowel.Conditions{Duration: lumber.Impact}).Time)
	bolt := sized(t, "bolt", "1/2", 0)
	short := dowel.Joint{Side: dowel.Member{Gravity: 0.5, Thickness: 5.5}, Main: dowel.Member{Material: dowel.Concrete, Thickness: 0.3}}
	v := dowel.NewLateral(bolt, short)
	assert.Equal(t, dowel.BearingMain, v.Mode)
	long := dowel.NewShear(1, v, dowel.LateralFactors(dowel.Bolt, dowel.Conditions{}), 1)
	gust := dowel.NewShear(1, v, dowel.LateralFactors(dowel.Bolt, wind), 1)
	assert.Equal(t, long.Capacity, gust.Capacity, "concrete takes no more under wind")
}

// Trap: a nail or a wood screw pulled from end grain is worth something. The standard
// gives a lag screw three quarters.
func TestTrapEndGrainWithdrawal(t *testing.T) {
	for _, f := range append(dowel.Nails(), dowel.Screws()...) {
		assert.Zero(t, dowel.NewWithdrawal(f, 0.55, 3, true).Value, f.Name)
	}
	lag := sized(t, "lag screw", "1/2", 6)
	side, end := dowel.NewWithdrawal(lag, 0.5, 4, false), dowel.NewWithdrawal(lag, 0.5, 4, true)
	calctest.Close(t, 0.75*side.Value, end.Value, 1e-12, 0, "NDS 2018 12.2.1.2")
	shear := dowel.LateralFactors(dowel.Nail, dowel.Conditions{EndGrain: true})
	calctest.Close(t, 0.67, shear.Product, 1e-12, 0, "NDS 2018 12.5.2.2")
}

// Trap: the shank of a lag screw in the bending term, its root in the bearing across
// the grain, the tip counted as thread, or the whole thread though only a part of it is
// in the wood that holds.
func TestTrapLagDiametersAndThread(t *testing.T) {
	lag := sized(t, "lag screw", "1/2", 6) // thread 3.5 in, tip 0.3125 in
	j := dowel.Joint{Side: ledger, Main: rim}
	v := dowel.NewLateral(lag, j)
	calctest.Near(t, 3150, v.Side.Strength, 1e-9, "Fe_perp by the nominal 1/2 in")
	shank := lag
	shank.Root = lag.Diameter
	assert.Greater(t, dowel.NewLateral(shank, j).Value, v.Value*1.2, "the shank would be too strong")
	calctest.Near(t, 2-0.3125, dowel.NewWithdrawal(lag, 0.5, 2, false).Length, 1e-12, "2 in in the stud, less the tip")
	calctest.Near(t, 3.5-0.3125, dowel.NewWithdrawal(lag, 0.5, 4.5, false).Length, 1e-12, "thread less the tip")
}

// Trap: 16000 for 16600 in the bearing strength of thin dowels, or the G of the other
// member.
func TestTrapBearingOfTheRightWood(t *testing.T) {
	calctest.Near(t, 4650, dowel.NewBearing(fir, 0.148).Strength, 1e-9, "16000 would give 4450")
	nail := sized(t, "nail", "16d common", 0)
	cedar := dowel.Member{Gravity: 0.36, Thickness: 1.5}
	v := dowel.NewLateral(nail, dowel.Joint{Side: cedar, Main: fir})
	calctest.Near(t, 2550, v.Side.Strength, 1e-9)
	calctest.Near(t, 4650, v.Main.Strength, 1e-9)
	toe := dowel.NewToenail(nail, cedar, fir)
	assert.Equal(t, 0.36, toe.Pull.Gravity, "the plate holds the nail, not the rafter")
}

// Trap: 0.25 forgotten on nails pulled from lumber that dried after nailing, 0.7
// forgotten in the wet, or C_M put on toe-nails in withdrawal.
func TestTrapGreenAndWetLumber(t *testing.T) {
	cases := []struct {
		name                string
		kind                dowel.Kind
		c                   dowel.Conditions
		lateral, withdrawal float64
	}{
		{"dry", dowel.Nail, dowel.Conditions{}, 1, 1},
		{"nail green to dry", dowel.Nail, dowel.Conditions{Fabricated: dowel.Wet}, 0.7, 0.25},
		{"nail dry to wet", dowel.Nail, dowel.Conditions{Service: dowel.Wet}, 0.7, 0.25},
		{"nail wet", dowel.Nail, dowel.Conditions{Fabricated: dowel.Wet, Service: dowel.Wet}, 0.7, 1},
		{"toe-nail green to dry", dowel.Nail, dowel.Conditions{Fabricated: dowel.Wet, Toenail: true}, 0.7, 1},
		{"screw green to dry", dowel.WoodScrew, dowel.Conditions{Fabricated: dowel.Wet}, 0.7, 1},
		{"screw wet", dowel.WoodScrew, dowel.Conditions{Service: dowel.Wet}, 0.7, 0.7},
		{"lag green to dry, one row", dowel.LagScrew, dowel.Conditions{Fabricated: dowel.Wet}, 1, 1},
		{"bolt green to dry, two rows", dowel.Bolt, dowel.Conditions{Fabricated: dowel.Wet, Rows: true}, 0.4, 1},
		{"bolt dry, two rows", dowel.Bolt, dowel.Conditions{Rows: true}, 1, 1},
		{"lag wet", dowel.LagScrew, dowel.Conditions{Service: dowel.Wet, Rows: true}, 0.7, 0.7},
	}
	for _, k := range cases {
		assert.Equal(t, k.lateral, dowel.LateralFactors(k.kind, k.c).Moisture, k.name+": NDS 2018 Table 11.3.3")
		assert.Equal(t, k.withdrawal, dowel.WithdrawalFactors(k.kind, k.c).Moisture, k.name+": NDS 2018 Table 11.3.3")
	}
}

// Trap: contact values through stucco. A gap of 7/8 in. takes about a third off a 1/2
// in. lag screw in a ledger on a rim.
func TestTrapGapOfStucco(t *testing.T) {
	lag := sized(t, "lag screw", "1/2", 6)
	j := dowel.Joint{Side: ledger, Main: rim}
	contact := dowel.NewLateral(lag, j).Value
	j.Gap = 0.875
	calctest.Near(t, 0.66, dowel.NewLateral(lag, j).Value/contact, 0.06, "statics of the general dowel equations")
}

// Trap: a fastener that is too short still counted: 6D of a nail, 4D of a lag screw
// without its tip (NDS 2018 12.1).
func TestTrapTooShort(t *testing.T) {
	side := dowel.Member{Gravity: 0.5, Thickness: 1.5}
	for _, c := range []struct {
		f    dowel.Fastener
		most float64 // length, in, at which it begins to count
	}{
		{nailOf(t, 0.162, 0), 1.5 + 6*0.162},
		{sized(t, "lag screw", "1/2", 6), 1.5 + 4*0.5 + 0.3125},
	} {
		c.f.Length = c.most - 0.01
		short := dowel.NewLateral(c.f, dowel.Joint{Side: side, Main: fir})
		assert.Equal(t, dowel.NoMode, short.Mode, c.f.Name)
		assert.True(t, math.IsInf(dowel.NewShear(1, short, dowel.LateralFactors(c.f.Kind, wind), 9).Ratio(), 1), c.f.Name)
		c.f.Length = c.most + 0.01
		assert.Positive(t, dowel.NewLateral(c.f, dowel.Joint{Side: side, Main: fir}).Value, c.f.Name)
	}
}
