package beam

import "math"

// Steps of Newton's method end when they fall below this part of the segment, a
// ratio. An error e of the position changes the extremum by the order of e², so the
// coarse one already leaves the value exact; the fine one serves positions.
const (
	coarse = 1e-4
	fine   = 1e-12
)

// A zeroList holds positions inside a segment in ascending order, in.
type zeroList struct {
	at [4]float64 // in from the left end of the segment
	n  int
}

func (z *zeroList) add(s float64) {
	z.at[z.n] = s
	z.n++
}

// loadZero lists where the line load changes sign, so that shear has an extremum.
func (g segment) loadZero() (z zeroList) {
	end := g.load + g.length*g.change
	if (g.load > 0) != (end > 0) && g.change != 0 {
		z.add(within(-g.load/g.change, g.length))
	}
	return z
}

// shearZeros lists where shear changes sign, so that moment has an extremum.
func (g segment) shearZeros() (z zeroList) {
	turn := g.loadZero()
	return g.zeros(turn, fine, shearOf)
}

// momentZeros lists where moment changes sign, so that slope has an extremum.
func (g segment) momentZeros() (z zeroList) {
	return g.zeros(g.shearZeros(), fine, momentOf)
}

// slopeZeros lists where slope changes sign, so that deflection has an extremum,
// to the tolerance coarse or fine.
func (g segment) slopeZeros(tolerance float64) (z zeroList) {
	return g.zeros(g.momentZeros(), tolerance, slopeOf)
}

// A curve is one of the quantities of a segment whose derivative is known.
type curve uint8

const (
	shearOf  curve = iota // derivative -w
	momentOf              // derivative V
	slopeOf               // derivative -M, as slope carries E I
)

// at returns the quantity and its derivative.
func (g segment) at(c curve, s float64) (value, derivative float64) {
	switch c {
	case shearOf:
		return g.shearAt(s), -(g.load + s*g.change)
	case momentOf:
		return g.momentAt(s), g.shearAt(s)
	}
	return g.slopeAt(s), -g.momentAt(s)
}

// zeros lists the sign changes of the curve, which is monotone between the turns
// given and so has at most one zero in each piece.
func (g segment) zeros(turns zeroList, tolerance float64, c curve) (z zeroList) {
	low := 0.0
	atLow, _ := g.at(c, low)
	for i := 0; i <= turns.n; i++ {
		high := g.length
		if i < turns.n {
			high = turns.at[i]
		}
		atHigh, _ := g.at(c, high)
		if (atLow > 0) != (atHigh > 0) {
			z.add(g.zero(c, bracket{low, high, atLow, atHigh}, tolerance))
		}
		low, atLow = high, atHigh
	}
	return z
}

// A bracket is a piece of a segment at whose ends a curve has different signs.
type bracket struct {
	low, high     float64 // in from the left end of the segment
	atLow, atHigh float64 // values of the curve there
}

// zero returns where the curve changes sign inside the bracket, in inches from the
// left end of the segment: Newton's method from the secant, with a bisection
// whenever it would leave the bracket.
func (g segment) zero(c curve, b bracket, tolerance float64) float64 {
	rising := b.atHigh > 0
	s := b.low + (b.high-b.low)*(b.atLow/(b.atLow-b.atHigh))
	for range maxSteps {
		value, derivative := g.at(c, s)
		if (value > 0) == rising {
			b.high = s
		} else {
			b.low = s
		}
		next := s - value/derivative
		if !(b.low <= next && next <= b.high) {
			next = (b.low + b.high) / 2
		}
		step := next - s
		s = next
		if math.Abs(step) <= tolerance*g.length {
			break
		}
	}
	return s
}

// maxSteps bounds the search for a zero; bisection alone would halve the segment
// down to the last digit in as many.
const maxSteps = 64

// within brings a position that rounding has put outside the segment back into it.
func within(s, length float64) float64 { return min(max(s, 0), length) }
