package cover

import (
	"math"
	"slices"

	"patiocover/beam/deck"
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/loads"
	"patiocover/loads/wind"
)

// The kinds of deck.
const (
	panelDeck   = "panel"
	plankDeck   = "plank"
	purlinDeck  = "purlins"
	slatDeck    = "slats"
	anotherDeck = "other"
)

// deckKind is what the user says the deck is, empty when nothing was said.
func (m *model) deckKind() string {
	if m.in.Deck.Kind == nil {
		return ""
	}
	return *m.in.Deck.Kind
}

// deckSpreads reports whether the deck joins the rafters and can spread load over them,
// which the repetitive member factor asks for (NDS 2018 4.3.9): panels, and planks with
// tongue and groove; never purlins or slats. Of a deck that was not described a closed
// roof is enough.
func (m *model) deckSpreads() bool {
	switch m.deckKind() {
	case "":
		return m.plan.solid
	case panelDeck:
		return true
	case plankDeck:
		return *m.in.Deck.Held
	}
	return false
}

// deckHolds reports whether the deck holds the top edge of the rafters along its
// length, and else how far apart it does, in; 0 for not at all.
func (m *model) deckHolds() (held bool, every float64) {
	switch m.deckKind() {
	case "":
		return m.plan.solid, 0
	case panelDeck, plankDeck:
		return true, 0
	case purlinDeck:
		return false, *m.in.Deck.Spacing * calc.In
	}
	return false, 0
}

// deckNeed is everything that the deck must carry where rafters stand at the spacing,
// in. Vertical loads are counted across the deck in full downward, the safe side; of the
// weight that holds against the wind only its share across the roof.
func (m *model) deckNeed(spacing float64) deck.Need {
	live := limitRow("IRC", "all other structural members (incl. rafter slope <= 3:12)")
	total := limitRow("IBC", "roof member supporting nonplaster ceiling")
	n := deck.Need{
		Spacing: spacing, Dead: m.layers(false), Live: m.deckLive(),
		LiveLimit:  member.Limit{Divisor: live.Live, Source: live.Source + ", " + live.Member, Status: live.Status},
		TotalLimit: member.Limit{Divisor: total.Total, Source: total.Source + ", dead plus live, " + total.Member, Status: total.Status},
	}
	down, up := m.deckWind(spacing)
	for i := range m.rules.combos {
		c := &m.rules.combos[i]
		if m.idle(c) || c.Earthquake != 0 {
			continue
		}
		a := m.deckAction(c)
		if c.Wind == 0 {
			n.Actions = append(n.Actions, a)
			continue
		}
		if suits(c, true, false) {
			a.Wind = down
			n.Actions = append(n.Actions, a)
		}
		if suits(c, false, true) {
			a.Wind = -up
			n.Actions = append(n.Actions, a)
		}
	}
	if *m.in.Deck.Workers {
		a := m.deckAction(&m.rules.worker)
		a.Worker, a.Stands = loads.MaintenanceLoad, m.rules.stands
		n.Actions = append(n.Actions, a)
	}
	return n
}

// deckAction is a combination on the deck, its wind still to be filled in.
func (m *model) deckAction(c *loads.Combination) deck.Action {
	cos := math.Cos(m.plan.angle)
	a := deck.Action{
		Name: c.Name, Clause: c.Clause, Status: c.Status, Dead: m.layers(c.DeadLeast), DeadFactor: c.Dead,
		PlanFactor: c.RoofLive + c.Snow, WindFactor: c.Wind, Duration: durationOf(c), Method: m.rafters.use.Method,
	}
	if c.DeadLeast {
		a.Dead *= cos
		if *m.in.Cover.Ceiling != "none" {
			a.Dead = 0 // a ceiling hangs from the rafters and holds no deck down
		}
	}
	if a.PlanFactor != 0 {
		a.Plan = m.deckSnow(c) / a.PlanFactor * cos
	}
	return a
}

// deckLive is the largest live or snow load on the deck without factors, lb/in² of deck.
func (m *model) deckLive() float64 {
	most := max(m.live, m.deckSnow(&loads.Combination{Snow: 1}))
	return most * math.Cos(m.plan.angle)
}

