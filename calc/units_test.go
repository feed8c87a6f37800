package calc_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
)

// unitCases states each constant by another route than units.go: the yard-pound
// definitions 1 ft = 12 in and 1 kip = 1000 lb (NIST SP 811 (2008) App. B.6, B.8),
// the rest counted out in whole inches.
var unitCases = []struct {
	name string
	got  float64
	want float64
}{
	{"In", calc.In, 1},
	{"Ft", calc.Ft, 12},
	{"Lb", calc.Lb, 1},
	{"Kip", calc.Kip, 1000},
	{"PSI", calc.PSI, 1},
	{"PSF", calc.PSF, 1.0 / 144},
	{"PLF", calc.PLF, 1.0 / 12},
	{"PCF", calc.PCF, 1.0 / 1728},
	{"SqFt", calc.SqFt, 144},
	{"LbFt", calc.LbFt, 12},
}

func TestUnits(t *testing.T) {
	for _, c := range unitCases {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, c.got) })
	}
}

// A new constant must join the table above.
func TestUnitsTableIsComplete(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "units.go", nil, 0)
	require.NoError(t, err)
	have := map[string]bool{}
	for _, c := range unitCases {
		have[c.name] = true
	}
	count := 0
	for name, object := range file.Scope.Objects {
		if object.Kind == ast.Con {
			count++
			assert.True(t, have[name], "calc.%s has no row", name)
		}
	}
	assert.Len(t, unitCases, count)
}

// The trade's questions come out in the trade's units.
func TestUnitsRoundTrip(t *testing.T) {
	cases := []struct {
		name string
		got  float64
		want float64
	}{
		{"20 psf on 2 ft is 40 plf", 20 * calc.PSF * 2 * calc.Ft / calc.PLF, 40},
		{"40 plf over 10 ft is 400 lb", 40 * calc.PLF * 10 * calc.Ft / calc.Lb, 400},
		{"40 plf, 10 ft: w L²/8 is 500 lb-ft", 40 * calc.PLF * (10 * calc.Ft) * (10 * calc.Ft) / 8 / calc.LbFt, 500},
		{"150 pcf, 4 in thick is 50 psf", 150 * calc.PCF * 4 * calc.In / calc.PSF, 50},
		{"1500 psf on 4 ft² is 6 kip", 1500 * calc.PSF * 4 * calc.SqFt / calc.Kip, 6},
		{"144 psf is 1 psi", 144 * calc.PSF / calc.PSI, 1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { assert.InEpsilon(t, c.want, c.got, 1e-12) })
	}
}
