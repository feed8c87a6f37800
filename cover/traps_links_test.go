package cover_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// fastened is the overhung cover with a described deck and a wall that is known.
func fastened() cover.Input {
	in := overhung()
	in.Deck = cover.Deck{Kind: new("panel")}
	in.House.Wall = new("rim")
	in.Connections = cover.Connections{
		Green: new(false), WallGap: new(0.5), WallSpecies: new("Douglas Fir-Larch"), WallFraming: new("verified"),
	}
	return in
}

// linkCheck finds a check of the connector of a link.
func linkCheck(t testing.TB, l cover.Link, name string) cover.MemberCheck {
	t.Helper()
	for _, c := range l.Connector.Checks {
		if c.Name == name {
			return c
		}
	}
	require.Fail(t, fmt.Sprintf("%s has no check %s", l.Mark, name))
	return cover.MemberCheck{}
}

// With the deck described and the wall known, every link above the ground holds.
func TestEveryLinkCanHold(t *testing.T) {
	r := size(t, fastened())
	for _, l := range r.Links {
		if strings.ContainsAny(l.Mark, "AF") {
			continue
		}
		assert.Equal(t, cover.OK, l.Verdict, "%s: %s", l.Mark, l.Reason)
		assert.True(t, shown(l), l.Mark)
	}
}

// Trap: a link that is missing while all the others pass. Each one removed, or not known,
// makes its path and the cover anything but OK.
func TestTrapMissingLinkOfThePath(t *testing.T) {
	base := fastened()
	base.Posts.Count, base.Beams.Splices = new(3), new("every_post")
	none := new("none")
	cases := []struct {
		mark, path string
		remove     func(*cover.Input)
	}{
		{"D1", "house", func(in *cover.Input) { in.Connections.Deck = none }},
		{"D1", "BM1", func(in *cover.Input) { in.Deck = cover.Deck{} }},
		{"H1", "house", func(in *cover.Input) { in.Connections.Hanger = none }},
		{"L1", "house", func(in *cover.Input) { in.Connections.Ledger = none }},
		{"L1", "house", func(in *cover.Input) { in.House.Wall = new("unknown") }},
		{"L1", "house", func(in *cover.Input) { in.House.Wall = new("brick_veneer") }},
		{"W1", "house", func(in *cover.Input) { in.Connections.WallFraming = nil }},
		{"W1", "house", func(in *cover.Input) { in.House.Wall = nil }},
		{"T1", "BM1", func(in *cover.Input) { in.Connections.Tie = none }},
		{"T1", "BM1", func(in *cover.Input) { in.Connections.Tie = new("toenails") }},
		{"C1", "BM1", func(in *cover.Input) { in.Connections.PostTop = none }},
		{"S1", "BM1", func(in *cover.Input) { in.Connections.Splice = none }},
		{"B1", "BM1", func(in *cover.Input) { in.Connections.Base = none }},
	}
	for _, c := range cases {
		in := base
		c.remove(&in)
		r := size(t, in)
		assert.NotEqual(t, cover.OK, linkOf(t, r, c.mark).Verdict, c.mark)
		assert.NotEqual(t, cover.OK, r.Verdict, c.mark)
		for _, p := range r.Paths {
			if p.To == c.path {
				assert.NotEqual(t, cover.OK, p.Verdict, "%s without %s", p.To, c.mark)
				assert.Contains(t, p.Marks, c.mark)
			}
		}
	}
}

// Trap: strap and toe-nails added. The toe-nails beside a strap take the side force and
// nothing of the uplift: the strap's check is that of the whole.
func TestTrapStrapAndToenailsAreNotAdded(t *testing.T) {
	in := fastened()
	in.Connections.Tie = new("straps")
	l := linkOf(t, size(t, in), "T1")
	assert.Equal(t, cover.OK, l.Verdict, l.Reason)
	strap := linkCheck(t, l, "strap")
	calctest.Close(t, l.Up.Value, value(t, strap, "V"), 1e-9, 0, "the strap takes all of the uplift")
	side := linkCheck(t, l, "toe-nails sideways")
	assert.Equal(t, max(l.Along.Value, l.Out.Value), value(t, side, "T"))
	in.Connections.StrapNails = new(1)
	assert.Equal(t, cover.Over, linkOf(t, size(t, in), "T1").Verdict, "one nail at each end")
}

