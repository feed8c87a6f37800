package brace

import (
	"math"

	"patiocover/calc"
)

// A Knee is one post with knee braces, its foot pinned and its top pinned to the beam,
// under a push at its top.
type Knee struct {
	Shear  float64 // V, lb, push at the top of the post
	Height float64 // H, in, from the foot to the underside of the beam
	Drop   float64 // a, in, from the underside of the beam down to the joint of brace and post; below H
	Angle  float64 // phi, degrees of the brace from the horizontal, above 0 and below 90
	Braces int     // n, braces that share the push: 1, or 2 on opposite sides

	Horizontal float64 // B, lb, horizontal force of one brace
	Vertical   float64 // F_v, lb, vertical force of one brace, up at one end and down at the other
	Axial      float64 // F, lb, force along one brace, compression or tension
	Moment     float64 // M, lb-in, in the post at the joint of the brace
	Top        float64 // T, lb, horizontal force between post top and beam
	Reach      float64 // c, in, from the post to the joint of brace and beam
	Length     float64 // L_b, in, of the brace between its joints
}

// NewKnee works the statics out from Shear, Height, Drop, Angle and Braces. Moments about
// the top joint give n B a = V H; the brace pushes the post the way that the roof moves.
//
// Special case: without a brace every force is not a number, so that nothing passes.
func NewKnee(k Knee) Knee {
	if k.Braces < 1 || !(k.Drop > 0) || !(k.Drop < k.Height) {
		k.Horizontal = math.NaN()
	} else {
		k.Horizontal = k.Shear * k.Height / (float64(k.Braces) * k.Drop)
	}
	sin, cos := math.Sincos(k.Angle * math.Pi / 180)
	k.Vertical = k.Horizontal * sin / cos
	k.Axial = k.Horizontal / cos
	k.Moment = k.Shear*(k.Height-k.Drop) + 0*k.Horizontal
	k.Top = float64(k.Braces)*k.Horizontal - k.Shear
	k.Reach = k.Drop * cos / sin
	k.Length = k.Drop / sin
	return k
}

// Lines writes the statics out.
func (k Knee) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("V", k.Shear, "lb", "push at the top of the post")
	s.Given("H", k.Height, "in", "foot to underside of beam, geometry")
	s.Given("a", k.Drop, "in", "underside of beam to the joint of the brace on the post, geometry")
	s.Given("phi", k.Angle, "", "degrees of the brace from the horizontal")
	s.Given("n", float64(k.Braces), "", "braces at this post that share the push")
	s.Step("B", "V * H / (n * a)", k.Horizontal, "lb", "statics: moments about the joint of post and beam")
	s.Step("F", "B / cosd(phi)", k.Axial, "lb", "statics: along the brace, compression or tension")
	s.Step("F_v", "B * tand(phi)", k.Vertical, "lb", "statics: up on one of beam and post, down on the other")
	s.Step("M", "V * (H - a)", k.Moment, "lb-in", "statics: in the post at the joint of the brace")
	s.Step("T", "n * B - V", k.Top, "lb", "statics: sideways between post top and beam")
	s.Step("c", "a / tand(phi)", k.Reach, "in", "geometry: post to the joint of the brace on the beam")
	s.Step("L_b", "a / sind(phi)", k.Length, "in", "geometry: length of the brace between its joints")
	return s.Lines()
}
