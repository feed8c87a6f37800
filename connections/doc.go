// Package connections is what holds a cover together, link by link from the roof
// deck to the soil.
//
// A [Path] names the links that a cover must have; none may be missing. For each
// link a list of [Demand], one for every combination, is condensed by [Govern] to
// the largest downward, upward and sideways force with the combination that
// brings it, and [Uplift] writes down how the rating that a tie must carry follows
// from the wind and the least dead load.
//
// Demands are allowable stress design values of ASCE 7-16 2.4 or ASCE 7-22 2.4:
// 0.6D + 0.6W for uplift, where D counts only what is fastened above the link.
// Uplift is positive upward in every name that says Uplift; Vertical is positive
// downward. Ratings of ties are quoted for wind, with the load duration factor of
// 1.6 already in them; no further factor is put on them.
//
// The sub-packages show capacities: dowel, nails, screws, lag screws and bolts in wood;
// steel, bolted plates; footing, what a post stands on; anchor, one bolt in concrete; and
// survey, the joints of a roof that stands already. A link whose capacity has not been
// shown is not OK. Left out: which connector of the trade has a rating, which its label
// and report say.
package connections
