package footing_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/connections/footing"
)

var (
	_ calc.Result = footing.Bearing{}
	_ calc.Result = footing.Uplift{}
	_ calc.Result = footing.Depth{}
	_ calc.Result = footing.Thickness{}
	_ calc.Result = footing.Projection{}
	_ calc.Result = footing.Plain{}
	_ calc.Result = footing.Sideways{}
	_ calc.Result = footing.Pole{}
	_ calc.Result = footing.SlabWeight{}
)

func soilOf(t testing.TB, class string) footing.Soil {
	t.Helper()
	s, ok := footing.SoilNamed(class)
	require.True(t, ok, class)
	return s
}

func lateral(psfPerFoot float64) footing.Pressure {
	return footing.Pressure{Value: psfPerFoot * calc.PSF / calc.Ft, Source: "test", Status: calc.Read}
}

func bearing(psf float64) footing.Pressure {
	return footing.Pressure{Value: psf * calc.PSF, Source: "test", Status: calc.Read}
}

func shape(word string) footing.Shape {
	if word == "round" {
		return footing.Round
	}
	return footing.Square
}

// deep is ground water far below.
const deep = 100 * calc.Ft

func TestPolePublished(t *testing.T) {
	for _, r := range calctest.Published(t, "footing_pole.csv") {
		p := footing.NewPole(r.Num("P lb"), r.Num("h ft")*calc.Ft,
			footing.Shaft{Shape: shape(r.Text("shape")), Width: r.Num("B ft") * calc.Ft, Depth: 10 * calc.Ft},
			footing.Ground{Lateral: lateral(r.Num("s psf per ft")), Constrained: r.Text("constrained") == "yes"})
		got := map[string]float64{"depth": p.Embedded / calc.Ft, "pressure": p.Pressure / calc.PSF}[r.Text("quantity")]
		calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("source"))
	}
}

// Footings without any weight of their own, as the table of deck footings and the rule of
// the trade count them, bear what is printed and not much more.
func TestAreaPublished(t *testing.T) {
	used := func(r calc.Row, width, force float64) float64 {
		block := footing.Block{Shape: shape(r.Text("shape")), Width: width, Water: deep}
		return footing.NewBearing(footing.Press{Force: force, Soil: bearing(r.Num("soil psf"))}, block).Ratio()
	}
	for _, r := range calctest.Published(t, "footing_area.csv") {
		want, within, source := r.Num("want"), r.Num("within"), r.Text("source")
		if r.Text("quantity") == "capacity" {
			assert.LessOrEqual(t, used(r, r.Num("diameter in"), want), 1.0, source)
			assert.Greater(t, used(r, r.Num("diameter in"), want+100), 1.0, "cut down to 100 lb: "+source)
			continue
		}
		least := map[string]float64{"square": 12, "round": 14}[r.Text("shape")]
		load := 50 * calc.PSF * r.Num("tributary ft2") * calc.SqFt
		assert.LessOrEqual(t, used(r, want+within, load), 1.0, source)
		if want > least {
			assert.Greater(t, used(r, want-within, load), 1.0, source)
		}
	}
}

func TestUpliftPublished(t *testing.T) {
	const ours = 145.0 // pcf, what the program lets resist
	for _, r := range calctest.Published(t, "footing_uplift.csv") {
		scale := r.Num("concrete pcf") / ours
		if r.Text("quantity") == "slab" {
			w := footing.NewSlabWeight(100, r.Num("t ft")*calc.Ft, r.Num("a ft")*calc.Ft, r.Num("b ft")*calc.Ft)
			calctest.Near(t, r.Num("want"), w.Resisting*scale, r.Num("within"), r.Text("source"))
			continue
		}
		thick := r.Num("t ft") * calc.Ft
		u := footing.NewUplift(100, footing.Block{
			Width: r.Num("B ft") * calc.Ft, Thickness: thick, Depth: thick + r.Num("over ft")*calc.Ft, Water: deep, SoilOver: true,
		})
		calctest.Near(t, r.Num("want"), 0.6*(u.Concrete*scale+u.Soil), r.Num("within"), r.Text("source"))
		calctest.Close(t, u.Resisting, 0.6*(u.Concrete+u.Soil), 1e-12, 0)
	}
}

