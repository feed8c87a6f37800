package cover

import (
	"patiocover/beam"
	"patiocover/calc"
	"patiocover/loads"
	"patiocover/loads/snow"
)

// A snowSet is one way that snow lies on the cover: an even load, and perhaps a heap on
// top of it.
type snowSet struct {
	name string
	even float64 // lb/in² of plan
	heap int     // index of the heap, −1 for none
}

// A heap is snow that lies deeper near the house: a drift, or what slid off its roof.
type heap struct {
	name  string
	reach float64 // in on plan from the high edge
	peak  float64 // lb/in² of plan at the high edge
	far   float64 // lb/in² of plan at the end of the reach
	lines []calc.Line
}

// total is the heap per length along the house, lb/in.
func (h heap) total() float64 { return (h.peak + h.far) / 2 * h.reach }

// snowLoads are all the ways that snow lies on the cover.
type snowLoads struct {
	balanced snow.Balanced
	sets     []snowSet // the first is the balanced snow, placed on bays in turn
	heaps    []heap
	none     []heap   // drifts that come to nothing, with the reason as their name
	missing  []string // why a drift or sliding snow is not computed
}

// bases and shelters turn the words of the input into those of the snow rules.
var (
	bases = map[string]snow.Basis{
		"ASCE 7-16": snow.ByASCE716, "ASCE 7-22": snow.ByASCE722,
		"allowable": snow.ByASCE716, "strength": snow.ByASCE722,
	}
	shelters = map[string]snow.Sheltering{
		"fully_exposed": snow.FullyExposed, "partially_exposed": snow.PartiallyExposed, "sheltered": snow.Sheltered,
	}
	categories = map[string]snow.Category{"I": snow.RiskI, "II": snow.RiskII, "III": snow.RiskIII, "IV": snow.RiskIV}
)

// newSnow works out the snow on the cover.
func newSnow(in Input, p *plan, edition loads.Edition) (snowLoads, error) {
	var s snowLoads
	s.balanced = balancedSnow(snowSite(in, edition), snow.Roof{Angle: p.angle, EaveToRidge: p.projection})
	switch b := s.balanced; {
	case !b.Reason.Known():
		return s, &calc.InputError{Faults: []calc.Fault{{
			Path: "site.ground_snow_psf", Given: "a snow load that cannot be found", Allowed: "refused, because " + b.Reason.String(),
		}}}
	case b.Sloped == 0 && b.Minimum == 0 && b.Rain == 0:
		return s, nil
	}
	s.sets = []snowSet{{"", s.balanced.Cases()[0].Load, -1}}
	if most := s.balanced.Governing(); most.Kind == snow.MinimumCase {
		s.sets = append(s.sets, snowSet{"least snow of low slopes", most.Load, -1})
	}
	s.fromHouse(in, p, edition)
	return s, nil
}

// balancedSnow is that by the roof snow of the authority, which may be no more than
// the least of the place, or by the ground snow beside it where that asks for more.
func balancedSnow(site snow.Site, roof snow.Roof) snow.Balanced {
	b := snow.NewBalanced(site, roof)
	if site.RoofBasis == snow.NotGiven || !(site.Ground > 0) {
		return b
	}
	site.Roof, site.RoofBasis = 0, snow.NotGiven
	if g := snow.NewBalanced(site, roof); !(g.Sloped <= b.Sloped) {
		return g
	}
	return b
}

// snowSite is the snow of the place.
func snowSite(in Input, edition loads.Edition) snow.Site {
	s := in.Site
	out := snow.Site{
		Edition: edition, Terrain: *s.Exposure, Sheltering: shelters[*s.Sheltering], Category: categories[*s.RiskCategory],
	}
	if s.GroundSnow != nil {
		out.Ground = *s.GroundSnow * calc.PSF
		out.GroundBasis = mappedBy(edition)
		if s.GroundSnowBasis != nil && *s.GroundSnow > 0 {
			out.GroundBasis = bases[*s.GroundSnowBasis]
		}
	}
	if s.RoofSnow != nil {
		out.Roof = *s.RoofSnow * calc.PSF
		out.RoofBasis = mappedBy(edition)
		if s.RoofSnowBasis != nil && *s.RoofSnow > 0 {
			out.RoofBasis = bases[*s.RoofSnowBasis]
		}
	}
	if s.WinterWind != nil {
		out.WinterWind = *s.WinterWind
	}
	return out
}

// mappedBy is the basis of a snow load that follows the edition itself.
func mappedBy(e loads.Edition) snow.Basis {
	if e == loads.ASCE722 {
		return snow.ByASCE722
	}
	return snow.ByASCE716
}

// fromHouse adds the drift that the step to the house gathers and the snow that slides
// off its roof.
func (s *snowLoads) fromHouse(in Input, p *plan, edition loads.Edition) {
	h := in.House
	if !given(h.RoofEdge, h.RoofLength) {
		why := "the height and length of the house roof are not given, so drift is not computed"
		if !p.attached {
			why = "a higher roof near by drifts snow onto a freestanding cover too: give house.roof_edge_ft, house.roof_length_ft " +
				"and house.gap_ft of it; drift is not computed"
		}
		s.missing = append(s.missing, why)
		return
	}
	step := snow.Step{
		Height: *h.RoofEdge*calc.Ft - p.high, House: *h.RoofLength * calc.Ft, Cover: p.projection, Gap: *h.Gap * calc.Ft,
	}
	if step.Height > 0 {
		pair := snow.Drifts(s.balanced, step)
		all := []snow.Drift{pair.Larger()}
		if pair.Both {
			all = []snow.Drift{pair.Leeward, pair.Windward}
		}
		for _, d := range all {
			s.addDrift(d)
		}
	}
	s.slide(h, p, edition)
}

