package cover

import (
	"context"
	"math"
	"slices"

	"patiocover/beam/lumber"
	"patiocover/connections"
)

// settle finds the cheapest cover of a class on a beam that holds whole, and keeps it. It
// stops with its context.
func (l *layout) settle(ctx context.Context, q FrontPoint, c, b int) {
	best := math.Inf(1)
	var kept FrontPoint
	posts := l.postPrices(c, b)
	for _, r := range l.classes[c].sticks {
		for p := range l.posts {
			q.Cost = tidy(l.least(r, b, p, posts))
			if math.IsInf(q.Cost, 1) || q.Cost > best {
				continue
			}
			l.name(&q, r, b, p)
			if q.Cost == best && slices.Compare(q.order[:byTie], kept.order[:byTie]) > 0 {
				continue // no cheaper, and later in the space
			}
			if !l.carries(r, b) || !l.fits(r) {
				break
			}
			if ctx.Err() != nil {
				return
			}
			if l.front.beats(&q) || !l.judge(&q, r, b, p) {
				continue
			}
			if q.Cost < best || q.Cost == best && slices.Compare(q.order[:], kept.order[:]) < 0 {
				best, kept = q.Cost, q
			}
		}
	}
	if !math.IsInf(best, 1) && !l.front.beats(&kept) {
		l.front.add(kept)
	}
}

// fits reports whether the joints of a rafter that no beam and no post changes hold: the
// fasteners of the deck, and those of the ledger under what brings no force sideways.
func (l *layout) fits(r int) bool {
	at := &l.fit[r]
	if *at != untried {
		return *at == holds
	}
	defer l.clear()
	m, q := l.links.m, FrontPoint{}
	l.name(&q, r, 0, 0) // any beam and post, even such as the input rules do not allow together
	full, _ := q.Apply(l.in).Assume()
	d := m.set(full, l, [3]*stick{l.rafters[r].stick, l.beams[0].stick, l.posts[0].stick})
	d.deck, m.sideways = m.deck(), sideways{}
	_, ok := l.linked(connections.DeckToRafter, &d)
	*at = came(ok && (!m.plan.attached || l.hangs(&d)))
	return *at == holds
}

// hangs reports whether some way to fasten the ledger holds under what brings no force
// sideways, so that beams and posts are no matter.
func (l *layout) hangs(d *design) bool {
	m := l.links.m
	try := func() bool {
		at := m.linksOf(connections.LedgerToHouse, d)
		var still []connections.Demand
		for i, x := range at[0].joint.demands {
			if m.rafter.arr[i].wind == 0 {
				still = append(still, x)
			}
		}
		at[0].joint.demands = still
		m.connect(at, d)
		return at[0].Verdict != Over
	}
	if len(l.space.Ledgers) == 0 {
		return try()
	}
	return slices.ContainsFunc(l.space.Ledgers, func(w LedgerWay) bool {
		w.apply(&m.in.Connections)
		return try()
	})
}

// name says what a point is made of.
func (l *layout) name(q *FrontPoint, r, b, p int) {
	rafter, beam, post := &l.rafters[r], &l.beams[b], &l.posts[p]
	q.Spacing, q.Count = l.space.Spacings[l.order[bySpacing]], len(l.main.m.plan.posts)
	q.RafterWood, q.Rafter, q.BeamWood, q.Beam = rafter.of, rafter.name, beam.of, beam.name
	q.PostWood, q.Post, q.Tie, q.Ledger, q.Footing = post.of, post.name, nil, nil, nil
	q.order = l.order
	q.order[byRafter], q.order[byBeam], q.order[byPost] = rafter.size, beam.size, post.size
	q.order[byRafterWood], q.order[byBeamWood], q.order[byPostWood] = rafter.grade, beam.grade, post.grade
}

