package cover

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"patiocover/calc"
)

// The measures of cost.
const (
	InDollars   = "dollars"    // by the user's own prices
	InBoardFeet = "board feet" // of all wood bought, where the prices do not serve
)

// measure decides in what cost is told. Dollars serve only where the prices cover all
// options that pass alike: as many items priced in each, and as many left out.
func (c *Comparison) measure() {
	c.Measure, c.Reason = InDollars, "the user's prices cover every option that passes alike"
	first := -1
	for i := range c.Options {
		o := &c.Options[i]
		if !o.passes() {
			continue
		}
		if first < 0 {
			first = i
		}
		a := &c.Options[first]
		switch {
		case c.Measure != InDollars:
		case o.Cost == nil:
			c.Measure, c.Reason = InBoardFeet, "there are no prices for "+o.name()
		case o.Priced != a.Priced || len(o.Unpriced) != len(a.Unpriced):
			c.Measure, c.Reason = InBoardFeet, "the prices leave out other items in "+o.name()+" than in "+a.name()
		}
	}
	switch {
	case first < 0:
		c.Measure, c.Reason = InBoardFeet, "no option passes"
	case c.Measure == InDollars && len(c.Options[first].Unpriced) > 0:
		c.Reason += fmt.Sprintf("; %d items of each have no price and are not in its cost", len(c.Options[first].Unpriced))
	}
	for i := range c.Options {
		o := &c.Options[i]
		o.Spent = o.BoardFeet
		if c.Measure == InDollars && o.Cost != nil {
			o.Spent = *o.Cost
		}
	}
}

// front marks the options that pass and that no other beats: better in cost or in total
// sag and as good in the other. Of equal ones each is marked.
func (c *Comparison) front() {
	for i := range c.Options {
		o := &c.Options[i]
		o.Front = o.passes() && !slices.ContainsFunc(c.Options, func(p Option) bool { return p.passes() && p.beats(o) })
	}
}

// sameMeasure is the relative difference below which two costs or sags are equal.
const sameMeasure = 1e-9

// beats reports whether the option is as good in cost and sag and better in one.
func (o Option) beats(p *Option) bool {
	cost, sag := compareClose(o.Spent, p.Spent), compareClose(o.Sag, p.Sag)
	return cost <= 0 && sag <= 0 && cost+sag < 0
}

// compareClose orders two positive numbers, equal where they differ by rounding alone.
func compareClose(a, b float64) int {
	if math.Abs(a-b) <= sameMeasure*max(math.Abs(a), math.Abs(b)) {
		return 0
	}
	return cmp.Compare(a, b)
}

// name says which option it is.
func (o *Option) name() string {
	if o.Drawn {
		return "the cover as drawn"
	}
	return o.title()
}

// title is the size, the wood and the spacing of the rafters.
func (o *Option) title() string {
	return fmt.Sprintf("%s %s at %s in", o.Rafter, o.Wood, calc.Number(o.Spacing))
}

// amount writes the cost of the option in the measure.
func (c *Comparison) amount(o *Option) string {
	if c.Measure == InDollars {
		return "$" + pounds(o.Spent)
	}
	return pounds(o.Spent) + " board feet"
}

// words says what the options come to: the extremes, then how each wood goes with its
// spacing.
func (c *Comparison) words() []string {
	passing := c.passing()
	if len(passing) == 0 {
		return []string{"No option passes: the rows say what is over."}
	}
	cheapest := least(passing, func(o *Option) float64 { return o.Spent })
	stiffest := least(passing, func(o *Option) float64 { return o.Sag })
	fewest := least(passing, func(o *Option) float64 { return float64(o.Ties) })
	what := "Cheapest"
	if c.Measure == InBoardFeet {
		what = "Least wood"
	}
	out := []string{
		fmt.Sprintf("%s: %s, %s.", what, cheapest.title(), c.amount(cheapest)),
		fmt.Sprintf("Stiffest: %s, %.2f in of sag in the long term.", stiffest.title(), calc.RoundUp(stiffest.Sag, 0.01)),
	}
	ties := "Fewest ties: no rafter joint of any option lifts."
	if most := slices.MaxFunc(passing, func(a, b *Option) int { return a.Ties - b.Ties }); most.Ties > 0 {
		ties = fmt.Sprintf("Fewest ties: %s, %d of them, the strongest rated %s lb.", fewest.title(), fewest.Ties, pounds(fewest.Tie))
	}
	out = append(out, ties)
	for _, w := range c.woods() {
		out = append(out, c.trend(w)...)
	}
	return append(append(out, c.unshared()...), c.unchecked()...)
}

