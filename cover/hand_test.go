package cover_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// The simple covers by hand. L is the span from ledger to beam and a the overhang, on
// plan, ft; s the rafter spacing, ft; pressures are in psf, forces in lb.

// exact is the relative difference of two routes of the same arithmetic.
const exact = 1e-9

// beamEnd and ledgerEnd are the reactions of a rafter under a uniform load u, psf of
// plan, by statics of a span with an overhang.
func beamEnd(u, s, span, over float64) float64 {
	return u * s * (span + over) * (span + over) / (2 * span)
}

func ledgerEnd(u, s, span, over float64) float64 {
	return u * s * (span*span - over*over) / (2 * span)
}

// weightOf2x8 is a 2x8 of Douglas Fir-Larch, G = 0.50, per ft of its length, lb, at a
// moisture content in percent (NDS Supplement 2018 3.1.3).
func weightOf2x8(moisture float64) float64 {
	const g = 0.50
	density := 62.4 * g / (1 + 0.009*g*moisture) * (1 + moisture/100)
	return density * 1.5 * 7.25 / 144
}

// A closed form for each uniform load: dead load per slope, roof live load per plan,
// and the wind along the house, which is normal to the slope: its vertical part on
// the longer slope is the pressure times the plan.
func TestRafterReactionsByHand(t *testing.T) {
	const s, speed = 2.0, 105.0
	slope := math.Hypot(1, 0.125/12) // length on the slope over plan
	q := velocityC(speed) * 0.85
	cases := []struct {
		name string
		load float64 // psf of plan
		of   string  // load case of the report
	}{
		{"dead load, 5 psf and a 2x8 at 19 %", (5 + weightOf2x8(19)/s) * slope, "dead load at its most"},
		{"dead load, 5 psf and a 2x8 at 10 %", (5 + weightOf2x8(10)/s) * slope, "dead load at its least"},
		{"roof live load", 20, "roof live load"},
		{"wind along, clear, case B, CN 0.8", q * 0.8, "wind along the house, case B, clear"},
		{"wind along, obstructed, case A, CN -1.2", q * -1.2, "wind along the house, case A, obstructed"},
	}
	for _, c := range cases {
		for name, in := range map[string]cover.Input{"no overhang": simple(), "2 ft overhang": overhung()} {
			t.Run(c.name+", "+name, func(t *testing.T) {
				r, over := size(t, in), *in.Cover.Overhang
				ledger, beam := byCase(t, reaction(t, r, "ledger"), c.of), byCase(t, reaction(t, r, "BM1"), c.of)
				if c.of != "roof live load" { // which is placed for each support
					calctest.Close(t, ledgerEnd(c.load, s, 10, over), ledger, exact, 0, "statics")
					calctest.Close(t, c.load*s*(10+over), ledger+beam, exact, 0, "statics: the sum is the load")
				}
				calctest.Close(t, beamEnd(c.load, s, 10, over), beam, exact, 0, "statics")
			})
		}
	}
}

// Roof live load stands off the overhang where that presses the ledger more (IBC 2018
// 1607.13.2).
func TestLiveLoadIsPlacedForTheLedger(t *testing.T) {
	r := size(t, overhung())
	calctest.Close(t, 20*2*10/2.0, byCase(t, reaction(t, r, "ledger"), "roof live load"), exact, 0, "w L / 2")
	calctest.Close(t, beamEnd(20, 2, 10, 2), byCase(t, reaction(t, r, "BM1"), "roof live load"), exact, 0, "w (L + a)²/2L")
}

// velocityC is the velocity pressure at exposure C, up to 15 ft, on flat ground, psf:
// 0.00256 Kz Kd V² with Kz = 2.01 (15/900)^(2/9.5) = 0.849 (ASCE 7-16 eq. 26.10-1,
// Table 26.10-1) and Kd = 0.85 (Table 26.6-1).
func velocityC(speed float64) float64 {
	return 0.00256 * 2.01 * math.Pow(15.0/900, 2/9.5) * 0.85 * speed * speed
}

