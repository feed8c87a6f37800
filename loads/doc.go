// Package loads is what acts on a patio cover: dead load by layers and the weight of
// wood, roof live load, the combinations that put them together, and the rule by which
// a post may stand on a slab. The sub-packages hold the wind on a cover and on the roof
// of the house, snow, the earthquake, and what rain water asks.
//
// It follows ASCE/SEI 7-16 and 7-22, and the patio cover appendix of the International
// Residential Code. [ASD] and [ASDEarthquake] are the combinations of allowable stress
// design, [LRFD] those of strength design.
// Gravity loads are positive downward; what lifts is positive upward only in names that
// say Uplift. Loads are in pounds and inches: a pressure of one psf is calc.PSF.
//
// Dead load is counted twice: the most that may be there acts downward, the least
// that is certain resists uplift. Live and snow load act per area of plan, dead load
// per area of the sloped surface, wind normal to it.
//
// It leaves out floor live load, soil, water and ice, and combinations that cannot govern
// without them.
package loads
