package cover

import (
	"patiocover/beam"
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A checkKind is one kind of check of a member.
type checkKind uint8

// The kinds, in the order of the report.
const (
	bendingCheck checkKind = iota
	shearCheck
	bearingCheck
	liveCheck
	sagCheck
	checkKinds
)

// A found is the worst of one kind of check, with what it takes to make it again.
type found struct {
	ratio    float64
	demand   float64 // lb-in, lb or in
	duration lumber.Duration
	by       int // arrangement
	bay      int // bay or support
	edge     int // compressed edge, for bending
}

// A graded holds the worst of every kind.
type graded [checkKinds]found

// ratio is the largest ratio of all kinds.
func (g *graded) ratio() float64 {
	most := 0.0
	for i := range g {
		most = max(most, g[i].ratio)
	}
	return most
}

// kind is the kind with the largest ratio; of equal ones the first.
func (g *graded) kind() checkKind {
	var k checkKind
	for i := range g {
		if g[i].ratio > g[k].ratio {
			k = checkKind(i)
		}
	}
	return k
}

func (f *found) raise(x found) {
	if x.ratio > f.ratio {
		*f = x
	}
}

// A holding is how a line member is built: what braces its edges, what it sits on,
// and how far it may move.
type holding struct {
	bracing bracing
	seats   [maxBays]member.Seat // by support; a zero seat is checked elsewhere
	wetSeat [maxBays]bool        // the seat stays wet
	limits  limits
}

// grade finds the worst check of every kind for the wood under the peaks. It
// allocates nothing.
func (f *frame) grade(w *wood, p *peaks, h *holding, g *graded) {
	*g = graded{}
	for d := range durations {
		f.gradeBending(w, p, h, lumber.Duration(d), g)
		if at := p.shear[d]; at.value > 0 {
			c := member.NewShear(at.value, &w.dry, lumber.Duration(d))
			g[shearCheck].raise(found{c.Ratio(), at.value, lumber.Duration(d), at.by, at.bay, 0})
		}
	}
	for s := range f.plan.Line().Spans() + 1 {
		at := p.seat[s]
		if h.seats[s].Length == 0 || at.value <= 0 {
			continue
		}
		c := member.NewBearing(at.value, w.seatValues(h.wetSeat[s]), h.seats[s])
		g[bearingCheck].raise(found{ratio: c.Ratio(), demand: at.value, by: at.by, bay: s})
	}
	for b := range f.bays {
		if f.bays[b].length == 0 {
			continue
		}
		live, total := p.live[b], p.total[b]
		g[liveCheck].raise(found{
			ratio:  member.NewDeflection(live.value, f.limit(h.limits.live, b)).Ratio(),
			demand: live.value, by: live.by, bay: b,
		})
		g[sagCheck].raise(found{
			ratio:  calc.Ratio(total.value, f.limit(h.limits.total, b).Allowed()),
			demand: total.value, by: total.by, bay: b,
		})
	}
}

// gradeBending checks the moments of one duration. Of the bays whose compressed edge is
// held alike only the largest moment can govern.
func (f *frame) gradeBending(w *wood, p *peaks, h *holding, d lumber.Duration, g *graded) {
	for edge := range 2 {
		var top [maxBays]peak // by the first bay that is held alike
		for b := range f.bays {
			at := p.moment[d][b][edge]
			top[h.bracing.alike(edge, f.bays, b)].raise(at.value, at.by, b)
		}
		for b := range f.bays {
			at := top[b]
			if at.value <= 0 {
				continue
			}
			c := member.NewBending(at.value, &w.dry, d, h.bracing.of(edge, f.bays[at.bay]))
			g[bendingCheck].raise(found{c.Ratio(), at.value, d, at.by, at.bay, edge})
		}
	}
}

// limit is a deflection limit for one bay.
func (f *frame) limit(l member.Limit, b int) member.Limit {
	l.Length, l.Cantilever = f.bays[b].length, f.bays[b].cantilever
	return l
}

// seatValues are the values of the wood at a seat.
func (w *wood) seatValues(wet bool) *lumber.Adjusted {
	if wet {
		return &w.seat
	}
	return &w.dry
}

// result makes the worst check of a kind again, to be explained.
func (f *frame) result(w *wood, h *holding, k checkKind, x found) calc.Result {
	switch k {
	case bendingCheck:
		return member.NewBending(x.demand, &w.dry, x.duration, h.bracing.of(x.edge, f.bays[x.bay]))
	case shearCheck:
		return member.NewShear(x.demand, &w.dry, x.duration)
	case bearingCheck:
		return member.NewBearing(x.demand, w.seatValues(h.wetSeat[x.bay]), h.seats[x.bay])
	case liveCheck:
		return member.NewDeflection(x.demand, f.limit(h.limits.live, x.bay))
	}
	return f.sagResult(w, h, x)
}

// sagResult makes the long-term deflection again from its two parts, at the place
// where their sum is largest.
func (f *frame) sagResult(w *wood, h *holding, x found) calc.Result {
	ei := w.dry.Elasticity.Value * w.section.Inertia()
	dead := append([]float64(nil), f.lastingFactors(w)...)
	live := f.sag[x.by].coef
	both := f.sagFactors(x.by, w)
	var where beam.Location
	f.plan.Locate(both, ei, &where)
	at := where.Bays[x.bay].DeflectionMax
	if low := where.Bays[x.bay].DeflectionMin; !f.bays[x.bay].cantilever && -low.Value > at.Value {
		at = low
	}
	lasting := f.plan.At(dead, ei, at.At).Deflection
	variable := f.plan.At(live, ei, at.At).Deflection
	return member.NewSag(lasting, variable, w.seasoning(), f.limit(h.limits.total, x.bay))
}
