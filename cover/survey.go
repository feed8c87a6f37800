package cover

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/survey"
	"patiocover/loads/roof"
)

// A surveying is the survey of the old roof while it is made.
type surveying struct {
	m     *model
	said  Input // as the user gave it
	dead  oldDead
	roof  oldRoof
	known bool // the roof and its dead load were given
	hung  hanging
	clear float64 // in, below the lowest member of the cover
	whole bool    // with what the verdict does not rest on
	out   *Survey
}

// survey judges the joints of the old roof. It is nil when the input says nothing of it.
func (m *model) survey(said Input, d *design) *Survey { return m.surveyed(said, d, true) }

// surveyed does so, with or without what its verdict does not rest on: the roof after changes,
// and other ways to hold the cover.
func (m *model) surveyed(said Input, d *design, whole bool) *Survey {
	h := m.in.House
	tails := *m.in.Cover.Attachment == "rafter_tails"
	roofGiven := given(h.RafterSpan, h.RafterSpacing, h.RafterOverhang, h.RafterHeight, h.RafterSlope)
	if len(h.Joints) == 0 && !roofGiven && !tails && len(h.OldRoof.Openings) == 0 {
		return nil
	}
	s := surveying{m: m, said: said, dead: newOldDead(h), whole: whole, out: &Survey{Verdict: OK}}
	s.clear = m.clearance(&d.rafter, &d.beam).clear
	s.roof, s.known = m.newOldRoof(s.dead.least, roof.Enclosure(*h.Enclosure))
	s.known = s.known && s.dead.known
	if tails && s.known {
		s.hung = m.newHanging(&s.roof, d)
	}
	s.out.Layers, s.out.LayerLines = s.dead.layers, s.dead.lines
	s.describe()
	s.pulls()
	s.joints()
	s.below()
	if whole {
		s.changes(d)
	}
	if tails {
		s.tails()
	}
	s.checklist()
	s.visible()
	s.notes()
	s.verdict()
	return s.out
}

// describe says with what roof the survey reckons.
func (s *surveying) describe() {
	o, r := s.m.in.House.OldRoof, &s.roof
	s.out.Roof = SurveyRoof{Known: s.known, Enclosure: string(r.class)}
	if o.System != nil {
		s.out.Roof.System = *o.System
	}
	if r.joint.Span == 0 {
		return
	}
	x := &s.out.Roof
	x.Length, x.Span, x.Overhang = r.length/calc.Ft, r.joint.Span/calc.Ft, r.joint.Overhang/calc.Ft
	x.Spacing, x.Height, x.Angle = r.joint.Spacing/calc.In, r.joint.Site.Height/calc.Ft, r.angle
	x.Lines = slices.Clone(o.Lines)
	x.End = r.endZone() / calc.Ft
	if r.drawn {
		x.Zoned = true
		x.Edge, x.Corner, x.Depth = r.widths.Edge/calc.Ft, r.widths.Corner/calc.Ft, r.widths.Depth/calc.Ft
		x.Zones = r.widths.Lines()
	}
	if openings, ok := openingsOf(o); ok {
		x.Openings = openings.Lines()
	}
}

// openingsOf classes the house by its openings, where all four areas are given.
func openingsOf(o OldRoof) (roof.Openings, bool) {
	if !given(o.WallOpen, o.Wall, o.RestOpen, o.Rest) {
		return roof.Openings{}, false
	}
	return roof.NewOpenings(*o.WallOpen*calc.SqFt, *o.Wall*calc.SqFt, *o.RestOpen*calc.SqFt, *o.Rest*calc.SqFt), true
}

// placeOf is the place of a joint.
func placeOf(j *Joint) string { return *j.Place }

// spots lists the places and zones that the joints stand in, those that pull most first;
// all zones of the eave where there is no joint.
func (s *surveying) spots() []pull {
	seen := map[pullKey]bool{}
	for i := range s.m.in.House.Joints {
		j := &s.m.in.House.Joints[i]
		zone, _ := s.roof.zoneOf(j)
		seen[pullKey{placeOf(j), zone}] = true
	}
	if len(seen) == 0 {
		for z := survey.Corner; z <= survey.Field; z++ {
			seen[pullKey{atEave, z}] = true
		}
	}
	var out []pull
	for _, place := range []string{atEave, atFarWall, atInterior, atRidge} {
		for z := survey.Corner; z <= survey.Field; z++ {
			if seen[pullKey{place, z}] {
				out = append(out, pull{place: place, zone: z})
			}
		}
	}
	return out
}

