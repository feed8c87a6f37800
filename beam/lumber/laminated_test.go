package lumber_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// glulam returns the adjusted values of a combination in a standard size.
func glulam(t testing.TB, wood, combination, size string, use lumber.Use) lumber.Adjusted {
	t.Helper()
	return adjusted(t, wood, combination, size, use)
}

func TestPublishedGluedLaminatedTimber(t *testing.T) {
	for _, r := range calctest.Published(t, "glulam.csv") {
		edge := glulam(t, r.Text("wood"), r.Text("combination"), "5-1/8x12", lumber.Use{Wet: true})
		side := glulam(t, r.Text("wood"), r.Text("combination"), "5-1/8x12", lumber.Use{Flat: true})
		got := map[string]float64{
			"Fbx+": edge.Bending.Reference, "Fbx-": edge.Reversed.Reference, "Fc_perp": edge.Bearing.Reference,
			"Fvx": edge.Shear.Reference, "Ex": edge.Elasticity.Reference, "Fby": side.Bending.Reference,
			"Ey": side.Elasticity.Reference, "C_fu": side.Bending.FlatUse,
			"C_M Fb": edge.Bending.Wet, "C_M Fc_perp": edge.Bearing.Wet, "C_M Fc": edge.Compression.Wet,
		}
		x, ok := got[r.Text("quantity")]
		require.True(t, ok, r.Text("quantity"))
		calctest.Near(t, r.Num("want"), x, r.Num("within"), r.Text("quantity")+", "+r.Text("source"))
	}
}

func TestPublishedVolumeFactor(t *testing.T) {
	for _, r := range calctest.Published(t, "volume_factor.csv") {
		a := glulam(t, r.Text("wood"), grades[r.Text("wood")], "5-1/8x16-1/2", lumber.Use{})
		a.Section.Breadth, a.Section.Depth = r.Num("breadth in"), r.Num("depth in")
		v := lumber.NewVolume(&a, r.Num("length ft")*calc.Ft)
		calctest.Near(t, r.Num("want"), v.Factor, r.Num("within"), r.Text("source"))
	}
}

// grades holds one combination by wood. Both lamination depths make 16-1/2 in.
var grades = map[string]string{"Glulam DF/DF": "24F-V4", "Glulam SP/SP": "24F-V3"}

// Every number of the volume factor is written and proved; the factor falls with each
// side and with the length, and never exceeds 1.
func TestVolumeFactorIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wood := rapid.SampledFrom([]string{"Glulam DF/DF", "Glulam SP/SP"}).Draw(t, "wood")
		s := rapid.SampledFrom(lumber.LaminatedSections(wood, 36)).Draw(t, "section")
		values, err := lumber.Find(wood, grades[wood], s)
		if err != nil {
			t.Fatal(err)
		}
		a := lumber.Adjust(values, s, lumber.Use{})
		length := rapid.Float64Range(12, 720).Draw(t, "length")
		v := lumber.NewVolume(&a, length)
		if err := calctest.Prove(v.Lines()); err != nil {
			t.Fatal(err)
		}
		longer := lumber.NewVolume(&a, 1.2*length)
		deeper := a
		deeper.Section.Depth *= 1.2
		if !v.Applies() || v.Factor > 1 || longer.Factor > v.Factor || lumber.NewVolume(&deeper, length).Factor > v.Factor {
			t.Fatalf("C_V %v, longer %v", v.Factor, longer.Factor)
		}
	})
}

