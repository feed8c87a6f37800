package web

import (
	"patiocover/calc"
	"patiocover/cover"
)

// marginDigits is the step to which a margin is rounded down for people, in the unit of
// the field.
const marginDigits = 0.1

// upTo writes a value of a margin, rounded down.
func upTo(m cover.Margin, x float64) string {
	return number(calc.RoundDown(x, marginDigits), m.Unit) + " " + m.Unit
}

// reach writes how far a quantity may go before a member is over.
func reach(m cover.Margin) string {
	switch {
	case m.Missing != "":
		return string(cover.NotChecked)
	case m.None:
		return string(cover.Over)
	}
	return upTo(m, m.Passes)
}

// atEnd writes what is over beyond the margin, or why there is nothing to write.
func atEnd(m cover.Margin) string {
	switch {
	case m.Missing != "":
		return m.Missing
	case m.Reached:
		return "nothing that was tried: " + m.Ends
	case m.None:
		return m.Mark + " " + m.Check + ", down to " + number(m.Over, m.Unit) + " " + m.Unit + " as well"
	}
	return m.Mark + " " + m.Check
}

// restOf writes what is over before that beside the members, and from where on.
func restOf(m cover.Margin) string {
	switch r := m.Rest; {
	case r == nil:
		return ""
	case r.Reached:
		return "nothing"
	default:
		return "beyond " + upTo(m, r.Passes) + ": " + r.Mark + " " + r.Check
	}
}

// belowSize writes what the size next below a member does.
func belowSize(s cover.Smaller) string {
	switch {
	case s.Missing != "":
		return string(cover.NotChecked) + ": " + s.Missing
	case s.Least:
		return "no smaller size is tried"
	case s.Passes:
		return "would do: " + s.Over + " " + s.Check + " governs at ratio " + ratio(s.Ratio)
	}
	return "is over: " + s.Over + " " + s.Check + " at ratio " + ratio(s.Ratio)
}

// marginNotes say what the margins rest on.
var marginNotes = []string{
	"One quantity is moved at a time, everything else and all sizes as they are: members, deck, knee braces, lag screws of the " +
		"ledger, footings of one size with their bolts",
	"Where the members pass, the rest is judged by what is not over now: headroom, footings or slab, anchors, connections, what " +
		"holds the cover sideways. Ratings that are asked for grow with the load: ask for them anew. " +
		"The joints of an old roof are not among them",
	"What is NOT CHECKED now is not checked there either",
	"A margin is tried in steps of 5 % or less, and where one rafter more comes in; what is over " +
		"only between two values that were tried is not seen: have the value that you choose calculated",
}

// margins prints how far the design may go, and the sizes next below.
func (p *printer) margins(all []cover.Margin, smaller []cover.Smaller) {
	if len(all) == 0 {
		return
	}
	p.head("Margins, everything else and all sizes kept")
	p.row("moved", "now", "members pass up to", "then over", "over before that")
	for _, m := range all {
		p.row(m.What, number(m.Now, m.Unit)+" "+m.Unit, reach(m), atEnd(m), restOf(m))
	}
	p.head("One size smaller")
	for _, s := range smaller {
		p.row(s.Name+" "+s.Now, s.Size, belowSize(s))
	}
	for _, n := range marginNotes {
		p.say("  - " + n)
	}
}
