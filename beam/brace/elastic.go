package brace

import (
	"gonum.org/v1/gonum/mat"

	"patiocover/beam"
)

// A ref names one brace of a row.
type ref struct{ post, side int }

// elastic shares the push as an elastic frame does in which member and posts bend and
// nothing stretches: stiffness is E I of the member over E I of a post.
//
// The roof moves by D; a brace keeps its length, so that the post's bending p at its
// joint and the member's rise v at the other end obey p - v tan(phi) = D a / H for each
// brace, both linear in the forces of the braces.
func (r *Row) elastic(stiffness float64) (sharing, error) {
	g := &r.Geometry
	var all []ref
	for i := range r.Posts {
		for side := range 2 {
			if r.has(i, side) {
				all = append(all, ref{i, side})
			}
		}
	}
	n := len(all)
	give := mat.NewDense(n, n, nil) // move of brace row under a horizontal force of 1 in brace column, E I of a post 1
	if err := r.addMember(give, all, stiffness); err != nil {
		return nil, err
	}
	up := g.Height - g.Drop
	post := up * up * g.Drop * g.Drop / (3 * g.Height) // of a beam on two supports at a load off its middle
	for i, a := range all {
		for j, b := range all {
			if a.post == b.post {
				give.Set(i, j, give.At(i, j)+post)
			}
		}
	}
	ones := mat.NewVecDense(n, nil)
	for i := range n {
		ones.SetVec(i, 1)
	}
	var force mat.VecDense
	if err := force.SolveVec(give, ones); err != nil {
		return nil, err
	}
	out, sum := make(sharing, len(r.Posts)), mat.Sum(&force)
	for i, a := range all {
		out[a.post][a.side] = force.AtVec(i) / sum
	}
	return out, nil
}

// addMember adds the bending of the member, stick by stick.
func (r *Row) addMember(give *mat.Dense, all []ref, stiffness float64) error {
	lean := r.Geometry.Drop / r.Geometry.Reach // tan(phi)
	for _, k := range r.sticks {
		var on []int
		var cases [][]beam.Load
		for i, a := range all {
			if a.post >= k.first && a.post <= k.last && k.holds(a.post, a.side) {
				on = append(on, i)
				force := float64(2*a.side-1) * lean // down to the right of the post, up to its left
				cases = append(cases, []beam.Load{beam.Point(r.joint(a.post, a.side)-k.from, force)})
			}
		}
		if len(on) == 0 {
			continue
		}
		plan, err := beam.NewPlan(k.line, cases)
		if err != nil {
			return err
		}
		for c, j := range on {
			unit := make([]float64, len(cases))
			unit[c] = 1
			for _, i := range on {
				a := all[i]
				down := plan.At(unit, stiffness, r.joint(a.post, a.side)-k.from).Deflection
				give.Set(i, j, give.At(i, j)+float64(2*a.side-1)*down*lean)
			}
		}
	}
	return nil
}
