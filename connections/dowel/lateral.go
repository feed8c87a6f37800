package dowel

import "math"

// A Joint is what a dowel goes through.
type Joint struct {
	Side    Member  // piece under the head; in double shear the thinner of the two outside
	Main    Member  // piece that takes the tip; in double shear the one in the middle
	Gap     float64 // g, in: between the pieces, such as stucco or a spacer; 0 in contact
	Double  bool    // two planes of shear
	Tabular bool    // also reduce by p/10D, or p/8D for lag screws, as users of the tables do
}

// Least penetrations in diameters (NDS 2018 12.1.4.6, 12.1.5.6, 12.1.6.5, from memory)
// and those on which the tables of the standard stand.
const (
	leastDriven = 6.0  // nails and wood screws, with the tip
	leastLag    = 4.0  // lag screws, without the tip
	fullDriven  = 10.0 // nails and wood screws
	fullLag     = 8.0  // lag screws
)

// A reduction is a row of NDS 2018 Table 12.3.1B.
type reduction uint8

const (
	smallDowel    reduction = iota // D < 1/4 in.: K_D
	threadedDowel                  // D >= 1/4 in. but D_r < 1/4 in.: K_D K_theta by the root
	largeDowel                     // D_r >= 1/4 in.: 4, 3.6 and 3.2 times K_theta
)

// A Lateral is the reference lateral value of one dowel.
type Lateral struct {
	Fastener    Fastener       // the dowel
	Joint       Joint          // what it goes through
	Main        Bearing        // Fem and what it stands on
	Side        Bearing        // Fes and what it stands on
	Beyond      float64        // p, in: length below the last plane of shear, with the tip; 0 for bolts
	Penetration float64        // in: the part of p in the member that counts toward the least; 0 for bolts
	Least       float64        // p_min, in; 0 for bolts
	MainLength  float64        // l_m, dowel bearing length in the main member, in
	SideLength  float64        // l_s, dowel bearing length in the side member, in
	Angle       float64        // theta_max, deg: the larger angle of load to grain
	AngleFactor float64        // K_theta, factor
	SmallFactor float64        // K_D, factor; 0 where it has no say
	Reductions  [3]float64     // R_d of modes I, II, and III with IV, factors
	Values      [modes]float64 // Z of each mode, lb; 0 where a mode does not occur
	Tables      float64        // factor of p/10D or p/8D, 1 unless asked for
	Mode        Mode           // that governs; NoMode when the penetration is too short
	Value       float64        // Z, lb; 0 when the standard gives none
	reduction   reduction
}

// NewLateral returns Z of the dowel in the joint (NDS 2018 12.3.1; with a gap, AWC
// Technical Report 12). The bending diameter is that of the root for lag and wood
// screws; the bearing strength takes the nominal one. Where the least penetration is
// missed, or a length is not positive, there is no value.
func NewLateral(f Fastener, j Joint) Lateral {
	v := Lateral{
		Fastener: f, Joint: j, Tables: 1,
		Main: NewBearing(j.Main, f.Diameter), Side: NewBearing(j.Side, f.Diameter),
	}
	v.lengths()
	v.reduce()
	if !(v.MainLength > 0 && v.SideLength > 0 && v.Penetration >= v.Least) {
		v.Mode = NoMode
		return v
	}
	if j.Tabular && f.Kind != Bolt {
		v.Tables = min(1, v.Penetration/(v.full()*f.Diameter))
	}
	if j.Gap > 0 {
		v.apart()
	}
	if !(j.Gap > 0) {
		v.touching()
	}
	v.least()
	return v
}

// full is the penetration of the tables in diameters.
func (v *Lateral) full() float64 {
	if v.Fastener.Kind == LagScrew {
		return fullLag
	}
	return fullDriven
}

// lengths finds the penetration and the bearing lengths (NDS 2018 12.3.5): half of the
// tip does not bear, and no length is longer than its member.
func (v *Lateral) lengths() {
	f, j := &v.Fastener, &v.Joint
	v.MainLength, v.SideLength = j.Main.Thickness, j.Side.Thickness
	if f.Kind == Bolt {
		return
	}
	v.Least = leastDriven * f.Diameter
	tip := 0.0
	if f.Kind == LagScrew {
		v.Least, tip = leastLag*f.Diameter, f.Tip
	}
	last, bears := j.Main.Thickness, &v.MainLength
	v.Beyond = f.Length - j.Side.Thickness - j.Gap
	if j.Double {
		v.Beyond = f.Length - j.Side.Thickness - j.Main.Thickness - 2*j.Gap
		last, bears = j.Side.Thickness, &v.SideLength
	}
	v.Penetration = min(v.Beyond-tip, last)
	*bears = min(v.Beyond-f.Tip/2, last)
}

