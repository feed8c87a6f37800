package calc

import "fmt"

// A Line is one line of a written calculation: a symbol, how it was found, its
// value and where the rule stands.
type Line struct {
	Symbol  string  `json:"symbol"`            // ASCII symbol, such as Fb_adj or C_D
	Formula string  `json:"formula,omitempty"` // expression in symbols of the lines above; empty when given
	X       float64 `json:"value"`             // value in Unit
	Unit    string  `json:"unit,omitempty"`    // unit in which the formula is true; empty when dimensionless
	Source  string  `json:"source,omitempty"`  // standard, edition, clause; or whence a given value comes
	Status  Status  `json:"status"`            // how the number came into the project
}

// A Sheet is a calculation while it is being written. The zero value is an empty
// sheet. It is not safe for concurrent use.
type Sheet struct{ lines []Line }

// Given writes a value that this calculation takes from elsewhere: the input, an
// earlier sheet, or geometry.
func (s *Sheet) Given(symbol string, x float64, unit, source string) {
	s.put(Line{Symbol: symbol, X: x, Unit: unit, Source: source, Status: Read})
}

// Quoted writes a value that a table of a standard prints, with the status of its
// row.
func (s *Sheet) Quoted(symbol string, x float64, unit, source string, status Status) {
	s.put(Line{Symbol: symbol, X: x, Unit: unit, Source: source, Status: status})
}

// Step writes a value that follows from the lines above. The formula uses Go's
// arithmetic, the functions sqrt, pow, min, max, abs, exp, ceil, floor, sin, cos,
// tan (angles in radians), sind, cosd, tand (degrees) and the constant pi.
func (s *Sheet) Step(symbol, formula string, x float64, unit, source string) {
	s.put(Line{Symbol: symbol, Formula: formula, X: x, Unit: unit, Source: source, Status: Computed})
}

// usualLines is the room that a sheet begins with; most calculations need no more.
const usualLines = 16

// put writes a line.
func (s *Sheet) put(l Line) {
	if s.lines == nil {
		s.lines = make([]Line, 0, usualLines)
	}
	s.lines = append(s.lines, l)
}

// Append copies the lines of another calculation onto this one. A symbol that
// both define with the same value and unit is written once, with the weaker of
// the two statuses, so that a value from memory stays marked.
func (s *Sheet) Append(lines []Line) {
	for _, l := range lines {
		i := s.find(l.Symbol)
		if i < 0 || s.lines[i].X != l.X || s.lines[i].Unit != l.Unit {
			s.put(l)
			continue
		}
		s.lines[i].Status = s.lines[i].Status.Weakest(l.Status)
	}
}

// Lines returns what has been written.
func (s *Sheet) Lines() []Line { return s.lines }

// Check closes the sheet: the value of the demand symbol must not exceed the
// value of the capacity symbol. It panics if either was not written, or if their
// units differ, because that is a mistake in the calling code.
func (s *Sheet) Check(name, demand, capacity string) Check {
	d, c := s.must(demand), s.must(capacity)
	if d.Unit != c.Unit {
		panic(fmt.Sprintf("calc: check %q compares %s in %q with %s in %q", name, demand, d.Unit, capacity, c.Unit))
	}
	return Check{
		Name: name, DemandSymbol: demand, CapacitySymbol: capacity,
		Demand: d.X, Capacity: c.X, Unit: c.Unit, Lines: s.lines,
	}
}

// must returns the last line with the symbol, and panics if there is none.
func (s *Sheet) must(symbol string) Line {
	i := s.find(symbol)
	if i < 0 {
		panic(fmt.Sprintf("calc: the sheet has no line %q", symbol))
	}
	return s.lines[i]
}

// find returns the index of the last line with the symbol, or −1.
func (s *Sheet) find(symbol string) int {
	for i := len(s.lines) - 1; i >= 0; i-- {
		if s.lines[i].Symbol == symbol {
			return i
		}
	}
	return -1
}
