package cover

import (
	"strings"

	"patiocover/calc"
	"patiocover/loads"
)

// The states of a layer of an existing roof.
const (
	layerPresent  = "present"
	layerRemoved  = "removed"
	layerToRemove = "to_remove"
	layerPlanned  = "planned"
)

// oldDead are the dead loads of an existing roof, lb/in² of plan: those that resist
// uplift at each stage, and the most that presses down.
type oldDead struct {
	known  bool
	now    float64 // resists now
	after  float64 // resists once the planned work is done
	least  float64 // resists at every stage
	former float64 // with everything that was ever fixed or lies loose: for comparison only
	most   float64 // presses down, with everything there or to come
	lines  []calc.Line
	layers []SurveyLayer
}

// loose are words that tell ballast, which the wind scours away and which is never
// counted on.
var loose = []string{"gravel", "ballast", "pebble", "stone", "paver", "river rock"}

// isLoose reports whether a layer lies loose, by its name. Felts laid with their gravel
// are named as built-up: of those nothing is counted on either.
func isLoose(name string) bool {
	for _, word := range loose {
		if strings.Contains(strings.ToLower(name), word) {
			return true
		}
	}
	return false
}

// newOldDead adds up the layers of the old roof, or takes the least dead load that was
// given. Weights of the slope count as if they were of the plan, which is the least.
func newOldDead(h House) oldDead {
	if len(h.OldRoof.Layers) == 0 {
		d := oldDead{known: h.Dead != nil}
		if d.known {
			x := *h.Dead * calc.PSF
			d.now, d.after, d.least, d.former, d.most = x, x, x, x, x
		}
		return d
	}
	d := oldDead{known: true}
	var parts []loads.Part
	for _, l := range h.OldRoof.Layers {
		w := weightOf(Layer{Name: l.Name, Weight: l.Weight})
		x, state := w.Weight*calc.PSF, *l.State
		fixed := yes(l.Fixed) && !isLoose(*l.Name)
		count := func(to *float64, yes bool) {
			if yes {
				*to += x
			}
		}
		count(&d.now, fixed && (state == layerPresent || state == layerToRemove))
		count(&d.after, fixed && (state == layerPresent || state == layerPlanned))
		count(&d.former, state != layerPlanned)
		count(&d.most, state != layerRemoved)
		counts := fixed && state == layerPresent
		count(&d.least, counts)
		parts = append(parts, loads.Part{Weight: x, Certain: counts, Source: w.Source, Status: w.Status})
		d.layers = append(d.layers, SurveyLayer{
			Name: *l.Name, Weight: w.Weight, State: state, Counts: counts, Why: whyCounts(fixed, *l.Name, state),
			Source: w.Source, Status: w.Status,
		})
	}
	d.lines = loads.NewDead(parts).Lines(parts)
	return d
}

// whyCounts says why a layer resists uplift or does not.
func whyCounts(fixed bool, name, state string) string {
	switch {
	case isLoose(name):
		return "loose: the wind scours it, and it may be gone after any storm"
	case state == layerRemoved:
		return "gone: it holds nothing down any more"
	case state == layerToRemove:
		return "it will go: what is left must hold"
	case state == layerPlanned:
		return "not there yet"
	case !fixed:
		return "not said to be fastened and sure to stay"
	}
	return "fastened and sure to stay"
}
