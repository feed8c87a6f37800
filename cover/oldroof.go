package cover

import (
	"math"
	"slices"
	"strings"

	"patiocover/calc"
	"patiocover/connections/survey"
	"patiocover/loads"
	"patiocover/loads/roof"
	"patiocover/loads/wind"
)

// Words of the input for where a joint stands.
const (
	atEave     = "eave"
	atFarWall  = "far_wall"
	atInterior = "interior"
	atRidge    = "ridge"
)

// An oldRoof is the house roof with what stands on it at one time.
type oldRoof struct {
	joint    roof.Joint
	lines    []float64 // in, supports between the walls from the near one
	runsOn   bool
	angle    float64 // degrees
	class    roof.Enclosure
	figures  roof.Figures
	widths   roof.Widths
	drawn    bool    // the widths are known
	length   float64 // in, along the wall; 0 when not given
	mainOnly bool
	more     float64 // in, depth of a cover on the rafter tails, which makes the roof larger
}

// newOldRoof takes the house roof with a dead load, lb/in² of plan, and a class of
// enclosure. It is false when its spans are not given.
func (m *model) newOldRoof(dead float64, class roof.Enclosure) (oldRoof, bool) {
	h, o := m.in.House, m.in.House.OldRoof
	if !given(h.RafterSpan, h.RafterSpacing, h.RafterOverhang, h.RafterHeight, h.RafterSlope) {
		return oldRoof{}, false
	}
	site := m.wind.velocity.Site
	site.Height, site.Envelope = *h.RafterHeight*calc.Ft, true
	r := oldRoof{
		joint: roof.Joint{
			Site: site, Span: *h.RafterSpan * calc.Ft, Overhang: *h.RafterOverhang * calc.Ft,
			Spacing: *h.RafterSpacing * calc.In, Dead: dead,
		},
		runsOn: yes(o.RunsOn), angle: degrees(angleOf(*h.RafterSlope)), class: class,
		mainOnly: is(o.TieWind, "main_system"),
	}
	if m.edition == loads.ASCE722 {
		r.figures = roof.Figures722
	}
	for _, x := range o.Lines {
		r.lines = append(r.lines, x*calc.Ft)
	}
	if o.Length != nil {
		r.length = *o.Length * calc.Ft
	}
	if *m.in.Cover.Attachment == "rafter_tails" {
		r.more = m.plan.projection
	}
	r.widths, r.drawn = roof.NewWidths(r.figures, roof.Gable, r.angle, site.Height, r.least())
	return r, true
}

// least is the least plan dimension of the roof, with a cover that hangs from it, in: a
// larger roof has wider zones.
func (r *oldRoof) least() float64 {
	deep := r.joint.Span + 2*r.joint.Overhang + r.more
	if r.length > 0 {
		return min(deep, r.length)
	}
	return deep
}

// A pull is what the wind asks of the joints of one place in one zone.
type pull struct {
	place      string
	zone       survey.Zone
	main, part float64 // lb; not a number outside the method
	lines      []calc.Line
	partLines  []calc.Line
}

// at works out the uplift of a place in a zone by both ways.
func (r *oldRoof) at(place string, zone survey.Zone) pull {
	p := pull{place: place, zone: zone, main: math.NaN(), part: math.NaN()}
	if b, ok := roof.PlainBasis(r.angle, zone != survey.Field, r.class); ok {
		p.main, p.lines = r.uplift(place, b)
	}
	if b, lines, ok := r.component(place, zone); ok {
		var more []calc.Line
		p.part, more = r.uplift(place, b)
		p.partLines = append(lines, more...)
	}
	return p
}

// uplift is the uplift of a place on a basis, with its calculation.
func (r *oldRoof) uplift(place string, b roof.Basis) (float64, []calc.Line) {
	var s calc.Sheet
	if len(r.lines) == 0 {
		t := roof.NewTie(r.joint, b)
		s.Append(t.Velocity.Lines())
		s.Append(t.Lines())
		return t.Uplift, s.Lines()
	}
	var most roof.Support
	for i, bays := range r.bays(place) {
		if u := roof.NewSupport(r.joint, b, bays); i == 0 || !(u.Balance <= most.Balance) {
			most = u
		}
	}
	s.Append(most.Velocity.Lines())
	s.Append(most.Lines())
	return most.Uplift, s.Lines()
}

// bays lists the spans beside every support of a place: of the interior ones all but
// the ridge, unless it is the only one.
func (r *oldRoof) bays(place string) []roof.Bays {
	stops := append(append([]float64{0}, r.lines...), r.joint.Span)
	last := len(stops) - 1
	switch place {
	case atEave:
		return []roof.Bays{{Place: roof.AtEave, Before: stops[1], Outside: r.joint.Overhang}}
	case atFarWall:
		return []roof.Bays{{Place: roof.AtEave, Before: stops[last] - stops[last-1], Outside: r.joint.Overhang}}
	}
	ridge := r.ridge()
	var out []roof.Bays
	for i := 1; i < last; i++ {
		b := roof.Bays{Place: roof.AtInner, Before: stops[i] - stops[i-1], After: stops[i+1] - stops[i], RunsOn: r.runsOn}
		if place == atRidge {
			b.Place = roof.AtRidge
		}
		if (i-1 == ridge) == (place == atRidge) || last == 2 {
			out = append(out, b)
		}
	}
	return out
}

