package cover_test

import (
	"context"
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/cover"
)

// asked reads a search that has no fault.
func asked(t testing.TB, in cover.Input, typed map[string]string) cover.Search {
	t.Helper()
	s, _, err := cover.NewSearch(in, typed)
	require.NoError(t, err)
	return s
}

// small is a search of few combinations, some of which hold.
func small(t testing.TB) (cover.Input, cover.Search) {
	t.Helper()
	in := demo(t, "drift")
	return in, asked(t, in, map[string]string{
		"space.rafter_sizes": "2x8, 2x10", "space.beam_sizes": "4x10, 4x12, 6x12",
		"space.post_counts": "3, 4", "space.post_sizes": "4x6, 6x6",
		"space.rafter_spacings_in": "12, 16",
	})
}

// What is left empty is the usual space, without a limit.
func TestSearchOfNothingTyped(t *testing.T) {
	for _, name := range demos {
		in := demo(t, name)
		s := asked(t, in, map[string]string{"space.beam_sizes": " ", "limits.depth_in": ""})
		assert.Equal(t, cover.Search{Space: cover.UsualSpace(in)}, s, name)
	}
}

// A search is written as it is read: of every wood of the tables, also of those with a comma
// in the name of their grade.
func TestSearchRoundTrip(t *testing.T) {
	in := demo(t, "drift")
	var woods []cover.Wood
	for _, species := range append(lumber.Species(), lumber.LaminatedSpecies()...) {
		for _, grade := range lumber.Grades(species) {
			woods = append(woods, cover.Wood{Species: species, Grade: grade})
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		some := func(name string) []cover.Wood {
			return rapid.SliceOfNDistinct(rapid.SampledFrom(woods), 1, 5, rapid.ID[cover.Wood]).Draw(t, name)
		}
		s := cover.Search{Space: cover.UsualSpace(in)}
		s.Space.RafterWoods, s.Space.BeamWoods = some("rafters"), some("beams")
		s.Space.Spacings = rapid.SliceOfNDistinct(rapid.Float64Range(6, 48), 1, 5, rapid.ID[float64]).Draw(t, "spacings")
		for i, x := range s.Space.Spacings {
			s.Space.Spacings[i] = float64(int(x*16)) / 16
		}
		s.Space.Spacings = slices.Compact(slices.Sorted(slices.Values(s.Space.Spacings)))
		s.Limits.Depth = rapid.SampledFrom([]float64{0, 9.25, 20}).Draw(t, "depth")
		s.Limits.Rating = rapid.SampledFrom([]float64{0, 350}).Draw(t, "rating")
		s.Space.Footings = rapid.SliceOfNDistinct(rapid.SampledFrom([]cover.StandingWay{
			{Kind: "slab"}, {Kind: "footing"}, {Kind: "footing", Width: 24}, {Kind: "pier", Width: 18.5},
		}), 0, 3, rapid.ID[cover.StandingWay]).Draw(t, "footings")
		s.Space.Ties = rapid.SliceOfNDistinct(rapid.SampledFrom([]cover.TieWay{
			{Kind: "rated"}, {Kind: "straps"}, {Kind: "straps", Gauge: "16"},
		}), 0, 3, rapid.ID[cover.TieWay]).Draw(t, "ties")
		s.Space.Ledgers = rapid.SliceOfNDistinct(rapid.SampledFrom([]cover.LedgerWay{
			{Lag: "1/2", Each: 1}, {Lag: "1/2", Each: 2}, {Lag: "5/8", Each: 4},
		}), 0, 3, rapid.ID[cover.LedgerWay]).Draw(t, "ledgers")
		s.Space.Compare = rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"cost", "beam_sag_in", "posts", "tie_rating_lb", "depth_in"}),
			0, 5, rapid.ID[string]).Draw(t, "compare")
		s.Limits.Species = rapid.SliceOfNDistinct(rapid.SampledFrom(append(lumber.Species(), lumber.LaminatedSpecies()...)),
			0, 3, rapid.ID[string]).Draw(t, "species")
		s.Limits.Posts = rapid.SampledFrom([]int{0, 4}).Draw(t, "posts")
		s.Limits.SlabOnly = rapid.Bool().Draw(t, "slab only")
		s.Limits.ClearTo = rapid.SampledFrom([]float64{0, 12.5}).Draw(t, "clear")
		again, _, err := cover.NewSearch(in, s.Words())
		require.NoError(t, err)
		require.Equal(t, s.Words(), again.Words())
		for _, list := range []any{&s.Space.Footings, &s.Space.Ties, &s.Space.Ledgers, &s.Space.Compare, &s.Limits.Species} {
			dropEmpty(list)
		}
		require.Equal(t, s, again)
	})
}

