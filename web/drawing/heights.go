package drawing

import (
	"fmt"
	"math"

	"patiocover/calc"
	"patiocover/cover"
)

// strings draws the heights and the distances, and returns the paper that they end
// at, pt.
func (s *sectionSheet) strings() float64 {
	g := s.g
	s.dimensions(strand{
		stops: []float64{0, g.HighEdge}, edge: s.start, offset: -14, upright: true,
		words: feetInches(g.HighEdge) + " TOP OF RAFTERS",
	})
	floor := s.floor(g.Projection)
	s.dimensions(strand{
		stops: []float64{floor, g.LowEdge}, edge: g.Projection, offset: 34, upright: true,
		words: feetInches(g.LowEdge-floor) + " TOP AT EDGE",
	})
	out := []float64{0}
	for _, l := range g.Lines {
		out = append(out, l.Y)
	}
	reach := s.chained(strand{stops: append(out, g.Projection), edge: -s.below, offset: sectionFoot + 10})
	return s.at(0, -s.below).Y + reach
}

// headroom draws the clear height below the lowest member.
func (s *sectionSheet) headroom() {
	y := ft(quoted(s.report.Headroom.Check.Lines, "y"))
	floor := s.floor(y)
	lowest := floor + ft(s.report.Headroom.Clear)
	x := s.at(y, 0).X - 26
	for _, l := range s.g.Lines { // clear of every post
		if face := s.at(l.Y, 0).X; math.Abs(face-x) < 16 {
			x = face - 26
		}
	}
	top, end := Point{x, s.at(0, lowest).Y}, Point{x, s.at(0, floor).Y}
	s.line(levelLine, s.at(y, lowest), top.plus(-5, 0))
	s.line(thin, top, end)
	for _, p := range []Point{top, end} {
		s.line(bold, p.plus(-tickHalf, tickHalf), p.plus(tickHalf, -tickHalf))
	}
	s.solid = append(s.solid, spanning(top, end).grow(2))
	asked := calc.FeetInches(s.report.Headroom.Required) + " ASKED"
	if v := s.report.Headroom.Verdict; v != cover.OK {
		asked += ": " + string(v)
	}
	s.beside(top, end, clearWords(s.report)+" CLEAR", asked)
}

// beside writes two rows left of an upright line where they are free, else turned
// along it.
func (s *sectionSheet) beside(top, end Point, first, second string) {
	wide := max(backed.width(first), backed.width(second))
	for _, part := range []float64{0.45, 0.55, 0.35, 0.65, 0.25, 0.75} {
		at := Point{top.X - 6, top.Y + part*(end.Y-top.Y)}
		if s.free(around(at.plus(-wide/2, 0), wide, 2*tier+2), at, hint{}) {
			s.right(backed, first, at.plus(0, -tier/2))
			s.right(backed, second, at.plus(0, tier/2+1))
			return
		}
	}
	for _, words := range []string{first, second} {
		s.turned(words, Point{top.X, (top.Y + end.Y) / 2})
	}
}

// turned writes words along an upright line: on it, or beside it where that is
// taken, or nowhere.
func (s *sectionSheet) turned(words string, middle Point) {
	for _, off := range []float64{0, -tier - 2, tier + 2} {
		at := middle.plus(off, 0)
		if b := backed.room(words, at, true); !b.meetsAny(s.words) && b.within(s.field) {
			s.set(backed, words, at, true)
			return
		}
	}
}

// slope draws the triangle of the slope over the roof: 12 along, the fall upright.
func (s *sectionSheet) slope() {
	const along = 26.0 // pt
	y := 0.55 * s.g.Projection
	fall := max(along*s.g.Slope*calc.In/calc.Ft, 4)
	corner := s.at(y, s.top(y)).plus(along/2, -8)
	left, right := corner.plus(-along, -fall), corner.plus(0, -fall)
	s.shape(Pen{Stroke: Black, Width: 0.7}, left, right, corner)
	s.solid = append(s.solid, spanning(left, corner))
	s.set(plain, "12", left.plus(along/2, -6), false)
	s.left(plain, inches(s.g.Slope), right.plus(3, fall/2))
}

// figure draws a person of 5 ft 8 in. at the first free place from the house, to
// tell the size of what stands around.
func (s *sectionSheet) figure() {
	const tall = 68 * calc.In
	unit := ft(tall) / 5.66 // the outline is drawn 5.66 high
	step := 6 / s.scale.foot
	y := 1.0
	if !attached(s.g) && len(s.g.Lines) > 0 {
		y += s.g.Lines[0].Y
	}
	for ; y < s.g.Projection; y += step {
		b := spanning(s.at(y-0.6*unit, s.floor(y)), s.at(y+0.6*unit, s.floor(y)+ft(tall)))
		if b.grow(4).meetsAny(s.words) || b.grow(4).meetsAny(s.solid[s.underfoot:]) {
			continue
		}
		var outline []Point
		for _, p := range figureOutline {
			outline = append(outline, s.at(y+p.X*unit, s.floor(y)+p.Y*unit))
		}
		pen := Pen{Fill: Pale, Stroke: Existing, Width: 0.5}
		s.shape(pen, outline...)
		s.disk(pen, s.at(y, s.floor(y)+5.28*unit), 0.38*unit*s.scale.foot)
		s.solid = append(s.solid, b)
		s.near(plain, feetInches(ft(tall)), Point{(b.left + b.right) / 2, b.top}, hint{angle: -90, least: 8, most: 20})
		return
	}
}

// figureOutline is a standing person from the left foot around, without the head.
var figureOutline = []Point{
	{-0.32, 0}, {-0.06, 0}, {0, 2.5}, {0.06, 0}, {0.32, 0}, {0.36, 2.7}, {0.34, 3.5}, {0.46, 2.8}, {0.6, 2.8},
	{0.56, 4.5}, {0.2, 4.82}, {-0.2, 4.82}, {-0.56, 4.5}, {-0.6, 2.8}, {-0.46, 2.8}, {-0.34, 3.5}, {-0.36, 2.7},
}

// quoted is the value of a line of a written calculation; 0 when it has none such.
func quoted(lines []calc.Line, symbol string) float64 {
	for _, l := range lines {
		if l.Symbol == symbol {
			return l.X
		}
	}
	return 0
}

// clearWords is the clear height, rounded down.
func clearWords(r *cover.Report) string {
	return calc.FeetInches(calc.RoundDown(r.Headroom.Clear, calc.Sixteenth))
}

// inches writes a length of up to a foot, in inches, without its marks: 1/2, 3, 12.
func inches(x float64) string {
	n := int(math.Round(x / calc.Sixteenth))
	perInch := int(calc.In / calc.Sixteenth)
	whole, over := n/perInch, n%perInch
	if over == 0 {
		return fmt.Sprint(whole)
	}
	under := perInch
	for over%2 == 0 {
		over, under = over/2, under/2
	}
	if whole == 0 {
		return fmt.Sprintf("%d/%d", over, under)
	}
	return fmt.Sprintf("%d %d/%d", whole, over, under)
}