// judge decides whether a cover holds whole, with the cheapest ways to tie, to fasten and to
// stand that hold, and what it costs.
func (l *layout) judge(q *FrontPoint, r, b, p int) bool {
	l.judged++
	defer l.clear()
	sticks := [3]*stick{l.rafters[r].stick, l.beams[b].stick, l.posts[p].stick}
	q.Tie, q.Ledger, q.Footing = nil, nil, nil
	d, held := l.place(q, sticks)
	if !held {
		return false
	}
	for _, way := range []struct {
		count, order int
		part         func(*design) (Report, bool)
	}{
		{len(l.space.Ties), byTie, l.tied}, {len(l.space.Ledgers), byLedger, l.fastened}, {len(l.space.Footings), byFooting, l.standing},
	} {
		if way.count > 1 && !l.cheapest(q, &d, way.count, way.order, way.part) {
			return false
		}
	}
	l.pick(q, byTie, byLedger, byFooting)
	if d, held = l.place(q, sticks); !held {
		return false
	}
	report, held := l.whole(q, &d)
	if !held {
		return false
	}
	q.Verdict = report.Verdict
	q.Cost = report.TakeOff.BoardFeet
	if l.dollars {
		q.Cost = *report.TakeOff.Cost
	}
	q.Cost = tidy(q.Cost)
	return true
}

// clear takes the cover that was judged out of the models.
func (l *layout) clear() {
	for _, m := range []*model{l.main.m, l.links.m} {
		m.in, m.kneed = l.full, kneeDesign{}
	}
	l.loaded = 0
}

// pick writes the ways of a point by their places.
func (l *layout) pick(q *FrontPoint, kinds ...int) {
	for _, kind := range kinds {
		switch at := q.order[kind]; {
		case kind == byTie && len(l.space.Ties) > 0:
			q.Tie = &l.space.Ties[at]
		case kind == byLedger && len(l.space.Ledgers) > 0:
			q.Ledger = &l.space.Ledgers[at]
		case kind == byFooting && len(l.space.Footings) > 0:
			q.Footing = &l.space.Footings[at]
		}
	}
}

// filled is the input of a point with what is assumed; it fails where the input rules do not
// allow the point.
func (l *layout) filled(q *FrontPoint) (Input, bool) {
	in := q.Apply(l.in)
	if in.Validate() != nil {
		return l.full, false
	}
	full, _ := in.Assume()
	return full, true
}

// set puts a cover into a model of the layout.
func (m *model) set(full Input, l *layout, sticks [3]*stick) design {
	m.in, m.kneed = full, kneeDesign{}
	m.rafters, m.beams, m.posts = sticks[0].stock, sticks[1].stock, sticks[2].stock
	if m.rules.method != l.method {
		m.rafters, m.beams, m.posts = sticks[0].other, sticks[1].other, sticks[2].other
	}
	return design{rafter: *l.woodFor(m, sticks[0]), beam: *l.woodFor(m, sticks[1]), post: *l.woodFor(m, sticks[2])}
}

// place puts a cover into the models and grades its members; it fails where the input rules
// do not allow it or a member is over.
func (l *layout) place(q *FrontPoint, sticks [3]*stick) (design, bool) {
	main := &l.main
	if main.d = main.m.set(l.full, l, sticks); !main.holds() {
		return main.d, false
	}
	full, ok := l.filled(q)
	if !ok {
		return main.d, false
	}
	if main.d = main.m.set(full, l, sticks); !main.holds() {
		return main.d, false
	}
	d := main.d
	if l.links.m != main.m {
		m := l.links.m
		d = m.set(full, l, sticks)
		if m.kneed = main.m.kneed; m.kneed.braced {
			m.kneed.wood = m.posts.solid(&m.kneed.wood.name).candidates(braceSizes)[0]
		}
		m.numbers(l.links.ws, &d.rafter, &d.beam, &d.post)
	}
	l.links.m.sideways = newSideways(l.links.m, d.woods())
	d.deck = l.links.m.deck()
	return d, true
}

// holds grades the members of the design, with the knee braces that it takes, and reports
// whether none is over.
func (s *solved) holds() bool {
	ratio := s.m.numbers(s.ws, &s.d.rafter, &s.d.beam, &s.d.post)
	if s.m.in.Lateral.kneed() {
		s.m.chooseKnees(s.ws, &s.d)
		ratio = s.m.numbers(s.ws, &s.d.rafter, &s.d.beam, &s.d.post)
	}
	return ratio <= 1
}