// dropEmpty makes an empty list one that was never made, as it is read.
func dropEmpty(list any) {
	if v := reflect.ValueOf(list).Elem(); v.Len() == 0 {
		v.SetZero()
	}
}

// Lengths are read as they are on a tape, and it is told how.
func TestSearchReadsLengths(t *testing.T) {
	s, heard, err := cover.NewSearch(demo(t, "desert"), map[string]string{
		"space.rafter_spacings_in": `1' 4", 24, 610 mm; 24`, "space.beam_sizes": "4 X 10\n2-2x10",
		"limits.depth_in": "1-2", "limits.clear_from_ft": "3' 6", "limits.clear_to_ft": "4 m",
	})
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{16, 24, 610 / 25.4}, s.Space.Spacings, 1e-8, "an inch is 25.4 mm; what is typed twice counts once")
	assert.Equal(t, []string{"4x10", "2-2x10"}, s.Space.BeamSizes)
	assert.Equal(t, 14.0, s.Limits.Depth)
	assert.Equal(t, 3.5, s.Limits.ClearFrom)
	assert.Equal(t, map[string]string{
		"limits.depth_in": `1'-2"`, "limits.clear_from_ft": `3'-6"`, "limits.clear_to_ft": `13'-1 1/2"`,
	}, heard)
}

// Every fault is listed at once, under the name of its entry, with what was typed.
func TestSearchListsEveryFault(t *testing.T) {
	cases := []struct {
		name  string
		typed map[string]string
		want  []string // path and what was given
	}{
		{"everything", map[string]string{
			"space.rafter_woods": "Oak No.2, Hem-Fir No.2, Hem-Fir No.9", "space.rafter_sizes": "2x7",
			"space.rafter_spacings_in": "two, 5, NaN",
			"space.beam_woods":         "No.2", "space.beam_sizes": "4x", "space.post_counts": "1, 3.5, 21", "space.post_sizes": "<b>",
			"limits.depth_in": "-1", "limits.tie_rating_lb": "lots", "limits.clear_from_ft": "101", "space.roof": "flat",
			"space.footings": "mud, slab 24, pier 97, footing",
			"space.ties":     "glue, rated 18, straps 17", "space.ledgers": "1/2, 5 of 1/2, 1 of 9", "space.compare": "beam sag, looks",
			"limits.posts": "-1", "limits.slab_only": "perhaps",
			"limits.species_on_hand": "Oak, Hem-Fir",
		}, []string{
			`space.rafter_woods "Oak No.2"`, `space.rafter_woods "Hem-Fir No.9"`, `space.rafter_sizes "2x7"`,
			`space.rafter_spacings_in "two"`,
			`space.rafter_spacings_in "5"`, `space.rafter_spacings_in "NaN"`, `space.beam_woods "No.2"`, `space.beam_sizes "4x"`,
			`space.post_counts "1"`, `space.post_counts "3.5"`, `space.post_counts "21"`, `space.post_sizes "<b>"`,
			`space.footings "mud"`, `space.footings "slab 24"`, `space.footings "pier 97"`,
			`space.ties "glue"`, `space.ties "rated 18"`, `space.ties "straps 17"`,
			`space.ledgers "1/2"`, `space.ledgers "5 of 1/2"`, `space.ledgers "1 of 9"`, `space.compare "looks"`,
			`limits.posts "-1"`, `limits.depth_in "-1"`, `limits.tie_rating_lb "lots"`, `limits.clear_from_ft "101"`,
			`limits.slab_only "perhaps"`, `limits.species_on_hand "Oak"`, "space.roof an unknown entry",
		}},
		{"no end", map[string]string{"limits.clear_from_ft": "3"}, []string{"limits.clear_to_ft nothing"}},
		{"wrong way round", map[string]string{"limits.clear_from_ft": "9", "limits.clear_to_ft": "8"}, []string{"limits.clear_to_ft 8 ft"}},
		{"beyond the cover", map[string]string{"limits.clear_to_ft": "21"}, []string{"limits.clear_to_ft 21 ft"}},
		{"infinite", map[string]string{"limits.tie_rating_lb": "Inf"}, []string{`limits.tie_rating_lb "Inf"`}},
	}
	for _, c := range cases {
		_, _, err := cover.NewSearch(demo(t, "desert"), c.typed)
		var wrong *calc.InputError
		require.ErrorAs(t, err, &wrong, c.name)
		var got []string
		for _, f := range wrong.Faults {
			got = append(got, f.Path+" "+f.Given)
			assert.NotEmpty(t, f.Allowed, "%s: %s", c.name, f.Path)
		}
		assert.Equal(t, c.want, got, c.name)
	}
}

