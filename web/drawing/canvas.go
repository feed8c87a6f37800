package drawing

import (
	"math"

	"patiocover/calc"
)

// sheetWidth is the width of every scene: five inches, in points.
const sheetWidth = 5 * 72.0

// A canvas is a scene while it is being drawn, at one scale.
type canvas struct {
	Scene
	scale  scale
	origin Point // paper place of the model's origin
	upward bool  // the second axis of the model points up the paper
	solid  []box // places that no word may cover
	words  []box // places of words and marks, which no leader may cross either
	field  box   // where words may be placed freely
}

// at is the paper place of a point of the model, in feet.
func (c *canvas) at(x, y float64) Point {
	if c.upward {
		y = -y
	}
	return c.origin.plus(x*c.scale.foot, y*c.scale.foot)
}

// ft turns the inches of the report's sizes into feet.
func ft(inches float64) float64 { return inches * calc.In / calc.Ft }

// The pens of the drawings.
var (
	cutWood   = Pen{Fill: Wood, Stroke: Black, Width: 1}
	seenWood  = Pen{Fill: Wood, Stroke: Black, Width: 0.6}
	hidden    = Pen{Stroke: Black, Width: 0.8, Dash: []float64{4, 2}}
	unsized   = Pen{Fill: Paper, Stroke: Gray, Width: 0.7, Dash: []float64{3, 2}}
	existing  = Pen{Fill: Pale, Stroke: Existing, Width: 0.7}
	concrete  = Pen{Fill: Concrete, Stroke: Existing, Width: 0.7}
	thin      = Pen{Stroke: Gray, Width: 0.45}
	hatching  = Pen{Stroke: Existing, Width: 0.35}
	cutting   = Pen{Stroke: Gray, Width: 0.5, Dash: []float64{9, 2, 2, 2}}
	levelLine = Pen{Stroke: Gray, Width: 0.45, Dash: []float64{2, 2}}
	ink       = Pen{Fill: Black}
	bold      = Pen{Stroke: Black, Width: 1.1}
	blank     = Pen{Fill: Paper}
	tagged    = Pen{Fill: Paper, Stroke: Tag, Width: 0.9}
)

// line draws an open line through the points.
func (c *canvas) line(p Pen, points ...Point) {
	c.Items = append(c.Items, Path{Points: points, Pen: p})
}

// shape draws a closed shape.
func (c *canvas) shape(p Pen, corners ...Point) {
	c.Items = append(c.Items, Path{Points: corners, Closed: true, Pen: p})
}

// bar draws an upright rectangle between two opposite corners and returns its place.
func (c *canvas) bar(p Pen, from, to Point) box {
	b := spanning(from, to)
	c.shape(p, b.corners()...)
	return b
}

// disk draws a filled or outlined circle, radius in points.
func (c *canvas) disk(p Pen, middle Point, radius float64) {
	const corners = 20
	around := make([]Point, corners)
	for i := range around {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		around[i] = middle.plus(radius*cos, radius*sin)
	}
	c.shape(p, around...)
}

// hatch fills a box with lines at 45 degrees, gap points apart across the paper.
func (c *canvas) hatch(b box, gap float64) {
	wide, high := b.right-b.left, b.bottom-b.top
	for d := gap; d < wide+high; d += gap {
		c.line(hatching,
			Point{b.left + min(d, wide), b.top + max(0, d-wide)},
			Point{b.left + max(0, d-high), b.top + min(d, high)})
	}
}

// crossed draws the end grain of timber: a rectangle with an X.
func (c *canvas) crossed(from, to Point) box {
	b := c.bar(cutWood, from, to)
	at := b.corners()
	c.line(thin, at[0], at[2])
	c.line(thin, at[1], at[3])
	return b
}

// A lettering says how words are set.
type lettering struct {
	size  float64 // of the letters, pt
	bold  bool
	ink   Ink
	clear bool // hide what lies below the words
}

var (
	plain   = lettering{size: small, ink: Black}
	backed  = lettering{size: small, ink: Black, clear: true}
	heavy   = lettering{size: small, bold: true, ink: Black, clear: true}
	heading = lettering{size: large, bold: true, ink: Black}
)

// room is the box that words take about a middle, level or turned to read up the
// paper.
func (l lettering) room(words string, middle Point, up bool) box {
	wide, high := l.width(words), l.size+1
	if up {
		wide, high = high, wide
	}
	return around(middle, wide, high)
}

// width is the length of words with a little air, pt.
func (l lettering) width(words string) float64 { return widthOf(words, l.size, l.bold) + 2 }

// set writes words about a middle and takes their place.
func (c *canvas) set(l lettering, words string, middle Point, up bool) {
	t := Text{At: middle, Words: words, Anchor: Middle}
	if up {
		t.Angle = -90
	}
	c.write(l, t, l.room(words, middle, up))
}

// left writes words that begin at a point, level with it.
func (c *canvas) left(l lettering, words string, start Point) {
	b := l.room(words, start.plus(l.width(words)/2, 0), false)
	c.write(l, Text{At: start, Words: words, Anchor: Start}, b)
}

// right writes words that end at a point, level with it.
func (c *canvas) right(l lettering, words string, end Point) {
	b := l.room(words, end.plus(-l.width(words)/2, 0), false)
	c.write(l, Text{At: end, Words: words, Anchor: End}, b)
}

// write sets a text whose point lies level with the middle of its letters, and takes
// its place.
func (c *canvas) write(l lettering, t Text, place box) {
	const capital = 0.36 // half the height of a capital letter, of the em
	if l.clear {
		c.shape(blank, place.corners()...)
	}
	t.Size, t.Bold, t.Ink = l.size, l.bold, l.ink
	down := Point{0, capital * l.size}
	if t.Angle != 0 {
		down = Point{capital * l.size, 0}
	}
	t.At = t.At.plus(down.X, down.Y)
	c.Items = append(c.Items, t)
	c.words = append(c.words, place)
}
