package cover

import "patiocover/beam"

// A room is the memory of a model: its lists of numbers, its arrangements and its plans. A
// model that is made in a room that has held another takes the place of that one, which must
// not be used any more. It is not safe for concurrent use.
type room struct {
	numbers slab[float64]
	rows    slab[[]float64]
	arr     slab[arrangement]
	terms   slab[term]
	woods   slab[wood]
	winds   slab[windOn]
	frames  slab[frame]
	beams   slab[beamFrame]
	loads   slab[beam.Load]
	plans   []*beam.Plan
	used    int // of the plans
	model   model

	listed []arrangement // while their number is not known yet
	along  []term        // beside them
}

// leave makes the room free for the next model.
func (r *room) leave() {
	r.numbers.used, r.rows.used, r.arr.used, r.terms.used, r.woods.used = 0, 0, 0, 0, 0
	r.winds.used, r.loads.used, r.frames.used, r.beams.used, r.used = 0, 0, 0, 0, 0
}

// plan makes a plan, in that of an earlier model where there is one.
func (r *room) plan(line *beam.Line, cases [][]beam.Load) (*beam.Plan, error) {
	if r.used == len(r.plans) {
		r.plans = append(r.plans, new(beam.Plan))
	}
	p := r.plans[r.used]
	r.used++
	return p, p.Set(line, cases)
}

// table hands out rows of zeros.
func (r *room) table(rows, columns int) [][]float64 {
	out, all := r.rows.take(rows), r.numbers.take(rows*columns)
	for i := range out {
		out[i] = all[i*columns : (i+1)*columns : (i+1)*columns]
	}
	return out
}

// list begins lists of arrangements and of what belongs to them; keep ends them.
func (r *room) list() ([]arrangement, []term) { return r.listed[:0], r.along[:0] }

// keep hands out lists of their own for what was listed.
func (r *room) keep(listed []arrangement, along []term) ([]arrangement, []term) {
	r.listed, r.along = listed, along
	arr, terms := r.arr.take(len(listed)), r.terms.take(len(along))
	copy(arr, listed)
	copy(terms, along)
	return arr, terms
}

// A slab hands out lists from one block of memory.
type slab[T any] struct {
	block []T
	used  int
}

// take hands out n zero values. Where the block is too small a larger one takes its place,
// and what was handed out before keeps the old one.
func (s *slab[T]) take(n int) []T {
	if s.used+n > len(s.block) {
		s.block, s.used = make([]T, max(n, 2*len(s.block))), 0
	}
	out := s.block[s.used : s.used+n : s.used+n]
	s.used += n
	clear(out)
	return out
}
