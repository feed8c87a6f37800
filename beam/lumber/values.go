package lumber

import (
	"fmt"

	"patiocover/calc"
)

// A Table is one table of reference design values.
type Table uint8

// The tables of the NDS Supplement 2018, and values that stand in none.
const (
	Table4A     Table = iota + 1 // visually graded dimension lumber, not Southern Pine
	Table4B                      // visually graded Southern Pine dimension lumber
	Table4D                      // visually graded timbers
	Table4C                      // machine stress-rated dimension lumber
	Table5A                      // structural glued laminated timber stressed in bending
	GivenValues                  // values that the user gives from an evaluation report
)

// String returns the name of the table, such as Table 4A.
func (t Table) String() string {
	switch t {
	case Table4A:
		return "Table 4A"
	case Table4B:
		return "Table 4B"
	case Table4D:
		return "Table 4D"
	case Table4C:
		return "Table 4C"
	case Table5A:
		return "Table 5A"
	case GivenValues:
		return "given values"
	}
	return fmt.Sprintf("Table(%d)", uint8(t))
}

// A Quoted is one printed number and how it is known.
type Quoted struct {
	Value  float64     // psi; for the specific gravity a ratio
	Status calc.Status // read, computed or recalled
}

// Values are the reference design values of a species and grade in one size
// class: dry service, normal duration, before any factor.
type Values struct {
	Species     string // such as Hem-Fir
	Grade       string // the grade that was asked for
	Row         string // the grade of the row that serves it, such as No.1/No.2
	Table       Table  // the table of the row
	Shape       Class  // class of the sections that the row serves
	Bending     Quoted // Fb, psi
	Tension     Quoted // Ft, psi, parallel to grain
	Shear       Quoted // Fv, psi, parallel to grain
	Bearing     Quoted // Fc_perp, psi, compression perpendicular to grain
	Compression Quoted // Fc, psi, parallel to grain
	Elasticity  Quoted // E, psi, mean: for deflection only
	Stability   Quoted // Emin, psi, 5 % exclusion: for C_L and C_P only
	Gravity     Quoted // G, ratio: specific gravity, for connections and weight
	Reversed    Quoted // Fb with the face in tension that bending usually compresses, psi: Fbx- of glulam
	Source      string // standard, edition, table
	side        sideValues
	volume      volumeRule
	permits     permits
}

// Balanced reports whether bending either way has the same value. A layup of glued
// laminated timber that is not balanced is stamped on its top.
func (v Values) Balanced() bool { return v.Reversed.Value == v.Bending.Value }
