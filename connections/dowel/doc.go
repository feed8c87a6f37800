// Package dowel is the strength of nails, wood screws, lag screws and bolts in
// wood: NDS 2018 chapters 11 and 12.
//
// A [Fastener] is one size out of the embedded tables. A [Joint] says what it goes
// through. [NewLateral] returns the lateral value by the yield limit equations of
// NDS 2018 12.3.1, or by the general dowel equations of AWC Technical Report 12 where
// the pieces do not touch; [NewWithdrawal], [NewHeadPull] and [NewToenail] the
// rest of chapter 12. These are reference values. [Factors] holds what chapter 11
// multiplies them with, and [Shear], [Pull] and their like compare with a demand.
//
// Units are pounds and inches. Angles are those of the load to the grain, in degrees. Dowel bearing strengths are
// rounded to 50 psi, as the tables of the standard are. A value of 0 means that the
// standard gives none, such as for a nail pulled from end grain.
//
// The package leaves out split rings, shear plates, timber rivets, and fasteners whose
// values stand in an evaluation report.
package dowel
