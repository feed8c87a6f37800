package cover

import (
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"
)

// The lists that the spaces of the benchmarks take the first entries of.
var (
	benchSpecies = []string{
		"Douglas Fir-Larch", "Hem-Fir", "Southern Pine", "Spruce-Pine-Fir", "Redwood", "Western Cedars",
		"Douglas Fir-Larch (North)", "Hem-Fir (North)",
	}
	benchGrades   = []string{"No.2", "No.1", "Select Structural", "No.3", "Stud"}
	benchRafters  = []string{"2x8", "2x6", "2x10", "2x12", "2x4", "3x8", "3x10", "3x12"}
	benchSpacings = []float64{24, 16, 19.2, 12, 32}
	benchBeams    = []string{
		"4x8", "4x10", "4x12", "6x8", "6x10", "6x12", "4x6", "4x14", "4x16", "6x14", "6x16", "8x8", "8x10", "8x12", "8x14", "8x16",
		"2-2x8", "2-2x10", "2-2x12", "3-2x12",
	}
	benchCounts   = []int{4, 3, 5, 6, 7, 8}
	benchPosts    = []string{"6x6", "4x4", "4x6", "6x8"}
	benchLedgers  = []LedgerWay{{"3/8", 2}, {"1/2", 2}, {"3/8", 1}, {"1/2", 1}}
	benchFootings = []StandingWay{
		{Kind: "footing"}, {Kind: "pier"}, {Kind: "footing", Width: 24}, {Kind: "footing", Width: 30}, {Kind: "slab"},
	}
	benchTies = []TieWay{{Kind: "rated"}, {Kind: "straps"}, {Kind: "straps", Gauge: "16"}, {Kind: "straps", Gauge: "14"}}
)

// spaceOf is a space with so many species, grades, rafter sizes, spacings, beam sizes, post
// counts, post sizes, ledgers, footings and ties. Species and grades are those of rafters
// and of beams, each for itself. Cost, sag and posts count.
func spaceOf(species, grades, rafters, spacings, beams, counts, posts, ledgers, footings, ties int) Space {
	var woods []Wood
	for _, s := range benchSpecies[:species] {
		for _, g := range benchGrades[:grades] {
			woods = append(woods, Wood{s, g})
		}
	}
	return Space{
		RafterWoods: woods, RafterSizes: benchRafters[:rafters], Spacings: benchSpacings[:spacings],
		BeamWoods: woods, BeamSizes: benchBeams[:beams], PostCounts: benchCounts[:counts], PostSizes: benchPosts[:posts],
		Ledgers: benchLedgers[:ledgers], Footings: benchFootings[:footings], Ties: benchTies[:ties],
		Compare: []string{"cost", "beam_sag_in", "posts"},
	}
}

// The spaces of the benchmarks.
func smallOfBench() Space  { return spaceOf(2, 2, 3, 2, 6, 2, 2, 2, 2, 2) }
func mediumOfBench() Space { return spaceOf(3, 3, 4, 3, 10, 3, 3, 2, 3, 2) }
func fullOfBench() Space   { return spaceOf(8, 5, 8, 5, 20, 6, 4, 4, 5, 4) }

// searchable is the desert cover on footings; its wall is still to be seen.
func searchable(tb testing.TB) Input {
	in := desert(tb)
	in.Foundation.Kind = new("footing")
	return in
}

// The spaces are as large as their names promise.
func TestSpacesOfBenchmarks(t *testing.T) {
	in := searchable(t)
	for want, s := range map[float64]Space{18432: smallOfBench(), 1_049_760: mediumOfBench(), 2_457_600_000: fullOfBench()} {
		require.NoError(t, s.validate(in, Limits{}))
		require.InDelta(t, want, s.options(in), 0)
	}
}

// BenchmarkFront searches a whole space.
func BenchmarkFront(b *testing.B) {
	in := searchable(b)
	for _, c := range []struct {
		name    string
		space   Space
		workers int
	}{
		{"small/1", smallOfBench(), 1}, {"medium/1", mediumOfBench(), 1}, {"full/1", fullOfBench(), 1}, {"full/2", fullOfBench(), 2},
	} {
		b.Run(c.name, func(b *testing.B) {
			defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(c.workers))
			var f Front
			for b.Loop() {
				var err error
				if f, err = Undominated(b.Context(), in, c.space, Limits{}, nil); err != nil {
					b.Fatal(err)
				}
			}
			require.NotEmpty(b, f.Points)
			b.ReportMetric(float64(len(f.Points)), "points")
			b.ReportMetric(float64(f.Whole), "judged")
		})
	}
}

