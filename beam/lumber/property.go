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

// written holds how each kind is written: its symbol, what its factors' symbols
// end in, the product of its factors but C_fu, C_D, C_L, C_P and C_b, and which
// factors that product has.
var written = [kinds]struct {
	symbol, suffix, formula string
}{
	Bending:     {"Fb", "", "Fb * C_M * C_t * C_F * C_i * C_r"},
	Tension:     {"Ft", "", "Ft * C_M * C_t * C_F * C_i"},
	Shear:       {"Fv", "", "Fv * C_M * C_t * C_i"},
	Bearing:     {"Fc_perp", "_perp", "Fc_perp * C_M_perp * C_t_perp * C_i_perp"},
	Compression: {"Fc", "", "Fc * C_M * C_t * C_F * C_i"},
	Elasticity:  {"E", "_E", "E * C_M_E * C_t_E * C_i_E"},
	Stability:   {"Emin", "_min", "Emin * C_M_min * C_t_min * C_i_min"},
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
	Value       float64     // Reference times all of them, psi
	Source      string      // standard, edition, table of Reference
	Kind        Kind        // which value it is
	Method      Method      // design method, for the factors of the load: see [Property.At]
	Status      calc.Status // how Reference is known
	why         bases       // the basis of each factor
}

// bases holds why each factor of a property has its value.
type bases struct{ wet, temperature, size, flatUse, incising, repetitive basis }

// Edgewise returns the value without the flat use factor, psi: for bending the
// part of Fb* that does not depend on the load duration (NDS 2018 3.3.3.8).
func (p Property) Edgewise() float64 {
	return p.Reference * p.Wet * p.Temperature * p.Size * p.Incising * p.Repetitive
}

// Formula returns the product of the symbols that [Property.Lines] defines. For
// bending it leaves C_fu out, as Fb* does.
func (p Property) Formula() string {
	w := written[p.Kind]
	if p.Kind != Bending && p.why.flatUse != notApplicable {
		return w.formula + " * C_fu" + w.suffix
	}
	return w.formula
}

// Lines writes the tabulated value and each factor that applies to it.
func (p Property) Lines() []calc.Line {
	var s calc.Sheet
	w := written[p.Kind]
	s.Quoted(w.symbol, p.Reference, "psi", p.Source, p.Status)
	for _, f := range [...]struct {
		symbol string
		value  float64
		why    basis
	}{
		{"C_M", p.Wet, p.why.wet}, {"C_t", p.Temperature, p.why.temperature},
		{"C_F", p.Size, p.why.size}, {"C_fu", p.FlatUse, p.why.flatUse},
		{"C_i", p.Incising, p.why.incising}, {"C_r", p.Repetitive, p.why.repetitive},
	} {
		if f.why != notApplicable {
			s.Quoted(f.symbol+w.suffix, f.value, "", f.why.source(), f.why.status())
		}
	}
	return s.Lines()
}
