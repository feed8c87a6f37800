package cover

import (
	"fmt"

	"patiocover/calc"
)

// members writes up every member: the rafters, each beam line, the posts.
func (m *model) members(ws *workspace, d *design) []Member {
	out := []Member{m.rafterMember(ws, d)}
	if out[0].Count > edgeRafters {
		out[0].Count -= edgeRafters
		out = append(out, m.edgeMember(d))
	}
	for i := range m.lines {
		out = append(out, m.beamMember(ws, d, i))
	}
	out = append(out, m.postMember(ws, d))
	if knee, ok := m.kneeMember(ws, d); ok {
		out = append(out, knee)
	}
	if d.deck != nil {
		out = append(out, d.deck.member)
	}
	return out
}

func (m *model) rafterMember(ws *workspace, d *design) Member {
	w := &d.rafter
	out := m.newMember("R1", "rafter", w, m.rafters, d.noRafter)
	out.Count = len(m.plan.rafters)
	out.Length = m.plan.slope(m.plan.projection) / calc.Ft
	h := m.rafterHolding(w, &d.beam)
	out.Notes = m.rafterNotes(w)
	m.addRafterChecks(m.rafter, w, h, &ws.rafter, &out)
	m.rafterWater(ws, w, &out)
	return out
}

// addRafterChecks writes up the checks of rafters.
func (m *model) addRafterChecks(r *rafterFrame, w *wood, h *holding, g *graded, out *Member) {
	for k, x := range g {
		kind := checkKind(k)
		if kind.optional() && x.demand == 0 {
			continue
		}
		var trace []calc.Line
		if !out.brief {
			trace = r.trace(w, h, kind, x, r.parts(&r.arr[x.by], w))
			if kind == axialCheck {
				trace = append(r.thrustTrace(w, x), trace...)
			}
		}
		out.add(checkNames[k], r.nameOf(kind, x), m.rafterPlace(kind, x), r.result(w, h, kind, x), trace...)
	}
	r.addCodeTotal(w, h, 0, r.bays, out)
}

// rafterPlace says where on a rafter a check is.
func (m *model) rafterPlace(k checkKind, x found) string {
	switch k {
	case bearingCheck, bedCheck, notchCheck, restCheck, boltCheck:
		return m.bearsOn(x.bay)
	}
	return spanName(m.rafter.bays, x.bay)
}

// addCodeTotal writes the deflection that the building code counts. from is the first bay
// of the stick among those of its line.
func (f *frame) addCodeTotal(w *wood, h *holding, from int, bays []bay, out *Member) {
	name, b, c := f.codeTotal(w, h)
	out.add(codeTotalName, name, spanName(bays, from+b), c)
}

func (m *model) beamMember(ws *workspace, d *design, line int) Member {
	w := &d.beam
	out := m.newMember(mark("BM", line), "beam", w, m.beams, d.noBeam)
	out.Count = len(m.plan.pieces())
	out.Length = m.plan.longest() / calc.Ft
	out.Notes = m.beamNotes(w)
	l, held := m.lines[line], m.beamHeld(w)
	for k := range checkKinds {
		p := ws.lines[line].worst(k)
		x := ws.lines[line].pieces[p][k]
		if k == bearingCheck || (k.optional() && x.demand == 0) {
			continue // bearing stands with the posts
		}
		var trace []calc.Line
		if !out.brief {
			trace = l.pieces[p].trace(w, held, k, x, l.parts(m, d, p, x.by))
		}
		out.add(checkNames[k], l.pieces[p].nameOf(k, x), l.where(p, k, x), l.pieces[p].result(w, held, k, x), trace...)
	}
	at := ws.lines[line].worst(sagCheck)
	l.pieces[at].addCodeTotal(w, held, l.pieces[at].firstPost, l.bays, &out)
	out.Notes = append(out.Notes, l.pieceNotes(&ws.lines[line])...)
	if m.flat() {
		out.add(pondName, "water that gathers in its own sag", "longest span", m.beamPond(line, w))
	}
	m.addBraced(ws, d, line, &out)
	out.add(stockName, "geometry", "longest piece", stockCheck{m.plan.longest(), *m.in.Beams.Stock * calc.Ft})
	return out
}

// pieceNotes gives each stick of a spliced line its own verdict.
func (f *beamFrame) pieceNotes(lw *lineWork) []string {
	if len(f.pieces) == 1 {
		return nil
	}
	var out []string
	for i, p := range f.pieces {
		g := &lw.pieces[i]
		ratio := Ratio(g.ratio())
		out = append(out, fmt.Sprintf("Piece %d, from %s to %s: %s, %s governs at ratio %s",
			i+1, calc.FeetInches(p.from), calc.FeetInches(p.to), ratio.Verdict(), checkNames[g.kind()], ratioText(ratio)))
	}
	return out
}

// where says where on a stick of the line a check is.
func (f *beamFrame) where(stick int, k checkKind, x found) string {
	switch k {
	case notchCheck, restCheck, boltCheck:
		return fmt.Sprintf("over post %d of the line", f.pieces[stick].firstPost+x.bay+1)
	}
	return spanName(f.bays, f.pieces[stick].firstPost+x.bay)
}

// worst returns the piece with the largest ratio of a kind of check.
func (lw *lineWork) worst(k checkKind) int {
	at := 0
	for p := range lw.pieces {
		if lw.pieces[p][k].ratio > lw.pieces[at][k].ratio {
			at = p
		}
	}
	return at
}

// nameOf is the arrangement that brings a check.
func (f *frame) nameOf(k checkKind, x found) string {
	switch k {
	case liveCheck:
		return f.sag[x.by].name()
	case sagCheck:
		return "Kcr D, and " + f.sag[x.by].name()
	case gustCheck:
		return f.blows[x.by].name()
	case axialCheck:
		return f.arr[x.by].name() + ", with the largest force along the slope"
	}
	return f.arr[x.by].name()
}

// newMember is a member without its checks, which are to be written up unless the model is
// in brief.
func (m *model) newMember(mark, name string, w *wood, st stock, no []Rejected) Member {
	out := newMember(mark, name, w, st, no)
	out.brief = m.brief
	return out
}

func newMember(mark, name string, w *wood, st stock, no []Rejected) Member {
	s := w.section
	return Member{
		Mark: mark, Name: name, Size: s.Name, Species: st.species, Grade: st.grade,
		Dressed: sides(s), Product: w.product(name, st),
		Given: st.size != "", Verdict: OK, Rejected: no,
	}
}

// checked is a check as the report shows it: the written calculation under its name, and
// the ratio of the numbers.
func checked(c calc.Check, ratio Ratio, combination, where string) MemberCheck {
	return MemberCheck{
		Name: c.Name, Combination: combination, Where: where, Ratio: ratio, Verdict: ratio.Verdict(), Recalled: c.Recalled(), Check: c,
	}
}

// add writes a check up, behind the trace of its demand, and keeps the worst. In brief it
// keeps the name and the ratio alone.
func (out *Member) add(name, combination, where string, r calc.Result, trace ...calc.Line) {
	var c calc.Check
	if !out.brief {
		c = behind(trace, r.Explain())
	}
	c.Name = name
	ratio := Ratio(r.Ratio())
	out.Checks = append(out.Checks, checked(c, ratio, combination, where))
	out.Verdict = out.Verdict.Worse(ratio.Verdict())
	if fits := name == stockName && ratio <= 1; !fits && (ratio > out.Ratio || out.Governs == "") {
		out.Ratio, out.Governs = ratio, name
	}
}
