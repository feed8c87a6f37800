package survey

import (
	"patiocover/beam/lumber"
	"patiocover/connections/dowel"
)

// Evidence is what holds a joint, as far as anybody saw.
type Evidence uint8

// The classes of evidence, the weakest first.
const (
	Unknown  Evidence = iota // covered: nobody saw it
	NoneSeen                 // looked at and open: nothing there
	Toenails                 // nails driven aslant through the rafter
	Bolts                    // bolts through rafter and support
	Strap                    // strap or tie of steel
)

var evidenceNames = [...]string{
	Unknown: "not visible", NoneSeen: "nothing there", Toenails: "toe-nails", Bolts: "bolts", Strap: "strap",
}

// String names the evidence.
func (e Evidence) String() string { return evidenceNames[e] }

// A Condition is the state of what was seen.
type Condition uint8

// The conditions. A joint whose condition nobody wrote down cannot be OK.
const (
	NotRecorded Condition = iota // nobody wrote it down
	Sound                        // all there and tight
	Rust                         // section lost by more than a tenth, or heads gone
	Split                        // wood split at the fasteners
	Decay                        // wood soft or rotten
	Gap                          // backed out or open by more than 1/16 in
)

var conditionNames = [...]string{
	NotRecorded: "condition not recorded", Sound: "sound", Rust: "rusted", Split: "split", Decay: "decayed", Gap: "open by a gap",
}

// String names the condition.
func (c Condition) String() string { return conditionNames[c] }

// Damaged reports whether what is there counts for nothing.
func (c Condition) Damaged() bool { return c > Sound }

// A Zone is a part of the roof by its distance from edges and corners.
type Zone uint8

// The zones, the one that lifts most first.
const (
	Corner Zone = iota
	Edge
	Field
)

var zoneNames = [...]string{Corner: "corner", Edge: "edge", Field: "field"}

// String names the zone.
func (z Zone) String() string { return zoneNames[z] }

// A Seen is the record of one joint.
type Seen struct {
	Evidence  Evidence       // what holds it
	Condition Condition      // its state
	Gravity   lumber.Quoted  // G of the weaker member, ratio; 0 when no stamp was read
	Rating    float64        // of a strap, from its label, lb uplift for wind; 0 when there is none
	RatedFor  lumber.Quoted  // G that the rating is for, ratio; 0 when not said: that of Douglas Fir-Larch
	Needed    int            // nails that the rating asks for at each end
	Present   int            // nails counted at the weaker end
	Sheet     dowel.Sheet    // steel of a strap without a rating; without thickness when not measured
	Width     float64        // of that strap, in
	Fastener  dowel.Fastener // nail or bolt; without a diameter when it could not be read
	Count     int            // toe-nails or bolts counted; 0 when not counted
	Holding   float64        // thickness of the plate or beam below, in; 0 when not measured
	Toed      float64        // thickness of the rafter, in; 0 when not measured
	EndMargin float64        // of bolts, from the bolt to the end or edge that it pulls toward, in; 0 when not measured
}

// Gravities of wood without a stamp (NDS 2018 Table 12.3.3A, least of the softwoods in
// common framing), and the least that is known of toe-nails of the age of old roofs.
const (
	UnknownGravity = 0.36 // G, ratio
	UnknownPlate   = 1.5  // in, a single two-by plate
	oldestNail     = "8d" // size of box nail that is counted when the size cannot be read
	oldestCount    = 2    // nails that are then counted
	mostToenails   = 3    // toe-nails that count in one rafter
)

// gravity is G of the weaker member, the least of common softwoods without a stamp.
func (s *Seen) gravity() float64 {
	if s.Gravity.Value > 0 {
		return s.Gravity.Value
	}
	return UnknownGravity
}

// usualRating is G of the column that ratings of straps are quoted from when no species
// is named, ratio: Douglas Fir-Larch (NDS 2018 Table 12.3.3A).
const usualRating = 0.50

// ratedFor is G of the wood that the rating is for.
func (s *Seen) ratedFor() float64 {
	if s.RatedFor.Value > 0 {
		return s.RatedFor.Value
	}
	return usualRating
}

// holding is the thickness of the member below that counts.
func (s *Seen) holding() float64 {
	if s.Holding > 0 {
		return s.Holding
	}
	return UnknownPlate
}