// BenchmarkFrontBrute evaluates one option alone, from the input to its whole report.
func BenchmarkFrontBrute(b *testing.B) {
	in := searchable(b)
	b.Run("one", func(b *testing.B) {
		var all []FrontPoint
		visitSpace(in, smallOfBench(), Limits{}, func(q FrontPoint, _ string) { all = append(all, q) })
		n := 0
		for b.Loop() {
			q := all[n*7919%len(all)]
			n++
			if trialOf(in, &q, Limits{}, "board feet") {
				kept += q.Cost
			}
		}
	})
}

// A memory is what a trial of every option remembers of the options before: all layouts with
// what is known of their rafters and beams, and the parts of one set of members.
type memory struct {
	layouts []*layout
	held    bool
	design  design
	ties    []attempt
	ledgers []attempt
	places  []attempt
}

// option judges one way to tie, to fasten and to stand of one set of members; first says that
// the members are new.
func (m *memory) option(l *layout, q *FrontPoint, r, b, p int, first bool) bool {
	sticks := [3]*stick{l.rafters[r].stick, l.beams[b].stick, l.posts[p].stick}
	if first {
		clear(m.ties)
		clear(m.ledgers)
		clear(m.places)
		m.held = l.holdsUp(l.rafters[r].class, b) && l.carries(r, b) && l.fits(r)
		if m.held {
			if m.design, m.held = l.place(q, sticks); m.held {
				_, m.held = l.whole(q, &m.design)
			}
		}
	}
	if !m.held {
		return false
	}
	part := func(known []attempt, order int, of func(*design) (Report, bool)) bool {
		at := &known[q.order[order]]
		if *at == untried {
			one := FrontPoint{order: q.order}
			l.pick(&one, order)
			one.Tie.apply(&l.links.m.in.Connections)
			one.Ledger.apply(&l.links.m.in.Connections)
			one.Footing.apply(&l.links.m.in.Foundation)
			_, ok := of(&m.design)
			*at = came(ok)
		}
		return *at == holds
	}
	return part(m.ties, byTie, l.tied) && part(m.ledgers, byLedger, l.fastened) && part(m.places, byFooting, l.standing)
}

// BenchmarkFrontRemembered tries option after option with all analyses remembered: the time
// is that of one option. The members are drawn evenly from the whole space, each with all
// its ways to tie, to fasten and to stand.
func BenchmarkFrontRemembered(b *testing.B) {
	b.Run("medium", func(b *testing.B) {
		y := newYard(searchable(b), mediumOfBench(), Limits{})
		m := memory{ties: make([]attempt, 2), ledgers: make([]attempt, 2), places: make([]attempt, 3)}
		for spacing := range y.space.Spacings {
			for count := range y.space.PostCounts {
				l, _, err := y.open(spacing, count)
				require.NoError(b, err)
				m.layouts = append(m.layouts, l)
			}
		}
		ways := len(m.ties) * len(m.ledgers) * len(m.places)
		n, holding := 0, 0
		for b.Loop() {
			set, way := n/ways*7919, n%ways
			l := m.layouts[set%len(m.layouts)]
			set /= len(m.layouts)
			r, beam, p := set%len(l.rafters), set/len(l.rafters)%len(l.beams), set/len(l.rafters)/len(l.beams)%len(l.posts)
			var q FrontPoint
			l.name(&q, r, beam, p)
			q.order[byTie], q.order[byLedger], q.order[byFooting] = way%2, way/2%2, way/4
			if m.option(l, &q, r, beam, p, way == 0) {
				holding++
			}
			n++
		}
		b.ReportMetric(float64(holding)/float64(n), "holding")
	})
}

// The inner loop of the search, which weighs pairs of rafters and beam, allocates nothing.
func TestFrontInnerLoopAllocatesNothing(t *testing.T) {
	y := newYard(searchable(t), smallOfBench(), Limits{})
	l, _, err := y.open(0, 0)
	require.NoError(t, err)
	l.front = &stairs{counts: y.counts}
	pairs := l.pair(nil, 0)
	promising := 0
	require.Zero(t, testing.AllocsPerRun(3, func() {
		clear(l.always)
		clear(l.strong)
		for i := range l.sags {
			l.sags[i] = -1
		}
		for i := range pairs {
			if _, ok := l.promising(&pairs[i]); ok {
				promising++
			}
		}
	}))
	require.Positive(t, promising, "some are weighed to the end")
}