// The cover as drawn stands among the options as the search sees it: here it is one of them.
func TestFoundPlacesTheCoverAsDrawn(t *testing.T) {
	in, s := small(t)
	f, err := s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	require.NotEmpty(t, f.Points)
	r, err := cover.Size(in)
	require.NoError(t, err)
	assert.Equal(t, r.Verdict, f.Drawn.Verdict)
	require.NotNil(t, f.Drawn.Point, f.Drawn.Reason)
	d := f.Drawn.Point
	for _, m := range r.Members {
		switch m.Name {
		case "rafter":
			assert.Equal(t, m.Size, d.Rafter)
		case "beam":
			assert.Equal(t, m.Size, d.Beam)
		case "post":
			assert.Equal(t, m.Size, d.Post)
		}
	}
	assert.Contains(t, f.Drawn.Reason, "one of the options")
	same := slices.ContainsFunc(f.Points, func(p cover.FrontPoint) bool {
		return p.Cost == d.Cost && p.Sag == d.Sag && p.Posts == d.Posts && p.Rating == d.Rating && p.Depth == d.Depth
	})
	assert.True(t, same)
}

// A cover of which a part is over has no place, and it is said what is over.
func TestTrapCoverThatIsOverHasNoPlace(t *testing.T) {
	in := demo(t, "desert") // posts on a slab that may carry 750 lb each
	s := asked(t, in, map[string]string{"space.rafter_spacings_in": "24", "space.rafter_sizes": "2x6", "space.beam_sizes": "4x6"})
	f, err := s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	assert.Nil(t, f.Drawn.Point)
	assert.Equal(t, cover.Over, f.Drawn.Verdict)
	require.NotEmpty(t, f.Drawn.Over)
	for _, x := range f.Drawn.Over {
		assert.Equal(t, cover.Over, x.Verdict)
	}
}

// A cover that an option beats is said to be beaten.
func TestFoundCountsWhatBeatsTheCoverAsDrawn(t *testing.T) {
	in, s := small(t)
	deep := "6x12"
	in.Beams.Size = &deep
	few := s
	few.Space.BeamSizes = []string{"4x12"}
	f, err := few.Run(t.Context(), in, nil)
	require.NoError(t, err)
	require.NotNil(t, f.Drawn.Point, f.Drawn.Reason)
	n := 0
	for _, p := range f.Points {
		d := f.Drawn.Point
		if p.Cost <= d.Cost && p.Sag <= d.Sag && p.Posts <= d.Posts && p.Rating <= d.Rating && p.Depth <= d.Depth {
			n++
		}
	}
	if n == 0 {
		assert.Contains(t, f.Drawn.Reason, "no option is better")
	} else {
		assert.Contains(t, f.Drawn.Reason, "better in one thing or more")
	}
}

// The best in something have the least of it, and each point is listed once.
func TestFoundBest(t *testing.T) {
	in, s := small(t)
	f, err := s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	seen, named := map[int]bool{}, 0
	for _, b := range f.Best {
		assert.False(t, seen[b.Point])
		seen[b.Point] = true
		named += len(b.Least)
		for _, what := range b.Least {
			of := map[string]func(p cover.FrontPoint) float64{
				"cost": func(p cover.FrontPoint) float64 { return p.Cost }, "beam sag": func(p cover.FrontPoint) float64 { return p.Sag },
				"posts":      func(p cover.FrontPoint) float64 { return float64(p.Posts) },
				"tie rating": func(p cover.FrontPoint) float64 { return p.Rating },
				"depth":      func(p cover.FrontPoint) float64 { return p.Depth },
			}[what]
			for _, p := range f.Points {
				assert.LessOrEqual(t, of(f.Points[b.Point]), of(p), what)
			}
		}
	}
	assert.Equal(t, 5, named)
}

// Groups part the points: on the stairs the sag falls as the cost rises; each of the others is
// no better in either than a stair, so that it is better in tie or depth.
func TestByPostsPartsThePoints(t *testing.T) {
	in, s := small(t)
	f, err := s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	n := 0
	for i, g := range f.ByPosts() {
		if i > 0 {
			assert.Greater(t, g.Posts, f.ByPosts()[i-1].Posts)
		}
		n += len(g.Stairs) + len(g.Rest)
		for k := 1; k < len(g.Stairs); k++ {
			assert.Less(t, g.Stairs[k].Sag, g.Stairs[k-1].Sag)
			assert.Greater(t, g.Stairs[k].Cost, g.Stairs[k-1].Cost)
		}
		for _, p := range g.Rest {
			assert.True(t, slices.ContainsFunc(g.Stairs, func(q cover.FrontPoint) bool {
				return q.Cost <= p.Cost && q.Sag <= p.Sag && (p.Rating < q.Rating || p.Depth < q.Depth)
			}))
		}
	}
	assert.Equal(t, len(f.Points), n)
}

