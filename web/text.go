package web

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// Text prints a report for a terminal: the verdict, the members, the connections,
// the foundations, what was assumed and what was not checked. The error is that of w.
func Text(w io.Writer, r cover.Report) error {
	p := newPrinter(w)
	if r.Input.Job.Name != nil {
		p.say(*r.Input.Job.Name)
	}
	p.say("Verdict: " + string(r.Verdict))
	p.say(count(r.Summary))
	p.say(r.Notice)
	p.head("Summary")
	for _, f := range r.Summary {
		p.row(string(f.Verdict), f.Mark, f.Text)
	}
	p.members(r)
	p.deck(r.Deck)
	p.links(r)
	p.ground(r)
	p.margins(r.Margins, r.Smaller)
	p.takeOff(r.TakeOff)
	p.combinations(r.Loads.Combinations)
	p.basis(r)
	p.head("Not checked")
	for _, s := range r.NotChecked {
		p.row(s.What, s.Why)
	}
	p.head("Stamp")
	p.say(r.Stamp.Program + "; " + r.Stamp.Standards)
	p.say("input " + r.Stamp.InputHash)
	p.say(r.Notice)
	return p.close()
}

func (p *printer) members(r cover.Report) {
	p.head("Members")
	p.row("mark", "member", "size", "wood", "longest cut", "ratio", "governs", "verdict")
	for _, m := range r.Members {
		p.row(m.Mark, fmt.Sprintf("%d %s", m.Count, m.Name), m.Size, m.Species+" "+m.Grade, feet(m.Length),
			ratio(m.Ratio), m.Governs, string(m.Verdict))
	}
	for _, m := range r.Members {
		p.head(m.Mark + " " + m.Name + " " + m.Size)
		p.row("check", "ratio", "verdict", "where", "combination", "by "+otherMethod(r.Method))
		for _, c := range m.Checks {
			p.row(c.Name+remembered(c.Recalled), ratio(c.Ratio), string(c.Verdict), c.Where, c.Combination, besideOf(c))
		}
		for _, n := range append(slices.Clone(m.Product), m.Notes...) {
			p.say("  - " + n)
		}
	}
}

// otherMethod is the design method that members were not chosen by.
func otherMethod(method string) string {
	if method == "LRFD" {
		return "ASD"
	}
	return "LRFD"
}

// besideOf is the ratio by the other method; of what is alike in both nothing.
func besideOf(c cover.MemberCheck) string {
	if c.Beside == nil {
		return "alike"
	}
	return ratio(c.Beside.Ratio)
}

// remembered marks a check that rests on an unconfirmed value.
func remembered(yes bool) string {
	if yes {
		return " (rests on a value from memory)"
	}
	return ""
}

func (p *printer) links(r cover.Report) {
	p.head("Connections")
	p.row("mark", "joint", "how many", "unit", "down", "up", "along", "out", "uplift rating", "verdict")
	for _, l := range r.Links {
		p.row(l.Mark, l.Name, quantity(l), unitOf(l), pounds(l.Down.Value), pounds(l.Up.Value),
			pounds(l.Along.Value), pounds(l.Out.Value), rated(l), string(l.Verdict))
	}
	p.w.Flush()
	for _, l := range r.Links {
		p.row(l.Mark, l.From+" on "+l.To, l.Hardware, "seen: "+l.Stage, l.Reason)
	}
	p.w.Flush()
	for _, l := range r.Links {
		p.connector(l)
	}
	p.head("Load paths")
	p.row("to", "links from the top", "weakest", "ratio", "verdict")
	for _, path := range r.Paths {
		p.row(path.To, strings.Join(path.Marks, " "), path.Weakest, ratio(path.Ratio), string(path.Verdict))
	}
	p.w.Flush()
}

// connector says what makes a link, and how it was checked.
func (p *printer) connector(l cover.Link) {
	c := l.Connector
	if len(c.Checks) == 0 && len(c.Notes) == 0 {
		return
	}
	p.say(l.Mark + " " + c.Basis + ": " + c.What)
	for _, k := range c.Checks {
		p.say("  - " + k.Name + ": ratio " + ratio(k.Ratio) + ", " + k.Combination + ", " + string(k.Verdict) + remembered(k.Recalled))
	}
	for _, note := range c.Notes {
		p.say("  - " + note)
	}
}

// rated is the uplift rating to ask for; of hardware that has no rating, the uplift.
func rated(l cover.Link) string {
	switch {
	case l.Connector.Up > 0:
		return pounds(l.Connector.Up)
	case l.Rating > 0:
		return pounds(l.Rating)
	case l.Up.Value > 0:
		return "as up"
	}
	return "none"
}

