package lumber

import "fmt"

// A Class is what the grading rules call a piece, by its nominal size and never
// by its use (NDS 2018 4.1.3); or that the grading rules of sawn lumber do not know it.
type Class uint8

// The classes.
const (
	Board        Class = iota // under 2 in. thick: no structural design values here
	Dimension                 // 2 to 4 in. thick, such as 2x8, 4x4, 4x12
	BeamStringer              // 5 in. and thicker, wider than the thickness plus 2 in., such as 6x10
	PostTimber                // 5x5 and larger, no wider than the thickness plus 2 in., such as 6x8
	Manufactured              // glued, named by its actual size, such as 5-1/8x12
	Pole                      // round, named by its diameter, such as 8 in. round
)

var classNames = [...]string{
	Board: "board", Dimension: "dimension", BeamStringer: "beams and stringers",
	PostTimber: "posts and timbers", Manufactured: "glued", Pole: "round pole",
}

// String returns the trade's name of the class.
func (c Class) String() string {
	if int(c) < len(classNames) {
		return classNames[c]
	}
	return fmt.Sprintf("Class(%d)", uint8(c))
}

// Timber reports whether pieces of the class take their values from Table 4D.
func (c Class) Timber() bool { return c == BeamStringer || c == PostTimber }

// ClassOf returns the class of a piece of the nominal thickness and width, in
// inches. The smaller of the two is taken as the thickness.
func ClassOf(thickness, width float64) Class {
	if thickness > width {
		thickness, width = width, thickness
	}
	switch {
	case thickness < 2:
		return Board
	case thickness < 5:
		return Dimension
	case width > thickness+2:
		return BeamStringer
	}
	return PostTimber
}
