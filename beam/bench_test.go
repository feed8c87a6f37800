package beam_test

import (
	"testing"

	"patiocover/beam"
)

// Inputs of benchmarks pass through variables that the compiler cannot see through,
// and results are kept, so that nothing is computed beforehand or left out.
var (
	workloads = []workload{span3(), span10()}
	kept      float64
)

// BenchmarkEnvelope takes the exact extrema of twelve combinations, plan prepared.
func BenchmarkEnvelope(b *testing.B) {
	for _, w := range workloads {
		b.Run(w.name, func(b *testing.B) { benchmarkEnvelope(b, w) })
	}
}

func benchmarkEnvelope(b *testing.B, w workload) {
	p := w.plan(b)
	bays := make([]beam.Bay, len(w.supports)+1)
	var r beam.Response
	b.ReportAllocs()
	for b.Loop() {
		w.envelope(p, &r, bays)
	}
	kept += bays[1].MomentMax + r.Reactions[0]
}

// BenchmarkEnvelopePartial does the same with every arrangement of partial load.
func BenchmarkEnvelopePartial(b *testing.B) {
	for _, w := range workloads {
		b.Run(w.name, func(b *testing.B) { benchmarkEnvelope(b, w.partial()) })
	}
}

// BenchmarkForces leaves the deflections out.
func BenchmarkForces(b *testing.B) {
	for _, w := range workloads {
		b.Run(w.name, func(b *testing.B) {
			p := w.plan(b)
			var r beam.Response
			b.ReportAllocs()
			for b.Loop() {
				for i := range w.factors {
					p.Forces(w.factors[i], &r)
				}
			}
			kept += r.Bays[1].MomentMax
		})
	}
}

// BenchmarkGoverning tells what the twelve combinations bring at least, as a search asks
// for every size: from the outlines of own weight and rafters.
func BenchmarkGoverning(b *testing.B) {
	w := workloads[0]
	b.Run(w.name, func(b *testing.B) {
		o, mixes := w.outlines(b)
		b.ReportAllocs()
		for b.Loop() {
			for _, list := range [...]*beam.Outline{&o.Moment, &o.Shear, &o.Reaction, &o.Deflection, &o.Overhang} {
				least, largest := list.Range(mixes...)
				kept += largest - least
			}
		}
	})
}

// BenchmarkOutlines makes the outlines, with storage that is there.
func BenchmarkOutlines(b *testing.B) {
	w := workloads[0]
	b.Run(w.name, func(b *testing.B) {
		p := w.plan(b)
		o, mixes := w.outlines(b)
		b.ReportAllocs()
		for b.Loop() {
			o.Set(p, w.factors[0], w.factors[1], mixes[:3]...)
		}
		kept += float64(len(mixes))
	})
}

// BenchmarkEnvelopeBandReference does the same by elements, factored once.
func BenchmarkEnvelopeBandReference(b *testing.B) {
	for _, w := range workloads {
		b.Run(w.name, func(b *testing.B) {
			r, bays := newBandReference(w), make([]beam.Bay, len(w.supports)+1)
			for b.Loop() {
				r.run(bays)
			}
			kept += bays[1].MomentMax
		})
	}
}

// BenchmarkEnvelopeDenseReference does the same by elements, factored each time.
func BenchmarkEnvelopeDenseReference(b *testing.B) {
	for _, w := range workloads {
		b.Run(w.name, func(b *testing.B) {
			r, bays := newDenseReference(w), make([]beam.Bay, len(w.supports)+1)
			for b.Loop() {
				r.run(bays)
			}
			kept += bays[1].MomentMax
		})
	}
}

// BenchmarkSetup goes from geometry to plan, with spans that stay and storage that
// is there.
func BenchmarkSetup(b *testing.B) {
	w := workloads[0]
	b.Run(w.name, func(b *testing.B) {
		line, err := beam.NewLine(w.length, w.supports)
		if err != nil {
			b.Fatal(err)
		}
		var p beam.Plan
		b.ReportAllocs()
		for b.Loop() {
			if err := line.Set(w.length, w.supports); err != nil {
				b.Fatal(err)
			}
			if err := p.Set(line, w.cases); err != nil {
				b.Fatal(err)
			}
		}
	})
}
