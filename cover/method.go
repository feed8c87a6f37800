package cover

import (
	"fmt"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/loads"
)

// A rulebook is what a design method asks of the loads on a member: the combinations,
// and what goes with them.
type rulebook struct {
	method  lumber.Method
	combos  []loads.Combination // the first is dead load alone
	quakes  []loads.Combination // with earthquake
	worker  loads.Combination   // dead load with the maintenance load
	stands  float64             // factor on the maintenance load
	gusts   []gustRow
	onQuake loads.Combination // the row that asks most sideways of the earthquake
}

// A gustRow is the factor on wind of the combinations of one duration.
type gustRow struct {
	duration lumber.Duration
	factor   float64 // on wind of strength level
	clause   string
}

// A ruleKey is what the rules of a method depend on.
type ruleKey struct {
	method  lumber.Method
	edition loads.Edition
}

// rulebook is that of a method, made once in a room. It must not be changed.
func (r *room) rulebook(method lumber.Method, e loads.Edition) rulebook {
	return keep(&r.rules, ruleKey{method, e}, func() rulebook { return newRulebook(method, e) })
}

// newRulebook makes the rules of a method.
func newRulebook(method lumber.Method, e loads.Edition) rulebook {
	if method == lumber.LRFD {
		return strengthRules(e)
	}
	return rulebook{
		combos: loads.ASD(e), quakes: loads.ASDEarthquake(e), stands: 1,
		worker:  withWorker("D + %g lb", "ASCE 7-16 Table 4.3-1", loads.Combination{Dead: 1, Duration: lumber.SevenDays.Factor()}),
		gusts:   []gustRow{{lumber.TenMinutes, loads.WindASD, "ASCE 7 2.4.1"}},
		onQuake: strongest(loads.ASDEarthquake(e)),
	}
}

// strengthRules are those of load and resistance factor design: of the combinations those
// with earthquake apart, and before them dead load without a factor, which 1.4D outweighs
// in every check and which serves where dead load alone is meant. The maintenance load is
// factored like the roof live load whose place it takes.
func strengthRules(e loads.Edition) rulebook {
	r := rulebook{method: lumber.LRFD, stands: liveFactor}
	for _, c := range loads.LRFD(e) {
		if c.Earthquake != 0 {
			r.quakes = append(r.quakes, c)
			continue
		}
		if len(r.combos) == 0 {
			r.combos = append(r.combos, loads.Combination{
				Name: "D", Clause: "dead load without a factor", Dead: 1, TimeEffect: c.TimeEffect, Status: calc.Read,
			})
		}
		r.combos = append(r.combos, c)
	}
	for i := range r.combos {
		c := &r.combos[i]
		if c.Wind > 0 {
			r.gust(gustRow{durationOf(c), c.Wind, c.Clause})
		}
	}
	r.worker = withWorker("1.2D + 1.6(%g lb)", r.combos[2].Clause, loads.Combination{Dead: 1.2, TimeEffect: r.combos[2].TimeEffect})
	r.onQuake = strongest(r.quakes)
	return r
}

// liveFactor is that of strength design on roof live load (ASCE 7 2.3.1 (3)).
const liveFactor = 1.6

// gust keeps the largest factor on wind of each duration.
func (r *rulebook) gust(row gustRow) {
	for i := range r.gusts {
		if r.gusts[i].duration == row.duration {
			if row.factor > r.gusts[i].factor {
				r.gusts[i] = row
			}
			return
		}
	}
	r.gusts = append(r.gusts, row)
}

// strongestGust is the row with the largest factor on wind.
func (r *rulebook) strongestGust() gustRow {
	most := r.gusts[0]
	for _, g := range r.gusts {
		if g.factor > most.factor {
			most = g
		}
	}
	return most
}

// factored is the larger of wind and earthquake at the level of the method.
func (m *model) factored(s share) float64 {
	quake := 0.0
	if m.quaking {
		quake = m.rules.onQuake.Earthquake * s.quake
	}
	return max(m.rules.strongestGust().factor*s.wind, quake)
}

// withWorker names a combination of dead load with the maintenance load.
func withWorker(name, clause string, c loads.Combination) loads.Combination {
	c.Name, c.Clause, c.Status = fmt.Sprintf(name, loads.MaintenanceLoad/calc.Lb), clause, calc.Recalled
	return c
}

// durationOf turns a combination into the row of the wood standard whose factor it takes:
// C_D of allowable stress design, or the time effect of strength design, for which roof
// live load and snow have one.
func durationOf(c *loads.Combination) lumber.Duration {
	if c.TimeEffect != 0 {
		return durationOfTime(c)
	}
	for _, d := range lumber.Durations() {
		if d.Factor() == c.Duration {
			return d
		}
	}
	return lumber.Permanent // the least, for a factor that no row has
}

func durationOfTime(c *loads.Combination) lumber.Duration {
	switch {
	case c.TimeEffect == lumber.TenMinutes.TimeEffect():
		return lumber.TenMinutes
	case c.TimeEffect == lumber.SevenDays.TimeEffect() && c.Snow == 0:
		return lumber.SevenDays
	case c.TimeEffect == lumber.TwoMonths.TimeEffect():
		return lumber.TwoMonths
	}
	return lumber.Permanent // the least
}
