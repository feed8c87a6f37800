package cover

import (
	"fmt"
	"slices"
	"strings"

	"patiocover/calc"
)

// A DeckReport says what is known of the roof deck, and what would serve.
type DeckReport struct {
	Kind    string       `json:"kind"`              // panel, plank, purlins, slats, other, or not said
	Verdict Verdict      `json:"verdict"`           // of the deck without its nailing
	Reason  string       `json:"reason"`            // why, in words
	Weight  float64      `json:"weight_psf"`        // psf of slope, of the deck itself; 0 when it is not known
	Notes   []string     `json:"notes,omitempty"`   // where its weight does not fit the layers
	Choices []DeckChoice `json:"choices,omitempty"` // the least deck by rafter spacing, of a closed roof
}

// A DeckChoice is the least deck that serves at one rafter spacing, none where none
// does. It is checked for the loads of this cover.
type DeckChoice struct {
	Spacing float64 `json:"spacing_in"`       // in on center
	Own     bool    `json:"own"`              // the spacing of this cover
	Held    string  `json:"panel_edges_held"` // span rating of panels with clips, blocking, or tongue and groove
	Free    string  `json:"panel_edges_free"` // span rating of panels with free edges
	Plank   string  `json:"plank"`            // tongue and groove planks of the wood of the rafters
}

// usualSpacings are the rafter spacings that framing is laid out by, in.
var usualSpacings = []float64{12, 16, 19.2, 24, 32}

// deckReport writes up the deck; d is what was chosen, nil where none that can be
// checked was described.
func (m *model) deckReport(d *decked) DeckReport {
	out := DeckReport{Kind: m.deckKind(), Verdict: NotChecked, Choices: m.deckChoices()}
	switch {
	case d != nil:
		out.Verdict, out.Weight = d.member.Verdict, d.weight/calc.PSF
		out.Reason = fmt.Sprintf("%s %s: %s governs at ratio %s", d.member.Name, d.member.Size, d.member.Governs, ratioText(d.member.Ratio))
		for _, why := range d.open {
			out.Reason += "; " + why
		}
		out.Notes = m.deckWeight(out.Kind, d.weight)
	case out.Kind == anotherDeck:
		out.Reason = "another kind of deck is outside the method"
	default:
		out.Kind, out.Reason = "not said", "it was not described"
	}
	if i := slices.IndexFunc(out.Choices, func(c DeckChoice) bool { return c.Own }); i >= 0 && d == nil {
		out.Reason += fmt.Sprintf("; at %g in on center %s would serve", m.plan.spacing, out.Choices[i].words())
	}
	return out
}

// deckChoices lists the least deck at the usual spacings and at that of the cover.
func (m *model) deckChoices() []DeckChoice {
	if !m.plan.solid {
		return nil
	}
	spacings := slices.Clone(usualSpacings)
	if !slices.Contains(spacings, m.plan.spacing) {
		spacings = append(spacings, m.plan.spacing)
		slices.Sort(spacings)
	}
	var out []DeckChoice
	for _, s := range spacings {
		c := m.leastDeck(s)
		c.Own = s == m.plan.spacing
		out = append(out, c)
	}
	return out
}

// words says what would serve.
func (c DeckChoice) words() string {
	var all []string
	switch {
	case c.Held == nothingServes:
	case c.Free == c.Held:
		all = append(all, "panels rated "+c.Held)
	case c.Free == nothingServes:
		all = append(all, "panels rated "+c.Held+" with held edges")
	default:
		all = append(all, "panels rated "+c.Free+", with held edges "+c.Held)
	}
	if c.Plank != nothingServes {
		all = append(all, c.Plank+" tongue and groove planks")
	}
	if len(all) == 0 {
		return "no panel or plank of the lists"
	}
	return strings.Join(all, " or ")
}

// deckWords are the words by which a layer is known as the deck.
var deckWords = map[string][]string{
	panelDeck:  {"plywood", "osb", "strand board", "sheathing", "deck"},
	plankDeck:  {"plank", "decking", "t&g", "tongue", "deck"},
	purlinDeck: {"purlin", "batten"},
	slatDeck:   {"slat", "lattice"},
}

// sameWeight is the difference of two weights of a deck, as a part of its own, that is
// moisture and rounding.
const sameWeight = 0.25

// deckWeight says where the layers of dead load do not fit the weight of the deck
// itself, lb/in² of slope.
func (m *model) deckWeight(kind string, weight float64) []string {
	named := 0.0
	found := false
	for _, l := range m.in.Cover.Layers {
		name := strings.ToLower(*l.Name)
		if slices.ContainsFunc(deckWords[kind], func(w string) bool { return strings.Contains(name, w) }) {
			named += weightOf(l).Weight * calc.PSF
			found = true
		}
	}
	own := calc.RoundUp(weight/calc.PSF, 0.1)
	switch {
	case !found:
		return []string{fmt.Sprintf("No layer of the dead load is named as this deck, which weighs about %.1f psf: "+
			"see that it is among the layers", own)}
	case named < weight*(1-sameWeight):
		return []string{fmt.Sprintf("The deck weighs about %.1f psf and its layer only %.1f psf: raise the layer", own, named/calc.PSF)}
	case named > weight*(1+sameWeight):
		return []string{fmt.Sprintf("The layer of the deck is %.1f psf and the deck weighs about %.1f psf: "+
			"what is not there does not hold against uplift", named/calc.PSF, own)}
	}
	return nil
}

// deckUnsaid reports whether the deck was not described, or is of a kind outside the method.
func (m *model) deckUnsaid() bool { return m.deckKind() == "" || m.deckKind() == anotherDeck }

// deckSkip says what of a deck that was described is not answered. Its shear along a ledger
// is checked where it brings the push to the house; where posts take the push, every line
// and post is given the largest of an equal part, that of its stiffness and that of its own
// strip of the roof, so that no deck need share it out.
func (m *model) deckSkip() Skip {
	out := Skip{What: "roof deck in its own plane", Why: "its nails are checked against what lifts it, " +
		"and for shear where it brings the push along the house to a ledger, and no further"}
	if m.deckKind() == panelDeck {
		out.Why += "; a worker's weight on panels is left to the test of their span rating"
	}
	return out
}
