package drawing

import (
	"fmt"
	"math"
	"strconv"

	"patiocover/cover"
)

// Paper around the plan of an old roof, in points.
const (
	roofMargin = 26.0  // to either side
	roofTop    = 30.0  // above, for the words of the far wall
	roofTall   = 250.0 // most that the roof takes down the paper
	jointSize  = 9.0   // of the sign of a joint
	jointRow   = 27.0  // from one row of signs to the next, where a wall has many
	mostInRow  = 9     // signs side by side
	leastRow   = 250.0 // length of a row of signs
)

// An oldRoofSheet is the plan of an existing roof while it is drawn.
type oldRoofSheet struct {
	canvas
	x            *cover.Survey
	length, deep float64 // ft along the wall and across it, with the overhangs
}

// OldRoof draws the existing roof from above: its walls and interior lines, the zones of
// the wind, and each joint or run with a sign and a word: a disk for tied, a crossed
// square for a tie that is needed, a triangle for one to open up, a ring for one that is
// not judged. Along a wall the signs stand in the order of the survey, not to scale.
func OldRoof(x cover.Survey) Scene {
	p := &oldRoofSheet{x: &x, length: x.Roof.Length, deep: x.Roof.Span + 2*x.Roof.Overhang}
	if p.deep == 0 {
		p.deep = 20 // ft, a roof whose size is not known is drawn as a blank of this depth
	}
	if p.length == 0 {
		p.length = 1.6 * p.deep
	}
	p.scale = fitting(p.length, p.deep, sheetWidth-2*roofMargin, roofTall)
	if room := sheetWidth - 2*roofMargin; p.length*p.scale.foot > room {
		p.scale = scale{words: "to fit", foot: room / p.length}
	}
	pad := max(0, p.rows()*jointRow-p.deep*p.scale.foot) // for signs that stand beyond a small roof
	p.Title, p.Width = "Plan of the old roof", sheetWidth
	p.Description = oldRoofDescription(&x)
	spare := sheetWidth - 2*roofMargin - p.length*p.scale.foot
	p.origin = Point{roofMargin + spare/2, roofTop + pad}
	p.walls()
	p.zones()
	for _, place := range []string{"far_wall", "ridge", "interior", "eave"} {
		p.joints(place)
	}
	p.title("OLD ROOF", p.legend(p.at(0, p.deep).Y+28+pad)+6)
	return p.Scene
}

// oldRoofDescription says in a sentence what is drawn.
func oldRoofDescription(x *cover.Survey) string {
	n := map[cover.Verdict]int{}
	for _, j := range x.Joints {
		n[j.Verdict] += j.Count
	}
	return fmt.Sprintf("Plan of the existing roof with its joints: %d tied, %d need a tie, %d to open up, %d not judged.",
		n[cover.OK], n[cover.Over], n[cover.OpenUp], n[cover.NotChecked])
}

// rows is how many rows of signs the fullest place takes.
func (p *oldRoofSheet) rows() float64 {
	n, most := map[string]int{}, 0
	for i := range p.x.Joints {
		n[p.x.Joints[i].Place]++
		most = max(most, n[p.x.Joints[i].Place])
	}
	return math.Ceil(float64(most) / mostInRow)
}

// walls draws the edge of the roof, the walls below it and the interior lines.
func (p *oldRoofSheet) walls() {
	r := &p.x.Roof
	p.bar(existing, p.at(0, 0), p.at(p.length, p.deep))
	for _, y := range []float64{r.Overhang, p.deep - r.Overhang} {
		p.line(hidden, p.at(0, y), p.at(p.length, y))
	}
	for _, x := range r.Lines { // measured from the wall nearby, which is drawn below
		y := p.deep - r.Overhang - x
		p.line(cutting, p.at(0, y), p.at(p.length, y))
	}
	p.set(plain, "FAR WALL", p.at(p.length/2, 0).plus(0, -9), false)
	p.set(plain, "WALL NEARBY (COVER)", p.at(p.length/2, p.deep).plus(0, 11), false)
}

