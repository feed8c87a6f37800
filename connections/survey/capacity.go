package survey

import (
	"patiocover/beam/lumber"
	"patiocover/connections/dowel"
)

// A Basis is the rule by which a capacity was found, or why there is none.
type Basis uint8

// The bases. Those before NothingThere leave the joint open until it is seen again.
const (
	NotSeen      Basis = iota // nobody saw the joint
	NoCondition               // seen, but its state was not written down
	NoRating                  // strap without a rating, a gauge and a count of nails
	NoCount                   // rating without a count of nails
	NoSize                    // bolts without diameter, thicknesses or end distance
	LighterWood               // rating for denser wood than is known to be there
	NothingThere              // looked at: no fastener
	DamagedJoint              // rust, split, decay or gap: counts for nothing
	HalfNailed                // strap with fewer than four nails at an end
	RatedStrap                // rating of the label, by its share of nails
	PlainStrap                // strap without a rating, by nails and steel
	NailedAslant              // toe-nails by size and number
	OldestNails               // toe-nails whose size could not be read
	Bolted                    // bolts by size and number
)

var basisWords = [...]string{
	NotSeen:      "nobody has seen it",
	NoCondition:  "its condition was not written down",
	NoRating:     "a strap without a rating, and without gauge, width, nail and number of nails to reckon one",
	NoCount:      "the rating holds with every hole filled: the nails there, and those asked for, were not counted",
	NoSize:       "bolts without their diameter, number, both thicknesses and end distance",
	LighterWood:  "the rating is for denser wood than is there, or than a stamp shows: read the stamp, or the column of the lighter wood",
	NothingThere: "looked at: nothing holds it up",
	DamagedJoint: "damaged: what is there counts for nothing",
	HalfNailed:   "a strap with fewer than four nails at an end counts for nothing (Florida Building Code, Existing Building, 708.8.1)",
	RatedStrap:   "rating of the strap by its share of nails",
	PlainStrap:   "strap without a rating: the lesser of nails and steel",
	NailedAslant: "toe-nails in withdrawal",
	OldestNails:  "toe-nails whose size could not be read: the smallest of the time",
	Bolted:       "bolts across the grain",
}

// String says the basis in words.
func (b Basis) String() string { return basisWords[b] }

// Open reports whether the joint must be looked at before anyone can say.
func (b Basis) Open() bool { return b < NothingThere }

// leastNails is how many nails a strap needs at each end to count at all (Florida
// Building Code, Existing Building, 708.8.1 and the rules beside it).
const leastNails = 4

// A Capacity is the allowable uplift of one joint as it stands, for wind.
type Capacity struct {
	Seen    Seen          // the record
	Basis   Basis         // the rule
	Counted int           // fasteners that count
	Share   float64       // nails there over nails asked for, ratio, not above 1
	Toenail dowel.Toenail // of one toe-nail
	Factors dowel.Factors // on the value of one toe-nail
	Bolt    dowel.Shear   // of one bolt
	Margin  float64       // C_Delta of bolts, factor; 0 where there is too little wood
	Strap   dowel.Strap   // of a strap without a rating: the lesser of nails and steel
	Uplift  float64       // C, lb; 0 where nothing counts
}

// NewCapacity returns what a joint holds. Nothing is added up: a strap beside toe-nails
// holds as a strap alone.
//
// Toe-nails count at most three in a rafter; a size that could not be read is that of
// two 8d box nails, in wood without a stamp G 0.36; the plate that holds them is a single
// two-by unless it was measured. C_M does not apply to them (NDS 2018 Table 11.3.1). A
// rating is for wind already and takes no further factor; it counts in the share of the
// nails that are there, not at all with fewer than four, and not in wood lighter than it
// is for. Nails of straps and bolts
// take C_M of lumber that was green when it was fastened, which nobody knows of an old
// roof. What is damaged holds nothing.
func NewCapacity(s Seen) Capacity {
	c := Capacity{Seen: s, Basis: basisOf(&s), Share: 1}
	switch c.Basis {
	case RatedStrap:
		c.Share = min(1, float64(s.Present)/float64(s.Needed))
		c.Uplift = s.Rating * c.Share
	case PlainStrap:
		c.strap()
	case NailedAslant, OldestNails:
		c.toenails()
	case Bolted:
		c.bolts()
	}
	return c
}

