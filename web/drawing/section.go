package drawing

import (
	"fmt"
	"math"

	"patiocover/calc"
	"patiocover/cover"
)

// Paper around the section, in points.
const (
	sectionLeft  = 34.0  // a string of dimensions
	sectionRight = 46.0  // a string of dimensions and the marks of the last post
	sectionTop   = 44.0  // above the high edge: slope and roof words
	sectionFoot  = 22.0  // below the ground: marks of the foundation
	sectionTall  = 270.0 // most that the heights take down the paper
)

const (
	wallThick  = 6 * calc.In  // of the house wall, drawn only
	wallAbove  = 10 * calc.In // of the wall shown over the high edge
	slabBeyond = 10 * calc.In // of the slab shown past the roof edge
)

// A sectionSheet is the section while it is being drawn.
type sectionSheet struct {
	canvas
	report    *cover.Report
	g         *cover.Geometry
	plumb     float64 // depth of the rafter measured upright, ft
	fall      float64 // of the slab, ratio
	slab      float64 // thickness of the slab, ft
	below     float64 // what is drawn below the slab's top at the house, ft
	underfoot int     // how many of the solid places lie below the floor
	start     float64 // of the drawing along y, ft: behind the wall when there is one
}

// Section draws the cover cut from the house to its outer edge, to scale: slab,
// wall, ledger, rafter, beams, posts, what they stand on, the heights and the marks
// of every connection of the load path.
func Section(r cover.Report) Scene {
	s := newSection(&r)
	s.ground()
	s.underfoot = len(s.solid)
	s.house()
	s.roof()
	for i := range s.g.Lines {
		s.post(&s.g.Lines[i])
	}
	bottom := s.strings()
	s.slope()
	s.headroom()
	s.figure()
	s.marks()
	s.names()
	s.title("SECTION A-A", s.key(&r, bottom+8, "BAF")+4)
	return s.Scene
}

