package beam_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// outlines returns those of own weight and rafters, and the combinations as mixes. The
// samples are full snow, uplift, and dead load alone.
func (w *workload) outlines(t testing.TB) (*beam.Outlines, []beam.Mix) {
	var mixes []beam.Mix
	for _, f := range w.factors {
		mixes = append(mixes, beam.Mix{First: f[0], Second: f[1]})
	}
	return beam.NewOutlines(w.plan(t), []float64{1, 0}, []float64{0, 1}, mixes[2], mixes[8], mixes[0]), mixes
}

// The quantities of which there are outlines.
const (
	moment = iota
	shear
	reaction
	deflection
	overhang
	quantities
)

// A reach is the least and the largest of each quantity over the whole member.
type reach [quantities][2]float64

// told is the reach that the outlines tell of.
func told(o *beam.Outlines, mixes ...beam.Mix) (out reach) {
	for q, list := range [...]beam.Outline{o.Moment, o.Shear, o.Reaction, o.Deflection, o.Overhang} {
		out[q][0], out[q][1] = list.Range(mixes...)
	}
	return out
}

// found is the reach of a response of stiffness 1.
func found(line *beam.Line, r *beam.Response) reach {
	var out reach
	var seen [quantities]bool
	widen := func(q int, low, high float64) {
		if !seen[q] {
			seen[q], out[q] = true, [2]float64{low, high}
		}
		out[q] = [2]float64{min(out[q][0], low), max(out[q][1], high)}
	}
	for i, b := range r.Bays {
		if line.Span(i) == 0 {
			continue
		}
		widen(moment, b.MomentMin, b.MomentMax)
		widen(shear, b.ShearMin, b.ShearMax)
		widen(sags(line, i), b.DeflectionMin, b.DeflectionMax)
	}
	for _, x := range r.Reactions {
		widen(reaction, x, x)
	}
	return out
}

// sags is the quantity of the deflections of a bay.
func sags(line *beam.Line, bay int) int {
	if bay == 0 || bay == line.Spans()+1 {
		return overhang
	}
	return deflection
}

// both returns the factors of a mix of two shapes.
func both(m beam.Mix, first, second []float64) []float64 {
	out := make([]float64, len(first))
	for k := range out {
		out[k] = m.First*first[k] + m.Second*second[k]
	}
	return out
}

func drawMix(t *rapid.T) beam.Mix {
	factor := rapid.Float64Range(-3, 3)
	return beam.Mix{First: factor.Draw(t, "first"), Second: factor.Draw(t, "second")}
}

// What the outlines tell never goes beyond the exact extrema. It equals them under the
// samples, and where they lie at the ends of segments.
func TestOutlinesBoundTheExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTrial(t, rapid.Bool().Draw(t, "varying"))
		p, first := d.plan(t), d.factors
		second := make([]float64, len(first))
		for k := range second {
			second[k] = rapid.Float64Range(-2, 2).Draw(t, "factor")
		}
		samples := make([]beam.Mix, rapid.IntRange(0, 3).Draw(t, "samples"))
		for i := range samples {
			samples[i] = drawMix(t)
		}
		o := beam.NewOutlines(p, first, second, samples...)
		var r beam.Response
		var l beam.Location
		for i, m := range append(samples, drawMix(t), drawMix(t)) {
			d.factors = both(m, first, second)
			p.Run(d.factors, 1, &r)
			p.Locate(d.factors, 1, &l)
			want, got := found(p.Line(), &r), told(o, m)
			size := d.limit(m, first, second)
			atEnds := d.reachedAtEnds(p.Line(), &l)
			for q, within := range size {
				for side, sign := range [...]float64{-1, 1} {
					short := sign * (want[q][side] - got[q][side])
					if short < -1e-9*within {
						t.Fatalf("quantity %d: told %v, found %v", q, got[q], want[q])
					}
					if (i < len(samples) || q == reaction || atEnds[q][side]) && short > 1e-9*within {
						t.Fatalf("quantity %d misses by %v: told %v, found %v", q, short, got[q], want[q])
					}
				}
			}
		}
	})
}

