package drawing_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/cover"
	"patiocover/web/drawing"
)

// anyFound draws the answer of a search, of which only the figures that are drawn matter.
func anyFound(t *rapid.T) cover.Found {
	beams := []string{"4x4", "4x12", "6x16", "4-2x12", "5.125x13.5"}
	point := rapid.Custom(func(t *rapid.T) cover.FrontPoint {
		return cover.FrontPoint{
			Cost: rapid.Float64Range(1, 1e5).Draw(t, "cost"), Sag: rapid.Float64Range(0, 3).Draw(t, "sag"),
			Posts: rapid.IntRange(2, 9).Draw(t, "posts"), Beam: rapid.SampledFrom(beams).Draw(t, "beam"),
		}
	})
	f := cover.Found{Front: cover.Front{Measure: cover.InBoardFeet, Points: rapid.SliceOfN(point, 1, 60).Draw(t, "points")}}
	slices.SortFunc(f.Points, func(a, b cover.FrontPoint) int {
		if a.Cost < b.Cost {
			return -1
		}
		return 1
	})
	if rapid.Bool().Draw(t, "placed") {
		f.Drawn.Point = new(point.Draw(t, "drawn"))
	}
	return f
}

// Whatever was found, no words leave the paper or cover other words, nothing is drawn off the
// paper, and each number of posts has its line in the key.
func TestFrontStairsOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := anyFound(t)
		s := drawing.FrontStairs(f)
		legible(t, s)
		for _, item := range s.Items {
			if p, ok := item.(drawing.Path); ok {
				for _, at := range p.Points {
					if !(at.X >= 0 && at.X <= s.Width && at.Y >= 0 && at.Y <= s.Height) {
						t.Fatalf("%v is off the paper", at)
					}
				}
			}
		}
		for _, g := range f.ByPosts() {
			if n := len(g.Stairs) + len(g.Rest); !s.Has(strconv.Itoa(g.Posts) + " posts, " + strconv.Itoa(n) + " options") {
				t.Fatalf("no key for %d posts", g.Posts)
			}
		}
	})
}

// A chart says what it shows: the measure, the unit of each axis, the ends of the stairs.
func TestFrontStairsSayWhatTheyShow(t *testing.T) {
	f := cover.Found{Front: cover.Front{Measure: cover.InDollars, Points: []cover.FrontPoint{
		{Cost: 110.2, Sag: 0.301, Posts: 3, Beam: "4x8"}, {Cost: 150, Sag: 0.1, Posts: 3, Beam: "4x12"},
		{Cost: 160, Sag: 0.2, Posts: 3, Beam: "6x8", Depth: 9}, {Cost: 170, Sag: 0.001, Posts: 4, Beam: "4x10"},
	}}}
	s := drawing.FrontStairs(f)
	for _, words := range []string{
		"COST, DOLLARS", "LONG-TERM SAG OF THE BEAMS, IN", "3 POSTS", "4 POSTS", "4x8", "4x12", "≤0.005", "0.01", "0.5",
	} {
		assert.True(t, s.Has(words), words)
	}
	assert.False(t, s.Has("6x8"), "it is not on the stairs")
	assert.Contains(t, s.Description,
		"3 posts: from 111 dollars at 0.31 in of sag with beams 4x8 to 150 dollars at 0.10 in of sag with beams 4x12.")
	assert.False(t, s.Has("as drawn"), "it has no place")
	f.Drawn.Point = &f.Points[2]
	assert.True(t, drawing.FrontStairs(f).Has("as drawn"))
	text := svg(t, s, "stairs")
	assert.NotContains(t, text, "style=", "the policy of the page forbids it")
	assert.Equal(t, svg(t, drawing.FrontStairs(f), "a"), svg(t, drawing.FrontStairs(f), "a"))
	for _, w := range texts(s) {
		assert.GreaterOrEqual(t, w.Size*370/s.Width, 9.0, "on a phone: %s", w.Words)
	}
}

// Without an option there is nothing to draw, and it is said.
func TestFrontStairsOfNothing(t *testing.T) {
	assert.Contains(t, drawing.FrontStairs(cover.Found{}).Description, "nothing to draw")
}

// Lines of different numbers of posts differ by their dashes, so that no color is needed.
func TestTrapStairsToldByColor(t *testing.T) {
	var f cover.Found
	for posts := 2; posts <= 5; posts++ {
		n := float64(posts)
		f.Points = append(f.Points, cover.FrontPoint{Cost: 100 * n, Sag: 1 / n, Posts: posts},
			cover.FrontPoint{Cost: 100*n + 50, Sag: 0.5 / n, Posts: posts})
	}
	dashes, inks := map[string]bool{}, map[drawing.Ink]bool{}
	for _, item := range drawing.FrontStairs(f).Items {
		if p, ok := item.(drawing.Path); ok && !p.Closed && len(p.Points) == 3 {
			var all []string
			for _, d := range p.Pen.Dash {
				all = append(all, strconv.FormatFloat(d, 'f', 1, 64))
			}
			dashes[strings.Join(all, " ")] = true
			inks[p.Pen.Stroke] = true
		}
	}
	require.NotEmpty(t, inks)
	assert.Len(t, dashes, 4)
	assert.True(t, inks[drawing.Black])
}
