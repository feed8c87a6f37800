package roof

import (
	"patiocover/calc"
	"patiocover/loads/wind"
)

// Widths are the zones on the plan of a house roof.
type Widths struct {
	Figures Figures // edition of the figures
	Height  float64 // h, mean roof height, of the eave up to 10 degrees, in
	Least   float64 // least plan dimension, in
	Edge    float64 // width of the edge strip, zone 2, in
	Corner  float64 // length of the corner, zone 3, along each edge, in
	Depth   float64 // of the corner in from the edge, in
	Inner   float64 // distance from the edge where zone 1' begins, in; 0 where there is none
	byRoof  bool    // sized by the height alone: flat roofs of 7-16
}

// Limits of the plans of zones.
const (
	flatRoof   = 7.0  // degrees: up to here the figure of flat roofs
	figureEnds = 27.0 // degrees: the figures of gable roofs that are known end here
)

// NewWidths returns the zones. Of 7-10, and of 7-16 above 7 degrees, they are sized by
// a = max(min(0.1 least, 0.4 h), 0.04 least, 3 ft); a flat roof of 7-16 by h alone:
// an edge of 0.6 h, an L-shaped corner of 0.6 h by 0.2 h, zone 1' beyond 1.2 h (from
// memory). Lengths are in inches.
//
// Special case: false for figures and slopes whose plan is not known: monoslope roofs
// of 7-16 above 3 degrees, slopes above 27 degrees, and 7-22.
func NewWidths(f Figures, shape Shape, angle, height, least float64) (Widths, bool) {
	w := Widths{Figures: f, Height: height, Least: least}
	monoslope := shape == Monoslope && angle > flatMonoslope
	if f == Figures722 || monoslope || !(0 <= angle && angle <= figureEnds) {
		return w, false
	}
	if f == Figures716 && angle <= flatRoof {
		w.byRoof = true
		w.Edge, w.Corner, w.Depth, w.Inner = 0.6*height, 0.6*height, 0.2*height, 1.2*height
		return w, true
	}
	a := wind.ZoneWidth(least, height)
	w.Edge, w.Corner, w.Depth = a, a, a
	return w, true
}

// Lines writes the widths up.
func (w Widths) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("h", w.Height/calc.Ft, "ft", "mean roof height, of the eave up to 10 degrees, geometry")
	if w.byRoof {
		const figure = "ASCE 7-16 Fig. 30.3-2A, from memory"
		s.Quoted("k_edge", 0.6, "", figure, calc.Recalled)
		s.Quoted("k_deep", 0.2, "", figure, calc.Recalled)
		s.Step("b_2", "k_edge * h", w.Edge/calc.Ft, "ft", figure+", zone 2 and length of zone 3")
		s.Step("b_3", "k_deep * h", w.Depth/calc.Ft, "ft", figure+", depth of zone 3")
		s.Step("b_1", "2 * k_edge * h", w.Inner/calc.Ft, "ft", figure+", zone 1' beyond")
		return s.Lines()
	}
	s.Given("b_min", w.Least/calc.Ft, "ft", "least plan dimension, geometry")
	s.Step("a", "max(min(0.1 * b_min, 0.4 * h), 0.04 * b_min, 3)", w.Edge/calc.Ft, "ft", w.Figures.String()+" figures of 30, notes")
	return s.Lines()
}
