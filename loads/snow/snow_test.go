package snow_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
	"patiocover/loads/snow"
)

var sink float64

const degree = math.Pi / 180

// place is a site of ASCE 7-16 with the ground snow of the worked example.
func place() snow.Site {
	return snow.Site{
		Ground: 20 * calc.PSF, GroundBasis: snow.ByASCE716, Terrain: "C",
		Sheltering: snow.FullyExposed, Category: snow.RiskII,
	}
}

// newer is the same place by ASCE 7-22, the load of strength level.
func newer(psf float64) snow.Site {
	s := place()
	s.Edition, s.Ground, s.GroundBasis, s.WinterWind = loads.ASCE722, psf*calc.PSF, snow.ByASCE722, 0.45
	return s
}

// flat is a nearly level cover 12 ft deep.
func flat() snow.Roof { return snow.Roof{Angle: 1.2 * degree, EaveToRidge: 12 * calc.Ft} }

// step is an eave 4 ft above a cover 12 ft deep, the house 40 ft long.
func step() snow.Step {
	return snow.Step{Height: 4 * calc.Ft, House: 40 * calc.Ft, Cover: 12 * calc.Ft}
}

// A shade structure, pg 20 psf, fully exposed in terrain C (published calculation to
// ASCE 7-16).
func Example() {
	b := snow.NewBalanced(place(), flat())
	fmt.Printf("Ce %.1f, Ct %.1f, pf %.2f psf\n", b.Exposure, b.Thermal, b.Flat/calc.PSF)
	for _, c := range b.Cases() {
		fmt.Printf("case %d: %.2f psf\n", c.Kind, c.Load/calc.PSF)
	}
	d := snow.NewDrift(b, snow.Step{Height: 31 * calc.Ft, House: 300 * calc.Ft, Cover: 35 * calc.Ft}, snow.Leeward)
	fmt.Printf("hd %.3f ft, w %.2f ft\n", d.Height/calc.Ft, d.Width/calc.Ft)
	// Output:
	// Ce 0.9, Ct 1.2, pf 15.12 psf
	// case 0: 15.12 psf
	// case 1: 20.00 psf
	// hd 5.237 ft, w 20.95 ft
}

func TestSnowPublished(t *testing.T) {
	shelter := map[string]snow.Sheltering{"fully exposed": snow.FullyExposed, "partially exposed": snow.PartiallyExposed}
	thermal := map[string]snow.Thermal{"open air": snow.OpenAir, "heated": snow.Heated}
	kinds := map[string]snow.Kind{"leeward": snow.Leeward, "windward": snow.Windward}
	for _, r := range calctest.Published(t, "snow.csv") {
		site := place()
		site.Terrain, site.Sheltering = r.Text("terrain"), shelter[r.Text("sheltering")]
		basis := snow.ByASCE716
		if r.Text("edition") == loads.ASCE722.String() {
			site.Edition, basis = loads.ASCE722, snow.ByASCE722
		}
		site.Ground, site.GroundBasis, site.WinterWind = r.Num("pg psf")*calc.PSF, basis, r.Num("W2")
		if r.Has("roof psf") {
			site.Roof, site.RoofBasis = r.Num("roof psf")*calc.PSF, basis
		}
		roof := flat()
		roof.Thermal = thermal[r.Text("thermal")]
		b := snow.NewBalanced(site, roof)
		d := snow.NewDrift(b, snow.Step{
			Height: r.Num("h ft") * calc.Ft, House: r.Num("house ft") * calc.Ft, Cover: r.Num("cover ft") * calc.Ft,
		}, kinds[r.Text("kind")])
		got, ok := map[string]float64{
			"pf psf": b.Flat / calc.PSF, "gamma pcf": d.Density / calc.PCF, "hb ft": d.Depth / calc.Ft,
			"hd ft": d.Height / calc.Ft, "h0 ft": d.Free / calc.Ft, "w ft": d.Width / calc.Ft,
			"pd psf": d.Peak / calc.PSF, "total psf": (b.Sloped + d.Peak) / calc.PSF,
		}[r.Text("quantity")]
		require.True(t, ok, r.Text("quantity"))
		calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("quantity"), r.Text("source"))
	}
}

