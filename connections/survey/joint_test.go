package survey_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam"
	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/connections/survey"
	"patiocover/loads/roof"
)

// asked is a demand by both ways.
func asked(main, part float64) survey.Demand { return survey.Demand{Main: main, Component: part} }

// Trap: a joint that nobody saw as OK, however little the wind asks.
func TestTrapUnknownIsOK(t *testing.T) {
	unseen := survey.NewCapacity(survey.Seen{})
	for _, d := range []survey.Demand{asked(0, 0), asked(10, 20), asked(math.NaN(), 0)} {
		assert.Equal(t, survey.OpenUp, survey.NewJoint(d, unseen, nil).Verdict)
	}
	worst := survey.NewCapacity(tied(500, 10))
	judged := survey.NewJoint(asked(100, 200), unseen, &worst)
	assert.Equal(t, survey.OK, judged.Verdict, "once enough of its zone has been seen")
	assert.True(t, judged.Assumed)
	half := survey.NewCapacity(tied(500, 0))
	assert.Equal(t, survey.OpenUp, survey.NewJoint(asked(100, 200), unseen, &half).Verdict, "worst seen by half")
	assert.Equal(t, survey.OpenUp, survey.NewJoint(asked(100, 200), half, &worst).Verdict, "it stands in for no joint that was seen")
	assert.Equal(t, survey.OpenUp, survey.Joint{}.Verdict, "nothing said is the weakest verdict")
}

// Trap: a required rating rounded down, or only the part that the old joint lacks.
func TestTrapRatingOfATie(t *testing.T) {
	j := survey.NewJoint(asked(300, 301), survey.NewCapacity(tied(300, 10)), nil)
	assert.Equal(t, survey.Over, j.Verdict)
	calctest.Near(t, 325, j.Rating, 1e-9, "the whole of 301 lb, not the 1 lb that lacks")
	ok := survey.NewJoint(asked(300, 299), survey.NewCapacity(tied(300, 10)), nil)
	assert.Equal(t, survey.OK, ok.Verdict)
	assert.Zero(t, ok.Rating)
	calctest.Near(t, 1, ok.Ratio(), 1e-12)
}

func TestJointVerdicts(t *testing.T) {
	rusted := tied(500, 10)
	rusted.Condition = survey.Rust
	none := survey.Seen{Evidence: survey.NoneSeen}
	cases := []struct {
		name   string
		demand survey.Demand
		seen   survey.Seen
		want   survey.Verdict
	}{
		{"holds both ways", asked(200, 400), tied(500, 10), survey.OK},
		{"over as a component", asked(200, 600), tied(500, 10), survey.Over},
		{"main system accepted", survey.Demand{Main: 200, Component: 600, MainOnly: true}, tied(500, 10), survey.OK},
		{"the other unknown", survey.Demand{Main: 200, Component: math.NaN(), MainOnly: true}, tied(500, 10), survey.OK},
		{"component unknown", asked(200, math.NaN()), tied(500, 10), survey.NotChecked},
		{"the cover brings it over", survey.Demand{Main: 200, Component: 400, Cover: 101}, tied(500, 10), survey.Over},
		{"a cover that weighs relieves nothing", survey.Demand{Main: 600, Component: 600, Cover: -200}, tied(500, 10), survey.Over},
		{"nothing there, nothing lifts", asked(0, 0), none, survey.OK},
		{"nothing there", asked(1, 0), none, survey.Over},
		{"damaged, nothing lifts", asked(0, 0), rusted, survey.Over},
		{"damaged", asked(100, 0), rusted, survey.Over},
	}
	for _, c := range cases {
		j := survey.NewJoint(c.demand, survey.NewCapacity(c.seen), nil)
		assert.Equal(t, c.want, j.Verdict, c.name)
		if c.want != survey.NotChecked {
			e := j.Explain()
			assert.NoError(t, calctest.Prove(e.Lines), c.name)
			assert.Equal(t, j.Ratio(), e.Ratio(), c.name)
		}
	}
	assert.True(t, math.IsInf(survey.NewJoint(asked(200, math.NaN()), survey.NewCapacity(tied(500, 10)), nil).Explain().Ratio(), 1))
}

