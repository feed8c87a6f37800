package cover

import (
	"fmt"
	"slices"

	"patiocover/calc"
	"patiocover/connections"
)

// summary turns the report and the loads that are open into sentences, the worst first.
func (r *Report) summary(open []Skip) []Finding {
	var out []Finding
	say := func(v Verdict, mark, format string, args ...any) {
		out = append(out, Finding{Verdict: v, Mark: mark, Text: fmt.Sprintf(format, args...)})
	}
	for _, m := range r.Members {
		say(m.Verdict, m.Mark, "%s %s %s %s: %s governs at ratio %s", m.Name, m.Size, m.Species, m.Grade, m.Governs, ratioText(m.Ratio))
	}
	if r.Deck.Weight == 0 {
		say(r.Deck.Verdict, "", "roof deck: %s", r.Deck.Reason)
	}
	if r.Headroom.Verdict != OK {
		say(r.Headroom.Verdict, "", "headroom %s below the lowest member; %s is asked for",
			calc.FeetInches(r.Headroom.Clear), calc.FeetInches(r.Headroom.Required))
	}
	if top, eave, over := r.aboveEave(); over {
		say(Over, "", "the top of the rafters at %s is above the underside of the eave at %s: the cover does not fit below it",
			calc.FeetInches(top*calc.Ft), calc.FeetInches(eave*calc.Ft))
	}
	if r.Drainage.Verdict != OK {
		say(r.Drainage.Verdict, "", "drainage: %s", r.Drainage.Reason)
	}
	for _, s := range open {
		say(NotChecked, "", "%s: %s", s.What, s.Why)
	}
	for _, w := range r.Lateral {
		say(w.Verdict, "", "%s: %s", w.Direction, w.Reason)
	}
	r.sayLinks(say)
	r.sayGround(say)
	r.saySurvey(say)
	slices.SortStableFunc(out, func(a, b Finding) int { return rank[b.Verdict] - rank[a.Verdict] })
	return out
}

// aboveEave reports whether a cover at the house would stand above the underside of
// the eave that was given, with both heights above the slab, ft.
func (r *Report) aboveEave() (top, eave float64, over bool) {
	if r.Input.House.Eave == nil || r.Input.Cover.Attachment == nil || *r.Input.Cover.Attachment == "freestanding" {
		return 0, 0, false
	}
	top, eave = *r.Input.Cover.HighEdge, *r.Input.House.Eave
	return top, eave, top > eave
}

// sayLinks says of every link that is not OK why, and how many are.
func (r *Report) sayLinks(say func(Verdict, string, string, ...any)) {
	held, all := 0, 0
	for _, l := range r.Links {
		if l.Name == connections.BaseToGround.String() || l.Name == connections.Ground.String() {
			continue // said with the foundations
		}
		all++
		if l.Verdict == OK {
			held++
			continue
		}
		say(l.Verdict, l.Mark, "%s: %s", l.Name, l.Reason)
	}
	if held > 0 {
		say(OK, "", "%d of %d connections above the ground hold, by fasteners that are checked or by ratings "+
			"that are asked for of what is bought", held, all)
	}
}

// sayGround says how many posts stand on what, each verdict once with the worst post.
func (r *Report) sayGround(say func(Verdict, string, string, ...any)) {
	for _, v := range []Verdict{Over, OpenUp, NotChecked, OK} {
		var ground, anchors []FoundationAt
		for _, f := range r.Foundations {
			if f.Verdict == v {
				ground = append(ground, f)
			}
			if f.AnchorVerdict == v {
				anchors = append(anchors, f)
			}
		}
		if n := len(ground); n > 0 {
			f := worstGround(ground)
			say(v, f.Post, "%s of %d of %d posts, worst at %s: %s", groundWords[f.Kind], n, len(r.Foundations), f.Post, f.Reason)
		}
		if n := len(anchors); n > 0 {
			f := worstAnchor(anchors)
			say(v, f.Post, "anchors of %d of %d posts, worst at %s: %s", n, len(r.Foundations), f.Post, f.AnchorReason)
		}
	}
}

// groundWords name what posts stand on.
var groundWords = map[string]string{"slab": "slab", "footing": "footings", "pier": "piers", "embedded": "embedment"}

// ratioText writes a ratio to two digits, never rounding one above 1 down to it.
func ratioText(r Ratio) string {
	x := float64(r)
	if x > 1e6 {
		return "beyond any limit"
	}
	return fmt.Sprintf("%.2f", calc.RoundUp(x, 0.01))
}
