package survey

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A TailLoad is what hangs on one rafter tail in one combination, lb and lb/in, positive
// downward.
type TailLoad struct {
	Name     string          // the combination
	Cover    float64         // P, from the cover at its ledger, lb
	Own      float64         // w, of the house roof on the tail, lb per in of plan
	Duration lumber.Duration // of the shortest load
}

// Tails are the rafter tails that a cover hangs from.
type Tails struct {
	Wood     lumber.Adjusted // of the whole section
	Cut      float64         // depth of the seat cut at the heel, in; 0 for none
	Reach    float64         // a, from the heel to the ledger of the cover, in of plan
	Overhang float64         // o, from the heel to the tip, in of plan
	Span     float64         // L, from the heel to the next support inward, in of plan
}

// Limits of a seat cut that is not at the end of its member (NDS 2018 4.4.3 and 3.2.3).
const (
	deepestSeat  = 1.0 / 6 // of the depth, ratio
	thickestSeat = 3.5     // in, from which the tension face may not be cut
)

// A Tail is the check of one rafter tail in one combination.
type Tail struct {
	Load     TailLoad          // what hangs on it
	Tails    Tails             // what carries it
	Moment   float64           // M at the heel, lb-in; positive bends the tip down
	Shear    float64           // V just outside the heel, lb; positive downward
	Heel     float64           // added to the heel by the cover, lb, positive downward
	Inner    float64           // added to the next support by the cover, lb; negative lifts it
	Bending  member.Bending    // on the section that the seat cut leaves
	Straight member.Shear      // on the section that the seat cut leaves, tip bent down
	Notched  member.NotchShear // tip bent up: the cut is on the tension face
	Refused  bool              // tip bent up and the cut deeper than d/6, or in a piece of 3-1/2 in. and more
}

// NewTail checks a tail: M = P a + w o²/2, V = P + w o, the heel P (L + a)/L and the
// next support −P a/L, which a load lifts and an uplift presses down. The seat cut takes
// from the depth. A tip that is bent down has its tension face on top, whole; one that
// is bent up has it below, where the cut is, so that shear goes by the rule of a notch on
// the tension face. Both edges of the tail count as unbraced over the overhang.
func NewTail(load TailLoad, t Tails) Tail {
	x := Tail{Load: load, Tails: t}
	p, w, a, o := load.Cover, load.Own, t.Reach, t.Overhang
	x.Moment = p*a + w*o*o/2
	x.Shear = p + w*o
	x.Heel = p * (t.Span + a) / t.Span
	x.Inner = -p * a / t.Span
	left := t.Wood
	left.Section.Depth -= t.Cut
	bracing := member.Bracing{Unbraced: max(a, o), Loading: member.AnyLoading}
	x.Bending = member.NewBending(x.Moment, &left, load.Duration, bracing)
	x.Straight = member.NewShear(x.Shear, &left, load.Duration)
	if x.up() {
		whole := t.Wood
		x.Notched = member.NewNotchShear(x.Shear, &whole, load.Duration, member.Notch{Remaining: left.Section.Depth})
		deep := t.Cut > deepestSeat*whole.Section.Depth
		x.Refused = t.Cut > 0 && (deep || whole.Section.Breadth >= thickestSeat)
	}
	return x
}

// up reports whether the tip is bent up.
func (x *Tail) up() bool { return x.Moment < 0 }

// Ratio is the largest of bending and shear; infinite where the cut is not allowed.
func (x Tail) Ratio() float64 {
	most := max(x.Bending.Ratio(), x.Straight.Ratio())
	if x.up() {
		most = max(most, x.Notched.Ratio())
	}
	if x.Refused {
		return math.Inf(1)
	}
	return most
}

// Statics writes the forces up.
func (x Tail) Statics() []calc.Line {
	var s calc.Sheet
	s.Given("P", x.Load.Cover, "lb", "from the cover on one tail, + down: "+x.Load.Name)
	s.Given("w", x.Load.Own/calc.PLF, "plf", "of the house roof on one tail, + down, per ft of plan")
	s.Given("a", x.Tails.Reach/calc.Ft, "ft", "heel to the ledger of the cover")
	s.Given("o", x.Tails.Overhang/calc.Ft, "ft", "heel to the tip")
	s.Given("L", x.Tails.Span/calc.Ft, "ft", "heel to the next support")
	s.Step("M_ft", "P * a + w * pow(o, 2) / 2", x.Moment/calc.LbFt, "lb-ft", "statics; positive bends the tip down")
	s.Step("V_0", "P + w * o", x.Shear, "lb", "statics")
	s.Step("R_heel", "P * (L + a) / L", x.Heel, "lb", "added at the heel, + down")
	s.Step("R_inner", "-P * a / L", x.Inner, "lb", "added at the next support; negative lifts it")
	return s.Lines()
}

// Checks writes bending and shear out, for a section without its seat cut.
func (x Tail) Checks() []calc.Check {
	out := []calc.Check{x.Bending.Explain(), x.Straight.Explain()}
	if x.up() {
		out = append(out, x.Notched.Explain())
	}
	if x.Refused {
		var s calc.Sheet
		s.Given("b", x.Tails.Wood.Section.Breadth, "in", "size")
		s.Given("d", x.Tails.Wood.Section.Depth, "in", "size")
		s.Given("c", x.Tails.Cut, "in", "seat cut, on the tension face when the tip is bent up")
		allowed := 0.0
		if x.Tails.Wood.Section.Breadth < thickestSeat {
			allowed = x.Tails.Wood.Section.Depth * deepestSeat
			s.Step("c_max", "d / 6", allowed, "in", "NDS 2018 4.4.3: away from the end of the member")
		}
		if allowed == 0 {
			s.Given("c_max", allowed, "in", "NDS 2018 4.4.3: none in a piece of 3-1/2 in. and more")
		}
		out = append(out, s.Check("seat cut on the tension face", "c", "c_max"))
	}
	return out
}
