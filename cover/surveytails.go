package cover

import (
	"fmt"
	"math"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections/survey"
	"patiocover/loads/roof"
	"patiocover/loads/wind"
)

// tails judges the rafter tails that the cover hangs on, and sizes other ways to hold it
// where they are rejected.
func (s *surveying) tails() {
	t := &SurveyTails{Verdict: OK}
	s.out.Tails = t
	if missing := s.tailsMissing(); len(missing) > 0 {
		t.Verdict = OpenUp
		t.Reason = "the tails cannot be judged until this is measured or seen: " + strings.Join(missing, ", ")
	}
	if s.known {
		s.tailForces(t)
		s.tailRules(t)
	}
	if t.Verdict == OK {
		s.tailChecks(t)
	}
	if t.Verdict != OK && s.whole {
		t.Alternatives = s.alternatives()
	}
}

// tailsMissing lists what is not known of the tails.
func (s *surveying) tailsMissing() []string {
	o := s.m.in.House.OldRoof
	var out []string
	need := func(known bool, words string) {
		if !known {
			out = append(out, words)
		}
	}
	need(s.known, "spans and dead load of the old roof")
	need(o.TailSize != nil, "size")
	need(o.TailSpecies != nil && o.TailGrade != nil, "species and grade of the stamp")
	need(o.TailCut != nil, "depth of the seat cut at the heel")
	need(yes(o.TailSound), "that they are sound and not tapered")
	return out
}

// tailForces says what the cover adds at the heel and at the next support.
func (s *surveying) tailForces(t *SurveyTails) {
	h := &s.hung
	t.Heel = Force{Value: max(0, h.near.Near), Combination: "0.6D + 0.6W"}
	t.HeelDown = Force{Value: max(0, h.down) * (h.span + h.reach) / h.span, Combination: "largest of all combinations"}
	t.Inner = Force{Value: h.added(atInterior), Combination: "dead load of the cover, or all of it against 0.6D of the house"}
}

// tailLoads are the combinations that a tail is checked in: dead load alone, the largest
// load down with the roof live or snow load of the house, and the uplift of both. A load
// down that the wind brings counts as lasting as long as the live or snow load: less
// strength, on the safe side.
func (s *surveying) tailLoads() []survey.TailLoad {
	h, r := &s.hung, &s.roof
	snow := 0.0
	for i := range s.m.snow.sets {
		snow = max(snow, s.m.snow.even(i))
	}
	variable, lasts := s.m.live, lumber.SevenDays
	if snow > variable {
		variable, lasts = snow, lumber.TwoMonths
	}
	space := r.joint.Spacing
	return []survey.TailLoad{
		{Name: "D", Cover: h.dead, Own: s.dead.most * space, Duration: lumber.Permanent},
		{Name: "D + Lr or S, the cover at its most", Cover: h.down, Own: (s.dead.most + variable) * space, Duration: lasts},
		{Name: "0.6D + 0.6W", Cover: -h.up, Own: -r.eaveLift() * space, Duration: lumber.TenMinutes},
	}
}

// eaveLift is the largest net uplift of the overhang by both ways, lb/in² of allowable
// stress level.
func (r *oldRoof) eaveLift() float64 {
	most := 0.0
	if b, ok := roof.PlainBasis(r.angle, true, r.class); ok {
		most = max(most, roof.NewTie(r.joint, b).Eave)
	}
	area := wind.EffectiveArea(r.joint.Overhang, r.joint.Spacing)
	if field, over, known := r.worst(survey.Corner, area); known {
		if b, ok := roof.PartBasis(field, over); ok {
			most = max(most, roof.NewTie(r.joint, b).Eave)
		}
	}
	return most
}

// tailChecks checks the tails in every combination.
func (s *surveying) tailChecks(t *SurveyTails) {
	o := s.m.in.House.OldRoof
	section, err := lumber.SectionNamed(*o.TailSize)
	if err != nil {
		t.Verdict, t.Reason = NotChecked, "the size of the tails is not in the tables"
		return
	}
	v, err := lumber.Find(*o.TailSpecies, *o.TailGrade, section)
	if err != nil {
		t.Verdict, t.Reason = NotChecked, "no published values for the tails: "+err.Error()
		return
	}
	piece := survey.Tails{
		Wood: lumber.Adjust(v, section, lumber.Use{Wet: *s.m.in.Site.Climate != "dry"}), Cut: *o.TailCut * calc.In,
		Reach: s.hung.reach, Overhang: s.roof.joint.Overhang, Span: s.hung.span,
	}
	if !(piece.Cut < section.Depth) {
		t.Verdict, t.Reason = Over, "the seat cut leaves nothing of the tail"
		return
	}
	worst, at := 0.0, ""
	for _, load := range s.tailLoads() {
		x := survey.NewTail(load, piece)
		t.Statics = append(t.Statics, Derivation{Title: "Rafter tail, " + load.Name, Lines: x.Statics()})
		for _, c := range x.Checks() {
			r := Ratio(c.Ratio())
			t.Checks = append(t.Checks, checked(c, r, load.Name, "heel"))
			t.Verdict = t.Verdict.Worse(r.Verdict())
			if float64(r) > worst || math.IsInf(float64(r), 1) {
				worst, at = float64(r), c.Name+" in "+load.Name
			}
		}
	}
	t.Reason = fmt.Sprintf("%s %s: %s at ratio %s; the heel joints are judged one by one",
		*o.TailSize, *o.TailSpecies, at, ratioText(Ratio(worst)))
}
