package dowel

import (
	_ "embed"

	"patiocover/calc"
)

// A Push is where a dowel pushes the member that is looked at. A load that turns round
// turns it round too: what is the loaded edge under gravity is not in uplift.
type Push uint8

// The pushes.
const (
	TowardEnd    Push = iota // along the grain toward the end: tension
	FromEnd                  // along the grain away from the end: compression
	TowardTop                // across the grain: the top edge is loaded, as a ledger's under gravity
	TowardBottom             // across the grain: the bottom edge is loaded, as a ledger's in uplift
)

// Across reports whether the push is across the grain.
func (p Push) Across() bool { return p == TowardTop || p == TowardBottom }

var pushNames = [...]string{
	TowardEnd: "toward the end", FromEnd: "away from the end",
	TowardTop: "across the grain, toward the top edge", TowardBottom: "across the grain, toward the bottom edge",
}

// String says where the dowel pushes.
func (p Push) String() string { return pushNames[p] }

//go:embed distances.csv
var distanceCSV string

type distanceRow struct {
	item, direction, source string
	full, least             float64 // diameters
	status                  calc.Status
}

var distanceRows = calc.ReadTable("distances.csv", distanceCSV, func(r calc.Row) distanceRow {
	return distanceRow{
		item: r.Text("item"), direction: r.Text("direction"), source: r.Text("source"),
		full: r.Num("full D"), least: r.Num("least D"), status: r.Status(),
	}
})

// distance returns a row of the table. One that is not there is a mistake of ours.
func distance(item, direction string) distanceRow {
	for i := range distanceRows {
		if distanceRows[i].item == item && distanceRows[i].direction == direction {
			return distanceRows[i]
		}
	}
	panic("dowel: distances.csv has no row " + item + ", " + direction)
}

// A Place is where the dowels of a group stand in one member, all in in. from their
// centers. A distance that does not occur is +Inf.
type Place struct {
	End     float64 // in: to the end of the member along the grain
	Top     float64 // in: to its top edge, or one edge of a post
	Bottom  float64 // in: to its bottom edge, or the other edge of a post
	Spacing float64 // in: between the dowels of a row along the load
	Row     float64 // in: between the rows
}

// A Need is one distance that a layout needs.
type Need struct {
	Name  string  // such as end distance
	Full  float64 // in: for the full value
	Least float64 // in: below it the standard gives no value
	row   distanceRow
}

// Needs are the distances of NDS 2018 12.5.1 for one push on one member.
type Needs struct {
	Diameter float64 // D, in
	Push     Push    // where the dowel pushes
	Slender  float64 // l/D, ratio: the smaller bearing length over D
	End      Need    // end distance
	Top      Need    // distance to the top edge
	Bottom   Need    // distance to the bottom edge
	Spacing  Need    // spacing in a row
	Row      Need    // spacing of the rows
	Guidance bool    // D under 1/4 in.: against splitting only, C_Delta is 1
}

// NewNeeds returns the distances that a dowel needs in a member; length is the smaller
// of its bearing lengths in the joint, in.
func NewNeeds(f Fastener, length float64, p Push) Needs {
	n := Needs{Diameter: f.Diameter, Push: p, Slender: length / f.Diameter}
	need := func(name, item, direction string) Need {
		r := distance(item, direction)
		return Need{Name: name, Full: r.full * f.Diameter, Least: r.least * f.Diameter, row: r}
	}
	if !f.Large() {
		n.Guidance = true
		n.End, n.Spacing = need("end distance", "nail", "end"), need("spacing", "nail", "spacing")
		n.Top, n.Bottom = need("edge distance", "nail", "edge"), need("edge distance", "nail", "edge")
		n.Row = n.Top
		n.Row.Name = "row spacing"
		return n
	}
	end, spacing, top, bottom := pushNames[p], "along the grain", "along the grain", "along the grain"
	if p.Across() {
		end, spacing, top, bottom = "across the grain", "across the grain", "unloaded", "loaded"
	}
	if p == TowardTop {
		top, bottom = bottom, top
	}
	n.End, n.Spacing = need("end distance", "end", end), need("spacing in the row", "spacing", spacing)
	n.Top, n.Bottom = need(topNames[top], "edge", top), need(bottomNames[bottom], "edge", bottom)
	n.Row = n.rows(f.Diameter)
	return n
}

// topNames and bottomNames name an edge by how it is loaded.
var (
	topNames = map[string]string{
		"loaded": "top edge, loaded", "unloaded": "top edge, unloaded", "along the grain": "top edge",
	}
	bottomNames = map[string]string{
		"loaded": "bottom edge, loaded", "unloaded": "bottom edge, unloaded", "along the grain": "bottom edge",
	}
)

