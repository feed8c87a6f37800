package cover

import (
	"math"

	"patiocover/calc"
	"patiocover/loads/roof"
)

// A state is one state of the roof for the side by side table.
type state struct {
	name   string
	dead   float64 // lb/in² of plan that resists
	class  roof.Enclosure
	hung   hanging
	only   bool
	reason string
}

// changes lists the demands side by side: as the roof stands, with the cover, after the
// planned work, with former and loose layers, and with the patio enclosed.
func (s *surveying) changes(d *design) {
	if !s.known {
		return
	}
	class := s.roof.class
	all := []state{
		{name: "as it stands, without the cover", dead: s.dead.now, class: class},
		{name: "as it stands, with the cover", dead: s.dead.now, class: class, hung: s.hung, reason: s.coverWords()},
	}
	if s.dead.after != s.dead.now {
		all = append(all, state{
			name: "after the planned work on the roof, with the cover", dead: s.dead.after, class: class, hung: s.hung,
			reason: "what is taken off no longer holds the roof down; what is put on may",
		})
	}
	if s.dead.former > s.dead.now {
		all = append(all, state{
			name: "with every former and loose layer, without the cover", dead: s.dead.former, class: class, only: true,
			reason: "as the roof may have been while its gravel lay: each pound that is gone adds 0.6 of itself to the uplift",
		})
	}
	all = append(all, state{
		name: "with the patio enclosed", dead: min(s.dead.now, s.dead.after), class: roof.PartiallyEnclosed, hung: s.enclosed(d),
		reason: "walls and screens below the cover catch the wind, and a wide door lets it into the house",
	})
	var first []float64
	for i, x := range all {
		line := SurveyChange{
			Name: x.name, Dead: x.dead / calc.PSF, Class: string(x.class), Cover: x.hung.there, Only: x.only, Reason: x.reason,
		}
		for k, u := range s.inState(&x) {
			if i == 0 {
				first = append(first, u)
			}
			p := s.out.Pulls[k]
			line.Pulls = append(line.Pulls, ChangePull{
				Place: p.Place, Zone: p.Zone, Uplift: finite(u), More: finite(u - first[k]),
			})
		}
		s.out.Changes = append(s.out.Changes, line)
	}
}

// coverWords says what the cover does to the old ties.
func (s *surveying) coverWords() string {
	if s.hung.there {
		return "the cover hangs from the rafter tails"
	}
	return "the cover does not hang from the roof: it changes nothing for the old ties"
}

// inState is the uplift that counts of every place and zone of the survey in a state, lb;
// not a number outside the method.
func (s *surveying) inState(x *state) []float64 {
	r, _ := s.m.newOldRoof(x.dead, x.class)
	var out []float64
	for _, p := range s.spots() {
		p = r.at(p.place, p.zone)
		out = append(out, p.demand(x.hung.added(p.place), r.mainOnly).Uplift())
	}
	return out
}

// enclosed is what the cover does to the tails once its sides are walled.
func (s *surveying) enclosed(d *design) hanging {
	if !s.hung.there {
		return hanging{}
	}
	in := s.m.in
	in.Cover.Sides = new("walled")
	m, err := newModel(in)
	if err != nil { // as it cannot be: only a word of the sides has changed
		return hanging{there: true, near: roof.Hung{Near: math.Inf(1)}}
	}
	return m.newHanging(&s.roof, d)
}
