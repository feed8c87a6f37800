package anchor

import (
	"math"

	"patiocover/calc"
)

// Sizes that are chosen: the residential code's least for anchor bolts, and no deeper
// than bolts are kept in stock.
const (
	leastDiameter  = 0.5 * calc.In // IRC R403.1.6, read in its edition of 2006
	leastEmbedment = 7 * calc.In   // same
	mostEmbedment  = 24 * calc.In  // what is tried
	depthStep      = 1 * calc.In
)

// A Load is what one post asks of its anchor, strength level.
type Load struct {
	Pull float64 // N_ua, up, lb
	Push float64 // V_ua, sideways, lb
}

// A Wanted is what of a bolt is said already.
type Wanted struct {
	Diameter  float64 // d_a, in; 0 to be chosen
	Embedment float64 // h_ef, in; 0 to be chosen
}

// skips reports whether a diameter is not to be tried, in.
func (w Wanted) skips(diameter float64) bool {
	if w.Diameter > 0 {
		return math.Abs(diameter-w.Diameter) > 1e-6
	}
	return diameter < leastDiameter
}

// HeadedOf is a headed bolt of a size of the list in the mildest steel, its embedment in
// in.
func HeadedOf(s Size, embedment float64) Bolt {
	return Bolt{
		Kind: Headed, Diameter: s.Diameter, Area: s.Area, Head: s.Head, Tensile: Steel36, Embedment: embedment,
	}
}

// used is the largest ratio of the checks of a bolt cast into a footing under one load. It
// allocates nothing.
func used(l Load, b Bolt, c Concrete) float64 {
	room := NewRoom(b, c).Ratio()
	t, v := NewTension(l.Pull, b, c), NewShear(l.Push, b, c)
	if t.Fault != Sound {
		return math.Inf(1)
	}
	return max(room, NewInteraction(t, v).Ratio())
}

// worst is the largest ratio over all loads; it stops at the first above enough.
func worst(loads []Load, b Bolt, c Concrete, enough float64) float64 {
	most := 0.0
	for _, l := range loads {
		if most = max(most, used(l, b, c)); most > enough {
			return most
		}
	}
	return most
}

// Least returns the thinnest headed bolt of the list, and of that the shallowest, that
// holds every load cast into the same concrete, with its largest ratio; where none does,
// the one that comes nearest, with a ratio above 1 (infinite where the concrete takes no
// bolt at all). What is wanted is kept.
func Least(loads []Load, w Wanted, c Concrete) (Bolt, float64) {
	var best Bolt
	nearest := math.Inf(1)
	from, to := float64(leastEmbedment), float64(mostEmbedment)
	if w.Embedment > 0 {
		from, to = w.Embedment, w.Embedment
	}
	for i := range sizes {
		s := &sizes[i]
		if w.skips(s.Diameter) {
			continue
		}
		for depth := from; depth <= to; depth += depthStep {
			b := HeadedOf(*s, depth)
			r := worst(loads, b, c, max(1, nearest))
			if r <= 1 {
				return b, r
			}
			if r < nearest || best.Diameter == 0 {
				best, nearest = b, r
			}
		}
	}
	return best, nearest
}

// Deepest is how deep an anchor of a kind may sit in concrete of a thickness, in.
func Deepest(k Kind, thickness float64) float64 {
	if k == Drilled {
		return max(thickness*2/3, thickness-4*calc.In) // ACI 318-19 17.9.4
	}
	return thickness - 1.5*calc.In
}
