package wind

import "patiocover/calc"

// insidePressure is GCpi of a partially enclosed building, which acts either way (ASCE
// 7-16 Table 26.13-1), factor.
const insidePressure = 0.55

// An Enclosed is the net pressure on the roof of a cover whose sides screens or walls
// close in part: the end zone of a low-rise building above, the pressure of a partially
// enclosed one below.
type Enclosed struct{ EndZone }

// NewEnclosed returns the net pressures q (1.07 + 0.55) upward and q (GCpf + 0.55)
// downward (ASCE 7-16 28.3), not less than 16 psf either way.
//
// Special case: the pressures are not numbers outside 0 to 45 degrees.
func NewEnclosed(s Site, angle float64) Enclosed {
	return Enclosed{newEndZone(s, angle, insidePressure, insidePressure)}
}

// Lines writes the pressures up, without the velocity pressure, which has lines of its
// own.
func (e Enclosed) Lines() []calc.Line {
	var s calc.Sheet
	e.writeTop(&s, "roof")
	e.writePush(&s)
	s.Quoted("GC_i", insidePressure, "", e.edition()+" Table 26.13-1, partially enclosed", calc.Read)
	e.writeNet(&s, "(GC_top + GC_i)", "eq. 28.3-1", "(GC_push + GC_i)")
	return s.Lines()
}
