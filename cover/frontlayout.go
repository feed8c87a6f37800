package cover

import (
	"cmp"
	"context"
	"errors"
	"math"
	"slices"
	"strings"

	"patiocover/calc"
	"patiocover/connections"
	"patiocover/loads"
)

// A stick is one candidate of a search with what it costs.
type stick struct {
	wood  wood
	stock stock
	name  string
	of    Wood
	rate  float64 // per in of stock: dollars, or a factor of board feet
	cost  float64 // of all of them in the layout, in the measure of the front
	same  int     // the first candidate with the same section and weight
	rank  [2]int  // places of size and wood in the space
}

// A layout is the covers with one spacing and one number of posts, which share their statics.
type layout struct {
	m              *model
	ws             *workspace
	in             Input // as given, with this spacing and number of posts
	limits         Limits
	rafters, beams []stick
	posts          []stick
	sags           []float64 // in, by rafter alike and beam; NaN where not known yet
	strong         []int8    // the beam holds under the rafters, likewise: 0 not known, 1 yes, -1 no
	point          FrontPoint
	found          []FrontPoint
}

// layout finds the points of one layout, and some that others of the same layout beat.
func (s *Space) layout(ctx context.Context, in Input, l Limits, spacing, count int, dollars bool) ([]FrontPoint, error) {
	y := layout{limits: l, point: FrontPoint{Spacing: s.Spacings[spacing], Count: s.PostCounts[count]}}
	y.point.order[0], y.point.order[1] = spacing, count
	if err := y.open(in, s, dollars); err != nil || y.m == nil {
		return nil, err
	}
	for r := range y.rafters {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		y.under(r)
	}
	return y.found, nil
}

// open makes the model of the layout and its candidates. A layout that the input rules do not
// allow has no model.
func (y *layout) open(in Input, s *Space, dollars bool) error {
	y.in = in.clone()
	y.in.Rafters.Spacing, y.in.Posts.Count = &y.point.Spacing, &y.point.Count
	y.in.Rafters.Size, y.in.Beams.Size, y.in.Posts.Size = nil, nil, nil
	var refused *calc.InputError
	switch err := y.in.Validate(); {
	case errors.As(err, &refused):
		return nil
	case err != nil:
		return err
	}
	full, _ := y.in.Assume()
	m, err := newModel(full)
	if err != nil {
		return err
	}
	if p := &m.plan; y.limits.ClearTo > y.limits.ClearFrom && slices.ContainsFunc(p.posts, func(x float64) bool {
		return x > y.limits.ClearFrom*calc.Ft && x < y.limits.ClearTo*calc.Ft
	}) {
		return nil
	}
	y.m, y.ws = m, newWorkspace(m)
	y.point.Posts = len(m.plan.lines) * len(m.plan.posts)
	y.rafters = y.sticks(s.RafterWoods, s.RafterSizes, dollars, y.rafterStock)
	y.beams = y.sticks(s.BeamWoods, s.BeamSizes, dollars, y.beamStock)
	y.posts = y.sticks([]Wood{{*full.Posts.Species, *full.Posts.Grade}}, s.PostSizes, dollars, func(Wood) stock { return m.posts })
	y.rafters = y.priced(y.rafters, func(c *stick) float64 { return m.rafterCost(c) })
	y.beams = y.priced(y.beams, func(c *stick) float64 { return m.beamCost(c) })
	y.posts = y.priced(y.posts, func(c *stick) float64 { return c.rate })
	y.sags = slices.Repeat([]float64{math.NaN()}, len(y.rafters)*len(y.beams))
	y.strong = make([]int8, len(y.sags))
	return nil
}

// rafterStock is the stock of rafters of a wood, with what is then assumed of it.
func (y *layout) rafterStock(w Wood) stock {
	in := y.in.clone()
	in.Rafters.Species, in.Rafters.Grade = &w.Species, &w.Grade
	full, _ := in.Assume()
	r := full.Rafters
	st := newStock(r.Species, r.Grade, nil, *r.Wet, *r.Incised, *r.Hot).made(r.makeup(), full.Products)
	st.green, st.use.Method, st.use.Repetitive = *r.Green, y.m.rafters.use.Method, y.m.rafters.use.Repetitive
	return st
}

