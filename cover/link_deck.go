package cover

import (
	"fmt"
	"slices"

	"patiocover/beam/deck"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// innerSupport is the largest reaction of a deck over two and more spans over that of a
// simple one, factor (statics of two equal spans).
const innerSupport = 1.25

// panelGravity is the specific gravity of a wood structural panel of unknown make,
// dimensionless: plywood that is not Structural I (NDS 2018 Table 12.3.3B, from memory).
const panelGravity = 0.42

// A deckNailing is one way to fasten the deck.
type deckNailing struct {
	fastener dowel.Fastener
	area     float64 // in² of deck on one fastener
	spacing  float64 // in along the rafter, of panels; 0 for pieces
	each     int     // at each crossing of pieces; 0 for panels
}

// connectDeck fastens the deck to the rafters against the suction at a corner, which is
// taken all over.
func (m *model) connectDeck(l *Link, d *design) {
	in := m.in.Connections
	switch {
	case *in.Deck == "none":
		l.refuse(Over, "nothing holds the deck down: choose its nails")
		return
	case d.deck == nil:
		l.refuse(NotChecked, "the deck is not described, so that its nails cannot be checked")
		return
	}
	basis := ProposedFasteners
	if in.DeckNail != nil || in.DeckSpacing != nil {
		basis = GivenHardware
	}
	_, c := m.nailing(l, d)
	c.Basis = basis
	c.Notes = append(c.Notes, "The nailing of the corner is used all over; nails of panels at least 3/8 in from the edges")
	l.hold(c)
}

// nailing is the least way to fasten the deck that passes, or the best there is.
func (m *model) nailing(l *Link, d *design) (deckNailing, Connector) {
	var best deckNailing
	var c Connector
	for i, n := range m.deckNailings(d) {
		if try := m.nailDeck(l, n, d); i == 0 || try.Ratio < c.Ratio {
			best, c = n, try
		}
		if c.Ratio <= 1 {
			break
		}
	}
	return best, c
}

// deckNailings lists what to try, the least first.
func (m *model) deckNailings(d *design) []deckNailing {
	in := m.in.Connections
	fasteners := []dowel.Fastener{nailOf("common", "8d"), nailOf("roof sheathing ring shank", "2-3/8x0.113"),
		nailOf("roof sheathing ring shank", "2-1/2x0.131")}
	if m.deckKind() != panelDeck {
		fasteners = []dowel.Fastener{nailOf("common", "16d"), screwOf("10", 3), screwOf("12", 3.5), screwOf("14", 4)}
	}
	if in.DeckNail != nil {
		fasteners = []dowel.Fastener{nailOf(*in.DeckNail, *in.DeckNailSize)}
	}
	if m.deckKind() != panelDeck {
		pitch := m.deckPitch(d)
		var out []deckNailing
		for _, f := range fasteners {
			out = append(out, deckNailing{fastener: f, area: pitch * m.plan.spacing * innerSupport / 2, each: 2})
		}
		return out
	}
	spacings := []float64{6 * calc.In, 4 * calc.In, 3 * calc.In}
	if in.DeckSpacing != nil {
		spacings = []float64{*in.DeckSpacing * calc.In}
	}
	var out []deckNailing
	for _, s := range spacings {
		for _, f := range fasteners {
			out = append(out, deckNailing{fastener: f, area: s * m.plan.spacing * innerSupport, spacing: s})
		}
	}
	return out
}

// deckPitch is the width of roof that one piece of a deck of lumber holds, in.
func (m *model) deckPitch(d *design) float64 {
	if m.deckKind() == plankDeck {
		return d.deck.wood.section.Depth
	}
	return *m.in.Deck.Spacing * calc.In
}

// deckPiece is what lies under the heads of the fasteners.
func (m *model) deckPiece(d *design) dowel.Member {
	if m.deckKind() == panelDeck {
		all := deck.Panels()
		i := slices.IndexFunc(all, func(p deck.Panel) bool { return p.Rating == d.deck.member.Size })
		return dowel.Member{Gravity: panelGravity, Thickness: all[i].Thickness}
	}
	s := d.deck.wood.section
	thickness := s.Breadth
	if m.deckKind() != plankDeck && yes(m.in.Deck.OnEdge) {
		thickness = s.Depth
	}
	return dowel.Member{Gravity: woodGravity(&d.deck.wood), Thickness: thickness}
}

// nailDeck checks one way to fasten the deck: pulled out of the rafter, and the heads
// pulled through the deck.
func (m *model) nailDeck(l *Link, n deckNailing, d *design) Connector {
	piece, wet := m.deckPiece(d), d.rafter.dry.Use.Wet || yes(m.in.Deck.Wet)
	f := n.fastener
	w := dowel.NewWithdrawal(f, woodGravity(&d.rafter), min(f.Length-piece.Thickness, d.rafter.section.Depth), false)
	onOne := n.area / calc.SqFt
	var c Connector
	pull, name := worstOf(l.joint.demands, func(q connections.Demand) dowel.Pull {
		return dowel.NewPull(upward(q)*onOne, w, dowel.WithdrawalFactors(f.Kind, m.conditions(q.Duration, wet)), 1)
	})
	c.add("withdrawal", name, "each, at a corner", pull)
	head, name := worstOf(l.joint.demands, func(q connections.Demand) dowel.HeadPull {
		return dowel.NewHeadPull(upward(q)*onOne, f, piece, m.conditions(q.Duration, wet), 1)
	})
	c.add("head pulling through", name, "each, at a corner", head)
	roof := m.plan.width * m.plan.slope(m.plan.projection)
	total := int(calc.RoundUp(roof/n.area*innerSupport, 1))
	if n.each > 0 {
		c.What = several(n.each, fastenerWords(f)) + " through each piece at each rafter"
	}
	if n.spacing > 0 {
		c.What = fmt.Sprintf("%ss at %s in along every rafter and panel edge", fastenerWords(f), inchWords(n.spacing))
	}
	c.Parts = []Part{{Item: fastenerWords(f), Total: total}}
	return c
}

// nailOf is a nail of the table, checked with the input.
func nailOf(kind, size string) dowel.Fastener {
	f, ok := dowel.FindNail(kind, size)
	if !ok {
		panic("cover: no nail " + size + " " + kind)
	}
	return f
}

// screwOf is a wood screw of the table.
func screwOf(number string, length float64) dowel.Fastener {
	f, ok := dowel.FindScrew(number, length)
	if !ok {
		panic("cover: no wood screw " + number)
	}
	return f
}
