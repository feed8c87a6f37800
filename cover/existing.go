package cover

import (
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/loads/roof"
	"patiocover/loads/wind"
)

// existingRoof says what the wind asks of the ties of the house roof, in the end zone
// and outside it, and by the prescriptive table's own coefficients with this roof's
// numbers. It judges no joint. It is empty when the roof is not given.
func (m *model) existingRoof(d *design) []ExistingTie {
	h := m.in.House
	if !given(h.RafterSpan, h.RafterSpacing, h.RafterOverhang, h.RafterHeight, h.RafterSlope, h.Dead) {
		return nil
	}
	r, _ := m.newOldRoof(*h.Dead*calc.PSF, roof.Enclosure(*h.Enclosure))
	var out []ExistingTie
	add := func(where string, b roof.Basis) {
		t := roof.NewTie(r.joint, b)
		out = append(out, m.existingTie(where, t, d))
	}
	if b, ok := roof.PlainBasis(r.angle, true, r.class); ok {
		add("end zone, within twice the zone width of a gable end", b)
	}
	if b, ok := roof.PlainBasis(r.angle, false, r.class); ok {
		add("outside the end zones", b)
	}
	add("end zone, by the coefficients behind the prescriptive table", roof.TableBasis(*h.RafterSlope >= steepRoof))
	if zone, b, ok := r.strict(); ok {
		add("zone "+string(zone)+", as a component, the strict view", b)
	}
	return out
}

// strict returns the zone of the roof that lifts most when the rafter counts as a
// component, with its coefficients. It is false where no figure is known.
func (r *oldRoof) strict() (roof.Zone, roof.Basis, bool) {
	area := wind.EffectiveArea(r.joint.Span, r.joint.Spacing)
	var worst roof.Zone
	var basis roof.Basis
	most := -1.0
	for _, z := range roof.Zones(r.figures, roof.Gable, r.angle, true) {
		p := roof.Part{Figures: r.figures, Angle: r.angle, Zone: z, Area: area}
		field, known := roof.NewComponent(r.joint.Site, p, r.class)
		p.Overhang = true
		eave, both := roof.NewComponent(r.joint.Site, p, r.class)
		b, ok := roof.PartBasis(field, eave)
		if !known || !both || !ok {
			continue
		}
		if up := roof.NewTie(r.joint, b).Uplift; up > most {
			worst, basis, most = z, b, up
		}
	}
	return worst, basis, most >= 0
}

// steepRoof is the slope from which the prescriptive table has its other half, in of
// fall per ft (IRC 2018 Table R802.11).
const steepRoof = 5.0

// existingTie writes one tie down, with what a cover on the rafter tails adds to it.
func (m *model) existingTie(where string, t roof.Tie, d *design) ExistingTie {
	var s calc.Sheet
	s.Append(t.Velocity.Lines())
	s.Append(t.Lines())
	out := ExistingTie{Where: where, Basis: t.Basis.Name, Own: t.Uplift, Uplift: t.Uplift}
	if *m.in.Cover.Attachment == "rafter_tails" {
		hung := roof.NewHung(m.tailUplift(d)*t.Joint.Spacing/m.plan.spacing, t.Joint.Span, t.Joint.Overhang)
		s.Append(hung.Lines())
		out.Cover = max(0, hung.Near)
		out.Uplift += out.Cover
	}
	out.Rating = connections.Rating(out.Uplift)
	out.Lines = s.Lines()
	return out
}

// tailUplift is the largest net uplift that one rafter of the cover puts on a tail, lb.
func (m *model) tailUplift(d *design) float64 {
	most := 0.0
	for i := range m.rafter.arr {
		a := &m.rafter.arr[i]
		most = max(most, -m.rafter.reactionOf(a, 0, &d.rafter).total())
	}
	return most
}
