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

// product draws plies, a pole, or glued laminated timber, on edge and laid flat.
func product(t *rapid.T) (edge, flat *lumber.Adjusted) {
	size := rapid.SampledFrom([]string{
		"2-2x8", "3-2x10", "5-1/8x12", "3-1/8x18", "6-3/4x24", "8 round", "8-1/2 round",
	}).Draw(t, "size")
	s, err := lumber.SectionNamed(size)
	if err != nil {
		t.Fatal(err)
	}
	by := rapid.SampledFrom([]lumber.Fastening{lumber.Unfastened, lumber.Nailed, lumber.Bolted}).Draw(t, "fastening")
	s = s.Fastened(by)
	v := lumber.Given{
		Product: "pole", Source: "test", Bending: 1500, Flatwise: 1500, Tension: 900, Shear: 110, Bearing: 400,
		Compression: 900, Elasticity: 1.3e6, Stability: 470_000, Gravity: 0.45,
	}.Values()
	switch s.Class {
	case lumber.Dimension:
		v, err = lumber.Find("Hem-Fir", "No.2", s)
	case lumber.Manufactured:
		v, err = lumber.Find("Glulam DF/DF", "24F-V4", s)
	}
	if err != nil {
		t.Fatal(err)
	}
	use := lumber.Use{Method: rapid.SampledFrom([]lumber.Method{lumber.ASD, lumber.LRFD}).Draw(t, "method")}
	a := lumber.Adjust(v, s, use)
	use.Flat = true
	b := lumber.Adjust(v, s, use)
	return &a, &b
}

// Every check of every product is written as it is calculated.
func TestProductsAreProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge, flat := product(t)
		stay, term, x := drawStay(t), anyDuration(t), drawActions(t)
		stay.Bracing.Zeros = rapid.SampledFrom([]float64{0, 120, 300}).Draw(t, "zeros")
		stay.Bracing.Hogging = rapid.Bool().Draw(t, "hogging")
		proved(t, member.NewBending(x.Edgewise, edge, term, stay.Bracing))
		proved(t, member.NewBending(x.Flatwise, flat, term, member.Bracing{}))
		proved(t, member.NewCombined(x, edge, flat, term, stay))
		proved(t, member.NewNotchShear(x.Edgewise, edge, term, notch(t, edge.Section.Depth)))
		proved(t, member.NewCutBending(x.Edgewise, edge, term, stay.Bracing, drawCut(t, edge.Section.Depth)))
		proved(t, member.NewJointShear(x.Edgewise, edge, term, member.Joint{Lowest: 2, Highest: 5, FromEnd: 3}))
	})
}

// A force off the axis of a pole or of plies bends with the modulus that it has.
func TestEccentricProducts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge, flat := product(t)
		stay := member.Stay{Column: member.Column{Deep: member.Axis{Held: true}, Thin: member.Axis{Held: true}}}
		x := member.Actions{Force: 1000, EdgeOffset: 2, FlatOffset: 1}
		c := member.NewCombined(x, edge, flat, lumber.TenYears, stay)
		for _, p := range []struct{ want, got float64 }{
			{2000 / edge.Section.Modulus(), c.EdgeStress}, {1000 / edge.Section.ModulusFlat(), c.FlatStress},
		} {
			if math.Abs(p.got-p.want) > 1e-9*p.want {
				t.Fatalf("P e / S is %v, got %v", p.want, p.got)
			}
		}
	})
}

func glulam(t testing.TB, size string) *lumber.Adjusted {
	t.Helper()
	return adjusted(t, "Glulam DF/DF", "24F-V4", size, lumber.Use{})
}

// NDS 2018 5.3.6 by hand: 5-1/8 x 18, 30 ft between points of zero moment.
func TestGluedBendingByHand(t *testing.T) {
	a := glulam(t, "5-1/8x18")
	volume := math.Pow(21.0/30*12/18, 0.1)
	held := member.Bracing{Held: true, Zeros: 360}
	b := member.NewBending(400_000, a, lumber.SevenDays, held)
	calctest.Close(t, 2400*1.25*volume, b.Allowable, 1e-9, 0, "NDS 2018 eq. 5.3-1")
	open := member.Bracing{Unbraced: 360, Zeros: 360, Loading: member.UniformSpan}
	l := member.NewBending(400_000, a, lumber.SevenDays, open)
	assert.Less(t, l.Stability, l.Volume.Factor)
	calctest.Close(t, 2400*1.25*l.Stability, l.Allowable, 1e-12, 0, "C_L is the lesser")
	near := member.NewBending(400_000, a, lumber.SevenDays, member.Bracing{Unbraced: 48, Zeros: 360, Loading: member.UniformSpan})
	assert.Greater(t, near.Stability, near.Volume.Factor)
	calctest.Close(t, 2400*1.25*volume, near.Allowable, 1e-9, 0, "C_V is the lesser")
}

