package beam

import (
	"cmp"
	"slices"
)

// A Mix says how much of each of two load shapes acts on a member.
type Mix struct {
	First  float64 // factor on the first shape
	Second float64 // factor on the second shape
}

// Outlines tell at once what a member feels at least under any [Mix] of two load
// shapes, such as its own weight and all that it carries besides. They are for searches
// that try many sizes on one geometry: a size that is too weak for what is told here is
// too weak for what [Plan.Run] finds. What does not change with the size may be the
// second shape with a factor of 1.
//
// What is told is never beyond the exact extrema but for rounding. It equals them
//   - of reactions, and of shear where no line load varies within a segment, always;
//   - of moment and deflection, where they lie at a tip, a support, a point load or an
//     end of a line load;
//   - of everything, under the mixes that were given as samples.
//
// Elsewhere it falls short by little, and the nearer a sample is the less.
//
// Make them with [NewOutlines]; the zero value is ready for [Outlines.Set]. Reading is
// safe for concurrent use while Set does not run.
type Outlines struct {
	Moment     Outline // M anywhere, lb-in
	Shear      Outline // V on any face, under the rules of [Bay], lb
	Reaction   Outline // upward at any support, lb
	Deflection Outline // downward in any span, times E I, lb-in³
	Overhang   Outline // downward in either overhang, times E I, lb-in³; 0 without one

	numbers  []float64 // work space: what each shape causes
	factors  []float64 // work space: of a sample
	location Location  // work space
}

// An Outline is what one quantity of a member may come to: at any of some places it is
// First times one number and Second times another, and of all these pairs of numbers only
// the corners of their convex hull can bring an extreme.
type Outline struct {
	corners []corner
}

// A corner is the quantity at one place under each shape alone.
type corner struct {
	first, second float64
}

// NewOutlines returns the outlines of two load shapes, each given by factors on the
// cases of the plan. The samples are mixes under which nothing shall be lost: those
// that matter most at the middle of what will be asked for.
//
// If a factor is not a finite number within reason (magnitude up to 1e100), nothing is
// known and every answer is not a number. NewOutlines panics if there are not as many
// factors as cases, or if the plan was not set. The plan is not needed afterwards.
func NewOutlines(p *Plan, first, second []float64, samples ...Mix) *Outlines {
	o := new(Outlines)
	o.Set(p, first, second, samples...)
	return o
}

// Set makes the outlines those of another plan or of other shapes under the rules of
// [NewOutlines]. It reuses the storage and allocates nothing once the outlines have held
// as many numbers before.
func (o *Outlines) Set(p *Plan, first, second []float64, samples ...Mix) {
	for _, list := range o.lists() {
		list.corners = list.corners[:0]
	}
	o.numbers = zeroed(o.numbers, 2*p.size)
	shapes := [2]state{p.view(o.numbers[:p.size]), p.view(o.numbers[p.size:])}
	known := p.combine(first, p.size)
	copy(o.numbers, p.sums)
	known = p.combine(second, p.size) && known
	copy(o.numbers[p.size:], p.sums)
	for _, m := range samples {
		known = known && m.sound()
	}
	if !known {
		for _, list := range o.lists() {
			list.corners = append(list.corners, corner{nan, nan})
		}
		return
	}
	for i := range p.line.supports {
		o.Reaction.add(shapes[0].reaction[i], shapes[1].reaction[i])
	}
	for i, b := range p.bays {
		if !b.missing() {
			o.stations(p, b, o.sags(p, i), &shapes)
		}
	}
	for _, m := range samples {
		o.sample(p, first, second, m, &shapes)
	}
	for _, list := range o.lists() {
		list.close()
	}
}

// lists returns all outlines.
func (o *Outlines) lists() [5]*Outline {
	return [...]*Outline{&o.Moment, &o.Shear, &o.Reaction, &o.Deflection, &o.Overhang}
}

// sags returns the outline of the deflections of bay i.
func (o *Outlines) sags(p *Plan, i int) *Outline {
	if i == 0 || i == len(p.bays)-1 {
		return &o.Overhang
	}
	return &o.Deflection
}

// stations adds what the shapes cause at both ends of every segment of a bay.
func (o *Outlines) stations(p *Plan, b bay, sags *Outline, shapes *[2]state) {
	first, second := &shapes[0], &shapes[1]
	for i := b.first; i <= b.last; i++ {
		o.Moment.add(first.moment[i], second.moment[i])
		o.Shear.add(first.shear[i], second.shear[i])
		sags.add(first.deflection[i], second.deflection[i])
		if h := p.lengths[i]; i < b.last {
			o.Shear.add(first.segment(i, h).shearAt(h), second.segment(i, h).shearAt(h))
		}
	}
}

