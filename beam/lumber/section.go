package lumber

import (
	_ "embed"
	"fmt"
	"slices"

	"patiocover/calc"
)

// A Section is a rectangular piece of sawn lumber. Breadth is never larger than
// Depth; a piece that is loaded on its wide face keeps its section and says so in
// [Use].
type Section struct {
	Name             string  // such as 2x8
	Breadth          float64 // b, in: the actual thickness
	Depth            float64 // d, in: the actual width, measured the deep way
	NominalThickness float64 // in: decides the table of values and the size factor
	NominalWidth     float64 // in: decides the size factor
	Class            Class   // dimension, beams and stringers, posts and timbers
	Source           string  // where the actual size comes from
}

// Area returns A = b d, in².
func (s Section) Area() float64 { return s.Breadth * s.Depth }

// Modulus returns S = b d²/6 about the strong axis, in³.
func (s Section) Modulus() float64 { return s.Breadth * s.Depth * s.Depth / 6 }

// Inertia returns I = b d³/12 about the strong axis, in⁴.
func (s Section) Inertia() float64 {
	return s.Breadth * s.Depth * s.Depth * s.Depth / 12 // second moment of a rectangle
}

// ModulusFlat returns S = d b²/6 about the weak axis, in³.
func (s Section) ModulusFlat() float64 { return s.Depth * s.Breadth * s.Breadth / 6 }

// InertiaFlat returns I = d b³/12 about the weak axis, in⁴.
func (s Section) InertiaFlat() float64 {
	return s.Depth * s.Breadth * s.Breadth * s.Breadth / 12 // second moment of a rectangle
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

// SectionNamed returns the dressed size with the nominal name, such as 2x8. The
// error lists what is known.
func SectionNamed(name string) (Section, error) {
	for _, s := range sizes {
		if s.Name == name {
			return s, nil
		}
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
