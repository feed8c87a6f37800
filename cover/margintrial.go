package cover

import (
	"slices"

	"patiocover/calc"
	"patiocover/connections"
)

// keeping is the input with every size of its report given: members, deck, knee braces with
// the rafters that one meets, the lag screws of the ledger, and footings with their bolts
// where all have one size.
func (in Input) keeping(r *Report, braced int) Input {
	out := in.clone()
	for i := range r.Members {
		out.keepMember(&r.Members[i])
	}
	for i := range r.Links {
		if g := r.Links[i].Connector.lags; g != nil {
			out.keepLags(g)
		}
	}
	if braced > 0 {
		out.Lateral.BracedRafters = &braced
	}
	if r.Footings != nil && r.Footings.OneSize {
		out.Foundation.keepFooting(&r.Foundations[0])
	}
	return out
}

// keepFooting gives the footing that was chosen, with its bolt.
func (g *Foundation) keepFooting(f *FoundationAt) {
	g.Width, g.Depth = &f.Width, &f.Depth
	if f.Neck > 0 {
		g.Neck, g.PadThickness = &f.Neck, &f.Pad
	}
	if f.AnchorChosen {
		g.AnchorKind, g.AnchorDiameter, g.AnchorEmbedment = new(chosenAnchor), &f.AnchorDiameter, &f.AnchorDepth
	}
}

// keepLags gives the lag screws of the ledger that were chosen. The spacing of studs stays
// open, so that a wall that is not known stays so.
func (in *Input) keepLags(g *lagging) {
	c := &in.Connections
	c.LagSize, c.LagsEach = &g.size, &g.each
	c.LagLength = new(g.lag.Length / calc.In)
	if is(in.House.Wall, "rim") {
		c.LagSpacing = new(g.spacing / calc.In)
	}
}

// chosenAnchor is the kind of bolt that the program chooses.
const chosenAnchor = "headed"

// keepMember gives the size that was chosen for a member.
func (in *Input) keepMember(m *Member) {
	keep := func(at **string) {
		if *at == nil {
			*at = &m.Size
		}
	}
	switch {
	case m.Mark == deckMark:
		in.keepDeck(&m.Size)
	case m.Name == "rafter":
		keep(&in.Rafters.Size)
	case m.Name == "beam":
		keep(&in.Beams.Size)
	case m.Name == "post":
		keep(&in.Posts.Size)
	case m.Mark == kneeMark:
		keep(&in.Lateral.BraceSize)
	}
}

// keepDeck gives the input the deck that was chosen.
func (in *Input) keepDeck(size *string) {
	if is(in.Deck.Kind, panelDeck) {
		in.Deck.Rating = size
		return
	}
	in.Deck.Size = size
}

// A trial is the design at one value of the quantity that is moved.
type trial struct {
	x     float64
	over  overItem // the check of the members with the largest ratio
	fault string   // why there is no answer

	members []Member // in brief
	solved           // of the trial; empty where there is no answer
}

// An overItem is a part with a check of it.
type overItem struct {
	mark, check string
	ratio       Ratio
}

// passes reports whether no check of the members is over.
func (t *trial) passes() bool { return t.fault == "" && t.over.ratio <= 1 }

// try answers the cover with the quantity at x, by the checks that its report would show.
func (s *search) try(x float64) trial {
	in := s.base.clone()
	s.set(&in, x)
	return tryInput(in, x)
}

// tryInput answers the members of an input whose sizes are given.
func tryInput(in Input, x float64) trial {
	s, _, err := solve(in, &workspace{})
	if err != nil {
		return trial{x: x, fault: err.Error()}
	}
	s.m.sideways = newSideways(s.m, s.d.woods())
	s.d.deck = s.m.deck()
	t := trial{x: x, members: s.mainMembers(), solved: s}
	for _, at := range t.members {
		check, ratio := at.worst()
		if t.over.mark == "" || ratio > t.over.ratio {
			t.over = overItem{at.Mark, check, ratio}
		}
	}
	return t
}

// mainMembers grades the members by the method that they were chosen by.
func (s *solved) mainMembers() []Member {
	main := s
	if s.m.strength != nil {
		main = s.m.strength
		main.prepare(s.d.deck)
	}
	main.m.brief = true
	return main.m.members(main.ws, &main.d)
}

// beside lists what is over beside the members.
func (t *trial) beside() []overItem {
	r := Report{Members: t.members}
	t.m.hold(&r, t.ws, &t.d)
	return r.overBeside()
}

// fresh is the first item that is not among those before.
func fresh(now, before []overItem) (overItem, bool) {
	for _, x := range now {
		if !slices.ContainsFunc(before, func(y overItem) bool { return x.mark == y.mark }) {
			return x, true
		}
	}
	return overItem{}, false
}

// worst is the check of a member with the largest ratio; where the verdict is over for
// another reason, that check.
func (m *Member) worst() (string, Ratio) {
	if m.Ratio > 1 || m.Verdict != Over {
		return m.Governs, m.Ratio
	}
	for _, c := range m.Checks {
		if c.Verdict == Over {
			return c.Name, c.Ratio
		}
	}
	return m.Governs, m.Ratio
}

// overBeside lists what is over beside the members: headroom, foundations with their
// anchors, connections, what holds the cover sideways. Each stands under a mark of its own.
func (r *Report) overBeside() []overItem {
	var out []overItem
	if r.Headroom.Verdict == Over {
		out = append(out, overItem{"headroom", "clear height", Ratio(r.Headroom.Required / r.Headroom.Clear)})
	}
	for i := range r.Foundations {
		f := &r.Foundations[i]
		switch {
		case f.Slab == Over && f.Kind == "slab":
			out = append(out, overItem{f.Post, "rule of the slab", Ratio(f.SlabCalc.Ratio())})
		case f.Verdict == Over:
			out = append(out, overItem{f.Post, groundWords[f.Kind] + ", " + f.Governs, f.Ratio})
		}
		if f.AnchorVerdict == Over {
			check, ratio := worstOfChecks(f.Anchor)
			out = append(out, overItem{f.Post + " anchor", check, ratio})
		}
	}
	for i := range r.Links {
		l := &r.Links[i]
		if l.Verdict != Over || l.Name == connections.BaseToGround.String() || l.Name == connections.Ground.String() {
			continue
		}
		check, ratio := worstOfChecks(l.Connector.Checks)
		out = append(out, overItem{l.Mark, l.Name + ", " + orWord(check, "it is not made so"), ratio})
	}
	for _, w := range r.Lateral {
		if w.Verdict == Over {
			out = append(out, overItem{w.Direction, "what holds the cover", 0})
		}
	}
	return out
}

// orWord is the word, or another where it is empty.
func orWord(word, other string) string {
	if word == "" {
		return other
	}
	return word
}

// worstOfChecks is the check with the largest ratio, and that ratio.
func worstOfChecks(all []MemberCheck) (string, Ratio) {
	name, most := "", Ratio(0)
	for i := range all {
		if c := &all[i]; name == "" || c.Ratio > most {
			name, most = c.Name, c.Ratio
		}
	}
	return name, most
}
