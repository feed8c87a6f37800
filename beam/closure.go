package beam

import (
	"fmt"
	"strconv"

	"patiocover/calc"
)

const (
	// heaviest is the largest load, lb or lb/in, and the largest factor of a
	// combination, dimensionless: with the longest line no product overflows, so that
	// no sum can fail to be a number.
	heaviest = 1e100
	// open is the part of the load, a ratio, by which a case may miss equilibrium.
	open = 1e-9
	// nothing is a load, lb, so small that its products with lengths lose their digits
	// at the lower end of the number range; what it leaves over is no fault.
	nothing = 1e-200
)

// A ClosureError says that a case was solved and does not come out in equilibrium or
// has a kink over a support: a fault of the calculation, not of the loads.
type ClosureError struct {
	Case   int     // index of the case
	Force  float64 // load that the reactions do not balance, lb
	Moment float64 // its moment about the left tip, lb-in
	Kink   float64 // largest difference of slopes over a support, times E I, lb-in²
}

// Error names the case and what is left over.
func (e *ClosureError) Error() string {
	return fmt.Sprintf("beam: case %d does not close: %g lb, %g lb-in, kink %g lb-in²",
		e.Case, e.Force, e.Moment, e.Kink)
}

// closure compares the reactions with the loads as they were given, and the slopes
// of neighboring spans with each other.
func (p *Plan) closure(k int, s state, loads []Load) error {
	e := ClosureError{Case: k}
	size, length := nothing/open, p.line.length
	for i := range loads {
		l := &loads[i]
		if l.point {
			e.Force += l.Start
			e.Moment += l.Start * l.From
			size += abs(l.Start)
			continue
		}
		e.Force += l.Total()
		e.Moment += l.Moment()
		ends := abs(l.Start) + abs(l.End)
		size += ends*(l.To-l.From)/2 + ends*length*coincident/open // ends may have moved onto cuts
	}
	for i, r := range s.reaction {
		e.Force -= r
		e.Moment -= r * p.line.supports[i]
		size += abs(r)
	}
	for i := 1; i+2 < len(p.bays); i++ {
		kink := s.slope[p.bays[i+1].first] - s.slope[p.bays[i].last]
		if !(abs(kink) <= abs(e.Kink)) {
			e.Kink = kink
		}
	}
	if abs(e.Force) <= open*size && abs(e.Moment) <= open*size*length && abs(e.Kink) <= open*size*length*length {
		return nil
	}
	failed := e
	return &failed
}

// valid reports whether the load lies in order on a member of the length, and is
// not too large to be reckoned with.
func (l *Load) valid(length float64) bool {
	tolerance := coincident * length
	if !(-tolerance <= l.From && l.From <= length+tolerance && abs(l.Start) <= heaviest) {
		return false
	}
	return l.point || l.From <= l.To && l.To <= length+tolerance && abs(l.End) <= heaviest
}

func validLoads(length float64, cases [][]Load) bool {
	for _, loads := range cases {
		for i := range loads {
			if !loads[i].valid(length) {
				return false
			}
		}
	}
	return true
}

// loadFaults lists everything that Set refuses.
func loadFaults(line *Line, cases [][]Load) error {
	var f calc.Fields
	if len(line.supports) < 2 {
		f.Missing("line", "a line with supports")
		return f.Err()
	}
	for k, loads := range cases {
		for i, l := range loads {
			if l.valid(line.length) {
				continue
			}
			at := f.At("cases["+strconv.Itoa(k)+"]", i)
			if l.point {
				at.Within("at", l.From, 0, line.length, "in")
				at.Within("force", l.Start, -heaviest, heaviest, "lb")
				continue
			}
			at.Within("from", l.From, 0, line.length, "in")
			at.Within("to", l.To, max(0, l.From), line.length, "in")
			at.Within("start", l.Start, -heaviest, heaviest, "lb/in")
			at.Within("end", l.End, -heaviest, heaviest, "lb/in")
		}
	}
	return f.Err()
}
