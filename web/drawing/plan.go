package drawing

import (
	"fmt"
	"math"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// Paper around the plan, in points.
const (
	planLeft   = 42.0  // two strings of dimensions
	planRight  = 24.0  // half a post and half a mark
	houseDepth = 34.0  // of the strip that stands for the house
	planStrip  = 24.0  // below the roof edge: post marks and the cutting line
	planTall   = 340.0 // most that the roof takes down the paper
)

// A planSheet is the plan while it is being drawn.
type planSheet struct {
	canvas
	report *cover.Report
	g      *cover.Geometry
}

// Plan draws the cover from above, without its deck: the house, the ledger, every
// rafter, the beams below as dashed lines, the posts, the dimensions, and the marks
// of the connections that can be pointed at from above.
func Plan(r cover.Report) Scene {
	g := &r.Geometry
	p := &planSheet{report: &r, g: g}
	p.scale = fitting(g.Width, g.Projection, sheetWidth-planLeft-planRight, planTall)
	p.Title, p.Description, p.Width = "Plan", planDescription(g), sheetWidth
	spare := sheetWidth - planLeft - planRight - g.Width*p.scale.foot
	p.origin = Point{planLeft + spare/2, 10 + houseDepth}
	roofEnd := p.at(0, g.Projection).Y
	p.field = box{2, 2, sheetWidth - 2, roofEnd + planStrip - 2}

	p.house()
	p.rafters()
	p.cuttingLine()
	for i := range g.Lines {
		p.beam(&g.Lines[i])
	}
	p.shape(thin, p.at(0, 0), p.at(g.Width, 0), p.at(g.Width, g.Projection), p.at(0, g.Projection))
	for i := range g.Lines {
		p.footings(&g.Lines[i])
		p.posts(&g.Lines[i])
	}
	bottom := p.strings()
	p.names()
	p.marks()
	p.title("PLAN", p.key(&r, bottom+8, "DHLWTCS")+4)
	return p.Scene
}

func planDescription(g *cover.Geometry) string {
	out := fmt.Sprintf("Framing plan of a patio cover %s along the house and %s out from it, with %d rafters %s.",
		feetInches(g.Width), feetInches(g.Projection), len(g.Rafters), g.RafterSize)
	for _, l := range g.Lines {
		out += fmt.Sprintf(" Beam %s, %s, stands %s from the wall on %d posts %s.",
			l.Mark, l.Size, feetInches(l.Y), len(l.Posts), l.PostSize)
	}
	return out
}

// feetInches writes a length given in feet.
func feetInches(feet float64) string { return calc.FeetInches(feet * calc.Ft) }

// attached reports whether the cover hangs on the house.
func attached(g *cover.Geometry) bool { return g.Attachment != "freestanding" }

// house draws the strip of the house and the ledger, or the name of the high edge.
func (p *planSheet) house() {
	name := "HIGH EDGE"
	row := Point{0, p.at(0, 0).Y - houseDepth + 9}
	if attached(p.g) {
		const margin = 6.0 // the house goes on past the cover, pt
		b := p.bar(existing, Point{margin, row.Y - 9}, Point{sheetWidth - margin, p.at(0, 0).Y})
		p.hatch(b, 7)
		p.bar(seenWood, p.at(0, 0), p.at(p.g.Width, ft(ledgerThick)))
		name = "HOUSE (EXISTING)"
	}
	if p.g.Attachment == "rafter_tails" {
		name = "RAFTER TAILS (EXISTING)"
	}
	row.X = 12 + backed.width(name)/2
	p.near(backed, name, row, hint{least: 0, most: sheetWidth})
}

// ledgerThick is the dressed thickness of a two-by ledger, in.
const ledgerThick = 1.5 * calc.In

// rafters draws every rafter as wide as it is.
func (p *planSheet) rafters() {
	half := ft(p.g.RafterWidth) / 2
	for _, x := range p.g.Rafters {
		p.bar(Pen{Fill: Wood, Stroke: Gray, Width: 0.45}, p.at(x-half, 0), p.at(x+half, p.g.Projection))
	}
}

// beam draws a beam: dashed where it lies below the rafters, full where they hang in
// its face. A splice is a stroke across it.
func (p *planSheet) beam(l *cover.BeamLine) {
	pen, half := hidden, ft(l.Breadth)/2
	if l.Flush {
		pen = seenWood
	}
	p.bar(pen, p.at(0, l.Y-half), p.at(p.g.Width, l.Y+half))
	for _, x := range l.Splices {
		at := p.at(x, l.Y)
		p.line(bold, at.plus(-1.5, -7), at.plus(1.5, 7))
	}
}

// footings draws the outlines of the footings of a line, dashed: they lie below the floor.
func (p *planSheet) footings(l *cover.BeamLine) {
	for i := range p.report.Foundations {
		f := &p.report.Foundations[i]
		if f.Width <= 0 || math.Abs(f.Y-l.Y) > 1e-6 {
			continue
		}
		sides, turned, radius := 4, math.Pi/4, ft(f.Width)/2*math.Sqrt2
		if f.Shape == "round" {
			sides, turned, radius = 24, 0, ft(f.Width)/2
		}
		var outline []Point
		for n := range sides {
			angle := turned + 2*math.Pi*float64(n)/float64(sides)
			outline = append(outline, p.at(f.X+radius*math.Cos(angle), f.Y+radius*math.Sin(angle)))
		}
		p.shape(below, outline...)
	}
}

// below is the pen of what lies below the floor.
var below = Pen{Stroke: Gray, Width: 0.6, Dash: []float64{3, 2}}

// posts draws the posts of a line, filled, and takes their places.
func (p *planSheet) posts(l *cover.BeamLine) {
	half := max(ft(l.PostWidth)*p.scale.foot/2, 2.2)
	for _, x := range l.Posts {
		b := around(p.at(x, l.Y), 2*half, 2*half)
		p.shape(ink, b.corners()...)
		p.solid = append(p.solid, b.grow(1))
	}
}

// strings draws the dimensions and returns the paper that they end at, pt.
func (p *planSheet) strings() float64 {
	g := p.g
	out := []float64{0}
	for _, l := range g.Lines {
		out = append(out, l.Y)
	}
	p.chained(strand{stops: append(out, g.Projection), offset: -10, far: g.Width, upright: true})
	along := []float64{0}
	if len(g.Lines) > 0 {
		along = append(along, g.Lines[0].Posts...)
	}
	reach := p.chained(strand{stops: append(along, g.Width), edge: g.Projection, offset: planStrip + 6})
	return p.at(0, g.Projection).Y + reach
}

// names writes the names of the members where they lie.
func (p *planSheet) names() {
	for i := range p.g.Lines {
		l := &p.g.Lines[i]
		for n, x := range l.Posts {
			p.near(heavy, l.PostMarks[n], p.at(x, l.Y), hint{angle: 60, least: 12, most: 26})
		}
	}
	p.spanArrow()
	for i := range p.g.Lines {
		l := &p.g.Lines[i]
		target := p.at(p.clearBay(l.Posts, 0), l.Y)
		p.near(heavy, l.Mark+"  "+l.Size, target, hint{angle: -90, least: 11, most: 60})
	}
}

// clearBay is the middle of the bay with the number between posts, ft.
func (p *planSheet) clearBay(posts []float64, n int) float64 {
	if n+1 < len(posts) {
		return (posts[n] + posts[n+1]) / 2
	}
	return p.g.Width / 2
}

// spanArrow draws the span of the rafters with their size and spacing.
func (p *planSheet) spanArrow() {
	if len(p.g.Rafters) < 2 || len(p.g.Lines) == 0 {
		return
	}
	x := p.spanAt()
	from, to := p.at(x, ft(ledgerThick)), p.at(x, p.g.Lines[len(p.g.Lines)-1].Y)
	p.line(bold, from, to)
	for _, end := range []struct {
		at   Point
		side float64
	}{{from, 1}, {to, -1}} {
		p.line(bold, end.at.plus(-3, 7*end.side), end.at)
	}
	middle := Point{from.X, from.Y + 0.42*(to.Y-from.Y)}
	p.near(heavy, rafterWords(p.report), middle, hint{angle: 90, least: 0, most: 80})
	if s := speciesOf(p.report, "rafter"); s != "" {
		p.near(backed, s, middle, hint{angle: 90, least: 12, most: 80})
	}
	p.solid = append(p.solid, spanning(from, to).grow(4))
}

// spanAt is the middle between two rafters where the span is shown, ft: the nearest to
// the middle of the roof that is clear of posts and splices, else the nearest of all.
func (p *planSheet) spanAt() float64 {
	const clear = 12.0 // pt
	middle, best, clearest := p.g.Width/2, math.Inf(1), math.Inf(1)
	for i := 1; i < len(p.g.Rafters); i++ {
		x := (p.g.Rafters[i-1] + p.g.Rafters[i]) / 2
		if math.Abs(x-middle) < math.Abs(best-middle) {
			best = x
		}
		if p.offPosts(x)*p.scale.foot >= clear && math.Abs(x-middle) < math.Abs(clearest-middle) {
			clearest = x
		}
	}
	if !math.IsInf(clearest, 1) {
		return clearest
	}
	return best
}

// offPosts is the distance along the house to the nearest post of any line, ft.
func (p *planSheet) offPosts(x float64) float64 {
	nearest := math.Inf(1)
	for _, l := range p.g.Lines {
		for _, post := range l.Posts {
			nearest = min(nearest, math.Abs(x-post))
		}
	}
	return nearest
}

// rafterWords tells the size and spacing of the rafters as a framing plan does.
func rafterWords(r *cover.Report) string {
	g := &r.Geometry
	widest := 0.0
	for i := 1; i < len(g.Rafters); i++ {
		widest = max(widest, g.Rafters[i]-g.Rafters[i-1])
	}
	inches := math.Round(widest*calc.Ft*10) / 10
	return g.RafterSize + " @ " + calc.Number(inches) + `" O.C.`
}

// speciesOf is the species and grade of the member with the name, as reported.
func speciesOf(r *cover.Report, name string) string {
	for _, m := range r.Members {
		if m.Name == name {
			return strings.TrimSpace(m.Species + " " + m.Grade)
		}
	}
	return ""
}

// cuttingLine draws where the section is cut, between posts.
func (p *planSheet) cuttingLine() {
	x := p.sectionAt()
	top, end := p.at(x, 0).plus(0, -houseDepth+9), p.at(x, p.g.Projection).plus(0, planStrip-11)
	p.line(cutting, top, end)
	for _, at := range []Point{top, end} {
		p.disk(Pen{Fill: Paper, Stroke: Black, Width: 0.9}, at, 7.5)
		p.set(lettering{size: small, bold: true, ink: Black}, "A", at, false)
		p.solid = append(p.solid, around(at, 16, 16))
		p.shape(ink, at.plus(8, -4), at.plus(14, 0), at.plus(8, 4))
	}
}

// sectionAt is where the section is cut, ft: in the last bay, off its middle and off
// every rafter.
func (p *planSheet) sectionAt() float64 {
	x := 0.8 * p.g.Width
	if len(p.g.Lines) > 0 {
		posts := p.g.Lines[0].Posts
		if n := len(posts); n > 1 {
			x = posts[n-2] + 0.68*(posts[n-1]-posts[n-2])
		}
	}
	for i := 1; i < len(p.g.Rafters); i++ {
		if p.g.Rafters[i-1] <= x && x <= p.g.Rafters[i] {
			return (p.g.Rafters[i-1] + p.g.Rafters[i]) / 2
		}
	}
	return x
}
