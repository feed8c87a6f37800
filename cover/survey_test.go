package cover_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
)

// surveyCalculations gathers what a survey writes out.
func surveyCalculations(x *cover.Survey) []written {
	if x == nil {
		return nil
	}
	var out []written
	add := func(where string, lines []calc.Line) {
		if len(lines) > 0 {
			out = append(out, written{where, lines})
		}
	}
	add("layers of the old roof", x.LayerLines)
	add("zones of the old roof", x.Roof.Zones)
	add("openings of the house", x.Roof.Openings)
	for _, p := range x.Pulls {
		add(p.Place+" "+p.Zone+" main", p.Lines)
		add(p.Place+" "+p.Zone+" component", p.PartLines)
		add(p.Place+" "+p.Zone+" cover", p.CoverLine)
	}
	for _, j := range x.Joints {
		if j.Check != nil {
			add("joint "+j.Mark, j.Check.Lines)
		}
	}
	for _, o := range x.Opening {
		add("to open "+o.Zone, o.Lines)
	}
	for _, b := range x.Below {
		if b.Check != nil {
			add(b.Line+" "+b.Link, b.Check.Lines)
		}
	}
	if x.Tails == nil {
		return out
	}
	for _, d := range x.Tails.Statics {
		add(d.Title, d.Lines)
	}
	for _, c := range x.Tails.Checks {
		add("tail "+c.Name+" "+c.Combination, c.Check.Lines)
	}
	for _, r := range x.Tails.Rules {
		if r.Check != nil {
			add("rule "+r.Name, r.Check.Lines)
		}
	}
	return out
}

// surveyFaults compares the verdicts of a survey with its numbers.
func surveyFaults(x *cover.Survey) []string {
	var out []string
	for _, j := range x.Joints {
		switch {
		case j.Verdict == cover.OK && (j.Uplift == nil || *j.Uplift > j.Capacity+1 || j.Ratio > 1):
			out = append(out, j.Mark+": OK above its capacity")
		case j.Check != nil && j.Ratio != cover.Ratio(j.Check.Ratio()):
			out = append(out, fmt.Sprintf("%s: ratio %v, written %v", j.Mark, j.Ratio, j.Check.Ratio()))
		case j.Rating > 0 && j.Rating < *j.Uplift-1e-6:
			out = append(out, j.Mark+": a tie below its demand")
		}
		if x.Verdict.Worse(j.Verdict) != x.Verdict {
			out = append(out, j.Mark+": worse than the survey")
		}
	}
	for _, b := range x.Below {
		if x.Verdict.Worse(b.Verdict) != x.Verdict {
			out = append(out, b.Link+": worse than the survey")
		}
	}
	return out
}

// surveyed is the made-up cover on an old roof with joints of one wall.
func surveyed(t testing.TB, joints ...cover.Joint) cover.Input {
	in := demo(t, "survey")
	in.House.Joints = joints
	return in
}

// strapped is a sound strap with all its nails at the eave.
func strapped(mark, zone string, rating float64) cover.Joint {
	return cover.Joint{
		Mark: &mark, Place: new("eave"), Zone: &zone, Evidence: new("strap"), Condition: new("sound"),
		Rating: &rating, Asked: new(10), There: new(10), Species: new("Douglas Fir-Larch"), Line: new("street side"),
	}
}

// hidden is a joint that nobody saw.
func hidden(mark, zone string) cover.Joint {
	return cover.Joint{Mark: &mark, Place: new("eave"), Zone: &zone, Evidence: new("unknown"), Line: new("street side")}
}

// jointOf finds a joint of a survey.
func jointOf(t testing.TB, x *cover.Survey, mark string) cover.SurveyJoint {
	t.Helper()
	require.NotNil(t, x)
	for _, j := range x.Joints {
		if j.Mark == mark {
			return j
		}
	}
	require.Fail(t, "no joint "+mark)
	return cover.SurveyJoint{}
}

