package deck_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/deck"
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

var sink float64

// adjusted returns the adjusted values of a piece that is known to exist.
func adjusted(t testing.TB, species, grade, size string, use lumber.Use) *lumber.Adjusted {
	t.Helper()
	s, err := lumber.SectionNamed(size)
	require.NoError(t, err)
	v, err := lumber.Find(species, grade, s)
	require.NoError(t, err)
	a := lumber.Adjust(v, s, use)
	return &a
}

// gravity is dead with live load of the psf given.
func gravity(dead, live float64) deck.Action {
	return deck.Action{
		Name: "D + Lr", Clause: "ASCE 7-16 2.4.1 (3)", Status: calc.Read, Dead: dead * calc.PSF, Plan: live * calc.PSF,
		DeadFactor: 1, PlanFactor: 1, Duration: lumber.SevenDays,
	}
}

// worker is dead load of the psf given with a worker.
func worker(dead float64) deck.Action {
	a := gravity(dead, 0)
	a.Name, a.PlanFactor, a.Worker, a.Stands = "D + 300 lb", 0, 300, 1
	return a
}

// uplift is the least dead load against the suction of the psf given.
func uplift(dead, suction float64) deck.Action {
	return deck.Action{
		Name: "0.6D + 0.6W", Clause: "ASCE 7-16 2.4.1 (7)", Status: calc.Read, Dead: dead * calc.PSF, Wind: -suction * calc.PSF,
		DeadFactor: 0.6, WindFactor: 0.6, Duration: lumber.TenMinutes,
	}
}

// The limits of the deck: l/240 under live load and l/180 under all.
var (
	liveLimit  = member.Limit{Divisor: 240, Source: "IRC 2015 Table R301.7", Status: calc.Read}
	totalLimit = member.Limit{Divisor: 180, Source: "IBC 2018 Table 1604.3", Status: calc.Read}
)

// need is an ordinary roof at a rafter spacing.
func need(spacing, dead, live, suction float64) deck.Need {
	return deck.Need{
		Spacing: spacing, Dead: dead * calc.PSF, Live: live * calc.PSF, LiveLimit: liveLimit, TotalLimit: totalLimit,
		Actions: []deck.Action{gravity(dead, live), worker(dead), uplift(dead/2, suction)},
	}
}

// proved fails unless the written calculation holds line by line and closes on the
// same ratio.
func proved(t rapid.TB, r calc.Result) {
	t.Helper()
	check := r.Explain()
	if err := calctest.Prove(check.Lines); err != nil {
		t.Fatalf("%s: %v", check.Name, err)
	}
	if check.Ratio() != r.Ratio() {
		t.Fatalf("%s: ratio %v, written %v", check.Name, r.Ratio(), check.Ratio())
	}
	for _, l := range check.Lines {
		if l.Source == "" {
			t.Fatalf("%s: line %s has no source", check.Name, l.Symbol)
		}
	}
}

// anyAction draws a combination of any sign.
func anyAction(t *rapid.T) deck.Action {
	a := deck.Action{
		Name: "any", Clause: "ASCE 7-16 2.4.1", Status: calc.Read,
		Dead: rapid.Float64Range(0, 30).Draw(t, "D") * calc.PSF, Plan: rapid.Float64Range(0, 80).Draw(t, "L") * calc.PSF,
		Wind:       rapid.Float64Range(-120, 60).Draw(t, "W") * calc.PSF,
		DeadFactor: rapid.SampledFrom([]float64{0, 0.6, 1, 1.2}).Draw(t, "f_D"),
		PlanFactor: rapid.SampledFrom([]float64{0, 0.75, 1}).Draw(t, "f_L"),
		WindFactor: rapid.SampledFrom([]float64{0, 0.45, 0.6}).Draw(t, "f_W"),
		Duration:   rapid.SampledFrom(lumber.Durations()).Draw(t, "duration"),
	}
	if rapid.Bool().Draw(t, "worker") {
		a.Worker, a.Stands = 300, rapid.SampledFrom([]float64{1, 1.6}).Draw(t, "f_P")
	}
	if rapid.Bool().Draw(t, "strength design") {
		a.Method = lumber.LRFD
	}
	return a
}

