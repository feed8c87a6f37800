package member

import (
	"patiocover/beam/lumber"
	"patiocover/calc"
)

// The built-up columns of NDS 2018 15.3.1: plies and their least thickness.
const (
	fewestPlies = 2
	mostPlies   = 5
	thinnestPly = 1.5 // in
)

// An Assembly is how a built-up post of equal plies, each of the full length, is made
// and held.
type Assembly struct {
	Plies     int              // number, 2 to 5
	Fastening lumber.Fastening // nailed, bolted, or not together
	Column    Column           // Deep in the plane of the plies' width, Thin across the plies
}

// BuiltUp is the check of NDS 2018 15.3: fc <= Fc' of a post of plies.
type BuiltUp struct {
	Assembly  Assembly    // how the post is made and held
	Deep      Compression // buckling in the plane of the plies' width
	Thin      Compression // buckling across the plies, before Kf
	Ply       Compression // one ply alone with its part of the force
	Stress    float64     // fc, psi
	Fastening float64     // Kf, factor
	Together  float64     // Fc' of the plies together, psi
	Allowable float64     // Fc', psi: not less than that of a ply alone
	refused   bool        // plies beyond 15.3.1: no capacity
}

// NewBuiltUp checks the axial force, in lb and pressing, on a post of plies; a holds
// the values of one ply (see [lumber.Adjusted.OnePly]). A post is never weaker than its plies taken singly.
func NewBuiltUp(force float64, a *lumber.Adjusted, duration lumber.Duration, how Assembly) BuiltUp {
	b := BuiltUp{Assembly: how, Fastening: how.Fastening.Share()}
	whole, n := *a, float64(how.Plies)
	whole.Section.Breadth *= n
	held, form := Axis{Held: true}, how.Column.Form
	b.Deep = NewCompression(force, &whole, duration, Column{Deep: how.Column.Deep, Thin: held, Form: form})
	b.Thin = NewCompression(force, &whole, duration, Column{Deep: held, Thin: how.Column.Thin, Form: form})
	b.Ply = NewCompression(force/n, a, duration, how.Column)
	b.Stress = b.Deep.Stress
	if how.Plies < fewestPlies || how.Plies > mostPlies || a.Section.Breadth < thinnestPly || a.Section.Plies > 1 {
		b.refused = true
		return b
	}
	b.Together = min(b.Deep.Allowable, b.Fastening*b.Thin.Allowable) // 15.3.2
	b.Allowable = max(b.Together, b.Ply.Allowable)                   // 15.3.2
	return b
}

// Ratio is fc / Fc'.
func (b BuiltUp) Ratio() float64 { return calc.Ratio(b.Stress, b.Allowable) }

// Explain writes the check out: each plane of buckling of the post, then one ply.
func (b BuiltUp) Explain() calc.Check {
	var s calc.Sheet
	s.Given("plies", float64(b.Assembly.Plies), "", "plies of the post")
	if b.refused {
		s.Append(b.Deep.Explain().Lines)
		s.Given("Fc_post", b.Allowable, "psi", "NDS 2018 15.3.1, 2 to 5 single plies of 1-1/2 in. and more: no capacity")
		return s.Check("compression of a built-up post", "f_c", "Fc_post")
	}
	s.Append(b.Deep.Explain().Lines)
	s.Step("f_post", "f_c", b.Stress, "psi", "NDS 2018 15.3.2")
	s.Step("Fc_1", "Fc_adj", b.Deep.Allowable, "psi", "NDS 2018 15.3.2, in the plane of the plies' width")
	s.Append(b.Thin.Explain().Lines)
	b.Assembly.Fastening.Write(&s)
	s.Step("Fc_2", "K_f * Fc_adj", b.Fastening*b.Thin.Allowable, "psi", "NDS 2018 15.3.2, across the plies")
	s.Append(b.Ply.Explain().Lines)
	s.Step("Fc_ply", "Fc_adj", b.Ply.Allowable, "psi", "NDS 2018 15.3.2, one ply alone")
	s.Step("Fc_post", "max(min(Fc_1, Fc_2), Fc_ply)", b.Allowable, "psi", "NDS 2018 15.3.2")
	return s.Check("compression of a built-up post", "f_post", "Fc_post")
}
