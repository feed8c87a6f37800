package member

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A Joint is where bolts, lag screws or hanger nails hold a bending member from its
// side, by the heights of the fasteners above the member's bottom edge.
type Joint struct {
	Lowest  float64 // in, from the bottom edge to the center of the lowest fastener
	Highest float64 // in, from the bottom edge to the center of the highest fastener
	FromEnd float64 // in, from the member's end to the joint
	Down    bool    // the joint holds the member down, as under net uplift; else it carries it
}

// nearEnd is the distance from the end, in depths, below which a joint is weakened by
// splitting along its fasteners (NDS 2018 3.4.3.3).
const nearEnd = 5.0

// jointPlace is the branch of NDS 2018 3.4.3.3.
type jointPlace uint8

const (
	jointUnknown jointPlace = iota // heights not within the member: no capacity
	jointAtEnd                     // closer to the end than 5 d, eq. 3.4-6
	jointInside                    // eq. 3.4-7
)

// JointShear is the check of NDS 2018 3.4.3.3, shear of a member beside the fasteners
// that hold it: V <= Vr'. Only the depth from the loaded edge to the farthest fastener
// counts. It stands beside the check of the full section, not for it.
type JointShear struct {
	Force     float64         // V, lb, its magnitude, beside the joint
	Breadth   float64         // b, in
	Depth     float64         // d, in
	Joint     Joint           // the fasteners
	Effective float64         // de, in, from the loaded edge to the farthest fastener
	Strength  lumber.Property // Fv with its factors, psi
	Duration  lumber.Duration // load duration of the combination
	Allowable float64         // Fv', psi
	Capacity  float64         // Vr', lb; 0 when the joint is not known
	place     jointPlace
}

// NewJointShear checks the shear force, in lb of either sign, beside the joint. A
// carried member is loaded toward its top edge, so that the lowest fastener counts; one
// that is held down is loaded toward its bottom edge, and the highest counts. Poles have
// no capacity here.
func NewJointShear(force float64, a *lumber.Adjusted, duration lumber.Duration, joint Joint) JointShear {
	j := JointShear{
		Force: math.Abs(force), Breadth: a.Section.Breadth, Depth: a.Section.Depth,
		Joint: joint, Strength: a.ShearAtCuts, Duration: duration,
	}
	j.Allowable = j.Strength.At(duration)
	if a.Section.Round || !(0 < joint.Lowest && joint.Lowest <= joint.Highest && joint.Highest < j.Depth) || !(joint.FromEnd >= 0) {
		return j
	}
	j.Effective = j.Depth - joint.Lowest
	if joint.Down {
		j.Effective = joint.Highest
	}
	b, d, de := j.Breadth, j.Depth, j.Effective
	j.place, j.Capacity = jointInside, 2.0/3*j.Allowable*b*de // eq. 3.4-7
	if joint.FromEnd < nearEnd*d {
		j.place, j.Capacity = jointAtEnd, 2.0/3*j.Allowable*b*de*(de/d)*(de/d) // eq. 3.4-6
	}
	return j
}

// Ratio is V / Vr'.
func (j JointShear) Ratio() float64 { return calc.Ratio(j.Force, j.Capacity) }

// Explain writes the check out.
func (j JointShear) Explain() calc.Check {
	var s calc.Sheet
	s.Given("V", j.Force, "lb", "shear force of the combination beside the joint")
	s.Given("b", j.Breadth, "in", "size")
	s.Given("d", j.Depth, "in", "size")
	explainShear(&s, j.Strength, j.Duration, j.Allowable)
	if j.place == jointUnknown {
		s.Given("V_r", j.Capacity, "lb", "NDS 2018 3.4.3.3, place of the fasteners not known: no capacity")
		return s.Check("shear at the fasteners", "V", "V_r")
	}
	effective := calc.Line{Symbol: "d_e", Formula: "d - y", X: j.Effective, Unit: "in", Source: "NDS 2018 3.4.3.3"}
	height, which := j.Joint.Lowest, "lowest fastener above the bottom edge; the load is toward the top edge"
	if j.Joint.Down {
		effective.Formula = "y"
		height, which = j.Joint.Highest, "highest fastener above the bottom edge; the load is toward that edge"
	}
	s.Given("y", height, "in", which)
	s.Append([]calc.Line{effective})
	s.Given("l_end", j.Joint.FromEnd, "in", "from the end to the joint")
	formula, source := "2 / 3 * Fv_adj * b * d_e", "NDS 2018 eq. 3.4-7, 5 d and more from the end"
	if j.place == jointAtEnd {
		formula += " * pow(d_e / d, 2)"
		source = "NDS 2018 eq. 3.4-6, closer than 5 d to the end"
	}
	s.Append([]calc.Line{{Symbol: "V_r", Formula: formula, X: j.Capacity, Unit: "lb", Source: source}})
	return s.Check("shear at the fasteners", "V", "V_r")
}

// HungLoad is the check of NDS 2018 12.5.1.3: a load that hangs from fasteners in the
// side of a beam must be held at mid-depth or above, because wood has hardly any
// tension strength across the grain. It compares heights above the bottom edge.
type HungLoad struct {
	Force    float64 // lb, pulling toward the bottom edge
	Depth    float64 // d, in
	Fastener float64 // y, in: highest fastener that holds the load, above the bottom edge
	Needed   float64 // d/2, in; 0 when nothing hangs
}

// NewHungLoad checks a load, in lb, that hangs from a beam of the depth, in inches, by
// fasteners of which the highest stands at the height, in inches above the bottom edge.
// Below mid-depth it is refused: reinforcement across the grain is not checked here.
// For uplift, which pulls toward the top edge, give the height from the top edge.
func NewHungLoad(force, depth, fastener float64) HungLoad {
	h := HungLoad{Force: force, Depth: depth, Fastener: fastener}
	if !(force <= 0) {
		h.Needed = depth / 2
	}
	return h
}

// Ratio is the height needed over that of the fastener, and infinite below mid-depth.
func (h HungLoad) Ratio() float64 { return calc.Ratio(h.Needed, h.counted()) }

// counted is the height of the fastener, in, or 0 where it is below mid-depth.
func (h HungLoad) counted() float64 {
	if h.Fastener < h.Needed || h.Fastener > h.Depth {
		return 0
	}
	return h.Fastener
}

// Explain writes the check out.
func (h HungLoad) Explain() calc.Check {
	var s calc.Sheet
	s.Given("R", h.Force, "lb", "load that hangs")
	s.Given("d", h.Depth, "in", "size")
	s.Given("y", h.Fastener, "in", "highest fastener that holds the load, from the edge toward which it pulls")
	if h.Needed > 0 {
		s.Append([]calc.Line{{
			Symbol: "y_min", Formula: "d / 2", X: h.Needed, Unit: "in",
			Source: "NDS 2018 12.5.1.3, at or above mid-depth; below it only with reinforcement, which is not checked",
		}})
	}
	if h.Needed == 0 {
		s.Given("y_min", h.Needed, "in", "nothing hangs")
	}
	s.Given("y_counted", h.counted(), "in", "NDS 2018 12.5.1.3, 0 below mid-depth")
	return s.Check("load hung from the side", "y_min", "y_counted")
}
