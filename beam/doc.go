// Package beam answers what a straight continuous member feels: reactions, shear,
// bending moment and deflection, with their exact extrema bay by bay.
//
// A [Line] is the geometry: one member of uniform stiffness on simple supports,
// with or without overhangs. A [Plan] joins a line with load cases, each a list of
// [Load]. The member is statically determinate but for the moments over its inner
// supports; those follow from Clapeyron's equation of three moments, factored once
// per line. Everything that a case causes is then known at the ends of segments in
// which the line load is linear, so that shear, moment, slope and deflection are
// polynomials there. Because all of it is linear in the loads, a combination is a
// weighted sum of the cases, and [Plan.Run] takes the extrema of the sum from the
// zeros of those polynomials, not from samples. A search that asks for two load shapes
// over and over may ask their [Outlines] first, which bound the extrema from within.
//
// Signs: loads act downward when positive, reactions upward. Shear is positive
// where the part to the left pushes the part to the right up, moment where the
// lower face is in tension (sagging), deflection downward. Positions are measured
// along the member from its left tip.
//
// Units: pounds and inches. The stiffness E I is in lb-in².
//
// The theory is Euler and Bernoulli's: small deflections, plane sections, no shear
// deflection. A published modulus of elasticity of sawn lumber is an apparent one
// that includes the shear deflection of a slender member, so the deflection of a
// short deep span is underestimated. Supports neither settle nor yield, and they
// hold the member down as well as up.
//
// The sub-packages hold what the member is made of and what is checked of it: lumber, the
// material; member, its checks; deck, what lies on the rafters; brace, posts that hold a roof
// sideways; diaphragm, the deck in its own plane; springs, a ledger on its fasteners.
package beam
