package wind_test

import (
	"testing"

	"patiocover/loads/wind"
)

func BenchmarkVelocity(b *testing.B) {
	s := place()
	for b.Loop() {
		sink = wind.NewVelocity(s).Pressure
	}
}

func BenchmarkComponent(b *testing.B) {
	v, r := wind.NewVelocity(place()), cover(12)
	for b.Loop() {
		sink = wind.NewComponent(v, r, wind.EffectiveArea(120, 16), wind.Interior, both).Suction
	}
}

func BenchmarkSideways(b *testing.B) {
	s := wind.Sideways{Velocity: wind.NewVelocity(place()), Angle: 2, Edge: 100, Posts: 100}
	for b.Loop() {
		sink = wind.NewSideways(s).Force
	}
}

func BenchmarkHalves(b *testing.B) {
	r := cover(12)
	for b.Loop() {
		sink = wind.Halves(r)[0].Windward
	}
}
