package lumber

import (
	_ "embed"
	"fmt"

	"patiocover/calc"
)

// A Fastening is what makes the plies of a built-up member act together.
type Fastening uint8

// The fastenings of NDS 2018 15.3. The zero value is none: each ply stands alone
// sideways.
const (
	Unfastened Fastening = iota // side by side, not fastened together by the rules
	Nailed                      // nailed by NDS 2018 15.3.3
	Bolted                      // bolted by NDS 2018 15.3.4
)

// String names the fastening.
func (f Fastening) String() string {
	switch f {
	case Unfastened:
		return "unfastened"
	case Nailed:
		return "nailed"
	case Bolted:
		return "bolted"
	}
	return fmt.Sprintf("Fastening(%d)", uint8(f))
}

// thinnestPly is the thinnest ply of a built-up member, in (NDS 2018 15.3.1).
const thinnestPly = 1.5

// rowsFrom is how many thicknesses of the thinnest ply the plies may be deep with one
// row of fasteners (NDS 2018 15.3.3.1, 15.3.4.1).
const rowsFrom = 3.0

//go:embed builtup.csv
var builtupCSV string

// A builtupRow is one row of the rules, in diameters, and in plies where said.
type builtupRow struct {
	name                       string
	share                      float64 // Kf, factor
	shareStatus                calc.Status
	endLeast, endMost          float64 // diameters
	alongLeast, alongMostPlies float64 // diameters; thicknesses of a ply
	rowsLeast, rowsMost        float64 // diameters
	edgeLeast, edgeMost        float64 // diameters
	source                     string
	status                     calc.Status
}

func (b builtupRow) known() calc.Status { return b.status }

var builtupRows = calc.ReadTable("builtup.csv", builtupCSV, func(r calc.Row) builtupRow {
	b := builtupRow{
		name: r.Text("fastening"), share: r.Num("Kf"), source: r.Text("source"), status: r.Status(),
		endLeast: r.Num("end least D"), endMost: r.Num("end most D"),
		alongLeast: r.Num("along least D"), alongMostPlies: r.Num("along most t"),
		rowsLeast: r.Num("rows least D"), rowsMost: r.Num("rows most D"),
		edgeLeast: r.Num("edge least D"), edgeMost: r.Num("edge most D"),
	}
	if err := b.shareStatus.UnmarshalText([]byte(r.Text("Kf status"))); err != nil {
		panic(fmt.Sprintf("lumber: builtup.csv: %v", err))
	}
	return b
})

// row returns the rules of the fastening; ok is false when there are none.
func (f Fastening) row() (b *builtupRow, ok bool) {
	for i := range builtupRows {
		if builtupRows[i].name == f.String() {
			return &builtupRows[i], true
		}
	}
	return &builtupRow{}, false
}

// Share returns Kf on the column stability factor for buckling across the plies (NDS
// 2018 15.3.2): 0.6 nailed, 0.75 bolted; 0 for plies that are not fastened, which do
// not act together. Buckling along the plies takes 1.
func (f Fastening) Share() float64 {
	b, _ := f.row()
	return b.share
}

// Write adds the line of Kf to a written calculation.
func (f Fastening) Write(s *calc.Sheet) {
	b, ok := f.row()
	if !ok {
		s.Given("K_f", 0, "", "NDS 2018 15.3.1, plies that are not fastened do not act together")
		return
	}
	s.Quoted("K_f", b.share, "", "NDS 2018 15.3.2, "+b.name+" plies", b.shareStatus)
}

// Fastened returns the section with its plies fastened together; a single piece stays
// what it is.
func (s Section) Fastened(by Fastening) Section {
	if s.Plies > 1 {
		s.Fastening = by
	}
	return s
}

// A FastenerPlan says where the nails or bolts of a built-up member go (NDS 2018
// 15.3.3.1, 15.3.4.1). Nails are driven from both sides in turn.
type FastenerPlan struct {
	EndLeast    float64     // in, from the end of the member along the grain
	EndMost     float64     // in
	AlongLeast  float64     // in, between fasteners in a row
	AlongMost   float64     // in, 6 thicknesses of a ply
	BetweenLow  float64     // in, between rows, at least
	BetweenHigh float64     // in, between rows, at most
	EdgeLeast   float64     // in, from the edge of the plies
	EdgeMost    float64     // in
	Rows        int         // least number of rows; one row is staggered
	Length      float64     // in, least nail: all plies but 1/4 of the last; 0 for bolts
	Fits        bool        // the limits leave room for each other
	Source      string      // standard, section
	Status      calc.Status // how the rules are known
}

// lastPly is the part of the last ply that a nail must reach into (NDS 2018 15.3.3.1).
const lastPly = 0.75

// Fasteners returns the rules for fasteners of the diameter, in, for the plies of the
// section as it is fastened. Fits is false for a single piece, for plies that are not
// fastened, and for fasteners too thick for the plies.
func (s Section) Fasteners(diameter float64) FastenerPlan {
	b, ok := s.Fastening.row()
	p := FastenerPlan{
		Rows: 1, Source: b.source, Status: b.status,
		EndLeast: b.endLeast * diameter, EndMost: b.endMost * diameter,
		AlongLeast: b.alongLeast * diameter, AlongMost: b.alongMostPlies * s.Ply(),
		BetweenLow: b.rowsLeast * diameter, BetweenHigh: b.rowsMost * diameter,
		EdgeLeast: b.edgeLeast * diameter, EdgeMost: b.edgeMost * diameter,
	}
	if s.Depth > rowsFrom*s.Ply() {
		p.Rows = 2
	}
	if s.Fastening == Nailed {
		p.Length = s.Breadth - (1-lastPly)*s.Ply()
	}
	across := 2*p.EdgeLeast + float64(p.Rows-1)*p.BetweenLow
	p.Fits = ok && s.Plies > 1 && diameter > 0 && p.AlongLeast <= p.AlongMost && across <= s.Depth
	return p
}

// OnePly returns the values with the section of one ply alone; a single piece stays
// what it is.
func (a Adjusted) OnePly() Adjusted {
	s := a.Section
	if s.Plies > 1 {
		s.Name = s.Name[len("2-"):]
		s.Breadth, s.Plies, s.Fastening = s.Ply(), 0, Unfastened
	}
	a.Section = s
	return a
}