func (p *printer) ground(r cover.Report) {
	p.head("Foundations, lb")
	p.row("post", "on", "gravity", "all loads", "uplift", "verdict", "why")
	for _, f := range r.Foundations {
		p.row(f.Post, spoken(f.Kind), pounds(f.Gravity.Value), pounds(f.Every.Value), pounds(f.Uplift.Value),
			string(f.Verdict), f.Reason)
	}
	p.row("post", "check", "ratio", "verdict", "combination")
	for _, f := range r.Foundations {
		for _, c := range slices.Concat(f.Checks, f.Anchor) {
			p.row(f.Post, c.Name+remembered(c.Recalled), ratio(c.Ratio), string(c.Verdict), c.Combination)
		}
		p.row(f.Post, "anchor", "", string(f.AnchorVerdict), f.AnchorReason)
	}
	if c := r.Concrete; c.Count > 0 {
		p.say(strconv.Itoa(c.Count) + " footings, " + number(c.Yards, "") + " cubic yards of concrete")
	}
	if c := r.Footings; c != nil {
		p.say("One size for all: " + c.Size + ", " + number(c.All.Yards, "") + " cubic yards; each its own least size: " +
			number(c.Each.Yards, "") + " cubic yards (foundation.one_size)")
	}
	p.head("Sideways")
	for _, w := range r.Lateral {
		p.row(w.Direction, spoken(w.System), pounds(w.Demand)+" lb", string(w.Verdict), w.Reason)
	}
	for _, w := range r.Lateral {
		for _, s := range w.Path {
			p.row(w.Direction+", "+s.Part, pounds(s.Demand)+" lb", s.Per, string(s.Verdict), s.Reason)
			for _, c := range s.Checks {
				p.row("", c.Name+remembered(c.Recalled), ratio(c.Ratio), string(c.Verdict), c.Combination)
			}
		}
	}
	p.head("Headroom")
	p.row(string(r.Headroom.Verdict), clearHeight(r.Headroom.Clear)+" clear, "+clearHeight(r.Headroom.Required)+" asked for")
	if len(r.Existing) > 0 {
		p.head("Existing roof, lb for one tie")
		p.say(viewsOfTies)
		p.row("where", "coefficients", "house roof", "from the cover", "uplift", "rating")
	}
	for _, t := range r.Existing {
		p.row(t.Where, t.Basis, pounds(t.Own), pounds(t.Cover), pounds(t.Uplift), pounds(t.Rating))
	}
	p.survey(r.Survey)
	p.head("Drainage")
	p.row(string(r.Drainage.Verdict), r.Drainage.Covering, r.Drainage.Reason)
	if len(r.Drainage.Lines) > 0 {
		p.row("", "driven rain", feet(r.Drainage.Reach)+" in at the open edge, "+feet(r.Drainage.Dry)+" of the floor stay dry")
	}
}

// viewsOfTies says which row of the ties of the house roof counts.
const viewsOfTies = "A tie takes the row of its place in the roof. Where rows are different views of one place, " +
	"take the largest until the building department says which it accepts."

func (p *printer) basis(r cover.Report) {
	p.head("Criteria")
	for _, c := range r.Criteria {
		p.row(c.Label, spoken(c.Value)+" "+c.Unit, c.Source)
	}
	p.head("Assumed: to replace one, give its key")
	for _, a := range r.Assumed {
		p.row(a.Path, spoken(a.Value)+" "+a.Unit, a.Why, a.Source+statusNote(a.Status))
	}
}

func statusNote(s calc.Status) string {
	if s == calc.Recalled {
		return " (" + fromMemory + ")"
	}
	return ""
}

// Calculations prints the written calculation behind every load, check, link and
// rule of a report, with the formulas in ASCII symbols. The error is that of w.
func Calculations(w io.Writer, r cover.Report) error {
	p := newPrinter(w)
	for _, d := range r.Loads.Derivations {
		p.lines("Load: "+d.Title, d.Lines)
	}
	for _, m := range r.Members {
		for _, c := range m.Checks {
			p.check(m.Mark+" "+m.Size+", "+c.Name+", "+c.Where+", "+c.Combination, c.Check)
			if o := c.Beside; o != nil {
				p.check(m.Mark+" "+m.Size+", "+c.Name+" by "+o.Method+", "+o.Where+", "+o.Combination, o.Check)
			}
		}
	}
	for _, l := range r.Links {
		for _, c := range l.Connector.Checks {
			p.check(l.Mark+", "+c.Name+", "+c.Where+", "+c.Combination, c.Check)
		}
		title := l.Mark + ", " + l.Name
		if unitOf(l) != "lb" {
			title += ", " + l.Per
		}
		p.check(title, l.Calculation)
	}
	for _, f := range r.Foundations {
		p.check(f.Post+", slab rule", f.SlabCalc)
		for _, c := range slices.Concat(f.Checks, f.Anchor) {
			p.check(f.Post+", "+c.Name+", "+c.Combination, c.Check)
		}
	}
	for _, l := range r.Lateral {
		p.lines("Sideways, "+l.Direction, l.Lines)
		for _, s := range l.Path {
			for _, c := range s.Checks {
				p.check("Sideways, "+l.Direction+", "+s.Part+", "+c.Combination, c.Check)
			}
		}
	}
	p.check("Headroom", r.Headroom.Check)
	for _, t := range r.Existing {
		p.lines("Existing roof, "+t.Where, t.Lines)
	}
	p.surveyCalculations(r.Survey)
	if len(r.Drainage.Lines) > 0 {
		p.lines("Reach of driven rain", r.Drainage.Lines)
	}
	if r.Drainage.Check != nil {
		p.check("Least slope of the covering", *r.Drainage.Check)
	}
	return p.close()
}

func (p *printer) lines(title string, lines []calc.Line) {
	if len(lines) == 0 {
		return
	}
	p.head(title)
	for _, l := range lines {
		formula := "given"
		if l.Formula != "" {
			formula = "= " + l.Formula
		}
		p.row(l.Symbol, formula, "= "+number(l.X, l.Unit), l.Unit, l.Source+statusNote(l.Status))
	}
}

func (p *printer) check(title string, c calc.Check) {
	if len(c.Lines) == 0 {
		return
	}
	p.lines(title, c.Lines)
	sign := " <= "
	if c.Ratio() > 1 {
		sign = " > "
	}
	demand, capacity := compared(c.Demand, c.Capacity, c.Unit)
	p.say("  " + c.DemandSymbol + " = " + demand + sign + c.CapacitySymbol + " = " + capacity + " " + c.Unit +
		"; ratio " + ratio(cover.Ratio(c.Ratio())))
}
