package cover

import (
	"fmt"
	"math"

	"patiocover/beam/deck"
	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/loads"
)

// The size of one panel, in: its strength axis is its length.
const (
	panelWidth  = 4 * calc.Ft
	panelLength = 8 * calc.Ft
)

// fewestRafters is the least number of rafters under a panel of two spans.
const fewestRafters = 3

// steepest is the slope up to which the part of the load along the roof is left out of
// purlins and slats, in of fall per ft.
const steepest = 3.0

// A decked is the deck as chosen or given.
type decked struct {
	member Member
	weight float64  // of the deck itself, lb/in² of slope
	open   []string // why it is not checked whole
	wood   wood     // of a deck of lumber
	stock  stock    // likewise
	pieces []run    // likewise: how the courses are cut
}

// A run is some pieces of one length.
type run struct {
	length float64 // in
	count  int
}

// deck chooses and checks the deck; nil where there is none that can be checked.
func (m *model) deck() *decked {
	switch m.deckKind() {
	case "", anotherDeck:
		return nil
	case panelDeck:
		return m.panels().finished()
	}
	return m.strips().finished()
}

// deckPieces cuts courses of planks, purlins or slats along the house into the longest
// pieces of the market that end on rafters, and what is left of each course.
func (m *model) deckPieces(courses int) []run {
	full := math.Floor(m.longestStick()/m.plan.spacing+leastBay) * m.plan.spacing
	if full <= 0 || full >= m.plan.width {
		return []run{{m.plan.width, courses}}
	}
	n := math.Floor(m.plan.width/full + leastBay)
	out := []run{{full, courses * int(n)}}
	if rest := m.plan.width - n*full; rest > tiny {
		out = append(out, run{rest, courses})
	}
	return out
}

// finished puts what is open into the verdict of the member.
func (d *decked) finished() *decked {
	for _, why := range d.open {
		d.member.Verdict = d.member.Verdict.Worse(NotChecked)
		d.member.Notes = append(d.member.Notes, "Not checked: "+why)
	}
	return d
}

// panels chooses and checks a deck of wood structural panels.
func (m *model) panels() *decked {
	d, n := m.in.Deck, m.deckNeed(m.plan.spacing)
	var panel deck.Panel
	var answer deck.PanelAnswer
	var no []Rejected
	for _, p := range deck.Panels() {
		if d.Rating == nil && !p.Sheathing || d.Rating != nil && *d.Rating != p.Rating {
			continue
		}
		if panel.Rating != "" {
			no = append(no, rejected(panel.Rating, answer.Ratio(), answer.Checks()))
		}
		panel, answer = p, n.Panel(&p, *d.Held, *d.Wet)
		if answer.Ratio() <= 1 {
			break
		}
	}
	courses := math.Ceil(m.plan.slope(m.plan.projection)/panelWidth - leastBay)
	out := &decked{weight: panel.Weight(), member: Member{
		Mark: deckMark, Name: "deck panel", Size: panel.Rating, Dressed: fraction(panel.Thickness) + " in or thicker",
		Species: "wood structural panels", Grade: "PS 1 or PS 2", Given: d.Rating != nil, Verdict: OK, Rejected: no,
		Count:  int(math.Ceil(courses*m.plan.width/panelLength - leastBay)),
		Length: panelLength / calc.Ft, Notes: m.panelNotes(&answer),
	}}
	for _, c := range answer.Checks() {
		out.member.add(c.Name, c.Combination, "between rafters", c.Check)
	}
	if len(m.plan.rafters) < fewestRafters {
		out.open = append(out.open, "panels on a single span: the table and the checks are for two spans or more")
	}
	return out
}

// panelNotes says what the checks of the panels rest on.
func (m *model) panelNotes(a *deck.PanelAnswer) []string {
	edges := "Edges between the rafters are free: no clips, blocking or tongue and groove counted"
	if *m.in.Deck.Held {
		edges = "Edges between the rafters are held by clips, blocking, or tongue and groove"
	}
	notes := []string{
		"Strength axis across the rafters, over two spans or more, panels 24 in. or wider; " +
			"sheets counted in courses of 4 ft, what is cut off going into the next course", edges,
		"The 300 lb of a worker are not computed on panels: the product standard tests the span rating under a " +
			"concentrated load (DOC PS 2, from memory)",
	}
	if !a.ByTable {
		why := "the loads without wind are above those that the code prints for the longest span of the rating"
		if *m.in.Deck.Wet {
			why = "the panels are wet in service"
		}
		notes = append(notes, "All loads are computed from the panel's capacities (NDS 2018 chapter 9): "+why)
	}
	return notes
}

