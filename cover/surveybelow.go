package cover

import (
	"fmt"
	"math"

	"patiocover/calc"
	"patiocover/connections/survey"
)

// below follows the joints of every line down to the ground. A joint whose line was not
// named is followed to a path that nobody has seen.
func (s *surveying) below() {
	named := map[string]bool{}
	for i := range s.m.in.House.OldRoof.Below {
		b := &s.m.in.House.OldRoof.Below[i]
		named[*b.Line] = true
		if most, any := s.mostOn(func(line string) bool { return line == *b.Line }); any {
			s.follow(b, most)
		}
	}
	most, any := s.mostOn(func(line string) bool { return !named[line] })
	if any {
		s.out.Below = append(s.out.Below, SurveyBelow{
			Line: "not said", Link: "beam to post, post to slab, slab to ground", Evidence: survey.Unknown.String(),
			Uplift: finite(most), Ratio: Ratio(math.Inf(1)), Verdict: OpenUp,
			Reason: "nothing is said of what stands below these joints: tying the rafters alone moves the failure there",
		})
	}
}

// mostOn is the largest uplift among the joints whose line is picked, and whether there
// is such a joint. It is not a number when one of them is not known.
func (s *surveying) mostOn(picked func(line string) bool) (most float64, any bool) {
	for i := range s.m.in.House.Joints {
		line := ""
		if l := s.m.in.House.Joints[i].Line; l != nil {
			line = *l
		}
		if !picked(line) {
			continue
		}
		any = true
		u := s.out.Joints[i].Uplift
		if u == nil {
			return math.NaN(), true
		}
		most = max(most, *u)
	}
	return most, any
}

// follow writes the three links of one line.
func (s *surveying) follow(b *BelowLine, uplift float64) {
	ground := survey.Unknown
	if b.GroundHolds != nil {
		ground = survey.Strap // weight: seen and reckoned by somebody
	}
	for _, l := range []struct {
		name     string
		evidence survey.Evidence
		sound    bool
		holds    *float64
	}{
		{"beam to post", evidenceOf(b.Beam), yes(b.BeamSound), b.BeamHolds},
		{"post to slab", evidenceOf(b.Foot), yes(b.FootSound), b.FootHolds},
		{"slab to ground", ground, true, b.GroundHolds},
	} {
		d := survey.NewDown(uplift, *b.Joints, l.evidence, l.sound, orZero(l.holds)*calc.Lb)
		out := SurveyBelow{
			Line: *b.Line, Link: l.name, Evidence: l.evidence.String(), Uplift: finite(d.Demand), Capacity: d.Rating,
			Ratio: Ratio(d.Ratio()), Verdict: verdictOf[d.Verdict], Rating: d.Tie, Reason: belowReason(&d),
		}
		if l.name == "slab to ground" {
			out.Evidence = "weight"
			if b.GroundHolds == nil {
				out.Evidence = "weight not known"
			}
		}
		if out.Uplift != nil {
			e := d.Explain()
			out.Check = &e
		}
		s.out.Below = append(s.out.Below, out)
	}
}

// belowReason says why a link has its verdict.
func belowReason(d *survey.Down) string {
	rated := ""
	if d.Tie > 0 {
		rated = "; it must hold " + pounds(d.Tie) + " lb"
	}
	switch {
	case d.Verdict == survey.NotChecked:
		return "the uplift above it is outside the method or not known"
	case d.Verdict == survey.OK:
		return fmt.Sprintf("holds the %s lb of the joints above", pounds(d.Demand))
	case d.Evidence == survey.Unknown:
		return "nobody has seen it: open it up" + rated
	case d.Verdict == survey.OpenUp && !d.Sound:
		return "seen, but not written down as sound" + rated
	case d.Verdict == survey.OpenUp:
		return "seen, but what it holds is not known" + rated
	case d.Evidence == survey.NoneSeen:
		return "nothing there" + rated
	}
	return "holds " + poundsDown(d.Rating) + " lb only" + rated
}
