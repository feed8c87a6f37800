package beam_test

import (
	"gonum.org/v1/gonum/mat"

	"patiocover/beam"
)

// samples is the number of places in an element where the references look.
const samples = 20

// A reference finds the extrema of a workload by finite elements and sampling: the
// common way, against which the exact one is measured.
type reference struct {
	mesh  mesh
	loads []meshLoad // one a combination
}

func newReference(w workload) reference {
	r := reference{mesh: newMesh(w.length, w.supports, w.stiffness, w.rafters...)}
	for _, f := range w.factors {
		var l meshLoad
		for k := range w.cases {
			r.mesh.load(w.cases[k], f[k], &l)
		}
		r.loads = append(r.loads, l)
	}
	return r
}

// sample widens the bays by what a solution gives at the samples.
func (r *reference) sample(l meshLoad, solution func(i int) float64, bays []beam.Bay) {
	m := &r.mesh
	for e, b := range m.bays {
		from, h, bay := m.start(e, l, solution), m.nodes[e+1]-m.nodes[e], &bays[b]
		for i := range samples {
			g := from.along(h*float64(i)/(samples-1), h, m.stiffness, l.lines[e])
			if g.shear > bay.ShearMax {
				bay.ShearMax = g.shear
			}
			if g.shear < bay.ShearMin {
				bay.ShearMin = g.shear
			}
			if g.moment > bay.MomentMax {
				bay.MomentMax = g.moment
			}
			if g.moment < bay.MomentMin {
				bay.MomentMin = g.moment
			}
			if g.deflection > bay.DeflectionMax {
				bay.DeflectionMax = g.deflection
			}
			if g.deflection < bay.DeflectionMin {
				bay.DeflectionMin = g.deflection
			}
		}
	}
}

// bandReference factors once, in band storage, and solves all combinations together.
type bandReference struct{ reference }

func newBandReference(w workload) *bandReference { return &bandReference{newReference(w)} }

func (r *bandReference) run(bays []beam.Bay) {
	m := &r.mesh
	a := mat.NewSymBandDense(m.count, 3, nil)
	raw := a.RawSymBand()
	m.assemble(func(i, j int, k float64) { raw.Data[i*raw.Stride+j-i] += k })
	var band mat.BandCholesky
	if !band.Factorize(a) {
		panic("mesh is not held")
	}
	b := mat.NewDense(m.count, len(r.loads), nil)
	for c, l := range r.loads {
		m.forces(l, func(i int, f float64) { b.Set(i, c, b.At(i, c)+f) })
	}
	var x mat.Dense
	if err := band.SolveTo(&x, b); err != nil {
		panic(err)
	}
	for c, l := range r.loads {
		r.sample(l, func(i int) float64 { return x.At(i, c) }, bays)
	}
}

// denseReference assembles and factors anew for each combination.
type denseReference struct{ reference }

func newDenseReference(w workload) *denseReference { return &denseReference{newReference(w)} }

func (r *denseReference) run(bays []beam.Bay) {
	for _, l := range r.loads {
		x := r.mesh.solve(l)
		r.sample(l, x.AtVec, bays)
	}
}
