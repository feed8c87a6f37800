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
	Stamp  Stamp     `json:"stamp"`         // what produced it, from which input
	Input  Input     `json:"input"`         // what was said, as given
	Search Search    `json:"search"`        // what was asked
	Drawn  Drawn     `json:"as_drawn"`      // the cover as the input has it
	Best   []Best    `json:"best"`          // the points that are best in something, by cost
	Open   []Finding `json:"open_in_first"` // what the report of the first point leaves open
	Passed []string  `json:"passed_over"`   // what of the space no cover can be built of, and why
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
	Point int      `json:"point"` // its place among the points, from 0
	Least []string `json:"least"` // what it has the least of
}

// Run answers the search as [Undominated] does, and the cover as drawn beside it. What is over
// in the cover as drawn is told even where the search ends early.
func (s Search) Run(ctx context.Context, in Input, told Progress) (Found, error) {
	r, err := Size(in)
	if err != nil {
		return Found{}, err
	}
	out := Found{Stamp: r.Stamp, Input: in, Search: s, Open: []Finding{}}
	out.Drawn = Drawn{Verdict: r.Verdict, Over: r.findings(Over)}
	if out.Front, err = Undominated(ctx, in, s.Space, s.Limits, told); err != nil {
		return out, err
	}
	out.Best, out.Passed = out.best(), s.Space.passed(in)
	if len(out.Points) > 0 {
		first, err := Size(out.Points[0].Apply(in))
		if err != nil {
			return out, err
		}
		out.Open = first.findings(OpenUp, NotChecked)
	}
	return out, out.place(ctx, r.alone())
}

// findings are those of the summary with one of the verdicts.
func (r *Report) findings(of ...Verdict) []Finding {
	out := []Finding{}
	for _, x := range r.Summary {
		if slices.Contains(of, x.Verdict) {
			out = append(out, x)
		}
	}
	return out
}

// place searches the space that holds the cover as drawn alone.
func (f *Found) place(ctx context.Context, alone Space) error {
	in := f.Input.clone()
	if f.Measure != InDollars {
		in.Market.Prices = nil // so that both are told in board feet
	}
	front, err := Undominated(ctx, in, alone, Limits{}, nil)
	var refused *calc.InputError
	switch {
	case errors.As(err, &refused):
		f.Drawn.Reason = refused.Error()
	case err != nil:
		return err
	case len(front.Points) == 0:
		f.Drawn.Reason = "a part of it is over"
	case front.Measure != f.Measure:
		f.Drawn.Reason = "the wood of it has no price"
	default:
		f.Drawn.Point = &front.Points[0]
		f.Drawn.Reason = f.standing(f.Drawn.Point)
	}
	return nil
}

// alone is the space of one cover, the one that the report is of: the sizes that the input
// leaves open are those that were chosen. Every list that is empty is as the input has it.
func (r *Report) alone() Space {
	chosen := func(name string, given *string) []string {
		for _, m := range r.Members {
			if m.Name == name && given == nil {
				return []string{m.Size}
			}
		}
		return nil
	}
	in := r.Input
	return Space{
		RafterSizes: chosen("rafter", in.Rafters.Size), BeamSizes: chosen("beam", in.Beams.Size), PostSizes: chosen("post", in.Posts.Size),
	}
}

// standing says how a cover stands among the points.
func (f *Found) standing(p *FrontPoint) string {
	n, counts := 0, f.Search.Space.measures()
	mine := p.values(counts)
	for i := range f.Points {
		better, worse := false, false
		for k, x := range f.Points[i].values(counts) {
			better, worse = better || x < mine[k], worse || x > mine[k]
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

// best lists the points that have the least of something that counts: of several the first.
func (f *Found) best() []Best {
	out, counts := []Best{}, f.Search.Space.measures()
	for k, key := range measureNames {
		if !counts[k] || len(f.Points) == 0 {
			continue
		}
		at := 0
		for i := range f.Points {
			if f.Points[i].values(counts)[k] < f.Points[at].values(counts)[k] {
				at = i
			}
		}
		if i := slices.IndexFunc(out, func(b Best) bool { return b.Point == at }); i >= 0 {
			out[i].Least = append(out[i].Least, measureWords(key))
			continue
		}
		out = append(out, Best{Point: at, Least: []string{measureWords(key)}})
	}
	slices.SortFunc(out, func(a, b Best) int { return a.Point - b.Point })
	return out
}

// WhyNone says why there is no point, but for what is over in the cover as drawn, which is
// told there.
func (f *Found) WhyNone() []string {
	return slices.DeleteFunc(slices.Clone(f.Why), func(text string) bool {
		return slices.ContainsFunc(f.Drawn.Over, func(x Finding) bool { return x.Text == text })
	})
}

// Counted are the words of what counts in the search.
func (f *Front) Counted() []string {
	var out []string
	for _, key := range f.Compare {
		out = append(out, measureWords(key))
	}
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
