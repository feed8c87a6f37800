package wind_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads"
	"patiocover/loads/wind"
)

var (
	both    = []wind.Flow{wind.Clear, wind.Obstructed}
	places  = []wind.Place{wind.Interior, wind.SideEdge, wind.Middle}
	flowSet = [][]wind.Flow{{wind.Clear}, {wind.Obstructed}, both}
)

func TestFreeRoofPartsPublished(t *testing.T) {
	v := wind.NewVelocity(place())
	for _, r := range calctest.Published(t, "free_roof_parts.csv") {
		for _, area := range []float64{5, 20, 100} {
			c := wind.NewComponent(v, cover(0), area*calc.SqFt, wind.Middle, []wind.Flow{wind.Flow(r.Text("flow"))})
			calctest.Near(t, r.Num("want up"), c.Up, r.Num("within"), area, r.Text("source"))
		}
	}
}

// Cells of the figure, on a roof whose a is 3 ft, so that the classes end at 9 and 36 ft².
func TestComponentCells(t *testing.T) {
	v := wind.NewVelocity(place())
	for _, c := range []struct {
		angle, area float64 // degrees, ft²
		at          wind.Place
		flow        wind.Flow
		down, up    float64
	}{
		{0, 9, wind.SideEdge, wind.Clear, 2.4, -3.3},
		{0, 9.01, wind.SideEdge, wind.Clear, 1.8, -1.7},
		{0, 36, wind.SideEdge, wind.Obstructed, 0.8, -1.8},
		{0, 36.01, wind.SideEdge, wind.Obstructed, 0.5, -1.2},
		{0, 9, wind.Interior, wind.Obstructed, 0.8, -1.8},
		{0, 9, wind.Middle, wind.Obstructed, 0.5, -1.2},
		{7.5, 9, wind.SideEdge, wind.Obstructed, 1.6, -5.1},
		{3.75, 9, wind.SideEdge, wind.Obstructed, 1.3, -4.35}, // midway between the rows
		{15, 9, wind.Interior, wind.Clear, 3.6, -3.8},         // zone 3 all round from 10 degrees
		{15, 9, wind.Middle, wind.Clear, 2.7, -2.9},           // and zone 2 inside
		{45, 40, wind.SideEdge, wind.Obstructed, 2.1, -1.9},
	} {
		got := wind.NewComponent(v, cover(c.angle), c.area*calc.SqFt, c.at, []wind.Flow{c.flow})
		calctest.Near(t, c.down, got.Down, 1e-12, "CN down", c)
		calctest.Near(t, c.up, got.Up, 1e-12, "CN up", c)
	}
}

func TestZoneWidth(t *testing.T) {
	for _, c := range []struct {
		name                       string
		height, depth, width, want float64 // ft
	}{
		{"a patio cover: 3 ft", 9, 12, 20, 3},
		{"a tenth of the least dimension", 20, 40, 60, 4},
		{"0.4 h", 9, 50, 60, 3.6},
		{"0.04 of the least dimension", 8, 100, 100, 4},
	} {
		r := wind.Roof{Height: c.height * calc.Ft, Depth: c.depth * calc.Ft, Width: c.width * calc.Ft}
		calctest.Close(t, c.want*calc.Ft, wind.ZoneWidth(min(r.Depth, r.Width), r.Height), 1e-12, 0, c.name)
	}
}

// Trap: the effective area as span times spacing, without a third of the span. A 12 ft
// rafter at 16 in. has 48 ft², which is above 4a² of 36 and takes zone 1 everywhere;
// 16 ft² would cost 50 % more. Small parts keep the values of the edge.
func TestTrapEffectiveAreaWithoutAThirdOfTheSpan(t *testing.T) {
	area := wind.EffectiveArea(12*calc.Ft, 16)
	calctest.Close(t, 48*calc.SqFt, area, 1e-12, 0, "12 ft by 4 ft")
	calctest.Close(t, 72*calc.SqFt, wind.EffectiveArea(12*calc.Ft, 6*calc.Ft), 1e-12, 0, "a wide strip counts in full")
	v := wind.NewVelocity(place())
	rafter := wind.NewComponent(v, cover(2), area, wind.SideEdge, both)
	naive := wind.NewComponent(v, cover(2), 16*calc.SqFt, wind.SideEdge, both)
	screw := wind.NewComponent(v, cover(2), calc.SqFt, wind.SideEdge, both)
	assert.Equal(t, wind.NewComponent(v, cover(2), area, wind.Middle, both).Up, rafter.Up)
	assert.Greater(t, naive.Suction, 1.4*rafter.Suction)
	assert.Greater(t, screw.Suction, 2.5*rafter.Suction)
}

