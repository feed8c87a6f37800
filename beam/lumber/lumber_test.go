package lumber_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// section returns a dressed size that is known to exist.
func section(t testing.TB, name string) lumber.Section {
	t.Helper()
	s, err := lumber.SectionNamed(name)
	require.NoError(t, err)
	return s
}

// adjusted returns the adjusted values of a piece that is known to exist.
func adjusted(t testing.TB, species, grade, size string, use lumber.Use) lumber.Adjusted {
	t.Helper()
	s := section(t, size)
	v, err := lumber.Find(species, grade, s)
	require.NoError(t, err)
	return lumber.Adjust(v, s, use)
}

// duration returns the duration with the name.
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

// property returns the value with the symbol.
func property(t testing.TB, a lumber.Adjusted, symbol string) lumber.Property {
	t.Helper()
	for _, p := range properties(a) {
		if p.Kind.Symbol() == symbol {
			return p
		}
	}
	t.Fatalf("no property %q", symbol)
	return lumber.Property{}
}

func properties(a lumber.Adjusted) []lumber.Property {
	return []lumber.Property{
		a.Bending, a.Tension, a.Shear, a.Bearing, a.Compression, a.Elasticity, a.Stability,
	}
}

// near reports whether two numbers are the same but for the order of arithmetic.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-12*math.Abs(a) }

// piece draws any piece that exists, in any use.
func piece(t *rapid.T) lumber.Adjusted {
	s := rapid.SampledFrom(lumber.Sections()).Filter(func(s lumber.Section) bool {
		return s.Class != lumber.Board
	}).Draw(t, "section")
	species := rapid.SampledFrom(lumber.Species()).Filter(func(name string) bool {
		return len(lumber.Graded(name, s)) > 0
	}).Draw(t, "species")
	grade := rapid.SampledFrom(lumber.Graded(species, s)).Draw(t, "grade")
	v, err := lumber.Find(species, grade, s)
	if err != nil {
		t.Fatal(err)
	}
	return lumber.Adjust(v, s, use(t))
}

func use(t *rapid.T) lumber.Use {
	return lumber.Use{
		Wet: rapid.Bool().Draw(t, "wet"), Incised: rapid.Bool().Draw(t, "incised"),
		Temperature: rapid.SampledFrom([]lumber.Temperature{
			lumber.UpTo100F, lumber.UpTo125F, lumber.UpTo150F,
		}).Draw(t, "temperature"),
		Repetitive: rapid.Bool().Draw(t, "repetitive"), Flat: rapid.Bool().Draw(t, "flat"),
		Method: rapid.SampledFrom([]lumber.Method{lumber.ASD, lumber.LRFD}).Draw(t, "method"),
	}
}

func TestPublishedValues(t *testing.T) {
	for _, r := range calctest.Published(t, "wood.csv") {
		about := r.Text("id") + ", " + r.Text("source")
		switch r.Text("quantity") {
		case "adj":
			a := adjusted(t, r.Text("species"), r.Text("grade"), r.Text("size"), lumber.Use{Wet: r.Has("wet")})
			got := property(t, a, r.Text("property")).Value * duration(t, r.Text("duration")).Factor()
			calctest.Near(t, r.Num("want"), got, r.Num("within"), about)
		case "ref":
			a := adjusted(t, r.Text("species"), r.Text("grade"), r.Text("size"), lumber.Use{})
			got := property(t, a, r.Text("property")).Reference
			calctest.Near(t, r.Num("want"), got, r.Num("within"), about)
		}
	}
}

