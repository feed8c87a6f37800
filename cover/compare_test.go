package cover_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
)

// ownWood is the wood of the rafters of an input.
func ownWood(in cover.Input) cover.Wood {
	return cover.Wood{Species: *in.Rafters.Species, Grade: *in.Rafters.Grade}
}

// Every row is what Size answers for that input.
func TestCompareIsSizeRowByRow(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"desert", "snow", "coast", "glued", "garden"} {
		in := demo(t, name)
		c, err := cover.Compare(in, cover.Choice{})
		require.NoError(t, err)
		require.True(t, c.Options[0].Drawn)
		require.GreaterOrEqual(t, len(c.Options), 20)
		for i, o := range c.Options {
			v := in
			if i > 0 {
				v.Rafters.Spacing, v.Rafters.Species, v.Rafters.Grade = &o.Spacing, &o.Wood.Species, &o.Wood.Grade
				v.Rafters.Size, v.Deck.Rating, v.Deck.Size = nil, nil, nil
				v.Rafters.MeasuredBreadth, v.Rafters.MeasuredDepth = nil, nil
			}
			r, err := cover.Size(v)
			if o.Missing != "" {
				assert.EqualError(t, err, o.Missing)
				continue
			}
			require.NoError(t, err)
			at := fmt.Sprintf("%s, row %d", name, i)
			assert.Equal(t, r.Members[0].Size, o.Rafter, at)
			calctest.Close(t, float64(r.Members[0].Ratio), float64(o.Ratio), 1e-12, 0, at)
			assert.Equal(t, r.Members[0].Governs, o.Governs, at)
			assert.Equal(t, len(r.Geometry.Rafters), o.Pieces, at)
			assert.Equal(t, r.Verdict, o.Verdict, at)
			calctest.Close(t, r.TakeOff.BoardFeet, o.BoardFeet, 1e-12, 0, at)
			calctest.Close(t, r.Headroom.Clear, o.Clear, 1e-12, 0, at)
			ties, rating := 0, 0.0
			for _, l := range r.Links {
				if l.Per == cover.PerJoint && l.Rating > 0 && l.From == "rafter" {
					ties += l.Count
					rating = max(rating, l.Rating, l.Connector.Up)
				}
			}
			assert.Equal(t, ties, o.Ties, at)
			calctest.Close(t, rating, o.Tie, 1e-12, 0, at)
		}
	}
}

// The order of the rows is that of the choice: as drawn, then wood by wood, each by
// spacing; nothing twice.
func TestCompareOrder(t *testing.T) {
	in := demo(t, "desert")
	in.Deck.Rating = nil
	hem, spruce := cover.Wood{Species: "Hem-Fir", Grade: "No.2"}, cover.Wood{Species: "Spruce-Pine-Fir", Grade: "Dense No.2"}
	_, err := cover.Compare(in, cover.Choice{Woods: []cover.Wood{spruce}})
	var wrong *calc.InputError
	require.ErrorAs(t, err, &wrong, "no such grade in the tables")
	c, err := cover.Compare(in, cover.Choice{Spacings: []float64{24, 16, 16}, Woods: []cover.Wood{hem, ownWood(in), hem}})
	require.NoError(t, err)
	var got []string
	for _, o := range c.Options {
		got = append(got, fmt.Sprintf("%t %s %g", o.Drawn, o.Wood.Species, o.Spacing))
	}
	assert.Equal(t, []string{
		"true Douglas Fir-Larch 24", "false Hem-Fir 16", "false Hem-Fir 24", "false Douglas Fir-Larch 16",
	}, got, "the row of the cover itself would be the first again")
}

// One core or two, the answer is the same to the letter.
func TestCompareOnOneAndTwoCores(t *testing.T) {
	in := demo(t, "desert")
	texts := map[int]string{}
	before := runtime.GOMAXPROCS(0)
	defer runtime.GOMAXPROCS(before)
	for _, cores := range []int{1, 2} {
		runtime.GOMAXPROCS(cores)
		c, err := cover.Compare(in, cover.Choice{})
		require.NoError(t, err)
		text, err := json.Marshal(c)
		require.NoError(t, err)
		texts[cores] = string(text)
	}
	assert.Equal(t, texts[1], texts[2])
}

