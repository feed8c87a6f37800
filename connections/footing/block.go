package footing

import (
	"math"

	"patiocover/calc"
)

// Unit weights. The lighter concrete and the lighter soil are those that resist; the
// heavier concrete is the one that presses on the soil.
const (
	concreteLeast = 145 * calc.PCF  // plain concrete that holds down: the low end of 145 to 150 pcf
	concreteMost  = 150 * calc.PCF  // concrete that presses (ASCE 7-16 Table C3.1-2, from memory)
	soilWeight    = 100 * calc.PCF  // soil, unless a report says more; common practice
	waterWeight   = 62.4 * calc.PCF // fresh water
)

// A Shape is the outline of a footing on plan.
type Shape uint8

// The shapes.
const (
	Square Shape = iota
	Round
)

// String names the shape.
func (s Shape) String() string {
	if s == Round {
		return "round"
	}
	return "square"
}

// area is the area of the shape of a width, in².
func (s Shape) area(width float64) float64 {
	if s == Round {
		return math.Pi / 4 * width * width
	}
	return width * width
}

// formula writes the area of a symbol.
func (s Shape) formula(symbol string) string {
	if s == Round {
		return "pi / 4 * " + symbol + " * " + symbol
	}
	return symbol + " * " + symbol
}

// A Block is the concrete of one footing or pier, its top at grade. Where the depth is
// more than the thickness a neck of the same shape rises from the pad to grade.
type Block struct {
	Shape     Shape   // square or round
	Width     float64 // B, side or diameter of the pad, in
	Thickness float64 // t, of the pad, in; at most the depth
	Depth     float64 // d, of its bottom below undisturbed grade, in
	Neck      float64 // B_n, side or diameter of the neck, in; 0 where the pad reaches grade
	Core      float64 // A_0, section of a post that stands in the concrete through its depth, in²
	Water     float64 // d_w, ground water below grade, in
	SoilOver  bool    // the soil above the pad is sure to stay and no slab or paving lies on it
}

// Area is the area pressed on the soil, in².
func (b Block) Area() float64 { return b.Shape.area(b.Width) }

// Volume is the volume of its concrete without what a post takes of it, in³.
func (b Block) Volume() float64 {
	return (b.Area()-b.Core)*b.Thickness + b.Shape.area(b.Neck)*(b.Depth-b.Thickness)
}

// across is the width that a sideways force meets, in: the diameter of a round one and
// the diagonal of a square one, in the part below grade (IBC 2018 1807.3.2.1).
func (b Block) across() float64 {
	width := b.Width
	if b.Neck > 0 {
		width = b.Neck
	}
	if b.Shape == Square {
		return width * math.Sqrt2
	}
	return width
}

// lines writes the sizes and the volume, in feet.
func (b Block) lines(s *calc.Sheet) {
	s.Given("B", b.Width/calc.Ft, "ft", b.Shape.String()+" footing, side or diameter")
	s.Given("t", b.Thickness/calc.Ft, "ft", "thickness of the concrete at its bottom")
	s.Given("d", b.Depth/calc.Ft, "ft", "bottom below undisturbed grade")
	s.Step("A", b.Shape.formula("B"), b.Area()/calc.SqFt, "ft²", "geometry")
	if b.Depth > b.Thickness {
		s.Given("B_n", b.Neck/calc.Ft, "ft", "neck from the pad to grade, side or diameter")
		s.Step("A_n", b.Shape.formula("B_n"), b.Shape.area(b.Neck)/calc.SqFt, "ft²", "geometry")
		s.Step("V", "A * t + A_n * (d - t)", b.Volume()/cubicFoot, "ft³", "geometry")
		return
	}
	if b.Core > 0 {
		s.Given("A_0", b.Core/calc.SqFt, "ft²", "section of the post in the concrete")
		s.Step("V", "(A - A_0) * t", b.Volume()/cubicFoot, "ft³", "geometry; the post's own weight is left out")
		return
	}
	s.Step("V", "A * t", b.Volume()/cubicFoot, "ft³", "geometry")
}

// cubicFoot is one cubic foot in in³.
const cubicFoot = calc.SqFt * calc.Ft
