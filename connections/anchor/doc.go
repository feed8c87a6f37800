// Package anchor is one bolt that holds a post base down to concrete and keeps it from
// sliding, by ACI 318-19 chapter 17.
//
// [Tension] is the least of steel, concrete breakout, pullout and side-face blowout,
// [Shear] the least of steel, concrete breakout toward an edge and pryout, and
// [Interaction] both together. Demands are of strength level: 0.9D + 1.0W, not the
// 0.6D + 0.6W of allowable stress design.
//
// The concrete counts as cracked and without supplementary reinforcement unless it is
// said otherwise. A drilled anchor has the lower breakout coefficient and the lowest
// category of its kind, and whatever its evaluation report says less governs over this.
// What the slab or footing around the anchor weighs is another check: an anchor that
// holds lifts the slab with it. Units are pounds and inches.
//
// Left out: groups of anchors, adhesive anchors, anchor reinforcement, the ductility that
// seismic categories C to F ask for, and lever arms of a stand-off.
package anchor
