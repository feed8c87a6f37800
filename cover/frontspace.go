package cover

import "slices"

// UsualSpace is what is tried for a job when nothing else is said: its own wood, the usual
// spacings, sizes that yards keep, and from one post less to two posts more on each line. A
// size that the input gives is kept.
func UsualSpace(in Input) Space {
	full, _ := in.Assume()
	s := Space{
		RafterWoods: []Wood{{*full.Rafters.Species, *full.Rafters.Grade}}, BeamWoods: []Wood{{*full.Beams.Species, *full.Beams.Grade}},
		RafterSizes: sizesOr(in.Rafters.Size, rafterSizes), BeamSizes: sizesOr(in.Beams.Size, beamSizes),
		PostSizes: sizesOr(in.Posts.Size, postSizes), Spacings: slices.Clone(usualSpacings),
	}
	if own := *full.Rafters.Spacing; !slices.Contains(s.Spacings, own) {
		s.Spacings = append(s.Spacings, own)
	}
	if full.Posts.Count != nil {
		for n := max(2, *full.Posts.Count-1); n <= *full.Posts.Count+2; n++ {
			s.PostCounts = append(s.PostCounts, n)
		}
	}
	return s
}

// sizesOr is the size that was given, or the list.
func sizesOr(given *string, list []string) []string {
	if given != nil {
		return []string{*given}
	}
	return slices.Clone(list)
}