// beamStock is that of the beams.
func (y *layout) beamStock(w Wood) stock {
	in := y.in.clone()
	in.Beams.Species, in.Beams.Grade = &w.Species, &w.Grade
	full, _ := in.Assume()
	b := full.Beams
	st := newStock(b.Species, b.Grade, nil, *b.Wet, *b.Incised, *b.Hot).made(b.makeup(), full.Products)
	st.green, st.use.Method = *b.Green, y.m.beams.use.Method
	return st
}

// sticks lists the candidates that have published values.
func (y *layout) sticks(woods []Wood, sizes []string, dollars bool, of func(Wood) stock) []stick {
	var out []stick
	for j, w := range woods {
		st := of(w)
		for i, size := range sizes {
			made, err := newWood(st, size)
			if err != nil {
				continue
			}
			c := stick{wood: made, stock: st, name: size, of: w, rank: [2]int{i, j}}
			c.rate, _ = rateOf(&c.wood, w, y.in.Market.Prices, dollars)
			out = append(out, c)
		}
	}
	return out
}

// rateOf is what an inch of stock costs, and whether it has a price.
func rateOf(w *wood, of Wood, prices []Price, dollars bool) (float64, bool) {
	one := w.dry.OnePly().Section
	l := lot{item: strings.Join([]string{one.Name, of.Species, of.Grade}, " "), nominal: one.NominalThickness * one.NominalWidth}
	price := priceOf(prices, l.item, "board_foot", "foot")
	if !dollars || price == nil {
		return l.nominal / perBoardFoot, price != nil
	}
	return l.dollars(price, 1), true
}

// priced works out the costs, leaves out what no stock is long enough for, and puts the
// cheaper ones first.
func (y *layout) priced(all []stick, cost func(c *stick) float64) []stick {
	for i := range all {
		all[i].cost = cost(&all[i])
	}
	all = slices.DeleteFunc(all, func(c stick) bool { return math.IsInf(c.cost, 1) })
	slices.SortFunc(all, func(a, b stick) int { return cmp.Or(cmp.Compare(a.cost, b.cost), slices.Compare(a.rank[:], b.rank[:])) })
	for i := range all {
		all[i].same = slices.IndexFunc(all, func(c stick) bool {
			return c.name == all[i].name && c.wood.most == all[i].wood.most && c.wood.least == all[i].wood.least
		})
	}
	return all
}

// under tries every beam under one rafter.
func (y *layout) under(r int) {
	m, rafter := y.m, &y.rafters[r]
	y.point.Rating = m.tieRating(&rafter.wood)
	if over(y.point.Rating, y.limits.Rating) {
		return
	}
	m.loadBeams(&rafter.wood)
	for b := range y.beams {
		q, beam := y.point, &y.beams[b]
		q.Depth = m.depthOf(&rafter.wood, &beam.wood)
		if over(q.Depth, y.limits.Depth) {
			continue
		}
		q.Sag = tidy(y.sag(rafter.same*len(y.beams)+b, &beam.wood))
		q.Cost = tidy(rafter.cost + beam.cost + y.leastPosts(rafter, beam))
		if !slices.ContainsFunc(y.found, func(p FrontPoint) bool { return p.beats(&q) }) {
			y.settle(q, r, b)
		}
	}
}

// over reports whether a limit is set and passed.
func over(x, limit float64) bool { return limit > 0 && x > limit }

// sag is the largest long-term deflection of the beams under the rafters that are loaded, in.
func (y *layout) sag(at int, beam *wood) float64 {
	if !math.IsNaN(y.sags[at]) {
		return y.sags[at]
	}
	most := 0.0
	for i, l := range y.m.lines {
		for p := range l.pieces {
			f, peaks := l.pieces[p].frame, &y.ws.lines[i].peaks[p]
			peaks.clear(len(f.bays))
			f.deflections(beam, false, peaks)
			for b := range f.bays {
				most = max(most, peaks.total[b].value)
			}
		}
	}
	y.sags[at] = most
	return most
}

// leastPosts is the least that posts may cost.
func (y *layout) leastPosts(rafter, beam *stick) float64 {
	least := math.Inf(1)
	for i := range y.posts {
		least = min(least, y.m.postCost(&y.posts[i], &rafter.wood, &beam.wood))
	}
	return least
}

