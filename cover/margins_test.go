package cover_test

import (
	"math"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// marginOf finds the margin of a field.
func marginOf(t testing.TB, r cover.Report, path string) cover.Margin {
	t.Helper()
	for _, m := range r.Margins {
		if m.Path == path {
			return m
		}
	}
	require.Fail(t, "no margin", path)
	return cover.Margin{}
}

// withMargins answers a valid input with its margins.
func withMargins(t testing.TB, in cover.Input) cover.Report {
	t.Helper()
	r, err := cover.SizeAndMargins(in)
	require.NoError(t, err)
	return r
}

// sagging is the simple cover with strong rafters of little stiffness, so that their
// deflection under live load governs.
func sagging() cover.Input {
	in := simple()
	in.Rafters.Grade, in.Rafters.Size, in.Rafters.Spacing = new("Select Structural"), new("2x4"), new(16.0)
	in.Cover.Projection, in.Cover.Slope = new(7.0), new(0.5)
	in.Rafters.Green, in.Cover.Layers[0].Weight = new(false), new(1.0)
	return in
}

// Where the live deflection governs, the live load may grow by the inverse of the ratio
// and the span by its cube root (closed form: 5 w L⁴ / 384 E I against L / 240).
func TestMarginsAgainstClosedForm(t *testing.T) {
	r := withMargins(t, sagging())
	live := 0.0
	for _, c := range r.Members[0].Checks {
		if c.Name == "live or snow deflection" {
			live = float64(c.Ratio)
		}
	}
	require.Greater(t, live, 0.0)
	for _, c := range []struct {
		path string
		want float64
	}{
		{"site.roof_live_psf", 20 / live},
		{"cover.projection_ft", 7 / math.Cbrt(live)},
	} {
		m := marginOf(t, r, c.path)
		require.Equal(t, "live or snow deflection", m.Check, c.path)
		calctest.Close(t, c.want, m.Passes, 2e-4, 0, c.path)
	}
}

// Each margin holds: the members pass at its value and are over just beyond, seen by
// sizing the moved input from the start.
func TestMarginsHold(t *testing.T) {
	t.Parallel()
	in := demo(t, "desert")
	r := withMargins(t, in)
	worst := func(in cover.Input) float64 {
		most := 0.0
		for _, m := range size(t, in).Members {
			most = max(most, float64(m.Ratio))
		}
		return most
	}
	for i := range r.Members {
		name := r.Members[i].Size
		switch r.Members[i].Name {
		case "rafter":
			in.Rafters.Size = &name
		case "beam":
			in.Beams.Size = &name
		case "post":
			in.Posts.Size = &name
		case "deck panel":
			in.Deck.Rating = &name
		}
	}
	for _, c := range []struct {
		path string
		set  func(in *cover.Input, x float64)
	}{
		{"site.wind_speed_mph", func(in *cover.Input, x float64) { in.Site.WindSpeed = &x }},
		{"site.roof_live_psf", func(in *cover.Input, x float64) { in.Site.RoofLive = &x }},
		{"rafters.spacing_in", func(in *cover.Input, x float64) { in.Rafters.Spacing = &x }},
		{"cover.width_ft", func(in *cover.Input, x float64) { in.Cover.Width = &x }},
	} {
		m := marginOf(t, r, c.path)
		require.Empty(t, m.Missing)
		at, beyond := in, in
		c.set(&at, m.Passes)
		c.set(&beyond, m.Over)
		assert.LessOrEqual(t, worst(at), 1.0, c.path)
		assert.Greater(t, worst(beyond), 1.0, c.path)
		assert.Greater(t, m.Passes, m.Now*0.999, c.path)
		assert.NotEmpty(t, m.Mark)
	}
}

// Repetitive members lose their factor beyond 24 in. on center (NDS 2018 4.3.9): the
// margin stops at the step and does not jump over it.
func TestMarginStopsAtAStep(t *testing.T) {
	t.Parallel()
	m := marginOf(t, withMargins(t, demo(t, "desert")), "rafters.spacing_in")
	calctest.Near(t, 24, m.Passes, 0.01)
	assert.Equal(t, "bending with force along the slope", m.Check)
}

// A cover that is over already gets the value down to which it would have to go.
func TestMarginOfAnOverloadedCover(t *testing.T) {
	in := sagging()
	in.Site.RoofLive = new(60.0)
	m := marginOf(t, withMargins(t, in), "cover.projection_ft")
	assert.Less(t, m.Passes, m.Now)
	assert.Greater(t, m.Passes, 3.0)
	assert.Greater(t, float64(m.Ratio), 1.0)
}

// The margins do not depend on how many cores find them.
func TestMarginsOnOneAndTwoCores(t *testing.T) {
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	one := withMargins(t, demo(t, "garden"))
	runtime.GOMAXPROCS(2)
	two := withMargins(t, demo(t, "garden"))
	assert.Equal(t, marshal(t, one), marshal(t, two))
}

// A cover that is over whatever is taken away says so, and down to what.
func TestMarginOfAHopelessCover(t *testing.T) {
	in := simple()
	in.Cover.Slope, in.Cover.HighEdge = new(0.5), new(10.0)
	in.Rafters.Size, in.Beams.Size = new("2x4"), new("4x4")
	r := withMargins(t, in)
	m := marginOf(t, r, "site.roof_live_psf")
	assert.True(t, m.None)
	assert.Empty(t, m.Missing)
	assert.Nil(t, m.Rest)
	assert.LessOrEqual(t, m.Over, 21.0, "an ordinary roof has 20 psf at least")
	assert.Greater(t, float64(m.Ratio), 1.0)
	assert.True(t, r.Smaller[0].Least && r.Smaller[1].Least, "the smallest sizes of the lists")
}

// Size itself leaves the margins out.
func TestSizeHasNoMargins(t *testing.T) {
	assert.Empty(t, size(t, simple()).Margins)
}
