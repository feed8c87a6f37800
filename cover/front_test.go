package cover_test

import (
	"context"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/cover"
)

var (
	fir    = cover.Wood{Species: "Douglas Fir-Larch", Grade: "No.2"}
	better = cover.Wood{Species: "Douglas Fir-Larch", Grade: "No.1"}
	spf    = cover.Wood{Species: "Spruce-Pine-Fir", Grade: "No.2"}
)

// smallSpace is a space that can be tried combination by combination.
func smallSpace() cover.Space {
	return cover.Space{
		RafterWoods: []cover.Wood{fir, spf}, RafterSizes: []string{"2x6", "2x8"}, Spacings: []float64{19.2, 32},
		BeamWoods: []cover.Wood{fir}, BeamSizes: []string{"4x10", "6x12"}, PostCounts: []int{3, 4}, PostSizes: []string{"4x4", "6x6"},
	}
}

// footed is a demonstration with its posts on footings, as large as they must be.
func footed(t testing.TB, name string) cover.Input {
	in := demo(t, name)
	in.Foundation = cover.Foundation{Kind: new("footing")}
	return in
}

// A frontCase is a cover with a space that can be tried.
type frontCase struct {
	name   string
	in     cover.Input
	space  func(s *cover.Space)
	limits cover.Limits
	least  int // points that the front has at least, so that the case tells
}

