// Package rain is what water asks of a patio cover: the least slope of its covering,
// the stiffness that keeps water from ponding, the fall that is left when the members
// have sagged, and the flow at the gutter.
//
// The slopes are those of the California Residential Code 2013, which carries the text
// of the International Residential Code 2012. The ponding check is derived from the
// beam on which water gathers; its limit is a choice of this project. Lengths are in
// inches, loads in pounds and inches.
//
// It leaves out roofs with raised edges or scuppers, which hold water by design.
package rain
