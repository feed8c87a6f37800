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
	out := []string{}
	say := func(words string) { out = append(out, words) }
	for _, g := range []struct {
		group, one string
		up         makeup
		woods      []Wood
		sizes      []string
	}{
		{"rafters", "rafter", in.Rafters.makeup(), s.RafterWoods, s.RafterSizes},
		{"beams", "beam", in.Beams.makeup(), s.BeamWoods, s.BeamSizes},
		{"posts", "post", in.Posts.makeup(), []Wood{{*in.Posts.Species, *in.Posts.Grade}}, s.PostSizes},
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
	in.Rafters.Size, in.Beams.Size, in.Posts.Size = nil, nil, nil
	var wrong *calc.InputError
	if errors.As(in.Validate(), &wrong) {
		say(what + ": " + wrong.Error())
	}
}
