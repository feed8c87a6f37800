package deck

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// A Need is everything that a deck must carry at one rafter spacing.
type Need struct {
	Spacing    float64      // s, in, rafters center to center
	Actions    []Action     // every combination, wind at its worst, and the worker
	Dead       float64      // D, lb/in² of deck, unfactored
	Live       float64      // largest live or snow load, lb/in² of deck, unfactored
	LiveLimit  member.Limit // on the deflection under it
	TotalLimit member.Limit // on the sag
}

// A Named is one check with its name in the report and the combination that governs.
type Named struct {
	Name        string      // what is checked
	Combination string      // the governing combination
	Check       calc.Result // the check
}

// A PanelAnswer is the worst of every kind of check of one panel.
type PanelAnswer struct {
	Span    PanelSpan       // the spacing against the code table
	Load    PanelLoad       // the loads without wind against it
	Down    PanelBending    // bending under gravity or wind
	Up      PanelBending    // bending in net uplift
	Shear   PanelShear      // shear, either way
	Live    PanelDeflection // under live or snow load
	Total   PanelDeflection // under dead and live load
	ByTable bool            // the table answers for all loads without wind
}

// Panel checks a panel. Where the table prints loads as large as those here, and the
// panel stays dry, it answers for the combinations without wind; else all are computed.
func (n *Need) Panel(p *Panel, held, wet bool) PanelAnswer {
	a := PanelAnswer{Span: NewPanelSpan(n.Spacing, p, held), Load: NewPanelLoad(n.Dead, n.Live, p)}
	a.ByTable = a.Load.printed && !wet
	for i := range n.Actions {
		act := &n.Actions[i]
		if act.Worker > 0 || a.ByTable && !act.windy() {
			continue
		}
		at := &a.Down
		if act.Net() < 0 {
			at = &a.Up
		}
		if b := NewPanelBending(act, p, n.Spacing, wet); b.Ratio() > at.Ratio() {
			*at = b
		}
		if v := NewPanelShear(act, p, n.Spacing, wet); v.Ratio() > a.Shear.Ratio() {
			a.Shear = v
		}
	}
	if !a.ByTable {
		a.Live = NewPanelDeflection(n.Live, p, n.Spacing, wet, n.LiveLimit)
		a.Total = NewPanelDeflection(n.Dead+n.Live, p, n.Spacing, wet, n.TotalLimit)
	}
	return a
}

// Ratio is the largest ratio of all checks.
func (a *PanelAnswer) Ratio() float64 {
	most := max(a.Span.Ratio(), a.Down.Ratio(), a.Up.Ratio(), a.Shear.Ratio(), a.Live.Ratio(), a.Total.Ratio())
	if a.ByTable {
		return max(most, a.Load.Ratio())
	}
	return most
}

// Checks lists the checks that apply.
func (a *PanelAnswer) Checks() []Named {
	out := []Named{{"span of the rating", "geometry", a.Span}}
	if a.ByTable {
		out = append(out, Named{"load of the rating", "dead with live or snow load", a.Load})
	}
	for _, b := range []struct {
		name  string
		check PanelBending
	}{{"bending", a.Down}, {"bending in uplift", a.Up}} {
		if b.check.Ratio() > 0 {
			out = append(out, Named{b.name, b.check.Action.Name, b.check})
		}
	}
	if a.Shear.Ratio() > 0 {
		out = append(out, Named{"shear in the plane", a.Shear.Action.Name, a.Shear})
	}
	if !a.ByTable {
		out = append(out, Named{"live or snow deflection", "live or snow load", a.Live},
			Named{"dead and live deflection", "dead with live or snow load", a.Total})
	}
	return out
}

// LeastPanel returns the first roof sheathing of the table that serves, dry, with held
// or free edges; false when none does.
func (n *Need) LeastPanel(held bool) (Panel, bool) {
	for i := range panels {
		p := &panels[i]
		if !p.Sheathing {
			continue
		}
		if a := n.Panel(p, held, false); a.Ratio() <= 1 {
			return *p, true
		}
	}
	return Panel{}, false
}

// A StripAnswer is the worst of every kind of check of one piece of lumber.
type StripAnswer struct {
	Down   Bending    // under uniform load
	Worker Bending    // under the concentrated load
	Up     Bending    // in net uplift
	Shear  Shear      // either way
	Seat   Bearing    // on the rafter
	Live   Deflection // under live or snow load
	Sag    Sag        // long term
}

// Strip checks a piece.
func (n *Need) Strip(s *Strip, seasoning member.Seasoning) StripAnswer {
	var a StripAnswer
	for i := range n.Actions {
		act := &n.Actions[i]
		at := &a.Down
		switch {
		case act.Worker > 0:
			at = &a.Worker
		case act.Net() < 0:
			at = &a.Up
		}
		if b := NewBending(act, s); b.Ratio() > at.Ratio() {
			*at = b
		}
		if v := NewShear(act, s); v.Ratio() > a.Shear.Ratio() {
			a.Shear = v
		}
		if r := NewBearing(act, s); r.Ratio() > a.Seat.Ratio() {
			a.Seat = r
		}
	}
	a.Live = NewDeflection(n.Live, s, n.LiveLimit)
	a.Sag = NewSag(n.Dead, n.Live, s, seasoning, n.TotalLimit)
	return a
}

// Ratio is the largest ratio of all checks.
func (a *StripAnswer) Ratio() float64 {
	strength := max(a.Down.Ratio(), a.Worker.Ratio(), a.Up.Ratio(), a.Shear.Ratio(), a.Seat.Ratio())
	return max(strength, a.Live.Ratio(), a.Sag.Ratio())
}

// Checks lists the checks that apply.
func (a *StripAnswer) Checks() []Named {
	var out []Named
	for _, b := range []struct {
		name  string
		check Bending
	}{{"bending", a.Down}, {"bending under a worker", a.Worker}, {"bending in uplift", a.Up}} {
		if b.check.Ratio() > 0 {
			out = append(out, Named{b.name, b.check.Action.Name, b.check})
		}
	}
	if a.Shear.Ratio() > 0 {
		out = append(out, Named{"shear", a.Shear.Action.Name, a.Shear})
	}
	if a.Seat.Ratio() > 0 {
		out = append(out, Named{"bearing on the rafter", a.Seat.Action.Name, a.Seat})
	}
	return append(out, Named{"live or snow deflection", "live or snow load", a.Live},
		Named{"long-term sag", "Kcr D with live or snow load", a.Sag})
}

// plankSizes are the planks that are made with tongue and groove, the least first.
var plankSizes = []string{"2x6", "3x6", "4x6"}

// LeastPlank returns the thinnest tongue and groove plank of the species and grade that
// serves on simple spans, and false when none does, or when the grade has no values. use
// is its service; it lies flat and its planks share the load.
func (n *Need) LeastPlank(species, grade string, use lumber.Use, seasoning member.Seasoning) (lumber.Section, bool) {
	use.Flat, use.Repetitive = true, true
	for _, size := range plankSizes {
		section, err := lumber.SectionNamed(size)
		if err != nil {
			continue
		}
		values, err := lumber.Find(species, grade, section)
		if err != nil {
			continue
		}
		piece := lumber.Adjust(values, section, use)
		s := NewPlank(&piece, n.Spacing, true, SimpleSpan)
		if a := n.Strip(&s, seasoning); a.Ratio() <= 1 {
			return section, true
		}
	}
	return lumber.Section{}, false
}
