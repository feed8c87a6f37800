package brace_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/brace"
	"patiocover/calc/calctest"
)

// evenRow is a row of posts under a member without overhangs.
func evenRow(t testing.TB, height, drop, reach float64, spans ...float64) brace.Row {
	t.Helper()
	r, err := brace.NewRow(geometry(height, drop, reach, spans...))
	require.NoError(t, err)
	return r
}

func geometry(height, drop, reach float64, spans ...float64) brace.Geometry {
	g := brace.Geometry{Supports: []float64{0}, Posts: []bool{true}, Height: height, Drop: drop, Reach: reach}
	for _, s := range spans {
		g.Length += s
		g.Supports, g.Posts = append(g.Supports, g.Length), append(g.Posts, true)
	}
	return g
}

// built is the frame of a row as it stands: posts hinged at foot and beam, braces hinged
// at both ends, a beam over all, under a push of 1 lb spread over the tops of the posts.
type built struct {
	frame  planeFrame
	lower  []int // bar of each post below its braces
	upper  []int // and above
	braces map[[2]int]int
}

func build(spans []float64, height, drop, angle, post, member float64) built {
	reach := drop / math.Tan(angle*math.Pi/180)
	b := built{braces: map[[2]int]int{}}
	f := &b.frame
	const stiff = 1.2e6 * 30 // E A of a 6x6, lb
	x, last := 0.0, -1
	n := len(spans) + 1
	memberTo := func(x float64) {
		at := f.node(x, height)
		if last >= 0 {
			f.bars = append(f.bars, bar{last, at, stiff, member, [2]bool{}})
		}
		last = at
	}
	put := func(p bar) int {
		f.bars = append(f.bars, p)
		return len(f.bars) - 1
	}
	for i := range n {
		foot := f.node(x, 0)
		f.fixed = append(f.fixed, 3*foot, 3*foot+1)
		joint := f.node(x, height-drop)
		b.lower = append(b.lower, put(bar{foot, joint, stiff, post, [2]bool{true, false}}))
		if i > 0 {
			memberTo(x - reach)
			b.braces[[2]int{i, 0}] = put(bar{joint, last, stiff / 2, 0, [2]bool{true, true}})
		}
		memberTo(x)
		b.upper = append(b.upper, put(bar{joint, last, stiff, post, [2]bool{false, true}}))
		f.load[3*last] = 1 / float64(n)
		if i < n-1 {
			memberTo(x + reach)
			b.braces[[2]int{i, 1}] = put(bar{joint, last, stiff / 2, 0, [2]bool{true, true}})
			x += spans[i]
		}
	}
	return b
}

// The second route: a plane frame of members that bend and stretch. What it finds may
// lie above the row's forces by what stretching shifts, a few parts in a hundred.
func TestRowCoversThePlaneFrame(t *testing.T) {
	const over = 0.04
	rows := [][]float64{{114}, {114, 114}, {72, 96, 120}, {120, 120, 120}, {96, 60}, {84, 84, 84, 84, 84}}
	for _, spans := range rows {
		for _, drop := range []float64{16, 28} {
			for _, stiffness := range []float64{0.3, 1, 3.5} {
				t.Run(fmt.Sprint(spans, drop, stiffness), func(t *testing.T) {
					const height, angle, post = 90.0, 45.0, 1.1e6 * 76.3 // E I of a 6x6, lb-in²
					b := build(spans, height, drop, angle, post, stiffness*post)
					got := b.frame.solve(t)
					r := evenRow(t, height, drop, drop, spans...)
					lean := height / drop // H tan(phi) / a is H / c
					for i, p := range r.Posts {
						low, top := got[b.lower[i]], got[b.upper[i]]
						assert.LessOrEqual(t, math.Abs(low[1]), (1+over)*p.Shear, "shear of post %d", i)
						assert.LessOrEqual(t, math.Abs(low[0]), (1+over)*p.Foot*lean+0.02*lean, "foot of post %d", i)
						assert.LessOrEqual(t, math.Abs(top[0]), (1+over)*p.Top*lean+0.02*lean, "top of post %d", i)
					}
					for at, n := range b.braces {
						k := brace.NewKnee(brace.Knee{Shear: r.Posts[at[0]].Brace, Height: height, Drop: drop, Angle: angle, Braces: 1})
						assert.LessOrEqual(t, math.Abs(got[n][0]), (1+over)*k.Axial, "brace %v", at)
					}
				})
			}
		}
	}
}