// unchecked says how many options are weighed although a member of theirs is not checked
// whole.
func (c *Comparison) unchecked() []string {
	n := 0
	for _, o := range c.passing() {
		if o.Framing == NotChecked {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return []string{fmt.Sprintf("In %d of the %d options that are weighed here a member is NOT CHECKED in part: "+
		"they are not over as far as they are checked, which is not OK.", n, len(c.passing()))}
}

// passing lists the options that are not over, in order.
func (c *Comparison) passing() []*Option {
	var out []*Option
	for i := range c.Options {
		if c.Options[i].passes() {
			out = append(out, &c.Options[i])
		}
	}
	return out
}

// least is the option with the least of something; ties break by cost, then by fewer
// rafters, then by the order of the rows.
func least(all []*Option, of func(*Option) float64) *Option {
	return slices.MinFunc(all, func(a, b *Option) int {
		return cmp.Or(compareClose(of(a), of(b)), compareClose(a.Spent, b.Spent), a.Pieces-b.Pieces)
	})
}

// woods lists the woods of the options in the order of the rows.
func (c *Comparison) woods() []Wood {
	var out []Wood
	for i := range c.Options {
		if w := c.Options[i].Wood; !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// trend says how one wood goes from its closest to its widest spacing that passes.
func (c *Comparison) trend(w Wood) []string {
	rows := c.rowsOf(w)
	good := slices.DeleteFunc(slices.Clone(rows), func(o *Option) bool { return !o.passes() })
	if len(good) == 0 {
		return []string{w.String() + ": no spacing passes."}
	}
	a, b := good[0], good[len(good)-1]
	var out []string
	if a != b {
		size := a.Rafter + " becomes " + b.Rafter
		if a.Rafter == b.Rafter {
			size = a.Rafter + " stays"
		}
		out = append(out, fmt.Sprintf("%s, from %s to %s in: %s, %d rafters become %d, %s become %s, "+
			"%d ties of up to %s lb become %d of up to %s lb, and the sag goes from %.2f to %.2f in.",
			w, calc.Number(a.Spacing), calc.Number(b.Spacing), size, a.Pieces, b.Pieces, c.amount(a), c.amount(b),
			a.Ties, pounds(a.Tie), b.Ties, pounds(b.Tie), calc.RoundUp(a.Sag, 0.01), calc.RoundUp(b.Sag, 0.01)))
	}
	return out
}

// unshared says from which spacing on the rafters no longer share their load, where
// closer ones do.
func (c *Comparison) unshared() []string {
	shares, from := false, math.Inf(1)
	for i := range c.Options {
		o := &c.Options[i]
		shares = shares || o.Missing == "" && !o.Beyond
		if o.Beyond {
			from = min(from, o.Spacing)
		}
	}
	if !shares || math.IsInf(from, 1) {
		return nil
	}
	return []string{fmt.Sprintf("At %s in and wider the repetitive member factor of 1.15 is gone (NDS 2018 4.3.9): "+
		"each rafter carries more and may be stressed less.", calc.Number(from))}
}

// rowsOf lists the options of a wood by spacing; where the cover as drawn stands at a
// spacing that has a row of its own, that row counts.
func (c *Comparison) rowsOf(w Wood) []*Option {
	var out []*Option
	for i := range c.Options {
		if o := &c.Options[i]; o.Wood == w && o.Missing == "" {
			out = append(out, o)
		}
	}
	slices.SortStableFunc(out, func(a, b *Option) int { return cmp.Compare(a.Spacing, b.Spacing) })
	return slices.DeleteFunc(out, func(o *Option) bool {
		return o.Drawn && slices.ContainsFunc(c.Options[1:], func(p Option) bool { return p.Wood == w && p.Spacing == o.Spacing })
	})
}