// limit is what differences of each quantity count against.
func (d trial) limit(m beam.Mix, first, second []float64) [quantities]float64 {
	for k := range first {
		d.factors[k] = math.Abs(m.First*first[k]) + math.Abs(m.Second*second[k])
	}
	s, l := d.scale(), d.length
	return [...]float64{moment: s * l, shear: s, reaction: s, deflection: s * l * l * l, overhang: s * l * l * l}
}

// reachedAtEnds tells of which quantities the extremes of the whole member lie at the end
// of a segment.
func (d trial) reachedAtEnds(line *beam.Line, l *beam.Location) (out [quantities][2]bool) {
	ends := slices.Concat(d.places, d.supports, []float64{0, d.length})
	var best [quantities][2]beam.Extreme
	for i, b := range l.Bays {
		if line.Span(i) == 0 {
			continue
		}
		for q, e := range map[int][2]beam.Extreme{
			moment: {b.MomentMin, b.MomentMax}, shear: {b.ShearMin, b.ShearMax}, sags(line, i): {b.DeflectionMin, b.DeflectionMax},
		} {
			for side, sign := range [...]float64{-1, 1} {
				if !out[q][side] || sign*e[side].Value > sign*best[q][side].Value {
					out[q][side], best[q][side] = true, e[side]
				}
			}
		}
	}
	for q := range out {
		for side, e := range best[q] {
			out[q][side] = slices.ContainsFunc(ends, func(x float64) bool { return math.Abs(x-e.At) < 1e-9 })
		}
	}
	return out
}

// Published coefficients of three equal spans, all loaded and the outer two loaded, come out
// of the outlines of all spans and of the middle one: 0.4, 1.1, -0.1, 0.08 and 0.0069; 0.45,
// 0.55, -0.05, 0.1013 and 0.0099. The rows of testdata/published/beam.csv name the source.
func TestOutlinesPublished(t *testing.T) {
	var p *beam.Plan
	stiffness := 0.0
	wants := map[string]map[string][]float64{"SB03": {}, "SB05": {}}
	for _, r := range calctest.Published(t, "beam.csv") {
		beamName, _, _ := strings.Cut(r.Text("id"), ".")
		kind, _, _ := strings.Cut(r.Text("quantity"), "[")
		if at, ok := wants[beamName]; ok {
			at[kind] = append(at[kind], r.Num("want"))
		}
		if p == nil && beamName == "SB03" {
			p, stiffness = read(t, r)
		}
	}
	line := p.Line()
	p = plan(t, line.Length(), []float64{0, line.Support(1), line.Support(2), line.Length()},
		[]beam.Load{beam.Uniform(0, line.Length(), 10)}, []beam.Load{beam.Uniform(line.Support(1), line.Support(2), 10)})
	all, outer := beam.Mix{First: 1}, beam.Mix{First: 1, Second: -1}
	o := beam.NewOutlines(p, []float64{1, 0}, []float64{0, 1}, all, outer)
	for name, m := range map[string]beam.Mix{"SB03": all, "SB05": outer} {
		t.Run(name, func(t *testing.T) {
			got, want := told(o, m), wants[name]
			require.Len(t, want["reaction"], 4)
			calctest.Close(t, slices.Min(want["reaction"]), got[reaction][0], 1e-9, 0)
			calctest.Close(t, slices.Max(want["reaction"]), got[reaction][1], 1e-9, 0)
			require.Len(t, want["support_moment"], 2)
			calctest.Close(t, slices.Min(want["support_moment"]), got[moment][0], 1e-9, 0)
			calctest.Close(t, slices.Max(want["moment_max"]), got[moment][1], 1e-9, 0)
			calctest.Close(t, slices.Max(want["deflection_max"]), got[deflection][1]/stiffness, 1e-9, 0)
			assert.Equal(t, [2]float64{}, got[overhang])
		})
	}
}

