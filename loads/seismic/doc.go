// Package seismic is the horizontal earthquake force on a patio cover: the equivalent
// lateral force of ASCE/SEI 7-16 12.8 in the short form that a small structure needs.
//
// A [Shear] follows from the site's spectral values, the weight, and the [System] that
// holds the cover in one direction. The response of a cover on its own posts is hardly
// reduced (R = 1.5), so the earthquake is not dismissed: it is computed and set against
// the wind. Weights are in pounds, heights in inches; spectral values are parts of
// gravity. Forces are of strength level.
//
// It leaves out irregular plans, site-specific spectra, and the distribution of the
// force over the height, of which a cover has one level.
package seismic
