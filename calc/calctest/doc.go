// Package calctest is for tests: it proves written calculations and reads the
// published values that the project is checked against.
package calctest
