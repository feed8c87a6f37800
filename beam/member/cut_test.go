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

func TestJointShearIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term := piece(t), anyDuration(t)
		joint := member.Joint{
			Lowest:  rapid.Float64Range(-1, 8).Draw(t, "lowest"),
			Highest: rapid.Float64Range(0, 16).Draw(t, "highest"),
			FromEnd: rapid.Float64Range(0, 100).Draw(t, "from end"),
			Down:    rapid.Bool().Draw(t, "down"),
		}
		force := rapid.Float64Range(-9000, 9000).Draw(t, "V")
		j := member.NewJointShear(force, a, term, joint)
		proved(t, j)
		whole := member.NewShear(force, a, term)
		if j.Ratio() < whole.Ratio()*(1-1e-12) {
			t.Fatalf("beside the fasteners %v, full section %v", j.Ratio(), whole.Ratio())
		}
	})
}

// NDS 2018 3.4.3.3 by hand: a 4x10 of Hem-Fir with bolts 2 and 6 in. above the bottom.
func TestJointShearByHand(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "4x10", lumber.Use{})
	for _, c := range []struct {
		name    string
		fromEnd float64
		down    bool
		want    float64 // Vr', lb, for Fv' = 150 psi
	}{
		{"carried, at the end", 3, false, 2.0 / 3 * 150 * 3.5 * 7.25 * math.Pow(7.25/9.25, 2)},
		{"carried, inside", 5 * 9.25, false, 2.0 / 3 * 150 * 3.5 * 7.25},
		{"held down, at the end", 46, true, 2.0 / 3 * 150 * 3.5 * 6 * math.Pow(6/9.25, 2)},
		{"held down, inside", 60, true, 2.0 / 3 * 150 * 3.5 * 6},
	} {
		j := member.NewJointShear(-500, a, lumber.TenYears, member.Joint{Lowest: 2, Highest: 6, FromEnd: c.fromEnd, Down: c.down})
		calctest.Close(t, c.want, j.Capacity, 1e-12, 0, c.name)
		calctest.Close(t, 500/c.want, j.Ratio(), 1e-12, 0, c.name)
	}
	for name, j := range map[string]member.Joint{
		"nothing said":     {},
		"above the member": {Lowest: 2, Highest: 9.5},
		"upside down":      {Lowest: 6, Highest: 2},
		"no number":        {Lowest: math.NaN(), Highest: 3},
		"beyond the end":   {Lowest: 2, Highest: 6, FromEnd: -1},
	} {
		assert.True(t, math.IsInf(member.NewJointShear(1, a, lumber.TenYears, j).Ratio(), 1), name)
	}
}

func TestHungLoad(t *testing.T) {
	for _, c := range []struct {
		name         string
		force, y     float64
		ratio        float64
		neverAllowed bool
	}{
		{"nothing hangs", 0, 1, 0, false},
		{"lifted, not hung", -50, 1, 0, false},
		{"at mid-depth", 100, 4.625, 1, false},
		{"near the top", 100, 7.4, 0.625, false},
		{"below mid-depth", 100, 4.6, 0, true},
		{"above the beam", 100, 9.3, 0, true},
		{"height not known", 100, math.NaN(), 0, true},
		{"load not known", math.NaN(), 2, 0, true},
	} {
		h := member.NewHungLoad(c.force, 9.25, c.y)
		if c.neverAllowed {
			assert.True(t, math.IsInf(h.Ratio(), 1), c.name)
			continue
		}
		calctest.Close(t, c.ratio, h.Ratio(), 1e-12, 0, c.name, "NDS 2018 12.5.1.3")
		proved(t, h)
	}
}

func drawCut(t *rapid.T, depth float64) member.Cut {
	return member.Cut{
		Depth:   rapid.Float64Range(0, 0.35).Draw(t, "cut") * depth,
		Tension: rapid.Bool().Draw(t, "tension"),
		Place:   member.CutPlace(rapid.IntRange(0, 4).Draw(t, "place")),
	}
}

func TestCutBendingIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term, brace := piece(t), anyDuration(t), bracing(t)
		cut := drawCut(t, a.Section.Depth)
		moment := rapid.Float64Range(-1e5, 1e5).Draw(t, "M")
		c := member.NewCutBending(moment, a, term, brace, cut)
		proved(t, c)
		if a.Use.Flat {
			return // a cut in the face of a flat piece is refused
		}
		if c.Ratio() < c.Full.Ratio() {
			t.Fatalf("a cut helped: %v, %v", c.Ratio(), c.Full.Ratio())
		}
		deeper := cut
		deeper.Depth *= 1.1
		if member.NewCutBending(moment, a, term, brace, deeper).Ratio() < c.Ratio() {
			t.Fatalf("a deeper cut helped")
		}
	})
}