// anyStrip draws a piece of any size that has values, flat or on edge.
func anyStrip(t *rapid.T) deck.Strip {
	s := rapid.SampledFrom(lumber.Sections()).Filter(func(s lumber.Section) bool {
		return s.Class == lumber.Dimension && len(lumber.Graded("Hem-Fir", s)) > 0
	}).Draw(t, "section")
	v, err := lumber.Find("Hem-Fir", rapid.SampledFrom(lumber.Graded("Hem-Fir", s)).Draw(t, "grade"), s)
	if err != nil {
		t.Fatal(err)
	}
	a := lumber.Adjust(v, s, lumber.Use{
		Method: rapid.SampledFrom([]lumber.Method{lumber.ASD, lumber.LRFD}).Draw(t, "method"),
		Wet:    rapid.Bool().Draw(t, "wet"), Flat: rapid.Bool().Draw(t, "flat"), Repetitive: rapid.Bool().Draw(t, "repetitive"),
	})
	span, spacing := rapid.Float64Range(6, 60).Draw(t, "span"), rapid.Float64Range(2, 48).Draw(t, "spacing")
	switch rapid.IntRange(0, 2).Draw(t, "kind") {
	case 0:
		layup := rapid.SampledFrom([]deck.Layup{deck.SimpleSpan, deck.TwoSpans, deck.ControlledRandom}).Draw(t, "layup")
		return deck.NewPlank(&a, span, rapid.Bool().Draw(t, "joined"), layup)
	case 1:
		return deck.NewPurlin(&a, span, spacing)
	}
	return deck.NewSlat(&a, span, spacing, rapid.Bool().Draw(t, "blocked"))
}

func TestStripsAreProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, s := anyAction(t), anyStrip(t)
		proved(t, deck.NewBending(&a, &s))
		proved(t, deck.NewShear(&a, &s))
		proved(t, deck.NewBearing(&a, &s))
		proved(t, deck.NewDeflection(a.Plan, &s, liveLimit))
		green := member.Seasoning{Green: rapid.Bool().Draw(t, "green")}
		proved(t, deck.NewSag(a.Dead, a.Plan, &s, green, totalLimit))
	})
}

func TestPanelsAreProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyAction(t)
		p := rapid.SampledFrom(deck.Panels()).Draw(t, "panel")
		span, wet, held := rapid.Float64Range(6, 60).Draw(t, "span"), rapid.Bool().Draw(t, "wet"), rapid.Bool().Draw(t, "held")
		proved(t, deck.NewPanelSpan(span, &p, held))
		proved(t, deck.NewPanelLoad(a.Dead, a.Plan, &p))
		proved(t, deck.NewPanelBending(&a, &p, span, wet))
		proved(t, deck.NewPanelShear(&a, &p, span, wet))
		proved(t, deck.NewPanelDeflection(a.Plan, &p, span, wet, liveLimit))
	})
}

// A wider spacing never helps, and neither does more load, either way.
func TestDecksGrowWithSpacingAndLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spacing, live := rapid.Float64Range(8, 40).Draw(t, "spacing"), rapid.Float64Range(0, 60).Draw(t, "live")
		suction := rapid.Float64Range(0, 100).Draw(t, "suction")
		first := need(spacing, 6, live, suction)
		wider := need(spacing*1.1, 6, live, suction)
		heavier := need(spacing, 6, live+5, suction)
		stronger := need(spacing, 6, live, suction+5)
		for _, more := range []deck.Need{wider, heavier, stronger} {
			for _, p := range deck.Panels() {
				a, b := first.Panel(&p, true, true), more.Panel(&p, true, true)
				if b.Ratio() < a.Ratio() {
					t.Fatalf("%s: %v, and with more %v", p.Rating, a.Ratio(), b.Ratio())
				}
			}
		}
	})
}

