package lumber

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
	"patiocover/calc/calctest"
)

// What must hold of every row of Tables 4A, 4B and 4D.
func TestRowsOfValues(t *testing.T) {
	type key struct {
		species, grade string
		narrowest      float64
		shapes         string
	}
	seen := map[key]bool{}
	for _, r := range rows {
		v := r.values
		k := key{v.Species, v.Grade, r.narrowest, r.shapes}
		assert.False(t, seen[k], "twice: %v", k)
		seen[k] = true
		for _, q := range v.all() {
			assert.Positive(t, q.Value, "%v", k)
		}
		assert.Contains(t, v.Source, "NDS Supp. 2018 "+v.Table.String())
		assert.Less(t, v.Stability.Value, v.Elasticity.Value, "%v", k)
		assert.Less(t, v.Tension.Value, v.Bending.Value, "%v", k)
		assert.Less(t, v.Gravity.Value, 0.56, "%v", k)
		if v.Table != Table4D {
			assert.LessOrEqual(t, r.narrowest, r.widest, "%v", k)
		}
	}
}

// Emin is 1.03 E (1 - 1.645 COV)/1.66 with COV 0.25, to the nearest 10 000 psi
// (NDS 2018 App. D eq. D-4).
func TestStabilityModulusOfEveryRow(t *testing.T) {
	for _, r := range rows {
		exact := 1.03 * r.values.Elasticity.Value * (1 - 1.645*0.25) / 1.66 // eq. D-4
		calctest.Near(t, exact, r.values.Stability.Value, 5000,
			r.values.Species, r.values.Grade, r.values.Source)
	}
}

// Fv, Fc_perp and G belong to the species, not to the grade, apart from the dense
// grades, the open grain of redwood, and its light framing, which is sold as either.
func TestGradesOfASpeciesShareShearAndBearing(t *testing.T) {
	type key struct {
		species string
		table   Table
		gravity float64
		dense   string
	}
	first := map[key]Values{}
	for _, r := range rows {
		v := r.values
		k := key{v.Species, v.Table, v.Gravity.Value, density(v.Grade)}
		if v.Species == "Redwood" && sizeGroup(v.Grade) != structuralGrades {
			continue
		}
		if _, ok := first[k]; !ok {
			first[k] = v
		}
		assert.Equal(t, first[k].Shear.Value, v.Shear.Value, "%v %s", k, v.Grade)
		assert.Equal(t, first[k].Bearing.Value, v.Bearing.Value, "%v %s", k, v.Grade)
	}
}

func density(grade string) string {
	switch {
	case strings.Contains(grade, "NonDense"):
		return "lighter"
	case strings.Contains(grade, "Dense"):
		return "denser"
	}
	return ""
}

// The number of values known from memory only. It may only fall: confirm a value
// in a text that prints it, note that in the table, and lower the number here.
func TestRecalledValuesOnlyFall(t *testing.T) {
	most := map[Table]int{Table4A: 0, Table4B: 21, Table4D: 229}
	recalled, all := map[Table]int{}, map[Table]int{}
	for _, r := range rows {
		for _, q := range r.values.all() {
			all[r.values.Table]++
			if q.Status == calc.Recalled {
				recalled[r.values.Table]++
			}
		}
	}
	for _, table := range []Table{Table4A, Table4B, Table4D} {
		t.Logf("%s: %d of %d values are recalled", table, recalled[table], all[table])
		assert.LessOrEqual(t, recalled[table], most[table], table.String())
	}
}

// The same for the rows of the factors: flat use of 4 in. stock 10
// in. and wider and of beams and stringers, and shrinkage of redwood and cedar.
func TestRecalledFactorsOnlyFall(t *testing.T) {
	count := func(name string, most int, status ...calc.Status) {
		recalled := 0
		for _, s := range status {
			if s == calc.Recalled {
				recalled++
			}
		}
		t.Logf("%s: %d of %d rows are recalled", name, recalled, len(status))
		assert.LessOrEqual(t, recalled, most, name)
	}
	count("cf.csv", 0, statuses(sizeFactors, sizeFactor.known)...)
	count("cfu.csv", 1, statuses(flatFactors, flatFactor.known)...)
	count("cfu4d.csv", 3, statuses(flatTimbers, flatTimber.known)...)
	count("cm.csv", 0, statuses(wetRows, func(w wetRow) calc.Status { return w.status })...)
	count("ct.csv", 0, statuses(heat, heatRow.known)...)
	count("ci.csv", 0, statuses(incisions, incision.known)...)
	count("duration.csv", 0, statuses(durationRows, func(d durationRow) calc.Status { return d.status })...)
	count("table5a.csv", 92, laminatedStatuses()...)
	count("table4c.csv", 7, statuses(machineRows, func(v Values) calc.Status { return v.Bending.Status })...)
	count("laminated.csv", 16, statuses(laminatedSizes, laminatedSize.known)...)
	count("builtup.csv", 1, statuses(builtupRows, builtupRow.known)...)
	count("lrfd.csv", 0, statuses(conversionRows, conversion.known)...)
	count("timeeffect.csv", 0, statuses(timeRows, timeRow.known)...)
	count("shrinkage.csv", 2, statuses(shrinkageRows, func(r shrinkageRow) calc.Status { return r.status })...)
}

