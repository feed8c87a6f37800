package web

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web/drawing"
)

// notKnown stands for a force that is outside the method.
const notKnown = "not known"

// poundsOr writes a demand in lb, up to the next whole pound, or that it is not known.
func poundsOr(x *float64) string {
	if x == nil {
		return notKnown
	}
	return pounds(*x) + " lb"
}

// poundsDown writes a capacity in lb, down to the whole pound.
func poundsDown(x float64) string {
	return calc.Grouped(strconv.FormatFloat(calc.RoundDown(x, 1), 'f', 0, 64))
}

// surveyPlan draws the plan of the old roof.
func surveyPlan(x *cover.Survey) (template.HTML, error) {
	var b bytes.Buffer
	if err := drawing.SVG(&b, drawing.OldRoof(*x), "old-roof"); err != nil {
		return "", err
	}
	return template.HTML(b.String()), nil // the writer escapes every text
}

// SurveyText prints the survey of the old roof alone, or that the job has none. The
// error is that of w.
func SurveyText(w io.Writer, r cover.Report) error {
	p := newPrinter(w)
	if r.Input.Job.Name != nil {
		p.say(*r.Input.Job.Name)
	}
	if r.Survey == nil {
		p.say("The job says nothing of an existing roof: house.joints, and the house.rafter_... and house.old_roof entries.")
		return p.close()
	}
	p.say("Verdict of the survey: " + string(r.Survey.Verdict))
	p.say(r.Notice)
	p.survey(r.Survey)
	p.head("Stamp")
	p.say(r.Stamp.Program + "; " + r.Stamp.Standards)
	p.say("input " + r.Stamp.InputHash)
	return p.close()
}

// SurveyCalculations prints what a survey writes out. The error is that of w.
func SurveyCalculations(w io.Writer, r cover.Report) error {
	p := newPrinter(w)
	p.surveyCalculations(r.Survey)
	return p.close()
}

// survey prints the survey of the old roof; nothing where there is none.
func (p *printer) survey(x *cover.Survey) {
	if x == nil {
		return
	}
	if len(x.Joints) > 0 {
		p.head("Old roof: joints, lb for each")
		p.row("mark", "where", "how many", "seen", "asks", "holds", "ratio", "verdict", "tie")
		for _, j := range x.Joints {
			p.row(j.Mark, j.Where, strconv.Itoa(j.Count), j.Evidence, poundsOr(j.Uplift), poundsDown(j.Capacity),
				ratio(j.Ratio), string(j.Verdict), tieWords(j.Rating))
		}
		p.w.Flush()
		for _, j := range x.Joints {
			p.row(j.Mark, j.Reason+remembered(j.Recalled), "prescriptive: "+j.Prescriptive)
		}
	}
	p.surveyPlans(x)
	p.surveyDemands(x)
	p.tails(x.Tails)
	p.rooms(x)
	for _, n := range x.Notes {
		p.say("  - " + n)
	}
}

// tieWords is the rating of a tie that is needed.
func tieWords(rating float64) string {
	if rating == 0 {
		return "none"
	}
	return pounds(rating)
}

// surveyPlans prints what to open, what to tie and what stands below.
func (p *printer) surveyPlans(x *cover.Survey) {
	if len(x.Opening) > 0 {
		p.head("Old roof: what to open up")
		p.row("zone", "joints", "seen", "must be seen", "open", "among")
		for _, o := range x.Opening {
			p.row(o.Wall+" "+spoken(o.Place)+", "+o.Zone, strconv.Itoa(o.Total), strconv.Itoa(o.Seen), strconv.Itoa(o.Least),
				strconv.Itoa(o.More), strings.Join(o.Marks, ", "))
		}
	}
	if len(x.Ranking) > 0 {
		p.head("Old roof: ties that are needed, the most urgent first")
		p.row("mark", "where", "ratio", "rated for", "ties", "cost")
		for _, k := range x.Ranking {
			p.row(k.Mark, k.Where, ratio(k.Ratio), pounds(k.Rating), strconv.Itoa(k.Count), dollars(k.Cost))
		}
		if x.TieCost != nil {
			p.row("all", "", "", "", "", dollars(x.TieCost))
		}
	}
	if len(x.Below) > 0 {
		p.head("Old roof: below the joints")
		p.row("line", "link", "seen", "uplift", "holds", "verdict", "why")
		for _, b := range x.Below {
			p.row(b.Line, b.Link, b.Evidence, poundsOr(b.Uplift), poundsDown(b.Capacity), string(b.Verdict), b.Reason)
		}
	}
}

