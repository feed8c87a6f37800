package dowel

import (
	"math"

	"patiocover/calc"
)

// A Withdrawal is the reference withdrawal value of one fastener.
type Withdrawal struct {
	Fastener Fastener // nail, wood screw or lag screw
	Gravity  float64  // G of the wood that holds, specific gravity, dimensionless
	Held     float64  // in: length of the fastener in that wood, with the tip
	Length   float64  // in: the part that holds; thread without tip of lag screws
	EndGrain bool     // driven along the grain
	PerInch  float64  // W, lb per in of Length; 0 where the standard permits none
	Value    float64  // lb
}

// NewWithdrawal returns the value of a fastener with the given length, in, in wood of
// the specific gravity (NDS 2018 12.2). Held is measured from the face of that wood to
// the end of the fastener in it, and is never more than the wood is thick.
//
// Special cases: 0 for bolts; 0 for nails and wood screws in end grain, where the
// standard permits none; lag screws in end grain 0.75 of the value. Only thread holds
// of screws and of ring shanks; the tip of a lag screw does not.
func NewWithdrawal(f Fastener, gravity, held float64, endGrain bool) Withdrawal {
	w := Withdrawal{Fastener: f, Gravity: gravity, Held: held, EndGrain: endGrain}
	w.Length = max(0, held)
	switch f.Kind {
	case LagScrew:
		w.Length = max(0, min(f.Thread, held)-f.Tip)
		w.PerInch = 1800 * math.Pow(gravity, 1.5) * math.Pow(f.Diameter, 0.75) // eq. 12.2-1
		if endGrain {
			w.PerInch *= endGrainLag
		}
	case WoodScrew:
		w.Length = max(0, min(f.Thread, held))
		w.PerInch = 2850 * math.Pow(gravity, 2) * f.Diameter // eq. 12.2-2
	case Nail:
		w.PerInch = w.nail()
		if f.Shank == RingShank {
			w.Length = max(0, min(f.Thread, held))
		}
	}
	if endGrain && f.Kind != LagScrew {
		w.PerInch = 0 // 12.2.2.3, 12.2.3.3
	}
	w.Value = w.PerInch * w.Length
	return w
}

// endGrainLag is what is left of a lag screw in end grain, factor (NDS 2018 12.2.1.2).
const endGrainLag = 0.75

// nail returns W of a nail by its shank.
func (w *Withdrawal) nail() float64 {
	switch w.Fastener.Shank {
	case StainlessShank:
		return 465 * math.Pow(w.Gravity, 1.5) * w.Fastener.Diameter // eq. 12.2-4
	case RingShank:
		return 1800 * math.Pow(w.Gravity, 2) * w.Fastener.Diameter // eq. 12.2-5
	}
	return 1380 * math.Pow(w.Gravity, 2.5) * w.Fastener.Diameter // eq. 12.2-3
}

// equation returns the formula of W, where it stands, and how well it is known.
func (w *Withdrawal) equation() (formula, source string, status calc.Status) {
	f := &w.Fastener
	switch {
	case w.EndGrain && f.Kind == LagScrew:
		return "0.75 * 1800 * pow(G, 1.5) * pow(D, 0.75)", "NDS 2018 eq. 12.2-1 and 12.2.1.2, end grain", calc.Read
	case w.EndGrain || f.Kind == Bolt:
		return "0", "NDS 2018 12.2: not permitted", calc.Read
	case f.Kind == LagScrew:
		return "1800 * pow(G, 1.5) * pow(D, 0.75)", "NDS 2018 eq. 12.2-1", calc.Read
	case f.Kind == WoodScrew:
		return "2850 * pow(G, 2) * D", "NDS 2018 eq. 12.2-2", calc.Read
	case f.Shank == StainlessShank:
		return "465 * pow(G, 1.5) * D", "NDS 2018 eq. 12.2-4, stainless", calc.Recalled
	case f.Shank == RingShank:
		return "1800 * pow(G, 2) * D", "NDS 2018 eq. 12.2-5, ring shank of ASTM F1667", calc.Recalled
	}
	return "1380 * pow(G, 2.5) * D", "NDS 2018 eq. 12.2-3", calc.Read
}

// Lines writes the value out; its last line is W_1, the value of one fastener.
func (w Withdrawal) Lines() []calc.Line {
	var s calc.Sheet
	w.write(&s)
	s.Step("W_1", "W * p_t", w.Value, "lb", "NDS 2018 12.2: value of one fastener")
	return s.Lines()
}

// write adds the lines up to W and the length that holds.
func (w *Withdrawal) write(s *calc.Sheet) {
	f := &w.Fastener
	s.Quoted("D", f.Diameter, "in", f.Name+", "+f.source, f.status)
	s.Given("G", w.Gravity, "", "specific gravity of the wood that holds, NDS 2018 Table 12.3.3A")
	s.Given("l_h", w.Held, "in", "length in the wood that holds, with the tip")
	formula, source, status := w.equation()
	s.Append([]calc.Line{{Symbol: "W", Formula: formula, X: w.PerInch, Unit: "lb/in", Source: source, Status: status}})
	switch {
	case f.Kind == LagScrew:
		s.Quoted("L_t", f.Thread, "in", "thread with its tip, NDS 2018 Table L2", f.threadStatus)
		s.Quoted("E", f.Tip, "in", "tip, NDS 2018 Table L2", f.status)
		s.Step("p_t", "max(0, min(L_t, l_h) - E)", w.Length, "in", "NDS 2018 12.2.1.1: thread without tip")
	case f.Kind == WoodScrew || f.Shank == RingShank && f.Kind == Nail:
		s.Quoted("L_t", f.Thread, "in", "thread, "+f.source, f.status)
		s.Step("p_t", "max(0, min(L_t, l_h))", w.Length, "in", "NDS 2018 12.2.2.1, 12.2.3.2: thread only")
	default:
		s.Step("p_t", "max(0, l_h)", w.Length, "in", "NDS 2018 12.2.3.1")
	}
}
