package footing

import "patiocover/calc"

// The least sizes of footings (IRC R403.1.1, R403.1.4 and R403.1.4.1, read in a state's
// edition; exception 1 read in a proposal to rewrite R507).
const (
	leastDepth      = 12 * calc.In    // bottom below undisturbed ground
	leastThickness  = 6 * calc.In     // of a spread footing
	plainThickness  = 8 * calc.In     // of plain concrete (ACI 318-19 14.3.2.1, from memory)
	leastProjection = 2 * calc.In     // of a footing beyond what stands on it
	exemptArea      = 600 * calc.SqFt // of a freestanding light-frame accessory building
	exemptEave      = 10 * calc.Ft    // its eave
)

// A Frost says whether the frost depth counts.
type Frost uint8

// The answers.
const (
	FrostCounts   Frost = iota // the bottom goes below the frost
	FrostExempt                // small, freestanding, light-frame: the exemption was asked for and applies
	FrostAttached              // the exemption was asked for, but the cover is attached
	FrostTooLarge              // the exemption was asked for, but the cover is too large or too high
)

// frostWords words the answers.
var frostWords = [...]string{
	FrostCounts:   "IRC R403.1.4.1, bottom below the frost line",
	FrostExempt:   "IRC R403.1.4.1 exception 1: freestanding, light-frame, up to 600 sq ft and 10 ft of eave",
	FrostAttached: "IRC R403.1.4.1: its exception is for freestanding buildings, and the cover is attached",
	FrostTooLarge: "IRC R403.1.4.1: its exception ends at 600 sq ft and 10 ft of eave",
}

// String words the answer with its clause.
func (f Frost) String() string { return frostWords[f] }

// A Standing is what decides about the exemption from frost depth.
type Standing struct {
	Attached bool    // to a house
	Asked    bool    // the exemption is claimed
	Area     float64 // of the roof on plan, in²
	Eave     float64 // height of the eave above grade, in
}

// NewFrost answers whether the frost depth counts. An attached cover moves with the
// house, which does not heave: it is never exempt.
func NewFrost(s Standing) Frost {
	switch {
	case !s.Asked:
		return FrostCounts
	case s.Attached:
		return FrostAttached
	case !(s.Area <= exemptArea && s.Eave <= exemptEave):
		return FrostTooLarge
	}
	return FrostExempt
}

// A Depth is the check that the bottom of a foundation is deep enough.
type Depth struct {
	Bottom   float64 // d, below undisturbed grade, in
	Line     float64 // d_f, frost depth of the place, in
	Frost    Frost   // whether it counts
	Required float64 // in
}

// NewDepth checks the depth of the bottom, in, against 12 in and the frost depth line, in.
// A frost depth that is not a number makes every depth too little.
func NewDepth(bottom, line float64, f Frost) Depth {
	d := Depth{Bottom: bottom, Line: line, Frost: f, Required: leastDepth}
	if f != FrostExempt {
		d.Required = max(leastDepth, line)
	}
	return d
}

// Ratio is the required depth over the depth of the bottom.
func (d Depth) Ratio() float64 { return calc.Ratio(d.Required, d.Bottom) }

// Explain writes the check out.
func (d Depth) Explain() calc.Check {
	var s calc.Sheet
	s.Given("d_0", leastDepth, "in", "IRC R403.1.4, below undisturbed ground")
	s.Given("d_f", d.Line, "in", "input site.frost_depth_in")
	if d.Frost == FrostExempt {
		s.Step("d_req", "d_0", d.Required, "in", d.Frost.String())
	}
	if d.Frost != FrostExempt {
		s.Step("d_req", "max(d_0, d_f)", d.Required, "in", d.Frost.String())
	}
	s.Given("d", d.Bottom, "in", "bottom below undisturbed grade")
	return s.Check("depth", "d_req", "d")
}

// A Thickness is the check of the concrete at the bottom: thick enough, and not
// projecting beyond what stands on it by more than its thickness.
type Thickness struct {
	Concrete   float64 // t, in
	Projection float64 // c, beyond the post or the neck, in
	Required   float64 // in
}

// NewThickness checks the pad of a block that carries something of a width above, in: a
// post or the block's own neck.
func NewThickness(b Block, above float64) Thickness {
	t := Thickness{Concrete: b.Thickness, Projection: max(0, (b.Width-max(above, b.Neck))/2)}
	t.Required = max(leastThickness, plainThickness, t.Projection)
	return t
}

// Ratio is the required thickness over that of the concrete.
func (t Thickness) Ratio() float64 { return calc.Ratio(t.Required, t.Concrete) }

// Explain writes the check out.
func (t Thickness) Explain() calc.Check {
	var s calc.Sheet
	s.Given("c", t.Projection, "in", "projection beyond the post or the neck")
	s.Given("t_0", leastThickness, "in", "IRC R403.1.1, spread footing")
	s.Quoted("t_p", plainThickness, "in", "ACI 318-19 14.3.2.1, plain concrete", calc.Recalled)
	s.Step("t_req", "max(t_0, t_p, c)", t.Required, "in", "IRC R403.1.1, projection at most the thickness")
	s.Given("t", t.Concrete, "in", "thickness of the concrete")
	return s.Check("thickness", "t_req", "t")
}

// A Projection is the check that a footing reaches past what stands on it by 2 in or
// more on every side, and that its neck is no narrower than the post.
type Projection struct {
	Width float64 // B, of the pad, in
	Post  float64 // b, of the post, in
	Neck  float64 // B_n, of the neck, in; 0 without
	Least float64 // in, width that the projection asks for
	Used  float64 // the larger of least width over width and post over neck, ratio
}

// NewProjection checks the width of the pad of a block under a post of a width, in.
func NewProjection(b Block, post float64) Projection {
	p := Projection{Width: b.Width, Post: post, Neck: b.Neck}
	p.Least = max(post, b.Neck) + 2*leastProjection
	p.Used = p.Least / p.Width
	if p.Neck > 0 {
		p.Used = max(p.Used, p.Post/p.Neck)
	}
	return p
}

// Ratio is what is used of the widths.
func (p Projection) Ratio() float64 { return calc.Ratio(p.Used, 1) }

// Explain writes the check out.
func (p Projection) Explain() calc.Check {
	var s calc.Sheet
	s.Given("b", p.Post, "in", "width of the post")
	s.Given("c_0", leastProjection, "in", "IRC R403.1.1, least projection on each side")
	s.Given("B", p.Width, "in", "side or diameter of the footing")
	if p.Neck > 0 {
		s.Given("B_n", p.Neck, "in", "side or diameter of the neck")
		s.Step("B_req", "max(b, B_n) + 2 * c_0", p.Least, "in", "IRC R403.1.1")
		s.Step("r", "max(B_req / B, b / B_n)", p.Used, "", "IRC R403.1.1, and the post stands wholly on the neck")
	}
	if p.Neck == 0 {
		s.Step("B_req", "b + 2 * c_0", p.Least, "in", "IRC R403.1.1")
		s.Step("r", "B_req / B", p.Used, "", "IRC R403.1.1")
	}
	s.Given("r_lim", 1, "", "no narrower than asked for")
	return s.Check("projection", "r", "r_lim")
}
