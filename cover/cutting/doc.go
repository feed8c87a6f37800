// Package cutting lays the pieces of a job into sticks of the lengths that a yard
// keeps, at the least cost: the cutting-stock problem of operations research.
//
// [New] is exact while the counts of the pieces span at most [States] combinations,
// which a patio cover hardly reaches; beyond it every length is cut from sticks of its
// own, and the plan says so.
package cutting
