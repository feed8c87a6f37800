package survey

import "patiocover/calc"

// Limits up to which an existing part may stay as it is, ratios.
const (
	gravityLimit = 0.05 // of the design dead, live and snow load on an element
	lateralLimit = 0.10 // of its ratio of demand to capacity sideways
)

// An Increase is how much a change adds to what an existing part carries, against the
// limit up to which it may stay unaltered.
type Increase struct {
	Lateral bool    // sideways; else gravity load
	Before  float64 // load on the part as it is, lb
	Added   float64 // by the change, lb
	Part    float64 // added over before, ratio
	Limit   float64 // that may be added, ratio
}

// NewIncrease compares a gravity load, or a sideways load of unchanged capacity, with
// the limit of the existing building code: 5 percent of the design dead, live and snow
// load of an element, 10 percent of its demand sideways.
func NewIncrease(before, added float64, lateral bool) Increase {
	i := Increase{Lateral: lateral, Before: before, Added: added, Limit: gravityLimit}
	if lateral {
		i.Limit = lateralLimit
	}
	i.Part = max(0, added) / before
	return i
}

// Ratio is the part over its limit.
func (i Increase) Ratio() float64 { return calc.Ratio(i.Part, i.Limit) }

// Explain writes the comparison out.
func (i Increase) Explain() calc.Check {
	var s calc.Sheet
	rule, name := "International Existing Building Code 805.2, read in the edition of a city: more than 5 % of dead, live or snow load",
		"gravity load added to the element"
	if i.Lateral {
		rule = "existing building code of a state, exception read there: not more than 10 % in demand over capacity"
		name = "sideways load added to the element"
	}
	s.Given("P_0", i.Before, "lb", "design load as the house stands")
	s.Given("P_add", max(0, i.Added), "lb", "added by the cover")
	s.Step("p", "P_add / P_0", i.Part, "", rule)
	s.Quoted("p_lim", i.Limit, "", rule, calc.Read)
	return s.Check(name, "p", "p_lim")
}