// Of the workloads, whose rafters stand on the posts and whose line load is light, the
// outlines with three samples leave out next to nothing.
func TestOutlinesAreTight(t *testing.T) {
	for _, w := range workloads {
		t.Run(w.name, func(t *testing.T) {
			o, mixes := w.outlines(t)
			p := w.plan(t)
			for i, m := range mixes {
				var r beam.Response
				p.Run(w.factors[i], 1, &r)
				want, got := found(p.Line(), &r), told(o, m)
				for q := range want {
					for side := range want[q] {
						calctest.Close(t, want[q][side], got[q][side], 2e-3, 1e-6, i, q)
						assert.LessOrEqual(t, math.Abs(got[q][side]), math.Abs(want[q][side])*(1+1e-12), "%d %d", i, q)
					}
				}
			}
			together := told(o, mixes...)
			for q, each := range together {
				low, high := math.Inf(1), math.Inf(-1)
				for _, m := range mixes {
					one := told(o, m)
					low, high = min(low, one[q][0]), max(high, one[q][1])
				}
				assert.InDeltaSlice(t, []float64{low, high}, each[:], 1e-12*(high-low), "several mixes reach as far as each of them")
			}
		})
	}
}

// Trap: a bound that is taken at nodes where rafters do not land on posts, or just beside
// them, or under no line load at all, must still be none of more than the exact value; and
// deflection over a support is exactly 0.
func TestTrapBoundBeyondTheExact(t *testing.T) {
	for _, spacing := range []float64{16, 19.2, 24, 24.01, 23.99, 32} {
		w := span3()
		w.rafter(spacing)
		o, mixes := w.outlines(t)
		p := w.plan(t)
		for _, m := range append(mixes, beam.Mix{}, beam.Mix{First: 1}, beam.Mix{Second: 1}, beam.Mix{Second: -1}) {
			var r beam.Response
			p.Run([]float64{m.First, m.Second}, 1, &r)
			want, got := found(p.Line(), &r), told(o, m)
			for q := range want {
				within := 1e-12 * (math.Abs(want[q][0]) + math.Abs(want[q][1]))
				assert.LessOrEqual(t, want[q][0], got[q][0]+within, "%v %v %d", spacing, m, q)
				assert.GreaterOrEqual(t, want[q][1], got[q][1]-within, "%v %v %d", spacing, m, q)
			}
		}
	}
	p := plan(t, 377.9, []float64{0, 377.9}, []beam.Load{beam.Uniform(0, 377.9, 7.7)}, []beam.Load{beam.Point(131.7, 3.1)})
	least, largest := beam.NewOutlines(p, []float64{1, 0}, []float64{0, 1}).Deflection.Range(beam.Mix{First: -1.7, Second: -0.3})
	assert.Negative(t, least)
	assert.Zero(t, largest, "the span only rises")
}

// Trap: places at which the first shape causes the same but for rounding stand in no order,
// and the outermost of them was taken for one on the line between two others.
func TestTrapCornersInNoOrder(t *testing.T) {
	const slight = 1e-12
	p := plan(t, 24, []float64{0, 24}, []beam.Load{beam.Point(6, 2), beam.Point(12, 1)},
		[]beam.Load{beam.Point(6, 3)}, []beam.Load{beam.Point(6, 1), beam.Point(18, 1)})
	first, second, m := []float64{slight, 1, -slight}, []float64{1, 1, 1}, beam.Mix{First: 1, Second: 1}
	var r beam.Response
	p.Run(both(m, first, second), 1, &r)
	want, got := found(p.Line(), &r), told(beam.NewOutlines(p, first, second), m)
	for side := range want[shear] {
		calctest.Close(t, want[shear][side], got[shear][side], 1e-9, 0, "shear has its extremes at supports")
	}
}