func TestSectionProperties(t *testing.T) {
	for _, c := range []struct {
		size, source                string
		area, modulus, inertia      float64
		within                      float64
		modulusFlat, inertiaFlat    float64
		class                       lumber.Class
		nominalThickness, nominalIn float64
	}{
		{"4x8", "textbook solution: A 25.375, S 30.66, I 111.1", 25.375, 30.66, 111.1, 0.06, 14.80, 25.90, lumber.Dimension, 4, 8},
		{"2x12", "formwork handbook: 1-1/2 by 11-1/4; rest by hand", 16.88, 31.64, 178.0, 0.06, 4.219, 3.164, lumber.Dimension, 2, 12},
		{"4x6", "textbook solution: A 19.25", 19.25, 17.65, 48.53, 0.06, 11.23, 19.65, lumber.Dimension, 4, 6},
		{"6x10", "by hand from 5-1/2 by 9-1/2 in.", 52.25, 82.73, 393.0, 0.06, 47.90, 131.7, lumber.BeamStringer, 6, 10},
	} {
		s := section(t, c.size)
		calctest.Near(t, c.area, s.Area(), c.within, c.source)
		calctest.Near(t, c.modulus, s.Modulus(), c.within, c.source)
		calctest.Near(t, c.inertia, s.Inertia(), c.within, c.source)
		calctest.Near(t, c.modulusFlat, s.ModulusFlat(), c.within, c.source)
		calctest.Near(t, c.inertiaFlat, s.InertiaFlat(), c.within, c.source)
		assert.Equal(t, c.class, s.Class, c.size)
		assert.Equal(t, c.nominalThickness, s.NominalThickness, c.size)
		assert.Equal(t, c.nominalIn, s.NominalWidth, c.size)
	}
}

// The list that is handed out is a copy.
func TestSectionsIsACopy(t *testing.T) {
	lumber.Sections()[0].Name = "changed"
	assert.Equal(t, "1x4", lumber.Sections()[0].Name)
}

func TestUnknownNamesSayWhatIsAllowed(t *testing.T) {
	_, err := lumber.SectionNamed("2x7")
	var missing *lumber.NotListed
	require.True(t, errors.As(err, &missing))
	assert.Equal(t, "2x7", missing.Given)
	assert.Contains(t, err.Error(), `size "2x7" is not one of 1x4, 1x6`)

	_, err = lumber.Find("Oak", "No.2", section(t, "2x8"))
	assert.ErrorContains(t, err, `species "Oak" is not one of Douglas Fir-Larch, Douglas Fir-Larch (North)`)

	_, err = lumber.Find("Hem-Fir", "No.4", section(t, "2x8"))
	assert.EqualError(t, err,
		`grade of Hem-Fir 2x8 "No.4" is not one of Select Structural, No.1 & Btr, No.1, No.2, No.3, Stud`)

	_, err = lumber.Find("Hem-Fir", "No.2", section(t, "1x8"))
	assert.ErrorContains(t, err, "not listed", "boards have no design values")
}

func TestMeasuredSections(t *testing.T) {
	for _, c := range []struct {
		name                             string
		thickness, width, breadth, depth float64
		want                             string // part of the error; empty when it fits
		class                            lumber.Class
		modulus                          float64
	}{
		{"full-sawn 2x8", 2, 8, 2, 8, "", lumber.Dimension, 2 * 8 * 8 / 6.0},
		{"old 2x6 of 1-5/8 in.", 2, 6, 1.625, 5.5, "", lumber.Dimension, 1.625 * 5.5 * 5.5 / 6},
		{"rough 6x6", 6, 6, 6, 6.1, "", lumber.PostTimber, 6 * 6.1 * 6.1 / 6},
		{"too deep", 2, 8, 1.5, 9.25, "depth: 9.25 in is not 7 to 8.25 in", 0, 0},
		{"too thin", 4, 8, 1.5, 7.25, "breadth: 1.5 in is not 3 to 4.25 in", 0, 0},
		{"sides swapped", 8, 2, 7.25, 1.5, "width: 2 in is not 8 to 24 in", 0, 0},
		{"no size", 2, 8, 0, 0, "breadth: 0 in is not 1 to 2.25 in", 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := lumber.Measured(c.thickness, c.width, c.breadth, c.depth)
			if c.want != "" {
				var faults *calc.InputError
				require.True(t, errors.As(err, &faults))
				assert.ErrorContains(t, err, c.want)
				return
			}
			require.NoError(t, err)
			assert.Equal(t, c.class, s.Class)
			calctest.Close(t, c.modulus, s.Modulus(), 1e-12, 0)
			assert.Contains(t, s.Name, "measured")
		})
	}
}

