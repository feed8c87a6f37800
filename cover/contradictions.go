package cover

import (
	"fmt"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/connections/anchor"
	"patiocover/loads"
)

// checkSite wants a hill whole, and the ordinary roof live load where the appendix that
// lowers it is not in force.
func (in Input) checkSite(f *calc.Fields) {
	s := in.Site
	whole := s.HillShape != nil && given(s.HillHeight, s.HillHalf, s.HillDistance)
	if is(s.Topography, "hill") && s.TopographicFactor == nil && !whole {
		f.Missing("site.topographic_factor",
			"the site's own Kzt, or the hill: hill_shape, hill_height_ft, hill_half_length_ft, hill_distance_ft")
	}
	if s.HillShape != nil && !whole {
		for _, m := range []struct {
			name string
			x    *float64
		}{
			{"hill_height_ft", s.HillHeight}, {"hill_half_length_ft", s.HillHalf}, {"hill_distance_ft", s.HillDistance},
		} {
			if m.x == nil {
				f.Missing("site."+m.name, "the size of the hill whose shape is given")
			}
		}
	}
	if s.HillShape != nil && !is(s.Topography, "hill") {
		f.Add("site.hill_shape", shown(*s.HillShape), "left out where site.topography is not hill")
	}
	if s.RoofLive != nil && *s.RoofLive < ordinaryLive/calc.PSF && !yes(s.PatioAppendix) {
		f.Add("site.roof_live_psf", calc.Number(*s.RoofLive)+" psf",
			calc.Number(ordinaryLive/calc.PSF)+" psf or more where the patio cover appendix is not adopted")
	}
}

// checkSnow refuses a snow load of one edition's level in the combinations of the
// other: strength-level snow of the 2022 edition carries a factor of 0.7 there, and
// an older load put through it would come out too small.
func (in Input) checkSnow(f *calc.Fields) {
	s := in.Site
	if s.RoofSnow == nil && s.GroundSnow == nil {
		f.Missing("site.roof_snow_psf", "the roof snow of the authority, 0 where there is none, or site.ground_snow_psf")
	}
	if s.GroundSnow != nil && *s.GroundSnow > 0 {
		in.checkGroundSnow(f)
	}
	if s.RoofSnow == nil || *s.RoofSnow == 0 {
		return
	}
	newer := is(s.Standard, loads.ASCE722.String())
	switch {
	case newer && s.RoofSnowBasis == nil:
		f.Missing("site.roof_snow_basis", "strength, for the strength-level snow that ASCE 7-22 combines as 0.7S")
	case newer && !is(s.RoofSnowBasis, "strength"):
		f.Add("site.roof_snow_basis", shown(*s.RoofSnowBasis), "strength with ASCE 7-22: it combines snow as 0.7S")
	case !newer && is(s.RoofSnowBasis, "strength"):
		f.Add("site.roof_snow_basis", shown(*s.RoofSnowBasis), "allowable with ASCE 7-16: it combines snow as 1.0S")
	}
}

// checkGroundSnow wants to know which edition maps the ground snow, and refuses that of
// one edition in the rules of the other.
func (in Input) checkGroundSnow(f *calc.Fields) {
	s := in.Site
	rules := loads.ASCE716.String()
	if s.Standard != nil {
		rules = *s.Standard
	}
	if s.RoofSnow != nil && *s.RoofSnow == 0 {
		f.Add("site.roof_snow_psf", "0 psf beside ground snow",
			"the roof snow of the authority, or left out so that it follows from the ground snow")
	}
	switch {
	case s.GroundSnowBasis == nil:
		f.Missing("site.ground_snow_basis", "the edition whose maps the ground snow is from")
	case *s.GroundSnowBasis != rules:
		f.Add("site.ground_snow_basis", shown(*s.GroundSnowBasis), rules+", the load standard: ground snow of another edition is refused")
	}
}

// highestByAppendix is the height up to which the patio cover appendix knows a cover, in
// (IRC 2018 Appendix H).
const highestByAppendix = 12 * calc.Ft

// leastLowEdge is the lowest roof edge that is still a patio cover, in.
const leastLowEdge = 5 * calc.Ft