// The code table of two-inch planks follows from the checks, entry by entry.
func TestPlanksAgainstTheCode(t *testing.T) {
	piece := adjusted(t, "Douglas Fir-Larch", "No.2", "2x6", lumber.Use{Flat: true})
	misses := 0
	for _, r := range calctest.Published(t, "plank_deck.csv") {
		s := deck.NewPlank(piece, r.Num("span ft")*calc.Ft, true, deck.SimpleSpan)
		a := gravity(r.Num("dead psf"), r.Num("live psf"))
		got := deck.NewBending(&a, &s).Check.Stress
		if r.Text("quantity") == "modulus" {
			limit := member.Limit{Divisor: r.Num("divisor"), Source: r.Text("source")}
			got = deck.NewDeflection(a.Plan, &s, limit).Ratio() * piece.Elasticity.Value
		}
		if r.Has("known miss") {
			misses++
			assert.Greater(t, math.Abs(got-r.Num("want")), r.Num("within"), "no miss any more: %s", r.Text("known miss"))
			continue
		}
		calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("quantity"), r.Num("span ft"), r.Num("live psf"))
	}
	assert.Equal(t, 1, misses)
}

// rated returns the panel with the span rating.
func rated(t *testing.T, rating string) deck.Panel {
	t.Helper()
	i := slices.IndexFunc(deck.Panels(), func(p deck.Panel) bool { return p.Rating == rating })
	require.GreaterOrEqual(t, i, 0, rating)
	return deck.Panels()[i]
}

// The code table of panels is no more generous than the capacities of the manual, with
// two spans and load duration seven days: for the best kind of panel of each rating
// always, for the least kind but for the misses named.
func TestPanelsAgainstTheCode(t *testing.T) {
	misses := 0
	for _, r := range calctest.Published(t, "panel_deck.csv") {
		p := rated(t, r.Text("rating"))
		span, live, total := r.Num("span in"), r.Num("live psf"), r.Num("total psf")
		assert.Equal(t, span, p.Held.Value, p.Rating)
		assert.Equal(t, [2]float64{total * calc.PSF, live * calc.PSF}, [2]float64{p.Total.Value, p.Live.Value}, p.Rating)
		assert.LessOrEqual(t, p.Free.Value, p.Held.Value, p.Rating)
		worst := func(p *deck.Panel) float64 {
			a := gravity(total-live, live)
			return max(deck.NewPanelBending(&a, p, span, false).Ratio(),
				deck.NewPanelDeflection(a.Plan, p, span, false, liveLimit).Ratio(),
				deck.NewPanelDeflection(a.Plan+a.Dead, p, span, false, totalLimit).Ratio())
		}
		if r.Has("known miss") {
			misses++
			assert.Greater(t, worst(&p), 1.0, "no miss any more: %s", r.Text("known miss"))
			assert.Less(t, worst(&p), 1.06, p.Rating)
		} else {
			assert.LessOrEqual(t, worst(&p), 1.0, p.Rating)
		}
		best := p
		best.Strength.Value, best.Stiffness.Value = r.Num("most FbS lb-in/ft")/calc.Ft, r.Num("most EI lb-in2/ft")/calc.Ft
		assert.LessOrEqual(t, worst(&best), 1.0, p.Rating)
		assert.LessOrEqual(t, p.Strength.Value, best.Strength.Value)
		assert.LessOrEqual(t, p.Stiffness.Value, best.Stiffness.Value)
	}
	assert.Equal(t, 2, misses)
}

// What must hold of every panel, and how many values are from memory.
func TestPanelRows(t *testing.T) {
	recalled := 0
	for _, p := range deck.Panels() {
		for _, q := range []deck.Quoted{p.Held, p.Free, p.Total, p.Live, p.Strength, p.Stiffness, p.Shear} {
			assert.Positive(t, q.Value, p.Rating)
			assert.NotEmpty(t, q.Source, p.Rating)
			if q.Status == calc.Recalled {
				recalled++
			}
		}
		assert.Positive(t, p.Weight())
	}
	assert.LessOrEqual(t, recalled, 9, "the shears and one span; this number may only fall")
	assert.Equal(t, "controlled random", deck.ControlledRandom.String())
	assert.Equal(t, "Layup(9)", deck.Layup(9).String())
}

