package member_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

func limit(t *rapid.T) member.Limit {
	return member.Limit{
		Length:     rapid.Float64Range(1, 480).Draw(t, "span"),
		Cantilever: rapid.Bool().Draw(t, "cantilever"),
		Divisor:    rapid.SampledFrom([]float64{0, 60, 120, 180, 240, 360}).Draw(t, "n"),
		Source:     "IBC 2018 Table 1604.3", Status: calc.Read,
	}
}

func seasoning(t *rapid.T) member.Seasoning {
	return member.Seasoning{Green: rapid.Bool().Draw(t, "green"), Wet: rapid.Bool().Draw(t, "wet")}
}

func TestDeflectionsAreProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		allowed, moisture := limit(t), seasoning(t)
		dead := rapid.Float64Range(-2, 5).Draw(t, "dead")
		live := rapid.Float64Range(-2, 5).Draw(t, "live")
		proved(t, member.NewDeflection(live, allowed))
		sag := member.NewSag(dead, live, moisture, allowed)
		total := member.NewTotalDeflection(dead, live, moisture, allowed)
		proved(t, sag)
		proved(t, total)
		if dead >= 0 && live >= 0 && sag.Ratio() < total.Ratio() {
			t.Fatalf("the sag %v is less than what the code counts %v", sag.Total, total.Counted)
		}
	})
}

// IBC 2018 Table 1604.3 and NDS 2018 3.5.2 by hand: 12 ft span, 0.20 in. dead,
// 0.30 in. live.
func TestDeflectionsByHand(t *testing.T) {
	span := member.Limit{Length: 144, Divisor: 240, Source: "IRC 2015 Table R301.7", Status: calc.Read}
	total := member.Limit{Length: 144, Divisor: 180, Source: "IBC 2018 Table 1604.3", Status: calc.Read}
	assert.Equal(t, 0.6, span.Allowed())
	calctest.Close(t, 0.5, member.NewDeflection(-0.3, span).Ratio(), 1e-12, 0, "L/240")
	for _, c := range []struct {
		moisture     member.Seasoning
		sag, counted float64
	}{
		{member.Seasoning{}, 1.5*0.2 + 0.3, 0.5*0.2 + 0.3},
		{member.Seasoning{Green: true}, 2.0*0.2 + 0.3, 1.0*0.2 + 0.3},
		{member.Seasoning{Wet: true}, 2.0*0.2 + 0.3, 1.0*0.2 + 0.3},
	} {
		calctest.Close(t, c.sag, member.NewSag(0.2, 0.3, c.moisture, total).Total, 1e-12, 0, "NDS 2018 eq. 3.5-1")
		calctest.Close(t, c.counted, member.NewTotalDeflection(0.2, 0.3, c.moisture, total).Counted, 1e-12, 0,
			"IBC 2018 Table 1604.3 note d")
	}
}

// The span of a cantilever is twice its length (IBC 2018 Table 1604.3 notes).
func TestCantileverCountsTwice(t *testing.T) {
	tip := member.Limit{Length: 24, Cantilever: true, Divisor: 180, Source: "IBC 2018 Table 1604.3"}
	assert.Equal(t, 48.0, tip.Span())
	calctest.Close(t, 48.0/180, tip.Allowed(), 1e-12, 0, "2 x 24/180")
}

func TestLimitNotKnownAllowsNothing(t *testing.T) {
	for _, l := range []member.Limit{{}, {Length: 144}, {Divisor: 240}, {Length: 144, Divisor: math.NaN()}} {
		l.Source = "test"
		assert.True(t, math.IsInf(member.NewDeflection(0.01, l).Ratio(), 1))
		proved(t, member.NewDeflection(0.01, l))
	}
}

func TestEveryLimit(t *testing.T) {
	rows := member.Limits()
	seen := map[string]bool{}
	recalled := 0
	for _, r := range rows {
		assert.False(t, seen[r.Code+r.Member], r.Member)
		seen[r.Code+r.Member] = true
		assert.Positive(t, max(r.Live, r.Wind, r.Total), r.Member)
		if r.Live > 0 && r.Total > 0 {
			assert.Less(t, r.Total, r.Live, r.Member)
		}
		assert.Contains(t, r.Source, r.Code)
		if r.Status == calc.Recalled {
			recalled++
		}
	}
	t.Logf("%d of %d deflection limits are recalled", recalled, len(rows))
	assert.LessOrEqual(t, recalled, 1, "the number may only fall")
	rows[0].Live = 1
	assert.NotEqual(t, 1.0, member.Limits()[0].Live, "a copy")
}

func TestDeflectionsAllocateNothing(t *testing.T) {
	l := member.Limit{Length: 144, Divisor: 240}
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink += member.NewDeflection(0.3, l).Ratio()
		sink += member.NewSag(0.2, 0.3, member.Seasoning{}, l).Ratio()
		sink += member.NewTotalDeflection(0.2, 0.3, member.Seasoning{}, l).Ratio()
	}))
}

func BenchmarkDeflection(b *testing.B) {
	l := member.Limit{Length: 144, Divisor: 240}
	for b.Loop() {
		sink += member.NewDeflection(0.3, l).Ratio()
	}
}
