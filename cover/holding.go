package cover

import (
	"fmt"
	"math"

	"patiocover/beam/lumber"
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
	h.limits, h.angle, h.cosine = m.limits, 90-degrees(m.plan.angle), m.rafter.cosine
	h.hung, h.bed = h.slender(rafter, m.rafter.bays), beam
	for s := range m.rafter.supports {
		h.seats[s] = member.Seat{Width: rafter.section.Breadth, Length: hangerSeat}
		h.wetSeat[s], h.cuts[s] = true, cut{}
		if line := m.plan.lineOf(s); line >= 0 {
			h.wetSeat[s] = m.plan.nearEdge(line)
			m.seatOnBeam(s, rafter, beam)
		}
	}
	return h
}

// seatOnBeam says how the rafters sit on a dropped beam; in the face of a flush one they
// hang.
func (m *model) seatOnBeam(s int, rafter, beam *wood) {
	if m.plan.flush {
		return
	}
	h := &m.rafterHold
	h.cuts[s] = m.newSeatCut(s, rafter, beam)
	h.seats[s].Length = h.cuts[s].seat
}

// nearEdge reports whether a beam line is so near to the roof edge that rain reaches the
// seats on it.
func (p *plan) nearEdge(line int) bool {
	return p.lines[line] < wetReach || p.projection-p.lines[line] < wetReach
}

// beamHolding says how the beams are built. Their seats are checked with the posts. A
// notch over a post is taken to run past its edge, because the post is not chosen yet.
func (m *model) beamHolding() holding {
	h := holding{bracing: bracing{top: m.plan.spacing}, limits: m.limits}
	if notch := m.in.Beams.Notch; notch != nil && *notch > 0 {
		for s := range h.cuts {
			h.cuts[s] = cut{level: true, plumb: *notch * calc.In, deep: *notch * calc.In, past: math.MaxFloat64}
		}
	}
	return h
}

// beamHeld says how the beams of this wood are held.
func (m *model) beamHeld(beam *wood) *holding {
	m.beamHold.bolts = m.boltsOf(beam.section.Depth)
	return &m.beamHold
}

// limitsOf returns the deflection limits of rafters and beams: of live or snow load by
// the residential code, and of the long-term sag by the building code's limit of dead
// plus live load. Without a ceiling the sag keeps the limit of a board ceiling, which is
// stricter than the code asks for.
func (r *room) limitsOf(in Input) limits {
	key := limitKey{*in.Cover.Ceiling, *in.Cover.Slope > 3}
	return keep(&r.limits, key, func() limits { return newLimits(key) })
}

// A limitKey is what the deflection limits depend on.
type limitKey struct {
	ceiling string
	steep   bool // falls more than 3 in 12
}

// newLimits finds them in the tables of the codes.
func newLimits(k limitKey) limits {
	live, total := "all other structural members (incl. rafter slope <= 3:12)", "roof member supporting nonplaster ceiling"
	switch {
	case k.ceiling == "plaster":
		live, total = "ceiling with plaster or stucco finish", "roof member supporting plaster or stucco ceiling"
	case k.ceiling == "none" && k.steep:
		live = "rafter, slope > 3:12, no finished ceiling"
	}
	l, t, c := limitRow("IRC", live), limitRow("IBC", total), limitRow("IBC", codeRow(k.ceiling))
	return limits{
		code:  member.Limit{Divisor: c.Total, Source: c.Source + ", dead plus live, " + c.Member, Status: c.Status},
		gust:  member.Limit{Divisor: c.Wind, Source: c.Source + ", snow or wind, " + c.Member, Status: c.Status},
		live:  member.Limit{Divisor: l.Live, Source: l.Source + ", " + l.Member, Status: l.Status},
		total: member.Limit{Divisor: t.Total, Source: t.Source + ", dead plus live, " + t.Member, Status: t.Status},
	}
}

// codeRow is the row of the building code for roof members with the ceiling.
func codeRow(ceiling string) string {
	switch ceiling {
	case "plaster":
		return "roof member supporting plaster or stucco ceiling"
	case "board":
		return "roof member supporting nonplaster ceiling"
	}
	return "roof member not supporting ceiling"
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
		sidewaysNote(rafter.section),
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
	notes = append(notes, m.cutNotes()...)
	if m.rafterHold.hung {
		notes = append(notes, "Too slender sideways to be pressed along the slope (NDS 2018 3.7.1.4): "+
			"hangers or ties must hold that force at the high end")
	}
	notes = append(notes, m.shrinkNotes(rafter, m.rafters, "check the gap in the hangers and tighten what is bolted")...)
	return append(notes, "Seats at the ledger and within 1 ft of the roof edge taken as wet for bearing, whatever the roof")
}

// cutNotes says how the rafters sit on each beam line.
func (m *model) cutNotes() []string {
	var out []string
	for s := range m.rafter.supports {
		c := m.rafterHold.cuts[s]
		switch {
		case m.plan.lineOf(s) < 0 || m.plan.flush:
		case !c.level:
			out = append(out, "Full seat "+m.bearsOn(s)+" without a cut: shim the rafters or bevel the top of the beam to the slope")
		default:
			out = append(out, fmt.Sprintf("Seat cut %s: heel %s high at most, level seat %s long",
				m.bearsOn(s), inches(calc.RoundDown(c.plumb, 0.01)), inches(calc.RoundUp(c.seat, 0.01))))
		}
	}
	return out
}

// inches writes a small length.
func inches(x float64) string { return calc.Number(x) + " in" }

// Moisture contents of lumber that is sold green, and at which it comes to rest outdoors
// under a roof, percent: in a desert 6 to 9, elsewhere 12 and more (common practice).
const (
	greenMoisture = 28
	dryClimate    = 8
	humidClimate  = 12
)

// shrinkNotes says how much a member that is installed green will lose of its depth.
func (m *model) shrinkNotes(w *wood, st stock, then string) []string {
	if !w.green {
		return nil
	}
	rest := float64(humidClimate)
	if *m.in.Site.Climate == "dry" {
		rest = dryClimate
	}
	s := lumber.NewShrinkage(st.species, lumber.AcrossWidth, w.section.Depth, greenMoisture, rest)
	return []string{fmt.Sprintf("Installed green: drying from %d to %s %% it loses about %s of its depth: %s",
		greenMoisture, calc.Number(rest), inches(calc.RoundUp(s.Change, 0.01)), then)}
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
		sidewaysNote(beam.section),
	}
	notes = append(notes, m.boltsOf(beam.section.Depth).notes()...)
	notes = append(notes, m.shrinkNotes(beam, m.beams, "the roof comes down with it, and bolts need tightening")...)
	if len(m.plan.splices) == 0 {
		return append(notes, "One piece, continuous over its posts")
	}
	return append(notes, fmt.Sprintf("%d pieces, each ending over a post: tie every piece down", len(m.plan.splices)+1))
}
