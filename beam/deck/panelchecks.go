package deck

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// Factors on wet panels, moisture content of 16 % or more in service (panel design
// specification that the IBC refers to, from memory).
const (
	wetStrength  = 0.75
	wetStiffness = 0.85
)

// wetFactor returns C_M of a wet or dry panel.
func wetFactor(wet bool, factor float64) float64 {
	if wet {
		return factor
	}
	return 1
}

// writeWet adds the line of C_M.
func writeWet(s *calc.Sheet, symbol string, wet bool, factor float64) {
	if wet {
		s.Quoted(symbol, factor, "", "panel design specification, wet service", calc.Recalled)
		return
	}
	s.Given(symbol, 1, "", "NDS 2018 9.3.3, dry service")
}

// A Laid is a panel on its span under one action.
type Laid struct {
	Action   Action  // what acts
	Rating   string  // span rating
	Span     float64 // l, in
	Load     float64 // p, lb/in², + down
	Wet      bool    // wet service
	Moisture float64 // CM of its strength, factor
}

// laid lays the panel on the span, in.
func (p *Panel) laid(a *Action, span float64, wet bool) Laid {
	return Laid{Action: *a, Rating: p.Rating, Span: span, Load: a.Net(), Wet: wet, Moisture: wetFactor(wet, wetStrength)}
}

// A PanelBending is the check of a panel in bending by its design capacity, for two or
// more spans: M <= FbS'.
type PanelBending struct {
	Laid
	Moment    float64 // M, lb-in per in of width, its magnitude
	Strength  Quoted  // FbS, lb-in per in of width
	Allowable float64 // FbS', lb-in per in of width
}

// NewPanelBending checks the panel on the span, in, under the action.
func NewPanelBending(a *Action, p *Panel, span float64, wet bool) PanelBending {
	b := PanelBending{Laid: p.laid(a, span, wet), Strength: p.Strength}
	b.Moment = math.Abs(b.Load) * span * span / 8 // statics
	b.Allowable = b.Strength.Value * a.timed(lumber.Bending) * b.Moisture
	return b
}

// Ratio is M / FbS'.
func (b PanelBending) Ratio() float64 { return calc.Ratio(b.Moment, b.Allowable) }

// Explain writes the check out.
func (b PanelBending) Explain() calc.Check {
	var s calc.Sheet
	b.Action.write(&s)
	s.Given("l", b.Span, "in", "span, rafters center to center")
	s.Step("M", "abs(p_in) * pow(l, 2) / 8", b.Moment, "lb-in/in", "statics, one or two spans")
	s.Quoted("FbS_ft", b.Strength.Value*calc.Ft, "lb-in/ft", b.Strength.Source+", "+b.Rating, b.Strength.Status)
	s.Step("FbS", "FbS_ft / 12", b.Strength.Value, "lb-in/in", "unit change")
	factor := b.Action.writeTimed(&s, lumber.Bending)
	writeWet(&s, "C_M", b.Wet, b.Moisture)
	s.Step("FbS_adj", "FbS * "+factor+" * C_M", b.Allowable, "lb-in/in", "NDS 2018 Table 9.3.1")
	return s.Check("bending", "M", "FbS_adj")
}

// A PanelShear is the check of a panel in shear in its plane: V <= Fs(Ib/Q)'.
type PanelShear struct {
	Laid
	Force     float64 // V, lb per in of width, its magnitude
	Strength  Quoted  // Fs(Ib/Q), lb per in of width
	Allowable float64 // Fs(Ib/Q)', lb per in of width
}

// NewPanelShear checks the panel on the span, in, under the action.
func NewPanelShear(a *Action, p *Panel, span float64, wet bool) PanelShear {
	v := PanelShear{Laid: p.laid(a, span, wet), Strength: p.Shear}
	v.Force = 5 * math.Abs(v.Load) * span / 8 // statics, beside the middle support of two spans
	v.Allowable = v.Strength.Value * a.timed(lumber.Shear) * v.Moisture
	return v
}

// Ratio is V / Fs(Ib/Q)'.
func (v PanelShear) Ratio() float64 { return calc.Ratio(v.Force, v.Allowable) }

// Explain writes the check out.
func (v PanelShear) Explain() calc.Check {
	var s calc.Sheet
	v.Action.write(&s)
	s.Given("l", v.Span, "in", "span, rafters center to center")
	s.Step("V", "5 * abs(p_in) * l / 8", v.Force, "lb/in", "statics, two equal spans")
	s.Quoted("F_s_ft", v.Strength.Value*calc.Ft, "plf", v.Strength.Source+", "+v.Rating, v.Strength.Status)
	s.Step("F_s", "F_s_ft / 12", v.Strength.Value, "lb/in", "unit change")
	factor := v.Action.writeTimed(&s, lumber.Shear)
	writeWet(&s, "C_M", v.Wet, v.Moisture)
	s.Step("Fs_adj", "F_s * "+factor+" * C_M", v.Allowable, "lb/in", "NDS 2018 Table 9.3.1")
	return s.Check("shear in the plane", "V", "Fs_adj")
}

// A PanelDeflection is the check of the code's limit on a panel of two or more spans
// under an unfactored uniform load.
type PanelDeflection struct {
	Pressure  float64           // q, lb/in² of deck
	Rating    string            // span rating
	Span      float64           // l, in
	Stiffness Quoted            // EI, lb-in² per in of width
	Wet       bool              // wet service
	Moisture  float64           // CM, factor
	Bends     float64           // EI', lb-in² per in of width
	Check     member.Deflection // against the limit
}

// NewPanelDeflection checks the panel on the span, in, under the load, lb/in².
func NewPanelDeflection(pressure float64, p *Panel, span float64, wet bool, limit member.Limit) PanelDeflection {
	d := PanelDeflection{
		Pressure: pressure, Rating: p.Rating, Span: span, Stiffness: p.Stiffness, Wet: wet, Moisture: wetFactor(wet, wetStiffness),
	}
	d.Bends = d.Stiffness.Value * d.Moisture
	limit.Length, limit.Cantilever = span, false
	d.Check = member.NewDeflection(pressure*span*span*span*span/(185*d.Bends), limit) // two equal spans
	return d
}

// Ratio is the deflection over what is allowed.
func (d PanelDeflection) Ratio() float64 { return d.Check.Ratio() }

// Explain writes the check out.
func (d PanelDeflection) Explain() calc.Check {
	var s calc.Sheet
	s.Given("q", d.Pressure/calc.PSF, "psf", "load on the deck, unfactored")
	s.Step("q_in", "q / 144", d.Pressure, "psi", "unit change")
	s.Given("l", d.Span, "in", "span, rafters center to center")
	s.Quoted("EI_ft", d.Stiffness.Value*calc.Ft, "lb-in²/ft", d.Stiffness.Source+", "+d.Rating, d.Stiffness.Status)
	writeWet(&s, "C_M_E", d.Wet, d.Moisture)
	s.Step("EI", "EI_ft / 12 * C_M_E", d.Bends, "lb-in²/in", "NDS 2018 Table 9.3.1, per inch")
	s.Step("delta", "q_in * pow(l, 4) / (185 * EI)", d.Check.Movement, "in", "statics, two equal spans")
	return closed(&s, d.Check.Explain())
}
