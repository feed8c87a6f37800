package roof_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
	"patiocover/loads/roof"
	"patiocover/loads/wind"
)

// place is a level site in exposure B at 30 ft, as IRC 2018 Table R301.2(2) has it.
func place(mph float64) wind.Site {
	return wind.Site{Exposure: "B", Speed: mph, Hill: 1, Elevation: 1, Height: 30 * calc.Ft}
}

// A part of 10 ft² in the middle of a flat roof at 180 mph: IRC 2018 Table R301.2(2)
// prints -35.0 psf, of allowable stress level.
func ExampleNewComponent() {
	c, ok := roof.NewComponent(place(180), roof.Part{
		Figures: roof.Figures710, Angle: 7, Zone: roof.Zone1, Area: 10 * calc.SqFt,
	}, roof.Enclosed)
	fmt.Printf("%v, %.1f psf\n", ok, 0.6*c.Suction/calc.PSF)
	// Output: true, 35.0 psf
}

func TestHouseRoofPartsPublished(t *testing.T) {
	const least = 10 // psf, the floor of the table, which its column of 150 mph does not keep
	for _, r := range calctest.Published(t, "house_roof_parts.csv") {
		c, ok := roof.NewComponent(place(r.Num("V mph")), roof.Part{
			Figures: roof.Figures710, Angle: r.Num("theta deg"), Zone: roof.Zone(r.Text("zone")),
			Area: r.Num("area ft2") * calc.SqFt,
		}, roof.Enclosed)
		require.True(t, ok)
		about := fmt.Sprintf("%v degrees, zone %s, %v ft², %v mph",
			r.Num("theta deg"), r.Text("zone"), r.Num("area ft2"), r.Num("V mph"))
		down := 0.6 * c.Velocity.Pressure * (c.Down + c.Inside.Factor) / calc.PSF
		if r.Num("want") >= least {
			down = max(least, down)
		}
		calctest.Near(t, r.Num("want"), down, r.Num("within"), "down", about)
		calctest.Near(t, r.Num("want up"), max(least, 0.6*c.Suction/calc.PSF), r.Num("within"), "up", about)
	}
}

// The columns of 180 mph, printed to a tenth of a psf.
func TestHouseRoofPartsToATenth(t *testing.T) {
	for _, c := range []struct {
		angle, area float64 // degrees, ft²
		zone        roof.Zone
		down, up    float64 // psf, IRC 2018 Table R301.2(2); 0 where not compared
	}{
		{7, 10, roof.Zone1, 14.2, 35.0},
		{7, 20, roof.Zone1, 13.3, 34.1},
		{7, 100, roof.Zone3, 11.3, 37.9},
		{27, 10, roof.Zone1, 20.2, 32.0},
		{27, 50, roof.Zone1, 16.0, 29.9},
		{7, 10, roof.Zone2, 14.2, 58.7},
		{7, 10, roof.Zone3, 14.2, 88.3},
	} {
		got, ok := roof.NewComponent(place(180), roof.Part{
			Figures: roof.Figures710, Angle: c.angle, Zone: c.zone, Area: c.area * calc.SqFt,
		}, roof.Enclosed)
		require.True(t, ok)
		calctest.Near(t, c.down, 0.6*got.Pressure/calc.PSF, 0.11, c)
		calctest.Near(t, c.up, 0.6*got.Suction/calc.PSF, 0.11, c)
	}
}

// The overhang of a flat roof in zone 3, 10 ft², 90 mph: −1.656 kPa or −34.6 psf, of
// strength level, in a foreign reprint of ASCE 7-05.
func TestOverhangOfAPrintedTable(t *testing.T) {
	c, ok := roof.NewComponent(place(90), roof.Part{
		Figures: roof.Figures710, Angle: 5, Zone: roof.Zone3, Overhang: true, Area: 10 * calc.SqFt,
	}, roof.Enclosed)
	require.True(t, ok)
	calctest.Near(t, 34.6, c.Suction/calc.PSF, 0.06)
	assert.True(t, math.IsNaN(c.Pressure), "the figure has no downward curve for overhangs")
	assert.NoError(t, calctest.Prove(c.Lines()))
}

