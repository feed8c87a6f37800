package brace_test

import (
	"fmt"

	"patiocover/beam/brace"
)

// A post of 8 ft under a push of 200 lb, with a brace from 2 ft below the beam at 45
// degrees: moments about the top give V H = B a (statics).
func ExampleNewKnee() {
	k := brace.NewKnee(brace.Knee{Shear: 200, Height: 96, Drop: 24, Angle: 45, Braces: 1})
	fmt.Printf("brace %.0f lb, post %.0f lb-in, top %.0f lb\n", k.Axial, k.Moment, k.Top)
	// Output: brace 1131 lb, post 14400 lb-in, top 600 lb
}
