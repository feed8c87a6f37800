package beam_test

import (
	"slices"
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
	length    float64     // in
	supports  []float64   // in
	rafters   []float64   // in
	factors   [][]float64 // per combination: of the own weight, psf on the rafters, and psf more on some
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
	all := func(int) bool { return true }
	w.cases = [][]beam.Load{{beam.Uniform(0, w.length, ownWeight)}, w.onSpans(all)}
}

// A combo is a combination as the loads of a beam under a roof: a factor on dead load, live
// or snow load that lies on spans, and wind or earthquake that acts everywhere, psf.
type combo struct {
	dead, lies, acts float64
	snow             bool // what lies is snow
}

// combos lists twelve combinations of allowable stress design (ASCE 7-16 2.4.1 and 2.4.5).
// Those with 0.75 Lr or 0.75 S alone are left out, as 3 exceeds them, and so is 5 with
// wind upward, as 7 exceeds it.
func combos() []combo {
	const live, snow, down, up, quake = 20, 25, 12, -32, 1.1 // psf
	return []combo{
		{1, 0, 0, false},                           // 1: D
		{1, live, 0, false},                        // 3: D + Lr
		{1, snow, 0, true},                         // 3: D + S
		{1, 0, 0.6 * down, false},                  // 5: D + 0.6W, downward
		{1, 0.75 * live, 0.75 * 0.6 * down, false}, // 6: with Lr
		{1, 0.75 * live, 0.75 * 0.6 * up, false},   // 6: with Lr, upward
		{1, 0.75 * snow, 0.75 * 0.6 * down, true},  // 6: with S
		{1, 0.75 * snow, 0.75 * 0.6 * up, true},    // 6: with S, upward
		{0.6, 0, 0.6 * up, false},                  // 7: 0.6D + 0.6W
		{1, 0, 0.7 * quake, false},                 // 8: D + 0.7Ev
		{1, 0.75 * snow, 0.75 * 0.7 * quake, true}, // 9: D + 0.525Ev + 0.75S
		{0.6, 0, -0.7 * quake, false},              // 10: 0.6D - 0.7Ev
	}
}

// roofDead is the dead load of the roof, psf.
const roofDead = 8

// combine lists the factors of the combinations with every load on all spans.
func (w *workload) combine() {
	for _, c := range combos() {
		w.factors = append(w.factors, []float64{c.dead, c.dead*roofDead + c.lies + c.acts})
	}
}

// partial is the workload with every arrangement of live and snow load on the spans. What
// lies on some spans is a case of its own, so that an arrangement is one more sum of cases.
func (w workload) partial() workload {
	spans := len(w.supports) - 1
	var ends, pairs, alternate []int // cases
	w.cases = slices.Clone(w.cases)
	lay := func(list *[]int, loaded func(span int) bool) {
		*list = append(*list, len(w.cases))
		w.cases = append(w.cases, w.onSpans(loaded))
	}
	for _, end := range []int{1, spans} {
		lay(&ends, func(s int) bool { return s == end })
	}
	for odd := range 2 {
		lay(&alternate, func(s int) bool { return s%2 == odd })
	}
	for left := 1; left < spans; left++ {
		lay(&pairs, func(s int) bool { return s == left || s == left+1 })
	}
	w.factors = nil
	for _, c := range combos() {
		w.arrange(c, 0, 1, 0) // on all spans
		if c.lies == 0 {
			continue
		}
		if !c.snow {
			// IBC 2018 1607.13.2: alternate spans, two neighbors, and nothing elsewhere.
			w.arrangeAll(c, slices.Concat(alternate, pairs), 0, 1)
			continue
		}
		// ASCE 7-16 7.5.1: full on an end span or two neighbors and half elsewhere; half on an
		// end span and full elsewhere.
		w.arrangeAll(c, slices.Concat(ends, pairs), 0.5, 0.5)
		w.arrangeAll(c, ends, 1, -0.5)
	}
	return w
}

func (w *workload) arrangeAll(c combo, cases []int, all, more float64) {
	for _, k := range cases {
		w.arrange(c, k, all, more)
	}
}

// arrange adds an arrangement: parts of the load that lies, on all spans and more on those
// of a case, 0 for none.
func (w *workload) arrange(c combo, k int, all, more float64) {
	f := make([]float64, len(w.cases))
	f[0], f[1] = c.dead, c.dead*roofDead+c.acts+c.lies*all
	if k > 0 {
		f[k] = c.lies * more
	}
	w.factors = append(w.factors, f)
}

// onSpans lists the loads of the rafters, lb for one psf, for the part of the roof edge
// over the spans that are loaded, each end span with its overhang.
func (w *workload) onSpans(loaded func(span int) bool) []beam.Load {
	ends := slices.Clone(w.supports)
	ends[0], ends[len(ends)-1] = 0, w.length
	var out []beam.Load
	for i, x := range w.rafters {
		from, to := (w.rafters[max(i-1, 0)]+x)/2, (x+w.rafters[min(i+1, len(w.rafters)-1)])/2
		share := 0.0
		for s := 1; s < len(ends); s++ {
			if loaded(s) {
				share += max(0, min(to, ends[s])-max(from, ends[s-1]))
			}
		}
		if share > 0 {
			out = append(out, beam.Point(x, calc.PSF*tributary*share))
		}
	}
	return out
}

func (w *workload) plan(t testing.TB) *beam.Plan { return plan(t, w.length, w.supports, w.cases...) }

// envelope widens the bays by what every combination brings.
func (w *workload) envelope(p *beam.Plan, r *beam.Response, bays []beam.Bay) {
	for _, f := range w.factors {
		p.Run(f, w.stiffness, r)
		envelope(bays, r.Bays)
	}
}

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
				p.Run(f, w.stiffness, &r)
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

// The arrangements are as many as the combinations have: of three spans 6 more for snow and
// 4 more for live load, of ten 13 and 11. What lies on all spans is what lies on the
// alternate ones together.
func TestArrangements(t *testing.T) {
	for _, c := range []struct {
		w            workload
		arrangements int
	}{{span3(), 48}, {span10(), 97}} {
		t.Run(c.w.name, func(t *testing.T) {
			w := c.w.partial()
			require.Len(t, w.factors, c.arrangements)
			p := w.plan(t)
			var all, odd, even beam.Response
			one := func(k int, r *beam.Response) {
				f := make([]float64, len(w.cases))
				f[k] = 1
				p.Run(f, w.stiffness, r)
			}
			one(1, &all)
			one(4, &even)
			one(5, &odd)
			for i := range all.Reactions {
				calctest.Close(t, all.Reactions[i], odd.Reactions[i]+even.Reactions[i], 1e-9, 0, i)
				calctest.Close(t, all.SupportMoments[i], odd.SupportMoments[i]+even.SupportMoments[i], 1e-9, 1e-9, i)
			}
			full, partial := make([]beam.Bay, len(w.supports)+1), make([]beam.Bay, len(w.supports)+1)
			c.w.envelope(c.w.plan(t), &all, full)
			w.envelope(p, &all, partial)
			for i := range full {
				assert.GreaterOrEqual(t, partial[i].MomentMax, full[i].MomentMax, i)
				assert.LessOrEqual(t, partial[i].MomentMin, full[i].MomentMin, i)
			}
			assert.Greater(t, partial[2].DeflectionMax, 1.2*full[2].DeflectionMax, "an inner span feels its neighbors")
			assert.Zero(t, testing.AllocsPerRun(10, func() { w.envelope(p, &all, partial) }))
		})
	}
}
