// Package drawing draws a cover: a plan and a section to scale, from the same
// report that the calculation is printed from.
//
// A drawing is a [Scene]: lines, filled shapes and words at places on paper, in
// points of 1/72 inch with y down. It knows nothing of the format in which it is
// written; [SVG] is one writer. Widths of lines and heights of letters are sizes on
// paper and are not scaled with the cover.
//
// A scene is five inches wide, so that its smallest letters stay readable when a
// phone shows the whole of it.
//
// The drawings show what the report says and decide nothing. What is not sized there,
// such as a footing, is drawn with dashes and said to be not sized.
package drawing
