package wind_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads/wind"
)

// By hand: q 24.43 psf; edge 20 ft² at 2.5; posts 6 ft² at 0.85 x 2.0; roof 10 psf on
// 240 ft² at a slope of 1/24.
func TestSidewaysByHand(t *testing.T) {
	v := wind.NewVelocity(place())
	calctest.Near(t, 24.43, v.Pressure/calc.PSF, 0.01)
	q := v.Pressure / calc.PSF
	s := wind.NewSideways(wind.Sideways{
		Velocity: v, Angle: 2.4, Edge: 20 * calc.SqFt, Posts: 6 * calc.SqFt,
		Plan: 240 * calc.SqFt, Net: 10 * calc.PSF, Rise: 1.0 / 24,
	})
	calctest.Close(t, q*2.5*20, s.OnEdge, 1e-12, 0, "ASCE 7-16 27.3.2: +1.5 and -1.0 at once")
	calctest.Close(t, q*1.7*6, s.OnPosts, 1e-12, 0, "ASCE 7-16 Fig. 29.4-2: G 0.85, Cf 2.0")
	calctest.Close(t, 100, s.OnRoof, 1e-12, 0, "10 psf x 240 ft² x 1/24")
	calctest.Close(t, 36*calc.SqFt, s.Seen, 1e-12, 0, "20 + 6 + 240/24 ft²")
	calctest.Close(t, 16*36, s.Least, 1e-12, 0, "ASCE 7-16 27.1.5")
	calctest.Close(t, s.OnEdge+s.OnPosts+s.OnRoof, s.Force, 1e-12, 0)
}

// In a light wind the minimum of open buildings stands.
func TestSidewaysMinimum(t *testing.T) {
	light := place()
	light.Speed, light.Exposure = 85, "B"
	s := wind.NewSideways(wind.Sideways{
		Velocity: wind.NewVelocity(light), Angle: 2, Edge: 2 * calc.SqFt, Posts: 48 * calc.SqFt,
	})
	calctest.Close(t, 800, s.Force, 1e-12, 0, "16 psf x 50 ft²")
	assert.Less(t, s.OnEdge+s.OnPosts, s.Least)
}

// The force on the edges does not drop where the rule of the fascia ends.
func TestFasciaIsCarriedOnAboveFiveDegrees(t *testing.T) {
	v := wind.NewVelocity(place())
	low := wind.NewSideways(wind.Sideways{Velocity: v, Angle: 5, Edge: calc.SqFt})
	high := wind.NewSideways(wind.Sideways{Velocity: v, Angle: 5.1, Edge: calc.SqFt})
	assert.Equal(t, low.OnEdge, high.OnEdge)
	assert.Greater(t, high.OnEdge, v.Net(2)*calc.SqFt, "more than one flat-sided member")
	assert.NotEqual(t, low.Lines()[5].Source, high.Lines()[5].Source, "and the sheet says so")
}

func TestSidewaysLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := wind.Sideways{
			Velocity: wind.NewVelocity(site(t)),
			Angle:    rapid.Float64Range(0, 45).Draw(t, "theta"),
			Edge:     rapid.Float64Range(0, 100).Draw(t, "edge") * calc.SqFt,
			Posts:    rapid.Float64Range(0, 100).Draw(t, "posts") * calc.SqFt,
			Plan:     rapid.Float64Range(0, 600).Draw(t, "plan") * calc.SqFt,
			Net:      rapid.Float64Range(0, 60).Draw(t, "net") * calc.PSF,
			Rise:     rapid.Float64Range(0, 1).Draw(t, "rise"),
		}
		f := wind.NewSideways(s)
		assert.NoError(t, calctest.Prove(f.Lines()))
		assert.GreaterOrEqual(t, f.Force, f.Least)
		assert.GreaterOrEqual(t, f.Force, f.OnEdge+f.OnPosts+f.OnRoof)
		more := s
		more.Edge += calc.SqFt
		more.Posts += calc.SqFt
		assert.Greater(t, wind.NewSideways(more).Force, f.Force)
	})
}

func TestSidewaysAllocatesNothing(t *testing.T) {
	s := wind.Sideways{Velocity: wind.NewVelocity(place()), Angle: 2, Edge: 100, Posts: 100}
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink = wind.NewSideways(s).Force }))
}
