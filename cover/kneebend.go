package cover

import (
	"patiocover/beam/brace"
	"patiocover/beam/lumber"
	"patiocover/beam/member"
)

// A kneeStick is a member that braces meet: a stick of beam, or the rafters at a post.
type kneeStick struct {
	frame   *frame
	peaks   *peaks
	edge    *lumber.Adjusted // its values on edge
	flat    *lumber.Adjusted // and laid flat
	bracing bracing
	held    float64 // in, between points that hold it sideways
	row     *brace.Row
	first   int     // bay of the row at its own first bay
	push    share   // lb, the part of the push that its row takes, strength level
	lean    float64 // H / c, ratio
	plies   float64 // members side by side that share everything
	axial   share   // lb, along the member between brace and post, strength level
}

// A kneeBent is the worst bending and the worst shear of a member that braces meet.
type kneeBent struct{ bending, shear kneeFound }

func (b kneeBent) ratio() float64 { return max(b.bending.ratio, b.shear.ratio) }

// A kneeFound is one such check with what it takes to make it again.
type kneeFound struct {
	ratio float64
	load  float64 // lb-in or lb, of the loads of the combination
	push  float64 // lb-in or lb, of the braces, with its factor
	axial float64 // lb, along the member; it presses and pulls in turn
	pulls bool    // the pulling sense is the worse
	gust  gustRow // of the wind
	quake int     // 1 and the row of the combination with earthquake; 0 for wind
	bay   int
	edge  int
}

func (f *kneeFound) raise(x kneeFound) {
	if x.ratio > f.ratio {
		*f = x
	}
}

// bent finds the worst of a stick. The largest moment of a bay without the braces and the
// largest of the braces are added, wherever in the bay they stand, the safe side.
func (m *model) bent(s *kneeStick) kneeBent {
	var out kneeBent
	for b := range s.frame.bays {
		bay := &s.row.Bays[s.first+b]
		if s.frame.bays[b].length == 0 || s.frame.bays[b].cantilever {
			continue // no brace stands there
		}
		for edge := range 2 {
			top := func(d lumber.Duration) peak { return s.peaks.moment[d][b][edge] }
			m.combine(s, top, bay.Moment, func(x kneeFound) {
				x.bay, x.edge = b, edge
				for _, x.pulls = range []bool{false, true} {
					x.ratio = s.combined(&x).Ratio()
					out.bending.raise(x)
				}
			})
		}
		m.combine(s, func(d lumber.Duration) peak { return s.peaks.shear[d] }, bay.Shear, func(x kneeFound) {
			x.bay, x.ratio = b, s.sheared(&x).Ratio()
			out.shear.raise(x)
		})
	}
	return out
}

// combine calls yield with every combination in which the push counts: of wind the largest
// load with any factor on it, of earthquake row by row. unit is what a push of 1 lb does at
// a lean of 1; top is the peak of the loads by duration.
func (m *model) combine(s *kneeStick, top func(lumber.Duration) peak, unit float64, yield func(kneeFound)) {
	for _, g := range m.rules.gusts {
		windy := top(g.duration)
		yield(kneeFound{
			load: max(windy.value, 0) / s.plies, push: g.factor * s.push.wind * unit * s.lean / s.plies,
			axial: g.factor * s.axial.wind / s.plies, gust: g,
		})
	}
	if !m.quaking {
		return
	}
	dead, snow := max(top(lumber.Permanent).value, 0), max(top(lumber.TwoMonths).value, 0)
	for i := range m.rules.quakes {
		q := &m.rules.quakes[i]
		if m.idle(q) || q.DeadLeast {
			continue // less dead load asks for no more: what it relieves is not counted
		}
		load := (q.Dead+q.EarthquakeUp*m.sideways.vertical)*dead + q.Snow*snow
		yield(kneeFound{
			load: load / s.plies, push: q.Earthquake * s.push.quake * unit * s.lean / s.plies,
			axial: q.Earthquake * s.axial.quake / s.plies, quake: i + 1, gust: gustRow{duration: lumber.TenMinutes},
		})
	}
}

