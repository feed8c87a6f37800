package cover

import (
	"fmt"

	"patiocover/calc"
	"patiocover/loads/rain"
)

// drainage follows the water to the low edge, and checks the covering against the slope.
func (m *model) drainage() Drainage {
	var out Drainage
	if in := m.in.Site.Rain; in != nil {
		out.Flow = rain.Flow(m.plan.width*m.plan.projection, *in)
	}
	if in := m.in.Site.RainWind; in != nil && m.plan.solid {
		r := rain.NewReach(m.plan.topAt(m.plan.projection), *in, m.plan.projection)
		out.Reach, out.Dry, out.Lines = r.In/calc.Ft, r.Dry/calc.Ft, r.Lines()
	}
	m.covering(&out)
	return out
}

// covering checks the slope that the covering needs.
func (m *model) covering(out *Drainage) {
	if !m.plan.solid {
		out.Covering, out.Verdict, out.Reason = "open lattice", OK, "rain falls through"
		return
	}
	key := m.in.Cover.Roofing
	if key == nil {
		out.Verdict, out.Reason = NotChecked, "the roofing is not said, so its least slope is not checked: give cover.roofing"
		return
	}
	c, _ := rain.CoveringOf(*key) // fields.csv lists the same keys
	slope := rain.NewSlope(c, *m.in.Cover.Slope)
	check := slope.Explain()
	out.Covering, out.Check, out.Verdict = c.Name, &check, Ratio(slope.Ratio()).Verdict()
	out.Reason = fmt.Sprintf("needs a fall of %s in per ft; the roof falls %s in per ft", calc.Number(c.Least), calc.Number(slope.Given))
	if slope.Doubled() {
		out.Reason += fmt.Sprintf("; below %s in per ft the underlayment is doubled", calc.Number(c.Double))
	}
}
