package cover

import (
	"slices"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections/dowel"
)

// checkConnections checks what is said of fasteners against the tables.
func (in Input) checkConnections(f *calc.Fields) {
	at, c := f.In("connections"), in.Connections
	switch {
	case (c.DeckNail == nil) != (c.DeckNailSize == nil):
		at.Add("deck_nail", "only one of type and size", "a type with a size, such as common and 8d")
	case c.DeckNail != nil:
		if _, ok := dowel.FindNail(*c.DeckNail, *c.DeckNailSize); !ok && nailTypeKnown(*c.DeckNail) {
			at.OneOf("deck_nail_size", *c.DeckNailSize, nailSizes(*c.DeckNail)...)
		}
	}
	if c.WallSpecies != nil && !slices.Contains(lumber.Species(), *c.WallSpecies) {
		at.OneOf("wall_species", *c.WallSpecies, lumber.Species()...)
	}
}

// nailTypeKnown reports whether the table has nails of the type.
func nailTypeKnown(kind string) bool { return len(nailSizes(kind)) > 0 }

// nailSizes lists the sizes of the nails of a type, in the order of the table.
func nailSizes(kind string) []string {
	var out []string
	for _, n := range dowel.Nails() {
		if size, ok := n.SizeOf(kind); ok {
			out = append(out, size)
		}
	}
	return out
}
