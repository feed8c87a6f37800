package drawing

import "patiocover/calc"

// A scale is how large a foot is drawn.
type scale struct {
	words string  // as the title says it
	foot  float64 // of paper for a foot, pt
}

// scales are those of an architect's and an engineer's rule, the largest first.
var scales = []scale{
	{`1/2" = 1'-0"`, 36}, {`3/8" = 1'-0"`, 27}, {`1/4" = 1'-0"`, 18}, {`3/16" = 1'-0"`, 13.5},
	{`1/8" = 1'-0"`, 9}, {`1" = 10'`, 7.2}, {`1" = 15'`, 4.8}, {`1" = 20'`, 3.6}, {`1" = 25'`, 2.88},
	{`1" = 30'`, 2.4}, {`1" = 40'`, 1.8}, {`1" = 60'`, 1.2},
}

// fitting returns the largest scale at which both lengths, in feet, fit into their
// rooms, in points; the smallest scale if none does.
func fitting(wide, high, roomWide, roomHigh float64) scale {
	for _, s := range scales {
		if wide*s.foot <= roomWide && high*s.foot <= roomHigh {
			return s
		}
	}
	return scales[len(scales)-1]
}

// titleHeight is the paper that a title takes, pt.
const titleHeight = 40

// title writes the name of the view with its scale in words and as a bar, below the
// given height of the paper, and ends the scene there.
func (c *canvas) title(words string, top float64) {
	const margin = 8
	c.line(bold, Point{margin, top}, Point{sheetWidth - margin, top})
	c.left(heading, words, Point{margin, top + 11})
	c.left(plain, "Scale "+c.scale.words+" printed 5 in. wide", Point{margin, top + 26})
	unit := c.scale.bar()
	piece := unit * c.scale.foot
	start := Point{sheetWidth - margin - 14 - 4*piece, top + 8}
	for i := range 4 {
		from := start.plus(float64(i)*piece, 0)
		c.bar(Pen{Fill: []Ink{Black, Paper}[i%2], Stroke: Black, Width: 0.5}, from, from.plus(piece, 4))
	}
	for _, n := range []float64{0, 2, 4} {
		label := calc.Number(n*unit) + "'"
		c.set(plain, label, start.plus(n*piece, 12), false)
	}
	c.Height = top + titleHeight
}

// bar is the length of one of the four pieces of the graphic scale, ft: the
// shortest for which its numbers stand apart.
func (s scale) bar() float64 {
	for _, unit := range []float64{0.5, 1, 2.5, 5, 10} {
		if unit*s.foot >= 16 {
			return unit
		}
	}
	return 20
}