// A length that is not known has no capacity; sawn lumber and a piece on its side have
// no volume factor.
func TestVolumeFactorElsewhere(t *testing.T) {
	a := glulam(t, "Glulam DF/DF", "24F-V4", "5-1/8x12", lumber.Use{})
	lost := lumber.NewVolume(&a, 0)
	assert.Zero(t, lost.Factor)
	assert.NoError(t, calctest.Prove(lost.Lines()))
	side := glulam(t, "Glulam DF/DF", "24F-V4", "5-1/8x12", lumber.Use{Flat: true})
	assert.Equal(t, 1.0, lumber.NewVolume(&side, 240).Factor, "NDS 2018 5.3.6: load on the edge")
	sawn := adjusted(t, "Hem-Fir", "No.2", "6x12", lumber.Use{})
	v := lumber.NewVolume(&sawn, 240)
	assert.Equal(t, 1.0, v.Factor)
	assert.False(t, v.Applies())
	assert.Empty(t, v.Lines())
	assert.Zero(t, testing.AllocsPerRun(100, func() { v = lumber.NewVolume(&a, 240) }))
}

// Sizes are whole laminations of a standard width: 1-1/2 in., of Southern Pine 1-3/8.
func TestLaminatedSizes(t *testing.T) {
	for _, c := range []struct {
		wood, combination, size string
		fits                    bool
	}{
		{"Glulam DF/DF", "24F-V4", "5-1/8x12", true},
		{"Glulam DF/DF", "24F-V4", "5.125x12", true},
		{"Glulam DF/DF", "24F-V4", "3-1/2x9", true},
		{"Glulam DF/DF", "24F-V4", "5-1/8x11-7/8", false},
		{"Glulam DF/DF", "24F-V4", "2-1/2x3", false},
		{"Glulam DF/DF", "24F-V4", "5-1/4x12", false},
		{"Glulam SP/SP", "24F-V3", "5-1/8x12-3/8", true},
		{"Glulam SP/SP", "24F-V3", "5-1/8x12", false},
		{"Glulam DF/DF", "24F-V4", "6x12", false},
		{"Glulam DF/DF", "24F-V4", "2-3-1/8x12", true},
		{"Glulam DF/DF", "No.2", "5-1/8x12", false},
		{"Glulam AC/AC", "20F-V12", "5-1/8x12", true},
		{"Douglas Fir-Larch", "No.2", "5-1/8x12", false},
	} {
		s, err := lumber.SectionNamed(c.size)
		require.NoError(t, err, c.size)
		_, err = lumber.Find(c.wood, c.combination, s)
		assert.Equal(t, c.fits, err == nil, "%s %s %s: %v", c.wood, c.combination, c.size, err)
	}
	assert.Equal(t, []string{"Glulam any", "Glulam DF/DF", "Glulam AC/AC", "Glulam SP/SP"}, lumber.LaminatedSpecies())
	for _, wood := range lumber.LaminatedSpecies() {
		assert.True(t, lumber.Laminated(wood))
		assert.NotEmpty(t, lumber.Grades(wood))
		assert.NotContains(t, lumber.Species(), wood, "sawn lumber and glued timber are listed apart")
	}
}

// Factors of sawn lumber do not reach glued laminated timber: no C_F, no C_r; its own
// C_M counts from 16 % moisture content (NDS 2018 Table 5.3.1).
func TestTrapSawnFactorsOnGluedTimber(t *testing.T) {
	a := glulam(t, "Glulam DF/DF", "24F-V4", "3-1/8x9", lumber.Use{Repetitive: true, Wet: true})
	assert.Equal(t, 1.0, a.Bending.Size)
	assert.Equal(t, 1.0, a.Bending.Repetitive)
	calctest.Close(t, 2400*0.8, a.Bending.Value, 1e-12, 0, "NDS Supp. 2018 Table 5A")
	for _, l := range a.Bending.Lines() {
		assert.NotEqual(t, "C_r", l.Symbol)
		assert.NotEqual(t, "C_F", l.Symbol)
	}
	calctest.Close(t, 650*0.53, a.Bearing.Value, 1e-12, 0, "not 0.67 of sawn lumber")
}