// 2000 lb on 18 in square by 12 in: 150 pcf less 100 pcf leave 112.5 lb; over 2.25 ft²
// that is 938.9 psf. By hand.
func TestBearing(t *testing.T) {
	b := footing.Block{Width: 18, Thickness: 12, Depth: 12, Water: deep}
	c := footing.NewBearing(footing.Press{Force: 2000, Soil: bearing(1500)}, b)
	calctest.Near(t, 938.9, c.Most/calc.PSF, 0.05)
	gross := footing.NewBearing(footing.Press{Force: 2000, Soil: bearing(1500), Gross: true}, b)
	calctest.Near(t, (2000+337.5)/2.25, gross.Most/calc.PSF, 1e-9)
	bent := footing.NewBearing(footing.Press{Force: 2000, Moment: 2112.5 * 3, Soil: bearing(1500)}, b)
	calctest.Close(t, 2*c.Most, bent.Most, 1e-9, 0, "a resultant at a sixth of the side doubles the pressure")
	assert.False(t, math.IsInf(bent.Ratio(), 0))
	lifted := footing.NewBearing(footing.Press{Force: 2000, Moment: 2112.5 * 3.01, Soil: bearing(1500)}, b)
	assert.True(t, math.IsInf(lifted.Ratio(), 1), "beyond the kern nothing is claimed")
	round := footing.NewBearing(footing.Press{Force: 2000, Soil: bearing(1500)}, footing.Block{
		Shape: footing.Round, Width: 18, Thickness: 12, Depth: 12, Water: deep,
	})
	assert.Greater(t, round.Ratio(), c.Ratio(), "a circle is smaller than its square")
}

// A square of 24 in in water to its top weighs 145 less 62.4 pcf. By hand: 0.6 x 82.6 x 4.
func TestGroundWaterTakesWeight(t *testing.T) {
	b := footing.Block{Width: 24, Thickness: 12, Depth: 12, Water: 0}
	calctest.Near(t, 198.24, footing.NewUplift(1, b).Resisting, 1e-9)
	b.Water = 6
	calctest.Near(t, 0.6*4*(145-31.2), footing.NewUplift(1, b).Resisting, 1e-9)
	necked := footing.Block{Width: 24, Thickness: 12, Depth: 36, Neck: 12, Water: 0, SoilOver: true}
	u := footing.NewUplift(1, necked)
	calctest.Near(t, 0.6*(145*6+100*6-62.4*12), u.Resisting, 1e-9, "pad and neck 6 ft³, soil 6 ft³, water 12 ft³")
}

// Trap 14: soil counted below a slab or twice, a cone of soil, the factor of 0.6 left out
// or a further 1.5 put on it, the weight of the post counted as footing.
func TestTrapSoilAboveTheFootingIsCountedOnce(t *testing.T) {
	b := footing.Block{Width: 24, Thickness: 12, Depth: 36, Neck: 12, Water: deep}
	bare := footing.NewUplift(500, b)
	assert.Zero(t, bare.Soil, "below a slab, or where it may be dug out")
	calctest.Near(t, 0.6*145*6, bare.Resisting, 1e-9, "0.6 once, and only concrete")
	b.SoilOver = true
	open := footing.NewUplift(500, b)
	calctest.Near(t, 100*(4-1)*2, open.Soil, 1e-9, "straight above the projection, not above the neck, no cone")
	calctest.Near(t, 0.6*(145*6+600), open.Resisting, 1e-9)
	b.SoilOver = false
	assert.Equal(t, bare.Resisting, footing.NewUplift(0, b).Resisting, "what holds does not depend on the post")
}