// Every pressure of the whole roof on a flat free roof, from all four sides: p = q G CN
// with G = 0.85 (ASCE 7-16 eq. 27.3-2, 26.11.1). The sides of the house are alike, and
// so are the two directions along it.
func TestWholeRoofWindByHand(t *testing.T) {
	cases := []struct {
		name      string
		high, low float64 // CN at the high and at the low half
		source    string
	}{
		{"wind from the house side, case A, clear", 1.2, 0.3, "Fig. 27.3-4, gamma 0"},
		{"wind from the house side, case A, obstructed", -0.5, -1.2, "Fig. 27.3-4, gamma 0"},
		{"wind from the house side, case B, clear", -1.1, -0.1, "Fig. 27.3-4, gamma 0"},
		{"wind from the house side, case B, obstructed", -1.1, -0.6, "Fig. 27.3-4, gamma 0"},
		{"wind from the garden side, case A, clear", 0.3, 1.2, "Fig. 27.3-4, gamma 180"},
		{"wind from the garden side, case A, obstructed", -1.2, -0.5, "Fig. 27.3-4, gamma 180"},
		{"wind from the garden side, case B, clear", -0.1, -1.1, "Fig. 27.3-4, gamma 180"},
		{"wind from the garden side, case B, obstructed", -0.6, -1.1, "Fig. 27.3-4, gamma 180"},
		{"wind along the house, case A, clear, up to the roof height", -0.8, -0.8, "Fig. 27.3-7"},
		{"wind along the house, case A, clear, from there", -0.6, -0.6, "Fig. 27.3-7"},
		{"wind along the house, case A, clear, beyond", -0.3, -0.3, "Fig. 27.3-7"},
		{"wind along the house, case A, obstructed, up to the roof height", -1.2, -1.2, "Fig. 27.3-7"},
		{"wind along the house, case A, obstructed, from there", -0.9, -0.9, "Fig. 27.3-7"},
		{"wind along the house, case A, obstructed, beyond", -0.6, -0.6, "Fig. 27.3-7"},
		{"wind along the house, case B, clear, up to the roof height", 0.8, 0.8, "Fig. 27.3-7"},
		{"wind along the house, case B, clear, from there", 0.5, 0.5, "Fig. 27.3-7"},
		{"wind along the house, case B, clear, beyond", 0.3, 0.3, "Fig. 27.3-7"},
		{"wind along the house, case B, obstructed, up to the roof height", 0.5, 0.5, "Fig. 27.3-7"},
		{"wind along the house, case B, obstructed, from there", 0.5, 0.5, "Fig. 27.3-7"},
		{"wind along the house, case B, obstructed, beyond", 0.3, 0.3, "Fig. 27.3-7"},
	}
	r := size(t, overhung())
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := loadCase(t, r, c.name)
			calctest.Close(t, velocityC(105)*0.85*c.high, got.Value, exact, 0, "ASCE 7-16 "+c.source)
			calctest.Close(t, velocityC(105)*0.85*c.low, got.Second, exact, 0, "ASCE 7-16 "+c.source)
		})
	}
	assert.Len(t, r.Loads.Cases, 4+len(cases), "nothing is left out and nothing is there twice")
}

// Wind on the halves: the high half presses the ledger more. With T the whole depth,
// the high half p1 and the low half p2 give Rb L = s (p1 T/2 T/4 + p2 T/2 3T/4).
func TestHalvesOnTheRafterByHand(t *testing.T) {
	const s, span, whole = 2.0, 10.0, 12.0
	r := size(t, overhung())
	for _, name := range []string{
		"wind from the house side, case A, clear", "wind from the garden side, case A, clear",
		"wind from the house side, case B, obstructed", "wind from the garden side, case B, clear",
	} {
		t.Run(name, func(t *testing.T) {
			p := loadCase(t, r, name)
			beam := s * (p.Value*whole/2*whole/4 + p.Second*whole/2*3*whole/4) / span
			total := s * whole / 2 * (p.Value + p.Second)
			calctest.Close(t, beam, byCase(t, reaction(t, r, "BM1"), name), exact, 0, "statics")
			calctest.Close(t, total-beam, byCase(t, reaction(t, r, "ledger"), name), exact, 0, "statics")
		})
	}
}