// An unbalanced layup has less strength with its top in tension: under uplift, over
// an inner support and in overhangs 24F-V4 has 1850 psi, not 2400; 24F-V8 is balanced.
func TestTrapLayupUpsideDown(t *testing.T) {
	v4 := glulam(t, "Glulam DF/DF", "24F-V4", "5-1/8x12", lumber.Use{})
	assert.Equal(t, 2400.0, v4.Bending.Value)
	assert.Equal(t, 1850.0, v4.Reversed.Value)
	v8 := glulam(t, "Glulam DF/DF", "24F-V8", "5-1/8x12", lumber.Use{})
	assert.Equal(t, v8.Bending.Value, v8.Reversed.Value)
	for _, c := range []struct {
		wood, grade, size string
		balanced          bool
	}{
		{"Glulam DF/DF", "24F-V4", "5-1/8x12", false}, {"Glulam DF/DF", "24F-V8", "5-1/8x12", true},
		{"Hem-Fir", "No.2", "4x12", true},
	} {
		s, err := lumber.SectionNamed(c.size)
		require.NoError(t, err)
		v, err := lumber.Find(c.wood, c.grade, s)
		require.NoError(t, err)
		assert.Equal(t, c.balanced, v.Balanced(), c.grade)
	}
}

// At notches and fasteners Fvx counts with C_vr 0.72; sawn lumber keeps its Fv.
func TestTrapShearOfGluedTimberAtCuts(t *testing.T) {
	a := glulam(t, "Glulam DF/DF", "24F-V4", "5-1/8x12", lumber.Use{})
	calctest.Close(t, 265*0.72, a.ShearAtCuts.Value, 1e-12, 0, "NDS 2018 5.3.10")
	var s calc.Sheet
	s.Append(a.ShearAtCuts.LinesAt(lumber.TwoMonths))
	s.Step("Fv_adj", a.ShearAtCuts.FormulaAt(), a.ShearAtCuts.At(lumber.TwoMonths), "psi", "NDS 2018 Table 5.3.1")
	assert.NoError(t, calctest.Prove(s.Lines()))
	sawn := adjusted(t, "Hem-Fir", "No.2", "4x12", lumber.Use{})
	assert.Equal(t, sawn.Shear, sawn.ShearAtCuts)
}

// Every combination in every use writes itself, on edge and on its side.
func TestGluedTimberWritesItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wood := rapid.SampledFrom([]string{"Glulam DF/DF", "Glulam SP/SP"}).Draw(t, "wood")
		s := rapid.SampledFrom(lumber.LaminatedSections(wood, 24)).Draw(t, "section")
		v, err := lumber.Find(wood, grades[wood], s)
		if err != nil {
			t.Fatal(err)
		}
		a := lumber.Adjust(v, s, use(t))
		d := rapid.SampledFrom(lumber.Durations()).Draw(t, "duration")
		for _, p := range append(properties(a), a.Reversed, a.ShearAtCuts) {
			var sheet calc.Sheet
			sheet.Append(p.LinesAt(d))
			value := p.At(d)
			if p.Kind == lumber.Bending {
				value = p.EdgewiseAt(d)
			}
			sheet.Step("product", p.FormulaAt(), value, "psi", "NDS 2018 Table 5.3.1")
			if err := calctest.Prove(sheet.Lines()); err != nil {
				t.Fatal(err)
			}
		}
	})
}

// A worked value of the printed volume factors: 10-3/4x15, 24 ft between points of zero
// moment.
func ExampleNewVolume() {
	s, _ := lumber.SectionNamed("10-3/4x15")
	v, err := lumber.Find("Glulam DF/DF", "24F-V4", s)
	if err != nil {
		panic(err)
	}
	a := lumber.Adjust(v, s, lumber.Use{})
	lines := lumber.NewVolume(&a, 24*calc.Ft).Lines()
	last := lines[len(lines)-1]
	fmt.Printf("%s = %s = %.3f\n", last.Symbol, last.Formula, last.X)
	// Output: C_V = min(1, pow(21 / L_ft * (12 / d_V) * (5.125 / b_V), 1 / x)) = 0.896
}
