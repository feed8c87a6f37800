package drawing

import (
	"math"

	"patiocover/calc"
)

// A strand is a string of dimensions beside the drawing, from stop to stop.
type strand struct {
	stops   []float64 // ft, ascending, along the string
	edge    float64   // ft, where the lines from the object begin, across the string
	far     float64   // ft, the edge across the object
	offset  float64   // pt from the edge to the string; the sign gives the side of the paper
	upright bool      // the string runs up the paper
	words   string    // stand in for the length of a string of one piece
}

// A piece is a part of a string with the words that tell its length.
type piece struct {
	from, to float64 // ft
	words    string
}

const (
	tickHalf = 2.8  // half of a 45 degree stroke, pt
	tier     = 11.0 // from one row of words to the next, pt
)

// on is the paper place of a stop at a distance from the edge, pt.
func (c *canvas) on(s strand, stop, offset float64) Point {
	if s.upright {
		return c.at(s.edge, stop).plus(offset, 0)
	}
	return c.at(stop, s.edge).plus(0, offset)
}

// dimensions draws a string and returns how far from the edge its words reach, pt.
func (c *canvas) dimensions(s strand) float64 {
	s.stops = distinct(s.stops)
	if len(s.stops) < 2 {
		return math.Abs(s.offset)
	}
	side := math.Copysign(1, s.offset)
	for _, stop := range s.stops {
		c.line(thin, c.on(s, stop, 2*side), c.on(s, stop, s.offset+3*side))
		p := c.on(s, stop, s.offset)
		c.line(bold, p.plus(-tickHalf, tickHalf), p.plus(tickHalf, -tickHalf))
	}
	first, last := c.on(s, s.stops[0], s.offset), c.on(s, s.stops[len(s.stops)-1], s.offset)
	c.line(thin, first, last)
	c.solid = append(c.solid, spanning(first, last).grow(2))
	reach := math.Abs(s.offset) + tier/2
	for _, p := range c.pieces(s) {
		reach = max(reach, c.length(s, p, side))
	}
	return reach
}

// chained draws a string and, beyond it, the whole length, unless they are the same.
// Where the paper ends before, the whole length stands across the object. It returns how far from the edge the words reach, pt.
func (c *canvas) chained(s strand) float64 {
	s.stops = distinct(s.stops)
	if len(s.stops) > 2 {
		reach := c.dimensions(s)
		s.offset = math.Copysign(max(reach+6, math.Abs(s.offset)+18), s.offset)
		s.stops = []float64{s.stops[0], s.stops[len(s.stops)-1]}
		if c.on(s, s.stops[0], s.offset).X < tier/2+2 {
			s.edge, s.offset = s.far, tier
		}
	}
	return c.dimensions(s)
}

// length sets the words of a piece: on the line where they fit, else beside it, else
// turned across it. Where no place is free they are left out, as the list of posts
// has them too. It returns how far from the edge they reach, pt.
func (c *canvas) length(s strand, p piece, side float64) float64 {
	middle := (p.from + p.to) / 2
	long := widthOf(p.words, small, false) + 2
	room := c.on(s, p.from, 0).distance(c.on(s, p.to, 0)) - 2*tickHalf
	if long <= room {
		c.set(backed, p.words, c.on(s, middle, s.offset), s.upright)
		return math.Abs(s.offset) + tier/2
	}
	for _, try := range []struct {
		off float64 // from the line to the middle of the words, pt
		up  bool
	}{{tier, s.upright}, {2 * tier, s.upright}, {long/2 + 5, !s.upright}, {-tier, s.upright}, {0, s.upright}} {
		at := inside(c.on(s, middle, s.offset+side*try.off), long, try.up)
		if b := backed.room(p.words, at, try.up); !b.meetsAny(c.words) && b.left > 0 && b.right < sheetWidth {
			c.set(backed, p.words, at, try.up)
			half := tier / 2
			if try.up != s.upright {
				half = long / 2
			}
			return math.Abs(s.offset) + try.off + half
		}
	}
	return math.Abs(s.offset)
}

// inside moves the middle of level words of the given length onto the paper.
func inside(middle Point, long float64, up bool) Point {
	if !up {
		middle.X = min(max(middle.X, long/2+2), sheetWidth-long/2-2)
	}
	return middle
}

// pieces words the lengths between the stops. Runs of equal pieces that are too
// short for words of their own are told together: 6 @ 5'-3".
func (c *canvas) pieces(s strand) []piece {
	var out []piece
	for i := 0; i+1 < len(s.stops); {
		from, to := s.stops[i], s.stops[i+1]
		n := 1
		for i+n+1 < len(s.stops) && math.Abs(s.stops[i+n+1]-s.stops[i+n]-(to-from)) < ft(1.0/32) {
			n++
		}
		words := calc.FeetInches((to - from) * calc.Ft)
		if s.words != "" {
			words = s.words
		}
		short := (to-from)*c.scale.foot-2*tickHalf < widthOf(words, small, false)+2
		if n < 2 || !short {
			out = append(out, piece{from, to, words})
			i++
			continue
		}
		out = append(out, piece{from, s.stops[i+n], calc.Number(float64(n)) + " @ " + words})
		i += n
	}
	return out
}

// distinct drops stops that no tape tells from the one before.
func distinct(stops []float64) []float64 {
	var out []float64
	for _, x := range stops {
		if len(out) == 0 || x-out[len(out)-1] > ft(1.0/16) {
			out = append(out, x)
		}
	}
	return out
}
