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
	stick      float64 // in, the whole member that the bay is part of
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

// The senses of a reaction: it presses the member up, or holds it down.
const (
	pressed = iota
	lifted
)

// peaks are the demands on a member, sorted by what their capacity depends on.
type peaks struct {
	moment [durations][maxBays][2]peak // lb-in, by duration, bay and compressed edge
	over   [durations][maxBays][2]peak // lb-in over a support, by duration, support and compressed edge
	face   [durations][maxBays][2]peak // shear beside a support, lb, by duration, support and sense
	shear  [durations]peak             // lb
	press  [durations][maxBays]peak    // lb down, by duration and support
	thrust [durations]peak             // lb along the member
	seat   [maxBays]peak               // lb down, by support
	live   [maxBays]peak               // in, by bay, under live or snow
	total  [maxBays]peak               // in, by bay, long term
	gust   [maxBays]peak               // in, by bay, under wind of strength level
}

// clear empties the peaks of a member with so many bays.
func (p *peaks) clear(bays int) {
	for d := range durations {
		clear(p.moment[d][:bays])
		clear(p.over[d][:bays])
		clear(p.face[d][:bays])
		clear(p.press[d][:bays])
	}
	p.shear, p.thrust = [durations]peak{}, [durations]peak{}
	clear(p.seat[:bays])
	clear(p.live[:bays])
	clear(p.total[:bays])
	clear(p.gust[:bays])
}

// A frame is a straight member on supports with everything it must carry. Case 0
// is one pound per inch over its whole length. It is not safe for concurrent use.
type frame struct {
	room   *room
	plan   *beam.Plan
	bays   []bay
	arr    []arrangement // strength
	sag    []arrangement // dead with each placing of live or snow, for deflection
	blows  []arrangement // wind of strength level, for deflection
	cosine float64       // of the slope: own weight acts across the member with this share
	normal []float64     // factors of one arrangement, reused
	forces beam.Response // reused
	unit   [][]float64   // reaction across the member, by support and case, lb
	fixed  [][]float64   // the same by arrangement and support, without what depends on the wood, lb
	varied int           // case whose factors depend on what the member carries; 0 for none
	swings [maxBays]peak // largest deflection by bay under live or snow, times E I, lb-in³
	gusts  [maxBays]peak // the same under wind of strength level
	hull   hull          // what can bring a peak
	atCuts bool          // what stands beside and over the supports counts, as for cuts and bolts

	sidewise sidewise // of a beam; zero where nothing pushes it sideways
}

// newFrame makes the plan of a line member from its load cases.
func newFrame(r *room, length float64, supports []float64, cosine float64, cases [][]beam.Load) (*frame, error) {
	all := r.cases.take(1 + len(cases))
	all[0] = r.load(beam.Uniform(0, length, 1))
	copy(all[1:], cases)
	s, err := r.solve(length, supports, all)
	if err != nil {
		return nil, err
	}
	f := &r.frames.take(1)[0]
	*f = frame{
		room: r, plan: &s.plan, bays: r.baysOf(length, supports), cosine: cosine,
		normal: r.numbers.take(len(all)), forces: s.forces,
	}
	f.measure()
	s.forces = f.forces // as long as the member asks for
	return f, nil
}

// measure keeps the reactions of each case alone.
func (f *frame) measure() {
	f.unit = f.room.table(len(f.bays)-1, len(f.normal))
	for c := range f.normal {
		clear(f.normal)
		f.normal[c] = 1
		f.plan.Forces(f.normal, &f.forces)
		for s := range f.unit {
			f.unit[s][c] = f.forces.Reactions[s]
		}
	}
}

// fix keeps the reactions of every arrangement to all that does not depend on the wood.
// varied is the case whose factors are written later, 0 for none; they are 0 now.
func (f *frame) fix(varied int) {
	f.varied = varied
	f.fixed = f.room.table(len(f.arr), len(f.unit))
	for i := range f.arr {
		for s, unit := range f.unit {
			for c, u := range unit {
				f.fixed[i][s] += f.arr[i].coef[c] * u
			}
		}
	}
}

// reaction is the reaction across the member at a support under arrangement i, lb.
func (f *frame) reaction(i, support int, w *wood) float64 {
	a, unit := &f.arr[i], f.unit[support]
	sum := f.fixed[i][support] + a.self*w.weight(a.least)*f.cosine*unit[0]
	if f.varied > 0 {
		sum += a.coef[f.varied] * unit[f.varied]
	}
	return sum
}

// baysOf lists the bays of a member from its left end: the left overhang, the spans,
// the right overhang. An overhang that does not exist has no length.
func (r *room) baysOf(length float64, supports []float64) []bay {
	out := append(r.bays.take(len(supports) + 1)[:0], bay{snap(supports[0]), true, length})
	for i := 1; i < len(supports); i++ {
		out = append(out, bay{supports[i] - supports[i-1], false, length})
	}
	return append(out, bay{snap(length - supports[len(supports)-1]), true, length})
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

// demands finds the peaks for the wood: of every arrangement, or of those alone that
// can bring one.
func (f *frame) demands(w *wood, every bool, p *peaks) {
	p.clear(len(f.bays))
	f.strengths(w, every, p)
	for i := range f.arr {
		for s := range f.unit {
			p.stand(i, s, f.arr[i].duration, f.reaction(i, s, w))
		}
	}
	f.deflections(w, every, p)
}

// stand raises the peaks of a reaction.
func (p *peaks) stand(i, support int, d lumber.Duration, force float64) {
	p.seat[support].raise(force, i, support)
	p.press[d][support].raise(force, i, support)
}

// strengths raises the peaks of moment and shear.
func (f *frame) strengths(w *wood, every bool, p *peaks) {
	if !every && f.hull.covers(w) {
		for _, i := range f.hull.strength {
			f.strength(i, w, p)
		}
		return
	}
	for i := range f.arr {
		f.strength(i, w, p)
	}
}

// strength raises the peaks with the forces of arrangement i.
func (f *frame) strength(i int, w *wood, p *peaks) {
	a := &f.arr[i]
	f.plan.Forces(f.factors(a, w), &f.forces)
	d := a.duration
	for b := range f.forces.Bays {
		r := &f.forces.Bays[b]
		p.moment[d][b][topEdge].raise(r.MomentMax, i, b)
		p.moment[d][b][bottomEdge].raise(-r.MomentMin, i, b)
		p.shear[d].raise(max(r.ShearMax, -r.ShearMin), i, b)
	}
	if !f.atCuts {
		return
	}
	for s, moment := range f.forces.SupportMoments {
		left, right := f.forces.Bays[s].ShearRight, f.forces.Bays[s+1].ShearLeft
		p.face[d][s][pressed].raise(max(right, -left), i, s)
		p.face[d][s][lifted].raise(max(-right, left), i, s)
		p.over[d][s][topEdge].raise(moment, i, s)
		p.over[d][s][bottomEdge].raise(-moment, i, s)
	}
}

// swing finds the largest deflections under live or snow load and under wind, which do
// not depend on the wood but for its stiffness.
func (f *frame) swing() {
	f.swings, f.gusts = f.moves(f.sag), f.moves(f.blows)
}

// moves finds the largest deflections of the bays under loads, times E I.
func (f *frame) moves(all []arrangement) [maxBays]peak {
	var out [maxBays]peak
	for i := range all {
		f.plan.Run(all[i].coef, 1, &f.forces)
		for b := range f.forces.Bays {
			out[b].raise(f.move(b), i, b)
		}
	}
	return out
}

// deflections finds the live and the long-term deflection of every bay.
func (f *frame) deflections(w *wood, every bool, p *peaks) {
	ei := w.dry.Elasticity.Value * w.section.Inertia()
	for b := range f.bays {
		p.live[b], p.gust[b] = f.swings[b], f.gusts[b]
		p.live[b].value /= ei
		p.gust[b].value /= ei
	}
	if !every && f.hull.coversSag(w) {
		for _, i := range f.hull.sag {
			f.settle(i, w, ei, p)
		}
		return
	}
	for i := range f.sag {
		f.settle(i, w, ei, p)
	}
}

// settle raises the long-term deflections with those under placing i of the live or snow
// load.
func (f *frame) settle(i int, w *wood, stiffness float64, p *peaks) {
	f.plan.Run(f.sagFactors(i, w), stiffness, &f.forces)
	for b := range f.forces.Bays {
		p.total[b].raise(f.move(b), i, b)
	}
}

// sagFactors writes the factors of the long-term deflection under placing i of the live
// or snow load: the dead load with its creep, and that load.
func (f *frame) sagFactors(i int, w *wood) []float64 {
	kcr := w.seasoning().Kcr()
	n := f.lastingFactors(w)
	for c, x := range f.sag[i].coef {
		n[c] = kcr*n[c] + x
	}
	return n
}

// lastingFactors writes the factors of the dead load with the weight of the wood.
func (f *frame) lastingFactors(w *wood) []float64 { return f.factors(&f.arr[0], w) }

// move is the deflection of a bay that its limit speaks of, in: of a span the
// larger one, up or down; of an overhang that of its tip downward, because a tip that
// rises as its span sags is no fault of the overhang.
func (f *frame) move(b int) float64 {
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
// that of any loading, the longest that Table 3.3.3 gives; points of zero moment lie no
// farther apart than the member is long, which is safe for the volume factor.
func (b bracing) of(edge int, span bay) member.Bracing {
	at := b.bottom
	if edge == topEdge {
		if b.topHeld {
			return member.Bracing{Held: true, Zeros: span.stick}
		}
		at = b.top
	}
	if at == 0 || at > span.length {
		at = span.length
	}
	return member.Bracing{Unbraced: at, Zeros: span.stick, Hogging: edge == bottomEdge}
}
