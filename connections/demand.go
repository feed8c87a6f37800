package connections

import "patiocover/beam/lumber"

// A Demand is what one combination asks of one link.
type Demand struct {
	Combination string          // as the standard prints it, with the sense of the wind
	Duration    lumber.Duration // of its shortest load
	Vertical    float64         // lb, positive downward
	Along       float64         // lb, sideways along the house, not negative
	Out         float64         // lb, sideways out from the house, not negative
	Single      float64         // lb, positive downward, beside Vertical where that is per foot: a load at one place and no other
}

// A Peak is the largest of a kind of demand.
type Peak struct {
	Force       float64 // lb, not negative
	Combination string  // the combination that brings it, empty when Force is 0
}

// raise takes the force if it is larger.
func (p *Peak) raise(force float64, combination string) {
	if force > p.Force {
		*p = Peak{Force: force, Combination: combination}
	}
}

// A Governing holds the largest demand of a link in each sense.
type Governing struct {
	Down  Peak // downward
	Up    Peak // upward; the force is 0 when the link never lifts
	Along Peak // sideways along the house
	Out   Peak // sideways out from the house
}

// Govern condenses the demands of a link. Of equal demands the first governs. A
// link without demands has none: check [Path] for links that are missing.
func Govern(demands []Demand) Governing {
	var g Governing
	for _, d := range demands {
		g.Down.raise(d.Vertical, d.Combination)
		g.Up.raise(-d.Vertical, d.Combination)
		g.Along.raise(d.Along, d.Combination)
		g.Out.raise(d.Out, d.Combination)
	}
	return g
}
