package member

import (
	_ "embed"
	"math"

	"patiocover/calc"
)

// A Limit is a deflection limit: a part of the span.
type Limit struct {
	Length     float64     // in: clear span, or length of the cantilever
	Cantilever bool        // the span counted is twice the length
	Divisor    float64     // factor n in span/n; 0 or less: not known, no deflection is allowed
	Source     string      // code, edition, table, member
	Status     calc.Status // how the divisor is known
}

// Span returns the span that counts, in: twice the length of a cantilever (note of
// IBC 2018 Table 1604.3).
func (l Limit) Span() float64 {
	if l.Cantilever {
		return 2 * l.Length
	}
	return l.Length
}

// Allowed returns the deflection allowed, in; 0 when the limit is not known.
func (l Limit) Allowed() float64 {
	if !(l.Divisor > 0) || !(l.Length > 0) {
		return 0
	}
	return l.Span() / l.Divisor
}

// write adds the lines of the limit, the last with the symbol allowed.
func (l Limit) write(s *calc.Sheet) {
	s.Given("l", l.Length, "in", "span, or length of the cantilever")
	span := "l"
	if l.Cantilever {
		span = "2 * l"
	}
	if l.Allowed() == 0 {
		s.Given("allowed", l.Allowed(), "in", "limit not known: no deflection is allowed")
		return
	}
	s.Quoted("n", l.Divisor, "", l.Source, l.Status)
	s.Step("allowed", span+" / n", l.Allowed(), "in", l.Source)
}

// A LimitRow is one row of a code's deflection limits, as divisors of the span. A
// zero means that the code sets none.
type LimitRow struct {
	Code   string      // IBC or IRC
	Member string      // the member as the code names it
	Live   float64     // divisor under live or roof live load, ratio
	Wind   float64     // divisor under snow or wind load, ratio
	Total  float64     // divisor under dead plus live load, ratio
	Source string      // code, edition, table
	Status calc.Status // how the row is known
}

//go:embed limits.csv
var limitsCSV string

var limitRows = calc.ReadTable("limits.csv", limitsCSV, func(r calc.Row) LimitRow {
	optional := func(column string) float64 {
		if !r.Has(column) {
			return 0
		}
		return r.Num(column)
	}
	return LimitRow{
		Code: r.Text("code"), Member: r.Text("member"), Live: optional("live"),
		Wind: optional("snow or wind"), Total: optional("dead plus live"),
		Source: r.Text("source"), Status: r.Status(),
	}
})

// Limits returns the deflection limits of IBC Table 1604.3 and IRC Table R301.7.
func Limits() []LimitRow { return append([]LimitRow(nil), limitRows...) }

// Deflection is the check of a code's limit on the instantaneous deflection under
// live, snow or wind load.
type Deflection struct {
	Movement float64 // in, its magnitude
	Limit    Limit   // what is allowed
	Allowed  float64 // in
}

// NewDeflection checks the computed deflection, in inches of either sign.
func NewDeflection(movement float64, limit Limit) Deflection {
	return Deflection{Movement: math.Abs(movement), Limit: limit, Allowed: limit.Allowed()}
}

// Ratio is the deflection over what is allowed.
func (d Deflection) Ratio() float64 { return calc.Ratio(d.Movement, d.Allowed) }

// Explain writes the check out.
func (d Deflection) Explain() calc.Check {
	var s calc.Sheet
	s.Given("delta", d.Movement, "in", "deflection under the variable load")
	d.Limit.write(&s)
	return s.Check("deflection", "delta", "allowed")
}

// A Seasoning is the moisture of a member over its life, which decides its creep.
// The zero value is seasoned lumber in dry use.
type Seasoning struct {
	Green bool // installed unseasoned
	Wet   bool // wet in use
}

// Kcr returns the creep factor on deflection under long-term load: 1.5 for seasoned
// lumber in dry use, 2.0 for unseasoned or wet lumber (NDS 2018 3.5.2).
func (m Seasoning) Kcr() float64 {
	if m.Green || m.Wet {
		return 2.0 // 3.5.2
	}
	return 1.5 // 3.5.2
}

// Creep returns the part of the immediate dead load deflection that counts as
// creep: 0.5 for lumber dry when installed and in use, else 1.0 (IBC 2018 Table
// 1604.3 note d).
func (m Seasoning) Creep() float64 {
	if m.Green || m.Wet {
		return 1.0 // note d
	}
	return 0.5 // note d
}

// Sag is the check of the long-term deflection of NDS 2018 3.5.2, the sag that is
// seen: Kcr times the deflection under lasting load plus that under the rest.
type Sag struct {
	Lasting  float64 // dLT, in: immediate deflection under dead and other lasting load
	Variable float64 // dST, in: deflection under the variable load
	Creep    float64 // Kcr, factor
	Total    float64 // dT, in, its magnitude
	Limit    Limit   // what is allowed
	Allowed  float64 // in
}

