package cover

import (
	"fmt"
	"math"

	"patiocover/connections/anchor"
	"patiocover/connections/footing"
)

// HullFaults compares the peaks of the arrangements that can bring one with those of all
// arrangements, for every candidate of a cover, and returns what differs.
func HullFaults(in Input) ([]string, error) {
	full, _ := in.Assume()
	m, err := newModel(full)
	if err != nil {
		return nil, err
	}
	m.findHulls(true, true)
	return m.hullFaults(), nil
}

// HullFaultsOfYard does so for the candidates of a space, of several species.
func HullFaultsOfYard(in Input, s Space) ([]string, error) {
	l, _, err := newYard(in, s, Limits{}).open(0, 0)
	if err != nil || l == nil {
		return nil, err
	}
	return l.main.m.hullFaults(), nil
}

func (m *model) hullFaults() []string {
	var out []string
	for i := range m.rafterWoods {
		r := &m.rafterWoods[i]
		out = append(out, m.rafter.hullFaults("rafter "+r.section.Name, r)...)
		m.loadBeams(r)
		for b := range m.beamWoods {
			w := &m.beamWoods[b]
			for _, l := range m.lines {
				for p := range l.pieces {
					out = append(out, l.pieces[p].hullFaults("beam "+w.section.Name+" under "+r.section.Name, w)...)
				}
			}
		}
	}
	return out
}

// HullSizes counts what the hulls of a cover keep, and what there is.
func HullSizes(in Input) (kept, all int, err error) {
	full, _ := in.Assume()
	m, err := newModel(full)
	if err != nil {
		return 0, 0, err
	}
	m.findHulls(true, true)
	kept, all = len(m.rafter.hull.strength), len(m.rafter.arr)
	for _, l := range m.lines {
		for _, p := range l.pieces {
			kept, all = kept+len(p.hull.strength), all+len(p.arr)
		}
	}
	return kept, all, nil
}

func (f *frame) hullFaults(name string, w *wood) []string {
	var some, every peaks
	f.demands(w, false, &some)
	f.demands(w, true, &every)
	if !f.hull.covers(w) {
		return []string{name + ": a candidate that the hull does not cover"}
	}
	var out []string
	compare := func(what string, a, b peak) {
		if math.Abs(a.value-b.value) > 1e-9*math.Abs(b.value)+1e-9 {
			out = append(out, fmt.Sprintf("%s, %s: %v of the hull, %v of all", name, what, a.value, b.value))
		}
	}
	for d := range durations {
		compare("shear", some.shear[d], every.shear[d])
		for b := range f.bays {
			for edge := range 2 {
				compare("moment", some.moment[d][b][edge], every.moment[d][b][edge])
				compare("moment over a support", some.over[d][b][edge], every.over[d][b][edge])
				compare("shear beside a support", some.face[d][b][edge], every.face[d][b][edge])
			}
		}
	}
	for b := range f.bays {
		compare("sag", some.total[b], every.total[b])
	}
	return out
}

// FootingAllocations counts the allocations of choosing one footing.
func FootingAllocations(runs func(f func()) float64) float64 {
	g := bed{concrete: 2500, water: 360, line: 12}
	g.bearing.Value, g.lateral.Value = 10, 0.06
	n := []footingNeed{{press: 3000, lift: 800, shear: 100, thin: 5.5, thick: 5.5}}
	return runs(func() { g.choose(n, footingPlan{least: leastSquare, shallowest: 12, asWide: true}) })
}

// WidenedPier is the diameter of the pier and of the bolt, in, for a pull on the anchor
// alone, lb, in concrete of 2500 psi.
func WidenedPier(pull float64) (width, diameter float64) {
	g := bed{concrete: 2500, water: 360, line: 12}
	g.bearing.Value, g.lateral.Value = 10, 0.06
	at := g.chooseWithBolt([]footingNeed{{press: 500, thin: 3.5, thick: 3.5}},
		footingPlan{shape: footing.Round, least: leastPier, shallowest: 18},
		bolting{loads: []anchor.Load{{Pull: pull}}, around: func(b footing.Block) anchor.Concrete {
			half := math.Sqrt(b.Area()) / 2
			return anchor.Concrete{Strength: 2500, Thickness: b.Depth, West: half, East: half, South: half, North: half}
		}})
	return at.block.Width, at.bolt.Diameter
}
