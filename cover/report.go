package cover

import "patiocover/calc"

// A Report is the answer for one cover. The page, the command line and the
// programming interface print it and compute nothing of their own.
type Report struct {
	Notice      string         `json:"notice"`                   // who must approve this
	Stamp       Stamp          `json:"stamp"`                    // what produced it, from which input
	Verdict     Verdict        `json:"verdict"`                  // the worst of everything below
	Summary     []Finding      `json:"summary"`                  // the verdict in sentences, worst first
	Input       Input          `json:"input"`                    // what was said, as given
	Criteria    []Criterion    `json:"criteria"`                 // the design criteria with their sources
	Assumed     []Assumption   `json:"assumed"`                  // what was not said, and what was taken instead
	Method      string         `json:"method"`                   // design method that the members are chosen by, ASD or LRFD
	Geometry    Geometry       `json:"geometry"`                 // the cover as it is drawn
	Loads       LoadReport     `json:"loads"`                    // what acts
	Members     []Member       `json:"members"`                  // every member, chosen or given
	Deck        DeckReport     `json:"deck"`                     // what lies on the rafters, and what would serve
	Reactions   []Reaction     `json:"reactions"`                // what the members hand on, by support
	Links       []Link         `json:"links"`                    // every connection of the load path
	Paths       []LoadPath     `json:"paths"`                    // the links of each line of posts, and the weakest
	Foundations []FoundationAt `json:"foundations"`              // what each post asks of the ground
	Footings    *FootingChoice `json:"footing_choice,omitempty"` // one size or many; absent on a slab and where sizes were given
	Concrete    ConcreteTotal  `json:"concrete"`                 // of all footings
	Lateral     []LateralWay   `json:"lateral"`                  // what holds the cover sideways
	Headroom    Headroom       `json:"headroom"`                 // from the high edge down to the lowest member
	Existing    []ExistingTie  `json:"existing_roof"`            // what the wind asks of the ties of the house roof
	Survey      *Survey        `json:"survey"`                   // the joints of the house roof, judged; nil where nothing is said of it
	Drainage    Drainage       `json:"drainage"`                 // covering against slope, and the water it sheds
	TakeOff     TakeOff        `json:"take_off"`                 // what to buy
	Margins     []Margin       `json:"margins"`                  // how far the design may go; null where they were not asked for
	Smaller     []Smaller      `json:"next_smaller,omitempty"`   // the sizes next below; absent where they were not asked for
	Closure     []Closure      `json:"closure"`                  // applied load against reactions, by a second route
	NotChecked  []Skip         `json:"not_checked"`              // what this report does not answer, and why
}

// A Stamp identifies a report.
type Stamp struct {
	Program   string `json:"program"`    // name and version of the program
	Schema    int    `json:"schema"`     // format version of the input
	InputHash string `json:"input_hash"` // SHA-256 of the input in its canonical form
	Standards string `json:"standards"`  // editions followed
}

// A Finding is one sentence of the summary.
type Finding struct {
	Verdict Verdict `json:"verdict"`        // what it says
	Text    string  `json:"text"`           // the sentence
	Mark    string  `json:"mark,omitempty"` // mark of the part it speaks of, when there is one
}

// A Criterion is one design value of the site with its source.
type Criterion struct {
	Path   string `json:"path"`           // field of the input
	Label  string `json:"label"`          // what it is
	Value  string `json:"value"`          // the value in words
	Unit   string `json:"unit,omitempty"` // its unit
	Source string `json:"source"`         // the user's own text, or the rule that the default rests on
	Given  bool   `json:"given"`          // said by the user
}

// An Assumption is a value that the user left open.
type Assumption struct {
	Path   string      `json:"path"`           // field of the input: give it to replace the assumption
	Label  string      `json:"label"`          // what it is
	Value  string      `json:"value"`          // what was taken
	Unit   string      `json:"unit,omitempty"` // its unit
	Why    string      `json:"why"`            // why that value
	Source string      `json:"source"`         // the rule behind it
	Status calc.Status `json:"status"`         // how the rule came into the project
}

