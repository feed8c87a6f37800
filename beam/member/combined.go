package member

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// Actions are what acts on a member at once, in one combination: the axial force, the
// moments of loads across it, and how far the axial force stands off the axis. The
// signs of the moments do not matter; a moment and an eccentricity in one plane add.
type Actions struct {
	Force      float64 // P, lb: pressing is positive, pulling negative
	Edgewise   float64 // M1, lb-in: in the plane of the depth, load on the narrow face
	Flatwise   float64 // M2, lb-in: in the plane of the breadth, load on the wide face
	EdgeOffset float64 // e1, in: of the force, in the plane of the depth
	FlatOffset float64 // e2, in: of the force, in the plane of the breadth
}

// A Stay is how a member under axial force and bending is held.
type Stay struct {
	Column  Column  // the two planes of buckling
	Bracing Bracing // of the edge that the edgewise moment compresses
	Net     float64 // An, in²: area left in tension by holes and notches; 0: the whole
}

// combination is the branch of NDS 2018 3.9.
type combination uint8

const (
	bendingOnly    combination = iota // fc = 0: biaxial bending, 3.9.2
	bendingPressed                    // compression, 3.9.2 and 15.4.1
	bendingPulled                     // tension, 3.9.1
)

// Combined is the check of NDS 2018 3.9 and 15.4.1: axial force with bending about
// one or both axes. 1 is the plane of the depth, 2 the plane of the breadth.
type Combined struct {
	Actions      Actions     // what acts
	Stay         Stay        // how the member is held
	Compression  Compression // 3.7 for the pressing force
	Tension      Tension     // 3.8 for the pulling force
	Edge         Bending     // 3.3 for the edgewise moment
	Flat         Bending     // 3.3 for the flatwise moment
	Area         float64     // A, in², gross
	Axial        float64     // fc pressing or ft pulling, psi
	EdgeCritical float64     // FcE1, psi; 0 where no force presses or the plane is held
	FlatCritical float64     // FcE2, psi; 0 where no force presses or the plane is held
	EdgeShare    float64     // fc / FcE1, ratio; 0 where the plane is held
	FlatShare    float64     // fc / FcE2, ratio; 0 where the plane is held
	EdgeOff      float64     // fc 6 e1/d1, psi; 8 in place of 6 for poles
	FlatOff      float64     // fc 6 e2/d2, psi, with the thickness of one ply where there are plies
	EdgeStress   float64     // fb1 + fc 6 e1/d1, psi
	FlatStress   float64     // fb2 + fc 6 e2/d2, psi
	Twist        float64     // (EdgeStress / FbE)², ratio; 0 where no edge can move sideways
	EdgeGrown    float64     // fb1 + fc 6 e1/d1 (1 + 0.234 fc/FcE1), psi
	FlatGrown    float64     // fb2 + fc 6 e2/d2 (1 + 0.234 fc/FcE2 + 0.234 Twist), psi
	Relief       float64     // T/A over the gross area, psi; 0 where no force pulls
	AxialPart    float64     // (fc/Fc')² or ft/Ft', ratio
	EdgePart     float64     // share of edgewise bending in Sum, ratio
	FlatPart     float64     // share of flatwise bending in Sum, ratio
	Sum          float64     // eq. 3.9-1, or 3.9-3 with 15.4-1, ratio
	Second       float64     // eq. 3.9-2, or 3.9-4 with 15.4-2, ratio
	branch       combination
}

// NewCombined checks the actions on a piece. edge and flat are the values of the same
// piece on edge and laid flat (see [lumber.Use]). The interaction takes one load
// duration, that of the combination, in all its terms.
//
// The moments are the largest along the member; the eccentric force is taken at the
// end, with the growth that NDS 2018 15.4.1 gives it between the ends.
func NewCombined(
	x Actions, edge, flat *lumber.Adjusted, duration lumber.Duration, stay Stay,
) Combined {
	c := Combined{
		Actions: x, Stay: stay, Area: edge.Section.Area(),
		Edge: NewBending(x.Edgewise, edge, duration, stay.Bracing),
		Flat: NewBending(x.Flatwise, flat, duration, Bracing{}),
	}
	switch {
	case x.Force == 0:
		c.branch = bendingOnly
	case x.Force < 0:
		c.branch = bendingPulled
		net := stay.Net
		if net == 0 {
			net = c.Area
		}
		c.Tension = NewTension(-x.Force, net, edge, duration)
		c.Axial = c.Tension.Stress
	default: // pressing, or not a number, which no term passes
		c.branch = bendingPressed
		c.Compression = NewCompression(x.Force, edge, duration, stay.Column)
		c.Axial = c.Compression.Stress
	}
	c.bend()
	c.interact()
	return c
}