// The residential code lets 32 in. rafters carry 32/16 panels only with held edges, and
// 40/20 without; a suction that breaks the panel asks for more.
func TestLeastPanelBySpacing(t *testing.T) {
	for _, c := range []struct {
		spacing, suction float64
		held, free       string
	}{
		{12, 30, "24/0", "24/0"}, {16, 30, "24/0", "24/0"}, {24, 30, "24/0", "24/16"},
		{32, 30, "32/16", "40/20"}, {48, 30, "48/24", ""}, {32, 130, "40/20", "40/20"},
	} {
		n := need(c.spacing, 6, 20, c.suction)
		p, _ := n.LeastPanel(true)
		assert.Equal(t, c.held, p.Rating, "%v in, held", c.spacing)
		p, ok := n.LeastPanel(false)
		assert.Equal(t, c.free, p.Rating, "%v in, free", c.spacing)
		assert.Equal(t, c.free != "", ok)
	}
}

// A load beyond the table's is computed at the shorter span; a wet panel always is.
func TestPanelLoadsBeyondTheTable(t *testing.T) {
	p := rated(t, "24/16")
	within, beyond := need(16, 10, 40, 20), need(16, 10, 60, 20)
	a, b := within.Panel(&p, false, false), beyond.Panel(&p, false, false)
	assert.True(t, a.ByTable)
	assert.False(t, b.ByTable)
	assert.Less(t, b.Ratio(), 1.0, "70 psf at 16 in. is 0.56 of the bending capacity: 70/144 16² 12/8 / (320 1.25)")
	calctest.Close(t, 70.0/144*16*16/8*12/(320*1.25), b.Down.Ratio(), 1e-12, 0, "by hand")
	wet := within.Panel(&p, false, true)
	assert.False(t, wet.ByTable)
	calctest.Close(t, 0.75, a.Up.Allowable/p.Strength.Value*wet.Up.Allowable/a.Up.Allowable/1.6, 1e-12, 0, "wet service")
	for _, answer := range []deck.PanelAnswer{a, b, wet} {
		most := 0.0
		for _, c := range answer.Checks() {
			proved(t, c.Check)
			assert.NotEmpty(t, c.Name)
			assert.NotEmpty(t, c.Combination)
			most = max(most, c.Check.Ratio())
		}
		assert.Equal(t, answer.Ratio(), most, "every ratio that counts is listed")
	}
}

// The concentrated load on a strip of 12 in. of two-inch planks at 4 ft: 300 4 12/4 /
// 4.5 = 800 psi, five times what the uniform load of the code table asks for.
func TestWorkerOnPlanks(t *testing.T) {
	piece := adjusted(t, "Douglas Fir-Larch", "No.2", "2x6", lumber.Use{Flat: true, Repetitive: true})
	joined, apart := deck.NewPlank(piece, 48, true, deck.SimpleSpan), deck.NewPlank(piece, 48, false, deck.SimpleSpan)
	a := worker(0)
	calctest.Close(t, 800, deck.NewBending(&a, &joined).Check.Stress, 1e-12, 0, "12 in. strip, S = 4.5 in³")
	calctest.Close(t, 800*12/5.5, deck.NewBending(&a, &apart).Check.Stress, 1e-12, 0, "one plank alone")
	calctest.Close(t, 900*1.15*1.3*1.25*1.15, deck.NewBending(&a, &joined).Check.Allowable, 1e-12, 0,
		"Fb C_fu C_F C_D C_r, NDS Supp. 2018 Table 4A")
	wide := adjusted(t, "Douglas Fir-Larch", "No.2", "2x14", lumber.Use{Flat: true})
	strip := deck.NewPlank(wide, 48, true, deck.SimpleSpan)
	assert.Equal(t, 1.0, strip.Share, "a plank wider than the strip carries all of it")
}