// laminatedStatuses lists the statuses of every value of Table 5A.
func laminatedStatuses() []calc.Status {
	var all []calc.Status
	for _, v := range laminatedRows {
		for _, q := range v.all() {
			all = append(all, q.Status)
		}
		for _, q := range []Quoted{
			v.Reversed, v.side.bending, v.side.bearing, v.side.shear, v.side.elasticity, v.side.stability,
		} {
			all = append(all, q.Status)
		}
	}
	return all
}

// What must hold of every combination of Table 5A: Emin by NDS 2018 App. D eq. D-4 with
// 1.05 and COV 0.10, the reversed value no larger, the weak axis no stiffer.
func TestRowsOfGluedTimber(t *testing.T) {
	for _, v := range laminatedRows {
		for _, q := range v.all() {
			assert.Positive(t, q.Value, v.Grade)
		}
		exact := 1.05 * v.side.elasticity.Value * (1 - 1.645*0.10) / 1.66 // eq. D-4
		calctest.Near(t, exact, v.side.stability.Value, 6000, v.Grade)
		assert.LessOrEqual(t, v.Reversed.Value, v.Bending.Value, v.Grade)
		assert.LessOrEqual(t, v.side.elasticity.Value, v.Elasticity.Value, v.Grade)
		assert.Equal(t, v.side.stability, v.Stability, "%s buckles about the weak axis", v.Grade)
		assert.Contains(t, []float64{10, 20}, v.volume.divisor, v.Grade)
	}
}

// Emin of machine grades by NDS 2018 App. D eq. D-4 with COV 0.11.
func TestRowsOfMachineGrades(t *testing.T) {
	for i, v := range machineRows {
		calctest.Near(t, 1.03*v.Elasticity.Value*(1-1.645*0.11)/1.66, v.Stability.Value, 5000, v.Grade)
		if i > 0 {
			assert.Greater(t, v.Bending.Value, machineRows[i-1].Bending.Value, v.Grade)
		}
	}
}

func statuses[T any](rows []T, status func(T) calc.Status) []calc.Status {
	all := make([]calc.Status, len(rows))
	for i, r := range rows {
		all[i] = status(r)
	}
	return all
}

// A modulus Emin from E is never surer than E.
func TestStabilityIsAsSureAsElasticity(t *testing.T) {
	for _, r := range rows {
		v := r.values
		if v.Stability.Status == calc.Computed {
			assert.GreaterOrEqual(t, v.Elasticity.Status, calc.Computed, "%s %s", v.Species, v.Grade)
		}
	}
}

// Dry sizes to 4 in. nominal, green sizes above (NDS Supp. 2018 Table 1A, PS 20).
func TestEverySizeFollowsTheRule(t *testing.T) {
	under := func(nominal float64, thick bool) float64 {
		switch {
		case thick:
			return 0.5
		case nominal == 1:
			return 0.25
		case nominal >= 8:
			return 0.75
		}
		return 0.5
	}
	classes := calc.ReadTable("sizes.csv", sizesCSV, func(r calc.Row) string { return r.Text("class") })
	names := map[string]bool{}
	for i, s := range sizes {
		thick := s.NominalThickness >= 5
		assert.Equal(t, s.NominalThickness-under(s.NominalThickness, thick), s.Breadth, s.Name)
		assert.Equal(t, s.NominalWidth-under(s.NominalWidth, thick), s.Depth, s.Name)
		assert.LessOrEqual(t, s.Breadth, s.Depth, s.Name)
		assert.Equal(t, classes[i], s.Class.String(), s.Name)
		assert.False(t, names[s.Name], "twice: %s", s.Name)
		names[s.Name] = true
		if i > 0 {
			before := sizes[i-1]
			assert.True(t, before.NominalThickness < s.NominalThickness ||
				before.NominalThickness == s.NominalThickness && before.NominalWidth < s.NominalWidth, s.Name)
		}
	}
}

