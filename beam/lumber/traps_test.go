package lumber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// Table 4B already holds the size: C_F of Table 4A on Southern Pine would add 30 %
// to a 2x6.
func TestTrapSizeFactorOnSouthernPine(t *testing.T) {
	for _, c := range []struct {
		size, source string
		want         float64 // C_F on Fb
	}{
		{"2x4", "in the table", 1}, {"2x6", "in the table", 1}, {"2x12", "in the table", 1},
		{"4x6", "in the table", 1}, {"4x8", "NDS Supp. 2018 Table 4B, 4 in. thick, 8 in. and wider", 1.1},
		{"2x14", "NDS Supp. 2018 Table 4B, wider than 12 in.", 0.9},
	} {
		a := adjusted(t, "Southern Pine", "No.2", c.size, lumber.Use{})
		assert.Equal(t, c.want, a.Bending.Size, c.size+", "+c.source)
		assert.Equal(t, min(1, c.want), a.Tension.Size, c.size)
		assert.Equal(t, min(1, c.want), a.Compression.Size, c.size)
	}
	pine := adjusted(t, "Southern Pine", "No.2", "2x6", lumber.Use{})
	assert.Equal(t, 1000.0, pine.Bending.Value, "NDS Supp. 2018 Table 4B, No.2, 5 and 6 in. wide")
	fir := adjusted(t, "Douglas Fir-Larch", "No.2", "2x6", lumber.Use{})
	assert.Equal(t, 1.3, fir.Bending.Size, "NDS Supp. 2018 Table 4A")
}

// Timbers take Table 4D, no C_F of Table 4A, no C_r: a 6x6 No.2 has Fb 700 and
// Fc 700 psi, not 900 and 1350.
func TestTrapDimensionFactorsOnTimbers(t *testing.T) {
	post := adjusted(t, "Douglas Fir-Larch", "No.2", "6x6", lumber.Use{Repetitive: true})
	assert.Equal(t, 700.0, post.Bending.Value, "NDS Supp. 2018 Table 4D, posts and timbers")
	assert.Equal(t, 700.0, post.Compression.Value, "NDS Supp. 2018 Table 4D, posts and timbers")
	assert.Equal(t, 1.0, post.Bending.Repetitive)

	beam := adjusted(t, "Douglas Fir-Larch", "No.1", "6x14", lumber.Use{Repetitive: true})
	calctest.Near(t, 0.987, beam.Bending.Size, 0.0005, "(12/13.5)^(1/9), NDS 2018 4.3.6.2")
	assert.Equal(t, 1.0, beam.Compression.Size)
	assert.Equal(t, 1.0, beam.Tension.Size)

	small, err := lumber.Find("Douglas Fir-Larch", "No.2", section(t, "5x5"))
	require.NoError(t, err)
	assert.Equal(t, lumber.Table4D, small.Table, "5x5 is a timber")
}

// The class goes by shape: 4x12 is dimension lumber of 11.25 in., 6x8 a post and
// timber, 6x10 a beam and stringer, 6x12 is 11.5 in. deep.
func TestTrapTimberClassByShape(t *testing.T) {
	for _, c := range []struct {
		size  string
		class lumber.Class
		depth float64
	}{
		{"4x12", lumber.Dimension, 11.25}, {"6x8", lumber.PostTimber, 7.5},
		{"6x10", lumber.BeamStringer, 9.5}, {"6x12", lumber.BeamStringer, 11.5},
		{"4x4", lumber.Dimension, 3.5}, {"8x10", lumber.PostTimber, 9.5},
	} {
		s := section(t, c.size)
		assert.Equal(t, c.class, s.Class, c.size)
		assert.Equal(t, c.depth, s.Depth, c.size)
	}
	assert.Equal(t, lumber.BeamStringer, lumber.ClassOf(10, 6), "either side first")
}

// C_r needs three members at 24 in. or less that share the load; 32 in., two
// members and an open lattice get none.
func TestTrapRepetitiveFactor(t *testing.T) {
	for _, c := range []struct {
		count    int
		spacing  float64
		sheathed bool
		want     float64
	}{
		{10, 24, true, 1.15}, {10, 32, true, 1}, {2, 16, true, 1}, {10, 16, false, 1},
	} {
		use := lumber.Use{Repetitive: lumber.Repetitive(c.count, c.spacing, c.sheathed)}
		a := adjusted(t, "Hem-Fir", "No.2", "2x8", use)
		assert.Equal(t, c.want, a.Bending.Repetitive, "NDS 2018 4.3.9: %+v", c)
		assert.Equal(t, 1.0, a.Tension.Repetitive, "C_r is on Fb only")
	}
}

// Incised lumber loses 20 % of strength and 5 % of E; bearing keeps its value;
// timbers take the same by choice.
func TestTrapIncisingForgotten(t *testing.T) {
	for _, size := range []string{"2x8", "6x6"} {
		dry := adjusted(t, "Hem-Fir", "No.2", size, lumber.Use{})
		cut := adjusted(t, "Hem-Fir", "No.2", size, lumber.Use{Incised: true})
		for i, want := range []float64{0.80, 0.80, 0.80, 1.00, 0.80, 0.95, 0.95} {
			calctest.Close(t, want, properties(cut)[i].Value/properties(dry)[i].Value, 1e-12, 0,
				size, properties(cut)[i].Kind.Symbol(), "NDS 2018 Table 4.3.8")
		}
	}
	timber := adjusted(t, "Hem-Fir", "No.2", "6x6", lumber.Use{Incised: true})
	for _, l := range timber.Compression.Lines() {
		if l.Symbol == "C_i" {
			assert.Contains(t, l.Source, "by choice")
		}
	}
	pine := adjusted(t, "Southern Pine", "No.2", "2x8", lumber.Use{})
	assert.Equal(t, 1.0, pine.Bending.Incising, "Southern Pine is treated without incising")
}

// The exceptions of C_M compare Fb C_F with 1150 and Fc C_F with 750 psi: a wet
// Douglas Fir-Larch No.2 2x6 loses 15 % (1170), Spruce-Pine-Fir (1137.5) nothing.
func TestTrapWetServiceExceptions(t *testing.T) {
	wet := lumber.Use{Wet: true, Repetitive: true}
	fir := adjusted(t, "Douglas Fir-Larch", "No.2", "2x6", wet)
	assert.Equal(t, 0.85, fir.Bending.Wet, "Fb C_F = 1170 psi")
	spruce := adjusted(t, "Spruce-Pine-Fir", "No.2", "2x6", wet)
	assert.Equal(t, 1.0, spruce.Bending.Wet, "Fb C_F = 1137.5 psi; C_r is not counted")
	assert.Equal(t, 0.8, spruce.Compression.Wet, "Fc C_F = 1265 psi")
	third := adjusted(t, "Spruce-Pine-Fir", "No.3", "2x6", wet)
	assert.Equal(t, 1.0, third.Compression.Wet, "Fc C_F = 715 psi")
	for _, a := range []lumber.Adjusted{fir, spruce, third} {
		assert.Equal(t, 0.67, a.Bearing.Wet, "wet bearing at bases, seats and ledgers")
	}
	post := adjusted(t, "Douglas Fir-Larch", "No.2", "6x6", wet)
	assert.Equal(t, 0.67, post.Bearing.Wet, "NDS Supp. 2018 Table 4D")
	assert.Equal(t, 0.91, post.Compression.Wet, "NDS Supp. 2018 Table 4D")
	assert.Equal(t, 1.0, post.Bending.Wet, "NDS Supp. 2018 Table 4D")
	pine := adjusted(t, "Southern Pine", "No.2", "6x6", wet)
	assert.Equal(t, 1.0, pine.Compression.Wet, "the values are for wet service")
	assert.Equal(t, 1.0, pine.Bearing.Wet, "the values are for wet service")
	deep := adjusted(t, "Southern Pine", "No.1", "4x10", wet)
	assert.Equal(t, 0.85, deep.Bending.Wet, "1050 x 1.10 = 1155 psi is above 1150")
}

