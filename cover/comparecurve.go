package cover

import "patiocover/calc"

// A SpanCurve is how much of one rafter size a span takes, at the spacing and in the
// wood of the input.
type SpanCurve struct {
	Size   string      `json:"size"`   // nominal size of the rafters
	Points []SpanPoint `json:"points"` // by span, the shortest first
}

// A SpanPoint is the largest ratio of the rafters at one span.
type SpanPoint struct {
	Span    float64 `json:"span_ft"` // ft on plan, from the house or the first beam to the outer beam
	Ratio   Ratio   `json:"ratio"`   // largest of all checks of the rafters
	Governs string  `json:"governs"` // that check
}

// The spans of the curves: parts of the projection of the cover.
const (
	shortestPart = 0.5
	longestPart  = 2.0
	curveSteps   = 15 // a step of a tenth of the projection, so that the cover itself is one of them
)

// curves finds the ratio of every rafter size over the span, everything else kept and
// the beam chosen anew. A span for which the program has no answer is left out.
func curves(in Input) []SpanCurve {
	now := *in.Cover.Projection
	columns := make([][]SpanCurve, curveSteps+1)
	each(len(columns), func(i int) {
		part := shortestPart + (longestPart-shortestPart)*float64(i)/curveSteps
		columns[i] = atProjection(in, now*part)
	})
	var out []SpanCurve
	for _, column := range columns {
		for _, c := range column {
			i := 0
			for i < len(out) && out[i].Size != c.Size {
				i++
			}
			if i == len(out) {
				out = append(out, SpanCurve{Size: c.Size})
			}
			out[i].Points = append(out[i].Points, c.Points...)
		}
	}
	return out
}

// lastSpan is the span of the rafters between their last two supports, in on plan.
func (p *plan) lastSpan() float64 {
	all := p.supports()
	return all[len(all)-1] - all[len(all)-2]
}

// atProjection grades every rafter size at one projection, ft.
func atProjection(in Input, projection float64) []SpanCurve {
	in = in.clone()
	in.Rafters.Size, in.Rafters.MeasuredBreadth, in.Rafters.MeasuredDepth = nil, nil, nil
	if len(in.Beams.Lines) > 0 {
		stretch(&in, projection)
	}
	in.Cover.Projection = &projection
	s, _, err := solve(in, &workspace{})
	if err != nil {
		return nil
	}
	if s.m.strength != nil {
		s = *s.m.strength // what the members are chosen by
	}
	m := s.m
	var out []SpanCurve
	for i := range m.rafterWoods {
		w := &m.rafterWoods[i]
		ratio := m.gradeRafter(s.ws, w, &s.d.beam)
		out = append(out, SpanCurve{Size: w.section.Name, Points: []SpanPoint{{
			Span: m.plan.lastSpan() / calc.Ft, Ratio: Ratio(ratio), Governs: nameOrWater(&s.ws.rafter, s.ws.rafterWater),
		}}})
	}
	return out
}
