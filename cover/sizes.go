package cover

import (
	"cmp"
	"slices"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// The sizes that are tried for a member that was left open, the least wood first.
// A size that has no published values in the species and grade is passed over.
var (
	rafterSizes = []string{"2x4", "2x6", "2x8", "2x10", "3x8", "2x12", "3x10", "3x12"}
	beamSizes   = []string{
		"4x4", "4x6", "4x8", "4x10", "4x12", "6x8", "4x14", "6x10", "4x16", "6x12", "6x14", "6x16", "8x14", "8x16",
	}
	postSizes = []string{"4x4", "4x6", "6x6", "6x8", "8x8", "8x10", "10x10"}
	plySizes  = []string{"2x4", "2x6", "2x8", "2x10", "2x12"} // of one ply
)

// The glued laminated timber that is tried: common widths, in, and the deepest, in.
var (
	laminatedWidths  = []float64{3.125, 3.5, 5.125, 5.5, 6.75}
	deepestLaminated = 24 * calc.In
)

// laminatedSizes returns the sizes of glued laminated timber that are tried, the least
// wood first. A beam more than seven times as deep as wide is passed over.
func laminatedSizes(species string) []string {
	const slimmest = 7.0
	some := slices.DeleteFunc(lumber.LaminatedSections(species, deepestLaminated), func(s lumber.Section) bool {
		return !slices.Contains(laminatedWidths, s.Breadth) || s.Depth > slimmest*s.Breadth || s.Depth < s.Breadth
	})
	slices.SortStableFunc(some, func(a, b lumber.Section) int { return cmp.Compare(a.Area(), b.Area()) })
	names := make([]string, len(some))
	for i, s := range some {
		names[i] = s.Name
	}
	return names
}

// braceSizes are the sizes of knee braces: as thick as a post, so that they stand in line
// with post and beam and are not bent by lapping past them.
var braceSizes = []string{"4x4", "4x6", "6x6", "6x8", "8x8"}
