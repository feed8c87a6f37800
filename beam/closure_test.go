package beam

import (
	"errors"
	"math"
	"testing"
)

// The guards behind the equations: an influence matrix that is off by a millionth
// leaves a kink over the support, and is found out.
func TestClosureFindsAWrongSolution(t *testing.T) {
	l, err := NewLine(360, []float64{0, 120, 240, 360})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := NewPlan(l, [][]Load{{Uniform(0, 360, 10)}}); err != nil {
		t.Fatal(err)
	}
	l.influence[0] *= 1 + 1e-6
	p, err := NewPlan(l, [][]Load{nil, {Uniform(0, 360, 10)}})
	var wrong *ClosureError
	if p != nil || !errors.As(err, &wrong) {
		t.Fatalf("%v was let through", err)
	}
	if wrong.Case != 1 || math.Abs(wrong.Kink) < 1 || math.Abs(wrong.Force) > 1e-6 {
		t.Errorf("case 1 has a kink and balances: %v", wrong)
	}
	if err := l.prove(l.matrix()); !errors.Is(err, errUnstable) {
		t.Errorf("the residue was let through: %v", err)
	}
}

// Reactions that do not balance the loads, or are no numbers, are found out.
func TestClosureFindsMissingForce(t *testing.T) {
	l, err := NewLine(240, []float64{0, 240})
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPlan(l, [][]Load{{Uniform(0, 240, 10)}})
	if err != nil {
		t.Fatal(err)
	}
	s := p.of(0)
	for _, wrong := range []float64{1200.001, 1199.999, math.NaN(), math.Inf(1)} {
		s.reaction[0] = wrong
		var e *ClosureError
		if err := p.closure(0, s, []Load{Uniform(0, 240, 10)}); !errors.As(err, &e) {
			t.Errorf("a reaction of %v was let through", wrong)
		}
	}
	s.reaction[0] = 1200
	if err := p.closure(0, s, []Load{Uniform(0, 240, 10)}); err != nil {
		t.Error(err)
	}
	s.reaction[0], s.reaction[1] = 1000, 1400
	if err := p.closure(0, s, []Load{Uniform(0, 240, 10)}); err == nil {
		t.Error("reactions that balance in force but not in moment were let through")
	}
}
