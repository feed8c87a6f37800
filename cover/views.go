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
	site := w.velocity.Site
	if h := in.House.RafterHeight; h != nil {
		site.Height = max(site.Height, *h*calc.Ft)
	}
	var canopy, overhang wind.View
	if c := in.Cover; given(c.CanopyUp, c.CanopyDown) && c.CanopySource != nil {
		if made, ok := wind.NewCanopy(site, wind.Net{Up: *c.CanopyUp, Down: *c.CanopyDown, Source: *c.CanopySource}); ok {
			canopy = made.View()
			w.others = append(w.others, Derivation{"Wind by the view of a canopy on the wall", made.Lines()})
		}
	}
	if !is(in.Cover.Attachment, "freestanding") {
		made := wind.NewExtension(site, w.roof.Angle)
		w.overhang = made.View()
		w.others = append(w.others, Derivation{"Wind by the view of an overhang of the house roof", made.Lines()})
	}
	chosen := models[*in.Cover.WindView]
	if is(in.Cover.Attachment, "rafter_tails") || chosen == wind.RoofExtension {
		overhang = w.overhang
	}
	w.views = wind.NewViews(wind.WholeRoof(w.velocity, w.roof), canopy, overhang, chosen)
	w.others = append(w.others, Derivation{"Wind by the views of the whole roof, side by side", w.views.Lines()})
	w.take(chosen)
	if *in.Cover.Sides != "open" {
		made := wind.NewEnclosed(site, w.roof.Angle)
		w.others = append(w.others, Derivation{"Wind with the sides closed in part", made.Lines()})
		w.even("partially enclosed, up", -made.Suction)
		w.even("partially enclosed, down", made.Pressure)
	}
}

// take puts the views in force. One that the user chose stands alone for the framing;
// else what asks for more than the free roof is added to it.
func (w *windLoads) take(chosen wind.Model) {
	if chosen == wind.AttachedCanopy || chosen == wind.RoofExtension {
		w.across, w.along = nil, nil
		w.only = true
		w.even(chosen.String()+", up", -w.views.Suction)
		w.even(chosen.String()+", down", w.views.Pressure)
		return
	}
	if w.views.Uplift != wind.FreeRoof && w.views.Uplift != wind.Unchosen {
		w.even(w.views.Uplift.String()+", up", -w.views.Suction)
	}
	if w.views.Downward != wind.FreeRoof && w.views.Downward != wind.Unchosen {
		w.even(w.views.Downward.String()+", down", w.views.Pressure)
	}
}

// even adds a case that presses on all of the roof alike.
func (w *windLoads) even(name string, net float64) {
	w.across = append(w.across, windCase{name: "as " + name, high: net, low: net, share: 1})
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
