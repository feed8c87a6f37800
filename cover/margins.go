package cover

import "math"

// A Margin says how far one quantity may go, everything else and all sizes kept as
// chosen: first until a check of the members is over, then until anything else of the
// report is that is not over now.
type Margin struct {
	Path string  `json:"path"` // field of the input that is moved
	What string  `json:"what"` // in words
	Unit string  `json:"unit"` // of the values
	Now  float64 `json:"now"`  // present value, in Unit
	Reach
	None    bool   `json:"none_passes"`       // the members are over now and at every smaller value, down to Over
	Missing string `json:"missing,omitempty"` // why there is no answer
	Ends    string `json:"ends,omitempty"`    // why the answers end at Passes, where the limit is reached
	Rest    *Reach `json:"rest"`              // of everything beside the members; nil where the members are over now, or there is no answer
}

// A Reach is how far a quantity may go until something is over.
type Reach struct {
	Passes  float64 `json:"passes"`          // farthest value found that passes, in the unit of the margin; 0 when none was found
	Reached bool    `json:"limit_reached"`   // it passes as far as it was tried, so Passes is that limit
	Over    float64 `json:"over"`            // nearest value found that is over, in the unit of the margin; 0 where the limit is reached
	Mark    string  `json:"mark,omitempty"`  // part that is over there
	Check   string  `json:"check,omitempty"` // its check
	Ratio   Ratio   `json:"ratio"`           // ratio of that check; 0 of a rule that has none
}

// The steps of the search for a margin: the factor between two values that are tried, and
// how close the two ends are brought together, as a part of the larger.
const (
	marginStep  = 1.05
	marginClose = 1e-4
	restClose   = 1e-3
)

// A mover is one quantity that a margin moves. Far is the end of the search, in the
// unit of the field.
type mover struct {
	path, what string
	now        func(in *Input) float64
	set        func(in *Input, x float64)
	far        float64
	step       float64                                    // least step of the search
	peak       func(in *Input, low, high float64) float64 // last value up to high beyond which less is asked, or low
}

// A search finds the margin of one quantity on a cover whose sizes are given.
type search struct {
	mover
	base Input
}

// margin searches upward from the present value in steps until a check is over, then
// halves the interval. A design that is over already is searched downward. What is over
// between two values that were tried and passes at both is not seen: the steps are small
// and end at the peaks that are known.
func (s *search) margin(filled *Input) Margin {
	f, _ := FieldOf(s.path)
	out := Margin{Path: s.path, What: s.what, Unit: f.Unit, Now: s.mover.now(filled)}
	now := s.try(out.Now)
	switch {
	case now.fault != "":
		out.Missing = now.fault
		return out
	case !now.passes():
		s.down(&out, now, f.Low)
		return out
	}
	good, bad := now, trial{}
	for good.x < s.far {
		next := s.try(s.next(filled, good.x))
		if next.fault != "" {
			out.Ends = next.fault
			break
		}
		if !next.passes() {
			bad = next
			break
		}
		good = next
	}
	good = s.settle(&out, good, bad)
	out.Rest = s.rest(now, good)
	return out
}

// next is the value to try after x. It never steps over a peak.
func (s *search) next(in *Input, x float64) float64 {
	to := min(s.far, max(x*marginStep, x+s.step))
	if s.peak != nil {
		if at := s.peak(in, x, to); at > x {
			return at
		}
	}
	return to
}

// settle brings the last value that passes and the first that is over together, and returns
// the first; bad is empty where the search came to its end.
func (s *search) settle(out *Margin, good, bad trial) trial {
	if bad.over.mark == "" {
		out.Passes, out.Reached = good.x, true
		if out.Ends == "" {
			out.Ends = "the answers of this program end there"
		}
		return good
	}
	good, bad = s.close(good, bad, marginClose, (*trial).passes)
	out.Passes, out.Over, out.Mark, out.Check, out.Ratio = good.x, bad.x, bad.over.mark, bad.over.check, bad.over.ratio
	return good
}

// rest finds where something beside the members is over first that is not over now, up to
// the last value that the members pass.
func (s *search) rest(now, last trial) *Reach {
	before := now.beside()
	holds := func(t *trial) bool {
		_, some := fresh(t.beside(), before)
		return !some
	}
	if holds(&last) {
		return &Reach{Passes: last.x, Reached: true}
	}
	good, bad := s.close(now, last, restClose, holds)
	first, _ := fresh(bad.beside(), before)
	return &Reach{Passes: good.x, Over: bad.x, Mark: first.mark, Check: first.check, Ratio: first.ratio}
}

// down goes down until every check of the members passes, or to the least value that the
// program answers.
func (s *search) down(out *Margin, bad trial, low float64) {
	for bad.x > low {
		next := s.try(max(low, min(bad.x/marginStep, bad.x-s.step)))
		if next.fault != "" {
			break
		}
		if next.passes() {
			s.settle(out, next, bad)
			return
		}
		bad = next
	}
	out.None = true
	out.Over, out.Mark, out.Check, out.Ratio = bad.x, bad.over.mark, bad.over.check, bad.over.ratio
}

// close brings a value that passes and one that is over together.
func (s *search) close(good, bad trial, part float64, passes func(*trial) bool) (trial, trial) {
	for math.Abs(bad.x-good.x) > part*max(good.x, bad.x) {
		middle := s.try((good.x + bad.x) / 2)
		switch {
		case middle.fault != "":
			return good, bad
		case passes(&middle):
			good = middle
		default:
			bad = middle
		}
	}
	return good, bad
}

// SizeAndMargins answers one cover as [Size] does, and adds the margins of the design and
// the sizes next below it, which cost many times the answer itself.
func SizeAndMargins(in Input) (Report, error) {
	s, assumed, err := solve(in, &workspace{})
	if err != nil {
		return Report{}, err
	}
	r, err := s.m.report(in, assumed, s.ws, s.d)
	if err != nil {
		return Report{}, err
	}
	kept := in.keeping(&r, s.m.kneed.plies)
	all := movers(in)
	r.Margins = make([]Margin, len(all))
	each(len(all), func(i int) {
		one := search{mover: all[i], base: kept}
		r.Margins[i] = one.margin(&s.m.in)
	})
	r.Smaller = s.m.smaller(kept)
	return r, nil
}
