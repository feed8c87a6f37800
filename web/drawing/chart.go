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
}

// at is the paper place of a value, pt.
func (a axis) at(v float64) float64 { return a.from + (v-a.low)/(a.high-a.low)*(a.to-a.from) }

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
	for i := 0.0; i <= math.Round((x.high-x.low)/x.step); i++ {
		v := x.low + i*x.step
		p := Point{x.at(v), c.field.bottom}
		c.line(hatching, p, Point{p.X, c.field.top})
		c.set(plain, shortNumber(v), p.plus(0, 8), false)
	}
	for i := 0.0; i <= math.Round((y.high-y.low)/y.step); i++ {
		v := y.low + i*y.step
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
	x = newAxis(xLow, xHigh, chartLeft, sheetWidth-chartRight, 7)
	y = newAxis(yLow, yHigh, chartTop+chartHigh, chartTop, 8)
	return x, y
}

// shortNumber writes a tick without the dust of its making.
func shortNumber(v float64) string { return calc.Number(math.Round(v*1e6) / 1e6) }

// place is the paper place of two values.
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
