package anchor

import (
	_ "embed" // bolts.csv
	"math"
	"slices"

	"patiocover/calc"
)

//go:embed bolts.csv
var boltsCSV string

// A Size is one diameter of bolt.
type Size struct {
	Diameter float64     // d_a, in
	Area     float64     // A_se, tensile stress area, in²
	Head     float64     // A_brg, net bearing area of a hex head, in²
	Source   string      // the formulas behind the areas
	Status   calc.Status // how the areas came into the project
}

var sizes = calc.ReadTable("bolts.csv", boltsCSV, func(r calc.Row) Size {
	return Size{
		Diameter: r.Num("diameter in"), Area: r.Num("stress area in2"), Head: r.Num("head in2"),
		Source: r.Text("source"), Status: r.Status(),
	}
})

// Sizes returns the diameters in rising order.
func Sizes() []Size { return slices.Clone(sizes) }

// SizeOf returns the bolt of a diameter, in.
func SizeOf(diameter float64) (Size, bool) {
	i := slices.IndexFunc(sizes, func(s Size) bool { return math.Abs(s.Diameter-diameter) < 1e-6 })
	if i < 0 {
		return Size{}, false
	}
	return sizes[i], true
}

// A Kind is how the anchor sits in the concrete. The zero value is the weakest.
type Kind uint8

// The kinds.
const (
	Drilled Kind = iota // set in a drilled hole, expansion or screw: its evaluation report governs where it says less
	Hooked              // cast in, bent at its end
	Headed              // cast in, with a head or a nut at its end
)

var kindNames = [...]string{Drilled: "drilled anchor", Hooked: "hooked bolt cast in", Headed: "headed bolt cast in"}

// String names the kind.
func (k Kind) String() string { return kindNames[k] }

// A Bolt is one anchor.
type Bolt struct {
	Kind      Kind    // how it sits in the concrete
	Category  int     // of a drilled anchor, 1 to 3 by its evaluation report; any other number counts as 3
	Diameter  float64 // d_a, in
	Area      float64 // A_se, in²
	Head      float64 // A_brg of a headed bolt, in²
	Hook      float64 // e_h of a hooked bolt, inside of the shaft to the outer tip, in
	Tensile   float64 // f_uta, lb/in²
	Embedment float64 // h_ef, in
}

// Steel36 is the tensile strength of the mildest anchor steel, ASTM F1554 grade 36 or
// A307, lb/in² (from memory).
const Steel36 = 58000 * calc.PSI

// Concrete is what the anchor sits in, of normal weight.
type Concrete struct {
	Strength  float64 // f'c, lb/in²
	Thickness float64 // h_a, in
	West      float64 // to the edge, joint or crack on one side, in; very large where there is none
	East      float64 // to that on the other side, in
	South     float64 // to that across, in
	North     float64 // to that on the other side across, in
	Uncracked bool    // an analysis shows that it does not crack in service
}

// nearest is the least edge distance c_a,min, in.
func (c Concrete) nearest() float64 { return min(c.West, c.East, c.South, c.North) }

// farOff stands for an edge that is not there, in.
const farOff = 1000 * calc.In

// within brings edges that are not there to where they make no difference.
func (c Concrete) within() Concrete {
	c.West, c.East = min(c.West, farOff), min(c.East, farOff)
	c.South, c.North = min(c.South, farOff), min(c.North, farOff)
	return c
}

// strength is the f'c that counts, lb/in²: at most 10,000 psi, and 8000 psi around
// drilled anchors (ACI 318-19 17.3.1).
func (c Concrete) strength(k Kind) float64 {
	if k == Drilled {
		return min(c.Strength, 8000)
	}
	return min(c.Strength, 10000)
}

// A Fault is why an anchor counts for nothing.
type Fault uint8

// The faults.
const (
	Sound   Fault = iota // none
	TooDeep              // embedded deeper than the concrete allows
	NoEdge               // no concrete, or none on one side
	BadHook              // the hook is shorter than 3 diameters
	Weak                 // concrete below 2500 psi
)

var faultWords = [...]string{
	Sound:   "the anchor fits the concrete",
	TooDeep: "the anchor is deeper than the concrete allows",
	NoEdge:  "no concrete around the anchor",
	BadHook: "the hook is shorter than 3 diameters",
	Weak:    "concrete below 2500 psi",
}

// String words the fault.
func (f Fault) String() string { return faultWords[f] }

// faultOf looks for what makes the anchor worthless. A drilled anchor reaches at most
// two thirds of the thickness or to 4 in from the far side, whichever is deeper (ACI
// 318-19 17.9.4); a bolt cast in keeps 1-1/2 in of cover below it.
func faultOf(b Bolt, c Concrete) Fault {
	deepest := Deepest(b.Kind, c.Thickness)
	switch {
	case !(c.Strength >= 2500):
		return Weak
	case !(c.nearest() > 0 && c.Thickness > 0 && b.Embedment > 0):
		return NoEdge
	case !(b.Embedment <= deepest+1e-9):
		return TooDeep
	case b.Kind == Hooked && !(b.Hook >= 3*b.Diameter):
		return BadHook
	}
	return Sound
}

// Strength reduction factors of ACI 318-19 17.5.3 without supplementary reinforcement
// (from memory).
const (
	phiSteelTension = 0.75 // ductile steel
	phiSteelShear   = 0.65
	phiBrittlePull  = 0.65 // steel that nobody knows to be ductile, that of drilled anchors
	phiBrittlePush  = 0.60
	phiConcrete     = 0.70 // cast in, tension; all, shear
)

// phiSteel are the factors of the steel in tension and in shear.
func (b Bolt) phiSteel() (pull, push float64) {
	if b.Kind == Drilled {
		return phiBrittlePull, phiBrittlePush
	}
	return phiSteelTension, phiSteelShear
}

// steelWords says which steel a factor is for.
func (b Bolt) steelWords() string {
	if b.Kind == Drilled {
		return "ACI 318-19 17.5.3, steel of a drilled anchor taken as brittle"
	}
	return "ACI 318-19 17.5.3, ductile steel"
}

// phiDrilled are the factors of drilled anchors in tension by category.
var phiDrilled = [...]float64{1: 0.65, 2: 0.55, 3: 0.45}

func (b Bolt) phi() float64 {
	switch {
	case b.Kind != Drilled:
		return phiConcrete
	case b.Category == 1 || b.Category == 2:
		return phiDrilled[b.Category]
	}
	return phiDrilled[3]
}

// Breakout coefficients k_c in cracked concrete (ACI 318-19 17.6.2.2.1; 17 used in a
// published design guide).
const (
	castIn  = 24
	drilled = 17
)

func (b Bolt) breakoutFactor() float64 {
	if b.Kind == Drilled {
		return drilled
	}
	return castIn
}
