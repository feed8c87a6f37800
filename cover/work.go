package cover

// A workspace holds the numbers of one design: the peaks and the worst checks of
// every member. It is made once per model, or fitted to one model after the other, and
// reused; grading into it allocates nothing. It is not safe for concurrent use, and
// neither is its model.
type workspace struct {
	room        room // of the model, where it is made anew for cover after cover
	every       bool // try every arrangement, not only those that can bring a peak
	rafterPeaks peaks
	rafter      graded
	rafterWater float64 // largest ratio of the checks of water on the rafters
	beamWater   float64 // and on the beams
	braced      float64 // largest ratio of the beams under knee braces
	lines       []lineWork
}

// A lineWork is the part of one beam line.
type lineWork struct {
	peaks  []peaks  // by piece
	pieces []graded // by piece
	posts  []postWork
}

// A postWork is the part of one post.
type postWork struct {
	with  postCase
	worst [postChecks]postFound
}

// newWorkspace makes room for the numbers of the model.
func newWorkspace(m *model) *workspace {
	ws := &workspace{}
	ws.fit(m)
	return ws
}

// fit makes room for the numbers of another model and forgets those of the last one.
func (ws *workspace) fit(m *model) {
	lines := ws.lines[:cap(ws.lines)]
	if more := len(m.lines) - len(lines); more > 0 {
		lines = append(lines, make([]lineWork, more)...)
	}
	ws.lines = lines[:len(m.lines)]
	ws.rafterPeaks, ws.rafter = peaks{}, graded{}
	ws.every, ws.rafterWater, ws.beamWater, ws.braced = false, 0, 0, 0
	for i, l := range m.lines {
		w := &ws.lines[i]
		w.peaks, w.pieces = cleared(w.peaks, len(l.pieces)), cleared(w.pieces, len(l.pieces))
		w.posts = cleared(w.posts, l.posts)
	}
}

// cleared returns n zero values in the room of a list, or in new room where that is too
// small.
func cleared[T any](list []T, n int) []T {
	if n > cap(list) {
		return make([]T, n)
	}
	list = list[:n]
	clear(list)
	return list
}

// gradeRafter grades the rafters and returns their largest ratio.
func (m *model) gradeRafter(ws *workspace, rafter, beam *wood) float64 {
	m.rafter.demands(rafter, ws.every, &ws.rafterPeaks)
	m.rafter.grade(rafter, &ws.rafterPeaks, m.rafterHolding(rafter, beam), &ws.rafter)
	ws.rafterWater = m.rafterWaterRatio(ws, rafter)
	return max(ws.rafter.ratio(), ws.rafterWater)
}

// loadBeams puts the rafters on every beam line.
func (m *model) loadBeams(rafter *wood) {
	m.onTrial.rafter = rafter
	for _, l := range m.lines {
		l.load(m, rafter)
	}
}

// gradeBeams grades every beam line under the rafters that its frames were loaded
// with, and returns the largest ratio.
func (m *model) gradeBeams(ws *workspace, beam *wood) float64 {
	ws.beamWater = 0
	held := m.beamHeld(beam)
	most := 0.0
	for i, l := range m.lines {
		lw := &ws.lines[i]
		if m.flat() {
			ws.beamWater = max(ws.beamWater, m.beamPond(i, beam).Ratio())
		}
		l.demands(beam, ws.every, lw.peaks)
		for p := range l.pieces {
			l.pieces[p].grade(beam, &lw.peaks[p], held, &lw.pieces[p])
			most = max(most, lw.pieces[p].ratio())
		}
	}
	ws.braced = m.gradeBraced(ws, beam)
	return max(most, ws.beamWater, ws.braced)
}

// loadPosts puts the beams that were graded last on every post.
func (m *model) loadPosts(ws *workspace, rafter, beam *wood) {
	for i, l := range m.lines {
		lw := &ws.lines[i]
		for n := range lw.posts {
			lw.posts[n].with = l.postCase(m, lw, n, rafter, beam)
		}
	}
}

// gradePosts grades every post under what it was loaded with and what the push asks of
// it, and returns the largest ratio.
//
// Ratios up to floor need not be exact, unless every arrangement is tried.
func (m *model) gradePosts(ws *workspace, all trio, floor float64) float64 {
	m.onTrial = all
	m.lean(all)
	if m.planted() {
		m.dig(ws, all)
		m.lean(all)
	}
	if ws.every {
		floor = 0
	}
	most := 0.0
	for i := range ws.lines {
		for n := range ws.lines[i].posts {
			w := &ws.lines[i].posts[n]
			m.gradePost(&w.with, all, floor, &w.worst)
			for k := range w.worst {
				most = max(most, w.worst[k].ratio)
			}
		}
	}
	return most
}

// numbers grades one whole design, from the loads to the largest ratio of all its
// members. It allocates nothing.
func (m *model) numbers(ws *workspace, rafter, beam, post *wood) float64 {
	m.onTrial = trio{rafter, beam, post}
	rafters := m.gradeRafter(ws, rafter, beam)
	m.loadBeams(rafter)
	beams := m.gradeBeams(ws, beam)
	m.loadPosts(ws, rafter, beam)
	most := max(rafters, beams)
	most = max(most, m.gradePosts(ws, m.onTrial, most))
	return max(most, m.gradeKnees(ws, rafter))
}
