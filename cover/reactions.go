package cover

import (
	"patiocover/calc"
)

// reactions lists what the rafters hand to their supports and the beams to their
// posts.
func (m *model) reactions(d *design) []Reaction {
	var out []Reaction
	for s, y := range m.plan.supports() {
		out = append(out, m.rafterReaction(s, y, d))
	}
	n := 0
	for i, l := range m.lines {
		for p := range m.plan.posts {
			out = append(out, m.postReaction(l, i, p, mark("P", n), d))
			n++
		}
	}
	return out
}

// rafterReaction is what one rafter of full tributary width hands on.
func (m *model) rafterReaction(support int, y float64, d *design) Reaction {
	r := m.rafter
	out := Reaction{Support: m.supportName(support), Of: "R1, one rafter", X: m.plan.width / 2 / calc.Ft, Y: y / calc.Ft}
	for _, least := range []bool{false, true} {
		layers, own := r.deadAt(m, support, &d.rafter, least)
		out.cases(CaseForce{deadName(least), layers + own})
	}
	if m.live > 0 {
		out.cases(CaseForce{"roof live load", r.planAt(m, support, m.live)})
	}
	for i := range m.snow.sets {
		out.cases(CaseForce{m.snowName(i), r.planAt(m, support, m.snow.even(i)) + r.heapAt(m, support, i)})
	}
	for _, w := range m.wind.rafter {
		out.cases(CaseForce{w.name, w.share * r.windAt(m, support, w)})
	}
	for i := range r.arr {
		a := &r.arr[i]
		out.extremes(a.name(), r.reactionOf(a, support, &d.rafter).total())
	}
	return out
}

// deadName names the dead load as a case.
func deadName(least bool) string {
	if least {
		return "dead load at its least"
	}
	return "dead load at its most"
}

// postReaction is what the beam hands to one post.
func (m *model) postReaction(l *beamFrame, line, post int, name string, d *design) Reaction {
	out := Reaction{Support: name, Of: mark("BM", line), X: m.plan.posts[post] / calc.Ft, Y: m.plan.lines[line] / calc.Ft}
	at := func(fill func(coef []float64)) float64 { return l.forceOn(post, fill) }
	for _, least := range []bool{false, true} {
		out.cases(CaseForce{deadName(least), at(func(coef []float64) { l.dead(coef, m, d.woods(), least) })})
	}
	if m.live > 0 {
		out.cases(CaseForce{"roof live load", at(func(coef []float64) { l.uniform(coef, m.rafter.planAt(m, l.support, m.live)) })})
	}
	for i := range m.snow.sets {
		force := m.rafter.planAt(m, l.support, m.snow.even(i)) + m.rafter.heapAt(m, l.support, i)
		out.cases(CaseForce{m.snowName(i), at(func(coef []float64) { l.uniform(coef, force) })})
	}
	for i := range l.windOn {
		w := &l.windOn[i]
		out.cases(CaseForce{w.name, at(func(coef []float64) { w.spread(coef, len(l.bays), 1) })})
	}
	own, all := m.wind.posts[line][post], func(coef []float64) { l.uniform(coef, 1) }
	for _, sign := range []float64{1, -1} {
		part := m.room.component("the post's own strip as a component", own, own, sign)
		if own.Area < largeTributary && !m.wind.only {
			out.cases(CaseForce{part.name, m.rafter.windAt(m, l.support, part) * at(all)})
		}
	}
	for i := range l.arr {
		out.extremes(l.arr[i].name(), l.forces[i][post])
	}
	return out
}

// forceOn is the force on one post with the factors set by fill, lb.
func (f *beamFrame) forceOn(post int, fill func(coef []float64)) float64 {
	sum := 0.0
	for i := range f.pieces {
		p := &f.pieces[i]
		s := post - p.firstPost
		if s < 0 || s > p.plan.Line().Spans() {
			continue
		}
		coef := make([]float64, len(p.normal))
		fill(coef)
		p.plan.Forces(coef, &p.frame.forces)
		sum += p.frame.forces.Reactions[s]
	}
	return sum
}

func (r *Reaction) cases(all ...CaseForce) { r.ByCase = append(r.ByCase, all...) }

func (r *Reaction) extremes(name string, force float64) {
	if force > r.Down.Value {
		r.Down = Force{Value: force, Combination: name}
	}
	if -force > r.Up.Value {
		r.Up = Force{Value: -force, Combination: name}
	}
}