// The required rating of a tie by hand: net uplift is 0.6 times the wind less 0.6 times
// the least dead load, rounded up to 25 lb. The second rafter lies in the edge strip,
// a = 3 ft (ASCE 7-16 Fig. 30.7-1): zone 3 pressure over a at both ends, zone 2 between
// them. The effective area 10 x 10/3 ft² lies between a² and 4a², where both are CN
// -1.8 at 0 degrees and -2.6 at 7.5 degrees, obstructed.
func TestUpliftAtTheTiesByHand(t *testing.T) {
	for _, over := range []float64{0, 2} {
		in := overhung()
		in.Cover.Overhang, in.Cover.Projection = new(over), new(10+over)
		r, s := size(t, in), 2.0
		angle := math.Atan(0.125/12) * 180 / math.Pi
		up := velocityC(105) * 0.85 * (1.8 + angle/7.5*(2.6-1.8))
		dead := (5 + weightOf2x8(10)/s) * math.Hypot(1, 0.125/12)
		net := 0.6*up - 0.6*dead
		for mark, want := range map[string]float64{
			"T1": beamEnd(net, s, 10, over), "H1": ledgerEnd(net, s, 10, over), "L1": ledgerEnd(net, s, 10, over) / s,
		} {
			l := linkOf(t, r, mark)
			calctest.Close(t, want, l.Up.Value, exact, 0, mark, "Rb = u s (L+a)²/2L, Rl = u s (L²-a²)/2L")
			calctest.Near(t, 25*math.Ceil(want/25), l.Rating, exact, mark, "rounded up to 25 lb")
		}
		calctest.Close(t, net*s*(10+over), linkOf(t, r, "T1").Up.Value+linkOf(t, r, "H1").Up.Value, exact, 0, "u s (L+a)")
	}
}

// A beam on two posts at its ends with a rafter at mid span is as if uniformly loaded:
// M = w L²/8, V at the support, R = w L/2.
func TestBeamByHand(t *testing.T) {
	r := size(t, overhung())
	rafter := beamEnd(20, 2, 10, 2) + byCase(t, reaction(t, r, "BM1"), "dead load at its most")
	density := 62.4 * 0.50 / (1 + 0.009*0.50*19) * 1.19
	own := density * 5.5 * 15.5 / 144 // lb/ft of a 6x16 (NDS Supplement 2018 3.1.3)
	layers := 5 * math.Hypot(1, 0.125/12)
	half := beamEnd(layers+20, 2, 10, 2)        // per full width of 2 ft
	wood := rafter - half                       // of each rafter's own weight
	moment := (half/2+own)*400/8 + wood*10*20/8 // the end rafters weigh as much, but stand on the posts
	bending := check(t, r, "BM1", "bending")
	assert.Equal(t, "D + Lr, all bays", bending.Combination)
	calctest.Close(t, moment*12, value(t, bending, "M"), exact, 0, "w L²/8, lb-in")
	post := reaction(t, r, "P1")
	calctest.Close(t, (20.0*20/2)*12*12/(2*10), byCase(t, post, "roof live load"), exact, 0, "half of the line: 20 psf x (L+a)²/2L x 10 ft")
	calctest.Close(t, (layers*144/20+own)*10+wood*11/2, byCase(t, post, "dead load at its most"), exact, 0, "half of the weight")
}

// loadCase finds a load case whose name starts so.
func loadCase(t testing.TB, r cover.Report, name string) cover.LoadCase {
	t.Helper()
	for _, c := range r.Loads.Cases {
		if len(c.Name) >= len(name) && c.Name[:len(name)] == name {
			return c
		}
	}
	t.Fatalf("no load case %s", name)
	return cover.LoadCase{}
}
