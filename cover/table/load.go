package table

import (
	"math"
	"slices"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/loads"
	"patiocover/loads/wind"
)

// A share is one combination on an area, without what the member weighs itself.
type share struct {
	name     string
	duration lumber.Duration
	across   float64 // across the slope, lb/in² of slope, + down
	upright  float64 // vertical, lb/in² of plan, + down
	wind     float64 // wind in it, unfactored, lb/in², + down
	dead     float64 // least dead load in it, unfactored, lb/in² of plan; of combinations that count the least
	self     float64 // factor on the member's own weight
	factor   float64 // on the wind
	least    bool    // the least weight counts
}

// A column is one gravity load with one wind speed.
type column struct {
	load   Load
	speed  float64 // mph
	cosine float64 // of the slope
	worker float64 // on any member, lb; 0 for nobody

	small []share // on rafters and their ties: the highest coefficients of parts
	large []share // on beams, posts and footings: those of large parts
	plan  float64 // larger of live and snow, lb/in² of plan, for deflection
	dead  float64 // most dead load, lb/in² of slope
	below float64 // framing that beams, posts and footings carry, lb/in² of plan
}

// flows turns the word of the criteria into flows of the figures.
var flows = map[string][]wind.Flow{
	"clear": {wind.Clear}, "obstructed": {wind.Obstructed}, "enveloped": {wind.Clear, wind.Obstructed},
}

// wholeArea is an effective area beyond the last step of the figures, in².
const wholeArea = 1e6 * calc.SqFt

// newColumn works one load and one wind speed out. Wind is that on the corner of a free
// roof (ASCE 7-16 30.7), for rafters of the smallest effective area, so that no span
// of the table is too small for it.
func newColumn(c *Criteria, l Load, speed float64) column {
	angle := math.Atan(c.Wind.Slope * calc.In / calc.Ft)
	out := column{
		load: l, speed: speed, cosine: math.Cos(angle), dead: l.Dead * calc.PSF,
		plan: max(l.Live, l.Snow) * calc.PSF, below: c.Service.Framing * calc.PSF,
	}
	if *c.Service.Worker {
		out.worker = loads.MaintenanceLoad
	}
	edition := loads.ASCE716
	if c.Standard == loads.ASCE722.String() {
		edition = loads.ASCE722
	}
	v := wind.NewVelocity(wind.Site{
		Edition: edition, Exposure: c.Wind.Exposure, Speed: speed, Hill: c.Wind.Hill, Elevation: 1, Height: c.Wind.Height * calc.Ft,
	})
	roof := wind.Roof{Angle: angle * 180 / math.Pi, Height: c.Wind.Height * calc.Ft, Depth: 1, Width: 1}
	down, up := wholeRoof(v, roof, flows[c.Wind.Flow])
	small := wind.NewComponent(v, roof, 0, wind.SideEdge, flows[c.Wind.Flow])
	large := wind.NewComponent(v, roof, wholeArea, wind.SideEdge, flows[c.Wind.Flow])
	for _, combo := range loads.ASD(edition) {
		out.small = out.with(out.small, &combo, max(small.Pressure, down), max(small.Suction, up))
		out.large = out.with(out.large, &combo, max(large.Pressure, down), max(large.Suction, up))
	}
	return out
}

// wholeRoof is the largest net pressure and suction on either half of the roof or on a
// strip along it, lb/in² (ASCE 7-16 Figs. 27.3-4 and 27.3-7): no member takes less.
func wholeRoof(v wind.Velocity, roof wind.Roof, blows []wind.Flow) (pressure, suction float64) {
	raise := func(flow wind.Flow, factors ...float64) {
		if !slices.Contains(blows, flow) {
			return
		}
		for _, f := range factors {
			pressure, suction = max(pressure, v.Net(f)), max(suction, -v.Net(f))
		}
	}
	for _, h := range wind.Halves(roof) {
		raise(h.Flow, h.Windward, h.Leeward)
	}
	for _, b := range wind.Bands() {
		raise(b.Flow, b.Net[:]...)
	}
	return pressure, suction
}

// with adds the shares of a combination, one for each sense of the wind in it. One
// whose live load or snow is nothing is less than another.
func (c *column) with(all []share, combo *loads.Combination, pressure, suction float64) []share {
	idle := combo.RoofLive > 0 && c.load.Live == 0 || combo.Snow > 0 && c.load.Snow == 0 || combo.Earthquake != 0
	if idle {
		return all
	}
	switch combo.Sense {
	case loads.NoWind:
		return append(all, c.share(combo, 0))
	case loads.Downward:
		return append(all, c.share(combo, pressure))
	case loads.UpwardOnly:
		return append(all, c.share(combo, -suction))
	}
	return append(all, c.share(combo, pressure), c.share(combo, -suction))
}

// share is a combination with one net wind pressure, lb/in², + down.
func (c *column) share(combo *loads.Combination, net float64) share {
	dead := c.dead
	if combo.DeadLeast {
		dead = c.load.Sure * calc.PSF
	}
	plan := combo.RoofLive*c.load.Live*calc.PSF + combo.Snow*c.load.Snow*calc.PSF
	s := share{
		name: combo.Name, duration: durationOf(combo.Duration), self: combo.Dead, least: combo.DeadLeast,
		across:  combo.Dead*dead*c.cosine + plan*c.cosine*c.cosine + combo.Wind*net,
		upright: combo.Dead*dead/c.cosine + plan + combo.Wind*net,
		wind:    net, factor: combo.Wind,
	}
	if combo.DeadLeast {
		s.dead = dead / c.cosine
	}
	return s
}

// durationOf is the duration with the factor of a combination.
func durationOf(factor float64) lumber.Duration {
	for _, d := range lumber.Durations() {
		if d.Factor() == factor {
			return d
		}
	}
	panic("table: no load duration has the factor " + calc.Number(factor)) // the combinations are ours
}