// Trap: uplift and side force of one tie looked at one by one. What is asked for leaves
// room for both at once, and what is given must have it.
func TestTrapTieOfBothForces(t *testing.T) {
	l := linkOf(t, size(t, fastened()), "T1")
	up, side := l.Up.Value, max(l.Along.Value, l.Out.Value)
	require.Positive(t, side)
	assert.LessOrEqual(t, up/l.Connector.Up+side/l.Connector.Side, 1.0)
	in := fastened()
	in.Connections.TieUp, in.Connections.TieSide = new(up*1.01), new(side*1.01)
	assert.Equal(t, cover.Over, linkOf(t, size(t, in), "T1").Verdict, "each suffices alone, not both at once")
	in.Connections.TieSide = nil
	assert.Equal(t, cover.Over, linkOf(t, size(t, in), "T1").Verdict, "no rating sideways")
}

// Trap: a rating for Douglas Fir-Larch on wood that is lighter.
func TestTrapRatingOfHeavierWood(t *testing.T) {
	in := fastened()
	in.Connections.TieUp, in.Connections.TieSide = new(5000.0), new(5000.0)
	assert.Equal(t, cover.OK, linkOf(t, size(t, in), "T1").Verdict)
	in.Connections.RatedGravity = new(0.55)
	assert.Equal(t, cover.Over, linkOf(t, size(t, in), "T1").Verdict)
}

// Trap: C_D 1.6 put on a rating that holds it. The rating is compared with the force of
// 0.6D + 0.6W as it stands, and a longer load asks for more.
func TestTrapRatingTakesNoDuration(t *testing.T) {
	l := linkOf(t, size(t, fastened()), "C1")
	c := linkCheck(t, l, "rating")
	calctest.Close(t, l.Up.Value/l.Connector.Up+max(l.Along.Value, l.Out.Value)/l.Connector.Side, value(t, c, "sum"), 1e-9, 0)
	assert.Less(t, l.Up.Value, l.Connector.Up)
}

// Trap: the gap of stucco ignored, and prying. The same lag screws hold less through
// stucco, and the reaction at the face of the ledger pulls at them.
func TestTrapStuccoAndPryingAtTheLedger(t *testing.T) {
	in := fastened()
	in.Connections.LagSize, in.Connections.LagLength, in.Connections.LagsEach = new("1/2"), new(6.0), new(1)
	in.Connections.LagSpacing, in.House.Wall, in.Connections.WallBlocked = new(16.0), new("studs"), new(true)
	contact := linkCheck(t, linkOf(t, size(t, in), "L1"), "lag screws in shear")
	in.Connections.WallGap = new(1.375)
	apart := linkCheck(t, linkOf(t, size(t, in), "L1"), "lag screws in shear")
	assert.Greater(t, float64(apart.Ratio), 1.2*float64(contact.Ratio))
	l := linkOf(t, size(t, in), "L1")
	pull := linkCheck(t, l, "lag screws in withdrawal, with prying")
	assert.Greater(t, value(t, pull, "T"), 1.5*l.Out.Value*16/12, "the outward force alone would be less")
}

// Trap: a notched post without its eccentricity, or bolts closer to the end than the
// standard permits. A notch that leaves less than half of the post is refused.
func TestTrapNotchedPost(t *testing.T) {
	in := fastened()
	in.Connections.PostTop = new("notch")
	in.Posts.Size, in.Beams.Size = new("4x4"), new("4x8")
	l := linkOf(t, size(t, in), "C1")
	assert.Equal(t, cover.Over, l.Verdict)
	assert.Contains(t, l.Reason, "less than half")
	in.Posts.Size, in.Beams.Size = new("6x6"), new("2x12")
	l = linkOf(t, size(t, in), "C1")
	leg := linkCheck(t, l, "leg of the post")
	bending, tension := value(t, leg, "f_b"), value(t, leg, "f_t")
	e, thick := (4.0+1.5)/2, 4.0
	calctest.Close(t, tension*6*e/thick, bending, 1e-9, 0, "P e / S with S = A t / 6")
	assert.Positive(t, float64(linkCheck(t, l, "bolts in uplift").Ratio))
}

