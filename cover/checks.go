package cover

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A checkKind is one kind of check of a member.
type checkKind uint8

// The kinds, in the order of the report.
const (
	bendingCheck checkKind = iota
	axialCheck
	bothCheck
	shearCheck
	bearingCheck
	bedCheck
	notchCheck
	restCheck
	boltCheck
	liveCheck
	sagCheck
	gustCheck
	checkKinds
)

// optional tells the kinds that a member has only where something asks for them.
func (k checkKind) optional() bool {
	switch k {
	case axialCheck, bothCheck, bedCheck, notchCheck, restCheck, boltCheck, gustCheck:
		return true
	}
	return false
}

// A found is the worst of one kind of check, with what it takes to make it again.
type found struct {
	ratio    float64
	demand   float64 // lb-in, lb or in
	duration lumber.Duration
	by       int     // arrangement
	bay      int     // bay or support
	edge     int     // compressed edge for bending; sense of the reaction for shear at a cut
	force    float64 // lb along the member, pressing, or below 0 pulling
	side     float64 // lb-in, moment about the weak axis
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
	cuts    [maxBays]cut         // by support
	bolts   bolts                // at every support; zeros for none
	bed     *wood                // what it lies on where its seats are level; nil for none
	angle   float64              // degrees between a vertical load and the grain
	cosine  float64              // of the slope
	hung    bool                 // it is too slender to be pressed: what acts along it is held at its high end
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
			g[shearCheck].raise(found{ratio: c.Ratio(), demand: at.value, duration: lumber.Duration(d), by: at.by, bay: at.bay})
		}
	}
	for s := range f.unit {
		h.gradeSeat(w, p, s, g)
		f.gradeCut(w, p, h, s, g)
		f.gradeBolts(w, p, h, s, g)
	}
	f.gradeMoves(p, h, g)
}

// gradeMoves checks the deflections.
func (f *frame) gradeMoves(p *peaks, h *holding, g *graded) {
	for b := range f.bays {
		if f.bays[b].length == 0 {
			continue
		}
		live, total, gust := p.live[b], p.total[b], p.gust[b]
		g[liveCheck].raise(found{
			ratio:  member.NewDeflection(live.value, f.limit(h.limits.live, b)).Ratio(),
			demand: live.value, by: live.by, bay: b,
		})
		g[sagCheck].raise(found{
			ratio:  calc.Ratio(total.value, f.limit(h.limits.total, b).Allowed()),
			demand: total.value, by: total.by, bay: b,
		})
		g[gustCheck].raise(found{
			ratio:  member.NewWindDeflection(gust.value, f.limit(h.limits.gust, b)).Ratio(),
			demand: gust.value, by: gust.by, bay: b,
		})
	}
}

// gradeBending checks the moments of one duration. Of the bays whose compressed edge is
// held alike only the largest moment can govern.
func (f *frame) gradeBending(w *wood, p *peaks, h *holding, d lumber.Duration, g *graded) {
	axial := f.boundAxial(w, h, p.thrust[d].value, d)
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
			x := found{ratio: c.Ratio(), demand: at.value, duration: d, by: at.by, bay: at.bay, edge: edge}
			g[bendingCheck].raise(x)
			f.gradeAxial(w, &axial, h, x, g)
			f.gradeSidewise(w, h, x, g)
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
	case axialCheck:
		return f.pushedResult(w, h, x)
	case bothCheck:
		return f.bothWays(w, h, x)
	case shearCheck:
		return member.NewShear(x.demand, &w.dry, x.duration)
	case bearingCheck:
		return h.seated(w, x)
	case bedCheck:
		return member.NewBearing(x.demand, h.bed.seatValues(h.wetSeat[x.bay]), h.bedSeat(x.bay))
	case notchCheck:
		return member.NewNotchShear(x.demand, &w.dry, x.duration, f.notch(w, h, x.bay, x.edge))
	case restCheck:
		return f.restAtCut(w, h, x)
	case boltCheck:
		return f.bolted(w, h, x)
	case liveCheck:
		return member.NewDeflection(x.demand, f.limit(h.limits.live, x.bay))
	case gustCheck:
		return member.NewWindDeflection(x.demand, f.limit(h.limits.gust, x.bay))
	}
	return f.sagResult(w, h, x)
}

// sagResult makes the long-term deflection again from its two parts, at the place
// where their sum is largest.
func (f *frame) sagResult(w *wood, h *holding, x found) calc.Result {
	ei := w.dry.Elasticity.Value * w.section.Inertia()
	dead := append([]float64(nil), f.lastingFactors(w)...)
	at := f.farthest(f.sagFactors(x.by, w), ei, x.bay)
	lasting := f.plan.At(dead, ei, at).Deflection
	variable := f.plan.At(f.sag[x.by].coef, ei, at).Deflection
	return member.NewSag(lasting, variable, w.seasoning(), f.limit(h.limits.total, x.bay))
}