// A pullKey is a place in a zone.
type pullKey struct {
	place string
	zone  survey.Zone
}

// pulls works out what the wind asks in every place and zone.
func (s *surveying) pulls() {
	for _, p := range s.spots() {
		line := SurveyPull{Place: p.place, Zone: zoneWords[p.zone]}
		if s.known {
			p = s.roof.at(p.place, p.zone)
			line.Main, line.Component = finite(p.main), finite(p.part)
			line.Lines, line.PartLines = p.lines, p.partLines
			line.Cover, line.CoverLine = s.hung.added(p.place), s.hung.lines(p.place)
			uplift := p.demand(line.Cover, s.roof.mainOnly).Uplift()
			line.Uplift = finite(uplift)
			if line.Uplift != nil {
				line.Rating = connections.Rating(uplift)
			}
		}
		s.out.Pulls = append(s.out.Pulls, line)
	}
}

// demand is what the wind asks of a joint; not a number where the roof is not known.
func (s *surveying) demand(place string, zone survey.Zone) survey.Demand {
	none := math.NaN()
	for i := range s.out.Pulls {
		p := &s.out.Pulls[i]
		if p.Place != place || p.Zone != zoneWords[zone] {
			continue
		}
		d := survey.Demand{Main: none, Component: none, Cover: p.Cover, MainOnly: s.roof.mainOnly}
		if p.Main != nil {
			d.Main = *p.Main
		}
		if p.Component != nil {
			d.Component = *p.Component
		}
		return d
	}
	return survey.Demand{Main: none, Component: none}
}

// finite is nil for what is not a finite number.
func finite(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}

// notes says what the verdicts rest on.
func (s *surveying) notes() {
	add := func(words ...string) { s.out.Notes = append(s.out.Notes, strings.Join(words, "")) }
	if !s.known {
		add("what the wind asks is not known: give the span, spacing, overhang, height and slope of the old rafters, ",
			"and their dead load or the layers of the roof")
	}
	if s.roof.mainOnly {
		add("the main system alone counts, as the building department accepts")
	}
	if s.known && !s.roof.mainOnly {
		add("the larger of both ways of reckoning the wind counts, until the building department says which it accepts")
	}
	if n := unstamped(s.m.in.House.Joints); n > 0 {
		records := " records: specific gravity "
		if n == 1 {
			records = " record: specific gravity "
		}
		add("fasteners in wood without a stamp, in ", strconv.Itoa(n), records, calc.Number(survey.UnknownGravity))
	}
	add("sideways force on the old ties is not judged; a tie that holds by its rating holds with its listed nails, ",
		"species and coating only")
}

// unstamped counts the records of fasteners in wood without a stamp.
func unstamped(all []Joint) int {
	n := 0
	for _, j := range all {
		if j.Species == nil && (is(j.Evidence, "toenails") || is(j.Evidence, "bolts")) {
			n++
		}
	}
	return n
}

// verdict is the worst of all parts.
func (s *surveying) verdict() {
	for i := range s.out.Joints {
		s.out.Verdict = s.out.Verdict.Worse(s.out.Joints[i].Verdict)
	}
	for i := range s.out.Below {
		s.out.Verdict = s.out.Verdict.Worse(s.out.Below[i].Verdict)
	}
	if s.out.Tails != nil {
		s.out.Verdict = s.out.Verdict.Worse(s.out.Tails.Verdict)
	}
	for _, c := range s.out.Checklist {
		s.out.Verdict = s.out.Verdict.Worse(answerVerdict(c.Answer))
	}
}

// answerVerdict is the verdict that an answer amounts to.
func answerVerdict(answer string) Verdict {
	switch answer {
	case AnswerPasses:
		return OK
	case AnswerFails:
		return Over
	}
	return NotChecked
}