// Orientation for the desert: at 32 in the 2x6 that serves at every closer spacing is
// over, the 2x8 passes, and the deck must be thicker. By hand formulas its bending takes
// 0.33, 0.44, 0.53, 0.66 and 1.01 of what it may; see scenarios.csv.
func TestCompareOrientation(t *testing.T) {
	in := spaced(t, "desert", "2x6", 24, 8)
	in.Deck = cover.Deck{}
	got := map[float64]cover.Option{}
	c, err := cover.Compare(in, cover.Choice{Woods: []cover.Wood{ownWood(in)}})
	require.NoError(t, err)
	for _, o := range c.Options[1:] {
		got[o.Spacing] = o
		assert.Equal(t, o.Spacing > 24, o.Beyond, "repetitive member factor at %g in", o.Spacing)
	}
	for _, s := range []float64{12, 16, 19.2, 24} {
		assert.Equal(t, "2x6", got[s].Rafter)
	}
	require.Equal(t, "2x8", got[32].Rafter)
	for i, want := range []float64{0.33, 0.44, 0.53, 0.66, 1.01} {
		s := []float64{12, 16, 19.2, 24, 32}[i]
		repetitive := map[bool]float64{true: 1, false: 1.15}[s > 24]
		use := bendingUnder(t, spaced(t, "desert", "2x6", s, 8), "D + Lr", 28, 1.5*5.5*5.5/6, 900*1.3*1.25*repetitive)
		calctest.Close(t, want, use, 0.15, 0, "hand formula at %g in", s)
	}
	assert.NotEqual(t, got[24].Deck, got[32].Deck)
	for _, s := range []float64{12, 16, 19.2, 24} {
		assert.Less(t, got[s].Tie, got[32].Tie, "fewer ties hold more each")
		assert.Greater(t, got[s].Ties, got[32].Ties)
	}
}

// A cover that is too low says so in every row.
func TestCompareSaysThatHeadroomIsOver(t *testing.T) {
	c, err := cover.Compare(demo(t, "snow"), cover.Choice{Spacings: []float64{16}})
	require.NoError(t, err)
	for _, o := range c.Options {
		require.Equal(t, cover.Over, o.Framing)
		assert.Regexp(t, `^headroom: 6'-\d.* clear, 6'-8" asked for$`, o.Over[len(o.Over)-1])
	}
}

// Where nothing passes, the row says which check of the largest size is over.
func TestCompareSaysWhatIsOver(t *testing.T) {
	in := demo(t, "desert")
	in.Cover.Projection, in.Cover.HighEdge = new(40.0), new(12.0)
	in.House.Eave = new(13.0)
	c, err := cover.Compare(in, cover.Choice{Spacings: []float64{24, 32}, Woods: []cover.Wood{ownWood(in)}})
	require.NoError(t, err)
	for _, o := range c.Options {
		assert.Equal(t, cover.Over, o.Framing)
		assert.Equal(t, "3x12", o.Rafter, "the largest of the list")
		require.NotEmpty(t, o.Over)
		assert.Regexp(t, `^rafter 3x12: .+ at ratio [1-9]\.\d\d$`, o.Over[0])
		assert.False(t, o.Front)
	}
	assert.Equal(t, []string{"No option passes: the rows say what is over."}, c.Says)
}

// The front is every option that passes and that no other beats in cost and sag.
func TestCompareFront(t *testing.T) {
	c, err := cover.Compare(demo(t, "desert"), cover.Choice{})
	require.NoError(t, err)
	passes := func(o cover.Option) bool { return o.Missing == "" && o.Framing != cover.Over }
	n := 0
	for _, o := range c.Options {
		beaten := slices.ContainsFunc(c.Options, func(p cover.Option) bool {
			return passes(p) && p.Spent <= o.Spent && p.Sag <= o.Sag && (p.Spent < o.Spent*(1-1e-9) || p.Sag < o.Sag*(1-1e-9))
		})
		assert.Equal(t, passes(o) && !beaten, o.Front, o.Rafter+" "+o.Wood.String())
		if o.Front {
			n++
		}
	}
	assert.Greater(t, n, 1, "there is something to weigh")
}

// An option that is not checked whole is weighed, and the words say that it is not OK.
func TestTrapNotCheckedIsNotOK(t *testing.T) {
	in := demo(t, "desert")
	in.Deck = cover.Deck{Kind: new("purlins"), Spacing: new(24.0)}
	in.Cover.Slope, in.Cover.HighEdge, in.House.Eave = new(4.0), new(13.0), new(13.5)
	c, err := cover.Compare(in, cover.Choice{Spacings: []float64{16}, Woods: []cover.Wood{ownWood(in)}})
	require.NoError(t, err)
	for _, o := range c.Options {
		require.Equal(t, cover.NotChecked, o.Framing, "purlins on a steep roof bend sideways, which is not checked")
	}
	said := slices.ContainsFunc(c.Says, func(s string) bool { return strings.Contains(s, "which is not OK") })
	assert.True(t, said, "%q", c.Says)
}

