package drawing

import "math"

// A hint is where a label would like to stand about its target.
type hint struct {
	angle float64 // degrees clockwise from the right of the paper
	least float64 // from the target to the middle of the label, pt
	most  float64 // farthest, pt
	onto  bool    // the label may cover its target
}

// place looks for a free place for a label of the given extent about its target: the
// nearer to the least distance and to the wanted angle, the sooner. The leader from
// it must not run through other words unless nothing else is left.
func (c *canvas) place(target Point, wide, high float64, h hint) (middle Point, ok bool) {
	const (
		outward = 4.0  // from one distance to the next, pt
		turning = 15.0 // from one angle to the next, degrees
		dear    = 2    // a turn weighs as much as so many steps outward
	)
	steps, turns := int((h.most-h.least)/outward), int(180/turning)
	for _, crossing := range []bool{false, true} {
		for cost := range steps + dear*turns + 1 {
			for turn := -min(cost/dear, turns); turn <= min(cost/dear, turns); turn++ {
				step := cost - dear*max(turn, -turn)
				if step > steps {
					continue
				}
				sin, cos := math.Sincos((h.angle + turning*float64(turn)) * math.Pi / 180)
				r := h.least + outward*float64(step)
				at := target.plus(r*cos, r*sin)
				if c.free(around(at, wide, high).grow(1.5), target, h) && (crossing || !c.crosses(at, target, wide, high)) {
					return at, true
				}
			}
		}
	}
	return Point{}, false
}

// free reports whether a label may stand in the box: on the paper, on nothing else,
// and on its own target only if it may.
func (c *canvas) free(b box, target Point, h hint) bool {
	return b.within(c.field) && (h.onto || !b.holds(target)) && !b.meetsAny(c.words) && !b.meetsAny(c.solid)
}

// crosses reports whether the leader from a label at from to its target runs through
// other words. The label has the given extent.
func (c *canvas) crosses(from, target Point, wide, high float64) bool {
	const step = 2.0 // pt
	own := around(from, wide, high)
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

// callout writes words near a target with a leader to it, or not at all when there
// is no room.
func (c *canvas) callout(l lettering, words string, target Point, h hint) {
	b := l.room(words, target, false)
	if at, ok := c.place(target, b.width(), b.height(), h); ok {
		c.leader(l.room(words, at, false), target)
		c.set(l, words, at, false)
	}
}

// near writes words near a target without a leader, or not at all when there is no
// room.
func (c *canvas) near(l lettering, words string, target Point, h hint) {
	h.onto = true
	b := l.room(words, target, false)
	if at, ok := c.place(target, b.width(), b.height(), h); ok {
		c.set(l, words, at, false)
	}
}

// leader draws the line from a label to its target, with a dot at the end.
func (c *canvas) leader(label box, target Point) {
	c.line(thin, label.edge(target), target)
	c.disk(ink, target, 1.2)
}

// mark draws the hexagon of a connection near its joint with a leader to it, or
// nothing when there is no room.
func (c *canvas) mark(words string, joint Point, h hint) {
	wide, high := tagRoom(words)
	if at, ok := c.place(joint, wide, high, h); ok {
		c.leader(around(at, wide, high), joint)
		c.hexagon(words, at)
	}
}

// tagRoom is the extent of the hexagon about a mark, pt.
func tagRoom(words string) (wide, high float64) { return widthOf(words, small, true) + 8, small + 5 }

// linked says that what was drawn last stands for a connection.
func (c *canvas) linked(mark string) {
	last := len(c.Items) - 1
	switch item := c.Items[last].(type) {
	case Path:
		item.Mark = mark
		c.Items[last] = item
	case Text:
		item.Mark = mark
		c.Items[last] = item
	}
}

// hexagon draws the mark of a connection about a middle.
func (c *canvas) hexagon(words string, middle Point) {
	wide, high := tagRoom(words)
	b := around(middle, wide, high)
	const point = 4 // length of the two points, pt
	c.shape(tagged,
		Point{b.left, middle.Y}, Point{b.left + point, b.top}, Point{b.right - point, b.top},
		Point{b.right, middle.Y}, Point{b.right - point, b.bottom}, Point{b.left + point, b.bottom})
	c.linked(words)
	c.set(lettering{size: small, bold: true, ink: Tag}, words, middle, false)
	c.linked(words)
	c.words[len(c.words)-1] = b
}
