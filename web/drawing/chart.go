package drawing

import (
	"math"

	"patiocover/calc"
)

// Paper of a chart, in points.
const (
	chartLeft   = 46.0  // of the axis from the left edge
	chartRight  = 12.0  // of the field from the right edge
	chartTop    = 37.0  // of the field from the upper edge
	chartHigh   = 200.0 // of the field
	chartBelow  = 34.0  // of the words below the axis
	chartRow    = 14.0  // of a line of the key
	chartFigure = 3.2   // half the size of a sign
)

// A chart is a canvas with two axes.
type chart struct {
	canvas
	x, y axis
}

// An axis turns values into paper.
type axis struct {
	low, high float64 // ends of the axis, in Unit of its values
	step      float64 // from one tick to the next, in the same unit
	from, to  float64 // pt, paper places of the ends
	doubling  bool    // equal lengths of paper stand for equal ratios; the ticks about double
	below     bool    // the lower end stands for all that is less as well
}

// at is the paper place of a value, pt.
func (a axis) at(v float64) float64 {
	if a.doubling {
		return a.from + math.Log(v/a.low)/math.Log(a.high/a.low)*(a.to-a.from)
	}
	return a.from + (v-a.low)/(a.high-a.low)*(a.to-a.from)
}

// ticks are the values that the axis names.
func (a axis) ticks() []float64 {
	var out []float64
	if a.doubling {
		for v := a.low; v <= a.high*(1+1e-9); v = nextDouble(v) {
			out = append(out, v)
		}
		return out
	}
	for i := 0.0; i <= math.Round((a.high-a.low)/a.step); i++ {
		out = append(out, a.low+i*a.step)
	}
	return out
}

// nextDouble follows 1, 2, 5, 10 at any power of ten.
func nextDouble(v float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(v)+1e-9))
	switch math.Round(v / power) {
	case 1:
		return 2 * power
	case 2:
		return 5 * power
	}
	return 10 * power
}

// newDoubling spans at least the positive values between low and high in ticks that about
// double.
func newDoubling(low, high, from, to float64) axis {
	v := math.Pow(10, math.Floor(math.Log10(low)))
	for nextDouble(v) <= low*(1+1e-9) {
		v = nextDouble(v)
	}
	a := axis{low: v, high: nextDouble(v), from: from, to: to, doubling: true}
	for a.high < high*(1-1e-9) {
		a.high = nextDouble(a.high)
	}
	return a
}

// newAxis spans at least the values between low and high, in even steps; there are at
// most so many of them.
func newAxis(low, high, from, to float64, most int) axis {
	if !(high > low) {
		low, high = low-max(1e-3, 0.05*math.Abs(low)), high+max(1e-3, 0.05*math.Abs(high))
	}
	step := math.Pow(10, math.Floor(math.Log10((high-low)/float64(most))))
	for _, n := range []float64{1, 2, 2.5, 5, 10} {
		if a := stepped(low, high, step*n); math.Round((a.high-a.low)/a.step) <= float64(most) {
			a.from, a.to = from, to
			return a
		}
	}
	a := stepped(low, high, step*20)
	a.from, a.to = from, to
	return a
}

// stepped widens the ends to whole steps.
func stepped(low, high, step float64) axis {
	return axis{low: math.Floor(low/step+1e-9) * step, high: math.Ceil(high/step-1e-9) * step, step: step}
}

// newChart draws the title and both axes with their ticks and words.
func newChart(title, description string, x, y axis, across, up string) *chart {
	c := &chart{x: x, y: y}
	c.Title, c.Description = title, description
	c.Width, c.Height = sheetWidth, chartTop+chartHigh+chartBelow
	c.field = box{chartLeft, chartTop, sheetWidth - chartRight, chartTop + chartHigh}
	c.left(heading, title, Point{8, 9})
	c.left(plain, up, Point{8, 23})
	for _, v := range x.ticks() {
		p := Point{x.at(v), c.field.bottom}
		c.line(hatching, p, Point{p.X, c.field.top})
		words := shortNumber(v)
		if x.below && v == x.low {
			words = "≤" + words
		}
		c.set(plain, words, p.plus(0, 8), false)
	}
	for _, v := range y.ticks() {
		p := Point{c.field.left, y.at(v)}
		c.line(hatching, p, Point{c.field.right, p.Y})
		c.right(plain, shortNumber(v), p.plus(-4, 0))
	}
	c.line(bold, Point{c.field.left, c.field.top}, Point{c.field.left, c.field.bottom}, Point{c.field.right, c.field.bottom})
	c.set(plain, across, Point{(c.field.left + c.field.right) / 2, c.field.bottom + 23}, false)
	return c
}

// chartAxes makes the two axes of the field.
func chartAxes(xLow, xHigh, yLow, yHigh float64) (x, y axis) {
	return newAxis(xLow, xHigh, chartLeft, sheetWidth-chartRight, 7), upAxis(yLow, yHigh)
}

// upAxis is the upright one.
func upAxis(low, high float64) axis { return newAxis(low, high, chartTop+chartHigh, chartTop, 8) }

// shortNumber writes a tick without the dust of its making.
func shortNumber(v float64) string { return calc.Number(math.Round(v*1e6) / 1e6) }

// spot is the paper place of two values.
func (c *chart) spot(x, y float64) Point { return Point{c.x.at(x), c.y.at(y)} }

// signs are the shapes by which rows are told apart, filled and hollow.
const signs = 6

// sign draws one of the shapes about a middle: circle, square, diamond, triangle up,
// triangle down, cross.
func (c *chart) sign(kind int, p Pen, at Point) {
	const r = chartFigure
	switch kind % signs {
	case 0:
		c.disk(p, at, r)
	case 1:
		c.shape(p, at.plus(-r, -r), at.plus(r, -r), at.plus(r, r), at.plus(-r, r))
	case 2:
		c.shape(p, at.plus(0, -1.4*r), at.plus(1.4*r, 0), at.plus(0, 1.4*r), at.plus(-1.4*r, 0))
	case 3:
		c.shape(p, at.plus(0, -1.3*r), at.plus(1.3*r, r), at.plus(-1.3*r, r))
	case 4:
		c.shape(p, at.plus(0, 1.3*r), at.plus(1.3*r, -r), at.plus(-1.3*r, -r))
	default:
		c.line(Pen{Stroke: Black, Width: 1.1}, at.plus(-r, -r), at.plus(r, r))
		c.line(Pen{Stroke: Black, Width: 1.1}, at.plus(-r, r), at.plus(r, -r))
	}
}
