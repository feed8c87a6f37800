// Package brace finds what a horizontal push asks of posts that hold a roof sideways:
// posts with knee braces to the beam, and posts that stand by their embedment.
//
// A [Knee] is the statics of one post with a pinned foot, pinned at the beam, and one or
// two braces; a [Row] is a line of such posts below one beam, with the forces that the
// braces put on the beam and on each post; a [Fixity] is the bending of a post in the
// ground.
//
// The statics are those of a pin-jointed bracing on members that bend: moments about the
// joint of post and beam give the brace, moments of the beam on its supports give the
// posts. How a push is shared among the posts of a row is not determined by statics; the
// row keeps the worse of two sharings, equal posts and the portal method's, by which a
// post with braces on both sides takes twice as much.
//
// Units are pounds and inches. Forces act either way: a push may come from either side,
// so that every force here is a magnitude, up as well as down.
package brace