// Trap: a number of fasteners or a rating rounded down. One nail less, or one step of the
// rating less, would not do.
func TestTrapFastenersAreNotRoundedDown(t *testing.T) {
	for speed := 95.0; speed <= 165; speed += 10 {
		in := fastened()
		in.Site.WindSpeed, in.Connections.Tie = &speed, new("straps")
		l := linkOf(t, size(t, in), "T1")
		if l.Verdict != cover.OK {
			continue
		}
		nails := int(value(t, linkCheck(t, l, "strap"), "n"))
		if strings.Contains(l.Connector.What, "each side") || nails == 2 {
			continue
		}
		in.Connections.StrapNails = new(nails - 1)
		assert.Equal(t, cover.Over, linkOf(t, size(t, in), "T1").Verdict, "at %v mph with %d nails", speed, nails-1)
	}
}

// Trap: drywall or deck screws of unknown steel. The fasteners offered are those of the
// tables, and nothing else is accepted.
func TestTrapUnknownFastenerRefused(t *testing.T) {
	in := fastened()
	in.Connections.DeckNail, in.Connections.DeckNailSize = new("common"), new("deck screw")
	_, err := cover.Size(in)
	require.Error(t, err)
	assert.Contains(t, err.Error(), "connections.deck_nail_size")
	in.Connections.DeckNailSize = nil
	_, err = cover.Size(in)
	require.Error(t, err)
	assert.Contains(t, err.Error(), "connections.deck_nail")
}

// Trap: group action or wet service of two rows of lag screws forgotten. In lumber that
// dries after it is fastened two rows at a stud take 0.4 (NDS 2018 Table 11.3.3), and
// C_g is below 1.
func TestTrapRowsOfLagsInGreenLumber(t *testing.T) {
	in := fastened()
	in.Connections.LagSize, in.Connections.LagLength, in.Connections.LagsEach = new("3/8"), new(5.0), new(2)
	in.House.Wall, in.Connections.LagSpacing = new("studs"), new(16.0)
	dry := linkCheck(t, linkOf(t, size(t, in), "L1"), "lag screws in shear")
	assert.Equal(t, 1.0, value(t, dry, "C_M"))
	assert.Less(t, value(t, dry, "C_g"), 1.0)
	in.Connections.Green = new(true)
	green := linkCheck(t, linkOf(t, size(t, in), "L1"), "lag screws in shear")
	assert.Equal(t, 0.4, value(t, green, "C_M"))
}

// The force along the house pushes across studs, where a lag screw has no edge distance:
// not checked without blocking.
func TestAlongTheStuds(t *testing.T) {
	in := fastened()
	in.House.Wall, in.Connections.LagSpacing = new("studs"), new(16.0)
	l := linkOf(t, size(t, in), "L1")
	assert.Equal(t, cover.NotChecked, l.Verdict, l.Reason)
	assert.Contains(t, l.Reason, "blocking")
	in.Connections.WallBlocked = new(true)
	assert.Equal(t, cover.OK, linkOf(t, size(t, in), "L1").Verdict)
}

// The uplifts at the ground and at the house add up to what lifts the roof.
func TestUpliftsAddUp(t *testing.T) {
	r := size(t, fastened())
	require.NotEmpty(t, r.Paths)
	require.NoError(t, calctest.Prove(r.Paths[0].Lines))
	var roof, held float64
	for _, l := range r.Paths[0].Lines {
		switch l.Symbol {
		case "Q_roof":
			roof = l.X
		case "Q_held":
			held = l.X
		}
	}
	assert.Positive(t, roof)
	calctest.Close(t, roof, held, 1e-9, 0)
}

// Every written check of every connector holds, in every demo and in its variants.
func TestConnectorsAreProved(t *testing.T) {
	t.Parallel()
	inputs := []cover.Input{fastened(), overhung(), standing()}
	for _, name := range demos {
		inputs = append(inputs, demo(t, name))
	}
	straps, notch, boards := fastened(), fastened(), fastened()
	straps.Connections.Tie = new("straps")
	notch.Connections.PostTop, notch.Posts.Size, notch.Beams.Size = new("notch"), new("6x6"), new("2x12")
	boards.Deck = cover.Deck{Kind: new("plank")}
	for _, in := range append(inputs, straps, notch, boards) {
		for _, l := range size(t, in).Links {
			for _, c := range l.Connector.Checks {
				require.NoError(t, calctest.Prove(c.Check.Lines), "%s %s", l.Mark, c.Name)
				assert.Equal(t, c.Ratio, cover.Ratio(c.Check.Ratio()), "%s %s", l.Mark, c.Name)
			}
		}
	}
}
