package cover

// report assembles everything. It is the only place where a report is made.
func (m *model) report(in Input, assumed []Assumption, ws *workspace, d design) (Report, error) {
	st, err := stamp(in)
	if err != nil {
		return Report{}, err
	}
	m.sideways = newSideways(m, d.woods())
	closure, err := m.closure(&d)
	if err != nil {
		return Report{}, err
	}
	d.deck = m.deck()
	members, err := m.bothMembers(ws, &d)
	if err != nil {
		return Report{}, err
	}
	r := Report{
		Notice: Notice, Stamp: st, Input: in, Criteria: criteria(in, m.in), Assumed: inOrder(append(assumed, m.assumedCut(&d)...)),
		Geometry: m.geometry(&d), Loads: m.loadReport(&d), Members: members, Method: methodOf(m.in).String(),
		Deck:      m.deckReport(d.deck),
		Reactions: m.reactions(&d),
		Existing:  m.existingRoof(&d), Survey: m.survey(in, &d), Drainage: m.drainage(), Closure: closure, NotChecked: m.skips(),
	}
	m.hold(&r, ws, &d)
	d.buried = buried(r.Foundations)
	r.Paths = m.paths(r.Links, closure)
	r.TakeOff = m.takeOff(&r, &d)
	r.NotChecked = append(r.NotChecked, r.Survey.skips()...)
	r.Summary = r.summary(m.openLoads())
	r.Verdict = OK
	for _, f := range r.Summary {
		r.Verdict = r.Verdict.Worse(f.Verdict)
	}
	return r, nil
}

// hold puts into a report with its members what holds them: foundations, connections, the
// way sideways; and the headroom below them.
func (m *model) hold(r *Report, ws *workspace, d *design) {
	r.Foundations, r.Footings = m.foundations(ws, d)
	r.Concrete = concreteOf(r.Foundations)
	r.Links = m.links(ws, d)
	m.holdLinks(r.Links, r.Foundations)
	r.Headroom = m.headroom(d)
	r.Lateral = m.lateral(r, d)
}