// The made-up survey: three toe-nails in the field are too weak, a strap of 500 lb along
// the edge is over by the larger of both ways, and what nobody saw stays open. The uplift
// of the closed end zone lies within the share that the hand figure allows for method.
func TestScenarioOldJoints(t *testing.T) {
	r := size(t, demo(t, "survey"))
	x := r.Survey
	a, b, c := jointOf(t, x, "A"), jointOf(t, x, "B"), jointOf(t, x, "C")
	assert.Equal(t, cover.Over, a.Verdict)
	assert.Equal(t, cover.Over, b.Verdict)
	assert.Equal(t, cover.OpenUp, c.Verdict)
	assert.Equal(t, "enclosed", x.Roof.Enclosure, "by its openings")
	calctest.Close(t, 410, *x.Pulls[0].Main, 0.35, 0, "hand figure of the end zone, wind within 35 percent by method")
	assert.GreaterOrEqual(t, a.Rating, *a.Uplift)
	assert.Contains(t, b.Reason, "tie rated")
	assert.Contains(t, a.Prescriptive, "designed connections", "a beam is no rafter")
	assert.NotEqual(t, string(cover.OK), a.Prescriptive)
}

// The forty joints by hand, in the corner of the eave: 115 mph, exposure C at 15 ft, Kz
// 0.85, q = 0.00256 x 0.85 x 0.85 x 115² = 24.46 psf, 0.6 q = 14.68; D at its least 1.6 +
// 1.0 + 2.2 = 4.8 psf, 0.6 D = 2.88; w2 = 14.68 x (1.07 + 0.18) - 2.88 = 15.47, wo = 14.68 x
// 1.77 - 2.88 = 23.10; 2 ft of spacing, 12 ft of bay, 2 ft of overhang: 2 (15.47 x 6 + 23.10
// x 2 x (1 + 2/24)) = 285.7 lb. Three 16d box toe-nails in a two-by plate of Hem-Fir: 3 x
// 0.67 x 1380 x 0.43^2.5 x 0.135 x (1.5/cos 30) x 1.6 = 125.9 lb.
func TestFortyByHand(t *testing.T) {
	x := size(t, demo(t, "ranch")).Survey
	require.Equal(t, "corner", x.Pulls[0].Zone)
	calctest.Near(t, 285.7, *x.Pulls[0].Main, 1)
	calctest.Near(t, 125.9, jointOf(t, x, "N3").Capacity, 1)
}

// The prescriptive word stands beside the verdict and never makes it: three 16d box nails
// in spruce hold less than the 200 lb up to which new framing may be nailed by schedule.
func TestTrapPrescriptiveAsVerdict(t *testing.T) {
	in := demo(t, "survey")
	h := &in.House
	in.Site.WindSpeed, in.Site.Exposure = new(110.0), new("B")
	h.OldRoof.System, h.RafterSpacing, h.RafterOverhang, h.RafterSpan = new("rafters"), new(24.0), new(2.0), new(24.0)
	h.Joints = []cover.Joint{{
		Mark: new("A"), Place: new("eave"), Zone: new("edge"), Evidence: new("toenails"), Condition: new("sound"),
		Fastener: new("16d box"), Count: new(3), Plate: new(5.5), Species: new("Spruce-Pine-Fir"),
	}}
	j := jointOf(t, size(t, in).Survey, "A")
	assert.Contains(t, j.Prescriptive, "could be nailed by schedule")
	calctest.Near(t, 147, j.Capacity, 1)
	assert.Equal(t, cover.Over, j.Verdict)
	h.RafterSlope = new(6.0)
	assert.Contains(t, jointOf(t, size(t, in).Survey, "A").Prescriptive, "without reckoning")
	in.Site.WindSpeed, in.Site.Exposure = new(140.0), new("C")
	assert.Contains(t, jointOf(t, size(t, in).Survey, "A").Prescriptive, "new framing needs a tie")
}

