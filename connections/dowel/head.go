package dowel

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// thinHead is the thickness of a side member in head diameters up to which its head
// pulls through in proportion to it (NDS 2018 12.2.5).
const thinHead = 2.5

// A HeadPull is the check of round heads that would pull through a wood side member
// (NDS 2018 12.2.5).
type HeadPull struct {
	Demand    float64  // T, lb, on the group
	Fastener  Fastener // with its Head
	Gravity   float64  // G of the side member, specific gravity, dimensionless
	Thickness float64  // t, in, of the side member
	Factors   Factors  // C_D, C_M, C_t
	Count     int      // n, how many
	Reference float64  // W_H, lb, of one
	One       float64  // W_H', lb
	Capacity  float64  // n W_H', lb
	thick     bool     // t over 2.5 D_H
}

// NewHeadPull compares the demand, lb, with n heads. The wet service factor is that of
// lateral values: the side member, not the wood that holds, decides. Without a known
// head there is no value.
func NewHeadPull(demand float64, f Fastener, side Member, c Conditions, n int) HeadPull {
	h := HeadPull{Demand: demand, Fastener: f, Gravity: side.Gravity, Thickness: side.Thickness, Count: n}
	h.Factors = WithdrawalFactors(f.Kind, c)
	h.Factors.Moisture = h.Factors.wet.lateral
	h.Factors = h.Factors.multiply()
	h.Reference = 690 * math.Pi * f.Head * math.Pow(side.Gravity, 2) * side.Thickness // eq. 12.2-6a
	if side.Thickness > thinHead*f.Head {
		h.thick = true
		h.Reference = 1725 * math.Pi * math.Pow(f.Head, 2) * math.Pow(side.Gravity, 2) // eq. 12.2-6b
	}
	h.One = h.Reference * h.Factors.Product
	h.Capacity = float64(n) * h.One
	return h
}

// Ratio is the demand over n W_H'.
func (h HeadPull) Ratio() float64 { return calc.Ratio(h.Demand, h.Capacity) }

// Explain writes the check out.
func (h HeadPull) Explain() calc.Check {
	var s calc.Sheet
	s.Quoted("D_H", h.Fastener.Head, "in", "head of the "+h.Fastener.Name+", from memory", calc.Recalled)
	s.Given("G", h.Gravity, "", "specific gravity of the side member, NDS 2018 Table 12.3.3A or 12.3.3B")
	s.Given("t", h.Thickness, "in", "side member under the head")
	formula, source := "690 * pi * D_H * pow(G, 2) * t", "NDS 2018 12.2.5, t to 2.5 D_H"
	if h.thick {
		formula, source = "1725 * pi * pow(D_H, 2) * pow(G, 2)", "NDS 2018 12.2.5, t over 2.5 D_H"
	}
	s.Append([]calc.Line{{Symbol: "W_H", Formula: formula, X: h.Reference, Unit: "lb", Source: source, Status: calc.Recalled}})
	product := h.Factors.write(&s)
	s.Step("W_H_adj", "W_H * "+product, h.One, "lb", "NDS 2018 Table 11.3.1")
	s.Given("n", float64(h.Count), "", "how many")
	s.Given("T", h.Demand, "lb", "demand on the group")
	s.Step("T_adj", "n * W_H_adj", h.Capacity, "lb", "NDS 2018 11.1.2")
	return s.Check("heads pulling through", "T", "T_adj")
}

// Steel of lag screws and bolts, and the parts of its strength that count.
const (
	boltYield     = 45_000 * calc.PSI // F_y of low carbon lag screws and bolts (NDS 2018 Table I1)
	allowableRod  = 0.6               // of F_y, factor, allowable stress (AISC 360-16 D2: 1/1.67)
	resistanceRod = 0.9               // of F_y, factor, load and resistance (AISC 360-16 D2)
)

// A Rod is the check of lag screws or bolts in tension at the root of the thread (NDS
// 2018 11.2.3). The load duration factor does not apply to steel.
type Rod struct {
	Demand   float64  // T, lb, on the group
	Fastener Fastener // with its Tensile area
	Factor   float64  // of F_y, factor
	Count    int      // n, how many
	Capacity float64  // lb
	method   lumber.Method
}

// NewRod compares the demand, lb, with n rods.
func NewRod(demand float64, f Fastener, m lumber.Method, n int) Rod {
	r := Rod{Demand: demand, Fastener: f, Factor: allowableRod, Count: n, method: m}
	if m == lumber.LRFD {
		r.Factor = resistanceRod
	}
	r.Capacity = float64(n) * r.Factor * boltYield * f.Tensile
	return r
}

// Ratio is the demand over the capacity.
func (r Rod) Ratio() float64 { return calc.Ratio(r.Demand, r.Capacity) }

// Explain writes the check out.
func (r Rod) Explain() calc.Check {
	var s calc.Sheet
	s.Quoted("A_t", r.Fastener.Tensile, "in2", "area at the root of the thread, "+r.Fastener.source, r.Fastener.status)
	s.Quoted("F_y", boltYield, "psi", "low carbon steel, NDS 2018 Table I1", calc.Recalled)
	s.Quoted("f_y", r.Factor, "", "AISC 360-16 D2, "+r.method.String(), calc.Recalled)
	s.Given("n", float64(r.Count), "", "how many")
	s.Given("T", r.Demand, "lb", "demand on the group")
	s.Step("T_adj", "n * f_y * F_y * A_t", r.Capacity, "lb", "NDS 2018 11.2.3: no load duration on steel")
	return s.Check("steel in tension", "T", "T_adj")
}