// combined is the member under the moment of both and the force along it.
func (s *kneeStick) combined(x *kneeFound) member.Combined {
	bay := s.frame.bays[x.bay]
	force := x.axial
	if x.pulls {
		force = -force
	}
	stay := member.Stay{
		Column: member.Column{
			Deep: member.Axis{Length: bay.length, Ends: member.PinnedPinned},
			Thin: member.Axis{Length: min(s.held, bay.length), Ends: member.PinnedPinned},
		},
		Bracing: s.bracing.of(x.edge, bay),
	}
	return member.NewCombined(member.Actions{Force: force, Edgewise: x.load + x.push}, s.edge, s.flat, x.gust.duration, stay)
}

func (s *kneeStick) sheared(x *kneeFound) member.Shear {
	return member.NewShear(x.load+x.push, s.edge, x.gust.duration)
}

// beamStick is one stick of a beam line under the braces along the house.
func (m *model) beamStick(ws *workspace, line, piece int, w trio) kneeStick {
	l := m.lines[line]
	p := &m.sideways.along
	part := m.parts[alongHouse][line]
	s := kneeStick{
		frame: l.pieces[piece].frame, peaks: &ws.lines[line].peaks[piece], edge: &w.beam.dry, flat: &w.beam.flat,
		bracing: m.beamHold.bracing, held: m.plan.spacing, row: &m.racking[alongHouse].row, first: l.pieces[piece].firstPost,
		push: share{p.wind.Force, p.quake.Force}.by(part), plies: 1,
		lean: m.postHeight(line, w.rafter.section.Depth, w.beam.section.Depth) / m.knee.reach,
	}
	for n := range m.plan.posts {
		at := m.effectOn(alongHouse, line, n).brace
		s.axial = share{max(s.axial.wind, at.wind), max(s.axial.quake, at.quake)}
	}
	return s
}

// gradeBraced is the largest ratio of the beams under the braces along the house, for the
// posts that are on trial; 0 where there are none.
func (m *model) gradeBraced(ws *workspace, beam *wood) float64 {
	if !m.racking[alongHouse].braced() {
		return 0
	}
	w := trio{m.onTrial.rafter, beam, m.onTrial.post}
	m.lean(w)
	most := 0.0
	for i := range m.lines {
		for p := range m.lines[i].pieces {
			s := m.beamStick(ws, i, p, w)
			most = max(most, m.bent(&s).ratio())
		}
	}
	return most
}

// rafterStick is the rafters that a brace out from the house meets, at the post that takes
// most of the push.
func (m *model) rafterStick(ws *workspace, rafter *wood) kneeStick {
	r := &m.racking[outward]
	p := &m.sideways.out
	part, high := 0.0, 0.0
	s := kneeStick{
		frame: m.rafter.frame, peaks: &ws.rafterPeaks, edge: &m.singleRafter, flat: &rafter.flat, bracing: m.rafterHold.bracing,
		held: m.plan.projection, row: &r.row, plies: float64(max(1, m.kneed.plies)),
	}
	if m.plan.solid {
		s.held = m.plan.spacing // the deck holds it sideways
	}
	m.singleRafter = alone(rafter.dry)
	for line := range m.plan.lines {
		high = max(high, m.postHeight(line, rafter.section.Depth, m.onTrial.beam.section.Depth))
		for n, column := range r.columns {
			part = max(part, column*m.parts[outward][line]*float64(len(m.plan.lines)))
			at := m.effectOn(outward, line, n).brace
			s.axial = share{max(s.axial.wind, at.wind), max(s.axial.quake, at.quake)}
		}
	}
	s.push, s.lean = share{p.wind.Force, p.quake.Force}.by(part), high/m.knee.reach
	return s
}

// alone takes the repetitive member factor off: a brace meets its own rafters and no other.
func alone(a lumber.Adjusted) lumber.Adjusted {
	a.Bending.Value /= a.Bending.Repetitive
	a.Bending.Repetitive = 1
	return a
}

// rafterAtKnee is the worst of the rafters that a brace meets.
func (m *model) rafterAtKnee(ws *workspace, rafter *wood) kneeBent {
	s := m.rafterStick(ws, rafter)
	return m.bent(&s)
}
