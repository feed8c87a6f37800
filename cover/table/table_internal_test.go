package table

import (
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam"
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
)

// kept holds results, so that nothing is left out as unused.
var kept float64

// flat are the conditions of a printed span table: one load, live load alone for
// deflection, no worker, no weight of its own, bearing not looked at.
func flat(p *piece, live, dead, spacing, divisor float64, d lumber.Duration) line {
	p.most, p.least = 0, 0
	return line{
		piece: p, width: spacing, cosine: 1, held: true, seat: 1e6, limits: Limits{Live: divisor, Total: 1e-9},
		plan: live * calc.PSF, shares: []share{{duration: d, upright: (live + dead) * calc.PSF}},
	}
}

// The closed form gives the spans that codes print, to the inch (printed to the nearest),
// and the checks of package member agree that it is full there. Rows that a code still
// prints from older values of Fb are left to package member.
func TestSpansOfPrintedTables(t *testing.T) {
	n := 0
	for _, r := range calctest.Published(t, "wood.csv") {
		if r.Text("quantity") != "span" || r.Has("known miss") || r.Has("Fb psi") || r.Has("limit in") {
			continue
		}
		wet, incised := r.Text("wet") == "yes", r.Text("incised") == "yes"
		joined := true
		c := Criteria{Service: Service{Wet: &wet, Incised: &incised, Green: &wet, Joined: &joined, Heat: "to_100F"}}
		p := newPiece(&c, cover.Wood{Species: r.Text("species"), Grade: r.Text("grade")}, r.Text("size"), true)
		var d lumber.Duration
		for _, x := range lumber.Durations() {
			if x.String() == r.Text("duration") {
				d = x
			}
		}
		l := flat(&p, r.Num("live psf"), r.Num("dead psf"), r.Num("spacing in"), r.Num("divisor"), d)
		span := l.closed()
		calctest.Near(t, r.Num("want"), span, r.Num("within"), r.Text("source"), r.Text("note"))
		calctest.Close(t, 1, l.grade(span).ratio, 1e-9, 0, r.Text("source"))
		n++
	}
	require.Greater(t, n, 10, "there are rows to compare with")
}

// sample is the criteria of the tests.
func sample(t testing.TB) Criteria {
	t.Helper()
	f, err := os.Open("invented.json")
	require.NoError(t, err)
	defer func() { require.NoError(t, f.Close()) }()
	c, err := Read(f)
	require.NoError(t, err)
	return c
}

// rafterLines are the rafters of a table with their number.
func rafterLines(t testing.TB) (*Table, []line) {
	t.Helper()
	tab, err := New(sample(t))
	require.NoError(t, err)
	var out []line
	for i := range tab.columns {
		for w := range tab.rafters {
			for s := range tab.rafters[w] {
				for _, sp := range tab.criteria.Rafters.Spacings {
					p := &tab.rafters[w][s]
					if sp > tab.shared {
						p = &tab.alone[w][s]
					}
					out = append(out, tab.rafter(&tab.columns[i], p, sp))
				}
			}
		}
	}
	return tab, out
}

// In gravity the closed form is full to the last digit, with every check of package member;
// where uplift governs it is too long, and the whole inches found from it are not.
func TestClosedFormAgainstChecks(t *testing.T) {
	_, lines := rafterLines(t)
	full, uplift := 0, 0
	for i := range lines {
		l := &lines[i]
		span := l.closed()
		f := l.grade(span)
		assert.GreaterOrEqual(t, f.ratio, 1-1e-9, "the closed form is an upper bound")
		if !strings.Contains(f.check, "uplift") {
			calctest.Close(t, 1, f.ratio, 1e-9, 0, f.check)
			full++
			continue
		}
		uplift++
	}
	assert.Positive(t, full)
	assert.Positive(t, uplift, "the sample has both kinds")
}

