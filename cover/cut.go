package cover

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A cut is what is taken from the lower edge of a member over a support: the seat cut of
// a rafter, with its level seat and its plumb heel, or a notch of a beam.
type cut struct {
	level bool    // the seat is level, cut or made so
	plumb float64 // in, height of the heel
	deep  float64 // in, across the member; 0 for none
	seat  float64 // in, length of the seat
	past  float64 // e, in: how far it is taken to run past the inner edge of the support
}

const (
	shallowly = calc.In / 8   // a seat cut that no carpenter makes: the wood gives, or a shim fills
	wetReach  = 1.0 * calc.Ft // seats nearer to the roof edge are rained on
)

// inner reports whether the member runs on beyond a support.
func (f *frame) inner(support int) bool {
	return f.bays[support].length > 0 && f.bays[support+1].length > 0
}

// beside is the longer of the bays beside a support.
func (f *frame) beside(support int) bay {
	if f.bays[support].length > f.bays[support+1].length {
		return f.bays[support]
	}
	return f.bays[support+1]
}

// deepest is the deepest cut that the lower edge of the wood may have at a support, for
// loads that press and for loads that lift, in (NDS 2018 4.4.3).
func (f *frame) deepest(w *wood, support int) float64 {
	c := member.Cut{Place: f.cutPlace(support), Tension: true}
	return member.NewCutBending(0, &w.dry, lumber.TenYears, member.Bracing{}, c).Limit
}

// cutPlace is the place of a cut at a support as the wood standard has it.
func (f *frame) cutPlace(support int) member.CutPlace {
	if f.inner(support) {
		return member.CutOverSupport
	}
	return member.CutAtEnd
}

// newSeatCut is the seat cut of the rafters on a beam of some breadth: as deep as was
// said, or as the whole breadth of the beam asks for, but no deeper than the wood
// standard allows.
func (m *model) newSeatCut(support int, rafter, beam *wood) cut {
	p, breadth := &m.plan, beam.section.Breadth
	cos := m.rafter.cosine
	c := cut{plumb: min(breadth*p.rise, m.rafter.deepest(rafter, support)/cos), seat: breadth}
	if said := m.in.Rafters.SeatCut; said != nil {
		c.plumb = *said * calc.In
	} else if c.plumb < shallowly {
		c.plumb = 0
	}
	if c.plumb == 0 {
		return c // a shim, or the top of the beam, follows the slope
	}
	c.level = true
	c.deep = c.plumb * cos
	c.seat = min(breadth, c.plumb/p.rise)
	c.past = c.seat
	return c
}

// assumedCut says what seat cut was taken for the chosen sizes where none was said.
func (m *model) assumedCut(d *design) []Assumption {
	if m.in.Rafters.SeatCut != nil || m.plan.flush {
		return nil
	}
	h := m.rafterHolding(&d.rafter, &d.beam)
	deepest := 0.0
	for s := range m.rafter.supports {
		deepest = max(deepest, h.cuts[s].plumb)
	}
	f, _ := FieldOf("rafters.seat_cut_in")
	return []Assumption{{
		Path: f.Path, Label: f.Label, Value: calc.Number(calc.RoundUp(deepest, 0.01)), Unit: f.Unit,
		Why:    "A full seat on the beam where the wood standard allows so deep a cut; none below 1/8 in",
		Source: "NDS 2018 4.4.3", Status: calc.Recalled,
	}}
}

// notch is the cut at a support as the check of shear takes it. Over an inner support
// its face is pressed while the support presses the member up.
func (f *frame) notch(w *wood, h *holding, support, sense int) member.Notch {
	c := h.cuts[support]
	return member.Notch{
		Remaining: w.section.Depth - c.deep, Compression: f.inner(support) == (sense == pressed), Extension: c.past,
	}
}

// seatForce is the vertical force on a level seat from the reaction across the member.
func (h *holding) seatForce(across float64) float64 { return across / h.cosine }

// bedSeat is the contact of the member with what it lies on, as the grain of that runs:
// at its end, to be safe.
func (h *holding) bedSeat(support int) member.Seat {
	return member.Seat{Width: h.seats[support].Length, Length: h.seats[support].Width}
}

// gradeSeat checks the bearing at a support, of the member and of what it lies on.
func (h *holding) gradeSeat(w *wood, p *peaks, s int, g *graded) {
	at := p.seat[s]
	if h.seats[s].Length == 0 || at.value <= 0 {
		return
	}
	if !h.cuts[s].level {
		x := found{demand: at.value, by: at.by, bay: s}
		x.ratio = h.seatedFlat(w, x).Ratio()
		g[bearingCheck].raise(x)
	}
	for d := 0; h.cuts[s].level && d < durations; d++ {
		if at := p.press[d][s]; at.value > 0 {
			x := found{demand: h.seatForce(at.value), duration: lumber.Duration(d), by: at.by, bay: s}
			x.ratio = h.seatedAtAngle(w, x).Ratio()
			g[bearingCheck].raise(x)
		}
	}
	if h.bed != nil && h.cuts[s].seat > 0 {
		force := h.seatForce(at.value)
		c := member.NewBearing(force, h.bed.seatValues(h.wetSeat[s]), h.bedSeat(s))
		g[bedCheck].raise(found{ratio: c.Ratio(), demand: force, by: at.by, bay: s})
	}
}

// seated is the bearing of the member at a support.
func (h *holding) seated(w *wood, x found) calc.Result {
	if h.cuts[x.bay].level {
		return h.seatedAtAngle(w, x)
	}
	return h.seatedFlat(w, x)
}

// seatedAtAngle is the bearing of the member on a level seat, at an angle to its grain.
func (h *holding) seatedAtAngle(w *wood, x found) member.BearingAtAngle {
	return member.NewBearingAtAngle(x.demand, w.seatValues(h.wetSeat[x.bay]), x.duration, h.seats[x.bay], h.angle)
}

// seatedFlat is the bearing of the member across its grain.
func (h *holding) seatedFlat(w *wood, x found) member.Bearing {
	return member.NewBearing(x.demand, w.seatValues(h.wetSeat[x.bay]), h.seats[x.bay])
}

// gradeCut checks the cut at a support: shear, and bending of what is left. Either one
// has no capacity where the cut is deeper than the wood standard allows.
func (f *frame) gradeCut(w *wood, p *peaks, h *holding, s int, g *graded) {
	if h.cuts[s].deep == 0 {
		return
	}
	for d := range durations {
		for sense := range 2 {
			if at := p.face[d][s][sense]; at.value > 0 {
				x := found{demand: at.value, duration: lumber.Duration(d), by: at.by, bay: s, edge: sense}
				c := member.NewNotchShear(x.demand, &w.dry, x.duration, f.notch(w, h, s, sense))
				x.ratio = c.Ratio()
				g[notchCheck].raise(x)
			}
		}
		for edge := range 2 {
			if at := p.over[d][s][edge]; at.value > calc.In { // below a pound-inch it is rounding at an end
				x := found{demand: at.value, duration: lumber.Duration(d), by: at.by, bay: s, edge: edge}
				c := f.restAtCut(w, h, x)
				x.ratio = c.Ratio()
				g[restCheck].raise(x)
			}
		}
	}
}

// restAtCut is the bending of what the cut at a support leaves.
func (f *frame) restAtCut(w *wood, h *holding, x found) member.CutBending {
	return member.NewCutBending(x.demand, &w.dry, x.duration, h.bracing.of(x.edge, f.beside(x.bay)), member.Cut{
		Depth: h.cuts[x.bay].deep, Tension: x.edge == topEdge, Place: f.cutPlace(x.bay),
	})
}
