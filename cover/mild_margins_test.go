package cover_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/cover"
)

// moved sets the quantity of a margin, as its words say.
func moved(in cover.Input, path string, x float64) cover.Input {
	switch path {
	case "cover.projection_ft":
		part := (x - *in.Cover.Overhang) / (*in.Cover.Projection - *in.Cover.Overhang)
		in.Beams.Lines = slices.Clone(in.Beams.Lines)
		for i := range in.Beams.Lines {
			in.Beams.Lines[i] = min(x-*in.Cover.Overhang, in.Beams.Lines[i]*part)
		}
		in.Cover.Projection = &x
	case "cover.width_ft":
		in.Posts.Positions = slices.Clone(in.Posts.Positions)
		for i := range in.Posts.Positions {
			in.Posts.Positions[i] = min(x, in.Posts.Positions[i]*x / *in.Cover.Width)
		}
		in.Cover.Width = &x
	case "rafters.spacing_in":
		in.Rafters.Spacing = &x
	case "site.wind_speed_mph":
		in.Site.WindSpeed = &x
	case "site.roof_live_psf":
		in.Site.RoofLive = &x
	case "site.roof_snow_psf":
		in.Site.RoofSnow = &x
		if is(in.Site.Standard, "ASCE 7-22") {
			in.Site.RoofSnowBasis = new("strength")
		}
	default:
		in.Cover.Layers = append(slices.Clone(in.Cover.Layers), cover.Layer{Name: new("more"), Weight: &x})
	}
	return in
}

// keptSizes is the input with every size of the members given, and as many rafters at each
// knee brace as the report says.
func keptSizes(in cover.Input, r cover.Report) cover.Input {
	in = chosen(in, r)
	for _, m := range r.Members {
		for _, note := range m.Notes {
			n := 0
			if _, err := fmt.Sscanf(note, "Out from the house each braced post stands below %d", &n); err == nil {
				in.Lateral.BracedRafters = &n
			}
		}
	}
	return in
}

// keptWhole is keptSizes with the one footing that was chosen: a post in the ground bends
// the more the deeper it is built.
func keptWhole(in cover.Input, r cover.Report) cover.Input {
	in = keptSizes(in, r)
	if r.Footings != nil && r.Footings.OneSize {
		f := &r.Foundations[0]
		in.Foundation.Width, in.Foundation.Depth = &f.Width, &f.Depth
		if f.Neck > 0 {
			in.Foundation.Neck, in.Foundation.PadThickness = &f.Neck, &f.Pad
		}
	}
	return in
}

// worstMember is the largest ratio of the members, with its mark.
func worstMember(r cover.Report) (cover.Ratio, string) {
	most, mark := cover.Ratio(0), ""
	for _, m := range r.Members {
		if m.Ratio > most {
			most, mark = m.Ratio, m.Mark
		}
	}
	return most, mark
}

// lastFull is the value nearest below a margin at which the last rafter bay is next to nothing,
// so that one rafter more stands at the side; the present value where there is none above it.
func lastFull(in cover.Input, m cover.Margin) float64 {
	const little = 1e-5
	width, spacing := *in.Cover.Width*12, *in.Rafters.Spacing
	switch m.Path {
	case "rafters.spacing_in":
		return max(m.Now, width/(math.Ceil(width/m.Passes)+little))
	case "cover.width_ft":
		if at := spacing * (math.Floor(m.Passes*12/spacing) + little) / 12; at <= m.Passes {
			return max(m.Now, at)
		}
	}
	return m.Now
}

