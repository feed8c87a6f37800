// Package springs answers what the fasteners of a long member take of loads on it: the
// member is a beam on springs of equal distance, one to each fastening.
//
// Away from the ends it is Hetenyi's infinite beam on an elastic bed (Beams on Elastic
// Foundation, 1946, from memory), which stays within a few hundredths of springs
// that stand apart, or above them. At an end, where the beam goes on beyond its first spring, the bed is
// no picture of the springs any more, and they are solved one by one.
//
// Units: pounds and inches. The springs pull as well as they press.
package springs