func newSection(r *cover.Report) *sectionSheet {
	g := &r.Geometry
	s := &sectionSheet{
		report: r, g: g,
		plumb: ft(g.RafterDepth) / math.Cos(g.Angle*math.Pi/180),
		fall:  quoted(r.Headroom.Check.Lines, "r_slab"),
		slab:  ft(slabThickness(r)),
	}
	s.upward = true
	if attached(g) {
		s.start = -ft(wallThick)
	}
	s.below = s.slab + s.fall*g.Projection + s.depth() + 0.4
	s.scale = fitting(g.Projection-s.start, g.HighEdge+s.below, sheetWidth-sectionLeft-sectionRight, sectionTall)
	s.Title, s.Width = "Section A-A", sheetWidth
	s.Description = fmt.Sprintf(
		"Section of a patio cover from the house outward: top of rafters %s at the high edge and %s at the low edge, slope %s in 12, clear height %s.",
		feetInches(g.HighEdge), feetInches(g.LowEdge), inches(g.Slope), clearWords(r))
	spare := sheetWidth - sectionLeft - sectionRight - (g.Projection-s.start)*s.scale.foot
	s.origin = Point{sectionLeft + spare/2 - s.start*s.scale.foot, sectionTop + g.HighEdge*s.scale.foot}
	s.field = box{2, 2, sheetWidth - 2, s.at(0, -s.below).Y + sectionFoot}
	return s
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

// top is the height of the top of the rafters at a distance from the wall, ft.
func (s *sectionSheet) top(y float64) float64 {
	return s.g.HighEdge - (s.g.HighEdge-s.g.LowEdge)*y/s.g.Projection
}

// floor is the height of the slab at a distance from the wall, ft: 0 at the house.
func (s *sectionSheet) floor(y float64) float64 { return -s.fall * y }

// house draws the wall that the cover hangs on, and the ledger.
func (s *sectionSheet) house() {
	if !attached(s.g) {
		return
	}
	b := s.bar(existing, s.at(s.start, -s.below), s.at(0, s.g.HighEdge+ft(wallAbove)))
	s.hatch(b, 6)
	s.solid = append(s.solid, b)
	s.solid = append(s.solid, s.crossed(s.at(0, s.g.HighEdge-s.plumb), s.at(ft(ledgerThick), s.g.HighEdge)))
}

// roof draws the rafter and what lies on it.
func (s *sectionSheet) roof() {
	from, to := 0.0, s.g.Projection
	if attached(s.g) {
		from = ft(ledgerThick)
	}
	s.shape(seenWood, s.at(from, s.top(from)), s.at(to, s.top(to)), s.at(to, s.top(to)-s.plumb), s.at(from, s.top(from)-s.plumb))
	deck := Pen{Stroke: Black, Width: 1.8}
	if c := s.report.Input.Cover.Covering; c != nil && *c == "lattice" {
		deck.Dash = []float64{2, 4}
	}
	s.line(deck, s.at(0, s.top(0)).plus(0, -1), s.at(to, s.top(to)).plus(0, -1))
	const parts = 24
	for i := range parts { // a sloping member keeps its place in short steps
		a, b := to*float64(i)/parts, to*float64(i+1)/parts
		s.solid = append(s.solid, spanning(s.at(a, s.top(a)).plus(0, -2), s.at(b, s.top(b)-s.plumb)))
	}
}

// post draws the beam of a line, its post and the base.
func (s *sectionSheet) post(l *cover.BeamLine) {
	half, floor := ft(l.PostWidth)/2, s.floor(l.Y)
	const standOff = 1 * calc.In // common practice, drawn only
	foot := floor + ft(standOff)
	if s.kind() == "embedded" {
		foot = floor
	}
	post := s.bar(seenWood, s.at(l.Y-half, foot), s.at(l.Y+half, l.Bottom))
	if foot > floor {
		s.bar(ink, s.at(l.Y-half, floor), s.at(l.Y+half, foot))
	}
	beam := s.crossed(s.at(l.Y-ft(l.Breadth)/2, l.Bottom), s.at(l.Y+ft(l.Breadth)/2, l.Top))
	s.solid = append(s.solid, post, beam)
}

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

// marks points at every connection of the load path.
func (s *sectionSheet) marks() {
	mid := s.g.HighEdge - s.plumb/2
	if attached(s.g) {
		s.point("L", 0, s.at(0, mid), hint{angle: 212, least: 28, most: 60})
		s.point("H", 0, s.at(ft(ledgerThick), mid), hint{angle: 60, least: 16, most: 60})
	}
	y := 0.3 * s.g.Projection
	s.point("D", 0, s.at(y, s.top(y)).plus(0, -1), hint{angle: -90, least: 14, most: 60})
	for i, l := range s.g.Lines {
		edge := l.Y + ft(l.PostWidth)/2
		s.point("T", i, s.at(l.Y, l.Top), hint{angle: -45, least: 22, most: 80})
		s.point("C", i, s.at(edge, l.Bottom), hint{angle: 20, least: 16, most: 80})
		s.point("B", i, s.at(edge, s.floor(l.Y)+0.1), hint{angle: -35, least: 18, most: 80})
		s.point("A", i, s.at(edge, s.floor(l.Y)), hint{angle: 40, least: 24, most: 80})
		s.point("F", i, s.at(l.Y, s.floor(l.Y)-s.slab-s.depth()), hint{angle: 140, least: 20, most: 80})
	}
}

// point marks one connection, when the report has it.
func (s *sectionSheet) point(letter string, line int, joint Point, h hint) {
	if m := markAt(s.report, letter, line); m != "" {
		s.mark(m, joint, h)
	}
}

// names writes what the parts are.
func (s *sectionSheet) names() {
	y := 0.78 * s.g.Projection
	s.callout(plain, rafterWords(s.report), s.at(y, s.top(y)-s.plumb/2), hint{angle: -80, least: 20, most: 90})
	for i := range s.g.Lines {
		l := &s.g.Lines[i]
		left := l.Y - ft(l.Breadth)/2
		s.callout(plain, l.Mark+" "+l.Size, s.at(left, (l.Top+l.Bottom)/2), hint{angle: 165, least: 34, most: 110})
	}
	if n := len(s.g.Lines); n > 0 {
		l := &s.g.Lines[n-1]
		face := l.Y - ft(l.PostWidth)/2
		s.callout(plain, l.PostSize+" POST", s.at(face, 0.3*l.Bottom), hint{angle: 180, least: 34, most: 120})
	}
	if attached(s.g) {
		s.callout(plain, "LEDGER", s.at(ft(ledgerThick), s.g.HighEdge-0.8*s.plumb), hint{angle: 60, least: 26, most: 90})
	}
	s.groundNames()
}
