package cover_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// Trap: one effective wind area, that of the longest bay, for all posts of a line. An end
// post carries half of a bay: with bays of 6.7 ft it carries 3.3 by 7 ft, 23 ft², between a²
// and 4 a² of a = 3 ft, where CN of zones 2 and 3 is -1.8 to the -1.2 of the 47 ft² of the
// beam, and -2.6 at 7.5 degrees (ASCE 7-16 Fig. 30.7-1).
func TestTrapEndPostsHaveASmallArea(t *testing.T) {
	const own = "the post's own strip as a component, zone 3 up"
	in := overhung()
	in.Posts.Count, in.Beams.Splices = new(4), new("every_post")
	r := size(t, in)
	end := byCase(t, reaction(t, r, "P1"), own)
	q := velocityC(105) * 0.85
	assert.Less(t, end, 0.0)
	beam := byCase(t, reaction(t, r, "P1"), "wind along the house, case A, obstructed, from the left")
	assert.Less(t, end, 1.4*beam, "half as much again as the whole roof")
	// of the rafters at 0, 2, 4 and 6 ft, the first with half a width, the left end of a bay
	// of 6.7 ft carries these parts (statics)
	cn := 1.8 + (2.6-1.8)*math.Atan(0.125/12)*180/math.Pi/7.5
	want := beamEnd(q*cn, 2, 10, 2) * (0.5 + 0.7 + 0.4 + 0.1)
	calctest.Close(t, -want, end, 1e-3, 0)
	lift := 0.6*want - 0.6*byCase(t, reaction(t, r, "P1"), "dead load at its least")
	calctest.Close(t, lift, reaction(t, r, "P1").Up.Value, 0.01, 0, "and it governs the uplift")
	assert.Contains(t, strings.Join(titles(r), "\n"), "strip of post P1")
	assert.NotContains(t, strings.Join(titles(size(t, overhung())), "\n"), "strip of post P1", "70 ft² are as good as 140")
}

// titles are those of the written loads.
func titles(r cover.Report) []string {
	var out []string
	for _, d := range r.Loads.Derivations {
		out = append(out, d.Title)
	}
	return out
}

// Trap: a short bay of the beam taken with the gusts of the longest one. The bays feel each
// their own, and the ratio of no check falls by it.
func TestTrapShortBayOfTheBeam(t *testing.T) {
	in := overhung()
	in.Posts.Count, in.Posts.Positions = nil, []float64{0, 4, 20}
	r := size(t, in)
	name := "beam as a component bay by bay, zone 2 up"
	short := byCase(t, reaction(t, r, "P1"), name)
	for _, x := range reaction(t, r, "P3").ByCase {
		if strings.HasPrefix(x.Case, "beam as a component, zone 2 up") {
			assert.InDelta(t, x.Force, byCase(t, reaction(t, r, "P3"), name), 0.2*-x.Force, "the long bay feels the same")
		}
	}
	assert.NotZero(t, short)
	even := overhung()
	even.Posts.Count = new(3)
	for _, x := range reaction(t, size(t, even), "P1").ByCase {
		assert.NotEqual(t, name, x.Case, "equal bays have one case")
	}
}
