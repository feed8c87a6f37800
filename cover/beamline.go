package cover

import (
	"math"

	"patiocover/loads"
)

// A beamFrame is the statics of one beam line: pieces that end over the spliced
// posts, with the rafters at their real places.
//
// The cases of a piece are its own weight (0); the rafters of each bay of the line,
// weighted by their tributary width; every rafter once, for its own weight; every rafter
// weighted by its tributary width; and the rafters weighted by the part of their
// tributary width that lies in each band from the left edge and from the right edge, for
// wind along the house; and one pound in the middle of each bay, or at its tip, for the
// maintenance load.
type beamFrame struct {
	line    int     // index of the beam line
	support int     // index of the line among the supports of a rafter
	pieces  []piece // from the left
	bays    []bay   // of the whole line
	placing []pattern
	posts   int
	arr     []arrangement // of the whole line
	forces  [][]float64   // force on each post by arrangement, lb down
	terms   []term        // how the factors of each arrangement follow from the rafters
	windOn  []windOn      // vertical reaction of a rafter at this line, by wind case
	carried extremes      // of the candidates of the rafters
	leasts  []float64     // room for the least dead load on each post, lb
}

// A piece is one stick of the beam.
type piece struct {
	*frame
	from, to  float64 // in, x
	firstPost int     // index of the post at its first support; its bay b is bay firstPost+b of the line

	// A rafter that stands just over the splice at its right end is carried by the next
	// stick, and may rest on this one: its force by case, and by arrangement without its own
	// weight, lb; nil for none.
	splice, spliced []float64

	gusts [][]float64 // by arrangement and support: what the wind on the post's own strip adds, lb

	leasts []float64 // room for the factors of the least dead load
}

// keepSplice keeps the force of the rafter over the splice under every arrangement.
func (p *piece) keepSplice() {
	if p.splice == nil {
		return
	}
	p.spliced = p.room.numbers.take(len(p.arr))
	for i := range p.arr {
		for c, x := range p.splice {
			p.spliced[i] += p.arr[i].coef[c] * x
		}
	}
}

// besides is what a rafter over the splice at the right end presses more on its seat
// there under arrangement i, lb.
func (p *piece) besides(i, support int) float64 {
	if p.splice == nil || support != len(p.unit)-1 {
		return 0
	}
	return max(0, p.spliced[i]+p.arr[i].coef[p.varied]*p.splice[p.varied])
}

// A term says which rafter load an arrangement carries, before the size of the
// rafters is known.
type term struct {
	combo   *loads.Combination
	placing pattern
	wind    int     // index in windOn; −1 for none
	worker  int     // number of the bay with the maintenance load, from 1; 0 for none
	stands  float64 // factor on the maintenance load
}

// A windOn is one way that the wind loads the rafters of a line.
type windOn struct {
	name  string
	force float64    // lb per rafter of full tributary width, vertical, + down, strength level
	bands [3]float64 // the same by band, for wind along the house
	side  int        // 0 uniform; 1 bands from the left edge; 2 from the right

	perBay bool             // bay by bay, each with its own force
	bays   [maxBays]float64 // lb per rafter of full tributary width, by bay
}

// newBeamFrame makes the statics of one beam line.
func newBeamFrame(m *model, line int) (*beamFrame, error) {
	p := &m.plan
	f := &m.room.beams.take(1)[0]
	*f = beamFrame{line: line, support: line, posts: len(p.posts), bays: m.room.baysOf(p.width, p.posts)}
	f.placing, f.leasts = m.allPlacings(f.bays), m.room.numbers.take(f.posts)
	if p.attached {
		f.support++
	}
	f.pieces = m.room.pieces.take(len(p.splices) + 1)
	for i := range f.pieces {
		from, to := p.piece(i)
		var err error
		if f.pieces[i], err = f.newPiece(m, from, to); err != nil {
			return nil, err
		}
	}
	f.windOn = m.wind.on(m, line, f.support)
	f.arrange(m)
	f.write(m)
	for i := range f.pieces {
		f.pieces[i].fix(eachCase(len(f.bays)))
		f.pieces[i].keepSplice()
		f.blow(&f.pieces[i])
		f.pieces[i].atCuts = m.beamHold.cuts[0].deep > 0 || *m.in.Beams.OnPost == "side_bolted"
	}
	f.ownWinds(m)
	f.bendSideways(m)
	f.carried = extremesOf(m.rafterWoods)
	for i := range f.pieces {
		f.pieces[i].swing()
	}
	return f, nil
}

