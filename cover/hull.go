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
	strength []int // arrangements
	sag      []int // placings of live or snow load for deflection
	woods    extremes
	kcr      float64 // of the sag
	strange  bool    // what the member carries lies outside the bounds
}

// A corner is one set of extreme weights: what loads the member, and the member.
type corner struct {
	load func() // nil where nothing but the wood counts
	wood *wood
}

// extremes bound the weights of candidates by two woods that need not be among them.
type extremes struct {
	light, heavy wood
	apart        bool // the weights at low and at high moisture do not go together: several species
	known        bool
}

// extremesOf bounds the weights of the candidates.
func extremesOf(candidates []wood) extremes {
	e := extremes{light: candidates[0], heavy: candidates[0], known: true}
	for i := range candidates {
		w := &candidates[i]
		e.light.most, e.light.least = min(e.light.most, w.most), min(e.light.least, w.least)
		e.heavy.most, e.heavy.least = max(e.heavy.most, w.most), max(e.heavy.least, w.least)
	}
	for i := range candidates {
		e.apart = e.apart || !e.onLine(&candidates[i])
	}
	return e
}

// ends are the lightest and the heaviest, one where they are the same.
func (e *extremes) ends() []*wood {
	if e.light.most == e.heavy.most && e.light.least == e.heavy.least {
		return []*wood{&e.light}
	}
	return []*wood{&e.light, &e.heavy}
}

// nearWeight is how near two weights are the same, ratio.
const nearWeight = 1e-9

// onLine reports whether the weights of the wood lie on the line from the lightest to
// the heaviest.
func (e *extremes) onLine(w *wood) bool {
	t := 0.0
	if e.heavy.most > e.light.most {
		t = (w.most - e.light.most) / (e.heavy.most - e.light.most)
	}
	apart := math.Abs(e.light.most+t*(e.heavy.most-e.light.most)-w.most) +
		math.Abs(e.light.least+t*(e.heavy.least-e.light.least)-w.least)
	return -nearWeight <= t && t <= 1+nearWeight && apart <= nearWeight*w.most
}

// hold reports whether the weights of the wood lie within the bounds.
func (e *extremes) hold(w *wood) bool {
	if !e.apart {
		return e.onLine(w)
	}
	const low, high = 1 - nearWeight, 1 + nearWeight
	return low*e.light.most <= w.most && w.most <= high*e.heavy.most &&
		low*e.light.least <= w.least && w.least <= high*e.heavy.least
}

// covers reports whether the hull holds for the strength of the wood.
func (h *hull) covers(w *wood) bool { return !h.strange && h.woods.known && h.woods.hold(w) }

// coversSag reports whether it does so for its deflection.
func (h *hull) coversSag(w *wood) bool { return h.covers(w) && w.seasoning().Kcr() == h.kcr }

// newHull finds what can bring a peak at any weight between the corners. Where weights are
// apart, arrangements with weight at its least are compared among themselves alone, so that
// each depends on one of the two weights and the corners bound them all.
func (f *frame) newHull(corners []corner, woods extremes, apart bool) hull {
	h := hull{woods: woods, kcr: woods.light.seasoning().Kcr()}
	strength := contest{
		f: f, corners: corners, count: len(f.arr), readings: f.strengthReadings(), solve: f.plan.Forces,
		factors: func(i int, w *wood) []float64 { return f.factors(&f.arr[i], w) },
		class: func(i int) int {
			if apart && f.arr[i].least {
				return durations + int(f.arr[i].duration)
			}
			return int(f.arr[i].duration)
		},
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
