package cover

import (
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"patiocover/calc"
	"patiocover/connections"
)

// A Wood is a species group and a grade of the tables.
type Wood struct {
	Species string `json:"species"` // species group of the tables
	Grade   string `json:"grade"`   // grade of the tables
}

// String writes the species and the grade as a stamp does.
func (w Wood) String() string { return w.Species + " " + w.Grade }

// A Choice says what a comparison sets side by side.
type Choice struct {
	Spacings []float64 // rafter spacings, in on center; the usual ones and that of the input when empty
	Woods    []Wood    // woods of the rafters; that of the input and the common groups when empty
}

// A Comparison is one cover with other rafter spacings and other wood in its rafters.
type Comparison struct {
	Notice  string      `json:"notice"`  // who must approve this
	Stamp   Stamp       `json:"stamp"`   // what produced it, from which input
	Input   Input       `json:"input"`   // what was said, as given
	Measure string      `json:"measure"` // what cost is told in: dollars, or board feet where prices are missing
	Reason  string      `json:"reason"`  // why that measure
	Options []Option    `json:"options"` // as drawn first, then by wood as chosen, then by spacing
	Says    []string    `json:"says"`    // what the options come to, in sentences
	Curves  []SpanCurve `json:"curves"`  // how much of each rafter size the span takes
	Span    float64     `json:"span_ft"` // ft on plan, of the rafters of this cover between their last two supports
	Notes   []string    `json:"notes"`   // what the options have in common
}

// An Option is one way to build the rafters, answered whole as [Size] answers it.
type Option struct {
	Drawn     bool        `json:"as_drawn"`             // the cover as the input has it
	Spacing   float64     `json:"spacing_in"`           // in on center
	Wood      Wood        `json:"wood"`                 // of the rafters and the ledger
	Rafter    string      `json:"rafter,omitempty"`     // nominal size: the smallest that passes, or the largest that was tried
	Beam      string      `json:"beam,omitempty"`       // nominal size
	Post      string      `json:"post,omitempty"`       // nominal size
	Deck      string      `json:"deck,omitempty"`       // the deck described, or what would serve
	Pieces    int         `json:"pieces"`               // rafters
	Ratio     Ratio       `json:"ratio"`                // largest ratio of the rafters
	Governs   string      `json:"governs,omitempty"`    // their check that has it
	Live      float64     `json:"live_sag_in"`          // in, of the rafters under live or snow load, where its limit governs
	Sag       float64     `json:"total_sag_in"`         // in, of the rafters in the long term, where its limit governs
	BoardFeet float64     `json:"board_feet"`           // board feet bought for the whole cover, a factor of 1/12 ft³ nominal
	Weight    float64     `json:"weight_lb"`            // lb, of all wood at high moisture
	Cost      *float64    `json:"cost_dollars"`         // dollars, of what has a price; nil without any
	Priced    int         `json:"priced_items"`         // items of the take-off with a price
	Unpriced  []string    `json:"without_price"`        // items that have none
	Ties      int         `json:"ties"`                 // rafter joints that lift
	Tie       float64     `json:"tie_rating_lb"`        // lb, largest uplift rating that is asked for among them
	Fasteners int         `json:"fasteners"`            // of deck and ledger, as far as they are proposed or given
	Joints    []JointLine `json:"joints"`               // the joints of the rafters
	Clear     float64     `json:"clear_in"`             // in, slab to the lowest member
	Drop      float64     `json:"drop_in"`              // in, from the high edge down to the underside of the lowest beam
	Framing   Verdict     `json:"framing"`              // worst of the members and the headroom
	Verdict   Verdict     `json:"verdict"`              // worst of the whole report
	Over      []string    `json:"over,omitempty"`       // what is over: a member with its check and its ratio; the headroom
	Missing   string      `json:"no_answer,omitempty"`  // why this option has no answer
	Front     bool        `json:"front"`                // no other that passes is better in cost or sag and as good in the other
	Spent     float64     `json:"measured"`             // the cost in the measure of the comparison, dollars or a factor of board feet
	Beyond    bool        `json:"no_repetitive_factor"` // the rafters get no repetitive member factor
	Tried     []Rejected  `json:"smaller_rafters"`      // smaller rafters, and why not
}

// A JointLine is the joint of every rafter at one support, the nailing of the deck, or
// the ledger.
type JointLine struct {
	Mark     string  `json:"mark"`      // of the connection
	Name     string  `json:"name"`      // such as rafter to beam
	Per      string  `json:"per"`       // what the link is counted by
	Count    int     `json:"count"`     // how many of that
	Rating   float64 `json:"rating_lb"` // lb, uplift rating to ask for at each joint; 0 where it never lifts
	Hardware string  `json:"hardware"`  // what fastens it, in generic words
	Parts    []Part  `json:"parts"`     // what to buy for it
}

