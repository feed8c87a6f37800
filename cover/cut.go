package cover

import (
	"math"

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
	endCut    = 1.0 / 4       // of the depth at an end (NDS 2018 4.4.3)
	innerCut  = 1.0 / 6       // of the depth over an inner support (NDS 2018 4.4.3)
	thick     = 3.5 * calc.In // no cut on the tension face of thicker pieces but at their ends (NDS 2018 4.4.3)
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

// newSeatCut is the seat cut of a rafter of some depth on a beam of some breadth: as deep
// as was said, or as the whole breadth of the beam asks for, but no deeper than the wood
// standard allows.
func (p *plan) newSeatCut(said *float64, depth, breadth float64, inner bool) cut {
	allowed := depth * endCut
	if inner {
		allowed = depth * innerCut
	}
	cos := math.Cos(p.angle)
	c := cut{plumb: min(breadth*p.rise, allowed/cos), seat: breadth}
	if said != nil {
		c.plumb = *said * calc.In
	}
	if said == nil && c.plumb < shallowly {
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

// without returns the values of the wood with so much of its depth cut away.
func (w *wood) without(deep float64) lumber.Adjusted {
	rest := w.dry
	rest.Section.Depth -= deep
	return rest
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
func (f *frame) gradeSeat(w *wood, p *peaks, h *holding, s int, g *graded) {
	at := p.seat[s]
	if h.seats[s].Length == 0 || at.value <= 0 {
		return
	}
	if !h.cuts[s].level {
		x := found{demand: at.value, by: at.by, bay: s}
		x.ratio = f.seatedFlat(w, h, x).Ratio()
		g[bearingCheck].raise(x)
	}
	for d := 0; h.cuts[s].level && d < durations; d++ {
		if at := p.press[d][s]; at.value > 0 {
			x := found{demand: h.seatForce(at.value), duration: lumber.Duration(d), by: at.by, bay: s}
			x.ratio = f.seatedAtAngle(w, h, x).Ratio()
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
func (f *frame) seated(w *wood, h *holding, x found) calc.Result {
	if h.cuts[x.bay].level {
		return f.seatedAtAngle(w, h, x)
	}
	return f.seatedFlat(w, h, x)
}

// seatedAtAngle is the bearing of the member on a level seat, at an angle to its grain.
func (f *frame) seatedAtAngle(w *wood, h *holding, x found) member.BearingAtAngle {
	return member.NewBearingAtAngle(x.demand, w.seatValues(h.wetSeat[x.bay]), x.duration, h.seats[x.bay], h.angle)
}

// seatedFlat is the bearing of the member across its grain.
func (f *frame) seatedFlat(w *wood, h *holding, x found) member.Bearing {
	return member.NewBearing(x.demand, w.seatValues(h.wetSeat[x.bay]), h.seats[x.bay])
}

// gradeCut checks the cut at a support: its depth, shear, and bending of what is left.
func (f *frame) gradeCut(w *wood, p *peaks, h *holding, s int, g *graded) {
	deep := h.cuts[s].deep
	if deep == 0 {
		return
	}
	rest := w.without(deep)
	turned := found{} // the largest moment that pulls the lower edge
	for d := range durations {
		day := lumber.Duration(d)
		for sense := range 2 {
			if at := p.face[d][s][sense]; at.value > 0 {
				c := member.NewNotchShear(at.value, &w.dry, day, f.notch(w, h, s, sense))
				g[notchCheck].raise(found{ratio: c.Ratio(), demand: at.value, duration: day, by: at.by, bay: s, edge: sense})
			}
		}
		for edge := range 2 {
			at := p.over[d][s][edge]
			if at.value <= calc.In { // below a pound-inch: rounding at an end
				continue
			}
			c := member.NewBending(at.value, &rest, day, h.bracing.of(edge, f.beside(s)))
			x := found{ratio: c.Ratio(), demand: at.value, duration: day, by: at.by, bay: s, edge: edge}
			g[restCheck].raise(x)
			if edge == topEdge && x.demand > turned.demand {
				turned = x
			}
		}
	}
	x := found{demand: deep, by: turned.by, bay: s, edge: bottomEdge}
	if turned.demand > 0 {
		x.edge = topEdge
	}
	x.ratio = f.depthOfCut(w, h, s, x.edge == topEdge).Ratio()
	g[cutCheck].raise(x)
}

// cutRule is the rule that limits the depth of a cut.
type cutRule uint8

const (
	cutAtEnd  cutRule = iota // d/4
	cutInner                 // d/6
	cutPulled                // none, on the tension face of a thick piece away from its ends
)

// A cutDepth is the check of the depth of a cut (NDS 2018 4.4.3).
type cutDepth struct {
	deep    float64 // in, across the member
	depth   float64 // d, in
	allowed float64 // in
	rule    cutRule
}

// depthOfCut checks the depth of the cut at a support; pulled says that some combination
// pulls its face.
func (f *frame) depthOfCut(w *wood, h *holding, s int, pulled bool) cutDepth {
	c := cutDepth{deep: h.cuts[s].deep, depth: w.section.Depth}
	switch {
	case !f.inner(s):
		c.allowed = endCut * c.depth
	case pulled && w.section.Breadth >= thick:
		c.rule = cutPulled
	default:
		c.rule, c.allowed = cutInner, innerCut*c.depth
	}
	return c
}

// Ratio is the depth of the cut over what is allowed. A cut at the limit is allowed.
func (c cutDepth) Ratio() float64 { return calc.Ratio(c.deep, c.allowed) }

// Explain writes the two depths.
func (c cutDepth) Explain() calc.Check {
	var s calc.Sheet
	s.Given("cut", c.deep, "in", "depth of the cut across the member, from its lower edge")
	s.Given("d", c.depth, "in", "size")
	switch c.rule {
	case cutAtEnd:
		s.Step("cut_max", "d / 4", c.allowed, "in", "NDS 2018 4.4.3, at an end")
	case cutInner:
		s.Step("cut_max", "d / 6", c.allowed, "in", "NDS 2018 4.4.3, over a support that the member runs beyond")
	case cutPulled:
		s.Given("cut_max", c.allowed, "in", "NDS 2018 4.4.3: no cut on the tension face of pieces 3-1/2 in and thicker but at their ends")
	}
	return s.Check("depth of the cut", "cut", "cut_max")
}
