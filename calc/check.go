package calc

import "math"

// A Check is one written comparison of demand with capacity.
type Check struct {
	Name           string  `json:"name"`            // what is checked, such as bending
	DemandSymbol   string  `json:"demand_symbol"`   // symbol of the demand line
	CapacitySymbol string  `json:"capacity_symbol"` // symbol of the capacity line
	Demand         float64 `json:"demand"`          // value of the demand, in Unit
	Capacity       float64 `json:"capacity"`        // value of the capacity, in Unit
	Unit           string  `json:"unit,omitempty"`  // unit of both
	Lines          []Line  `json:"lines"`           // the calculation that led here
}

// Ratio returns demand over capacity: 0 when nothing is demanded, +Inf when
// something is demanded of no capacity.
func (c Check) Ratio() float64 { return Ratio(c.Demand, c.Capacity) }

// Recalled reports whether any line quotes a value from memory that has not been
// confirmed against its printed source.
func (c Check) Recalled() bool {
	for _, l := range c.Lines {
		if l.Status == Recalled {
			return true
		}
	}
	return false
}

// A Result is one check: a number for the search, a sheet for the reader.
type Result interface {
	// Ratio is demand over capacity; the check passes up to 1.
	Ratio() float64
	// Explain writes the check out. Its Ratio is the same number.
	Explain() Check
}

// Ratio returns demand over capacity. It is never NaN, so that an unknown never
// passes.
//
// Special cases: +Inf when either is not a number, when the demand is +Inf, and
// when the demand is positive and the capacity is not; 0 when the demand is not
// positive, whatever the capacity, and when the capacity alone is +Inf.
func Ratio(demand, capacity float64) float64 {
	switch {
	case math.IsNaN(demand) || math.IsNaN(capacity):
		return math.Inf(1)
	case demand <= 0:
		return 0
	case capacity <= 0 || math.IsInf(demand, 1):
		return math.Inf(1)
	}
	return demand / capacity
}
