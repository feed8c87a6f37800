package cover

import (
	"fmt"
	"math"
	"slices"

	"patiocover/beam"
	"patiocover/calc"
)

// parts are the load cases of one arrangement by what causes them, without the factors
// of the combination: dead load, live or snow load, wind of strength level.
type parts struct{ dead, plan, wind []float64 }

// causes names the three causes, and their symbols.
var causes = [3]struct{ letter, words string }{
	{"D", "dead load"}, {"L", "live, snow or maintenance load as placed"}, {"W", "wind, strength level"},
}

// A traced is a demand split into its causes at one place.
type traced struct {
	symbol  string // of the demand
	unit    string
	what    string     // in words, such as bending moment
	place   float64    // in along the member from its left end
	values  [3]float64 // by cause, without factors
	arr     *arrangement
	reduced bool // the demand is the magnitude of the sum
}

// lines writes the demand as the factored sum of its causes.
func (t traced) lines() []calc.Line {
	var s calc.Sheet
	s.Given("x", t.place, "in", "place of the demand along the member from its start, exact by statics")
	factors := [3]float64{t.arr.self, t.arr.onPlan, t.arr.wind}
	formula := ""
	sum := 0.0
	for i, c := range causes {
		if factors[i] == 0 {
			continue
		}
		value, factor := t.symbol+"_"+c.letter, "f_"+c.letter
		s.Given(value, t.values[i], t.unit, fmt.Sprintf("%s there under %s, by the statics of the member", t.what, c.words))
		s.Quoted(factor, factors[i], "", t.arr.clause+", "+combinationOf(t.arr.name()), t.arr.status)
		if formula != "" {
			formula += " + "
		}
		formula += factor + " * " + value
		sum += factors[i] * t.values[i]
	}
	if t.reduced {
		formula, sum = "abs("+formula+")", math.Abs(sum)
	}
	s.Step(t.symbol, formula, sum, t.unit, t.arr.clause+", "+t.arr.name())
	return s.Lines()
}

// momentTrace splits the moment of a bending check.
func (f *frame) momentTrace(w *wood, x found, p parts) []calc.Line {
	a := &f.arr[x.by]
	var where beam.Location
	f.plan.Locate(f.factors(a, w), 1, &where)
	at := where.Bays[x.bay].MomentMax
	if x.edge == bottomEdge {
		at = where.Bays[x.bay].MomentMin
	}
	t := traced{symbol: "M", unit: "lb-in", what: "bending moment", place: at.At, arr: a, reduced: true}
	for i, coef := range [3][]float64{p.dead, p.plan, p.wind} {
		t.values[i] = f.plan.At(coef, 1, at.At).Moment
	}
	return t.lines()
}

// shearTrace splits the force of a shear check.
func (f *frame) shearTrace(w *wood, x found, p parts) []calc.Line {
	a := &f.arr[x.by]
	all := f.factors(a, w)
	var where beam.Location
	f.plan.Locate(all, 1, &where)
	at := where.Bays[x.bay].ShearMax
	if low := where.Bays[x.bay].ShearMin; -low.Value > at.Value {
		at = low
	}
	section := f.plan.At(all, 1, at.At)
	left := math.Abs(section.ShearLeft-at.Value) < math.Abs(section.ShearRight-at.Value)
	t := traced{symbol: "V", unit: "lb", what: "shear force", place: at.At, arr: a, reduced: true}
	for i, coef := range [3][]float64{p.dead, p.plan, p.wind} {
		part := f.plan.At(coef, 1, at.At)
		t.values[i] = part.ShearRight
		if left {
			t.values[i] = part.ShearLeft
		}
	}
	return t.lines()
}

// seatTrace splits the reaction of a bearing check, across the member.
func (f *frame) seatTrace(symbol string, x found, p parts) []calc.Line {
	a := &f.arr[x.by]
	t := traced{
		symbol: symbol, unit: "lb", what: "reaction across the member", place: f.plan.Line().Support(x.bay), arr: a,
	}
	for i, coef := range [3][]float64{p.dead, p.plan, p.wind} {
		f.plan.Forces(coef, &f.forces)
		t.values[i] = f.forces.Reactions[x.bay]
	}
	return t.lines()
}

// overTrace splits the moment over a support, for bending at a cut.
func (f *frame) overTrace(x found, p parts) []calc.Line {
	at := f.plan.Line().Support(x.bay)
	t := traced{symbol: "M", unit: "lb-in", what: "bending moment", place: at, arr: &f.arr[x.by], reduced: true}
	for i, coef := range [3][]float64{p.dead, p.plan, p.wind} {
		t.values[i] = f.plan.At(coef, 1, at).Moment
	}
	return t.lines()
}

