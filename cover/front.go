package cover

import (
	"cmp"
	"context"
	"errors"
	"math"
	"slices"
	"sync/atomic"
)

// Limits are what the user will not have passed. A zero sets no limit.
type Limits struct {
	Posts     int      `json:"posts,omitempty"`           // most posts of all beam lines
	Depth     float64  `json:"depth_in,omitempty"`        // in, rafter and beam together
	Rating    float64  `json:"tie_rating_lb,omitempty"`   // lb, uplift rating of the largest tie of a rafter
	ClearFrom float64  `json:"clear_from_ft,omitempty"`   // ft from the left end: no post stands from here
	ClearTo   float64  `json:"clear_to_ft,omitempty"`     // ft from the left end: to here
	SlabOnly  bool     `json:"slab_only,omitempty"`       // posts stand on the slab or not at all
	Species   []string `json:"species_on_hand,omitempty"` // no wood of other species; empty for any
}

// A FrontPoint is one cover that holds and that no other one beats. What it is compared by
// comes first, then what it is made of.
type FrontPoint struct {
	Cost    float64 `json:"cost"`          // that of its take-off: dollars, or a factor of board feet
	Sag     float64 `json:"beam_sag_in"`   // in, largest long-term deflection of the beams
	Posts   int     `json:"posts"`         // of all beam lines
	Rating  float64 `json:"tie_rating_lb"` // lb, uplift rating of the largest tie of a rafter; 0 where none lifts
	Depth   float64 `json:"depth_in"`      // in, rafter and beam together; of a flush beam the deeper one
	Verdict Verdict `json:"verdict"`       // of its report, which is never OVER; the survey of an old roof stands apart

	Spacing    float64      `json:"spacing_in"`        // in on center
	Count      int          `json:"posts_a_line"`      // posts of each beam line
	RafterWood Wood         `json:"rafter_wood"`       // of the rafters and the ledger
	Rafter     string       `json:"rafter"`            // nominal size
	BeamWood   Wood         `json:"beam_wood"`         // of the beams
	Beam       string       `json:"beam"`              // nominal size
	PostWood   Wood         `json:"post_wood"`         // of the posts
	Post       string       `json:"post"`              // nominal size
	Tie        *TieWay      `json:"tie,omitempty"`     // of the rafters; nil as the input has it
	Ledger     *LedgerWay   `json:"ledger,omitempty"`  // its fasteners; nil as the input has them
	Footing    *StandingWay `json:"footing,omitempty"` // how the posts stand; nil as the input has it

	order frontOrder
}

// A frontOrder is the places of a point in the lists of its space: sizes before woods,
// before what the rest is made of.
type frontOrder [11]int

// The places of a frontOrder.
const (
	bySpacing = iota
	byCount
	byRafter
	byBeam
	byPost
	byRafterWood
	byBeamWood
	byPostWood
	byTie
	byLedger
	byFooting
)

// A Front is every undominated cover of a space.
type Front struct {
	Notice  string       `json:"notice"`       // who must approve this
	Measure string       `json:"measure"`      // what cost is told in: dollars, or board feet where wood has no price
	Compare []string     `json:"compare"`      // what counts
	Options float64      `json:"options"`      // combinations in the space, a factor
	Whole   int          `json:"judged_whole"` // covers that were judged whole, down to the ground
	Points  []FrontPoint `json:"points"`       // by cost, then sag, posts, rating and depth
	Notes   []string     `json:"notes"`        // what the points rest on
	Why     []string     `json:"why_none"`     // where nothing holds: what was not tried, what is over as it was given
}

// frontNotes say what the points rest on.
var frontNotes = []string{
	"A point holds: nothing in its report is over, from the deck down to the ground. What is not checked or must be opened up " +
		"stands in the report: size the point before anything is built",
	"Of two covers that are alike in all that is compared one is listed: the cheaper, then the smaller sizes, then the earlier wood",
	"Cost is that of the take-off, with what has a price; without a price for every wood of the space it is the board feet bought",
	"Of posts, ties, ledger fasteners and footings the cheapest that hold are taken; of equal ones the first of the list",
	"The survey of an old roof is no part of it, but for rafter tails that carry the cover",
}

// A Progress hears how many of the layouts of a search are done. It is called from several
// goroutines.
type Progress func(done, all int)

// Undominated finds every cover of the space that holds and that no other one beats in what
// the space compares. It equals the trial of every combination by itself. An input or a
// space with faults gives a [*calc.InputError]; the search ends early with the error of the
// context. The front does not depend on how many goroutines search.
func Undominated(ctx context.Context, in Input, s Space, l Limits, told Progress) (Front, error) {
	if err := in.Validate(); err != nil {
		return Front{}, err
	}
	if err := s.validate(in, l); err != nil {
		return Front{}, err
	}
	yard := newYard(in, s, l)
	out := Front{Notice: Notice, Measure: yard.measure(), Compare: yard.space.compared(), Options: s.options(in), Notes: frontNotes}
	counts := yard.space.counts()
	found, faults := make([]sweep, len(counts)), make([]error, len(counts))
	var done atomic.Int64
	each(len(counts), func(i int) {
		at := len(counts) - 1 - i // the most posts take longest
		found[at], faults[at] = yard.search(ctx, at, func() {
			if told != nil {
				told(int(done.Add(1)), len(counts)*len(yard.space.Spacings))
			}
		})
	})
	if err := errors.Join(faults...); err != nil {
		return Front{}, err
	}
	var all []FrontPoint
	var closed []string
	for i := range found {
		all = append(all, found[i].points...)
		closed = append(closed, found[i].closed...)
		out.Whole += found[i].judged
	}
	out.Points = undominated(all, yard.counts)
	if len(out.Points) == 0 {
		out.Why = whyNone(in, closed)
	}
	return out, nil
}

