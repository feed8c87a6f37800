package cover

import (
	"patiocover/calc"
	"patiocover/loads"
	"patiocover/loads/roof"
)

// A hanging is what a cover does to one rafter tail that it hangs from, allowable
// stress level. The zero value is no cover there.
type hanging struct {
	there bool
	up    float64 // lb, largest net uplift
	down  float64 // lb, largest downward
	dead  float64 // lb, dead load at its most
	reach float64 // a, in, heel to the ledger
	span  float64 // L, in, heel to the next support
	hold  float64 // lb, 0.6 of the dead load of the house roof at the next support
	near  roof.Hung
}

// newHanging takes the reactions of the cover's rafters to the tails, by their spacing.
func (m *model) newHanging(r *oldRoof, d *design) hanging {
	h := hanging{there: true, reach: r.joint.Overhang, span: r.joint.Span}
	if x := m.in.House.OldRoof.TailReach; x != nil {
		h.reach = *x * calc.Ft
	}
	if len(r.lines) > 0 {
		h.span = r.lines[0]
	}
	share := r.joint.Spacing / m.plan.spacing
	layers, own := m.rafter.deadAt(m, 0, &d.rafter, false)
	h.dead = max(0, layers+own) * share
	h.up = m.tailUplift(d) * share
	for i := range m.rafter.arr {
		h.down = max(h.down, m.rafter.reactionOf(&m.rafter.arr[i], 0, &d.rafter).total()*share)
	}
	h.hold = loads.HoldsDown * r.joint.Dead * r.joint.Spacing * h.span / 2
	h.near = roof.NewHung(h.up, h.span, h.reach)
	return h
}

// added is what the cover adds to the uplift of a joint, lb: at the eave that of its net
// uplift; at the supports behind, what a load on the tail lifts there, its dead load with
// the wind on the house roof, or all of it against the weight of that roof alone.
func (h *hanging) added(place string) float64 {
	if !h.there {
		return 0
	}
	if place == atEave {
		return max(0, h.near.Near)
	}
	arm := h.reach / h.span
	return max(0, h.dead*arm, h.down*arm-h.hold)
}

// lines writes what the cover adds.
func (h *hanging) lines(place string) []calc.Line {
	if !h.there {
		return nil
	}
	if place == atEave {
		return h.near.Lines()
	}
	var s calc.Sheet
	s.Given("P_D", h.dead, "lb", "dead load of the cover on one tail")
	s.Given("P", h.down, "lb", "largest load of the cover on one tail, down")
	s.Given("a", h.reach/calc.Ft, "ft", "heel to the ledger of the cover")
	s.Given("L", h.span/calc.Ft, "ft", "heel to the next support")
	s.Given("H", h.hold, "lb", "0.6 of the dead load of the house roof at the next support")
	s.Step("T_cover", "max(0, P_D * a / L, P * a / L - H)", max(0, h.dead*h.reach/h.span, h.down*h.reach/h.span-h.hold), "lb",
		"statics: a load on the tail lifts the next support")
	return s.Lines()
}