// surveyDemands prints what the wind asks, now and after changes.
func (p *printer) surveyDemands(x *cover.Survey) {
	p.head("Old roof: what the wind asks, lb for one joint")
	p.row("place", "main system", "as a component", "from the cover", "counts", "tie")
	for _, u := range x.Pulls {
		p.row(spoken(u.Place)+", "+u.Zone, poundsOr(u.Main), poundsOr(u.Component), pounds(u.Cover), poundsOr(u.Uplift), tieWords(u.Rating))
	}
	if len(x.Changes) > 0 {
		p.head("Old roof: side by side, lb that counts")
		head := []string{"roof", "dead load that resists"}
		for _, u := range x.Pulls {
			head = append(head, spoken(u.Place)+", "+u.Zone)
		}
		p.row(head...)
		for _, c := range x.Changes {
			name := c.Name
			if c.Only {
				name += ", for comparison only"
			}
			cells := []string{name, number(c.Dead, "psf") + " psf, " + c.Class}
			for _, u := range c.Pulls {
				cells = append(cells, poundsOr(u.Uplift))
			}
			p.row(cells...)
		}
	}
	if len(x.Layers) > 0 {
		p.head("Old roof: layers")
		for _, l := range x.Layers {
			p.row(l.Name, number(l.Weight, "psf")+" psf", spoken(l.State), yesOrNo(l.Counts)+": "+l.Why, l.Source+statusNote(l.Status))
		}
	}
}

func yesOrNo(yes bool) string {
	if yes {
		return "counts"
	}
	return "does not count"
}

// tails prints the rafter tails; nothing where the cover does not hang on them.
func (p *printer) tails(t *cover.SurveyTails) {
	if t == nil {
		return
	}
	p.head("Rafter tails under the cover")
	p.row(string(t.Verdict), t.Reason)
	p.row("heel", pounds(t.Heel.Value)+" lb up, "+pounds(t.HeelDown.Value)+" lb down", "next support lifted "+pounds(t.Inner.Value)+" lb")
	for _, c := range t.Checks {
		p.row(c.Name+remembered(c.Recalled), ratio(c.Ratio), string(c.Verdict), c.Combination)
	}
	for _, r := range t.Rules {
		p.row(r.Name, string(r.Verdict), r.Reason, r.Source)
	}
	for _, a := range t.Alternatives {
		clear := notKnown
		if a.Headroom != nil {
			clear = clearHeight(*a.Headroom) + " clear"
		}
		wood := fmt.Sprintf("rafters %s, beams %s, %d posts", a.Rafters, a.Beams, a.Posts)
		p.row("instead: "+a.Name, string(a.Verdict), clear, wood, a.Reason)
	}
}

// rooms prints what the rooms behind ask, and what must stay visible.
func (p *printer) rooms(x *cover.Survey) {
	if len(x.Checklist) > 0 {
		p.head("Rooms behind the cover")
		for _, c := range x.Checklist {
			p.row(c.Answer, c.Item, c.Reason, c.Source)
		}
	}
	if len(x.Visible) > 0 {
		p.head("What must stay visible until it has been seen")
		for _, v := range x.Visible {
			p.row(v.What, v.Stage, v.Why)
		}
	}
}

// surveyCalculations prints every written calculation of a survey.
func (p *printer) surveyCalculations(x *cover.Survey) {
	if x == nil {
		return
	}
	p.lines("Layers of the old roof", x.LayerLines)
	p.lines("Zones of the old roof", x.Roof.Zones)
	p.lines("Openings of the house", x.Roof.Openings)
	for _, u := range x.Pulls {
		at := "Old roof, " + spoken(u.Place) + ", " + u.Zone
		p.lines(at+", main system", u.Lines)
		p.lines(at+", as a component", u.PartLines)
		p.lines(at+", from the cover", u.CoverLine)
	}
	for _, j := range x.Joints {
		if j.Check != nil {
			p.check("Joint "+j.Mark, *j.Check)
		}
	}
	for _, o := range x.Opening {
		p.lines("To open, "+o.Wall+" "+spoken(o.Place)+", "+o.Zone, o.Lines)
	}
	for _, b := range x.Below {
		if b.Check != nil {
			p.check(b.Line+", "+b.Link, *b.Check)
		}
	}
	if x.Tails == nil {
		return
	}
	for _, d := range x.Tails.Statics {
		p.lines(d.Title, d.Lines)
	}
	for _, c := range x.Tails.Checks {
		p.check("Rafter tail, "+c.Name+", "+c.Combination, c.Check)
	}
	for _, r := range x.Tails.Rules {
		if r.Check != nil {
			p.check(r.Name, *r.Check)
		}
	}
}
