package drawing

import (
	"fmt"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// stairDashes tell the stairs of one number of posts from those of the next, pt.
var stairDashes = [][]float64{nil, {6, 2}, {2, 2}, {7, 2, 2, 2}}

// stairPen is the line of group i.
func stairPen(i int) Pen { return Pen{Stroke: Black, Width: 1, Dash: stairDashes[i%len(stairDashes)]} }

// speck is the mark of an option beside the stairs.
var speck = Pen{Fill: Existing}

// FrontStairs draws the cost of every option of a search against the sag of its beams: for
// each number of posts the stairs of those with the least sag for their cost, with a shape
// and a line of its own, and specks for the options that are chosen for a smaller tie or less
// depth. The cover as drawn wears a ring.
func FrontStairs(f cover.Found) Scene {
	const title = "COST AGAINST BEAM SAG"
	if len(f.Points) == 0 {
		return empty(title, "No cover of the space holds, so there is nothing to draw.")
	}
	groups := f.ByPosts()
	x, y := frontAxes(f, groups)
	const across = "LONG-TERM SAG OF THE BEAMS, IN; A STEP ABOUT DOUBLES IT"
	s := newChart(title, stairWords(f, groups), x, y, across, "COST, "+strings.ToUpper(f.Measure))
	for _, g := range groups {
		for _, p := range g.Rest {
			if at, ok := s.frontSpot(p); ok {
				s.disk(speck, at, 0.9)
			}
		}
	}
	for i, g := range groups {
		s.stairs(g.Stairs, i)
	}
	for i, g := range groups {
		for _, p := range g.Stairs {
			at, _ := s.frontSpot(p)
			s.sign(i, signPen(i), at)
			s.solid = append(s.solid, around(at, 2*chartFigure, 2*chartFigure))
		}
	}
	if p := f.Drawn.Point; p != nil {
		at, _ := s.frontSpot(*p)
		s.disk(bold, at, 2*chartFigure)
		s.solid = append(s.solid, around(at, 4*chartFigure, 4*chartFigure))
	}
	for _, g := range groups {
		at, _ := s.frontSpot(g.Stairs[0])
		s.stairName(postWords(g.Posts), at)
	}
	for _, g := range groups {
		for i, p := range g.Stairs {
			if i == 0 || p.Beam != g.Stairs[i-1].Beam {
				at, _ := s.frontSpot(p)
				s.near(backed, p.Beam, at, hint{angle: 135, least: 12, most: 20})
			}
		}
	}
	s.postKey(groups, f.Drawn.Point != nil)
	return s.Scene
}

// frontAxes span the stairs and the cover as drawn. Sags reach from a hair to an inch, so
// theirs is an axis of ratios.
func frontAxes(f cover.Found, groups []cover.FrontGroup) (x, y axis) {
	const least = 5e-3 // in, below which nobody tells a sag from none
	var all []cover.FrontPoint
	for _, g := range groups {
		all = append(all, g.Stairs...)
	}
	if f.Drawn.Point != nil {
		all = append(all, *f.Drawn.Point)
	}
	low, high := all[0], all[0]
	for _, p := range all {
		low.Sag, high.Sag = min(low.Sag, p.Sag), max(high.Sag, p.Sag)
		low.Cost, high.Cost = min(low.Cost, p.Cost), max(high.Cost, p.Cost)
	}
	x = newDoubling(max(least, low.Sag), max(least, high.Sag), chartLeft, sheetWidth-chartRight)
	x.below = low.Sag < x.low
	const below = 0.12 // of the height, for the names of the cheapest options, ratio
	return x, upAxis(max(0, low.Cost-below*(high.Cost-low.Cost)), high.Cost)
}

// frontSpot is the place of an option, and whether the chart reaches it.
func (c *chart) frontSpot(p cover.FrontPoint) (Point, bool) {
	at := c.spot(max(p.Sag, c.x.low), p.Cost)
	return at, at.X <= c.field.right && at.Y >= c.field.top && at.Y <= c.field.bottom
}

// stairs joins options with less and less sag: between two of them nothing is better than the
// cheaper one at its sag.
func (c *chart) stairs(all []cover.FrontPoint, group int) {
	var path []Point
	for _, p := range all {
		at, _ := c.frontSpot(p)
		if n := len(path); n > 0 {
			path = append(path, Point{path[n-1].X, at.Y})
		}
		path = append(path, at)
	}
	if len(path) > 1 {
		c.line(stairPen(group), path...)
	}
}

// stairName names stairs at their cheaper end, with a line to its sign.
func (c *chart) stairName(words string, end Point) {
	b := heavy.room(words, end, false)
	if at, ok := c.place(end, b.width(), b.height(), hint{angle: 40, least: 22, most: 90}); ok {
		c.line(thin, heavy.room(words, at, false).edge(end), around(end, 3*chartFigure, 3*chartFigure).edge(at))
		c.set(heavy, words, at, false)
	}
}

// postWords say a number of posts.
func postWords(n int) string { return fmt.Sprintf("%d POSTS", n) }

// postKey names the shapes and lines below the chart, two in a row.
func (c *chart) postKey(groups []cover.FrontGroup, drawn bool) {
	const column = (sheetWidth - 16) / 2
	n, top := 0, c.Height
	next := func(words string, draw func(at Point)) {
		at := Point{14 + column*float64(n%2), top + chartRow*(float64(n/2)+0.5)}
		draw(at)
		c.left(plain, words, at.plus(28, 0))
		n++
	}
	for i, g := range groups {
		next(fmt.Sprintf("%d posts, %d options", g.Posts, len(g.Stairs)+len(g.Rest)), func(at Point) {
			c.line(stairPen(i), at.plus(-8, 0), at.plus(22, 0))
			c.sign(i, signPen(i), at.plus(7, 0))
		})
	}
	next("less tie or depth instead", func(at Point) { c.disk(speck, at.plus(7, 0), 0.9) })
	if drawn {
		next("as drawn", func(at Point) { c.disk(bold, at.plus(7, 0), 2*chartFigure) })
	}
	c.Height = top + chartRow*float64((n+1)/2) + 4
}

// stairWords tell the chart to who cannot see it: the ends of the stairs.
func stairWords(f cover.Found, groups []cover.FrontGroup) string {
	words := fmt.Sprintf("Cost in %s against the long-term sag of the beams for %d options.", f.Measure, len(f.Points))
	end := func(p cover.FrontPoint) string {
		return fmt.Sprintf("%.0f %s at %.2f in of sag with beams %s", calc.RoundUp(p.Cost, 1), f.Measure, calc.RoundUp(p.Sag, 0.01), p.Beam)
	}
	for _, g := range groups {
		words += fmt.Sprintf(" %d posts: from %s", g.Posts, end(g.Stairs[0]))
		if n := len(g.Stairs); n > 1 {
			words += " to " + end(g.Stairs[n-1])
		}
		words += "."
	}
	return words
}
