package drawing

import "math"

// A hint is where a label would like to stand about its target.
type hint struct {
	angle float64 // degrees clockwise from the right of the paper
	least float64 // from the target to the middle of the label, pt
	most  float64 // farthest, pt
}

// place looks for a free place for a label of the given extent near its target:
// outward from the least distance, turning away from the wanted angle. The leader
// from it must not run through other words unless nothing else is left.
func (c *canvas) place(target Point, wide, high float64, h hint) (middle Point, ok bool) {
	for _, crossing := range []bool{false, true} {
		for r := h.least; r <= h.most; r += 4 {
			for turn := range 24 {
				sign := float64(1 - 2*(turn%2))
				angle := (h.angle + sign*15*float64((turn+1)/2)) * math.Pi / 180
				sin, cos := math.Sincos(angle)
				at := target.plus(r*cos, r*sin)
				b := around(at, wide, high).grow(1.5)
				if !b.within(c.field) || b.holds(target) || c.taken(b) {
					continue
				}
				if crossing || !c.crosses(at, target, b) {
					return at, true
				}
			}
		}
	}
	return Point{}, false
}

// crosses reports whether the leader from a label at from to its target runs through
// other words. own is the place of the label.
func (c *canvas) crosses(from, target Point, own box) bool {
	const step = 2.0 // pt
	n := from.distance(target) / step
	for i := 0.0; i < n; i++ {
		p := from.plus((target.X-from.X)*i/n, (target.Y-from.Y)*i/n)
		if own.holds(p) {
			continue
		}
		for _, b := range c.words {
			if b.holds(p) {
				return true
			}
		}
	}
	return false
}

// callout writes words near a target with a leader to it. It reports false, and
// draws nothing, when there is no room.
func (c *canvas) callout(l lettering, words string, target Point, h hint) bool {
	b := l.room(words, target, false)
	at, ok := c.place(target, b.width(), b.height(), h)
	if !ok {
		return false
	}
	c.leader(l.room(words, at, false), target)
	c.set(l, words, at, false)
	return true
}

// near writes words near a target without a leader.
func (c *canvas) near(l lettering, words string, target Point, h hint) bool {
	b := l.room(words, target, false)
	at, ok := c.place(target, b.width(), b.height(), h)
	if ok {
		c.set(l, words, at, false)
	}
	return ok
}

// leader draws the line from a label to its target, with a dot at the end.
func (c *canvas) leader(label box, target Point) {
	c.line(thin, label.edge(target), target)
	c.disk(ink, target, 1.2)
}

// mark draws the hexagon of a connection near its joint with a leader to it. It
// reports false, and draws nothing, when there is no room.
func (c *canvas) mark(words string, joint Point, h hint) bool {
	wide, high := tagRoom(words)
	at, ok := c.place(joint, wide, high, h)
	if !ok {
		return false
	}
	c.leader(around(at, wide, high), joint)
	c.hexagon(words, at)
	return true
}

// tagRoom is the extent of the hexagon about a mark, pt.
func tagRoom(words string) (wide, high float64) { return widthOf(words, small, true) + 8, small + 5 }

// hexagon draws the mark of a connection about a middle.
func (c *canvas) hexagon(words string, middle Point) {
	wide, high := tagRoom(words)
	b := around(middle, wide, high)
	const point = 4 // length of the two points, pt
	c.shape(tagged,
		Point{b.left, middle.Y}, Point{b.left + point, b.top}, Point{b.right - point, b.top},
		Point{b.right, middle.Y}, Point{b.right - point, b.bottom}, Point{b.left + point, b.bottom})
	c.set(lettering{size: small, bold: true, ink: Tag}, words, middle, false)
	c.words[len(c.words)-1] = b
}
