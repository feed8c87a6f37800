package drawing_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/cover"
	"patiocover/web/drawing"
)

// anyHeaps are up to three heaps of snow on a cover.
func anyHeaps(t *rapid.T, projection float64) []cover.HeapLine {
	var out []cover.HeapLine
	for _, name := range []string{"leeward drift", "windward drift", "sliding snow"}[:rapid.IntRange(0, 3).Draw(t, "heaps")] {
		h := cover.HeapLine{
			Name: name, Even: rapid.Float64Range(0, 150).Draw(t, "even"), Peak: rapid.Float64Range(0.1, 300).Draw(t, "peak"),
			Reach: projection * rapid.Float64Range(0.02, 1).Draw(t, "reach"),
		}
		h.Far = h.Peak * rapid.SampledFrom([]float64{0, 0.5, 1}).Draw(t, "far")
		out = append(out, h)
	}
	return out
}

// The drift of the demonstration below a two-story wall, by hand, ASCE 7-16 7.7.1:
// density 0.13 · 30 + 14 = 17.9 pcf, hd = 0.43 · 40^(1/3) · 40^(1/4) − 1.5 = 2.198 ft,
// peak 39.35 psf, width 4 hd = 8'-9 1/2", on 30 psf of even snow.
func TestSectionShowsTheDrift(t *testing.T) {
	s := drawing.Section(report(t, "drift", nil))
	for _, want := range []string{
		"LEEWARD DRIFT 40 PSF", "EVEN SNOW 30 PSF", `8'-9 1/2"`, "SNOW ON PLAN, 150 PSF TO THE INCH",
	} {
		assert.True(t, s.Has(want), "%s is missing in %q", want, s.Words())
	}
	assert.Contains(t, s.Description, `leeward drift of 40 psf at the high edge and 0 psf at 8'-9 1/2" from it, on even snow of 30 psf`)
}

// Snow without a heap is even everywhere, and needs no picture.
func TestSectionWithoutHeapsShowsNoSnow(t *testing.T) {
	for _, name := range []string{"desert", "snow"} {
		r := report(t, name, nil)
		require.Empty(t, r.Loads.Heaps)
		s := drawing.Section(r)
		assert.False(t, s.Has("SNOW ON PLAN"), name)
		assert.Empty(t, heaps(s), name)
	}
}

// heaps are the shapes of the heaps in a scene.
func heaps(s drawing.Scene) []drawing.Path {
	var out []drawing.Path
	for _, item := range s.Items {
		if p, ok := item.(drawing.Path); ok && p.Pen.Fill == drawing.Snow {
			out = append(out, p)
		}
	}
	return out
}

// same reports whether two loads, psf, differ by no more than rounding on the paper.
func same(want, got float64) bool { return math.Abs(want-got) <= 1e-9*(1+math.Abs(want)) }

// Whatever lies there, each heap is drawn to the load scale that stands beside it, not
// too high, and says its loads; no words of the section go under.
func TestHeapsAreDrawnToScale(t *testing.T) {
	base := report(t, "desert", nil)
	rapid.Check(t, func(t *rapid.T) {
		r := anyReport(t, base, ordinary)
		s := drawing.Section(r)
		shapes := heaps(s)
		require.Len(t, shapes, len(r.Loads.Heaps))
		if len(shapes) == 0 {
			return
		}
		inch := 0.0
		for _, w := range s.Words() {
			if text, ok := strings.CutPrefix(w, "SNOW ON PLAN, "); ok {
				_, err := fmt.Sscanf(strings.ReplaceAll(text, ",", ""), "%f", &inch)
				require.NoError(t, err)
			}
		}
		require.Positive(t, inch)
		for i, h := range r.Loads.Heaps {
			p := shapes[i].Points
			assert.True(t, same(h.Peak, (p[0].Y-p[1].Y)/72*inch), h.Name)
			assert.True(t, same(h.Far, (p[3].Y-p[2].Y)/72*inch), h.Name)
			assert.LessOrEqual(t, h.Even+h.Peak, 45*inch/72)
			assert.True(t, s.Has(strings.ToUpper(h.Name)+" "), h.Name)
			assert.True(t, s.Has("EVEN SNOW "), h.Name)
		}
		if missing := unmarked(r); len(missing) > 0 {
			t.Fatalf("no room for %v", missing)
		}
	})
}

// Trap: a load printed below what was computed. Demand is rounded up.
func TestTrapSnowRoundedDown(t *testing.T) {
	r := report(t, "drift", nil)
	r.Loads.Heaps = []cover.HeapLine{{Name: "leeward drift", Even: 20.01, Peak: 38.2, Far: 10.3, Reach: 6}}
	s := drawing.Section(r)
	assert.True(t, s.Has("LEEWARD DRIFT 39 TO 11 PSF"), s.Words())
	assert.True(t, s.Has("EVEN SNOW 21 PSF"), s.Words())
}
