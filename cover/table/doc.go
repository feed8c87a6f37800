// Package table makes the prescriptive table of a jurisdiction from its own criteria:
// the longest span of rafters, the least beam, post and footing, and the rating of ties,
// over ranges of loads, woods, spans and spacings.
//
// [Read] reads the [Criteria]; [New] works out what the cells have in common; every cell
// has a number, and [Table.Cell] answers it from that number alone, so that any part of
// the table can be made anywhere and the parts joined in the order of the numbers
// ([Table.Write], [Table.WriteFile]).
//
// A cell is answered by the checks of packages beam/member, connections and
// connections/footing: each member spans simply between two supports. The longest span is
// taken from closed forms (L² = 8 M'/w, L = 2 V'/w, L³ = 384 E'I/(5 n w)) and then
// checked; where a capacity depends on the span, as in net uplift with an edge that is
// not braced, it is found by halving whole inches from there.
//
// It leaves out what a table cannot know: drift and sliding snow, earthquakes, ponding,
// continuity over supports, notches, the force along a slope, what holds a cover
// sideways. [Table.Notes] says so in every output.
package table