// The post in a collar is wood, not concrete: 24 in round, 36 in deep around a post of 5.5
// by 5.5 in, (3.1416 - 0.2101) x 3 = 8.795 ft³. By hand.
func TestPostInTheCollarIsNoConcrete(t *testing.T) {
	b := footing.Block{Shape: footing.Round, Width: 24, Thickness: 36, Depth: 36, Core: 30.25, Water: deep}
	calctest.Near(t, 8.7946, b.Volume()/math.Pow(calc.Ft, 3), 0.0005)
	calctest.Near(t, 0.6*145*8.7946, footing.NewUplift(1, b).Resisting, 0.05)
}

// Trap 16: the side of a square post taken for b, which is its diagonal.
func TestTrapDiagonalOfASquarePole(t *testing.T) {
	g := footing.Ground{Lateral: lateral(100)}
	square := footing.NewPole(300, 96, footing.Shaft{Shape: footing.Square, Width: 12, Depth: 60}, g)
	round := footing.NewPole(300, 96, footing.Shaft{Shape: footing.Round, Width: 12 * math.Sqrt2, Depth: 60}, g)
	calctest.Close(t, round.Embedded, square.Embedded, 1e-12, 0)
	b := footing.Block{Width: 12, Thickness: 48, Depth: 48, Water: deep}
	shear := footing.Shear{Force: 100, Uplift: 1e6, Lateral: lateral(100)}
	side := footing.NewSideways(shear, b)
	b.Shape, b.Width = footing.Round, 12*math.Sqrt2
	calctest.Close(t, footing.NewSideways(shear, b).Pole, side.Pole, 1e-12, 0)
}

// Trap 17: S1 taken at the full depth, or at a depth that the formula does not return.
func TestTrapPressureAtAThirdOfTheFinalDepth(t *testing.T) {
	p := footing.NewPole(1000, 96, footing.Shaft{Shape: footing.Round, Width: 12, Depth: 84}, footing.Ground{Lateral: lateral(150)})
	calctest.Close(t, 150*p.Embedded/calc.Ft/3, p.Pressure/calc.PSF, 1e-12, 0)
	a := 2.34 * 1000 / (p.Pressure * 12)
	calctest.Close(t, p.Embedded, a/2*(1+math.Sqrt(1+4.36*96/a)), 1e-10, 0, "the depth returns itself")
	held := footing.NewPole(1000, 96, footing.Shaft{Shape: footing.Round, Width: 12, Depth: 84},
		footing.Ground{Lateral: lateral(150), Constrained: true})
	calctest.Close(t, 150*held.Embedded/calc.Ft, held.Pressure/calc.PSF, 1e-12, 0, "S3 at the depth itself")
	deepPole := footing.NewPole(20000, 240, footing.Shaft{Shape: footing.Round, Width: 12, Depth: 84},
		footing.Ground{Lateral: lateral(100)})
	assert.Greater(t, deepPole.Embedded, 12*calc.Ft)
	calctest.Close(t, 400, deepPole.Pressure/calc.PSF, 1e-12, 0, "no more pressure below 12 ft")
}

// Trap 18: the value doubled for an isolated pole, raised by a third for wind, or both.
func TestTrapNeitherDoubledNorRaised(t *testing.T) {
	soil := soilOf(t, "clay")
	p := footing.NewPole(300, 96, footing.Shaft{Shape: footing.Round, Width: 12, Depth: 60},
		footing.Ground{Lateral: footing.Pressure{Value: soil.Lateral, Source: soil.Source, Status: soil.Status}})
	calctest.Close(t, 100*p.Embedded/calc.Ft/3, p.Pressure/calc.PSF, 1e-12, 0)
	c := footing.NewBearing(footing.Press{Force: 1000, Soil: bearing(1500)},
		footing.Block{Width: 12, Thickness: 12, Depth: 12, Water: deep})
	calctest.Near(t, 1500, c.Allowable/calc.PSF, 1e-9, "no increase for wind")
}