// A Geometry is the cover as it is drawn: x along the house from the left roof
// edge, y out from the wall, z up from the slab. Feet unless the name says inches.
type Geometry struct {
	Attachment   string     `json:"attachment"`       // ledger, rafter_tails or freestanding
	Width        float64    `json:"width_ft"`         // ft along the house
	Projection   float64    `json:"projection_ft"`    // ft on plan
	Overhang     float64    `json:"overhang_ft"`      // ft past the outer beam line
	Slope        float64    `json:"slope_in_per_ft"`  // in of fall per ft of plan
	Angle        float64    `json:"angle_deg"`        // degrees from the horizontal
	HighEdge     float64    `json:"high_edge_ft"`     // ft, top of rafters at y = 0
	LowEdge      float64    `json:"low_edge_ft"`      // ft, top of rafters at y = projection
	Rafters      []float64  `json:"rafters_ft"`       // x of every rafter
	RafterSize   string     `json:"rafter_size"`      // nominal size of the rafters
	RafterDepth  float64    `json:"rafter_depth_in"`  // in, dressed
	RafterWidth  float64    `json:"rafter_width_in"`  // in, dressed
	RafterLength float64    `json:"rafter_length_ft"` // ft along the slope
	Lines        []BeamLine `json:"beam_lines"`       // beam lines outward from the wall
	KneeDrop     float64    `json:"knee_drop_ft"`     // ft, underside of beam down to the joint of a knee brace on its post; 0 for none
	KneeReach    float64    `json:"knee_reach_ft"`    // ft, middle of the post to the brace at the level of that underside; 0 for none
	KneeDepth    float64    `json:"knee_depth_in"`    // in, dressed, of the braces; 0 for none
}

// A BeamLine is one line of posts with the beam on it.
type BeamLine struct {
	Mark      string    `json:"mark"`          // BM1, BM2 outward from the wall
	Y         float64   `json:"y_ft"`          // ft from the wall
	Size      string    `json:"size"`          // nominal size of the beam
	Depth     float64   `json:"depth_in"`      // in, dressed
	Breadth   float64   `json:"breadth_in"`    // in, dressed
	Top       float64   `json:"top_ft"`        // ft, top of the beam above the slab
	Bottom    float64   `json:"bottom_ft"`     // ft, underside of the beam above the slab
	Flush     bool      `json:"flush"`         // rafters hang in its face
	Posts     []float64 `json:"posts_ft"`      // x of every post
	PostMarks []string  `json:"post_marks"`    // P1, P2 ... in the same order
	PostSize  string    `json:"post_size"`     // nominal size of the posts
	PostWidth float64   `json:"post_width_in"` // in, dressed
	Splices   []float64 `json:"splices_ft"`    // x of the posts over which the beam is spliced
}

// A Member is one kind of member, chosen or given, with every check of it.
type Member struct {
	Mark     string        `json:"mark"`               // R1, BM1, P
	Name     string        `json:"name"`               // rafter, beam, post
	Count    int           `json:"count"`              // how many there are
	Size     string        `json:"size"`               // nominal
	Dressed  string        `json:"dressed"`            // dressed size in words
	Product  []string      `json:"product,omitempty"`  // what the wood is, where it is no dressed piece of the tables
	Species  string        `json:"species"`            // species group of the tables
	Grade    string        `json:"grade"`              // grade of the tables
	Length   float64       `json:"length_ft"`          // ft, cut length of the longest
	Given    bool          `json:"given"`              // the size was given, not chosen
	Verdict  Verdict       `json:"verdict"`            // worst of its checks
	Ratio    Ratio         `json:"ratio"`              // largest ratio
	Governs  string        `json:"governs"`            // name of the check with the largest ratio
	Checks   []MemberCheck `json:"checks"`             // governing one of each kind
	Rejected []Rejected    `json:"rejected,omitempty"` // smaller sizes that were tried, and why not
	Notes    []string      `json:"notes,omitempty"`    // bracing and details the checks rest on

	brief bool // graded and not written up
}