// deckWind is the pressure and the suction on the deck at a corner where rafters stand
// at the spacing, in, lb/in² of strength level; not less than on the whole roof.
func (m *model) deckWind(spacing float64) (down, up float64) {
	w := &m.wind
	c := wind.NewComponent(w.velocity, w.roof, wind.EffectiveArea(spacing, 0), wind.SideEdge, flowsOf(*m.in.Cover.Flow))
	down, up = c.Pressure, c.Suction
	for _, a := range w.across {
		down, up = max(down, a.high, a.low), max(up, -a.high, -a.low)
	}
	return down, up
}

// deckStock says of what wood a deck of lumber is made.
func (m *model) deckStock() stock {
	d := m.in.Deck
	st := newStock(d.Species, d.Grade, d.Size, *d.Wet, *d.Incised, *m.in.Rafters.Hot)
	st.green = *d.Green
	st.use.Method = m.rafters.use.Method
	st.use.Flat = *d.Kind == plankDeck || !*d.OnEdge
	st.use.Repetitive = *d.Kind == plankDeck && *d.Held
	return st
}

// deckSizes are the sizes to try, the least first; of purlins and slats those that
// leave a gap between them.
func deckSizes(d Deck) []string {
	switch *d.Kind {
	case plankDeck:
		return []string{"2x6", "3x6", "4x6"}
	case purlinDeck:
		return gapped([]string{"2x4", "2x6", "2x8"}, d)
	}
	return gapped([]string{"2x2", "2x3", "2x4", "2x6", "2x8"}, d)
}

// gapped keeps the sizes that leave a gap at the spacing of the deck.
func gapped(sizes []string, d Deck) []string {
	return slices.DeleteFunc(sizes, func(size string) bool {
		s, err := lumber.SectionNamed(size)
		return err != nil || d.Spacing != nil && gap(s, d) <= 0
	})
}

// gap is the open width between purlins or slats of the section, in.
func gap(s lumber.Section, d Deck) float64 {
	if yes(d.OnEdge) {
		return *d.Spacing*calc.In - s.Breadth
	}
	return *d.Spacing*calc.In - s.Depth
}

// deckLayups maps the words of the input.
var deckLayups = map[string]deck.Layup{
	"simple_span": deck.SimpleSpan, "two_spans": deck.TwoSpans, "controlled_random": deck.ControlledRandom,
}

// deckStrip is one piece of a deck of lumber over rafters at the spacing, in.
func (m *model) deckStrip(w *wood, spacing float64) deck.Strip {
	d := m.in.Deck
	switch *d.Kind {
	case plankDeck:
		return deck.NewPlank(&w.dry, spacing, *d.Held, deckLayups[*d.Layup])
	case purlinDeck:
		return deck.NewPurlin(&w.dry, spacing, *d.Spacing*calc.In)
	}
	return deck.NewSlat(&w.dry, spacing, *d.Spacing*calc.In, *d.Held)
}

// leastDeck says what would serve on rafters at the spacing, in: sheathing panels with
// held and with free edges, and planks of the wood of the rafters with tongue and groove.
func (m *model) leastDeck(spacing float64) DeckChoice {
	n := m.deckNeed(spacing)
	c := DeckChoice{Spacing: spacing, Held: nothingServes, Free: nothingServes, Plank: nothingServes}
	if p, ok := n.LeastPanel(true); ok {
		c.Held = p.Rating
	}
	if p, ok := n.LeastPanel(false); ok {
		c.Free = p.Rating
	}
	use := lumber.Use{Wet: m.rafters.use.Wet, Temperature: m.rafters.use.Temperature, Method: m.rafters.use.Method}
	green := member.Seasoning{Green: *m.in.Deck.Green, Wet: use.Wet}
	if s, ok := n.LeastPlank(m.rafters.species, m.rafters.grade, use, green); ok {
		c.Plank = s.Name
	}
	return c
}

// nothingServes stands where no size of the list would do.
const nothingServes = "none"