// Trap 30: the exemption of freestanding covers from frost used for an attached one.
func TestTrapFrostExemptionIsForFreestandingCovers(t *testing.T) {
	small := footing.Standing{Asked: true, Area: 240 * calc.SqFt, Eave: 9 * calc.Ft}
	cases := []struct {
		name   string
		change func(*footing.Standing)
		want   footing.Frost
		depth  float64
	}{
		{"small and freestanding", func(*footing.Standing) {}, footing.FrostExempt, 12},
		{"not asked for", func(s *footing.Standing) { s.Asked = false }, footing.FrostCounts, 36},
		{"attached", func(s *footing.Standing) { s.Attached = true }, footing.FrostAttached, 36},
		{"601 sq ft", func(s *footing.Standing) { s.Area = 601 * calc.SqFt }, footing.FrostTooLarge, 36},
		{"eave above 10 ft", func(s *footing.Standing) { s.Eave = 121 }, footing.FrostTooLarge, 36},
		{"area unknown", func(s *footing.Standing) { s.Area = math.NaN() }, footing.FrostTooLarge, 36},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := small
			c.change(&s)
			f := footing.NewFrost(s)
			assert.Equal(t, c.want, f)
			assert.Contains(t, f.String(), "R403.1.4.1")
			calctest.Near(t, c.depth, footing.NewDepth(30, 36, f).Required, 1e-12)
		})
	}
	assert.True(t, math.IsInf(footing.NewDepth(99, math.NaN(), footing.FrostCounts).Ratio(), 1), "frost unknown")
}

// IRC R403.1.1: 6 in and no thinner than the projection; plain concrete 8 in.
func TestLeastSizes(t *testing.T) {
	for _, c := range []struct{ width, thickness, post, thick, reach float64 }{
		{12, 12, 3.5, 8.0 / 12, 7.5 / 12}, {24, 8, 3.5, 10.25 / 8, 7.5 / 24}, {8, 8, 5.5, 1, 9.5 / 8}, {24, 12, 0, 1, 4.0 / 24},
	} {
		b := footing.Block{Width: c.width, Thickness: c.thickness, Depth: c.thickness}
		calctest.Close(t, c.thick, footing.NewThickness(b, c.post).Ratio(), 1e-12, 0)
		calctest.Close(t, c.reach, footing.NewProjection(b, c.post).Ratio(), 1e-12, 0)
	}
}

// A neck narrower than the post does not carry it, and the pad reaches past the neck.
func TestNeckCarriesThePost(t *testing.T) {
	b := footing.Block{Width: 24, Thickness: 8, Depth: 36, Neck: 12}
	calctest.Close(t, 16.0/24, footing.NewProjection(b, 5.5).Ratio(), 1e-12, 0)
	b.Neck = 5
	calctest.Close(t, 1.1, footing.NewProjection(b, 5.5).Ratio(), 1e-12, 0)
	b.Neck = 22
	calctest.Close(t, 26.0/24, footing.NewProjection(b, 5.5).Ratio(), 1e-12, 0)
	b.Neck = 10
	calctest.Close(t, 1, footing.NewThickness(b, 5.5).Ratio(), 1e-12, 0, "7 in beyond the neck, 8 in of plain concrete")
}

// 24 in square, 12 in thick, post 5.5 in, 4000 lb: q_u 4000/0.6/576 = 11.574 psi, M_u
// 11,884 lb-in; of 10 in 60,000 lb-in. By hand.
func TestPlainConcrete(t *testing.T) {
	p := footing.NewPlain(4000, 5.5, 2500, footing.Block{Width: 24, Thickness: 12, Depth: 12})
	calctest.Near(t, 11.574, p.Pressure, 0.001)
	calctest.Near(t, 11884, p.Moment, 1)
	calctest.Near(t, 60000, p.Capacity, 1e-6)
}