// Dollars are the measure only where the user's prices cover the options alike.
func TestTrapCostFromPricesThatLeaveOutSome(t *testing.T) {
	in := demo(t, "desert")
	foot := "board_foot"
	price := func(item string) cover.Price { return cover.Price{Item: &item, Per: &foot, Dollars: new(1.5)} }
	own := "Douglas Fir-Larch No.2"
	in.Market.Prices = []cover.Price{price("2x6 " + own), price("4x6 " + own), price("4x4 " + own)}
	choice := cover.Choice{Spacings: []float64{16, 32}, Woods: []cover.Wood{ownWood(in)}}
	c, err := cover.Compare(in, choice)
	require.NoError(t, err)
	require.Equal(t, "2x8", c.Options[2].Rafter, "at 32 in")
	assert.Equal(t, cover.InBoardFeet, c.Measure, "the 2x8 has no price, so its row would seem cheap")
	assert.Contains(t, c.Reason, "at 32 in")
	in.Market.Prices = append(in.Market.Prices, price("2x8 "+own))
	c, err = cover.Compare(in, choice)
	require.NoError(t, err)
	assert.Equal(t, cover.InDollars, c.Measure)
	for _, o := range c.Options {
		calctest.Close(t, 1.5*o.BoardFeet, o.Spent, 1e-9, 0, "every stick is priced by the board foot")
	}
}

func TestChoiceOfWords(t *testing.T) {
	c, err := cover.NewChoice("12, 19.2,1' 4\"", []string{" hem-fir  no.2", "", "Douglas Fir-Larch Select Structural"})
	require.NoError(t, err)
	assert.Equal(t, cover.Choice{
		Spacings: []float64{12, 19.2, 16},
		Woods:    []cover.Wood{{Species: "Hem-Fir", Grade: "No.2"}, {Species: "Douglas Fir-Larch", Grade: "Select Structural"}},
	}, c)
	_, err = cover.NewChoice("twelve, 60, 2", []string{"Oak No.2"})
	var wrong *calc.InputError
	require.True(t, errors.As(err, &wrong))
	assert.Len(t, wrong.Faults, 2, "what cannot be read is told first")
	_, err = cover.NewChoice("60, 2", nil)
	require.True(t, errors.As(err, &wrong))
	assert.Equal(t, calc.Fault{Path: "spacing", Given: "60 in", Allowed: "6 to 48 in"}, wrong.Faults[0])
	_, err = cover.NewChoice("6,7,8,9,10,11,12,13,14,15,16,17,18", nil)
	require.True(t, errors.As(err, &wrong), "more than an answer has time for")
	assert.Equal(t, "13 spacings", wrong.Faults[0].Given)
	_, err = cover.NewChoice("8,9,10,11,12,13,14,15,16,17,18,19", slices.Repeat([]string{"Hem-Fir No.2"}, 7))
	require.True(t, errors.As(err, &wrong))
	assert.Equal(t, calc.Fault{Path: "wood", Given: "84 options", Allowed: "spacings times woods up to 72"}, wrong.Faults[0])
}

// At one size and in one wood a larger spacing never asks less of a rafter: each carries
// more, beyond 24 in without the repetitive member factor (NDS 2018 4.3.9).
func TestWiderSpacingNeverAsksLess(t *testing.T) {
	spacings := []float64{12, 16, 19.2, 24, 32, 40}
	var covers []cover.Input
	for _, name := range []string{"desert", "snow", "coast"} {
		covers = append(covers, demo(t, name))
	}
	rapid.Check(t, func(t *rapid.T) {
		in := covers[rapid.IntRange(0, len(covers)-1).Draw(t, "cover")]
		size := rapid.SampledFrom([]string{"2x6", "2x8", "3x10"}).Draw(t, "size")
		i := rapid.IntRange(0, len(spacings)-2).Draw(t, "spacing")
		in.Rafters.Size = &size
		var ratios []float64
		for _, s := range spacings[i : i+2] {
			in.Rafters.Spacing = &s
			r, err := cover.Size(in)
			require.NoError(t, err)
			ratios = append(ratios, float64(r.Members[0].Ratio))
		}
		assert.LessOrEqual(t, ratios[0], ratios[1]*(1+1e-9), "%s from %g in", size, spacings[i])
	})
}

// The curve of the size that was chosen goes through the cover itself, by the design method
// that members are chosen by, and rises with the span, but where the seat and not the span
// decides.
func TestCurvesGoThroughTheCover(t *testing.T) {
	t.Parallel()
	for name, method := range map[string]string{"desert": "LRFD", "snow": "ASD", "coast": "ASD", "garden": "LRFD"} {
		in := demo(t, name)
		in.Site.Method = &method
		c, err := cover.Compare(in, cover.Choice{Woods: []cover.Wood{ownWood(in)}})
		require.NoError(t, err)
		assert.Len(t, c.Curves, 8, "a curve for each size that is tried")
		met := false
		for _, k := range c.Curves {
			for i, p := range k.Points {
				if k.Size == c.Options[0].Rafter && math.Abs(p.Span-c.Span) < 1e-9 {
					calctest.Close(t, float64(c.Options[0].Ratio), float64(p.Ratio), 1e-9, 0, name)
					met = true
				}
				if i > 0 && p.Governs == k.Points[i-1].Governs {
					assert.GreaterOrEqual(t, p.Ratio, k.Points[i-1].Ratio*(1-1e-9), "%s %s at %g ft", name, k.Size, p.Span)
				}
			}
		}
		assert.True(t, met, name)
	}
}
