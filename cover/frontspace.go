package cover

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A Space lists what a cover may be built of. A combination of species, grade and size
// without published values is passed over. An empty list leaves its part as the input has
// it.
type Space struct {
	RafterWoods []Wood        `json:"rafter_woods"`         // of the rafters and the ledger
	RafterSizes []string      `json:"rafter_sizes"`         // nominal
	Spacings    []float64     `json:"rafter_spacings_in"`   // in on center
	BeamWoods   []Wood        `json:"beam_woods"`           // of the beams
	BeamSizes   []string      `json:"beam_sizes"`           // nominal
	PostCounts  []int         `json:"post_counts"`          // posts of each beam line, at least 2
	PostWoods   []Wood        `json:"post_woods,omitempty"` // of the posts
	PostSizes   []string      `json:"post_sizes"`           // nominal
	Ties        []TieWay      `json:"ties,omitempty"`       // of the rafters to the beams
	Ledgers     []LedgerWay   `json:"ledgers,omitempty"`    // of the ledger to the house
	Footings    []StandingWay `json:"footings,omitempty"`   // of the posts
	Compare     []string      `json:"compare,omitempty"`    // keys of a point that count; all five when empty
}

// A TieWay is one way to tie the rafters to the beams.
type TieWay struct {
	Kind  string `json:"kind"`            // rated or straps
	Gauge string `json:"gauge,omitempty"` // of straps; that of the input when empty
}

// apply says in the input that the rafters are tied so.
func (w *TieWay) apply(c *Connections) {
	if w == nil {
		return
	}
	c.Tie = &w.Kind
	if w.Gauge != "" {
		c.StrapGauge = &w.Gauge
	}
}

// A LedgerWay is one way to fasten the ledger.
type LedgerWay struct {
	Lag  string `json:"lag"`  // diameter of the lag screws, as ordered
	Each int    `json:"each"` // at each stud, or at each spacing of a rim
}

func (w *LedgerWay) apply(c *Connections) {
	if w != nil {
		c.LagSize, c.LagsEach = &w.Lag, &w.Each
	}
}

// A StandingWay is one way for the posts to stand.
type StandingWay struct {
	Kind  string  `json:"kind"`               // slab, footing or pier
	Width float64 `json:"width_in,omitempty"` // in, side or diameter; chosen when 0
}

// apply says in the input that the posts stand so. What was given of a foundation of
// another kind goes with it.
func (w *StandingWay) apply(f *Foundation) {
	if w == nil {
		return
	}
	if f.Kind == nil || *f.Kind != w.Kind {
		f.Width, f.Depth, f.Neck, f.PadThickness = nil, nil, nil, nil
	}
	f.Kind = &w.Kind
	if w.Width > 0 {
		f.Width = &w.Width
	}
}

// UsualSpace is what is tried for a job when nothing else is said: its own wood, the usual
// spacings, sizes that yards keep, from one post less to two posts more on each line, and
// footings beside a slab. A size that the input gives is kept.
func UsualSpace(in Input) Space {
	full, _ := in.Assume()
	s := Space{
		RafterWoods: []Wood{{*full.Rafters.Species, *full.Rafters.Grade}}, BeamWoods: []Wood{{*full.Beams.Species, *full.Beams.Grade}},
		RafterSizes: sizesOr(in.Rafters.Size, *full.Rafters.Species, nil, rafterSizes),
		BeamSizes:   sizesOr(in.Beams.Size, *full.Beams.Species, full.Beams.Plies, beamSizes),
		PostSizes:   sizesOr(in.Posts.Size, *full.Posts.Species, full.Posts.Plies, postSizes),
		Spacings:    slices.Clone(usualSpacings),
	}
	if own := *full.Rafters.Spacing; !slices.Contains(s.Spacings, own) {
		s.Spacings = append(s.Spacings, own)
	}
	if *full.Foundation.Kind == "slab" {
		s.Footings = []StandingWay{{Kind: "slab"}, {Kind: "footing"}}
	}
	if full.Posts.Count != nil {
		for n := max(2, *full.Posts.Count-1); n <= *full.Posts.Count+2; n++ {
			s.PostCounts = append(s.PostCounts, n)
		}
	}
	return s
}

// sizesOr is the size that was given, or the sizes that are tried for the wood.
func sizesOr(given *string, species string, plies *int, list []string) []string {
	st := stock{species: species}
	if given != nil {
		st.size = *given
	}
	if plies != nil {
		st.plies = *plies
	}
	return slices.Clone(st.sizes(list))
}

// filled is the space with what the input has in the place of empty lists. The input must
// be valid.
func (s *Space) filled(in Input) Space {
	full, _ := in.Assume()
	own := UsualSpace(in)
	out := *s
	orElse(&out.RafterWoods, own.RafterWoods)
	orElse(&out.BeamWoods, own.BeamWoods)
	orElse(&out.PostWoods, []Wood{{*full.Posts.Species, *full.Posts.Grade}})
	orElse(&out.RafterSizes, own.RafterSizes)
	orElse(&out.BeamSizes, own.BeamSizes)
	orElse(&out.PostSizes, own.PostSizes)
	orElse(&out.Spacings, []float64{*full.Rafters.Spacing})
	if full.Posts.Count != nil {
		orElse(&out.PostCounts, []int{*full.Posts.Count})
	}
	return out
}

