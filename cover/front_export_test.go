package cover

import (
	"slices"
	"strings"
)

// FrontByTrial is the front of a space by the trial of every combination by itself, each with
// a model of its own under every arrangement. Its cost comes from the lots of the take-off.
func FrontByTrial(in Input, s Space, l Limits) []FrontPoint {
	var all []FrontPoint
	s.visit(func(q FrontPoint) {
		if trialOf(in, &q, l) {
			all = append(all, q)
		}
	})
	var out []FrontPoint
	for i, p := range all {
		worse := slices.ContainsFunc(all, func(q FrontPoint) bool {
			return q.beats(&p) || q.values() == p.values() && slices.Compare(q.order[:], p.order[:]) < 0
		})
		if !worse {
			out = append(out, all[i])
		}
	}
	return out
}

// visit yields every combination of the space.
func (s *Space) visit(yield func(FrontPoint)) {
	sizes := [7]int{
		len(s.Spacings), len(s.PostCounts), len(s.RafterSizes), len(s.BeamSizes), len(s.PostSizes), len(s.RafterWoods), len(s.BeamWoods),
	}
	for n := range int(s.options()) {
		var at [7]int
		for k, size := range sizes {
			at[k], n = n%size, n/size
		}
		yield(FrontPoint{
			Spacing: s.Spacings[at[0]], Count: s.PostCounts[at[1]], Rafter: s.RafterSizes[at[2]], Beam: s.BeamSizes[at[3]],
			Post: s.PostSizes[at[4]], RafterWood: s.RafterWoods[at[5]], BeamWood: s.BeamWoods[at[6]], order: at,
		})
	}
}

// trialOf evaluates one combination alone, and reports whether it holds.
func trialOf(in Input, q *FrontPoint, l Limits) bool {
	made := q.Apply(in)
	if made.Validate() != nil {
		return false
	}
	full, _ := made.Assume()
	m, err := newModel(full)
	if err != nil || len(m.rafterWoods) == 0 || len(m.beamWoods) == 0 {
		return false
	}
	posts := m.posts.candidates(postSizes)
	ws := newWorkspace(m)
	ws.every = true
	d := design{rafter: m.rafterWoods[0], beam: m.beamWoods[0], post: posts[0]}
	if m.numbers(ws, &d.rafter, &d.beam, &d.post) > 1 {
		return false
	}
	for i := range ws.lines {
		for p := range ws.lines[i].peaks {
			for _, at := range ws.lines[i].peaks[p].total {
				q.Sag = max(q.Sag, tidy(at.value))
			}
		}
	}
	q.Posts, q.Rating, q.Depth = len(m.plan.lines)*len(m.plan.posts), m.tieRating(&d.rafter), m.depthOf(&d.rafter, &d.beam)
	for _, x := range m.plan.posts {
		if x > l.ClearFrom*12 && x < l.ClearTo*12 {
			return false
		}
	}
	for _, lot := range m.lots(&d) {
		for _, p := range lot.pieces {
			q.Cost += m.bought(p.Length) * float64(p.Count) * lot.nominal / perBoardFoot
		}
	}
	q.Cost = tidy(q.Cost)
	m.sideways = newSideways(m, d.woods())
	deck := m.deck()
	ground, _ := m.foundations(ws, &d)
	return q.Cost < 1e9 && !over(q.Depth, l.Depth) && !over(q.Rating, l.Rating) && m.headroom(&d).Verdict != Over &&
		(deck == nil || deck.member.Verdict != Over) &&
		!slices.ContainsFunc(ground, func(f FoundationAt) bool { return strings.HasPrefix(string(f.Verdict), string(Over)) })
}
