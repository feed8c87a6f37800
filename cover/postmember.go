package cover

import (
	"fmt"
	"math"

	"patiocover/calc"
)

// atFoot says what the foot of a post does to its length.
func atFoot(kind string) string {
	if kind == "embedded" {
		return "add what stands in the ground"
	}
	return "take off the height of the post base"
}

func (m *model) postMember(ws *workspace, d *design) Member {
	out := m.newMember("P", "post", &d.post, m.posts, d.noPost)
	out.Count = len(m.lines) * len(m.plan.posts)
	out.Notes = m.postNotes(&d.post)
	for k := range postChecks {
		w, name := ws.worstOf(k)
		out.Length = max(out.Length, w.with.height/calc.Ft)
		x := w.worst[k]
		if x.demand == 0 {
			continue
		}
		out.add(postNames[k], m.postCombination(&w.with, k, x), "post "+name,
			m.postResult(&w.with, &d.beam, &d.post, k, x), m.postTrace(d, &w.with, k, x)...)
	}
	if m.top.joint == "side_bolted" {
		out.Verdict = out.Verdict.Worse(NotChecked)
		out.Notes = append(out.Notes,
			"The beam hangs on bolts at the side of the post: their capacity is that of the link, not of the post")
	}
	for d := range m.racking {
		if m.racking[d].system == "none" {
			out.Verdict = out.Verdict.Worse(NotChecked)
			out.Notes = append(out.Notes, "Nothing holds the posts "+m.sideways.push(d).direction+": their bending there has no answer")
		}
	}
	return out
}

// postNotes says what the checks of the posts rest on.
func (m *model) postNotes(post *wood) []string {
	notes := []string{
		fmt.Sprintf("Ends along the house: %s; out from it: %s", m.ends[alongHouse], m.ends[outward]),
		"Cut length: of the longest post, from the slab to the underside of the beam; " + atFoot(*m.in.Foundation.Kind),
	}
	if post.section.Breadth != post.section.Depth && !m.top.faced {
		notes = append(notes, "Wide face not said: checked both ways, the worse counts")
	}
	if m.top.least {
		notes = append(notes, "The beam is taken a sixth of its contact off center, one direction at a time")
	}
	for d := range m.racking {
		switch r := &m.racking[d]; r.system {
		case "knee_braces":
			notes = append(notes, fmt.Sprintf("Knee braces %s bend the posts: each joint %s below the beam, at %s degrees",
				m.sideways.push(d).direction, calc.FeetInches(m.knee.drop), calc.Number(m.knee.angle)))
		case "embedded_posts":
			notes = append(notes, "Posts in the ground bend as cantilevers "+m.sideways.push(d).direction+
				", clamped below the ground where the soil holds them")
		}
	}
	return notes
}

// worstOf returns the post with the largest ratio of a kind of check, and its mark.
func (ws *workspace) worstOf(k postCheck) (*postWork, string) {
	worst, name, n := &ws.lines[0].posts[0], mark("P", 0), 0
	for i := range ws.lines {
		for p := range ws.lines[i].posts {
			if w := &ws.lines[i].posts[p]; w.worst[k].ratio > worst.worst[k].ratio {
				worst, name = w, mark("P", n)
			}
			n++
		}
	}
	return worst, name
}

// postCombination names what brings a check of a post.
func (m *model) postCombination(c *postCase, k postCheck, x postFound) string {
	name := m.lines[c.line].arr[x.by].name()
	if x.quake {
		name = m.rules.quakes[x.by].Name
	}
	if k == postShear {
		return m.governingPush(x.bend.direction, m.effectOn(x.bend.direction, c.line, c.post).cut)
	}
	if x.bend.windPart != 0 || x.bend.quakePart != 0 {
		name += ", push " + m.sideways.push(x.bend.direction).direction
	}
	return name
}

// postTrace splits the axial force of a post into its causes, and the moment into those of
// the push; the post's own weight is part of the dead load.
func (m *model) postTrace(d *design, c *postCase, k postCheck, x postFound) []calc.Line {
	bent := k == pressedBent || k == pulledBent
	if k == postShear {
		return m.cutTrace(c, x)
	}
	if x.quake {
		return m.quakeTrace(d, c, x)
	}
	t := m.axialTrace(d, c, k, x)
	if t == nil {
		return nil
	}
	if !bent || x.bend.windPart == 0 {
		return t.lines()
	}
	t.symbol, t.reduced = "P_0", false
	var s calc.Sheet
	s.Append(t.lines())
	e := m.effectOn(x.bend.direction, c.line, c.post)
	s.Given("f_W", x.bend.windPart, "", "factor of the combination on wind")
	m.effectLines(&s, x.bend.direction, c, "W")
	s.Step("M_p", "f_W * M_W", x.bend.windPart*e.moment.wind, "lb-in", "of the same combination as the axial force")
	writePushed(&s, "f_W * N_W", x)
	return s.Lines()
}

