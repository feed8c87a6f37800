package cover

import (
	"fmt"

	"patiocover/calc"
	"patiocover/loads/rain"
)

// drainage checks the covering against the slope and follows the water to the low edge.
func (m *model) drainage() Drainage {
	var out Drainage
	if in := m.in.Site.Rain; in != nil {
		out.Flow = rain.Flow(m.plan.width*m.plan.projection, *in)
	}
	if in := m.in.Site.RainWind; in != nil && m.plan.solid {
		r := rain.NewReach(m.plan.topAt(m.plan.projection), *in, m.plan.projection)
		out.Reach, out.Dry, out.Lines = r.In/calc.Ft, r.Dry/calc.Ft, r.Lines()
	}
	if !m.plan.solid {
		out.Covering, out.Verdict, out.Reason = "open lattice", OK, "rain falls through"
		return out
	}
	key := m.in.Cover.Roofing
	if key == nil {
		out.Verdict, out.Reason = NotChecked, "the roofing is not said, so its least slope is not checked: give cover.roofing"
		return out
	}
	c, _ := rain.CoveringOf(*key) // fields.csv lists the same keys
	slope := rain.NewSlope(c, *m.in.Cover.Slope)
	check := slope.Explain()
	out.Covering, out.Check, out.Verdict = c.Name, &check, Ratio(slope.Ratio()).Verdict()
	out.Reason = fmt.Sprintf("needs a fall of %s in per ft; the roof falls %s in per ft", calc.Number(c.Least), calc.Number(slope.Given))
	if slope.Doubled() {
		out.Reason += fmt.Sprintf("; below %s in per ft the underlayment is doubled", calc.Number(c.Double))
	}
	return out
}

// flatSlope is the slope up to which water may stand, in of fall per ft: the least that
// roof coverings are allowed.
const flatSlope = 0.25

// flat reports whether water may gather in the sag of the members.
func (m *model) flat() bool { return m.plan.solid && *m.in.Cover.Slope <= flatSlope }

// rafterFall is the check that water runs off the sagged rafters.
func (m *model) rafterFall(ws *workspace, b int) rain.Fall {
	return rain.NewFall(m.plan.rise, ws.rafterPeaks.total[b].value, m.rafter.bays[b].length)
}

// rafterPond is the check that water does not gather in the sag of the rafters.
func (m *model) rafterPond(w *wood, b int) rain.Ponding {
	return rain.NewPonding(m.plan.spacing, m.rafter.bays[b].length, w.dry.Elasticity.Value*w.section.Inertia())
}

// rafterWaterRatio is the largest ratio of the checks of water on the rafters.
func (m *model) rafterWaterRatio(ws *workspace, w *wood) float64 {
	if !m.plan.solid {
		return 0
	}
	b := m.longestBay()
	ratio := m.rafterFall(ws, b).Ratio()
	if m.flat() {
		ratio = max(ratio, m.rafterPond(w, b).Ratio())
	}
	return ratio
}

// rafterWater writes the checks of water on the rafters up.
func (m *model) rafterWater(ws *workspace, w *wood, out *Member) {
	if !m.plan.solid {
		return
	}
	b := m.longestBay()
	where := spanName(m.rafter.bays, b)
	out.add("fall left after sag", "Kcr D with live or snow", where, m.rafterFall(ws, b))
	if m.flat() {
		out.add("ponding", "water that gathers in its own sag", where, m.rafterPond(w, b))
	}
}

// longestBay is the longest span of the rafters.
func (m *model) longestBay() int {
	longest := 1
	for b, at := range m.rafter.bays {
		if !at.cantilever && at.length > m.rafter.bays[longest].length {
			longest = b
		}
	}
	return longest
}

// beamPond checks the longest span of a beam line as a simple span, the safe side.
func (m *model) beamPond(line int, w *wood) rain.Ponding {
	ei := w.dry.Elasticity.Value * w.section.Inertia()
	return rain.NewPonding(m.plan.strip(line), longestSpan(m.plan.posts, m.plan.width), ei)
}