// A cover on the rafter tails makes the roof larger, and its zones wider.
func TestZonesOfTheEnlargedRoof(t *testing.T) {
	in := demo(t, "ranch")
	in.House.RafterSlope, in.House.OldRoof.Length, in.House.RafterHeight = new(3.0), new(200.0), new(20.0)
	hung := size(t, in).Survey.Roof
	in.Cover.Attachment = new("ledger")
	own := size(t, in).Survey.Roof
	calctest.Near(t, 0.1*(24+4+10), hung.Edge, 1e-9, "a tenth of the whole depth, 0.4 h being more than it")
	assert.Less(t, own.Edge, hung.Edge)
	assert.Less(t, own.End, hung.End)
}

// The same roof with the main system accepted: the strap along the closed edge holds where
// the wind asks no more than its rating.
func TestMainSystemAccepted(t *testing.T) {
	in := surveyed(t, strapped("B", "edge", 600))
	assert.Equal(t, cover.Over, jointOf(t, size(t, in).Survey, "B").Verdict)
	in.House.OldRoof.TieWind = new("main_system")
	assert.Equal(t, cover.OK, jointOf(t, size(t, in).Survey, "B").Verdict)
}

// Forty joints, three classes of evidence: the unseen of a field of which one in four was
// seen take the worst of them; those of the corner and of a field seen by less stay open.
func TestForty(t *testing.T) {
	r := size(t, demo(t, "ranch"))
	x, count := r.Survey, 0
	for _, j := range x.Joints {
		count += j.Count
	}
	assert.Equal(t, 40, count)
	n3, n4 := jointOf(t, x, "N3"), jointOf(t, x, "N4")
	assert.Equal(t, n3.Capacity, n4.Capacity)
	assert.Contains(t, n4.Reason, "worst seen in its zone")
	assert.Equal(t, cover.OpenUp, jointOf(t, x, "N5").Verdict, "a corner that was seen by half")
	assert.Equal(t, cover.OpenUp, jointOf(t, x, "S3").Verdict, "3 of 14 are less than one in four")
	assert.Contains(t, jointOf(t, x, "S2").Reason, "replace on damage")
	assert.NotEmpty(t, x.Ranking)
	for i := 1; i < len(x.Ranking); i++ {
		assert.GreaterOrEqual(t, x.Ranking[i-1].Ratio, x.Ranking[i].Ratio, "the most urgent first")
	}
	require.NotNil(t, x.TieCost)
	sum := 0.0
	for _, k := range x.Ranking {
		sum += *k.Cost
	}
	calctest.Near(t, sum, *x.TieCost, 1e-9)
	require.NotNil(t, x.Tails)
	assert.Equal(t, cover.Over, x.Tails.Verdict)
	assert.Len(t, x.Tails.Alternatives, 3)
	for _, a := range x.Tails.Alternatives {
		assert.True(t, a.Possible, a.Reason)
		assert.NotNil(t, a.Headroom, a.Name)
	}
}

// Trap: dead load with ballast, former layers, or layers that will go, as resisting.
func TestTrapBallastHoldsTheRoofDown(t *testing.T) {
	in := demo(t, "survey")
	in.House.OldRoof.Layers = []cover.OldLayer{{Name: new("deck"), Weight: new(5.0), Fixed: new(true)}}
	base := *size(t, in).Survey.Pulls[0].Uplift
	for _, l := range []cover.OldLayer{
		{Name: new("gravel ballast per in. (loose, ~100 pcf)"), Weight: new(8.0)},
		{Name: new("river rock"), Weight: new(8.0), State: new("removed")},
		{Name: new("tile"), Weight: new(8.0), State: new("removed"), Fixed: new(true)},
		{Name: new("tile"), Weight: new(8.0), State: new("to_remove"), Fixed: new(true)},
		{Name: new("tile"), Weight: new(8.0), State: new("planned"), Fixed: new(true)},
		{Name: new("not fastened"), Weight: new(8.0)},
	} {
		with := in
		with.House.OldRoof.Layers = append([]cover.OldLayer{in.House.OldRoof.Layers[0]}, l)
		calctest.Near(t, base, *size(t, with).Survey.Pulls[0].Uplift, 1e-9, *l.Name, l.State)
	}
	counted := in
	counted.House.OldRoof.Layers = append([]cover.OldLayer{in.House.OldRoof.Layers[0]},
		cover.OldLayer{Name: new("tile"), Weight: new(8.0), Fixed: new(true)})
	assert.Less(t, *size(t, counted).Survey.Pulls[0].Uplift, base)
	fixed := in
	fixed.House.OldRoof.Layers = append([]cover.OldLayer{in.House.OldRoof.Layers[0]},
		cover.OldLayer{Name: new("gravel"), Weight: new(8.0), Fixed: new(true)})
	assert.ErrorContains(t, fixed.Validate(), "house.old_roof.layers[1].fixed")
}

