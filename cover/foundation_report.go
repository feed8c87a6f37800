package cover

import "patiocover/calc"

// A FoundationAt is what one post asks of the ground, and what it stands on.
type FoundationAt struct {
	Post     string     `json:"post"`             // P1 ...
	X        float64    `json:"x_ft"`             // ft along the house
	Y        float64    `json:"y_ft"`             // ft from the wall
	Kind     string     `json:"kind"`             // slab, footing, pier, embedded
	Gravity  Force      `json:"gravity"`          // dead with live or snow
	Every    Force      `json:"every_load"`       // largest of all combinations
	Uplift   Force      `json:"uplift"`           // net, ASD
	Slab     Verdict    `json:"slab_rule"`        // the 750 lb rule for this post
	SlabWhy  string     `json:"slab_reason"`      // why, in words
	SlabCalc calc.Check `json:"slab_calculation"` // the written slab rule

	Size     string        `json:"size"`               // in words; empty on a slab
	Shape    string        `json:"shape"`              // square or round; empty on a slab
	Width    float64       `json:"width_in"`           // in, side or diameter; 0 on a slab
	Depth    float64       `json:"depth_in"`           // in, bottom below grade; 0 on a slab
	Pad      float64       `json:"pad_thickness_in"`   // in, thickness of the concrete at its bottom; 0 on a slab
	Neck     float64       `json:"neck_in"`            // in, side or diameter of the neck; 0 without one
	Own      string        `json:"own_size,omitempty"` // the least size for this post alone, where all have one size
	Given    bool          `json:"given"`              // width and depth were given, not chosen
	Concrete float64       `json:"concrete_ft3"`       // ft³ of concrete; 0 on a slab
	Checks   []MemberCheck `json:"checks,omitempty"`   // every check of the footing, or of the slab's weight
	Ratio    Ratio         `json:"ratio"`              // largest ratio of them
	Governs  string        `json:"governs"`            // the check with that ratio
	Verdict  Verdict       `json:"verdict"`            // of the foundation without its anchor
	Reason   string        `json:"reason"`             // why, in words
	Instead  string        `json:"instead,omitempty"`  // a footing that would do where the slab does not

	Pull           float64       `json:"anchor_pull_lb"`          // lb up on the anchor, strength level
	Push           float64       `json:"anchor_push_lb"`          // lb sideways on the anchor, strength level
	AnchorDiameter float64       `json:"anchor_diameter_in"`      // in, of the anchor; 0 where there is none
	AnchorDepth    float64       `json:"anchor_embedment_in"`     // in, of the anchor; 0 where there is none
	AnchorChosen   bool          `json:"anchor_chosen"`           // it was chosen, not given
	Anchor         []MemberCheck `json:"anchor_checks,omitempty"` // of the anchor, where one was given or chosen
	AnchorVerdict  Verdict       `json:"anchor"`                  // of the anchor
	AnchorReason   string        `json:"anchor_reason"`           // why, in words
}

// A ConcreteTotal is the concrete of all footings.
type ConcreteTotal struct {
	Count int     `json:"count"`      // footings
	Feet  float64 `json:"volume_ft3"` // ft³
	Yards float64 `json:"volume_yd3"` // cubic yards, a factor of 27 less than ft³
}

// cubicYard is one cubic yard in ft³.
const cubicYard = 27

// concreteOf sums the concrete of the footings.
func concreteOf(all []FoundationAt) ConcreteTotal {
	var t ConcreteTotal
	for _, f := range all {
		if f.Concrete > 0 {
			t.pour(f.Concrete)
		}
	}
	return t
}

// holdLinks puts what the foundations and their anchors hold into the lowest links.
func (m *model) holdLinks(links []Link, all []FoundationAt) {
	perLine := len(m.plan.posts)
	for i := range links {
		l := &links[i]
		for line := range m.plan.lines {
			posts := all[line*perLine : (line+1)*perLine]
			switch l.Mark {
			case mark("F", line):
				f := worstGround(posts)
				l.Verdict, l.Reason = f.Verdict, f.Post+": "+f.Reason+l.aside
			case mark("A", line):
				f := worstAnchor(posts)
				l.Verdict, l.Reason = f.AnchorVerdict, f.Post+": "+f.AnchorReason+l.aside
			}
		}
	}
}

// worstGround is the post with the worst foundation, the largest ratio of equals.
func worstGround(all []FoundationAt) *FoundationAt {
	worst := &all[0]
	for i := range all {
		f := &all[i]
		if rank[f.Verdict] > rank[worst.Verdict] || f.Verdict == worst.Verdict && f.Ratio > worst.Ratio {
			worst = f
		}
	}
	return worst
}

// worstAnchor is the post with the worst anchor, the largest pull of equals.
func worstAnchor(all []FoundationAt) *FoundationAt {
	worst := &all[0]
	for i := range all {
		f := &all[i]
		if rank[f.AnchorVerdict] > rank[worst.AnchorVerdict] || f.AnchorVerdict == worst.AnchorVerdict && f.Pull > worst.Pull {
			worst = f
		}
	}
	return worst
}
