package cover

import (
	"fmt"
	"math"

	"patiocover/calc"
	"patiocover/connections"
)

// A kneeCheck is one kind of check that knee braces bring.
type kneeCheck uint8

// The kinds.
const (
	kneeCompression kneeCheck = iota
	kneeTension
	beamAtKnee
	beamShearAtKnee
	rafterAtKnee
	rafterShearAtKnee
)

// kneeNames names them in the report.
var kneeNames = [...]string{
	"compression with buckling", "tension at the bolts", "bending with the knee braces", "shear with the knee braces",
	"bending of the rafters that a brace meets", "shear of the rafters that a brace meets",
}

// kneeMark is the mark of the knee braces.
const kneeMark = "K"

// kneeCount is the number of braces.
func (m *model) kneeCount() int {
	sum := 0
	for d := range m.racking {
		rows := len(m.plan.lines)
		if d == outward {
			rows = len(m.plan.posts)
		}
		for _, p := range m.racking[d].row.Posts {
			sum += rows * p.Braces
		}
	}
	return sum
}

// kneeLength is the length of a brace between its joints, in.
func (m *model) kneeLength() float64 { return m.knee.drop / math.Sin(m.knee.angle*math.Pi/180) }

// kneeMember writes up the knee braces; false where there are none.
func (m *model) kneeMember(ws *workspace, d *design) (Member, bool) {
	if !m.kneed.braced {
		return Member{}, false
	}
	st := m.posts.solid(m.in.Lateral.BraceSize)
	w := &m.kneed.wood
	out := m.newMember(kneeMark, "knee brace", w, st, m.kneed.no)
	out.Count, out.Length = m.kneeCount(), m.kneeLength()/calc.Ft
	force, direction, line, post := m.kneeForce()
	where := "at " + m.postName(line, post)
	name := m.governingPush(direction, m.effectOn(direction, line, post).brace)
	out.add(kneeNames[kneeCompression], name, where, m.kneePressed(w, force), m.kneeTrace(direction, line, post, "P")...)
	out.add(kneeNames[kneeTension], name, where, m.kneePulled(w, force), m.kneeTrace(direction, line, post, "T")...)
	out.Notes = []string{
		fmt.Sprintf("From the post %s below the beam up to %s from the post, at %s degrees; in line with post and beam",
			calc.FeetInches(m.knee.drop), calc.FeetInches(m.knee.reach), calc.Number(m.knee.angle)),
		"Each brace presses and pulls in turn: both ends must be bolted for both senses; nailed braces rarely work",
		"Length between the joints: add what the ends need",
	}
	if m.kneed.plies > 0 {
		m.addRafterKnee(ws, d, &out)
	}
	return out, true
}

// addRafterKnee adds the checks of the rafters that braces meet.
func (m *model) addRafterKnee(ws *workspace, d *design, out *Member) {
	s := m.rafterStick(ws, &d.rafter)
	b := m.bent(&s)
	out.Notes = append(out.Notes, fmt.Sprintf(
		"Out from the house each braced post stands below %d rafter(s) side by side, fastened together, which the brace meets",
		m.kneed.plies))
	out.add(kneeNames[rafterAtKnee], m.kneeCombination(outward, b.bending), spanName(m.rafter.bays, b.bending.bay),
		s.combined(&b.bending), m.kneeMomentTrace(b.bending, "M", "lb-in")...)
	out.add(kneeNames[rafterShearAtKnee], m.kneeCombination(outward, b.shear), spanName(m.rafter.bays, b.shear.bay),
		s.sheared(&b.shear), m.kneeMomentTrace(b.shear, "V", "lb")...)
}

// addBraced adds to a beam line what the knee braces along the house ask of it.
func (m *model) addBraced(ws *workspace, d *design, line int, out *Member) {
	if !m.racking[alongHouse].braced() {
		return
	}
	worst, at, sticks := kneeBent{}, [2]int{}, make([]kneeStick, len(m.lines[line].pieces))
	for p := range sticks {
		sticks[p] = m.beamStick(ws, line, p, d.woods())
		b := m.bent(&sticks[p])
		if b.bending.ratio > worst.bending.ratio {
			worst.bending, at[0] = b.bending, p
		}
		if b.shear.ratio > worst.shear.ratio {
			worst.shear, at[1] = b.shear, p
		}
	}
	bays := m.lines[line].bays
	out.add(kneeNames[beamAtKnee], m.kneeCombination(alongHouse, worst.bending),
		spanName(bays, sticks[at[0]].first+worst.bending.bay), sticks[at[0]].combined(&worst.bending),
		m.kneeMomentTrace(worst.bending, "M", "lb-in")...)
	out.add(kneeNames[beamShearAtKnee], m.kneeCombination(alongHouse, worst.shear),
		spanName(bays, sticks[at[1]].first+worst.shear.bay), sticks[at[1]].sheared(&worst.shear),
		m.kneeMomentTrace(worst.shear, "V", "lb")...)
	out.Notes = append(out.Notes,
		"With the knee braces: the largest moment of each span and the largest of the braces are added, wherever they stand")
}

// kneeCombination names what brings a check with the push.
func (m *model) kneeCombination(direction int, x kneeFound) string {
	name := "wind with all that goes with it"
	if x.quake > 0 {
		name = m.rules.quakes[x.quake-1].Name
	}
	return name + ", push " + m.sideways.push(direction).direction
}