// Trap: the clear flow under a cover that is screened or filled later. Both flows
// together are never milder than either, and the obstructed one lifts a flat roof more.
func TestTrapClearFlowLaterScreened(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, r := wind.NewVelocity(site(t)), roof(t)
		area := rapid.Float64Range(0.1, 300).Draw(t, "area") * calc.SqFt
		at := rapid.SampledFrom(places).Draw(t, "place")
		worst := wind.NewComponent(v, r, area, at, both)
		for _, f := range both {
			one := wind.NewComponent(v, r, area, at, []wind.Flow{f})
			assert.GreaterOrEqual(t, worst.Suction, one.Suction)
			assert.GreaterOrEqual(t, worst.Pressure, one.Pressure)
		}
	})
	v := wind.NewVelocity(place())
	clear := wind.NewComponent(v, cover(2), calc.SqFt, wind.SideEdge, []wind.Flow{wind.Clear})
	assert.Greater(t, wind.NewComponent(v, cover(2), calc.SqFt, wind.SideEdge, both).Suction, clear.Suction)
}

func TestComponentLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, r := site(t), roof(t)
		area := rapid.Float64Range(0.1, 300).Draw(t, "area") * calc.SqFt
		at := rapid.SampledFrom(places).Draw(t, "place")
		flows := rapid.SampledFrom(flowSet).Draw(t, "flows")
		v := wind.NewVelocity(s)
		c := wind.NewComponent(v, r, area, at, flows)
		assert.NoError(t, calctest.Prove(c.Lines()))
		assert.GreaterOrEqual(t, c.Suction, 16*calc.PSF, "ASCE 7-16 30.2.2")
		assert.GreaterOrEqual(t, c.Pressure, 16*calc.PSF, "ASCE 7-16 30.2.2")
		assert.Positive(t, c.Down)
		assert.Negative(t, c.Up)
		larger := wind.NewComponent(v, r, area*2, at, flows)
		assert.LessOrEqual(t, larger.Suction, c.Suction, "a larger part never has the larger suction")
		edge := wind.NewComponent(v, r, area, wind.SideEdge, flows)
		middle := wind.NewComponent(v, r, area, wind.Middle, flows)
		assert.GreaterOrEqual(t, edge.Suction, c.Suction)
		assert.LessOrEqual(t, middle.Suction, c.Suction)
		more, higher := s, r
		more.Speed *= rapid.Float64Range(1, 1.5).Draw(t, "faster")
		more.Hill *= rapid.Float64Range(1, 1.5).Draw(t, "hill")
		rise := rapid.Float64Range(0, 20).Draw(t, "higher") * calc.Ft
		more.Height += rise
		higher.Height += rise
		assert.GreaterOrEqual(t, wind.NewComponent(wind.NewVelocity(more), higher, area, at, flows).Suction, c.Suction,
			"uplift never falls when the wind is faster, the roof higher or the hill steeper")
	})
}

// The coefficients of parts are continuous over the whole range of slopes, but for the
// plan of zones at 10 degrees.
func TestComponentIsContinuous(t *testing.T) {
	v := wind.NewVelocity(place())
	const step, steepest = 1e-7, 0.5 // degrees; CN per degree
	for _, angle := range []float64{3, 7.5, 12, 15, 29, 30, 44} {
		for _, f := range flowSet {
			a := wind.NewComponent(v, cover(angle-step), calc.SqFt, wind.SideEdge, f)
			b := wind.NewComponent(v, cover(angle+step), calc.SqFt, wind.SideEdge, f)
			calctest.Near(t, a.Down, b.Down, 2*step*steepest, angle)
			calctest.Near(t, a.Up, b.Up, 2*step*steepest, angle)
		}
	}
}

// The figure of parts has a row for every angle, class, flow and zone, and it grows
// worse toward the edge and for smaller parts.
func TestZonesAreComplete(t *testing.T) {
	v := wind.NewVelocity(place())
	for _, angle := range []float64{0, 7.5, 15, 30, 45} {
		for _, f := range both {
			for _, at := range places {
				last := math.Inf(1)
				for _, area := range []float64{9, 36, 37} {
					c := wind.NewComponent(v, cover(angle), area*calc.SqFt, at, []wind.Flow{f})
					assert.LessOrEqual(t, -c.Up, last, "%v degrees, %v, %s, %v ft²", angle, at, f, area)
					last = -c.Up
				}
			}
		}
	}
}