// bend finds the bending stresses with the eccentricity of the force, and how far
// each kind of buckling makes them grow.
func (c *Combined) bend() {
	if c.branch == bendingPressed {
		stiffness := c.Compression.Stiffness.At(c.Compression.Duration)
		c.EdgeCritical, c.EdgeShare = share(c.Axial, stiffness, c.Compression.DeepRatio)
		c.FlatCritical, c.FlatShare = share(c.Axial, stiffness*c.plies(), c.Compression.ThinRatio)
	}
	c.EdgeOff = c.Axial * c.shape() * math.Abs(c.Actions.EdgeOffset) / c.Edge.Depth // 15.4.1
	c.FlatOff = c.Axial * c.shape() * math.Abs(c.Actions.FlatOffset) / c.Flat.Depth // 15.4.1
	c.EdgeStress = c.Edge.Stress + c.EdgeOff
	c.FlatStress = c.Flat.Stress + c.FlatOff
	if c.Edge.lateral == lateralSlender {
		c.Twist = c.EdgeStress / c.Edge.Critical * c.EdgeStress / c.Edge.Critical
	}
	c.EdgeGrown = c.Edge.Stress + c.EdgeOff*(1+0.234*c.EdgeShare)               // eq. 15.4-1
	c.FlatGrown = c.Flat.Stress + c.FlatOff*(1+0.234*c.FlatShare+0.234*c.Twist) // eq. 15.4-1
}

// plies is Kf of plies that are fastened together, which is put on FcE2 as well, on the
// safe side; 1 of everything else.
func (c *Combined) plies() float64 {
	if c.Compression.governing == columnPlies {
		return c.Compression.together.share
	}
	return 1
}

// shape is A d/S: 6 of a rectangle, 8 of a circle.
func (c *Combined) shape() float64 {
	if c.Edge.round {
		return 8
	}
	return 6
}

// share returns FcE, psi, and fc/FcE for a plane with le/d; zeros where it is held, and
// where it is not known: there the compression itself has no capacity.
func share(axial, stiffness, slenderness float64) (critical, part float64) {
	if !(slenderness > 0) {
		return 0, 0
	}
	critical = euler(stiffness, slenderness)
	return critical, axial / critical
}

// interact sums the two conditions of the branch.
func (c *Combined) interact() {
	if c.branch == bendingPulled {
		c.pull()
		return
	}
	if c.branch == bendingPressed {
		c.AxialPart = c.Compression.Ratio() * c.Compression.Ratio()
	}
	c.EdgePart = calc.Ratio(c.EdgeGrown, c.Edge.Allowable*(1-c.EdgeShare))
	c.FlatPart = calc.Ratio(c.FlatGrown, c.Flat.Allowable*(1-c.FlatShare-c.Twist))
	c.Sum = c.AxialPart + c.EdgePart + c.FlatPart // eq. 3.9-3, 15.4-1
	c.Second = c.FlatShare + c.Twist              // eq. 3.9-4, 15.4-2
}

// pull sums the two conditions of tension: at the edge that both stretch, and at the
// edge that bending compresses, where the tension over the gross area is taken off.
// Flatwise bending adds to both, as the commentary on 3.9.1 suggests.
func (c *Combined) pull() {
	c.AxialPart = c.Tension.Ratio()
	c.EdgePart = calc.Ratio(c.EdgeStress, c.Edge.stretched())
	c.FlatPart = calc.Ratio(c.FlatStress, c.Flat.stretched())
	c.Sum = c.AxialPart + c.EdgePart + c.FlatPart // eq. 3.9-1
	c.Relief = c.Tension.Force / c.Area
	c.Second = calc.Ratio(c.EdgeStress-c.Relief, c.Edge.pressed()) +
		calc.Ratio(c.FlatStress, c.Flat.pressed()*(1-c.Twist)) // eq. 3.9-2
}

// stretched is Fb* of NDS 2018 3.9.1, psi: with every factor but C_L.
func (b *Bending) stretched() float64 { return b.Star * b.Volume.Factor * b.Strength.FlatUse }

// pressed is Fb** of NDS 2018 3.9.1, psi: with every factor but C_V.
func (b *Bending) pressed() float64 { return b.Star * b.Stability * b.Strength.FlatUse }

// Ratio is the larger of the two conditions.
func (c Combined) Ratio() float64 { return calc.Ratio(math.Max(c.Sum, c.Second), 1) }