// frontCases are covers of every kind that the search treats in a way of its own.
func frontCases(t testing.TB) []frontCase {
	strength := footed(t, "desert")
	strength.Site.Method = new("LRFD")
	placed := footed(t, "desert")
	placed.Posts.Count, placed.Posts.EndInset, placed.Posts.Positions = nil, nil, []float64{0.5, 7, 13, 19.5}
	priced := footed(t, "desert")
	price := func(item, per string, dollars float64) {
		priced.Market.Prices = append(priced.Market.Prices, cover.Price{Item: &item, Per: &per, Dollars: &dollars})
	}
	for i, size := range []string{"2x6", "2x8", "4x10", "6x12", "4x4", "6x6"} {
		price(size+" Douglas Fir-Larch No.2", "board_foot", 1+0.15*float64(i))
		price(size+" Spruce-Pine-Fir No.2", "foot", 0.8+0.2*float64(i))
	}
	price("8d common nail", "each", 0.05)
	price("strap 18 gauge by 1-1/4 in", "each", 1.10)
	plied := footed(t, "desert")
	plied.Beams.Plies, plied.Beams.PlyFastening = new(3), new("bolted")
	partly := footed(t, "desert")
	partly.Market.Prices = []cover.Price{{Item: new("8d common nail"), Per: new("each"), Dollars: new(0.05)}}
	free := footed(t, "desert")
	free.Market.StockLengths, free.Beams.Splices = []float64{8, 14}, new("every_post")
	for _, size := range []string{"2x6", "2x8", "4x10", "6x12", "4x4", "6x6"} {
		free.Market.Prices = append(free.Market.Prices,
			cover.Price{Item: new(size + " Douglas Fir-Larch No.2"), Per: new("foot"), Dollars: new(0.0)})
	}
	one := func(s *cover.Space) { s.Spacings, s.PostCounts = s.Spacings[:1], s.PostCounts[:1] }
	return []frontCase{
		{"desert", footed(t, "desert"), func(*cover.Space) {}, cover.Limits{}, 8},
		{"desert with limits", footed(t, "desert"), func(*cover.Space) {}, cover.Limits{Depth: 16, Posts: 3, Rating: 400}, 1},
		{"desert with a view", footed(t, "desert"), func(*cover.Space) {}, cover.Limits{ClearFrom: 9, ClearTo: 11}, 1},
		{"desert, three measures", footed(t, "desert"), func(s *cover.Space) {
			s.Compare = []string{"cost", "posts", "beam_sag_in"}
		}, cover.Limits{}, 3},
		{"snow", footed(t, "snow"), func(s *cover.Space) { s.BeamSizes = append(s.BeamSizes, "6x16") }, cover.Limits{}, 0},
		{"coast", footed(t, "coast"), func(*cover.Space) {}, cover.Limits{}, 0},
		{"drift", footed(t, "drift"), func(s *cover.Space) { s.BeamSizes = append(s.BeamSizes, "6x16") }, cover.Limits{}, 0},
		{"by strength design", strength, one, cover.Limits{}, 1},
		{"posts at given places", placed, func(s *cover.Space) {
			s.PostCounts, s.PostWoods = nil, []cover.Wood{fir, spf}
		}, cover.Limits{}, 1},
		{"glued beams", footed(t, "glued"), func(s *cover.Space) {
			*s = cover.Space{BeamSizes: []string{"3-1/8x4-1/2", "3-1/2x6", "3-1/2x7-1/2", "5-1/8x6"}, Spacings: []float64{24, 16}}
		}, cover.Limits{}, 1},
		{"braced", demo(t, "garden"), func(s *cover.Space) { s.BeamSizes = []string{"4x8", "6x12"} }, cover.Limits{}, 1},
		{"plies", footed(t, "desert"), func(s *cover.Space) {
			one(s)
			s.BeamSizes = []string{"2-2x8", "3-2x10"}
			s.RafterWoods = []cover.Wood{fir}
		}, cover.Limits{}, 1},
		{"shared wood", footed(t, "desert"), func(s *cover.Space) {
			one(s)
			s.BeamWoods, s.BeamSizes, s.PostSizes = []cover.Wood{fir, better}, []string{"2x8", "4x6", "6x6"}, []string{"4x6", "6x6"}
		}, cover.Limits{}, 1},
		{"priced, with ways", priced, func(s *cover.Space) {
			one(s)
			s.Ties = []cover.TieWay{{Kind: "rated"}, {Kind: "straps"}}
			s.Ledgers = []cover.LedgerWay{{Lag: "1/2", Each: 2}, {Lag: "3/8", Each: 1}}
			s.Footings = []cover.StandingWay{{Kind: "footing", Width: 14}, {Kind: "pier"}, {Kind: "footing"}}
		}, cover.Limits{}, 1},
		{"on the slab", demo(t, "desert"), one, cover.Limits{SlabOnly: true}, 0},
		{"plies that the cheapest beam has not", plied, func(s *cover.Space) {
			s.BeamSizes = []string{"2-2x12", "3-2x12", "6x12"}
		}, cover.Limits{}, 1},
		{"ways with a price, wood without", partly, func(s *cover.Space) {
			s.Ties = []cover.TieWay{{Kind: "straps"}, {Kind: "rated"}}
		}, cover.Limits{}, 1},
		{"cost does not count", footed(t, "desert"), func(s *cover.Space) {
			s.PostSizes, s.RafterWoods, s.Compare = []string{"6x6", "4x4"}, []cover.Wood{better, fir}, []string{"posts", "tie_rating_lb"}
		}, cover.Limits{}, 1},
		{"wood that costs nothing, some of it too short", free, func(s *cover.Space) {
			s.RafterWoods, s.PostCounts = s.RafterWoods[:1], []int{2, 3}
		}, cover.Limits{}, 1},
	}
}

// The search equals the trial of every combination by itself.
func TestFrontIsThatOfEveryTrial(t *testing.T) {
	for _, c := range frontCases(t) {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			s := smallSpace()
			c.space(&s)
			got, err := cover.Undominated(t.Context(), c.in, s, c.limits, nil)
			require.NoError(t, err)
			assert.ElementsMatch(t, cover.FrontByTrial(c.in, s, c.limits), got.Points)
			assert.GreaterOrEqual(t, len(got.Points), c.least, "%v", got.Why)
		})
	}
}