// The size factors of Table 4A fall with the width and never below 0.4.
func TestEverySizeFactor(t *testing.T) {
	for i, f := range sizeFactors {
		for _, x := range []float64{f.thin, f.tension, f.pressure} {
			assert.True(t, 0.4 <= x && x <= 1.5, "%+v", f)
		}
		assert.Equal(t, calc.Read, f.status)
		if i == 0 || sizeFactors[i-1].grades != f.grades || f.grades == "Utility" {
			continue
		}
		before := sizeFactors[i-1]
		assert.Less(t, before.width, f.width)
		assert.LessOrEqual(t, f.thin, before.thin, "%+v", f)
		assert.LessOrEqual(t, f.thick, before.thick, "%+v", f)
		assert.LessOrEqual(t, f.tension, before.tension, "%+v", f)
		assert.LessOrEqual(t, f.pressure, before.pressure, "%+v", f)
	}
}

// A factor for wet or hot service, or for incisions, never raises a value, and
// heat costs wet wood at least as much as dry wood.
func TestEveryServiceFactor(t *testing.T) {
	for k := range kinds {
		for _, w := range wetRows {
			assert.True(t, 0 < w.factor[k] && w.factor[k] <= 1, "%s %s", w.product, k.Symbol())
		}
		for _, byMoisture := range heatFactors[k] {
			assert.Equal(t, 1.0, byMoisture[UpTo100F])
			assert.LessOrEqual(t, byMoisture[UpTo125F], 1.0)
			assert.LessOrEqual(t, byMoisture[UpTo150F], byMoisture[UpTo125F])
			assert.Positive(t, byMoisture[UpTo150F])
		}
		for i := range heatFactors[k][0] {
			assert.LessOrEqual(t, heatFactors[k][1][i], heatFactors[k][0][i])
		}
		assert.True(t, 0 < incisingFactors[k] && incisingFactors[k] <= 1, k.Symbol())
	}
	assert.Equal(t, 1.0, incisingFactors[Bearing], "NDS 2018 Table 4.3.8")
}

func TestEveryFlatUseFactor(t *testing.T) {
	for _, some := range [][]flatFactor{thinFlat, thickFlat} {
		for i, f := range some {
			assert.GreaterOrEqual(t, f.factor, 1.0)
			if i > 0 {
				assert.Less(t, some[i-1].width, f.width)
				assert.LessOrEqual(t, some[i-1].factor, f.factor)
			}
		}
	}
	for _, f := range flatTimbers {
		assert.True(t, f.bending <= 1 && f.elasticity <= 1 && f.stability <= 1, f.grade)
	}
}

// A grade without a row of its own takes the smallest wide face factors.
func TestWideFaceOfAnyGrade(t *testing.T) {
	assert.Equal(t, 0.86, wideFace("Dense Select Structural").bending, "NDS Supp. 2018 Table 4D")
	assert.Equal(t, 0.74, wideFace("Dense No.1").bending, "NDS Supp. 2018 Table 4D")
	assert.Equal(t, 1.0, wideFace("No.2").bending, "NDS Supp. 2018 Table 4D")
	assert.Equal(t, flatTimber{bending: 0.74, elasticity: 0.9, stability: 0.9}, wideFace("Clear Structural"))
}

func TestEveryBasisHasASource(t *testing.T) {
	for b := range basisCount {
		assert.NotEmpty(t, b.source(), "%d", b)
	}
}

// Each strength and Emin has a conversion, each duration a time effect; shorter loads
// never count for less.
func TestEveryMethodFactor(t *testing.T) {
	assert.Len(t, conversionRows, int(kinds)-1)
	for k := range kinds {
		assert.GreaterOrEqual(t, conversions[k].format, 1.0, k.Symbol())
		assert.LessOrEqual(t, conversions[k].resistance, 1.0, k.Symbol())
		assert.Equal(t, k != Elasticity, conversions[k].source != "", k.Symbol())
	}
	assert.Len(t, timeRows, int(durations))
	for i, d := range Durations() {
		assert.NotEmpty(t, timeTable[d].combination, d)
		if i > 0 {
			assert.GreaterOrEqual(t, d.TimeEffect(), Durations()[i-1].TimeEffect(), d)
		}
	}
}

func TestEveryDurationHasARow(t *testing.T) {
	assert.Len(t, durationRows, int(durations))
	for d := range durations {
		assert.Positive(t, d.Factor())
		assert.NotEmpty(t, d.String())
		assert.NotEmpty(t, d.Load())
	}
}

// all lists the values in the order of the printed columns.
func (v Values) all() [8]Quoted {
	return [...]Quoted{
		v.Bending, v.Tension, v.Shear, v.Bearing, v.Compression, v.Elasticity, v.Stability, v.Gravity,
	}
}
