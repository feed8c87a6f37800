package roof

import (
	"patiocover/calc"
)

// A Banded is a rafter that crosses the strip along the eave, where a component lifts
// more, and lies in the field beyond it: coefficients that bring the same moment about
// the far end of each half as the two zones do.
type Banded struct {
	Edge  Component // in the strip along the eave
	Field Component // beyond it
	Strip float64   // b, width of the strip on plan, in
	Span  float64   // L, wall to wall, in
	Near  float64   // k2, share of the moment of the windward half that is of the strip, ratio
	Far   float64   // k3, share likewise of the leeward half, ratio
	Basis Basis     // for a [Tie]
}

// NewBanded blends the coefficients of two zones for a rafter on two walls, span L: of
// the windward half about the far wall the strip brings (b L − b²/2) of 3L²/8, of the
// leeward half b²/2 of L²/8. overhang is the coefficient of the overhang.
//
// Special case: false, and factors that are not numbers, where one has no value.
func NewBanded(edge, field, overhang Component, strip, span float64) (Banded, bool) {
	b := min(strip, span/2)
	w := Banded{Edge: edge, Field: field, Strip: b, Span: span}
	w.Near = (b*span - b*b/2) / (3 * span * span / 8)
	w.Far = (b * b / 2) / (span * span / 8)
	basis, ok := PartBasis(edge, overhang)
	basis.Name = "components and cladding, strip at the eave and field"
	basis.Windward = w.Near*edge.lift() + (1-w.Near)*field.lift()
	basis.Leeward = w.Far*edge.lift() + (1-w.Far)*field.lift()
	basis.Source += "; " + field.source()
	basis.Status = basis.Status.Weakest(field.status())
	w.Basis = basis
	return w, ok && basis.Windward == basis.Windward
}

// Lines writes the blend up; the last two are g_2 and g_3 of the basis.
func (w Banded) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("L", w.Span/calc.Ft, "ft", "wall to wall, geometry")
	s.Given("b", w.Strip/calc.Ft, "ft", "strip along the eave, not beyond the middle of the span")
	s.Quoted("g_e", w.Edge.lift(), "", w.Edge.source(), w.Edge.status())
	s.Quoted("g_f", w.Field.lift(), "", w.Field.source(), w.Field.status())
	s.Step("k_2", "(b * L - pow(b, 2) / 2) / (3 * pow(L, 2) / 8)", w.Near, "", "moment of the strip in that of the windward half, statics")
	s.Step("k_3", "(pow(b, 2) / 2) / (pow(L, 2) / 8)", w.Far, "", "likewise of the leeward half, statics")
	s.Step("g_2", "k_2 * g_e + (1 - k_2) * g_f", w.Basis.Windward, "", "blend of the two zones, windward half")
	s.Step("g_3", "k_3 * g_e + (1 - k_3) * g_f", w.Basis.Leeward, "", "blend of the two zones, leeward half")
	return s.Lines()
}
