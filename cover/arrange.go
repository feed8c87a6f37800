package cover

import (
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/loads"
)

// An arrangement is one combination with one placing of its loads on a member.
type arrangement struct {
	words    [3]string       // of its name: combination, how the loads stand, the wind
	spaced   bool            // the words are set apart by a space, not by a comma
	called   string          // the name, once it was asked for
	duration lumber.Duration // of the combination
	self     float64         // factor on the member's own weight
	least    bool            // own weight and dead load at their least
	coef     []float64       // factor of each load case, own weight left out
	onPlan   float64         // factor on the live or snow load
	snow     float64         // factor on snow
	wind     float64         // factor on the wind
	clause   string          // of the combination
	status   calc.Status     // how the combination is known
}

// newArrangement is a combination with its loads placed; its factors are still to be
// filled in.
func newArrangement(c *loads.Combination, p pattern, wind string) arrangement {
	return arrangement{
		words: [...]string{c.Name, p.name, wind}, duration: durationOf(c), self: c.Dead, least: c.DeadLeast,
		onPlan: c.RoofLive + c.Snow, snow: c.Snow, wind: c.Wind, clause: c.Clause, status: c.Status,
	}
}

// A pattern is a placing of live or snow load on the bays of a member: bit b is
// set when bay b is loaded.
type pattern struct {
	name string
	bays uint32
	set  int // how the snow lies, index of the snow sets
}

// patterns returns the placings that a member with these bays must carry: everything
// loaded, alternate bays, and each pair of neighbors (IBC 2018 1607.13.2; for snow
// the unloaded bays keep half by ASCE 7-16 7.5, so none is the safe side).
func (r *room) patterns(bays []bay) []pattern {
	var room [maxBays]int
	real := room[:0]
	for b, at := range bays {
		if at.length > 0 {
			real = append(real, b)
		}
	}
	var all, odd uint32
	for i, b := range real {
		all |= 1 << b
		if i%2 == 0 {
			odd |= 1 << b
		}
	}
	out := append(r.placing.take(len(real) + 2)[:0], pattern{name: "all bays", bays: all})
	if len(real) > 1 {
		out = append(out,
			pattern{name: "alternate bays from the first", bays: odd},
			pattern{name: "alternate bays from the second", bays: all &^ odd})
	}
	for i := 0; len(real) > 2 && i+1 < len(real); i++ {
		a, b := real[i], real[i+1]
		first, i := spanWords(bays, a)
		second, k := spanWords(bays, b)
		out = append(out, pattern{name: r.say(phrase{first, i, " and ", second, k}), bays: 1<<a | 1<<b})
	}
	return out
}

// forSag is the placing where it counts for deflection, with the factors to be filled in.
func (p pattern) forSag(coef []float64) arrangement {
	words := [3]string{"live or snow on", p.name}
	if p.set > 0 {
		words[0] = "snow with"
	}
	return arrangement{words: words, spaced: true, coef: coef}
}

// forGust is the wind where it counts for deflection, with the factors to be filled in.
func forGust(wind string, coef []float64) arrangement {
	return arrangement{words: [3]string{"0.42 W", wind}, coef: coef}
}

// everywhere is the placing of a combination without live or snow load.
var everywhere = []pattern{{}}

// placings returns the placings of the live or snow load of a combination: of all that the
// bays must carry, those of live load, and of snow that lies otherwise too.
func (m *model) placings(c *loads.Combination, all []pattern) []pattern {
	switch {
	case m.onPlan(c, 0) == 0:
		return everywhere
	case c.Snow == 0:
		return all[:len(all)-m.drifts()]
	}
	return all
}

// allPlacings returns the placings on these bays, and after them snow other than the
// balanced one, on all bays.
func (m *model) allPlacings(bays []bay) []pattern {
	plain := m.room.patterns(bays)
	out := append(m.room.placing.take(len(plain) + m.drifts())[:0], plain...)
	for i := 1; i < len(m.snow.sets); i++ {
		out = append(out, pattern{name: m.snow.sets[i].name, bays: plain[0].bays, set: i})
	}
	return out
}

// drifts is how many ways the snow lies beside the balanced one.
func (m *model) drifts() int { return max(0, len(m.snow.sets)-1) }

// onPlan is the factored even live or snow load of a combination, lb/in² of plan.
func (m *model) onPlan(c *loads.Combination, set int) float64 {
	return c.RoofLive*m.live + c.Snow*m.snow.even(set)
}

// idle reports whether the combination names a load that the site does not have,
// so that another row says the same.
func (m *model) idle(c *loads.Combination) bool {
	return (c.RoofLive != 0 && m.live == 0) || (c.Snow != 0 && m.snow.even(0) == 0)
}

// name is the combination, how the live load stands, and the wind. It is put together when
// it is first asked for: most arrangements are never named.
func (a *arrangement) name() string {
	if a.called != "" {
		return a.called
	}
	between := ", "
	if a.spaced {
		between = " "
	}
	a.called = a.words[0]
	for _, w := range a.words[1:] {
		if w != "" {
			a.called += between + w
		}
	}
	return a.called
}

// combinationOf is the combination that a label begins with.
func combinationOf(label string) string {
	name, _, _ := strings.Cut(label, ", ")
	return name
}