// checkCover checks the layers, the overhang, and the height that is left at the low
// edge.
func (in Input) checkCover(f *calc.Fields) {
	c := in.Cover
	at := f.In("cover")
	if len(c.Layers) == 0 || len(c.Layers) > MaxList {
		at.Add("layers", strconv.Itoa(len(c.Layers))+" layers", fmt.Sprintf("1 to %d layers of dead load", MaxList))
	}
	for i, l := range c.Layers {
		if l.Weight != nil || l.Name == nil {
			continue
		}
		if _, ok := loads.LayerNamed(*l.Name); !ok {
			at.At("layers", i).Missing("psf", "the weight of the layer, or a name from the table of weights")
		}
	}
	if h := c.HighEdge; h != nil && *h > highestByAppendix/calc.Ft && yes(in.Site.PatioAppendix) {
		at.Add("high_edge_ft", calc.Number(*h)+" ft",
			fmt.Sprintf("%g ft or less, as high as the patio cover appendix goes, or its adoption left out", highestByAppendix/calc.Ft))
	}
	in.checkView(at)
	if given(c.Projection, c.Overhang) && !(*c.Overhang <= *c.Projection/2) {
		at.Add("overhang_ft", calc.Number(*c.Overhang)+" ft", "at most half of the projection")
	}
	if given(c.Projection, c.Slope, c.HighEdge) {
		low := *c.HighEdge - *c.Projection**c.Slope*calc.In/calc.Ft
		if !(low >= leastLowEdge/calc.Ft) {
			at.Add("high_edge_ft", calc.Number(*c.HighEdge)+" ft",
				fmt.Sprintf("high enough that the low edge, now at %.2f ft, is at %g ft or more", low, leastLowEdge/calc.Ft))
		}
	}
}

// checkView wants the coefficients of a canopy whole, with their source.
func (in Input) checkView(at *calc.Fields) {
	c := in.Cover
	any := c.CanopyUp != nil || c.CanopyDown != nil || c.CanopySource != nil || is(c.WindView, "attached_canopy")
	if whole := given(c.CanopyUp, c.CanopyDown) && c.CanopySource != nil; any && !whole {
		at.Missing("canopy_source", "canopy_up and canopy_down together with canopy_source, the figure they were read from")
	}
	if is(c.Attachment, "freestanding") && (is(c.WindView, "attached_canopy") || is(c.WindView, "overhang")) {
		at.Add("wind_view", shown(*c.WindView), "as_computed or free_roof for a freestanding cover")
	}
}

// checkHold checks what stands behind and below the cover: a freestanding one has no
// house to hold it.
func (in Input) checkHold(f *calc.Fields) {
	c := in.Cover
	if n := len(in.House.Joints); n > MaxList {
		f.Add("house.joints", strconv.Itoa(n)+" joints", fmt.Sprintf("at most %d joints", MaxList))
	}
	if is(in.Foundation.Kind, "slab") && in.Foundation.SlabThickness == nil {
		f.Missing("foundation.slab_thickness_in", "the thickness of the slab that the posts stand on")
	}
	in.checkAnchor(f)
	in.checkPad(f)
	if !is(c.Attachment, "freestanding") {
		return
	}
	if is(in.Lateral.Along, "house_diaphragm") {
		f.Add("lateral.along_house", "house_diaphragm", "a system of its own for a freestanding cover")
	}
	if is(in.Lateral.Out, "house_diaphragm") {
		f.Add("lateral.out_from_house", "house_diaphragm", "a system of its own for a freestanding cover")
	}
}

// checkPad wants a neck only where a pad can lie below it, and one with a pad thickness.
func (in Input) checkPad(f *calc.Fields) {
	p := in.Foundation
	if p.Neck != nil && !is(p.Kind, "footing") && !is(p.Kind, "pier") {
		f.Add("foundation.neck_in", calc.Number(*p.Neck)+" in", "left open, or a footing or a pier below the posts")
	}
	if given(p.Neck, p.Width) && !(*p.Neck < *p.Width) {
		f.Add("foundation.neck_in", calc.Number(*p.Neck)+" in", "less than the width of the footing, "+calc.Number(*p.Width)+" in")
	}
	if p.PadThickness != nil && p.Neck == nil {
		f.Missing("foundation.neck_in", "the neck above a pad of that thickness, or no pad_thickness_in")
	}
}

// checkAnchor wants the sizes of an anchor with its kind, and a diameter that is made.
func (in Input) checkAnchor(f *calc.Fields) {
	a := in.Foundation
	if a.AnchorKind != nil && *a.AnchorKind != "embedded_base" && !given(a.AnchorDiameter, a.AnchorEmbedment) {
		f.Missing("foundation.anchor_diameter_in", "anchor_diameter_in and anchor_embedment_in of the anchor")
	}
	if a.AnchorDiameter == nil {
		return
	}
	if _, made := anchor.SizeOf(*a.AnchorDiameter); !made {
		var all []string
		for _, s := range anchor.Sizes() {
			all = append(all, calc.Number(s.Diameter))
		}
		f.Add("foundation.anchor_diameter_in", calc.Number(*a.AnchorDiameter)+" in", "one of "+strings.Join(all, ", "))
	}
}