// basisOf finds the rule for a record.
func basisOf(s *Seen) Basis {
	switch {
	case s.Evidence == NoneSeen:
		return NothingThere
	case s.Evidence == Unknown:
		return NotSeen
	case s.Condition.Damaged():
		return DamagedJoint
	case s.Condition == NotRecorded:
		return NoCondition
	case s.Evidence == Strap:
		return strapBasis(s)
	case s.Evidence == Bolts:
		if s.Fastener.Diameter > 0 && s.Count > 0 && s.Holding > 0 && s.Toed > 0 && s.EndMargin > 0 {
			return Bolted
		}
		return NoSize
	}
	if s.Fastener.Diameter > 0 && s.Count > 0 {
		return NailedAslant
	}
	return OldestNails
}

// strapBasis finds the rule for a sound strap.
func strapBasis(s *Seen) Basis {
	switch {
	case s.Present > 0 && s.Present < leastNails:
		return HalfNailed
	case s.Rating > 0 && s.Present > 0 && s.Needed > 0 && s.gravity() < s.ratedFor():
		return LighterWood
	case s.Rating > 0 && s.Present > 0 && s.Needed > 0:
		return RatedStrap
	case s.Rating > 0:
		return NoCount
	case s.Sheet.Thickness() > 0 && s.Width > 0 && s.Present > 0 && s.Fastener.Diameter > 0:
		return PlainStrap
	}
	return NoRating
}

// toenails works out nails driven aslant.
func (c *Capacity) toenails() {
	s := &c.Seen
	nail, n := s.Fastener, s.Count
	if c.Basis == OldestNails {
		nail, _ = dowel.FindNail("box", oldestNail)
		n = oldestCount
		if s.Count > 0 {
			n = min(n, s.Count)
		}
	}
	c.Counted = min(n, mostToenails)
	wood := dowel.Member{Gravity: s.gravity(), Thickness: s.holding()}
	c.Toenail = dowel.NewToenail(nail, wood, dowel.Member{Gravity: s.gravity()})
	c.Factors = dowel.WithdrawalFactors(dowel.Nail, dowel.Conditions{Duration: lumber.TenMinutes, Toenail: true})
	c.Uplift = float64(c.Counted) * c.Toenail.Uplift * c.Factors.Product
}

// green are the conditions of fasteners in an old roof that load wood sideways.
var green = dowel.Conditions{Duration: lumber.TenMinutes, Fabricated: dowel.Wet}

// strap works out a strap without a rating.
func (c *Capacity) strap() {
	s := &c.Seen
	c.Counted = s.Present
	nail := dowel.NewLateral(s.Fastener, dowel.Joint{
		Side: dowel.Member{Material: dowel.Steel, Thickness: s.Sheet.Thickness()},
		Main: dowel.Member{Gravity: s.gravity(), Thickness: s.holding()},
	})
	nails := dowel.NewShear(0, nail, dowel.LateralFactors(dowel.Nail, green), c.Counted)
	c.Strap = dowel.NewStrap(nails, s.Sheet, s.Width, 1)
	c.Uplift = c.Strap.Capacity
}

// bolts works out bolts, across the grain in both members. The end or edge that one pulls
// toward counts as the end of a member in tension, the largest distance of all (NDS 2018
// Table 12.5.1A).
func (c *Capacity) bolts() {
	s := &c.Seen
	bolt := dowel.NewLateral(s.Fastener, dowel.Joint{
		Side: dowel.Member{Gravity: s.gravity(), Thickness: s.Toed, Angle: 90},
		Main: dowel.Member{Gravity: s.gravity(), Thickness: s.Holding, Angle: 90},
	})
	end := dowel.NewNeeds(s.Fastener, min(s.Toed, s.Holding), dowel.TowardEnd).End
	if s.EndMargin >= end.Least {
		c.Margin = min(1, s.EndMargin/end.Full)
	}
	conditions := green
	conditions.Rows = true // how they stand was not recorded
	c.Counted = 1          // how they stand is not known, nor C_g, so that one bolt counts
	c.Bolt = dowel.NewShear(0, bolt, dowel.LateralFactors(dowel.Bolt, conditions).With(1, c.Margin), c.Counted)
	c.Uplift = c.Bolt.Capacity
}
