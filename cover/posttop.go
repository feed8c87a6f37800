package cover

import (
	"patiocover/beam/member"
	"patiocover/calc"
)

// A topJoint is how the beam meets the post, and what the user says of the post.
type topJoint struct {
	joint   string  // seated, notched or side_bolted
	tongue  float64 // in; 0 where half of the post is left
	least   bool    // a least eccentricity is taken
	holes   float64 // in, width of holes in one cross-section
	plate   bool    // the foot bears on metal
	faceOut bool    // the wide face lies out from the house
	faced   bool    // the user says how it lies
}

// newTopJoint reads it from a filled input.
func newTopJoint(in Input) topJoint {
	t := topJoint{
		joint: *in.Beams.OnPost, least: *in.Posts.LeastEccentricity, holes: *in.Posts.Holes * calc.In, plate: *in.Posts.FootPlate,
	}
	if in.Posts.Tongue != nil {
		t.tongue = *in.Posts.Tongue * calc.In
	}
	if in.Posts.WideFace != nil {
		t.faced, t.faceOut = true, *in.Posts.WideFace == "out"
	}
	return t
}

// ways are the ways that the post may be turned: one where it is square or the user says
// it, else both, the first with its wide face along the house.
func (c *postCase) ways(post *wood) (from, to int) {
	switch {
	case post.section.Breadth == post.section.Depth:
		return 0, 0
	case !c.top.faced:
		return 0, 1
	case c.top.faceOut:
		return 1, 1
	}
	return 0, 0
}

// side is the size of the post in the plane of a direction, in.
func side(post *wood, direction int, turned bool) float64 {
	if (direction == outward) == turned {
		return post.section.Depth
	}
	return post.section.Breadth
}

// net is the area of the post less its holes, which may run the long way, in².
func (c *postCase) net(post *wood) float64 {
	return max(0, post.section.Area()-c.top.holes*post.section.Widest())
}

// tongue is what a notch leaves of the post, measured out from the house, in.
func (c *postCase) tongue(post *wood, turned bool) float64 {
	if c.top.tongue > 0 {
		return min(c.top.tongue, side(post, outward, turned))
	}
	return side(post, outward, turned) / 2
}

// seat is the contact of one piece of beam with the post top; it has no length where the
// beam hangs at the side of the post.
func (c *postCase) seat(post, beam *wood, turned bool) member.Seat {
	at := post.section.Contact
	length, width := at(side(post, alongHouse, turned)), min(at(side(post, outward, turned)), beam.section.Breadth)
	if c.half {
		length /= 2
	}
	switch c.top.joint {
	case "side_bolted":
		return member.Seat{}
	case "notched":
		width = min(side(post, outward, turned)-c.tongue(post, turned), beam.section.Breadth)
	}
	return member.Seat{Width: max(0, width), Length: length}
}

// leastOff is the suggested least eccentricity over the length of contact, ratio: a sixth
// of it, common practice for columns under end bearing.
const leastOff = 1.0 / 6

// offsets are the eccentricities of the beam on the post, in: out from the house the real
// one where the beam hangs at its side or in a notch, and in the plane of a direction the
// least one.
func (c *postCase) offsets(post, beam *wood, direction int, turned bool) (along, out float64) {
	width := side(post, outward, turned)
	switch c.top.joint {
	case "side_bolted":
		out = (width + beam.section.Breadth) / 2
	case "notched":
		out = c.tongue(post, turned) / 2 // the seat is what the tongue leaves
	}
	least := leastOff
	if !c.top.least && !(c.half && direction == alongHouse) {
		least = 0 // two pieces of beam never press alike
	}
	if direction == alongHouse {
		along = least * side(post, alongHouse, turned)
	} else {
		out = max(out, least*min(width, beam.section.Breadth))
	}
	return along, out
}
