package cover

import (
	"math"

	"patiocover/beam"
	"patiocover/beam/lumber"
	"patiocover/beam/member"
)

// A bay is a part of a member between two supports, or beyond the last one.
type bay struct {
	length     float64 // in
	cantilever bool    // beyond the last support
}

// The senses of a moment, by the edge that it compresses.
const (
	topEdge    = iota // sagging
	bottomEdge        // hogging, and net uplift
)

const (
	maxBays   = 24 // most bays of a member
	durations = int(lumber.Impact) + 1
)

// A peak is the largest of a demand and the arrangement that brings it.
type peak struct {
	value float64
	by    int // index of the arrangement
	bay   int // index of the bay or support
}

func (p *peak) raise(value float64, by, bay int) {
	if value > p.value {
		*p = peak{value, by, bay}
	}
}

// peaks are the demands on a member, sorted by what their capacity depends on.
type peaks struct {
	moment [durations][maxBays][2]peak // lb-in, by duration, bay and compressed edge
	shear  [durations]peak             // lb
	seat   [maxBays]peak               // lb down, by support
	live   [maxBays]peak               // in, by bay, under live or snow
	total  [maxBays]peak               // in, by bay, long term
}

// A frame is a straight member on supports with everything it must carry. Case 0
// is one pound per inch over its whole length. It is not safe for concurrent use.
type frame struct {
	plan   *beam.Plan
	bays   []bay
	arr    []arrangement // strength
	sag    []arrangement // dead with each placing of live or snow, for deflection
	cosine float64       // of the slope: own weight acts across the member with this share
	normal []float64     // factors of one arrangement, reused
	forces beam.Response // reused
}

// newFrame makes the plan of a line member from its load cases.
func newFrame(length float64, supports []float64, cosine float64, cases [][]beam.Load) (*frame, error) {
	line, err := beam.NewLine(length, supports)
	if err != nil {
		return nil, err
	}
	all := append([][]beam.Load{{beam.Uniform(0, length, 1)}}, cases...)
	p, err := beam.NewPlan(line, all)
	if err != nil {
		return nil, err
	}
	return &frame{
		plan: p, bays: baysOf(length, supports), cosine: cosine,
		normal: make([]float64, len(all)),
	}, nil
}

// baysOf lists the bays of a member from its left end: the left overhang, the spans,
// the right overhang. An overhang that does not exist has no length.
func baysOf(length float64, supports []float64) []bay {
	out := []bay{{snap(supports[0]), true}}
	for i := 1; i < len(supports); i++ {
		out = append(out, bay{supports[i] - supports[i-1], false})
	}
	return append(out, bay{snap(length - supports[len(supports)-1]), true})
}

// snap takes a length that no carpenter sees for none.
func snap(length float64) float64 {
	if length <= tiny {
		return 0
	}
	return length
}

// tiny is a length that no carpenter sees, in.
const tiny = 1e-6

// factors writes the factors of an arrangement with the weight of the wood.
func (f *frame) factors(a *arrangement, w *wood) []float64 {
	copy(f.normal, a.coef)
	f.normal[0] += a.self * w.weight(a.least) * f.cosine
	return f.normal
}

// demands finds the peaks of every arrangement for the wood.
func (f *frame) demands(w *wood, p *peaks) {
	*p = peaks{}
	for i := range f.arr {
		a := &f.arr[i]
		f.plan.Forces(f.factors(a, w), &f.forces)
		f.record(i, a.duration, p)
	}
	f.deflections(w, p)
}

// record raises the peaks with the forces of arrangement i.
func (f *frame) record(i int, d lumber.Duration, p *peaks) {
	for b := range f.forces.Bays {
		r := &f.forces.Bays[b]
		p.moment[d][b][topEdge].raise(r.MomentMax, i, b)
		p.moment[d][b][bottomEdge].raise(-r.MomentMin, i, b)
		p.shear[d].raise(max(r.ShearMax, -r.ShearMin), i, b)
	}
	for s, r := range f.forces.Reactions {
		p.seat[s].raise(r, i, s)
	}
}

// deflections finds the live and the long-term deflection of every bay.
func (f *frame) deflections(w *wood, p *peaks) {
	ei := w.dry.Elasticity.Value * w.section.Inertia()
	kcr := w.seasoning().Kcr()
	for i := range f.sag {
		a := &f.sag[i]
		f.plan.Run(a.coef, ei, &f.forces)
		for b := range f.forces.Bays {
			p.live[b].raise(f.swing(b), i, b)
		}
		n := f.lastingFactors(w)
		for c := range n {
			n[c] = kcr*n[c] + a.coef[c]
		}
		f.plan.Run(n, ei, &f.forces)
		for b := range f.forces.Bays {
			p.total[b].raise(f.swing(b), i, b)
		}
	}
}

// lastingFactors writes the factors of the dead load with the weight of the wood.
func (f *frame) lastingFactors(w *wood) []float64 { return f.factors(&f.arr[0], w) }

// swing is the deflection of a bay that its limit speaks of, in: of a span the
// larger one, up or down; of an overhang that of its tip downward, because a tip that
// rises as its span sags is no fault of the overhang.
func (f *frame) swing(b int) float64 {
	at := &f.forces.Bays[b]
	if f.bays[b].cantilever {
		return at.DeflectionMax
	}
	return max(at.DeflectionMax, -at.DeflectionMin)
}

// A bracing says how the edges of a frame's member are held.
type bracing struct {
	topHeld bool    // the deck holds the top edge along its length
	top     float64 // in between braces of the top edge, where it is not held
	bottom  float64 // in between braces of the bottom edge; 0 for none but the supports
}

// alike returns the first bay whose compressed edge is held like that of the bay at.
func (b bracing) alike(edge int, bays []bay, at int) int {
	if edge == topEdge && b.topHeld {
		return 0
	}
	for i := range at {
		if math.Abs(bays[i].length-bays[at].length) <= tiny {
			return i
		}
	}
	return at
}

// of returns the bracing of the compressed edge in a bay. The effective length is
// that of any loading, the longest that Table 3.3.3 gives.
func (b bracing) of(edge int, span bay) member.Bracing {
	at := b.bottom
	if edge == topEdge {
		if b.topHeld {
			return member.Bracing{Held: true}
		}
		at = b.top
	}
	if at == 0 || at > span.length {
		at = span.length
	}
	return member.Bracing{Unbraced: at}
}