// reduce finds the reduction terms of NDS 2018 Table 12.3.1B.
func (v *Lateral) reduce() {
	v.Angle = max(v.Main.Member.Angle, v.Side.Member.Angle)
	v.AngleFactor = 1 + 0.25*(v.Angle/90) // Table 12.3.1B
	switch {
	case !v.Fastener.Large():
		v.reduction = smallDowel
		v.SmallFactor = max(2.2, 10*v.Fastener.Diameter+0.5) // Table 12.3.1B
		v.Reductions = [3]float64{v.SmallFactor, v.SmallFactor, v.SmallFactor}
	case v.Fastener.Root < thick:
		v.reduction = threadedDowel
		v.SmallFactor = max(2.2, 10*v.Fastener.Root+0.5) // Table 12.3.1B note 1
		both := v.SmallFactor * v.AngleFactor
		v.Reductions = [3]float64{both, both, both}
	default:
		v.reduction = largeDowel
		v.Reductions = [3]float64{4 * v.AngleFactor, 3.6 * v.AngleFactor, 3.2 * v.AngleFactor} // Table 12.3.1B
	}
}

// planes is the number of planes of shear.
func (v *Lateral) planes() float64 {
	if v.Joint.Double {
		return 2
	}
	return 1
}

// touching evaluates the yield limit equations of NDS 2018 12.3.1.
func (v *Lateral) touching() {
	d, fyb := v.Fastener.Root, v.Fastener.Yield
	fem, fes, lm, ls := v.Main.Strength, v.Side.Strength, v.MainLength, v.SideLength
	re, rt := fem/fes, lm/ls
	one, two, rest := v.Reductions[0], v.Reductions[1], v.Reductions[2]
	k1 := (math.Sqrt(re+2*math.Pow(re, 2)*(1+rt+math.Pow(rt, 2))+math.Pow(rt, 2)*math.Pow(re, 3)) - re*(1+rt)) / (1 + re)
	k2 := -1 + math.Sqrt(2*(1+re)+2*fyb*(1+2*re)*math.Pow(d, 2)/(3*fem*math.Pow(lm, 2)))
	k3 := -1 + math.Sqrt(2*(1+re)/re+2*fyb*(2+re)*math.Pow(d, 2)/(3*fem*math.Pow(ls, 2)))
	n := v.planes()
	v.Values[BearingMain] = d * lm * fem / one                                          // eq. 12.3-1, 12.3-7
	v.Values[BearingSide] = n * d * ls * fes / one                                      // eq. 12.3-2, 12.3-8
	v.Values[BendingSide] = n * k3 * d * ls * fem / ((2 + re) * rest)                   // eq. 12.3-5, 12.3-9
	v.Values[BendingBoth] = n * math.Pow(d, 2) / rest * math.Sqrt(2*fem*fyb/(3*(1+re))) // eq. 12.3-6, 12.3-10
	if !v.Joint.Double {
		v.Values[Rotation] = k1 * d * ls * fes / two                    // eq. 12.3-3
		v.Values[BendingMain] = k2 * d * lm * fem / ((1 + 2*re) * rest) // eq. 12.3-4
	}
}

// apart evaluates the general dowel equations of AWC Technical Report 12 Table 1-1 for
// members with a gap between them.
func (v *Lateral) apart() {
	d, g := v.Fastener.Root, v.Joint.Gap
	qm, qs, lm, ls := v.Main.Strength*d, v.Side.Strength*d, v.MainLength, v.SideLength
	moment := v.Fastener.Yield * math.Pow(d, 3) / 6 // plastic moment of a round bar
	one, two, rest := v.Reductions[0], v.Reductions[1], v.Reductions[2]
	n := v.planes()
	v.Values[BearingMain] = qm * lm / one
	v.Values[BearingSide] = n * qs * ls / one
	v.Values[BendingSide] = n * root(1/(4*qs)+1/(2*qm), ls/2+g, -qs*math.Pow(ls, 2)/4-moment) / rest
	v.Values[BendingBoth] = n * root(1/(2*qs)+1/(2*qm), g, -2*moment) / rest
	if !v.Joint.Double {
		v.Values[Rotation] = root(1/(4*qs)+1/(4*qm), ls/2+g+lm/2, -qs*math.Pow(ls, 2)/4-qm*math.Pow(lm, 2)/4) / two
		v.Values[BendingMain] = root(1/(2*qs)+1/(4*qm), g+lm/2, -moment-qm*math.Pow(lm, 2)/4) / rest
	}
}

// root is the positive root P of A P² + B P + C = 0.
func root(a, b, c float64) float64 { return (-b + math.Sqrt(math.Pow(b, 2)-4*a*c)) / (2 * a) }

// least picks the mode with the least value; of equal ones the first.
func (v *Lateral) least() {
	least := math.Inf(1)
	for m := range modes {
		if v.occurs(m) && v.Values[m] < least {
			v.Mode, least = m, v.Values[m]
		}
	}
	v.Value = least * v.Tables
}

// occurs reports whether a mode is one of those of the joint.
func (v *Lateral) occurs(m Mode) bool {
	return !v.Joint.Double || (m != Rotation && m != BendingMain)
}
