package drawing

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// The pens of signs: filled on the front, hollow behind it.
var (
	filledSign = Pen{Fill: Black, Stroke: Black, Width: 0.9}
	hollowSign = Pen{Fill: Paper, Stroke: Black, Width: 0.9}
	frontLine  = Pen{Stroke: Black, Width: 1.1}
	nowLine    = Pen{Stroke: Gray, Width: 0.9, Dash: []float64{2, 2}}
	limitLine  = Pen{Stroke: Black, Width: 1.1, Dash: []float64{6, 3}}
)

// CostAndSag draws the cost of every option that passes against the long-term sag of its
// rafters: one sign for each wood, filled where no other option is better in both, with
// those joined by a line and named by their spacing.
func CostAndSag(c cover.Comparison) Scene {
	all := slices.DeleteFunc(slices.Clone(c.Options), func(o cover.Option) bool {
		return o.Missing != "" || o.Framing == cover.Over
	})
	title := "COST AGAINST SAG"
	if len(all) == 0 {
		return empty(title, "No option passes, so there is nothing to draw: the rows say what is over.")
	}
	bySag := func(a, b cover.Option) int { return cmp.Compare(a.Sag, b.Sag) }
	byCost := func(a, b cover.Option) int { return cmp.Compare(a.Spent, b.Spent) }
	x, y := chartAxes(slices.MinFunc(all, bySag).Sag, slices.MaxFunc(all, bySag).Sag,
		slices.MinFunc(all, byCost).Spent, slices.MaxFunc(all, byCost).Spent)
	s := newChart(title, costWords(c, all), x, y, "LONG-TERM SAG OF THE RAFTERS, IN", "COST, "+strings.ToUpper(c.Measure))
	woods := woodsOf(all)
	front := slices.DeleteFunc(slices.Clone(all), func(o cover.Option) bool { return !o.Front })
	slices.SortStableFunc(front, bySag)
	s.steps(front)
	for _, o := range all {
		s.option(o, slices.Index(woods, o.Wood))
	}
	for i, o := range front {
		if i > 0 && frontWords(o) == frontWords(front[i-1]) {
			continue // as drawn, and the row like it
		}
		s.near(backed, frontWords(o), s.spot(o.Sag, o.Spent), hint{angle: -45, least: 12, most: 60})
	}
	s.woodKey(woods)
	return s.Scene
}

// option draws the sign of one option; as drawn wears a ring.
func (c *chart) option(o cover.Option, wood int) {
	at, p := c.spot(o.Sag, o.Spent), hollowSign
	if o.Front {
		p = filledSign
	}
	if o.Drawn {
		c.disk(Pen{Stroke: Black, Width: 0.9}, at, 2*chartFigure)
	}
	c.woodSign(wood, p, at)
	b := around(at, 2*chartFigure, 2*chartFigure)
	c.solid = append(c.solid, b)
}

// woodSign draws the sign of a wood: beyond the shapes there are, with a dot in it.
func (c *chart) woodSign(wood int, p Pen, at Point) {
	c.sign(wood, p, at)
	if wood < signs {
		return
	}
	dot := Pen{Fill: Black}
	if p.Fill == Black {
		dot.Fill = Paper
	}
	c.disk(dot, at, chartFigure/3)
}

// steps joins the options of the front: between two of them nothing is better than the
// dearer at its sag.
func (c *chart) steps(front []cover.Option) {
	var path []Point
	for i, o := range front {
		if i > 0 {
			path = append(path, c.spot(o.Sag, front[i-1].Spent))
		}
		path = append(path, c.spot(o.Sag, o.Spent))
	}
	if len(path) > 1 {
		c.line(frontLine, path...)
	}
}

// frontWords name an option of the front in few letters.
func frontWords(o cover.Option) string {
	return o.Rafter + " @ " + calc.Number(o.Spacing) + `"`
}

// woodKey names the signs below the chart.
func (c *chart) woodKey(woods []cover.Wood) {
	top := c.Height
	row := func(words string, draw func(at Point)) {
		at := Point{14, top + chartRow/2}
		draw(at)
		c.left(plain, words, at.plus(12, 0))
		top += chartRow
	}
	for i, w := range woods {
		row(w.String(), func(at Point) { c.woodSign(i, hollowSign, at) })
	}
	row("filled: no option is better in both", func(at Point) { c.sign(0, filledSign, at) })
	row("ring: as drawn", func(at Point) { c.disk(Pen{Stroke: Black, Width: 0.9}, at, 2*chartFigure) })
	c.Height = top + 4
}

