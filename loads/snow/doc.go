// Package snow is the snow on a patio cover by ASCE/SEI 7-16 and 7-22, chapter 7: the
// balanced load of the roof, the least load of a low slope, rain on snow, the drift
// that the step to the house gathers, and the snow that slides off the house.
//
// A [Site] and a [Roof] give a [Balanced] load; from it and the [Step] to the house
// follows a [Drift], from the roof above a [Sliding]. The ground snow of the 2022
// edition is of strength level and that of 2016 is not: each is refused by the rules of
// the other. What cannot be found says why in its [Reason], and its loads are not
// numbers, so that nothing passes by them.
//
// Loads are per area of plan in lb/in², lengths in inches, angles in radians. Those of
// ASCE 7-22 are of strength level. The chapter itself was not seen: rows marked read
// were read in published calculations and in libraries that transcribe it.
//
// Not here: unbalanced snow of gables, valleys, domes and saw-tooth roofs, the heat
// loss table of ASCE 7-22, snow guards, and ice at the eave.
package snow
