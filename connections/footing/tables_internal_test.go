package footing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
	"patiocover/calc/calctest"
)

// What must hold of every row of the table of soils.
func TestSoils(t *testing.T) {
	before := math.Inf(1)
	for _, s := range soils {
		assert.LessOrEqual(t, s.Bearing, before, "%s: the strongest first", s.Class)
		before = s.Bearing
		assert.Positive(t, s.Lateral, s.Class)
		assert.True(t, (s.Friction > 0) != (s.Cohesion > 0), "%s: friction or cohesion", s.Class)
		assert.NotEmpty(t, s.Source)
		assert.Equal(t, calc.Read, s.Status, "the table was read: its status may not fall")
		found, ok := SoilNamed(s.Class)
		assert.True(t, ok)
		assert.Equal(t, s, found)
	}
	weak := soils[len(soils)-1]
	calctest.Near(t, 1500, weak.Bearing/calc.PSF, 1e-9, "IBC 2018 Table 1806.2")
	calctest.Near(t, 100, weak.Lateral/(calc.PSF/calc.Ft), 1e-9, "IBC 2018 Table 1806.2")
	_, ok := SoilNamed("peat")
	assert.False(t, ok, "no presumptive value (IBC 2018 1806.2)")
}
