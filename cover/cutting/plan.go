package cutting

import "slices"

// A Piece is one length that is needed.
type Piece struct {
	Length float64 // in, finished
	Count  int     // how many
}

// A Stick is one length that can be bought.
type Stick struct {
	Length float64 // in
	Price  float64 // cost of one stick, in any one unit; 0 for all when length alone counts
}

// A Cut is one way to cut a stick, and how many are cut so.
type Cut struct {
	Stick  int   // index of the stick
	Pieces []int // how many of each piece come out of it
	Count  int   // how many sticks are cut so
}

// A Plan is what to buy and how to cut it.
type Plan struct {
	Cuts   []Cut   // in the order of the sticks, longest piece first
	Sticks int     // how many sticks are bought
	Price  float64 // cost of all of them, in the unit of the sticks
	Bought float64 // in, length of all sticks
	Used   float64 // in, length of all finished pieces
	Unmet  []int   // of each piece, how many fit no stick
	Exact  bool    // no plan costs less
}

// States is the largest number of combinations of counts that is searched exactly.
const States = 20_000

// New finds what to buy. kerf is the width of a saw cut, in: one between two pieces,
// and none at the end of a stick that fits to the length. Of plans of equal price the
// one with the least length is taken, then the one with the fewest sticks, then the
// one that uses the sticks listed first. A piece longer than every stick is counted in
// Unmet and left out.
func New(pieces []Piece, sticks []Stick, kerf float64) Plan {
	p := Plan{Unmet: make([]int, len(pieces)), Exact: true}
	need := make([]int, len(pieces))
	for i, at := range pieces {
		if !slices.ContainsFunc(sticks, func(s Stick) bool { return at.Length <= s.Length }) {
			p.Unmet[i] = at.Count
			continue
		}
		need[i] = at.Count
		p.Used += at.Length * float64(at.Count)
	}
	if states(need) <= States {
		p.add(search(pieces, sticks, kerf, need))
	} else {
		p.Exact = false
		for i, n := range need {
			alone := make([]int, len(need))
			alone[i] = n
			p.add(search(pieces, sticks, kerf, alone))
		}
	}
	p.total(sticks)
	return p
}

// add takes cuts over, equal ones together.
func (p *Plan) add(cuts []Cut) {
	for _, c := range cuts {
		at := slices.IndexFunc(p.Cuts, func(o Cut) bool {
			return o.Stick == c.Stick && slices.Equal(o.Pieces, c.Pieces)
		})
		if at < 0 {
			p.Cuts = append(p.Cuts, c)
			continue
		}
		p.Cuts[at].Count += c.Count
	}
}

// total orders the cuts and sums them up.
func (p *Plan) total(sticks []Stick) {
	slices.SortStableFunc(p.Cuts, func(a, b Cut) int {
		if a.Stick != b.Stick {
			return a.Stick - b.Stick
		}
		return -slices.Compare(a.Pieces, b.Pieces)
	})
	for _, c := range p.Cuts {
		p.Sticks += c.Count
		p.Price += sticks[c.Stick].Price * float64(c.Count)
		p.Bought += sticks[c.Stick].Length * float64(c.Count)
	}
}

// states is the number of combinations of counts, at most one more than States.
func states(need []int) int {
	n := 1
	for _, count := range need {
		n *= count + 1
		if n > States {
			return States + 1
		}
	}
	return n
}
