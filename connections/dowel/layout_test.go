package dowel_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/calc/calctest"
	"patiocover/connections/dowel"
)

func TestGroupPublished(t *testing.T) {
	for _, r := range calctest.Published(t, "group_action.csv") {
		g := dowel.NewGroup(dowel.Row{
			Count: int(r.Num("n")), Spacing: r.Num("s in"), Diameter: r.Num("D in"),
			MainModulus: r.Num("Em psi"), SideModulus: r.Num("Es psi"), MainArea: r.Num("Am in2"), SideArea: r.Num("As in2"),
		})
		calctest.Near(t, r.Num("want"), g.Factor, r.Num("within"), r.Text("source"), r.Num("n"))
		require.NoError(t, calctest.Prove(g.Lines()))
	}
}

// C_g is at most 1, falls with the number in the row, and is 1 for nails.
func TestGroupLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := dowel.Row{
			Count: rapid.IntRange(1, 12).Draw(t, "n"), Spacing: rapid.Float64Range(0.5, 12).Draw(t, "s"),
			Diameter:    rapid.Float64Range(0.25, 1).Draw(t, "D"),
			MainModulus: rapid.Float64Range(0.8e6, 2e6).Draw(t, "Em"), SideModulus: rapid.Float64Range(0.8e6, 29e6).Draw(t, "Es"),
			MainArea: rapid.Float64Range(1, 60).Draw(t, "Am"), SideArea: rapid.Float64Range(0.5, 60).Draw(t, "As"),
			Steel: rapid.Bool().Draw(t, "steel"),
		}
		g := dowel.NewGroup(r)
		if err := calctest.Prove(g.Lines()); err != nil {
			t.Fatal(err)
		}
		longer := r
		longer.Count++
		if more := dowel.NewGroup(longer); !(g.Factor <= 1+1e-9 && more.Factor <= g.Factor*(1+1e-9) && more.Factor > 0) {
			t.Fatalf("C_g %v, with one more %v", g.Factor, more.Factor)
		}
		r.Diameter = 0.24
		if got := dowel.NewGroup(r).Factor; got != 1 {
			t.Fatalf("D under 1/4 in: C_g %v", got)
		}
	})
}

// NDS 2018 Tables 12.5.1A to D for a 1/2 in. bolt, in inches.
func TestNeeds(t *testing.T) {
	bolt := sized(t, "bolt", "1/2", 0)
	cases := []struct {
		push                               dowel.Push
		end, least, top, bottom, spacing   float64
		rowAtTwo, rowAtFour, rowFromSixOrD float64
	}{
		{dowel.TowardEnd, 3.5, 1.75, 0.75, 0.75, 2, 0.75, 0.75, 0.75},
		{dowel.FromEnd, 2, 1, 0.75, 0.75, 2, 0.75, 0.75, 0.75},
		{dowel.TowardTop, 2, 1, 2, 0.75, 2, 1.25, 1.875, 2.5},
		{dowel.TowardBottom, 2, 1, 0.75, 2, 2, 1.25, 1.875, 2.5},
	}
	for _, c := range cases {
		n := dowel.NewNeeds(bolt, 1, c.push)
		calctest.Near(t, c.end, n.End.Full, 1e-12, c.push.String(), "end")
		calctest.Near(t, c.least, n.End.Least, 1e-12, c.push.String(), "end, least")
		calctest.Near(t, c.top, n.Top.Least, 1e-12, c.push.String(), "top")
		calctest.Near(t, c.bottom, n.Bottom.Least, 1e-12, c.push.String(), "bottom")
		calctest.Near(t, c.spacing, n.Spacing.Full, 1e-12, c.push.String(), "spacing")
		calctest.Near(t, c.rowAtTwo, n.Row.Least, 1e-12, c.push.String(), "rows, l/D 2")
		calctest.Near(t, c.rowAtFour, dowel.NewNeeds(bolt, 2, c.push).Row.Least, 1e-12, c.push.String(), "rows, l/D 4")
		calctest.Near(t, c.rowFromSixOrD, dowel.NewNeeds(bolt, 5, c.push).Row.Least, 1e-12, c.push.String(), "rows, l/D 10")
	}
	assert.True(t, dowel.NewNeeds(nailOf(t, 0.162, 3.5), 1.5, dowel.TowardEnd).Guidance)
	calctest.Near(t, 2, dowel.PullNeeds(sized(t, "lag screw", "1/2", 6)).End.Least, 1e-12, "NDS 2018 Table 12.5.1E: 4D")
}

