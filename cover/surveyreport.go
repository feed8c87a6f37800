package cover

import "patiocover/calc"

// A Survey judges the joints of the existing roof and what follows from them. It is nil
// in a report whose input says nothing of that roof.
type Survey struct {
	Verdict    Verdict         `json:"verdict"`              // the worst of all below
	Roof       SurveyRoof      `json:"roof"`                 // the roof as it was reckoned with
	Layers     []SurveyLayer   `json:"layers"`               // what counts of what lies on it
	LayerLines []calc.Line     `json:"layer_calculation"`    // the sums of the layers
	Pulls      []SurveyPull    `json:"demands"`              // what the wind asks, by place and zone
	Joints     []SurveyJoint   `json:"joints"`               // the verdict of every joint and run
	Opening    []SurveyOpening `json:"to_open"`              // the least set of joints to open
	Ranking    []SurveyRank    `json:"ties"`                 // the ties that are needed, the most urgent first
	TieCost    *float64        `json:"ties_dollars"`         // dollars, all of them; nil without a price
	Below      []SurveyBelow   `json:"below"`                // the path below the joints
	Changes    []SurveyChange  `json:"changes"`              // the demands side by side, now and after changes
	Tails      *SurveyTails    `json:"rafter_tails"`         // of a cover that hangs on them; nil otherwise
	Checklist  []CheckItem     `json:"openings_under_cover"` // light, air, escape, openness
	Visible    []VisibleItem   `json:"keep_visible"`         // what must stay open until the inspector has seen it
	Notes      []string        `json:"notes"`                // what the verdicts rest on
}

// A SurveyRoof is the existing roof as it was reckoned with and is drawn.
type SurveyRoof struct {
	Known     bool        `json:"known"`               // spans, spacing, height and slope were given
	System    string      `json:"system"`              // rafters, plank_and_beam, or empty
	Length    float64     `json:"wall_length_ft"`      // ft along the wall; 0 when not given
	Span      float64     `json:"span_ft"`             // ft, wall to wall
	Overhang  float64     `json:"overhang_ft"`         // ft past each wall
	Lines     []float64   `json:"interior_lines_ft"`   // ft from the near wall
	Spacing   float64     `json:"spacing_in"`          // in
	Height    float64     `json:"height_ft"`           // ft, mean
	Angle     float64     `json:"angle_deg"`           // degrees
	Enclosure string      `json:"enclosure"`           // class
	Zoned     bool        `json:"zones_known"`         // the widths below are those of the figure
	Edge      float64     `json:"edge_ft"`             // ft, strip along the edges
	Corner    float64     `json:"corner_ft"`           // ft, length of the corner along the edges
	Depth     float64     `json:"corner_depth_ft"`     // ft, depth of the corner from the edges
	End       float64     `json:"end_zone_ft"`         // ft, end zone of the main system, twice a
	Zones     []calc.Line `json:"zone_calculation"`    // the widths
	Openings  []calc.Line `json:"opening_calculation"` // the class of enclosure, where openings were given
}

// A SurveyLayer is one layer of the existing roof and what it counts.
type SurveyLayer struct {
	Name   string      `json:"name"`   // name or the user's own words
	Weight float64     `json:"psf"`    // psf of the slope
	State  string      `json:"state"`  // present, removed, to_remove, planned
	Counts bool        `json:"counts"` // resists uplift in every stage
	Why    string      `json:"why"`    // why it counts or not
	Source string      `json:"source"` // of the weight
	Status calc.Status `json:"status"` // how the weight came into the project
}

// A SurveyPull is what the wind asks of a joint of one place and zone.
type SurveyPull struct {
	Place     string      `json:"place"`                 // eave, far_wall, interior, ridge
	Zone      string      `json:"zone"`                  // corner, edge, field
	Main      *float64    `json:"main_system_lb"`        // lb; nil outside the method
	Component *float64    `json:"component_lb"`          // lb; nil outside the method
	Cover     float64     `json:"cover_lb"`              // lb, added by the cover
	Uplift    *float64    `json:"uplift_lb"`             // lb, that counts; nil outside the method
	Rating    float64     `json:"required_rating_lb"`    // lb, of a tie, rounded up to 25
	Lines     []calc.Line `json:"main_calculation"`      // of the main system
	PartLines []calc.Line `json:"component_calculation"` // as a component
	CoverLine []calc.Line `json:"cover_calculation"`     // of what the cover adds
}

// A SurveyJoint is one joint, or a run of equal ones.
type SurveyJoint struct {
	Mark         string      `json:"mark"`               // the user's mark
	Where        string      `json:"where"`              // wall, run, place and zone in words
	Wall         string      `json:"wall"`               // as said
	Place        string      `json:"place"`              // eave, far_wall, interior, ridge
	Zone         string      `json:"zone"`               // corner, edge, field
	ZoneWhy      string      `json:"zone_why"`           // how the zone was found
	End          *float64    `json:"end_ft"`             // ft to the nearest gable end, when given
	Count        int         `json:"count"`              // joints in the run
	Evidence     string      `json:"evidence"`           // what was seen, in words
	Basis        string      `json:"basis"`              // the rule of the capacity, or why there is none
	Uplift       *float64    `json:"uplift_lb"`          // lb; nil outside the method
	Capacity     float64     `json:"capacity_lb"`        // lb, rounded down to whole pounds
	Ratio        Ratio       `json:"ratio"`              // demand over capacity
	Verdict      Verdict     `json:"verdict"`            // of each joint of the run
	Rating       float64     `json:"required_rating_lb"` // lb; 0 where no tie is needed
	Reason       string      `json:"reason"`             // why, in words
	Prescriptive string      `json:"prescriptive"`       // what the code's own nailing rule says; never the verdict
	Photo        string      `json:"photo"`              // name of the photo
	Note         string      `json:"note"`               // the user's words
	Recalled     bool        `json:"recalled"`           // rests on a value not yet confirmed against its printed source
	Check        *calc.Check `json:"calculation"`        // nil outside the method
}