// The limits of NDS 2018 4.4.3 for a 2x and a 4x of 11-1/4 in.
func TestCutLimits(t *testing.T) {
	d := 11.25
	for _, c := range []struct {
		size    string
		place   member.CutPlace
		tension bool
		want    float64 // deepest cut, in
	}{
		{"2x12", member.CutUnplaced, false, 0},
		{"2x12", member.CutAtEnd, true, d / 4}, {"4x12", member.CutAtEnd, true, d / 4},
		{"2x12", member.CutOverSupport, false, d / 4}, {"4x12", member.CutOverSupport, false, d / 4},
		{"2x12", member.CutOverSupport, true, d / 6}, {"4x12", member.CutOverSupport, true, 0},
		{"2x12", member.CutOuterThird, true, d / 6}, {"2x12", member.CutOuterThird, false, d / 6},
		{"4x12", member.CutOuterThird, true, 0}, {"4x12", member.CutOuterThird, false, d / 6},
		{"2x12", member.CutMiddleThird, false, 0}, {"2x12", member.CutMiddleThird, true, 0},
		{"4x12", member.CutMiddleThird, true, 0},
	} {
		a := adjusted(t, "Hem-Fir", "No.2", c.size, lumber.Use{})
		held := member.Bracing{Held: true}
		cut := member.Cut{Depth: c.want, Tension: c.tension, Place: c.place}
		b := member.NewCutBending(1000, a, lumber.TenYears, held, cut)
		calctest.Close(t, c.want, b.Limit, 1e-12, 0, "NDS 2018 4.4.3", c)
		cut.Depth = c.want + 0.01
		assert.True(t, math.IsInf(member.NewCutBending(1000, a, lumber.TenYears, held, cut).Ratio(), 1), "%v", c)
	}
}

func TestWindDeflection(t *testing.T) {
	limit := member.Limit{Length: 120, Divisor: 180, Source: "IBC 2018 Table 1604.3", Status: 2}
	w := member.NewWindDeflection(-1, limit)
	calctest.Close(t, 0.42/(120.0/180), w.Ratio(), 1e-12, 0, "IBC 2018 Table 1604.3 note f")
	proved(t, w)
	assert.True(t, w.Explain().Recalled(), "the part 0.42 is from memory")
	limit.Cantilever = true
	calctest.Close(t, 0.42/(240.0/180), member.NewWindDeflection(1, limit).Ratio(), 1e-12, 0)
}

func TestCutsAllocateNothing(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	held, cut := member.Bracing{Held: true}, member.Cut{Depth: 1, Place: member.CutOverSupport}
	limit := member.Limit{Length: 120, Divisor: 180}
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink += member.NewJointShear(900, a, lumber.TenMinutes, member.Joint{Lowest: 2, Highest: 5}).Ratio()
		sink += member.NewHungLoad(900, 9.25, 6).Ratio()
		sink += member.NewCutBending(9000, a, lumber.TenMinutes, held, cut).Ratio()
		sink += member.NewWindDeflection(0.4, limit).Ratio()
	}))
}

// A bolted beam is checked beside its bolts with the depth that they leave, not with
// the full section, and under uplift with the depth from the other edge.
func TestTrapFullDepthAtFasteners(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "4x12", lumber.Use{})
	bolts := member.Joint{Lowest: 4, Highest: 8, FromEnd: 3}
	full := member.NewShear(1000, a, lumber.SevenDays)
	carried := member.NewJointShear(1000, a, lumber.SevenDays, bolts)
	assert.Greater(t, carried.Ratio(), 3*full.Ratio(), "(7.25/11.25)³ = 0.27")
	bolts.Down = true
	calctest.Close(t, math.Pow(8/7.25, 3), carried.Ratio()/member.NewJointShear(1000, a, lumber.SevenDays, bolts).Ratio(), 1e-12, 0)
}

// A bird's-mouth over the beam line: the overhang's moment acts on the depth left, and
// net uplift turns the cut to the tension face, where d/4 is too deep.
func TestTrapSeatCutUnderOverhangAndUplift(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "2x8", lumber.Use{})
	held := member.Bracing{Held: true}
	open := member.Bracing{Unbraced: 24, Loading: member.CantileverUniform}
	seat := member.Cut{Depth: 1.5, Place: member.CutOverSupport}
	down := member.NewCutBending(-3000, a, lumber.SevenDays, open, seat)
	whole := member.NewBending(-3000, a, lumber.SevenDays, open)
	calctest.Close(t, math.Pow(7.25/5.75, 2), down.Ratio()/whole.Ratio(), 1e-12, 0, "S goes with the square of the depth")
	seat.Tension = true
	assert.True(t, math.IsInf(member.NewCutBending(3000, a, lumber.TenMinutes, held, seat).Ratio(), 1),
		"1-1/2 in. of 7-1/4 in. on the tension face, NDS 2018 4.4.3")
}

// Wood has no tabulated strength across the grain: what hangs below mid-depth is
// refused, however small it is.
func TestTrapLoadHungFromBelow(t *testing.T) {
	assert.True(t, math.IsInf(member.NewHungLoad(1, 11.25, 2).Ratio(), 1))
	assert.LessOrEqual(t, member.NewHungLoad(4000, 11.25, 9).Ratio(), 1.0)
}
