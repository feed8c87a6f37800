package dowel

import (
	"math"

	"patiocover/calc"
)

// A Rating is what a tie, hanger, cap or base that is bought is rated for, by its own
// report: allowable values for wind, with the load duration factor in them.
type Rating struct {
	Up      float64 // lb, in uplift
	Along   float64 // lb, sideways along the member it sits on; 0 when not rated
	Across  float64 // lb, sideways across it; 0 when not rated
	Gravity float64 // G of the lightest wood it is rated for, specific gravity, dimensionless
}

// Forces are what act on a tie at once, allowable stress.
type Forces struct {
	Up     float64 // lb, upward
	Along  float64 // lb, sideways along the member it sits on
	Across float64 // lb, sideways across it
}

// A Tie is the check of a rated tie with all its forces at once: the sum of the ratios.
type Tie struct {
	Forces  Forces  // what acts
	Rating  Rating  // what it is rated for
	Gravity float64 // G of the lightest wood it is nailed to, specific gravity, dimensionless
	Sum     float64 // of force over rating, ratio
	lighter bool    // the wood is lighter than that of the rating
}

// NewTie compares forces with a rating. The rating is taken as it stands: no factor of
// load duration is put on it, and nails beside it add nothing. In wood lighter than
// that of the rating it counts as none: read the column of the lighter wood.
func NewTie(f Forces, r Rating, gravity float64) Tie {
	t := Tie{Forces: f, Rating: r, Gravity: gravity, lighter: !(gravity >= r.Gravity)}
	t.Sum = calc.Ratio(f.Up, r.Up) + calc.Ratio(f.Along, r.Along) + calc.Ratio(f.Across, r.Across)
	if t.lighter {
		t.Sum = calc.Ratio(max(0, f.Up)+max(0, f.Along)+max(0, f.Across), 0)
	}
	return t
}

// Ratio is the sum of the ratios; it may not exceed 1.
func (t Tie) Ratio() float64 { return t.Sum }

// Explain writes the check out.
func (t Tie) Explain() calc.Check {
	var s calc.Sheet
	const rated = "rating of the tie, wind, with its load duration in it"
	s.Given("G", t.Gravity, "", "lightest wood it is nailed to, NDS 2018 Table 12.3.3A")
	s.Given("G_r", t.Rating.Gravity, "", "lightest wood it is rated for")
	s.Given("T", t.Forces.Up, "lb", "uplift")
	s.Given("V_1", t.Forces.Along, "lb", "side force along the member it sits on")
	s.Given("V_2", t.Forces.Across, "lb", "side force across it")
	s.Given("R", t.Rating.Up, "lb", rated)
	s.Given("R_1", t.Rating.Along, "lb", rated)
	s.Given("R_2", t.Rating.Across, "lb", rated)
	if math.IsInf(t.Sum, 1) {
		why := "a sense that is not rated holds nothing"
		if t.lighter {
			why = "the wood is lighter than that of the rating, which does not count"
		}
		f := max(0, t.Forces.Up) + max(0, t.Forces.Along) + max(0, t.Forces.Across)
		s.Step("F", "max(0, T) + max(0, V_1) + max(0, V_2)", f, "lb", "what acts")
		s.Given("F_max", 0, "lb", why)
		return s.Check("rated tie", "F", "F_max")
	}
	s.Given("sum_max", 1, "", "sum of the ratios, each sense by itself linear")
	formula := ""
	for _, of := range [...]struct {
		ratio string
		force float64
	}{{"T / R", t.Forces.Up}, {"V_1 / R_1", t.Forces.Along}, {"V_2 / R_2", t.Forces.Across}} {
		switch {
		case of.force <= 0:
		case formula == "":
			formula = of.ratio
		default:
			formula += " + " + of.ratio
		}
	}
	if formula == "" {
		formula = "0"
	}
	s.Step("sum", formula, t.Sum, "", "sum of the ratios of all forces that act")
	return s.Check("rated tie", "sum", "sum_max")
}