// zones draws the strips along the edges and the corners.
func (p *oldRoofSheet) zones() {
	r := &p.x.Roof
	if !r.Zoned || 2*r.Edge >= min(p.length, p.deep) {
		return
	}
	e := r.Edge
	p.shape(levelLine, p.at(e, e), p.at(p.length-e, e), p.at(p.length-e, p.deep-e), p.at(e, p.deep-e))
	c := min(r.Corner, p.length/2, p.deep/2)
	for _, at := range [][2]float64{{0, 0}, {1, 0}, {0, 1}, {1, 1}} {
		x, y := at[0]*p.length, at[1]*p.deep
		dx, dy := c*(1-2*at[0]), c*(1-2*at[1])
		p.line(thin, p.at(x+dx, y), p.at(x+dx, y+dy), p.at(x, y+dy))
	}
}

// row is the place of the joints of a place across the roof, ft from its far edge.
func (p *oldRoofSheet) row(place string) float64 {
	r := &p.x.Roof
	switch place {
	case "far_wall":
		return r.Overhang
	case "ridge":
		return p.deep / 2
	case "interior":
		if len(r.Lines) > 0 {
			return p.deep - r.Overhang - r.Lines[0]
		}
		return p.deep / 2
	}
	return p.deep - r.Overhang
}

// joints draws the joints of one place, spread along the wall in rows toward the middle.
func (p *oldRoofSheet) joints(place string) {
	var all []*cover.SurveyJoint
	for i := range p.x.Joints {
		if p.x.Joints[i].Place == place {
			all = append(all, &p.x.Joints[i])
		}
	}
	inward := -1.0
	if place == "far_wall" {
		inward = 1
	}
	for i, j := range all {
		inRow := min(mostInRow, len(all)-i/mostInRow*mostInRow)
		letters := 4 + mostInRow - inRow             // fewer where the signs stand close
		wide := max(p.length*p.scale.foot, leastRow) // a short wall is no reason to crowd the signs
		x := wide * ((float64(i%mostInRow)+0.5)/float64(inRow) - 0.5)
		p.joint(j, p.at(p.length/2, p.row(place)).plus(x, inward*jointRow*float64(i/mostInRow)), letters, inward)
	}
}

// joint draws the sign of one joint with its mark in a number of letters, and how many it
// stands for, on the inward side: 1 down the paper, −1 up.
func (p *oldRoofSheet) joint(j *cover.SurveyJoint, at Point, letters int, inward float64) {
	p.sign(j.Verdict, at)
	words := j.Mark
	if r := []rune(words); len(r) > letters {
		words = string(r[:letters-1]) + "…"
	}
	if j.Count > 1 {
		words += " ×" + strconv.Itoa(j.Count)
	}
	p.set(backed, words, at.plus(0, inward*(jointSize+3)), false)
}

// sign draws the shape of a verdict about a point.
func (p *oldRoofSheet) sign(v cover.Verdict, at Point) {
	const half = jointSize / 2
	ring := Pen{Fill: Paper, Stroke: Black, Width: 1.1}
	switch v {
	case cover.OK:
		p.disk(ink, at, half)
	case cover.Over:
		b := p.bar(ring, at.plus(-half, -half), at.plus(half, half))
		c := b.corners()
		p.line(bold, c[0], c[2])
		p.line(bold, c[1], c[3])
	case cover.OpenUp:
		p.shape(ring, at.plus(0, -half-1), at.plus(half+1, half), at.plus(-half-1, half))
	default:
		p.disk(ring, at, half)
	}
}

// legend says what the signs mean, from the height top, and returns where it ends, pt.
func (p *oldRoofSheet) legend(top float64) float64 {
	for i, s := range []struct {
		verdict cover.Verdict
		words   string
	}{
		{cover.OK, "tied: it holds"}, {cover.Over, "tie needed"},
		{cover.OpenUp, "open up"}, {cover.NotChecked, "not judged"},
	} {
		at := Point{18 + sheetWidth/4*float64(i), top}
		p.sign(s.verdict, at)
		p.left(plain, s.words, at.plus(9, 0))
	}
	p.left(plain, "×3: a run of three. Dashed: walls and edge zones.", Point{14, top + 15})
	p.left(plain, "Along a wall the signs stand in the order of the survey.", Point{14, top + 27})
	return top + 36
}