// sample adds what the shapes cause where a mix of them has its extrema.
func (o *Outlines) sample(p *Plan, first, second []float64, m Mix, shapes *[2]state) {
	o.factors = zeroed(o.factors, len(first))
	for k := range o.factors {
		o.factors[k] = m.First*first[k] + m.Second*second[k]
	}
	p.Locate(o.factors, 1, &o.location)
	for i, b := range p.bays {
		if b.missing() {
			continue
		}
		e, sags := &o.location.Bays[i], o.sags(p, i)
		for _, x := range [...]float64{e.ShearMax.At, e.ShearMin.At} {
			if a, c, ok := p.within(b, x, shapes); ok {
				o.Shear.add(a.shear, c.shear)
			}
		}
		for _, x := range [...]float64{e.MomentMax.At, e.MomentMin.At} {
			if a, c, ok := p.within(b, x, shapes); ok {
				o.Moment.add(a.moment, c.moment)
			}
		}
		for _, x := range [...]float64{e.DeflectionMax.At, e.DeflectionMin.At} {
			if a, c, ok := p.within(b, x, shapes); ok {
				sags.add(a.deflection, c.deflection)
			}
		}
	}
}

// within returns what the shapes cause at a place within a segment of the bay, as segments
// that begin there. It is not ok where one begins anyway.
func (p *Plan) within(b bay, x float64, shapes *[2]state) (first, second segment, ok bool) {
	i := b.first
	for i+1 < b.last && p.at[i+1] <= x {
		i++
	}
	h := p.lengths[i]
	s := x - p.at[i]
	if !(0 < s && s < h) {
		return first, second, false
	}
	return shapes[0].segment(i, h).from(s), shapes[1].segment(i, h).from(s), true
}

// Range returns the least and the largest value of the quantity under any of the mixes:
// the exact extrema lie there or beyond. Both are 0 of no mix, and not a number if a factor
// of a mix is none or beyond reason (magnitude above 1e100). It allocates nothing.
func (o Outline) Range(mixes ...Mix) (least, largest float64) {
	if len(mixes) == 0 || len(o.corners) == 0 {
		return 0, 0
	}
	for _, m := range mixes {
		if !m.sound() {
			return nan, nan
		}
	}
	least = o.corners[0].of(mixes[0])
	largest = least
	for i := 0; i < len(mixes); i += 2 { // two at a time go faster
		m, n := mixes[i], mixes[min(i+1, len(mixes)-1)]
		for _, c := range o.corners {
			x, y := c.of(m), c.of(n)
			if x > largest {
				largest = x
			}
			if x < least {
				least = x
			}
			if y > largest {
				largest = y
			}
			if y < least {
				least = y
			}
		}
	}
	return least, largest
}

// of is the quantity at a corner under a mix.
func (c corner) of(m Mix) float64 { return c.first*m.First + c.second*m.Second }

// sound reports whether the factors can be reckoned with.
func (m Mix) sound() bool { return abs(m.First) <= heaviest && abs(m.Second) <= heaviest }

func (o *Outline) add(first, second float64) {
	o.corners = append(o.corners, corner{first, second})
}

// close keeps the corners of the convex hull, by Andrew's monotone chain: the lower half
// from left to right, then the upper half back.
func (o *Outline) close() {
	var size corner
	for _, c := range o.corners {
		size.first, size.second = max(size.first, abs(c.first)), max(size.second, abs(c.second))
	}
	slices.SortFunc(o.corners, func(a, b corner) int {
		return cmp.Or(cmp.Compare(a.first, b.first), cmp.Compare(a.second, b.second))
	})
	all, n := o.corners, len(o.corners)
	for back := range 2 {
		start := len(all)
		for i := range n {
			c := all[i+back*(n-1-2*i)]
			for len(all) >= start+2 && !bends(all[len(all)-2], all[len(all)-1], c, size) {
				all = all[:len(all)-1]
			}
			all = append(all, c)
		}
		if len(all) > start+1 {
			all = all[:len(all)-1] // where the other half begins
		}
	}
	o.corners = append(all[:0], all[n:]...)
}

// bends reports whether the way from a over b to c turns to the left at b, by more than
// rounding in numbers of the size. The first numbers are in order; where they are one but
// for rounding, b may still lie far beyond both of the others.
func bends(a, b, c, size corner) bool {
	left := (b.first-a.first)*(c.second-b.second) - (b.second-a.second)*(c.first-b.first)
	height := flat * (abs(c.first-a.first)*size.second + abs(c.second-a.second)*size.first)
	least, largest := min(a.second, c.second), max(a.second, c.second)
	beyond := b.second < least-flat*size.second || b.second > largest+flat*size.second
	return left > height || left > 0 && beyond
}

// flat is how far a corner may stand out from the line between its neighbors, as a part of
// the largest value, a ratio, and yet be left out.
const flat = 1e-12
