package survey_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam"
	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/connections/survey"
)

// tails are rafter tails of Douglas fir, 2 ft past the wall of a 12 ft span.
func tails(t testing.TB, size string, cut float64) survey.Tails {
	s, err := lumber.SectionNamed(size)
	require.NoError(t, err)
	v, err := lumber.Find("Douglas Fir-Larch", "No.2", s)
	require.NoError(t, err)
	return survey.Tails{
		Wood: lumber.Adjust(v, s, lumber.Use{}), Cut: cut, Reach: 2 * calc.Ft, Overhang: 2 * calc.Ft, Span: 12 * calc.Ft,
	}
}

// hanging is a load in a combination of ten minutes or seven days.
func hanging(p, w float64) survey.TailLoad {
	d := lumber.SevenDays
	if p < 0 {
		d = lumber.TenMinutes
	}
	return survey.TailLoad{Name: "trial", Cover: p, Own: w * calc.PLF, Duration: d}
}

// Trap: the moment and the seat cut at the heel, and what the tail does to the next
// support. By hand: P 200 lb at 2 ft, w 40 plf: M = 400 + 80 = 480 lb-ft, V = 280 lb, heel
// 200 x 14 / 12 = 233.3 lb, next support −33.3 lb, which is a lift; on a 2x6 with 1 in. cut,
// fb = 480 x 12 / (1.5 x 4.5² / 6) = 1138 psi.
func TestTrapTailNotchAndInnerSupport(t *testing.T) {
	x := survey.NewTail(hanging(200, 40), tails(t, "2x6", 1))
	calctest.Near(t, 480*calc.LbFt, x.Moment, 1e-9)
	calctest.Near(t, 280, x.Shear, 1e-9)
	calctest.Near(t, 200*14.0/12, x.Heel, 1e-9)
	calctest.Near(t, -200*2.0/12, x.Inner, 1e-9)
	calctest.Near(t, 480*12/(1.5*4.5*4.5/6), x.Bending.Stress, 1e-6)
	whole := survey.NewTail(hanging(200, 40), tails(t, "2x6", 0))
	assert.Greater(t, x.Ratio(), whole.Ratio(), "the cut counts")
	up := survey.NewTail(hanging(-200, -10), tails(t, "2x6", 1))
	assert.True(t, up.Refused, "1 in. of 5-1/2 is more than a sixth, on the tension face")
	assert.True(t, math.IsInf(up.Ratio(), 1))
	assert.Positive(t, up.Inner, "an uplift presses the next support down")
	shallow := survey.NewTail(hanging(-200, -10), tails(t, "2x6", 0.9))
	assert.False(t, shallow.Refused)
	assert.Greater(t, shallow.Notched.Ratio(), shallow.Straight.Ratio(), "the notch on the tension face weakens more")
	thick := survey.NewTail(hanging(-200, -10), tails(t, "4x8", 0.25))
	assert.True(t, thick.Refused, "no cut on the tension face of a piece of 3-1/2 in.")
}

// The statics against the stiffness method: a beam on two supports with its tail loaded.
func TestTailAgreesWithABeam(t *testing.T) {
	line, err := beam.NewLine(14*calc.Ft, []float64{2 * calc.Ft, 14 * calc.Ft})
	require.NoError(t, err)
	plan, err := beam.NewPlan(line, [][]beam.Load{{beam.Point(0, 200)}})
	require.NoError(t, err)
	var r beam.Response
	plan.Forces([]float64{1}, &r)
	x := survey.NewTail(hanging(200, 0), tails(t, "2x6", 0))
	calctest.Near(t, r.Reactions[0], x.Heel, 1e-6)
	calctest.Near(t, r.Reactions[1], x.Inner, 1e-6)
	calctest.Near(t, -r.Bays[0].MomentMin, x.Moment, 1e-6)
}

func TestTailIsProved(t *testing.T) {
	made := map[string]survey.Tails{}
	for _, size := range []string{"2x4", "2x6", "2x8", "4x6"} {
		made[size] = tails(t, size, 0)
	}
	rapid.Check(t, func(t *rapid.T) {
		w := made[rapid.SampledFrom([]string{"2x4", "2x6", "2x8", "4x6"}).Draw(t, "size")]
		w.Cut = rapid.Float64Range(0, 1.5).Draw(t, "cut")
		load := hanging(rapid.Float64Range(-600, 600).Draw(t, "P"), rapid.Float64Range(-40, 60).Draw(t, "w"))
		x := survey.NewTail(load, w)
		if err := calctest.Prove(x.Statics()); err != nil {
			t.Fatal(err)
		}
		most := 0.0
		for _, c := range x.Checks() {
			if err := calctest.Prove(c.Lines); err != nil {
				t.Fatal(c.Name, err)
			}
			most = max(most, c.Ratio())
		}
		if x.Ratio() <= 1 && most > 1 || !x.Refused && x.Ratio() != most {
			t.Fatalf("ratio %v, checks up to %v", x.Ratio(), most)
		}
		if math.Abs(load.Cover-x.Heel-x.Inner) > 1e-6 {
			t.Fatal("what hangs on it does not arrive")
		}
	})
}

func TestTailAllocatesNothing(t *testing.T) {
	w, sink := tails(t, "2x6", 0.5), 0.0
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink += survey.NewTail(hanging(-200, -10), w).Ratio() }))
}