// cutTrace writes the shear of a post under the push.
func (m *model) cutTrace(c *postCase, x postFound) []calc.Line {
	e := m.effectOn(x.bend.direction, c.line, c.post)
	var s calc.Sheet
	s.Given("V_W", e.cut.wind, "lb", "largest shear in the post by the wind, strength level: above its brace, or below the ground")
	gust := m.rules.strongestGust()
	s.Given("f_W", gust.factor, "", gust.clause+", factor on wind")
	if !m.quaking {
		s.Step("V", "f_W * V_W", x.demand, "lb", "no earthquake is given")
		return s.Lines()
	}
	rule := &m.rules.onQuake
	s.Given("V_E", e.cut.quake, "lb", "the same by the earthquake")
	s.Quoted("f_E", rule.Earthquake, "", rule.Clause+", factor on earthquake", rule.Status)
	s.Step("V", "max(f_W * V_W, f_E * V_E)", x.demand, "lb", "the larger governs")
	return s.Lines()
}

// writePushed adds what the push adds to the axial force.
func writePushed(s *calc.Sheet, tip string, x postFound) {
	if x.demand < 0 {
		s.Step("T", tip+" - P_0", -x.demand, "lb", "pulling, of the same combination")
		return
	}
	s.Step("P", "P_0 + "+tip, x.demand, "lb", "pressing, of the same combination")
}

// axialTrace splits the axial force of one arrangement; nil where one piece of beam of two
// presses.
func (m *model) axialTrace(d *design, c *postCase, k postCheck, x postFound) *traced {
	l := m.lines[c.line]
	a := &l.arr[x.by]
	t := traced{symbol: "P", unit: "lb", what: "force at the post", place: m.plan.posts[c.post], arr: a}
	switch {
	case k == postTension || k == tongueBent || k == pulledBent:
		t.symbol, t.reduced = "T", true
	case k == beamSeat && c.half:
		return nil // one piece of two: its share is the check's own demand
	case k == beamSeat:
		t.symbol = "R"
	default:
		t.values[0] = d.post.most * c.height / a.self // the weight of the post counts in full
	}
	for s := range l.pieces {
		at := c.post - l.pieces[s].firstPost
		if at < 0 || at > l.pieces[s].plan.Line().Spans() {
			continue
		}
		p := l.parts(m, d, s, x.by)
		for i, coef := range [3][]float64{p.dead, p.plan, p.wind} {
			l.pieces[s].plan.Forces(coef, &l.pieces[s].frame.forces)
			t.values[i] += l.pieces[s].frame.forces.Reactions[at]
		}
		if a.wind > 0 {
			t.values[2] += l.pieces[s].gusts[x.by][at] / a.wind
		}
	}
	return &t
}

// quakeTrace writes the axial force and the moment of a post under a combination with
// earthquake.
func (m *model) quakeTrace(d *design, c *postCase, x postFound) []calc.Line {
	q := &m.rules.quakes[x.by]
	e := m.effectOn(x.bend.direction, c.line, c.post)
	var s calc.Sheet
	s.Quoted("f_E", q.Earthquake, "", q.Clause+", "+q.Name, q.Status)
	s.Given("v", m.sideways.vertical, "", "part of the dead load that the earthquake adds, 0.2 SDS")
	dead, snow := c.force.dead+d.post.most*c.height, c.force.snow
	if q.DeadLeast {
		dead, snow = 0, 0
	}
	s.Given("P_D", dead, "lb", "dead load on the post with its own weight; none counted against uplift")
	s.Given("P_S", snow, "lb", "largest snow on the post")
	s.Quoted("f_D", q.Dead, "", q.Clause+", "+q.Name, q.Status)
	s.Quoted("f_V", q.EarthquakeUp, "", q.Clause+", "+q.Name, q.Status)
	s.Quoted("f_S", q.Snow, "", q.Clause+", "+q.Name, q.Status)
	s.Step("P_0", "(f_D + f_V * v) * P_D + f_S * P_S", (q.Dead+q.EarthquakeUp*m.sideways.vertical)*dead+q.Snow*snow, "lb", q.Clause)
	m.effectLines(&s, x.bend.direction, c, "E")
	s.Step("M_p", "f_E * M_E", q.Earthquake*e.moment.quake, "lb-in", "of the same combination as the axial force")
	writePushed(&s, "f_E * N_E", x)
	return s.Lines()
}

