package deck

import "patiocover/calc"

// A PanelSpan is the check of the rafter spacing against the code table.
type PanelSpan struct {
	Spacing float64 // s, in, rafters center to center
	Longest Quoted  // in, of the span rating
	Rating  string  // span rating
	Held    bool    // edges held
}

// NewPanelSpan checks the spacing for the panel.
func NewPanelSpan(spacing float64, p *Panel, held bool) PanelSpan {
	return PanelSpan{Spacing: spacing, Longest: p.longest(held), Rating: p.Rating, Held: held}
}

// Ratio is the spacing over the longest span.
func (c PanelSpan) Ratio() float64 { return calc.Ratio(c.Spacing, c.Longest.Value) }

// Explain writes the check out.
func (c PanelSpan) Explain() calc.Check {
	var s calc.Sheet
	edges := "edges free"
	if c.Held {
		edges = "edges held"
	}
	s.Given("s", c.Spacing, "in", "rafter spacing")
	s.Quoted("s_max", c.Longest.Value, "in", c.Longest.Source+", "+c.Rating+", "+edges, c.Longest.Status)
	return s.Check("span of the rating", "s", "s_max")
}

// A PanelLoad is the check of the loads without wind against those that the code table
// prints for the longest span of the rating. A load beyond them may still be carried at
// a shorter span, by calculation.
type PanelLoad struct {
	Dead    float64 // D, lb/in²
	Live    float64 // L, roof live or snow load, lb/in²
	Total   float64 // D + L, lb/in²
	Most    Quoted  // printed total load, lb/in²
	Part    Quoted  // printed live load, lb/in²
	Rating  string  // span rating
	use     float64 // the larger of the two ratios
	byLive  bool    // the live load is nearer to its limit
	printed bool    // neither load is above what is printed
}

// NewPanelLoad checks the unfactored loads, lb/in² of deck.
func NewPanelLoad(dead, live float64, p *Panel) PanelLoad {
	c := PanelLoad{Dead: dead, Live: live, Total: dead + live, Most: p.Total, Part: p.Live, Rating: p.Rating}
	total := calc.Ratio(c.Total/calc.PSF, c.Most.Value/calc.PSF)
	part := calc.Ratio(live/calc.PSF, c.Part.Value/calc.PSF)
	c.byLive = part > total
	c.use = max(total, part)
	c.printed = c.use <= 1
	return c
}

// Ratio is the load over the printed load, of the live or the total load whichever is
// nearer to its limit.
func (c PanelLoad) Ratio() float64 { return c.use }

// Explain writes the check out.
func (c PanelLoad) Explain() calc.Check {
	var s calc.Sheet
	s.Given("D", c.Dead/calc.PSF, "psf", "dead load on the deck")
	s.Given("L", c.Live/calc.PSF, "psf", "roof live or snow load on the deck")
	s.Step("q_total", "D + L", c.Total/calc.PSF, "psf", c.Most.Source)
	s.Quoted("q_max", c.Most.Value/calc.PSF, "psf", c.Most.Source+", total load, "+c.Rating, c.Most.Status)
	s.Quoted("L_max", c.Part.Value/calc.PSF, "psf", c.Part.Source+", live load, "+c.Rating, c.Part.Status)
	if c.byLive {
		return s.Check("load of the rating", "L", "L_max")
	}
	return s.Check("load of the rating", "q_total", "q_max")
}
