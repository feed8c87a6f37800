package lumber

import (
	_ "embed"
	"fmt"

	"patiocover/calc"
)

// A Method is a design method of NDS 2018 1.4. It decides which loads a demand was
// found with, and which factors a value takes for the time that they act.
type Method uint8

// The methods.
const (
	ASD  Method = iota // allowable stress design: C_D on Fb, Ft, Fv and Fc
	LRFD               // load and resistance factor design: K_F phi lambda
	methods
)

// String returns the standard's name of the method.
func (m Method) String() string {
	switch m {
	case ASD:
		return "ASD"
	case LRFD:
		return "LRFD"
	}
	return fmt.Sprintf("Method(%d)", uint8(m))
}

//go:embed lrfd.csv
var lrfdCSV string

//go:embed timeeffect.csv
var timeEffectCSV string

// A conversion is one row of the factors of load and resistance factor design.
type conversion struct {
	property   string
	format     float64 // K_F, factor
	resistance float64 // phi, factor
	source     string
	status     calc.Status
}

func (c conversion) known() calc.Status { return c.status }

var conversionRows = calc.ReadTable("lrfd.csv", lrfdCSV, func(r calc.Row) conversion {
	return conversion{
		property: r.Text("property"), format: r.Num("KF"), resistance: r.Num("phi"),
		source: r.Text("source"), status: r.Status(),
	}
})

// conversions holds K_F and phi by kind; E takes neither.
var conversions = func() (all [kinds]conversion) {
	for k := range kinds {
		all[k] = conversion{format: 1, resistance: 1}
		for _, c := range conversionRows {
			if c.property == k.Symbol() {
				all[k] = c
			}
		}
	}
	return all
}()

// A timeRow is one row of the time effect factors.
type timeRow struct {
	name, combination, source string
	factor                    float64 // lambda
	status                    calc.Status
}

func (r timeRow) known() calc.Status { return r.status }

var timeRows = calc.ReadTable("timeeffect.csv", timeEffectCSV, func(r calc.Row) timeRow {
	return timeRow{
		name: r.Text("duration"), combination: r.Text("combination"), source: r.Text("source"),
		factor: r.Num("factor"), status: r.Status(),
	}
})

// timeTable holds the rows by Duration.
var timeTable = func() (all [durations]timeRow) {
	for _, r := range timeRows {
		for d := range durations {
			if d.String() == r.name {
				all[d] = r
			}
		}
	}
	return all
}()

// TimeEffect returns lambda, the time effect factor of load and resistance factor
// design, for a combination whose shortest full load has this duration (NDS 2018
// Table N3). It applies to Fb, Ft, Fv and Fc.
func (d Duration) TimeEffect() float64 { return timeTable[d].factor }

// timed tells the kinds that the time of loading acts on: all strengths but Fc_perp.
// Since the 2012 edition, K_F of Fc_perp holds lambda = 0.8 of the editions before:
// 1.67 = 1.875/0.90 x 0.8 (NDS 2018 Tables 4.3.1 and 5.3.1, seen restated).
func (k Kind) timed() bool {
	return k == Bending || k == Tension || k == Shear || k == Compression
}

// TimeFactor returns what the method multiplies a value of this kind with for loads
// of the duration: C_D in allowable stress design, K_F phi lambda in load and
// resistance factor design. E keeps its value in both; Fc_perp and Emin take no C_D,
// and K_F phi without lambda.
func (m Method) TimeFactor(k Kind, d Duration) float64 { return timeFactors[m][k][d] }

// timeFactors holds the factors of [Method.TimeFactor].
var timeFactors = func() (all [methods][kinds][durations]float64) {
	for m := range methods {
		for k := range kinds {
			for d := range durations {
				all[m][k][d] = m.timeFactor(k, d)
			}
		}
	}
	return all
}()

func (m Method) timeFactor(k Kind, d Duration) float64 {
	f := 1.0
	if m == LRFD {
		f = conversions[k].format * conversions[k].resistance
	}
	switch {
	case !k.timed():
		return f
	case m == LRFD:
		return f * timeTable[d].factor
	}
	return durationTable[d].factor
}

// At returns the value with the factor of its method for loads of the duration, psi:
// what a demand of that method is compared with. See [Method.TimeFactor].
func (p Property) At(d Duration) float64 { return p.Value * p.Method.TimeFactor(p.Kind, d) }

// EdgewiseAt returns the value at the duration without the flat use factor, psi: for
// bending Fb*, which C_L depends on (NDS 2018 3.3.3.8).
func (p Property) EdgewiseAt(d Duration) float64 {
	return p.Edgewise() * p.Method.TimeFactor(p.Kind, d)
}

// timeSymbols end the symbols of K_F and phi by kind, as Table 2.3.6 does: phi_b.
var timeSymbols = [kinds]string{
	Bending: "_b", Tension: "_t", Shear: "_v", Bearing: "_perp", Compression: "_c", Stability: "_s",
}

// FormulaAt returns the product of the symbols that [Property.LinesAt] defines: that
// of [Property.Formula] with the factors of the method.
func (p Property) FormulaAt() string {
	f := p.Formula()
	if p.Method == LRFD && p.Kind != Elasticity {
		f += " * K_F" + timeSymbols[p.Kind] + " * phi" + timeSymbols[p.Kind]
	}
	switch {
	case !p.Kind.timed():
		return f
	case p.Method == LRFD:
		return f + " * lambda"
	}
	return f + " * C_D"
}

// LinesAt writes the lines of [Property.Lines] and the factors of the method for
// loads of the duration.
func (p Property) LinesAt(d Duration) []calc.Line {
	var s calc.Sheet
	s.Append(p.Lines())
	if p.Method == LRFD && p.Kind != Elasticity {
		c, symbol := conversions[p.Kind], timeSymbols[p.Kind]
		s.Quoted("K_F"+symbol, c.format, "", c.source, c.status)
		s.Quoted("phi"+symbol, c.resistance, "", c.source, c.status)
	}
	switch {
	case !p.Kind.timed():
	case p.Method == LRFD:
		r := timeTable[d]
		s.Quoted("lambda", r.factor, "", r.source+", "+r.combination, r.status)
	default:
		d.Write(&s)
	}
	return s.Lines()
}
