package cover

import "patiocover/beam/lumber"

// A design is the wood that was chosen or given, with the smaller sizes that were
// tried before it.
type design struct {
	rafter, beam, post       wood
	noRafter, noBeam, noPost []Rejected
	tried                    int       // index of the post among its candidates
	deck                     *decked   // nil where none that can be checked was described
	buried                   []float64 // in, how far each post is set in the ground; nil where none is
}

// Size answers one cover: it fills what may be assumed, chooses the smallest size
// that passes for each member whose size was left open, checks the sizes that were
// given, and assembles the report. An invalid input gives a [*calc.InputError] with
// every fault. That nothing passes is an answer, not an error: the report then shows
// the largest size and what is over.
func Size(in Input) (Report, error) {
	s, assumed, err := solve(in, &workspace{})
	if err != nil {
		return Report{}, err
	}
	return s.m.report(in, assumed, s.ws, s.d)
}

// solve fills the input, makes its model and chooses the design, with the workspace that is
// given. The model returned is that of allowable stress design, from which connections and
// foundations follow; where members are chosen by strength design, that model holds theirs.
func solve(in Input, ws *workspace) (solved, []Assumption, error) {
	if err := in.Validate(); err != nil {
		return solved{}, nil, err
	}
	full, assumed := in.Assume()
	m, err := ws.room.newModel(full, methodOf(full), nil)
	if err != nil {
		return solved{}, nil, err
	}
	ws.fit(m)
	s := solved{m, ws, m.choose(ws)}
	if m.rules.method == lumber.ASD {
		return s, assumed, nil
	}
	asd, err := m.recast(lumber.ASD, &s.d)
	if err != nil {
		return solved{}, nil, err
	}
	asd.m.strength = &s
	return asd, assumed, nil
}

// choose tries the candidates of each member in turn: rafters and beams, then posts under
// them, then the knee braces. Knee braces bend the beams by a push that grows with the
// posts: while the posts come out larger than those the beams were chosen with, all is
// chosen once more. What is chosen is graded once more under every arrangement.
func (m *model) choose(ws *workspace) design {
	posts := m.posts.candidates(postSizes)
	trial := 0
	d := m.chooseWith(ws, posts, trial)
	for m.racking[alongHouse].braced() && trial < d.tried {
		trial = d.tried
		d = m.chooseWith(ws, posts, trial)
	}
	m.chooseKnees(ws, &d)
	ws.every = true
	m.numbers(ws, &d.rafter, &d.beam, &d.post)
	ws.every = false
	return d
}

// chooseWith chooses rafters and beams for the push on one candidate of the posts, and
// then the posts.
func (m *model) chooseWith(ws *workspace, posts []wood, trial int) design {
	m.onTrial.post = &posts[trial]
	d := m.chooseFrames(ws)
	m.loadBeams(&d.rafter)
	m.onTrial.post = &posts[trial]
	m.gradeBeams(ws, &d.beam)
	m.loadPosts(ws, &d.rafter, &d.beam)
	d.post, d.noPost = pick(posts, func(w *wood) (float64, string) {
		ratio := m.gradePosts(ws, trio{&d.rafter, &d.beam, w}, 1)
		return ratio, postNames[ws.worstPost()]
	})
	d.tried = len(d.noPost)
	return d
}

// chooseFrames chooses rafters and beams that fit each other: a beam below the rafters,
// and the rafters once more for the seat of that beam. Where the second beam is narrower
// than the seat that its rafters were chosen for, the first choice stands.
func (m *model) chooseFrames(ws *workspace) design {
	var d design
	d.beam = m.beamWoods[0]
	m.chooseFrame(ws, &d)
	first := d
	m.chooseFrame(ws, &d)
	before, again := m.gradeRafter(ws, &first.rafter, &first.beam), m.gradeRafter(ws, &d.rafter, &d.beam)
	if again > before && again > 1 {
		return first
	}
	return d
}

// nameOrWater names the check with the largest ratio of a line member.
func nameOrWater(g *graded, water float64) string {
	if water > g.ratio() {
		return "ponding or fall left after sag"
	}
	return checkNames[g.kind()]
}

// chooseFrame chooses the rafters for the seat that the beam of the design gives, and
// then the beam below them.
func (m *model) chooseFrame(ws *workspace, d *design) {
	d.rafter, d.noRafter = pick(m.rafterWoods, func(w *wood) (float64, string) {
		ratio := m.gradeRafter(ws, w, &d.beam)
		return ratio, nameOrWater(&ws.rafter, ws.rafterWater)
	})
	m.loadBeams(&d.rafter)
	d.beam, d.noBeam = pick(m.beamWoods, func(w *wood) (float64, string) {
		ratio := m.gradeBeams(ws, w)
		if ws.braced >= ratio {
			return ratio, kneeNames[beamAtKnee]
		}
		return ratio, nameOrWater(ws.worstPiece(), ws.beamWater)
	})
}

// pick returns the first candidate whose ratio is at most 1, and those before it
// with what was over. If none passes it returns the last one.
func pick(candidates []wood, grade func(*wood) (ratio float64, check string)) (wood, []Rejected) {
	var no []Rejected
	for i := range candidates {
		w := &candidates[i]
		ratio, check := grade(w)
		if ratio <= 1 || i == len(candidates)-1 {
			return *w, no
		}
		no = append(no, Rejected{Size: w.section.Name, Check: check, Ratio: Ratio(ratio)})
	}
	return wood{}, no // unreachable: validation leaves at least one candidate
}

// worstPiece returns the grades of the piece of beam with the largest ratio.
func (ws *workspace) worstPiece() *graded {
	worst := &ws.lines[0].pieces[0]
	for i := range ws.lines {
		for p := range ws.lines[i].pieces {
			if g := &ws.lines[i].pieces[p]; g.ratio() > worst.ratio() {
				worst = g
			}
		}
	}
	return worst
}

// worstPost returns the kind of check with the largest ratio over all posts.
func (ws *workspace) worstPost() postCheck {
	var kind postCheck
	most := 0.0
	for i := range ws.lines {
		for n := range ws.lines[i].posts {
			for k, x := range ws.lines[i].posts[n].worst {
				if x.ratio > most {
					most, kind = x.ratio, postCheck(k)
				}
			}
		}
	}
	return kind
}

// checkNames names the kinds of check in the report.
var checkNames = [checkKinds]string{
	"bending", "bending with force along the slope", "bending both ways", "shear", "bearing", "bearing on the beam", "shear at the cut",
	"bending at the cut", "shear at the fasteners", "live or snow deflection", "long-term deflection", "deflection under wind",
}

// A trio is the wood of the three kinds of member.
type trio struct{ rafter, beam, post *wood }

// woods are those of a design.
func (d *design) woods() trio { return trio{&d.rafter, &d.beam, &d.post} }
