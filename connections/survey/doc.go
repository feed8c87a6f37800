// Package survey judges the joints of a roof that stands already: what was seen at
// each, what that holds, and whether it is as much as the wind asks.
//
// [Seen] records one joint or a run of equal ones. [NewCapacity] turns the record into
// an allowable uplift by the chapter of the National Design Specification that fits the
// evidence, or into nothing: what nobody saw, what is damaged and what was recorded by
// half holds nothing. [NewJoint] compares it with the demands of both ways of reckoning
// the wind and gives a [Verdict]; the zero value of every record is the weakest one.
// [NewOpening] says how many joints of a zone must be opened before the others may be
// judged by them, [NewDown] follows a tied joint to the ground, and [Tail] is an
// existing rafter tail that a cover hangs from.
//
// Demands and capacities are of allowable stress level, for wind: 0.6D + 0.6W with only
// the dead load that is sure to stay, and a load duration factor of 1.6 on wood. It
// follows NDS 2018 chapters 11 and 12, and the retrofit rules named at each step.
// Uplift is positive upward. Lengths are in inches, forces in lb.
//
// The package leaves out sideways force on the ties, the strength of trusses, and any
// rating that no label or report states: a rating is the reader's word for one.
package survey