// Statics: the posts of one bay hold the couple of the push at its height, N L = Q H, and
// share the push alike.
func TestRowOfOneBay(t *testing.T) {
	for _, reach := range []float64{18, 24, 30} {
		r := evenRow(t, 96, 24, reach, 120)
		for i, p := range r.Posts {
			calctest.Close(t, 0.5, p.Shear, 1e-9, 0, i)
			calctest.Close(t, 0.5, p.Brace, 1e-9, 0, i)
			calctest.Close(t, 96.0/120, p.Foot*96/reach, 1e-9, 0, "N = Q H / L")
		}
		// two forces of opposite sense at c from either end: M = F c (L - 2c) / L
		calctest.Close(t, 0.5*reach*(120-2*reach)/120, r.Bays[1].Moment, 1e-9, 0)
	}
}

// A post with its one brace toward a ledger: the ledger holds the couple with it.
func TestRowAtALedger(t *testing.T) {
	r, err := brace.NewRow(brace.Geometry{
		Length: 132, Supports: []float64{0, 120}, Posts: []bool{false, true}, Height: 90, Drop: 24, Reach: 24,
	})
	require.NoError(t, err)
	assert.Equal(t, 0, r.Posts[0].Braces)
	assert.Equal(t, 1, r.Posts[1].Braces)
	calctest.Close(t, 1, r.Posts[1].Shear, 1e-9, 0)
	calctest.Close(t, 90.0/120, r.Posts[1].Foot*90/24, 1e-9, 0)
	calctest.Close(t, 90.0/120, r.Posts[0].Foot*90/24, 1e-9, 0)
	calctest.Close(t, 24*96.0/120, r.Bays[1].Moment, 1e-9, 0, "F c (L - c) / L")
	assert.Zero(t, r.Bays[2].Moment)
}

// Trap: an inner post taken for one with a single brace, or for one with no more than an
// equal share: by the portal method it takes twice what an end post takes.
func TestTrapInnerPostTakesTwice(t *testing.T) {
	r := evenRow(t, 96, 24, 24, 120, 120, 120)
	for i, want := range []float64{1.0 / 4, 1.0 / 3, 1.0 / 3, 1.0 / 4} {
		assert.GreaterOrEqual(t, r.Posts[i].Shear, want*(1-1e-12), "post %d of the portal method and of equal shares", i)
	}
	assert.Equal(t, []int{1, 2, 2, 1}, []int{r.Posts[0].Braces, r.Posts[1].Braces, r.Posts[2].Braces, r.Posts[3].Braces})
}

// A beam spliced over its inner post cannot carry moment past it, and the couple of each
// bay is its own.
func TestRowSpliced(t *testing.T) {
	g := geometry(96, 24, 24, 120, 120)
	g.Splices = []int{1}
	r, err := brace.NewRow(g)
	require.NoError(t, err)
	calctest.Close(t, 0.4, r.Posts[0].Foot*96/24, 1e-9, 0, "half of the push over one bay at most")
	calctest.Close(t, r.Posts[0].Foot, r.Posts[2].Foot, 1e-9, 0)
	assert.LessOrEqual(t, r.Posts[1].Foot, r.Posts[0].Foot)
}

// Laws: mirrored rows are mirrored; the shares cover the whole push; the couple of the
// outer posts of a row is at least the push times its height.
func TestRowLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spans := rapid.SliceOfN(rapid.Float64Range(60, 180), 1, 5).Draw(t, "spans")
		height := rapid.Float64Range(72, 120).Draw(t, "height")
		drop := rapid.Float64Range(12, 30).Draw(t, "drop")
		reach := rapid.Float64Range(10, 30).Draw(t, "reach")
		mirrored := make([]float64, len(spans))
		for i, s := range spans {
			mirrored[len(spans)-1-i] = s
		}
		r, err := brace.NewRow(geometry(height, drop, reach, spans...))
		require.NoError(t, err)
		m, err := brace.NewRow(geometry(height, drop, reach, mirrored...))
		require.NoError(t, err)
		sum, couple, x := 0.0, 0.0, 0.0
		for i, p := range r.Posts {
			q := m.Posts[len(spans)-i]
			for _, pair := range [][2]float64{{p.Shear, q.Shear}, {p.Brace, q.Brace}, {p.Foot, q.Foot}, {p.Top, q.Top}} {
				if math.Abs(pair[0]-pair[1]) > 1e-6 {
					t.Fatalf("post %d: %v mirrored is %v", i, pair[0], pair[1])
				}
			}
			sum += p.Shear
			couple += p.Foot * x * height / reach
			if i < len(spans) {
				x += spans[i]
			}
		}
		if sum < 1-1e-9 || couple < height*(1-1e-9) {
			t.Fatalf("shares add up to %v, the couple to %v of %v", sum, couple, height)
		}
	})
}

func TestRowRefuses(t *testing.T) {
	_, err := brace.NewRow(geometry(96, 30, 61, 120))
	assert.ErrorIs(t, err, brace.ErrReach)
	g := geometry(96, 24, 24, 120)
	g.Posts = []bool{false, false}
	_, err = brace.NewRow(g)
	assert.Error(t, err)
}