func TestSlopeFactorByHand(t *testing.T) {
	cases := []struct {
		thermal  snow.Thermal
		slippery bool
		degrees  float64
		want     float64
	}{
		{snow.Heated, true, 5, 1}, {snow.Heated, true, 37.5, 0.5}, {snow.Heated, false, 50, 0.5},
		{snow.ColdVentilated, true, 40, 0.5}, {snow.ColdVentilated, false, 53.75, 0.5},
		{snow.OpenAir, true, 15, 1}, {snow.OpenAir, true, 42.5, 0.5}, {snow.OpenAir, false, 45, 1},
		{snow.OpenAir, false, 57.5, 0.5}, {snow.OpenAir, false, 70, 0}, {snow.Freezer, false, 80, 0},
	}
	for _, c := range cases {
		b := snow.NewBalanced(place(), snow.Roof{Thermal: c.thermal, Slippery: c.slippery, Angle: c.degrees * degree})
		calctest.Near(t, c.want, b.Slope, 1e-12, "ASCE 7-16 Fig. 7.4-1", c)
	}
}

// The least load and rain on snow by hand from ASCE 7-16 7.3.4, 7.10 and ASCE 7-22
// 7.3.3, 7.10. A roof of ½° with 30 ft from eave to ridge is flatter than W/50 = 0.6°.
func TestMinimumAndRainByHand(t *testing.T) {
	level := snow.Roof{Angle: 0.5 * degree, EaveToRidge: 30 * calc.Ft}
	cases := []struct {
		name           string
		site           snow.Site
		roof           snow.Roof
		minimum, rains float64 // psf
	}{
		{"pg 20, steeper than W/50", place(), flat(), 20, 0},
		{"pg 20, flatter", place(), level, 20, 5},
		{"pg 25, importance 1.1", func() snow.Site {
			s := place()
			s.Ground, s.Category = 25*calc.PSF, snow.RiskIII
			return s
		}(), level, 22, 0},
		{"just steeper than W/50", place(), snow.Roof{Angle: 0.61 * degree, EaveToRidge: 30 * calc.Ft}, 20, 0},
		{"14.9 degrees", place(), snow.Roof{Angle: 14.9 * degree}, 20, 0},
		{"15 degrees", place(), snow.Roof{Angle: 15.001 * degree}, 0, 0},
		{"2022, pg 28", newer(28), level, 28, 8},
		{"2022, pg 63", newer(63), level, 30, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := snow.NewBalanced(c.site, c.roof)
			require.Equal(t, snow.Found, b.Reason)
			calctest.Near(t, c.minimum, b.Minimum/calc.PSF, 1e-9)
			calctest.Near(t, c.rains, b.Rain/calc.PSF, 1e-9)
			assert.NoError(t, calctest.Prove(b.Lines()))
		})
	}
}

func TestImportance(t *testing.T) {
	for category, want := range map[snow.Category]float64{snow.RiskI: 0.8, snow.RiskII: 1, snow.RiskIII: 1.1, snow.RiskIV: 1.2} {
		old, now := place(), newer(20)
		old.Category, now.Category = category, category
		calctest.Near(t, want, snow.NewBalanced(old, flat()).Importance, 0, "ASCE 7-16 Table 1.5-2")
		calctest.Near(t, 1, snow.NewBalanced(now, flat()).Importance, 0, "ASCE 7-22: in the maps")
	}
}

