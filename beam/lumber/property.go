package lumber

import "patiocover/calc"

// A Kind is one of the adjusted values.
type Kind uint8

// The kinds, in the order of the printed columns.
const (
	Bending     Kind = iota // Fb
	Tension                 // Ft
	Shear                   // Fv
	Bearing                 // Fc_perp
	Compression             // Fc
	Elasticity              // E
	Stability               // Emin
	kinds
)

// written holds how each kind is written: its symbol, and what its factors' symbols
// end in.
var written = [kinds]struct{ symbol, suffix string }{
	Bending: {"Fb", ""}, Tension: {"Ft", ""}, Shear: {"Fv", ""}, Bearing: {"Fc_perp", "_perp"},
	Compression: {"Fc", ""}, Elasticity: {"E", "_E"}, Stability: {"Emin", "_min"},
}

// Symbol returns the ASCII symbol of the reference value, such as Fc_perp.
func (k Kind) Symbol() string { return written[k].symbol }

// A factor is one adjustment factor and why it has its value.
type factor struct {
	value float64
	basis basis
}

// A Property is one reference design value with every factor that depends on the
// piece and its use. The factors of the load, C_D or K_F phi lambda, come in by
// [Property.At]; the stability factors C_L and C_P and the bearing area factor C_b
// are not in it. A factor that does not apply is 1.
type Property struct {
	Reference   float64     // tabulated value, psi
	Wet         float64     // C_M, factor
	Temperature float64     // C_t, factor
	Size        float64     // C_F, factor
	FlatUse     float64     // C_fu, factor; on E and Emin the wide face factor of beams and stringers
	Incising    float64     // C_i, factor
	Repetitive  float64     // C_r, factor
	Cut         float64     // C_vr, factor on Fv of glued laminated timber at cuts; 0 where there is none
	Value       float64     // Reference times all of them, psi
	Source      string      // standard, edition, table of Reference
	Kind        Kind        // which value it is
	Method      Method      // design method, for the factors of the load: see [Property.At]
	Status      calc.Status // how Reference is known
	why         bases       // the basis of each factor
}

// bases holds why each factor of a property has its value.
type bases struct{ wet, temperature, size, flatUse, incising, repetitive, cut basis }

// Edgewise returns the value without the flat use factor, psi: for bending the
// part of Fb* that does not depend on the load duration (NDS 2018 3.3.3.8).
func (p Property) Edgewise() float64 {
	return p.Reference * p.Wet * p.Temperature * p.Size * p.Incising * p.Repetitive
}

// cut returns the value at notches and fasteners of glued laminated timber.
func (p Property) cut() Property {
	p.Cut, p.why.cut = shearAtCuts, cutGlued
	p.Value *= p.Cut
	return p
}

// A written factor is one line of a property.
type writtenFactor struct {
	symbol string
	value  float64
	why    basis
}

// factors lists the factors that apply, in the order of NDS 2018 Table 4.3.1.
func (p Property) factors() []writtenFactor {
	all := [...]writtenFactor{
		{"C_M", p.Wet, p.why.wet}, {"C_t", p.Temperature, p.why.temperature},
		{"C_F", p.Size, p.why.size}, {"C_fu", p.FlatUse, p.why.flatUse},
		{"C_i", p.Incising, p.why.incising}, {"C_r", p.Repetitive, p.why.repetitive},
		{"C_vr", p.Cut, p.why.cut},
	}
	var some []writtenFactor
	for _, f := range all {
		if f.why != notApplicable {
			some = append(some, f)
		}
	}
	return some
}

// Formula returns the product of the symbols that [Property.Lines] defines. For
// bending it leaves C_fu out, as Fb* does.
func (p Property) Formula() string {
	w := written[p.Kind]
	text, flat := w.symbol, ""
	for _, f := range p.factors() {
		switch {
		case f.symbol != "C_fu":
			text += " * " + f.symbol + w.suffix
		case p.Kind != Bending:
			flat = " * C_fu" + w.suffix
		}
	}
	return text + flat
}

// Lines writes the tabulated value and each factor that applies to it.
func (p Property) Lines() []calc.Line {
	var s calc.Sheet
	w := written[p.Kind]
	s.Quoted(w.symbol, p.Reference, "psi", p.Source, p.Status)
	for _, f := range p.factors() {
		s.Quoted(f.symbol+w.suffix, f.value, "", f.why.source(), f.why.status())
	}
	return s.Lines()
}