// Worse evidence never gives a better verdict: what is not OK stays so with a nail less, a
// lighter wood, damage, or nothing seen. More uplift neither.
func TestWorseEvidenceIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawn(t)
		d := asked(rapid.Float64Range(0, 800).Draw(t, "main"), rapid.Float64Range(0, 800).Draw(t, "part"))
		d.Cover = rapid.Float64Range(0, 300).Draw(t, "cover")
		j := survey.NewJoint(d, survey.NewCapacity(s), nil)
		if err := calctest.Prove(j.Explain().Lines); err != nil || j.Ratio() != j.Explain().Ratio() {
			t.Fatal(err, j.Ratio())
		}
		if j.Verdict == survey.OK {
			if !(j.Ratio() <= 1) || j.Rating != 0 {
				t.Fatalf("OK at %v", j.Ratio())
			}
			return
		}
		worse := s
		switch rapid.IntRange(0, 4).Draw(t, "worse") {
		case 0:
			worse = survey.Seen{}
		case 1:
			worse.Condition = rapid.SampledFrom([]survey.Condition{survey.NotRecorded, survey.Rust, survey.Decay}).Draw(t, "c")
		case 2:
			worse.Gravity.Value = 0
		case 3:
			worse.Present = max(0, s.Present-1)
		case 4:
			worse.Rating = 0
		}
		if worse.Evidence == survey.Strap && worse.Rating == 0 && s.Rating > 0 {
			return // another rule, by the steel, may hold more than a small rating
		}
		if survey.NewJoint(d, survey.NewCapacity(worse), nil).Verdict == survey.OK && !(worse.Evidence == survey.NoneSeen) {
			t.Fatalf("%v is OK, %v was not", worse, s)
		}
		more := d
		more.Main += 50
		if survey.NewJoint(more, survey.NewCapacity(s), nil).Verdict == survey.OK {
			t.Fatal("OK with more uplift")
		}
	})
}

func TestOpeningPlan(t *testing.T) {
	cases := []struct {
		zone        survey.Zone
		total, seen int
		least, more int
		enough      bool
	}{
		{survey.Corner, 8, 0, 8, 8, false}, {survey.Corner, 8, 7, 8, 1, false}, {survey.Corner, 8, 8, 8, 0, true},
		{survey.Edge, 6, 3, 6, 3, false}, {survey.Field, 8, 1, 2, 1, false}, {survey.Field, 8, 2, 2, 0, true},
		{survey.Field, 9, 2, 3, 1, false}, {survey.Field, 1, 0, 1, 1, false}, {survey.Field, 3, 1, 1, 0, true},
		{survey.Field, 0, 0, 0, 0, false},
	}
	for _, c := range cases {
		o := survey.NewOpening(c.zone, c.total, c.seen)
		assert.Equal(t, []int{c.least, c.more}, []int{o.Least, o.More}, "%v %d of %d", c.zone, c.seen, c.total)
		assert.Equal(t, c.enough, o.Enough())
		assert.NoError(t, calctest.Prove(o.Lines()))
	}
}

func TestWorstSeen(t *testing.T) {
	strong, weak := survey.NewCapacity(tied(500, 10)), survey.NewCapacity(tied(500, 5))
	half, unseen := survey.NewCapacity(tied(500, 0)), survey.NewCapacity(survey.Seen{})
	none := survey.NewCapacity(survey.Seen{Evidence: survey.NoneSeen})
	pick := func(all ...survey.Capacity) survey.Basis {
		c, ok := survey.Worst(all)
		require.True(t, ok)
		return c.Basis
	}
	got, _ := survey.Worst([]survey.Capacity{strong, weak, unseen})
	calctest.Near(t, 250, got.Uplift, 1e-9)
	assert.Equal(t, survey.NothingThere, pick(strong, none, weak))
	assert.Equal(t, survey.NoCount, pick(none, half, strong), "what was seen by half comes first")
	_, ok := survey.Worst([]survey.Capacity{unseen})
	assert.False(t, ok)
}

// Trap: a path broken below the ties that pass: at the beam, the post, or the slab.
func TestTrapTiesThatEndAtTheBeam(t *testing.T) {
	cases := []struct {
		name     string
		evidence survey.Evidence
		sound    bool
		rating   float64
		want     survey.Verdict
		tie      float64
	}{
		{"unknown", survey.Unknown, true, 5000, survey.OpenUp, 1050},
		{"nothing there", survey.NoneSeen, true, 0, survey.Over, 1050},
		{"not sound", survey.Strap, false, 5000, survey.OpenUp, 1050},
		{"no rating", survey.Bolts, true, 0, survey.OpenUp, 1050},
		{"too weak", survey.Strap, true, 1000, survey.Over, 1050},
		{"holds", survey.Strap, true, 1050, survey.OK, 0},
	}
	for _, c := range cases {
		d := survey.NewDown(350, 3, c.evidence, c.sound, c.rating)
		assert.Equal(t, c.want, d.Verdict, c.name)
		calctest.Near(t, c.tie, d.Tie, 1e-9, c.name)
		assert.NoError(t, calctest.Prove(d.Explain().Lines))
		assert.Equal(t, d.Ratio(), d.Explain().Ratio())
	}
	assert.Equal(t, survey.OK, survey.NewDown(0, 3, survey.NoneSeen, true, 0).Verdict, "nothing lifts")
	assert.Equal(t, survey.NotChecked, survey.NewDown(math.NaN(), 3, survey.Strap, true, 100).Verdict)
}

