// Package server answers requests: the page at / with the input in the address or
// in the body of a POST, those that compare and that make the table of a jurisdiction,
// and below /api/v1/ the same with JSON in and out.
//
// A handler reads the request, calls package cover once, and writes the answer. One
// error handler words every refusal: a page for people, RFC 9457 problem details for
// programs. Limits of size and time are set here, once.
package server
