package seismic_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
	"patiocover/loads/seismic"
)

// Trap: the earthquake dismissed for cantilever posts. With R = 1.5 a heavy cover at
// SDS = 0.5 takes a third of its weight sideways at strength level, 0.7 · 0.33 = 23 %
// in allowable stress design (loads by hand from ASCE 7-16 eq. 12.8-2).
func TestTrapSeismicIsNotDismissedForOwnPosts(t *testing.T) {
	s := seismic.NewShear(seismic.Site{Short: 0.5, Second: 0.5, Mapped: 0.2, Importance: 1}, seismic.OwnPosts(), 3000, 9*calc.Ft)
	calctest.Near(t, 1.0/3, s.Factor, 1e-12)
	calctest.Near(t, 0.23, 0.7*s.Force/s.Weight, 0.005)
}

func TestShearByHand(t *testing.T) {
	cases := []struct {
		name   string
		site   seismic.Site
		system seismic.System
		want   float64 // Cs
		source string
	}{
		{"plain", seismic.Site{0.6, 0.6, 0.3, 1}, seismic.OwnPosts(), 0.4, "eq. 12.8-2: 0.6/1.5"},
		{"house walls", seismic.Site{0.65, 0.6, 0.3, 1}, seismic.HouseWalls(), 0.1, "eq. 12.8-2: 0.65/6.5"},
		{"capped by the period", seismic.Site{1, 0.01, 0.01, 1}, seismic.OwnPosts(), 0.0641500299, "eq. 12.8-3, T = 0.10392 s"},
		{"floor", seismic.Site{0.1, 0.0001, 0.01, 1}, seismic.OwnPosts(), 0.01, "eq. 12.8-5"},
		{"near faults", seismic.Site{0.1, 0.001, 0.6, 1}, seismic.OwnPosts(), 0.2, "eq. 12.8-6: 0.5·0.6/1.5"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := seismic.NewShear(c.site, c.system, 1000, 9*calc.Ft)
			calctest.Near(t, c.want, s.Factor, 1e-8, c.source)
			calctest.Near(t, 1000*c.want, s.Force, 1e-5, c.source)
		})
	}
}

func TestPermits(t *testing.T) {
	cases := []struct {
		system   seismic.System
		category string
		height   float64
		want     seismic.Refusal
	}{
		{seismic.OwnPosts(), "D", 10 * calc.Ft, seismic.Permitted},
		{seismic.OwnPosts(), "E", 10 * calc.Ft, seismic.NotPermitted},
		{seismic.OwnPosts(), "F", 10 * calc.Ft, seismic.NotPermitted},
		{seismic.OwnPosts(), "B", 36 * calc.Ft, seismic.TooTall},
		{seismic.HouseWalls(), "E", 12 * calc.Ft, seismic.Permitted},
		{seismic.OwnPosts(), "", 10 * calc.Ft, seismic.NotPermitted}, // unknown is never permitted
	}
	for _, c := range cases {
		assert.Equal(t, c.want, c.system.Permits(c.category, c.height), "%s in %q", c.system.Name, c.category)
		assert.NotEmpty(t, c.want.String())
	}
}

func TestSnowShare(t *testing.T) {
	cases := []struct {
		edition loads.Edition
		psf     float64
		want    float64
	}{
		{loads.ASCE716, 30, 0}, {loads.ASCE716, 31, 0.2},
		{loads.ASCE722, 31, 0}, {loads.ASCE722, 45, 0}, {loads.ASCE722, 46, 0.15},
	}
	for _, c := range cases {
		calctest.Near(t, c.want, seismic.SnowShare(c.edition, c.psf*calc.PSF), 0, c)
	}
}

func TestShearIsProvedAndMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		site := seismic.Site{
			Short: rapid.Float64Range(0, 3).Draw(t, "sds"), Second: rapid.Float64Range(0.001, 2).Draw(t, "sd1"),
			Mapped: rapid.Float64Range(0, 1.5).Draw(t, "s1"), Importance: 1,
		}
		w := rapid.Float64Range(0, 1e5).Draw(t, "weight")
		s := seismic.NewShear(site, seismic.OwnPosts(), w, rapid.Float64Range(6*calc.Ft, 20*calc.Ft).Draw(t, "height"))
		if err := calctest.Prove(s.Lines()); err != nil {
			t.Fatal(err)
		}
		more := site
		more.Short += 0.1
		if seismic.NewShear(more, s.System, w, s.Height).Force < s.Force*(1-1e-12) {
			t.Fatal("a stronger site lowered the shear")
		}
		if seismic.NewShear(site, s.System, w+1, s.Height).Force < s.Force {
			t.Fatal("more weight lowered the shear")
		}
		if seismic.NewShear(site, seismic.HouseWalls(), w, s.Height).Force > s.Force*(1+1e-12) {
			t.Fatal("the house's walls took more than own posts")
		}
	})
}

func TestShearAllocatesNothing(t *testing.T) {
	site, system := seismic.Site{0.5, 0.5, 0.2, 1}, seismic.OwnPosts()
	var sink float64
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink += seismic.NewShear(site, system, 3000, 100).Force }))
}

// A cover of 3000 lb on its own posts, 9 ft high, SDS 0.5 (ASCE 7-16 12.8).
func ExampleNewShear() {
	site := seismic.Site{Short: 0.5, Second: 0.3, Mapped: 0.2, Importance: 1}
	s := seismic.NewShear(site, seismic.OwnPosts(), 3000, 9*calc.Ft)
	fmt.Printf("Cs %.3f, V %.0f lb, 0.7E %.0f lb\n", s.Factor, s.Force, 0.7*s.Force)
	// Output: Cs 0.333, V 1000 lb, 0.7E 700 lb
}
