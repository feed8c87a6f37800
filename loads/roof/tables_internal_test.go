package roof

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
)

// What must hold of every row: a curve is level or falls towards nothing with the
// area, no two rows answer the same question, and angles rise.
func TestZoneRows(t *testing.T) {
	type key struct {
		figures, shape string
		from           float64
		zone           Zone
		over, down     bool
	}
	seen := map[key]bool{}
	for _, z := range zoneRows {
		k := key{z.figures, z.shape, z.from, z.zone, z.overhang, z.down}
		assert.False(t, seen[k], "%v twice", k)
		seen[k] = true
		assert.Less(t, z.from, z.to)
		assert.Equal(t, z.zone == allZones, z.down, "%v", k)
		assert.GreaterOrEqual(t, z.points, 2, "%v", k)
		sign := -1.0
		if z.down {
			sign = 1
		}
		for i := range z.points {
			assert.Positive(t, sign*z.factor[i], "%v", k)
			if i > 0 {
				assert.Greater(t, z.area[i], z.area[i-1], "%v", k)
				assert.LessOrEqual(t, sign*z.factor[i], sign*z.factor[i-1], "%v", k)
			}
		}
	}
}

func TestGcpfRows(t *testing.T) {
	assert.Len(t, gcpfRows, 28)
	for i, r := range gcpfRows {
		if i == 0 {
			continue
		}
		p := gcpfRows[i-1]
		if p.along == r.along && p.leeward == r.leeward && p.end == r.end {
			assert.Greater(t, r.angle, p.angle, "row %d", i+1)
		}
	}
}

// A row from memory becomes read, never the other way: the counts may only fall.
func TestRowsFromMemoryOnlyFall(t *testing.T) {
	n := 0
	for _, z := range zoneRows {
		if z.status == calc.Recalled {
			n++
		}
	}
	t.Logf("%d of %d rows of zones.csv are from memory", n, len(zoneRows))
	assert.LessOrEqual(t, n, 29)
	for _, r := range gcpfRows {
		assert.Equal(t, calc.Read, r.status)
	}
	m := 0
	for _, i := range insides {
		if i.Status == calc.Recalled {
			m++
		}
	}
	assert.LessOrEqual(t, m, 1)
}
