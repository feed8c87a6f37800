package cover

import (
	"slices"

	"patiocover/calc"
	"patiocover/loads"
	"patiocover/loads/snow"
)

// A LoadReport is what acts on the cover.
type LoadReport struct {
	Layers       []LayerLine       `json:"layers"`          // dead load layer by layer
	Derivations  []Derivation      `json:"derivations"`     // written calculation of each load
	Cases        []LoadCase        `json:"cases"`           // the resulting pressures
	Heaps        []HeapLine        `json:"heaps,omitempty"` // deeper snow near the house, each a case of its own
	Views        []WindView        `json:"wind_views"`      // the views an authority may take of the cover
	Combinations []CombinationLine `json:"combinations"`    // the factor rows
}

// A WindView is one way to see the cover in the wind chapters: the worst net pressure on
// the whole roof, strength level.
type WindView struct {
	View     string  `json:"view"`             // free roof, attached canopy, overhang of the house roof
	Known    bool    `json:"known"`            // it has values here
	Up       float64 `json:"up_psf"`           // psf, net upward
	Down     float64 `json:"down_psf"`         // psf, net downward
	Uplift   bool    `json:"governs_uplift"`   // it governs upward
	Downward bool    `json:"governs_downward"` // it governs downward
	Source   string  `json:"source"`           // clause
	Note     string  `json:"note,omitempty"`   // why it does not count, or is not known
}

// A LayerLine is one layer of the dead load.
type LayerLine struct {
	Name    string      `json:"name"`    // what the layer is
	Weight  float64     `json:"psf"`     // psf of sloped surface
	Certain bool        `json:"certain"` // counted against uplift
	Source  string      `json:"source"`  // whence the weight comes
	Status  calc.Status `json:"status"`  // how the weight is known
}

// A Derivation is a written calculation that is no check.
type Derivation struct {
	Title string      `json:"title"` // what is derived
	Lines []calc.Line `json:"lines"` // the written calculation
}

// A LoadCase is one load as it enters the statics.
type LoadCase struct {
	Name   string  `json:"name"`         // such as wind, toward the house, case A, clear
	Value  float64 `json:"psf"`          // psf; wind is strength level, + down
	Second float64 `json:"psf_low_half"` // psf on the low half where it differs, else the same
	On     string  `json:"on"`           // plan or slope surface
	Source string  `json:"source"`       // figure, or field of the input
}

// A HeapLine is snow that lies deeper near the house, a drift or what slid off its
// roof, on top of even snow. Loads are per area of plan and without factors.
type HeapLine struct {
	Name  string  `json:"name"`     // such as leeward drift
	Even  float64 `json:"even_psf"` // psf of the even snow below it, all over the cover
	Peak  float64 `json:"peak_psf"` // psf of the heap alone at the high edge
	Far   float64 `json:"far_psf"`  // psf of the heap alone at the end of its reach
	Reach float64 `json:"reach_ft"` // ft out from the high edge, at most the projection
}

// A CombinationLine is one row of factors, on wind and earthquake of strength level.
type CombinationLine struct {
	Name         string      `json:"name"`          // as the standard prints it
	Clause       string      `json:"clause"`        // edition, section, number
	Method       string      `json:"method"`        // ASD, allowable stress design, or LRFD, strength design
	Used         bool        `json:"used"`          // a check or a demand of this report uses it
	Dead         float64     `json:"dead"`          // factor
	RoofLive     float64     `json:"roof_live"`     // factor
	Snow         float64     `json:"snow"`          // factor
	Wind         float64     `json:"wind"`          // factor
	Earthquake   float64     `json:"earthquake"`    // factor on Eh, sideways, either way
	EarthquakeUp float64     `json:"earthquake_up"` // factor on Ev, above 0 pressing down, below 0 lifting
	Duration     float64     `json:"c_d"`           // load duration factor C_D; 0 in strength design
	TimeEffect   float64     `json:"lambda"`        // time effect factor of strength design; 0 in ASD
	Status       calc.Status `json:"status"`        // how the factors on the loads are known
}

