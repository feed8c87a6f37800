// Package web is what a person sees of a report: the page with its form, the
// written calculations, and the same as plain text for a terminal.
//
// It prints a [cover.Report] and computes nothing of its own. Templates and assets
// are embedded and parsed once; a page is rendered whole before its first byte is
// written, so that a failure never leaves half a page. Long calculation tables are
// appended rather than templated, and pass every word through one escaping function.
//
// Numbers are rounded for reading only, and to the safe side where somebody builds
// from them: demands up, clear heights down, and a ratio above 1 never down to 1.
package web
