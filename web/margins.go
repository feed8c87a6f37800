package web

import (
	"patiocover/calc"
	"patiocover/cover"
)

// marginDigits is the step to which a margin is rounded down for people, in the unit of
// the field.
const marginDigits = 0.1

// reach writes how far a quantity may go, rounded down.
func reach(m cover.Margin) string {
	if m.Missing != "" {
		return "not known"
	}
	return number(calc.RoundDown(m.Passes, marginDigits), m.Unit) + " " + m.Unit
}

// atEnd writes what is over beyond the margin, or why there is nothing to write.
func atEnd(m cover.Margin) string {
	switch {
	case m.Missing != "":
		return m.Missing
	case m.Reached:
		return "nothing: the answers of this program end there"
	}
	return m.Mark + " " + m.Check
}

// margins prints how far the design may go.
func (p *printer) margins(all []cover.Margin) {
	if len(all) == 0 {
		return
	}
	p.head("Margins, everything else and all sizes kept")
	p.row("moved", "now", "passes up to", "then over")
	for _, m := range all {
		p.row(m.What, number(m.Now, m.Unit)+" "+m.Unit, reach(m), atEnd(m))
	}
}
