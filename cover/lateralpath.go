package cover

import (
	"slices"

	"patiocover/calc"
	"patiocover/connections"
	"patiocover/loads/seismic"
)

// A LateralStep is one part of the way of a push from the roof to the ground.
type LateralStep struct {
	Part    string  `json:"part"`      // what carries it
	Demand  float64 `json:"demand_lb"` // lb, allowable stress design
	Per     string  `json:"per"`       // what the demand is of: all, each post, each brace, a foot of ledger
	Verdict Verdict `json:"verdict"`   // OK only when it is shown
	Reason  string  `json:"reason"`    // why, in words

	Ratio  Ratio         `json:"ratio"`            // largest ratio of its checks, 0 without
	Checks []MemberCheck `json:"checks,omitempty"` // written out, where they stand nowhere else in the report
}

// step adds a part to the way; the way is no better than its worst part.
func (w *LateralWay) step(s LateralStep) {
	w.Path = append(w.Path, s)
	w.Verdict = w.Verdict.Worse(s.Verdict)
}

// lateral writes down the way of the push in both directions, part by part, with what the
// members, links and foundations of the report came to.
func (m *model) lateral(r *Report, des *design) []LateralWay {
	var out []LateralWay
	for d := range m.racking {
		push := m.sideways.push(d)
		w := push.way()
		switch push.system {
		case "house_diaphragm":
			m.throughHouse(d, r, des, &w)
		case "knee_braces":
			m.throughBraces(d, r, &w)
		case "embedded_posts":
			m.throughGround(d, r, &w)
		default:
			w.step(LateralStep{
				Part: "roof to ground", Demand: w.Demand, Per: "all", Verdict: Over, Reason: systemReasons["none"],
			})
		}
		if m.quaking && push.refusal != seismic.Permitted {
			w.step(LateralStep{
				Part: "system under earthquake", Demand: w.Demand, Per: "all", Verdict: Over, Reason: push.refusal.String(),
			})
		}
		w.conclude()
		out = append(out, w)
	}
	return out
}

// conclude says of the way which of its parts is the worst.
func (w *LateralWay) conclude() {
	worst := slices.IndexFunc(w.Path, func(s LateralStep) bool { return s.Verdict == w.Verdict })
	if w.Verdict != OK && worst >= 0 {
		w.Reason += "; " + w.Path[worst].Part + ": " + w.Path[worst].Reason
	}
}

// throughHouse is the way through the deck and the ledger into the house, with what is
// left for the posts.
func (m *model) throughHouse(direction int, r *Report, d *design, w *LateralWay) {
	if direction == alongHouse {
		deck := m.deckStep(r, d, w.Demand)
		w.step(deck)
		if len(deck.Checks) > 0 { // a deck that brings nothing to the ledger has no chords
			w.step(m.chordStep(d))
		}
	} else {
		w.step(m.collectorStep(d))
	}
	m.ledgerStep(direction, r, w)
	m.ledgerLines(direction, w)
	w.step(m.houseStep(direction, w.Demand))
	m.throughFeet(direction, r, w, "the wind on posts and beams themselves")
}

// besideLedger is the ledger of an attached cover that posts of its own hold: it is
// stiffer than they are and draws the push first, so that it is fastened for all of it.
func (m *model) besideLedger(direction int, r *Report, w *LateralWay) {
	if !m.plan.attached {
		return
	}
	m.ledgerStep(direction, r, w)
	last := &w.Path[len(w.Path)-1]
	last.Reason = "stiffer than posts and braces, it draws the push first and is fastened for all of it; " + last.Reason
	m.ledgerLines(direction, w)
	w.step(m.houseStep(direction, w.Demand))
}

// ledgerStep is the fasteners of the ledger.
func (m *model) ledgerStep(direction int, r *Report, w *LateralWay) {
	along, out := m.sideways.onLedger(calc.Ft)
	asks := m.asd(along)
	if direction == outward {
		asks = m.asd(out)
	}
	ledger := LateralStep{
		Part: "ledger to the house", Demand: asks, Per: "a foot of ledger", Verdict: NotChecked, Reason: "no ledger is in the report",
	}
	for _, l := range r.Links {
		if l.Mark == mark(connections.LedgerToHouse.Letter(), 0) {
			ledger.Verdict, ledger.Reason = l.Verdict, "its demands hold this; "+l.Reason
		}
	}
	w.step(ledger)
}

// ledgerLines writes what the ledger hands to the house, beside a yardstick.
func (m *model) ledgerLines(direction int, w *LateralWay) {
	s := calc.Sheet{}
	s.Append(w.Lines)
	length := m.plan.width / calc.Ft
	s.Given("H_d", w.Demand, "lb", "push of this direction, above")
	s.Given("L", length, "ft", "length of the ledger, geometry")
	pull := w.Demand / 2
	if direction == alongHouse {
		arm := m.turningArm() / calc.Ft
		s.Given("y", arm, "ft", "where the push acts, from the ledger: the roof in its middle, what is below it at the outermost beam")
		s.Step("v_L", "H_d / L", w.Demand/length, "plf", "shear along the ledger")
		s.Step("M_t", "H_d * y", w.Demand*arm, "lb-ft", "turning of the roof about the ledger")
		s.Step("t_L", "6 * M_t / pow(L, 2)", 6*w.Demand*arm/(length*length), "plf",
			"statics: pull at the ends of the ledger, as in a beam of that depth")
		pull = halfPull * w.Demand * arm / length
		s.Step("T_c", "M_t / L", w.Demand*arm/length, "lb", "statics: pull and pressure in the edge rafters, chords of the deck")
		s.Step("T_d", "1.5 * M_t / L", pull, "lb", "statics: resultant of the pull over half of the ledger")
	} else {
		s.Step("t_L", "H_d / L", w.Demand/length, "plf", "pull along the ledger")
		s.Step("T_d", "H_d / 2", pull, "lb", "statics: pull of half of the ledger")
	}
	s.Quoted("T_y", deckTie, "lb", "IRC R507.9.2, one of two devices for a deck: a yardstick only, or four of 750 lb", calc.Recalled)
	w.Lines = s.Lines()
	if last := &w.Path[len(w.Path)-1]; pull > deckTie {
		last.Reason += "; the pull of " + pounds(pull) + " lb at each end is beyond the yardstick of decks, 1,500 lb"
	}
}