func TestHeightAndExposurePublished(t *testing.T) {
	for _, r := range calctest.Published(t, "house_height_exposure.csv") {
		p := roof.Part{Angle: 5, Zone: roof.Zone2, Area: 10 * calc.SqFt}
		if r.Text("figures") == roof.Figures710.String() {
			p.Figures = roof.Figures710
		}
		base, ok := roof.NewComponent(place(150), p, roof.Enclosed)
		require.True(t, ok)
		s := place(150)
		s.Exposure, s.Height = r.Text("exposure"), r.Num("h ft")*calc.Ft
		c, ok := roof.NewComponent(s, p, roof.Enclosed)
		require.True(t, ok)
		calctest.Near(t, r.Num("want"), c.Suction/base.Suction, r.Num("within"), s.Exposure, r.Num("h ft"), r.Text("source"))
	}
}

// part draws a part that some figure has, and its site.
func part(t *rapid.T) (wind.Site, roof.Part, roof.Enclosure) {
	s := house(t).Site
	p := roof.Part{
		Figures:  rapid.SampledFrom([]roof.Figures{roof.Figures716, roof.Figures710, roof.Figures722}).Draw(t, "figures"),
		Shape:    rapid.SampledFrom([]roof.Shape{roof.Gable, roof.Monoslope}).Draw(t, "shape"),
		Overhang: rapid.Bool().Draw(t, "overhang"),
		Area:     rapid.Float64Range(0.5, 1500).Draw(t, "area") * calc.SqFt,
	}
	p.Angle = rapid.Float64Range(0, 45).Draw(t, "theta")
	zones := roof.Zones(p.Figures, p.Shape, p.Angle, p.Overhang)
	if len(zones) == 0 {
		p.Shape, p.Angle, p.Overhang = roof.Gable, 7, false
		zones = roof.Zones(p.Figures, p.Shape, p.Angle, p.Overhang)
	}
	p.Zone = rapid.SampledFrom(zones).Draw(t, "zone")
	class := rapid.SampledFrom([]roof.Enclosure{roof.Enclosed, roof.PartiallyEnclosed, roof.PartiallyOpen, roof.Open})
	return s, p, class.Draw(t, "class")
}

func TestComponentLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, p, class := part(t)
		c, ok := roof.NewComponent(s, p, class)
		assert.True(t, ok, "every zone that the figure lists has a value")
		assert.NoError(t, calctest.Prove(c.Lines()))
		assert.GreaterOrEqual(t, c.Suction, 16*calc.PSF, "ASCE 7-16 30.2.2")
		for how, change := range map[string]func(*wind.Site){
			"faster":  func(s *wind.Site) { s.Speed *= 1.1 },
			"higher":  func(s *wind.Site) { s.Height *= 1.2 },
			"hillier": func(s *wind.Site) { s.Hill *= 1.1 },
		} {
			worse := s
			change(&worse)
			w, _ := roof.NewComponent(worse, p, class)
			assert.GreaterOrEqual(t, w.Suction, c.Suction, how)
		}
		small := p
		small.Area /= 2
		w, _ := roof.NewComponent(s, small, class)
		assert.GreaterOrEqual(t, w.Suction, c.Suction*(1-1e-12), "a smaller part never has the smaller suction")
		if !p.Overhang {
			puffed, _ := roof.NewComponent(s, p, roof.PartiallyEnclosed)
			assert.GreaterOrEqual(t, puffed.Suction, c.Suction, "GCpi 0.55 is the largest")
			assert.GreaterOrEqual(t, puffed.Pressure, c.Pressure)
			assert.GreaterOrEqual(t, c.Pressure, 16*calc.PSF)
		}
	})
}

// The answers of a published guide to ASCE 7-22, of strength level, each over the first
// of its example, so that the velocity pressure, which was not read, falls out.
func TestGuideAnswersPublished(t *testing.T) {
	first := map[string]float64{}
	for _, r := range calctest.Published(t, "house_roof_guide.csv") {
		c, ok := roof.NewComponent(place(200), roof.Part{
			Figures: roof.Figures722, Angle: r.Num("theta deg"), Zone: roof.Zone(r.Text("zone")),
			Area: r.Num("area ft2") * calc.SqFt,
		}, roof.Enclosed)
		require.True(t, ok)
		example := r.Text("example")
		if first[example] == 0 {
			first[example] = c.Suction / r.Num("want")
		}
		calctest.Near(t, r.Num("want"), c.Suction/first[example], r.Num("within"), example, r.Text("zone"), r.Num("area ft2"))
	}
	assert.Len(t, first, 2)
}

