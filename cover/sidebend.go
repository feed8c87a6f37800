package cover

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A sideways moment bends a beam about its weak axis: wind acts across the sloped roof,
// so that the rafters push the beam outward or inward by the tangent of the slope times
// what they press on it. Where the house holds the cover, the rafters hand that force to
// the ledger; else the beams carry it to their posts.
type sidewise struct {
	wind    float64            // largest moment under the vertical part of the wind, strength level, lb-in
	tangent float64            // of the slope
	factor  [durations]float64 // of the combinations on wind, by duration
}

// moment is the moment about the weak axis under combinations of one duration, lb-in.
func (s sidewise) moment(d lumber.Duration) float64 { return s.wind * s.tangent * s.factor[d] }

// bendSideways finds the sideways moment of every stick, the largest of all its bays.
func (f *beamFrame) bendSideways(m *model) {
	if *m.in.Lateral.Out == "house_diaphragm" {
		return
	}
	for i := range f.pieces {
		p := f.pieces[i].frame
		p.sidewise = sidewise{tangent: m.plan.rise}
		for _, c := range m.rules.combos {
			d := durationOf(&c)
			p.sidewise.factor[d] = max(p.sidewise.factor[d], c.Wind)
		}
		for b := range p.blows {
			p.plan.Forces(p.blows[b].coef, &p.forces)
			for _, at := range p.forces.Bays {
				p.sidewise.wind = max(p.sidewise.wind, at.MomentMax, -at.MomentMin)
			}
		}
	}
}

// gradeSidewise checks a moment under wind together with the sideways one. The two need
// not be largest at one place, to be safe.
func (f *frame) gradeSidewise(w *wood, h *holding, x found, g *graded) {
	if f.sidewise.moment(x.duration) == 0 {
		return
	}
	x.side = f.sidewise.moment(x.duration)
	x.ratio = f.bothWays(w, h, x).Ratio()
	g[bothCheck].raise(x)
}

// bothWays is the check of bending about both axes.
func (f *frame) bothWays(w *wood, h *holding, x found) member.Combined {
	return member.NewCombined(member.Actions{Edgewise: x.demand, Flatwise: x.side}, &w.dry, &w.flat, x.duration,
		member.Stay{Bracing: h.bracing.of(x.edge, f.bays[x.bay])})
}

// sideTrace writes the sideways moment.
func (f *frame) sideTrace(d lumber.Duration) []calc.Line {
	var s calc.Sheet
	s.Given("M_wind", f.sidewise.wind, "lb-in", "largest moment under the vertical part of the wind, by the statics of the member")
	s.Given("tan_theta", f.sidewise.tangent, "", "slope: the wind pushes sideways by as much of what it presses")
	s.Given("f_wind", f.sidewise.factor[d], "", "factor of the combinations on wind")
	s.Step("M_side", "M_wind * tan_theta * f_wind", f.sidewise.moment(d), "lb-in", "statics, about the weak axis between the posts")
	return s.Lines()
}
