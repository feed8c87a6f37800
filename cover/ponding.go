package cover

import "patiocover/loads/rain"

// The names of the checks of water.
const (
	fallName = "fall left after sag"
	pondName = "ponding"
)

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

// beamPond checks the longest span of a beam line as a simple span, the safe side.
func (m *model) beamPond(line int, w *wood) rain.Ponding {
	ei := w.dry.Elasticity.Value * w.section.Inertia()
	return rain.NewPonding(m.plan.strip(line), longestSpan(m.plan.posts, m.plan.width), ei)
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
	out.add(fallName, "Kcr D with live or snow", where, m.rafterFall(ws, b))
	if m.flat() {
		out.add(pondName, "water that gathers in its own sag", where, m.rafterPond(w, b))
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
