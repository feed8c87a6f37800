package survey_test

import (
	"testing"

	"patiocover/connections/survey"
)

// One joint from its record to its verdict.
func BenchmarkJoint(b *testing.B) {
	seen := aslant(b, "common", "16d", 3, 0.5)
	demand := asked(250, 300)
	sink := 0.0
	for b.Loop() {
		sink += survey.NewJoint(demand, survey.NewCapacity(seen), nil).Ratio()
	}
	if !(sink > 0) {
		b.Fatal(sink)
	}
}