// Friction of 0.25 on 300 lb and the soil in front: 75 + 100 x 1.5²/2 x 2 = 300 lb. The
// weight of 0.6 x 145 x 6 = 522 lb less 222 lb leaves those 300 lb. By hand.
func TestSidewaysByWeight(t *testing.T) {
	b := footing.Block{Width: 24, Thickness: 18, Depth: 18, Water: deep}
	s := footing.NewSideways(footing.Shear{Force: 95, Uplift: 222, Lateral: lateral(100), Friction: 0.25}, b)
	calctest.Near(t, 522, s.Weight, 1e-9)
	calctest.Near(t, 300, s.Slide, 1e-9)
	calctest.Near(t, (300*4+225*6)/18.0, s.Tip, 1e-9)
	assert.Equal(t, footing.ByWeight, s.Held)
	calctest.Near(t, 95*18-225*6, s.Moment(), 1e-9, "95 lb at 18 in less 225 lb in front at 6 in leaves 360")
	strong := footing.NewSideways(footing.Shear{Force: 200, Uplift: 222, Lateral: lateral(100), Friction: 0.25}, b)
	calctest.Near(t, 200*18-225*6, strong.Moment(), 1e-9)
	clay := footing.NewSideways(footing.Shear{Force: 50, Uplift: 222, Lateral: lateral(100), Cohesion: 130 * calc.PSF}, b)
	calctest.Near(t, 150, clay.Base, 1e-9, "cohesion at most half of the dead load (IBC 2018 1806.3.2)")
	none := footing.NewSideways(footing.Shear{Force: 50, Uplift: 5000, Lateral: lateral(100), Friction: 0.25}, b)
	assert.Zero(t, none.Base, "nothing rests on it, nothing rubs")
	assert.Zero(t, none.Rest)
}

func TestPoleLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		force := rapid.Float64Range(1, 3000).Draw(t, "force")
		height := rapid.Float64Range(0, 200).Draw(t, "height")
		more := rapid.Float64Range(0.01, 500).Draw(t, "more")
		s := footing.Shaft{Shape: footing.Round, Width: rapid.Float64Range(3.5, 36).Draw(t, "width"), Depth: 48}
		g := footing.Ground{Lateral: lateral(rapid.Float64Range(100, 1200).Draw(t, "s")), Constrained: rapid.Bool().Draw(t, "held")}
		at := footing.NewPole(force, height, s, g).Required
		if !(at > 0) && height > 0 {
			t.Fatalf("depth %v", at)
		}
		if footing.NewPole(force+more, height, s, g).Required < at || footing.NewPole(force, height+more, s, g).Required < at {
			t.Fatal("more load or height asks for less depth")
		}
		g.Loose = more / 100
		if footing.NewPole(force, height, s, g).Required < at {
			t.Fatal("loose ground asks for less depth")
		}
	})
}

// A block's sideways capacity by depth is that of a pole of no height, and back.
func TestSidewaysByDepthIsThePole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := footing.Block{
			Shape: footing.Round, Width: rapid.Float64Range(8, 36).Draw(t, "width"),
			Depth: rapid.Float64Range(12, 140).Draw(t, "depth"), Water: deep,
		}
		b.Thickness = b.Depth
		loose := rapid.Float64Range(0, 11).Draw(t, "loose")
		f := footing.NewSideways(footing.Shear{Force: 1, Uplift: 1e9, Lateral: lateral(150), Loose: loose}, b)
		p := footing.NewPole(f.Pole, 0, footing.Shaft{Shape: footing.Round, Width: b.Width, Depth: b.Depth},
			footing.Ground{Lateral: lateral(150), Loose: loose})
		if math.Abs(p.Required-b.Depth) > 1e-6*b.Depth {
			t.Fatalf("depth %v, pole asks for %v", b.Depth, p.Required)
		}
	})
}

func draw(t *rapid.T) footing.Block {
	b := footing.Block{
		Shape: footing.Shape(rapid.IntRange(0, 1).Draw(t, "shape")), Width: rapid.Float64Range(8, 60).Draw(t, "B"),
		Thickness: rapid.Float64Range(6, 48).Draw(t, "t"), Water: tenths(t, 100, "water"),
		SoilOver: rapid.Bool().Draw(t, "soil"),
	}
	b.Depth = b.Thickness
	if rapid.Bool().Draw(t, "neck") {
		b.Neck, b.Depth = b.Width/2, b.Thickness+rapid.Float64Range(0.1, 60).Draw(t, "over")
		return b
	}
	if rapid.Bool().Draw(t, "post inside") {
		b.Core = b.Area() / 9
	}
	return b
}

// tenths draws a number from 0 in tenths.
func tenths(t *rapid.T, most int, name string) float64 {
	return float64(rapid.IntRange(0, 10*most).Draw(t, name)) / 10
}