// Trap: the dead load deducted at 2/3, or on another area than the wind works on. One psf
// less on 6 ft of spacing and 6 ft + 2.5 ft of reach adds 0.6 x 51 lb by both ways.
func TestTrapDeadLoadOfTheSameArea(t *testing.T) {
	in := demo(t, "survey")
	in.House.OldRoof.Layers = []cover.OldLayer{{Name: new("deck"), Weight: new(5.0), Fixed: new(true)}}
	heavy := size(t, in).Survey.Pulls[0]
	in.House.OldRoof.Layers[0].Weight = new(4.0)
	light := size(t, in).Survey.Pulls[0]
	calctest.Near(t, 0.6*6*(6+2.5), *light.Main-*heavy.Main, 1e-6)
	calctest.Near(t, 0.6*6*(6+2.5), *light.Component-*heavy.Component, 1e-6)
}

// Trap: the overhang of a cover taken at u s L/2: what hangs at a tail of a/L pulls at the
// heel with 1 + a/L and lifts the next support by its weight.
func TestTrapCoverAtTheEndOfTheTail(t *testing.T) {
	in := demo(t, "ranch")
	x := size(t, in).Survey
	var near, far cover.SurveyPull
	for _, p := range x.Pulls {
		switch p.Place {
		case "eave":
			near = p
		case "far_wall":
			far = p
		}
	}
	assert.Positive(t, near.Cover)
	assert.Positive(t, far.Cover, "the weight of the cover lifts the support behind")
	reaction := near.CoverLine[0]
	require.Equal(t, "R", reaction.Symbol)
	calctest.Near(t, reaction.X*(1+2.0/12), near.Cover, 1e-6, "2 ft of tail, 12 ft to the next support")
	calctest.Near(t, near.Cover, x.Tails.Heel.Value, 1e-9)
}

// Trap: tails of unknown size, cut or state that pass unseen, and tails without their cut.
func TestTrapTailsNobodyMeasured(t *testing.T) {
	for name, forget := range map[string]func(*cover.OldRoof){
		"size":  func(o *cover.OldRoof) { o.TailSize = nil },
		"grade": func(o *cover.OldRoof) { o.TailGrade = nil },
		"cut":   func(o *cover.OldRoof) { o.TailCut = nil },
		"state": func(o *cover.OldRoof) { o.TailSound = nil },
		"rot":   func(o *cover.OldRoof) { o.TailSound = new(false) },
	} {
		in := demo(t, "ranch")
		forget(&in.House.OldRoof)
		x := size(t, in).Survey
		assert.Equal(t, cover.OpenUp, x.Tails.Verdict, name)
		assert.Len(t, x.Tails.Alternatives, 3, name)
		assert.Positive(t, x.Tails.Heel.Value, "what it adds at the heel is known all the same")
	}
}

