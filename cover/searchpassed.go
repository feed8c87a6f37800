package cover

import (
	"errors"
	"slices"
	"strconv"

	"patiocover/calc"
)

// passed lists what of the space no cover can be built of: sizes and woods without published
// values together, and layouts that the rules of an input do not allow.
func (s *Space) passed(in Input) []string {
	full := s.filled(in)
	out := []string{}
	say := func(words string) { out = append(out, words) }
	for _, g := range []struct {
		group, one string
		up         makeup
		woods      []Wood
		sizes      []string
	}{
		{"rafters", "rafter", in.Rafters.makeup(), full.RafterWoods, full.RafterSizes},
		{"beams", "beam", in.Beams.makeup(), full.BeamWoods, full.BeamSizes},
		{"posts", "post", in.Posts.makeup(), full.PostWoods, full.PostSizes},
	} {
		known := func(w Wood, size string) bool {
			var f calc.Fields
			in.checkMakeup(g.group, g.up, &w.Species, &w.Grade, &size, &f)
			return !f.Any()
		}
		for _, size := range g.sizes {
			if !slices.ContainsFunc(g.woods, func(w Wood) bool { return known(w, size) }) {
				say(g.one + " " + size + ": no published values in the woods of the list")
			}
		}
		for _, w := range g.woods {
			if !slices.ContainsFunc(g.sizes, func(size string) bool { return known(w, size) }) {
				say(g.one + " of " + w.String() + ": no published values in the sizes of the list")
			}
		}
	}
	for _, x := range s.Spacings {
		v := in.clone()
		v.Rafters.Spacing = &x
		s.refused(v, calc.Number(x)+" in spacing", say)
	}
	for _, n := range s.PostCounts {
		v := in.clone()
		v.Posts.Count = &n
		s.refused(v, strconv.Itoa(n)+" posts a line", say)
	}
	return out
}

// refused says why an input with one value of the space is not allowed, where it is not.
func (s *Space) refused(in Input, what string, say func(string)) {
	var wrong *calc.InputError
	if errors.As(in.Validate(), &wrong) {
		say(what + ": " + wrong.Error())
	}
}
