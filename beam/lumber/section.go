package lumber

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"patiocover/calc"
)

// A Section is a size of wood: a rectangular piece, several plies of one size side by
// side, or a round pole, whose breadth and depth are its diameter. Of a single piece
// Breadth is never larger than Depth; a piece that is loaded on its wide face keeps
// its section and says so in [Use].
type Section struct {
	Name             string    // such as 2x8
	Breadth          float64   // b, in: the actual thickness
	Depth            float64   // d, in: the actual width, measured the deep way
	NominalThickness float64   // in: decides the table of values and the size factor
	NominalWidth     float64   // in: decides the size factor
	Class            Class     // by the nominal size of one piece
	Source           string    // where the actual size comes from
	Plies            int       // pieces side by side; 0 and 1: a single piece
	Fastening        Fastening // what makes plies act together
	Round            bool      // a circle of diameter Depth
}

// Area returns A = b d, of a pole pi d²/4, in².
func (s Section) Area() float64 {
	if s.Round {
		return math.Pi / 4 * s.Depth * s.Depth // circle
	}
	return s.Breadth * s.Depth
}

// Modulus returns S = b d²/6 about the strong axis, of a pole pi d³/32, in³.
func (s Section) Modulus() float64 {
	if s.Round {
		return math.Pi / 32 * s.Depth * s.Depth * s.Depth // circle
	}
	return s.Breadth * s.Depth * s.Depth / 6
}

// Inertia returns I = b d³/12 about the strong axis, of a pole pi d⁴/64, in⁴.
func (s Section) Inertia() float64 {
	if s.Round {
		return math.Pi / 64 * s.Depth * s.Depth * s.Depth * s.Depth // circle
	}
	return s.Breadth * s.Depth * s.Depth * s.Depth / 12 // second moment of a rectangle
}

// ModulusFlat returns S = d b²/6 about the weak axis, in³: of plies, which slip on
// each other, the sum of one by one.
func (s Section) ModulusFlat() float64 {
	if s.Round {
		return s.Modulus()
	}
	return s.Depth * s.Breadth * s.Ply() / 6
}

// InertiaFlat returns I = d b³/12 about the weak axis, in⁴: of plies, which slip on
// each other, the sum of one by one.
func (s Section) InertiaFlat() float64 {
	if s.Round {
		return s.Inertia()
	}
	return s.Depth * s.Breadth * s.Ply() * s.Ply() / 12 // second moment of a rectangle
}

// Ply returns the breadth of one ply, in: of a single piece its breadth.
func (s Section) Ply() float64 { return s.Breadth / float64(max(1, s.Plies)) }

// Lateral returns the breadth that keeps a bending member from moving sideways, in:
// the whole of it, or of plies that are not fastened together that of one.
func (s Section) Lateral() float64 {
	if s.Fastening == Unfastened {
		return s.Ply()
	}
	return s.Breadth
}

// BucklingSide returns the side that le/d of a column counts for the whole section,
// in: the given one, of a pole that of the square of equal area (NDS 2018 3.7.3).
func (s Section) BucklingSide(side float64) float64 {
	if s.Round {
		return math.Sqrt(math.Pi) / 2 * side // side of the square of equal area
	}
	return side
}

// Widest returns the larger side, in: of plies that may be the breadth.
func (s Section) Widest() float64 { return max(s.Breadth, s.Depth) }

// Contact returns what a flat seat may count of a side at the end of the piece, in: of a
// pole the side of the square inside the circle.
func (s Section) Contact(side float64) float64 {
	if s.Round {
		return side / math.Sqrt2 // square inside a circle
	}
	return side
}

//go:embed sizes.csv
var sizesCSV string

// sizes holds the rows of NDS Supplement 2018 Tables 1A and 1B.
var sizes = calc.ReadTable("sizes.csv", sizesCSV, func(r calc.Row) Section {
	thickness, width := r.Num("thickness in"), r.Num("width in")
	return Section{
		Name: r.Text("name"), Breadth: r.Num("b in"), Depth: r.Num("d in"),
		NominalThickness: thickness, NominalWidth: width,
		Class: ClassOf(thickness, width), Source: r.Text("source"),
	}
})

// Sections returns every dressed size, by thickness and then by width.
func Sections() []Section { return slices.Clone(sizes) }

// SectionNamed returns the size with the name: dressed lumber by its nominal size, such
// as 2x8; plies of it, such as 3-2x10, not fastened together until [Section.Fastened]
// says so; glued wood by its actual size, such as 5-1/8x12 or 2-1-3/4x9-1/2; a pole by
// its diameter, such as 8 in. round. The error lists the dressed sizes.
func SectionNamed(name string) (Section, error) {
	if s, ok := dressed(name); ok {
		return s, nil
	}
	if s, ok := otherSize(name); ok {
		return s, nil
	}
	names := make([]string, len(sizes))
	for i, s := range sizes {
		names[i] = s.Name
	}
	return Section{}, &NotListed{What: "size", Given: name, Allowed: names}
}

// undersize and oversize are how far, in inches, an actual side may lie below and
// above its nominal size to count as lumber of that nominal size: dressed sides
// lie up to 3/4 in. below, full-sawn sides at it, sawing varies by 1/4 in.
const (
	undersize = 1.0
	oversize  = 0.25
)

// Measured returns the section of a rough, full-sawn or old piece with the nominal
// size thickness by width and the measured sides breadth and depth, all in inches,
// the small one first. Values and size factors go by the nominal size, stresses by
// the measured sides. The error says which side does not fit its nominal size.
func Measured(thickness, width, breadth, depth float64) (Section, error) {
	var f calc.Fields
	f.Within("thickness", thickness, 1, width, "in")
	f.Within("width", width, thickness, 24, "in")
	f.Within("breadth", breadth, thickness-undersize, thickness+oversize, "in")
	f.Within("depth", depth, max(breadth, width-undersize), width+oversize, "in")
	if !(breadth > 0) {
		f.Add("breadth", calc.Number(breadth), "above 0 in")
	}
	if err := f.Err(); err != nil {
		return Section{}, err
	}
	return Section{
		Name: fmt.Sprintf("%sx%s measured %s x %s in", calc.Number(thickness),
			calc.Number(width), calc.Number(breadth), calc.Number(depth)),
		Breadth: breadth, Depth: depth, NominalThickness: thickness, NominalWidth: width,
		Class: ClassOf(thickness, width), Source: "measured",
	}, nil
}
