package cover

import (
	"math"

	"patiocover/calc"
)

// A plan is the geometry of a cover in inches: x along the house, y out from it,
// both horizontal.
type plan struct {
	attached   bool
	solid      bool      // covered, against open lattice
	flush      bool      // rafters hang in the face of the beams
	width      float64   // in, along the house
	projection float64   // in, wall to outer roof edge
	overhang   float64   // in, outer beam line to roof edge
	rise       float64   // fall over run, ratio
	angle      float64   // radians
	high       float64   // in, top of rafters at y = 0 above the slab
	spacing    float64   // in, rafters on center
	lines      []float64 // in, y of the beam lines
	held       []float64 // in, y of every support of a rafter
	posts      []float64 // in, x of the posts of each line
	splices    []int     // indices of the posts over which the beam is spliced
	rafters    []float64 // in, x of the rafters
	shares     []float64 // tributary width of each rafter over the spacing, ratio
}

// newPlan lays the cover out.
func newPlan(in Input) plan { return new(room).newPlan(in) }

// newPlan lays the cover out with its lists in the room.
func (r *room) newPlan(in Input) plan {
	c := in.Cover
	p := plan{
		attached:   *c.Attachment != "freestanding",
		solid:      *c.Covering == "solid",
		flush:      *in.Beams.Position == "flush",
		width:      *c.Width * calc.Ft,
		projection: *c.Projection * calc.Ft,
		overhang:   *c.Overhang * calc.Ft,
		rise:       *c.Slope * calc.In / calc.Ft,
		high:       *c.HighEdge * calc.Ft,
		spacing:    *in.Rafters.Spacing * calc.In,
	}
	p.angle = angleOf(*c.Slope)
	p.held = r.numbers.take(1 + len(in.Beams.Lines))
	p.lines = p.held[1:]
	if !p.attached {
		p.held = p.lines
	}
	for i, y := range in.Beams.Lines {
		p.lines[i] = y * calc.Ft
	}
	p.posts = r.postPositions(in.Posts, p.width)
	p.rafters, p.shares = r.rafterPositions(p.width, p.spacing)
	return p
}

// angleOf turns a fall in inches per foot into an angle, radians.
func angleOf(fall float64) float64 { return math.Atan(fall * calc.In / calc.Ft) }

// degrees turns radians into degrees.
func degrees(angle float64) float64 { return angle * 180 / math.Pi }

// postPositions returns the x of the posts of a line, in.
func (r *room) postPositions(posts Posts, width float64) []float64 {
	if posts.Count == nil {
		x := r.copied(posts.Positions)
		for i := range x {
			x[i] *= calc.Ft
		}
		return x
	}
	x := r.numbers.take(*posts.Count)
	inset := *posts.EndInset * calc.Ft
	bay := (width - 2*inset) / float64(*posts.Count-1)
	for i := range *posts.Count {
		x[i] = inset + float64(i)*bay
	}
	return x
}

// leastBay is the part of a spacing that calls for one rafter more; less is rounding.
const leastBay = 1e-6

// rafterPositions lays rafters out from the left edge at the spacing, with the
// last one at the right edge, and returns the tributary width of each over the
// spacing.
func (r *room) rafterPositions(width, spacing float64) (x, share []float64) {
	n := int(math.Ceil(width/spacing - leastBay))
	x, share = r.numbers.take(n+1), r.numbers.take(n+1)
	for i := range n {
		x[i] = float64(i) * spacing
	}
	x[n] = width
	for i := range x {
		lo, hi := tributary(x, i)
		share[i] = (hi - lo) / spacing
	}
	return x, share
}

// tributary returns the strip of the roof, in x, that rafter i carries.
func tributary(x []float64, i int) (lo, hi float64) {
	lo, hi = x[i], x[i]
	if i > 0 {
		lo = (x[i-1] + x[i]) / 2
	}
	if i < len(x)-1 {
		hi = (x[i] + x[i+1]) / 2
	}
	return lo, hi
}

