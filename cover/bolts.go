package cover

import (
	"fmt"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// Bolts hold a beam at the side of a post where it does not sit on it. Heights are above
// its lower edge, in; zeros for none.
type bolts struct{ lowest, highest float64 }

// boltEdge is how far a bolt of 1/2 in stands from an edge toward which it is loaded where
// nothing was said: 4 diameters (NDS 2018 Table 12.5.1C, from memory).
const boltEdge = 4 * calc.In / 2

// splitting is the distance across the grain over which bolts in one plate or post hold
// wood that shrinks, in (NDS 2018 12.5.1.3).
const splitting = 5 * calc.In

// boltsOf are the bolts of a beam of the depth, as said, or as far apart as their edge
// distance lets them.
func (m *model) boltsOf(depth float64) bolts {
	if *m.in.Beams.OnPost != "side_bolted" {
		return bolts{}
	}
	b := bolts{boltEdge, depth - boltEdge}
	if low := m.in.Beams.BoltLow; low != nil {
		b.lowest = *low * calc.In
	}
	if high := m.in.Beams.BoltHigh; high != nil {
		b.highest = *high * calc.In
	}
	return b
}

// notes says where the bolts are taken to be.
func (b bolts) notes() []string {
	if b == (bolts{}) {
		return nil
	}
	out := []string{fmt.Sprintf("Bolted to the side of its posts: lowest bolt %s and highest bolt %s above its lower edge",
		inches(calc.RoundDown(b.lowest, 0.01)), inches(calc.RoundUp(b.highest, 0.01)))}
	if b.highest-b.lowest > splitting {
		out = append(out, "Bolts more than 5 in apart across the beam may split it as it dries "+
			"(NDS 2018 12.5.1.3): use dry lumber or slots")
	}
	return out
}

// joint is the bolting at a support as the check of shear takes it.
func (f *frame) joint(h *holding, support, sense int) member.Joint {
	line := f.plan.Line()
	at := line.Support(support)
	return member.Joint{
		Lowest: h.bolts.lowest, Highest: h.bolts.highest, FromEnd: min(at, line.Length()-at), Down: sense == lifted,
	}
}

// gradeBolts checks the shear beside the bolts at a support, where they carry the member
// and where they hold it down.
func (f *frame) gradeBolts(w *wood, p *peaks, h *holding, s int, g *graded) {
	if h.bolts == (bolts{}) {
		return
	}
	for d := range durations {
		for sense := range 2 {
			if at := p.face[d][s][sense]; at.value > 0 {
				x := found{demand: at.value, duration: lumber.Duration(d), by: at.by, bay: s, edge: sense}
				c := f.bolted(w, h, x)
				x.ratio = c.Ratio()
				g[boltCheck].raise(x)
			}
		}
	}
}

// bolted is the shear beside the bolts at a support.
func (f *frame) bolted(w *wood, h *holding, x found) member.JointShear {
	return member.NewJointShear(x.demand, &w.dry, x.duration, f.joint(h, x.bay, x.edge))
}
