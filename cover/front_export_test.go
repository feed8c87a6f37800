package cover

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// FrontByTrial is the front of a space by the trial of every combination by itself: each is
// sized alone, with a model of its own under every arrangement, and its report is read. It
// compares every pair.
func FrontByTrial(in Input, s Space, l Limits) []FrontPoint {
	counts := s.measures()
	var all []FrontPoint
	visitSpace(in, s, l, func(q FrontPoint, measure string) {
		if trialOf(in, &q, l, measure) {
			all = append(all, q)
		}
	})
	var out []FrontPoint
	for i, p := range all {
		mine := p.values(counts)
		worse := slices.ContainsFunc(all, func(q FrontPoint) bool {
			other := q.values(counts)
			better := false
			for k := range mine {
				if other[k] > mine[k] {
					return false
				}
				better = better || other[k] < mine[k]
			}
			return better || cmp.Or(cmp.Compare(q.Cost, p.Cost), slices.Compare(q.order[:], p.order[:])) < 0
		})
		if !worse {
			out = append(out, all[i])
		}
	}
	return out
}

// visitSpace yields every combination of the space that the limits leave.
func visitSpace(in Input, s Space, l Limits, yield func(q FrontPoint, measure string)) {
	y := newYard(in, s, l) // for its lists alone
	s = y.space
	sizes := frontOrder{
		len(s.Spacings), len(s.counts()), len(s.RafterSizes), len(s.BeamSizes), len(s.PostSizes), len(s.RafterWoods), len(s.BeamWoods),
		len(s.PostWoods), max(1, len(s.Ties)), max(1, len(s.Ledgers)), max(1, len(s.Footings)),
	}
	all := 1
	for _, n := range sizes {
		all *= n
	}
	for n := range all {
		var at frontOrder
		for k, size := range sizes {
			at[k], n = n%size, n/size
		}
		q := FrontPoint{
			Spacing: s.Spacings[at[bySpacing]], Count: len(in.Posts.Positions), order: at,
			Rafter: s.RafterSizes[at[byRafter]], Beam: s.BeamSizes[at[byBeam]], Post: s.PostSizes[at[byPost]],
			RafterWood: s.RafterWoods[at[byRafterWood]], BeamWood: s.BeamWoods[at[byBeamWood]], PostWood: s.PostWoods[at[byPostWood]],
		}
		if len(s.PostCounts) > 0 {
			q.Count = s.PostCounts[at[byCount]]
		}
		if len(s.Ties) > 0 {
			q.Tie = &s.Ties[at[byTie]]
		}
		if len(s.Ledgers) > 0 {
			q.Ledger = &s.Ledgers[at[byLedger]]
		}
		if len(s.Footings) > 0 {
			q.Footing = &s.Footings[at[byFooting]]
		}
		yield(q, y.measure())
	}
}

// trialOf sizes one combination alone, and reports whether it holds.
func trialOf(in Input, q *FrontPoint, l Limits, measure string) bool {
	made := q.Apply(in)
	alone, assumed, err := solve(made, &workspace{})
	if err != nil {
		return false
	}
	m, ws, d := alone.m, alone.ws, alone.d
	r, err := m.report(made, assumed, ws, d)
	if err != nil {
		return false
	}
	if *m.in.Cover.Attachment != "rafter_tails" {
		r.Survey = nil
	}
	q.Verdict = OK
	for _, f := range r.summary(m.openLoads()) {
		q.Verdict = q.Verdict.Worse(f.Verdict)
	}
	sags := ws
	if m.strength != nil {
		sags = m.strength.ws
	}
	for i := range sags.lines {
		for p := range sags.lines[i].peaks {
			for _, at := range sags.lines[i].peaks[p].total {
				q.Sag = max(q.Sag, tidy(at.value))
			}
		}
	}
	q.Depth = m.depthOf(&d.rafter, &d.beam)
	q.Posts = len(m.plan.lines) * len(m.plan.posts)
	for s := range m.rafter.supports {
		q.Rating = max(q.Rating, m.write(m.rafterJoint(0, 0, s, &d), "").Rating)
	}
	if q.Cost = tidy(r.TakeOff.BoardFeet); measure == "dollars" {
		q.Cost = tidy(*r.TakeOff.Cost)
	}
	for _, x := range m.plan.posts {
		if x > l.ClearFrom*12 && x < l.ClearTo*12 {
			return false
		}
	}
	for _, w := range r.TakeOff.Wood {
		if len(w.TooLong) > 0 {
			return false
		}
	}
	return q.Verdict != Over && !over(q.Depth, l.Depth) && !over(q.Rating, l.Rating) && !over(float64(q.Posts), float64(l.Posts))
}

// FrontFaults compares what the search takes for true of every pair of rafters and beam of a
// space with what all arrangements and the take-off say, and returns what differs.
func FrontFaults(in Input, s Space) ([]string, error) {
	y := newYard(in, s, Limits{})
	var out []string
	for spacing := range y.space.Spacings {
		for count := range y.space.counts() {
			l, _, err := y.open(spacing, count)
			if err != nil {
				return nil, err
			}
			if l != nil {
				out = append(out, l.faults()...)
			}
		}
	}
	return out, nil
}

func (l *layout) faults() []string {
	var out []string
	say := func(c, b int, what string, got, want float64) {
		rafter := l.rafters[l.classes[c].sticks[0]].item
		out = append(out, fmt.Sprintf("%s under %s: %s is %v, not %v", l.beams[b].item, rafter, what, got, want))
	}
	m, ws := l.main.m, newWorkspace(l.main.m)
	ws.every = true
	for c := range l.classes {
		for b := range l.beams {
			beam, bound, sag, held := &l.beams[b].wood, l.sagBound(c, b), l.sag(c, b), l.holdsUp(c, b)
			m.loadBeams(l.classes[c].wood)
			m.onTrial.post = &l.posts[0].wood
			ratio, all := m.gradeBeams(ws, beam), 0.0
			for i := range ws.lines {
				for p := range ws.lines[i].peaks {
					for _, at := range ws.lines[i].peaks[p].total {
						all = max(all, at.value)
					}
				}
			}
			l.loaded = 0
			switch {
			case bound > all*(1+1e-9):
				say(c, b, "the bound of the sag", bound, all)
			case math.Abs(sag-all) > 1e-9*all:
				say(c, b, "the sag", sag, all)
			case !m.racking[alongHouse].braced() && held != (ratio <= 1 && !(l.slabs && m.overSlab())):
				say(c, b, "the ratio", ratio, 1)
			}
			for _, r := range l.classes[c].sticks {
				if alone := m.gradeRafter(ws, &l.rafters[r].wood, beam); l.carries(r, b) != (alone <= 1) {
					say(c, b, "the ratio of "+l.rafters[r].item, alone, 1)
				}
				for p := range l.posts {
					d := design{rafter: l.rafters[r].wood, beam: *beam, post: l.posts[p].wood}
					m.rafters, m.beams, m.posts = l.rafters[r].stock, l.beams[b].stock, l.posts[p].stock
					var t TakeOff
					for _, lot := range m.lots(&d) {
						t.buyWood(lot, m.in.Market)
					}
					cost := 0.0
					for _, w := range t.Wood {
						cost += w.BoardFeet
						if len(w.TooLong) > 0 {
							cost = math.Inf(1)
						}
					}
					if least := l.pairLeast(c, b); least > cost+1e-9 {
						say(c, b, "the least cost", least, cost)
					}
				}
			}
		}
	}
	return out
}
