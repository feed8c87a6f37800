package drawing

import (
	"fmt"
	"math"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// Paper around the section, in points.
const (
	sectionLeft  = 34.0  // a string of dimensions
	sectionRight = 46.0  // a string of dimensions and the marks of the last post
	sectionTop   = 44.0  // above the high edge: slope and roof words
	sectionFoot  = 26.0  // below the ground: marks of the foundation
	sectionTall  = 270.0 // most that the heights take down the paper
)

const (
	wallThick  = 6 * calc.In  // of the house wall, drawn only
	wallAbove  = 10 * calc.In // of the wall shown over the high edge
	slabBeyond = 10 * calc.In // of the slab shown past the roof edge
	flashed    = 6 * calc.In  // of the flashing shown on the roof
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
	underfoot int     // how many of the solid places, those of snow and ground, are in nobody's way
	knees     []Point // middles of the knee braces
	start     float64 // of the drawing along y, ft: behind the wall when there is one
}

// Section draws the cover cut from the house to its outer edge, to scale: slab,
// wall, ledger, rafter, beams, posts, what they stand on, the heights and the marks
// of every connection of the load path. Where snow lies deeper near the house its loads
// stand above.
func Section(r cover.Report) Scene {
	s := newSection(&r)
	s.snow()
	s.ground()
	s.underfoot = len(s.solid)
	s.house()
	s.roof()
	for i := range s.g.Lines {
		s.post(&s.g.Lines[i])
	}
	s.braces()
	bottom := s.strings()
	s.slope()
	s.headroom()
	s.figure()
	s.marks()
	s.names()
	s.title("SECTION A-A", s.key(&r, bottom+8, "BAFK")+4)
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
	s.Description = fmt.Sprintf("Section of a patio cover from the house outward: "+
		"top of rafters %s at the high edge and %s at the low edge, slope %s in 12, clear height %s.",
		feetInches(g.HighEdge), feetInches(g.LowEdge), inches(g.Slope), clearWords(r)) + snowWords(r)
	spare := sheetWidth - sectionLeft - sectionRight - (g.Projection-s.start)*s.scale.foot
	s.origin = Point{sectionLeft + spare/2 - s.start*s.scale.foot, snowBand(r) + sectionTop + g.HighEdge*s.scale.foot}
	s.field = box{2, snowBand(r) + 2, sheetWidth - 2, s.at(0, -s.below).Y + sectionFoot}
	return s
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
	s.shape(seenWood, s.at(from, s.top(from)), s.at(to, s.top(to)),
		s.at(to, s.top(to)-s.plumb), s.at(from, s.top(from)-s.plumb))
	deck := Pen{Stroke: Black, Width: 1.8}
	if !s.solidRoof() {
		deck.Dash = []float64{2, 4}
	}
	if attached(s.g) && s.solidRoof() {
		wall := s.at(0, s.top(0)).plus(0.8, 0)
		s.line(bold, wall.plus(0, -12), wall.plus(0, -2.2), s.at(ft(flashed), s.top(ft(flashed))).plus(0, -3))
	}
	s.line(deck, s.at(0, s.top(0)).plus(0, -1), s.at(to, s.top(to)).plus(0, -1))
	const parts = 24
	for i := range parts { // a sloping member keeps its place in short steps
		a, b := to*float64(i)/parts, to*float64(i+1)/parts
		s.solid = append(s.solid, spanning(s.at(a, s.top(a)).plus(0, -2), s.at(b, s.top(b)-s.plumb)))
	}
}

// solidRoof reports whether the roof sheds water: it is not an open lattice.
func (s *sectionSheet) solidRoof() bool {
	c := s.report.Input.Cover.Covering
	return c == nil || *c != "lattice"
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

// braced reports whether knee braces hold the cover out from the house.
func (s *sectionSheet) braced() bool {
	for _, w := range s.report.Lateral {
		if w.System == "knee_braces" && strings.HasPrefix(w.Direction, "out") {
			return true
		}
	}
	return false
}

// braces draws the knee braces out from the house in their places: from every post toward
// each support beside it.
func (s *sectionSheet) braces() {
	if !s.braced() || s.g.KneeDrop == 0 {
		return
	}
	last := len(s.g.Lines) - 1
	for i := range s.g.Lines {
		if i > 0 || attached(s.g) {
			s.brace(&s.g.Lines[i], -1)
		}
		if i < last {
			s.brace(&s.g.Lines[i], 1)
		}
	}
}

// brace draws one knee brace, to a side of its post: its middle meets that of the post at
// the drop of the report, and its edges end at the post and under the rafter.
func (s *sectionSheet) brace(l *cover.BeamLine, side float64) {
	rise := s.g.KneeDrop / s.g.KneeReach                         // of the brace
	fall := side * (s.g.HighEdge - s.g.LowEdge) / s.g.Projection // of the rafter, away from the post
	half := ft(s.g.KneeDepth) / 2 * math.Hypot(1, rise)          // upright, from the middle to an edge
	from := ft(l.PostWidth) / 2
	low := l.Bottom - s.g.KneeDrop // of the middle at the middle of the post
	at := func(out, off float64) Point { return s.at(l.Y+side*out, low+out*rise+off) }
	end := func(off float64) Point { return at((s.top(l.Y)-s.plumb-low-off)/(rise+fall), off) }
	s.shape(seenWood, at(from, half), at(from, -half), end(-half), end(half))
	foot, head := at(from, 0), end(0)
	s.solid = append(s.solid, spanning(foot, head))
	s.knees = append(s.knees, Point{(foot.X + head.X) / 2, (foot.Y + head.Y) / 2})
}

// marks points at every connection of the load path.
func (s *sectionSheet) marks() {
	mid := s.g.HighEdge - s.plumb/2
	if attached(s.g) {
		s.point("L", 0, s.at(0, mid), hint{angle: 212, least: 28, most: 60})
		s.point("H", 0, s.at(ft(ledgerThick), mid), hint{angle: 60, least: 16, most: 60})
		s.point("W", 0, s.at(0, mid-s.plumb-1), hint{angle: 160, least: 28, most: 160})
	}
	y := 0.3 * s.g.Projection
	s.point("D", 0, s.at(y, s.top(y)).plus(0, -1), hint{angle: -90, least: 14, most: 60})
	for i, l := range s.g.Lines {
		edge := l.Y + ft(l.PostWidth)/2
		s.point("T", i, s.at(l.Y, l.Top), hint{angle: -45, least: 22, most: 80})
		s.point("C", i, s.at(edge, l.Bottom), hint{angle: 20, least: 16, most: 80})
		s.point("B", i, s.at(edge, s.floor(l.Y)+0.1), hint{angle: -35, least: 18, most: 80})
		s.point("A", i, s.at(edge, s.floor(l.Y)), hint{angle: 40, least: 24, most: 160})
		s.point("F", i, s.at(l.Y, s.floor(l.Y)-s.slab-s.depthAt(&s.g.Lines[i])), hint{angle: 140, least: 20, most: 160})
	}
	s.kneePoints()
}

// kneePoints marks the joints of the knee braces: at a brace, or where the section shows
// none at the post that has it, and at the ledger.
func (s *sectionSheet) kneePoints() {
	if len(s.g.Lines) == 0 {
		return
	}
	l := &s.g.Lines[0]
	at := s.at(l.Y, l.Bottom-s.g.KneeDrop)
	if len(s.knees) > 0 {
		at = s.knees[0]
	}
	s.point("K", 0, at, hint{angle: 130, least: 24, most: 160})
	s.point("K", 1, s.at(ft(ledgerThick), s.g.HighEdge-s.plumb/2), hint{angle: 20, least: 24, most: 160})
}

// point marks one connection, when the report has it.
func (s *sectionSheet) point(letter string, line int, joint Point, h hint) {
	if m := markAt(s.report, letter, line); m != "" {
		s.mark(m, joint, h)
	}
}

// names writes what the parts are.
func (s *sectionSheet) names() {
	if len(s.knees) > 0 {
		inward := 180.0
		if !attached(s.g) {
			inward = 0
		}
		s.callout(plain, braceWords(s.report), s.knees[0], hint{angle: inward, least: 76, most: 180})
	}
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
		if s.solidRoof() {
			s.callout(plain, "FLASHING", s.at(0, s.g.HighEdge).plus(0.8, -9), hint{angle: -55, least: 22, most: 70})
		}
	}
	s.groundNames()
}

// braceWords names the knee braces with the size that the report gives them.
func braceWords(r *cover.Report) string {
	for i := range r.Members {
		if m := &r.Members[i]; m.Name == "knee brace" {
			return m.Mark + " " + m.Size + " KNEE BRACE"
		}
	}
	return "BRACE, NOT SIZED HERE"
}
