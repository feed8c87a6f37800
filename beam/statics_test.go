package beam_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"patiocover/beam"
)

// A trial is a beam drawn at random, with cases and the factors of a combination.
type trial struct {
	length    float64   // in
	supports  []float64 // in
	cases     [][]beam.Load
	factors   []float64
	stiffness float64 // E I, lb-in²
	places    []float64
}

// grid is the raster of random beams, in: wide enough that the elements of the
// independent route keep their digits.
const grid = 6.0

func drawTrial(t *rapid.T, varying bool) trial {
	d := trial{stiffness: rapid.Float64Range(1e7, 1e9).Draw(t, "stiffness")}
	steps := func(low, high int, name string) float64 {
		return grid * float64(rapid.IntRange(low, high).Draw(t, name))
	}
	x := steps(0, 8, "left overhang")
	d.supports = append(d.supports, x)
	for range rapid.IntRange(1, 5).Draw(t, "spans") {
		x += steps(4, 30, "span")
		d.supports = append(d.supports, x)
	}
	d.length = x + steps(0, 8, "right overhang")
	last := int(d.length / grid)
	for range rapid.IntRange(1, 3).Draw(t, "cases") {
		var loads []beam.Load
		for range rapid.IntRange(0, 5).Draw(t, "loads") {
			from := rapid.IntRange(0, last-1).Draw(t, "from")
			to := rapid.IntRange(from+1, last).Draw(t, "to")
			a, b := grid*float64(from), grid*float64(to)
			w := rapid.Float64Range(-20, 20)
			switch kind := rapid.IntRange(0, 2).Draw(t, "kind"); {
			case kind == 0:
				loads = append(loads, beam.Point(b, rapid.Float64Range(-1000, 1000).Draw(t, "P")))
			case kind == 1 || !varying:
				loads = append(loads, beam.Uniform(a, b, w.Draw(t, "w")))
			default:
				loads = append(loads, beam.Linear(a, b, w.Draw(t, "w0"), w.Draw(t, "w1")))
			}
			d.places = append(d.places, a, b)
		}
		d.cases = append(d.cases, loads)
		d.factors = append(d.factors, rapid.Float64Range(-2, 2).Draw(t, "factor"))
	}
	return d
}

func (d trial) plan(t rapid.TB) *beam.Plan {
	line, err := beam.NewLine(d.length, d.supports)
	if err != nil {
		t.Fatal(err)
	}
	p, err := beam.NewPlan(line, d.cases)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// scale returns the force against which differences count, lb.
func (d trial) scale() float64 {
	sum := 1.0
	for k, loads := range d.cases {
		for _, l := range loads {
			if l.Concentrated() {
				sum += math.Abs(d.factors[k] * l.Start)
				continue
			}
			sum += math.Abs(d.factors[k]) * (l.To - l.From) * (math.Abs(l.Start) + math.Abs(l.End))
		}
	}
	return sum
}

// bay returns the ends of bay k, in.
func (d trial) bay(k int) (from, to float64) {
	ends := append(append([]float64{0}, d.supports...), d.length)
	return ends[k], ends[k+1]
}

func near(t rapid.TB, want, got, within float64, about ...any) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Fatalf("got %v, want %v within %v: %v", got, want, within, about)
	}
}

// Finite elements and a dense factorization, assembled without any of the package's
// formulas, give the same reactions, shears, moments and deflections at all nodes.
func TestElementsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTrial(t, true)
		p, m := d.plan(t), newMesh(d.length, d.supports, d.stiffness, d.places...)
		var l meshLoad
		m.load(nil, 0, &l)
		for k := range d.cases {
			m.load(d.cases[k], d.factors[k], &l)
		}
		x := m.solve(l)
		size := d.scale()
		moment, sag := size*d.length, size*math.Pow(d.length, 3)/d.stiffness
		jump := make([]float64, len(m.nodes))
		for e := range m.bays {
			h := m.nodes[e+1] - m.nodes[e]
			left := m.start(e, l, x.AtVec)
			right := left.along(h, h, m.stiffness, l.lines[e])
			got := p.At(d.factors, d.stiffness, m.nodes[e])
			near(t, left.shear, got.ShearRight, 1e-7*size, "V", e)
			near(t, left.moment, got.Moment, 1e-7*moment, "M", e)
			near(t, left.deflection, got.Deflection, 1e-7*sag, "y", e)
			near(t, left.slope, got.Slope, 1e-7*sag/d.length, "slope", e)
			got = p.At(d.factors, d.stiffness, m.nodes[e+1])
			near(t, right.shear, got.ShearLeft, 1e-7*size, "V", e)
			near(t, right.moment, got.Moment, 1e-7*moment, "M", e)
			near(t, right.deflection, got.Deflection, 1e-7*sag, "y", e)
			jump[e] += left.shear
			jump[e+1] -= right.shear
		}
		var r beam.Response
		p.Run(d.factors, d.stiffness, &r)
		for i, s := range d.supports {
			n, _ := slices.BinarySearch(m.nodes, s)
			near(t, jump[n]+l.points[n], r.Reactions[i], 1e-7*size, "reaction", i)
			near(t, p.At(d.factors, d.stiffness, s).Moment, r.SupportMoments[i], 1e-12*moment, "support", i)
		}
		near(t, m.start(0, l, x.AtVec).deflection, r.LeftTip, 1e-7*sag, "tip")
	})
}

