package brace_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/beam/brace"
	"patiocover/calc/calctest"
)

var sink float64

func TestKneePublished(t *testing.T) {
	for _, r := range calctest.Published(t, "knee_brace.csv") {
		k := brace.NewKnee(brace.Knee{
			Shear: r.Num("V lb"), Height: r.Num("H in"), Drop: r.Num("a in"), Angle: r.Num("phi deg"), Braces: int(r.Num("n")),
		})
		got := map[string]float64{"F": k.Axial, "M": k.Moment, "B": k.Horizontal}[r.Text("quantity")]
		calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("source"))
	}
}

// Trap: the force of the brace taken as the push on the post. With a post of 8 ft and a
// brace 2 ft below the beam at 45 degrees it is 5.7 times as much.
func TestTrapKneeBraceForceIsNotThePush(t *testing.T) {
	k := brace.NewKnee(brace.Knee{Shear: 1, Height: 96, Drop: 24, Angle: 45, Braces: 1})
	assert.Greater(t, k.Axial, 5.6)
	assert.InEpsilon(t, 3, k.Top, 1e-9, "and the top of the post asks for three times the push")
}

// The forces of brace, foot and top balance the post, whatever the geometry.
func TestKneeBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(60, 240).Draw(t, "height")
		k := brace.NewKnee(brace.Knee{
			Shear: rapid.Float64Range(0.1, 5000).Draw(t, "push"), Height: h,
			Drop:   rapid.Float64Range(0.05, 0.9).Draw(t, "part") * h,
			Angle:  rapid.Float64Range(20, 70).Draw(t, "angle"),
			Braces: rapid.IntRange(1, 2).Draw(t, "braces"),
		})
		n := float64(k.Braces)
		about := k.Shear*h - n*k.Horizontal*k.Drop
		along := math.Hypot(k.Horizontal, k.Vertical) - k.Axial
		foot := k.Top*k.Drop - k.Moment // moments of the part above the joint
		for _, gap := range []float64{about, along * h, foot} {
			if math.Abs(gap) > 1e-9*k.Shear*h+1e-9*k.Axial*h {
				t.Fatalf("the post is not in balance by %v: %+v", gap, k)
			}
		}
		if err := calctest.Prove(k.Lines()); err != nil {
			t.Fatal(err)
		}
	})
}

func TestKneeWithoutABraceHoldsNothing(t *testing.T) {
	for _, k := range []brace.Knee{
		{Shear: 1, Height: 96, Drop: 24, Angle: 45},
		{Shear: 1, Height: 96, Angle: 45, Braces: 1},
		{Shear: 1, Height: 20, Drop: 24, Angle: 45, Braces: 1},
	} {
		got := brace.NewKnee(k)
		for _, x := range []float64{got.Axial, got.Moment, got.Top, got.Vertical} {
			assert.True(t, math.IsNaN(x), "%+v", got)
		}
	}
}

func TestBracingAllocatesNothing(t *testing.T) {
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink += brace.NewKnee(brace.Knee{Shear: 1, Height: 96, Drop: 24, Angle: 45, Braces: 1}).Axial
		sink += brace.NewFixity(brace.Fixity{Push: 1, Height: 96, Depth: 48}).Moment
	}))
}
