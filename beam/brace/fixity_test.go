package brace_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"patiocover/beam/brace"
	"patiocover/calc/calctest"
)

// The second route: the pressure of the soil integrated as a number. It balances the push
// and its moment, and the largest of the moments found along the post is the one given.
func TestFixityAgainstIntegration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := brace.NewFixity(brace.Fixity{
			Push: rapid.Float64Range(1, 2000).Draw(t, "push"), Height: rapid.Float64Range(0, 200).Draw(t, "height"),
			Depth: rapid.Float64Range(12, 120).Draw(t, "depth"),
		})
		shape := func(z float64) float64 { return z * (f.Turn - z) }
		all := quad.Fixed(shape, 0, f.Depth, 10, quad.Legendre{}, 0)
		stiffness := f.Push / all
		turning := quad.Fixed(func(z float64) float64 { return z * shape(z) }, 0, f.Depth, 10, quad.Legendre{}, 0) * stiffness
		if math.Abs(turning+f.Push*f.Height) > 1e-7*f.Push*(f.Height+f.Depth) {
			t.Fatalf("the soil turns by %v, the push by %v", turning, f.Push*f.Height)
		}
		at := func(z float64) float64 {
			arm := func(x float64) float64 { return (z - x) * shape(x) * stiffness }
			return f.Push*(f.Height+z) - quad.Fixed(arm, 0, z, 10, quad.Legendre{}, 0)
		}
		most, cut := 0.0, 0.0
		for i := range 201 {
			z := f.Depth * float64(i) / 200
			cut = max(cut, math.Abs(f.Push-stiffness*quad.Fixed(shape, 0, z, 10, quad.Legendre{}, 0)))
			most = max(most, at(f.Depth*float64(i)/200))
		}
		if most > f.Moment*(1+1e-9) || most < f.Moment*(1-1e-3) || math.Abs(at(f.Zero)-f.Moment) > 1e-7*f.Moment {
			t.Fatalf("largest moment %v along the post, given %v", most, f.Moment)
		}
		if cut > f.Shear*(1+1e-9) || cut < f.Shear*(1-1e-3) {
			t.Fatalf("largest shear %v along the post, given %v", cut, f.Shear)
		}
		if err := calctest.Prove(f.Lines()); err != nil {
			t.Fatal(err)
		}
	})
}

// Trap: a post in open soil clamped at the ground: it bends most below it.
func TestTrapEmbeddedPostBendsBelowTheGround(t *testing.T) {
	open := brace.NewFixity(brace.Fixity{Push: 100, Height: 96, Depth: 48})
	assert.Greater(t, open.Moment, 100*96*1.05)
	assert.Less(t, open.Zero, open.Turn)
	paved := brace.NewFixity(brace.Fixity{Push: 100, Height: 96, Depth: 48, Paved: true})
	assert.InDelta(t, 100*96, paved.Moment, 1e-9)
	assert.NoError(t, calctest.Prove(paved.Lines()))
	assert.True(t, math.IsNaN(brace.NewFixity(brace.Fixity{Push: 100, Height: 96}).Moment), "no depth")
}

// The second route where paving holds the post at the ground, which then turns about the
// paving: pressure that grows with the square of the depth, integrated as a number, has the
// moment of the push about the paving, and its sum is the shear below the paving.
//
// By hand, 100 lb at 96 in on 36 in: 4 x 9,600 / (3 x 36) = 356 lb.
func TestTrapPavedPostShearsBelowThePaving(t *testing.T) {
	for _, depth := range []float64{24, 36, 60, 200} {
		f := brace.NewFixity(brace.Fixity{Push: 100, Height: 96, Depth: depth, Paved: true})
		moment := quad.Fixed(func(z float64) float64 { return z * z * z }, 0, depth, 5, quad.Legendre{}, 0)
		sum := quad.Fixed(func(z float64) float64 { return z * z }, 0, depth, 5, quad.Legendre{}, 0)
		calctest.Close(t, max(100, sum*100*96/moment), f.Shear, 1e-12, 0)
		assert.NoError(t, calctest.Prove(f.Lines()))
	}
	calctest.Near(t, 356, brace.NewFixity(brace.Fixity{Push: 100, Height: 96, Depth: 36, Paved: true}).Shear, 0.5)
}

// The two ends of the range, in closed form: a push at the ground turns the post at three
// quarters of the depth, a push far above it at two thirds (statics of the parabola).
func TestFixityTurns(t *testing.T) {
	calctest.Close(t, 0.75, brace.NewFixity(brace.Fixity{Push: 1, Depth: 1}).Turn, 1e-12, 0)
	calctest.Close(t, 2.0/3, brace.NewFixity(brace.Fixity{Push: 1, Height: 1e9, Depth: 1}).Turn, 1e-8, 0)
}