// passes reports whether the option has an answer and none of its members is over as far
// as they are checked.
func (o *Option) passes() bool { return o.Missing == "" && o.Framing != Over }

// commonWoods are the species groups that yards keep, at the grade that framing is
// bought in (common practice).
var commonWoods = []Wood{
	{"Douglas Fir-Larch", "No.2"}, {"Hem-Fir", "No.2"}, {"Spruce-Pine-Fir", "No.2"}, {"Southern Pine", "No.2"},
}

// The most that one comparison sets side by side, limits of this program.
const (
	maxSpacings = 12
	maxWoods    = 12
	maxOptions  = 72 // spacings times woods: a report is made for each
)

// Compare answers one cover with every spacing and every wood of the choice, each by
// the way of [Size] with the size of the rafters and of the deck left open, so that the
// smallest that passes is chosen; beams and posts stay as the input has them. An invalid
// input or choice gives a [*calc.InputError] with every fault. That nothing passes at a
// spacing is an answer, not an error.
func Compare(in Input, c Choice) (Comparison, error) {
	if err := in.Validate(); err != nil {
		return Comparison{}, err
	}
	if err := c.validate(); err != nil {
		return Comparison{}, err
	}
	st, err := stamp(in)
	if err != nil {
		return Comparison{}, err
	}
	out := Comparison{Notice: Notice, Stamp: st, Input: in, Notes: compareNotes}
	jobs := c.variants(in)
	out.Options = make([]Option, len(jobs))
	faults := make([]error, len(jobs))
	each(len(jobs), func(i int) { out.Options[i], faults[i] = answer(jobs[i]) })
	if err := errors.Join(faults...); err != nil {
		return Comparison{}, err
	}
	out.Options[0].Drawn = true
	out.measure()
	out.front()
	out.Says = out.words()
	out.Curves = curves(in)
	full, _ := in.Assume()
	p := newPlan(full)
	out.Span = p.lastSpan() / calc.Ft
	return out, nil
}

// compareNotes say what the options have in common.
var compareNotes = []string{
	"As drawn keeps every size of the input; in the other rows the sizes of rafters and deck are the smallest that pass, " +
		"and the ledger is of the wood of the rafters",
	"Ties are the joints of rafters that lift, with the largest uplift rating that is asked for; fasteners are those of deck and ledger, " +
		"as far as they are chosen or given",
	"Beams and posts keep the wood of the input, and their sizes where it gives them",
	"The dead load keeps the layers of the input: where a deck gets heavier, change its layer and compare again",
	"Framing is the worst of members and headroom; the verdict is that of the whole report, in which hardware and " +
		"foundations are not all checked",
}

// each does n pieces of work on every core, each by its number. The results do not
// depend on how many cores there are.
func each(n int, do func(i int)) { among(runtime.GOMAXPROCS(0), n, func(_, i int) { do(i) }) }

// among does n pieces of work with so many workers, each of which may keep a room of its
// own by its number. A worker takes the next piece from a counter: handed over by a channel
// each would cost two changes of the goroutine, and a worker would wait for them.
func among(workers, n int, do func(worker, i int)) {
	var taken atomic.Int64
	var all sync.WaitGroup
	for worker := range min(n, workers) {
		all.Go(func() {
			for i := int(taken.Add(1)) - 1; i < n; i = int(taken.Add(1)) - 1 {
				do(worker, i)
			}
		})
	}
	all.Wait()
}

// variants lists the inputs to answer: as drawn, then wood by wood and spacing by
// spacing. One that would repeat the first is left out.
func (c Choice) variants(in Input) []Input {
	own := Wood{*in.Rafters.Species, *in.Rafters.Grade}
	spacings, woods := c.Spacings, c.Woods
	if len(spacings) == 0 {
		spacings = append(slices.Clone(usualSpacings), *in.Rafters.Spacing)
	}
	if len(woods) == 0 {
		woods = append([]Wood{own}, commonWoods...)
	}
	spacings = slices.Compact(slices.Sorted(slices.Values(spacings)))
	r := in.Rafters
	open := r.Size == nil && r.MeasuredBreadth == nil && r.MeasuredDepth == nil && in.Deck.Size == nil && in.Deck.Rating == nil
	out := []Input{in}
	for i, w := range woods {
		if slices.Index(woods, w) < i {
			continue
		}
		for _, s := range spacings {
			if open && w == own && s == *in.Rafters.Spacing {
				continue
			}
			v := in.clone()
			v.Rafters.Spacing, v.Rafters.Size = &s, nil
			v.Rafters.Species, v.Rafters.Grade = &w.Species, &w.Grade
			v.Rafters.MeasuredBreadth, v.Rafters.MeasuredDepth = nil, nil
			v.Deck.Size, v.Deck.Rating = nil, nil
			out = append(out, v)
		}
	}
	return out
}

