package beam_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"patiocover/beam"
)

// brackets is a second independent route, without elements: one deflection curve for
// the whole member in Macaulay's brackets,
//
//	E I y = c0 + c1 x - sum R <x - s>³/6 + sum P <x - a>³/6 + sum w (<x - a>⁴ - <x - b>⁴)/24 ...
//
// whose reactions and two constants follow from y = 0 at the supports and from
// equilibrium. Loads may lie as close to each other as they like. Lengths are parts
// of the length of the member inside.
type brackets struct {
	d        trial
	supports []float64 // part of the length
	unknowns []float64 // reactions, lb; c0 and c1 over the cube of the length, lb
}

func newBrackets(d trial) (*brackets, error) {
	b := &brackets{d: d}
	n := len(d.supports)
	for _, s := range d.supports {
		b.supports = append(b.supports, s/d.length)
	}
	a, right := mat.NewDense(n+2, n+2, nil), mat.NewVecDense(n+2, nil)
	for i, x := range b.supports {
		for j, s := range b.supports {
			a.Set(i, j, -power(x-s, 3)/6)
		}
		a.Set(i, n, 1)
		a.Set(i, n+1, x)
		right.SetVec(i, -b.loads(x, 3))
		a.Set(n, i, 1)
		a.Set(n+1, i, 1-x)
	}
	right.SetVec(n, b.loads(1, 0))
	right.SetVec(n+1, b.loads(1, 1))
	var x mat.VecDense
	if err := x.SolveVec(a, right); err != nil {
		return nil, err
	}
	b.unknowns = x.RawVector().Data
	return b, nil
}

// power returns the bracket <x> to the n, over nothing.
func power(x float64, n int) float64 {
	if x < 0 {
		return 0
	}
	return math.Pow(x, float64(n))
}

var factorial = []float64{1, 1, 2, 6, 24, 120}

// loads returns the sum over the loads of <x - a>^n / n! for points, integrated once
// for a line load and twice for its growth.
func (b *brackets) loads(x float64, n int) float64 {
	sum := 0.0
	for k, loads := range b.d.cases {
		f, length := b.d.factors[k], b.d.length
		for _, l := range loads {
			from, to := x-l.From/length, x-l.To/length
			if l.Concentrated() {
				sum += f * l.Start * power(from, n) / factorial[n]
				continue
			}
			growth := (l.End - l.Start) / (l.To - l.From) * length
			sum += f * length * (l.Start*power(from, n+1) - l.End*power(to, n+1)) / factorial[n+1]
			sum += f * length * growth * (power(from, n+2) - power(to, n+2)) / factorial[n+2]
		}
	}
	return sum
}

// at returns shear right of x, moment and deflection.
func (b *brackets) at(x float64) (shear, moment, deflection float64) {
	n, l := len(b.supports), b.d.length
	x /= l
	shear, moment, deflection = -b.loads(x, 0), -b.loads(x, 1), b.loads(x, 3)
	for i, s := range b.supports {
		shear += b.unknowns[i] * power(x-s, 0)
		moment += b.unknowns[i] * power(x-s, 1)
		deflection -= b.unknowns[i] * power(x-s, 3) / 6
	}
	deflection += b.unknowns[n] + b.unknowns[n+1]*x
	return shear, moment * l, deflection * l * l * l / b.d.stiffness
}

// Loads anywhere, a hundredth of an inch beside a support or over it among them. The
// tolerance is that of the other route: its powers cancel where spans are short.
func TestBracketsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawAnywhere(t)
		b, err := newBrackets(d)
		if err != nil {
			t.Fatal(err)
		}
		p := d.plan(t)
		var r beam.Response
		p.Run(d.factors, d.stiffness, &r)
		size := d.scale()
		for i := range d.supports {
			near(t, b.unknowns[i], r.Reactions[i], 1e-8*size, "reaction", i)
		}
		for range 20 {
			x := rapid.Float64Range(0, d.length).Draw(t, "x")
			s := p.At(d.factors, d.stiffness, x)
			_, moment, deflection := b.at(x)
			near(t, moment, s.Moment, 1e-8*size*d.length, "M", x)
			near(t, deflection, s.Deflection, 1e-8*size*math.Pow(d.length, 3)/d.stiffness, "y", x)
		}
	})
}

// drawAnywhere draws a beam whose loads keep to no raster.
func drawAnywhere(t *rapid.T) trial {
	d := trial{stiffness: 1e8, factors: []float64{1, -0.7}, cases: make([][]beam.Load, 2)}
	x := rapid.SampledFrom([]float64{0, 0.01, 13.3, 40}).Draw(t, "left overhang")
	d.supports = append(d.supports, x)
	for range rapid.IntRange(1, 6).Draw(t, "spans") {
		x += rapid.Float64Range(30, 200).Draw(t, "span")
		d.supports = append(d.supports, x)
	}
	d.length = x + rapid.SampledFrom([]float64{0, 0.01, 13.3, 40}).Draw(t, "right overhang")
	place := func() float64 {
		if rapid.Bool().Draw(t, "anywhere") {
			return rapid.Float64Range(0, d.length).Draw(t, "at")
		}
		s := rapid.SampledFrom(d.supports).Draw(t, "support")
		s += rapid.SampledFrom([]float64{-0.01, 0, 0.01, 1e-6}).Draw(t, "beside")
		return min(max(s, 0), d.length)
	}
	for range rapid.IntRange(1, 8).Draw(t, "loads") {
		k := rapid.IntRange(0, 1).Draw(t, "case")
		w := rapid.Float64Range(-20, 20).Draw(t, "w")
		from, to := place(), place()
		from, to = min(from, to), max(from, to)
		if to-from < 1 {
			d.cases[k] = append(d.cases[k], beam.Point(from, 50*w))
			continue
		}
		d.cases[k] = append(d.cases[k], beam.Linear(from, to, w, rapid.Float64Range(-20, 20).Draw(t, "w1")))
	}
	return d
}