// What is unknown bounds nothing.
func TestOutlinesSpoilWhatIsUnknown(t *testing.T) {
	w := span3()
	p, one := w.plan(t), beam.Mix{First: 1, Second: 1}
	o := beam.NewOutlines(p, []float64{1, 0}, []float64{0, 1})
	for _, m := range []beam.Mix{{First: nan}, {Second: nan}, {First: inf}, {Second: -1e101}} {
		for _, mixes := range [][]beam.Mix{{m}, {m, one}, {one, m}, {one, one, m}} {
			assertUnknown(t, told(o, mixes...))
		}
		assertUnknown(t, told(beam.NewOutlines(p, []float64{1, 0}, []float64{0, 1}, m), one))
	}
	assertUnknown(t, told(beam.NewOutlines(p, []float64{1, nan}, []float64{0, 1}), one))
	assertUnknown(t, told(beam.NewOutlines(p, []float64{1, 0}, []float64{0, -inf}), one))
	assert.Equal(t, reach{}, told(o))
	assert.Equal(t, reach{}, told(new(beam.Outlines), one))
	assert.PanicsWithValue(t, "beam: 1 factors for 2 cases", func() { beam.NewOutlines(p, []float64{1}, []float64{0, 1}) })
	o.Set(p, []float64{1, 0}, []float64{0, 1})
	assert.False(t, math.IsNaN(told(o, one)[moment][1]))
}

func assertUnknown(t *testing.T, r reach) {
	t.Helper()
	for q := range r {
		assert.True(t, math.IsNaN(r[q][0]) && math.IsNaN(r[q][1]), q)
	}
}

// The largest loads, factors and mixes that are let in still give numbers.
func TestOutlinesStayFiniteAtTheLimits(t *testing.T) {
	p := plan(t, 1e6, []float64{0, 5e5, 1e6}, []beam.Load{beam.Linear(0, 1e6, 1e100, -1e100)},
		[]beam.Load{beam.Point(3e5, -1e100)})
	o := beam.NewOutlines(p, []float64{1e100, 0}, []float64{0, 1e100}, beam.Mix{First: 1, Second: 1})
	for _, each := range told(o, beam.Mix{First: 1, Second: -1}) {
		assert.False(t, math.IsNaN(each[0]) || math.IsInf(each[1], 0))
	}
}

func TestOutlinesAllocateNothing(t *testing.T) {
	w := span3()
	p := w.plan(t)
	o, mixes := w.outlines(t)
	first, second := []float64{1, 0}, []float64{0, 1}
	assert.Zero(t, testing.AllocsPerRun(100, func() { kept += told(o, mixes...)[moment][1] }))
	assert.Zero(t, testing.AllocsPerRun(100, func() { kept += told(o, beam.Mix{First: kept, Second: 1})[shear][0] }))
	assert.Zero(t, testing.AllocsPerRun(100, func() { o.Set(p, first, second, mixes[:3]...) }))
}

// Three equal spans of 10 ft under uniform load: the moments over the inner supports are
// -0.1 w L², the largest in the outer spans 0.08 w L² (beam diagrams and formulas of
// continuous beams of equal spans; the rows SB03 of testdata/published/beam.csv).
func ExampleNewOutlines() {
	span := 10 * calc.Ft
	line, err := beam.NewLine(3*span, []float64{0, span, 2 * span, 3 * span})
	if err != nil {
		fmt.Println(err)
		return
	}
	everywhere := []beam.Load{beam.Uniform(0, 3*span, calc.PLF)}
	p, err := beam.NewPlan(line, [][]beam.Load{everywhere, everywhere})
	if err != nil {
		fmt.Println(err)
		return
	}
	roof := 100.0 // plf
	own, carried := []float64{1, 0}, []float64{0, roof}
	o := beam.NewOutlines(p, own, carried, beam.Mix{First: 10, Second: 1})
	for _, weight := range []float64{5, 10, 20} { // plf, of three sizes
		least, largest := o.Moment.Range(beam.Mix{First: weight, Second: 1})
		w := (weight + roof) * calc.PLF
		fmt.Printf("%.0f plf: M from %.0f to %.0f lb-in, %.2f and %.2f w L²\n",
			weight, least, largest, least/(w*span*span), largest/(w*span*span))
	}
	// Output:
	// 5 plf: M from -12600 to 10080 lb-in, -0.10 and 0.08 w L²
	// 10 plf: M from -13200 to 10560 lb-in, -0.10 and 0.08 w L²
	// 20 plf: M from -14400 to 11520 lb-in, -0.10 and 0.08 w L²
}
