package dowel_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/connections/dowel"
)

var sink float64

// sized returns the fastener of a published row; length is for lag and wood screws.
func sized(t testing.TB, kind, size string, length float64) dowel.Fastener {
	t.Helper()
	var f dowel.Fastener
	ok := false
	switch kind {
	case "nail":
		var number, of string
		_, err := fmt.Sscan(size, &number, &of)
		require.NoError(t, err)
		f, ok = dowel.FindNail(of, number)
	case "wood screw":
		f, ok = dowel.FindScrew(size, length)
	case "lag screw":
		f, ok = dowel.FindLag(size, length)
	case "bolt":
		f, ok = dowel.FindBolt(size)
	}
	require.True(t, ok, "%s %s", kind, size)
	return f
}

// nailOf returns a nail of the diameter and length.
func nailOf(t testing.TB, diameter, length float64) dowel.Fastener {
	t.Helper()
	for _, f := range dowel.Nails() {
		if f.Diameter == diameter && f.Shank == dowel.SmoothShank {
			f.Length = length
			return f
		}
	}
	t.Fatalf("no nail of %v in", diameter)
	return dowel.Fastener{}
}

func TestBearingPublished(t *testing.T) {
	for _, r := range calctest.Published(t, "dowel_bearing.csv") {
		got := dowel.NewBearing(dowel.Member{Gravity: r.Num("G"), Angle: r.Num("theta deg")}, r.Num("D in"))
		calctest.Near(t, r.Num("want"), got.Strength, r.Num("within"), r.Text("source"), r.Num("G"), r.Num("D in"))
	}
}

// published builds the joint of a row of dowel_lateral.csv.
func published(t *testing.T, r calc.Row) dowel.Lateral {
	f := sized(t, r.Text("kind"), r.Text("size"), 6)
	j := dowel.Joint{
		Side:   dowel.Member{Thickness: r.Num("ts in"), Angle: r.Num("theta side deg")},
		Main:   dowel.Member{Angle: r.Num("theta main deg"), Thickness: 100},
		Double: r.Text("double") == "yes",
	}
	if j.Side.Material = dowel.Steel; r.Text("side") == "wood" {
		j.Side.Material, j.Side.Gravity = dowel.Wood, r.Num("G side")
	}
	if j.Main.Material = dowel.Concrete; r.Text("main") != "concrete" {
		j.Main.Material, j.Main.Gravity = dowel.Wood, r.Num("main")
	}
	switch {
	case r.Has("tm in"):
		j.Main.Thickness = r.Num("tm in")
		if r.Has("L in") {
			f.Length = r.Num("L in")
		}
	case f.Kind == dowel.LagScrew:
		f.Length = j.Side.Thickness + 8*f.Diameter + f.Tip
	default:
		f.Length = j.Side.Thickness + 10*f.Diameter
	}
	return dowel.NewLateral(f, j)
}

func TestLateralPublished(t *testing.T) {
	for _, r := range calctest.Published(t, "dowel_lateral.csv") {
		v := published(t, r)
		calctest.Near(t, r.Num("want"), v.Value, r.Num("within"), r.Text("source"), v.Fastener.Name, v.Mode.String())
		require.NoError(t, calctest.Prove(v.Lines()), v.Fastener.Name)
	}
}

// Every legible entry of NDS 2018 Table 12K; a value on the edge between two printed
// ones may fall to either side.
func TestLagPlateTable(t *testing.T) {
	rows := calctest.Published(t, "lag_steel_plate.csv")
	assert.Len(t, rows, 219)
	for _, r := range rows {
		f := sized(t, "lag screw", r.Text("size"), 6)
		plate := dowel.Member{Material: dowel.Steel, Thickness: r.Num("ts in")}
		f.Length = plate.Thickness + 8*f.Diameter + f.Tip
		main := dowel.Member{Gravity: r.Num("G"), Angle: r.Num("theta deg"), Thickness: 100}
		v := dowel.NewLateral(f, dowel.Joint{Side: plate, Main: main})
		calctest.Near(t, r.Num("want"), v.Value, r.Num("within"), r.Text("source"), f.Name, r.Num("ts in"), r.Num("G"))
	}
}

