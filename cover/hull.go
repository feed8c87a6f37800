package cover

import (
	"math"

	"patiocover/beam"
)

// A hull lists what can bring a peak of a member, whichever of its candidates it is
// made of. Every demand is a convex function of the factors of the load cases, and
// these depend evenly on the weight of the wood; so an arrangement that is behind
// another one with the lightest and with the heaviest candidate is behind it with all
// between them, and need not be tried.
type hull struct {
	strength     []int // arrangements
	sag          []int // placings of live or snow load for deflection
	light, heavy *wood // candidates that bound the weight; nil for none
	kcr          float64
	strange      bool // what the member carries lies outside the bounds
}

// A corner is one set of extreme weights: what loads the member, and the member.
type corner struct {
	load func() // nil where nothing but the wood counts
	wood *wood
}

// bounds returns the lightest and the heaviest of the candidates.
func bounds(candidates []wood) (light, heavy *wood) {
	light, heavy = &candidates[0], &candidates[0]
	for i := range candidates {
		w := &candidates[i]
		if w.most < light.most {
			light = w
		}
		if w.most > heavy.most {
			heavy = w
		}
	}
	return light, heavy
}

// distinct leaves out the second of two that are one.
func distinct(light, heavy *wood) []*wood {
	if light == heavy {
		return []*wood{light}
	}
	return []*wood{light, heavy}
}

// between reports whether the weights of the wood lie on the line from the lightest to
// the heaviest candidate.
func between(w, light, heavy *wood) bool {
	const near = 1e-9 // of a weight, ratio
	t := 0.0
	if heavy.most > light.most {
		t = (w.most - light.most) / (heavy.most - light.most)
	}
	apart := math.Abs(light.most+t*(heavy.most-light.most)-w.most) +
		math.Abs(light.least+t*(heavy.least-light.least)-w.least)
	return -near <= t && t <= 1+near && apart <= near*w.most
}

// covers reports whether the hull holds for the wood.
func (h *hull) covers(w *wood) bool {
	return !h.strange && h.light != nil && w.seasoning().Kcr() == h.kcr && between(w, h.light, h.heavy)
}

// newHull finds what can bring a peak at any weight between the corners.
func (f *frame) newHull(corners []corner, light, heavy *wood) hull {
	h := hull{light: light, heavy: heavy, kcr: light.seasoning().Kcr()}
	strength := contest{
		f: f, corners: corners, count: len(f.arr), readings: f.strengthReadings(), solve: f.plan.Forces,
		factors: func(i int, w *wood) []float64 { return f.factors(&f.arr[i], w) },
		class:   func(i int) int { return int(f.arr[i].duration) },
	}
	sag := contest{
		f: f, corners: corners, count: len(f.sag), readings: f.sagReadings(),
		solve:   func(n []float64, r *beam.Response) { f.plan.Run(n, 1, r) },
		factors: f.sagFactors,
		class:   func(int) int { return 0 },
	}
	h.strength, h.sag = strength.winners(), sag.winners()
	return h
}