// Removing dead load never lowers a demand, and adding the cover to the tails never
// lowers that at the heel.
func TestSurveyLaws(t *testing.T) {
	t.Parallel()
	base := demo(t, "ranch")
	base.House.OldRoof.TailSize, base.House.OldRoof.TailCut = new("2x12"), new(0.0) // no other way need be sized
	rapid.Check(t, func(t *rapid.T) {
		in := base
		in.Site.WindSpeed = new(rapid.Float64Range(90, 160).Draw(t, "V"))
		in.House.RafterSpacing = new(rapid.SampledFrom([]float64{16, 24, 48}).Draw(t, "spacing"))
		in.House.RafterSlope = new(rapid.SampledFrom([]float64{0.25, 1, 2, 4}).Draw(t, "slope"))
		in.House.OldRoof.Lines = rapid.SampledFrom([][]float64{nil, {12}, {8, 16}}).Draw(t, "lines")
		weight := rapid.Float64Range(2, 12).Draw(t, "D")
		in.House.OldRoof.Layers = []cover.OldLayer{{Name: new("deck"), Weight: &weight, Fixed: new(true)}}
		first, err := cover.Size(in)
		require.NoError(t, err)
		light := in
		light.House.OldRoof.Layers = []cover.OldLayer{{Name: new("deck"), Weight: new(1.0), Fixed: new(true)}}
		second, err := cover.Size(light)
		require.NoError(t, err)
		for i, p := range first.Survey.Pulls {
			if q := second.Survey.Pulls[i]; p.Uplift != nil && !(*q.Uplift >= *p.Uplift-1e-9) {
				t.Fatalf("%s %s: %v lb with less dead load, %v lb before", p.Place, p.Zone, *q.Uplift, *p.Uplift)
			}
			if p.Cover < 0 || p.Place == "eave" && p.Cover == 0 {
				t.Fatal("the cover lowers the demand at the heel, or is forgotten")
			}
		}
		with, without := first.Survey.Changes[1], first.Survey.Changes[0]
		for i := range with.Pulls {
			if a, b := with.Pulls[i].Uplift, without.Pulls[i].Uplift; a != nil && !(*a >= *b) {
				t.Fatal("with the cover less than without")
			}
		}
		if faults := surveyFaults(first.Survey); len(faults) > 0 {
			t.Fatal(faults)
		}
		for _, w := range surveyCalculations(first.Survey) {
			if err := calctest.Prove(w.lines); err != nil {
				t.Fatal(w.where, err)
			}
		}
	})
}

// Every change that the survey lists stands beside the first state.
func TestChangesSideBySide(t *testing.T) {
	x := size(t, demo(t, "survey")).Survey
	names := ""
	for _, c := range x.Changes {
		names += c.Name + "; "
		require.Len(t, c.Pulls, len(x.Pulls))
		for i, p := range c.Pulls {
			calctest.Near(t, *p.Uplift-*x.Changes[0].Pulls[i].Uplift, *p.More, 1e-9)
		}
	}
	for _, want := range []string{"without the cover", "with the cover", "planned work", "former and loose", "patio enclosed"} {
		assert.Contains(t, names, want)
	}
	former := x.Changes[3]
	assert.True(t, former.Only)
	gravel := 0.6 * 4 * 6 * (6 + 2.5) // 4 psf of gravel gone
	calctest.Near(t, -gravel, *former.Pulls[0].More, 1e-6, "only what was fixed resists now; the gravel did once")
}

// Joints without the size of the roof are never OK, and an input that says nothing of
// the old roof has no survey.
func TestSurveyWithoutARoof(t *testing.T) {
	in := simple()
	assert.Nil(t, size(t, in).Survey)
	in.House.Joints = []cover.Joint{strapped("S", "field", 5000), hidden("H", "corner")}
	in.House.Joints[0].Line, in.House.Joints[1].Line = nil, nil
	x := size(t, in).Survey
	assert.Equal(t, cover.NotChecked, jointOf(t, x, "S").Verdict)
	assert.Equal(t, cover.OpenUp, jointOf(t, x, "H").Verdict)
	assert.False(t, x.Roof.Known)
}

