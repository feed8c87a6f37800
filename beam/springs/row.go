package springs

import "math"

// A Row is a beam on springs of equal distance, with an end.
type Row struct {
	Apart     float64 // s, in, between springs
	Spring    float64 // k, lb/in, of each
	Stiffness float64 // E I, lb-in², of the beam
	Beyond    float64 // a, in, from the end of the beam to its first spring
	First     float64 // stiffness of the first spring over that of the others, ratio
}

// slack makes up for springs that stand apart, for loads between them, and for the springs
// next to an end, ratio: what springs solved one by one ask for.
const slack = 1.03

// Lambda is the wave number of the beam on the bed that the springs make, 1/in: the fourth
// root of k / (4 s E I) (Hetenyi 1946, from memory).
func (r *Row) Lambda() float64 { return math.Pow(r.Spring/(4*r.Apart*r.Stiffness), 0.25) }

// Inside is the part of one load that the spring right under it takes, ratio: P lambda / 2
// on the bed, over s (Hetenyi 1946, the infinite beam under one force, from memory), and no
// more than the load.
func (r *Row) Inside() float64 { return slack * min(1, r.Lambda()*r.Apart/2) }

// Even is what one spring takes of equal loads that stand apart, one of them right over it,
// in loads. It is never less than its even share.
func (r *Row) Even(apart float64) float64 {
	sum, lambda := 1.0, r.Lambda()
	for i := 1.0; i <= 3; i++ {
		x := lambda * apart * i
		sum += 2 * math.Exp(-x) * (math.Cos(x) + math.Sin(x))
	}
	return slack * max(r.Apart/apart, min(1, lambda*r.Apart/2*sum))
}

// End is the part of a load on the end of the beam that the first spring takes, ratio. It
// is more than 1 where the springs are stiff, because the second one holds down what
// reaches beyond the first.
func (r *Row) End() float64 {
	z := r.half()
	return r.first(&z).at(-r.Beyond / r.Apart)
}

// EvenAtEnd is what the first spring takes of loads that stand apart from the end of the
// beam on, half a load on the end itself, in loads.
func (r *Row) EvenAtEnd(apart float64) float64 {
	z := r.half()
	line := r.first(&z)
	sum, far := line.at(-r.Beyond/r.Apart)/2, reach*max(1, 1/(r.Lambda()*r.Apart))
	at := 0.0 // of the spring to the left, in springs from the first
	for x := (apart - r.Beyond) / r.Apart; x < far; x += apart / r.Apart {
		for ; x-at > 1; at++ {
			line.bend = z.onward(line.bend)
		}
		sum += line.at(x - at)
	}
	return sum
}

// reach is how far loads are counted, in waves or, where it is more, in springs: less than a
// thousandth is left of a load there.
const reach = 9.0

// A bend is the deflection and the slope at a spring, in spring distances.
type bend struct{ down, slope float64 }

// A half is the beam from a spring on to the right without end, that spring with it: the
// force and the moment at the spring under a deflection and a slope of one, for springs at
// distance 1 and E I of 1.
type half struct {
	k                   float64 // k s³ / E I
	force, both, moment float64
}

// half finds the half row that is the same with one spring more, beginning with the half
// beam on a bed (Hetenyi 1946, from memory).
func (r *Row) half() half {
	k := r.Spring * r.Apart * r.Apart * r.Apart / r.Stiffness
	u := r.Lambda() * r.Apart
	z := half{k: k, force: 4 * u * u * u, both: 2 * u * u, moment: 2 * u}
	for range steps {
		// 12 6 | -12 6, 6 4 | -6 2: stiffness of one span, its right end on what is there.
		right := inverse(12+z.force, -6+z.both, 4+z.moment)
		next := half{
			k:      k,
			force:  k + 12 - right.form(-12, 6, -12, 6),
			both:   6 - right.form(-12, 6, -6, 2),
			moment: 4 - right.form(-6, 2, -6, 2),
		}
		same := math.Abs(next.force-z.force) < 1e-12*z.force && math.Abs(next.moment-z.moment) < 1e-12*z.moment
		if z = next; same {
			break
		}
	}
	return z
}

// steps is more than any half row takes to settle.
const steps = 500

// A symmetric is a symmetric matrix of two rows.
type symmetric struct{ a, b, c float64 }

// inverse is the inverse of a b, b c.
func inverse(a, b, c float64) symmetric {
	det := a*c - b*b
	return symmetric{c / det, -b / det, a / det}
}

// form is the row x, y times the matrix times the column v, w.
func (m symmetric) form(x, y, v, w float64) float64 {
	return x*(m.a*v+m.b*w) + y*(m.b*v+m.c*w)
}

// onward is the bend at the next spring to the right, where nothing is loaded from there on.
func (z *half) onward(b bend) bend {
	right := inverse(12+z.force, -6+z.both, 4+z.moment)
	force, moment := 12*b.down+6*b.slope, -6*b.down-2*b.slope // of the left end on the right one
	return bend{right.a*force + right.b*moment, right.b*force + right.c*moment}
}

// A line is what a spring takes of a load beside it, over the place of the load: how the beam
// bends under one pound at that spring (reciprocity of Betti and Maxwell), from a spring on.
type line struct {
	bend
	half   *half
	spring float64 // k of the spring that is loaded
}

// first is the line of the first spring.
func (r *Row) first(z *half) line {
	spring := r.First * z.k
	m := inverse(z.force-z.k+spring, z.both, z.moment)
	return line{bend{m.a, m.b}, z, spring}
}

// at is the line at a place x to the right of its spring, in spring distances, up to 1;
// to the left of it the beam is straight.
func (l line) at(x float64) float64 {
	if x <= 0 {
		return l.spring * (l.down + l.slope*x)
	}
	next := l.half.onward(l.bend)
	y := 1 - x
	return l.spring * (l.down*y*y*(1+2*x) + l.slope*x*y*y + next.down*x*x*(1+2*y) - next.slope*x*x*y) // cubic of an unloaded span
}
