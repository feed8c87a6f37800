package beam

import (
	"errors"
	"fmt"

	"gonum.org/v1/gonum/mat"
)

// residue is the largest part of the right-hand side, a ratio, that may be left
// over when the solution is put back into the equations.
const residue = 1e-9

// errUnstable says that the equations of the support moments could not be solved.
var errUnstable = errors.New("beam: the supports do not hold the member")

// factor solves the equations of three moments once for a unit load term at each
// inner support and keeps the solutions as rows of the influence matrix.
//
// Over inner support i, between spans L1 and L2 (equation of three moments,
// uniform E I):
//
//	M[i-1] L1 + 2 M[i] (L1 + L2) + M[i+1] L2 = -6 A1 a1 / L1 - 6 A2 b2 / L2
//
// where A is the area of the moment diagram of the simple span, a and b the
// distances of its centroid from the far supports. The matrix is tridiagonal,
// symmetric and positive definite.
func (l *Line) factor() error {
	n := len(l.spans) - 1
	l.influence = l.influence[:0]
	if n == 0 {
		return nil
	}
	a := l.matrix()
	var band mat.BandCholesky
	if !band.Factorize(a) {
		return errUnstable
	}
	unit := mat.NewDense(n, n, nil)
	for i := range n {
		unit.Set(i, i, 1)
	}
	var inverse mat.Dense
	if err := band.SolveTo(&inverse, unit); err != nil {
		return fmt.Errorf("%w: %w", errUnstable, err)
	}
	for i := range n {
		l.influence = append(l.influence, inverse.RawRowView(i)...)
	}
	return l.prove(a)
}

// matrix returns the matrix of the equations of three moments, in inches.
func (l *Line) matrix() *mat.SymBandDense {
	n := len(l.spans) - 1
	a := mat.NewSymBandDense(n, min(1, n-1), nil)
	for i := range n {
		a.SetSymBand(i, i, 2*(l.spans[i]+l.spans[i+1]))
		if i+1 < n {
			a.SetSymBand(i, i+1, l.spans[i+1])
		}
	}
	return a
}

// prove multiplies the matrix with the influence matrix and compares with the unit
// matrix. The condition number of the library's band factorization is not
// reliable; this is.
func (l *Line) prove(a *mat.SymBandDense) error {
	n := len(l.spans) - 1
	for i := range n {
		for j := range n {
			sum := 0.0
			for k := max(0, i-1); k <= min(n-1, i+1); k++ {
				sum += a.At(i, k) * l.influence[k*n+j]
			}
			if i == j {
				sum--
			}
			if !(abs(sum) <= residue) {
				return fmt.Errorf("%w: residue %g at inner support %d", errUnstable, sum, i+1)
			}
		}
	}
	return nil
}

// moments turns load terms into support moments in place: terms holds the load
// term of each inner support on entry, lb-in², work as many numbers; on return
// terms holds the moments, lb-in.
func (l *Line) moments(terms, work []float64) {
	n := len(terms)
	copy(work, terms)
	for i := range terms {
		sum := 0.0
		for j, b := range l.influence[i*n : i*n+n] {
			sum -= b * work[j]
		}
		terms[i] = sum
	}
}
