package web

import (
	"slices"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// noPrice stands where a line of the take-off has no price.
const noPrice = "no price"

// dollars writes a cost up to the next cent.
func dollars(x *float64) string {
	if x == nil {
		return noPrice
	}
	whole, cents, _ := strings.Cut(strconv.FormatFloat(calc.RoundUp(*x, 0.01), 'f', 2, 64), ".")
	return "$" + calc.Grouped(whole) + "." + cents
}

// pieces lists what comes out of one stick: equal lengths together.
func pieces(c cover.CutLine) string {
	var out []string
	for i := 0; i < len(c.Pieces); {
		n := 1
		for i+n < len(c.Pieces) && c.Pieces[i+n] == c.Pieces[i] {
			n++
		}
		out = append(out, strconv.Itoa(n)+" at "+feet(c.Pieces[i]))
		i += n
	}
	return strings.Join(out, ", ")
}

// unitNames writes the units of the take-off for people.
var unitNames = map[string]string{"each": "", "square_foot": "sq ft", "cubic_yard": "cu yd", "foot": "ft"}

// unitName writes a unit of the take-off.
func unitName(unit string) string { return unitNames[unit] }

// boardFeet writes board feet up to the next tenth.
func boardFeet(x float64) string { return number(calc.RoundUp(x, 0.1), "") }

// totalOf says what the priced lines come to, what has no price and so is not in it, and
// whether pieces are missing that no stick is long enough for.
func totalOf(t cover.TakeOff) string {
	out := pricedOf(t)
	if slices.ContainsFunc(t.Wood, func(w cover.WoodLine) bool { return len(w.TooLong) > 0 }) {
		out += " Pieces that no stick is long enough for are not in the sums."
	}
	return out
}

// pricedOf says what the priced lines come to.
func pricedOf(t cover.TakeOff) string {
	missing := strings.Join(t.Unpriced, "; ")
	switch {
	case t.Cost == nil:
		return "No prices were given, so nothing is priced."
	case missing == "":
		return "Total: " + dollars(t.Cost) + "; every line has a price. Work and tax are not in it, nor waste beyond the cutting."
	}
	return "Total of the lines with a price: " + dollars(t.Cost) + ". It leaves out " + strconv.Itoa(len(t.Unpriced)) +
		" without a price: " + missing + ". Work and tax are not in it, nor waste beyond the cutting."
}

// takeOff prints what to buy.
func (p *printer) takeOff(t cover.TakeOff) {
	p.head("Take-off")
	p.row("wood", "buy", "cut each into", "board feet", "cost")
	for _, w := range t.Wood {
		for i, c := range w.Cuts {
			item, size, cost := w.Item, boardFeet(w.BoardFeet), dollars(w.Cost)
			if i > 0 {
				item, size, cost = "", "", ""
			}
			p.row(item, strconv.Itoa(c.Count)+" of "+feet(c.Stick), pieces(c), size, cost)
		}
		for _, ft := range w.TooLong {
			p.row(w.Item, "no stick is long enough", feet(ft), "", "")
		}
	}
	for _, b := range t.Other {
		p.row(b.Item, number(b.Quantity, "")+" "+unitName(b.Unit), "", "", dollars(b.Cost))
	}
	p.say("All wood: " + boardFeet(t.BoardFeet) + " board feet bought, " + pounds(t.Weight) + " lb.")
	p.say(totalOf(t))
	for _, n := range t.Notes {
		p.say("  - " + n)
	}
}