// The longest span passes, and an inch more does not.
func TestLongestIsLongest(t *testing.T) {
	tab, lines := rafterLines(t)
	most := tab.criteria.Service.Longest * calc.Ft
	for i := range lines {
		l := &lines[i]
		n, at, stops := l.longest(most)
		require.Positive(t, n)
		assert.LessOrEqual(t, at.ratio, 1.0)
		assert.Equal(t, math.Trunc(n), n, "whole inches")
		if n < most-1 {
			assert.Greater(t, l.grade((n+1)/l.cosine).ratio, 1.0)
			assert.NotEqual(t, "longest stock", stops)
		}
		bisected := l.bisect(t, most)
		calctest.Near(t, n, bisected, 1e-9, "on the solver, without the closed form")
	}
}

// bisect finds the longest span in whole inches on the solver of package beam, from no
// span to the longest, as a second way that knows no closed form.
func (l *line) bisect(t testing.TB, most float64) float64 {
	low, high := 0.0, math.Floor(most)+1
	for high-low > 1 {
		n := math.Floor((low + high) / 2)
		if l.solve(t, n/l.cosine) <= 1 {
			low = n
		} else {
			high = n
		}
	}
	return low
}

// solve grades the member on a span, in, with forces of the solver.
func (l *line) solve(t testing.TB, span float64) float64 {
	on, err := beam.NewLine(span, []float64{0, span})
	require.NoError(t, err)
	plan, err := beam.NewPlan(on, [][]beam.Load{{beam.Uniform(0, span, 1)}, {beam.Point(span/2, 1)}})
	require.NoError(t, err)
	a := &l.piece.values
	seat := member.Seat{Width: a.Section.Breadth, Length: l.seat}
	most := 0.0
	var r beam.Response
	for i := range l.shares {
		s := &l.shares[i]
		w := l.load(s)
		plan.Forces([]float64{w, 0}, &r)
		at := r.Bays[1]
		bracing := member.Bracing{Held: l.held, Unbraced: span}
		if w < 0 {
			bracing = member.Bracing{Unbraced: min(span, l.brace)}
		}
		most = max(most, member.NewBending(max(at.MomentMax, -at.MomentMin), a, s.duration, bracing).Ratio(),
			member.NewShear(max(at.ShearMax, -at.ShearMin), a, s.duration).Ratio(),
			member.NewBearing(r.Reactions[0], a, seat).Ratio())
	}
	if load := l.worker * l.cosine; load > 0 {
		plan.Forces([]float64{l.lasting(), load}, &r)
		end := l.lasting()*span/2 + load
		bracing := member.Bracing{Held: l.held, Unbraced: span}
		most = max(most, member.NewBending(r.Bays[1].MomentMax, a, lumber.SevenDays, bracing).Ratio(),
			member.NewShear(end, a, lumber.SevenDays).Ratio(), member.NewBearing(end, a, seat).Ratio())
	}
	for _, sag := range []struct{ load, divisor float64 }{
		{l.moving(), l.limits.Live}, {l.piece.creep*l.lasting() + l.moving(), l.limits.Total},
	} {
		plan.Run([]float64{sag.load, 0}, l.piece.stiffness, &r)
		most = max(most, member.NewDeflection(r.Bays[1].DeflectionMax, member.Limit{Length: span, Divisor: sag.divisor}).Ratio())
	}
	return most
}

// BenchmarkSpanTable finds the same entries from the closed form and by halving on the
// solver.
func BenchmarkSpanTable(b *testing.B) {
	tab, lines := rafterLines(b)
	most := tab.criteria.Service.Longest * calc.Ft
	b.Run("closed", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			for i := range lines {
				kept += min(lines[i].closed(), most)
			}
		}
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(lines)), "ns/entry")
	})
	b.Run("bisect", func(b *testing.B) {
		for b.Loop() {
			for i := range lines {
				kept += lines[i].bisect(b, most)
			}
		}
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(lines)), "ns/entry")
	})
	b.Run("checked", func(b *testing.B) { // what the table does: closed, then the checks
		for b.Loop() {
			for i := range lines {
				n, _, _ := lines[i].longest(most)
				kept += n
			}
		}
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(lines)), "ns/entry")
	})
}

func TestCellsAllocateNothing(t *testing.T) {
	tab, err := New(sample(t))
	require.NoError(t, err)
	for _, p := range tab.parts {
		n := p.first + p.count/2
		assert.Zero(t, testing.AllocsPerRun(20, func() { kept += tab.Cell(n).Answer }), p.name)
	}
}
