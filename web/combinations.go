package web

import "patiocover/cover"

// What a reader must know of the rows.
const (
	strengthNote = "Members are chosen by one design method and checked by the other beside it: these rows are those of load and " +
		"resistance factor design. Links, foundations and what holds the cover sideways rest on allowable stress design."
	unusedNote = "not used: the earthquake is not computed"
)

// combinations prints the rows of factors, those of allowable stress design first.
func (p *printer) combinations(rows []cover.CombinationLine) {
	p.head("Combinations, factors on the loads")
	p.row("combination", "dead", "roof live", "snow", "wind", "Eh", "Ev", "C_D", "clause")
	for _, c := range rows {
		if c.Method == "ASD" {
			p.factors(c, c.Duration)
		}
	}
	p.head("Combinations of strength design")
	p.say(strengthNote)
	p.row("combination", "dead", "roof live", "snow", "wind", "Eh", "Ev", "lambda", "clause")
	for _, c := range rows {
		if c.Method == "LRFD" {
			p.factors(c, c.TimeEffect)
		}
	}
}

// factors prints one row, with the factor of the wood that belongs to its method.
func (p *printer) factors(c cover.CombinationLine, wood float64) {
	note := statusNote(c.Status)
	if c.Method == "ASD" && !c.Used {
		note += "; " + unusedNote
	}
	p.row(c.Name, number(c.Dead, ""), number(c.RoofLive, ""), number(c.Snow, ""), number(c.Wind, ""),
		number(c.Earthquake, ""), number(c.EarthquakeUp, ""), number(wood, ""), c.Clause+note)
}
