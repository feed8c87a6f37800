package brace_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// A plane frame solved by stiffness, the second route to the forces of a braced row:
// members bend and stretch, ends may be hinged, nodes have two shifts and one turn.
type planeFrame struct {
	x, y  []float64
	bars  []bar
	fixed []int // degrees of freedom held at 0
	load  []float64
}

type bar struct {
	i, j   int
	ea, ei float64 // lb, lb-in²
	hinged [2]bool
}

func (f *planeFrame) node(x, y float64) int {
	f.x, f.y = append(f.x, x), append(f.y, y)
	f.load = append(f.load, 0, 0, 0)
	return len(f.x) - 1
}

// own is the stiffness of a bar in its own axes, hinged ends condensed out.
func (b bar) own(l float64) *mat.Dense {
	k := mat.NewDense(6, 6, nil)
	set := func(i, j int, v float64) { k.Set(i, j, v) }
	a, e := b.ea/l, b.ei/(l*l*l)
	set(0, 0, a)
	set(0, 3, -a)
	set(3, 0, -a)
	set(3, 3, a)
	rows := [4]int{1, 2, 4, 5}
	full := [4][4]float64{
		{12, 6 * l, -12, 6 * l}, {6 * l, 4 * l * l, -6 * l, 2 * l * l},
		{-12, -6 * l, 12, -6 * l}, {6 * l, 2 * l * l, -6 * l, 4 * l * l},
	}
	for p, i := range rows {
		for q, j := range rows {
			set(i, j, e*full[p][q])
		}
	}
	for end, hinge := range b.hinged {
		if h := 2 + 3*end; hinge && k.At(h, h) > 0 {
			pivot := k.At(h, h)
			var row [6]float64
			for j := range 6 {
				row[j] = k.At(h, j)
			}
			for i := range 6 {
				for j := range 6 {
					k.Set(i, j, k.At(i, j)-row[i]*row[j]/pivot)
				}
			}
			for j := range 6 { // leave no rounding behind
				k.Set(h, j, 0)
				k.Set(j, h, 0)
			}
		}
	}
	return k
}

func (f *planeFrame) turn(b bar) (*mat.Dense, float64) {
	dx, dy := f.x[b.j]-f.x[b.i], f.y[b.j]-f.y[b.i]
	l := math.Hypot(dx, dy)
	c, s := dx/l, dy/l
	t := mat.NewDense(6, 6, nil)
	for _, o := range []int{0, 3} {
		t.Set(o, o, c)
		t.Set(o, o+1, s)
		t.Set(o+1, o, -s)
		t.Set(o+1, o+1, c)
		t.Set(o+2, o+2, 1)
	}
	return t, l
}

func (b bar) freedoms() [6]int {
	return [6]int{3 * b.i, 3*b.i + 1, 3*b.i + 2, 3 * b.j, 3*b.j + 1, 3*b.j + 2}
}

// solve returns the forces of every bar in its own axes at both ends.
func (f *planeFrame) solve(t *testing.T) [][6]float64 {
	t.Helper()
	n := len(f.load)
	k := mat.NewDense(n, n, nil)
	for _, b := range f.bars {
		rot, l := f.turn(b)
		var g mat.Dense
		g.Product(rot.T(), b.own(l), rot)
		for p, i := range b.freedoms() {
			for q, j := range b.freedoms() {
				k.Set(i, j, k.At(i, j)+g.At(p, q))
			}
		}
	}
	for i := range n { // a node whose every bar is hinged turns freely
		if k.At(i, i) == 0 {
			k.Set(i, i, 1)
		}
	}
	load := append([]float64(nil), f.load...)
	for _, i := range f.fixed {
		for j := range n {
			k.Set(i, j, 0)
			k.Set(j, i, 0)
		}
		k.Set(i, i, 1)
		load[i] = 0
	}
	var u mat.VecDense
	require.NoError(t, u.SolveVec(k, mat.NewVecDense(n, load)))
	var out [][6]float64
	for _, b := range f.bars {
		rot, l := f.turn(b)
		var local mat.VecDense
		at := mat.NewVecDense(6, nil)
		for p, i := range b.freedoms() {
			at.SetVec(p, u.AtVec(i))
		}
		local.MulVec(rot, at)
		var force mat.VecDense
		force.MulVec(b.own(l), &local)
		var got [6]float64
		copy(got[:], force.RawVector().Data)
		out = append(out, got)
	}
	return out
}
