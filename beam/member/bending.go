package member

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// lateral is the branch of NDS 2018 3.3.3 that decides C_L.
type lateral uint8

const (
	lateralUnknown lateral = iota // unbraced length not given: no capacity
	lateralLow                    // d <= b, 3.3.3.1
	lateralHeld                   // compression edge held, 3.3.3.3
	lateralSlender                // R_B and C_L calculated
	lateralTooSlim                // R_B > 50: not allowed, 3.3.3.7
)

// slenderest is the largest R_B that is allowed (NDS 2018 3.3.3.7).
const slenderest = 50.0

// Bending is the check of NDS 2018 3.3: fb <= Fb'.
type Bending struct {
	Moment      float64         // M, lb-in, its magnitude
	Modulus     float64         // S, in³, in the direction of bending
	Breadth     float64         // b, in, across the direction of bending
	Depth       float64         // d, in, in the direction of bending
	Lateral     float64         // b that acts sideways, in: of plies that are not fastened that of one
	Stress      float64         // fb, psi
	Strength    lumber.Property // Fb with its factors, psi
	Stiffness   lumber.Property // Emin with its factors, psi
	Duration    lumber.Duration // load duration of the combination
	Bracing     Bracing         // of the compression edge
	Star        float64         // Fb*, psi: Fb with every factor but C_fu, C_V and C_L
	Effective   float64         // le, in; 0 where C_L needs none
	Slenderness float64         // RB, ratio; 0 where C_L needs none
	Critical    float64         // FbE, psi; 0 where C_L needs none
	Stability   float64         // CL, factor; 0 when the member is not allowed
	Volume      lumber.Volume   // CV of glued laminated timber; 1 where there is none
	Allowable   float64         // Fb', psi: with the lesser of CL and CV
	round       bool            // breadth and depth are the diameter
	lateral     lateral
	reach       reach
}

// NewBending checks the moment, in lb-in of either sign, on the piece; a negative one
// stretches the top face. bracing is that of the edge which this moment compresses. A
// piece used flat bends about its weak axis. Of C_L and C_V the lesser counts, never
// their product (NDS 2018 5.3.6).
func NewBending(moment float64, a *lumber.Adjusted, duration lumber.Duration, bracing Bracing) Bending {
	b := Bending{
		Moment: math.Abs(moment), Modulus: a.Section.Modulus(), Breadth: a.Section.Breadth,
		Depth: a.Section.Depth, Lateral: a.Section.Lateral(), Strength: a.Bending, Stiffness: a.Stability,
		Duration: duration, Bracing: bracing, round: a.Section.Round,
	}
	if moment < 0 || bracing.Hogging {
		b.Strength = a.Reversed
	}
	if a.Use.Flat {
		b.layFlat(a.Section)
	}
	b.Volume = lumber.NewVolume(a, bracing.Zeros)
	b.Stress = b.Moment / b.Modulus
	b.Star = b.Strength.EdgewiseAt(duration)
	b.brace()
	b.Allowable = b.Star * min(b.Stability, b.Volume.Factor) * b.Strength.FlatUse
	return b
}

// layFlat turns the section: plies side by side bend one by one.
func (b *Bending) layFlat(s lumber.Section) {
	b.Modulus, b.Depth = s.ModulusFlat(), s.Ply()
	b.Breadth = s.Depth * float64(max(1, s.Plies))
	b.Lateral = b.Breadth
}

// brace finds C_L and the branch that gives it (NDS 2018 3.3.3).
func (b *Bending) brace() {
	switch {
	case b.Depth <= b.Lateral:
		b.lateral, b.Stability = lateralLow, 1
		return
	case b.Bracing.Held:
		b.lateral, b.Stability = lateralHeld, 1
		return
	case !(b.Bracing.Unbraced > 0):
		b.lateral = lateralUnknown
		return
	}
	b.Effective, b.reach = b.Bracing.Loading.effective(b.Bracing.Unbraced, b.Depth)
	square := b.Effective * b.Depth / (b.Lateral * b.Lateral)
	b.Slenderness = math.Sqrt(square) // eq. 3.3-5
	if !(b.Slenderness <= slenderest) {
		b.lateral = lateralTooSlim
		return
	}
	b.lateral = lateralSlender
	b.Critical = 1.20 * b.Stiffness.At(b.Duration) / square // 3.3.3.8
	b.Stability = stability(b.Critical/b.Star, 0.95)        // eq. 3.3-6
}

