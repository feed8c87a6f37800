package member

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// governing is the branch of the column check.
type governing uint8

const (
	columnUnknown governing = iota // a length or an end condition is not given: no capacity
	columnHeld                     // held in both planes: C_P = 1
	columnDeep                     // the plane of the depth governs
	columnThin                     // the plane of the breadth governs
	columnTooSlim                  // le/d > 50: not allowed, 3.7.1.4
	columnPlies                    // plies fastened together: both planes, 15.3.2
)

// SlenderestColumn is the largest le/d of a post in service (NDS 2018 3.7.1.4).
const SlenderestColumn = 50.0

// Compression is the check of NDS 2018 3.7: fc <= Fc'.
type Compression struct {
	Force       float64         // P, lb
	Breadth     float64         // b, in
	Depth       float64         // d, in
	Area        float64         // A, in²
	Stress      float64         // fc, psi
	Column      Column          // how the post is held; its form by the section where it says sawn
	Strength    lumber.Property // Fc with its factors, psi
	Stiffness   lumber.Property // Emin with its factors, psi
	Duration    lumber.Duration // load duration of the combination
	Star        float64         // Fc*, psi
	DeepRatio   float64         // le/d in the plane of the depth; 0 when held there
	ThinRatio   float64         // le/d in the plane of the breadth; 0 when held there
	Slenderness float64         // ratio, the larger of the two; 0 when held in both
	Critical    float64         // FcE, psi; 0 where C_P needs none
	Stability   float64         // CP, factor, with Kf of plies; 0 when the post is not allowed
	Allowable   float64         // Fc', psi
	governing   governing
	round       bool    // breadth and depth are the diameter
	ply         float64 // in, what buckles across the plies: one of them; the breadth of a single piece
	together    plyStability
}

// NewCompression checks the axial force, in lb and pressing, on a post. Tension
// demands nothing here. Plies that are fastened together take C_P of the whole in their
// plane and K_f C_P across them (NDS 2018 15.3.2); others buckle one by one. That a post
// of plies need not count weaker than its plies taken singly is left out, the safe side.
func NewCompression(
	force float64, a *lumber.Adjusted, duration lumber.Duration, column Column,
) Compression {
	c := Compression{
		Force: force, Breadth: a.Section.Breadth, Depth: a.Section.Depth, Area: a.Section.Area(),
		Column: column.formed(a.Section), Strength: a.Compression, Stiffness: a.Stability, Duration: duration,
	}
	c.Stress = stress(force, c.Area)
	c.Star = c.Strength.At(duration)
	c.DeepRatio = column.Deep.slenderness(a.Section.BucklingSide(c.Depth))
	c.ply = a.Section.Ply()
	if a.Section.Plies > 1 && a.Section.Fastening != lumber.Unfastened {
		c.ply, c.together.fastening = c.Breadth, a.Section.Fastening
	}
	c.ThinRatio = column.Thin.slenderness(a.Section.BucklingSide(c.ply))
	c.round = a.Section.Round
	c.buckle()
	c.Allowable = c.Star * c.Stability
	return c
}

// slenderness returns le/d for the side in the plane of buckling; 0 when held, not
// a number when something is not known.
func (a Axis) slenderness(side float64) float64 {
	switch {
	case a.Held:
		return 0
	case !(a.Length > 0) || a.Ends.Factor() == 0:
		return math.NaN()
	}
	return a.Ends.Factor() * a.Length / side
}

// buckle finds C_P and the branch that gives it (NDS 2018 3.7.1).
func (c *Compression) buckle() {
	c.Slenderness = max(c.DeepRatio, c.ThinRatio)
	switch {
	case math.IsNaN(c.Slenderness):
		c.governing = columnUnknown
		return
	case c.Slenderness == 0:
		c.governing, c.Stability = columnHeld, 1
		return
	case c.Slenderness > SlenderestColumn:
		c.governing = columnTooSlim
		return
	case c.together.fastening != lumber.Unfastened:
		c.bind()
		return
	case c.DeepRatio > c.ThinRatio:
		c.governing = columnDeep
	default:
		c.governing = columnThin
	}
	c.Critical = euler(c.Stiffness.At(c.Duration), c.Slenderness)
	c.Stability = stability(c.Critical/c.Star, c.Column.Form.Factor()) // eq. 3.7-1
}

