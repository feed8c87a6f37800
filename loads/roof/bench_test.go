package roof_test

import (
	"testing"

	"patiocover/calc"
	"patiocover/loads/roof"
)

func BenchmarkTie(b *testing.B) {
	j, basis := roof.TableJoint("C", 115, 24*calc.Ft, 24), roof.TableBasis(false)
	for b.Loop() {
		sink = roof.NewTie(j, basis).Uplift
	}
}

func BenchmarkComponent(b *testing.B) {
	s, p := place(115), roof.Part{Angle: 12, Zone: roof.Zone2Eave, Area: 40 * calc.SqFt}
	for b.Loop() {
		c, _ := roof.NewComponent(s, p, roof.Enclosed)
		sink = c.Suction
	}
}