// Nominal sizes are not sizes, and dressed sizes are not those of rough stock.
func TestTrapNominalSizes(t *testing.T) {
	dressed := section(t, "2x8")
	assert.Equal(t, 1.5*7.25, dressed.Area(), "PS 20")
	rough, err := lumber.Measured(2, 8, 2, 8)
	require.NoError(t, err)
	assert.Equal(t, 16.0, rough.Area())
	v, err := lumber.Find("Hem-Fir", "No.2", rough)
	require.NoError(t, err)
	a := lumber.Adjust(v, rough, lumber.Use{})
	assert.Equal(t, 1.2, a.Bending.Size, "C_F goes by the nominal width, 8 in.")
}

// Fc_perp of Southern Pine timbers is 375, not 565; of Spruce-Pine-Fir (South)
// 335, not 425.
func TestTrapBearingValueOfOtherGroups(t *testing.T) {
	for _, c := range []struct {
		species, size string
		want          float64
	}{
		{"Southern Pine", "6x6", 375}, {"Southern Pine", "2x8", 565},
		{"Spruce-Pine-Fir (South)", "2x8", 335}, {"Spruce-Pine-Fir", "2x8", 425},
	} {
		a := adjusted(t, c.species, "No.2", c.size, lumber.Use{})
		assert.Equal(t, c.want, a.Bearing.Reference, "NDS Supp. 2018: %s %s", c.species, c.size)
	}
}

// Standard 2x4 has Fb 575, not 900; light framing grades end at 4 in. wide; Stud
// wider than 6 in. is No.3.
func TestTrapFramingGrades(t *testing.T) {
	standard := adjusted(t, "Douglas Fir-Larch", "Standard", "2x4", lumber.Use{})
	assert.Equal(t, 575.0, standard.Bending.Value, "NDS Supp. 2018 Table 4A; C_F is 1.0")
	for _, grade := range []string{"Construction", "Standard", "Utility"} {
		for _, size := range []string{"2x6", "2x8", "4x6", "6x6"} {
			_, err := lumber.Find("Douglas Fir-Larch", grade, section(t, size))
			assert.Error(t, err, "%s %s", grade, size)
		}
	}
	utility := adjusted(t, "Hem-Fir", "Utility", "2x3", lumber.Use{})
	assert.Equal(t, 0.4, utility.Bending.Size, "NDS Supp. 2018 Table 4A")
	stud, err := lumber.Find("Hem-Fir", "Stud", section(t, "2x8"))
	require.NoError(t, err)
	assert.Equal(t, "No.3", stud.Row, "NDS Supp. 2018 Table 4A, Stud 8 in. and wider")
	_, err = lumber.Find("Southern Pine", "Stud", section(t, "2x8"))
	assert.Error(t, err, "Table 4B has no such row")
}

// Impact does not raise treated lumber above 1.6, and wet, hot and incised
// factors all multiply.
func TestTrapTreatedLumber(t *testing.T) {
	assert.Equal(t, lumber.TenMinutes, lumber.Impact.Treated(), "NDS 2018 Table 2.3.2 note")
	assert.Equal(t, lumber.TwoMonths, lumber.TwoMonths.Treated())
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "2x6", lumber.Use{
		Wet: true, Incised: true, Temperature: lumber.UpTo125F,
	})
	calctest.Close(t, 900*1.3*0.85*0.80*0.7, a.Bending.Value, 1e-12, 0, "NDS 2018 Table 4.3.1")
}

// Redwood and cedar No.2 are not Douglas Fir-Larch No.2.
func TestTrapSpeciesShareNoValues(t *testing.T) {
	fir := adjusted(t, "Douglas Fir-Larch", "No.2", "2x8", lumber.Use{})
	for _, c := range []struct {
		species, grade string
	}{
		{"Western Cedars", "No.2"}, {"Redwood", "No.2, open grain"}, {"Douglas Fir-South", "No.2"},
		{"Spruce-Pine-Fir (South)", "No.2"}, {"Spruce-Pine-Fir", "No.2"}, {"Hem-Fir", "No.2"},
	} {
		a := adjusted(t, c.species, c.grade, "2x8", lumber.Use{})
		assert.Less(t, a.Bending.Value, fir.Bending.Value, c.species)
		assert.Less(t, a.Elasticity.Value, fir.Elasticity.Value, c.species)
	}
}

