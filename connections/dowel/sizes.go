package dowel

import (
	_ "embed"
	"math"
	"slices"
	"strings"

	"patiocover/calc"
)

//go:embed nails.csv
var nailCSV string

//go:embed screws.csv
var screwCSV string

//go:embed lags.csv
var lagCSV string

//go:embed lag_lengths.csv
var lagLengthCSV string

//go:embed bolts.csv
var boltCSV string

// tipDiameters is the length of the tip of a nail or screw in diameters (NDS 2018
// 12.3.5.3 and tables, from memory).
const tipDiameters = 2.0

// screwThread is the part of the length of a wood screw that is thread (NDS 2018
// Table L3).
const screwThread = 2.0 / 3

var nails = calc.ReadTable("nails.csv", nailCSV, func(r calc.Row) Fastener {
	f := Fastener{
		Kind: Nail, Diameter: r.Num("D in"), Length: r.Num("L in"), source: r.Text("source"), status: r.Status(),
	}
	f.Name = r.Text("size") + " " + r.Text("type") + " nail"
	f.Root, f.Tip = f.Diameter, tipDiameters*f.Diameter
	if strings.HasSuffix(r.Text("type"), "ring shank") {
		f.Shank, f.Thread = RingShank, r.Num("thread in")
	}
	if r.Has("Dr in") {
		f.Root = r.Num("Dr in")
	}
	if r.Has("head in") {
		f.Head = r.Num("head in")
	}
	return f.withYield()
})

var screws = calc.ReadTable("screws.csv", screwCSV, func(r calc.Row) Fastener {
	f := Fastener{
		Kind: WoodScrew, Name: "No. " + r.Text("number") + " wood screw", Diameter: r.Num("D in"),
		Root: r.Num("Dr in"), Head: r.Num("head in"), source: r.Text("source"), status: r.Status(),
	}
	f.Tip = tipDiameters * f.Diameter
	return f.withYield()
})

var lags = calc.ReadTable("lags.csv", lagCSV, func(r calc.Row) Fastener {
	f := Fastener{
		Kind: LagScrew, Name: r.Text("size") + " in. lag screw", Diameter: r.Num("D in"), Root: r.Num("Dr in"),
		Tip: r.Num("tip in"), source: r.Text("source"), status: r.Status(),
	}
	f.Tensile = rootArea(f.Root)
	return f.withYield()
})

type lagLength struct {
	length, thread float64 // in
	status         calc.Status
}

var lagLengths = calc.ReadTable("lag_lengths.csv", lagLengthCSV, func(r calc.Row) lagLength {
	return lagLength{r.Num("L in"), r.Num("thread in"), r.Status()}
})

var bolts = calc.ReadTable("bolts.csv", boltCSV, func(r calc.Row) Fastener {
	f := Fastener{
		Kind: Bolt, Name: r.Text("size") + " in. bolt", Diameter: r.Num("D in"), Root: r.Num("D in"),
		Tensile: r.Num("tensile area in2"), Head: r.Num("washer in"), source: r.Text("source"), status: r.Status(),
	}
	return f.withYield()
})

// Nails returns every nail of the table, in its order.
func Nails() []Fastener { return slices.Clone(nails) }

// Screws returns every wood screw of the table, without a length.
func Screws() []Fastener { return slices.Clone(screws) }

// Lags returns every lag screw of the table, without a length.
func Lags() []Fastener { return slices.Clone(lags) }

// Bolts returns every bolt of the table. The head of a bolt is its round washer.
func Bolts() []Fastener { return slices.Clone(bolts) }

// FindNail returns the nail of a type, such as common, box, sinker, or roof sheathing
// ring shank, and a size, such as 16d. It reports whether the table has it.
func FindNail(kind, size string) (Fastener, bool) { return find(nails, size+" "+kind+" nail") }

// SizeOf returns the size of a nail, such as 16d, when it is of the type.
func (f Fastener) SizeOf(kind string) (string, bool) {
	return strings.CutSuffix(f.Name, " "+kind+" nail")
}

// FindBolt returns the bolt of a size, such as 1/2. It reports whether the table has it.
func FindBolt(size string) (Fastener, bool) { return find(bolts, size+" in. bolt") }

// FindScrew returns the wood screw of a number, such as 10, and a length, in. It
// reports whether the table has the number and the length is positive.
func FindScrew(number string, length float64) (Fastener, bool) {
	f, ok := find(screws, "No. "+number+" wood screw")
	f.Length, f.Thread = length, screwThread*length
	return f, ok && length > 0
}

// FindLag returns the lag screw of a size, such as 3/8, and a length, in. A length
// between two of the table has the thread of the shorter. It reports whether the table
// has the size and the length is within it.
func FindLag(size string, length float64) (Fastener, bool) {
	f, ok := find(lags, size+" in. lag screw")
	f.Length = length
	for _, l := range lagLengths {
		if l.length <= length {
			f.Thread, f.threadStatus = l.thread, l.status
		}
	}
	last := lagLengths[len(lagLengths)-1].length
	return f, ok && lagLengths[0].length <= length && length <= last
}

func find(list []Fastener, name string) (Fastener, bool) {
	i := slices.IndexFunc(list, func(f Fastener) bool { return f.Name == name })
	if i < 0 {
		return Fastener{}, false
	}
	return list[i], true
}

// rootArea is the area of a round bar of the diameter, in².
func rootArea(d float64) float64 { return math.Pi * d * d / 4 }
