package cover

import (
	"math"

	"patiocover/calc"
	"patiocover/connections/anchor"
	"patiocover/connections/footing"
	"patiocover/loads"
)

// foundations says what each post asks of the ground, what it stands on, and whether
// that holds, and how the sizes of footings were chosen.
func (m *model) foundations(ws *workspace, d *design) ([]FoundationAt, *FootingChoice) {
	var out []FoundationAt
	var needs []footingNeed
	g := m.newBed()
	for i, l := range m.lines {
		dead := l.leastDead(m, d.woods())
		for n, x := range m.plan.posts {
			f := FoundationAt{Post: mark("P", len(out)), X: x / calc.Ft, Y: m.plan.lines[i] / calc.Ft}
			need := m.asks(&f, &ws.lines[i].posts[n].with, &d.post, dead[n])
			m.slab(&f)
			out, needs = append(out, f), append(needs, need)
		}
	}
	if *m.in.Foundation.Kind != "slab" {
		return out, m.pour(out, needs, &g)
	}
	for i := range out {
		m.standOnSlab(&out[i], &needs[i], &g)
	}
	return out, nil
}

// asks puts down what a post asks of the ground. dead is the least dead load on it, lb. It
// allocates nothing.
func (m *model) asks(f *FoundationAt, c *postCase, post *wood, dead float64) footingNeed {
	l, own, light := m.lines[c.line], post.most*c.height, post.least*c.height
	f.Kind = *m.in.Foundation.Kind
	f.Gravity = l.named(c.force.rest, own)
	for day := range durations {
		if q := l.named(c.force.press[day], own); q.Value > f.Every.Value {
			f.Every = q
		}
	}
	tip := m.tip(c.line, c.post, false)
	f.Every.Value += m.asd(tip)
	f.Uplift = l.lifts(c.post, light, tip.wind)
	m.quakeLift(f, dead+light, tip.quake)
	f.Pull = max(l.strengthPull(c.post, dead+light, light, tip.wind), m.quakePull(dead+light, tip.quake))
	need := m.needOf(f, postPlace{c.line, c.post}, post)
	f.Push, need.shear = m.footShear(c.line, c.post)
	return need
}

// needOf is what a post of a line asks of its foundation. Where the posts hold the cover
// by their embedment, the push acts at the roof and not at their feet.
func (m *model) needOf(f *FoundationAt, at postPlace, post *wood) footingNeed {
	s := post.section
	n := footingNeed{
		press: f.Every.Value, lift: f.Uplift.Value, thin: min(s.Breadth, s.Depth), thick: max(s.Breadth, s.Depth),
		section: s.Area(),
	}
	for d := range m.racking {
		if m.racking[d].system == "embedded_posts" && f.Kind == "embedded" {
			n.top = max(n.top, m.asd(m.shearAt(d, at.line, at.post)))
		}
	}
	n.height = m.poleHeight(at.line)
	return n
}

// A postPlace is a post of a beam line.
type postPlace struct{ line, post int }

// poleHeight is the height above grade at which the push acts on the posts of a line that
// stand by their embedment, in.
func (m *model) poleHeight(line int) float64 {
	y := m.plan.lines[line]
	return max(m.plan.mean(), m.plan.topAt(y)) + *m.in.Cover.SlabFall*calc.In/calc.Ft*y
}

// footShear is the sideways force at the foot of a post, the larger of both directions, lb
// of strength level and of allowable stress design.
func (m *model) footShear(line, post int) (strength, allowable float64) {
	for d := range directions {
		at := m.shearAt(d, line, post)
		strength = max(strength, at.wind, at.quake)
		allowable = max(allowable, m.asd(at))
	}
	return strength, allowable
}

// quakeLift raises the uplift of a post to that of the earthquake on a braced cover. dead
// is the least dead load with the post, and tip what the earthquake adds, lb.
func (m *model) quakeLift(f *FoundationAt, dead, tip float64) {
	if !m.quaking || tip == 0 {
		return
	}
	for i := range m.rules.quakes {
		q := &m.rules.quakes[i]
		if up := q.Earthquake*tip - (q.Dead+q.EarthquakeUp*m.sideways.vertical)*dead; q.DeadLeast && up > f.Uplift.Value {
			f.Uplift = Force{Value: up, Combination: q.Name}
		}
	}
}

// quakePull is the net uplift of the earthquake at strength level, 0.9D - Ev + Eh (ASCE 7
// 2.3.6 (7)), lb; 0 where it tips nothing.
func (m *model) quakePull(dead, tip float64) float64 {
	if tip == 0 {
		return 0
	}
	return max(0, tip-(strengthDead-m.sideways.vertical)*dead)
}

// standOnSlab puts a post on its slab.
func (m *model) standOnSlab(f *FoundationAt, n *footingNeed, g *bed) {
	f.Verdict, f.Reason = f.Slab, f.SlabWhy
	m.onSlab(f)
	m.anchorage(f, footing.Block{}, nil)
	if f.Verdict == Over {
		m.instead(f, n, g)
	}
}

