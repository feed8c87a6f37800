package calctest

import (
	"math"
	"testing"
)

// Near fails the test unless |got − want| ≤ within. A value that is not a number
// never passes, on either side.
func Near(t testing.TB, want, got, within float64, about ...any) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("got %v, want %v within %v: %v", got, want, within, about)
	}
}

// Close fails the test unless got is within the relative difference of want, or
// within floor of it in absolute terms, which serves expected zeros.
func Close(t testing.TB, want, got, relative, floor float64, about ...any) {
	t.Helper()
	Near(t, want, got, floor+relative*math.Abs(want), about...)
}