// Every refusal says why, and its loads let nothing pass.
func TestRefusals(t *testing.T) {
	cases := []struct {
		name string
		edit func(*snow.Site, *snow.Roof)
		want snow.Reason
	}{
		{"nothing given", func(s *snow.Site, _ *snow.Roof) { s.GroundBasis = snow.NotGiven }, snow.NoLoad},
		{"not a number", func(s *snow.Site, _ *snow.Roof) { s.Ground = math.NaN() }, snow.NoLoad},
		{"negative", func(s *snow.Site, _ *snow.Roof) { s.Ground = -1 }, snow.NoLoad},
		{"no terrain", func(s *snow.Site, _ *snow.Roof) { s.Terrain = "" }, snow.NoExposure},
		{"no sheltering", func(s *snow.Site, _ *snow.Roof) { s.Sheltering = snow.UnknownSheltering }, snow.NoExposure},
		{"sheltering out of range", func(s *snow.Site, _ *snow.Roof) { s.Sheltering = 99 }, snow.NoExposure},
		{"no category", func(s *snow.Site, _ *snow.Roof) { s.Category = 0 }, snow.NoCategory},
		{"thermal out of range", func(_ *snow.Site, r *snow.Roof) { r.Thermal = 99 }, snow.NoThermal},
		{"no angle", func(_ *snow.Site, r *snow.Roof) { r.Angle = math.NaN() }, snow.NoGeometry},
		{"a wall", func(_ *snow.Site, r *snow.Roof) { r.Angle = math.Pi / 2 }, snow.NoGeometry},
		{"roof snow of the other edition", func(s *snow.Site, _ *snow.Roof) { s.RoofBasis = snow.ByASCE722 }, snow.EditionsMixed},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			site, roof := place(), flat()
			c.edit(&site, &roof)
			b := snow.NewBalanced(site, roof)
			assert.Equal(t, c.want, b.Reason)
			assert.False(t, b.Reason.Known())
			assert.True(t, math.IsNaN(b.Governing().Load), "a refusal must not pass for a load")
			assert.Empty(t, b.Lines())
			d := snow.NewDrift(b, step(), snow.Leeward)
			assert.Equal(t, c.want, d.Reason)
			assert.True(t, math.IsNaN(d.Peak) && math.IsNaN(d.Far))
			assert.Empty(t, d.Lines())
		})
	}
	heated := flat()
	heated.Thermal = snow.Heated
	assert.Equal(t, snow.NoThermal, snow.NewBalanced(newer(40), heated).Reason, "ASCE 7-22 takes Ct from R-value and pg")
}

func TestReasonsHaveWords(t *testing.T) {
	seen := map[string]bool{}
	for r := snow.NotComputed; r <= snow.NoGeometry; r++ {
		assert.NotEmpty(t, r.String())
		assert.False(t, seen[r.String()], "%q twice", r)
		seen[r.String()] = true
	}
	assert.Equal(t, snow.NotComputed.String(), snow.Reason(200).String())
	assert.False(t, snow.Drift{}.Reason.Known(), "the zero value is no answer")
}

// The hot desert: no snow at all is an answer, and a roof snow of the authority stands.
func TestNoSnowAndRoofSnow(t *testing.T) {
	desert := place()
	desert.Ground = 0
	b := snow.NewBalanced(desert, flat())
	assert.Equal(t, snow.NoSnow, b.Reason)
	assert.Zero(t, b.Governing().Load)
	d := snow.NewDrift(b, step(), snow.Leeward)
	assert.True(t, d.Reason.Known())
	assert.Zero(t, d.Peak)
	assert.NoError(t, calctest.Prove(append(b.Lines(), d.Lines()...)))

	set := place()
	set.GroundBasis, set.Roof, set.RoofBasis = snow.NotGiven, 25*calc.PSF, snow.ByASCE716
	set.Terrain, set.Sheltering = "", snow.UnknownSheltering
	b = snow.NewBalanced(set, flat())
	require.Equal(t, snow.Found, b.Reason, "Ce is not needed for a roof snow that is set")
	calctest.Near(t, 25, b.Sloped/calc.PSF, 1e-12)
	assert.Len(t, b.Cases(), 1)
	assert.Equal(t, snow.NoGround, snow.NewDrift(b, step(), snow.Windward).Reason)
	assert.NoError(t, calctest.Prove(b.Lines()))

	set.Ground, set.GroundBasis = 30*calc.PSF, snow.ByASCE716
	b = snow.NewBalanced(set, flat())
	assert.Len(t, b.Cases(), 2)
	assert.Equal(t, snow.Found, snow.NewDrift(b, step(), snow.Windward).Reason)

	set.Roof = 0
	assert.NotEqual(t, snow.NoSnow, snow.NewBalanced(set, flat()).Reason, "snow on the ground is snow")
}

func TestSnowAllocatesNothing(t *testing.T) {
	site, roof, at, above := place(), flat(), step(), roofAbove()
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		b := snow.NewBalanced(site, roof)
		d := snow.Drifts(b, at).Larger()
		sink += b.Governing().Load + d.Peak + d.Far +
			snow.NewDrift(b, at, snow.Parapet).Peak + snow.NewSliding(loads.ASCE716, above, at.Cover, 0).Line
	}))
}