func checks(t *rapid.T) []calc.Result {
	b := draw(t)
	force := tenths(t, 20000, "force")
	height := tenths(t, 160, "height")
	l := footing.Pressure{Value: rapid.Float64Range(50, 1200).Draw(t, "s") * calc.PSF / calc.Ft, Source: "test"}
	g := footing.Ground{Lateral: l, Constrained: rapid.Bool().Draw(t, "held"), Loose: tenths(t, 11, "loose")}
	press := footing.Press{
		Force: force + 1, Moment: tenths(t, 9000, "moment"), Soil: bearing(1500), Gross: rapid.Bool().Draw(t, "gross"),
	}
	if rapid.Bool().Draw(t, "centered") {
		press.Moment = 0
	}
	shear := footing.Shear{
		Force: force / 10, Uplift: tenths(t, 2000, "up"), Lateral: l, Friction: 0.25, Cohesion: 0.5, Loose: g.Loose,
	}
	frost := footing.NewFrost(footing.Standing{Asked: rapid.Bool().Draw(t, "asked"), Area: 1, Eave: 1})
	return []calc.Result{
		footing.NewBearing(press, b), footing.NewUplift(force, b), footing.NewSideways(shear, b),
		footing.NewDepth(b.Depth, height, frost), footing.NewThickness(b, 5.5), footing.NewProjection(b, 5.5),
		footing.NewPlain(force, 5.5, 2500, b), footing.NewSlabWeight(force, b.Thickness, height, b.Width),
		footing.NewPole(force/4, height, footing.Shaft{Shape: b.Shape, Width: b.Width, Depth: b.Depth}, g),
	}
}

func TestEveryCheckIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, r := range checks(t) {
			c := r.Explain()
			if err := calctest.Prove(c.Lines); err != nil {
				t.Fatalf("%s: %v", c.Name, err)
			}
			if a, b := r.Ratio(), c.Ratio(); a != b {
				t.Fatalf("%s: ratio %v explained as %v", c.Name, a, b)
			}
		}
	})
}

func TestChecksAllocateNothing(t *testing.T) {
	b := footing.Block{Width: 24, Thickness: 12, Depth: 36, Neck: 12, Water: 10}
	g := footing.Ground{Lateral: lateral(100)}
	sink := 0.0
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		sink += footing.NewBearing(footing.Press{Force: 900, Soil: footing.Pressure{Value: 10}}, b).Ratio() +
			footing.NewUplift(500, b).Ratio() + footing.NewDepth(36, 12, footing.FrostCounts).Ratio() +
			footing.NewThickness(b, 5.5).Ratio() + footing.NewProjection(b, 5.5).Ratio() + footing.NewPlain(900, 5.5, 2500, b).Ratio() +
			footing.NewSideways(footing.Shear{Force: 40, Lateral: g.Lateral}, b).Ratio() + footing.NewSlabWeight(100, 4, 24, 24).Ratio() +
			footing.NewPole(100, 96, footing.Shaft{Width: 12, Depth: 48}, g).Ratio()
	}))
	assert.Positive(t, sink)
}

func TestWords(t *testing.T) {
	assert.Equal(t, "round", footing.Round.String())
	assert.Equal(t, "square", footing.Square.String())
}

// The footing of a flagpole to IBC 2018 1807.3.2.2 in a public worksheet: 30,000 lb at
// 3 ft, a pier of 4 ft 6 in, 350 psf per foot, which the worksheet doubles, held by a
// floor. It finds 1.509 m, that is 4.95 ft.
func ExampleNewPole() {
	p := footing.NewPole(30000, 3*calc.Ft,
		footing.Shaft{Shape: footing.Round, Width: 4.5 * calc.Ft, Depth: 5 * calc.Ft},
		footing.Ground{Constrained: true, Lateral: footing.Pressure{Value: 700 * calc.PSF / calc.Ft}})
	fmt.Printf("%.2f ft\n", p.Required/calc.Ft)
	// Output: 4.95 ft
}