// faceTrace splits the shear beside a support, on the side where it is larger.
func (f *frame) faceTrace(w *wood, x found, p parts) []calc.Line {
	at := f.plan.Line().Support(x.bay)
	all := f.plan.At(f.factors(&f.arr[x.by], w), 1, at)
	t := traced{symbol: "V", unit: "lb", what: "shear force", place: at, arr: &f.arr[x.by], reduced: true}
	left := math.Abs(math.Abs(all.ShearLeft)-x.demand) < math.Abs(math.Abs(all.ShearRight)-x.demand)
	for i, coef := range [3][]float64{p.dead, p.plan, p.wind} {
		part := f.plan.At(coef, 1, at)
		t.values[i] = part.ShearRight
		if left {
			t.values[i] = part.ShearLeft
		}
	}
	return t.lines()
}

// levelTrace writes the vertical force on a level seat.
func (f *frame) levelTrace(h *holding, x found, p parts) []calc.Line {
	lines := f.seatTrace("R_n", x, p)
	var s calc.Sheet
	s.Append(lines)
	s.Given("cos_theta", h.cosine, "", "slope")
	s.Step("R", "R_n / cos_theta", x.demand, "lb", "vertical force on the level seat; of wind, which acts across the roof, to be safe")
	return s.Lines()
}

// trace splits the demand of a strength check into its causes; of a deflection under
// live load there is nothing to split.
func (f *frame) trace(w *wood, h *holding, k checkKind, x found, p parts) []calc.Line {
	switch k {
	case bendingCheck, axialCheck:
		return f.momentTrace(w, x, p)
	case bothCheck:
		return append(f.sideTrace(x.duration), f.momentTrace(w, x, p)...)
	case shearCheck:
		return f.shearTrace(w, x, p)
	case bearingCheck, bedCheck:
		if k == bedCheck || h.cuts[x.bay].level {
			return f.levelTrace(h, x, p)
		}
		return f.seatTrace("R", x, p)
	case notchCheck, boltCheck:
		return f.faceTrace(w, x, p)
	case restCheck:
		return f.overTrace(x, p)
	}
	return nil
}

// parts splits an arrangement of the rafters.
func (r *rafterFrame) parts(a *arrangement, w *wood) parts {
	n := len(r.normal)
	p := parts{make([]float64, n), make([]float64, n), make([]float64, n)}
	p.dead[0] = a.coef[0]/a.self + w.weight(a.least)*r.cosine
	for c := 1; c < n; c++ {
		switch windy := c >= r.highCase() && c <= r.middleCase(); {
		case a.coef[c] == 0:
		case windy:
			p.wind[c] = a.coef[c] / a.wind
		default:
			p.plan[c] = a.coef[c] / a.onPlan
		}
	}
	return p
}

// parts splits an arrangement of one stick of a beam line.
func (f *beamFrame) parts(m *model, d *design, stick, by int) parts {
	t := &f.terms[by]
	n := len(f.pieces[stick].normal)
	p := parts{make([]float64, n), make([]float64, n), make([]float64, n)}
	f.dead(p.dead, m, d.woods(), t.combo.DeadLeast)
	if factor := f.arr[by].onPlan; factor != 0 {
		live := term{placing: t.placing, wind: -1, worker: t.worker, stands: 1}
		f.place(p.plan, &live, 0, m.liveAt(f.support, t.combo, t.placing.set)/factor)
	}
	if t.wind >= 0 {
		unit := *t.combo
		unit.Wind = 1
		f.place(p.wind, &term{combo: &unit, wind: t.wind}, 0, 0)
	}
	return p
}

// behind puts a trace in front of a calculation that takes its demand as given.
func behind(trace []calc.Line, c calc.Check) calc.Check {
	if len(trace) == 0 {
		return c
	}
	lines := append(make([]calc.Line, 0, len(trace)+len(c.Lines)), trace...)
	for i, l := range c.Lines {
		again := slices.ContainsFunc(c.Lines[:i], func(o calc.Line) bool { return o.Symbol == l.Symbol && o.Formula == "" })
		found := slices.ContainsFunc(trace, func(o calc.Line) bool { return o.Symbol == l.Symbol && o.Formula != "" })
		if l.Formula == "" && found && !again {
			continue // once: a later one is another value
		}
		lines = append(lines, l)
	}
	c.Lines = lines
	return c
}