// anyPlace draws distances around those that count.
func anyPlace(t *rapid.T, d float64) dowel.Place {
	draw := func(name string) float64 {
		if rapid.Bool().Draw(t, name+" occurs") {
			return rapid.Float64Range(0, 16).Draw(t, name) * d
		}
		return math.Inf(1)
	}
	return dowel.Place{End: draw("end"), Top: draw("top"), Bottom: draw("bottom"), Spacing: draw("spacing"), Row: draw("row")}
}

func TestLayoutIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := anyFastener(t)
		n := dowel.NewNeeds(f, rapid.Float64Range(0.1, 6).Draw(t, "length"), dowel.Push(rapid.IntRange(0, 3).Draw(t, "push")))
		p := anyPlace(t, f.Diameter)
		l := dowel.NewLayout(n, p)
		if err := calctest.Prove(l.Lines()); err != nil {
			t.Fatal(err)
		}
		if !(0 <= l.Factor && l.Factor <= 1) || l.Factor == 0 && l.Missed == "" {
			t.Fatalf("C_Delta %v, missed %q", l.Factor, l.Missed)
		}
		p.End *= 1.1
		if more := dowel.NewLayout(n, p); more.Factor < l.Factor {
			t.Fatalf("a longer end lowered C_Delta from %v to %v", l.Factor, more.Factor)
		}
	})
}

// Trap: a bolt closer to the end than 3.5 D is worth nothing; between 3.5 D and 7 D
// C_Delta is in proportion (NDS 2018 12.5.1.2).
func TestTrapBoltNearTheEnd(t *testing.T) {
	bolt := sized(t, "bolt", "1/2", 0)
	n := dowel.NewNeeds(bolt, 1.5, dowel.TowardEnd)
	at := func(end float64) dowel.Layout {
		return dowel.NewLayout(n, dowel.Place{End: end, Top: 1.75, Bottom: 1.75, Spacing: math.Inf(1), Row: math.Inf(1)})
	}
	assert.Zero(t, at(1.7).Factor)
	assert.Equal(t, "end distance", at(1.7).Missed)
	calctest.Near(t, 0.5, at(1.75).Factor, 1e-9)
	calctest.Near(t, 0.75, at(2.625).Factor, 1e-9)
	calctest.Near(t, 1, at(3.5).Factor, 1e-9)
}

// Trap: the loaded edge is not turned round in uplift. A bolt 1 in. below the top edge
// of a ledger may not carry gravity, which loads that edge; in uplift the bottom edge
// is loaded.
func TestTrapLoadedEdgeTurnsInUplift(t *testing.T) {
	bolt := sized(t, "bolt", "1/2", 0)
	high := dowel.Place{End: 6, Top: 1, Bottom: 6.25, Spacing: math.Inf(1), Row: math.Inf(1)}
	gravity := dowel.NewLayout(dowel.NewNeeds(bolt, 1.5, dowel.TowardTop), high)
	uplift := dowel.NewLayout(dowel.NewNeeds(bolt, 1.5, dowel.TowardBottom), high)
	assert.Zero(t, gravity.Factor, "4D = 2 in. from the loaded top edge")
	assert.Equal(t, "top edge, loaded", gravity.Missed)
	assert.Equal(t, 1.0, uplift.Factor)
}

func TestRestIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, c := anyFastener(t), anyConditions(t)
		side := dowel.Member{Gravity: rapid.Float64Range(0.31, 0.73).Draw(t, "side G"), Thickness: rapid.Float64Range(0.1, 3).Draw(t, "ts")}
		pull, push := rapid.Float64Range(0, 2e3).Draw(t, "T"), rapid.Float64Range(0, 2e3).Draw(t, "V")
		if rapid.IntRange(0, 4).Draw(t, "only one") == 0 {
			push = 0
		}
		n := rapid.IntRange(1, 8).Draw(t, "n")
		proved(t, dowel.NewHeadPull(pull, f, side, c, n))
		proved(t, dowel.NewRod(pull, f, c.Method, n))
		shear := dowel.NewShear(push, dowel.NewLateral(f, dowel.Joint{Side: side, Main: fir}), dowel.LateralFactors(f.Kind, c), n)
		out := dowel.NewPull(pull, dowel.NewWithdrawal(f, 0.5, 2, c.EndGrain), dowel.WithdrawalFactors(f.Kind, c), n)
		proved(t, dowel.NewSlanted(shear, out))
		sheet, _ := dowel.FindSheet(rapid.SampledFrom([]string{"20", "18", "16", "14", "12", "11", "10"}).Draw(t, "gauge"))
		proved(t, dowel.NewStrap(shear, sheet, rapid.Float64Range(0.5, 3).Draw(t, "w"), rapid.IntRange(1, 3).Draw(t, "abreast")))
		proved(t, dowel.NewTie(
			dowel.Forces{Up: pull - 500, Along: push, Across: rapid.Float64Range(0, 200).Draw(t, "across")},
			dowel.Rating{Up: 600, Along: rapid.Float64Range(0, 200).Draw(t, "rated along"), Across: 100, Gravity: 0.5},
			rapid.SampledFrom([]float64{0.36, 0.5, 0.55}).Draw(t, "G")))
	})
}