// No section lies beyond the extrema, and a section lies at each of them: Run tells
// how large, Locate where.
func TestExtremaAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTrial(t, rapid.Bool().Draw(t, "varying"))
		p := d.plan(t)
		var r beam.Response
		var l beam.Location
		p.Run(d.factors, d.stiffness, &r)
		p.Locate(d.factors, d.stiffness, &l)
		size := d.scale()
		for k, b := range r.Bays {
			from, to := d.bay(k)
			if from == to {
				if b != (beam.Bay{}) || l.Bays[k] != (beam.Extrema{}) {
					t.Fatalf("bay %d does not exist and has %v", k, b)
				}
				continue
			}
			slack := 1e-11 * size * (1 + d.length)
			sag := 1e-11 * size * math.Pow(d.length, 3) / d.stiffness
			for i := range 201 {
				s := p.At(d.factors, d.stiffness, from+(to-from)*float64(i)/200)
				inside(t, b.MomentMin, s.Moment, b.MomentMax, slack)
				inside(t, b.DeflectionMin, s.Deflection, b.DeflectionMax, sag)
				if i > 0 {
					inside(t, b.ShearMin, s.ShearLeft, b.ShearMax, slack)
				}
				if i < 200 {
					inside(t, b.ShearMin, s.ShearRight, b.ShearMax, slack)
				}
			}
			e, at := l.Bays[k], func(x beam.Extreme) beam.Section { return p.At(d.factors, d.stiffness, x.At) }
			near(t, b.MomentMax, at(e.MomentMax).Moment, slack, "M max", k)
			near(t, b.MomentMin, at(e.MomentMin).Moment, slack, "M min", k)
			near(t, b.DeflectionMax, at(e.DeflectionMax).Deflection, sag, "y max", k)
			near(t, b.DeflectionMin, at(e.DeflectionMin).Deflection, sag, "y min", k)
			face(t, at(e.ShearMax), b.ShearMax, slack)
			face(t, at(e.ShearMin), b.ShearMin, slack)
		}
	})
}

func inside(t rapid.TB, low, x, high, slack float64) {
	t.Helper()
	if !(low-slack <= x && x <= high+slack) {
		t.Fatalf("%v lies outside %v to %v by more than %v", x, low, high, slack)
	}
}

// face fails unless the shear is that of one of the two faces.
func face(t rapid.TB, s beam.Section, want, slack float64) {
	t.Helper()
	if !(math.Abs(s.ShearLeft-want) <= slack || math.Abs(s.ShearRight-want) <= slack) {
		t.Fatalf("shear %v is on neither face of %v", want, s)
	}
}

// Run, Forces and Locate are one answer. Run takes the short way when no line load
// varies; Locate always takes the general one.
func TestPathsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTrial(t, rapid.Bool().Draw(t, "varying"))
		p := d.plan(t)
		var r, f beam.Response
		var l beam.Location
		p.Run(d.factors, d.stiffness, &r)
		p.Forces(d.factors, &f)
		p.Locate(d.factors, d.stiffness, &l)
		size := d.scale()
		slack, sag := 1e-12*size*(1+d.length), 1e-12*size*math.Pow(d.length, 3)/d.stiffness
		for i, b := range r.Bays {
			e := l.Bays[i]
			near(t, e.ShearMax.Value, b.ShearMax, slack, "V max", i)
			near(t, e.ShearMin.Value, b.ShearMin, slack, "V min", i)
			near(t, e.MomentMax.Value, b.MomentMax, slack, "M max", i)
			near(t, e.MomentMin.Value, b.MomentMin, slack, "M min", i)
			near(t, e.DeflectionMax.Value, b.DeflectionMax, sag, "y max", i)
			near(t, e.DeflectionMin.Value, b.DeflectionMin, sag, "y min", i)
			got := f.Bays[i]
			if !math.IsNaN(got.DeflectionMax) || !math.IsNaN(got.DeflectionMin) {
				t.Fatalf("forces alone know no deflection, bay %d has %v", i, got)
			}
			got.DeflectionMax, got.DeflectionMin = b.DeflectionMax, b.DeflectionMin
			if got != b {
				t.Fatalf("bay %d: %v by forces, %v by run", i, got, b)
			}
		}
		if !slices.Equal(r.Reactions, f.Reactions) || !slices.Equal(r.SupportMoments, f.SupportMoments) {
			t.Fatal("forces and run differ at the supports")
		}
	})
}

// The forces balance the loads, by sums over the loads as given.
func TestEquilibrium(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTrial(t, true)
		var r beam.Response
		d.plan(t).Run(d.factors, d.stiffness, &r)
		force, moment := 0.0, 0.0
		for k, loads := range d.cases {
			for _, l := range loads {
				force += d.factors[k] * l.Total()
				moment += d.factors[k] * l.Moment()
			}
		}
		for i, x := range d.supports {
			force -= r.Reactions[i]
			moment -= r.Reactions[i] * x
		}
		near(t, 0, force, 1e-9*d.scale(), "force")
		near(t, 0, moment, 1e-9*d.scale()*d.length, "moment")
	})
}

