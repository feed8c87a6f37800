package deck_test

import (
	"fmt"

	"patiocover/beam/deck"
	"patiocover/beam/lumber"
	"patiocover/calc"
)

// Two-inch tongue and groove decking over 6 ft under 20 psf of live and 10 psf of dead
// load: the code asks for 360 psi and 575 000 psi (IBC 2012 Table 2308.10.9).
func Example() {
	section, _ := lumber.SectionNamed("2x6")
	values, _ := lumber.Find("Douglas Fir-Larch", "No.2", section)
	piece := lumber.Adjust(values, section, lumber.Use{Flat: true, Repetitive: true})
	plank := deck.NewPlank(&piece, 6*calc.Ft, true, deck.SimpleSpan)
	action := deck.Action{
		Name: "D + Lr", Clause: "ASCE 7-16 2.4.1 (3)", Status: calc.Read, Dead: 10 * calc.PSF, Plan: 20 * calc.PSF,
		DeadFactor: 1, PlanFactor: 1, Duration: lumber.SevenDays,
	}
	bending := deck.NewBending(&action, &plank)
	bends := deck.NewDeflection(action.Plan, &plank, liveLimit)
	fmt.Printf("asked for: %.0f psi, E %.0f psi\n", bending.Check.Stress, bends.Ratio()*piece.Elasticity.Value)
	fmt.Printf("ratios: %.2f and %.2f\n", bending.Ratio(), bends.Ratio())
	// Output:
	// asked for: 360 psi, E 576000 psi
	// ratios: 0.19 and 0.36
}