// It does so for covers of any kind, most of which hold.
func TestFrontOfRandomCoversIsThatOfEveryTrial(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := mildCover(t)
		if rapid.IntRange(0, 3).Draw(t, "any") == 0 {
			in = randomCover(t)
		}
		pick := func(n int, name string) int { return rapid.IntRange(0, n-1).Draw(t, name) }
		s := smallSpace()
		s.RafterSizes = s.RafterSizes[pick(2, "rafter"):]
		s.Spacings = []float64{rapid.SampledFrom([]float64{16, 19.2, 32}).Draw(t, "spacing")}
		s.PostCounts = []int{2 + pick(4, "posts")}
		s.BeamWoods, s.BeamSizes = []cover.Wood{fir, better}, []string{"4x8", "4x10", "6x12"}
		if in.Posts.Count == nil {
			s.PostCounts = nil
		}
		got, err := cover.Undominated(context.Background(), in, s, cover.Limits{}, nil)
		require.NoError(t, err)
		assert.ElementsMatch(t, cover.FrontByTrial(in, s, cover.Limits{}), got.Points)
	})
}

// What the search takes for true of pairs of rafters and beam is so: bounds are bounds, and
// what holds is what holds under every arrangement. The woods differ in weight and strength.
func TestFrontBoundsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := randomCover(t)
		if rapid.Bool().Draw(t, "mild") {
			in = mildCover(t)
		}
		s := cover.Space{
			RafterWoods: []cover.Wood{fir, spf, {Species: "Western Cedars", Grade: "No.2"}},
			RafterSizes: []string{"2x4", "2x6", "2x12"},
			Spacings:    []float64{rapid.SampledFrom([]float64{12, 19.2, 32}).Draw(t, "spacing")},
			BeamWoods:   []cover.Wood{better, {Species: "Hem-Fir", Grade: "No.2"}},
			BeamSizes:   []string{"2-2x6", "4x6", "4x8", "4x12", "6x10"},
			PostSizes:   []string{"4x6"},
		}
		faults, err := cover.FrontFaults(in, s)
		require.NoError(t, err)
		assert.Empty(t, faults)
	})
}

// A beam may hold under the lightest rafters and not under the heaviest: on covers that widen
// by an inch some size always passes from one to the other.
func TestFrontBoundsHoldAsBeamsFail(t *testing.T) {
	in := footed(t, "desert")
	s := cover.Space{
		RafterWoods: []cover.Wood{{Species: "Western Cedars", Grade: "No.2"}, fir}, RafterSizes: []string{"2x6", "3x12"},
		Spacings:  []float64{16},
		BeamWoods: []cover.Wood{fir}, BeamSizes: []string{"4x6", "4x8", "4x10", "6x8"}, PostSizes: []string{"4x6"},
	}
	for inches := range 36 {
		in.Cover.Width = new(20 + float64(inches)/6)
		faults, err := cover.FrontFaults(in, s)
		require.NoError(t, err)
		assert.Empty(t, faults, "%g ft", *in.Cover.Width)
	}
}

// Trap: a plan that two goroutines share gives wrong forces without crashing. One worker and
// two give one answer, in one order.
func TestTrapSharedPlanFrontIsThatOfOneWorker(t *testing.T) {
	in := footed(t, "desert")
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	one, err := cover.Undominated(t.Context(), in, smallSpace(), cover.Limits{}, nil)
	require.NoError(t, err)
	runtime.GOMAXPROCS(2)
	two, err := cover.Undominated(t.Context(), in, smallSpace(), cover.Limits{}, nil)
	require.NoError(t, err)
	assert.NotEmpty(t, one.Points)
	assert.Equal(t, one, two)
}