// A SurveyOpening is what must be opened in one zone and kind of place.
type SurveyOpening struct {
	Wall   string      `json:"wall"`        // as said
	Place  string      `json:"place"`       // eave, far_wall, interior, ridge
	Zone   string      `json:"zone"`        // corner, edge, field
	Total  int         `json:"total"`       // joints
	Seen   int         `json:"seen"`        // of which were seen
	Least  int         `json:"least"`       // that must be seen
	More   int         `json:"to_open"`     // still to be opened
	Marks  []string    `json:"marks"`       // runs to choose them from
	Enough bool        `json:"enough"`      // the unseen are judged by the worst that was seen
	Lines  []calc.Line `json:"calculation"` // the numbers
}

// A SurveyRank is one place where ties are needed.
type SurveyRank struct {
	Mark   string   `json:"mark"`               // of the joint or run
	Where  string   `json:"where"`              // in words
	Ratio  Ratio    `json:"ratio"`              // demand over capacity; null where nothing holds
	Rating float64  `json:"required_rating_lb"` // lb
	Count  int      `json:"count"`              // ties
	Cost   *float64 `json:"dollars"`            // dollars; nil without a price
}

// A SurveyBelow is one link below the joints of a line.
type SurveyBelow struct {
	Line     string      `json:"line"`               // its name
	Link     string      `json:"link"`               // beam to post, post to slab, slab to ground
	Evidence string      `json:"evidence"`           // what was seen
	Uplift   *float64    `json:"uplift_lb"`          // lb on the link; nil outside the method
	Capacity float64     `json:"capacity_lb"`        // lb; 0 when not known
	Ratio    Ratio       `json:"ratio"`              // demand over capacity
	Verdict  Verdict     `json:"verdict"`            // of the link
	Rating   float64     `json:"required_rating_lb"` // lb; 0 where no tie is needed
	Reason   string      `json:"reason"`             // why, in words
	Check    *calc.Check `json:"calculation"`        // nil outside the method
}

// A SurveyChange is one state of the roof beside the others.
type SurveyChange struct {
	Name   string       `json:"name"`       // what is changed
	Dead   float64      `json:"dead_psf"`   // psf of plan that resists
	Class  string       `json:"enclosure"`  // class of enclosure
	Cover  bool         `json:"with_cover"` // the new cover pulls at the tails
	Only   bool         `json:"comparison"` // for comparison: it must not be relied on
	Pulls  []ChangePull `json:"demands"`    // in the order of the demands of the survey
	Reason string       `json:"reason"`     // what it means, in words
}

// A ChangePull is the uplift of one place and zone in a state.
type ChangePull struct {
	Place  string   `json:"place"`        // eave, far_wall, interior, ridge
	Zone   string   `json:"zone"`         // corner, edge, field
	Uplift *float64 `json:"uplift_lb"`    // lb that counts; nil outside the method
	More   *float64 `json:"more_than_lb"` // lb more than as the roof stands without the cover; nil outside the method
}

// SurveyTails are the rafter tails that the cover hangs on.
type SurveyTails struct {
	Verdict      Verdict       `json:"verdict"`      // of the tails
	Reason       string        `json:"reason"`       // why, in words
	Checks       []MemberCheck `json:"checks"`       // bending, shear and seat cut by combination
	Statics      []Derivation  `json:"statics"`      // heel, next support, moment
	Heel         Force         `json:"heel_uplift"`  // lb that the cover adds at the heel, upward
	HeelDown     Force         `json:"heel_down"`    // lb that the cover adds at the heel, downward
	Inner        Force         `json:"inner_lift"`   // lb that the cover lifts the next support with
	Rules        []TailRule    `json:"rules"`        // 5 percent, 10 percent and the notch rule of the code
	Alternatives []Alternative `json:"alternatives"` // other ways to hold the cover, sized, where the tails are rejected
}

// A TailRule is a rule for existing members beside the check.
type TailRule struct {
	Name    string      `json:"name"`        // the rule
	Verdict Verdict     `json:"verdict"`     // OK: the part may stay as it is by this rule alone
	Reason  string      `json:"reason"`      // in words
	Source  string      `json:"source"`      // where it stands
	Check   *calc.Check `json:"calculation"` // nil when a number is missing
}

// An Alternative is another way to hold the cover at the house.
type Alternative struct {
	Name     string   `json:"name"`        // what is changed
	Possible bool     `json:"possible"`    // the changed input can be sized
	Verdict  Verdict  `json:"verdict"`     // of the members of the changed cover and its headroom
	Headroom *float64 `json:"headroom_in"` // in, clear below the lowest member
	Required *float64 `json:"required_in"` // in
	Rafters  string   `json:"rafters"`     // chosen
	Beams    string   `json:"beams"`       // chosen
	Posts    int      `json:"posts"`       // how many
	Reason   string   `json:"reason"`      // in words
}

// A CheckItem is one rule about the rooms behind the cover.
type CheckItem struct {
	Item   string `json:"item"`   // the subject
	Answer string `json:"answer"` // passes, fails, ask
	Reason string `json:"reason"` // in words
	Source string `json:"source"` // the rule
}

// The answers of a [CheckItem].
const (
	AnswerPasses = "passes"
	AnswerFails  = "fails"
	AnswerAsk    = "ask"
)

// A VisibleItem is what must stay open until an inspector has seen it.
type VisibleItem struct {
	What  string `json:"what"`  // joint or part
	Stage string `json:"stage"` // until when
	Why   string `json:"why"`   // what there is to see
}
