package cover

import (
	"fmt"

	"patiocover/calc"
)

// skips lists what the report does not answer, each with its reason: first what is left out
// of this cover, then what no report answers.
func (m *model) skips() []Skip {
	out := m.openLoads()
	if m.deckUnsaid() {
		out = append(out, Skip{What: "roof deck and its nailing",
			Why: "the deck was not described; what would serve is listed, its nailing is not"})
	}
	if m.plan.attached && !is(m.in.Connections.WallFraming, "verified") {
		out = append(out, Skip{What: "the house", Why: "wall, studs, plate and foundation that take the ledger's load are not checked"})
	}
	for _, s := range m.bounds() {
		s.Standing = true
		out = append(out, s)
	}
	return out
}

// bounds lists what no report answers.
func (m *model) bounds() []Skip {
	out := []Skip{
		{What: "hardware that is bought by its rating", Why: "a rating that is asked for is a requirement of the purchase: " +
			"its own report must show it, for the wood, the nails and the exposure that it has here"},
		{What: "the soil", Why: "settlement, slopes, trees, pipes and neighboring footings are not looked at; " +
			"holes must be seen before the concrete"},
		{What: "gutters, flashing and the slope of the slab", Why: "water is followed to the low edge of the roof only"},
		{What: "shear deformation", Why: "deflections leave it out beyond what the published modulus holds; short deep spans sag more"},
	}
	if !m.deckUnsaid() {
		out = append(out, m.deckSkip())
	}
	if yes(m.in.Site.PatioAppendix) {
		out = append(out, Skip{What: "openness for the patio cover appendix", Why: fmt.Sprintf(
			"65 %% of the longer wall and of one more must be open below 6 ft 8 in; height at most 12 ft, here %.1f ft",
			m.plan.high/calc.Ft)})
	}
	if m.plan.attached && m.in.House.Eave != nil {
		out = append(out, Skip{What: "room below the eave", Why: "only the top of the rafters is held against the underside of the eave: " +
			"roofing, flashing and fastening need room above it"})
	}
	rooms := "light and air and escape windows of the rooms behind, "
	if len(m.in.House.OldRoof.Openings) > 0 {
		rooms = ""
	}
	return append(out, Skip{What: "what else the building department asks", Why: "permit, seal, distance to the lot lines, " + rooms +
		"wires overhead, fire and wildfire rules"})
}

// closedSides says what of the wind on a cover with closed sides is not answered.
const closedSides = "screens or walls close its sides: its roof carries the worse of a free and a partially enclosed roof, " +
	"the wind on the screens and walls themselves is not computed"

// openLoads lists the loads that were not computed, or that somebody must agree to: what
// is OK under the others is not OK whole.
func (m *model) openLoads() []Skip {
	var out []Skip
	if !m.sideways.along.shaken {
		out = append(out, Skip{What: "earthquake",
			Why: "not computed: give the seismic category with SDS, SD1 and S1; it may govern sideways over the wind"})
	}
	for _, why := range m.snow.missing {
		out = append(out, Skip{What: "snow from the house roof", Why: why})
	}
	if *m.in.Cover.Sides != "open" {
		out = append(out, Skip{What: "wind", Why: closedSides})
	}
	for _, l := range m.wind.roof.Outside(*m.in.Site.WindSpeed) {
		out = append(out, Skip{What: "wind", Why: l.String()})
	}
	if m.plan.attached && *m.in.Cover.Flow == "clear" {
		out = append(out, Skip{What: "wind below the roof",
			Why: "clear flow is given though the wall of the house stands in its way: the authority must agree to it"})
	}
	if m.wind.views.Below {
		out = append(out, Skip{What: "wind below the free roof",
			Why: "the view chosen asks for less than the free roof: the authority must agree to it in writing"})
	}
	return out
}
