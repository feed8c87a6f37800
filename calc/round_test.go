package calc_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
)

func TestRound(t *testing.T) {
	cases := []struct {
		name           string
		x, step        float64
		wantUp, wantDn float64
	}{
		{"zero", 0, 25, 0, 0},
		{"on the step", 175, 25, 175, 175},
		{"just above the step", 175.01, 25, 200, 175},
		{"just below the step", 174.99, 25, 175, 150},
		{"on the step but for the arithmetic, above", 0.1 * 3 * 250, 25, 75, 75},
		{"on the step but for the arithmetic, below", (1.1 - 1.0) * 250, 25, 25, 25},
		{"a step that is not binary", 0.3, 0.1, 0.3, 0.3},
		{"negative", -30, 25, -25, -50},
		{"smaller than the step", 1, 25, 25, 0},
		{"hardly above zero", 1e-8, 25, 25, 0},
		{"hardly below zero", -1e-8, 25, 0, -25},
		{"infinite", math.Inf(1), 25, math.Inf(1), math.Inf(1)},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.wantUp, roundTo12(calc.RoundUp(c.x, c.step)), "up")
			assert.Equal(t, c.wantDn, roundTo12(calc.RoundDown(c.x, c.step)), "down")
		})
	}
}

// roundTo12 drops what is past the twelfth decimal, so that 3·0.1 reads 0.3.
func roundTo12(x float64) float64 {
	if math.IsInf(x, 0) {
		return x
	}
	return math.Round(x*1e12) / 1e12
}

func TestRoundOfUnknownIsUnknown(t *testing.T) {
	assert.True(t, math.IsNaN(calc.RoundUp(math.NaN(), 25)))
	assert.True(t, math.IsNaN(calc.RoundDown(math.NaN(), 25)))
}

// Up is never below, down never above, both within one step and on a step.
func TestRoundIsOnTheSafeSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.Float64Range(0.01, 1000).Draw(t, "step")
		x := step * rapid.Float64Range(-1e5, 1e5).Draw(t, "steps")
		up, down := calc.RoundUp(x, step), calc.RoundDown(x, step)
		slack := 2e-9 * step
		if !(up >= x-slack && up < x+step+slack && down <= x+slack && down > x-step-slack) {
			t.Fatalf("%v in steps of %v: up %v, down %v", x, step, up, down)
		}
		for _, r := range []float64{up, down} {
			if n := r / step; math.Abs(n-math.Round(n)) > 1e-9 {
				t.Fatalf("%v is not on a step of %v", r, step)
			}
		}
	})
}

func TestRoundKeepsWhatIsOnTheStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.Float64Range(0.01, 1000).Draw(t, "step")
		x := step * float64(rapid.IntRange(-100_000, 100_000).Draw(t, "steps"))
		if calc.RoundUp(x, step) != x || calc.RoundDown(x, step) != x {
			t.Fatalf("%v moved off its step of %v", x, step)
		}
	})
}