// answer takes one input through [Size] and keeps what the comparison shows. An input
// that Size refuses is an option without an answer; another error is a fault of ours.
func answer(in Input) (Option, error) {
	o := Option{
		Spacing: *in.Rafters.Spacing, Wood: Wood{*in.Rafters.Species, *in.Rafters.Grade},
		Framing: NotChecked, Verdict: NotChecked,
	}
	r, err := Size(in)
	var refused *calc.InputError
	switch {
	case errors.As(err, &refused):
		o.Missing = err.Error()
		return o, nil
	case err != nil:
		return o, err
	}
	o.take(&r)
	return o, nil
}

// take fills the option from its report.
func (o *Option) take(r *Report) {
	o.Framing, o.Verdict, o.Pieces = r.Headroom.Verdict, r.Verdict, len(r.Geometry.Rafters)
	for _, m := range r.Members {
		o.Framing = o.Framing.Worse(m.Verdict)
		if m.Verdict == Over {
			o.Over = append(o.Over, m.Name+" "+m.Size+": "+m.overWords())
		}
		o.member(&m)
	}
	if h := r.Headroom; h.Verdict == Over {
		o.Over = append(o.Over, fmt.Sprintf("headroom: %s clear, %s asked for",
			calc.FeetInches(calc.RoundDown(h.Clear, calc.Sixteenth)), calc.FeetInches(h.Required)))
	}
	if o.Deck == "" {
		o.Deck = r.Deck.serves()
	}
	for i := range r.Links {
		o.join(&r.Links[i])
	}
	o.Clear, o.Drop = r.Headroom.Clear, r.dropBelow()
	o.buy(&r.TakeOff)
}

// join takes a link that depends on the rafters: the joints of each of them, the nailing
// of the deck on them, the ledger.
func (o *Option) join(l *Link) {
	if l.Per == PerPost || l.Per != PerJoint && len(l.Connector.Parts) == 0 {
		return
	}
	j := JointLine{Mark: l.Mark, Name: l.Name, Per: l.Per, Count: l.Count, Hardware: l.Hardware, Parts: l.Connector.Parts}
	if l.Per != PerJoint {
		for _, p := range j.Parts {
			o.Fasteners += p.Total
		}
		o.Joints = append(o.Joints, j)
		return
	}
	if l.Rating > 0 && l.From == connections.RafterToBeam.From() { // knee braces and splices are no ties of a rafter
		j.Rating = max(l.Rating, l.Connector.Up)
		o.Ties += l.Count
		o.Tie = max(o.Tie, j.Rating)
	}
	o.Joints = append(o.Joints, j)
}

// member takes what the option shows of one member.
func (o *Option) member(m *Member) {
	switch m.Name {
	case "rafter":
		o.Rafter, o.Ratio, o.Governs, o.Tried = m.Size, m.Ratio, m.Governs, m.Rejected
		for _, c := range m.Checks {
			switch c.Name {
			case checkNames[liveCheck]:
				o.Live = c.Check.Demand
			case checkNames[sagCheck]:
				o.Sag = c.Check.Demand
			case checkNames[bendingCheck]:
				o.Beyond = !repetitive(&c.Check)
			}
		}
	case "beam":
		o.Beam = m.Size
	case "post":
		o.Post = m.Size
	}
	if m.Mark == deckMark {
		o.Deck = m.Name + " " + m.Size
	}
}

// repetitive reports whether a written check of bending counts the repetitive member
// factor (NDS 2018 4.3.9).
func repetitive(c *calc.Check) bool {
	return slices.ContainsFunc(c.Lines, func(l calc.Line) bool { return l.Symbol == "C_r" && l.X > 1 })
}

// overWords names the check of a member that is over, with its ratio.
func (m *Member) overWords() string {
	for _, c := range m.Checks {
		if c.Name == m.Governs && c.Ratio > 1 {
			return m.Governs + " at ratio " + ratioText(m.Ratio)
		}
	}
	for _, c := range m.Checks {
		if c.Verdict == Over {
			return c.Name + " at ratio " + ratioText(c.Ratio)
		}
	}
	return m.Governs + " at ratio " + ratioText(m.Ratio)
}

// serves says what deck would serve at the spacing of the cover, where none was
// described.
func (d *DeckReport) serves() string {
	for _, c := range d.Choices {
		if c.Own {
			return c.words()
		}
	}
	return d.Reason
}

// dropBelow is the height from the top of the high edge down to the underside of the
// lowest beam, in.
func (r *Report) dropBelow() float64 {
	low := r.Geometry.HighEdge
	for _, l := range r.Geometry.Lines {
		low = min(low, l.Bottom)
	}
	return (r.Geometry.HighEdge - low) * calc.Ft
}

// buy takes what the take-off comes to.
func (o *Option) buy(t *TakeOff) {
	o.BoardFeet, o.Weight, o.Cost, o.Unpriced = t.BoardFeet, t.Weight, t.Cost, t.Unpriced
	o.Priced = len(t.Wood) + len(t.Other) - len(t.Unpriced)
}