// plyStability is what the stability of plies that are fastened together comes from.
type plyStability struct {
	fastening            lumber.Fastening
	share                float64 // Kf, factor
	deep, thin           float64 // C_P of the plane of the plies and across them, factor
	deepLimit, thinLimit float64 // FcE, psi; 0 in a plane that is held
}

// bind finds C_P of plies that are fastened together: the lesser of the two planes,
// with Kf across the plies (NDS 2018 15.3.2).
func (c *Compression) bind() {
	p := &c.together
	c.governing, p.share = columnPlies, p.fastening.Share()
	p.deep, p.deepLimit = c.plane(c.DeepRatio)
	p.thin, p.thinLimit = c.plane(c.ThinRatio)
	across := p.share * p.thin
	if c.Column.Thin.Held {
		across = p.thin
	}
	c.Stability, c.Critical = p.deep, p.deepLimit
	if across < p.deep {
		c.Stability, c.Critical = across, p.thinLimit
	}
}

// plane returns C_P and FcE, psi, of one plane of buckling; 1 and 0 where it is held.
func (c *Compression) plane(slenderness float64) (factor, critical float64) {
	if slenderness == 0 {
		return 1, 0
	}
	critical = euler(c.Stiffness.At(c.Duration), slenderness)
	return stability(critical/c.Star, c.Column.Form.Factor()), critical // eq. 3.7-1
}

// explainTogether writes C_P of plies that are fastened together.
func (c Compression) explainTogether(s *calc.Sheet) {
	p := c.together
	s.Given("c", c.Column.Form.Factor(), "", "NDS 2018 3.7.1.5, "+c.Column.Form.String())
	across := "C_P2"
	for _, x := range []struct {
		n                string
		factor, critical float64
	}{{"1", p.deep, p.deepLimit}, {"2", p.thin, p.thinLimit}} {
		if x.critical == 0 {
			s.Given("C_P"+x.n, x.factor, "", "NDS 2018 3.7.1.1, held along its length in this plane")
			continue
		}
		s.Step("F_cE_"+x.n, "0.822 * Emin_adj / pow(slenderness_"+x.n+", 2)", x.critical, "psi", "NDS 2018 3.7.1.5")
		s.Step("a_"+x.n, "F_cE_"+x.n+" / Fc_star", x.critical/c.Star, "", "NDS 2018 eq. 3.7-1")
		s.Step("C_P"+x.n, "(1 + a_"+x.n+") / (2 * c) - sqrt(pow((1 + a_"+x.n+") / (2 * c), 2) - a_"+x.n+" / c)",
			x.factor, "", "NDS 2018 eq. 3.7-1")
	}
	if p.thinLimit != 0 {
		p.fastening.Write(s)
		across = "K_f * C_P2"
	}
	s.Step("C_P", "min(C_P1, "+across+")", c.Stability, "", "NDS 2018 15.3.2")
	s.Step("Fc_adj", "Fc_star * C_P", c.Allowable, "psi", "NDS 2018 Table 4.3.1")
}

// euler returns FcE, the critical buckling stress, psi, for Emin', psi, and le/d
// (NDS 2018 3.7.1.5).
func euler(stiffness, slenderness float64) float64 {
	return 0.822 * stiffness / (slenderness * slenderness) // 3.7.1.5
}

// Ratio is fc / Fc'.
func (c Compression) Ratio() float64 { return calc.Ratio(c.Stress, c.Allowable) }