// The ways that are usual for a job are read without a fault, and found with.
func TestUsualWays(t *testing.T) {
	for _, name := range demos {
		in := demo(t, name)
		s := asked(t, in, cover.UsualWays(in))
		assert.NotEmpty(t, s.Space.Ties, name)
		assert.Equal(t, *in.Cover.Attachment == "ledger", len(s.Space.Ledgers) > 0, name)
	}
	in := demo(t, "desert")
	typed := cover.UsualWays(in)
	typed["space.rafter_sizes"], typed["space.rafter_spacings_in"], typed["space.beam_sizes"] = "2x6", "24", "4x6"
	f, err := asked(t, in, typed).Run(t.Context(), in, nil)
	require.NoError(t, err)
	require.NotEmpty(t, f.Points, "on footings the posts stand")
	for _, p := range f.Points {
		r, err := cover.Size(p.Apply(in))
		require.NoError(t, err)
		assert.Equal(t, r.Verdict, p.Verdict)
		assert.NotEqual(t, cover.Over, r.Verdict)
		require.NotNil(t, p.Footing)
		assert.Equal(t, p.Footing.Kind, *r.Input.Foundation.Kind)
	}
}

// Only what counts is best in something.
func TestFoundBestOfWhatCounts(t *testing.T) {
	in, s := small(t)
	s.Space.Compare = []string{"cost", "depth_in"}
	f, err := s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	assert.Equal(t, []string{"cost", "depth"}, f.Counted())
	for _, b := range f.Best {
		for _, what := range b.Least {
			assert.Contains(t, f.Counted(), what)
		}
	}
}

// What no cover can be built of is said, and not dropped in silence.
func TestTrapPassedOverInSilence(t *testing.T) {
	in := demo(t, "drift")
	s := asked(t, in, map[string]string{
		"space.rafter_sizes": "2x8, 5.125x12", "space.rafter_spacings_in": "16",
		"space.beam_sizes": "4x10", "space.beam_woods": "Hem-Fir No.2, Glulam DF/DF 24F-V4", "space.post_sizes": "6x6",
		"space.post_counts": "3",
	})
	f, err := s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	assert.Equal(t, []string{
		"rafter 5.125x12: no published values in the woods of the list",
		"beam of Glulam DF/DF 24F-V4: no published values in the sizes of the list",
	}, f.Passed)
	for _, name := range demos {
		in := demo(t, name)
		s := asked(t, in, map[string]string{"space.rafter_spacings_in": "16", "space.rafter_sizes": "2x8", "space.beam_sizes": "4x10"})
		f, err := s.Run(t.Context(), in, nil)
		if errors.As(err, new(*calc.InputError)) {
			continue // wood that was measured, or a glued beam in sizes of sawn lumber
		}
		require.NoError(t, err, name)
		for _, words := range f.Passed {
			assert.Contains(t, words, "no published values", name)
		}
	}
}

// What the first option leaves open is what its own report leaves open. Where there is no
// option the limit that is passed is named.
func TestFoundTellsWhatIsOpen(t *testing.T) {
	in, s := small(t)
	f, err := s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	require.NotEmpty(t, f.Points)
	r, err := cover.Size(f.Points[0].Apply(in))
	require.NoError(t, err)
	open := 0
	for _, x := range r.Summary {
		if x.Verdict != cover.OK {
			assert.Contains(t, f.Open, x)
			open++
		}
	}
	assert.Len(t, f.Open, open)
	assert.Empty(t, f.WhyNone())
	s.Limits.Posts = 1
	f, err = s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	assert.Contains(t, strings.Join(f.WhyNone(), "\n"), "more than the limit of 1")
	assert.Empty(t, f.Open)
}

// A search ends when nobody waits for it.
func TestSearchStopsWithItsContext(t *testing.T) {
	in, s := small(t)
	ctx, stop := context.WithCancel(t.Context())
	stop()
	_, err := s.Run(ctx, in, nil)
	assert.True(t, errors.Is(err, context.Canceled), "%v", err)
}

// The names on the command line are all different.
func TestFlagsOfTheEntriesDiffer(t *testing.T) {
	seen := map[string]bool{"json": true, "csv": true}
	for _, e := range cover.SpaceEntries() {
		assert.False(t, seen[e.Flag()], e.Flag())
		seen[e.Flag()] = true
		assert.NotContains(t, e.Flag(), "_")
		assert.True(t, cover.SearchEntry(e.Name))
	}
}
