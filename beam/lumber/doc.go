// Package lumber holds what is printed about structural wood: sizes, reference design
// values, and the factors that adjust them.
//
// A [Section] is a size of wood, by its name ([SectionNamed]) or measured ([Measured]).
// [Find] looks up the reference design [Values] of a species and grade in the
// table that the shape of the section asks for: Table 4A or 4B up to 4 in. nominal
// thickness, Table 4D from 5x5. [Adjust] multiplies them by every factor that
// depends on the piece and its [Use]; the factors that depend on the load or on
// the member, C_D, C_L, C_P and C_b, belong to package member.
//
// It follows ANSI/AWC NDS 2018 with the NDS Supplement 2018, allowable stress design
// and load and resistance factor design ([Method]). Values stand in embedded tables whose
// rows say whether they were read in a text that prints them, computed, or recalled; the
// state of each single value is kept ([Quoted]).
//
// Units are pounds and inches; stresses and moduli are psi. The strong axis of a
// section is bending on edge.
//
// Beside sawn lumber it knows structural glued laminated timber (Table 5A), plies side
// by side ([Section.Times]), round poles, machine graded lumber (Table 4C),
// and values that the user takes from an evaluation report ([Given]).
//
// It leaves out values for round poles, decking of Table 4E, glued laminated timber
// stressed mainly along its length (Table 5B), and fire-retardant treatment, whose
// values come from the treater.
package lumber
