package cover

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"patiocover/calc"
)

// A Search is what somebody asks of all covers of a space.
type Search struct {
	Space  Space  `json:"space"`  // what may be built with
	Limits Limits `json:"limits"` // what may not be passed
}

// NewSearch reads a search as it is typed, by the names of [SpaceEntries]; what is left
// empty is that of [UsualSpace], and no limit. heard tells how each length was understood.
// Every fault is listed in a [*calc.InputError].
func NewSearch(in Input, typed map[string]string) (s Search, heard map[string]string, err error) {
	var f calc.Fields
	s, heard = Search{Space: UsualSpace(in)}, map[string]string{}
	names := map[string]bool{}
	for _, e := range spaceEntries {
		names[e.Name] = true
		text := strings.TrimSpace(typed[e.Name])
		if text == "" {
			continue
		}
		if words := e.read(&s, &in, text, &f); words != "" {
			heard[e.Name] = words
		}
	}
	for _, name := range slices.Sorted(maps.Keys(typed)) {
		if !names[name] {
			f.Add(name, "an unknown entry", "one of those of a space or its limits")
		}
	}
	checkClear(in, s.Limits, typed, heard, &f)
	return s, heard, f.Err()
}

// checkClear wants a clear bay that ends, and ends on the cover. An end that could not be
// read has a fault of its own.
func checkClear(in Input, l Limits, typed, heard map[string]string, f *calc.Fields) {
	const from, to = limitPrefix + "clear_from_ft", limitPrefix + "clear_to_ft"
	said := func(name string) bool { return strings.TrimSpace(typed[name]) != "" }
	switch {
	case said(from) && heard[from] == "" || said(to) && heard[to] == "" || in.Cover.Width == nil:
	case said(from) && !said(to):
		f.Missing(to, "where the clear bay ends, ft off the left end")
	case said(to) && !(l.ClearTo > l.ClearFrom && l.ClearTo <= *in.Cover.Width):
		f.Add(to, calc.Number(l.ClearTo)+" ft",
			"more than where the clear bay begins, "+calc.Number(l.ClearFrom)+
				" ft, and up to the width, "+calc.Number(*in.Cover.Width)+" ft")
	}
}

// Words writes the search as it is typed, by the names of [SpaceEntries]. [NewSearch] reads it
// back.
func (s Search) Words() map[string]string {
	out := map[string]string{}
	for _, e := range spaceEntries {
		if text := e.words(&s); text != "" {
			out[e.Name] = text
		}
	}
	return out
}

// SearchEntry reports whether an entry of a form or an address belongs to a search and not to
// the input.
func SearchEntry(name string) bool {
	return strings.HasPrefix(name, spacePrefix) || strings.HasPrefix(name, limitPrefix)
}

// A Found is the answer to a search, with the cover as it is drawn beside it.
type Found struct {
	Front
	Stamp  Stamp    `json:"stamp"`       // what produced it, from which input
	Input  Input    `json:"input"`       // what was said, as given
	Search Search   `json:"search"`      // what was asked
	Drawn  Drawn    `json:"as_drawn"`    // the cover as the input has it
	Best   []Best   `json:"best"`        // the points that are best in something, by cost
	Passed []string `json:"passed_over"` // what of the space no cover can be built of, and why
}

// A Drawn is the cover as the input has it, answered by [Size] and placed among the points.
type Drawn struct {
	Verdict Verdict     `json:"verdict"`         // of its whole report
	Over    []Finding   `json:"over"`            // what is over in it
	Point   *FrontPoint `json:"point,omitempty"` // nil where the search would not have it
	Reason  string      `json:"reason"`          // why it has no point, or how it stands among them
}

// A Best is a point that has the least of something.
type Best struct {
	Point   int       `json:"point"`   // its place among the points, from 0
	Least   []string  `json:"least"`   // what it has the least of
	Verdict Verdict   `json:"verdict"` // of its whole report, connections too
	Over    []Finding `json:"over"`    // what is over in it
}

// Run answers the search as [Undominated] does, and answers by [Size] the cover as drawn and
// the points that are best in something.
func (s Search) Run(ctx context.Context, in Input, told Progress) (Found, error) {
	front, err := Undominated(ctx, in, s.Space, s.Limits, told)
	if err != nil {
		return Found{}, err
	}
	out := Found{Front: front, Input: in, Search: s, Passed: s.Space.passed(in)}
	if out.Stamp, err = stamp(in); err != nil {
		return Found{}, err
	}
	if err := out.draw(ctx); err != nil {
		return Found{}, err
	}
	for _, b := range out.best() {
		if err := ctx.Err(); err != nil {
			return Found{}, err
		}
		r, err := Size(out.Points[b.Point].Apply(in))
		if err != nil {
			return Found{}, fmt.Errorf("answering a point of the front: %w", err)
		}
		b.Verdict, b.Over = r.Verdict, r.over()
		out.Best = append(out.Best, b)
	}
	return out, nil
}

