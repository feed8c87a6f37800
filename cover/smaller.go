package cover

import "slices"

// A Smaller is the size next below that of one kind of member, tried with everything else as
// it is.
type Smaller struct {
	Mark    string `json:"mark"`              // R1, BM, P
	Name    string `json:"name"`              // rafter, beam, post
	Now     string `json:"now"`               // size of the design
	Size    string `json:"size,omitempty"`    // size next below
	Passes  bool   `json:"passes"`            // no member is over with it: a size was given that is more than what is needed
	Over    string `json:"over,omitempty"`    // mark of the member whose check has the largest ratio with it
	Check   string `json:"check,omitempty"`   // that check
	Ratio   Ratio  `json:"ratio"`             // its ratio
	Least   bool   `json:"least"`             // no smaller size is tried
	Missing string `json:"missing,omitempty"` // why there is no answer
}

// smaller tries the size next below for rafters, beams and posts. kept is the input with all
// sizes given.
func (m *model) smaller(kept Input) []Smaller {
	var out []Smaller
	for _, k := range []struct {
		mark, name string
		st         stock
		list       []string
		at         func(*Input) **string
	}{
		{"R1", "rafter", m.rafters, rafterSizes, func(in *Input) **string { return &in.Rafters.Size }},
		{"BM", "beam", m.beams, beamSizes, func(in *Input) **string { return &in.Beams.Size }},
		{"P", "post", m.posts, postSizes, func(in *Input) **string { return &in.Posts.Size }},
	} {
		s := Smaller{Mark: k.mark, Name: k.name, Now: **k.at(&kept)}
		size, why := k.st.below(s.Now, k.list)
		if s.Missing, s.Least = why, why == "" && size == ""; size == "" {
			out = append(out, s)
			continue
		}
		in := kept.clone()
		if m.planted() { // a post in the ground bends by its own footing, not by that of another size
			in.Foundation.Width, in.Foundation.Depth = m.in.Foundation.Width, m.in.Foundation.Depth
		}
		s.Size, *k.at(&in) = size, &size
		t := tryInput(in, 0)
		s.Missing, s.Passes = t.fault, t.passes()
		if t.fault == "" {
			s.Over, s.Check, s.Ratio = t.over.mark, t.over.check, t.over.ratio
		}
		out = append(out, s)
	}
	return out
}

// below is the size before the present one among those that are tried, or, where that one
// is not among them, the largest with less wood; empty where there is none. why says why that
// is not known.
func (st stock) below(now string, list []string) (size, why string) {
	switch {
	case st.measured[0] > 0:
		return "", "wood that was measured has no size next below"
	case st.product != nil:
		return "", "the sizes of a product are those of its maker"
	}
	w, err := newWood(st, now)
	if err != nil {
		return "", err.Error()
	}
	st.size = ""
	all := st.candidates(list)
	at := slices.IndexFunc(all, func(o wood) bool { return o.section.Name == w.section.Name })
	if at < 0 {
		less := 0.0
		for i := range all {
			if a := all[i].section.Area(); a < w.section.Area() && a > less {
				less, at = a, i+1
			}
		}
	}
	if at <= 0 {
		return "", ""
	}
	return all[at-1].name, ""
}
