package cover

import (
	"patiocover/beam"
	"patiocover/beam/member"
)

// arrangeBlows lists the wind on a rafter for deflection: every case, with the share of
// the tributary width that feels it.
func (r *rafterFrame) arrangeBlows(m *model, winds []windCase) {
	list, none := r.room.list()
	for _, w := range winds {
		width := m.plan.spacing * w.share
		a := forGust(w.name, r.room.numbers.take(len(r.normal)))
		a.coef[r.highCase()], a.coef[r.lowCase()] = w.high*width, w.low*width
		a.coef[r.endsCase()], a.coef[r.middleCase()] = w.ends*width, w.middle*width
		list = append(list, a)
	}
	r.blows, _ = r.room.keep(list, none)
}

// blow writes the wind on a stick of a beam line for deflection.
func (f *beamFrame) blow(p *piece) {
	p.blows = p.room.arr.take(len(f.windOn))
	for i := range f.windOn {
		w := &f.windOn[i]
		a := forGust(w.name, p.room.numbers.take(len(p.normal)))
		w.spread(a.coef, len(f.bays), 1)
		p.blows[i] = a
	}
}

// codeTotalName names the deflection that the building code counts.
const codeTotalName = "dead plus live deflection by the code"

// codeTotal is the worst of the deflections that the building code counts for dead plus
// live load: of the dead load the creep alone. It never governs over the long-term sag,
// which counts more of the dead load against less, and is found for the report only.
func (f *frame) codeTotal(w *wood, h *holding) (name string, bay int, worst member.TotalDeflection) {
	ei := w.dry.Elasticity.Value * w.section.Inertia()
	creep := w.seasoning().Creep()
	dead := append([]float64(nil), f.lastingFactors(w)...)
	both := make([]float64, len(dead))
	sum := func(i int) {
		for c, x := range f.sag[i].coef {
			both[c] = creep*dead[c] + x
		}
	}
	by, most := 0, -1.0
	for i := range f.sag {
		sum(i)
		f.plan.Run(both, ei, &f.forces)
		for b := range f.bays {
			if ratio := f.move(b) / f.limit(h.limits.code, b).Allowed(); f.bays[b].length > 0 && ratio > most {
				by, bay, most = i, b, ratio
			}
		}
	}
	sum(by)
	x := f.farthest(both, ei, bay)
	worst = member.NewTotalDeflection(f.plan.At(dead, ei, x).Deflection, f.plan.At(f.sag[by].coef, ei, x).Deflection,
		w.seasoning(), f.limit(h.limits.code, bay))
	return "D + " + f.sag[by].name(), bay, worst
}

// farthest is the place in a bay where the deflection that counts is largest, in.
func (f *frame) farthest(factors []float64, stiffness float64, bay int) float64 {
	var where beam.Location
	f.plan.Locate(factors, stiffness, &where)
	at := where.Bays[bay].DeflectionMax
	if low := where.Bays[bay].DeflectionMin; !f.bays[bay].cantilever && -low.Value > at.Value {
		at = low
	}
	return at.At
}
