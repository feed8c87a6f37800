package cover

import (
	"patiocover/calc"
	"patiocover/loads/wind"
)

// models turns the words of the input into the views of the wind chapters.
var models = map[string]wind.Model{
	"as_computed": wind.Unchosen, "free_roof": wind.FreeRoof,
	"attached_canopy": wind.AttachedCanopy, "overhang": wind.RoofExtension,
}

// view sets the views that an authority may take of the cover side by side: a free roof,
// a canopy by the user's coefficients, an overhang of the house roof. A canopy that is
// known counts, and an overhang where the cover hangs on the rafter tails, whenever they
// ask for more than the free roof; for less only when the user chose them.
func (w *windLoads) view(in Input) {
	site := w.houseSite(in)
	var canopy, overhang wind.View
	if c := in.Cover; given(c.CanopyUp, c.CanopyDown) && c.CanopySource != nil {
		if made, ok := wind.NewCanopy(site, wind.Net{Up: *c.CanopyUp, Down: *c.CanopyDown, Source: *c.CanopySource}); ok {
			w.canopy, w.canopied, canopy = made, true, made.View()
		}
	}
	if !is(in.Cover.Attachment, "freestanding") {
		w.overhang = wind.NewExtension(site, w.roof.Angle).View()
	}
	chosen := models[*in.Cover.WindView]
	if is(in.Cover.Attachment, "rafter_tails") || chosen == wind.RoofExtension {
		overhang = w.overhang
	}
	w.views = wind.NewViews(wind.WholeRoof(w.velocity, w.roof), canopy, overhang, chosen)
	w.take(chosen)
	if *in.Cover.Sides != "open" {
		made := wind.NewEnclosed(site, w.roof.Angle)
		w.even(phrase{"as partially enclosed, up"}, -made.Suction)
		w.even(phrase{"as partially enclosed, down"}, made.Pressure)
	}
}

// houseSite is the site at the height of the roof of the house.
func (w *windLoads) houseSite(in Input) wind.Site {
	site := w.velocity.Site
	if h := in.House.RafterHeight; h != nil {
		site.Height = max(site.Height, *h*calc.Ft)
	}
	return site
}

// writtenViews is the calculation of the views.
func (w *windLoads) writtenViews(in Input) []Derivation {
	site := w.houseSite(in)
	var out []Derivation
	if w.canopied {
		out = append(out, Derivation{"Wind by the view of a canopy on the wall", w.canopy.Lines()})
	}
	if !is(in.Cover.Attachment, "freestanding") {
		lines := wind.NewExtension(site, w.roof.Angle).Lines()
		out = append(out, Derivation{"Wind by the view of an overhang of the house roof", lines})
	}
	out = append(out, Derivation{"Wind by the views of the whole roof, side by side", w.views.Lines()})
	if *in.Cover.Sides != "open" {
		out = append(out, Derivation{"Wind with the sides closed in part", wind.NewEnclosed(site, w.roof.Angle).Lines()})
	}
	return out
}

// take puts the views in force. One that the user chose stands alone for the framing;
// else what asks for more than the free roof is added to it.
func (w *windLoads) take(chosen wind.Model) {
	if chosen == wind.AttachedCanopy || chosen == wind.RoofExtension {
		w.across, w.along = nil, nil
		w.only = true
		w.even(phrase{"as ", chosen.String(), ", up"}, -w.views.Suction)
		w.even(phrase{"as ", chosen.String(), ", down"}, w.views.Pressure)
		return
	}
	if w.views.Uplift != wind.FreeRoof && w.views.Uplift != wind.Unchosen {
		w.even(phrase{"as ", w.views.Uplift.String(), ", up"}, -w.views.Suction)
	}
	if w.views.Downward != wind.FreeRoof && w.views.Downward != wind.Unchosen {
		w.even(phrase{"as ", w.views.Downward.String(), ", down"}, w.views.Pressure)
	}
}

// even adds a case that presses on all of the roof alike.
func (w *windLoads) even(name phrase, net float64) {
	w.across = append(w.across, windCase{name: w.room.say(name), high: net, low: net, share: 1})
}

// viewLines lists the views for the report.
func (w *windLoads) viewLines() []WindView {
	v := w.views
	out := []WindView{w.viewLine(v.Free), w.viewLine(v.Canopy), w.viewLine(w.overhang)}
	out[1].View, out[2].View = wind.AttachedCanopy.String(), wind.RoofExtension.String()
	if !v.Canopy.Known {
		out[1].Note = "not known: its coefficients must be given with their source"
	}
	switch {
	case !w.overhang.Known:
		out[2].Note = "does not apply to a freestanding cover"
	case !v.Extension.Known:
		out[2].Note = "shown only: it counts where the rafters are those of the house, or where it is chosen"
	}
	return out
}

func (w *windLoads) viewLine(v wind.View) WindView {
	out := WindView{View: v.Model.String(), Known: v.Known, Source: v.Source}
	if v.Known {
		out.Up, out.Down = v.Suction/calc.PSF, v.Pressure/calc.PSF
		out.Uplift, out.Downward = w.views.Uplift == v.Model, w.views.Downward == v.Model
	}
	return out
}