// orElse puts the input's own in the place of an empty list.
func orElse[T any](list *[]T, own []T) {
	if len(*list) == 0 {
		*list = own
	}
}

// counts lists the numbers of posts of a line; of posts at given places it is one, 0.
func (s *Space) counts() []int {
	if len(s.PostCounts) == 0 {
		return []int{0}
	}
	return s.PostCounts
}

// compared lists the keys of what counts.
func (s *Space) compared() []string {
	if len(s.Compare) == 0 {
		return measureNames[:]
	}
	return s.Compare
}

// measures tells what counts.
func (s *Space) measures() measures {
	var out measures
	for i, name := range measureNames {
		out[i] = slices.Contains(s.compared(), name)
	}
	return out
}

// options counts the combinations.
func (s *Space) options(in Input) float64 {
	full := s.filled(in)
	n := 1.0
	for _, k := range []int{
		len(full.RafterWoods), len(full.RafterSizes), len(full.Spacings), len(full.BeamWoods), len(full.BeamSizes), len(full.counts()),
		len(full.PostWoods), len(full.PostSizes), max(1, len(full.Ties)), max(1, len(full.Ledgers)), max(1, len(full.Footings)),
	} {
		n *= float64(k)
	}
	return n
}

// The largest space that one search takes, limits of this program: combinations, and layouts
// of one spacing and one number of posts.
const (
	mostOptions = 1e11
	mostLayouts = 200
	mostSticks  = 2000 // species, grades and sizes of one kind of member
	mostPairs   = 5e6  // rafters of every spacing on beams
)

// validate lists what the search does not answer for.
func (s *Space) validate(in Input, l Limits) error {
	var f calc.Fields
	full := s.filled(in)
	if n := s.options(in); n > mostOptions {
		f.Add("space", calc.Number(n)+" combinations", "no more than "+calc.Number(mostOptions))
	}
	if n := len(full.Spacings) * len(full.counts()); n > mostLayouts {
		f.Add("space.rafter_spacings_in", strconv.Itoa(n)+" spacings times numbers of posts", "no more than "+strconv.Itoa(mostLayouts))
	}
	if n := len(full.RafterWoods) * len(full.RafterSizes) * len(full.Spacings) * len(full.BeamWoods) * len(full.BeamSizes); n > mostPairs {
		f.Add("space", strconv.Itoa(n)+" combinations of rafters and beams", "no more than "+calc.Number(mostPairs))
	}
	full.validatePosts(in, &f)
	full.validateWood("rafter", full.RafterWoods, full.RafterSizes, in.Rafters.makeup(), in, &f)
	full.validateWood("beam", full.BeamWoods, full.BeamSizes, in.Beams.makeup(), in, &f)
	full.validateWood("post", full.PostWoods, full.PostSizes, in.Posts.makeup(), in, &f)
	full.validateWays(in, &f)
	for i, x := range full.Spacings {
		validateBy(fmt.Sprintf("space.rafter_spacings_in[%d]", i), "rafters.spacing_in", x, &f)
	}
	for i, name := range s.Compare {
		if !slices.Contains(measureNames[:], name) {
			f.OneOf(fmt.Sprintf("space.compare[%d]", i), name, measureNames[:]...)
		}
	}
	l.validate(in, &f)
	l.validateSpace(&full, in, &f)
	return f.Err()
}

// validateBy holds a number against the range of a field of the input.
func validateBy(path, field string, x float64, f *calc.Fields) {
	if d, ok := FieldOf(field); ok {
		f.Within(path, x, d.Low, d.High, d.Unit)
	}
}

// validatePosts checks the numbers of posts.
func (s *Space) validatePosts(in Input, f *calc.Fields) {
	if in.Posts.Count == nil && len(s.PostCounts) > 0 {
		f.Add("space.post_counts", strconv.Itoa(len(s.PostCounts))+" numbers",
			"none where the posts stand at given places: give posts.count, and the search spaces them itself")
	}
	for i, n := range s.PostCounts {
		validateBy(fmt.Sprintf("space.post_counts[%d]", i), "posts.count", float64(n), f)
	}
}