// Coefficients of a monoslope roof of more than 10 degrees that the guide prints.
func TestGuideMonoslope(t *testing.T) {
	for _, c := range []struct {
		zone       roof.Zone
		area, want float64 // ft², GCp of ASCE 7-22 Fig. 30.3-5B in a published guide
	}{
		{roof.Zone1, 20, -1.24}, {roof.Zone2, 20, -1.48}, {roof.Zone3, 20, -2.63},
		{roof.Zone1, 566, -1.10}, {roof.Zone2, 566, -1.20}, {roof.Zone3, 566, -2.00},
	} {
		got, ok := roof.NewComponent(place(115), roof.Part{
			Figures: roof.Figures722, Shape: roof.Monoslope, Angle: 15, Zone: c.zone, Area: c.area * calc.SqFt,
		}, roof.Enclosed)
		require.True(t, ok)
		calctest.Near(t, c.want, got.Up, 0.0051, c)
	}
}

// Points on the curve of 1 and 1' overhangs of flat roofs of 7-16, with three printed
// points; the middle of 10 to 100 ft² on the logarithmic scale is 31.6 ft².
func TestCurveOfThreePoints(t *testing.T) {
	for _, c := range []struct{ area, want float64 }{
		{5, -1.7}, {10, -1.7}, {10 * math.Sqrt(10), -1.65}, {100, -1.6},
		{100 * math.Sqrt(5), -1.35}, {500, -1.1}, {900, -1.1},
	} {
		got, ok := roof.NewComponent(place(115), roof.Part{
			Angle: 4, Zone: roof.Zone1, Overhang: true, Area: c.area * calc.SqFt,
		}, roof.Enclosed)
		require.True(t, ok)
		calctest.Near(t, c.want, got.Up, 1e-9, c.area)
		assert.NoError(t, calctest.Prove(got.Lines()))
	}
}

// What no source told has no value, and is not guessed.
func TestWhatIsNotKnownHasNoValue(t *testing.T) {
	for _, c := range []struct {
		name  string
		part  roof.Part
		class roof.Enclosure
	}{
		{"overhang of 7-22 above 7 degrees",
			roof.Part{Figures: roof.Figures722, Angle: 12, Zone: roof.Zone2, Overhang: true, Area: 10}, roof.Enclosed},
		{"overhang of a monoslope roof",
			roof.Part{Shape: roof.Monoslope, Angle: 8, Zone: roof.Zone2, Overhang: true, Area: 10}, roof.Enclosed},
		{"zone of another edition", roof.Part{Figures: roof.Figures722, Angle: 12, Zone: roof.Zone2Eave, Area: 10}, roof.Enclosed},
		{"steeper than every figure", roof.Part{Figures: roof.Figures722, Angle: 45.1, Zone: roof.Zone1, Area: 10}, roof.Enclosed},
		{"steep", roof.Part{Angle: 27.1, Zone: roof.Zone1, Area: 10}, roof.Enclosed},
		{"zone of another figure", roof.Part{Angle: 12, Zone: roof.Zone1Prime, Area: 10}, roof.Enclosed},
		{"monoslope above 10 degrees", roof.Part{Shape: roof.Monoslope, Angle: 11, Zone: roof.Zone1, Area: 10}, roof.Enclosed},
		{"no area", roof.Part{Angle: 4, Zone: roof.Zone1}, roof.Enclosed},
		{"unknown class", roof.Part{Angle: 4, Zone: roof.Zone1, Area: 10}, "drafty"},
		{"no slope", roof.Part{Angle: math.NaN(), Zone: roof.Zone1, Area: 10}, roof.Enclosed},
	} {
		got, ok := roof.NewComponent(place(115), c.part, c.class)
		assert.False(t, ok, c.name)
		assert.True(t, math.IsNaN(got.Suction), c.name)
		assert.True(t, math.IsInf(calc.Ratio(got.Suction, 1), 1), "%s never passes", c.name)
		assert.Error(t, calctest.Prove(got.Lines()), c.name)
	}
}