// Where a Canadian species prints one row for No.1 and No.2, it serves both.
func TestCanadianRowServesBothGrades(t *testing.T) {
	s := section(t, "2x10")
	for _, grade := range []string{"No.1", "No.2", "No.1/No.2"} {
		v, err := lumber.Find("Spruce-Pine-Fir", grade, s)
		require.NoError(t, err, grade)
		assert.Equal(t, grade, v.Grade)
		assert.Equal(t, "No.1/No.2", v.Row)
		assert.Equal(t, 875.0, v.Bending.Value, "NDS Supp. 2018 Table 4A, Spruce-Pine-Fir No.1/No.2")
	}
	_, err := lumber.Find("Hem-Fir", "No.1/No.2", s)
	assert.Error(t, err, "Hem-Fir prints two rows")
	v, err := lumber.Find("Spruce-Pine-Fir", "No.2", section(t, "6x6"))
	require.NoError(t, err)
	assert.Equal(t, "No.2", v.Row, "Table 4D prints two rows")
}

func TestEverySpeciesHasGradesThatCanBeFound(t *testing.T) {
	for _, species := range lumber.Species() {
		assert.NotEmpty(t, lumber.Grades(species))
		for _, s := range lumber.Sections() {
			for _, grade := range lumber.Graded(species, s) {
				v, err := lumber.Find(species, grade, s)
				require.NoError(t, err, "%s %s %s", species, grade, s.Name)
				assert.Contains(t, lumber.Grades(species), grade)
				assert.Equal(t, s.Class, v.Shape)
				assert.Equal(t, s.Class.Timber(), v.Table == lumber.Table4D)
			}
		}
	}
	assert.Empty(t, lumber.Grades("Oak"))
	assert.Equal(t, lumber.Species(), lumber.Species(), "fixed order")
}

// weakest is the least confirmed status among the values.
func weakest(v lumber.Values) calc.Status {
	least := calc.Read
	for _, q := range []lumber.Quoted{
		v.Bending, v.Tension, v.Shear, v.Bearing, v.Compression, v.Elasticity, v.Stability, v.Gravity,
	} {
		least = least.Weakest(q.Status)
	}
	return least
}

func TestStatusOfValues(t *testing.T) {
	v, err := lumber.Find("Douglas Fir-Larch", "No.2", section(t, "2x8"))
	require.NoError(t, err)
	assert.Equal(t, calc.Read, weakest(v), "every value of the row was read")

	v, err = lumber.Find("Spruce-Pine-Fir", "Select Structural", section(t, "2x8"))
	require.NoError(t, err)
	assert.Equal(t, calc.Read, weakest(v), "seen transcribed, and Fb follows from printed spans")

	v, err = lumber.Find("Western Cedars", "No.2", section(t, "6x6"))
	require.NoError(t, err)
	assert.Equal(t, calc.Recalled, weakest(v))
	assert.Equal(t, calc.Read, v.Gravity.Status, "Wood Structural Design Data, 1992 revisions")
}

func TestRepetitive(t *testing.T) {
	for _, c := range []struct {
		name     string
		count    int
		spacing  float64
		sheathed bool
		want     bool
	}{
		{"rafters at 24 in. under a deck", 3, 24, true, true},
		{"rafters at 16 in. under a deck", 12, 16, true, true},
		{"decking in contact", 20, 0, true, true},
		{"two members", 2, 16, true, false},
		{"32 in. on center", 12, 32, true, false},
		{"open lattice", 12, 16, false, false},
		{"spacing not given", 12, -1, true, false},
	} {
		assert.Equal(t, c.want, lumber.Repetitive(c.count, c.spacing, c.sheathed), c.name)
	}
}

