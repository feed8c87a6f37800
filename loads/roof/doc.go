// Package roof is the wind on the roof of the house that a cover stands beside, and
// what it asks of the joints between its rafters and its walls.
//
// An [Outside] is the coefficient of one half of the roof by the envelope procedure.
// A [Tie] is the uplift of one joint in closed form, on a [Basis] of coefficients:
// that behind the prescriptive table of the residential code, the plain figure, or
// the one of components; [Banded] blends two zones that a rafter crosses, and a
// [Support] is one of several supports of a rafter. [Openings] class the house by what
// stands open in its walls. [Hung] adds a cover that hangs from the eave. A [Component]
// is the pressure on a part of the roof, such as sheathing, by zone and area, and
// [Widths] are the zones on the plan.
//
// It follows ASCE/SEI 7-16 28.3 and 30.3, 7-10 where a printed table is to be
// reproduced, and the tables of IRC 2018 R301.2 and R802.11. Pressures of components
// are of strength level; a Tie, like the table, is of allowable stress level, with
// 0.6 of the wind and 0.6 of the dead load. Lengths are in inches, pressures in
// lb/in². Coefficients are negative for suction as printed, unless a name says Up.
//
// What is not known has no value: a constructor that may lack one returns false, and
// its numbers are not numbers. The package leaves out hip roofs, roofs above
// 45 degrees, and the reductions in the footnotes of R802.11, all of which lower the
// uplift. It judges no joint: an old toe-nail has no published capacity.
package roof
