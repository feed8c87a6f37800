package cover

import (
	"slices"

	"patiocover/beam/lumber"
)

// A solved is a design in its model, graded.
type solved struct {
	m  *model
	ws *workspace
	d  design
}

// methodOf is the design method that members are chosen by.
func methodOf(in Input) lumber.Method {
	if *in.Site.Method == lumber.LRFD.String() {
		return lumber.LRFD
	}
	return lumber.ASD
}

// recast grades the design by another method: the same sections with the values and the
// combinations of that method.
func (m *model) recast(method lumber.Method, d *design) (solved, error) {
	other, err := new(room).newModel(m.in, method, d)
	if err != nil {
		return solved{}, err
	}
	out := solved{m: other, ws: newWorkspace(other), d: design{
		noRafter: d.noRafter, noBeam: d.noBeam, noPost: d.noPost, tried: d.tried,
	}}
	out.d.rafter, out.d.beam = other.rafterWoods[0], other.beamWoods[0]
	out.d.post = other.posts.candidates(postSizes)[0]
	other.kneed = m.kneed
	if m.kneed.braced {
		other.kneed.wood = other.posts.solid(&m.kneed.wood.name).candidates(braceSizes)[0]
	}
	if m.planted() && m.rules.method == lumber.ASD {
		copy(other.embedded.depths, m.embedded.depths)
		other.embedded.taken = true
	}
	out.ws.every = true
	other.numbers(out.ws, &out.d.rafter, &out.d.beam, &out.d.post)
	out.ws.every = false
	return out, nil
}

// bothMembers writes up every member by the method that it was chosen by, with the checks of
// the other method beside.
func (m *model) bothMembers(ws *workspace, d *design) ([]Member, error) {
	main := solved{m, ws, *d}
	var other solved
	if m.strength != nil {
		main, other = *m.strength, main
		main.prepare(d.deck)
	} else {
		var err error
		if other, err = m.recast(lumber.LRFD, d); err != nil {
			return nil, err
		}
		other.prepare(d.deck)
		if _, err := other.m.closure(&other.d); err != nil {
			return nil, err
		}
	}
	out := main.m.members(main.ws, &main.d)
	for _, second := range other.m.members(other.ws, &other.d) {
		i := slices.IndexFunc(out, func(first Member) bool { return first.Mark == second.Mark })
		if i >= 0 {
			out[i].beside(&second, other.m.rules.method)
		}
	}
	return out, nil
}

// prepare fills what the report of a model needs beyond its grades; the deck is the one
// that was chosen.
func (s *solved) prepare(chosen *decked) {
	s.m.sideways = newSideways(s.m, s.d.woods())
	if chosen != nil {
		s.m.in.keepDeck(&chosen.member.Size)
	}
	s.d.deck = s.m.deck()
}

// beside puts the checks of the same member by another method beside its own. What is no
// matter of strength is the same in both and stands once.
func (out *Member) beside(other *Member, method lumber.Method) {
	for i := range out.Checks {
		c := &out.Checks[i]
		k := slices.IndexFunc(other.Checks, func(o MemberCheck) bool { return o.Name == c.Name })
		if k < 0 || slices.Contains(alikeInBoth, c.Name) {
			continue
		}
		o := &other.Checks[k]
		c.Beside = &BesideCheck{
			Method: method.String(), Combination: o.Combination, Where: o.Where, Ratio: o.Ratio, Verdict: o.Verdict,
			Recalled: o.Recalled, Check: o.Check,
		}
	}
}

// alikeInBoth are the checks that do not depend on the design method: what is compared
// with a length, a weight of water or a printed span.
var alikeInBoth = []string{
	checkNames[liveCheck], checkNames[sagCheck], checkNames[gustCheck], codeTotalName, pondName, fallName, stockName,
}