// Trap: the margin steps over a spacing that does not work. Where the last bay is next to
// nothing one rafter more stands in the side strip of the wind, and a little wider, in five
// bays of 45.84 in, the ratio falls by a twentieth: they hold again up to 46.8 in.
func TestTrapMarginStepsOverASpacing(t *testing.T) {
	t.Parallel()
	in := simple()
	wood := "Spruce-Pine-Fir"
	in.Site.WindSpeed, in.Site.RoofSnow = new(86.5), new(5.9)
	in.Cover.Projection, in.Cover.Width, in.Cover.Overhang, in.Cover.Slope = new(8.5), new(19.1), new(0.1), new(0.5)
	in.Cover.Covering, in.Cover.Layers[0].Weight = new("lattice"), new(0.8)
	in.Rafters.Species, in.Rafters.Spacing, in.Rafters.Brace = &wood, new(16.0), new(3.9)
	in.Lateral.Along = new("knee_braces")
	m := marginOf(t, withMargins(t, in), "rafters.spacing_in")
	at := func(spacing float64) float64 {
		in.Rafters.Spacing = &spacing
		ratio, _ := worstMember(size(t, in))
		return float64(ratio)
	}
	const before = 45.8
	require.Greater(t, at(before), 1.0)
	require.LessOrEqual(t, at(46.5), 1.0, "the ratio falls where one rafter less is needed")
	assert.Less(t, m.Passes, before)
	assert.LessOrEqual(t, at(m.Passes), 1.0)
	assert.Greater(t, at(m.Over), 1.0)
}

// A margin holds for every cover that holds: sized from the start with the quantity at its
// margin and anywhere below, no member is over; just beyond, the member that is named is.
// Beside the members nothing is over at the second margin that is not over now.
func TestMarginsOfMildCoversHold(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in, _ := holding(t)
		if rapid.Bool().Draw(t, "more than needed") {
			in.Beams.Plies, in.Beams.Size, in.Posts.Size = nil, new("6x12"), new("8x8")
		}
		r, err := cover.SizeAndMargins(in)
		if err != nil || !membersHold(r) {
			t.Skip("the sizes do not fit the cover")
		}
		smallerHold(t, keptSizes(in, r), r)
		kept := keptWhole(in, r)
		m := rapid.SampledFrom(r.Margins).Draw(t, "margin")
		if m.Missing != "" {
			t.Fatalf("%s has no margin: %s", m.Path, m.Missing)
		}
		inside := m.Now + (m.Passes-m.Now)*tenth(t, 0, 1, "inside")
		for _, x := range []float64{inside, m.Passes, lastFull(in, m)} {
			if x <= 0 {
				continue // a layer that weighs nothing
			}
			if ratio, mark := worstMember(answer(t, moved(kept, m.Path, x))); ratio > 1 {
				t.Fatalf("%s passes up to %v, and %s is at %v at %v", m.Path, m.Passes, mark, ratio, x)
			}
		}
		if m.Reached {
			if m.Ends == "" || m.Over != 0 {
				t.Fatalf("%s ends at %v: %+v", m.Path, m.Passes, m)
			}
			return
		}
		if math.Abs(m.Over-m.Passes) > 1e-4*m.Over {
			t.Fatalf("%s passes at %v and is over at %v only", m.Path, m.Passes, m.Over)
		}
		if ratio, mark := worstMember(answer(t, moved(kept, m.Path, m.Over))); !(ratio > 1) || mark != m.Mark ||
			math.Abs(float64(ratio-m.Ratio)) > 1e-6 {
			t.Fatalf("%s is over at %v in %s with %v, sized there %s has %v", m.Path, m.Over, m.Mark, m.Ratio, mark, ratio)
		}
		if m.Rest == nil || m.Rest.Passes > m.Passes {
			t.Fatalf("%s: %+v", m.Path, m.Rest)
		}
	})
}

