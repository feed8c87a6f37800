package deck

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// An Action is what one combination puts on the deck.
type Action struct {
	Name       string          // combination, as the standard prints it
	Clause     string          // standard, edition, section of the combination
	Status     calc.Status     // how the factors are known
	Dead       float64         // D, lb/in² of deck
	Plan       float64         // L, roof live or snow load, lb/in² of deck
	Wind       float64         // W, lb/in² of deck, strength level, + down
	DeadFactor float64         // factor on D
	PlanFactor float64         // factor on L
	WindFactor float64         // factor on W
	Stands     float64         // factor on P
	Worker     float64         // P, lb: one concentrated load, 0 without
	Duration   lumber.Duration // load duration of the combination
	Method     lumber.Method   // design method that the factors belong to
}

// Net returns p, the factored pressure across the deck, lb/in², + down.
func (a *Action) Net() float64 {
	return a.DeadFactor*a.Dead + a.PlanFactor*a.Plan + a.WindFactor*a.Wind
}

// windy reports whether the wind takes part.
func (a *Action) windy() bool { return a.WindFactor != 0 }

// write adds the lines of the pressure, the last two with the symbols p and p_in.
func (a *Action) write(s *calc.Sheet) {
	formula := ""
	for _, part := range [...]struct {
		symbol, what string
		load, factor float64
	}{
		{"D", "dead load on the deck", a.Dead, a.DeadFactor},
		{"L", "roof live or snow load on the deck", a.Plan, a.PlanFactor},
		{"W", "wind on the deck, the worse of a corner and the whole roof, strength level, down is positive", a.Wind, a.WindFactor},
	} {
		if part.factor == 0 {
			continue
		}
		s.Given(part.symbol, part.load/calc.PSF, "psf", part.what)
		s.Quoted("f_"+part.symbol, part.factor, "", a.Clause+", "+a.Name, a.Status)
		if formula != "" {
			formula += " + "
		}
		formula += "f_" + part.symbol + " * " + part.symbol
	}
	if formula == "" {
		formula = "0"
	}
	s.Step("p", formula, a.Net()/calc.PSF, "psf", a.Clause+", "+a.Name)
	s.Step("p_in", "p / 144", a.Net(), "psi", "unit change")
}

// concentrated returns the factored concentrated load, lb.
func (a *Action) concentrated() float64 { return a.Stands * a.Worker }

// timed returns the factor of the method on a capacity of panels, whose factors are
// those of the same stress in lumber (NDS 2018 Table 9.3.1).
func (a *Action) timed(k lumber.Kind) float64 { return a.Method.TimeFactor(k, a.Duration) }

// writeTimed adds the line of that factor and returns its symbol.
func (a *Action) writeTimed(s *calc.Sheet, k lumber.Kind) string {
	if a.Method == lumber.LRFD {
		s.Quoted("K_phi_lambda", a.timed(k), "", "NDS 2018 Table 9.3.1, K_F phi lambda", calc.Recalled)
		return "K_phi_lambda"
	}
	a.Duration.Write(s)
	return "C_D"
}

// moment returns the bending moment of a uniform load w, lb/in, on the span, and of
// the part of the worker that the piece takes at mid span, lb-in.
func moment(w, span, worker float64, l *layupRow) float64 {
	return l.moment*math.Abs(w)*span*span + worker*span/4 // statics; the point load as on a simple span
}