// C_V and C_L never multiply: the lesser of the two counts.
func TestTrapVolumeTimesStability(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge, _ := product(t)
		brace := bracing(t)
		brace.Zeros = rapid.Float64Range(24, 600).Draw(t, "zeros")
		b := member.NewBending(1000, edge, lumber.TenYears, brace)
		want := b.Star * min(b.Stability, b.Volume.Factor)
		if b.Allowable != want*b.Strength.FlatUse {
			t.Fatalf("%v psi of C_L %v and C_V %v", b.Allowable, b.Stability, b.Volume.Factor)
		}
	})
}

// An unbalanced layup is weaker where its top is stretched: under net uplift and over
// supports Fbx- counts, by the sign of the moment or by what the bracing says.
func TestTrapUnbalancedLayupUnderHogging(t *testing.T) {
	a := glulam(t, "5-1/8x12")
	held := member.Bracing{Held: true, Zeros: 240}
	down, up := member.NewBending(90_000, a, lumber.TenMinutes, held), member.NewBending(-90_000, a, lumber.TenMinutes, held)
	calctest.Close(t, 1850.0/2400, up.Allowable/down.Allowable, 1e-12, 0, "NDS Supp. 2018 Table 5A, 24F-V4")
	held.Hogging = true
	assert.Equal(t, up.Allowable, member.NewBending(90_000, a, lumber.TenMinutes, held).Allowable)
	held.Zeros = 0
	assert.True(t, math.IsInf(member.NewBending(90_000, a, lumber.TenMinutes, held).Ratio(), 1), "C_V not known")
}

// Cuts of glued laminated timber: C_vr 0.72, d/10 and 3 in. on the tension face, only at
// the ends; other manufactured wood and poles take none.
func TestGluedCuts(t *testing.T) {
	a := glulam(t, "5-1/8x18")
	allowed := member.NewNotchShear(1000, a, lumber.TenYears, member.Notch{Remaining: 16.25})
	calctest.Close(t, 2.0/3*265*0.72*5.125*16.25*math.Pow(16.25/18, 2), allowed.Capacity, 1e-9, 0, "NDS 2018 3.4.3.2, 5.3.10")
	assert.True(t, math.IsInf(member.NewNotchShear(1, a, lumber.TenYears, member.Notch{Remaining: 16}).Ratio(), 1), "d/10")
	deep := glulam(t, "5-1/8x36")
	assert.Equal(t, 3.0, member.NewNotchShear(1, deep, lumber.TenYears, member.Notch{Remaining: 35}).Limit, "3 in.")
	pressed := member.Notch{Remaining: 18 * 0.6, Compression: true}
	assert.Positive(t, member.NewNotchShear(1, a, lumber.TenYears, pressed).Capacity, "2d/5 on the pressed face")
	held := member.Bracing{Held: true, Zeros: 240}
	for _, place := range []member.CutPlace{member.CutOverSupport, member.CutOuterThird, member.CutMiddleThird} {
		assert.True(t, math.IsInf(member.NewCutBending(1, a, lumber.TenYears, held, member.Cut{Depth: 0.5, Place: place}).Ratio(), 1))
	}
	joint := member.Joint{Lowest: 4, Highest: 12, FromEnd: 100}
	calctest.Close(t, 2.0/3*265*0.72*5.125*14, member.NewJointShear(1, a, lumber.TenYears, joint).Capacity, 1e-9, 0, "C_vr")
	round := pole("8 round")
	assert.True(t, math.IsInf(member.NewNotchShear(1, round, lumber.TenYears, member.Notch{Remaining: 8}).Ratio(), 1))
	assert.True(t, math.IsInf(member.NewJointShear(1, round, lumber.TenYears, joint).Ratio(), 1))
}