// smallerHold fails unless the size next below fails where the report says so, and no member
// is over with it where the report says that it would do, which is only where more was given.
// A post in the ground stands in a footing of its own then, so that kept gives none.
func smallerHold(t *rapid.T, kept cover.Input, r cover.Report) {
	for _, s := range r.Smaller {
		if s.Missing != "" || s.Least {
			continue
		}
		in := kept
		switch s.Name {
		case "rafter":
			in.Rafters.Size = &s.Size
		case "beam":
			in.Beams.Size = &s.Size
		default:
			in.Posts.Size = &s.Size
		}
		ratio, mark := worstMember(answer(t, in))
		if math.Abs(float64(ratio-s.Ratio)) > 1e-9 && ratio < 1e300 || mark != s.Over || s.Passes != (ratio <= 1) {
			t.Fatalf("%s below %s: %+v, sized with it %s has %v", s.Size, s.Now, s, mark, ratio)
		}
		if s.Passes && !given(r, s.Mark) {
			t.Fatalf("%s was chosen, and %s would do", s.Now, s.Size)
		}
	}
}

// given reports whether the size of a member was given.
func given(r cover.Report, mark string) bool {
	i := slices.IndexFunc(r.Members, func(m cover.Member) bool { return m.Mark[0] == mark[0] && m.Name != "edge rafter" })
	return r.Members[i].Given
}

// Every kind of cover gets its margins: measured wood and products with values of the user,
// knee braces, strength design, ground snow, and snow on a roof of the newer edition, which
// begins at none.
func TestMarginsOfEveryKind(t *testing.T) {
	t.Parallel()
	newer := demo(t, "desert")
	newer.Site.Standard = new("ASCE 7-22")
	strength := demo(t, "garden")
	strength.Site.Method = new("LRFD")
	placed := demo(t, "garden")
	placed.Posts.Count, placed.Posts.EndInset, placed.Posts.Positions = nil, nil, []float64{1, 10.5, 19}
	for name, in := range map[string]cover.Input{
		"measured and products": demo(t, "glued"), "knee braces": demo(t, "garden"), "ground snow": demo(t, "snow"),
		"newer edition": newer, "strength design": strength, "posts at places": placed,
	} {
		r := withMargins(t, in)
		require.Len(t, r.Margins, 7, name)
		for _, m := range r.Margins {
			assert.Empty(t, m.Missing, "%s, %s", name, m.Path)
			assert.True(t, m.Reached || m.Passes > m.Now*0.999 && m.Over > m.Passes, "%s, %s: %+v", name, m.Path, m)
			assert.NotNil(t, m.Rest, "%s, %s", name, m.Path)
		}
		require.Len(t, r.Smaller, 3, name)
	}
}

// Whatever the cover, every margin has one answer: how far it goes and what is over then, that
// nothing is up to where the answers end, that all is over down to a value, or why it is not
// known. So has every size next below.
func TestMarginsOfAnyCoverAnswerOrSayWhy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, err := cover.SizeAndMargins(randomCover(t))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range r.Margins {
			answers := 0
			for _, yes := range []bool{
				m.Missing != "",
				m.None && m.Mark != "" && m.Check != "" && m.Over <= m.Now,
				m.Reached && m.Passes >= m.Now && m.Ends != "" && m.Over == 0,
				m.Mark != "" && m.Check != "" && m.Over > m.Passes && m.Ratio > 1 && !m.None,
			} {
				if yes {
					answers++
				}
			}
			if answers != 1 {
				t.Fatalf("%d answers: %+v", answers, m)
			}
			if (m.Rest != nil) != (m.Missing == "" && !m.None && m.Passes >= m.Now) {
				t.Fatalf("the rest of %+v is %+v", m, m.Rest)
			}
			if m.Rest != nil && !m.Rest.Reached && (m.Rest.Mark == "" || m.Rest.Check == "" || m.Rest.Over > m.Passes) {
				t.Fatalf("the rest of %+v is %+v", m, m.Rest)
			}
		}
		for _, s := range r.Smaller {
			if s.Missing == "" && !s.Least && (s.Size == "" || s.Over == "" || s.Check == "" || s.Passes != (s.Ratio <= 1)) {
				t.Fatalf("%+v", s)
			}
		}
	})
}