// A small demand under a heavy roof: everything holds, and the survey is OK where all of
// it was seen down to the ground.
func TestSurveyThatHolds(t *testing.T) {
	in := surveyed(t, strapped("A", "corner", 5000))
	in.House.OldRoof.Below = []cover.BelowLine{{
		Line: new("street side"), Joints: new(1.0), Beam: new("strap"), BeamSound: new(true), BeamHolds: new(5000.0),
		Foot: new("bolts"), FootSound: new(true), FootHolds: new(5000.0), GroundHolds: new(5000.0),
	}}
	in.House.OldRoof.Openings = []cover.HouseOpening{
		{Name: new("bedroom"), Kind: new("escape_window"), Room: new(false), Clear: new(40.0)},
	}
	assert.Equal(t, cover.OK, size(t, in).Survey.Verdict)
	in.House.OldRoof.Below[0].GroundHolds = nil
	assert.Equal(t, cover.OpenUp, size(t, in).Survey.Verdict, "the ground is a link too")
	in.House.OldRoof.Below = nil
	in.House.Joints[0].Line = nil
	assert.Equal(t, cover.OpenUp, size(t, in).Survey.Verdict, "a tie that ends at the beam")
}

// What the rooms behind ask of the cover.
func TestOpeningsUnderTheCover(t *testing.T) {
	answer := func(change func(*cover.Input), item string) string {
		in := demo(t, "survey")
		change(&in)
		for _, c := range size(t, in).Survey.Checklist {
			if strings.Contains(c.Item, item) {
				assert.NotEmpty(t, c.Source, item)
				return c.Answer
			}
		}
		return ""
	}
	nothing := func(*cover.Input) {}
	assert.Equal(t, cover.AnswerPasses, answer(nothing, "escape through bedroom"))
	assert.Equal(t, cover.AnswerPasses, answer(nothing, "openness"))
	assert.Equal(t, cover.AnswerAsk, answer(nothing, "door living room"))
	assert.Equal(t, cover.AnswerFails, answer(func(in *cover.Input) { in.House.OldRoof.Openings[0].Clear = new(35.0) }, "escape"))
	assert.Equal(t, cover.AnswerAsk, answer(func(in *cover.Input) { in.House.OldRoof.Openings[0].Clear = nil }, "escape"))
	assert.Equal(t, cover.AnswerFails, answer(func(in *cover.Input) { in.Cover.Sides = new("walled") }, "escape"))
	assert.Equal(t, cover.AnswerAsk, answer(func(in *cover.Input) { in.Cover.Sides = new("screened") }, "openness"))
	assert.Equal(t, cover.AnswerFails, answer(func(in *cover.Input) { in.House.OldRoof.OpenLong = new(0.6) }, "openness"))
	assert.Equal(t, cover.AnswerAsk, answer(func(in *cover.Input) { in.House.OldRoof.Openings = nil }, "windows and doors"))
}

func TestOldRoofFaults(t *testing.T) {
	cases := []struct {
		change func(*cover.Input)
		want   string
	}{
		{func(in *cover.Input) { in.House.Dead = new(5.0) }, "house.dead_psf"},
		{func(in *cover.Input) {
			in.House.OldRoof.Layers[0].Name, in.House.OldRoof.Layers[0].Weight = new("?"), nil
		}, "layers[0].psf"},
		{func(in *cover.Input) { in.House.OldRoof.Lines = []float64{6, 11.5} }, "interior_lines_ft"},
		{func(in *cover.Input) { in.House.OldRoof.Wall = nil }, "all four areas"},
		{func(in *cover.Input) { in.House.Joints[0].First = new(3) }, "house.joints[0].last"},
		{func(in *cover.Input) { in.House.Joints[0].First, in.House.Joints[0].Last = new(3), new(2) }, "house.joints[0].last"},
		{func(in *cover.Input) { in.House.Joints[0].Species = new("Oak") }, "house.joints[0].species"},
		{func(in *cover.Input) { in.House.Joints[1].RatedFor = new("Oak") }, "house.joints[1].rated_for"},
		{func(in *cover.Input) { in.House.Joints[0].Fastener = new("17d common") }, "house.joints[0].fastener"},
		{func(in *cover.Input) { in.House.Joints[0].Place = new("ridge") }, "house.joints[0].place"},
		{func(in *cover.Input) { in.House.Joints[0].Line = new("nowhere") }, "house.joints[0].line"},
		{func(in *cover.Input) { in.House.Joints[0].End = new(40.0) }, "house.joints[0].end_ft"},
		{func(in *cover.Input) { in.House.OldRoof.Below[1].Line = new("garden side") }, "below[1].line"},
		{func(in *cover.Input) { in.House.OldRoof.TailSize = new("two by six") }, "tail_size"},
		{func(in *cover.Input) { in.House.OldRoof.TailSize, in.House.OldRoof.TailCut = new("2x4"), new(3.5) }, "tail_cut_in"},
		{func(in *cover.Input) { in.House.OldRoof.TailReach = new(2.6) }, "tail_reach_ft"},
		{func(in *cover.Input) { in.House.OldRoof.TailSpecies = new("Oak") }, "tail_species"},
	}
	for _, c := range cases {
		in := demo(t, "survey")
		c.change(&in)
		assert.ErrorContains(t, in.Validate(), c.want, c.want)
	}
}

