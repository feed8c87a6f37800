package cover_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// decked is the simple cover with a deck of the kind.
func decked(kind string) cover.Input {
	in := simple()
	in.Deck.Kind = &kind
	if kind == "slats" {
		in.Cover.Covering = new("lattice")
	}
	if kind == "slats" || kind == "purlins" {
		in.Deck.Spacing = new(16.0)
	}
	return in
}

// combinations are those of the simple cover: D 5, Lr 20 psf, rafters at 24 in.
func TestDeckOfPanelsByHand(t *testing.T) {
	in := decked("panel")
	in.Deck.Rating = new("32/16")
	r := size(t, in)
	calctest.Near(t, 24.0/28, float64(check(t, r, "DK1", "span of the rating").Ratio), 1e-9, "32/16 with free edges reaches 28 in.")
	load := check(t, r, "DK1", "load of the rating")
	calctest.Near(t, 20.0/30, float64(load.Ratio), 1e-4, "the live load is nearer to its limit than 25 to 40 psf")
	up := check(t, r, "DK1", "bending in uplift")
	net := 0.6*value(t, up, "W") + 0.6*value(t, up, "D")
	assert.Negative(t, net)
	calctest.Close(t, -net/144*24*24/8/(370.0/12*1.6), float64(up.Ratio), 1e-9, 0, "M / (FbS C_D), ASD/LRFD Manual Table M9.2-1")
	assert.Equal(t, cover.OK, member(t, r, "DK1").Verdict)
	assert.Equal(t, cover.OK, r.Deck.Verdict)
}

func TestDeckOfPurlinsByHand(t *testing.T) {
	in := decked("purlins")
	in.Deck.Size, in.Deck.OnEdge = new("2x4"), new(true)
	r := size(t, in)
	c := check(t, r, "DK1", "bending under a worker")
	calctest.Close(t, 5.0/144*16*24*24/8+300*24/4, value(t, c, "M"), 1e-9, 0, "w l²/8 + P l/4")
	calctest.Close(t, 900*1.5*1.25, value(t, c, "Fb_star"), 1e-9, 0, "Fb C_F C_D, and no C_r")
	assert.Equal(t, 1.0, value(t, c, "C_L"), "held by the metal panel")
	assert.Less(t, value(t, check(t, r, "DK1", "bending in uplift"), "C_L"), 1.0, "not in uplift")
}

// A deck that was not described is not checked, as before, and the report says what
// would serve; nobody's wider spacing gets a lesser panel.
func TestDeckThatWasNotDescribed(t *testing.T) {
	r := size(t, simple())
	assert.Equal(t, cover.NotChecked, r.Deck.Verdict)
	assert.Contains(t, r.Deck.Reason, "at 24 in on center panels rated 24/16, with held edges 24/0")
	assert.True(t, slices.ContainsFunc(r.NotChecked, func(s cover.Skip) bool { return s.What == "roof deck and its nailing" }))
	order := []string{"24/0", "24/16", "32/16", "40/20", "48/24", "none"}
	require.Len(t, r.Deck.Choices, 5)
	for i, c := range r.Deck.Choices {
		assert.Equal(t, c.Spacing == 24, c.Own)
		assert.LessOrEqual(t, slices.Index(order, c.Held), slices.Index(order, c.Free), "held edges never ask for more")
		if i > 0 {
			before := r.Deck.Choices[i-1]
			assert.GreaterOrEqual(t, slices.Index(order, c.Held), slices.Index(order, before.Held))
			assert.GreaterOrEqual(t, slices.Index(order, c.Free), slices.Index(order, before.Free))
		}
	}
	in := simple()
	in.Rafters.Spacing = new(20.0)
	assert.Len(t, size(t, in).Deck.Choices, 6, "the cover's own spacing is listed too")
	in = simple()
	in.Cover.Covering = new("lattice")
	assert.Empty(t, size(t, in).Deck.Choices, "panels are no lattice")
	assert.Contains(t, size(t, decked("other")).Deck.Reason, "outside the method")
}

