package deck

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A Stiffness is what bends: E' with its factors, and I.
type Stiffness struct {
	Modulus lumber.Property // E with its factors, psi
	Inertia float64         // I, in⁴, in the direction of bending
	Flat    bool            // on the wide face
	Breadth float64         // b, in: size across the direction of bending
	Depth   float64         // d, in: size in the direction of bending
}

// stiffness returns that of the piece.
func (s *Strip) stiffness() Stiffness {
	p := s.Piece
	k := Stiffness{
		Modulus: p.Elasticity, Inertia: s.inertia(), Flat: p.Use.Flat,
		Breadth: p.Section.Breadth, Depth: p.Section.Depth,
	}
	if k.Flat {
		k.Breadth, k.Depth = k.Depth, k.Breadth
	}
	return k
}

// write adds the lines of E' and I.
func (k *Stiffness) write(s *calc.Sheet) {
	s.Append(k.Modulus.Lines())
	s.Step("E_adj", k.Modulus.Formula(), k.Modulus.Value, "psi", "NDS 2018 Table 4.3.1")
	s.Given("b", k.Breadth, "in", "size")
	s.Given("d", k.Depth, "in", "size")
	s.Step("I", "b * pow(d, 3) / 12", k.Inertia, "in⁴", "NDS 2018 3.3.2")
}

// moved returns the deflection of a uniform load w, lb/in, in.
func (s *Strip) moved(w float64, k *Stiffness) float64 {
	l := s.Span
	return w * l * l * l * l / (s.Layup.row().deflection * k.Modulus.Value * k.Inertia)
}

// A Deflection is the check of the code's limit under live or snow load alone.
type Deflection struct {
	Pressure float64           // q, lb/in² of deck, unfactored
	Span     float64           // l, in
	Width    float64           // t, in
	Load     float64           // w, lb/in
	Layup    Layup             // coefficient of the deflection
	Bends    Stiffness         // E' and I
	Check    member.Deflection // against the limit
}

// NewDeflection checks the piece under the unfactored live or snow load, lb/in² of deck.
func NewDeflection(pressure float64, s *Strip, limit member.Limit) Deflection {
	d := Deflection{
		Pressure: pressure, Span: s.Span, Width: s.Width, Load: pressure * s.Width, Layup: s.Layup, Bends: s.stiffness(),
	}
	limit.Length, limit.Cantilever = s.Span, false
	d.Check = member.NewDeflection(s.moved(d.Load, &d.Bends), limit)
	return d
}

// Ratio is the deflection over what is allowed.
func (d Deflection) Ratio() float64 { return d.Check.Ratio() }

// Explain writes the check out.
func (d Deflection) Explain() calc.Check {
	var s calc.Sheet
	r := d.Layup.row()
	s.Given("q", d.Pressure/calc.PSF, "psf", "live or snow load on the deck, unfactored")
	s.Step("q_in", "q / 144", d.Pressure, "psi", "unit change")
	s.Given("t", d.Width, "in", "strip of roof that one piece carries")
	s.Step("w", "q_in * t", d.Load, "lb/in", "geometry")
	s.Given("l", d.Span, "in", "span, rafters center to center")
	d.Bends.write(&s)
	s.Quoted("n_d", r.deflection, "", r.source, r.status)
	s.Step("delta", "w * pow(l, 4) / (n_d * E_adj * I)", d.Check.Movement, "in", "statics, "+r.name)
	return closed(&s, d.Check.Explain())
}

// A Sag is the check of the sag that is seen: dead load with creep, and live or snow
// load (NDS 2018 3.5.2). A table that counts live load alone does not see it.
type Sag struct {
	Dead  float64    // D, lb/in² of deck, unfactored
	Live  float64    // q, lb/in² of deck, unfactored
	Span  float64    // l, in
	Width float64    // t, in
	Layup Layup      // coefficient of the deflection
	Bends Stiffness  // E' and I
	Check member.Sag // Kcr dLT + dST against the limit
}

// NewSag checks the piece under the unfactored dead load and the live or snow load,
// lb/in² of deck.
func NewSag(dead, live float64, s *Strip, seasoning member.Seasoning, limit member.Limit) Sag {
	g := Sag{Dead: dead, Live: live, Span: s.Span, Width: s.Width, Layup: s.Layup, Bends: s.stiffness()}
	limit.Length, limit.Cantilever = s.Span, false
	g.Check = member.NewSag(s.moved(dead*s.Width, &g.Bends), s.moved(live*s.Width, &g.Bends), seasoning, limit)
	return g
}

// Ratio is the sag over what is allowed.
func (g Sag) Ratio() float64 { return g.Check.Ratio() }

// Explain writes the check out.
func (g Sag) Explain() calc.Check {
	var s calc.Sheet
	r := g.Layup.row()
	s.Given("D", g.Dead/calc.PSF, "psf", "dead load on the deck, unfactored")
	s.Given("q", g.Live/calc.PSF, "psf", "live or snow load on the deck, unfactored")
	s.Given("t", g.Width, "in", "strip of roof that one piece carries")
	s.Step("w_D", "D / 144 * t", g.Dead*g.Width, "lb/in", "geometry")
	s.Step("w_q", "q / 144 * t", g.Live*g.Width, "lb/in", "geometry")
	s.Given("l", g.Span, "in", "span, rafters center to center")
	g.Bends.write(&s)
	s.Quoted("n_d", r.deflection, "", r.source, r.status)
	s.Step("delta_LT", "w_D * pow(l, 4) / (n_d * E_adj * I)", g.Check.Lasting, "in", "statics, "+r.name)
	s.Step("delta_ST", "w_q * pow(l, 4) / (n_d * E_adj * I)", g.Check.Variable, "in", "statics, "+r.name)
	return closed(&s, g.Check.Explain())
}