// A MemberCheck is one check of a member at its worst combination.
type MemberCheck struct {
	Name        string     `json:"name"`        // bending, shear, bearing ...
	Combination string     `json:"combination"` // the governing combination
	Where       string     `json:"where"`       // span, support, overhang
	Ratio       Ratio      `json:"ratio"`       // demand over capacity
	Verdict     Verdict    `json:"verdict"`     // OK up to a ratio of 1
	Recalled    bool       `json:"recalled"`    // rests on a value not yet confirmed against its printed source
	Check       calc.Check `json:"calculation"` // the written calculation

	Beside *BesideCheck `json:"beside,omitempty"` // the same by the other design method; nil where both are alike
}

// A BesideCheck is a check by the design method that the member was not chosen by.
type BesideCheck struct {
	Method      string     `json:"method"`      // ASD or LRFD
	Combination string     `json:"combination"` // the governing combination of that method
	Where       string     `json:"where"`       // span, support, overhang
	Ratio       Ratio      `json:"ratio"`       // demand over capacity
	Verdict     Verdict    `json:"verdict"`     // OK up to a ratio of 1; it does not count in the report's verdict
	Recalled    bool       `json:"recalled"`    // rests on a value not yet confirmed against its printed source
	Check       calc.Check `json:"calculation"` // the written calculation
}

// A Rejected size was tried before the chosen one.
type Rejected struct {
	Size  string `json:"size"`  // nominal size
	Check string `json:"check"` // first check that is over
	Ratio Ratio  `json:"ratio"` // its ratio
}

// A Reaction is what one support receives.
type Reaction struct {
	Support string      `json:"support"` // ledger, BM1 (one rafter), P1 ...
	Of      string      `json:"of"`      // member that hands it on
	X       float64     `json:"x_ft"`    // ft along the house; of a typical rafter, the middle
	Y       float64     `json:"y_ft"`    // ft from the wall
	ByCase  []CaseForce `json:"by_case"` // unfactored, lb, + down
	Down    Force       `json:"down"`    // largest downward, ASD
	Up      Force       `json:"up"`      // largest upward, ASD; 0 when it never lifts
}

// A CaseForce is the vertical force of one load case.
type CaseForce struct {
	Case  string  `json:"case"` // the load case
	Force float64 `json:"lb"`   // lb, + down
}

// A Force is a demand with the combination that brings it.
type Force struct {
	Value       float64 `json:"lb"`          // lb, not negative
	Combination string  `json:"combination"` // the combination that brings it
}

// What the forces of a link are of: one joint, one post, or a unit of length or area.
const (
	PerJoint      = "each"
	PerPost       = "each post"
	PerFoot       = "per foot of ledger"
	PerSquareFoot = "per square foot of deck"
)

// A Link is one connection of the load path.
type Link struct {
	Mark        string     `json:"mark"`                      // D1, T1, H1, L1, C1, B1, A1, F1: keyed to plan and section
	Name        string     `json:"name"`                      // such as rafter to beam
	From        string     `json:"from"`                      // the part above
	To          string     `json:"to"`                        // the part below
	Count       int        `json:"count"`                     // how many joints or posts, feet of ledger, square feet of deck
	Per         string     `json:"per"`                       // what the forces and the rating are of: one of the words above
	Demands     []Demand   `json:"demands"`                   // by combination
	Down        Force      `json:"down"`                      // governing
	Up          Force      `json:"up"`                        // governing upward
	Along       Force      `json:"along"`                     // sideways along the house
	Out         Force      `json:"out"`                       // sideways out from the house
	Rating      float64    `json:"required_uplift_rating_lb"` // lb, rounded up to 25; 0 when it never lifts, or hardware has no rating
	Hardware    string     `json:"hardware"`                  // what is asked for, in generic words
	Stage       string     `json:"stage"`                     // when an inspector can see it
	Verdict     Verdict    `json:"verdict"`                   // OK only when the capacity is shown
	Reason      string     `json:"reason"`                    // why, when it is not OK
	Calculation calc.Check `json:"calculation"`               // from combination to rating
	Connector   Connector  `json:"connector"`                 // what makes the link, proposed or given, with its checks

	aside string // what the reason says beside the verdict
	joint joint  // as it was collected
}