// What was proposed passes when it is then given.
func TestDeckProposedServes(t *testing.T) {
	for _, spacing := range []float64{12, 16, 19.2, 24, 32} {
		in := simple()
		in.Rafters.Spacing = &spacing
		for _, c := range size(t, in).Deck.Choices {
			if !c.Own {
				continue
			}
			for _, held := range []bool{true, false} {
				given := decked("panel")
				given.Rafters.Spacing, given.Deck.Held, given.Deck.Rating = &spacing, &held, &c.Free
				if held {
					given.Deck.Rating = &c.Held
				}
				assert.Equal(t, cover.OK, member(t, size(t, given), "DK1").Verdict, "%v in, held %v", spacing, held)
				given.Deck.Rating = nil
				assert.Equal(t, map[bool]string{true: c.Held, false: c.Free}[held], member(t, size(t, given), "DK1").Size)
			}
			plank := decked("plank")
			plank.Rafters.Spacing, plank.Deck.Held = &spacing, new(true)
			assert.Equal(t, c.Plank, member(t, size(t, plank), "DK1").Size)
		}
	}
}

// Trap 4: the repetitive member factor of the rafters under a deck that spreads no
// load: lattice, purlins at any spacing, square-edged planks, a deck nobody knows.
func TestTrapRepetitiveFollowsTheDeck(t *testing.T) {
	for _, c := range []struct {
		kind string
		held bool
		want float64
	}{
		{"panel", false, 1.15}, {"plank", true, 1.15}, {"plank", false, 1}, {"purlins", false, 1}, {"slats", true, 1}, {"other", false, 1},
	} {
		in := decked(c.kind)
		if c.kind != "purlins" && c.kind != "other" {
			in.Deck.Held = &c.held
		}
		r := size(t, in)
		assert.Equal(t, c.want, value(t, check(t, r, "R1", "bending"), "C_r"), "%s: NDS 2018 4.3.9", c.kind)
	}
}

// Trap 4 on the other side: a slat at 3-1/2 in. shares nothing with the next one, and a
// 2x2 does not carry a worker.
func TestTrapWorkerOnOneSlat(t *testing.T) {
	in := decked("slats")
	in.Deck.Spacing, in.Deck.Size = new(3.5), new("2x2")
	r := size(t, in)
	alone := check(t, r, "DK1", "bending under a worker")
	assert.Equal(t, 1.0, value(t, alone, "k"))
	assert.Equal(t, cover.Over, alone.Verdict)
	in.Deck.Held = new(true)
	assert.Equal(t, 0.5, value(t, check(t, size(t, in), "DK1", "bending under a worker"), "k"), "blocked to its neighbor")
	in.Deck.Held, in.Deck.Size, in.Deck.OnEdge = nil, nil, new(true)
	chosen := member(t, size(t, in), "DK1")
	assert.Equal(t, cover.OK, chosen.Verdict)
	assert.Equal(t, "2x4", chosen.Size, "on edge, wet and incised below an open sky")
	assert.Contains(t, strings.Join(chosen.Notes, "; "), "Open gap between pieces: 0'-2\"; loaded as if there were none")
	require.NotEmpty(t, chosen.Rejected)
	assert.Equal(t, "bending under a worker", chosen.Rejected[0].Check)
	in.Deck.Workers = new(false)
	left := member(t, size(t, in), "DK1")
	assert.Equal(t, cover.NotChecked, left.Verdict, "no worker is never OK without the authority")
	assert.Contains(t, strings.Join(left.Notes, "; "), "authority")
}

// The top edge of the rafters is held at every purlin, along its length by panels and
// planks, and by nothing below slats or a deck nobody knows.
func TestDeckHoldsTheRafters(t *testing.T) {
	for kind, want := range map[string]string{
		"purlins": "Top edge held by purlins every 1'-4\"", "slats": "Slats are not counted",
		"other": "not counted as bracing of the top edge",
	} {
		assert.Contains(t, strings.Join(member(t, size(t, decked(kind)), "R1").Notes, "; "), want)
	}
	under := func(kind string) float64 { return float64(check(t, size(t, decked(kind)), "R1", "bending").Ratio) }
	assert.Less(t, under("panel"), under("purlins"))
	assert.Less(t, under("purlins"), under("other"), "16 in. between braces against the whole span")
}

