package cover_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
)

func withCanopy(in cover.Input, up, down float64) cover.Input {
	in.Cover.CanopyUp, in.Cover.CanopyDown = &up, &down
	in.Cover.CanopySource = new("coefficients read by the user, for a test")
	return in
}

func rating(t *testing.T, r cover.Report, mark string) float64 {
	t.Helper()
	for _, l := range r.Links {
		if l.Mark == mark {
			return l.Rating
		}
	}
	t.Fatalf("no link %s", mark)
	return 0
}

// Trap: canopy coefficients put under a deep attached cover. They never lower the free
// roof unless the user takes that view, and then the report says that they do.
func TestTrapCanopyNeverBelowTheFreeRoof(t *testing.T) {
	free := size(t, overhung())
	mild := withCanopy(overhung(), -0.5, 0.3)
	r := size(t, mild)
	calctest.Near(t, rating(t, free, "T1"), rating(t, r, "T1"), 0, "mild coefficients change nothing")
	assert.False(t, skipped(r, "asks for less than the free roof"))

	mild.Cover.WindView = new("attached_canopy")
	chosen := size(t, mild)
	assert.Less(t, rating(t, chosen, "T1"), rating(t, free, "T1"))
	assert.True(t, skipped(chosen, "asks for less than the free roof"))

	fierce := size(t, withCanopy(overhung(), -4, 0.3))
	assert.Greater(t, rating(t, fierce, "T1"), rating(t, free, "T1"), "a worse view counts by itself")
	assert.Equal(t, []bool{false, true, false}, uplifted(fierce))
}

func uplifted(r cover.Report) []bool {
	var out []bool
	for _, v := range r.Loads.Views {
		out = append(out, v.Uplift)
	}
	return out
}

// The overhang of the house roof lifts with 1.07 above and 0.7 below (ASCE 7-16 28.3):
// 1.77 q. It is shown for every attached cover, and counts where it is chosen or where
// the rafters are those of the house.
func TestOverhangViewByHand(t *testing.T) {
	in := overhung()
	free := size(t, in)
	q := 0.0
	for _, d := range free.Loads.Derivations {
		for _, l := range d.Lines {
			if d.Title == "Velocity pressure" && l.Symbol == "q_h" {
				q = l.X
			}
		}
	}
	require.Positive(t, q)
	calctest.Close(t, 1.77*q, free.Loads.Views[2].Up, 1e-9, 0)
	assert.False(t, free.Loads.Views[2].Uplift)
	in.Cover.WindView = new("overhang")
	chosen := size(t, in)
	assert.True(t, chosen.Loads.Views[2].Uplift)
	assert.Greater(t, rating(t, chosen, "T1"), rating(t, free, "T1"))
	tails := overhung()
	tails.Cover.Attachment = new("rafter_tails")
	assert.True(t, size(t, tails).Loads.Views[2].Uplift)
}

func TestCanopyNeedsItsSource(t *testing.T) {
	cases := []struct {
		name string
		edit func(*cover.Input)
	}{
		{"no source", func(in *cover.Input) { in.Cover.CanopyUp, in.Cover.CanopyDown = new(-1.0), new(0.5) }},
		{"chosen without coefficients", func(in *cover.Input) { in.Cover.WindView = new("attached_canopy") }},
		{"lifting coefficient above zero", func(in *cover.Input) { *in = withCanopy(*in, 0.5, 0.5) }},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			in := overhung()
			c.edit(&in)
			_, err := cover.Size(in)
			var faults *calc.InputError
			require.ErrorAs(t, err, &faults)
		})
	}
}
