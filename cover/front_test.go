package cover_test

import (
	"context"
	"errors"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/cover"
)

// smallSpace is a space that can be tried combination by combination: rafters never land on
// every post at both of its spacings.
func smallSpace() cover.Space {
	fir, spf := cover.Wood{Species: "Douglas Fir-Larch", Grade: "No.2"}, cover.Wood{Species: "Spruce-Pine-Fir", Grade: "No.2"}
	better := cover.Wood{Species: "Douglas Fir-Larch", Grade: "No.1"}
	return cover.Space{
		RafterWoods: []cover.Wood{fir, spf}, RafterSizes: []string{"2x6", "2x8", "2x10"}, Spacings: []float64{19.2, 32},
		BeamWoods: []cover.Wood{fir, better}, BeamSizes: []string{"4x8", "4x10", "4x12", "6x12"}, PostCounts: []int{3, 4},
		PostSizes: []string{"4x4", "6x6"},
	}
}

// footed is a demonstration with its posts on footings, as large as they must be.
func footed(t testing.TB, name string) cover.Input {
	in := demo(t, name)
	in.Foundation = cover.Foundation{Kind: new("footing")}
	return in
}

// The search equals the trial of every combination by itself on the demonstrations, with
// and without limits.
func TestFrontIsThatOfEveryTrial(t *testing.T) {
	most := 0
	for _, name := range demos {
		for _, l := range []cover.Limits{{}, {Depth: 20, ClearFrom: 9, ClearTo: 11}} {
			in := footed(t, name)
			if in.Posts.Count == nil {
				continue
			}
			got, err := cover.Undominated(t.Context(), in, smallSpace(), l, nil)
			if errors.As(err, new(*calc.InputError)) {
				continue
			}
			require.NoError(t, err, name)
			assert.ElementsMatch(t, cover.FrontByTrial(in, smallSpace(), l), got.Points, "%s %+v", name, l)
			most = max(most, len(got.Points))
		}
	}
	assert.Greater(t, most, 3, "some fronts are long enough to tell")
}

// It does so for covers of any kind.
func TestFrontOfRandomCoversIsThatOfEveryTrial(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := randomCover(t)
		in.Posts = cover.Posts{Species: in.Posts.Species, Grade: in.Posts.Grade, Count: new(3), EndInset: new(0.5)}
		in.Site.Method = nil
		in.Lateral = cover.Lateral{Along: new("house_diaphragm"), Out: new("house_diaphragm")}
		if *in.Cover.Attachment == "freestanding" {
			in.Lateral = cover.Lateral{Along: new("none"), Out: new("none")}
		}
		if rapid.Bool().Draw(t, "footings") {
			in.Foundation = cover.Foundation{Kind: new("footing")}
		}
		pick := func(n int, name string) int { return rapid.IntRange(0, n-1).Draw(t, name) }
		s := smallSpace()
		i, k := pick(3, "rafter"), pick(3, "beam")
		s.RafterSizes, s.BeamSizes = s.RafterSizes[:i+1], s.BeamSizes[k:k+2]
		s.Spacings = s.Spacings[pick(2, "spacing"):]
		s.PostCounts = []int{2 + pick(4, "posts")}
		s.BeamWoods = s.BeamWoods[pick(2, "woods"):]
		got, err := cover.Undominated(context.Background(), in, s, cover.Limits{}, nil)
		if errors.As(err, new(*calc.InputError)) {
			t.Skip("a cover that the search refuses")
		}
		require.NoError(t, err)
		assert.ElementsMatch(t, cover.FrontByTrial(in, s, cover.Limits{}), got.Points)
	})
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

// What the search lists passes when it is sized by itself, member by member.
func TestFrontPointsHoldInTheReport(t *testing.T) {
	in := footed(t, "desert")
	f, err := cover.Undominated(t.Context(), in, smallSpace(), cover.Limits{}, nil)
	require.NoError(t, err)
	for i := range f.Points {
		r, err := cover.Size(f.Points[i].Apply(in))
		require.NoError(t, err)
		for _, m := range r.Members {
			assert.LessOrEqual(t, float64(m.Ratio), 1.0, "%+v: %s %s", f.Points[i], m.Mark, m.Governs)
		}
	}
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

// Every fault of a space is named.
func TestFrontRefuses(t *testing.T) {
	in := footed(t, "desert")
	in.Posts.Count, in.Posts.Positions = nil, []float64{0, 10, 20}
	s := smallSpace()
	s.BeamWoods = []cover.Wood{{Species: "Balsa", Grade: "No.2"}}
	_, err := cover.Undominated(t.Context(), in, s, cover.Limits{Depth: -1}, nil)
	var wrong *calc.InputError
	require.ErrorAs(t, err, &wrong)
	assert.Len(t, wrong.Faults, 3, "%v", wrong.Faults)
}