// The wide face of beams and stringers takes less, not more; of dimension lumber
// C_fu comes on top of C_F.
func TestTrapFlatUse(t *testing.T) {
	flat := lumber.Use{Flat: true}
	plank := adjusted(t, "Douglas Fir-Larch", "No.2", "2x6", flat)
	calctest.Close(t, 900*1.3*1.15, plank.Bending.Value, 1e-12, 0, "NDS Supp. 2018 Table 4A, C_F and C_fu")
	assert.Equal(t, 1.3*900, plank.Bending.Edgewise(), "Fb* leaves C_fu out, NDS 2018 3.3.3.8")
	beam := adjusted(t, "Douglas Fir-Larch", "No.1", "6x10", flat)
	assert.Equal(t, 0.74, beam.Bending.FlatUse, "NDS Supp. 2018 Table 4D")
	assert.Equal(t, 0.90, beam.Stability.FlatUse, "NDS Supp. 2018 Table 4D")
	assert.Equal(t, 0.90, beam.Elasticity.FlatUse, "NDS Supp. 2018 Table 4D")
	post := adjusted(t, "Douglas Fir-Larch", "No.1", "6x6", flat)
	assert.Equal(t, 1.0, post.Bending.FlatUse)
	for size, want := range map[string]float64{"4x4": 1.0, "4x6": 1.05, "4x12": 1.1, "2x12": 1.2, "2x3": 1.0} {
		a := adjusted(t, "Hem-Fir", "No.2", size, flat)
		assert.Equal(t, want, a.Bending.FlatUse, size+": NDS Supp. 2018 Table 4A, flat use")
	}
}

// Old houses are of larger sizes than today's lumber: they are measured, and take the
// values and the size factor of their nominal size.
func TestTrapOldDressedSizes(t *testing.T) {
	for _, r := range calctest.Published(t, "old_sizes.csv") {
		thickness, width := r.Num("thickness in"), r.Num("width in")
		old, err := lumber.Measured(thickness, width, r.Num("breadth in"), r.Num("depth in"))
		require.NoError(t, err, r.Text("source"))
		today := section(t, calc.Number(thickness)+"x"+calc.Number(width))
		assert.GreaterOrEqual(t, old.Modulus(), today.Modulus(), old.Name)
		assert.Less(t, old.Modulus(), thickness*width*width/6, "%s: nominal sides are no sides", old.Name)
		v, err := lumber.Find("Douglas Fir-Larch", "No.2", old)
		require.NoError(t, err)
		w, err := lumber.Find("Douglas Fir-Larch", "No.2", today)
		require.NoError(t, err)
		assert.Equal(t, lumber.Adjust(w, today, lumber.Use{}).Bending, lumber.Adjust(v, old, lumber.Use{}).Bending, old.Name)
	}
}

// Values of other editions are not today's: Southern Pine fell in June 2013, and the
// rafter table of the building code still stands on the western values of 1991.
func TestTrapValuesOfOtherEditions(t *testing.T) {
	for _, c := range []struct {
		species, grade, size string
		old, want            float64 // Fb, psi
		source               string
	}{
		{"Southern Pine", "No.2", "2x10", 1050, 800, "NDS Supp. 2018 Table 4B; 1991 to 2012"},
		{"Southern Pine", "No.2", "2x6", 1250, 1000, "NDS Supp. 2018 Table 4B; 1991 to 2012"},
		{"Douglas Fir-Larch", "No.2", "2x8", 875, 900, "NDS Supp. 2018 Table 4A; IBC 2018 Table 2308.7.2(2)"},
		{"Douglas Fir-Larch", "Select Structural", "2x8", 1450, 1500, "NDS Supp. 2018 Table 4A; IBC 2018 Table 2308.7.2(2)"},
		{"Douglas Fir-Larch", "No.3", "2x8", 500, 525, "NDS Supp. 2018 Table 4A; IBC 2018 Table 2308.7.2(2)"},
		{"Hem-Fir", "No.1", "2x8", 950, 975, "NDS Supp. 2018 Table 4A; IBC 2018 Table 2308.7.2(2)"},
	} {
		got := adjusted(t, c.species, c.grade, c.size, lumber.Use{}).Bending.Reference
		assert.Equal(t, c.want, got, "%s %s %s, %s", c.species, c.grade, c.size, c.source)
		assert.NotEqual(t, c.old, got, c.source)
	}
}