// The figure of parts against itself and against that of the whole roof, printed to one
// decimal. Zone 1 has the worst coefficients of the whole roof; zone 2 half as much
// again; zone 3 twice, but three times upward on low slopes. Middling parts of zone 3
// are as in zone 2, large parts anywhere as in zone 1.
func TestPartsAgreeWithTheWholeRoof(t *testing.T) {
	v := wind.NewVelocity(place())
	const small, middling, large, half = 9 * calc.SqFt, 36 * calc.SqFt, 37 * calc.SqFt, 0.0501
	for _, angle := range []float64{0, 7.5, 15, 30, 45} {
		at2, corner := wind.Interior, 3.0
		if angle >= 10 {
			at2, corner = wind.Middle, 2
		}
		for _, f := range both {
			part := func(area float64, at wind.Place) wind.Component {
				return wind.NewComponent(v, cover(angle), area, at, []wind.Flow{f})
			}
			z1, z2, z3 := part(large, wind.SideEdge), part(small, at2), part(small, wind.SideEdge)
			down, up := wholeRoof(cover(angle), f)
			calctest.Near(t, down, z1.Down, 1e-12, "zone 1 down", angle, f)
			calctest.Near(t, up, z1.Up, 1e-12, "zone 1 up", angle, f)
			calctest.Near(t, 1.5*z1.Down, z2.Down, half, "zone 2 down", angle, f)
			calctest.Near(t, 1.5*z1.Up, z2.Up, half, "zone 2 up", angle, f)
			calctest.Near(t, 2*z1.Down, z3.Down, half, "zone 3 down", angle, f)
			calctest.Near(t, corner*z1.Up, z3.Up, half, "zone 3 up", angle, f)
			assert.Equal(t, z2.Down, part(middling, wind.SideEdge).Down, "%v degrees, %s", angle, f)
			assert.Equal(t, z2.Up, part(middling, wind.SideEdge).Up, "%v degrees, %s", angle, f)
			assert.Equal(t, z1.Up, part(large, at2).Up, "%v degrees, %s", angle, f)
			assert.Equal(t, z1.Down, part(large, at2).Down, "%v degrees, %s", angle, f)
		}
	}
}

// wholeRoof is the worst coefficient down and up of the whole roof in a flow. On a
// flat roof the bands along the ridge count too, which alone press it down when the
// flow is obstructed; the 0.8 of their clear flow is below the 1.2 across.
func wholeRoof(r wind.Roof, f wind.Flow) (down, up float64) {
	for _, h := range wind.Halves(r) {
		if h.Flow == f {
			down, up = max(down, h.Windward, h.Leeward), min(up, h.Windward, h.Leeward)
		}
	}
	for _, b := range wind.Bands() {
		if b.Flow == f && r.Angle == 0 {
			down, up = max(down, b.Net[0]), min(up, b.Net[0])
		}
	}
	return down, up
}

func TestUnknownFlowIsNoNumber(t *testing.T) {
	v := wind.NewVelocity(place())
	for _, flows := range [][]wind.Flow{nil, {"breezy"}, {"breezy", wind.Clear}, {wind.Clear, "breezy"}} {
		c := wind.NewComponent(v, cover(2), calc.SqFt, wind.Interior, flows)
		assert.True(t, math.IsNaN(c.Suction) && math.IsNaN(c.Pressure), "%v", flows)
		assert.Error(t, calctest.Prove(c.Lines()))
	}
}

// The written calculation names the clause of the edition.
func TestComponentClauses(t *testing.T) {
	for e, want := range map[loads.Edition]string{
		loads.ASCE716: "ASCE 7-16 eq. 30.7-1", loads.ASCE722: "ASCE 7-22 eq. 30.5-1",
	} {
		s := place()
		s.Edition = e
		lines := wind.NewComponent(wind.NewVelocity(s), cover(2), calc.SqFt, wind.Interior, both).Lines()
		assert.Contains(t, lines[len(lines)-1].Source, want)
	}
}

func TestComponentAllocatesNothing(t *testing.T) {
	v, r := wind.NewVelocity(place()), cover(12)
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink = wind.NewComponent(v, r, wind.EffectiveArea(120, 16), wind.Interior, both).Suction
	}))
}