// ridge is the index of the interior line that is nearest to the middle of the span.
func (r *oldRoof) ridge() int {
	best := 0
	for i, x := range r.lines {
		if math.Abs(x-r.joint.Span/2) < math.Abs(r.lines[best]-r.joint.Span/2) {
			best = i
		}
	}
	return best
}

// shortest is the shortest span beside the supports of a place, in: the least area that
// the wind works on.
func (r *oldRoof) shortest(place string) float64 {
	if len(r.lines) == 0 {
		return r.joint.Span
	}
	least := math.Inf(1)
	for _, b := range r.bays(place) {
		least = min(least, b.Before)
		if b.After > 0 {
			least = min(least, b.After)
		}
	}
	return least
}

// zoneSigns are the first signs of the zones of the figures by the zones of a survey.
var zoneSigns = [...]string{survey.Corner: "3", survey.Edge: "2", survey.Field: "1"}

// component is the basis of a rafter as a component in a zone of the survey: the worst
// of the figure's zones with its number. A rafter of the field that bears on a wall
// crosses the strip along the eave, whose width counts from the wall as if the roof ended
// there, the safe side; at a ridge of a steeper roof it lies in the strip of
// the ridge.
func (r *oldRoof) component(place string, zone survey.Zone) (roof.Basis, []calc.Line, bool) {
	area := wind.EffectiveArea(r.shortest(place), r.joint.Spacing)
	field, over, known := r.worst(zone, area)
	if !known {
		return roof.Basis{}, nil, false
	}
	outer := place == atEave || place == atFarWall
	if zone != survey.Field || !outer && place != atRidge {
		b, ok := roof.PartBasis(field, over)
		return b, nil, ok
	}
	edge, edgeOver, known := r.worst(survey.Edge, area)
	if !known {
		return roof.Basis{}, nil, false
	}
	if outer && len(r.lines) == 0 && r.drawn {
		w, ok := roof.NewBanded(edge, field, edgeOver, r.widths.Edge, r.joint.Span)
		return w.Basis, w.Lines(), ok
	}
	b, ok := roof.PartBasis(edge, edgeOver)
	return b, nil, ok
}

// worst returns the component and its overhang in the zone of the figure that lifts most
// among those with the number of a zone of the survey.
func (r *oldRoof) worst(zone survey.Zone, area float64) (field, over roof.Component, known bool) {
	pick := func(overhang bool) (roof.Component, bool) {
		var most roof.Component
		found := false
		for _, z := range roof.Zones(r.figures, roof.Gable, r.angle, overhang) {
			if !strings.HasPrefix(string(z), zoneSigns[zone]) {
				continue
			}
			c, ok := roof.NewComponent(r.joint.Site, roof.Part{
				Figures: r.figures, Angle: r.angle, Zone: z, Overhang: overhang, Area: area,
			}, r.class)
			if ok && (!found || c.Suction > most.Suction) {
				most, found = c, true
			}
		}
		return most, found
	}
	field, inside := pick(false)
	over, outside := pick(true)
	return field, over, inside && outside
}

// demand is what the wind asks, with what the cover adds.
func (p *pull) demand(added float64, mainOnly bool) survey.Demand {
	return survey.Demand{Main: p.main, Component: p.part, Cover: added, MainOnly: mainOnly}
}

// zoneOf is the zone of a joint at a distance from the nearest gable end, in, and why: as
// said, by the widths of the figure, or the corner.
func (r *oldRoof) zoneOf(j *Joint) (survey.Zone, string) {
	if j.Zone != nil {
		return survey.Zone(max(0, slices.Index(zoneWords, *j.Zone))), "as said"
	}
	if j.End == nil || !r.drawn {
		return survey.Corner, "not said: the corner, where the wind lifts most"
	}
	end := *j.End * calc.Ft
	wide := max(r.widths.Corner, 2*r.widths.Edge, r.endZone())
	switch {
	case end <= r.widths.Corner:
		return survey.Corner, "by the distance from the gable end"
	case end <= wide:
		return survey.Edge, "by the distance from the gable end"
	}
	return survey.Field, "by the distance from the gable end"
}

// endZone is the end zone of the main system, 2a from a gable end, in (ASCE 7-16 Fig.
// 28.3-1).
func (r *oldRoof) endZone() float64 { return 2 * wind.ZoneWidth(r.least(), r.joint.Site.Height) }

// zoneWords are the zones of a survey as the input names them.
var zoneWords = []string{survey.Corner: "corner", survey.Edge: "edge", survey.Field: "field"}
