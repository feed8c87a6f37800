package member_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc/calctest"
)

// plies returns the values of a built-up piece.
func plies(t testing.TB, size string, by lumber.Fastening, use lumber.Use) *lumber.Adjusted {
	t.Helper()
	return built(t, "Douglas Fir-Larch", "No.2", size, by, use)
}

// built returns the values of plies of a species and grade.
func built(t testing.TB, species, grade, size string, by lumber.Fastening, use lumber.Use) *lumber.Adjusted {
	t.Helper()
	s, err := lumber.SectionNamed(size)
	require.NoError(t, err)
	s = s.Fastened(by)
	v, err := lumber.Find(species, grade, s)
	require.NoError(t, err)
	a := lumber.Adjust(v, s, use)
	return &a
}

// pole returns the values of a round pole of one strength.
func pole(size string) *lumber.Adjusted {
	s, err := lumber.SectionNamed(size)
	if err != nil {
		panic(err)
	}
	v := lumber.Given{
		Product: "pole", Source: "test", Bending: 1500, Tension: 900, Shear: 110, Bearing: 400,
		Compression: 900, Elasticity: 1.3e6, Stability: 470_000, Gravity: 0.45,
	}.Values()
	a := lumber.Adjust(v, s, lumber.Use{})
	return &a
}

// Three loose plies carry three times one ply, and buckle sideways like one; fastened
// together they buckle like the whole breadth.
func TestTrapPliesThatDoNotActTogether(t *testing.T) {
	brace := member.Bracing{Unbraced: 120, Loading: member.UniformSpan}
	one := member.NewBending(10_000, adjusted(t, "Douglas Fir-Larch", "No.2", "2x10", lumber.Use{}), lumber.TenMinutes, brace)
	loose := member.NewBending(30_000, plies(t, "3-2x10", lumber.Unfastened, lumber.Use{}), lumber.TenMinutes, brace)
	nailed := member.NewBending(30_000, plies(t, "3-2x10", lumber.Nailed, lumber.Use{}), lumber.TenMinutes, brace)
	calctest.Close(t, one.Slenderness, loose.Slenderness, 1e-12, 0, "one ply sideways")
	calctest.Close(t, one.Ratio(), loose.Ratio(), 1e-12, 0)
	calctest.Close(t, one.Slenderness/3, nailed.Slenderness, 1e-12, 0, "b of the whole")
	assert.Less(t, nailed.Ratio(), loose.Ratio())

	two := plies(t, "4-2x4", lumber.Unfastened, lumber.Use{})
	unknown := member.NewBending(100, two, lumber.TenYears, member.Bracing{})
	assert.True(t, math.IsInf(unknown.Ratio(), 1), "6 in. of loose plies are not wider than deep")
	for _, b := range []member.Bending{one, loose, nailed, unknown} {
		proved(t, b)
	}
}

// A post of loose plies counts its plies one by one across.
func TestTrapPostOfPliesAsSolid(t *testing.T) {
	for _, height := range []float64{60, 96} {
		axis := member.Axis{Length: height, Ends: member.PinnedPinned}
		held := member.Column{Deep: axis, Thin: axis}
		three := member.NewCompression(3000, plies(t, "3-2x8", lumber.Unfastened, lumber.Use{}), lumber.TenYears, held)
		one := member.NewCompression(1000, adjusted(t, "Douglas Fir-Larch", "No.2", "2x8", lumber.Use{}), lumber.TenYears, held)
		assert.Equal(t, height == 96, math.IsInf(three.Ratio(), 1), "le/d 64 of one ply of 96 in.")
		if height == 60 {
			calctest.Close(t, one.Ratio(), three.Ratio(), 1e-12, 0)
		}
		proved(t, three)
	}
}