// What the search lists is what its report says: nothing over, the same cost and depth.
func TestFrontPointsAreThoseOfTheirReports(t *testing.T) {
	in := footed(t, "desert")
	f, err := cover.Undominated(t.Context(), in, smallSpace(), cover.Limits{}, nil)
	require.NoError(t, err)
	for i := range f.Points {
		p := &f.Points[i]
		r, err := cover.Size(p.Apply(in))
		require.NoError(t, err)
		assert.Equal(t, r.Verdict, p.Verdict)
		assert.NotEqual(t, cover.Over, r.Verdict)
		assert.InDelta(t, r.TakeOff.BoardFeet, p.Cost, 1e-6)
		for _, m := range r.Members {
			assert.LessOrEqual(t, float64(m.Ratio), 1.0, "%+v: %s %s", p, m.Mark, m.Governs)
		}
	}
}

// Where nothing holds the search says why not.
func TestFrontSaysWhyNothingHolds(t *testing.T) {
	in := footed(t, "desert")
	in.Lateral = cover.Lateral{Along: new("none"), Out: new("none")}
	f, err := cover.Undominated(t.Context(), in, smallSpace(), cover.Limits{}, nil)
	require.NoError(t, err)
	assert.Empty(t, f.Points)
	assert.NotEmpty(t, f.Why)
	in = footed(t, "desert")
	in.Market.StockLengths = []float64{12, 16}
	f, err = cover.Undominated(t.Context(), in, smallSpace(), cover.Limits{Posts: 3}, nil)
	require.NoError(t, err)
	assert.Empty(t, f.Points)
	assert.Subset(t, f.Why, []string{
		"4 posts are more than the limit of 3", "with 3 posts a line the beams are longer than any stock length",
	})
}

// A search stops with its context, and tells how far it is.
func TestFrontStopsAndTells(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	_, err := cover.Undominated(ctx, footed(t, "desert"), smallSpace(), cover.Limits{}, nil)
	require.ErrorIs(t, err, context.Canceled)
	told := make(chan int, 4)
	_, err = cover.Undominated(t.Context(), footed(t, "desert"), smallSpace(), cover.Limits{}, func(done, all int) {
		assert.Equal(t, 4, all)
		told <- done
	})
	require.NoError(t, err)
	close(told)
	sum := 0
	for n := range told {
		sum += n
	}
	assert.Equal(t, 1+2+3+4, sum, "each layout once")
}

// Every fault of a space and of the limits is named, with what is allowed.
func TestFrontRefuses(t *testing.T) {
	in := footed(t, "desert")
	in.Posts.Count, in.Posts.Positions = nil, []float64{0, 10, 20}
	s := smallSpace()
	s.BeamWoods = []cover.Wood{{Species: "Balsa", Grade: "No.2"}}
	s.RafterSizes = append(s.RafterSizes, "two by four")
	s.Spacings = append(s.Spacings, -1)
	s.Ties = []cover.TieWay{{Kind: "wire"}, {Kind: "straps", Gauge: "9"}}
	s.Ledgers = []cover.LedgerWay{{Lag: "1", Each: 9}}
	s.Footings = []cover.StandingWay{{Kind: "stone", Width: 1}}
	s.Compare = []string{"beauty"}
	l := cover.Limits{Depth: -1, Posts: -1, ClearFrom: 3, ClearTo: 2, Species: []string{"Balsa"}, SlabOnly: true}
	_, err := cover.Undominated(t.Context(), in, s, l, nil)
	var wrong *calc.InputError
	require.ErrorAs(t, err, &wrong)
	var paths []string
	for _, f := range wrong.Faults {
		paths = append(paths, f.Path)
		assert.NotEmpty(t, f.Allowed, f.Path)
	}
	assert.Subset(t, paths, []string{
		"space.post_counts", "space.beam_woods[0]", "space.rafter_sizes[2]", "space.rafter_spacings_in[2]", "space.ties[0].kind",
		"space.ties[1].gauge", "space.ledgers[0].lag", "space.ledgers[0].each", "space.footings[0].kind", "space.footings[0].width_in",
		"space.compare[0]", "limits.depth_in", "limits.posts", "limits.clear_to_ft", "limits.species_on_hand[0]",
		"limits.species_on_hand", "limits.slab_only",
		"foundation.slab_thickness_in",
	})
}