// rows is the spacing of rows, which grows with l/D across the grain: (5 l + 10 D) / 8
// between 2 and 6 (NDS 2018 Table 12.5.1D).
func (n *Needs) rows(d float64) Need {
	if !n.Push.Across() {
		r := distance("row", "along the grain")
		return Need{Name: "row spacing", Full: r.full * d, Least: r.least * d, row: r}
	}
	short, long := distance("row", "across the grain, l/D to 2"), distance("row", "across the grain, l/D from 6")
	full := min(long.full, max(short.full, (5*n.Slender+10)/8)) * d
	return Need{Name: "row spacing", Full: full, Least: full, row: short}
}

// PullNeeds returns the distances of a lag screw in withdrawal only (NDS 2018 Table
// 12.5.1E).
func PullNeeds(f Fastener) Needs {
	n := Needs{Diameter: f.Diameter, Guidance: !f.Large()}
	need := func(name, direction string) Need {
		r := distance("pull", direction)
		return Need{Name: name, Full: r.full * f.Diameter, Least: r.least * f.Diameter, row: r}
	}
	n.End, n.Spacing = need("end distance", "end"), need("spacing", "spacing")
	n.Top, n.Bottom, n.Row = need("edge distance", "edge"), need("edge distance", "edge"), need("row spacing", "edge")
	return n
}

// A Layout compares the place of a group with what it needs.
type Layout struct {
	Needs  Needs   // what is needed
	Place  Place   // what there is
	Factor float64 // C_Delta, factor: 0 where the standard gives no value
	Missed string  // the first distance below its least; empty when none is
}

// NewLayout returns C_Delta of a group: the least of actual over full end distance and
// spacing (NDS 2018 12.5.1.2), and 0 where any distance is below its least.
func NewLayout(n Needs, p Place) Layout {
	l := Layout{Needs: n, Place: p, Factor: 1}
	for _, d := range [...]struct {
		need   *Need
		actual float64
		linear bool
	}{
		{&l.Needs.End, p.End, true}, {&l.Needs.Spacing, p.Spacing, true},
		{&l.Needs.Top, p.Top, false}, {&l.Needs.Bottom, p.Bottom, false}, {&l.Needs.Row, p.Row, false},
	} {
		if !(d.actual >= d.need.Least*(1-sameDistance)) && l.Missed == "" {
			l.Missed = d.need.Name
		}
		if d.linear && !n.Guidance {
			l.Factor = min(l.Factor, d.actual/d.need.Full)
		}
	}
	if l.Missed != "" && !n.Guidance {
		l.Factor = 0
	}
	return l
}

// sameDistance is the part by which a distance may miss by the arithmetic alone, ratio.
const sameDistance = 1e-9

// Lines writes the layout out; its last line is C_Delta.
func (l Layout) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("D", l.Needs.Diameter, "in", "diameter")
	factor := "min(1"
	for _, d := range l.parts() {
		if d.endless {
			continue
		}
		d.write(&s, &l.Needs)
		if d.linear && !l.Needs.Guidance {
			factor += ", a_" + d.symbol + " / f_" + d.symbol
		}
	}
	switch {
	case l.Factor == 0:
		s.Step("C_Delta", "0", 0, "", "NDS 2018 12.5.1: no value, "+l.Missed+" is below its least")
	case factor == "min(1":
		s.Step("C_Delta", "1", l.Factor, "", "NDS 2018 12.5.1")
	default:
		s.Step("C_Delta", factor+")", l.Factor, "", "NDS 2018 12.5.1.2")
	}
	return s.Lines()
}

// A part is one distance of a layout as it is written.
type part struct {
	symbol  string
	need    Need
	actual  float64
	linear  bool
	endless bool // does not occur
}

// write adds the full, the least and the actual distance.
func (d *part) write(s *calc.Sheet, n *Needs) {
	full, least := calc.Number(d.need.row.full)+" * D", calc.Number(d.need.row.least)+" * D"
	if d.symbol == "row" && n.Push.Across() && !n.Guidance && d.need.row.item == "row" {
		s.Given("l_D", n.Slender, "", "smaller bearing length over D")
		full = "min(5, max(2.5, (5 * l_D + 10) / 8)) * D"
		least = full
	}
	line := func(symbol, formula string, x float64, which string) {
		s.Append([]calc.Line{{
			Symbol: symbol + d.symbol, Formula: formula, X: x, Unit: "in", Source: d.need.row.source + which, Status: d.need.row.status,
		}})
	}
	line("f_", full, d.need.Full, ", full")
	line("l_", least, d.need.Least, ", least")
	s.Given("a_"+d.symbol, d.actual, "in", d.need.Name+", as built")
}

func (l *Layout) parts() []part {
	p, n := &l.Place, &l.Needs
	all := []part{
		{symbol: "end", need: n.End, actual: p.End, linear: true}, {symbol: "s", need: n.Spacing, actual: p.Spacing, linear: true},
		{symbol: "top", need: n.Top, actual: p.Top}, {symbol: "bottom", need: n.Bottom, actual: p.Bottom},
		{symbol: "row", need: n.Row, actual: p.Row},
	}
	for i := range all {
		all[i].endless = all[i].actual > longest
	}
	return all
}

// longest is more than any distance in a cover, in.
const longest = 1e6 * calc.In
