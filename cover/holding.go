package cover

import (
	"fmt"

	"patiocover/beam/member"
	"patiocover/calc"
)

// hangerSeat is the least bearing length on wood or metal, in (IRC 2021 R802.6 from
// memory): what a hanger or a ledger gives.
const hangerSeat = 1.5 * calc.In

// rafterHolding says how the rafters are built on this beam.
func (m *model) rafterHolding(rafter, beam *wood) *holding {
	h := &m.rafterHold
	brace := 0.0
	if m.in.Rafters.Brace != nil {
		brace = m.plan.slope(*m.in.Rafters.Brace * calc.Ft)
	}
	held, every := m.deckHolds()
	h.bracing = bracing{topHeld: held, top: every, bottom: brace}
	h.limits = m.limits
	for s := range m.rafter.supports {
		length := hangerSeat
		onLine := m.plan.lineOf(s) >= 0
		if onLine && !m.plan.flush {
			length = beam.section.Breadth
		}
		h.seats[s] = member.Seat{Width: rafter.section.Breadth, Length: length}
		h.wetSeat[s] = !onLine
	}
	return h
}

// beamHolding says how the beams are built. Their seats are checked with the posts.
func (m *model) beamHolding() holding {
	return holding{bracing: bracing{top: m.plan.spacing}, limits: m.limits}
}

// limitsOf returns the deflection limits of rafters and beams: of live or snow load by
// the residential code, and of the long-term sag by the building code's limit of dead
// plus live load. Without a ceiling the sag keeps the limit of a board ceiling, which is
// stricter than the code asks for.
func limitsOf(in Input) limits {
	live, total := "all other structural members (incl. rafter slope <= 3:12)", "roof member supporting nonplaster ceiling"
	switch {
	case *in.Cover.Ceiling == "plaster":
		live, total = "ceiling with plaster or stucco finish", "roof member supporting plaster or stucco ceiling"
	case *in.Cover.Ceiling == "none" && *in.Cover.Slope > 3:
		live = "rafter, slope > 3:12, no finished ceiling"
	}
	l, t := limitRow("IRC", live), limitRow("IBC", total)
	return limits{
		live:  member.Limit{Divisor: l.Live, Source: l.Source + ", " + l.Member, Status: l.Status},
		total: member.Limit{Divisor: t.Total, Source: t.Source + ", dead plus live, " + t.Member, Status: t.Status},
	}
}

// limitRow returns the row of a code's deflection limits. A row that is not there is a
// mistake of ours.
func limitRow(code, of string) member.LimitRow {
	for _, r := range member.Limits() {
		if r.Code == code && r.Member == of {
			return r
		}
	}
	panic("cover: no deflection limit " + code + " for " + of)
}

// rafterNotes says what the checks of the rafters rest on.
func (m *model) rafterNotes(rafter *wood) []string {
	notes := []string{
		"Bottom edge under net uplift: " + braced(m.rafterHold.bracing.bottom),
		"Sideways support by size (NDS 2018 4.4.1): " + member.RestraintOf(rafter.section).String(),
	}
	if rafter.dry.Bending.Repetitive == 1 {
		notes = append(notes,
			"No repetitive member factor: it needs three or more rafters at 24 in. or less under a deck that spreads load")
	}
	switch held := m.rafterHold.bracing; {
	case held.topHeld:
	case held.top > 0:
		notes = append(notes, "Top edge held by purlins every "+calc.FeetInches(held.top))
	case m.plan.solid:
		notes = append(notes, "The deck is not counted as bracing of the top edge")
	default:
		notes = append(notes, "Slats are not counted as bracing of the top edge")
	}
	return append(notes, "Seat at the ledger and at beam posts taken as wet for bearing, whatever the roof")
}

func braced(every float64) string {
	if every == 0 {
		return "not braced between supports"
	}
	return "braced every " + calc.FeetInches(every)
}

// beamNotes says what the checks of the beams rest on.
func (m *model) beamNotes(beam *wood) []string {
	notes := []string{
		"Top edge held by rafters tied at " + calc.FeetInches(m.plan.spacing) + "; bottom edge only at the posts",
		"Sideways support by size (NDS 2018 4.4.1): " + member.RestraintOf(beam.section).String(),
	}
	if len(m.plan.splices) == 0 {
		return append(notes, "One piece, continuous over its posts")
	}
	return append(notes, fmt.Sprintf("%d pieces, each ending over a post: tie every piece down", len(m.plan.splices)+1))
}
