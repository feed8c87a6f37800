// Package steel checks flat steel plates that lie in pairs on both sides of wood and are
// bolted through it, by allowable strength of AISC 360-16.
//
// [Plate] is the pair in tension and in compression: yielding and rupture of chapter D,
// block shear of J4.3, buckling of chapter E, bearing and tear-out at the holes of J3.10,
// and the bolts themselves in double shear by J3.6. The bolts in the wood are another
// check, and nearly always the weaker one: see package dowel.
//
// Units are pounds and inches. No factor of load duration stands on steel. Left out: fillet welds, prying, holes other
// than standard ones, and the secondary moments of plates that are not in line with
// their force.
package steel