// The interaction is the lesser value at either end, and between the two in between.
func TestSlantedLaws(t *testing.T) {
	lag := sized(t, "lag screw", "3/8", 5)
	v := dowel.NewLateral(lag, dowel.Joint{Side: ledger, Main: rim})
	w := dowel.NewWithdrawal(lag, 0.5, 3.5, false)
	fl, fw := dowel.LateralFactors(lag.Kind, wind), dowel.WithdrawalFactors(lag.Kind, wind)
	at := func(shear, pull float64) dowel.Slanted {
		return dowel.NewSlanted(dowel.NewShear(shear, v, fl, 1), dowel.NewPull(pull, w, fw, 1))
	}
	calctest.Close(t, v.Value*1.6, at(100, 0).One, 1e-9, 0, "NDS 2018 eq. 12.4-1 at 0 degrees is Z'")
	calctest.Close(t, w.Value*1.6, at(0, 100).One, 1e-9, 0, "at 90 degrees W'p")
	both := at(100, 100)
	calctest.Close(t, 45, both.Angle, 1e-12, 0)
	calctest.Close(t, 2*v.Value*w.Value*1.6/(v.Value+w.Value), both.One, 1e-9, 0, "at 45 degrees, by hand")
}

// A strap of 1-1/4 in. and 20 gauge: 0.6 x 33 ksi x 0.045 in² = 891 lb, at one nail
// hole 0.5 x 45 ksi x 0.036 x (1.25 - 0.131 - 3/32) in² = 830 lb; an 8d nail in it
// 150 lb under wind.
func TestStrapByHand(t *testing.T) {
	nail := sized(t, "nail", "8d common", 0)
	sheet, ok := dowel.FindSheet("20")
	require.True(t, ok)
	v := dowel.NewLateral(nail, dowel.Joint{Side: dowel.Member{Material: dowel.Steel, Thickness: sheet.Thickness()}, Main: fir})
	s := dowel.NewStrap(dowel.NewShear(500, v, dowel.LateralFactors(nail.Kind, wind), 4), sheet, 1.25, 1)
	calctest.Near(t, 891, s.Yielding, 0.01, "AISC 360-16 D2")
	calctest.Near(t, 830.5, s.Rupture, 0.1, "AISC 360-16 D2")
	calctest.Near(t, 150, s.Nails.One, 1, "NDS 2018 12.3.1")
	assert.Equal(t, s.Nails.Capacity, s.Capacity, "four nails are weaker than the steel")
	many := dowel.NewStrap(dowel.NewShear(500, v, dowel.LateralFactors(nail.Kind, wind), 12), sheet, 1.25, 1)
	assert.Equal(t, many.Rupture, many.Capacity, "twelve are not")
}

// Trap: half-nailed hardware taken at its full strength. A strap holds by the nails that
// are in it: half of them, half of the value.
func TestTrapHalfNailedStrap(t *testing.T) {
	nail := sized(t, "nail", "8d common", 0)
	sheet, _ := dowel.FindSheet("16")
	v := dowel.NewLateral(nail, dowel.Joint{Side: dowel.Member{Material: dowel.Steel, Thickness: sheet.Thickness()}, Main: fir})
	held := func(n int) float64 {
		return dowel.NewStrap(dowel.NewShear(400, v, dowel.LateralFactors(nail.Kind, wind), n), sheet, 1.25, 1).Capacity
	}
	calctest.Close(t, held(4)/2, held(2), 1e-12, 0, "NDS 2018 11.1.2")
	assert.Zero(t, held(0))
}

