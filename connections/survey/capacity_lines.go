package survey

import (
	"strconv"

	"patiocover/calc"
)

// Lines writes the capacity up; the last line is C_up.
func (c Capacity) Lines() []calc.Line {
	var s calc.Sheet
	seen := &c.Seen
	switch c.Basis {
	case RatedStrap:
		s.Given("R", seen.Rating, "lb", "rating of the strap for wind, from its label; C_D is in it")
		s.Given("G", seen.gravity(), "", "specific gravity of the weaker member, by its stamp, NDS 2018 Table 12.3.3A")
		s.Given("G_r", seen.ratedFor(), "", "least specific gravity that the rating is for: not above G")
		s.Given("n_there", float64(seen.Present), "", "nails at the weaker end, survey")
		s.Given("n_asked", float64(seen.Needed), "", "nails that the rating asks for")
		s.Step("r_n", "min(1, n_there / n_asked)", c.Share, "", "every hole filled, or its share")
		s.Step("C_up", "R * r_n", c.Uplift, "lb", "strap with a rating")
	case PlainStrap:
		s.Append(c.Strap.Explain().Lines)
		s.Step("C_up", "T_adj", c.Uplift, "lb", "strap without a rating: the weaker of nails and steel")
	case NailedAslant, OldestNails:
		s.Append(c.Toenail.UpliftLines())
		factors := c.writeFactors(&s)
		s.Given("n", float64(c.Counted), "", "toe-nails that count, at most "+strconv.Itoa(mostToenails)+": "+c.Basis.String())
		s.Step("C_up", "n * W_tn * "+factors, c.Uplift, "lb", "NDS 2018 12.5.4 and Table 11.3.1")
	case Bolted:
		s.Given("r_e", c.Margin, "", "NDS 2018 12.5.1: end or edge distance over 7 D, none below 3.5 D; C_Delta below")
		s.Append(c.Bolt.Explain().Lines)
		s.Step("C_up", "V_adj", c.Uplift, "lb", "one bolt counts, whose row and group nobody measured")
	default:
		s.Given("C_up", c.Uplift, "lb", c.Basis.String())
	}
	return s.Lines()
}

// writeFactors writes the factors on one toe-nail and returns their product as a
// formula.
func (c *Capacity) writeFactors(s *calc.Sheet) string {
	f := &c.Factors
	s.Quoted("C_D", f.Time, "", "NDS 2018 Table 2.3.2, wind", calc.Read)
	s.Quoted("C_M", f.Moisture, "", "NDS 2018 Table 11.3.3; none for toe-nails in withdrawal (Table 11.3.1)", calc.Recalled)
	s.Quoted("C_t", f.Temperature, "", "NDS 2018 Table 11.3.4, no sustained heat", calc.Recalled)
	return "C_D * C_M * C_t"
}
