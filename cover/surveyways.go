package cover

import (
	"errors"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// tailDepth is the dressed depth of the tails, in.
func tailDepth(o OldRoof) (depth float64, ok bool) {
	if o.TailSize == nil {
		return 0, false
	}
	section, err := lumber.SectionNamed(*o.TailSize)
	return section.Depth, err == nil
}

// Heights of the other ways to hold a cover, ft.
const (
	belowSoffit = 0.0 // top of the rafters below the underside of the eave
	aboveRoof   = 1.0 // high edge of a raised cover above the edge of the house roof
	besideWall  = 1.0 // post line out from the wall
)

// alternatives sizes the cover held in other ways than by the tails: on the wall below
// the eave, on a post line of its own beside the wall, and raised above the roof.
func (s *surveying) alternatives() []Alternative {
	h := s.said.House
	low := *s.said.Cover.HighEdge
	if h.Eave != nil {
		low = min(low, *h.Eave-belowSoffit)
	}
	wall := s.said
	wall.Cover.Attachment, wall.Cover.HighEdge = new("ledger"), &low
	beside := standalone(s.said)
	beside.Cover.HighEdge = &low
	raised := standalone(s.said)
	out := []Alternative{
		sized("ledger on the wall below the eave", wall),
		sized("post line of its own beside the wall, below the eave", beside),
	}
	if h.RoofEdge == nil {
		return append(out, Alternative{
			Name: "raised above the house roof on posts", Verdict: NotChecked,
			Reason: "the edge of the house roof above the slab is not given",
		})
	}
	raised.Cover.HighEdge = new(*h.RoofEdge + aboveRoof)
	return append(out, sized("raised above the house roof on posts", raised))
}

// standalone turns a cover on the house into one on two beam lines, braced by itself.
func standalone(in Input) Input {
	in = in.clone()
	in.Cover.Attachment = new("freestanding")
	in.Lateral = Lateral{Along: new("knee_braces"), Out: new("knee_braces")}
	outer := *in.Cover.Projection - *in.Cover.Overhang
	lines := []float64{besideWall}
	for _, y := range in.Beams.Lines {
		if y > besideWall+1 && y < outer-1 {
			lines = append(lines, y)
		}
	}
	in.Beams.Lines = append(lines, outer)
	return in
}

// sized sizes a changed cover and says what came out.
func sized(name string, in Input) Alternative {
	out := Alternative{Name: name, Verdict: NotChecked}
	r, err := Size(in)
	var wrong *calc.InputError
	if errors.As(err, &wrong) {
		out.Reason = "not possible: " + wrong.Error()
		return out
	}
	if err != nil {
		out.Reason = "it could not be sized"
		return out
	}
	out.Possible, out.Verdict = true, r.Headroom.Verdict
	out.Headroom, out.Required = &r.Headroom.Clear, &r.Headroom.Required
	for _, m := range r.Members {
		out.Verdict = out.Verdict.Worse(m.Verdict)
		switch m.Name {
		case "rafter":
			out.Rafters = m.Size
		case "beam":
			out.Beams = m.Size
		}
	}
	for _, l := range r.Geometry.Lines {
		out.Posts += len(l.Posts)
	}
	out.Reason = "members and headroom " + string(out.Verdict) + ", the whole report " + string(r.Verdict)
	return out
}
