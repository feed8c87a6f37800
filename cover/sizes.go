package cover

// The sizes that are tried for a member that was left open, the least wood first.
// A size that has no published values in the species and grade is passed over.
var (
	rafterSizes = []string{"2x4", "2x6", "2x8", "2x10", "3x8", "2x12", "3x10", "3x12"}
	beamSizes   = []string{
		"4x4", "4x6", "4x8", "4x10", "4x12", "6x8", "4x14", "6x10", "4x16", "6x12", "6x14", "6x16", "8x14", "8x16",
	}
	postSizes = []string{"4x4", "4x6", "6x6", "6x8", "8x8", "8x10", "10x10"}
)
