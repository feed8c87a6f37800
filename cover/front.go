package cover

import (
	"cmp"
	"context"
	"errors"
	"math"
	"slices"
	"strconv"
	"sync/atomic"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A Space lists what a cover may be built of. A combination of species, grade and size
// without published values is passed over.
type Space struct {
	RafterWoods []Wood    `json:"rafter_woods"`       // of the rafters and the ledger
	RafterSizes []string  `json:"rafter_sizes"`       // nominal
	Spacings    []float64 `json:"rafter_spacings_in"` // in on center
	BeamWoods   []Wood    `json:"beam_woods"`         // of the beams
	BeamSizes   []string  `json:"beam_sizes"`         // nominal
	PostCounts  []int     `json:"post_counts"`        // posts of each beam line, at least 2
	PostSizes   []string  `json:"post_sizes"`         // nominal; of the wood that the input gives
}

// Limits are what the user will not have passed. A zero sets no limit.
type Limits struct {
	Depth     float64 `json:"depth_in,omitempty"`      // in, rafter and beam together
	Rating    float64 `json:"tie_rating_lb,omitempty"` // lb, uplift rating of the largest tie of a rafter
	ClearFrom float64 `json:"clear_from_ft,omitempty"` // ft from the left end: no post stands from here
	ClearTo   float64 `json:"clear_to_ft,omitempty"`   // ft from the left end: to here
}

// A FrontPoint is one cover that holds and that no other one beats.
type FrontPoint struct {
	Cost       float64 `json:"cost"`          // in the measure of the front: dollars, or a factor of board feet
	Sag        float64 `json:"beam_sag_in"`   // in, largest long-term deflection of the beams
	Posts      int     `json:"posts"`         // of all beam lines
	Rating     float64 `json:"tie_rating_lb"` // lb, uplift rating of the largest tie of a rafter; 0 where none lifts
	Depth      float64 `json:"depth_in"`      // in, rafter and beam together; of a flush beam the deeper one
	Spacing    float64 `json:"spacing_in"`    // in on center
	Count      int     `json:"posts_a_line"`  // posts of each beam line
	RafterWood Wood    `json:"rafter_wood"`   // of the rafters and the ledger
	Rafter     string  `json:"rafter"`        // nominal size
	BeamWood   Wood    `json:"beam_wood"`     // of the beams
	Beam       string  `json:"beam"`          // nominal size
	Post       string  `json:"post"`          // nominal size

	order [7]int // places in the lists of the space
}

// A Front is every undominated cover of a space.
type Front struct {
	Notice  string       `json:"notice"`  // who must approve this
	Measure string       `json:"measure"` // what cost is told in: dollars, or board feet where prices are missing
	Options float64      `json:"options"` // combinations in the space, a factor
	Points  []FrontPoint `json:"points"`  // by cost, then sag, posts, rating and depth
	Notes   []string     `json:"notes"`   // what the points rest on
}

// frontNotes say what the points rest on.
var frontNotes = []string{
	"A point holds: no check of its members, foundations, headroom or described deck is over; " +
		"links are not checked here: size it for the written calculation and for what is not checked",
	"Of two covers that are alike in cost, beam sag, posts, tie rating and depth one is listed: the smaller sizes, then the earlier grade",
	"Cost is of wood alone, each piece from a stick of its own: the shortest stock length that reaches",
	"Of the posts the cheapest that hold are taken; ties and footings follow from the design and are not in the cost",
}

// A Progress hears how many of the layouts of a search are done. It is called from several
// goroutines.
type Progress func(done, all int)

// mostOptions is the most combinations that one search takes, limit of this program.
const mostOptions = 2e7

// Undominated finds every cover of the space that holds and that no other one beats in cost,
// beam sag, number of posts, tie rating and depth together. It equals the trial of every
// combination by itself. An input or a space with faults gives a [*calc.InputError]; the
// search ends early with the error of the context. The front does not depend on how many
// goroutines search.
//
// Knee braces tie rafters, beams and posts together and strength design is graded by another
// model: covers with them are refused.
func Undominated(ctx context.Context, in Input, s Space, l Limits, told Progress) (Front, error) {
	if err := in.Validate(); err != nil {
		return Front{}, err
	}
	if err := s.validate(in, l); err != nil {
		return Front{}, err
	}
	out := Front{Notice: Notice, Measure: "dollars", Options: s.options(), Notes: frontNotes}
	if !s.priced(in) {
		out.Measure = "board feet"
	}
	n := len(s.Spacings) * len(s.PostCounts)
	found, faults := make([][]FrontPoint, n), make([]error, n)
	var done atomic.Int64
	each(n, func(i int) {
		found[i], faults[i] = s.layout(ctx, in, l, i/len(s.PostCounts), i%len(s.PostCounts), out.Measure == "dollars")
		if told != nil {
			told(int(done.Add(1)), n)
		}
	})
	if err := errors.Join(faults...); err != nil {
		return Front{}, err
	}
	out.Points = undominated(slices.Concat(found...))
	return out, nil
}

// options counts the combinations.
func (s *Space) options() float64 {
	n := 1.0
	for _, k := range []int{
		len(s.RafterWoods), len(s.RafterSizes), len(s.Spacings), len(s.BeamWoods), len(s.BeamSizes), len(s.PostCounts), len(s.PostSizes),
	} {
		n *= float64(k)
	}
	return n
}

// validate lists what the search does not answer for.
func (s *Space) validate(in Input, l Limits) error {
	var f calc.Fields
	full, _ := in.Assume()
	if n := s.options(); !(n >= 1 && n <= mostOptions) {
		f.Add("space", calc.Number(n)+" combinations",
			"every list has an entry, and no more than "+calc.Number(mostOptions)+" combinations")
	}
	if full.Lateral.kneed() {
		f.Add("lateral", "knee braces", "a search of all covers takes any other lateral system")
	}
	if methodOf(full) != lumber.ASD {
		f.Add("site.design_method", strconv.Quote(methodOf(full).String()), "a search of all covers takes ASD")
	}
	if in.Posts.Count == nil {
		f.Add("posts.count", "posts at given places",
			"a search of all covers spaces the posts itself: give posts.count")
	}
	if given(in.Rafters.MeasuredBreadth) || given(in.Beams.MeasuredBreadth) || given(in.Posts.MeasuredBreadth) {
		f.Add("rafters", "measured wood", "a search of all covers takes sizes by name")
	}
	for _, w := range slices.Concat(s.RafterWoods, s.BeamWoods) {
		if !slices.Contains(lumber.Grades(w.Species), w.Grade) {
			f.Add("space", strconv.Quote(w.String()), "a species of the tables with one of its grades")
		}
	}
	if !(l.Depth >= 0 && l.Rating >= 0 && l.ClearFrom >= 0 && l.ClearTo >= l.ClearFrom) {
		f.Add("limits", "a limit below 0, or a clear bay that ends before it begins", "limits of 0 and more")
	}
	return f.Err()
}

// values are what is compared.
func (p *FrontPoint) values() [5]float64 {
	return [5]float64{p.Cost, p.Sag, float64(p.Posts), p.Rating, p.Depth}
}

// beats reports whether p is nowhere worse than q and somewhere better.
func (p *FrontPoint) beats(q *FrontPoint) bool {
	better := false
	mine, other := p.values(), q.values()
	for i, x := range mine {
		if x > other[i] {
			return false
		}
		better = better || x < other[i]
	}
	return better
}

// undominated sorts the points and keeps those that none before them matches or beats. A
// point that beats another one always stands before it.
func undominated(all []FrontPoint) []FrontPoint {
	slices.SortFunc(all, func(a, b FrontPoint) int {
		x, y := a.values(), b.values()
		return cmp.Or(slices.Compare(x[:], y[:]), slices.Compare(a.order[:], b.order[:]))
	})
	out := []FrontPoint{}
	for i := range all {
		p := &all[i]
		if !slices.ContainsFunc(out, func(q FrontPoint) bool { return q.values() == p.values() || q.beats(p) }) {
			out = append(out, *p)
		}
	}
	return out
}

// tidy rounds what is compared, so that the last digits of two ways of adding do not decide.
func tidy(x float64) float64 {
	const part = 1e6
	return math.Round(x*part) / part
}

// Apply is the input with what the point is made of.
func (p *FrontPoint) Apply(in Input) Input {
	out := in.clone()
	out.Rafters.Species, out.Rafters.Grade, out.Rafters.Size = &p.RafterWood.Species, &p.RafterWood.Grade, &p.Rafter
	out.Beams.Species, out.Beams.Grade, out.Beams.Size = &p.BeamWood.Species, &p.BeamWood.Grade, &p.Beam
	out.Rafters.Spacing, out.Posts.Count, out.Posts.Size = &p.Spacing, &p.Count, &p.Post
	return out
}
