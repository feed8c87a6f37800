package lumber

import (
	_ "embed"
	"math"
	"strings"

	"patiocover/calc"
)

//go:embed cf.csv
var cfCSV string

//go:embed cfu.csv
var cfuCSV string

//go:embed cfu4d.csv
var cfu4dCSV string

// A sizeFactor is one row of the size factors of Table 4A.
type sizeFactor struct {
	grades                         string  // grades that share the row
	width                          float64 // in, nominal; the widest row serves wider pieces
	thin, thick, tension, pressure float64 // C_F of Fb to 3 in., Fb at 4 in., Ft, Fc; 0: not graded
	status                         calc.Status
}

func (f sizeFactor) known() calc.Status { return f.status }

// sizeFactors holds the rows, by grade and width.
var sizeFactors = calc.ReadTable("cf.csv", cfCSV, func(r calc.Row) sizeFactor {
	f := sizeFactor{
		grades: r.Text("grades"), width: r.Num("width in"), thin: r.Num("Fb 2-3 in"),
		tension: r.Num("Ft"), pressure: r.Num("Fc"), status: r.Status(),
	}
	if r.Has("Fb 4 in") {
		f.thick = r.Num("Fb 4 in")
	}
	return f
})

// structuralGrades names the rows that Select Structural to No.3 share.
const structuralGrades = "Select Structural to No.3"

// sizeGroup returns the grades of the size factor rows that serve the grade.
func sizeGroup(grade string) string {
	switch grade {
	case "Stud", "Construction", "Standard", "Utility":
		return grade
	}
	return structuralGrades
}

// sizeOf returns the row of Table 4A for the grade of a row of values: the first
// that is at least as wide, else the widest. The factor falls with the width, so a
// width between two rows takes the safe one.
func sizeOf(grade string, width float64) sizeFactor {
	group := sizeGroup(grade)
	var found sizeFactor
	for _, f := range sizeFactors {
		if f.grades != group {
			continue
		}
		found = f
		if width <= f.width {
			break
		}
	}
	return found
}

// The size factors that Table 4B leaves to its notes, and the depth from which
// timbers lose bending strength.
const (
	thickSouthernPine = 1.10 // Fb, 4 in. thick and 8 in. or wider
	wideSouthernPine  = 0.90 // Fb, Ft, Fc, wider than 12 in.: times the 12 in. row
	sizeDepth         = 12.0 // in, NDS 2018 4.3.6.2
	exemptBending     = 1150 // psi, Fb C_F up to which wet lumber keeps Fb
	exemptCompression = 750  // psi, Fc C_F up to which wet lumber keeps Fc
)

// timberSize returns (12/d)^(1/9), for d above 12 in. (NDS 2018 4.3.6.2).
func timberSize(depth float64) float64 { return math.Pow(sizeDepth/depth, 1.0/9) }

// A flatFactor is one row of the flat use factors of dimension lumber.
type flatFactor struct {
	thick  bool    // 4 in. nominal thickness; else 2 and 3 in.
	width  float64 // in, nominal; the widest row serves wider pieces
	factor float64 // C_fu
	status calc.Status
}

func (f flatFactor) known() calc.Status { return f.status }

var flatFactors = calc.ReadTable("cfu.csv", cfuCSV, func(r calc.Row) flatFactor {
	return flatFactor{
		thick: r.Text("thickness in") == "4", width: r.Num("width in"),
		factor: r.Num("factor"), status: r.Status(),
	}
})

// flatRows returns the rows of one thickness.
func flatRows(thick bool) []flatFactor {
	var some []flatFactor
	for _, f := range flatFactors {
		if f.thick == thick {
			some = append(some, f)
		}
	}
	return some
}

var thinFlat, thickFlat = flatRows(false), flatRows(true)

// flatUse returns C_fu of dimension lumber: the last row that is no wider, because
// the factor grows with the width.
func flatUse(s Section) factor {
	rows, found := thinFlat, factor{1, flatThin}
	if s.NominalThickness >= 4 {
		rows, found.basis = thickFlat, flatThick
	}
	for _, f := range rows {
		if f.width <= s.NominalWidth {
			found.value = f.factor
		}
	}
	return found
}

// A flatTimber is one row of the wide face factors of beams and stringers.
type flatTimber struct {
	grade                          string
	bending, elasticity, stability float64 // factor on Fb, E, Emin
	status                         calc.Status
}

func (f flatTimber) known() calc.Status { return f.status }

var flatTimbers = calc.ReadTable("cfu4d.csv", cfu4dCSV, func(r calc.Row) flatTimber {
	return flatTimber{
		grade: r.Text("grade"), bending: r.Num("Fb"), elasticity: r.Num("E"),
		stability: r.Num("Emin"), status: r.Status(),
	}
})

// wideFace returns the row of beams and stringers for the grade; dense grades go
// with their grade, and a grade that has no row takes the smallest factors.
func wideFace(grade string) flatTimber {
	worst := flatTimber{bending: 1, elasticity: 1, stability: 1}
	for _, f := range flatTimbers {
		if strings.HasSuffix(grade, f.grade) || strings.HasPrefix(grade, f.grade) {
			return f
		}
		worst.bending = min(worst.bending, f.bending)
		worst.elasticity = min(worst.elasticity, f.elasticity)
		worst.stability = min(worst.stability, f.stability)
	}
	return worst
}
