package survey

import (
	"patiocover/calc"
	"patiocover/connections"
)

// A Down is one link below a tied joint: beam to post, post to slab, or slab to ground.
// Tying the rafters alone moves the failure to the weakest of them.
type Down struct {
	Uplift   float64  // T of one joint above, lb
	Joints   float64  // joints that hang on the link, dimensionless
	Evidence Evidence // what was seen there
	Sound    bool     // seen to be sound
	Rating   float64  // uplift that it is rated or reckoned to hold, lb; 0 when not known
	Demand   float64  // lb, uplift on the link; the weight of beam and post is not taken off
	Verdict  Verdict  // OpenUp until it was seen and its strength is known
	Tie      float64  // rating of the tie that is needed, lb; 0 where none is
}

// NewDown follows the uplift of a number of equal joints down to one link.
func NewDown(uplift, joints float64, evidence Evidence, sound bool, rating float64) Down {
	d := Down{Uplift: uplift, Joints: joints, Evidence: evidence, Sound: sound, Rating: rating}
	d.Demand = uplift * joints
	switch {
	case d.Demand != d.Demand:
		d.Verdict = NotChecked
	case evidence == Unknown:
		d.Verdict = OpenUp
	case evidence == NoneSeen:
		d.Verdict = Over
	case !sound || !(rating > 0):
		d.Verdict = OpenUp
	case d.Demand <= rating:
		d.Verdict = OK
	default:
		d.Verdict = Over
	}
	if d.Verdict == Over && d.Demand <= 0 {
		d.Verdict = OK // looked at, nothing there, and nothing lifts
	}
	if d.Verdict == Over || d.Verdict == OpenUp {
		d.Tie = connections.Rating(d.Demand)
	}
	return d
}

// Ratio is the demand over the rating.
func (d Down) Ratio() float64 { return calc.Ratio(d.Demand, d.Rating) }

// Explain writes the link out.
func (d Down) Explain() calc.Check {
	var s calc.Sheet
	s.Given("T_up", d.Uplift, "lb", "uplift of one joint above")
	s.Given("n_j", d.Joints, "", "joints that hang on the link, survey")
	s.Step("T_link", "n_j * T_up", d.Demand, "lb", "carried down; no weight of beam or post is taken off")
	s.Given("R_link", d.Rating, "lb", "what the link is rated for: "+d.Evidence.String())
	return s.Check("link below the joint", "T_link", "R_link")
}
