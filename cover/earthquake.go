package cover

import (
	"patiocover/connections"
	"patiocover/loads"
)

// A burden is what stands on a joint when the earthquake comes, and what the earthquake
// asks of it, without factors, lb.
type burden struct {
	dead, snow float64
	along, out float64 // sideways
	tip        float64 // up or down, from the tipping of a braced cover
}

// snowOf is the snow in a force under an arrangement, lb, without its factor, where
// dead is the dead load in it; 0 where more than dead load and snow acts.
func (a *arrangement) snowOf(force, dead float64) float64 {
	if a.snow == 0 || a.wind != 0 {
		return 0
	}
	return (force - a.self*dead) / a.snow
}

// shake adds what the earthquake asks (ASCE 7 2.4.5), for each joint of the kind beside
// what stands on it; where the least dead load counts, beside that of the joint that
// the wind lifts most.
func (j *joint) shake(m *model, stands []burden) {
	if !m.sideways.along.shaken {
		return
	}
	rows := loads.ASDEarthquake(m.edition)
	for i := range rows {
		c := &rows[i]
		if m.idle(c) {
			continue
		}
		for _, b := range stands {
			if c.DeadLeast {
				b.dead, b.snow = j.lift.dead, 0
			}
			stands := (c.Dead+c.EarthquakeUp*m.sideways.vertical)*b.dead + c.Snow*b.snow
			j.demands = append(j.demands, connections.Demand{
				Combination: c.Name, Duration: durationOf(c), Vertical: stands + c.Earthquake*b.tip,
				Along: c.Earthquake * b.along, Out: c.Earthquake * b.out,
			})
			if b.tip > 0 {
				j.demands = append(j.demands, connections.Demand{
					Combination: c.Name, Duration: durationOf(c), Vertical: stands - c.Earthquake*b.tip,
					Along: c.Earthquake * b.along, Out: c.Earthquake * b.out,
				})
			}
		}
	}
}

// strongest is the row that asks most sideways of the earthquake.
func strongest(rows []loads.Combination) loads.Combination {
	out := rows[0]
	for _, c := range rows[1:] {
		if c.Earthquake > out.Earthquake {
			out = c
		}
	}
	return out
}

// combinationLines lists the rows that the checks use, those with earthquake, which they
// use where the site gives its values, and those of strength design, by which the members
// are checked beside. A row that names a load that the site does not have is left out.
func (m *model) combinationLines() []CombinationLine {
	var out []CombinationLine
	for _, list := range []struct {
		method string
		rows   []loads.Combination
	}{
		{"ASD", loads.ASD(m.edition)}, {"ASD", loads.ASDEarthquake(m.edition)}, {"LRFD", loads.LRFD(m.edition)},
	} {
		for i := range list.rows {
			c := &list.rows[i]
			if m.idle(c) {
				continue
			}
			out = append(out, CombinationLine{
				Name: c.Name, Clause: c.Clause, Method: list.method, Used: c.Earthquake == 0 || m.sideways.along.shaken,
				Dead: c.Dead, RoofLive: c.RoofLive, Snow: c.Snow, Wind: c.Wind,
				Earthquake: c.Earthquake, EarthquakeUp: c.EarthquakeUp, Duration: c.Duration, TimeEffect: c.TimeEffect, Status: c.Status,
			})
		}
	}
	return out
}
