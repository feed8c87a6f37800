package cover

import (
	"fmt"
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// usualDrop is how far below the beam a knee brace meets its post where the bays leave
// room for it, in (common practice).
const usualDrop = 2 * calc.Ft

// lowestJoint is the part of the post height, about, that a brace may reach down, ratio:
// beyond it there is no head room and little post left.
const lowestJoint = 0.5

// kneed reports whether knee braces hold either direction.
func (l Lateral) kneed() bool { return is(l.Along, "knee_braces") || is(l.Out, "knee_braces") }

// dropRoom is the largest drop of the braces that bays and posts leave, in; it takes a
// filled input but for the drop.
func (in Input) dropRoom() float64 {
	p := newPlan(in)
	lean := math.Tan(*in.Lateral.BraceAngle * math.Pi / 180)
	post := max(0, p.topAt(p.projection)-aboutDepth)
	return min(p.braceRoom(in.Lateral)*lean, lowestJoint*post)
}

// assumeBraces chooses the drop of knee braces that was left open.
func (in *Input) assumeBraces(note func(path, value, why string)) {
	if !in.Lateral.kneed() || in.Lateral.BraceDrop != nil {
		return
	}
	drop, why := usualDrop, "Two feet below the beam, as most braces are cut"
	if room := in.dropRoom(); room < drop {
		drop, why = calc.RoundDown(room, calc.In), "The longest brace that fits between the posts and below the roof"
	}
	in.Lateral.BraceDrop = new(drop / calc.Ft)
	note("lateral.brace_drop_ft", calc.Number(calc.RoundDown(drop/calc.Ft, 0.01)), why)
}

// checkBraces checks the shape of the braces, their wood, and what is said of the house
// that holds the cover.
func (in Input) checkBraces(f *calc.Fields) {
	l := in.Lateral
	if (l.HouseCapacity == nil) != (l.HouseSource == nil) {
		f.Missing("lateral.house_source", "house_capacity_lb together with house_source, the design that it is from")
	}
	if l.BraceSize != nil {
		checkWood("lateral", in.Posts.Species, in.Posts.Grade, nil, braceSizes, f)
		if _, err := lumber.SectionNamed(*l.BraceSize); err != nil {
			f.Add("lateral.brace_size", fmt.Sprintf("%q", *l.BraceSize), "a nominal size such as "+braceSizes[0])
		}
	}
	if !l.kneed() || l.BraceDrop == nil || f.Err() != nil {
		return
	}
	full, _ := in.Assume()
	if room := full.dropRoom(); !(*l.BraceDrop*calc.Ft <= room*(1+tiny)) {
		f.Add("lateral.brace_drop_ft", calc.Number(*l.BraceDrop)+" ft",
			fmt.Sprintf("%.2f ft or less: so much the bays and the height leave", calc.RoundDown(room/calc.Ft, 0.01)))
	}
}
