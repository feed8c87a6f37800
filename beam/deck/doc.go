// Package deck checks what lies on the rafters and carries the roof from one to the
// next: wood structural panels, planks, purlins below metal panels, and slats.
//
// A [Panel] is known by its span rating. Its loads without wind are judged by the
// table of the residential code ([PanelSpan], [PanelLoad]); wind either way, and loads
// beyond those that the table prints, by the panel's design capacities (NDS 2018
// chapter 9 with the ASD/LRFD Manual, chapter M9). A [Strip] is one piece of sawn
// lumber across the rafters, flat or on edge, checked in bending, shear, deflection and
// long-term sag through package member.
//
// An [Action] is what one combination puts on the deck; a [Need] is all of them at one
// rafter spacing, which finds the least deck that serves.
//
// Units are pounds and inches. Pressures act across the deck, downward positive.
// Spans are taken from center to center of the rafters, the safe side.
//
// The package leaves out nailing, panels with the strength axis along the rafters,
// panels on a single span, boards thinner than 2 in. nominal, decking graded by Table
// 4E, and metal panels themselves. A concentrated load on panels is not computed: the
// product standard of the panels (DOC PS 2) tests for it with the span rating.
package deck
