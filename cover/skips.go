package cover

import (
	"fmt"

	"patiocover/calc"
)

// skips lists what the report does not answer, each with its reason.
func (m *model) skips() []Skip {
	out := []Skip{
		{"hardware that is bought by its rating", "a rating that is asked for is a requirement of the purchase: " +
			"its own report must show it, for the wood, the nails and the exposure that it has here"},
		m.deckSkip(),
		{"the soil", "settlement, slopes, trees, pipes and neighboring footings are not looked at; holes must be seen before the concrete"},
		{"gutters, flashing and the slope of the slab", "water is followed to the low edge of the roof only"},
		{"shear deformation", "deflections leave it out beyond what the published modulus holds; short deep spans sag more"},
	}
	out = append(out, m.openLoads()...)
	if yes(m.in.Site.PatioAppendix) {
		out = append(out, Skip{
			"openness for the patio cover appendix",
			fmt.Sprintf("65 %% of the longer wall and of one more must be open below 6 ft 8 in; "+
				"height at most 12 ft, here %.1f ft", m.plan.high/calc.Ft),
		})
	}
	if m.plan.attached {
		out = append(out, Skip{"the house", "wall, studs, plate and foundation that take the ledger's load are not checked"},
			Skip{"ledger board", "its size is not checked; it is taken to be as deep as the rafters"})
	}
	if m.plan.attached && m.in.House.Eave != nil {
		out = append(out, Skip{"room below the eave", "only the top of the rafters is held against the underside of the eave: " +
			"roofing, flashing and fastening need room above it"})
	}
	rooms := "light and air and escape windows of the rooms behind, "
	if len(m.in.House.OldRoof.Openings) > 0 {
		rooms = ""
	}
	out = append(out, Skip{
		"what else the building department asks", "permit, seal, distance to the lot lines, " + rooms +
			"wires overhead, fire and wildfire rules",
	})
	return out
}

// closedSides says what of the wind on a cover with closed sides is not answered.
const closedSides = "screens or walls close its sides: its roof carries the worse of a free and a partially enclosed roof, " +
	"the wind on the screens and walls themselves is not computed"

// openLoads lists the loads that were not computed, or that somebody must agree to: what
// is OK under the others is not OK whole.
func (m *model) openLoads() []Skip {
	var out []Skip
	if !m.sideways.along.shaken {
		out = append(out, Skip{
			"earthquake", "not computed: give the seismic category with SDS, SD1 and S1; it may govern sideways over the wind",
		})
	}
	for _, why := range m.snow.missing {
		out = append(out, Skip{"snow from the house roof", why})
	}
	if *m.in.Cover.Sides != "open" {
		out = append(out, Skip{"wind", closedSides})
	}
	for _, l := range m.wind.roof.Outside(*m.in.Site.WindSpeed) {
		out = append(out, Skip{"wind", l.String()})
	}
	if m.plan.attached && *m.in.Cover.Flow == "clear" {
		out = append(out, Skip{
			"wind below the roof", "clear flow is given though the wall of the house stands in its way: the authority must agree to it",
		})
	}
	if m.wind.views.Below {
		out = append(out, Skip{
			"wind below the free roof", "the view chosen asks for less than the free roof: the authority must agree to it in writing",
		})
	}
	return out
}
