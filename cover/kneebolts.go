package cover

import (
	"fmt"
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections/dowel"
)

// The plates that join a knee brace, one on either side, and the most bolts at one end.
const (
	kneePlate     = 0.25 * calc.In // thickness
	kneePlateWide = 3 * calc.In    // least width
	steelModulus  = 29e6 * calc.PSI
	mostKneeBolts = 6
)

// holeRoom is the most that a bolt hole is larger than its bolt, in (NDS 2018 12.1.3.2,
// from memory).
const holeRoom = 1.0 / 16 * calc.In

// A kneeJoint is the bolts at the ends of the knee braces, between steel plates on both
// sides, through the brace at one end and the post, the beam or the rafters at the other.
type kneeJoint struct {
	bolt  dowel.Fastener
	count int         // at each end
	worst dowel.Shear // of all pieces
	piece string      // in which
}

// A kneePiece is one piece that the bolts of a knee brace go through.
type kneePiece struct {
	name      string
	wood      *wood
	thickness float64 // in
	angle     float64 // deg, force to grain
}

// kneePieces are the pieces that the plates of a brace join. The plates lie on the widest.
func (m *model) kneePieces(d *design) []kneePiece {
	phi := m.knee.angle
	out := []kneePiece{
		{"the brace", &m.kneed.wood, m.kneed.wood.section.Breadth, 0},
		{"the post", &d.post, d.post.section.Breadth, 90 - phi},
	}
	if m.racking[alongHouse].braced() {
		out = append(out, kneePiece{"the beam", &d.beam, d.beam.section.Breadth, phi})
	}
	if m.kneed.plies > 0 {
		out = append(out, kneePiece{"the rafters", &d.rafter, d.rafter.section.Breadth * float64(m.kneed.plies), phi})
	}
	return out
}

// chooseKneeJoint returns the fewest bolts that hold the force, lb, the thinnest of equals;
// where none do, the strongest group that was tried.
func (m *model) chooseKneeJoint(d *design, force float64) kneeJoint {
	pieces := m.kneePieces(d)
	var best kneeJoint
	for n := 1; n <= mostKneeBolts; n++ {
		for _, b := range dowel.Bolts() {
			if !m.fits(b, pieces) {
				continue
			}
			j := kneeJoint{bolt: b, count: n}
			m.load(&j, pieces, force)
			if best.count == 0 || j.worst.Ratio() < best.worst.Ratio() {
				best = j
			}
			if j.worst.Ratio() <= 1 {
				return j
			}
		}
	}
	return best
}

// fits reports whether a bolt may stand in the middle of every piece: its hole no wider
// than was counted, and the loaded edges 4 diameters away (NDS 2018 Table 12.5.1C).
func (m *model) fits(b dowel.Fastener, pieces []kneePiece) bool {
	for _, p := range pieces {
		if p.angle > 0 && p.wood.section.Depth/2 < 4*b.Diameter {
			return false
		}
	}
	return b.Diameter+holeRoom <= m.top.holes*(1+tiny)
}

// load finds the worst piece of a joint.
func (m *model) load(j *kneeJoint, pieces []kneePiece, force float64) {
	wide := 0.0
	for _, p := range pieces {
		wide = max(wide, p.thickness)
	}
	service := dowel.Dry
	if *m.in.Posts.Wet {
		service = dowel.Wet
	}
	factors := dowel.LateralFactors(dowel.Bolt, dowel.Conditions{
		Duration: lumber.TenMinutes, Fabricated: dowel.Wet, Service: service, Heat: m.posts.use.Temperature,
	})
	for _, p := range pieces {
		area := p.wood.section.Area()
		if p.angle > 0 {
			area = dowel.CrossArea(p.thickness, 0, 1.5*j.bolt.Diameter)
		}
		group := dowel.NewGroup(dowel.Row{
			Count: j.count, Spacing: 4 * j.bolt.Diameter, Diameter: j.bolt.Diameter, Steel: true,
			MainModulus: p.wood.dry.Elasticity.Value, MainArea: area,
			SideModulus: steelModulus, SideArea: 2 * kneePlate * kneePlateWide,
		})
		v := dowel.NewLateral(j.bolt, dowel.Joint{
			Side:   dowel.Member{Material: dowel.Steel, Thickness: kneePlate},
			Main:   dowel.Member{Gravity: p.wood.dry.Gravity.Value, Angle: p.angle, Thickness: p.thickness},
			Double: true, Gap: (wide - p.thickness) / 2,
		})
		s := dowel.NewShear(force, v, factors.With(group.Factor, 1), j.count)
		if j.piece == "" || s.Ratio() > j.worst.Ratio() {
			j.worst, j.piece = s, p.name
		}
	}
}

// say words the joint for the report, with what it rests on.
func (j *kneeJoint) say(k *Link) {
	ratio := Ratio(j.worst.Ratio())
	d := j.bolt.Diameter
	if j.count > 0 {
		k.Hardware += fmt.Sprintf("; such as %d bolts of %s in. in a row at each end between steel plates of 1/4 in. on both sides, "+
			"%s in. from the end, %s in. apart, in the middle of each piece", j.count, calc.Number(d),
			calc.Number(calc.RoundUp(7*d, 0.125)), calc.Number(calc.RoundUp(4*d, 0.125)))
		k.Calculation = j.worst.Explain()
	}
	if j.count == 0 || !(ratio <= 1) || math.IsNaN(float64(ratio)) {
		k.Verdict = Over
		k.Reason = fmt.Sprintf("no group of up to %d bolts that fits holds the force: other joints or less push", mostKneeBolts)
		return
	}
	k.Reason = "these bolts hold at ratio " + ratioText(ratio) + ", worst in " + j.piece +
		"; the plates, and splitting of beam and rafters at the bolts (NDS 2018 3.4.3.3), are not checked"
}
