package cover

import (
	"fmt"
	"math"
	"strconv"

	"patiocover/calc"
)

// maxLines is the most beam lines of a cover.
const maxLines = 6

// sameLine is how far a beam line may stand from where another field puts it, ft: an
// eighth of an inch, no more than a rounding to hundredths.
const sameLine = 0.01

// checkBeamLines checks the lines that were given: how many, in order, and where the
// projection and the overhang put the last one.
func (in Input) checkBeamLines(f *calc.Fields) {
	c, lines := in.Cover, in.Beams.Lines
	if len(lines) == 0 {
		in.checkDefaultLines(f)
		return
	}
	least := 1
	if is(c.Attachment, "freestanding") {
		least = 2
	}
	at := f.In("beams")
	if len(lines) < least || len(lines) > maxLines {
		at.Add("lines_ft", strconv.Itoa(len(lines))+" lines", fmt.Sprintf("%d to %d beam lines", least, maxLines))
	}
	if least == 1 && lines[0] < 1 {
		at.Add("lines_ft", calc.Number(lines[0])+" ft", "1 ft or more from the wall")
	}
	last := lines[len(lines)-1]
	if given(c.Projection, c.Overhang) && !(math.Abs(last-(*c.Projection-*c.Overhang)) <= sameLine) {
		at.Add("lines_ft", "last line at "+calc.Number(last)+" ft",
			fmt.Sprintf("ending at projection less overhang, %s ft", calc.Number(*c.Projection-*c.Overhang)))
	}
	for i := 1; i < len(lines); i++ {
		if !(lines[i]-lines[i-1] >= 1) {
			at.Add("lines_ft", shown(lines), "beam lines 1 ft or more apart")
			break
		}
	}
}

// checkDefaultLines refuses an overhang that leaves no room between the two lines of a
// freestanding cover, or before the one of an attached cover.
func (in Input) checkDefaultLines(f *calc.Fields) {
	c := in.Cover
	if c.Attachment == nil || !given(c.Projection, c.Overhang) || !(*c.Overhang <= *c.Projection/2) {
		return // has a fault of its own
	}
	lines := in.defaultLines()
	from := 0.0
	if len(lines) > 1 {
		from = lines[0]
	}
	if !(lines[len(lines)-1]-from >= 1) {
		f.Add("cover.overhang_ft", calc.Number(*c.Overhang)+" ft",
			"small enough that 1 ft or more lies between the supports of the rafters")
	}
}

// checkFlush refuses rafters that would have to pass through a beam: those that hang in
// its face end there, so that they cannot reach beyond it nor span on over it.
func (in Input) checkFlush(f *calc.Fields) {
	if !is(in.Beams.Position, "flush") {
		return
	}
	if o := in.Cover.Overhang; o != nil && *o > 0 {
		f.Add("cover.overhang_ft", calc.Number(*o)+" ft beyond a flush beam",
			"0 ft, or dropped beams that the rafters run over: in the face of a beam they end")
	}
	ends := 1
	if is(in.Cover.Attachment, "freestanding") {
		ends = 2
	}
	if n := len(in.Beams.Lines); n > ends || n == 2 && ends == 2 && in.Beams.Lines[0] > 0 {
		f.Add("beams.lines_ft", shown(in.Beams.Lines)+" with flush beams",
			"no line but those at the ends of the rafters, or dropped beams that the rafters run over")
	}
}

// checkCuts refuses cuts and bolts where the members do not meet that way.
func (in Input) checkCuts(f *calc.Fields) {
	if c := in.Rafters.SeatCut; c != nil && *c > 0 && is(in.Beams.Position, "flush") {
		f.Add("rafters.seat_cut_in", calc.Number(*c)+" in with flush beams", "left out: in the face of a beam the rafters hang")
	}
	b, aside := in.Beams, is(in.Beams.OnPost, "side_bolted")
	if b.Notch != nil && *b.Notch > 0 && aside {
		f.Add("beams.notch_in", calc.Number(*b.Notch)+" in in beams at the side of their posts", "left out, or beams.on_post seated")
	}
	for _, bolt := range []struct {
		path string
		at   *float64
	}{{"beams.bolt_low_in", b.BoltLow}, {"beams.bolt_high_in", b.BoltHigh}} {
		if bolt.at != nil && !aside {
			f.Add(bolt.path, calc.Number(*bolt.at)+" in", "left out, or beams.on_post side_bolted")
		}
	}
	if given(b.BoltLow, b.BoltHigh) && *b.BoltLow > *b.BoltHigh {
		f.Add("beams.bolt_high_in", calc.Number(*b.BoltHigh)+" in", "at least beams.bolt_low_in, "+calc.Number(*b.BoltLow)+" in")
	}
}

// checkPosts wants the posts by number or by place, not both, and within the width.
func (in Input) checkPosts(f *calc.Fields) {
	p, width := in.Posts, in.Cover.Width
	at := f.In("posts")
	switch {
	case p.Count == nil && len(p.Positions) == 0:
		at.Missing("count", "posts per beam line, or posts.positions_ft instead")
	case p.Count != nil && len(p.Positions) > 0:
		at.Add("count", "given together with positions_ft", "one of the two")
	case len(p.Positions) == 1:
		at.Add("positions_ft", "1 post", "2 posts or more")
	}
	if width == nil || len(p.Positions) > MaxList {
		return
	}
	for i, x := range p.Positions {
		if !(x <= *width) {
			at.Add(fmt.Sprintf("positions_ft[%d]", i), calc.Number(x)+" ft", "within the width, 0 to "+calc.Number(*width)+" ft")
		}
		if i > 0 && !(x-p.Positions[i-1] >= 1) {
			at.Add(fmt.Sprintf("positions_ft[%d]", i), calc.Number(x)+" ft", "1 ft or more from the post before")
		}
	}
	if p.EndInset != nil && !(*p.EndInset <= *width/3) {
		at.Add("end_inset_ft", calc.Number(*p.EndInset)+" ft", "at most a third of the width")
	}
}