// cheapest picks the first of the cheapest ways of one kind that hold, each judged by itself;
// where cost is told in board feet all ways cost the same.
func (l *layout) cheapest(q *FrontPoint, d *design, count, order int, part func(*design) (Report, bool)) bool {
	m, in := l.links.m, l.links.m.in
	best, chosen := math.Inf(1), -1
	for i := 0; i < count && best > 0; i++ {
		alone := *q
		alone.order[order] = i
		l.pick(&alone, order)
		made := alone.Apply(l.in)
		if made.Validate() != nil {
			continue
		}
		m.in, _ = made.Assume()
		if r, ok := part(d); ok {
			cost := 0.0
			if l.dollars {
				cost = tidy(m.partCost(&r, d))
			}
			if cost < best {
				best, chosen = cost, i
			}
		}
	}
	m.in = in
	q.order[order] = max(0, chosen)
	return chosen >= 0
}

// partCost is what a part of a cover costs by the prices of the user, dollars.
func (m *model) partCost(r *Report, d *design) float64 {
	var some, none TakeOff
	some.buyOther(m.otherItems(r, d), m.in.Market.Prices)
	none.buyOther(m.otherItems(&Report{}, d), m.in.Market.Prices)
	return orZero(some.Cost) - orZero(none.Cost)
}

// tied makes the ties of the rafters by themselves.
func (l *layout) tied(d *design) (Report, bool) { return l.linked(connections.RafterToBeam, d) }

// fastened makes the fasteners of the ledger by themselves.
func (l *layout) fastened(d *design) (Report, bool) {
	if !l.links.m.plan.attached {
		return Report{}, true
	}
	return l.linked(connections.LedgerToHouse, d)
}

func (l *layout) linked(kind connections.Kind, d *design) (Report, bool) {
	r := Report{Links: l.links.m.linksOf(kind, d)}
	l.links.m.connect(r.Links, d)
	return r, !slices.ContainsFunc(r.Links, func(x Link) bool { return x.Verdict == Over })
}

// standing makes the foundations by themselves, with what holds the bases where no anchor
// does.
func (l *layout) standing(d *design) (r Report, ok bool) {
	r.Links = l.links.m.linksOf(connections.BaseToGround, d)
	l.links.m.connect(r.Links, d)
	r.Foundations, r.Footings = l.links.m.foundations(l.links.ws, d)
	r.Concrete = concreteOf(r.Foundations)
	return r, !slices.ContainsFunc(r.Foundations, FoundationAt.over)
}

// whole makes all of a report that its verdict and its cost rest on, and reports whether
// nothing is over.
func (l *layout) whole(q *FrontPoint, d *design) (Report, bool) {
	m := l.links.m
	r := Report{Input: q.Apply(l.in), Members: l.main.members(d.deck), Deck: m.deckReport(d.deck), Drainage: m.drainage()}
	m.hold(&r, l.links.ws, d)
	if *m.in.Cover.Attachment == "rafter_tails" {
		r.Survey = m.surveyed(r.Input, d, false)
	}
	d.buried = buried(r.Foundations)
	r.TakeOff = m.takeOff(&r, d)
	for _, w := range r.TakeOff.Wood {
		if len(w.TooLong) > 0 {
			return r, false
		}
	}
	r.Verdict = OK
	for _, f := range r.summary(m.openLoads()) {
		r.Verdict = r.Verdict.Worse(f.Verdict)
	}
	return r, r.Verdict != Over
}

// members are those of the design by the method of the model, with the deck that was chosen.
func (s *solved) members(deck *decked) []Member {
	if s.m.rules.method != lumber.ASD {
		s.prepare(deck)
	} else {
		s.d.deck = deck
	}
	return s.m.members(s.ws, &s.d)
}

// over reports whether the foundation or its anchor is over.
func (f FoundationAt) over() bool { return f.Verdict == Over || f.AnchorVerdict == Over }
