package brace

import (
	"errors"
	"math"

	"patiocover/beam"
)

// A Geometry is a row of posts below one member, a beam or a rafter, that their braces
// meet.
type Geometry struct {
	Length   float64   // in, of the member
	Supports []float64 // in from its left end, ascending; each a post or another support
	Posts    []bool    // by support: a post with braces; else a support that only carries, such as a ledger
	Splices  []int     // supports over which the member is spliced
	Height   float64   // H, in, from the feet to the underside of the member, about
	Drop     float64   // a, in, from there down to the joints of the braces on the posts; below H
	Reach    float64   // c, in, from a post to the joint of its brace on the member
}

// A Post is what a push of one pound on its row asks of one support.
type Post struct {
	Braces int     // 0 to 2; a brace goes toward each neighboring support
	Shear  float64 // ratio, the largest share of the push in this post
	Brace  float64 // ratio, the largest share of the push in one of its braces
	Top    float64 // factor on H / c, force between member and post top, up or down
	Foot   float64 // factor on H / c, force in the post below its braces, up or down
}

// A Bay is what a push of one pound on its row asks of the member between two supports, or
// beyond the last one.
type Bay struct {
	Moment float64 // in, factor on H / c, the largest of either sense
	Shear  float64 // factor on H / c, the largest of either sense
}

// A Row is the statics of a braced row under a push of one pound.
type Row struct {
	Geometry Geometry // the row
	Posts    []Post   // by support
	Bays     []Bay    // left overhang, spans, right overhang
	sticks   []stick
}

// A stick is one piece of the member between splices.
type stick struct {
	from        float64 // in
	first, last int     // supports
	line        *beam.Line
}

// A sharing is the part of the push in each brace of each post, to its left and to its
// right, by moments about the top joints; they add up to 1.
type sharing [][2]float64

// ErrReach says that two braces would meet between two supports, or that a brace would
// pass the support beyond.
var ErrReach = errors.New("the braces reach beyond the middle between two supports")

// rounding is the part of a span, a ratio, that is no reach.
const rounding = 1e-9

var errAlone = errors.New("a braced row needs a post and a second support")

// NewRow solves a row for several sharings of the push among its braces and keeps the
// largest of each force: equal posts, the portal method, by which a post with braces on
// both sides takes twice as much, and the elastic frame for member and posts of like and
// of unlike stiffness. The error is [ErrReach], or that of the geometry.
func NewRow(g Geometry) (Row, error) {
	r := Row{Geometry: g, Posts: make([]Post, len(g.Supports)), Bays: make([]Bay, len(g.Supports)+1)}
	for i := range r.Posts {
		if g.Posts[i] {
			r.Posts[i].Braces = len(r.Posts[i:min(i+2, len(r.Posts))]) - 1 + min(i, 1)
		}
	}
	for i := 1; i < len(g.Supports); i++ {
		ends := 1.0
		if g.Posts[i-1] && g.Posts[i] {
			ends = 2
		}
		if span := g.Supports[i] - g.Supports[i-1]; !(ends*g.Reach <= span*(1+rounding)) {
			return Row{}, ErrReach
		}
	}
	if err := r.cut(); err != nil {
		return Row{}, err
	}
	equal, portal := r.simple()
	if len(equal) == 0 {
		return Row{}, errAlone
	}
	all := []sharing{equal, portal}
	for _, stiffness := range []float64{1.0 / 4, 1, 4} { // of the member over that of a post
		s, err := r.elastic(stiffness)
		if err != nil {
			return Row{}, err
		}
		all = append(all, s)
	}
	for _, s := range all {
		if err := r.raise(s); err != nil {
			return Row{}, err
		}
	}
	return r, nil
}

// simple returns the sharings by equal posts and by the portal method, none where there
// is no brace.
func (r *Row) simple() (equal, portal sharing) {
	posts, braces := 0, 0
	for _, p := range r.Posts {
		braces += p.Braces
		posts += min(p.Braces, 1)
	}
	if braces == 0 {
		return nil, nil
	}
	equal, portal = make(sharing, len(r.Posts)), make(sharing, len(r.Posts))
	for i := range r.Posts {
		for side := range 2 {
			if r.has(i, side) {
				equal[i][side] = 1 / float64(posts*r.Posts[i].Braces)
				portal[i][side] = 1 / float64(braces)
			}
		}
	}
	return equal, portal
}

// has reports whether a support has a brace to its left (0) or to its right (1).
func (r *Row) has(i, side int) bool {
	return r.Geometry.Posts[i] && (side == 0 && i > 0 || side == 1 && i < len(r.Posts)-1)
}

// joint is the place of a brace on the member, in.
func (r *Row) joint(i, side int) float64 {
	return r.Geometry.Supports[i] + float64(2*side-1)*r.Geometry.Reach
}

// cut lays the sticks of the member out.
func (r *Row) cut() error {
	g := &r.Geometry
	from, first, last := 0.0, 0, len(r.Posts)-1
	for _, end := range append(append([]int(nil), g.Splices...), last) {
		to := g.Supports[end]
		if end == last {
			to = g.Length
		}
		var supports []float64
		for i := first; i <= end; i++ {
			supports = append(supports, g.Supports[i]-from)
		}
		line, err := beam.NewLine(to-from, supports)
		if err != nil {
			return err
		}
		r.sticks = append(r.sticks, stick{from: from, first: first, last: end, line: line})
		from, first = to, end
	}
	return nil
}

// raise raises the forces by those of one sharing. When the roof moves to the right a
// brace to the left of its post is pressed, lifts the member and pushes the post down;
// one to the right is pulled and does the reverse. The vertical force of a brace is its
// horizontal one, its share times H / a, times a / c.
func (r *Row) raise(s sharing) error {
	top := make([]float64, len(r.Posts))
	for _, k := range r.sticks {
		if err := r.raiseStick(k, s, top); err != nil {
			return err
		}
	}
	for i := range r.Posts {
		p := &r.Posts[i]
		left, right := s[i][0], s[i][1]
		p.Shear = max(p.Shear, left+right)
		p.Brace = max(p.Brace, math.Abs(left), math.Abs(right))
		p.Top = max(p.Top, math.Abs(top[i]))
		p.Foot = max(p.Foot, math.Abs(top[i]+left-right))
	}
	return nil
}

// raiseStick solves one stick under the forces of its braces, adds its reactions to top
// and raises the bays.
func (r *Row) raiseStick(k stick, s sharing, top []float64) error {
	var loads []beam.Load
	for i := k.first; i <= k.last; i++ {
		for side := range 2 {
			if r.has(i, side) && k.holds(i, side) {
				loads = append(loads, beam.Point(r.joint(i, side)-k.from, float64(2*side-1)*s[i][side]))
			}
		}
	}
	plan, err := beam.NewPlan(k.line, [][]beam.Load{loads})
	if err != nil {
		return err
	}
	var got beam.Response
	plan.Forces([]float64{1}, &got)
	for n, reaction := range got.Reactions {
		top[k.first+n] += reaction
	}
	for b := range got.Bays {
		bay := &r.Bays[k.first+b]
		bay.Moment = max(bay.Moment, got.Bays[b].MomentAbs())
		bay.Shear = max(bay.Shear, got.Bays[b].ShearAbs())
	}
	return nil
}

// holds reports whether a brace of a support meets this stick: at a splice the left brace
// meets the stick that ends there, the right one that which begins.
func (k stick) holds(i, side int) bool {
	return (side == 1 && i < k.last) || (side == 0 && i > k.first)
}
