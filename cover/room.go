package cover

import (
	"strings"

	"patiocover/beam"
	"patiocover/loads/wind"
)

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
	cases   slab[[]beam.Load]
	bays    slab[bay]
	placing slab[pattern]
	pieces  slab[piece]
	points  slab[pointAt]
	effects slab[effect]
	pushes  slab[windCase]
	bands   slab[windBand]
	parts   slab[wind.Component]
	strips  slab[[]wind.Component]
	statics []*statics
	used    int // of the statics
	rafter  rafterFrame
	lines   []*beamFrame
	model   model

	words  map[phrase]string // names that were put together, for every later model
	limits map[limitKey]limits
	rules  map[ruleKey]rulebook

	listed []arrangement // while their number is not known yet
	along  []term        // beside them
}

// Statics is what one straight member is solved by.
type statics struct {
	line   beam.Line
	plan   beam.Plan
	forces beam.Response
}

// leave makes the room free for the next model.
func (r *room) leave() {
	r.numbers.used, r.rows.used, r.arr.used, r.terms.used, r.woods.used = 0, 0, 0, 0, 0
	r.winds.used, r.loads.used, r.frames.used, r.beams.used, r.used = 0, 0, 0, 0, 0
	r.cases.used, r.bays.used, r.placing.used, r.pieces.used, r.points.used = 0, 0, 0, 0, 0
	r.effects.used, r.pushes.used, r.bands.used, r.parts.used, r.strips.used = 0, 0, 0, 0, 0
}

// solve makes the statics of a member, in the place of an earlier one where there is one.
func (r *room) solve(length float64, supports []float64, cases [][]beam.Load) (*statics, error) {
	if r.used == len(r.statics) {
		r.statics = append(r.statics, new(statics))
	}
	s := r.statics[r.used]
	r.used++
	if err := s.line.Set(length, supports); err != nil {
		return nil, err
	}
	return s, s.plan.Set(&s.line, cases)
}

// A phrase is the parts of a name.
type phrase [6]string

// say puts a name together once and keeps it. The parts must be words of tables and small
// numbers, so that there are not many.
func (r *room) say(p phrase) string {
	return keep(&r.words, p, func() string { return strings.Join(p[:], "") })
}

// keep returns what was made for the key, and makes it where it was not.
func keep[K comparable, V any](made *map[K]V, key K, anew func() V) V {
	v, ok := (*made)[key]
	if !ok {
		if *made == nil {
			*made = map[K]V{}
		}
		v = anew()
		(*made)[key] = v
	}
	return v
}

// copied is a list of numbers of the room's own.
func (r *room) copied(list []float64) []float64 {
	out := r.numbers.take(len(list))
	copy(out, list)
	return out
}

// table hands out rows of zeros.
func (r *room) table(rows, columns int) [][]float64 {
	out, all := r.rows.take(rows), r.numbers.take(rows*columns)
	for i := range out {
		out[i] = all[i*columns : (i+1)*columns : (i+1)*columns]
	}
	return out
}

// load is a case of one load.
func (r *room) load(l beam.Load) []beam.Load {
	out := r.loads.take(1)
	out[0] = l
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
