// Package diaphragm checks a sheathed roof deck for shear in its own plane, where it
// carries a push along the house into the one side that is held, its ledger.
//
// Such a deck stands out from the house as a cantilever: the ledger takes the push as
// [Shear] along its length and the turning of the roof as a pull and a pressure in the
// rafters at its ends. How far it may stand out is [Reach] (SDPWS 2015 4.2.5.2). The
// nominal unit shears are those of wood structural panels on framing of 2 in. nominal
// (SDPWS 2015 Tables 4.2A and 4.2C) and of straight lumber sheathing (Table 4.2D), in
// the lighter of the panel grades.
//
// Two editions are in use. That of 2015 prints one value for earthquake and one for wind
// and divides both by 2.0, or multiplies by 0.8; that of 2021 prints the value for wind
// alone and divides by 2.8 for earthquake and 2.0 for wind, or multiplies by 0.5 and 0.8.
// The smaller counts.
//
// The package leaves out Structural I panels, diagonal sheathing, several rows of nails,
// staples, openings, and how far the open edge moves.
package diaphragm
