package brace

import (
	"math"

	"patiocover/calc"
)

// A Fixity is the largest bending of a post that stands by its embedment.
//
// In open soil the post is taken as rigid and the soil as stiffer in proportion to its
// depth, so that the pressure is a parabola over the depth; the pole formula of the
// building code rests on the same picture, with its largest pressure near a third of the
// depth (IBC 2018 1807.3.2.1). The moment is largest where the soil has taken up the
// push. Where rigid paving holds the post at the ground (1807.3.2.2) it is largest there,
// and the post turns about the paving: what the soil below takes of that moment is the
// shear in the post.
type Fixity struct {
	Push   float64 // P, lb, horizontal, above the ground
	Height float64 // h, in, of the push above the ground
	Depth  float64 // d, in, of the embedment
	Paved  bool    // rigid paving holds the post at the ground

	Turn   float64 // z_0, in below the ground: where the post turns; 0 when paved
	Zero   float64 // z, in below the ground: where the moment is largest; 0 when paved
	Moment float64 // M, lb-in
	Shear  float64 // V_g, lb, the largest in the post, below the ground: where it turns, or just below the paving
	Below  float64 // y, in: M over P less h, the depth of a clamp with the same moment
}

// halvings is how often the interval of the place is halved: below 1e-15 of the depth.
const halvings = 50

// NewFixity works the bending out from Push, Height, Depth and Paved. It allocates
// nothing.
//
// Special case: without a depth the moment is not a number, so that nothing passes.
func NewFixity(f Fixity) Fixity {
	switch {
	case !(f.Depth > 0):
		f.Moment = math.NaN()
		f.Below, f.Shear = math.NaN(), math.NaN()
		return f
	case f.Paved:
		f.Moment, f.Shear = f.Push*f.Height, f.Push*max(1, 4*f.Height/(3*f.Depth))
		return f
	}
	d, h := f.Depth, f.Height
	f.Turn = d * (3*d + 4*h) / (4*d + 6*h) // forces and moments of the parabola against the push
	low, high := 0.0, f.Turn
	for range halvings {
		if mid := (low + high) / 2; f.taken(mid) < f.taken(d) {
			low = mid
		} else {
			high = mid
		}
	}
	f.Zero = high
	z := f.Zero
	f.Below = z - (f.Turn*z*z*z/6-z*z*z*z/12)/f.taken(d)
	f.Moment = f.Push * (h + f.Below)
	f.Shear = f.Push * max(1, f.taken(f.Turn)/f.taken(d)-1)
	return f
}

// taken is the soil's force down to a depth, for a soil of unit stiffness, in³.
func (f *Fixity) taken(z float64) float64 { return f.Turn*z*z/2 - z*z*z/3 }

// Lines writes the bending out.
func (f Fixity) Lines() []calc.Line {
	const soil = "statics of a rigid post in soil whose stiffness grows with depth"
	var s calc.Sheet
	s.Given("P", f.Push, "lb", "push on the post")
	s.Given("h", f.Height, "in", "height of the push above the ground")
	if f.Paved {
		s.Step("M", "P * h", f.Moment, "lb-in", "IBC 2018 1807.3.2.2: held at the ground by rigid paving")
		s.Given("d", f.Depth, "in", "embedment")
		s.Step("V_g", "P * max(1, 4 * h / (3 * d))", f.Shear, "lb", soil+": its force acts at three quarters of the depth")
		return s.Lines()
	}
	s.Given("d", f.Depth, "in", "embedment")
	s.Step("z_0", "d * (3 * d + 4 * h) / (4 * d + 6 * h)", f.Turn, "in", soil+": where it turns")
	s.Given("z", f.Zero, "in", soil+": where the shear is 0, found by halving")
	s.Step("S_d", "z_0 * pow(d, 2) / 2 - pow(d, 3) / 3", f.taken(f.Depth), "in³", soil+": all of its force, per unit of stiffness")
	s.Step("y", "z - (z_0 * pow(z, 3) / 6 - pow(z, 4) / 12) / S_d", f.Below, "in", soil+": depth of a clamp with the same moment")
	s.Step("M", "P * (h + y)", f.Moment, "lb-in", "statics")
	s.Step("V_g", "P * max(1, pow(z_0, 3) / 6 / S_d - 1)", f.Shear, "lb", soil+": the larger of the push and the shear where it turns")
	return s.Lines()
}
