package wind

import "patiocover/calc"

// Soffit is GCp below a windward overhang (ASCE 7-16 28.3.3, read in two public
// programs), factor.
const Soffit = 0.7

// An Extension is the net pressure on a cover taken as an overhang of the house roof:
// its rafters are those of the house, or lie in the same plane without a gap. The
// velocity pressure is that at the mean roof height of the house.
type Extension struct{ EndZone }

// NewExtension returns the net pressures: on top −1.07 and below 0.7 together upward;
// downward, from 20 degrees, 0.27. Neither is less than 16 psf.
//
// Special case: the pressures are not numbers outside 0 to 45 degrees.
func NewExtension(s Site, angle float64) Extension {
	return Extension{newEndZone(s, angle, Soffit, 0)}
}

// View is the overhang as one way to see a cover.
func (e Extension) View() View {
	return newView(RoofExtension, e.Suction, e.Pressure, e.edition()+" 28.3.3")
}

// Lines writes the pressures up, without the velocity pressure, which has lines of its
// own.
func (e Extension) Lines() []calc.Line {
	var s calc.Sheet
	e.writeTop(&s, "house roof")
	s.Quoted("GC_sof", Soffit, "", e.edition()+" 28.3.3, below the overhang", calc.Read)
	e.writePush(&s)
	e.writeNet(&s, "(GC_top + GC_sof)", "28.3.3", "GC_push")
	return s.Lines()
}
