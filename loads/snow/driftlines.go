package snow

import (
	"patiocover/calc"
	"patiocover/loads"
)

// Lines writes the drift up, from the balanced snow on. A refusal has no lines.
func (d Drift) Lines() []calc.Line {
	if !d.Reason.Known() {
		return nil
	}
	var s calc.Sheet
	edition := d.Balanced.Site.Edition.String()
	if d.Reason == NoSnow {
		s.Given("p_d", 0, "psf", "input site: "+d.Reason.String())
		return s.Lines()
	}
	s.Given("p_g", d.Balanced.Site.Ground/calc.PSF, "psf", "input site.ground_snow_psf, by "+edition)
	s.Given("p_s", d.Balanced.Sloped/calc.PSF, "psf", "balanced snow, above")
	s.Given("h", d.Step.Height/calc.Ft, "ft", "step above the roof of the cover, geometry")
	s.Step("gamma", "min(0.13 * p_g + 14, 30)", d.Density/calc.PCF, "pcf", edition+" eq. 7.7-1")
	s.Step("h_b", "p_s / gamma", d.Depth/calc.Ft, "ft", edition+" 7.7.1")
	s.Step("h_c", "h - h_b", d.Clear/calc.Ft, "ft", edition+" 7.7.1")
	if d.Step.Gap > 0 {
		s.Given("s", d.Step.Gap/calc.Ft, "ft", "gap between house and cover, geometry")
	}
	if d.Reason != Found {
		s.Step("p_d", "0", 0, "psf", edition+" 7.7: "+d.Reason.String())
		return s.Lines()
	}
	d.heightLines(&s, edition)
	d.widthLines(&s, edition)
	d.spreadLines(&s, edition)
	return s.Lines()
}

// heightLines writes the free height of the drift.
func (d Drift) heightLines(s *calc.Sheet, edition string) {
	if d.Kind == Leeward {
		s.Given("l_0", d.Step.House/calc.Ft, "ft", "length of the house roof, geometry")
	} else {
		s.Given("l_0", d.Step.Cover/calc.Ft, "ft", "depth of the cover, geometry")
	}
	share, clause, status := 1.0, " 7.7.1, leeward, read in a library's transcription", calc.Read
	switch d.Kind {
	case Windward:
		share, clause = 0.75, " 7.7.1, windward, read in a library's transcription"
	case Parapet:
		share, clause, status = 0.75, " 7.8, parapet", calc.Recalled
	}
	s.Quoted("c_d", share, "", edition+clause, status)
	if d.Balanced.Site.Edition == loads.ASCE722 {
		s.Step("l_u", "l_0", d.Fetch/calc.Ft, "ft", edition+" eq. 7.6-1")
		s.Given("W_2", d.Balanced.Site.WinterWind, "", "winter wind parameter of the site, "+edition+" Fig. 7.6-1")
		s.Step("h_0", "c_d * 1.5 * sqrt(pow(p_g, 0.74) * pow(l_u, 0.70) * pow(W_2, 1.7) / gamma)",
			d.Free/calc.Ft, "ft", edition+" eq. 7.6-1")
		return
	}
	s.Quoted("l_min", leastFetch/calc.Ft, "ft", "ASCE 7-10 Fig. 7-9, above the 20 ft of ASCE 7-16", calc.Recalled)
	s.Step("l_u", "max(l_0, l_min)", d.Fetch/calc.Ft, "ft", edition+" Fig. 7.6-1")
	c := &categories[d.Balanced.category]
	s.Quoted("I_s", d.Balanced.Importance, "", c.source, c.status)
	s.Step("h_0", "c_d * sqrt(I_s) * (0.43 * pow(l_u, 1.0/3) * pow(p_g + 10, 0.25) - 1.5)",
		d.Free/calc.Ft, "ft", edition+" Fig. 7.6-1")
}

// widthLines writes the height and width by the branch taken.
func (d Drift) widthLines(s *calc.Sheet, edition string) {
	height, width, clause := "h_0", "4 * h_d", " 7.7.1"
	switch d.form {
	case bounded:
		height, width = "h_c", "min(4 * h_0 * h_0 / h_c, 8 * h_c)"
	case apart:
		height, width, clause = "min(h_0, (6 * h - s) / 6)", "min(6 * h_0, 6 * h - s)", " 7.7.2"
	case unbroken:
		width, clause = "8 * h_d", " 7.7.1, windward drift not bounded by the step"
	}
	s.Step("h_d", height, d.Height/calc.Ft, "ft", edition+clause)
	s.Step("w", width, d.Width/calc.Ft, "ft", edition+clause)
}

// spreadLines writes the load on the cover.
func (d Drift) spreadLines(s *calc.Sheet, edition string) {
	reach := "w"
	if d.Cut > 0 {
		reach = "(w - s)"
		s.Step("p_d", "gamma * h_d * (w - s) / w", d.Peak/calc.PSF, "psf", edition+" 7.7.2, truncated at the gap")
	} else {
		s.Step("p_d", "gamma * h_d", d.Peak/calc.PSF, "psf", edition+" 7.7.1, largest at the step")
	}
	s.Given("d", d.Step.Cover/calc.Ft, "ft", "depth of the cover, geometry")
	s.Step("w_d", "min("+reach+", d)", d.Loaded/calc.Ft, "ft", "cut off at the end of the cover")
	far := "0"
	if d.ends {
		far = "p_d * (1 - w_d / " + reach + ")"
	}
	s.Step("p_e", far, d.Far/calc.PSF, "psf", "at the end of w_d, straight line")
}
