package drawing

// A box is an upright rectangle of paper, in points.
type box struct{ left, top, right, bottom float64 }

// around returns the box of the given width and height about its middle.
func around(middle Point, width, height float64) box {
	return box{middle.X - width/2, middle.Y - height/2, middle.X + width/2, middle.Y + height/2}
}

// spanning returns the box with the two points at opposite corners.
func spanning(a, b Point) box {
	return box{min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y)}
}

// grow returns the box with a margin on every side, pt.
func (b box) grow(margin float64) box {
	return box{b.left - margin, b.top - margin, b.right + margin, b.bottom + margin}
}

// meets reports whether two boxes share more than an edge.
func (b box) meets(o box) bool {
	return b.left < o.right && o.left < b.right && b.top < o.bottom && o.top < b.bottom
}

// within reports whether the box lies inside another.
func (b box) within(o box) bool {
	return b.left >= o.left && b.right <= o.right && b.top >= o.top && b.bottom <= o.bottom
}

// holds reports whether the point lies in the box.
func (b box) holds(p Point) bool {
	return p.X > b.left && p.X < b.right && p.Y > b.top && p.Y < b.bottom
}

// corners lists the corners in turn.
func (b box) corners() []Point {
	return []Point{{b.left, b.top}, {b.right, b.top}, {b.right, b.bottom}, {b.left, b.bottom}}
}

// edge returns where the line from the middle of the box to p leaves the box; p
// lies outside.
func (b box) edge(p Point) Point {
	middle := Point{(b.left + b.right) / 2, (b.top + b.bottom) / 2}
	dx, dy := p.X-middle.X, p.Y-middle.Y
	part := 1.0
	if dx != 0 {
		part = min(part, (b.right-b.left)/2/max(dx, -dx))
	}
	if dy != 0 {
		part = min(part, (b.bottom-b.top)/2/max(dy, -dy))
	}
	return middle.plus(dx*part, dy*part)
}

// meetsAny reports whether the box meets one of the list.
func (b box) meetsAny(list []box) bool {
	for _, o := range list {
		if b.meets(o) {
			return true
		}
	}
	return false
}

// width is the extent along the paper, pt.
func (b box) width() float64 { return b.right - b.left }

// height is the extent down the paper, pt.
func (b box) height() float64 { return b.bottom - b.top }