// A Demand is what one combination asks of a link.
type Demand struct {
	Combination string  `json:"combination"`         // combination and placing of the loads
	Vertical    float64 `json:"vertical_lb"`         // lb, + down
	Single      float64 `json:"single_lb,omitempty"` // lb, + down, beside it at any one place, of a link counted by the foot
	Along       float64 `json:"along_lb"`            // lb, along the house
	Out         float64 `json:"out_lb"`              // lb, out from the house
}

// A LateralWay is one direction of sideways load.
type LateralWay struct {
	Direction string        `json:"direction"` // along the house, out from the house
	System    string        `json:"system"`    // what the user says holds it
	Demand    float64       `json:"demand_lb"` // lb, ASD
	Verdict   Verdict       `json:"verdict"`   // OVER when nothing holds it
	Reason    string        `json:"reason"`    // why, in words
	Path      []LateralStep `json:"path"`      // from the roof to the ground, part by part
	Lines     []calc.Line   `json:"lines"`     // the written calculation
}

// A Headroom is the chain of heights down to the lowest member.
type Headroom struct {
	Clear    float64    `json:"clear_in"`    // in, slab to the lowest member
	Required float64    `json:"required_in"` // in
	Verdict  Verdict    `json:"verdict"`     // OK when the clear height suffices
	Check    calc.Check `json:"calculation"` // the chain of heights
}

// An ExistingTie is what the wind asks of one tie of the house roof. Whether the joint
// that is there holds it is not judged.
type ExistingTie struct {
	Where  string      `json:"where"`              // zone of the roof
	Basis  string      `json:"basis"`              // whose coefficients
	Own    float64     `json:"own_uplift_lb"`      // lb, net uplift of the house roof itself, ASD
	Cover  float64     `json:"cover_uplift_lb"`    // lb, added by a cover that hangs from the rafter tails
	Uplift float64     `json:"uplift_lb"`          // lb, both
	Rating float64     `json:"required_rating_lb"` // lb, rounded up to 25
	Lines  []calc.Line `json:"lines"`              // the written calculation
}

// A Drainage is how the roof sheds water.
type Drainage struct {
	Covering string      `json:"covering"`      // what covers the roof, in the words of the code
	Verdict  Verdict     `json:"verdict"`       // of the covering at this slope
	Reason   string      `json:"reason"`        // why, in words
	Check    *calc.Check `json:"calculation"`   // the least slope; nil when the covering is not said
	Reach    float64     `json:"rain_reach_ft"` // ft that driven rain falls in; 0 when no wind is given
	Dry      float64     `json:"dry_floor_ft"`  // ft of floor that stay dry at the wall; 0 when no wind is given
	Lines    []calc.Line `json:"rain_lines"`    // the written reach of the rain
	Flow     float64     `json:"flow_gpm"`      // gal/min (gpm) at the low edge; 0 when no rainfall is given
}

// A Closure compares the applied load with the reactions for one load case.
type Closure struct {
	Case      string  `json:"case"`         // the load case
	Applied   float64 `json:"applied_lb"`   // lb, from areas and pressures
	Reactions float64 `json:"reactions_lb"` // lb, from the statics
	Gap       float64 `json:"gap"`          // relative difference
}

// A Skip is something that the report does not answer. What no report of this program
// answers is standing: it bounds the answer. Anything else is a check of this cover that was
// left out, beside which the report as a whole is not OK.
type Skip struct {
	What     string `json:"what"`               // the subject
	Why      string `json:"why"`                // the reason
	Standing bool   `json:"standing,omitempty"` // no report answers it
}
