package member

import (
	_ "embed"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// An Ends is how the two ends of a post are held in one plane of buckling. Guided
// is free to move sideways, held against rotation.
type Ends uint8

// The end conditions of NDS 2018 Appendix G. The zero value is not known and has
// no capacity. A post on a usual stand-off base is pinned; pinned at both ends asks
// for something else that keeps the top from swaying.
const (
	UnknownEnds  Ends = iota // not stated
	FixedFixed               // no sway
	FixedPinned              // no sway
	PinnedPinned             // no sway
	FixedGuided              // sway
	FixedFree                // sway: a post that stands by its embedment alone
	PinnedGuided             // sway: pinned foot, top held against rotation by braces
	endings
)

//go:embed ke.csv
var keCSV string

// An endRow is one row of the buckling length factors.
type endRow struct {
	name, source string
	factor       float64 // Ke
	status       calc.Status
}

// endRows holds the rows by Ends.
var endRows = func() (all [endings]endRow) {
	all[UnknownEnds] = endRow{name: "not known", source: "end conditions not stated"}
	rows := calc.ReadTable("ke.csv", keCSV, func(r calc.Row) endRow {
		return endRow{
			name: r.Text("ends"), source: r.Text("source"), factor: r.Num("factor"), status: r.Status(),
		}
	})
	copy(all[FixedFixed:], rows)
	return all
}()

// String names the ends.
func (e Ends) String() string { return endRows[e].name }

// Factor returns Ke, the buckling length factor recommended for practice; 0 when
// the ends are not known.
func (e Ends) Factor() float64 { return endRows[e].factor }

// An Axis is one plane in which a post may buckle.
type Axis struct {
	Length float64 // l, in: between points held against moving in this plane
	Ends   Ends    // how the ends are held in this plane
	Held   bool    // held along the whole length in this plane, as by a wall
}

// A Form is what a post is made of and its shape, which decide c of the column
// formula (NDS 2018 3.7.1.5).
type Form uint8

// The forms.
const (
	SawnColumn  Form = iota // sawn lumber, c 0.8
	RoundColumn             // round timber pole, c 0.85: its section is a square of equal area
	GluedColumn             // structural glued laminated timber, c 0.9
	forms
)

var formRows = [forms]struct {
	name   string
	factor float64 // c
}{
	SawnColumn:  {"sawn lumber", 0.8},                        // 3.7.1.5
	RoundColumn: {"round timber pole", 0.85},                 // 3.7.1.5
	GluedColumn: {"structural glued laminated timber", 0.90}, // 3.7.1.5
}

// String names the form.
func (f Form) String() string { return formRows[f].name }

// Factor returns c of the column formula, ratio.
func (f Form) Factor() float64 { return formRows[f].factor }

// A Column is how a post is made and held.
type Column struct {
	Deep Axis // buckling in the plane of the depth d, about the strong axis
	Thin Axis // buckling in the plane of the breadth b, about the weak axis
	Form Form // sawn, round or glued
}

// formed takes the form from the section where the column does not say it: poles are
// round, glued wood is glued.
func (c Column) formed(s lumber.Section) Column {
	switch {
	case c.Form != SawnColumn:
	case s.Round:
		c.Form = RoundColumn
	case s.Class == lumber.Manufactured:
		c.Form = GluedColumn
	}
	return c
}