// A post of fastened plies by way of its section is that of the built-up column, and
// never that of the solid post; each plane may be held (NDS 2018 15.3.2).
func TestFastenedPliesAreABuiltUpColumn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom([]string{"2-2x4", "2-2x6", "3-2x6", "3-2x8", "4-2x6", "5-2x6"}).Draw(t, "size")
		by := rapid.SampledFrom([]lumber.Fastening{lumber.Nailed, lumber.Bolted}).Draw(t, "by")
		s, err := lumber.SectionNamed(size)
		if err != nil {
			t.Fatal(err)
		}
		v, err := lumber.Find("Hem-Fir", "No.2", s)
		if err != nil {
			t.Fatal(err)
		}
		a := lumber.Adjust(v, s.Fastened(by), lumber.Use{Method: rapid.SampledFrom(
			[]lumber.Method{lumber.ASD, lumber.LRFD}).Draw(t, "method")})
		axis := func(name string) member.Axis {
			return member.Axis{
				Length: rapid.Float64Range(12, 200).Draw(t, name), Ends: member.PinnedPinned,
				Held: rapid.IntRange(0, 4).Draw(t, name+" held") == 0,
			}
		}
		column, term := member.Column{Deep: axis("deep"), Thin: axis("thin")}, anyDuration(t)
		force := rapid.Float64Range(0, 20_000).Draw(t, "force")
		c := member.NewCompression(force, &a, term, column)
		proved(t, c)
		flat := a
		flat.Use.Flat = true
		proved(t, member.NewCombined(member.Actions{Force: force, Edgewise: 500, Flatwise: 300, FlatOffset: 0.5},
			&a, &flat, term, member.Stay{Column: column, Bracing: member.Bracing{Held: true}}))
		solid, held := a, member.Axis{Held: true}
		solid.Section.Plies, solid.Section.Fastening = 0, lumber.Unfastened
		deep := member.NewCompression(force, &solid, term, member.Column{Deep: column.Deep, Thin: held}).Allowable
		thin := member.NewCompression(force, &solid, term, member.Column{Deep: held, Thin: column.Thin}).Allowable
		together := min(deep, by.Share()*thin) // NDS 2018 15.3.2, plane by plane
		if !column.Thin.Held && math.Abs(c.Allowable-together) > 1e-9*together {
			t.Fatalf("%v, plane by plane %v", c.Allowable, together)
		}
		if whole := member.NewCompression(force, &solid, term, column).Allowable; c.Allowable > whole*(1+1e-12) {
			t.Fatalf("%v, solid %v", c.Allowable, whole)
		}
	})
}

// Plies laid flat bend one by one.
func TestPliesLaidFlat(t *testing.T) {
	one := adjusted(t, "Douglas Fir-Larch", "No.2", "2x6", lumber.Use{Flat: true})
	b := member.NewBending(9000, plies(t, "3-2x6", lumber.Nailed, lumber.Use{Flat: true}), lumber.TenYears, member.Bracing{})
	calctest.Close(t, member.NewBending(3000, one, lumber.TenYears, member.Bracing{}).Ratio(), b.Ratio(), 1e-12, 0)
	proved(t, b)
}

// A pole: M over pi d³/32, 4 V over 3 A, and the buckling of the square of equal area.
func TestPoles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom([]string{"4 round", "6 round", "8-1/2 round", "10 round"}).Draw(t, "size")
		a := pole(size)
		force := rapid.Float64Range(1, 10_000).Draw(t, "force")
		term := anyDuration(t)
		axis := member.Axis{Length: rapid.Float64Range(12, 240).Draw(t, "height"), Ends: member.PinnedPinned}
		held := member.Column{Deep: axis, Thin: axis}
		shear, bending := member.NewShear(force, a, term), member.NewBending(force, a, term, member.Bracing{})
		press := member.NewCompression(force, a, term, held)
		proved(t, shear)
		proved(t, bending)
		proved(t, press)
		d := a.Section.Depth
		area := math.Pi * d * d / 4
		if bending.Stability != 1 || press.Column.Form != member.RoundColumn ||
			math.Abs(shear.Stress-4*force/(3*area)) > 1e-9*shear.Stress ||
			math.Abs(bending.Stress-32*force/(math.Pi*d*d*d)) > 1e-9*bending.Stress {
			t.Fatalf("%+v %+v", shear, bending)
		}
		square := *a
		side := math.Sqrt(math.Pi / 4 * d * d)
		square.Section = lumber.Section{Breadth: side, Depth: side}
		held.Form = member.RoundColumn
		same := member.NewCompression(force, &square, term, held)
		if math.Abs(same.Ratio()-press.Ratio()) > 1e-9*press.Ratio() {
			t.Fatalf("square of equal area %v, pole %v", same.Ratio(), press.Ratio())
		}
	})
}

// Glued wood takes c 0.9 of itself, and buckles about both axes with the Emin of its
// weak one, on the safe side (NDS 2018 3.7.1.5).
func TestGluedColumnByItsSection(t *testing.T) {
	s, err := lumber.SectionNamed("5-1/8x6")
	require.NoError(t, err)
	v, err := lumber.Find("Glulam DF/DF", "24F-V4", s)
	require.NoError(t, err)
	a := lumber.Adjust(v, s, lumber.Use{})
	axis := member.Axis{Length: 108, Ends: member.PinnedPinned}
	c := member.NewCompression(5000, &a, lumber.TenYears, member.Column{Deep: axis, Thin: axis})
	assert.Equal(t, member.GluedColumn, c.Column.Form)
	assert.Equal(t, 850_000.0, c.Stiffness.Value, "NDS Supp. 2018 Table 5A, Ey min")
	proved(t, c)
}
