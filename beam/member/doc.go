// Package member checks one wood member: bending, shear, bearing, compression,
// tension, axial force combined with bending, and deflection.
//
// Each check is a flat value that holds every number between the demand and the
// capacity. Its constructor is arithmetic only and allocates nothing; Ratio is for
// the search and Explain for the reader.
//
// It follows ANSI/AWC NDS 2018 chapters 3, 4, 5 (glued wood) and 15 (built-up posts,
// eccentric loads), in the design method of the piece: allowable stress, or load and
// resistance factor design with strength-level demands. The adjusted values come from
// package lumber; the factors here are those of the load and the member: C_D or
// K_F phi lambda, C_L, C_P, C_b. Demands come from the statics, one combination at a time
// with its own load duration.
//
// A geometry that the standard does not allow, and one that is not known, such as
// an unbraced length that was not given, has no capacity: the ratio of any demand
// is infinite.
//
// Units are pounds and inches. The package leaves out spaced columns, loads on side
// brackets (NDS 2018 15.4.2), and connections.
package member
