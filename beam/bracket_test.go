package beam_test

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"patiocover/beam"
)

// brackets is a second independent route, without elements: one deflection curve for
// the whole member in Macaulay's brackets,
//
//	E I y = c0 + c1 x - sum R <x - s>³/6 + sum P <x - a>³/6 + sum w (<x - a>⁴ - <x - b>⁴)/24 ...
//
// whose reactions and two constants follow from y = 0 at the supports and from
// equilibrium. Its powers cancel where spans or loads are short, so it reckons with
// 300 binary digits and is exact for any comparison with float64.
type brackets struct {
	d        trial
	unknowns []*big.Float // reactions, lb; c0, lb-in³; c1, lb-in²
}

func exact(x float64) *big.Float { return new(big.Float).SetPrec(300).SetFloat64(x) }

func plus(a, b *big.Float) *big.Float  { return exact(0).Add(a, b) }
func minus(a, b *big.Float) *big.Float { return exact(0).Sub(a, b) }
func times(a, b *big.Float) *big.Float { return exact(0).Mul(a, b) }
func over(a, b *big.Float) *big.Float  { return exact(0).Quo(a, b) }

func newBrackets(d trial) *brackets {
	b := &brackets{d: d}
	n := len(d.supports)
	rows := make([][]*big.Float, n+2) // the last column is the right-hand side
	for i, x := range d.supports {
		for _, s := range d.supports {
			rows[i] = append(rows[i], minus(exact(0), bracket(x, s, 3)))
		}
		rows[i] = append(rows[i], exact(1), exact(x), minus(exact(0), b.loads(x, 3)))
	}
	for _, s := range d.supports {
		rows[n] = append(rows[n], exact(1))
		rows[n+1] = append(rows[n+1], bracket(d.length, s, 1))
	}
	rows[n] = append(rows[n], exact(0), exact(0), b.loads(d.length, 0))
	rows[n+1] = append(rows[n+1], exact(0), exact(0), b.loads(d.length, 1))
	b.unknowns = eliminate(rows)
	return b
}

// eliminate solves the equations, each a row of coefficients and its right-hand side.
func eliminate(rows [][]*big.Float) []*big.Float {
	n := len(rows)
	for i := range rows {
		pivot := i
		for j := i; j < n; j++ {
			if exact(0).Abs(rows[j][i]).Cmp(exact(0).Abs(rows[pivot][i])) > 0 {
				pivot = j
			}
		}
		rows[i], rows[pivot] = rows[pivot], rows[i]
		for j := range rows {
			if j == i || rows[j][i].Sign() == 0 {
				continue
			}
			f := over(rows[j][i], rows[i][i])
			for k := i; k <= n; k++ {
				rows[j][k] = minus(rows[j][k], times(f, rows[i][k]))
			}
		}
	}
	x := make([]*big.Float, n)
	for i := range rows {
		x[i] = over(rows[i][n], rows[i][i])
	}
	return x
}

// bracket returns <x - a>^n / n!.
func bracket(x, a float64, n int) *big.Float {
	p := exact(1)
	if x < a {
		return exact(0)
	}
	for i := range n {
		p = over(times(p, minus(exact(x), exact(a))), exact(float64(i+1)))
	}
	return p
}

// loads returns the sum over the loads of <x - a>^n / n! for points, integrated once
// for a line load and twice for its growth.
func (b *brackets) loads(x float64, n int) *big.Float {
	sum := exact(0)
	for k, loads := range b.d.cases {
		f := exact(b.d.factors[k])
		for _, l := range loads {
			if l.Concentrated() {
				sum = plus(sum, times(times(f, exact(l.Start)), bracket(x, l.From, n)))
				continue
			}
			growth := over(minus(exact(l.End), exact(l.Start)), minus(exact(l.To), exact(l.From)))
			even := minus(times(exact(l.Start), bracket(x, l.From, n+1)), times(exact(l.End), bracket(x, l.To, n+1)))
			bent := times(growth, minus(bracket(x, l.From, n+2), bracket(x, l.To, n+2)))
			sum = plus(sum, times(f, plus(even, bent)))
		}
	}
	return sum
}

// reaction returns the reaction at support i, lb.
func (b *brackets) reaction(i int) float64 {
	x, _ := b.unknowns[i].Float64()
	return x
}

// at returns moment and deflection at x.
func (b *brackets) at(x float64) (moment, deflection float64) {
	n := len(b.d.supports)
	m, y := minus(exact(0), b.loads(x, 1)), b.loads(x, 3)
	for i, s := range b.d.supports {
		m = plus(m, times(b.unknowns[i], bracket(x, s, 1)))
		y = minus(y, times(b.unknowns[i], bracket(x, s, 3)))
	}
	y = plus(y, plus(b.unknowns[n], times(b.unknowns[n+1], exact(x))))
	moment, _ = m.Float64()
	deflection, _ = over(y, exact(b.d.stiffness)).Float64()
	return moment, deflection
}

// raster is the number of positions in an inch that are drawn: none is so near to
// another that the two count as one place.
const raster = 1024

// Loads at any place, a hundredth of an inch beside a support or over it among them.
func TestBracketsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawAnywhere(t)
		b, p := newBrackets(d), d.plan(t)
		var r beam.Response
		p.Run(d.factors, d.stiffness, &r)
		size := d.scale()
		for i := range d.supports {
			near(t, b.reaction(i), r.Reactions[i], 1e-10*size, "reaction", i)
		}
		for range 5 {
			x := float64(rapid.IntRange(0, int(d.length*raster)).Draw(t, "x")) / raster
			s := p.At(d.factors, d.stiffness, x)
			moment, deflection := b.at(x)
			near(t, moment, s.Moment, 1e-11*size*d.length, "M", x)
			near(t, deflection, s.Deflection, 1e-11*size*math.Pow(d.length, 3)/d.stiffness, "y", x)
		}
	})
}

// drawAnywhere draws a beam with loads at any place, also right beside supports.
func drawAnywhere(t *rapid.T) trial {
	d := trial{stiffness: 1e8, factors: []float64{1, -0.7}, cases: make([][]beam.Load, 2)}
	x := rapid.SampledFrom([]float64{0, 0.01, 13.3, 40}).Draw(t, "left overhang")
	d.supports = append(d.supports, x)
	for range rapid.IntRange(1, 6).Draw(t, "spans") {
		x += float64(rapid.IntRange(30*raster, 200*raster).Draw(t, "span")) / raster
		d.supports = append(d.supports, x)
	}
	d.length = x + rapid.SampledFrom([]float64{0, 0.01, 13.3, 40}).Draw(t, "right overhang")
	place := func() float64 {
		if rapid.Bool().Draw(t, "anywhere") {
			return float64(rapid.IntRange(0, int(d.length*raster)).Draw(t, "at")) / raster
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
		if to-from < 1e-3 {
			d.cases[k] = append(d.cases[k], beam.Point(from, 50*w))
			continue
		}
		d.cases[k] = append(d.cases[k], beam.Linear(from, to, w, rapid.Float64Range(-20, 20).Draw(t, "w1")))
	}
	return d
}
