package cover

import (
	"fmt"
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A kneeSplit is the shear of a member beside the bolts of a brace at its middle.
type kneeSplit struct {
	found kneeFound
	check member.JointShear
}

// splits finds the worst place of a stick beside the bolts of its braces: the shear of the
// loads there, and the largest of the braces in that bay (NDS 2018 3.4.3.3).
func (m *model) splits(s *kneeStick, w *wood, reach float64) kneeSplit {
	var worst kneeSplit
	line := s.frame.plan.Line()
	for b := 1; b+1 < len(s.frame.bays); b++ {
		for side := range 2 {
			support := b - 1 + side
			if s.row.Posts[s.first+support].Braces == 0 {
				continue
			}
			x := line.Support(support) + float64(1-2*side)*reach
			beside := s.frame.shearsAt(w, x)
			top := func(d lumber.Duration) peak { return beside[d] }
			m.combine(s, top, s.row.Bays[s.first+b].Shear, func(f kneeFound) {
				middle := s.edge.Section.Depth / 2
				c := member.NewJointShear(f.load+f.push, s.edge, f.gust.duration,
					member.Joint{Lowest: middle, Highest: middle, FromEnd: min(x, line.Length()-x)})
				if f.bay, f.ratio = b, c.Ratio(); f.ratio > worst.found.ratio {
					worst = kneeSplit{f, c}
				}
			})
		}
	}
	return worst
}

// shearsAt is the largest shear at a place by duration, lb, under every arrangement.
func (f *frame) shearsAt(w *wood, x float64) [durations]peak {
	var out [durations]peak
	for i := range f.arr {
		at := f.plan.At(f.factors(&f.arr[i], w), 1, x)
		out[f.arr[i].duration].raise(max(math.Abs(at.ShearLeft), math.Abs(at.ShearRight)), i, 0)
	}
	return out
}

// besideKnees adds the checks of beam and rafters beside the bolts of the braces.
func (m *model) besideKnees(ws *workspace, d *design, c *Connector) {
	write := func(name, where string, direction int, s kneeSplit) {
		r := checkBehind{s.check, m.kneeMomentTrace(s.found, "V", "lb")}
		c.add(name, m.kneeCombination(direction, s.found), where, r)
	}
	if m.racking[alongHouse].braced() {
		worst, at := kneeSplit{}, 0
		for i := range m.lines {
			for p := range m.lines[i].pieces {
				stick := m.beamStick(ws, i, p, d.woods())
				if x := m.splits(&stick, &d.beam, m.knee.reach); x.found.ratio > worst.found.ratio {
					worst, at = x, i
				}
			}
		}
		write("beam beside the bolts", mark("BM", at), alongHouse, worst)
	}
	if m.kneed.plies > 0 {
		s := m.rafterStick(ws, &d.rafter)
		write("rafters beside the bolts", "at a braced post", outward, m.splits(&s, &d.rafter, m.plan.slope(m.knee.reach)))
	}
}

// A checkBehind is a check with the lines that its demand follows from.
type checkBehind struct {
	member.JointShear
	trace []calc.Line
}

// Explain writes both.
func (c checkBehind) Explain() calc.Check { return behind(c.trace, c.JointShear.Explain()) }

// joinKnees makes the link of the braces to what they meet, for the force along the worst
// brace, lb.
func (m *model) joinKnees(ws *workspace, d *design, l *Link, force float64, name string) {
	if d.post.section.Round {
		l.Reason = "plates do not lie flat on a round post: such a joint is not one of those checked here"
		return
	}
	j := m.chooseKneeJoint(d, force)
	if j.count == 0 {
		l.refuse(Over, fmt.Sprintf("no bolt fits: its hole may be %s in wide as counted, the loaded edges stand 4 diameters away "+
			"(NDS 2018 Table 12.5.1C), and the joints of two braces need room side by side", calc.Number(m.top.holes)))
		return
	}
	c := Connector{Basis: ProposedFasteners, What: j.words(), Notes: j.notes(m)}
	c.add("bolts in the brace", name, "each end", j.brace)
	for i, h := range m.kneeHosts(d) {
		c.add("bolts in "+h.name, name, "each end", j.held[i])
	}
	c.add("row of bolts torn out of the brace", name, "each end", j.row)
	c.add("steel plates", name, "each end", j.plates)
	m.besideKnees(ws, d, &c)
	c.part(inchWords(j.bolt.Diameter)+" in through-bolt with nut and washers", 2*j.count, l.Count)
	c.part(fmt.Sprintf("steel plate %s in thick, cut to the joint", j.stock.Name), 2, l.Count)
	l.hold(c)
}
