package beam_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// A workload is a beam under its own weight and its rafters, the measure of speed.
type workload struct {
	name      string
	length    float64      // in
	supports  []float64    // in
	rafters   []float64    // in
	shares    []float64    // length of roof edge that each rafter carries, in
	factors   [][2]float64 // per combination: of the own weight, and psf on the rafters
	cases     [][]beam.Load
	stiffness float64 // E I, lb-in²
}

const (
	ownWeight = 10 * calc.PLF
	tributary = 6 * calc.Ft // of the roof on the beam
)

// span3 has rafters over its supports at 24 in. on center; span10 at 16 in.
func span3() workload  { return newWorkload("span3", 3, 10*calc.Ft, 24) }
func span10() workload { return newWorkload("span10", 10, 8*calc.Ft, 16) }

func newWorkload(name string, spans int, span, spacing float64) workload {
	overhang := 2 * calc.Ft
	w := workload{name: name, length: float64(spans)*span + 2*overhang, stiffness: 1600000 * 230.8}
	for i := range spans + 1 {
		w.supports = append(w.supports, overhang+float64(i)*span)
	}
	w.rafter(spacing)
	w.combine()
	return w
}

// rafter sets rafters from tip to tip; the last at the right tip closes a shorter
// space if need be.
func (w *workload) rafter(spacing float64) {
	w.rafters = nil
	for x := 0.0; x < w.length-spacing/1000; x += spacing {
		w.rafters = append(w.rafters, x)
	}
	w.rafters = append(w.rafters, w.length)
	w.shares = make([]float64, len(w.rafters))
	for i := 1; i < len(w.rafters); i++ {
		half := (w.rafters[i] - w.rafters[i-1]) / 2
		w.shares[i-1] += half
		w.shares[i] += half
	}
	points := make([]beam.Load, len(w.rafters))
	for i, x := range w.rafters {
		points[i] = beam.Point(x, calc.PSF*tributary*w.shares[i])
	}
	w.cases = [][]beam.Load{{beam.Uniform(0, w.length, ownWeight)}, points}
}

// combine lists twelve combinations of allowable stress design (ASCE 7-16 2.4.1 and
// 2.4.5; those with 0.75 Lr or 0.75 S alone are left out, as 3 exceeds them).
func (w *workload) combine() {
	const dead, live, snow, down, up, quake = 8, 20, 25, 12, -32, 1.1 // psf
	for _, f := range []struct{ dead, psf float64 }{
		{1, 0},                          // 1: D
		{1, live},                       // 3: D + Lr
		{1, snow},                       // 3: D + S
		{1, 0.6 * down},                 // 5: D + 0.6W, downward
		{1, 0.6 * up},                   // 5: D + 0.6W, upward
		{1, 0.75*0.6*down + 0.75*live},  // 6: with Lr
		{1, 0.75*0.6*down + 0.75*snow},  // 6: with S
		{1, 0.75*0.6*up + 0.75*snow},    // 6: with S, upward
		{0.6, 0.6 * up},                 // 7: 0.6D + 0.6W
		{1, 0.7 * quake},                // 8: D + 0.7Ev
		{1, 0.75*0.7*quake + 0.75*snow}, // 9: D + 0.525Ev + 0.75S
		{0.6, -0.7 * quake},             // 10: 0.6D - 0.7Ev
	} {
		w.factors = append(w.factors, [2]float64{f.dead, f.dead*dead + f.psf})
	}
}

func (w *workload) plan(t testing.TB) *beam.Plan { return plan(t, w.length, w.supports, w.cases...) }

// envelope widens the bays of all by the bays of one.
func envelope(all, one []beam.Bay) {
	for i, b := range one {
		a := &all[i]
		a.ShearMax, a.ShearMin = max(a.ShearMax, b.ShearMax), min(a.ShearMin, b.ShearMin)
		a.MomentMax, a.MomentMin = max(a.MomentMax, b.MomentMax), min(a.MomentMin, b.MomentMin)
		a.DeflectionMax = max(a.DeflectionMax, b.DeflectionMax)
		a.DeflectionMin = min(a.DeflectionMin, b.DeflectionMin)
	}
}

// The references solve the same combinations: V, M and R at nodes agree, and what
// they sample is never beyond the exact extrema, nor far below.
func TestReferencesAgree(t *testing.T) {
	for _, w := range []workload{span3(), span10()} {
		t.Run(w.name, func(t *testing.T) {
			require.Len(t, w.factors, 12)
			p := w.plan(t)
			exact, bays := make([]beam.Bay, len(w.supports)+1), make([]beam.Bay, len(w.supports)+1)
			var r beam.Response
			for _, f := range w.factors {
				p.Run(f[:], w.stiffness, &r)
				envelope(exact, r.Bays)
			}
			band, dense := newBandReference(w), newDenseReference(w)
			for _, run := range []func([]beam.Bay){band.run, dense.run} {
				clear(bays)
				run(bays)
				for i, got := range bays {
					want := exact[i]
					calctest.Close(t, want.ShearMax, got.ShearMax, 1e-9, 1e-6, w.name, i)
					calctest.Close(t, want.ShearMin, got.ShearMin, 1e-9, 1e-6, w.name, i)
					calctest.Close(t, want.MomentMax, got.MomentMax, 1e-3, 1e-6, w.name, i)
					calctest.Close(t, want.MomentMin, got.MomentMin, 1e-3, 1e-6, w.name, i)
					calctest.Close(t, want.DeflectionMax, got.DeflectionMax, 1e-3, 1e-9, w.name, i)
					calctest.Close(t, want.DeflectionMin, got.DeflectionMin, 1e-3, 1e-9, w.name, i)
					assert.LessOrEqual(t, got.DeflectionMax, want.DeflectionMax+1e-9)
					assert.GreaterOrEqual(t, got.DeflectionMin, want.DeflectionMin-1e-9)
					assert.LessOrEqual(t, got.MomentMax, want.MomentMax+1e-6)
					assert.GreaterOrEqual(t, got.MomentMin, want.MomentMin-1e-6)
				}
			}
		})
	}
}