// Explain writes the check out.
func (c Compression) Explain() calc.Check {
	var s calc.Sheet
	s.Given("P", c.Force, "lb", "axial force of the combination")
	c.explainArea(&s)
	s.Step("f_c", "max(0, P) / A", c.Stress, "psi", "NDS 2018 3.7.1")
	explainCrushing(&s, c.Strength, c.Duration, c.Star)
	switch c.governing {
	case columnUnknown:
		s.Given("Fc_adj", c.Allowable, "psi", "NDS 2018 3.7.1, length or ends not given: no capacity")
		return s.Check("compression", "f_c", "Fc_adj")
	case columnHeld:
		s.Given("C_P", c.Stability, "", "NDS 2018 3.7.1.1, held along its length")
		s.Step("Fc_adj", "Fc_star * C_P", c.Allowable, "psi", "NDS 2018 Table 4.3.1")
		return s.Check("compression", "f_c", "Fc_adj")
	}
	c.explainSlenderness(&s)
	if c.governing == columnTooSlim {
		s.Given("Fc_adj", c.Allowable, "psi", "NDS 2018 3.7.1.4, le/d above 50 is not allowed")
		return s.Check("compression", "f_c", "Fc_adj")
	}
	s.Append(c.Stiffness.LinesAt(c.Duration))
	s.Step("Emin_adj", c.Stiffness.FormulaAt(), c.Stiffness.At(c.Duration), "psi", "NDS 2018 Table 4.3.1")
	if c.governing == columnPlies {
		c.explainTogether(&s)
		return s.Check("compression", "f_c", "Fc_adj")
	}
	s.Step("F_cE", "0.822 * Emin_adj / pow(slenderness, 2)", c.Critical, "psi", "NDS 2018 3.7.1.5")
	s.Given("c", c.Column.Form.Factor(), "", "NDS 2018 3.7.1.5, "+c.Column.Form.String())
	s.Step("a_c", "F_cE / Fc_star", c.Critical/c.Star, "", "NDS 2018 eq. 3.7-1")
	s.Step("C_P", "(1 + a_c) / (2 * c) - sqrt(pow((1 + a_c) / (2 * c), 2) - a_c / c)",
		c.Stability, "", "NDS 2018 eq. 3.7-1")
	s.Step("Fc_adj", "Fc_star * C_P", c.Allowable, "psi", "NDS 2018 Table 4.3.1")
	return s.Check("compression", "f_c", "Fc_adj")
}

// explainArea writes the sides b and d and the area: of a pole the sides are those of
// the square of equal area.
func (c Compression) explainArea(s *calc.Sheet) {
	if c.round {
		pole := lumber.Section{Round: true}
		explainDiameter(s, c.Depth)
		s.Step("b", "sqrt(pi / 4) * D", pole.BucklingSide(c.Breadth), "in", "NDS 2018 3.7.3, square of equal area")
		s.Step("d", "b", pole.BucklingSide(c.Depth), "in", "NDS 2018 3.7.3, square of equal area")
		s.Step("A", "pi / 4 * pow(D, 2)", c.Area, "in²", "NDS 2018 3.7.1, circle")
		return
	}
	s.Given("b", c.Breadth, "in", "size")
	s.Given("d", c.Depth, "in", "size")
	s.Step("A", "b * d", c.Area, "in²", "NDS 2018 3.7.1")
}

// explainDiameter writes the diameter of a pole.
func explainDiameter(s *calc.Sheet, diameter float64) {
	s.Given("D", diameter, "in", "diameter of the pole, the least of the length that is checked")
}

// explainSlenderness writes le/d of both planes and the larger.
func (c Compression) explainSlenderness(s *calc.Sheet) {
	plane := func(a Axis, n, side string, ratio float64) {
		if a.Held {
			s.Given("slenderness_"+n, ratio, "", "NDS 2018 3.7.1.3, held along its length in the plane of "+side)
			return
		}
		r := endRows[a.Ends]
		s.Quoted("K_e_"+n, r.factor, "", r.source+", "+r.name, r.status)
		s.Given("l_"+n, a.Length, "in", "free length in the plane of "+side)
		s.Step("slenderness_"+n, "K_e_"+n+" * l_"+n+" / "+side, ratio, "", "NDS 2018 3.7.1.3")
	}
	plane(c.Column.Deep, "1", "d", c.DeepRatio)
	thin := "b"
	if c.ply != c.Breadth {
		thin = "b_1"
		s.Given("b_1", c.ply, "in", "one ply: across them the plies are counted one by one")
	}
	plane(c.Column.Thin, "2", thin, c.ThinRatio)
	s.Step("slenderness", "max(slenderness_1, slenderness_2)", c.Slenderness, "", "NDS 2018 3.7.1.3")
	s.Given("slenderness_max", SlenderestColumn, "", "NDS 2018 3.7.1.4")
}