// effectLines writes what the push of a direction does to a post: M_W and N_W of the wind
// or M_E and N_E of the earthquake, of strength level.
func (m *model) effectLines(s *calc.Sheet, direction int, c *postCase, of string) {
	e, push := m.effectOn(direction, c.line, c.post), m.sideways.push(direction)
	pick := func(x share) float64 {
		if of == "E" {
			return x.quake
		}
		return x.wind
	}
	name := func(symbol string) string { return symbol + "_" + of }
	force := pick(share{push.wind.Force, push.quake.Force})
	s.Given("H", c.height, "in", "foot to underside of beam, geometry")
	r := &m.racking[direction]
	switch r.system {
	case "house_diaphragm":
		s.Given("w", pick(e.moment)*8/(c.height*c.height), "lb/in", "wind on the post itself, q G C_f d, ASCE 7-16 eq. 29.4-1")
		s.Step(name("M"), "w * pow(H, 2) / 8", pick(e.moment), "lb-in", "statics, foot and top held")
		s.Given(name("N"), 0, "lb", "the house holds the roof from tipping")
		return
	case "embedded_posts":
		s.Given(name("V"), pick(e.shear), "lb", "push on this post, of "+pounds(force)+" lb, strength level")
		s.Given("h", m.poleHeight(c.line), "in", "height at which the push acts, the roof")
		s.Given("y", e.below, "in", "clamp below the ground: "+m.rigidPost(c))
		s.Step(name("M"), name("V")+" * (h + y)", pick(e.moment), "lb-in", "statics of a cantilever")
		s.Given(name("N"), 0, "lb", "a cantilever takes no axial force from the push")
		return
	case "knee_braces":
		m.kneeLines(s, direction, c, of, force)
		return
	}
	s.Given(name("M"), 0, "lb-in", "nothing holds the cover: the posts have no moment to give")
	s.Given(name("N"), 0, "lb", "nothing holds the cover")
}

// rigidPost says what the clamp of a post in the ground rests on.
func (m *model) rigidPost(c *postCase) string {
	if !m.planted() {
		return "the post does not stand in the ground"
	}
	return "statics of a rigid post " + calc.Number(m.depthOfPost(c.line, c.post)) + " in deep, as it is built"
}

// kneeLines writes the effect of a push on a braced post.
func (m *model) kneeLines(s *calc.Sheet, direction int, c *postCase, of string, force float64) {
	at, part := m.rowPost(direction, c.line, c.post)
	roof := max(m.plan.mean(), c.height)
	s.Given("F_"+of, force, "lb", "push of this direction, strength level")
	s.Given("s_V", at.Shear*part, "", "largest share of it in this post: equal posts, portal method, elastic frame")
	s.Given("s_f", at.Foot*part, "", "statics of the row: axial force below the braces for F H / c of 1")
	s.Given("s_t", at.Top*part, "", "statics of the row: axial force above them, likewise")
	s.Given("a", m.knee.drop, "in", "underside of beam to the joint of the brace, geometry")
	s.Given("c", m.knee.reach, "in", "post to the joint of brace and beam, geometry")
	s.Given("h_r", roof, "in", "mean height of the roof, where the push acts")
	v := at.Shear * part * force
	s.Step("V_"+of, "s_V * F_"+of, v, "lb", "push on this post")
	s.Step("M_"+of, "V_"+of+" * (H - a)", v*(c.height-m.knee.drop), "lb-in", "statics: at the joint of the brace")
	foot := at.Foot * part * force * roof / m.knee.reach
	top := part * force * (at.Top*c.height + at.Foot*(roof-c.height)) / m.knee.reach
	s.Step("N_f"+of, "s_f * F_"+of+" * h_r / c", foot, "lb", "statics: below the braces, up or down")
	s.Step("N_t"+of, "F_"+of+" * (s_t * H + s_f * (h_r - H)) / c", top, "lb", "statics: above the braces, up or down")
	s.Step("N_"+of, "max(N_f"+of+", N_t"+of+")", math.Max(foot, top), "lb", "the larger")
}
