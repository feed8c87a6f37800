package cover

import "patiocover/beam"

// bands is the number of bands of wind along the house.
const bands = 3

// The indices of the cases of a piece of a line with n bays.
func bayCase(b int) int              { return 1 + b }
func eachCase(n int) int             { return 1 + n }
func allCase(n int) int              { return 2 + n }
func bandCase(n, side, band int) int { return 3 + n + (side-1)*bands + band }
func workerCase(n, b int) int        { return 3 + n + 2*bands + b }

// cases lists the cases of the stick between two x, after its own weight.
func (f *beamFrame) cases(m *model, from, to float64) [][]beam.Load {
	n := len(f.bays)
	out := m.room.cases.take(workerCase(n, n) - 1)
	for c := range bandCase(n, 2, bands-1) { // what the rafters bring
		out[c] = m.room.loads.take(len(m.plan.rafters))[:0]
	}
	for b := range f.bays {
		if x := f.workerAt(b); f.bays[b].length > 0 && x > from-tiny && x < to+tiny {
			out[workerCase(n, b)-1] = m.room.load(beam.Point(x-from, 1))
		}
	}
	for i, x := range m.plan.rafters {
		if x < from-tiny || x > to+tiny || (x > to-tiny && to < m.plan.width-tiny) {
			continue // beyond the stick; at a splice it counts on the next one
		}
		f.rest(m, i, min(max(x-from, 0), to-from), out)
	}
	return out
}

// rest puts rafter i on a stick, at a place from its left end, in every case that it has
// a share of.
func (f *beamFrame) rest(m *model, i int, at float64, cases [][]beam.Load) {
	n := len(f.bays)
	add := func(c int, share float64) {
		if share > 0 {
			cases[c-1] = append(cases[c-1], beam.Point(at, share))
		}
	}
	shares := f.bayShares(m, i)
	for b := range f.bays {
		add(bayCase(b), shares[b])
	}
	add(eachCase(n), 1)
	add(allCase(n), m.plan.shares[i])
	for side := 1; side <= 2; side++ {
		for band, share := range m.bandShares(i, side) {
			add(bandCase(n, side, band), share)
		}
	}
}

// alone is the force of rafter i by case, lb for a factor of 1.
func (f *beamFrame) alone(m *model, i, cases int) []float64 {
	list := make([][]beam.Load, cases-1)
	f.rest(m, i, 0, list)
	out := make([]float64, cases)
	for c, on := range list {
		for _, l := range on {
			out[c+1] += l.Total()
		}
	}
	return out
}

// workerAt is the x of the maintenance load of a bay, in: the middle of a span, the tip
// of an overhang.
func (f *beamFrame) workerAt(b int) float64 {
	from := 0.0
	for _, before := range f.bays[:b] {
		from += before.length
	}
	switch at := f.bays[b]; {
	case !at.cantilever:
		return from + at.length/2
	case b == 0:
		return 0
	default:
		return from + at.length
	}
}

// bayShares returns the part of the tributary width of rafter i, over the spacing, that
// lies in each bay of the line, so that a load placed on a bay takes its own strip of
// the roof and no more: of a rafter over a post, one half.
func (f *beamFrame) bayShares(m *model, i int) [maxBays]float64 {
	lo, hi := tributary(m.plan.rafters, i)
	var out [maxBays]float64
	from := 0.0
	for b, bay := range f.bays {
		to := from + bay.length
		if b == len(f.bays)-1 {
			to = m.plan.width
		}
		out[b] = max(0, min(hi, to)-max(lo, from)) / m.plan.spacing
		from = to
	}
	return out
}

// bandShares returns the part of the tributary width of rafter i, over the spacing,
// that lies in each band from the left edge (side 1) or the right (side 2): up to
// the roof height, from there to twice it, and beyond.
func (m *model) bandShares(i, side int) [bands]float64 {
	lo, hi := tributary(m.plan.rafters, i)
	if side == 2 {
		lo, hi = m.plan.width-hi, m.plan.width-lo
	}
	h := m.plan.mean()
	var out [bands]float64
	edges := [bands + 1]float64{0, h, 2 * h, m.plan.width + h}
	for b := range bands {
		out[b] = max(0, min(hi, edges[b+1])-max(lo, edges[b])) / m.plan.spacing
	}
	return out
}
