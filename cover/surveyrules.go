package cover

import (
	"fmt"

	"patiocover/calc"
	"patiocover/connections/survey"
)

// tailRules sets the rules for existing members beside the checks: they tell whether a
// part may stay as it is without any check, and none of them makes a tail OK.
func (s *surveying) tailRules(t *SurveyTails) {
	r, h := &s.roof, &s.hung
	variable := s.m.live
	for i := range s.m.snow.sets {
		variable = max(variable, s.m.snow.even(i))
	}
	o, l := r.joint.Overhang, h.span
	before := (s.dead.most + variable) * r.joint.Spacing * (l/2 + o*(1+o/(2*l)))
	gravity := survey.NewIncrease(before, t.HeelDown.Value, false)
	t.Rules = append(t.Rules, ruleOf("5 percent more in gravity load", gravity,
		"International Existing Building Code 805.2, as a city's edition prints it"))
	t.Rules = append(t.Rules, s.sidewaysRule(), s.notchRule())
}

// ruleOf writes a rule with its numbers.
func ruleOf(name string, i survey.Increase, source string) TailRule {
	e := i.Explain()
	out := TailRule{Name: name, Verdict: OK, Source: source, Check: &e}
	out.Reason = fmt.Sprintf("the cover adds %.0f %% of what the part carries: by this rule alone it may stay as it is", 100*i.Part)
	if !(i.Ratio() <= 1) {
		out.Verdict = Over
		out.Reason = fmt.Sprintf("the cover adds %.0f %%: the part must carry the full load of the code for new structures", 100*i.Part)
	}
	return out
}

// sidewaysRule compares what the cover hands to the wall line sideways with what the line
// carries without it.
func (s *surveying) sidewaysRule() TailRule {
	const name, source = "10 percent more sideways", "existing building code of a state, exception for lateral elements"
	added := 0.0
	for d := range directions {
		if s.m.racking[d].byHouse() {
			added = max(added, s.m.sideways.push(d).way().Demand)
		}
	}
	before := s.m.in.House.OldRoof.LateralLoad
	if before == nil {
		return TailRule{
			Name: name, Verdict: NotChecked, Source: source,
			Reason: "the sideways demand on the wall line without the cover was not given; the cover adds " + pounds(added) + " lb",
		}
	}
	return ruleOf(name, survey.NewIncrease(*before*calc.Lb, added, true), source)
}

// Limits of a notched overhang that needs no reckoning (IRC 2018 R802.7.1.1, read).
const (
	leftOverSeat  = 3.5 * calc.In
	notchedLength = 24 * calc.In
)

// notchRule is the rule of the code for the seat cut of an overhang.
func (s *surveying) notchRule() TailRule {
	out := TailRule{Name: "seat cut of an overhang", Verdict: NotChecked, Source: "IRC 2018 R802.7.1.1"}
	o := s.m.in.House.OldRoof
	depth, ok := tailDepth(o)
	if !ok || o.TailCut == nil {
		out.Reason = "size and seat cut of the tails are not given"
		return out
	}
	left, long := depth-*o.TailCut*calc.In, s.roof.joint.Overhang
	out.Verdict = OK
	out.Reason = fmt.Sprintf("%s left above the seat and %s of overhang: within 3-1/2 in. and 24 in.",
		calc.FeetInches(left), calc.FeetInches(long))
	if left < leftOverSeat || long > notchedLength {
		out.Verdict = Over
		out.Reason = fmt.Sprintf("%s left above the seat and %s of overhang: the rule asks for 3-1/2 in. or more and 24 in. or less",
			calc.FeetInches(left), calc.FeetInches(long))
	}
	return out
}
