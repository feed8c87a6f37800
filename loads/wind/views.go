package wind

import (
	"fmt"
	"math"
	"strings"

	"patiocover/calc"
)

// A Model is a way to see a patio cover in the wind chapters.
type Model uint8

// The models. The zero value leaves the choice to the worst of those known.
const (
	Unchosen       Model = iota
	FreeRoof             // open roof on its own, clear and obstructed flow
	AttachedCanopy       // canopy on the wall of the house, by the user's coefficients
	RoofExtension        // overhang of the house roof
)

var modelNames = [...]string{
	Unchosen: "unchosen", FreeRoof: "free roof", AttachedCanopy: "attached canopy", RoofExtension: "overhang of the house roof",
}

// String names the model.
func (m Model) String() string {
	if int(m) < len(modelNames) {
		return modelNames[m]
	}
	return fmt.Sprintf("Model(%d)", uint8(m))
}

// A View is what one model makes of a cover, strength level.
type View struct {
	Model    Model   // that it is by
	Known    bool    // the model has values here; else the pressures are not numbers
	Suction  float64 // net upward, lb/in², positive
	Pressure float64 // net downward, lb/in², positive
	Source   string  // clause
}

// newView is known when both pressures are finite.
func newView(m Model, suction, pressure float64, source string) View {
	v := View{Model: m, Suction: suction, Pressure: pressure, Source: source}
	v.Known = math.Abs(suction+pressure) < math.Inf(1)
	if !v.Known {
		v.Suction, v.Pressure = math.NaN(), math.NaN()
	}
	return v
}

// WholeRoof is the free roof as one way to see a cover: the worst net coefficients of
// the whole roof over both flows and all directions (ASCE 7-16 27.3.2).
func WholeRoof(v Velocity, r Roof) View {
	var list [MostHalves]Half
	halves := AppendHalves(list[:0], r)
	up, down := 0.0, 0.0
	for _, h := range halves {
		up, down = min(up, h.Windward, h.Leeward), max(down, h.Windward, h.Leeward)
	}
	for _, b := range bandRows {
		up, down = min(up, b.Net[0], b.Net[1], b.Net[2]), max(down, b.Net[0], b.Net[1], b.Net[2])
	}
	if len(halves) == 0 {
		up, down = math.NaN(), math.NaN()
	}
	return newView(FreeRoof, v.Net(-up), v.Net(down), v.Site.Edition.String()+" 27.3.2")
}

// Views are the models of one part of a cover side by side.
type Views struct {
	Free      View    // the free roof, always computed
	Canopy    View    // the attached canopy; unknown without the user's coefficients
	Extension View    // the overhang of the house roof; unknown where the cover is none
	Chosen    Model   // by the user or the building official
	Uplift    Model   // that governs upward
	Downward  Model   // that governs downward
	Suction   float64 // to use, lb/in², positive upward
	Pressure  float64 // to use, lb/in², positive downward
	Below     bool    // the chosen model asks less upward or downward than the free roof
}

// NewViews sets the models side by side. Unless one is chosen, the larger of those known
// governs each way, so that nothing is ever taken below the free roof; a chosen one
// governs alone, and Below tells when it asks less than the free roof. The views must
// be of the same part and speed; those that do not apply are left as the zero View.
//
// Special case: the pressures are not numbers when the chosen view, or without a
// choice the free roof, has no values.
func NewViews(free, canopy, extension View, chosen Model) Views {
	v := Views{Free: free, Canopy: canopy, Extension: extension, Chosen: chosen, Uplift: chosen, Downward: chosen}
	if chosen != Unchosen {
		only := v.of(chosen)
		v.Suction, v.Pressure = only.Suction, only.Pressure
		if !only.Known {
			v.Suction, v.Pressure = math.NaN(), math.NaN()
		}
		v.Below = only.Known && free.Known && (only.Suction < free.Suction || only.Pressure < free.Pressure)
		return v
	}
	v.Uplift, v.Downward = FreeRoof, FreeRoof
	v.Suction, v.Pressure = free.Suction, free.Pressure
	if !free.Known {
		v.Suction, v.Pressure = math.NaN(), math.NaN()
		return v
	}
	for _, o := range [...]View{canopy, extension} {
		if o.Known && o.Suction > v.Suction {
			v.Suction, v.Uplift = o.Suction, o.Model
		}
		if o.Known && o.Pressure > v.Pressure {
			v.Pressure, v.Downward = o.Pressure, o.Model
		}
	}
	return v
}

// of is the view by a model; there is none by an unknown one.
func (v *Views) of(m Model) View {
	switch m {
	case FreeRoof:
		return v.Free
	case AttachedCanopy:
		return v.Canopy
	case RoofExtension:
		return v.Extension
	}
	return View{Model: m}
}

// symbols of the models in the written calculation.
var modelSymbols = [...]string{FreeRoof: "free", AttachedCanopy: "can", RoofExtension: "ext"}

// Lines writes the comparison up.
func (v Views) Lines() []calc.Line {
	var s calc.Sheet
	var up, down []string
	for _, o := range [...]View{v.Free, v.Canopy, v.Extension} {
		if !o.Known {
			continue
		}
		symbol := modelSymbols[o.Model]
		up, down = append(up, "p_up_"+symbol), append(down, "p_down_"+symbol)
		source := o.Model.String() + ", " + o.Source
		s.Given("p_up_"+symbol, o.Suction/calc.PSF, "psf", source)
		s.Given("p_down_"+symbol, o.Pressure/calc.PSF, "psf", source)
	}
	if math.IsNaN(v.Suction + v.Pressure) {
		s.Given("p_up", v.Suction, "psf", v.Uplift.String()+": no values are known")
		return s.Lines()
	}
	if v.Chosen != Unchosen {
		symbol, source := modelSymbols[v.Chosen], v.Chosen.String()+", as chosen"
		s.Step("p_up", "p_up_"+symbol, v.Suction/calc.PSF, "psf", source)
		s.Step("p_down", "p_down_"+symbol, v.Pressure/calc.PSF, "psf", source)
		return s.Lines()
	}
	s.Step("p_up", largest(up), v.Suction/calc.PSF, "psf", "governs upward: "+v.Uplift.String())
	s.Step("p_down", largest(down), v.Pressure/calc.PSF, "psf", "governs downward: "+v.Downward.String())
	return s.Lines()
}

// largest is the formula of the largest of the symbols, of which there is at least one.
func largest(symbols []string) string {
	if len(symbols) == 1 {
		return symbols[0]
	}
	return "max(" + strings.Join(symbols, ", ") + ")"
}
