package member_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc/calctest"
)

// elements is how many pieces a post is cut into: enough for six digits of the load at
// which it buckles.
const elements = 24

// A strut is a post in finite elements: bending stiffness K, and what an axial force of
// 1 lb takes from it, G. Unknowns are the movement and the turn of each node.
type strut struct {
	stiffness, axial *mat.Dense
	length           float64 // in, of one element
	free             []int   // unknowns that the ends leave free
}

// newStrut returns a post of the length, in, and of E I, lb-in², with the ends held as
// the textbook has them.
func newStrut(length, stiffness float64, ends member.Ends) strut {
	n := 2 * (elements + 1)
	h := length / elements
	s := strut{stiffness: mat.NewDense(n, n, nil), axial: mat.NewDense(n, n, nil), length: h}
	bend := [4][4]float64{
		{12, 6 * h, -12, 6 * h}, {6 * h, 4 * h * h, -6 * h, 2 * h * h},
		{-12, -6 * h, 12, -6 * h}, {6 * h, 2 * h * h, -6 * h, 4 * h * h},
	}
	press := [4][4]float64{
		{36, 3 * h, -36, 3 * h}, {3 * h, 4 * h * h, -3 * h, -h * h},
		{-36, -3 * h, 36, -3 * h}, {3 * h, -h * h, -3 * h, 4 * h * h},
	}
	for e := range elements {
		for i := range 4 {
			for j := range 4 {
				r, c := 2*e+i, 2*e+j
				s.stiffness.Set(r, c, s.stiffness.At(r, c)+stiffness/(h*h*h)*bend[i][j])
				s.axial.Set(r, c, s.axial.At(r, c)+press[i][j]/(30*h))
			}
		}
	}
	last := n - 2
	held := map[member.Ends][]int{
		member.FixedFixed: {0, 1, last, last + 1}, member.FixedPinned: {0, 1, last},
		member.PinnedPinned: {0, last}, member.FixedGuided: {0, 1, last + 1},
		member.FixedFree: {0, 1}, member.PinnedGuided: {0, last + 1},
	}[ends]
	for i := range n {
		if !contains(held, i) {
			s.free = append(s.free, i)
		}
	}
	return s
}

func contains(list []int, x int) bool {
	for _, y := range list {
		if x == y {
			return true
		}
	}
	return false
}

// of returns the part of a matrix that the ends leave free.
func (s strut) of(m *mat.Dense) *mat.Dense {
	part := mat.NewDense(len(s.free), len(s.free), nil)
	for i, r := range s.free {
		for j, c := range s.free {
			part.Set(i, j, m.At(r, c))
		}
	}
	return part
}

// buckling returns the least axial force, lb, at which the post stands in balance bent.
func (s strut) buckling(t testing.TB) float64 {
	t.Helper()
	var flexible mat.Dense
	require.NoError(t, flexible.Solve(s.of(s.stiffness), s.of(s.axial)))
	var values mat.Eigen
	require.True(t, values.Factorize(&flexible, mat.EigenNone))
	most := 0.0
	for _, v := range values.Values(nil) {
		most = max(most, real(v))
	}
	return 1 / most
}

// moment returns the moment in the middle of a pinned post, lb-in, under the axial
// force, lb, an even side load, lb/in, and equal moments at both ends, lb-in: the
// balance of the bent post.
func (s strut) moment(t testing.TB, force, load, ends, stiffness float64) float64 {
	t.Helper()
	n := 2 * (elements + 1)
	h := s.length
	side := mat.NewVecDense(n, nil)
	for e := range elements {
		for i, f := range [4]float64{load * h / 2, load * h * h / 12, load * h / 2, -load * h * h / 12} {
			side.SetVec(2*e+i, side.AtVec(2*e+i)+f)
		}
	}
	side.SetVec(1, side.AtVec(1)+ends)
	side.SetVec(n-1, side.AtVec(n-1)-ends)
	var soft mat.Dense
	soft.Scale(-force, s.axial)
	soft.Add(&soft, s.stiffness)
	free := mat.NewVecDense(len(s.free), nil)
	for i, r := range s.free {
		free.SetVec(i, side.AtVec(r))
	}
	var x mat.VecDense
	require.NoError(t, x.SolveVec(s.of(&soft), free))
	moved := 0.0
	for i, r := range s.free {
		if r == elements {
			moved = x.AtVec(i)
		}
	}
	length := h * elements
	return load*length*length/8 + ends + force*moved
}