// validateWood checks species, grades and sizes of one kind of member.
func (s *Space) validateWood(kind string, woods []Wood, sizes []string, up makeup, in Input, f *calc.Fields) {
	if n := len(woods) * len(sizes); n > mostSticks {
		f.Add("space."+kind+"_woods", strconv.Itoa(n)+" woods times sizes", "no more than "+strconv.Itoa(mostSticks))
		return
	}
	if given(up.breadth, up.depth) && len(sizes) > 1 {
		f.Add("space."+kind+"_sizes", strconv.Itoa(len(sizes))+" sizes", "the one size of wood whose sides were measured")
	}
	known := func(w Wood) bool {
		st := newStock(&w.Species, &w.Grade, nil, false, false, "to_100F").made(up, in.Products)
		return slices.Contains(lumber.Grades(w.Species), w.Grade) || slices.ContainsFunc(sizes, func(size string) bool {
			_, err := newWood(st, size)
			return err == nil
		})
	}
	for i, w := range woods {
		if !known(w) {
			f.Add(fmt.Sprintf("space.%s_woods[%d]", kind, i), strconv.Quote(w.String()),
				"a species of the tables, glued or sawn, or a product of the input, with a grade that has values")
		}
	}
	for i, size := range sizes {
		if _, err := lumber.SectionNamed(size); err != nil {
			f.Add(fmt.Sprintf("space.%s_sizes[%d]", kind, i), strconv.Quote(size), "a size by name, such as 2x8 or 5.125x12")
		}
	}
}

// validateWays checks ties, ledgers and footings.
func (s *Space) validateWays(in Input, f *calc.Fields) {
	for i, w := range s.Ties {
		at := fmt.Sprintf("space.ties[%d].", i)
		if w.Kind != "rated" && w.Kind != "straps" {
			f.OneOf(at+"kind", w.Kind, "rated", "straps")
		}
		if d, _ := FieldOf("connections.strap_gauge"); w.Gauge != "" && !slices.Contains(d.Choices, w.Gauge) {
			f.OneOf(at+"gauge", w.Gauge, d.Choices...)
		}
	}
	for i, w := range s.Ledgers {
		at := fmt.Sprintf("space.ledgers[%d].", i)
		if d, _ := FieldOf("connections.ledger_lag"); !slices.Contains(d.Choices, w.Lag) {
			f.OneOf(at+"lag", w.Lag, d.Choices...)
		}
		validateBy(at+"each", "connections.ledger_lags_each", float64(w.Each), f)
	}
	for i, w := range s.Footings {
		at := fmt.Sprintf("space.footings[%d].", i)
		if !slices.Contains([]string{"slab", "footing", "pier"}, w.Kind) {
			f.OneOf(at+"kind", w.Kind, "slab", "footing", "pier")
		}
		if w.Width != 0 {
			validateBy(at+"width_in", "foundation.width_in", w.Width, f)
		}
	}
	if len(s.Footings) > 0 && in.Foundation.Kind != nil && *in.Foundation.Kind == "embedded" {
		f.Add("space.footings", strconv.Itoa(len(s.Footings))+" kinds", "none where the posts are set in the ground")
	}
}

// validateSpace wants of every list of a filled space something that the limits allow.
func (l *Limits) validateSpace(s *Space, in Input, f *calc.Fields) {
	if len(l.Species) > 0 {
		for _, x := range []struct {
			members string
			woods   []Wood
		}{{"rafters", s.RafterWoods}, {"beams", s.BeamWoods}, {"posts", s.PostWoods}} {
			if !slices.ContainsFunc(x.woods, func(w Wood) bool { return slices.Contains(l.Species, w.Species) }) {
				f.Add("limits.species_on_hand", strings.Join(l.Species, ", "),
					"a species that the "+x.members+" may be of, such as "+x.woods[0].Species+", or woods of these species in their list")
			}
		}
	}
	if !l.SlabOnly {
		return
	}
	if len(s.Footings) > 0 && !slices.ContainsFunc(s.Footings, func(w StandingWay) bool { return w.Kind == "slab" }) {
		f.Add("limits.slab_only", "true", "true where space.footings names a slab or is left out; else left out")
	}
	if is(in.Foundation.Kind, "embedded") {
		f.Add("limits.slab_only", "true", "left out where the posts are set in the ground")
	}
}

// validate checks the limits.
func (l *Limits) validate(in Input, f *calc.Fields) {
	if l.Posts < 0 {
		f.Add("limits.posts", strconv.Itoa(l.Posts), "0 for no limit, or more")
	}
	for _, x := range []struct {
		key   string
		value float64
	}{{"depth_in", l.Depth}, {"tie_rating_lb", l.Rating}, {"clear_from_ft", l.ClearFrom}, {"clear_to_ft", l.ClearTo}} {
		if !(x.value >= 0) {
			f.Add("limits."+x.key, calc.Number(x.value), "0 for no limit, or more")
		}
	}
	if l.ClearTo < l.ClearFrom {
		f.Add("limits.clear_to_ft", calc.Number(l.ClearTo)+" ft", "no less than clear_from_ft, "+calc.Number(l.ClearFrom)+" ft")
	}
	for i, name := range l.Species {
		_, product := productNamed(in.Products, &name)
		if !product && len(lumber.Grades(name)) == 0 && !lumber.Laminated(name) {
			f.Add(fmt.Sprintf("limits.species_on_hand[%d]", i), strconv.Quote(strings.TrimSpace(name)), "a species of the tables")
		}
	}
	if kind := in.Foundation.Kind; l.SlabOnly && in.Foundation.SlabThickness == nil && kind != nil {
		f.Missing("foundation.slab_thickness_in", "the thickness of the slab that the posts must stand on")
	}
}
