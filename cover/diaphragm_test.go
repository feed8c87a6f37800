package cover_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// panelled is an attached cover of 12 by 20 ft that the house holds, with a deck of panels.
func panelled() cover.Input {
	in := overhung()
	in.Deck.Kind = new("panel")
	return in
}

// deckOf is the part of the deck in the way along the house.
func deckOf(t *testing.T, in cover.Input) cover.LateralStep {
	return partOf(t, size(t, in).Lateral[0], "roof deck")
}

// checkOf is the check of a part by what its combination begins with.
func checkOf(t *testing.T, s cover.LateralStep, combination string) cover.MemberCheck {
	t.Helper()
	for _, c := range s.Checks {
		if c.Combination == combination {
			return c
		}
	}
	require.Fail(t, "no check "+combination, s.Reason)
	return cover.MemberCheck{}
}

// The push along the house over the length of the ledger against half of the nominal value
// for wind; a house designed for the cover makes the deck no better, and every part of the
// deck is written out and proved.
func TestDeckIsADiaphragm(t *testing.T) {
	r := size(t, panelled())
	s := partOf(t, r.Lateral[0], "roof deck")
	assert.Equal(t, cover.OK, s.Verdict, s.Reason)
	shear := checkOf(t, s, "ASD, wind")
	calctest.Close(t, r.Lateral[0].Demand/20, shear.Check.Demand, exact, 0, "of 20 ft")
	assert.True(t, shear.Recalled)
	for _, w := range r.Lateral {
		for _, p := range w.Path {
			for _, c := range p.Checks {
				assert.NoError(t, calctest.Prove(c.Check.Lines), p.Part)
				calctest.Close(t, float64(c.Ratio), c.Check.Ratio(), exact, 0, p.Part)
				assert.LessOrEqual(t, c.Ratio, p.Ratio)
			}
		}
	}
	chord := partOf(t, r.Lateral[0], "edge rafters")
	c := cover.MemberCheck{}
	c.Check.Lines = r.Lateral[0].Lines
	calctest.Close(t, value(t, c, "T_c"), chord.Demand, exact, 0, "the couple of the written calculation")
	calctest.Close(t, r.Lateral[1].Demand*2/20, partOf(t, r.Lateral[1], "rafters").Demand, exact, 0, "24 in of 20 ft")
}

// A wider cover of the same depth lowers the shear in the deck and the pull in its chords.
func TestWiderLedgerLowersTheShear(t *testing.T) {
	narrow, wide := panelled(), panelled()
	wide.Cover.Width = new(28.0)
	a, b := deckOf(t, narrow), deckOf(t, wide)
	assert.Less(t, checkOf(t, b, "ASD, wind").Check.Demand, checkOf(t, a, "ASD, wind").Check.Demand)
	assert.Less(t, partOf(t, size(t, wide).Lateral[0], "edge rafters").Demand, partOf(t, size(t, narrow).Lateral[0], "edge rafters").Demand)
}

// The link of the deck is the one home of its nails: thinner ones lower the shear that the
// deck holds, and nails farther apart than the tables know are not checked.
func TestDeckNailsAreThoseOfItsLink(t *testing.T) {
	in := panelled()
	in.Connections.DeckNail, in.Connections.DeckNailSize, in.Connections.DeckSpacing = new("common"), new("8d"), new(6.0)
	thick := checkOf(t, deckOf(t, in), "ASD, wind").Check.Capacity
	in.Connections.DeckNailSize = new("6d")
	assert.Less(t, checkOf(t, deckOf(t, in), "ASD, wind").Check.Capacity, thick)
	in.Connections.DeckSpacing = new(8.0)
	s := deckOf(t, in)
	assert.Equal(t, cover.NotChecked, s.Verdict)
	assert.Contains(t, s.Reason, "6 in")
	in.Connections.Deck = new("none")
	assert.Equal(t, cover.NotChecked, deckOf(t, in).Verdict, "nothing holds the deck")
}

// Trap: clips or tongue and groove counted as blocking. They hold the edges up, and only
// framing below every edge raises the shear.
func TestTrapClipsAreNoBlocking(t *testing.T) {
	in := panelled()
	in.Deck.Rating = new("40/20")
	free := checkOf(t, deckOf(t, in), "ASD, wind").Check.Capacity
	in.Deck.Held = new(true)
	assert.Equal(t, free, checkOf(t, deckOf(t, in), "ASD, wind").Check.Capacity)
	in.Deck.Blocked = new(true)
	assert.Greater(t, checkOf(t, deckOf(t, in), "ASD, wind").Check.Capacity, 1.4*free)
}

// Trap: a lattice, or planks laid straight, taken for a deck that brings the push to the
// house. Slats hold nothing; straight planks nothing beyond 6 ft (SDPWS 2015 4.2.5.2); metal
// panels what their maker tested; a deck that was not described is unknown.
func TestTrapLatticeIsNoDiaphragm(t *testing.T) {
	for kind, want := range map[string]cover.Verdict{
		"": cover.NotChecked, "purlins": cover.NotChecked, "other": cover.NotChecked, "slats": cover.Over, "plank": cover.Over,
	} {
		in := overhung()
		if kind != "" {
			in.Deck.Kind = &kind
		}
		if kind == "purlins" || kind == "slats" {
			in.Deck.Spacing = new(16.0)
		}
		if kind == "slats" {
			in.Cover.Covering, in.Cover.Roofing = new("lattice"), nil
		}
		r := size(t, in)
		s := partOf(t, r.Lateral[0], "roof deck")
		assert.Equal(t, want, s.Verdict, kind+s.Reason)
		for _, p := range r.Lateral[0].Path {
			assert.NotContains(t, p.Part, "chords", "a deck that is none has none: "+kind)
		}
	}
}

// Trap: a deck deeper than its ledger is long counted as held. It is not checked, with
// what it would take.
func TestTrapDeepDeckIsNotChecked(t *testing.T) {
	in := panelled()
	in.Cover.Width = new(11.0)
	s := deckOf(t, in)
	assert.Equal(t, cover.NotChecked, s.Verdict)
	assert.Contains(t, s.Reason, "4.2.5.2")
}

// Trap: the ledger of a braced cover designed for gravity alone. It is stiffer than the
// braces, so that its fasteners hold all of the push, and the house must be shown.
func TestTrapLedgerBesideBracesDrawsThePush(t *testing.T) {
	in := panelled()
	in.Lateral.Along, in.Lateral.Out = new("knee_braces"), new("knee_braces")
	r := size(t, in)
	for i, w := range r.Lateral {
		ledger := partOf(t, w, "ledger to the house")
		assert.Contains(t, ledger.Reason, "stiffer")
		assert.GreaterOrEqual(t, ledger.Demand, w.Demand/20, i)
		assert.Equal(t, cover.NotChecked, partOf(t, w, "the house").Verdict)
	}
}
