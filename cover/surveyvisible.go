package cover

import (
	"fmt"
	"strings"
)

// visible lists what must stay open until an inspector has seen it.
func (s *surveying) visible() {
	add := func(what, stage, why string) {
		s.out.Visible = append(s.out.Visible, VisibleItem{What: what, Stage: stage, Why: why})
	}
	for i := range s.out.Joints {
		j := &s.out.Joints[i]
		at := "joint " + j.Mark + " (" + j.Where + ")"
		switch j.Verdict {
		case Over:
			add(at, "framing, before soffit or ceiling closes it", "the new tie, every hole filled with the listed nail")
		case OpenUp:
			add(at, "survey, before anything is built", "what holds it: "+j.Basis)
		}
	}
	for i := range s.out.Opening {
		if o := &s.out.Opening[i]; o.More > 0 {
			add(fmt.Sprintf("%d more of %d joints, %s", o.More, o.Total, strings.TrimSpace(o.Wall+" "+placeNames[o.Place]+" "+o.Zone)),
				"survey, before anything is built", "the least that lets the rest be judged")
		}
	}
	for i := range s.out.Below {
		if b := &s.out.Below[i]; b.Verdict != OK {
			add(b.Link+" of line "+b.Line, "framing, before soffit or ceiling closes it", b.Reason)
		}
	}
	if t := s.out.Tails; t != nil {
		add("rafter tails with their seat cuts and heels", "survey, and framing before the soffit closes it", t.Reason)
	}
}

// skips lists what the survey leaves open, for the list of the report.
func (x *Survey) skips() []Skip {
	if x == nil {
		return nil
	}
	var out []Skip
	for i := range x.Joints {
		if j := &x.Joints[i]; j.Verdict == NotChecked || j.Verdict == OpenUp {
			out = append(out, Skip{What: "existing joint " + j.Mark, Why: j.Reason})
		}
	}
	if t := x.Tails; t != nil && (t.Verdict == NotChecked || t.Verdict == OpenUp) {
		out = append(out, Skip{What: "existing rafter tails", Why: t.Reason})
	}
	if len(x.Joints) > 0 {
		out = append(out, oldSideways)
	}
	return out
}

// oldSideways is what every survey of joints leaves out.
var oldSideways = Skip{
	What: "sideways force on the old ties", Why: "what the wind and the earthquake push along the wall is not taken to them",
}
