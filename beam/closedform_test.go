package beam_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/beam"
	"patiocover/calc/calctest"
)

// A span with an overhang to the right, w1 on the span, w2 on the overhang: closed
// formulas of statics (beam overhanging one support, uniform load on each part).
func TestOverhangFormulas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, a := rapid.Float64Range(24, 240).Draw(t, "L"), rapid.Float64Range(1, 120).Draw(t, "a")
		w1, w2 := rapid.Float64Range(0.1, 20).Draw(t, "w1"), rapid.Float64Range(-20, 20).Draw(t, "w2")
		line, err := beam.NewLine(l+a, []float64{0, l})
		if err != nil {
			t.Fatal(err)
		}
		p, err := beam.NewPlan(line, [][]beam.Load{{beam.Uniform(0, l, w1)}, {beam.Uniform(l, l+a, w2)}})
		if err != nil {
			t.Fatal(err)
		}
		var r beam.Response
		p.Run([]float64{1, 1}, 1, &r)
		size := (w1 + math.Abs(w2)) * (l + a)
		ra := w1*l/2 - w2*a*a/(2*l)
		near(t, ra, r.Reactions[0], 1e-12*size*(1+a/l), "RA")
		near(t, w1*l/2+w2*a+w2*a*a/(2*l), r.Reactions[1], 1e-12*size*(1+a/l), "RB")
		near(t, -w2*a*a/2, r.SupportMoments[1], 1e-12*size*(l+a), "M over the support")
		near(t, a*(w2*a*a*(4*l+3*a)-w1*l*l*l)/24, r.RightTip, 1e-12*size*math.Pow(l+a, 3), "tip")
		if 0 < ra && ra < w1*l {
			near(t, math.Max(ra*ra/(2*w1), -w2*a*a/2), r.Bays[1].MomentMax, 1e-11*size*(l+a)*(1+a/l), "M max")
		}
	})
}

// The overhang lifts the inner support when w2 a² exceeds w1 L².
func TestOverhangLiftsTheInnerSupport(t *testing.T) {
	cases := []struct {
		name     string
		a        float64 // in
		positive bool
	}{{"short", 119, true}, {"long", 121, false}}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, 120+c.a, []float64{0, 120}, []beam.Load{beam.Uniform(0, 120+c.a, 10)})
			var r beam.Response
			p.Forces([]float64{1}, &r)
			assert.Equal(t, c.positive, r.Reactions[0] > 0)
		})
	}
}

// A simple span under single loads: AWC Design Aid No. 6 (2007), simple beam figures.
// Values of the triangle are exact: they are printed as 0.1283 W L at 0.5774 L and
// 0.01304 W L³/EI at 0.5193 L.
func TestSimpleSpan(t *testing.T) {
	const span, stiffness = 120.0, 1e6
	peak := math.Sqrt(1 - math.Sqrt(8.0/15)) // place of the largest deflection under the triangle
	cases := []struct {
		name            string
		load            beam.Load
		left, right     float64 // reactions, of the total
		moment, at      float64 // of W L; of L
		deflection, yAt float64 // of W L³/EI; of L
	}{
		{"uniform", beam.Uniform(0, span, 10), 0.5, 0.5, 1.0 / 8, 0.5, 5.0 / 384, 0.5},
		{"point at the middle", beam.Point(span/2, 900), 0.5, 0.5, 1.0 / 4, 0.5, 1.0 / 48, 0.5},
		{"point at the third", beam.Point(span/3, 900), 2.0 / 3, 1.0 / 3, 2.0 / 9, 1.0 / 3,
			math.Pow(1-1.0/9, 1.5) / (27 * math.Sqrt(3)), 1 - math.Sqrt((1-1.0/9)/3)},
		{"triangle rising", beam.Linear(0, span, 0, 10), 1.0 / 3, 2.0 / 3, 2 / (9 * math.Sqrt(3)), 1 / math.Sqrt(3),
			triangleDeflection(peak), peak},
		{"triangle falling", beam.Linear(0, span, 10, 0), 2.0 / 3, 1.0 / 3, 2 / (9 * math.Sqrt(3)), 1 - 1/math.Sqrt(3),
			triangleDeflection(peak), 1 - peak},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, span, []float64{0, span}, []beam.Load{c.load})
			var r beam.Response
			var l beam.Location
			p.Run([]float64{1}, stiffness, &r)
			p.Locate([]float64{1}, stiffness, &l)
			w, b, e := c.load.Total(), r.Bays[1], l.Bays[1]
			calctest.Close(t, c.left*w, r.Reactions[0], 1e-12, 0)
			calctest.Close(t, c.right*w, r.Reactions[1], 1e-12, 0)
			calctest.Close(t, c.left*w, b.ShearMax, 1e-12, 0)
			calctest.Close(t, -c.right*w, b.ShearMin, 1e-12, 0)
			calctest.Close(t, c.moment*w*span, b.MomentMax, 1e-11, 0)
			calctest.Close(t, c.at*span, e.MomentMax.At, 1e-9, 0)
			calctest.Close(t, c.deflection*w*span*span*span/stiffness, b.DeflectionMax, 1e-10, 0)
			calctest.Close(t, c.yAt*span, e.DeflectionMax.At, 1e-9, 0)
			assert.Zero(t, b.MomentMin)
			assert.Zero(t, b.DeflectionMin)
		})
	}
}

// triangleDeflection returns E I y / W L³ at the part x of a simple span under a
// triangle that rises to the right: x (7 - 10 x² + 3 x⁴) / 180.
func triangleDeflection(x float64) float64 { return x * (7 - 10*x*x + 3*math.Pow(x, 4)) / 180 }

// A cantilever in all but name: a load at the tip of an overhang turns the span,
// whose far end it lifts. P a at the support, P a² (L + a) / 3EI at the tip, and
// P a L² / (9 sqrt(3) EI) upward in the span (AWC Design Aid No. 6 (2007), beam
// overhanging one support, concentrated load at end of overhang).
func TestTipLoad(t *testing.T) {
	const l, a, force, stiffness = 120.0, 36.0, 500.0, 1e6
	for _, mirrored := range []bool{false, true} {
		supports, at, span, tip := []float64{0, l}, l+a, 1, 2
		if mirrored {
			supports, at, span, tip = []float64{a, l + a}, 0, 1, 0
		}
		p := plan(t, l+a, supports, []beam.Load{beam.Point(at, force)})
		var r beam.Response
		p.Run([]float64{1}, stiffness, &r)
		calctest.Close(t, -force*a, r.Bays[tip].MomentMin, 1e-12, 0)
		calctest.Close(t, force*a*a*(l+a)/3/stiffness, r.Bays[tip].DeflectionMax, 1e-12, 0)
		calctest.Close(t, r.Bays[tip].DeflectionMax, r.LeftTip+r.RightTip, 1e-15, 0)
		calctest.Close(t, -force*a*l*l/(9*math.Sqrt(3))/stiffness, r.Bays[span].DeflectionMin, 1e-11, 0)
		calctest.Close(t, force, r.Bays[tip].ShearAbs(), 1e-12, 0)
	}
}