// The fasteners of the deck are asked for the same, whatever the deck is said to be.
func TestDeckLeavesItsLinkAsItIs(t *testing.T) {
	want := size(t, simple()).Links[0]
	for _, kind := range []string{"panel", "plank", "purlins", "other"} {
		got := size(t, decked(kind)).Links[0]
		assert.Equal(t, want.Demands, got.Demands, kind)
	}
	assert.Equal(t, cover.NotChecked, want.Verdict, "nobody knows what lies on the rafters")
	assert.Equal(t, cover.NotChecked, size(t, decked("other")).Links[0].Verdict)
	assert.Equal(t, cover.OK, size(t, decked("panel")).Links[0].Verdict)
}

// A deck whose weight is not that of the layers is noted.
func TestDeckAgainstTheLayers(t *testing.T) {
	note := func(name string, psf float64) string {
		in := decked("plank")
		in.Cover.Layers = []cover.Layer{{Name: &name, Weight: &psf, Certain: new(true)}}
		r := size(t, in)
		calctest.Near(t, 34.5*1.5/12, r.Deck.Weight, 0.2, "Douglas fir at 19 %, 1.5 in.")
		return strings.Join(r.Deck.Notes, "; ")
	}
	assert.Contains(t, note("tile", 10), "No layer")
	assert.Contains(t, note("2x6 planks", 2), "raise the layer")
	assert.Contains(t, note("2x6 planks", 8), "does not hold against uplift")
	assert.Empty(t, note("2x6 planks", 4.3))
}

// A ceiling below holds no deck down, and a steep roof bends purlins sideways.
func TestDeckOnTheSafeSide(t *testing.T) {
	in := decked("panel")
	in.Cover.Ceiling = new("board")
	assert.Zero(t, value(t, check(t, size(t, in), "DK1", "bending in uplift"), "D"))
	in = decked("purlins")
	in.Cover.Slope, in.Cover.HighEdge = new(4.0), new(12.0)
	assert.Equal(t, cover.NotChecked, size(t, in).Deck.Verdict)
	in = decked("plank")
	in.Deck.Layup, in.Cover.Width, in.Posts.Count = new("controlled_random"), new(4.0), new(2)
	assert.Equal(t, cover.NotChecked, size(t, in).Deck.Verdict, "two spans are no controlled random layup")
	in = decked("panel")
	in.Cover.Width, in.Posts.Count, in.Rafters.Spacing = new(4.0), new(2), new(48.0)
	assert.NotEqual(t, cover.OK, size(t, in).Deck.Verdict, "a single span of panels")
}

// The wind on the deck is that at a corner, and not less than on the whole roof where
// closed sides put the inside pressure below it.
func TestDeckCarriesTheWorstWind(t *testing.T) {
	in := decked("panel")
	in.Cover.Sides = new("walled")
	r := size(t, in)
	most := 0.0
	for _, c := range r.Loads.Cases {
		if c.On == "slope" && strings.Contains(c.Name, "partially enclosed, up") {
			most = max(most, -c.Value)
		}
	}
	require.Positive(t, most)
	wind := -value(t, check(t, r, "DK1", "bending in uplift"), "W")
	assert.GreaterOrEqual(t, wind, most)
	assert.GreaterOrEqual(t, wind, -value(t, check(t, size(t, decked("panel")), "DK1", "bending in uplift"), "W"))
}

// Purlins at 16 in. up 10 ft of slope are eight courses; 16 ft sticks end on a rafter, and
// 4 ft are left of each course. Panels go in courses of 4 ft.
func TestDeckIsBought(t *testing.T) {
	in := decked("purlins")
	in.Deck.Size, in.Market.StockLengths = new("2x6"), []float64{12, 16}
	r := size(t, in)
	assert.Equal(t, []any{16, 16.0}, []any{member(t, r, "DK1").Count, member(t, r, "DK1").Length})
	var got []cover.PieceLine
	for _, p := range r.TakeOff.Pieces {
		if p.Mark == "DK1" {
			got = append(got, p)
		}
	}
	item := "2x6 Douglas Fir-Larch No.2"
	assert.Equal(t, []cover.PieceLine{{Mark: "DK1", Item: item, Count: 8, Length: 16}, {Mark: "DK1", Item: item, Count: 8, Length: 4}}, got)

	in = decked("panel")
	r = size(t, in)
	assert.Equal(t, 8, member(t, r, "DK1").Count, "three courses of 20 ft, in sheets of 8 ft")
	assert.True(t, slices.ContainsFunc(r.TakeOff.Other, func(b cover.BuyLine) bool {
		return b.Item == "deck panels rated 24/16, 4 ft by 8 ft" && b.Quantity == 8 && b.Unit == "each"
	}))
}