func TestZonesOfFigures(t *testing.T) {
	assert.Equal(t, []roof.Zone{"1'", "1", "2", "3"}, roof.Zones(roof.Figures716, roof.Gable, 7, false))
	assert.Equal(t, []roof.Zone{"1", "2e", "2n", "2r", "3e", "3r"}, roof.Zones(roof.Figures716, roof.Gable, 7.1, false))
	assert.Equal(t, []roof.Zone{"1", "2", "2'", "3", "3'"}, roof.Zones(roof.Figures716, roof.Monoslope, 3.1, false))
	assert.Equal(t, []roof.Zone{"1'", "1", "2", "3"}, roof.Zones(roof.Figures716, roof.Monoslope, 3, false))
	assert.Equal(t, []roof.Zone{"2", "3"}, roof.Zones(roof.Figures710, roof.Gable, 0, true))
	assert.Equal(t, []roof.Zone{"1", "2", "3"}, roof.Zones(roof.Figures722, roof.Gable, 27.1, false))
	assert.Equal(t, []roof.Zone{"1", "2", "3"}, roof.Zones(roof.Figures722, roof.Monoslope, 30, false))
	assert.Empty(t, roof.Zones(roof.Figures722, roof.Gable, 12, true))
	assert.Empty(t, roof.Zones(roof.Figures716, roof.Gable, 27.1, false))
}

// A strict tie by components is above that of the end zone, and has no value where an
// overhang has none.
func TestPartBasis(t *testing.T) {
	j := roof.TableJoint("C", 115, 24*calc.Ft, 24)
	area := wind.EffectiveArea(j.Span, j.Spacing)
	on := roof.Part{Figures: roof.Figures710, Angle: 5, Zone: roof.Zone2, Area: area}
	over := on
	over.Overhang = true
	field, _ := roof.NewComponent(j.Site, on, roof.Enclosed)
	eave, _ := roof.NewComponent(j.Site, over, roof.Enclosed)
	b, ok := roof.PartBasis(field, eave)
	require.True(t, ok)
	strict := roof.NewTie(j, b)
	assert.NoError(t, calctest.Prove(strict.Lines()))
	assert.Greater(t, strict.Uplift, roof.NewTie(j, roof.TableBasis(false)).Uplift)
	_, ok = roof.PartBasis(field, field)
	assert.False(t, ok, "the second must be an overhang")
	over.Figures, over.Angle = roof.Figures722, 12
	none, _ := roof.NewComponent(j.Site, over, roof.Enclosed)
	b, ok = roof.PartBasis(field, none)
	assert.False(t, ok)
	assert.True(t, math.IsNaN(roof.NewTie(j, b).Uplift))
}

// Trap: a large part of a steeper roof in a light wind below the least pressure on
// components: 16 psf of strength level, 9.6 psf of allowable stress before the dead load.
func TestTrapLeastPressureOfAPart(t *testing.T) {
	j := roof.TableJoint("B", 90, 20*calc.Ft, 10*calc.Ft)
	j.Overhang, j.Dead = 0, 0
	on := roof.Part{Figures: roof.Figures716, Angle: 15, Zone: roof.Zone1, Area: 200 * calc.SqFt}
	over := on
	over.Overhang = true
	field, _ := roof.NewComponent(j.Site, on, roof.Enclosed)
	eave, _ := roof.NewComponent(j.Site, over, roof.Enclosed)
	b, ok := roof.PartBasis(field, eave)
	require.True(t, ok)
	assert.Greater(t, b.Windward, -field.Up)
	assert.Contains(t, b.Source, "30.2.2")
	assert.GreaterOrEqual(t, roof.NewTie(j, b).Uplift, 0.6*16*10*10-1e-9, "9.6 psf on half of 20 ft by 10 ft")
}

func TestComponentAllocatesNothing(t *testing.T) {
	s := place(115)
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		c, _ := roof.NewComponent(s, roof.Part{Angle: 4, Zone: roof.Zone2, Area: 40 * calc.SqFt}, roof.Enclosed)
		sink = c.Suction
	}))
}

// The written calculation names the equation of its edition.
func TestComponentClauses(t *testing.T) {
	for f, want := range map[roof.Figures]string{
		roof.Figures716: "ASCE 7-16 eq. 30.3-1", roof.Figures710: "ASCE 7-10 eq. 30.4-1", roof.Figures722: "ASCE 7-22 eq. 30.3-1",
	} {
		c, ok := roof.NewComponent(place(115), roof.Part{Figures: f, Angle: 4, Zone: roof.Zone2, Area: calc.SqFt}, roof.Enclosed)
		require.True(t, ok)
		lines := c.Lines()
		assert.Contains(t, lines[len(lines)-1].Source, want)
	}
}

func TestFiguresNames(t *testing.T) {
	for e, f := range map[loads.Edition]roof.Figures{loads.ASCE716: roof.Figures716, loads.ASCE722: roof.Figures722} {
		assert.Equal(t, e.String(), f.String())
	}
	assert.Equal(t, "ASCE 7-10", roof.Figures710.String())
	assert.Equal(t, "monoslope", roof.Monoslope.String())
}