// Ratio is fb / Fb'.
func (b Bending) Ratio() float64 { return calc.Ratio(b.Stress, b.Allowable) }

// Explain writes the check out.
func (b Bending) Explain() calc.Check {
	var s calc.Sheet
	s.Given("M", b.Moment, "lb-in", "bending moment of the combination")
	b.explainModulus(&s)
	s.Step("f_b", "M / S", b.Stress, "psi", "NDS 2018 eq. 3.3-2")
	s.Append(b.Strength.LinesAt(b.Duration))
	s.Step("Fb_star", b.Strength.FormulaAt(), b.Star, "psi", "NDS 2018 3.3.3.8")
	b.explainStability(&s)
	if b.lateral == lateralUnknown || b.lateral == lateralTooSlim {
		return s.Check("bending", "f_b", "Fb_adj")
	}
	if b.Volume.Applies() {
		s.Append(b.Volume.Lines())
		s.Step("Fb_adj", "Fb_star * min(C_L, C_V) * C_fu", b.Allowable, "psi",
			"NDS 2018 5.3.6, the lesser of C_L and C_V")
		return s.Check("bending", "f_b", "Fb_adj")
	}
	s.Step("Fb_adj", "Fb_star * C_L * C_fu", b.Allowable, "psi", "NDS 2018 Table 4.3.1")
	return s.Check("bending", "f_b", "Fb_adj")
}

// explainModulus writes the sides and the modulus of the section.
func (b Bending) explainModulus(s *calc.Sheet) {
	if b.round {
		explainDiameter(s, b.Depth)
		s.Step("S", "pi / 32 * pow(D, 3)", b.Modulus, "in³", "NDS 2018 3.3.2, circle")
		return
	}
	s.Given("b", b.Breadth, "in", "size")
	s.Given("d", b.Depth, "in", "size")
	s.Step("S", "b * pow(d, 2) / 6", b.Modulus, "in³", "NDS 2018 3.3.2")
}

// explainStability writes the lines of C_L by the branch that was taken.
func (b Bending) explainStability(s *calc.Sheet) {
	switch b.lateral {
	case lateralLow:
		s.Given("C_L", b.Stability, "", "NDS 2018 3.3.3.1, depth not above breadth")
		return
	case lateralHeld:
		s.Given("C_L", b.Stability, "", "NDS 2018 3.3.3.3, compression edge held")
		return
	case lateralUnknown:
		s.Given("Fb_adj", b.Allowable, "psi", "NDS 2018 3.3.3, unbraced length not given: no capacity")
		return
	}
	row := lengthRows[b.Bracing.Loading]
	s.Given("l_u", b.Bracing.Unbraced, "in", "unbraced length of the compression edge")
	s.Append([]calc.Line{{
		Symbol: "l_e", Formula: b.Bracing.Loading.formula(b.reach), X: b.Effective, Unit: "in",
		Source: row.source + ", " + row.name, Status: row.status,
	}})
	breadth := "b"
	if b.Lateral != b.Breadth {
		breadth = "b_1"
		s.Given("b_1", b.Lateral, "in", "one ply: the plies are not fastened to act together sideways")
	}
	s.Step("R_B", "sqrt(l_e * d / pow("+breadth+", 2))", b.Slenderness, "", "NDS 2018 eq. 3.3-5")
	s.Given("R_B_max", slenderest, "", "NDS 2018 3.3.3.7")
	if b.lateral == lateralTooSlim {
		s.Given("Fb_adj", b.Allowable, "psi", "NDS 2018 3.3.3.7, R_B above 50 is not allowed")
		return
	}
	s.Append(b.Stiffness.LinesAt(b.Duration))
	s.Step("Emin_adj", b.Stiffness.FormulaAt(), b.Stiffness.At(b.Duration), "psi", "NDS 2018 Table 4.3.1")
	s.Step("F_bE", "1.20 * Emin_adj / pow(R_B, 2)", b.Critical, "psi", "NDS 2018 3.3.3.8")
	s.Step("a_b", "F_bE / Fb_star", b.Critical/b.Star, "", "NDS 2018 eq. 3.3-6")
	s.Step("C_L", "(1 + a_b) / 1.9 - sqrt(pow((1 + a_b) / 1.9, 2) - a_b / 0.95)",
		b.Stability, "", "NDS 2018 eq. 3.3-6")
}
