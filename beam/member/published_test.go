package member_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam"
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// plain is a value that needs no adjustment, such as a published Fc*.
func plain(value float64, kind lumber.Kind) lumber.Property {
	return lumber.Property{
		Reference: value, Wet: 1, Temperature: 1, Size: 1, FlatUse: 1, Incising: 1,
		Repetitive: 1, Value: value, Kind: kind, Source: "published example",
	}
}

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

// argument returns one of the column arguments, such as "Fb_star=2152.8; d=5.5".
func argument(t testing.TB, r calc.Row, name string) float64 {
	t.Helper()
	for word := range strings.SplitSeq(r.Text("arguments"), ";") {
		key, value, _ := strings.Cut(strings.TrimSpace(word), "=")
		if key == name {
			x, err := strconv.ParseFloat(value, 64)
			require.NoError(t, err)
			return x
		}
	}
	t.Fatalf("%s has no argument %s", r.Text("id"), name)
	return 0
}

// forEach runs the check on the published rows of one quantity.
func forEach(t *testing.T, quantity string, check func(t *testing.T, r calc.Row)) {
	count := 0
	for _, r := range calctest.Published(t, "wood.csv") {
		if r.Text("quantity") == quantity {
			count++
			t.Run(r.Text("id"), func(t *testing.T) { check(t, r) })
		}
	}
	require.Positive(t, count, "no published row of %s", quantity)
}

func TestPublishedStabilityOfBeams(t *testing.T) {
	forEach(t, "CL", func(t *testing.T, r calc.Row) {
		assert.Contains(t, r.Text("arguments"), "loading=uniform")
		a := lumber.Adjusted{
			Section:   lumber.Section{Breadth: argument(t, r, "b"), Depth: argument(t, r, "d")},
			Bending:   plain(argument(t, r, "Fb_star"), lumber.Bending),
			Stability: plain(argument(t, r, "Emin"), lumber.Stability),
		}
		b := member.NewBending(1, &a, lumber.TenYears,
			member.Bracing{Unbraced: argument(t, r, "lu"), Loading: member.UniformSpan})
		calctest.Near(t, r.Num("want"), b.Stability, r.Num("within"), r.Text("source"))
	})
}

func TestPublishedColumns(t *testing.T) {
	forEach(t, "column", func(t *testing.T, r calc.Row) {
		d, area := argument(t, r, "d"), argument(t, r, "A")
		a := lumber.Adjusted{
			Section:     lumber.Section{Breadth: d, Depth: area / d},
			Compression: plain(argument(t, r, "Fc_star"), lumber.Compression),
			Stability:   plain(argument(t, r, "Emin"), lumber.Stability),
		}
		axis := member.Axis{Length: argument(t, r, "le"), Ends: member.PinnedPinned}
		c := member.NewCompression(1, &a, lumber.TenYears, member.Column{Deep: axis, Thin: axis})
		calctest.Near(t, r.Num("want"), c.Allowable*c.Area, r.Num("within"), r.Text("source"))
	})
}

func TestPublishedNotch(t *testing.T) {
	forEach(t, "notch tension", func(t *testing.T, r calc.Row) {
		a := lumber.Adjusted{
			Section:     lumber.Section{Breadth: argument(t, r, "b"), Depth: argument(t, r, "d")},
			ShearAtCuts: plain(argument(t, r, "Fv"), lumber.Shear),
		}
		n := member.NewNotchShear(1, &a, lumber.TenYears, member.Notch{Remaining: argument(t, r, "dn")})
		calctest.Near(t, r.Num("want"), n.Capacity, r.Num("within"), r.Text("source"))
	})
}

func TestPublishedHankinson(t *testing.T) {
	forEach(t, "hankinson", func(t *testing.T, r calc.Row) {
		got := member.Hankinson(argument(t, r, "Fc_star"), argument(t, r, "Fc_perp"), argument(t, r, "theta"))
		calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("source"))
	})
}