// settle grades a pair of rafter and beam, and keeps it with the cheapest posts that hold.
func (y *layout) settle(q FrontPoint, r, b int) {
	m, rafter, beam := y.m, &y.rafters[r], &y.beams[b]
	if at := &y.strong[rafter.same*len(y.beams)+b]; *at == 0 {
		*at = -1
		if m.gradeBeams(y.ws, &beam.wood) <= 1 && !m.overSlab() {
			*at = 1
		}
	}
	if y.strong[rafter.same*len(y.beams)+b] < 0 || m.gradeRafter(y.ws, &rafter.wood, &beam.wood) > 1 {
		return
	}
	q.RafterWood, q.Rafter, q.BeamWood, q.Beam = rafter.of, rafter.name, beam.of, beam.name
	posts := make([]int, len(y.posts))
	for i := range posts {
		posts[i] = i
	}
	cost := func(i int) float64 { return m.postCost(&y.posts[i], &rafter.wood, &beam.wood) }
	slices.SortFunc(posts, func(a, b int) int {
		return cmp.Or(cmp.Compare(cost(a), cost(b)), cmp.Compare(y.posts[a].rank[0], y.posts[b].rank[0]))
	})
	for _, i := range posts {
		post := &y.posts[i]
		q.Post, q.Cost = post.name, tidy(rafter.cost+beam.cost+cost(i))
		copy(q.order[2:], []int{rafter.rank[0], beam.rank[0], post.rank[0], rafter.rank[1], beam.rank[1]})
		if !math.IsInf(q.Cost, 1) && m.stands(y.ws, y.in, &q, rafter.stock, trio{&rafter.wood, &beam.wood, &post.wood}) {
			y.found = append(y.found, q)
			return
		}
	}
}

// overSlab reports whether a post without its own weight is more than the slab below it may
// carry, under the beams that were graded last.
func (m *model) overSlab() bool {
	in := m.in.Foundation
	if *in.Kind != "slab" {
		return false
	}
	all := *in.SlabRule == "all_loads"
	for _, l := range m.lines {
		for n := range l.posts {
			force := l.post(n)
			counted := force.rest.value
			for day := 0; all && day < durations; day++ {
				counted = max(counted, force.press[day].value)
			}
			rule := loads.NewSlabRule(counted, *m.in.Site.FrostDepth*calc.In, *in.SlabThickness*calc.In, all)
			if rule.Ratio() > 1 {
				return true
			}
		}
	}
	return false
}

// stands reports whether nothing of a whole cover is over: members, foundations, headroom,
// and the deck that was described.
func (m *model) stands(ws *workspace, in Input, q *FrontPoint, rafters stock, w trio) bool {
	if m.numbers(ws, w.rafter, w.beam, w.post) > 1 {
		return false
	}
	made := q.Apply(in)
	if made.Validate() != nil {
		return false
	}
	m.in, _ = made.Assume()
	m.rafters = rafters
	d := design{rafter: *w.rafter, beam: *w.beam, post: *w.post}
	m.sideways = newSideways(m, d.woods())
	if m.headroom(&d).Verdict == Over {
		return false
	}
	if deck := m.deck(); deck != nil && deck.member.Verdict == Over {
		return false
	}
	ground, _ := m.foundations(ws, &d)
	return !slices.ContainsFunc(ground, func(f FoundationAt) bool { return f.Verdict == Over })
}

// tieRating is the rating of the largest tie that a rafter asks for, lb.
func (m *model) tieRating(rafter *wood) float64 {
	most, d := 0.0, design{rafter: *rafter}
	for s := range m.rafter.supports {
		j := m.rafterJoint(connections.RafterToBeam, 0, s, &d)
		u := newRating(connections.NewUplift(windUp(j.lift), j.lift.dead, j.lift.windFactor, j.lift.deadFactor), j.prying)
		most = max(most, u.rating)
	}
	return most
}

// depthOf is the depth of the roof's frame, in.
func (m *model) depthOf(rafter, beam *wood) float64 {
	if m.plan.flush {
		return max(rafter.section.Depth, beam.section.Depth)
	}
	return rafter.section.Depth + beam.section.Depth
}