// F_cE against the eigenvalue of the post in finite elements: exact for pinned ends but
// for 0.822 in place of pi²/12, and below it for every other end condition, since the
// recommended K_e counts ends less than perfectly fixed (NDS 2018 App. G).
func TestBucklingByEigenvalue(t *testing.T) {
	theory := map[member.Ends]float64{ // K_e of ideal ends
		member.FixedFixed: 0.5, member.FixedPinned: 0.699, member.PinnedPinned: 1,
		member.FixedGuided: 1, member.FixedFree: 2, member.PinnedGuided: 2,
	}
	a := adjusted(t, "Douglas Fir-Larch", "No.1", "4x6", lumber.Use{})
	const length = 72.0
	for ends, ideal := range theory {
		t.Run(ends.String(), func(t *testing.T) {
			inertia := a.Section.InertiaFlat()
			load := newStrut(length, a.Stability.Value*inertia, ends).buckling(t)
			calctest.Close(t, math.Pi*math.Pi*a.Stability.Value*inertia/math.Pow(ideal*length, 2), load, 1e-3, 0, "Euler")
			axis := member.Axis{Length: length, Ends: ends}
			c := member.NewCompression(1, a, lumber.TenYears, member.Column{Deep: member.Axis{Held: true}, Thin: axis})
			part := c.Critical * a.Section.Area() / load
			assert.LessOrEqual(t, part, 1.0)
			calctest.Close(t, math.Pow(ideal/ends.Factor(), 2)*0.822*12/(math.Pi*math.Pi), part, 2e-3, 0, "K_e and 0.822")
		})
	}
}

// The growth of the moment by the axial force, 1/(1 - fc/FcE) for side loads and with
// 1 + 0.234 fc/FcE for an eccentric force, against the balance of the bent post: within
// 3 % on either side up to 0.8 of the buckling load.
func TestGrowthOfMomentsByTheBentPost(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.1", "6x6", lumber.Use{})
	const length = 120.0
	stiffness := a.Stability.Value * a.Section.Inertia() * 0.822 * 12 / (math.Pi * math.Pi) // FcE as the standard has it
	post := newStrut(length, stiffness, member.PinnedPinned)
	held := member.Axis{Held: true}
	stay := member.Stay{Column: member.Column{Deep: member.Axis{Length: length, Ends: member.PinnedPinned}, Thin: held}}
	critical := post.buckling(t)
	for _, part := range []float64{0.01, 0.1, 0.3, 0.5, 0.8} {
		t.Run(fmt.Sprint(part), func(t *testing.T) {
			force := part * critical
			grown := func(x member.Actions) float64 {
				c := member.NewCombined(x, a, laid(t, a), lumber.TenYears, stay)
				calctest.Close(t, part, c.EdgeShare, 1e-5, 0, "fc/FcE")
				return c.EdgeGrown / (1 - c.EdgeShare) * a.Section.Modulus()
			}
			side := post.moment(t, force, 5, 0, stiffness)
			calctest.Close(t, side, grown(member.Actions{Force: force, Edgewise: 5 * length * length / 8}), 0.03, 0, "side load")
			ends := post.moment(t, force, 0, 2*force, stiffness)
			calctest.Close(t, ends, grown(member.Actions{Force: force, EdgeOffset: 2}), 0.021, 0, "eccentric")
			calctest.Close(t, 2*force/math.Cos(math.Pi/2*math.Sqrt(part)), ends, 1e-4, 0, "secant formula")
			both := post.moment(t, force, 5, 2*force, stiffness)
			calctest.Close(t, both, grown(member.Actions{Force: force, EdgeOffset: 2, Edgewise: 5 * length * length / 8}), 0.03, 0, "both")
		})
	}
}

// F_bE stays below the moment at which an ideal beam turns over sideways under even
// moment, (pi/L) sqrt(E I_y G J) with G = E/16, and within 35 % of it.
func TestLateralBucklingBelowTheory(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := piece(t)
		use := a.Use
		use.Flat = false
		a = inUse(t, a, use)
		b, d := a.Section.Breadth, a.Section.Depth
		if d < 1.9*b {
			return // stocky: the expression for J is for thin sections
		}
		length := rapid.Float64Range(24, 240).Draw(t, "L")
		c := member.NewBending(1, a, lumber.TenYears, member.Bracing{Unbraced: length, Loading: member.EndMoments})
		if c.Critical == 0 {
			return // above R_B = 50
		}
		e := a.Stability.Value
		twist := d * b * b * b / 3 * (1 - 0.63*b/d) // J of a thin rectangle
		ideal := math.Pi / length * math.Sqrt(e*a.Section.InertiaFlat()*e/16*twist)
		if part := c.Critical * a.Section.Modulus() / ideal; part > 1 || part < 0.65 {
			t.Fatalf("F_bE S is %v of the ideal moment", part)
		}
	})
}
