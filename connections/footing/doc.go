// Package footing is what a post stands on: a spread footing or a pier, a post set in
// the ground, or a slab, and how much each of them bears, holds down and holds sideways.
//
// A [Block] is the concrete, round or square, with or without a narrower neck. [Bearing]
// presses it on the soil, [Uplift] weighs it against the wind, [Depth] and [Thickness]
// hold it to the least sizes of the residential code, [Plain] bends its projection
// without reinforcement, and [Sideways] holds the shear at its top by weight and friction
// or by its depth. [Pole] is the embedment of a post that stands by itself, [SlabWeight]
// what a slab holds down, [Soil] the presumptive values.
//
// Standards: IBC 2018 1806 and 1807.3, IRC 2018 R401.4, R403.1 and R507.3, ACI 318-19
// chapter 14. Loads are allowable stress design values of ASCE 7 2.4. The wind brings no
// increase of the soil's values: the one-third of the alternative combinations and the
// doubling for isolated poles are not used. No cone of soil and no friction on the shaft
// counts against uplift.
//
// Uplift is positive upward in every name that says Uplift. Everything is in pounds and
// inches; the written calculations are in feet.
//
// Left out: settlement, expansive soil and fill, slopes, neighboring footings and
// reinforcement. They need an engineer with the soil report.
package footing