// The places of a roof with supports between the walls.
func TestPlacesOfTheOldRoof(t *testing.T) {
	in := demo(t, "survey")
	in.House.RafterSpan, in.House.OldRoof.Lines = new(30.0), []float64{10, 18}
	in.House.Joints = nil
	for _, place := range []string{"eave", "far_wall", "interior", "ridge"} {
		j := strapped(place, "field", 500)
		j.Place = &place
		in.House.Joints = append(in.House.Joints, j)
	}
	up := map[string]float64{}
	for _, p := range size(t, in).Survey.Pulls {
		require.NotNil(t, p.Uplift, p.Place)
		up[p.Place] = *p.Uplift
	}
	assert.Greater(t, up["far_wall"], up["eave"], "12 ft of bay against 10 ft")
	ends := in
	ends.House.OldRoof.RunsOn = new(false)
	for _, p := range size(t, ends).Survey.Pulls {
		if p.Place == "interior" || p.Place == "ridge" {
			assert.Less(t, *p.Uplift, up[p.Place], "rafters that end there draw less")
		}
	}
}

// What is said of bolts and of straps without a name reaches their rules.
func TestBoltsAndPlainStraps(t *testing.T) {
	in := surveyed(t,
		cover.Joint{
			Mark: new("B"), Zone: new("field"), Evidence: new("bolts"), Condition: new("sound"), Fastener: new("1/2"), Count: new(2),
			Plate: new(3.5), Rafter: new(1.5), Margin: new(4.0), Species: new("Douglas Fir-Larch"),
		},
		cover.Joint{
			Mark: new("S"), Zone: new("field"), Evidence: new("strap"), Condition: new("sound"), Gauge: new("20"), Width: new(1.25),
			There: new(4), Fastener: new("8d common"), Plate: new(3.5), Species: new("Douglas Fir-Larch"),
		})
	x := size(t, in).Survey
	assert.Contains(t, jointOf(t, x, "B").Basis, "bolts across the grain")
	assert.Contains(t, jointOf(t, x, "S").Basis, "lesser of nails and steel")
	for _, j := range x.Joints {
		assert.Positive(t, j.Capacity, j.Mark)
		require.NoError(t, calctest.Prove(j.Check.Lines), j.Mark)
	}
	unmarked := in
	unmarked.House.Joints[0].Margin = nil
	assert.Equal(t, cover.OpenUp, jointOf(t, size(t, unmarked).Survey, "B").Verdict)
}

// A survey in JSON has no number that JSON has not.
func TestSurveyInJSON(t *testing.T) {
	for _, name := range []string{"survey", "ranch"} {
		text, err := json.Marshal(size(t, demo(t, name)).Survey)
		require.NoError(t, err)
		var back cover.Survey
		require.NoError(t, json.Unmarshal(text, &back))
		again, err := json.Marshal(back)
		require.NoError(t, err)
		assert.JSONEq(t, string(text), string(again))
	}
	assert.True(t, math.IsInf(float64(jointOf(t, size(t, demo(t, "survey")).Survey, "C").Ratio), 1))
}
