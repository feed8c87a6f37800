package member_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

var sink float64

// allLoadings lists the rows of NDS 2018 Table 3.3.3.
var allLoadings = []member.Loading{
	member.AnyLoading, member.UniformSpan, member.CenterUnbraced, member.CenterBraced,
	member.ThirdPoints, member.QuarterPoints, member.FifthPoints, member.SixthPoints,
	member.SeventhPoints, member.ManyPoints, member.EndMoments, member.CantileverUniform,
	member.CantileverTip,
}

// piece draws any piece that exists, in any use.
func piece(t *rapid.T) *lumber.Adjusted {
	s := rapid.SampledFrom(lumber.Sections()).Filter(func(s lumber.Section) bool {
		return s.Class != lumber.Board
	}).Draw(t, "section")
	species := rapid.SampledFrom(lumber.Species()).Filter(func(name string) bool {
		return len(lumber.Graded(name, s)) > 0
	}).Draw(t, "species")
	grade := rapid.SampledFrom(lumber.Graded(species, s)).Draw(t, "grade")
	v, err := lumber.Find(species, grade, s)
	if err != nil {
		t.Fatal(err)
	}
	a := lumber.Adjust(v, s, lumber.Use{
		Wet: rapid.Bool().Draw(t, "wet"), Incised: rapid.Bool().Draw(t, "incised"),
		Repetitive: rapid.Bool().Draw(t, "repetitive"), Flat: rapid.Bool().Draw(t, "flat"),
	})
	return &a
}

func anyDuration(t *rapid.T) lumber.Duration {
	return rapid.SampledFrom(lumber.Durations()).Draw(t, "duration")
}

// proved fails unless the written calculation holds line by line and closes on the
// same ratio.
func proved(t rapid.TB, r calc.Result) {
	t.Helper()
	check := r.Explain()
	if err := calctest.Prove(check.Lines); err != nil {
		t.Fatalf("%s: %v", check.Name, err)
	}
	if check.Ratio() != r.Ratio() {
		t.Fatalf("%s: ratio %v, written %v", check.Name, r.Ratio(), check.Ratio())
	}
	for _, l := range check.Lines {
		if l.Source == "" {
			t.Fatalf("%s: line %s has no source", check.Name, l.Symbol)
		}
	}
}

func bracing(t *rapid.T) member.Bracing {
	return member.Bracing{
		Unbraced: rapid.Float64Range(0.5, 480).Draw(t, "lu"),
		Loading:  rapid.SampledFrom(allLoadings).Draw(t, "loading"),
		Held:     rapid.Bool().Draw(t, "held"),
	}
}

func TestBendingIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		moment := rapid.Float64Range(-1e6, 1e6).Draw(t, "moment")
		b := member.NewBending(moment, piece(t), anyDuration(t), bracing(t))
		proved(t, b)
		if !(0 <= b.Stability && b.Stability <= 1) {
			t.Fatalf("C_L %v", b.Stability)
		}
	})
}

func FuzzBending(f *testing.F) {
	f.Add(10_000.0, 1.5, 9.25, 120.0, uint8(1), uint8(4))
	f.Add(-52_000.0, 3.5, 3.5, 0.0, uint8(0), uint8(0))
	f.Add(8_000.0, 1.5, 15.25, 480.0, uint8(11), uint8(3))
	f.Fuzz(func(t *testing.T, moment, breadth, depth, unbraced float64, loading, duration uint8) {
		if !(1 <= breadth && breadth <= depth && depth <= 24 && math.Abs(moment) < 1e7) ||
			!(unbraced == 0 || 0.5 <= unbraced && unbraced < 1e4) {
			t.Skip("no such piece")
		}
		a := adjusted(t, "Douglas Fir-Larch", "No.2", "2x8", lumber.Use{})
		a.Section.Breadth, a.Section.Depth = breadth, depth
		load := allLoadings[int(loading)%len(allLoadings)]
		term := lumber.Durations()[int(duration)%len(lumber.Durations())]
		proved(t, member.NewBending(moment, a, term, member.Bracing{Unbraced: unbraced, Loading: load}))
	})
}