// loadReport writes down what acts.
func (m *model) loadReport(d *design) LoadReport {
	var out LoadReport
	for _, l := range m.in.Cover.Layers {
		out.Layers = append(out.Layers, weightOf(l))
	}
	out.Derivations = []Derivation{
		{"Dead load of the layers", m.dead.Lines(partsOf(m.in.Cover.Layers))},
		{"Dead load with the rafters", m.deadLines(d)},
		{"Roof live load", m.roofLive.Lines()},
		{"Velocity pressure", m.wind.velocity.Lines()},
		{"Wind on a rafter as a component, inside the edge strips", m.wind.middle.Lines()},
		{"Wind on a rafter as a component, in an edge strip", m.wind.strip.Lines()},
		{"Wind on a rafter as a component, in a corner", m.wind.corner.Lines()},
		{"Wind on the deck at a corner", m.wind.deck.Lines()},
	}
	if lines := m.snow.balanced.Lines(); len(m.snow.sets) > 0 && len(lines) > 0 {
		out.Derivations = append(out.Derivations, Derivation{"Snow", lines})
	}
	for _, h := range slices.Concat(m.snow.heaps, m.snow.none) {
		out.Derivations = append(out.Derivations, Derivation{"Snow: " + h.name, h.lines})
	}
	if m.wind.hill.Factor > 0 {
		out.Derivations = append(out.Derivations, Derivation{"Topographic factor", m.wind.hill.Lines()})
	}
	for i, c := range m.wind.beams {
		out.Derivations = append(out.Derivations, Derivation{"Wind on beam line " + mark("BM", i) + " as a component", c.Lines()})
	}
	for i := range m.wind.posts {
		for n, c := range m.wind.posts[i] {
			if c.Pressure != m.wind.beams[i].Pressure || c.Suction != m.wind.beams[i].Suction {
				title := "Wind on the strip of post " + m.postName(i, n) + " as a component"
				out.Derivations = append(out.Derivations, Derivation{title, c.Lines()})
			}
		}
	}
	out.Derivations = append(out.Derivations, m.wind.written()...)
	out.Derivations = append(out.Derivations, m.wind.writtenViews(m.in)...)
	out.Views = m.wind.viewLines()
	out.Cases = m.loadCases()
	out.Heaps = m.snow.heapLines()
	out.Combinations = m.combinationLines()
	return out
}

func (m *model) loadCases() []LoadCase {
	both := func(name string, load float64, on, source string) LoadCase {
		return LoadCase{Name: name, Value: load / calc.PSF, Second: load / calc.PSF, On: on, Source: source}
	}
	out := []LoadCase{
		both("dead load of the layers, most", m.dead.Most, "slope", "the layers listed"),
		both("dead load of the layers, least", m.dead.Least, "slope", "the layers listed that are certain"),
		both("roof live load", m.live, "plan", "input site.roof_live_psf"),
		both("snow, balanced, with rain where it is due", m.snow.even(0), "plan", m.snowSource()),
	}
	for _, h := range m.snow.heaps {
		out = append(out, LoadCase{
			Name: h.name + ", from the wall to " + calc.FeetInches(h.reach), Value: h.peak / calc.PSF, Second: h.far / calc.PSF,
			On: "plan", Source: *m.in.Site.Standard + " chapter 7",
		})
	}
	for _, c := range m.wind.across {
		out = append(out, LoadCase{
			Name: c.name, Value: c.high / calc.PSF, Second: c.low / calc.PSF, On: "slope", Source: *m.in.Site.Standard + " Fig. 27.3-4",
		})
	}
	for _, b := range m.wind.along {
		names := [bands]string{"up to the roof height from the edge", "from there to twice it", "beyond"}
		for i, net := range b.net {
			out = append(out, both(b.name+", "+names[i], net, "slope", *m.in.Site.Standard+" Fig. 27.3-7"))
		}
	}
	return out
}

// snowSource says whence the balanced snow comes.
func (m *model) snowSource() string {
	if m.snow.balanced.Site.RoofBasis != snow.NotGiven {
		return "input site.roof_snow_psf"
	}
	return *m.in.Site.Standard + " 7.3, from site.ground_snow_psf"
}

// deadLines adds the dead load up, with the framing per area of slope.
func (m *model) deadLines(d *design) []calc.Line {
	var s calc.Sheet
	s.Given("D_layers", m.dead.Most/calc.PSF, "psf", "sum of the layers, per area of slope")
	s.Given("D_sure", m.dead.Least/calc.PSF, "psf", "sum of the layers that are certain, per area of slope")
	s.Quoted("G", d.rafter.dry.Gravity.Value, "", "specific gravity of the rafters, NDS Supplement 2018", d.rafter.dry.Gravity.Status)
	s.Given("M_high", loads.MoistureHigh, "%", "moisture content for weight that acts down, common practice")
	s.Given("M_low", loads.MoistureLow, "%", "moisture content for weight that resists uplift, common practice")
	high := loads.Density(d.rafter.dry.Gravity.Value, loads.MoistureHigh) / calc.PCF
	low := loads.Density(d.rafter.dry.Gravity.Value, loads.MoistureLow) / calc.PCF
	s.Step("rho_high", "62.4 * G / (1 + 0.009 * G * M_high) * (1 + M_high / 100)", high, "pcf", "NDS Supplement 2018 3.1.3")
	s.Step("rho_low", "62.4 * G / (1 + 0.009 * G * M_low) * (1 + M_low / 100)", low, "pcf", "NDS Supplement 2018 3.1.3")
	area := d.rafter.section.Area() / calc.SqFt
	s.Given("A", area, "ft²", "area of one rafter, "+d.rafter.section.Name)
	s.Given("s", m.plan.spacing/calc.Ft, "ft", "rafter spacing, input rafters.spacing_in")
	most := m.dead.Most/calc.PSF + high*area/(m.plan.spacing/calc.Ft)
	least := m.dead.Least/calc.PSF + low*area/(m.plan.spacing/calc.Ft)
	s.Step("D_most", "D_layers + rho_high * A / s", most, "psf", "acts downward")
	s.Step("D_least", "D_sure + rho_low * A / s", least, "psf", "resists uplift")
	return s.Lines()
}
