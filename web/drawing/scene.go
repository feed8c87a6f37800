package drawing

import (
	"math"
	"strings"
)

// A Point is a place on paper, from the left upper corner, y down.
type Point struct {
	X float64 // in points of 1/72 inch, to the right
	Y float64 // in points of 1/72 inch, down
}

// An Ink is one of the few colors of a drawing. Meaning never rests on it alone.
type Ink uint8

// The inks.
const (
	None     Ink = iota // not drawn
	Paper               // the white of the sheet, to hide what lies below words
	Black               // new work and words
	Gray                // dimensions, hidden lines
	Existing            // outline of what stands already
	Pale                // fill of what stands already
	Wood                // fill of new timber
	Concrete            // fill of concrete
	Snow                // fill of a heap of snow
	Tag                 // outline of a connection mark
)

var inkHex = [...]string{
	None: "none", Paper: "#ffffff", Black: "#111111", Gray: "#555555", Existing: "#7a7a7a",
	Pale: "#e9e9e9", Wood: "#efe0c4", Concrete: "#dcdcd8", Snow: "#dde8f2", Tag: "#123f7a",
}

// Hex returns the color as #rrggbb, or the word none.
func (i Ink) Hex() string { return inkHex[i] }

// A Pen says how a path is filled and stroked.
type Pen struct {
	Fill   Ink       // inside, None for an open line
	Stroke Ink       // outline
	Width  float64   // of the stroke, in points of 1/72 inch
	Dash   []float64 // lengths of dash and gap in turn, in points of 1/72 inch; empty for a full line
}

// A Path is a straight-sided line or shape.
type Path struct {
	Points []Point // at least two
	Closed bool    // from the last point back to the first
	Pen    Pen     // how it is drawn
	Mark   string  // of the connection that the shape points at, empty for none
}

// An Anchor says which part of a text stands at its point.
type Anchor uint8

// The anchors, along the direction of reading.
const (
	Start Anchor = iota
	Middle
	End
)

// A Text is one line of words.
type Text struct {
	At     Point   // of the anchor, on the base line
	Words  string  // as read
	Anchor Anchor  // part of the words that stands at At
	Size   float64 // height of the letters (em), in points of 1/72 inch
	Angle  float64 // of the direction of reading, degrees clockwise from the horizontal
	Bold   bool    // heavy letters
	Ink    Ink     // color
	Mark   string  // of the connection that the words name, empty for none
}

// An Item is a [Path] or a [Text].
type Item interface{ finite() bool }

// A Scene is one drawing. Later items cover earlier ones.
type Scene struct {
	Title       string  // name of the drawing
	Description string  // what it shows, in a sentence for who cannot see it
	Width       float64 // in points of 1/72 inch
	Height      float64 // in points of 1/72 inch
	Items       []Item  // in the order of drawing
}

// Words returns all texts of the scene in the order of drawing.
func (s Scene) Words() []string {
	var out []string
	for _, item := range s.Items {
		if t, ok := item.(Text); ok {
			out = append(out, t.Words)
		}
	}
	return out
}

// Has reports whether a text of the scene holds the words.
func (s Scene) Has(words string) bool {
	for _, w := range s.Words() {
		if strings.Contains(w, words) {
			return true
		}
	}
	return false
}

func (p Point) finite() bool {
	return !math.IsNaN(p.X) && !math.IsInf(p.X, 0) && !math.IsNaN(p.Y) && !math.IsInf(p.Y, 0)
}

func (p Path) finite() bool {
	for _, at := range p.Points {
		if !at.finite() {
			return false
		}
	}
	return len(p.Points) > 0
}

func (t Text) finite() bool { return t.At.finite() }

// plus returns the point moved by dx and dy.
func (p Point) plus(dx, dy float64) Point { return Point{p.X + dx, p.Y + dy} }

// distance is the length of the line between two points, pt.
func (p Point) distance(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }
