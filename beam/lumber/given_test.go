package lumber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// strand are made-up values of engineered lumber, round on purpose.
var strand = lumber.Given{
	Product: "engineered lumber", Source: "evaluation report, table 1", Bending: 2600, Tension: 1600, Shear: 280,
	Bearing: 700, Compression: 2400, Elasticity: 2e6, Stability: 1e6, Gravity: 0.5,
}

// Given values count as they stand in dry use, with their source on every line.
func TestGivenValues(t *testing.T) {
	s := section(t, "1-3/4x9-1/2")
	a := lumber.Adjust(strand.Values(), s, lumber.Use{Repetitive: true})
	for _, p := range properties(a) {
		calctest.Close(t, p.Reference, p.Value, 1e-12, 0, p.Kind.Symbol())
		assert.Equal(t, "given: evaluation report, table 1", p.Lines()[0].Source)
		assert.Equal(t, calc.Read, p.Lines()[0].Status)
	}
	assert.Equal(t, 1.0, a.Bending.Repetitive, "no repetitive factor was given")
	assert.Empty(t, strand.Missing(s, lumber.Use{Repetitive: true}))

	more := strand
	more.Repetitive, more.Wet, more.Hot = 1.04, 0.7, 0.9
	a = lumber.Adjust(more.Values(), s, lumber.Use{Repetitive: true, Wet: true, Temperature: lumber.UpTo125F})
	calctest.Close(t, 2600*1.04*0.7*0.9, a.Bending.Value, 1e-12, 0)
	calctest.Close(t, 2e6*0.7*0.9, a.Elasticity.Value, 1e-12, 0)
	assert.NoError(t, calctest.Prove(a.Bending.LinesAt(lumber.TwoMonths)))
}

// Without a factor for the use, given values are nothing: wet, hot, incised, laid flat.
func TestTrapGivenValuesInAnotherUse(t *testing.T) {
	s := section(t, "1-3/4x9-1/2")
	for name, u := range map[string]lumber.Use{
		"wet": {Wet: true}, "hot": {Temperature: lumber.UpTo125F}, "incised": {Incised: true}, "flat": {Flat: true},
	} {
		a := lumber.Adjust(strand.Values(), s, u)
		assert.Zero(t, a.Bending.Value, name)
		assert.Zero(t, a.Shear.Value, name)
		assert.Equal(t, name != "flat", len(strand.Missing(s, u)) == 1, name)
	}
	flat := strand
	flat.Flatwise = 2400
	assert.Equal(t, 2400.0, lumber.Adjust(flat.Values(), s, lumber.Use{Flat: true}).Bending.Value)
}

// The depth factor that comes with given values; without one, nothing deeper than 12 in.
func TestGivenDepthFactor(t *testing.T) {
	deep := section(t, "1-3/4x14")
	a := lumber.Adjust(strand.Values(), deep, lumber.Use{})
	lost := lumber.NewVolume(&a, 240)
	assert.Zero(t, lost.Factor)
	assert.Len(t, strand.Missing(deep, lumber.Use{}), 1)
	with := strand
	with.DepthExponent, with.DepthFrom = 0.125, 12
	b := lumber.Adjust(with.Values(), deep, lumber.Use{})
	v := lumber.NewVolume(&b, 240)
	calctest.Close(t, 0.980915, v.Factor, 1e-6, 0, "(12/14)^(1/8), by hand")
	shallow := lumber.Adjust(with.Values(), section(t, "1-3/4x9-1/2"), lumber.Use{})
	assert.Equal(t, 1.0, lumber.NewVolume(&shallow, 240).Factor, "never above 1")
	plain := lumber.Adjust(strand.Values(), section(t, "1-3/4x9-1/2"), lumber.Use{})
	for _, w := range []lumber.Volume{lost, v, lumber.NewVolume(&plain, 240)} {
		assert.NoError(t, calctest.Prove(w.Lines()))
		assert.NotEmpty(t, w.Lines())
	}
}

// Machine grades take Fb, Ft, Fc and E of the stamp and the rest of the species, in
// pieces 2 in. thick, without size factor.
func TestMachineGrades(t *testing.T) {
	a := adjusted(t, "Hem-Fir", "1650f-1.5E", "2x8", lumber.Use{})
	visual := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	assert.Equal(t, 1650.0, a.Bending.Value, "NDS Supp. 2018 Table 4C, no size factor")
	assert.Equal(t, visual.Shear.Reference, a.Shear.Reference)
	assert.Equal(t, visual.Bearing.Reference, a.Bearing.Reference)
	assert.Equal(t, visual.Gravity, a.Gravity)
	wet := adjusted(t, "Hem-Fir", "1650f-1.5E", "2x8", lumber.Use{Wet: true})
	assert.Equal(t, 0.85, wet.Bending.Wet, "above 1150 psi")
	for _, size := range []string{"3x8", "4x8", "6x8", "2x14"} {
		_, err := lumber.Find("Hem-Fir", "1650f-1.5E", section(t, size))
		assert.Error(t, err, size)
	}
	for _, grade := range lumber.MachineGrades() {
		for _, species := range []string{"Douglas Fir-Larch", "Southern Pine", "Spruce-Pine-Fir"} {
			v, err := lumber.Find(species, grade, section(t, "2x6"))
			require.NoError(t, err, "%s %s", species, grade)
			assert.Equal(t, lumber.Table4C, v.Table)
		}
	}
}
