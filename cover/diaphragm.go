package cover

import (
	"fmt"
	"strings"

	"patiocover/beam/diaphragm"
	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// insteadOfDeck says what else may hold a cover along the house.
const insteadOfDeck = ": knee braces or embedded posts along the house, or panels nailed to every rafter"

// check adds a check to a part of the way, which is no better than its worst check.
func (s *LateralStep) check(name, combination, where string, r calc.Result) {
	sheet := r.Explain()
	sheet.Name = name
	ratio := Ratio(r.Ratio())
	s.Checks = append(s.Checks, checked(sheet, ratio, combination, where))
	s.Ratio = max(s.Ratio, ratio)
}

// deckStep is the roof deck that carries the push along the house into the ledger.
func (m *model) deckStep(r *Report, d *design, demand float64) LateralStep {
	s := LateralStep{Part: "roof deck as a diaphragm", Demand: demand, Per: "all"}
	lattice := is(m.in.Cover.Covering, "lattice")
	switch kind := m.deckKind(); {
	case kind == slatDeck || kind == "" && lattice:
		s.Verdict = Over
		s.Reason = "slats have no strength in their own plane, so that nothing brings the push to the house" + insteadOfDeck
	case kind == purlinDeck:
		s.Verdict = NotChecked
		s.Reason = "metal panels on purlins are diaphragms by test only: their maker's report must say it" + insteadOfDeck
	case kind == "" || kind == anotherDeck || d.deck == nil:
		s.Verdict, s.Reason = NotChecked, "the deck is not described, so that its shear cannot be checked"
	case *m.in.Deck.Wet || d.rafter.dry.Use.Wet:
		s.Verdict, s.Reason = NotChecked, "the unit shears of the tables are for wood that is dry in service"
	case kind == plankDeck:
		m.plankShear(&s, d)
	default:
		m.panelShear(&s, r, d)
	}
	return s
}

// deckReach measures how far the deck stands out from the ledger. Rafters that end beyond
// the ledger do not lengthen it.
func (m *model) deckReach() diaphragm.Reach {
	return diaphragm.NewReach(m.plan.slope(m.plan.projection), m.plan.width)
}

// plankShear judges planks laid straight across the rafters.
func (m *model) plankShear(s *LateralStep, d *design) {
	if !m.deckReach().Exempt {
		s.Verdict = Over
		s.Reason = "planks laid straight may not hold a deck that one side carries, beyond 6 ft from it (SDPWS 2015 4.2.5.2)" +
			insteadOfDeck
		return
	}
	n := m.deckNailings(d)[0]
	sixteen := nailOf("common", "16d")
	if d.deck.wood.section.Name != "2x6" || n.fastener.Diameter < sixteen.Diameter || n.fastener.Kind != sixteen.Kind {
		s.Verdict, s.Reason = NotChecked, "the tables know planks of 2x6 with 16d nails alone"
		return
	}
	m.unitShear(s, diaphragm.Straight(), d)
	s.Reason = "planks of 2x6 laid straight, two 16d nails at each rafter and three at each end and at the ledger; " + s.Reason
}

// panelShear judges wood structural panels with the nails of the deck's link.
func (m *model) panelShear(s *LateralStep, r *Report, d *design) {
	n, ok := m.nailsOfDeck(r, d)
	if !ok {
		s.Verdict, s.Reason = NotChecked, "the nails of the deck are not known"
		return
	}
	thickness := m.deckPiece(d).Thickness
	row, ok := diaphragm.Tabulated(thickness, n.fastener.Diameter, n.fastener.Length)
	nominal, near := row.At(n.spacing, *m.in.Deck.Blocked)
	switch {
	case !ok:
		s.Verdict = NotChecked
		s.Reason = fastenerWords(n.fastener) + "s are thinner or shorter than those of the tables, or the panels are thinner"
		return
	case !near:
		s.Verdict = NotChecked
		s.Reason = "the tables begin with nails at 6 in on the edges; those of the deck are at " + inchWords(n.spacing) + " in"
		return
	}
	reach := m.deckReach()
	if reach.Ratio() > 1 && !reach.Exempt {
		s.Verdict = NotChecked
		s.Reason = fmt.Sprintf("it reaches %s from a ledger of %s: beyond a square, or 25 ft, the movement of the open edge "+
			"would have to be computed (SDPWS 2015 4.2.5.2)", calc.FeetInches(reach.Out), calc.FeetInches(reach.Width))
		return
	}
	m.unitShear(s, nominal, d)
	s.check("reach of the deck", "geometry", "from the ledger to the outer edge", reach)
	edges := "edges between the rafters without blocking"
	if *m.in.Deck.Blocked {
		edges = "every edge on a rafter or on blocking of 2 in. nominal"
	}
	s.Reason = fmt.Sprintf("panels of %s in, %s, %ss at %s in on all edges and on the ledger, counted as %s nails; %s",
		fraction(thickness), edges, fastenerWords(n.fastener), inchWords(n.spacing), row.Nail, s.Reason)
	if m.quaking && !reach.Exempt {
		s.Verdict = s.Verdict.Worse(NotChecked)
		s.Reason += "; how far the outer edge moves in an earthquake is not computed (SDPWS 2015 4.2.5.2): " +
			"it is the drift of the story there, which holds the movement of the house's own walls as well, and they are not known"
	}
}

// nailsOfDeck are the nails that hold the deck down, given or proposed: the same nails
// carry its shear.
func (m *model) nailsOfDeck(r *Report, d *design) (deckNailing, bool) {
	for i := range r.Links {
		if r.Links[i].Mark == mark(connections.DeckToRafter.Letter(), 0) && *m.in.Connections.Deck != "none" {
			n, _ := m.nailing(&r.Links[i], d)
			return n, n.fastener.Kind == dowel.Nail
		}
	}
	return deckNailing{}, false
}

// unitShear checks the shear along the ledger, by wind and by earthquake, and by the
// method of the members as well where that is strength design.
func (m *model) unitShear(s *LateralStep, n diaphragm.Nominal, d *design) {
	s.Verdict = OK
	push := m.sideways.along
	methods := []lumber.Method{lumber.ASD}
	if *m.in.Site.Method == lumber.LRFD.String() {
		methods = append(methods, lumber.LRFD)
	}
	for _, method := range methods {
		rules := newRulebook(method, m.edition)
		gust := rules.strongestGust()
		wind := diaphragm.Push{Force: gust.factor * push.wind.Force, Length: m.plan.width, Load: diaphragm.Wind, Method: method}
		c := diaphragm.NewShear(wind, n, woodGravity(&d.rafter))
		s.check("shear in the plane of the deck", method.String()+", wind", "along the ledger", c)
		if push.shaken {
			quake := wind
			quake.Force, quake.Load = rules.onQuake.Earthquake*push.quake.Force, diaphragm.Earthquake
			c = diaphragm.NewShear(quake, n, woodGravity(&d.rafter))
			s.check("shear in the plane of the deck", method.String()+", earthquake", "along the ledger", c)
		}
	}
	s.Verdict = s.Ratio.Verdict()
	worst := s.Checks[0]
	for _, c := range s.Checks {
		if c.Ratio > worst.Ratio {
			worst = c
		}
	}
	s.Reason = fmt.Sprintf("%.0f of %.0f plf along the ledger (%s), ratio %s", calc.RoundUp(worst.Check.Demand, 1),
		calc.RoundDown(worst.Check.Capacity, 1), worst.Combination, ratioText(worst.Ratio))
}

// turning is the moment by which a push along the house turns the roof about its ledger,
// lb-in of strength level: the roof by its middle, what blows on the posts by the outermost
// beam line where that is farther, and of the earthquake the part below the roof likewise.
func (s *sideways) turning() share {
	low := max(s.projection/2, s.outermost)
	blow := s.along.wind
	onPosts := min(blow.Force, max(blow.OnPosts, blow.Least*blow.Posts/blow.Seen))
	return share{
		wind:  (blow.Force-onPosts)*s.projection/2 + onPosts*low,
		quake: s.along.quake.Force * ((1-s.low)*s.projection/2 + s.low*low),
	}
}

// chord is the pull or pressure in the rafter at each end of the ledger, lb of strength
// level: the turning of the roof over the length of the ledger.
func (s *sideways) chord() share {
	t := s.turning()
	return share{t.wind / s.width, t.quake / s.width}
}

// chordStep is the edge rafters, which the turning of the roof pulls and presses beside
// their bending.
func (m *model) chordStep(d *design) LateralStep {
	force := m.sideways.chord()
	s := LateralStep{Part: "edge rafters as chords of the deck", Demand: m.asd(force), Per: "each of two"}
	m.alongRafter(&s, m.rafter.atEdge(m), d, m.factored(force))
	return s
}

// collectorStep is the rafters that bring the push out from the house to the ledger.
func (m *model) collectorStep(d *design) LateralStep {
	force := m.sideways.collected()
	s := LateralStep{Part: "rafters, which bring the push to the ledger", Demand: m.asd(force), Per: "each rafter"}
	m.alongRafter(&s, m.rafter, d, m.factored(force))
	return s
}

// collected is the force out from the house in one rafter, lb of strength level.
func (s *sideways) collected() share {
	part := s.spacing / s.width
	return share{s.out.wind.Force * part, s.out.quake.Force * part}
}

// alongRafter checks a rafter with a force along it, either way, beside its bending under
// the combinations of short duration. Rafters too slender to be pressed are pulled alone.
func (m *model) alongRafter(s *LateralStep, r *rafterFrame, d *design, force float64) {
	w, h := &d.rafter, m.rafterHolding(&d.rafter, &d.beam)
	var p peaks
	r.demands(w, true, &p)
	p.thrust[lumber.TenMinutes].value += force
	var g graded
	r.gradeBending(w, &p, h, lumber.TenMinutes, &g)
	x := g[axialCheck]
	if x.force == 0 {
		s.Verdict, s.Reason = NotChecked, "no bending of short duration was found beside it"
		return
	}
	s.check("bending with the force along the rafter", m.rules.method.String()+", "+r.arr[x.by].name(), spanName(r.bays, x.bay),
		r.result(w, h, axialCheck, x))
	s.Verdict = s.Ratio.Verdict()
	s.Reason = w.section.Name + ": " + strings.ToLower(s.Checks[0].Name) + " at ratio " + ratioText(s.Ratio)
}

// receives says what a push along the house brings to it.
func (m *model) receives(direction int, demand float64) string {
	length := m.plan.width / calc.Ft
	if direction == outward {
		return fmt.Sprintf("; it receives %s lb, %.0f plf in or out", pounds(demand), calc.RoundUp(demand/length, 1))
	}
	turn := m.asd(m.sideways.turning())
	return fmt.Sprintf("; it receives %s lb along the ledger, %.0f plf, and a turning of %s lb-ft that pulls %s lb out of one half of it "+
		"and presses as much into the other", pounds(demand), calc.RoundUp(demand/length, 1), pounds(turn/calc.Ft),
		pounds(halfPull*turn/m.plan.width))
}

// halfPull is the resultant of the pull over half of the ledger over M / L, factor: the
// pull rises to 6 M / L² at the end (statics).
const halfPull = 1.5

// turningArm is how far from the ledger the push along the house acts, in.
func (m *model) turningArm() float64 {
	return calc.Ratio(m.asd(m.sideways.turning()), m.asd(share{m.sideways.along.wind.Force, m.sideways.along.quake.Force}))
}