// Controlled random planks have a fifth more moment than simple spans and less
// deflection; two spans the same moment and 77/185 of the deflection.
func TestLayups(t *testing.T) {
	piece := adjusted(t, "Hem-Fir", "No.2", "3x6", lumber.Use{Flat: true, Repetitive: true})
	a := gravity(10, 30)
	of := func(l deck.Layup) (moment, moved float64) {
		s := deck.NewPlank(piece, 72, true, l)
		return deck.NewBending(&a, &s).Moment, deck.NewDeflection(a.Plan, &s, liveLimit).Check.Movement
	}
	m1, d1 := of(deck.SimpleSpan)
	m2, d2 := of(deck.TwoSpans)
	m3, d3 := of(deck.ControlledRandom)
	calctest.Close(t, 1, m2/m1, 1e-12, 0)
	calctest.Close(t, 76.8/185, d2/d1, 1e-12, 0)
	calctest.Close(t, 1.2, m3/m1, 1e-12, 0)
	calctest.Close(t, 0.768, d3/d1, 1e-12, 0)
}

// A purlin on edge is held by the metal panel under gravity and by nothing under uplift.
func TestPurlinUnderUplift(t *testing.T) {
	piece := adjusted(t, "Hem-Fir", "No.2", "2x4", lumber.Use{})
	s := deck.NewPurlin(piece, 48, 24)
	down, up := gravity(2, 20), uplift(1, 60)
	assert.Equal(t, 1.0, deck.NewBending(&down, &s).Check.Stability)
	assert.Less(t, deck.NewBending(&up, &s).Check.Stability, 1.0, "NDS 2018 3.3.3: bottom edge free")
	calctest.Close(t, 24*(0.6*60-0.6)/144*48*48/8, deck.NewBending(&up, &s).Moment, 1e-12, 0)
}

// The end of a slat sits on half of a rafter, 3/4 in., and carries a worker there.
func TestBearingOnTheRafter(t *testing.T) {
	piece := adjusted(t, "Hem-Fir", "No.2", "2x4", lumber.Use{Flat: true, Wet: true})
	a, s := worker(5), deck.NewSlat(piece, 24, 6, false)
	b := deck.NewBearing(&a, &s)
	calctest.Close(t, 5.0/144*6*24/2+300, b.Force, 1e-12, 0, "w l / 2 + P")
	calctest.Close(t, b.Force/(3.5*0.75)/(405*0.67), b.Ratio(), 1e-12, 0, "NDS 2018 3.10.2, no C_D, no C_b at the end, wet")
	lifted := uplift(1, 40)
	assert.Zero(t, deck.NewBearing(&lifted, &s).Ratio(), "what lifts presses on nothing")
	n := need(24, 5, 20, 30)
	answer := n.Strip(&s, member.Seasoning{})
	most := 0.0
	for _, c := range answer.Checks() {
		proved(t, c.Check)
		most = max(most, c.Check.Ratio())
	}
	assert.Equal(t, answer.Ratio(), most, "every ratio that counts is listed")
}

func TestSlatsShareAWorkerOnlyWhenBlocked(t *testing.T) {
	piece := adjusted(t, "Hem-Fir", "No.2", "2x4", lumber.Use{Flat: true})
	a := worker(0)
	alone, blocked := deck.NewSlat(piece, 24, 6, false), deck.NewSlat(piece, 24, 6, true)
	calctest.Close(t, 2, deck.NewBending(&a, &alone).Moment/deck.NewBending(&a, &blocked).Moment, 1e-12, 0)
	calctest.Close(t, 300*24/4, deck.NewBending(&a, &alone).Moment, 1e-12, 0)
}