// An existing element may take 5 percent more in gravity and 10 percent sideways; nothing
// known of it is no leave.
func TestIncrease(t *testing.T) {
	for _, c := range []struct {
		before, added float64
		lateral       bool
		ok            bool
	}{
		{1000, 50, false, true}, {1000, 51, false, false}, {1000, 100, true, true}, {1000, 101, true, false},
		{1000, -200, false, true}, {0, 1, false, false},
	} {
		i := survey.NewIncrease(c.before, c.added, c.lateral)
		assert.Equal(t, c.ok, i.Ratio() <= 1, "%v on %v", c.added, c.before)
		if c.before > 0 {
			assert.NoError(t, calctest.Prove(i.Explain().Lines))
			assert.Equal(t, i.Ratio(), i.Explain().Ratio())
		}
	}
}

// The inner support of two bays against the stiffness method of a continuous beam: the
// three-moment formula is exact for two spans.
func TestSupportAgreesWithAContinuousBeam(t *testing.T) {
	basis, ok := roof.PlainBasis(0, true, roof.Enclosed)
	require.True(t, ok)
	for _, spans := range [][2]float64{{10, 10}, {8, 16}, {14, 5}} {
		j := roof.TableJoint("C", 110, 20*calc.Ft, 2*calc.Ft)
		u := roof.NewSupport(j, basis, roof.Bays{
			Place: roof.AtRidge, Before: spans[0] * calc.Ft, After: spans[1] * calc.Ft, RunsOn: true,
		})
		l1, all := spans[0]*calc.Ft, (spans[0]+spans[1])*calc.Ft
		line, err := beam.NewLine(all, []float64{0, l1, all})
		require.NoError(t, err)
		plan, err := beam.NewPlan(line, [][]beam.Load{{
			beam.Uniform(0, l1, u.Near*j.Spacing), beam.Uniform(l1, all, u.Far*j.Spacing),
		}})
		require.NoError(t, err)
		var r beam.Response
		plan.Forces([]float64{1}, &r)
		calctest.Close(t, r.Reactions[1], u.Balance, 1e-9, 0, spans)
	}
}

func TestJointAllocatesNothing(t *testing.T) {
	c, sink := survey.NewCapacity(tied(500, 10)), 0.0
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink += survey.NewJoint(asked(1, 2), c, nil).Ratio() }))
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink += survey.NewDown(1, 2, survey.Strap, true, 3).Ratio() }))
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink += survey.NewIncrease(1, 2, true).Ratio() }))
}

func TestWords(t *testing.T) {
	for e := survey.Unknown; e <= survey.Strap; e++ {
		assert.NotEmpty(t, e.String())
	}
	for c := survey.NotRecorded; c <= survey.Gap; c++ {
		assert.Equal(t, c > survey.Sound, c.Damaged(), c.String())
	}
	for z := survey.Corner; z <= survey.Field; z++ {
		assert.NotEmpty(t, z.String())
	}
}

// A strap rated 500 lb holds 410 lb and not 620 lb: the end zone of an old roof and its
// overhanging side in a made-up survey.
func ExampleNewJoint() {
	strap := survey.NewCapacity(survey.Seen{
		Evidence: survey.Strap, Condition: survey.Sound, Rating: 500, Needed: 10, Present: 10,
		Gravity: of(0.5),
	})
	for _, uplift := range []float64{410, 620} {
		j := survey.NewJoint(survey.Demand{Main: uplift, Component: uplift}, strap, nil)
		fmt.Printf("%.2f, holds %v, tie rated %.0f lb\n", j.Ratio(), j.Verdict == survey.OK, j.Rating)
	}
	// Output:
	// 0.82, holds true, tie rated 0 lb
	// 1.24, holds false, tie rated 625 lb
}