// whyNone says why layouts were not tried, and what is over in the cover as it was given, so
// that an empty front is no riddle.
func whyNone(in Input, closed []string) []string {
	out := []string{}
	for _, why := range closed {
		if !slices.Contains(out, why) {
			out = append(out, why)
		}
	}
	r, err := Size(in)
	if err != nil {
		return append(out, err.Error())
	}
	holding := true
	for _, f := range r.Summary {
		if f.Verdict == Over {
			out, holding = append(out, f.Text), false
		}
	}
	if holding {
		out = append(out, "the cover as it was given holds, but none of the space and the limits does")
	}
	return out
}

// A sweep is what the layouts with one number of posts came to.
type sweep struct {
	points []FrontPoint
	judged int
	closed []string // why layouts were given up before any cover of them was tried
}

// search finds the points of the layouts with one number of posts, and some that points with
// another number beat. Pairs of rafters and beam are tried from the cheapest on, so that
// nearly every pair that is judged whole stays.
func (y *yard) search(ctx context.Context, count int, done func()) (sweep, error) {
	front := stairs{counts: y.counts}
	var layouts []*layout
	var pairs []pair
	var closed []string
	for spacing := range y.space.Spacings {
		if err := ctx.Err(); err != nil {
			return sweep{}, err
		}
		l, why, err := y.open(spacing, count)
		if err != nil {
			return sweep{}, err
		}
		if l == nil {
			closed = append(closed, why)
		} else {
			l.front = &front
			pairs = l.pair(pairs, len(layouts))
			layouts = append(layouts, l)
		}
	}
	slices.SortFunc(pairs, pair.before)
	for i := range pairs {
		l := layouts[pairs[i].layout]
		if q, ok := l.promising(&pairs[i]); ok {
			l.settle(ctx, q, int(pairs[i].class), int(pairs[i].beam))
		}
		if err := ctx.Err(); err != nil {
			return sweep{}, err
		}
	}
	out := sweep{points: front.points(), closed: closed}
	for _, l := range layouts {
		out.judged += l.judged
	}
	for range y.space.Spacings {
		done()
	}
	return out, nil
}

// values are what is compared, zero for what does not count.
func (p *FrontPoint) values(counts measures) [allMeasures]float64 {
	all := [allMeasures]float64{p.Cost, p.Sag, float64(p.Posts), p.Rating, p.Depth}
	for i := range all {
		if !counts[i] {
			all[i] = 0
		}
	}
	return all
}

// before orders points by what is compared, then by cost, then by their places in the space.
func (p *FrontPoint) before(q *FrontPoint, counts measures) int {
	a, b := p.values(counts), q.values(counts)
	return cmp.Or(slices.Compare(a[:], b[:]), cmp.Compare(p.Cost, q.Cost), slices.Compare(p.order[:], q.order[:]))
}

// undominated sorts the points and keeps those that none before them matches or beats. A
// point that beats another one always stands before it.
func undominated(all []FrontPoint, counts measures) []FrontPoint {
	slices.SortFunc(all, func(a, b FrontPoint) int { return a.before(&b, counts) })
	front := stairs{counts: counts}
	out := []FrontPoint{}
	for i := range all {
		if !front.matches(&all[i]) {
			front.add(all[i])
			out = append(out, all[i])
		}
	}
	return out
}

// tidy rounds what is compared, so that the last digits of two ways of adding do not decide.
func tidy(x float64) float64 { return math.Round(x*tidyParts) / tidyParts }

// tidyParts is how many steps what is compared has in its own unit.
const tidyParts = 1e6

// Apply is the input with what the point is made of.
func (p *FrontPoint) Apply(in Input) Input {
	out := in.clone()
	out.Rafters.Species, out.Rafters.Grade, out.Rafters.Size = &p.RafterWood.Species, &p.RafterWood.Grade, &p.Rafter
	out.Beams.Species, out.Beams.Grade, out.Beams.Size = &p.BeamWood.Species, &p.BeamWood.Grade, &p.Beam
	out.Posts.Species, out.Posts.Grade, out.Posts.Size = &p.PostWood.Species, &p.PostWood.Grade, &p.Post
	out.Rafters.Spacing = &p.Spacing
	if out.Posts.Count != nil {
		out.Posts.Count = &p.Count
	}
	p.Tie.apply(&out.Connections)
	p.Ledger.apply(&out.Connections)
	p.Footing.apply(&out.Foundation)
	return out.clone()
}