// The ratio never falls when the moment grows, and does not see its sign.
func TestBendingGrowsWithTheMoment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term, brace := piece(t), anyDuration(t), bracing(t)
		moment := rapid.Float64Range(0, 1e6).Draw(t, "moment")
		more := moment + rapid.Float64Range(0, 1e6).Draw(t, "more")
		first, second := member.NewBending(moment, a, term, brace), member.NewBending(more, a, term, brace)
		if second.Ratio() < first.Ratio() {
			t.Fatalf("%v lb-in: %v, %v lb-in: %v", moment, first.Ratio(), more, second.Ratio())
		}
		if turned := member.NewBending(-moment, a, term, brace); turned.Ratio() != first.Ratio() {
			t.Fatalf("turned %v, first %v", turned.Ratio(), first.Ratio())
		}
	})
}

// Fb' never grows when the unbraced length grows. The two expressions of Table
// 3.3.3 meet at 7 d only to 0.1 %.
func TestBendingFallsWithTheUnbracedLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term := piece(t), anyDuration(t)
		load := rapid.SampledFrom(allLoadings).Draw(t, "loading")
		length := rapid.Float64Range(1, 300).Draw(t, "lu")
		longer := length + rapid.Float64Range(0, 300).Draw(t, "more")
		first := member.NewBending(1, a, term, member.Bracing{Unbraced: length, Loading: load})
		second := member.NewBending(1, a, term, member.Bracing{Unbraced: longer, Loading: load})
		if second.Allowable > first.Allowable*1.002 {
			t.Fatalf("lu %v: %v psi, lu %v: %v psi", length, first.Allowable, longer, second.Allowable)
		}
	})
}

func TestBendingByHand(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "2x6", lumber.Use{Repetitive: true})
	b := member.NewBending(-9000, a, lumber.TenMinutes, member.Bracing{Unbraced: 120, Loading: member.UniformSpan})
	calctest.Close(t, 9000/7.5625, b.Stress, 1e-12, 0, "M/S")
	calctest.Near(t, 2152.8, b.Star, 0.05, "900 x 1.6 x 1.3 x 1.15")
	calctest.Near(t, 1.63*120+3*5.5, b.Effective, 1e-9, "NDS 2018 Table 3.3.3")
	calctest.Near(t, 0.582851, b.Stability, 0.000001, "NDS 2018 eq. 3.3-6 by hand")
	assert.False(t, math.IsInf(b.Ratio(), 1))

	held := member.NewBending(9000, a, lumber.TenMinutes, member.Bracing{Held: true})
	assert.Equal(t, 1.0, held.Stability)
	square := adjusted(t, "Douglas Fir-Larch", "No.2", "4x4", lumber.Use{})
	assert.Equal(t, 1.0, member.NewBending(1, square, lumber.TenYears, member.Bracing{}).Stability,
		"NDS 2018 3.3.3.1: depth not above breadth")
}

// Table 3.3.3, one value for each branch by hand.
func TestEffectiveLengths(t *testing.T) {
	for _, c := range []struct {
		loading        member.Loading
		unbraced, want float64 // lu, le, in, for d = 10 in
	}{
		{member.AnyLoading, 50, 103}, {member.AnyLoading, 100, 193}, {member.AnyLoading, 200, 368},
		{member.UniformSpan, 50, 103}, {member.UniformSpan, 200, 356},
		{member.CenterUnbraced, 50, 90}, {member.CenterUnbraced, 100, 167},
		{member.CenterBraced, 50, 55.5}, {member.CenterBraced, 100, 111},
		{member.ThirdPoints, 100, 168}, {member.QuarterPoints, 100, 154}, {member.FifthPoints, 100, 168},
		{member.SixthPoints, 100, 173}, {member.SeventhPoints, 100, 178}, {member.ManyPoints, 100, 184},
		{member.EndMoments, 100, 184},
		{member.CantileverUniform, 50, 66.5}, {member.CantileverUniform, 100, 120},
		{member.CantileverTip, 50, 93.5}, {member.CantileverTip, 100, 174},
	} {
		a := adjusted(t, "Hem-Fir", "No.2", "4x10", lumber.Use{})
		a.Section.Depth = 10
		b := member.NewBending(1, a, lumber.TenYears, member.Bracing{Unbraced: c.unbraced, Loading: c.loading})
		calctest.Near(t, c.want, b.Effective, 1e-9, "NDS 2018 Table 3.3.3", c.loading)
	}
	assert.Equal(t, "cantilever, concentrated at free end", member.CantileverTip.String())
}

