// Package wind is the wind on a patio cover, taken as a free roof that is open on three
// or four sides, and beside it as an authority may see it instead: a canopy on the wall
// or an overhang of the roof of the house.
//
// A [Velocity] is the velocity pressure at the mean roof height, and a [SpeedUp]
// the factor of a hill in it. [Halves] and [Bands] hold the net pressure coefficients
// of the main wind force resisting system for wind across and along the ridge,
// [Component] those of parts by zone and effective area, and [Sideways] the
// horizontal force on the edges and posts. A [Canopy] and an [Extension] are the other
// two views; [Views] sets them beside the free roof and says which governs. An
// [Enclosed] is the cover with its sides closed in part.
//
// It follows ASCE/SEI 7-16 26.8, 26.10, 27.3.2, 28.3.3, 30.7 and 30.11, and the same
// figures of 7-22. The coefficients of the whole roof were read in two transcriptions of
// 7-22, and in part in a check against the pages of 7-16; those of parts in a foreign
// reprint of 7-05. That the editions between print the same is from memory.
//
// Coefficients are net, of the top and the under side together: positive pushes the
// roof down, negative lifts it, always normal to the surface. Pressures are of
// strength level; lengths are in inches, pressures in lb/in².
//
// An attached cover is a free roof too, with the worse of clear and obstructed flow;
// unless one is chosen, the other views only add to it. The coefficients of a canopy are
// the user's: the package has none. It leaves out roofs over 45 degrees, and the wind on
// walls and screens themselves.
package wind
