package cover_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"patiocover/cover"
)

// chosen is the input with every size that the report chose given in it.
func chosen(in cover.Input, r cover.Report) cover.Input {
	for _, m := range r.Members {
		switch m.Name {
		case "rafter":
			in.Rafters.Size = new(m.Size)
		case "beam":
			in.Beams.Size = new(m.Size)
		case "post":
			in.Posts.Size = new(m.Size)
		case "knee brace":
			in.Lateral.BraceSize = new(m.Size)
		case "edge rafter":
		case "deck panel":
			in.Deck.Rating = new(m.Size)
		default:
			in.Deck.Size = new(m.Size)
		}
	}
	return in
}

// What was chosen passes when it is given, with the same ratios: choosing and checking are
// one thing.
func TestWhatWasChosenPassesWhenGiven(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in, before := holding(t)
		after := answer(t, chosen(in, before))
		if len(after.Members) != len(before.Members) || after.Verdict != before.Verdict {
			t.Fatalf("%d members and %s, given %d and %s", len(before.Members), before.Verdict, len(after.Members), after.Verdict)
		}
		for i, m := range before.Members {
			n := after.Members[i]
			if n.Size != m.Size || n.Verdict != m.Verdict || math.Abs(float64(n.Ratio-m.Ratio)) > slack {
				t.Fatalf("%s %s %s %v, given %s %s %v", m.Mark, m.Size, m.Verdict, m.Ratio, n.Size, n.Verdict, n.Ratio)
			}
		}
		for i, l := range before.Links {
			if n := after.Links[i]; n.Rating != l.Rating || n.Verdict != l.Verdict {
				t.Fatalf("%s %s %v lb, given %s %v lb", l.Mark, l.Verdict, l.Rating, n.Verdict, n.Rating)
			}
		}
	})
}

// A stronger grade of the same species, of equal weight, never makes the chosen rafter the
// larger one: none of its design values is smaller (NDS Supplement 2018 Tables 4A and 4B).
func TestStrongerGradeIsNeverLarger(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := mildCover(t)
		in.Rafters.Species = new(word(t, "species", "Douglas Fir-Larch", "Hem-Fir", "Spruce-Pine-Fir", "Southern Pine"))
		area := math.Inf(1)
		for _, grade := range []string{"No.2", "No.1", "Select Structural"} {
			if *in.Rafters.Species == "Spruce-Pine-Fir" && grade == "No.1" {
				continue // one row of the table is for both
			}
			in.Rafters.Grade = &grade
			g := answer(t, in).Geometry
			now := g.RafterDepth * g.RafterWidth
			if now > area {
				t.Fatalf("%s: %s, the weaker grade %v in²", grade, g.RafterSize, area)
			}
			area = now
		}
	})
}

// The take-off has every piece of the design once: the lengths of each part by the geometry
// of the report, of the sticks by what is cut from them, and no stick gives more than it has.
func TestTakeOffIsTheDesign(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in, r := holding(t)
		got := map[string]float64{}
		for _, p := range r.TakeOff.Pieces {
			got[p.Mark] += float64(p.Count) * p.Length
		}
		for mark, want := range partLengths(in, r) {
			more := got[mark] - want
			if mark == "R1" && is(in.Lateral.Out, "knee_braces") { // one or two more beside the rafter at each post
				beside := want / float64(len(r.Geometry.Rafters)) * float64(len(r.Geometry.Lines[0].Posts))
				more = min(more, math.Abs(more-beside), math.Abs(more-2*beside))
			}
			if mark == "P" && more > 0 { // posts are cut on the long side: half of the seat cut over the widest beam
				more = max(0, more-float64(len(r.Foundations))*8.75/12*r.Geometry.Slope/12/2)
			}
			if math.Abs(more) > 1e-6*(1+want) {
				t.Fatalf("%s: %v ft in the take-off, %v ft in the design", mark, got[mark], want)
			}
			delete(got, mark)
		}
		for mark, ft := range got {
			if mark != "DK1" {
				t.Fatalf("%s: %v ft in the take-off, not in the design", mark, ft)
			}
		}
		for _, w := range r.TakeOff.Wood {
			cutsHold(t, r, w)
		}
	})
}