// woodsOf lists the woods of the options in order.
func woodsOf(all []cover.Option) []cover.Wood {
	var out []cover.Wood
	for _, o := range all {
		if !slices.Contains(out, o.Wood) {
			out = append(out, o.Wood)
		}
	}
	return out
}

// costWords tell the chart to who cannot see it.
func costWords(c cover.Comparison, all []cover.Option) string {
	words := fmt.Sprintf("Cost in %s against the long-term sag of the rafters for %d options of which no member is over.",
		c.Measure, len(all))
	for _, o := range all {
		if o.Front {
			words += fmt.Sprintf(" Not bettered: %s %s at %s in, %.0f %s, %.2f in.",
				o.Rafter, o.Wood, calc.Number(o.Spacing), calc.RoundUp(o.Spent, 1), c.Measure, calc.RoundUp(o.Sag, 0.01))
		}
	}
	return words
}

// SpanCurves draws how much of each rafter size the span takes, with the line at a ratio
// of 1 that none may cross.
func SpanCurves(c cover.Comparison) Scene {
	const title = "RATIO BY SPAN, EACH RAFTER SIZE"
	const mostRatio = 1.5
	curves := slices.DeleteFunc(slices.Clone(c.Curves), func(s cover.SpanCurve) bool { return len(s.Points) < 2 })
	if len(curves) == 0 {
		return empty(title, "There is no answer at more than one span, so there is nothing to draw.")
	}
	low, high := curves[0].Points[0].Span, curves[0].Points[0].Span
	for _, k := range curves {
		low, high = min(low, k.Points[0].Span), max(high, k.Points[len(k.Points)-1].Span)
	}
	x, y := chartAxes(low, high, 0, mostRatio)
	s := newChart(title, curveWords(curves), x, y, "SPAN OF THE RAFTERS ON PLAN, FT", "HIGHEST RATIO OF DEMAND TO CAPACITY")
	s.line(limitLine, s.spot(x.low, 1), s.spot(x.high, 1))
	s.left(backed, "1: FULL", s.spot(x.low, 1).plus(3, -6))
	if c.Span > x.low && c.Span < x.high {
		s.line(nowLine, s.spot(c.Span, 0), s.spot(c.Span, y.high))
		s.set(backed, "THIS COVER", s.spot(c.Span, y.high).plus(0, 8), false)
	}
	for i, k := range curves {
		s.curve(k, i, mostRatio)
	}
	row := s.Height
	for i, k := range curves {
		at := Point{14 + float64(i%4)*(sheetWidth-20)/4, row + chartRow*(float64(i/4)+0.5)}
		s.sign(i, signPen(i), at)
		s.left(plain, k.Size, at.plus(10, 0))
	}
	s.Height = row + chartRow*float64((len(curves)+3)/4) + 4
	return s.Scene
}

// signPen is filled for the second round of shapes.
func signPen(i int) Pen {
	if i >= signs {
		return filledSign
	}
	return hollowSign
}

// curve draws one size up to the upper edge of the field, with its sign at every other
// point.
func (c *chart) curve(k cover.SpanCurve, kind int, most float64) {
	var path []Point
	var at []Point
	for i, p := range k.Points {
		r := float64(p.Ratio)
		if !(r <= most) {
			if i > 0 && r < 1e6 {
				q := k.Points[i-1]
				part := (most - float64(q.Ratio)) / (r - float64(q.Ratio))
				path = append(path, c.spot(q.Span+part*(p.Span-q.Span), most))
			}
			break
		}
		path = append(path, c.spot(p.Span, r))
		if (i+kind)%2 == 0 {
			at = append(at, c.spot(p.Span, r))
		}
	}
	if len(path) > 1 {
		c.line(frontLine, path...)
	}
	for _, p := range at {
		c.sign(kind, signPen(kind), p)
	}
}

// curveWords tell the curves to who cannot see them: how far each size goes.
func curveWords(curves []cover.SpanCurve) string {
	words := "Highest ratio of the rafters over their span on plan, one curve for each size, with a line at 1."
	for _, k := range curves {
		far := 0.0
		for _, p := range k.Points {
			if p.Ratio <= 1 {
				far = max(far, p.Span)
			}
		}
		if far > 0 {
			words += fmt.Sprintf(" %s passes at %s ft.", k.Size, calc.Number(calc.RoundDown(far, 0.1)))
		}
	}
	return words
}

// empty is a scene that says why there is no chart.
func empty(title, why string) Scene {
	c := &canvas{}
	c.Title, c.Description, c.Width, c.Height = title, why, sheetWidth, 44
	c.left(heading, title, Point{8, 11})
	c.left(plain, why, Point{8, 30})
	return c.Scene
}