// draw answers the cover as drawn, and searches the space that holds nothing else for its place.
func (f *Found) draw(ctx context.Context) error {
	r, err := Size(f.Input)
	if err != nil {
		return err
	}
	f.Drawn = Drawn{Verdict: r.Verdict, Over: r.over()}
	one, ok := r.alone()
	if !ok {
		f.Drawn.Reason = "it has members of more than one size, or none that passes"
		return nil
	}
	in := f.Input.clone()
	if f.Measure != InDollars {
		in.Market.Prices = nil // so that both are told in board feet
	}
	front, err := Undominated(ctx, in, one, Limits{}, nil)
	var refused *calc.InputError
	switch {
	case errors.As(err, &refused):
		f.Drawn.Reason = refused.Error()
	case err != nil:
		return err
	case len(front.Points) == 0:
		f.Drawn.Reason = "a member, a foundation, the headroom or the deck of it is over"
	case front.Measure != f.Measure:
		f.Drawn.Reason = "the wood of it has no price"
	default:
		f.Drawn.Point = &front.Points[0]
		f.Drawn.Reason = f.standing(f.Drawn.Point)
	}
	return nil
}

// over lists what is over in a report.
func (r *Report) over() []Finding {
	out := []Finding{}
	for _, x := range r.Summary {
		if x.Verdict == Over {
			out = append(out, x)
		}
	}
	return out
}

// alone is the space of one cover, the one that the report is of.
func (r *Report) alone() (Space, bool) {
	size := map[string]string{}
	for _, m := range r.Members {
		if old, ok := size[m.Name]; ok && old != m.Size {
			return Space{}, false
		}
		size[m.Name] = m.Size
	}
	in := r.Input
	rafter, beam, post := size["rafter"], size["beam"], size["post"]
	if rafter == "" || beam == "" || post == "" || in.Posts.Count == nil {
		return Space{}, false
	}
	in.Rafters.Size, in.Beams.Size, in.Posts.Size = &rafter, &beam, &post
	s := UsualSpace(in)
	s.Spacings, s.PostCounts = []float64{*in.Rafters.Spacing}, []int{*in.Posts.Count}
	return s, true
}

// standing says how a cover stands among the points.
func (f *Found) standing(p *FrontPoint) string {
	n := 0
	for i := range f.Points {
		better, worse := false, false
		for _, l := range leasts {
			better = better || l.of(&f.Points[i]) < l.of(p)
			worse = worse || l.of(&f.Points[i]) > l.of(p)
		}
		switch {
		case !better && !worse:
			return "it is one of the options, or like one in all that is compared"
		case !worse:
			n++
		}
	}
	switch n {
	case 0:
		return "no option is better in one thing and as good in the others; the space does not hold it"
	case 1:
		return "one option is better in one thing or more and as good in the others"
	}
	return fmt.Sprintf("%d options are better in one thing or more and as good in the others", n)
}

// leasts are what a point may have the least of.
var leasts = []struct {
	name string
	of   func(p *FrontPoint) float64
}{
	{"cost", func(p *FrontPoint) float64 { return p.Cost }},
	{"beam sag", func(p *FrontPoint) float64 { return p.Sag }},
	{"posts", func(p *FrontPoint) float64 { return float64(p.Posts) }},
	{"tie rating", func(p *FrontPoint) float64 { return p.Rating }},
	{"depth", func(p *FrontPoint) float64 { return p.Depth }},
}

// best lists the points that have the least of something: of several the first.
func (f *Found) best() []Best {
	var out []Best
	for _, l := range leasts {
		at := 0
		for i := range f.Points {
			if l.of(&f.Points[i]) < l.of(&f.Points[at]) {
				at = i
			}
		}
		if i := slices.IndexFunc(out, func(b Best) bool { return b.Point == at }); i >= 0 {
			out[i].Least = append(out[i].Least, l.name)
		} else if len(f.Points) > 0 {
			out = append(out, Best{Point: at, Least: []string{l.name}})
		}
	}
	slices.SortFunc(out, func(a, b Best) int { return a.Point - b.Point })
	return out
}

// A FrontGroup is the points with one number of posts.
type FrontGroup struct {
	Posts  int          // of all beam lines
	Stairs []FrontPoint // by cost, each with less beam sag than all before it
	Rest   []FrontPoint // the others, which have a smaller tie rating or less depth; by cost
}

// ByPosts groups the points by their number of posts, the fewest first.
func (f *Front) ByPosts() []FrontGroup {
	var out []FrontGroup
	for _, p := range f.Points {
		i, ok := slices.BinarySearchFunc(out, p.Posts, func(g FrontGroup, n int) int { return g.Posts - n })
		if !ok {
			out = slices.Insert(out, i, FrontGroup{Posts: p.Posts})
		}
		g := &out[i]
		if n := len(g.Stairs); n == 0 || p.Sag < g.Stairs[n-1].Sag {
			g.Stairs = append(g.Stairs, p)
		} else {
			g.Rest = append(g.Rest, p)
		}
	}
	return out
}
