package member_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc/calctest"
)

func TestShearIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term := piece(t), anyDuration(t)
		force := rapid.Float64Range(-20_000, 20_000).Draw(t, "V")
		s := member.NewShear(force, a, term)
		proved(t, s)
		if more := member.NewShear(1.5*force, a, term); more.Ratio() < s.Ratio() {
			t.Fatalf("more shear, less ratio: %v, %v", more.Ratio(), s.Ratio())
		}
	})
}

// A 2x8 of 10.875 in² under 600 lb: fv = 1.5 V/A = 82.8 psi by hand.
func TestShearByHand(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.1", "2x8", lumber.Use{Wet: true})
	s := member.NewShear(-600, a, lumber.TwoMonths)
	calctest.Close(t, 1.5*600/10.875, s.Stress, 1e-12, 0, "NDS 2018 eq. 3.4-2")
	calctest.Near(t, 201, s.Allowable, 0.3, "course example, Fv' of a wet 2x8 under snow")
}

func notch(t *rapid.T, depth float64) member.Notch {
	return member.Notch{
		Remaining:   rapid.Float64Range(0, 1.1*depth).Draw(t, "dn"),
		Compression: rapid.Bool().Draw(t, "compression"),
		Extension:   rapid.Float64Range(0, 1.5*depth).Draw(t, "e"),
	}
}

func TestNotchShearIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term := piece(t), anyDuration(t)
		force := rapid.Float64Range(-20_000, 20_000).Draw(t, "V")
		n := member.NewNotchShear(force, a, term, notch(t, a.Section.Depth))
		proved(t, n)
		full := member.NewShear(force, a, term)
		if n.Ratio() < full.Ratio()*(1-1e-9) {
			t.Fatalf("a notch helped: %v, full section %v", n.Ratio(), full.Ratio())
		}
	})
}

// More cut never carries more, on either face.
func TestNotchShearFallsWithTheCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := piece(t)
		n := notch(t, a.Section.Depth)
		deeper := n
		deeper.Remaining *= rapid.Float64Range(0, 1).Draw(t, "left")
		if n.Remaining > a.Section.Depth {
			return
		}
		first := member.NewNotchShear(1, a, lumber.TenYears, n)
		second := member.NewNotchShear(1, a, lumber.TenYears, deeper)
		if second.Capacity > first.Capacity*(1+1e-9) {
			t.Fatalf("dn %v: %v lb, dn %v: %v lb", n.Remaining, first.Capacity, deeper.Remaining, second.Capacity)
		}
	})
}

// The branches of NDS 2018 3.4.3.2 by hand on a 4x10, Fv' = 180 psi.
func TestNotchShearByHand(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.1", "4x10", lumber.Use{})
	full := 2.0 / 3 * 180 * 3.5 * 9.25
	for _, c := range []struct {
		name  string
		notch member.Notch
		want  float64 // lb
	}{
		{"no cut", member.Notch{Remaining: 9.25}, full},
		{"tension face", member.Notch{Remaining: 7}, 2.0 / 3 * 180 * 3.5 * 7 * (7 / 9.25) * (7 / 9.25)},
		{"compression face, at the support", member.Notch{Remaining: 7, Compression: true}, full},
		{"compression face, past it", member.Notch{Remaining: 7, Compression: true, Extension: 3.5},
			2.0 / 3 * 180 * 3.5 * (9.25 - 2.25/7*3.5)},
		{"compression face, far past it", member.Notch{Remaining: 7, Compression: true, Extension: 20},
			2.0 / 3 * 180 * 3.5 * 7},
		{"too deep", member.Notch{Remaining: 6.5}, 0},
		{"not known", member.Notch{}, 0},
		{"deeper than the piece", member.Notch{Remaining: 10}, 0},
		{"extension not known", member.Notch{Remaining: 8, Extension: math.NaN()}, 0},
	} {
		n := member.NewNotchShear(1000, a, lumber.TenYears, c.notch)
		calctest.Close(t, c.want, n.Capacity, 1e-12, 1e-9, c.name)
		assert.Equal(t, c.want == 0, math.IsInf(n.Ratio(), 1), c.name)
	}
}

func TestShearAllocatesNothing(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink += member.NewShear(900, a, lumber.TenMinutes).Ratio()
		sink += member.NewNotchShear(900, a, lumber.TenMinutes, member.Notch{Remaining: 6}).Ratio()
	}))
}

func BenchmarkShear(b *testing.B) {
	a := adjusted(b, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	for b.Loop() {
		sink += member.NewShear(900, a, lumber.TenMinutes).Ratio()
	}
}
