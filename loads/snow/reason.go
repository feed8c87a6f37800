package snow

// A Reason is why a load is what it is, or why there is none.
type Reason uint8

// The reasons. From [Found] to [TooFar] the load is known, if only to be nothing; the
// others are refusals, and every load that stands with one is not a number.
const (
	NotComputed   Reason = iota // zero value: nothing was computed
	Found                       // the load was computed
	NoSnow                      // no snow falls there
	TooLow                      // the step hardly stands out of the balanced snow
	TooFar                      // the cover stands too far from the house
	DoesNotSlide                // the roof above is not steep enough for snow to slide
	EditionsMixed               // the snow is of one edition, the rules of another
	NoLoad                      // neither ground snow nor roof snow was given
	NoExposure                  // terrain or sheltering is unknown
	NoThermal                   // the edition has no single value for the thermal condition
	NoCategory                  // the risk category is unknown
	NoGround                    // roof snow alone was given: drift needs the ground snow
	NoWinterWind                // ASCE 7-22 drift needs the winter wind parameter
	NoGeometry                  // a length or angle is missing or is not a number
)

var reasons = [...]string{
	NotComputed:   "not computed",
	Found:         "computed",
	NoSnow:        "no snow falls at the site",
	TooLow:        "the step above the balanced snow is less than a fifth of its depth",
	TooFar:        "the cover stands too far from the house",
	DoesNotSlide:  "the roof above is not steep enough for snow to slide",
	EditionsMixed: "the snow load and the rules are of different editions of ASCE 7",
	NoLoad:        "neither ground snow nor roof snow is given",
	NoExposure:    "the terrain or the sheltering of the roof is unknown",
	NoThermal:     "the thermal factor of this condition is not a single value of the edition",
	NoCategory:    "the risk category is unknown",
	NoGround:      "the drift needs the ground snow load",
	NoWinterWind:  "the drift of ASCE 7-22 needs the winter wind parameter",
	NoGeometry:    "a length or angle is missing",
}

// String words the reason.
func (r Reason) String() string {
	if int(r) < len(reasons) {
		return reasons[r]
	}
	return reasons[NotComputed]
}

// Known reports whether the load is known, be it zero.
func (r Reason) Known() bool { return Found <= r && r <= DoesNotSlide }
