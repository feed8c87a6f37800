package table

import (
	"math"
	"slices"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/cover"
	"patiocover/loads"
)

const durations = int(lumber.Impact) + 1

// A piece is one size of one wood in the service of the table, with what does not depend
// on the load.
type piece struct {
	values lumber.Adjusted
	creep  float64 // K_cr, factor
	most   float64 // weight acting down, lb/in
	least  float64 // weight resisting, lb/in

	moment    [durations]float64 // Fb' S with the compressed edge held, lb-in
	shear     [durations]float64 // 2/3 Fv' A, lb
	bearing   float64            // Fc_perp', psi
	stiffness float64            // E' I, lb-in²
	memory    bool               // a design value is not yet compared with its print
}

// newPiece works one size out. The criteria are valid, so there are values for it.
func newPiece(c *Criteria, w cover.Wood, size string, repetitive bool) piece {
	s, err := lumber.SectionNamed(size)
	if err == nil {
		var v lumber.Values
		if v, err = lumber.Find(w.Species, w.Grade, s); err == nil {
			return c.piece(s, v, repetitive)
		}
	}
	panic("table: " + err.Error()) // the criteria were validated
}

// heat maps the words of the criteria to the ranges of the temperature factor.
var heat = map[string]lumber.Temperature{
	"to_100F": lumber.UpTo100F, "to_125F": lumber.UpTo125F, "to_150F": lumber.UpTo150F,
}

func (c *Criteria) piece(s lumber.Section, v lumber.Values, repetitive bool) piece {
	use := lumber.Use{
		Wet: *c.Service.Wet, Incised: *c.Service.Incised, Temperature: heat[c.Service.Heat], Repetitive: repetitive,
	}
	g := v.Gravity.Value
	p := piece{
		values: lumber.Adjust(v, s, use), creep: member.Seasoning{Green: *c.Service.Green, Wet: use.Wet}.Kcr(),
		most: loads.Density(g, loads.MoistureHigh) * s.Area(), least: loads.Density(g, loads.MoistureLow) * s.Area(),
	}
	for _, d := range lumber.Durations() {
		p.moment[d] = member.NewBending(1, &p.values, d, member.Bracing{Held: true}).Allowable * s.Modulus()
		p.shear[d] = member.NewShear(1, &p.values, d).Allowable * s.Area() * 2 / 3 // NDS 2018 eq. 3.4-2
	}
	p.bearing = member.NewBearing(1, &p.values, member.Seat{Width: 1, Length: 1}).Allowable
	p.stiffness = p.values.Elasticity.Value * s.Inertia()
	p.memory = slices.ContainsFunc([]lumber.Quoted{
		v.Bending, v.Shear, v.Bearing, v.Compression, v.Elasticity, v.Stability, v.Gravity,
	}, func(q lumber.Quoted) bool { return q.Status == calc.Recalled })
	return p
}

// weight is the weight that counts in a combination, lb/in.
func (p *piece) weight(least bool) float64 {
	if least {
		return p.least
	}
	return p.most
}

// A line is one member on two supports with everything it must carry.
type line struct {
	piece  *piece
	shares []share
	width  float64 // that it carries across itself, in
	sloped bool    // it lies along the slope, so that loads act across it
	cosine float64 // of the slope, 1 for a level member
	below  float64 // framing that it carries, lb/in² of plan
	held   bool    // the deck holds its top edge
	brace  float64 // in between braces of the bottom edge; 0 for the supports alone
	seat   float64 // in, bearing along it
	limits Limits
	worker float64 // lb, at its middle and at a support
	plan   float64 // live or snow for deflection, lb/in² of plan
	dead   float64 // most dead load, lb/in²: of slope where it is sloped, else of plan
}

// load is the load across the member under a combination, lb/in, + down.
func (l *line) load(s *share) float64 {
	per := s.upright + s.self*l.framing(s.least)
	if l.sloped {
		per = s.across
	}
	return per*l.width + s.self*l.piece.weight(s.least)*l.cosine
}

// framing is the weight of the framing above that counts: none of it where it would
// resist, because what is there is not known.
func (l *line) framing(least bool) float64 {
	if least {
		return 0
	}
	return l.below
}

// lasting is the dead load across the member, lb/in.
func (l *line) lasting() float64 {
	per := l.dead + l.below
	if l.sloped {
		per = l.dead * l.cosine
	}
	return per*l.width + l.piece.most*l.cosine
}

// moving is the live load or snow across the member, lb/in.
func (l *line) moving() float64 {
	if l.sloped {
		return l.plan * l.cosine * l.cosine * l.width
	}
	return l.plan * l.width
}