// slope turns a length on plan into one along the roof.
func (p *plan) slope(onPlan float64) float64 { return onPlan / math.Cos(p.angle) }

// topAt is the height of the top of the rafters at y, in.
func (p *plan) topAt(y float64) float64 { return p.high - y*p.rise }

// mean is the mean height of the roof above the slab, in. It is not less than the
// eave height that ASCE 7-16 26.2 allows for roofs up to 10 degrees.
func (p *plan) mean() float64 { return (p.high + p.topAt(p.projection)) / 2 }

// supports returns the y of every support of a rafter, in: the ledger of an
// attached cover, and the beam lines.
func (p *plan) supports() []float64 { return p.held }

// lineOf is the index of the beam line that is a support of the rafters, −1 for the
// ledger.
func (p *plan) lineOf(support int) int {
	if p.attached {
		return support - 1
	}
	return support
}

// pieces cuts the beam of a line into its pieces: pairs of x, in, that end over
// the spliced posts.
func (p *plan) pieces() [][2]float64 {
	out := make([][2]float64, len(p.splices)+1)
	for i := range out {
		out[i][0], out[i][1] = p.piece(i)
	}
	return out
}

// piece is piece i of the beam from the left: the x of its ends, in.
func (p *plan) piece(i int) (from, to float64) {
	to = p.width
	if i > 0 {
		from = p.posts[p.splices[i-1]]
	}
	if i < len(p.splices) {
		to = p.posts[p.splices[i]]
	}
	return from, to
}

// splice chooses the posts over which the beam is spliced.
func (p *plan) splice(rule string, stock float64) {
	switch rule {
	case "none":
		return
	case "every_post":
		for i := 1; i < len(p.posts)-1; i++ {
			p.splices = append(p.splices, i)
		}
		return
	}
	from := 0.0
	for i := 1; i < len(p.posts)-1; i++ {
		reach := p.posts[i+1]
		if i+1 == len(p.posts)-1 {
			reach = p.width
		}
		if reach-from > stock+tiny {
			p.splices = append(p.splices, i)
			from = p.posts[i]
		}
	}
}

// longest returns the longest piece of the beam, in.
func (p *plan) longest() float64 {
	most := 0.0
	for _, q := range p.pieces() {
		most = max(most, q[1]-q[0])
	}
	return most
}

// strip is the depth of roof, on plan, that beam line i carries.
func (p *plan) strip(i int) float64 {
	lo := p.lines[i] / 2
	if !p.attached {
		lo = 0
	}
	hi := p.projection
	if i > 0 {
		lo = (p.lines[i-1] + p.lines[i]) / 2
	}
	if i < len(p.lines)-1 {
		hi = (p.lines[i] + p.lines[i+1]) / 2
	}
	return hi - lo
}

// besideEdge returns the part of its tributary width that an inner rafter has in the
// strip along a side edge, the largest of all, and the largest tributary share of an
// inner rafter, both ratios; zeros where all rafters stand at the edges.
func (p *plan) besideEdge(strip float64) (part, share float64) {
	for i := 1; i < len(p.rafters)-1; i++ {
		lo, hi := tributary(p.rafters, i)
		in := max(0, min(hi, strip)-lo) + max(0, hi-max(lo, p.width-strip))
		part, share = max(part, min(1, in/(hi-lo))), max(share, p.shares[i])
	}
	return part, share
}

// longestSpan is the longest distance between supports, or the whole length where
// there is but one.
func longestSpan(supports []float64, length float64) float64 {
	most := 0.0
	for i := 1; i < len(supports); i++ {
		most = max(most, supports[i]-supports[i-1])
	}
	if most == 0 {
		return length
	}
	return most
}

// shortestSpan is the shortest distance between supports, or the whole length where there
// is but one.
func shortestSpan(supports []float64, length float64) float64 {
	least := length
	for i := 1; i < len(supports); i++ {
		least = min(least, supports[i]-supports[i-1])
	}
	return least
}
