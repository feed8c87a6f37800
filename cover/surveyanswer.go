package cover

import (
	"strings"

	"patiocover/calc"
)

// SurveyOnly answers a job with its whole report, which must hold a survey: a job that
// says nothing of an old roof is a [*calc.InputError].
func SurveyOnly(in Input) (Report, error) {
	r, err := Size(in)
	if err == nil && r.Survey == nil {
		var f calc.Fields
		f.Missing("house.joints", "the joints of the existing roof, or its size: house.rafter_span_ft and the entries beside it")
		err = f.Err()
	}
	return r, err
}

// A SurveyAnswer is the survey of a report with what every answer carries.
type SurveyAnswer struct {
	Notice  string       `json:"notice"`  // who must approve this
	Stamp   Stamp        `json:"stamp"`   // what produced it, from which input
	Verdict Verdict      `json:"verdict"` // of the survey
	Assumed []Assumption `json:"assumed"` // what was not said of the house, and what was taken instead
	Survey  *Survey      `json:"survey"`  // the joints of the existing roof, judged
}

// SurveyAnswer cuts the survey out of a report that has one.
func (r Report) SurveyAnswer() SurveyAnswer {
	out := SurveyAnswer{Notice: r.Notice, Stamp: r.Stamp, Verdict: r.Survey.Verdict, Survey: r.Survey}
	for _, a := range r.Assumed {
		if strings.HasPrefix(a.Path, "house.") {
			out.Assumed = append(out.Assumed, a)
		}
	}
	return out
}