// closed is the longest span with every edge held, in: from moments the square root,
// from deflections the cube root, from shear and bearing as it stands. Where an edge is
// not held the true span is not longer.
func (l *line) closed() float64 {
	square, plain := math.Inf(1), math.Inf(1)
	for i := range l.shares {
		s := &l.shares[i]
		w := l.load(s)
		if w > 0 {
			plain = min(plain, 2*l.piece.bearing*l.piece.values.Section.Breadth*l.seat/w)
		}
		w = math.Abs(w)
		square = min(square, 8*l.piece.moment[s.duration]/w) // M = w L²/8
		plain = min(plain, 2*l.piece.shear[s.duration]/w)    // V = w L/2
	}
	if l.worker > 0 {
		plain = min(plain, l.workerSpan())
	}
	moving := l.moving()
	slack := min(1/(l.limits.Live*moving), 1/(l.limits.Total*(l.piece.creep*l.lasting()+moving)))
	cube := 384 * l.piece.stiffness / 5 * slack // 5 w L⁴/(384 E I) = L/n
	return min(math.Sqrt(square), plain, math.Cbrt(cube))
}

// workerSpan is the longest span with a worker on it, in: w L²/8 + P L/4 = M', and
// w L/2 + P = V'.
func (l *line) workerSpan() float64 {
	w, load := l.lasting(), l.worker*l.cosine
	moment, shear := l.piece.moment[lumber.SevenDays], l.piece.shear[lumber.SevenDays]
	byMoment := 4 * moment / load
	if w > 0 {
		byMoment = (math.Sqrt(load*load/16+w*moment/2) - load/4) / (w / 4)
		return max(0, min(byMoment, 2*(shear-load)/w, 2*(l.piece.bearing*l.piece.values.Section.Breadth*l.seat-load)/w))
	}
	return byMoment
}

// bottom is the bracing of the bottom edge, which net uplift compresses.
func (l *line) bottom(span float64) member.Bracing {
	if l.brace > 0 {
		return member.Bracing{Unbraced: min(l.brace, span)}
	}
	return member.Bracing{Unbraced: span}
}

// A found is the worst check of a member.
type found struct {
	ratio float64
	check string
}

func (f *found) raise(ratio float64, check string) {
	if ratio > f.ratio || f.check == "" {
		f.ratio, f.check = ratio, check
	}
}

// grade checks the member on a span, in, by the checks of package member. An edge that
// the deck does not hold is braced at the supports alone.
func (l *line) grade(span float64) found {
	var f found
	a := &l.piece.values
	seat := member.Seat{Width: a.Section.Breadth, Length: l.seat}
	for i := range l.shares {
		s := &l.shares[i]
		w := l.load(s)
		bracing, what := member.Bracing{Held: l.held, Unbraced: span}, "bending"
		switch {
		case w < 0:
			bracing, what = l.bottom(span), "bending in uplift"
		case s.wind != 0:
			what = "bending with wind"
		}
		f.raise(member.NewBending(w*span*span/8, a, s.duration, bracing).Ratio(), what)
		f.raise(member.NewShear(w*span/2, a, s.duration).Ratio(), "shear")
		f.raise(member.NewBearing(w*span/2, a, seat).Ratio(), "bearing")
	}
	dead, moving := l.lasting(), l.moving()
	if load := l.worker * l.cosine; load > 0 {
		bracing := member.Bracing{Held: l.held, Unbraced: span}
		f.raise(member.NewBending(dead*span*span/8+load*span/4, a, lumber.SevenDays, bracing).Ratio(), "bending under a worker")
		f.raise(member.NewShear(dead*span/2+load, a, lumber.SevenDays).Ratio(), "shear under a worker")
		f.raise(member.NewBearing(dead*span/2+load, a, seat).Ratio(), "bearing under a worker")
	}
	sag := 5 * math.Pow(span, 4) / (384 * l.piece.stiffness) // of one lb/in
	live := member.Limit{Length: span, Divisor: l.limits.Live}
	total := member.Limit{Length: span, Divisor: l.limits.Total}
	f.raise(member.NewDeflection(moving*sag, live).Ratio(), "live or snow deflection")
	f.raise(calc.Ratio((l.piece.creep*dead+moving)*sag, total.Allowed()), "long-term deflection")
	return f
}

// longest is the longest span on plan in whole inches, at most the given one, with the
// worst check there and the one that stops the next inch. It is 0 where no inch passes.
func (l *line) longest(most float64) (inches float64, at found, stops string) {
	slope := func(n float64) float64 { return n / l.cosine }
	n := math.Floor(min(calc.RoundDown(l.closed()*l.cosine, 1), most))
	low, high := 0.0, n+1
	for n > 0 && high-low > 1 {
		if l.grade(slope(n)).ratio <= 1 {
			low = n
		} else {
			high = n
		}
		n = math.Floor((low + high) / 2)
	}
	if low+1 > most {
		stops = "longest stock"
	} else {
		stops = l.grade(slope(low + 1)).check
	}
	if low > 0 {
		at = l.grade(slope(low))
	}
	return low, at, stops
}