func (s *snowLoads) addDrift(d snow.Drift) {
	switch {
	case !d.Reason.Known():
		s.missing = append(s.missing, d.Kind.String()+": "+d.Reason.String())
	case d.Peak == 0:
		s.none = append(s.none, heap{name: d.Kind.String() + ", none: " + d.Reason.String(), lines: d.Lines()})
	case d.Loaded > 0:
		s.add(d.Kind.String(), heap{reach: d.Loaded, peak: d.Peak, far: d.Far, lines: d.Lines()})
	}
}

// slide adds the snow that slides off the roof above.
func (s *snowLoads) slide(h House, p *plan, edition loads.Edition) {
	if !given(h.RoofSlope, h.EaveToRidge) {
		s.missing = append(s.missing, "the slope of the house roof is not given, so sliding snow is not computed")
		return
	}
	above := snow.Above{
		Flat: s.balanced.Flat, EaveToRidge: *h.EaveToRidge * calc.Ft,
		Angle: angleOf(*h.RoofSlope), Slippery: *h.Slippery,
	}
	slide := snow.NewSliding(edition, above, p.projection, *h.Gap*calc.Ft)
	switch {
	case slide.Reason == snow.Found && slide.Pressure > 0:
		s.add("sliding snow", heap{reach: slide.Loaded, peak: slide.Pressure, far: slide.Pressure, lines: slide.Lines()})
	case slide.Reason != snow.DoesNotSlide && !slide.Reason.Known():
		s.missing = append(s.missing, "sliding snow: "+slide.Reason.String())
	}
}

// add puts a heap on the balanced snow, without rain, as a way of its own.
func (s *snowLoads) add(name string, h heap) {
	h.name = name
	s.heaps = append(s.heaps, h)
	s.sets = append(s.sets, snowSet{name, s.balanced.Sloped, len(s.heaps) - 1})
}

// heapLines writes the heaps down with the even snow below each.
func (s *snowLoads) heapLines() []HeapLine {
	var out []HeapLine
	for _, set := range s.sets {
		if set.heap < 0 {
			continue
		}
		h := s.heaps[set.heap]
		out = append(out, HeapLine{
			Name: h.name, Even: set.even / calc.PSF, Peak: h.peak / calc.PSF, Far: h.far / calc.PSF, Reach: h.reach / calc.Ft,
		})
	}
	return out
}

// even is the even load of a snow set, lb/in² of plan.
func (s *snowLoads) even(set int) float64 {
	if len(s.sets) == 0 {
		return 0
	}
	return s.sets[set].even
}

// heapLoads are the load cases of the heaps along the rafter: one pound per inch at the
// high edge, with the shape of the heap.
func (m *model) heapLoads() [][]beam.Load {
	var out [][]beam.Load
	for _, h := range m.snow.heaps {
		out = append(out, []beam.Load{beam.Linear(0, m.plan.slope(h.reach), 1, h.far/h.peak)})
	}
	return out
}

// heapAt is the vertical reaction at a support under the heap of a snow set, on a rafter
// of full tributary width, lb.
func (r *rafterFrame) heapAt(m *model, support, set int) float64 {
	if len(m.snow.sets) == 0 || m.snow.sets[set].heap < 0 {
		return 0
	}
	k := m.snow.sets[set].heap
	return m.snow.heaps[k].peak * m.plan.spacing * r.cosine * r.unit[support][r.heapCase(k)]
}

// snowName names a way that snow lies.
func (m *model) snowName(set int) string {
	if set == 0 {
		return "snow"
	}
	return "snow with " + m.snow.sets[set].name
}

// deckSnow is the largest factored live or snow load on the deck, lb/in² of plan.
func (m *model) deckSnow(c *loads.Combination) float64 {
	most := m.onPlan(c, 0)
	for i := 1; i < len(m.snow.sets) && c.Snow != 0; i++ {
		load := m.snow.even(i)
		if k := m.snow.sets[i].heap; k >= 0 {
			load += m.snow.heaps[k].peak
		}
		most = max(most, c.Snow*load)
	}
	return most
}

// sagAt is the vertical reaction at a support under the live or snow load that counts
// for deflection, on a rafter of full tributary width, lb.
func (m *model) sagAt(support, set int) float64 {
	even := m.snow.even(set)
	if set == 0 {
		even = max(even, m.live)
	}
	return m.rafter.planAt(m, support, even) + m.rafter.heapAt(m, support, set)
}

// liveAt is the vertical reaction at a support under the factored live or snow
// load of a combination, on a rafter of full tributary width, lb.
func (m *model) liveAt(support int, c *loads.Combination, set int) float64 {
	return m.rafter.planAt(m, support, m.onPlan(c, set)) + c.Snow*m.rafter.heapAt(m, support, set)
}