// Turned end for end, the beam gives the same picture turned end for end.
func TestMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTrial(t, true)
		turned := d
		turned.supports, turned.cases = nil, nil
		for _, x := range slices.Backward(d.supports) {
			turned.supports = append(turned.supports, d.length-x)
		}
		for _, loads := range d.cases {
			var back []beam.Load
			for _, l := range loads {
				if l.Concentrated() {
					back = append(back, beam.Point(d.length-l.From, l.Start))
				} else {
					back = append(back, beam.Linear(d.length-l.To, d.length-l.From, l.End, l.Start))
				}
			}
			turned.cases = append(turned.cases, back)
		}
		var a, b beam.Response
		d.plan(t).Run(d.factors, d.stiffness, &a)
		turned.plan(t).Run(d.factors, d.stiffness, &b)
		slices.Reverse(b.Bays)
		slices.Reverse(b.Reactions)
		size := d.scale()
		force, moment, sag := 1e-11*size, 1e-11*size*d.length, 1e-11*size*math.Pow(d.length, 3)/d.stiffness
		for i, one := range a.Bays {
			other := b.Bays[i]
			near(t, one.ShearMax, -other.ShearMin, force*d.length, "V", i)
			near(t, one.ShearLeft, -other.ShearRight, force*d.length, "V", i)
			near(t, one.MomentMax, other.MomentMax, moment, "M max", i)
			near(t, one.MomentMin, other.MomentMin, moment, "M min", i)
			near(t, one.DeflectionMax, other.DeflectionMax, sag, "y max", i)
			near(t, one.DeflectionMin, other.DeflectionMin, sag, "y min", i)
		}
		for i := range a.Reactions {
			near(t, a.Reactions[i], b.Reactions[i], force*d.length, "R", i)
		}
		near(t, a.LeftTip, b.RightTip, sag, "tip")
	})
}

// One case of all loads is the sum of one case for each; turning every load around
// exchanges largest and least.
func TestSuperposition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTrial(t, true)
		one := d
		one.cases, one.factors = [][]beam.Load{nil}, []float64{-1}
		for k, loads := range d.cases {
			for _, l := range loads {
				l.Start, l.End = -l.Start*d.factors[k], -l.End*d.factors[k]
				one.cases[0] = append(one.cases[0], l)
			}
		}
		var a, b, c beam.Response
		d.plan(t).Run(d.factors, d.stiffness, &a)
		one.plan(t).Run(one.factors, d.stiffness, &b)
		one.plan(t).Run([]float64{1}, d.stiffness, &c)
		size := d.scale()
		moment, sag := 1e-11*size*(1+d.length), 1e-11*size*math.Pow(d.length, 3)/d.stiffness
		for i, x := range a.Bays {
			y, z := b.Bays[i], c.Bays[i]
			near(t, x.ShearMax, y.ShearMax, moment, "V", i)
			near(t, x.MomentMin, y.MomentMin, moment, "M", i)
			near(t, x.DeflectionMax, y.DeflectionMax, sag, "y", i)
			near(t, y.ShearMax, -z.ShearMin, moment, "V turned", i)
			near(t, y.MomentMax, -z.MomentMin, moment, "M turned", i)
			near(t, y.DeflectionMax, -z.DeflectionMin, sag, "y turned", i)
		}
		for i := range a.Reactions {
			near(t, a.Reactions[i], b.Reactions[i], moment, "R", i)
		}
	})
}

// Spans twice as long under the same line load: forces 2, moments 4, deflections 16
// times as large; under the same point loads 1, 2 and 8.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawTrial(t, true)
		points := rapid.Bool().Draw(t, "points")
		big := d
		big.length *= 2
		big.supports, big.cases = nil, nil
		for _, x := range d.supports {
			big.supports = append(big.supports, 2*x)
		}
		for k, loads := range d.cases {
			kept, long := []beam.Load{}, []beam.Load{}
			for _, l := range loads {
				if l.Concentrated() == points {
					kept = append(kept, l)
					l.From, l.To = 2*l.From, 2*l.To
					long = append(long, l)
				}
			}
			d.cases[k] = kept
			big.cases = append(big.cases, long)
		}
		force := 2.0
		if points {
			force = 1
		}
		var a, b beam.Response
		d.plan(t).Run(d.factors, d.stiffness, &a)
		big.plan(t).Run(d.factors, d.stiffness, &b)
		size := 1e-11 * d.scale()
		moment, sag := size*big.length, size*math.Pow(big.length, 3)/d.stiffness
		for i := range a.Bays {
			x, y := a.Bays[i], b.Bays[i]
			near(t, force*x.ShearMax, y.ShearMax, size, "V", i)
			near(t, 2*force*x.MomentMax, y.MomentMax, moment, "M", i)
			near(t, 8*force*x.DeflectionMax, y.DeflectionMax, sag, "y", i)
		}
	})
}
