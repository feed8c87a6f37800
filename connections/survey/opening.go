package survey

import (
	"math"

	"patiocover/calc"
)

// leastPart is the part of the joints of a field zone that must be seen before the rest
// may be taken as the worst of them, ratio: practice of retrofit surveys, an engineering
// judgement. Of corners and edges all must be seen.
const leastPart = 0.25

// An Opening is how much of one zone, and one kind of place in it, must be opened.
type Opening struct {
	Zone  Zone // of the roof
	Total int  // joints there
	Seen  int  // of which were seen
	Least int  // that must be seen before the others may be judged by them
	More  int  // that are still to be opened
}

// NewOpening returns the least set: every joint in a corner and along an edge, where the
// wind lifts most, and one in four in the field, and never none.
func NewOpening(zone Zone, total, seen int) Opening {
	o := Opening{Zone: zone, Total: total, Seen: seen, Least: total}
	if zone == Field {
		o.Least = int(math.Ceil(leastPart * float64(total)))
	}
	o.More = max(0, o.Least-o.Seen)
	return o
}

// Enough reports whether joints of the zone that nobody saw may be taken as the worst
// that was seen there.
func (o Opening) Enough() bool { return o.Seen > 0 && o.More == 0 }

// Lines writes the numbers up.
func (o Opening) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("N", float64(o.Total), "", "joints in the zone, survey")
	s.Given("N_seen", float64(o.Seen), "", "joints seen there, survey")
	const rule = "practice of retrofit surveys: all in corners and along edges, one in four in the field"
	if o.Zone == Field {
		s.Quoted("p", leastPart, "", rule, calc.Recalled)
		s.Step("N_least", "ceil(p * N)", float64(o.Least), "", rule)
	}
	if o.Zone != Field {
		s.Step("N_least", "N", float64(o.Least), "", rule)
	}
	s.Step("N_open", "max(0, N_least - N_seen)", float64(o.More), "", "still to be opened")
	return s.Lines()
}

// Worst returns the least capacity among those that were seen, and false when none
// was. One whose record is not whole counts as seen by half: nothing may be judged by
// it, so that it is returned before any other.
func Worst(seen []Capacity) (Capacity, bool) {
	at := -1
	for i := range seen {
		switch {
		case seen[i].Basis == NotSeen:
		case at < 0 || worse(&seen[i], &seen[at]):
			at = i
		}
	}
	if at < 0 {
		return Capacity{}, false
	}
	return seen[at], true
}

// worse reports whether a is a weaker ground for judging another joint than b.
func worse(a, b *Capacity) bool {
	if a.Basis.Open() != b.Basis.Open() {
		return a.Basis.Open()
	}
	return a.Uplift < b.Uplift
}
