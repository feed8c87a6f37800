package beam_test

import (
	"slices"

	"gonum.org/v1/gonum/mat"

	"patiocover/beam"
)

// A mesh is the independent route: cubic beam elements between nodes, two unknowns a
// node (deflection down, slope), exact at the nodes for uniform stiffness.
type mesh struct {
	nodes     []float64 // in
	bays      []int     // bay of each element, as in beam.Response
	unknown   []int     // place of deflection and slope of each node, -1 when held
	count     int
	stiffness float64 // E I, lb-in²
}

// newMesh sets nodes at tips, supports and the places given.
func newMesh(length float64, supports []float64, stiffness float64, places ...float64) mesh {
	m := mesh{stiffness: stiffness}
	m.nodes = append(append(append(m.nodes, 0, length), supports...), places...)
	slices.Sort(m.nodes)
	m.nodes = slices.Compact(m.nodes)
	for i, x := range m.nodes {
		if slices.Contains(supports, x) {
			m.unknown = append(m.unknown, -1, m.count)
			m.count++
		} else {
			m.unknown = append(m.unknown, m.count, m.count+1)
			m.count += 2
		}
		if i > 0 {
			bay := 0
			for bay < len(supports) && supports[bay] < x {
				bay++
			}
			m.bays = append(m.bays, bay)
		}
	}
	return m
}

// element returns the stiffness matrix of element e.
func (m *mesh) element(e int) (k [4][4]float64) {
	h := m.nodes[e+1] - m.nodes[e]
	c := m.stiffness / (h * h * h)
	return [4][4]float64{
		{12 * c, 6 * h * c, -12 * c, 6 * h * c},
		{6 * h * c, 4 * h * h * c, -6 * h * c, 2 * h * h * c},
		{-12 * c, -6 * h * c, 12 * c, -6 * h * c},
		{6 * h * c, 2 * h * h * c, -6 * h * c, 4 * h * h * c},
	}
}

// assemble calls add for the upper triangle of the matrix of the whole.
func (m *mesh) assemble(add func(i, j int, k float64)) {
	for e := range m.bays {
		k := m.element(e)
		for a := range 4 {
			for b := range 4 {
				i, j := m.unknown[2*e+a], m.unknown[2*e+b]
				if i >= 0 && j >= i {
					add(i, j, k[a][b])
				}
			}
		}
	}
}

// consistent returns the loads at the ends of an element of length h that do the
// work of a line load growing from w0 to w1.
func consistent(h, w0, w1 float64) [4]float64 {
	return [4]float64{
		h * (7*w0 + 3*w1) / 20, h * h * (3*w0 + 2*w1) / 60,
		h * (3*w0 + 7*w1) / 20, -h * h * (2*w0 + 3*w1) / 60,
	}
}

// A meshLoad is a combination on the nodes and elements of a mesh.
type meshLoad struct {
	points []float64    // at each node, lb
	lines  [][2]float64 // at the ends of each element, lb/in
}

// load puts loads on the mesh, whose nodes must lie where they begin and end.
func (m *mesh) load(loads []beam.Load, factor float64, to *meshLoad) {
	if to.points == nil {
		to.points, to.lines = make([]float64, len(m.nodes)), make([][2]float64, len(m.bays))
	}
	for _, l := range loads {
		if l.Concentrated() {
			i, found := slices.BinarySearch(m.nodes, l.From)
			if !found {
				panic("no node under a point load")
			}
			to.points[i] += factor * l.Start
			continue
		}
		at := func(x float64) float64 { return l.Start + (l.End-l.Start)*(x-l.From)/(l.To-l.From) }
		for e := range m.bays {
			if a, b := m.nodes[e], m.nodes[e+1]; l.From <= a && b <= l.To {
				to.lines[e][0] += factor * at(a)
				to.lines[e][1] += factor * at(b)
			}
		}
	}
}

// forces calls set for every unknown that a load acts on, with what acts.
func (m *mesh) forces(l meshLoad, add func(i int, f float64)) {
	for e := range m.bays {
		f := consistent(m.nodes[e+1]-m.nodes[e], l.lines[e][0], l.lines[e][1])
		for a := range 4 {
			if i := m.unknown[2*e+a]; i >= 0 {
				add(i, f[a])
			}
		}
	}
	for n, p := range l.points {
		if i := m.unknown[2*n]; i >= 0 {
			add(i, p)
		}
	}
}

// An end is the state at the left end of an element.
type end struct {
	shear, moment, slope, deflection float64 // lb, lb-in, radians, in
}

// start returns the state at the left end of element e from the solution.
func (m *mesh) start(e int, l meshLoad, solution func(i int) float64) end {
	var u [4]float64
	for a := range 4 {
		if i := m.unknown[2*e+a]; i >= 0 {
			u[a] = solution(i)
		}
	}
	k := m.element(e)
	f := consistent(m.nodes[e+1]-m.nodes[e], l.lines[e][0], l.lines[e][1])
	var force [2]float64
	for a := range 2 {
		force[a] = -f[a]
		for b := range 4 {
			force[a] += k[a][b] * u[b]
		}
	}
	return end{shear: -force[0], moment: force[1], slope: u[1], deflection: u[0]}
}

// along returns the state at s inches into an element under a line load.
func (a end) along(s, h, stiffness float64, w [2]float64) end {
	c := (w[1] - w[0]) / h
	return end{
		shear:  a.shear - w[0]*s - c*s*s/2,
		moment: a.moment + a.shear*s - w[0]*s*s/2 - c*s*s*s/6,
		slope:  a.slope - (a.moment*s+a.shear*s*s/2-w[0]*s*s*s/6-c*s*s*s*s/24)/stiffness,
		deflection: a.deflection + a.slope*s -
			(a.moment*s*s/2+a.shear*s*s*s/6-w[0]*s*s*s*s/24-c*s*s*s*s*s/120)/stiffness,
	}
}

// solve returns the unknowns under the load by a dense factorization.
func (m *mesh) solve(l meshLoad) *mat.VecDense {
	a := mat.NewDense(m.count, m.count, nil)
	m.assemble(func(i, j int, k float64) {
		a.Set(i, j, a.At(i, j)+k)
		if i != j {
			a.Set(j, i, a.At(j, i)+k)
		}
	})
	b := mat.NewVecDense(m.count, nil)
	m.forces(l, func(i int, f float64) { b.SetVec(i, b.AtVec(i)+f) })
	var lu mat.LU
	lu.Factorize(a)
	var x mat.VecDense
	if err := lu.SolveVecTo(&x, false, b); err != nil {
		panic(err)
	}
	return &x
}