// is reports whether a word was said.
func is(said *string, word string) bool { return said != nil && *said == word }

// partLengths sums up the lengths of each part of the design in ft, from the drawing: a
// rafter is as long as its slope and both plumb cuts, a post as high as from the slab,
// which falls, or from the bottom of the footing that it is set in, to its beam.
func partLengths(in cover.Input, r cover.Report) map[string]float64 {
	g := r.Geometry
	plies := 1.0
	if in.Beams.Plies != nil {
		plies = float64(*in.Beams.Plies)
	}
	out := map[string]float64{}
	slope := math.Hypot(1, g.Slope/12)
	out["R1"] = float64(len(g.Rafters)) * (g.Projection*slope + g.RafterDepth/12*g.Slope/12)
	if g.Attachment == "ledger" {
		out["ledger"] = g.Width
	}
	fall := 0.0
	if in.Cover.SlabFall != nil {
		fall = *in.Cover.SlabFall
	}
	for _, l := range g.Lines {
		out[l.Mark] = g.Width * plies
		out["P"] += float64(len(l.Posts)) * (l.Bottom + fall/12*l.Y)
	}
	for _, f := range r.Foundations {
		if f.Kind == "embedded" {
			out["P"] += f.Depth / 12
		}
	}
	for _, m := range r.Members {
		if m.Name == "knee brace" {
			out["K"] = float64(m.Count) * m.Length
		}
	}
	return out
}

// cutsHold fails unless every piece of the item comes out of its sticks once, and every
// stick holds its pieces and a saw cut between each two.
func cutsHold(t *rapid.T, r cover.Report, w cover.WoodLine) {
	var need, cut []float64
	for _, p := range r.TakeOff.Pieces {
		if p.Item == w.Item {
			need = append(need, slices.Repeat([]float64{p.Length}, p.Count)...)
		}
	}
	for _, c := range w.Cuts {
		length := float64(len(c.Pieces)-1) * 0.125 / 12
		for _, ft := range c.Pieces {
			length += ft
			cut = append(cut, slices.Repeat([]float64{ft}, c.Count)...)
		}
		if length > c.Stick+1e-9 {
			t.Fatalf("%s: %v ft are cut from %v ft", w.Item, length, c.Stick)
		}
	}
	slices.Sort(need)
	slices.Sort(cut)
	for _, ft := range w.TooLong {
		need = slices.DeleteFunc(need, func(x float64) bool { return math.Abs(x-ft) < 1e-6 })
	}
	if !slices.EqualFunc(need, cut, func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }) {
		t.Fatalf("%s: needed %v, cut %v", w.Item, need, cut)
	}
}

// The footings that were chosen hold when they are given, with their bolts, and with the same
// ratios, whatever holds the cover and whatever it stands on.
func TestFootingsHoldWhenGiven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in, before := holding(t)
		if before.Footings == nil || !before.Footings.OneSize {
			t.Skip("no footing was chosen")
		}
		f := before.Foundations[0]
		kept := chosen(in, before)
		kept.Foundation.Width, kept.Foundation.Depth = &f.Width, &f.Depth
		if f.Neck > 0 {
			kept.Foundation.Neck, kept.Foundation.PadThickness = &f.Neck, &f.Pad
		}
		if f.AnchorChosen {
			kept.Foundation.AnchorKind, kept.Foundation.AnchorDiameter = new("headed"), &f.AnchorDiameter
			kept.Foundation.AnchorEmbedment = &f.AnchorDepth
		}
		after := answer(t, kept)
		for i, f := range before.Foundations {
			g := after.Foundations[i]
			if g.Verdict != f.Verdict || g.AnchorVerdict != f.AnchorVerdict || math.Abs(float64(g.Ratio-f.Ratio)) > slack {
				t.Fatalf("%s %s %s %v, anchor %s; given %s %v, anchor %s: %s; %s", f.Post, f.Size, f.Verdict, f.Ratio, f.AnchorVerdict,
					g.Verdict, g.Ratio, g.AnchorVerdict, g.Reason, g.AnchorReason)
			}
		}
	})
}
