// Package cover is one whole patio cover: what the user says, what follows from
// it, and the report of the answer.
//
// The way of the data is [Input] → [Size] → [Report]. [Read] decodes an input
// strictly, [Input.Validate] lists every fault, [Input.Assume] fills what was
// left open and records each assumption with its reason. Size chooses what was
// left blank, checks what was given, and assembles the one report that the page,
// the command line and the programming interface all print. [FromForm] and [ToForm]
// carry the same input as the entries of a form; [Fields] and [Schema] describe it.
//
// This is the only package that assembles, and the only one that converts: the
// input and the report speak the trade's units, everything below pounds and
// inches. Standards: ASCE 7-16 or 7-22, NDS 2018, IRC 2021; members by allowable stress
// design or by load and resistance factor design, all else by the first.
package cover
