package survey

import (
	"patiocover/calc"
	"patiocover/connections"
)

// A Verdict is the answer for one joint. The zero value is never OK.
type Verdict uint8

// The verdicts.
const (
	OpenUp     Verdict = iota // cannot be judged until it has been seen
	NotChecked                // the demand is outside the method
	Over                      // a tie is needed
	OK                        // it holds
)

// A Demand is what the wind asks of one joint, lb of net uplift, allowable stress level.
type Demand struct {
	Main      float64 // by the main wind force resisting system, lb; not a number when outside the method
	Component float64 // by components and cladding, lb; not a number when outside the method
	Cover     float64 // added by a cover that hangs from the eave, lb, not negative
	MainOnly  bool    // the authority accepts the main system alone
}

// Uplift is T, lb: the larger of both ways, or the main system where the authority
// accepts it, with what the cover adds. It is not a number when either is not known.
func (d Demand) Uplift() float64 {
	own := max(d.Main, d.Component) // max keeps what is not a number
	if d.MainOnly {
		own = d.Main
	}
	return max(0, own) + max(0, d.Cover)
}

// A Joint is one joint, or a run of equal ones, with its verdict.
type Joint struct {
	Demand   Demand   // what the wind asks
	Capacity Capacity // what was seen
	Assumed  bool     // unseen: the capacity is that of the worst joint seen in its zone
	Uplift   float64  // T, lb
	Verdict  Verdict  // the answer
	Rating   float64  // of the tie that is needed: T rounded up to 25 lb, lb; 0 where none is
}

// NewJoint judges a joint. What must be looked at first is OpenUp, however little the
// wind asks. A joint that is over needs a tie for the whole of T: what is there is not
// taken off it. worst is the least capacity seen in its zone, nil until enough of the
// zone has been opened; it stands in for a joint that nobody saw, and for no other.
func NewJoint(d Demand, c Capacity, worst *Capacity) Joint {
	j := Joint{Demand: d, Capacity: c, Uplift: d.Uplift()}
	if c.Basis == NotSeen && worst != nil {
		j.Capacity, j.Assumed = *worst, true
	}
	switch {
	case j.Capacity.Basis.Open():
		j.Verdict = OpenUp
	case j.Uplift != j.Uplift:
		j.Verdict = NotChecked
	case j.Uplift <= j.Capacity.Uplift && j.Capacity.Basis != DamagedJoint:
		j.Verdict = OK
	default:
		j.Verdict = Over
	}
	if j.Verdict != OK && j.Uplift == j.Uplift {
		j.Rating = connections.Rating(j.Uplift)
	}
	return j
}

// Ratio is T over C: 0 where nothing lifts, infinite where nothing holds.
func (j Joint) Ratio() float64 { return calc.Ratio(j.Uplift, j.Capacity.Uplift) }

// Explain writes the comparison out, from the two demands and the record. A demand that
// is outside the method is not written, and T_up is then not a number.
func (j Joint) Explain() calc.Check {
	var s calc.Sheet
	s.Append(j.Capacity.Lines())
	d := &j.Demand
	if j.Uplift != j.Uplift {
		s.Given("T_up", j.Uplift, "lb", "outside the method")
		return s.Check("joint in uplift", "T_up", "C_up")
	}
	s.Given("T_main", d.Main, "lb", "uplift by the main system, ASCE 7-16 28.3, calculation of the zone")
	own := "T_main"
	if !d.MainOnly {
		s.Given("T_part", d.Component, "lb", "uplift as a component, ASCE 7-16 30.3, calculation of the zone")
		own = "max(T_main, T_part)"
	}
	s.Given("T_cover", max(0, d.Cover), "lb", "added by the cover on the rafter tails")
	s.Step("T_up", "max(0, "+own+") + T_cover", j.Uplift, "lb", "ASCE 7-16 2.4.1, 0.6D + 0.6W")
	if j.Rating > 0 {
		s.Given("r", 25*calc.Lb, "lb", "step of ratings, common practice")
		s.Step("R_tie", "ceil(T_up / r - 1e-9 * min(1, T_up / r)) * r", j.Rating, "lb",
			"rating of a tie for the whole of T_up, rounded up: nothing of the old joint is counted")
	}
	return s.Check("joint in uplift", "T_up", "C_up")
}