// deckTie is what one of the two devices that tie a deck to its house is rated for, lb
// (IRC R507.9.2).
const deckTie = 1500 * calc.Lb

// houseStep is the house itself: its own diaphragm, walls and foundation.
func (m *model) houseStep(direction int, demand float64) LateralStep {
	s := LateralStep{
		Part: "the house, its roof diaphragm and walls", Demand: demand, Per: "all", Verdict: NotChecked,
		Reason: "what the house can take from the cover is not known: an engineer must say it, " +
			"or give lateral.house_capacity_lb with its source",
	}
	if l := m.in.Lateral; given(l.HouseCapacity) && l.HouseSource != nil {
		s.Verdict = Ratio(calc.Ratio(demand, *l.HouseCapacity)).Verdict()
		s.Reason = "designed for " + pounds(*l.HouseCapacity) + " lb by " + *l.HouseSource
	}
	s.Reason += m.receives(direction, demand)
	return s
}

// throughBraces is the way through knee braces.
func (m *model) throughBraces(direction int, r *Report, w *LateralWay) {
	most := effect{}
	for line := range m.plan.lines {
		for n := range m.plan.posts {
			e := m.effectOn(direction, line, n)
			most.brace = share{max(most.brace.wind, e.brace.wind), max(most.brace.quake, e.brace.quake)}
			most.joint = share{max(most.joint.wind, e.joint.wind), max(most.joint.quake, e.joint.quake)}
		}
	}
	w.memberStep(r, kneeMark, LateralStep{Part: "knee braces, sideways", Demand: m.asd(most.brace), Per: "each brace"})
	for _, l := range r.Links {
		if l.Mark == kneeMark+"1" {
			w.step(LateralStep{
				Part: "bolts of the knee braces", Demand: max(l.Along.Value, l.Out.Value), Per: "each end",
				Verdict: l.Verdict, Reason: l.Reason,
			})
		}
	}
	if direction == alongHouse {
		for i := range m.plan.lines {
			w.memberStep(r, mark("BM", i), LateralStep{Part: "beam with its braces", Demand: m.asd(most.brace), Per: "each brace"})
		}
	}
	w.memberStep(r, "P", LateralStep{Part: "bending of the posts", Demand: m.asd(most.joint), Per: "the top of each post"})
	m.besideLedger(direction, r, w)
	m.throughFeet(direction, r, w, "the push on each post")
}

// throughGround is the way through posts that stand by their embedment.
func (m *model) throughGround(direction int, r *Report, w *LateralWay) {
	shear := share{}
	for line := range m.plan.lines {
		for n := range m.plan.posts {
			at := m.shearAt(direction, line, n)
			shear = share{max(shear.wind, at.wind), max(shear.quake, at.quake)}
		}
	}
	w.memberStep(r, "P", LateralStep{Part: "bending of the posts", Demand: m.asd(shear), Per: "each post"})
	m.besideLedger(direction, r, w)
	m.throughFeet(direction, r, w, "the push on each post")
}

// memberStep adds a member with the verdict that its checks came to.
func (w *LateralWay) memberStep(r *Report, of string, s LateralStep) {
	for i := range r.Members {
		if x := &r.Members[i]; x.Mark == of {
			s.Verdict = x.Verdict
			s.Reason = x.Size + ": " + x.Governs + " governs at ratio " + ratioText(x.Ratio)
		}
	}
	if s.Verdict == "" {
		s.Verdict, s.Reason = NotChecked, "not in the report"
	}
	w.step(s)
}

// throughFeet is the way from the posts into the ground, where a share of the push leaves
// them.
func (m *model) throughFeet(direction int, r *Report, w *LateralWay, of string) {
	shear := share{}
	for line := range m.plan.lines {
		for n := range m.plan.posts {
			at := m.shearAt(direction, line, n)
			shear = share{max(shear.wind, at.wind), max(shear.quake, at.quake)}
		}
	}
	feet := LateralStep{Part: "post bases, for " + of, Demand: m.asd(shear), Per: "each post", Verdict: OK, Reason: "see their links"}
	for _, l := range r.Links {
		if l.Name == connections.PostToBase.String() || l.Name == connections.BaseToGround.String() {
			if feet.Verdict.Worse(l.Verdict) != feet.Verdict {
				feet.Verdict, feet.Reason = l.Verdict, l.Mark+": "+l.Reason
			}
		}
	}
	w.step(feet)
	ground := LateralStep{
		Part: "slab, footings and soil", Demand: m.asd(shear), Per: "each post", Verdict: OK, Reason: "see the foundations",
	}
	for _, f := range r.Foundations {
		if ground.Verdict.Worse(f.Verdict) != ground.Verdict {
			ground.Verdict, ground.Reason = f.Verdict, f.Post+" "+f.Reason
		}
	}
	w.step(ground)
}