// NewSag checks the long-term deflection. lasting and variable are computed
// deflections in inches, positive downward; they add with their signs.
func NewSag(lasting, variable float64, seasoning Seasoning, limit Limit) Sag {
	s := Sag{
		Lasting: lasting, Variable: variable, Creep: seasoning.Kcr(),
		Limit: limit, Allowed: limit.Allowed(),
	}
	s.Total = math.Abs(s.Creep*lasting + variable) // eq. 3.5-1
	return s
}

// Ratio is the long-term deflection over what is allowed.
func (s Sag) Ratio() float64 { return calc.Ratio(s.Total, s.Allowed) }

// Explain writes the check out.
func (s Sag) Explain() calc.Check {
	var sheet calc.Sheet
	sheet.Given("delta_LT", s.Lasting, "in", "immediate deflection under lasting load")
	sheet.Given("delta_ST", s.Variable, "in", "deflection under the variable load")
	sheet.Given("K_cr", s.Creep, "", "NDS 2018 3.5.2")
	sheet.Step("delta_T", "abs(K_cr * delta_LT + delta_ST)", s.Total, "in", "NDS 2018 eq. 3.5-1")
	s.Limit.write(&sheet)
	return sheet.Check("long-term sag", "delta_T", "allowed")
}

// TotalDeflection is the check of the dead plus live column of IBC Table 1604.3,
// which counts only the creep part of the dead load deflection.
type TotalDeflection struct {
	Dead    float64 // dD, in: immediate deflection under dead load
	Live    float64 // dL, in: deflection under live, roof live, or snow load
	Creep   float64 // creep part of the dead load deflection, factor
	Counted float64 // in, its magnitude
	Limit   Limit   // what is allowed
	Allowed float64 // in
}

// NewTotalDeflection checks the counted deflection. dead and live are computed
// deflections in inches, positive downward.
func NewTotalDeflection(dead, live float64, seasoning Seasoning, limit Limit) TotalDeflection {
	t := TotalDeflection{
		Dead: dead, Live: live, Creep: seasoning.Creep(), Limit: limit, Allowed: limit.Allowed(),
	}
	t.Counted = math.Abs(t.Creep*dead + live) // Table 1604.3 note d
	return t
}

// Ratio is the counted deflection over what is allowed.
func (t TotalDeflection) Ratio() float64 { return calc.Ratio(t.Counted, t.Allowed) }

// Explain writes the check out.
func (t TotalDeflection) Explain() calc.Check {
	var s calc.Sheet
	s.Given("delta_D", t.Dead, "in", "immediate deflection under dead load")
	s.Given("delta_L", t.Live, "in", "deflection under live load")
	s.Given("k_creep", t.Creep, "", "IBC 2018 Table 1604.3 note d")
	s.Step("delta_DL", "abs(k_creep * delta_D + delta_L)", t.Counted, "in", "IBC 2018 Table 1604.3 note d")
	t.Limit.write(&s)
	return s.Check("dead plus live deflection", "delta_DL", "allowed")
}

// WindDeflection is the check of the snow or wind column of IBC Table 1604.3 under
// wind, which may be taken as a part of the strength-level component load.
type WindDeflection struct {
	Component float64 // in, deflection under strength-level component and cladding wind
	Part      float64 // 0.42, factor
	Movement  float64 // in, its magnitude
	Limit     Limit   // what is allowed
	Allowed   float64 // in
}

// windPart is the part of the component wind that counts for deflection (IBC 2018
// Table 1604.3 note f).
const windPart = 0.42

// NewWindDeflection checks the deflection, in inches of either sign, under the
// strength-level wind on components and cladding.
func NewWindDeflection(component float64, limit Limit) WindDeflection {
	return WindDeflection{
		Component: component, Part: windPart, Movement: math.Abs(windPart * component),
		Limit: limit, Allowed: limit.Allowed(),
	}
}

// Ratio is the counted deflection over what is allowed.
func (w WindDeflection) Ratio() float64 { return calc.Ratio(w.Movement, w.Allowed) }

// Explain writes the check out.
func (w WindDeflection) Explain() calc.Check {
	var s calc.Sheet
	s.Given("delta_W", w.Component, "in", "deflection under strength-level component wind")
	s.Quoted("k_W", w.Part, "", "IBC 2018 Table 1604.3 note f", calc.Recalled)
	s.Step("delta", "abs(k_W * delta_W)", w.Movement, "in", "IBC 2018 Table 1604.3 note f")
	w.Limit.write(&s)
	return s.Check("wind deflection", "delta", "allowed")
}
