// Package calc is the vocabulary that every other package shares: units, the
// written calculation, field faults, and the reader of the embedded tables.
//
// Below the cover package every quantity is a plain float64 in pounds and
// inches. Other units are constants, multiplied on the way in and divided on the
// way out.
//
// A check is a value that holds the numbers; its Explain method writes them as a
// [Check], a list of [Line]. A line shows a formula in ASCII symbols, and the
// sub-package calctest evaluates every formula again and compares.
//
// The package imports nothing of the project and knows nothing of wood or wind.
package calc
