package dowel

import (
	_ "embed"

	"patiocover/calc"
)

// A Kind is what a dowel is.
type Kind uint8

// The kinds.
const (
	Nail      Kind = iota // nail or spike, driven
	WoodScrew             // wood screw with cut or rolled thread
	LagScrew              // hex lag screw
	Bolt                  // bolt through both members
)

var kindNames = [...]string{Nail: "nail", WoodScrew: "wood screw", LagScrew: "lag screw", Bolt: "bolt"}

// String returns nail, wood screw, lag screw or bolt.
func (k Kind) String() string { return kindNames[k] }

// A Shank is what holds a nail in the wood.
type Shank uint8

// The shanks.
const (
	SmoothShank    Shank = iota // plain or galvanized carbon steel
	StainlessShank              // plain stainless steel, which holds less
	RingShank                   // roof sheathing or post-frame ring shank of ASTM F1667
)

// A Fastener is one dowel.
type Fastener struct {
	Kind     Kind    // nail, wood screw, lag screw or bolt
	Shank    Shank   // nails only
	Name     string  // as ordered, such as 16d common nail
	Diameter float64 // D, nominal, in
	Root     float64 // Dr, in: what bends; equals D where there is no thread in the plane of shear
	Length   float64 // L, in, below the head; 0 for bolts, which go through
	Thread   float64 // length of the thread with its tip, in; 0 without thread
	Tip      float64 // E, length of the tapered tip, in
	Head     float64 // DH, diameter of the head, in; 0 when not known
	Yield    float64 // Fyb, bending yield strength, psi
	Tensile  float64 // area in tension, in²; 0 when not known

	status       calc.Status // of the sizes
	threadStatus calc.Status // of the thread of a lag screw
	source       string
	yieldStatus  calc.Status
	yieldSource  string
}

// Large reports whether the rules for D of 1/4 in. and more hold for the fastener:
// angle to grain, group action, and the distances of NDS 2018 12.5.1.
func (f Fastener) Large() bool { return f.Diameter >= thick }

//go:embed fyb.csv
var yieldCSV string

type yieldRow struct {
	kind, source       string
	over, to, strength float64 // in, in, psi
	status             calc.Status
}

var yieldRows = calc.ReadTable("fyb.csv", yieldCSV, func(r calc.Row) yieldRow {
	return yieldRow{
		kind: r.Text("kind"), source: r.Text("source"), over: r.Num("over in"), to: r.Num("to in"),
		strength: r.Num("Fyb psi"), status: r.Status(),
	}
})

// withYield fills in the bending yield strength by the nominal diameter. A row that is
// not there is a mistake of ours.
func (f Fastener) withYield() Fastener {
	for _, r := range yieldRows {
		if r.kind == f.Kind.String() && r.over < f.Diameter && f.Diameter <= r.to {
			f.Yield, f.yieldSource, f.yieldStatus = r.strength, r.source, r.status
			return f
		}
	}
	panic("dowel: fyb.csv has no row for " + f.Name)
}

// write adds the lines of the fastener.
func (f Fastener) write(s *calc.Sheet) {
	s.Quoted("D", f.Diameter, "in", f.Name+", "+f.source, f.status)
	s.Quoted("D_r", f.Root, "in", "diameter that bends, "+f.source, f.status)
	s.Quoted("F_yb", f.Yield, "psi", f.yieldSource, f.yieldStatus)
}