// Trap: the load duration factor put on a rating that holds it already, on steel, or on
// the lag screw's root.
func TestTrapDurationOnRatingsAndSteel(t *testing.T) {
	tie := dowel.NewTie(dowel.Forces{Up: 500}, dowel.Rating{Up: 400, Gravity: 0.42}, 0.5)
	calctest.Close(t, 1.25, tie.Ratio(), 1e-12, 0, "500 lb on a rating of 400 lb")
	lag := sized(t, "lag screw", "1/2", 6)
	calctest.Near(t, 2919, dowel.NewRod(1, lag, lumber.ASD, 1).Capacity, 0.5, "0.6 x 45 ksi x 0.1081 in²")
}

// Trap: uplift and side force on one tie looked at one by one.
func TestTrapTieTakesAllForcesAtOnce(t *testing.T) {
	r := dowel.Rating{Up: 500, Along: 100, Across: 100, Gravity: 0.5}
	assert.InDelta(t, 1.3, dowel.NewTie(dowel.Forces{Up: 400, Along: 50}, r, 0.5).Ratio(), 1e-12)
	unrated := dowel.Rating{Up: 500, Gravity: 0.5}
	assert.True(t, math.IsInf(dowel.NewTie(dowel.Forces{Up: 1, Along: 1}, unrated, 0.5).Ratio(), 1), "no side rating")
	assert.Zero(t, dowel.NewTie(dowel.Forces{Up: -400}, r, 0.5).Ratio(), "what presses lifts nothing")
}

// Trap: a rating for Douglas Fir-Larch used on Spruce-Pine-Fir or cedar.
func TestTrapRatingOfAnotherSpecies(t *testing.T) {
	r := dowel.Rating{Up: 500, Gravity: 0.50}
	assert.True(t, math.IsInf(dowel.NewTie(dowel.Forces{Up: 100}, r, 0.42).Ratio(), 1))
	assert.InDelta(t, 0.2, dowel.NewTie(dowel.Forces{Up: 100}, r, 0.50).Ratio(), 1e-12)
}

// Load and resistance factor design: K_F phi lambda = 3.32 x 0.65 x 1.0 under wind for
// 1.6 (NDS 2018 Tables N1 to N3).
func TestResistanceFormat(t *testing.T) {
	for kind := dowel.Nail; kind <= dowel.Bolt; kind++ {
		c := dowel.Conditions{Method: lumber.LRFD, Duration: lumber.TenMinutes}
		calctest.Close(t, 3.32*0.65, dowel.LateralFactors(kind, c).Product, 1e-12, 0, kind.String())
		c.Duration = lumber.TwoMonths
		calctest.Close(t, 3.32*0.65*0.8, dowel.WithdrawalFactors(kind, c).Product, 1e-12, 0, kind.String())
	}
}

func TestRestAllocatesNothing(t *testing.T) {
	lag, bolt := sized(t, "lag screw", "3/8", 5), sized(t, "bolt", "1/2", 0)
	sheet, _ := dowel.FindSheet("16")
	v, w := dowel.NewLateral(lag, dowel.Joint{Side: ledger, Main: rim}), dowel.NewWithdrawal(lag, 0.5, 3, false)
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		shear := dowel.NewShear(300, v, dowel.LateralFactors(lag.Kind, wind), 2)
		sink += dowel.NewSlanted(shear, dowel.NewPull(200, w, dowel.WithdrawalFactors(lag.Kind, wind), 2)).Ratio()
		sink += dowel.NewHeadPull(200, lag, ledger, wind, 2).Ratio() + dowel.NewRod(200, lag, lumber.ASD, 2).Ratio()
		sink += dowel.NewStrap(shear, sheet, 1.25, 1).Ratio()
		sink += dowel.NewTie(dowel.Forces{Up: 2}, dowel.Rating{Up: 3, Gravity: 0.4}, 0.5).Ratio()
		place := dowel.Place{End: 4, Top: 3, Bottom: 3, Spacing: 4, Row: 2}
		sink += dowel.NewLayout(dowel.NewNeeds(bolt, 1.5, dowel.TowardTop), place).Factor
		sink += dowel.NewGroup(dowel.Row{
			Count: 3, Spacing: 2, Diameter: 0.5, MainModulus: 1.6e6, SideModulus: 1.6e6, MainArea: 12, SideArea: 8,
		}).Factor
	}))
}
