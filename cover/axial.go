package cover

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// arrangeThrust keeps the force along every rafter under each arrangement, to all that
// does not depend on the wood: what acts vertically, over its cosine, times the sine. It
// is that of the whole rafter, which is reached at the end that holds it: pressed from
// the low end, or pulled from the high one.
func (r *rafterFrame) arrangeThrust() {
	r.along = r.room.numbers.take(len(r.arr))
	for i := range r.arr {
		across := 0.0
		for c, x := range r.arr[i].coef {
			if c < r.highCase() || c > r.middleCase() { // wind acts across the rafter
				across += x * r.total(c)
			}
		}
		r.along[i] = across * r.tangent()
	}
}

// total is the load of a case, lb.
func (r *rafterFrame) total(c int) float64 {
	sum := 0.0
	for _, unit := range r.unit {
		sum += unit[c]
	}
	return sum
}

// tangent is that of the slope.
func (r *rafterFrame) tangent() float64 { return math.Sqrt(1-r.cosine*r.cosine) / r.cosine }

// thrust is the force along the rafter under arrangement i, lb.
func (r *rafterFrame) thrust(i int, w *wood) float64 {
	a := &r.arr[i]
	return r.along[i] + a.self*w.weight(a.least)*r.total(0)*r.cosine*r.tangent()
}

// demands finds the peaks of the rafters, with the force along them.
func (r *rafterFrame) demands(w *wood, every bool, p *peaks) {
	r.frame.demands(w, every, p)
	own := r.total(0) * r.cosine * r.tangent()
	for i := range r.arr {
		a := &r.arr[i]
		p.thrust[a.duration].raise(r.along[i]+a.self*w.weight(a.least)*own, i, 0)
	}
}

// slender reports whether a rafter is too slender sideways to be pressed along its slope:
// then what acts along it must be held at its high end.
func (h *holding) slender(w *wood, bays []bay) bool {
	for _, b := range bays {
		if at := h.bracing.of(topEdge, b); !at.Held && at.Unbraced > member.SlenderestColumn*w.section.Breadth {
			return true
		}
	}
	return false
}

// An axialBound bounds the checks of the force along a member together with any moment
// of one duration, by the longest bay.
type axialBound struct {
	force  float64 // lb; 0 for none
	press  float64 // (fc/Fc')², ratio
	growth float64 // 1 - fc/FcE1, ratio
	pull   float64 // ft/Ft', ratio
}

// boundAxial bounds the checks of a force.
func (f *frame) boundAxial(w *wood, h *holding, force float64, d lumber.Duration) axialBound {
	if force <= 0 {
		return axialBound{}
	}
	longest := f.bays[0]
	for _, b := range f.bays {
		if b.length > longest.length {
			longest = b
		}
	}
	out := axialBound{force: force}
	c := f.pushed(w, h, found{force: force, duration: d}, longest)
	out.press, out.growth = c.AxialPart, 1-c.EdgeShare
	out.pull = member.NewTension(force, f.net(w, h), &w.dry, d).Ratio()
	return out
}

// beyond reports whether a check with this ratio of bending alone may come above the
// worst so far, pressed or pulled.
func (b *axialBound) beyond(bending, worst float64) (press, pull bool) {
	within := b.growth > 0 && b.press+bending/b.growth < worst && b.press < worst
	return !within, !(b.pull+bending < worst)
}

// gradeAxial checks a moment with the largest force along the member of its duration, in
// both readings: held at the low end, which presses it, and at the high end, which pulls
// it. The two need not come from one combination, to be safe.
func (f *frame) gradeAxial(w *wood, b *axialBound, h *holding, x found, g *graded) {
	if b.force <= 0 {
		return
	}
	press, pull := b.beyond(x.ratio, g[axialCheck].ratio)
	if press && !h.hung {
		f.raiseAxial(w, b.force, h, x, g)
	}
	if pull {
		f.raiseAxial(w, -b.force, h, x, g)
	}
}

func (f *frame) raiseAxial(w *wood, force float64, h *holding, x found, g *graded) {
	x.force = force
	c := f.pushed(w, h, x, f.bays[x.bay])
	x.ratio = c.Ratio()
	switch failing(&c) {
	case edgeFails:
		x.ratio = c.Edge.Ratio()
	case columnFails:
		x.ratio = c.Compression.Ratio()
	}
	g[axialCheck].raise(x)
}

// A failure is the part of a combined check that leaves it without any capacity.
type failure uint8

const (
	nothingFails failure = iota
	edgeFails            // bending alone
	columnFails          // the force alone
)

// failing says which part leaves a combined check without capacity. That part is then
// checked instead, because the sum has no number.
func failing(c *member.Combined) failure {
	switch {
	case !math.IsInf(c.Ratio(), 0):
		return nothingFails
	case math.IsInf(c.Edge.Ratio(), 0):
		return edgeFails
	}
	return columnFails
}

// pushedResult is the check of a moment with a force along the member, or of the part of
// it that has no capacity.
func (f *frame) pushedResult(w *wood, h *holding, x found) calc.Result {
	c := f.pushed(w, h, x, f.bays[x.bay])
	switch failing(&c) {
	case edgeFails:
		return c.Edge
	case columnFails:
		return c.Compression
	}
	return c
}

// net is the section that the deepest cut leaves, in².
func (f *frame) net(w *wood, h *holding) float64 {
	deepest := 0.0
	for s := range f.unit {
		deepest = max(deepest, h.cuts[s].deep)
	}
	return w.section.Breadth * (w.section.Depth - deepest)
}

// pushed is the check of a moment in a bay with a force along the member.
func (f *frame) pushed(w *wood, h *holding, x found, at bay) member.Combined {
	sideways := member.Axis{Length: at.length, Ends: member.PinnedPinned}
	if top := h.bracing.of(topEdge, at); top.Held || top.Unbraced > 0 {
		sideways.Held, sideways.Length = top.Held, top.Unbraced
	}
	return member.NewCombined(
		member.Actions{Force: x.force, Edgewise: x.demand}, &w.dry, &w.dry, x.duration, member.Stay{
			Column:  member.Column{Deep: member.Axis{Length: at.length, Ends: member.PinnedPinned}, Thin: sideways},
			Bracing: h.bracing.of(x.edge, at), Net: f.net(w, h),
		})
}

// thrustTrace writes the force along the rafter of the check: the largest of the
// combinations of its duration.
func (r *rafterFrame) thrustTrace(w *wood, x found) []calc.Line {
	by := 0
	for i := range r.arr {
		if r.arr[i].duration == x.duration && r.thrust(i, w) >= math.Abs(x.force) {
			by = i
			break
		}
	}
	symbol, source := "P", "held at the low end, which presses the rafter"
	if x.force < 0 {
		symbol, source = "T", "held at the high end, which pulls the rafter"
	}
	var s calc.Sheet
	sin := r.tangent() * r.cosine
	s.Given("W_v", math.Abs(x.force)/sin, "lb", "vertical load on the whole rafter under "+r.arr[by].name())
	s.Given("sin_theta", sin, "", "slope")
	s.Step(symbol, "W_v * sin_theta", math.Abs(x.force), "lb", source+"; the largest of this duration, to be safe")
	return s.Lines()
}