// stand puts a post on the block that was chosen.
func (m *model) stand(f *FoundationAt, n *footingNeed, g *bed, p footingPlan, at poured) {
	b := at.block
	checks := g.check(n, b, p.hold)
	f.Size, f.Width, f.Depth = blockWords(b), b.Width/calc.In, b.Depth/calc.In
	f.Shape, f.Concrete = b.Shape.String(), feetOf(b)
	f.Pad, f.Neck = b.Thickness/calc.In, b.Neck/calc.In
	f.Given = p.width > 0 && p.depth > 0
	for _, r := range checks.results() {
		f.Checks = append(f.Checks, groundCheck(r, f.combinationOf(r), f.Post))
	}
	f.judge(g)
	if m.wantsEmbedment() && f.Kind != "embedded" {
		f.Verdict = Over
		f.Reason += "; but posts in the ground are said to hold the cover sideways, and a post base holds no moment"
	}
	m.anchorage(f, b, at.bolt)
}

// wantsEmbedment reports whether posts in the ground hold the cover in some direction.
func (m *model) wantsEmbedment() bool {
	return m.sideways.along.system == "embedded_posts" || m.sideways.out.system == "embedded_posts"
}

// groundCheck writes a check of a foundation up.
func groundCheck(r calc.Result, combination, where string) MemberCheck {
	return checked(r.Explain(), Ratio(r.Ratio()), combination, where)
}

// combinationOf names what brings the demand of a check.
func (f *FoundationAt) combinationOf(r calc.Result) string {
	switch r.(type) {
	case footing.Bearing, footing.Plain:
		return f.Every.Combination
	case footing.Uplift, footing.SlabWeight:
		return f.Uplift.Combination
	case footing.Sideways, footing.Pole:
		return "largest sideways force (ASD)"
	}
	return "sizes"
}

// judge says which check governs the foundation, and what is open about it.
func (f *FoundationAt) judge(g *bed) {
	f.Verdict, f.Ratio = OK, 0
	for _, c := range f.Checks {
		f.Verdict = f.Verdict.Worse(c.Verdict)
		if c.Ratio > f.Ratio || f.Governs == "" {
			f.Ratio, f.Governs = c.Ratio, c.Name
		}
	}
	f.Reason = f.Size + ": " + f.Governs + " governs at ratio " + ratioText(f.Ratio)
	for _, doubt := range []string{g.why, g.steel} {
		if doubt != "" {
			f.Verdict = f.Verdict.Worse(NotChecked)
			f.Reason += "; " + doubt
		}
	}
}

// instead proposes a footing where the slab does not do.
func (m *model) instead(f *FoundationAt, n *footingNeed, g *bed) {
	p := m.planOf("footing", g, n)
	at := g.chooseWithBolt([]footingNeed{*n}, p, bolting{
		loads: []anchor.Load{{Pull: f.Pull, Push: f.Push}}, around: m.inBlock,
	})
	if at.ratio <= 1 && g.why == "" {
		f.Instead = "a footing " + blockWords(at.block)
		if at.used <= 1 {
			f.Instead += " with a " + boltWords(*at.bolt)
		}
		f.Reason += "; " + f.Instead + " would do"
	}
}

// named is a peak on a post with the post's own weight.
func (f *beamFrame) named(p peak, own float64) Force {
	if p.value == 0 {
		return Force{}
	}
	return Force{Value: p.value + own, Combination: f.arr[p.by].name()}
}

// lifts is the largest net uplift at the foot of a post, under any combination. tip is
// what the tipping of a braced cover adds under wind, lb of strength level.
func (f *beamFrame) lifts(post int, own, tip float64) Force {
	var out Force
	for i := range f.arr {
		a := &f.arr[i]
		if up := -f.forces[i][post] - a.self*own + tip*a.wind; up > out.Value {
			out = Force{Value: up, Combination: a.name()}
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
		f.SlabWhy = standsOn[*in.Kind] + ": the slab rule is not for it"
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
			" lb of uplift, which slab weight and anchor must hold"
	}
}

// onSlab adds what the slab weighs to the slab rule. Where the distances to its edges are
// not known the post stands as if at a corner, and what a corner does not hold is open.
func (m *model) onSlab(f *FoundationAt) {
	in := m.in.Foundation
	known := in.SlabEdge != nil && in.SlabAcross != nil
	w := footing.NewSlabWeight(f.Uplift.Value, *in.SlabThickness*calc.In, inchesOf(in.SlabEdge), inchesOf(in.SlabAcross))
	c := groundCheck(w, f.combinationOf(w), f.Post)
	holds := calc.Grouped(calc.Number(calc.RoundDown(w.Resisting, 1)))
	switch {
	case c.Verdict == OK:
		f.Reason += "; the slab around the post holds " + holds + " lb down"
	case known:
		f.Reason += "; the slab around the post holds only " + holds + " lb of it down"
	default:
		c.Verdict = NotChecked
		f.Reason += "; at a corner of the slab only " + holds + " lb of it is held down: " +
			"give foundation.slab_edge_in and foundation.slab_edge_across_in"
	}
	f.Checks = append(f.Checks, c)
	f.Verdict = f.Verdict.Worse(c.Verdict)
	f.Ratio = Ratio(max(float64(c.Ratio), f.SlabCalc.Ratio()))
	f.Governs = c.Name
	if f.SlabCalc.Ratio() > float64(c.Ratio) {
		f.Governs = f.SlabCalc.Name
	}
	if math.IsInf(float64(f.Ratio), 1) && f.Slab == Over {
		f.Governs = f.SlabCalc.Name
	}
}