// strips chooses and checks a deck of lumber.
func (m *model) strips() *decked {
	st, n := m.deckStock(), m.deckNeed(m.plan.spacing)
	var answer deck.StripAnswer
	w, no := pick(st.candidates(deckSizes(m.in.Deck)), func(w *wood) (float64, string) {
		s := m.deckStrip(w, m.plan.spacing)
		answer = n.Strip(&s, w.seasoning())
		return answer.Ratio(), worstName(answer.Checks())
	})
	s := m.deckStrip(&w, m.plan.spacing)
	slope := m.plan.slope(m.plan.projection)
	out := &decked{
		member: newMember(deckMark, deckNames[*m.in.Deck.Kind], &w, st, no),
		weight: loads.Density(w.dry.Gravity.Value, loads.MoistureHigh) * w.section.Area() / s.Width,
	}
	courses := int(math.Ceil(slope/s.Width - leastBay))
	if *m.in.Deck.Kind != plankDeck {
		courses = int(math.Floor(slope/s.Width+leastBay)) + 1
	}
	out.wood, out.stock, out.pieces = w, st, m.deckPieces(courses)
	for _, p := range out.pieces {
		out.member.Count += p.count
		out.member.Length = max(out.member.Length, p.length/calc.Ft)
	}
	out.member.Notes = m.stripNotes(&w)
	for _, c := range answer.Checks() {
		out.member.add(c.Name, c.Combination, "between rafters", c.Check)
	}
	if !*m.in.Deck.Workers {
		out.open = append(out.open, "no worker is counted on the deck: the authority must agree to it")
	}
	if *m.in.Deck.Kind != plankDeck && *m.in.Cover.Slope > steepest {
		out.open = append(out.open, fmt.Sprintf(
			"above %g in per ft the part of the load along the roof bends purlins and slats sideways, which is not checked", steepest))
	}
	if *m.in.Deck.Kind == plankDeck && len(m.plan.rafters) < layupRafters[*m.in.Deck.Layup] {
		out.open = append(out.open, "the layup of the planks needs more spans than there are")
	}
	return out
}

// layupRafters is the least number of rafters that a layup runs over: two spans, and
// three of the controlled random one (IBC 2018 2304.9.2, from memory).
var layupRafters = map[string]int{"two_spans": 3, "controlled_random": 4}

// deckMark is the mark of the deck among the members.
const deckMark = "DK1"

// deckNames name the pieces of a deck of lumber.
var deckNames = map[string]string{plankDeck: "deck plank", purlinDeck: "purlin", slatDeck: "slat"}

// worstName is the name of the check with the largest ratio.
func worstName(all []deck.Named) string {
	name, most := "", -1.0
	for _, c := range all {
		if r := c.Check.Ratio(); r > most {
			name, most = c.Name, r
		}
	}
	return name
}

// rejected writes a panel that was tried.
func rejected(rating string, ratio float64, all []deck.Named) Rejected {
	return Rejected{Size: rating, Check: worstName(all), Ratio: Ratio(ratio)}
}

// stripNotes says what the checks of a deck of lumber rest on.
func (m *model) stripNotes(w *wood) []string {
	d := m.in.Deck
	var notes []string
	switch {
	case *d.Kind == plankDeck && *d.Held:
		notes = append(notes, "Planks with tongue and groove: a strip of 12 in. carries a worker, and the planks share the load (C_r)",
			"Layup: "+deckLayups[*d.Layup].String())
	case *d.Kind == plankDeck:
		notes = append(notes, "Square-edged planks: one plank carries a worker alone, and none shares its load",
			"Layup: "+deckLayups[*d.Layup].String())
	case *d.Kind == purlinDeck:
		notes = append(notes, "Each purlin carries a worker alone; metal panels hold its top edge, nothing the bottom",
			"The metal panels themselves are not checked")
	case *d.Held:
		notes = append(notes, "Slats blocked to each other: two share a worker")
	default:
		notes = append(notes, "One slat carries a worker alone; where slats are blocked to each other two share it. "+
			"The load standard lets 300 lb be spread over 2-1/2 ft by 2-1/2 ft: whether that holds for slats the authority says")
	}
	if *d.Kind != plankDeck {
		notes = append(notes, "Every piece on simple spans from rafter to rafter; the part of the load along the roof is left out",
			"Open gap between pieces: "+calc.FeetInches(gap(w.section, d))+"; loaded as if there were none")
	}
	return append(notes, "Laid "+laid(w.dry.Use)+"; pieces end on rafters unless the layup says else")
}

// laid says which face carries.
func laid(u lumber.Use) string {
	if u.Flat {
		return "flat"
	}
	return "on edge"
}

// fraction writes a thickness in 32nds of an inch, reduced.
func fraction(inches float64) string {
	over, under := int(math.Round(inches*32)), 32
	for over%2 == 0 && under > 1 {
		over, under = over/2, under/2
	}
	if whole := over / under; whole > 0 {
		return fmt.Sprintf("%d-%d/%d", whole, over%under, under)
	}
	return fmt.Sprintf("%d/%d", over, under)
}