// governingPush names the larger of wind and earthquake.
func (m *model) governingPush(direction int, s share) string {
	gust, quake := m.rules.strongestGust().factor, m.rules.onQuake.Earthquake
	name := calc.Number(gust) + "W"
	if m.quaking && quake*s.quake > gust*s.wind {
		name = calc.Number(quake) + "E"
	}
	return name + ", push " + m.sideways.push(direction).direction
}

// kneeMomentTrace adds the two parts of a demand.
func (m *model) kneeMomentTrace(x kneeFound, symbol, unit string) []calc.Line {
	var s calc.Sheet
	s.Given(symbol+"_g", x.load, unit, "largest of the loads of the combination in this bay, by the statics above")
	s.Given(symbol+"_b", x.push, unit, "largest of the braces in this bay, with its factor, by the statics of the row")
	s.Step(symbol, symbol+"_g + "+symbol+"_b", x.load+x.push, unit, "added wherever in the bay they stand, the safe side")
	return s.Lines()
}

// kneeTrace writes the force along a brace.
func (m *model) kneeTrace(direction, line, post int, symbol string) []calc.Line {
	e, push := m.effectOn(direction, line, post), m.sideways.push(direction)
	at, part := m.rowPost(direction, line, post)
	height := e.brace.wind / (push.wind.Force * at.Brace * part) * m.knee.drop
	var s calc.Sheet
	s.Given("F_W", push.wind.Force, "lb", "wind in this direction, strength level")
	s.Given("s_b", at.Brace*part, "", "largest share of it in one brace: equal posts, portal method, elastic frame")
	s.Given("H", height, "in", "foot to underside of beam, geometry")
	s.Given("a", m.knee.drop, "in", "underside of beam to the joint of the brace, geometry")
	s.Given("phi", m.knee.angle, "", "degrees of the brace from the horizontal")
	gust := m.rules.strongestGust()
	s.Given("f_W", gust.factor, "", gust.clause+", factor on wind")
	s.Step("B_W", "f_W * s_b * F_W * H / a", gust.factor*e.brace.wind, "lb", "statics: horizontal force of the brace")
	quake := 0.0
	if m.quaking {
		rule := &m.rules.onQuake
		quake = rule.Earthquake * e.brace.quake
		s.Given("V_E", push.quake.Force, "lb", "earthquake in this direction, strength level")
		s.Quoted("f_E", rule.Earthquake, "", rule.Clause+", factor on earthquake", rule.Status)
		s.Step("B_E", "f_E * s_b * V_E * H / a", quake, "lb", "statics")
		s.Step("B", "max(B_W, B_E)", max(gust.factor*e.brace.wind, quake), "lb", "the larger governs")
	} else {
		s.Step("B", "B_W", gust.factor*e.brace.wind, "lb", "wind governs: no earthquake is given")
	}
	force := max(gust.factor*e.brace.wind, quake) / math.Cos(m.knee.angle*math.Pi/180)
	s.Step(symbol, "B / cosd(phi)", force, "lb", "statics: along the brace, compression or tension")
	return s.Lines()
}

// postName is the mark of a post.
func (m *model) postName(line, post int) string { return mark("P", line*len(m.plan.posts)+post) }

// kneeLinks are the joints of the braces: both ends of each, and where a rafter at a braced
// post hangs on the ledger, its ledger end.
func (m *model) kneeLinks(ws *workspace, d *design) []Link {
	if !m.kneed.braced {
		return nil
	}
	force, direction, line, post := m.kneeForce()
	angle := m.knee.angle * math.Pi / 180
	name := m.governingPush(direction, m.effectOn(direction, line, post).brace)
	level, upright := force*math.Cos(angle), force*math.Sin(angle)
	demands := []Demand{{Combination: name, Vertical: upright}, {Combination: name + ", turned round", Vertical: -upright}}
	for i := range demands {
		if direction == alongHouse {
			demands[i].Along = level
		} else {
			demands[i].Out = level
		}
	}
	need := connections.Rating(force)
	k := Link{
		Mark: kneeMark + "1", Name: "knee brace, each end", From: "knee brace", To: "post, and beam or rafter",
		Count: 2 * m.kneeCount(), Per: PerJoint, Demands: demands,
		Down: Force{upright, name}, Up: Force{upright, name}, Stage: connections.BeamToPost.Stage(), Rating: need,
		Hardware: fmt.Sprintf("through-bolts or bolted plates on both sides, rated %s lb along the brace or more, "+
			"pressing and pulling (ASD, wind); the rating here is along the brace", pounds(need)),
		Verdict: NotChecked, Calculation: kneeRating{force}.Explain(),
	}
	if direction == alongHouse {
		k.Along = Force{level, name}
	} else {
		k.Out = Force{level, name}
	}
	m.joinKnees(ws, d, &k, force, name)
	return append([]Link{k}, m.ledgerKnee(d)...)
}

// A kneeRating is the rating that the joint of a brace must have.
type kneeRating struct{ force float64 }

// Ratio is the force over the rating, at most 1 by its making.
func (k kneeRating) Ratio() float64 { return calc.Ratio(k.force, connections.Rating(k.force)) }

// Explain writes the rating out.
func (k kneeRating) Explain() calc.Check {
	var s calc.Sheet
	s.Given("F", k.force, "lb", "along the brace, compression or tension, from its own check")
	s.Given("r", ratingStep, "lb", "step of ratings, common practice")
	s.Step("R_req", "ceil(F / r - 1e-9 * min(1, F / r)) * r", connections.Rating(k.force), "lb", "rounded up, for wind")
	return s.Check("required rating of the joint", "F", "R_req")
}
