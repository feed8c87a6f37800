package loads

import "patiocover/calc"

// The limits of the slab rule of the patio cover appendix (IRC 2018 Appendix H, read
// in a state's code and in a web article; IBC 2018 Appendix I, from memory).
const (
	slabLimit     = 750 * calc.Lb // on one column
	slabThickness = 3.5 * calc.In // least thickness
)

// A SlabFault is why a post may not stand on the slab, whatever it carries.
type SlabFault uint8

// The faults.
const (
	SlabSound   SlabFault = iota // none
	SlabFrost                    // the frost depth is not zero
	SlabTooThin                  // thinner than 3-1/2 in
)

// String words the fault.
func (f SlabFault) String() string {
	switch f {
	case SlabFrost:
		return "the frost depth is not zero"
	case SlabTooThin:
		return "the slab is thinner than 3-1/2 in"
	}
	return "frost depth zero and the slab is thick enough"
}

// A SlabRule is the check of the patio cover appendix that a post may stand on a
// slab without a footing: frost depth zero, a slab of 3-1/2 in or more, and 750 lb
// at most. In the wording of the residential code the 750 lb are live and dead load;
// in that of the building code they are all loads. The rule says nothing of uplift.
type SlabRule struct {
	Force    float64   // the gravity load that the wording counts, lb
	Frost    float64   // frost depth, in
	Depth    float64   // thickness of the slab, in
	AllLoads bool      // wording of the building code
	Fault    SlabFault // why no load is allowed at all
	Limit    float64   // load allowed on the post, lb; 0 with a fault
}

// NewSlabRule checks the load of one post: force in lb, the frost depth and the
// thickness of the slab in inches. A frost depth or a thickness that is not a number
// is a fault, so that the unknown never passes.
func NewSlabRule(force, frost, depth float64, allLoads bool) SlabRule {
	r := SlabRule{Force: force, Frost: frost, Depth: depth, AllLoads: allLoads, Limit: slabLimit}
	switch {
	case !(frost <= 0):
		r.Fault, r.Limit = SlabFrost, 0
	case !(depth >= slabThickness):
		r.Fault, r.Limit = SlabTooThin, 0
	}
	return r
}

// Ratio is the load over the limit.
func (r SlabRule) Ratio() float64 { return calc.Ratio(r.Force, r.Limit) }

// Explain writes the check out.
func (r SlabRule) Explain() calc.Check {
	var s calc.Sheet
	s.Given("frost", r.Frost, "in", "input site.frost_depth_in")
	s.Given("t_slab", r.Depth, "in", "input foundation.slab_thickness_in")
	counted := "dead plus roof live or snow, with the weight of the post"
	if r.AllLoads {
		counted = "largest of every combination, with the weight of the post"
	}
	s.Given("P", r.Force, "lb", counted)
	source, status := "IRC 2018 Appendix H", calc.Read
	if r.AllLoads {
		source, status = "IBC 2018 Appendix I", calc.Recalled
	}
	s.Quoted("t_min", slabThickness, "in", source, status)
	s.Quoted("P_lim", r.Limit, "lb", source+", slab rule; "+r.Fault.String(), status)
	return s.Check("slab rule", "P", "P_lim")
}