func TestWithdrawalPublished(t *testing.T) {
	for _, r := range calctest.Published(t, "dowel_withdrawal.csv") {
		f := sized(t, r.Text("kind"), r.Text("size"), 6)
		w := dowel.NewWithdrawal(f, r.Num("G"), 3, false)
		calctest.Near(t, r.Num("want"), w.PerInch, r.Num("within"), r.Text("source"), f.Name, r.Num("G"))
	}
	for _, r := range calctest.Published(t, "dowel_withdrawal_one.csv") {
		f := sized(t, r.Text("kind"), r.Text("size"), r.Num("L in"))
		w := dowel.NewWithdrawal(f, r.Num("G"), r.Num("held in"), false)
		calctest.Near(t, r.Num("want"), w.Value, r.Num("within"), r.Text("source"))
		require.NoError(t, calctest.Prove(w.Lines()))
	}
}

func TestToenailPublished(t *testing.T) {
	wind := dowel.Conditions{Duration: lumber.TenMinutes}
	for _, r := range calctest.Published(t, "toenail.csv") {
		want, within, about := r.Num("want"), r.Num("within"), r.Text("source")
		wood, nail := dowel.Member{Gravity: 0.5, Thickness: 100}, nailOf(t, 0.131, r.Num("L in"))
		if r.Has("G") {
			wood.Gravity, nail = r.Num("G"), nailOf(t, r.Num("D in"), r.Num("L in"))
		}
		toe := dowel.NewToenail(nail, wood, wood)
		switch r.Text("quantity") {
		case "toenail_w":
			calctest.Near(t, want, toe.Uplift, within, about)
		case "toenail_z":
			calctest.Near(t, want, toe.Sideways, within, about)
		case "toenail_len":
			calctest.Near(t, want, toe.Below, within, about)
		case "capacity":
			calctest.Near(t, want, dowel.NewToenailPull(1, toe, wind, 3).Capacity, within, about)
		default:
			t.Errorf("what is %s", r.Text("quantity"))
		}
	}
}

// anyFastener draws a fastener of every kind and size.
func anyFastener(t *rapid.T) dowel.Fastener {
	length := rapid.Float64Range(1, 12).Draw(t, "length")
	all := append(append(append(dowel.Nails(), dowel.Screws()...), dowel.Lags()...), dowel.Bolts()...)
	f := rapid.SampledFrom(all).Draw(t, "fastener")
	if f.Kind == dowel.LagScrew || f.Kind == dowel.WoodScrew {
		f.Length, f.Thread = length, length/2
	}
	return f
}

func anyMember(t *rapid.T, name string, last dowel.Material) dowel.Member {
	return dowel.Member{
		Material:  dowel.Material(rapid.IntRange(0, int(last)).Draw(t, name+" material")),
		Gravity:   rapid.Float64Range(0.31, 0.73).Draw(t, name+" G"),
		Angle:     rapid.Float64Range(0, 90).Draw(t, name+" angle"),
		Thickness: rapid.Float64Range(0.03, 8).Draw(t, name+" thickness"),
	}
}

func anyJoint(t *rapid.T) dowel.Joint {
	j := dowel.Joint{
		Side: anyMember(t, "side", dowel.Steel), Main: anyMember(t, "main", dowel.Concrete),
		Double: rapid.Bool().Draw(t, "double"), Tabular: rapid.Bool().Draw(t, "tabular"),
	}
	if rapid.Bool().Draw(t, "gap") {
		j.Gap = rapid.Float64Range(0.01, 3).Draw(t, "g")
	}
	return j
}

func anyConditions(t *rapid.T) dowel.Conditions {
	return dowel.Conditions{
		Method:     lumber.Method(rapid.IntRange(0, 1).Draw(t, "method")),
		Duration:   rapid.SampledFrom(lumber.Durations()).Draw(t, "duration"),
		Fabricated: dowel.Moisture(rapid.IntRange(0, 1).Draw(t, "fabricated")),
		Service:    dowel.Moisture(rapid.IntRange(0, 1).Draw(t, "service")),
		Heat:       lumber.Temperature(rapid.IntRange(0, 2).Draw(t, "heat")),
		Rows:       rapid.Bool().Draw(t, "rows"), EndGrain: rapid.Bool().Draw(t, "end grain"),
	}
}

// proved fails unless the written check holds and has the same ratio.
func proved(t *rapid.T, r calc.Result) {
	t.Helper()
	c := r.Explain()
	if err := calctest.Prove(c.Lines); err != nil {
		t.Fatal(err)
	}
	if c.Ratio() != r.Ratio() {
		t.Fatalf("ratio %v explained as %v", r.Ratio(), c.Ratio())
	}
}

func TestChecksAreProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, c := anyFastener(t), anyConditions(t)
		demand, n := rapid.Float64Range(0, 1e4).Draw(t, "demand"), rapid.IntRange(1, 20).Draw(t, "n")
		g := rapid.Float64Range(0.31, 0.73).Draw(t, "G")
		with := dowel.LateralFactors(f.Kind, c).With(0.9, 0.5)
		proved(t, dowel.NewShear(demand, dowel.NewLateral(f, anyJoint(t)), with, n))
		held := rapid.Float64Range(-1, 8).Draw(t, "held")
		proved(t, dowel.NewPull(demand, dowel.NewWithdrawal(f, g, held, c.EndGrain), dowel.WithdrawalFactors(f.Kind, c), n))
		nail := rapid.SampledFrom(dowel.Nails()).Draw(t, "nail")
		toe := dowel.NewToenail(nail, anyMember(t, "holding", dowel.Wood), anyMember(t, "toed", dowel.Wood))
		proved(t, dowel.NewToenailPull(demand, toe, c, n))
		proved(t, dowel.NewToenailShear(demand, toe, c, n))
	})
}

// Without a gap the general equations are the yield limit equations.
func TestGapOfNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, j := anyFastener(t), anyJoint(t)
		j.Gap = 0
		touching := dowel.NewLateral(f, j)
		j.Gap = 1e-12
		apart := dowel.NewLateral(f, j)
		if math.Abs(touching.Value-apart.Value) > 1e-6*touching.Value {
			t.Fatalf("touching %v %v, apart %v %v", touching.Value, touching.Mode, apart.Value, apart.Mode)
		}
	})
}

// A value never rises with the gap, nor falls with denser wood or a longer fastener.
func TestLateralIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, j := anyFastener(t), anyJoint(t)
		j.Gap, j.Main.Material, j.Side.Material = 0, dowel.Wood, dowel.Wood
		base := dowel.NewLateral(f, j).Value
		wider, denser, longer := j, j, f
		wider.Gap = 0.5
		if f.Kind != dowel.Bolt {
			longer.Length += 0.5
		}
		if got := dowel.NewLateral(longer, wider).Value; got > base*(1+1e-9) {
			t.Fatalf("a gap of 1/2 in with a fastener as much longer gave %v over %v", got, base)
		}
		denser.Main.Gravity, denser.Side.Gravity = j.Main.Gravity+0.05, j.Side.Gravity+0.05
		if got := dowel.NewLateral(f, denser).Value; got < base {
			t.Fatalf("denser wood gave %v under %v", got, base)
		}
	})
}

func TestNothingIsAllocated(t *testing.T) {
	f, wood := sized(t, "lag screw", "3/8", 5), dowel.Member{Gravity: 0.5, Thickness: 3.5}
	nail := sized(t, "nail", "16d common", 0)
	j := dowel.Joint{Side: dowel.Member{Gravity: 0.5, Thickness: 1.5, Angle: 90}, Main: wood, Gap: 0.875}
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		c := dowel.Conditions{Duration: lumber.TenMinutes}
		sink += dowel.NewShear(300, dowel.NewLateral(f, j), dowel.LateralFactors(f.Kind, c).With(1, 1), 4).Ratio()
		sink += dowel.NewPull(300, dowel.NewWithdrawal(f, 0.5, 2, false), dowel.WithdrawalFactors(f.Kind, c), 4).Ratio()
		toe := dowel.NewToenail(nail, wood, wood)
		sink += dowel.NewToenailPull(300, toe, c, 3).Ratio() + dowel.NewToenailShear(300, toe, c, 3).Ratio()
	}))
}

// Structural Wood Design Solved Example Problems, example E2.3: a 1/2 x 4 in. lag screw
// through 1-1/2 in. of wood into Southern Pine.
func ExampleNewWithdrawal() {
	f, _ := dowel.FindLag("1/2", 4)
	w := dowel.NewWithdrawal(f, 0.55, f.Length-1.5, false)
	fmt.Printf("%.0f lb/in on %.4f in of thread: %.0f lb\n", w.PerInch, w.Length, w.Value)
	// Output: 437 lb/in on 2.1875 in of thread: 955 lb
}