// In strength design a panel and a plank take K_F phi lambda instead of C_D: with 1.2D
// and 1.6Lr, 2.54 0.85 0.8.
func TestStrengthDesign(t *testing.T) {
	a := gravity(10, 20)
	a.Name, a.DeadFactor, a.PlanFactor, a.Method = "1.2D + 1.6Lr", 1.2, 1.6, lumber.LRFD
	p := rated(t, "32/16")
	calctest.Close(t, 370.0/12*2.54*0.85*0.8, deck.NewPanelBending(&a, &p, 32, false).Allowable, 1e-12, 0, "NDS 2018 Table 9.3.1")
	piece := adjusted(t, "Hem-Fir", "No.2", "2x6", lumber.Use{Flat: true, Method: lumber.LRFD})
	s := deck.NewPlank(piece, 32, true, deck.SimpleSpan)
	calctest.Close(t, 850*1.3*1.15*2.54*0.85*0.8, deck.NewBending(&a, &s).Check.Allowable, 1e-12, 0, "NDS 2018 Table N1 to N3")
	calctest.Close(t, (1.2*10+1.6*20)/144, a.Net(), 1e-12, 0)
}

// The least plank of one grade at wider and wider spacing.
func TestLeastPlank(t *testing.T) {
	for _, c := range []struct {
		spacing float64
		want    string
	}{{32, "2x6"}, {96, "3x6"}, {240, ""}} {
		n := need(c.spacing, 8, 20, 30)
		s, ok := n.LeastPlank("Douglas Fir-Larch", "No.2", lumber.Use{}, member.Seasoning{})
		assert.Equal(t, c.want, s.Name, "%v in", c.spacing)
		assert.Equal(t, c.want != "", ok)
	}
	n := need(24, 8, 20, 30)
	_, ok := n.LeastPlank("Douglas Fir-Larch", "Commercial Dex", lumber.Use{}, member.Seasoning{})
	assert.False(t, ok, "no values for decking grades of Table 4E")
}

// Trap 4: no repetitive member factor below slats or on them, whatever their spacing:
// only joined planks share their load.
func TestTrapRepetitiveUnderLattice(t *testing.T) {
	plain := adjusted(t, "Hem-Fir", "No.2", "2x4", lumber.Use{Flat: true})
	assert.Equal(t, 1.0, plain.Bending.Repetitive)
	a := gravity(3, 20)
	slat := deck.NewSlat(plain, 24, 3.5, true)
	calctest.Close(t, 850*1.5*1.1*1.25, deck.NewBending(&a, &slat).Check.Allowable, 1e-12, 0, "Fb C_F C_fu C_D without C_r")
}

// Trap 17: the code table of planks counts live load alone; a heavy roof on long planks
// passes it and still sags.
func TestTrapLiveOnlyDeflectionOfPlanks(t *testing.T) {
	piece := adjusted(t, "Douglas Fir-Larch", "No.2", "2x6", lumber.Use{Flat: true, Repetitive: true})
	s := deck.NewPlank(piece, 80, true, deck.SimpleSpan)
	live := deck.NewDeflection(20*calc.PSF, &s, liveLimit)
	sag := deck.NewSag(20*calc.PSF, 20*calc.PSF, &s, member.Seasoning{Green: true}, totalLimit)
	assert.Less(t, live.Ratio(), 1.0)
	assert.Greater(t, sag.Ratio(), 1.0, "NDS 2018 3.5.2: Kcr 2.0 on the dead load")
}

func TestDecksAllocateNothing(t *testing.T) {
	piece := adjusted(t, "Hem-Fir", "No.2", "2x6", lumber.Use{Flat: true})
	s := deck.NewPlank(piece, 32, true, deck.SimpleSpan)
	p := rated(t, "32/16")
	n := need(32, 6, 20, 40)
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		a, b := n.Strip(&s, member.Seasoning{}), n.Panel(&p, true, false)
		sink += a.Ratio() + b.Ratio()
	}))
}

func BenchmarkNeed(b *testing.B) {
	piece := adjusted(b, "Hem-Fir", "No.2", "2x6", lumber.Use{Flat: true})
	s := deck.NewPlank(piece, 32, true, deck.SimpleSpan)
	n := need(32, 6, 20, 40)
	for b.Loop() {
		a := n.Strip(&s, member.Seasoning{})
		sink += a.Ratio()
	}
}