func TestPublishedOverhang(t *testing.T) {
	forEach(t, "overhang", func(t *testing.T, r calc.Row) {
		span, over := argument(t, r, "L"), argument(t, r, "a")
		line, err := beam.NewLine(span+over, []float64{0, span})
		require.NoError(t, err)
		p, err := beam.NewPlan(line, [][]beam.Load{
			{beam.Uniform(0, span, argument(t, r, "w1")), beam.Uniform(span, span+over, argument(t, r, "w2"))},
		})
		require.NoError(t, err)
		var x beam.Response
		p.Run([]float64{1}, argument(t, r, "EI"), &x)
		calctest.Near(t, r.Num("want"), x.RightTip, r.Num("within"), r.Text("source"))
	})
}

// longest returns the span, in, at which bending or the live load deflection of a
// simple span governs, and requires that the checks themselves agree there.
func longest(t *testing.T, r calc.Row, species string) float64 {
	s, err := lumber.SectionNamed(r.Text("size"))
	require.NoError(t, err)
	v, err := lumber.Find(species, r.Text("grade"), s)
	require.NoError(t, err)
	if r.Has("Fb psi") {
		v.Bending.Value = r.Num("Fb psi")
	}
	a := lumber.Adjust(v, s, lumber.Use{Wet: r.Has("wet"), Incised: r.Has("incised"), Repetitive: true})
	live := r.Num("live psf") * calc.PSF * r.Num("spacing in")
	total := live + r.Num("dead psf")*calc.PSF*r.Num("spacing in")

	span := spanOf(t, &a, loads{total, live}, duration(t, r.Text("duration")), r.Num("divisor"))
	if r.Has("limit in") {
		span = min(span, r.Num("limit in"))
	}
	return span
}

// loads are line loads of a span table, lb/in.
type loads struct{ total, live float64 }

// spanOf returns the span, in, of a simple member with its top edge held under the total
// and the live load, lb/in: the smaller of bending and of live load deflection.
func spanOf(t testing.TB, a *lumber.Adjusted, w loads, term lumber.Duration, divisor float64) float64 {
	t.Helper()
	total, live := w.total, w.live
	held := member.Bracing{Held: true}
	strength := member.NewBending(0, a, term, held).Allowable * a.Section.Modulus()
	byBending := math.Sqrt(8 * strength / total) // M = w L²/8
	bending := member.NewBending(total*byBending*byBending/8, a, term, held)
	calctest.Near(t, 1, bending.Ratio(), 1e-9, "bending governs at its own span")

	stiffness := a.Elasticity.Value * a.Section.Inertia()
	byDeflection := math.Cbrt(384 * stiffness / (5 * live * divisor)) // 5 w L⁴/384 E I = L/n
	sag := 5 * live * math.Pow(byDeflection, 4) / (384 * stiffness)
	limit := member.Limit{Length: byDeflection, Divisor: divisor, Source: "span table", Status: calc.Read}
	calctest.Near(t, 1, member.NewDeflection(sag, limit).Ratio(), 1e-9, "deflection governs at its own span")
	return min(byBending, byDeflection)
}

func duration(t testing.TB, name string) lumber.Duration {
	t.Helper()
	for _, d := range lumber.Durations() {
		if d.String() == name {
			return d
		}
	}
	t.Fatalf("no duration %q", name)
	return 0
}

// Span tables of the codes follow from the values, the factors and the checks to
// the inch: IRC ceiling joists, IBC rafters, AWC deck joists.
func TestPublishedSpans(t *testing.T) {
	spans := func(t *testing.T, r calc.Row) {
		least := math.Inf(1)
		for species := range strings.SplitSeq(r.Text("species"), "; ") {
			least = min(least, longest(t, r, species))
		}
		calctest.Near(t, r.Num("want"), least, r.Num("within"), r.Text("source"), r.Text("note"))
		assert.Equal(t, r.Num("want"), math.Round(least), "the tables round to the nearest inch: %v", least)
		assert.Empty(t, r.Text("known miss"))
	}
	forEach(t, "span", spans)
	forEach(t, "span group", spans)
}
