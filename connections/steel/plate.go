package steel

import (
	"math"

	"patiocover/calc"
)

// A Shape is a pair of like plates with one row of bolts in line with the force at each
// end.
type Shape struct {
	Stock    Stock   // of each plate
	Width    float64 // w, in, of each where it is narrowest
	Diameter float64 // D, in, of the bolts
	Count    int     // n, bolts in the row
	Spacing  float64 // s, in, center to center
	End      float64 // e, in, from the last bolt to the end of the plate along the force
	Free     float64 // L, in, between the bolts on either side of the joint, where nothing keeps the plate from buckling
}

// A Limit is what gives way first.
type Limit uint8

// The limits, in the order of the written calculation.
const (
	Yielding Limit = iota // of the gross section
	Rupture               // of the net section
	Block                 // block shear
	Bearing               // at the holes, or tear-out
	Shearing              // of the bolts
	Buckling              // in compression
	NoValue               // the distances are too small: the standard gives no value
	limits   = int(NoValue)
)

// Safety factors (AISC 360-16 D2, E1, J3.6, J3.10, J4.3).
const (
	omegaYield   = 1.67 // factor
	omegaRupture = 2.0  // factor
)

// clamped is K of a plate whose ends may move sideways but not turn (AISC 360-16 Table
// C-A-7.1 case c, the recommended value).
const clamped = 1.2

// leastSpacing is the least spacing of bolts in diameters (AISC 360-16 J3.3).
const leastSpacing = 8.0 / 3

// A Plate is the check of a pair of plates under a force that pulls and presses in turn.
type Plate struct {
	Force    float64         // P, lb, along the row, of either sense
	Shape    Shape           // the pair
	Hole     float64         // d_h, in, standard hole
	Gross    float64         // A_g, in², of both
	Net      float64         // A_e, in², of both: at most 0.85 of the gross one
	Along    float64         // L_v, in, along the row to the end, the plane of block shear
	Planes   float64         // A_gv, in², gross area in shear, of both
	Torn     float64         // A_nv, in², net area in shear, of both
	Pulled   float64         // A_nt, in², net area in tension to one edge, of both
	Clear    float64         // l_c, in, the least clear distance of a hole to the next hole or to the end
	Slender  float64         // K L / r, ratio
	Euler    float64         // F_e, psi
	Critical float64         // F_cr, psi
	Allowed  [limits]float64 // lb, by limit
	Limit    Limit           // that governs
	Capacity float64         // P_a, lb; 0 where the standard gives no value
	slender  branch
}

// A branch is the equation of the critical stress.
type branch uint8

const (
	stocky  branch = iota // K L / r up to 25: J4.4
	plastic               // eq. E3-2
	elastic               // eq. E3-3
)

// stockyUpTo is K L / r up to which a plate does not buckle (AISC 360-16 J4.4).
const stockyUpTo = 25.0

// NewPlate checks a pair of plates. It allocates nothing.
//
// Special case: where an edge distance is below Table J3.4 or the spacing below J3.3, or
// the diameter is not in the table, there is no capacity.
func NewPlate(force float64, s Shape) Plate {
	p := Plate{Force: math.Abs(force), Shape: s, Hole: s.Diameter + 1.0/16} // Table J3.3
	t := s.Stock.Thickness
	p.Gross = 2 * s.Width * t
	p.Net = min(2*(s.Width-p.Hole-1.0/16)*t, 0.85*p.Gross) // B4.3b, J4.1
	n := float64(s.Count)
	p.Clear, p.Along = s.End-p.Hole/2, s.End
	if s.Count > 1 {
		p.Clear, p.Along = min(p.Clear, s.Spacing-p.Hole), s.End+(n-1)*s.Spacing
	}
	p.Planes = 2 * p.Along * t
	p.Torn = 2 * (p.Along - (n-0.5)*(p.Hole+1.0/16)) * t                                                 // J4.3
	p.Pulled = 2 * (s.Width/2 - (p.Hole+1.0/16)/2) * t                                                   // J4.3
	p.Allowed[Yielding] = yield * p.Gross / omegaYield                                                   // eq. D2-1
	p.Allowed[Rupture] = ultimate * p.Net / omegaRupture                                                 // eq. D2-2
	p.Allowed[Block] = (min(0.6*ultimate*p.Torn, 0.6*yield*p.Planes) + ultimate*p.Pulled) / omegaRupture // eq. J4-5, U_bs = 1
	p.Allowed[Bearing] = n * 2 * min(2.4*s.Diameter, 1.2*p.Clear) * t * ultimate / omegaRupture          // eq. J3-6a, J3-6c
	p.Allowed[Shearing] = n * 2 * boltShear * math.Pi / 4 * math.Pow(s.Diameter, 2) / omegaRupture       // eq. J3-1
	p.buckle()
	p.least()
	return p
}

// buckle finds the critical stress (J4.4, E3).
func (p *Plate) buckle() {
	p.Slender = clamped * p.Shape.Free / (p.Shape.Stock.Thickness / math.Sqrt(12))
	p.Euler = math.Pow(math.Pi, 2) * modulus / math.Pow(p.Slender, 2) // eq. E3-4
	switch {
	case p.Slender <= stockyUpTo:
		p.slender, p.Critical = stocky, yield // J4.4
	case yield/p.Euler <= 2.25:
		p.slender, p.Critical = plastic, math.Pow(0.658, yield/p.Euler)*yield // eq. E3-2
	default:
		p.slender, p.Critical = elastic, 0.877*p.Euler // eq. E3-3
	}
	p.Allowed[Buckling] = p.Critical * p.Gross / omegaYield // eq. E3-1, J4-6
}

// least picks the least limit, the first of equals.
func (p *Plate) least() {
	s, edge := &p.Shape, least(p.Shape.Diameter).least
	spaced := s.Count == 1 || s.Spacing >= leastSpacing*s.Diameter
	if !(edge > 0 && s.Count >= 1 && s.End >= edge && s.Width/2 >= edge && spaced) {
		p.Limit = NoValue
		return
	}
	p.Capacity = math.Inf(1)
	for i, x := range p.Allowed {
		if x < p.Capacity {
			p.Limit, p.Capacity = Limit(i), x
		}
	}
}

// Ratio is P / P_a.
func (p Plate) Ratio() float64 { return calc.Ratio(p.Force, p.Capacity) }
