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

func seat(t *rapid.T) member.Seat {
	return member.Seat{
		Width:   rapid.Float64Range(0.5, 12).Draw(t, "width"),
		Length:  rapid.Float64Range(0.5, 12).Draw(t, "length"),
		FromEnd: rapid.Float64Range(0, 12).Draw(t, "from end"),
	}
}

func TestBearingIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, place := piece(t), seat(t)
		force := rapid.Float64Range(-5000, 50_000).Draw(t, "R")
		b := member.NewBearing(force, a, place)
		proved(t, b)
		if more := member.NewBearing(force+500, a, place); more.Ratio() < b.Ratio() {
			t.Fatalf("more force, less ratio: %v, %v", more.Ratio(), b.Ratio())
		}
		longer := place
		longer.Length *= 1.2
		if member.NewBearing(force, a, longer).Ratio() > b.Ratio()*(1+1e-9) {
			t.Fatalf("a longer seat %v carries less", longer.Length)
		}
	})
}

func TestBearingAtAngleIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, place, term := piece(t), seat(t), anyDuration(t)
		force := rapid.Float64Range(-5000, 50_000).Draw(t, "R")
		angle := rapid.Float64Range(0, 90).Draw(t, "theta")
		b := member.NewBearingAtAngle(force, a, term, place, angle)
		proved(t, b)
		low, high := min(b.Parallel, b.Perpendicular), max(b.Parallel, b.Perpendicular)
		if b.Allowable < low*(1-1e-9) || b.Allowable > high*(1+1e-9) {
			t.Fatalf("F_theta %v is not between %v and %v", b.Allowable, low, high)
		}
	})
}

func TestHankinsonAtItsEnds(t *testing.T) {
	calctest.Close(t, 1500, member.Hankinson(1500, 625, 0), 1e-12, 0, "NDS 2018 eq. 3.10-1")
	calctest.Close(t, 625, member.Hankinson(1500, 625, 90), 1e-12, 0, "NDS 2018 eq. 3.10-1")
}

// The bearing area factor of NDS 2018 3.10.4 by hand.
func TestBearingAreaFactor(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "4x8", lumber.Use{})
	for _, c := range []struct {
		name            string
		length, fromEnd float64
		want            float64
	}{
		{"at the end", 3.5, 0, 1},
		{"closer than 3 in. to the end", 3.5, 2.9, 1},
		{"inside", 3.5, 3, (3.5 + 0.375) / 3.5},
		{"inside, 1 in. long", 1, 10, 1.375},
		{"6 in. long", 6, 10, 1},
		{"8 in. long", 8, 10, 1},
	} {
		b := member.NewBearing(1000, a, member.Seat{Width: 3.5, Length: c.length, FromEnd: c.fromEnd})
		calctest.Close(t, c.want, b.Spread, 1e-12, 0, c.name)
		calctest.Close(t, 625*c.want, b.Allowable, 1e-12, 0, c.name)
		calctest.Close(t, 1000/(3.5*c.length), b.Stress, 1e-12, 0, c.name)
	}
}

func TestSeatNotKnownHasNoCapacity(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "4x8", lumber.Use{})
	for _, s := range []member.Seat{{}, {Width: 3.5}, {Width: math.NaN(), Length: 3}} {
		assert.True(t, math.IsInf(member.NewBearing(1, a, s).Ratio(), 1))
		assert.True(t, math.IsInf(member.NewBearingAtAngle(1, a, lumber.TenYears, s, 80).Ratio(), 1))
	}
	assert.True(t, math.IsInf(member.NewEndBearing(1, 0, a, lumber.TenYears, true).Ratio(), 1))
	assert.Zero(t, member.NewBearing(-100, a, member.Seat{Width: 3.5, Length: 3}).Ratio(), "uplift")
}

func TestEndBearingIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term := piece(t), anyDuration(t)
		force := rapid.Float64Range(-5000, 50_000).Draw(t, "P")
		area := rapid.Float64Range(1, 150).Draw(t, "A")
		bare := member.NewEndBearing(force, area, a, term, false)
		plated := member.NewEndBearing(force, area, a, term, true)
		proved(t, bare)
		proved(t, plated)
		if plated.Ratio() > bare.Ratio() {
			t.Fatalf("a plate made it worse: %v, %v", plated.Ratio(), bare.Ratio())
		}
	})
}

// Above 0.75 Fc* the end grain needs a plate (NDS 2018 3.10.1.3).
func TestEndBearingNeedsAPlate(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "4x4", lumber.Use{})
	star := 1350 * 1.15 * 1.25 // Fc C_F C_D
	load := 0.8 * star * 12.25
	calctest.Close(t, 0.8/0.75, member.NewEndBearing(load, 12.25, a, lumber.SevenDays, false).Ratio(), 1e-12, 0)
	calctest.Close(t, 0.8, member.NewEndBearing(load, 12.25, a, lumber.SevenDays, true).Ratio(), 1e-12, 0)
}

func TestTensionIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term := piece(t), anyDuration(t)
		force := rapid.Float64Range(-5000, 50_000).Draw(t, "T")
		area := rapid.Float64Range(1, 150).Draw(t, "An")
		first := member.NewTension(force, area, a, term)
		proved(t, first)
		if less := member.NewTension(force, 0.8*area, a, term); less.Ratio() < first.Ratio() {
			t.Fatalf("a hole helped: %v, %v", less.Ratio(), first.Ratio())
		}
	})
}

// Ft' of a wet 2x8 under snow is 932 psi in the course example.
func TestTensionByHand(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.1", "2x8", lumber.Use{Wet: true})
	x := member.NewTension(5000, 8, a, lumber.TwoMonths)
	calctest.Near(t, 932, x.Allowable, 0.6, "course example")
	calctest.Close(t, 625, x.Stress, 1e-12, 0, "T/An")
	assert.True(t, math.IsInf(member.NewTension(1, 0, a, lumber.TwoMonths).Ratio(), 1), "no net area")
}

func TestBearingAllocatesNothing(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "4x4", lumber.Use{})
	place := member.Seat{Width: 3.5, Length: 1.5}
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink += member.NewBearing(900, a, place).Ratio()
		sink += member.NewBearingAtAngle(900, a, lumber.TenMinutes, place, 80).Ratio()
		sink += member.NewEndBearing(900, 12.25, a, lumber.TenMinutes, false).Ratio()
		sink += member.NewTension(900, 12.25, a, lumber.TenMinutes).Ratio()
	}))
}

func BenchmarkBearing(b *testing.B) {
	a := adjusted(b, "Hem-Fir", "No.2", "4x4", lumber.Use{})
	for b.Loop() {
		sink += member.NewBearing(900, a, member.Seat{Width: 3.5, Length: 1.5}).Ratio()
	}
}