// Load duration factors of NDS 2018 Table 2.3.2.
func TestDurations(t *testing.T) {
	for _, c := range []struct {
		duration lumber.Duration
		want     float64
	}{
		{lumber.Permanent, 0.9}, {lumber.TenYears, 1.0}, {lumber.TwoMonths, 1.15},
		{lumber.SevenDays, 1.25}, {lumber.TenMinutes, 1.6}, {lumber.Impact, 2.0},
	} {
		assert.Equal(t, c.want, c.duration.Factor(), c.duration)
		assert.LessOrEqual(t, c.duration.Treated().Factor(), 1.6, c.duration)
	}
	var zero lumber.Duration
	assert.Equal(t, 1.0, zero.Factor(), "the ordinary case is the tabulated value")
	for i, d := range lumber.Durations() {
		if i > 0 {
			assert.Greater(t, d.Factor(), lumber.Durations()[i-1].Factor())
		}
	}
}

// Every factor is written, the product of the lines is the value, and each line
// has a source.
func TestPropertiesWriteThemselves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := piece(t)
		for _, p := range properties(a) {
			var s calc.Sheet
			s.Append(p.Lines())
			formula, value := p.Formula(), p.Value
			if p.Kind == lumber.Bending {
				formula += " * C_fu"
			}
			s.Step("product", formula, value, "psi", "NDS 2018 Table 4.3.1")
			if err := calctest.Prove(s.Lines()); err != nil {
				t.Fatal(err)
			}
			for _, l := range s.Lines() {
				if l.Source == "" {
					t.Fatalf("%s has no source", l.Symbol)
				}
			}
		}
	})
}

// Wet, hot and incised wood never carries more, and the factors multiply; a
// repetitive member never carries less.
func TestUseOnlyLowers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := piece(t)
		v, err := lumber.Find(a.Species, a.Grade, a.Section)
		if err != nil {
			t.Fatal(err)
		}
		mild := a.Use
		mild.Wet, mild.Incised, mild.Temperature = false, false, lumber.UpTo100F
		better := lumber.Adjust(v, a.Section, mild)
		for i, p := range properties(a) {
			if q := properties(better)[i]; p.Value > q.Value*(1+1e-12) {
				t.Fatalf("%s: %v in use %+v, %v in mild use", p.Kind.Symbol(), p.Value, a.Use, q.Value)
			}
			product := p.Reference * p.Wet * p.Temperature * p.Size *
				p.FlatUse * p.Incising * p.Repetitive
			if !near(product, p.Value) {
				t.Fatalf("%s: %v is not the product %v", p.Kind.Symbol(), p.Value, product)
			}
		}
	})
}

func TestAdjustAllocatesNothing(t *testing.T) {
	s := section(t, "2x8")
	v, err := lumber.Find("Hem-Fir", "No.2", s)
	require.NoError(t, err)
	var sink float64
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		a := lumber.Adjust(v, s, lumber.Use{Wet: true, Incised: true})
		sink += a.Bending.Value
	}))
}

func BenchmarkAdjust(b *testing.B) {
	s := section(b, "2x8")
	v, err := lumber.Find("Hem-Fir", "No.2", s)
	require.NoError(b, err)
	var sink float64
	for b.Loop() {
		a := lumber.Adjust(v, s, lumber.Use{Wet: true, Incised: true})
		sink += a.Bending.Value
	}
	_ = sink
}

// A wet 2x8 of Douglas Fir-Larch No.1 under dead load and snow: a course example
// prints Ft' = 932 psi and Fv' = 201 psi.
func Example() {
	s, err := lumber.SectionNamed("2x8")
	if err != nil {
		fmt.Println(err)
		return
	}
	values, err := lumber.Find("Douglas Fir-Larch", "No.1", s)
	if err != nil {
		fmt.Println(err)
		return
	}
	a := lumber.Adjust(values, s, lumber.Use{Wet: true})
	snow := lumber.TwoMonths.Factor()
	fmt.Printf("Ft' %.1f psi\n", a.Tension.Value*snow)
	fmt.Printf("Fv' %.1f psi\n", a.Shear.Value*snow)
	// Output:
	// Ft' 931.5 psi
	// Fv' 200.8 psi
}
