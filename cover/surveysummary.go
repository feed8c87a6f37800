package cover

import (
	"fmt"
	"strings"
)

// saySurvey says what the survey of the old roof found, a sentence for each verdict.
func (r *Report) saySurvey(say func(Verdict, string, string, ...any)) {
	x := r.Survey
	if x == nil {
		return
	}
	x.sayJoints(say)
	if len(x.Joints) > 0 {
		say(NotChecked, "", "%s: %s", oldSideways.What, oldSideways.Why)
	}
	x.sayBelow(say)
	if t := x.Tails; t != nil {
		say(t.Verdict, "", "rafter tails: %s", t.Reason)
	}
	var asked, failed, passed []string
	for _, c := range x.Checklist {
		switch c.Answer {
		case AnswerAsk:
			asked = append(asked, c.Item)
		case AnswerFails:
			failed = append(failed, c.Item+": "+c.Reason)
		case AnswerPasses:
			passed = append(passed, c.Item)
		}
	}
	for _, f := range failed {
		say(Over, "", "rooms behind the cover, %s", f)
	}
	if len(asked) > 0 {
		say(NotChecked, "", "rooms behind the cover, to be asked: %s", strings.Join(asked, "; "))
	}
	if len(passed) > 0 {
		say(OK, "", "rooms behind the cover: %s", strings.Join(passed, "; "))
	}
}

// sayJoints says which joints need a tie, which must be opened, which are not judged and
// which hold.
func (x *Survey) sayJoints(say func(Verdict, string, string, ...any)) {
	words := map[Verdict]string{
		Over:       "a tie is needed for the uplift named",
		OpenUp:     "open them up before anyone can say",
		NotChecked: "what the wind asks of them is not known, so that whether they hold is not judged",
		OK:         "they hold what the wind asks",
	}
	for _, v := range []Verdict{Over, OpenUp, NotChecked, OK} {
		var marks []string
		count := 0
		for i := range x.Joints {
			j := &x.Joints[i]
			if j.Verdict != v {
				continue
			}
			mark := j.Mark
			if v == Over && j.Rating > 0 {
				mark += " (" + pounds(j.Rating) + " lb)"
			}
			marks, count = append(marks, mark), count+j.Count
		}
		if len(marks) == 0 {
			continue
		}
		many := ""
		if count != len(marks) {
			many = fmt.Sprintf(", %d in all", count)
		}
		say(v, "", "old roof, joints %s%s: %s", strings.Join(marks, ", "), many, words[v])
	}
}

// sayBelow says what is open or over below the joints.
func (x *Survey) sayBelow(say func(Verdict, string, string, ...any)) {
	for _, b := range x.Below {
		say(b.Verdict, "", "old roof, %s of line %s: %s", b.Link, b.Line, b.Reason)
	}
}
