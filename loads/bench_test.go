package loads_test

import (
	"testing"

	"patiocover/calc"
	"patiocover/loads"
)

func BenchmarkRoofLive(b *testing.B) {
	for b.Loop() {
		sink = loads.NewRoofLive(20*calc.PSF, 300*calc.SqFt, 5, true).Load
	}
}

func BenchmarkDead(b *testing.B) {
	p := []loads.Part{{Weight: 1, Certain: true}, {Weight: 2}}
	for b.Loop() {
		sink = loads.NewDead(p).Most
	}
}

func BenchmarkSlabRule(b *testing.B) {
	for b.Loop() {
		sink = loads.NewSlabRule(700, 0, 4, true).Ratio()
	}
}
