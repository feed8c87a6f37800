package cover

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
)

// A kneeDesign is the wood of the knee braces, and how many rafters side by side a brace
// meets.
type kneeDesign struct {
	wood   wood
	no     []Rejected
	plies  int  // rafters side by side; 0 where no brace meets a rafter
	braced bool // there are braces
}

// kneeHole is the width of the bolt hole at either end of a brace, which counts in tension
// like the holes of the posts.
func (m *model) kneeHole() float64 { return m.top.holes }

// kneeForce is the largest force along a brace at the level of the method, lb, and the post
// that it stands at.
func (m *model) kneeForce() (force float64, direction, line, post int) {
	cos := math.Cos(m.knee.angle * math.Pi / 180)
	for d := range directions {
		if !m.racking[d].braced() {
			continue
		}
		for i := range m.plan.lines {
			for n := range m.plan.posts {
				f := m.factored(m.effectOn(d, i, n).brace) / cos
				if f > force || math.IsNaN(f) {
					force, direction, line, post = f, d, i, n
				}
			}
		}
	}
	return force, direction, line, post
}

// kneePressed and kneePulled are the checks of a brace of a size under its force.
func (m *model) kneePressed(w *wood, force float64) member.Compression {
	axis := member.Axis{Length: m.kneeLength(), Ends: member.PinnedPinned}
	return member.NewCompression(force, &w.dry, lumber.TenMinutes, member.Column{Deep: axis, Thin: axis})
}

func (m *model) kneePulled(w *wood, force float64) member.Tension {
	net := max(0, w.section.Area()-m.kneeHole()*w.section.Depth)
	return member.NewTension(force, net, &w.dry, lumber.TenMinutes)
}

// chooseKnees chooses the braces for the posts that were graded last.
func (m *model) chooseKnees(ws *workspace, d *design) {
	m.kneed = kneeDesign{}
	if !m.in.Lateral.kneed() {
		return
	}
	m.kneed.braced = true
	st := m.posts.solid(m.in.Lateral.BraceSize)
	m.kneed.wood, m.kneed.no = pick(st.candidates(braceSizes), func(w *wood) (float64, string) {
		force, _, _, _ := m.kneeForce()
		pressed, pulled := m.kneePressed(w, force).Ratio(), m.kneePulled(w, force).Ratio()
		if pulled > pressed {
			return pulled, kneeNames[kneeTension]
		}
		return pressed, kneeNames[kneeCompression]
	})
	if !m.racking[outward].braced() {
		return
	}
	if given := m.in.Lateral.BracedRafters; given != nil {
		m.kneed.plies = *given
		return
	}
	for m.kneed.plies = 1; m.kneed.plies < sideBySide; m.kneed.plies++ {
		if m.rafterAtKnee(ws, &d.rafter).ratio() <= 1 {
			return
		}
	}
}

// sideBySide is the most rafters side by side that a brace meets.
const sideBySide = 3

// gradeKnees is the largest ratio of the braces and of the rafters that they meet.
func (m *model) gradeKnees(ws *workspace, rafter *wood) float64 {
	if !m.kneed.braced {
		return 0
	}
	force, _, _, _ := m.kneeForce()
	most := max(m.kneePressed(&m.kneed.wood, force).Ratio(), m.kneePulled(&m.kneed.wood, force).Ratio())
	if m.kneed.plies > 0 {
		most = max(most, m.rafterAtKnee(ws, rafter).ratio())
	}
	return most
}
