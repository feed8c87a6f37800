package cover

import (
	"patiocover/calc"
	"patiocover/loads"
)

// foundations says what each post asks of the ground, and whether it may stand on
// the slab.
func (m *model) foundations(ws *workspace, d *design) []FoundationAt {
	var out []FoundationAt
	tip := m.sideways.tipping(&m.plan)
	for i, l := range m.lines {
		for n, x := range m.plan.posts {
			with := &ws.lines[i].posts[n].with
			f := FoundationAt{
				Post: mark("P", len(out)), X: x / calc.Ft, Y: m.plan.lines[i] / calc.Ft, Kind: *m.in.Foundation.Kind,
			}
			own := d.post.most * with.height
			f.Gravity = l.named(with.force.rest, own)
			for day := range durations {
				if q := l.named(with.force.press[day], own); q.Value > f.Every.Value {
					f.Every = q
				}
			}
			f.Every.Value += tip
			f.Uplift = l.lifts(n, d.post.least*with.height, tip)
			m.slab(&f)
			out = append(out, f)
		}
	}
	return out
}

// named is a peak on a post with the post's own weight.
func (f *beamFrame) named(p peak, own float64) Force {
	if p.value == 0 {
		return Force{}
	}
	return Force{Value: p.value + own, Combination: f.arr[p.by].name}
}

// lifts is the largest net uplift at the foot of a post, under any combination. tip is
// what the tipping of a braced cover adds under wind, lb.
func (f *beamFrame) lifts(post int, own, tip float64) Force {
	var out Force
	for i := range f.arr {
		a := &f.arr[i]
		if up := -f.forces[i][post] - a.self*own + tip*a.wind/asdWind; up > out.Value {
			out = Force{Value: up, Combination: a.name}
		}
	}
	return out
}

// standsOn says what a post stands on that is no slab.
var standsOn = map[string]string{
	"footing": "stands on a footing", "pier": "stands on a pier", "embedded": "is set in a footing in the ground",
}

// slab applies the slab rule to one post.
func (m *model) slab(f *FoundationAt) {
	in := m.in.Foundation
	if *in.Kind != "slab" {
		f.Slab = NotChecked
		f.SlabWhy = standsOn[*in.Kind] + ", whose bearing, uplift weight and frost depth are not checked"
		return
	}
	all := *in.SlabRule == "all_loads"
	counted := f.Gravity.Value
	if all {
		counted = f.Every.Value
	}
	rule := loads.NewSlabRule(counted, *m.in.Site.FrostDepth*calc.In, *in.SlabThickness*calc.In, all)
	f.SlabCalc = rule.Explain()
	limit := calc.Grouped(calc.Number(calc.RoundDown(rule.Limit, 1)))
	f.Slab = Ratio(rule.Ratio()).Verdict()
	switch {
	case rule.Fault != loads.SlabSound:
		f.SlabWhy = rule.Fault.String()
	case f.Slab == Over:
		f.SlabWhy = "carries " + pounds(counted) + " lb, more than the " + limit + " lb that a slab may"
	case !yes(m.in.Site.PatioAppendix):
		f.Slab = NotChecked
		f.SlabWhy = "carries " + pounds(counted) + " lb of " + limit + " lb, but the rule is that of the patio cover appendix, " +
			"which is not said to be adopted: without it footings are asked for"
	default:
		f.SlabWhy = "carries " + pounds(counted) + " lb of the " + limit + " lb allowed"
	}
	if f.Uplift.Value > 0 {
		f.SlabWhy += "; the rule says nothing of the " + pounds(f.Uplift.Value) +
			" lb of uplift: anchor and slab weight are not checked"
	}
}