// findHulls finds what can bring the peaks of every stick, whatever rafters it carries.
func (f *beamFrame) findHulls(m *model) {
	woods := extremesOf(m.beamWoods)
	var corners []corner
	for _, rafter := range f.carried.ends() {
		for _, beam := range woods.ends() {
			corners = append(corners, corner{load: func() { f.load(m, rafter) }, wood: beam})
		}
	}
	for i := range f.pieces {
		p := f.pieces[i].frame
		p.hull = p.newHull(corners, woods, woods.apart || f.carried.apart)
	}
}

// newPiece makes one stick with its share of every case.
func (f *beamFrame) newPiece(m *model, from, to float64) (piece, error) {
	supports := m.room.numbers.take(len(m.plan.posts))[:0]
	first := -1
	for i, x := range m.plan.posts {
		if x < from-tiny || x > to+tiny {
			continue
		}
		if first < 0 {
			first = i
		}
		supports = append(supports, x-from)
	}
	made, err := newFrame(m.room, to-from, supports, 1, f.cases(m, from, to))
	if err != nil {
		return piece{}, err
	}
	out := piece{frame: made, from: from, to: to, firstPost: first, leasts: m.room.numbers.take(len(made.normal))}
	for i, x := range m.plan.rafters {
		if math.Abs(x-to) <= tiny && to < m.plan.width-tiny {
			out.splice = f.alone(m, i, len(made.normal))
		}
	}
	return out, nil
}

// arrange lists every combination with every placing of its loads.
func (f *beamFrame) arrange(m *model) {
	f.arr, f.terms = m.room.list()
	for i := range m.rules.combos {
		c := &m.rules.combos[i]
		if m.idle(c) {
			continue
		}
		for _, p := range m.placings(c, f.placing) {
			if c.Wind == 0 {
				f.add(c, p, -1)
				continue
			}
			for w := range f.windOn {
				if suits(c, f.windOn[w].down(), f.windOn[w].up()) {
					f.add(c, p, w)
				}
			}
		}
	}
	for b := range f.bays {
		if f.bays[b].length > 0 {
			f.addWorker(m, b)
		}
	}
	f.arr, f.terms = m.room.keep(f.arr, f.terms)
	f.forces = m.room.table(len(f.arr), f.posts)
	for i := range f.pieces {
		f.pieces[i].copyArrangements(f.arr, f.placing)
	}
}

func (f *beamFrame) add(c *loads.Combination, p pattern, wind int) {
	name := ""
	if wind >= 0 {
		name = f.windOn[wind].name
	}
	f.terms = append(f.terms, term{combo: c, placing: p, wind: wind})
	f.arr = append(f.arr, newArrangement(c, p, name))
}

// addWorker adds dead load with the maintenance load in one bay.
func (f *beamFrame) addWorker(m *model, b int) {
	where := "at mid span, "
	if f.bays[b].cantilever {
		where = "at the tip, "
	}
	a := newArrangement(&m.rules.worker, pattern{}, "")
	word, number := spanWords(f.bays, b)
	a.words[1], a.spaced = m.room.say(phrase{where, word, number}), true
	a.onPlan = m.rules.stands
	f.terms = append(f.terms, term{combo: &m.rules.worker, wind: -1, worker: 1 + b, stands: m.rules.stands})
	f.arr = append(f.arr, a)
}

