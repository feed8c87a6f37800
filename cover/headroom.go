package cover

import (
	"math"

	"patiocover/calc"
)

// leastClear is the clear height that covers are asked for below their lowest
// member, in: 6 ft 8 in (a habit of building departments, read in two city sheets).
const leastClear = 80.0 * calc.In

// A clearance is the chain of heights from the high edge down to the lowest
// member. All lengths are in inches.
type clearance struct {
	high    float64 // top of rafters at the wall above the slab there
	rise    float64 // fall over run, ratio
	angle   float64 // degrees
	at      float64 // y of the lowest member
	rafter  float64 // dressed depth of the rafter
	beam    float64 // depth below the rafter line: of a dropped beam, or what a flush one has more than the rafter
	slabRun float64 // fall of the slab over run, ratio
	member  string  // which member is lowest
	clear   float64 // slab to the lowest member
}

// newClearance follows the heights to the underside of the beam of each line and of
// the rafter ends, and keeps the lowest.
func newClearance(p *plan, rafterDepth, beamDepth, slabRun float64) clearance {
	c := clearance{
		high: p.high, rise: p.rise, angle: degrees(p.angle),
		rafter: rafterDepth, slabRun: slabRun, clear: math.Inf(1),
	}
	upright := rafterDepth / math.Cos(p.angle)
	below := beamDepth
	if p.flush {
		below = max(0, beamDepth-upright)
	}
	consider := func(y, drop float64, member string) {
		clear := p.topAt(y) + slabRun*y - upright - drop
		if clear < c.clear {
			c.at, c.beam, c.member, c.clear = y, drop, member, clear
		}
	}
	for i, y := range p.lines {
		consider(y, below, mark("BM", i))
	}
	consider(p.projection, 0, "rafter ends")
	return c
}

// Ratio is the required clear height over the clear height.
func (c clearance) Ratio() float64 { return calc.Ratio(leastClear, c.clear) }

// Explain writes the chain of heights.
func (c clearance) Explain() calc.Check {
	var s calc.Sheet
	s.Given("z_high", c.high, "in", "input cover.high_edge_ft, top of rafters above the slab")
	s.Given("y", c.at, "in", "plan distance of the lowest member from the high edge: "+c.member)
	s.Given("r", c.rise, "", "slope, fall over run, input cover.slope_in_per_ft")
	s.Step("z_roof", "z_high - r * y", c.high-c.rise*c.at, "in", "geometry")
	s.Given("theta", c.angle, "deg", "slope")
	s.Given("d_rafter", c.rafter, "in", "dressed depth of the rafter")
	s.Step("d_plumb", "d_rafter / cosd(theta)", c.rafter/math.Cos(c.angle*math.Pi/180), "in",
		"plumb depth of the rafter; the seat cut is left out")
	s.Given("d_beam", c.beam, "in", "depth of the beam below the rafters")
	s.Given("r_slab", c.slabRun, "", "fall of the slab over run, input cover.slab_fall_in_per_ft")
	s.Step("h_clear", "z_roof - d_plumb - d_beam + r_slab * y", c.clear, "in", "geometry")
	s.Given("h_req", leastClear, "in", "6 ft 8 in clear, city handouts; common practice")
	return s.Check("headroom", "h_req", "h_clear")
}

// headroom checks the clear height.
func (m *model) headroom(d *design) Headroom {
	c := m.clearance(&d.rafter, &d.beam)
	return Headroom{
		Clear: c.clear, Required: leastClear, Verdict: Ratio(c.Ratio()).Verdict(), Check: c.Explain(),
	}
}

// clearance is the chain of heights below rafters on a beam.
func (m *model) clearance(rafter, beam *wood) clearance {
	return newClearance(&m.plan, rafter.section.Depth, beam.section.Depth, *m.in.Cover.SlabFall*calc.In/calc.Ft)
}