// The margins keep the deck as chosen: rafters at 16 in. under the least panel go no
// farther apart than its span rating.
func TestDeckBoundsTheMargins(t *testing.T) {
	in := decked("panel")
	in.Rafters.Spacing, in.Rafters.Size, in.Cover.Projection = new(16.0), new("2x10"), new(8.0)
	m := marginOf(t, withMargins(t, in), "rafters.spacing_in")
	assert.Equal(t, []string{"DK1", "span of the rating"}, []string{m.Mark, m.Check})
	calctest.Near(t, 20, m.Passes, 0.01, "24/0 with free edges, IRC Table R503.2.1.1(1)")
}

// A wet panel has no help from the code table, which is for dry ones.
func TestDeckOfWetPanels(t *testing.T) {
	in := decked("panel")
	in.Deck.Wet = new(true)
	r := size(t, in)
	assert.Equal(t, 0.75, value(t, check(t, r, "DK1", "bending"), "C_M"))
	assert.Contains(t, strings.Join(member(t, r, "DK1").Notes, "; "), "wet in service")
}

// What is assumed of a deck is listed only where it plays a part.
func TestDeckAssumptions(t *testing.T) {
	list := func(in cover.Input) string {
		var all []string
		for _, a := range size(t, in).Assumed {
			if strings.HasPrefix(a.Path, "deck.") {
				all = append(all, strings.TrimPrefix(a.Path, "deck."))
			}
		}
		return strings.Join(all, " ")
	}
	assert.Empty(t, list(simple()))
	assert.Empty(t, list(decked("other")))
	assert.Equal(t, "edges_held blocked wet", list(decked("panel")))
	assert.Equal(t, "species grade edges_held layup workers green wet incised", list(decked("plank")))
	assert.Equal(t, "species grade on_edge workers green wet incised", list(decked("purlins")))
}

func TestDeckContradictions(t *testing.T) {
	for want, change := range map[string]func(*cover.Input){
		"deck.kind: missing":            func(in *cover.Input) { in.Deck.Size = new("2x6") },
		"deck.spacing_in: missing":      func(in *cover.Input) { in.Deck.Kind = new("purlins") },
		"deck.panel_rating: given for":  func(in *cover.Input) { in.Deck.Kind, in.Deck.Rating = new("plank"), new("32/16") },
		"deck.size: given for":          func(in *cover.Input) { in.Deck.Kind, in.Deck.Size = new("panel"), new("2x6") },
		"deck.layup: given for":         func(in *cover.Input) { in.Deck.Kind, in.Deck.Layup = new("panel"), new("two_spans") },
		"below a solid covering":        func(in *cover.Input) { in.Deck.Kind, in.Deck.Spacing = new("slats"), new(4.0) },
		"covering that is open lattice": func(in *cover.Input) { in.Deck.Kind, in.Cover.Covering = new("panel"), new("lattice") },
		"boards have no design values":  func(in *cover.Input) { in.Deck.Kind, in.Deck.Size = new("plank"), new("1x6") },
		"they would have no gap": func(in *cover.Input) {
			in.Deck.Kind, in.Deck.Size, in.Deck.Spacing = new("purlins"), new("2x6"), new(5.5)
		},
		"than the narrowest purlin": func(in *cover.Input) { in.Deck.Kind, in.Deck.Spacing = new("purlins"), new(3.0) },
		"deck.grade: ":              func(in *cover.Input) { in.Deck.Kind, in.Deck.Grade = new("plank"), new("Commercial Dex") },
	} {
		in := simple()
		change(&in)
		assert.ErrorContains(t, in.Validate(), want)
	}
}