// copyArrangements gives the stick its own factors for every arrangement of the
// line, and the placings for its deflection.
func (p *piece) copyArrangements(arr []arrangement, placings []pattern) {
	p.arr = p.room.arr.take(len(arr))
	for i, a := range arr {
		a.coef = p.room.numbers.take(len(p.normal))
		p.arr[i] = a
	}
	p.sag = p.room.arr.take(len(placings))
	for i, at := range placings {
		p.sag[i] = at.forSag(p.room.numbers.take(len(p.normal)))
	}
}

// write writes the factors of every arrangement but the weight of the rafters, whose
// size is not known yet.
func (f *beamFrame) write(m *model) {
	for i := range f.terms {
		t := &f.terms[i]
		layers := m.rafter.layersAt(m, f.support, t.combo.DeadLeast)
		for p := range f.pieces {
			f.place(f.pieces[p].arr[i].coef, t, t.combo.Dead*layers, m.liveAt(f.support, t.combo, t.placing.set))
		}
	}
	for p := range f.pieces {
		for i, at := range f.placing {
			t := term{placing: at, wind: -1}
			f.place(f.pieces[p].sag[i].coef, &t, 0, m.sagAt(f.support, at.set))
		}
	}
}

// load writes the weight of the rafters that were chosen. It allocates nothing.
func (f *beamFrame) load(m *model, rafter *wood) {
	own := eachCase(len(f.bays))
	most, least := m.rafter.ownAt(f.support, rafter, false), m.rafter.ownAt(f.support, rafter, true)
	strange := !f.carried.hold(rafter)
	for p := range f.pieces {
		for i := range f.terms {
			weight := most
			if f.terms[i].combo.DeadLeast {
				weight = least
			}
			f.pieces[p].arr[i].coef[own] = f.terms[i].combo.Dead * weight
		}
		f.pieces[p].hull.strange = strange
	}
}

// uniform gives every rafter of the line the same force, lb on one of full tributary
// width.
func (f *beamFrame) uniform(coef []float64, force float64) {
	coef[allCase(len(f.bays))] = force
}

// dead sets the factors of dead load alone: the beam's own weight, and the layers and
// the weight of the rafters that it carries.
func (f *beamFrame) dead(coef []float64, m *model, w trio, least bool) {
	layers, own := m.rafter.deadAt(m, f.support, w.rafter, least)
	coef[0] = w.beam.weight(least)
	f.uniform(coef, layers)
	coef[eachCase(len(f.bays))] = own
}

// place sets the factors of one arrangement of one stick: the force of a rafter of
// full tributary width in each case, lb.
func (f *beamFrame) place(coef []float64, t *term, dead, live float64) {
	clear(coef)
	n := len(f.bays)
	coef[allCase(n)] = dead
	if t.wind >= 0 {
		f.windOn[t.wind].spread(coef, n, t.combo.Wind)
	}
	if t.placing.bays == f.placing[0].bays {
		coef[allCase(n)] += live
		return
	}
	if t.worker > 0 {
		coef[workerCase(n, t.worker-1)] = t.stands * loads.MaintenanceLoad
	}
	for b := range n {
		if t.placing.bays>>b&1 == 1 {
			coef[bayCase(b)] += live
		}
	}
}

// demands finds the peaks of the line for the wood: the worst of its sticks bay by
// bay, and the force on every post under every arrangement. Rafter sizes must have been
// loaded.
func (f *beamFrame) demands(w *wood, every bool, out []peaks) {
	for i := range f.forces {
		clear(f.forces[i])
	}
	for i := range f.pieces {
		p := &f.pieces[i]
		out[i].clear(len(p.bays))
		p.strengths(w, every, &out[i])
		for a := range p.arr {
			for s := range p.unit {
				r := p.reaction(a, s, w) + p.gusts[a][s]
				out[i].stand(a, s, p.arr[a].duration, r+p.besides(a, s))
				f.forces[a][p.firstPost+s] += r
			}
		}
		p.deflections(w, every, &out[i])
	}
}
