package beam

import (
	"slices"
)

// A Plan joins a line with load cases and holds what each case causes at the ends
// of all segments. A combination is then a sum of cases with factors: see
// [Plan.Run], [Plan.Forces], [Plan.Locate] and [Plan.At].
//
// A plan has work space and is not for concurrent use, not even by calls that seem
// only to read: give each goroutine its own.
type Plan struct {
	line     Line      // geometry at the time of Set
	cuts     []cut     // tips, supports, point loads, ends of line loads; ascending
	bays     []bay     // left overhang, spans, right overhang
	at       []float64 // position of each station, in from the left tip
	lengths  []float64 // of the segment that begins at each station, in; 0 at the end of a bay
	varying  bool      // whether any line load varies inside a segment
	solved   bool      // whether the last Set succeeded
	count    int       // number of cases
	size     int       // numbers per case
	numbers  []float64 // states of all cases, one after the other
	sum      state     // work space: the combination asked for last
	sums     []float64 // storage of sum
	pair     []float64 // work space: the sum of two cases
	points   []float64 // work space: point load at each station, lb
	terms    []float64 // work space: load terms, then moments of the inner supports
	rightEnd []float64 // work space: slope at the right end of each bay before joining
	work     []float64 // work space of Line.moments
}

// A cut is a position at which the member is cut into segments.
type cut struct {
	x       float64 // in from the left tip
	support int     // index of the support there, or -1
	begin   int     // station of the segment that begins here; the last station at the right tip
}

// A bay is a span or an overhang: stations first to last, each the left end of a
// segment, the last the right end of the bay. A missing overhang has no stations.
type bay struct {
	first, last int
	length      float64 // in
}

func (b bay) missing() bool { return b.last <= b.first }

// A state holds one value per support or per station, views of one list of
// numbers, so that a combination is a sum of lists. Slope and deflection carry the
// stiffness and come last: forces alone need only what stands before them.
type state struct {
	reaction   []float64 // upward at each support, lb
	shear      []float64 // V right of each station, left of it at the end of a bay, lb
	moment     []float64 // M, lb-in
	load       []float64 // w at the left end of the segment, lb/in
	change     []float64 // growth of w in the segment, lb/in²; empty unless the plan varies
	slope      []float64 // E I y', lb-in²
	deflection []float64 // E I y, lb-in³
}

// NewPlan cuts the line for the cases, each a list of loads that act together with
// a factor of 1, and solves every case.
//
// The error is a *[calc.InputError] that names each load that is not finite, not on
// the line or not in order, or a *[ClosureError] when a case does not come out in
// equilibrium.
func NewPlan(line *Line, cases [][]Load) (*Plan, error) {
	p := new(Plan)
	if err := p.Set(line, cases); err != nil {
		return nil, err
	}
	return p, nil
}

// Set makes the plan one of another line or of other cases under the rules of
// [NewPlan]. It reuses the storage and allocates nothing once the plan has held as
// many numbers before. After an error the plan panics when used, until Set succeeds.
func (p *Plan) Set(line *Line, cases [][]Load) error {
	p.solved, p.count = false, len(cases)
	if len(line.supports) < 2 || !validLoads(line.length, cases) {
		return loadFaults(line, cases)
	}
	p.line.copy(line)
	p.divide(cases)
	p.lay(len(cases))
	for k, loads := range cases {
		if err := p.solve(k, loads); err != nil {
			return err
		}
	}
	p.solved = true
	return nil
}

// Cases returns the number of cases.
func (p *Plan) Cases() int { return p.count }

// Line returns the geometry of the plan. It must not be changed.
func (p *Plan) Line() *Line { return &p.line }

// AppendCuts appends the positions at which a force may jump or bend, in inches from
// the left tip, ascending: between two of them every diagram is smooth.
func (p *Plan) AppendCuts(to []float64) []float64 {
	for _, c := range p.cuts {
		to = append(to, c.x)
	}
	return to
}

// copy takes over the geometry and the influence matrix of another line.
func (l *Line) copy(from *Line) {
	l.length = from.length
	l.supports = append(l.supports[:0], from.supports...)
	l.spans = append(l.spans[:0], from.spans...)
	l.influence = append(l.influence[:0], from.influence...)
	l.before = append(l.before[:0], from.before...)
}

// lay makes room for the states of so many cases.
func (p *Plan) lay(cases int) {
	stations, supports := len(p.at), len(p.line.supports)
	kinds := 5
	if p.varying {
		kinds++
	}
	p.size = supports + kinds*stations
	p.numbers = zeroed(p.numbers, cases*p.size)
	p.sums = zeroed(p.sums, p.size)
	p.pair = zeroed(p.pair, p.size)
	p.sum = p.view(p.sums)
	p.points = zeroed(p.points, stations)
	p.terms = zeroed(p.terms, supports-2)
	p.work = zeroed(p.work, supports-2)
	p.rightEnd = zeroed(p.rightEnd, len(p.bays))
}

// of returns the state of case k.
func (p *Plan) of(k int) state { return p.view(p.numbers[k*p.size : (k+1)*p.size]) }

// view divides a list of numbers among the quantities.
func (p *Plan) view(numbers []float64) state {
	stations, supports := len(p.at), len(p.line.supports)
	take := func(n int) []float64 {
		head := numbers[:n:n]
		numbers = numbers[n:]
		return head
	}
	var s state
	s.reaction = take(supports)
	s.shear, s.moment, s.load = take(stations), take(stations), take(stations)
	if p.varying {
		s.change = take(stations)
	}
	s.slope, s.deflection = take(stations), take(stations)
	return s
}

// zeroed returns the list with n zeros, in the same storage if it is large enough.
func zeroed(list []float64, n int) []float64 {
	list = slices.Grow(list[:0], n)[:n]
	clear(list)
	return list
}