// Every effective length was read, and marks no check; an end condition that is recalled
// marks that of a column.
func TestRecalledLengthMarksTheCheck(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "2x8", lumber.Use{})
	read := member.NewBending(1, a, lumber.TenYears, member.Bracing{Unbraced: 96, Loading: member.UniformSpan})
	assert.False(t, read.Explain().Recalled())
	sixths := member.NewBending(1, a, lumber.TenYears, member.Bracing{Unbraced: 96, Loading: member.SixthPoints})
	assert.False(t, sixths.Explain().Recalled())
	axis := member.Axis{Length: 96, Ends: member.FixedFree}
	post := member.NewCompression(1, a, lumber.TenYears, member.Column{Deep: axis, Thin: axis})
	assert.True(t, post.Explain().Recalled(), "NDS 2018 Appendix G")
}

// A vanishing unbraced length is a braced edge, without loss of digits.
func TestStabilityOfShortLengths(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	for _, lu := range []float64{1e-300, 1e-153, 1e-20, 1e-6} {
		b := member.NewBending(1, a, lumber.TenYears, member.Bracing{Unbraced: lu})
		calctest.Near(t, 1, b.Stability, 1e-5, "lu", lu)
	}
}

func TestUnknownBracingHasNoCapacity(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	for _, lu := range []float64{0, -1, math.NaN()} {
		b := member.NewBending(100, a, lumber.TenYears, member.Bracing{Unbraced: lu})
		assert.True(t, math.IsInf(b.Ratio(), 1), "lu %v", lu)
		proved(t, b)
	}
	b := member.NewBending(math.NaN(), a, lumber.TenYears, member.Bracing{Held: true})
	assert.True(t, math.IsInf(b.Ratio(), 1), "an unknown moment never passes")
}

func TestSlendernessAboveFiftyIsRefused(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x12", lumber.Use{})
	b := member.NewBending(1, a, lumber.TenYears, member.Bracing{Unbraced: 360, Loading: member.UniformSpan})
	assert.Greater(t, b.Slenderness, 50.0, "NDS 2018 3.3.3.7")
	assert.True(t, math.IsInf(b.Ratio(), 1))
	lines := b.Explain().Lines
	assert.Equal(t, "R_B_max", lines[len(lines)-2].Symbol, "the limit is shown")
	proved(t, b)
}

// NDS 2018 4.4.1.2 by nominal size.
func TestRestraintOf(t *testing.T) {
	for size, want := range map[string]member.Restraint{
		"4x8": member.NoRestraint, "2x4": member.NoRestraint, "2x6": member.EndsHeld, "2x8": member.EndsHeld,
		"2x10": member.EdgeHeld, "2x12": member.EdgeAndBlocking, "2x14": member.BothEdgesHeld,
		"2x16": member.BeyondRules,
	} {
		s, err := lumber.SectionNamed(size)
		require.NoError(t, err)
		assert.Equal(t, want, member.RestraintOf(s), size)
		assert.NotEmpty(t, want.String())
	}
}

func TestBendingAllocatesNothing(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	brace := member.Bracing{Unbraced: 120, Loading: member.UniformSpan}
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink += member.NewBending(9000, a, lumber.TenMinutes, brace).Ratio()
	}))
}

func BenchmarkBending(b *testing.B) {
	a := adjusted(b, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	brace := member.Bracing{Unbraced: 120, Loading: member.UniformSpan}
	for b.Loop() {
		sink += member.NewBending(9000, a, lumber.TenMinutes, brace).Ratio()
	}
}

func BenchmarkBendingExplained(b *testing.B) {
	a := adjusted(b, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	brace := member.Bracing{Unbraced: 120, Loading: member.UniformSpan}
	for b.Loop() {
		sink += member.NewBending(9000, a, lumber.TenMinutes, brace).Explain().Ratio()
	}
}
