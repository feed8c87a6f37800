package cover

import (
	"slices"
	"strconv"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// checkDeck wants a deck that is described whole, of one kind, and fit for the covering.
func (in Input) checkDeck(f *calc.Fields) {
	d, at := in.Deck, f.In("deck")
	if d.Kind == nil {
		if d != (Deck{}) {
			at.Missing("kind", "the kind of deck that the other entries describe")
		}
		return
	}
	kind := *d.Kind
	if !slices.Contains(deckKinds, kind) {
		return // its own fault is listed with the field
	}
	lumberDeck := kind == plankDeck || kind == purlinDeck || kind == slatDeck
	spaced := kind == purlinDeck || kind == slatDeck
	for _, x := range []struct {
		name        string
		given, used bool
		of          string
	}{
		{"panel_rating", d.Rating != nil, kind == panelDeck, "panels"}, {"size", d.Size != nil, lumberDeck, "lumber"},
		{"species", d.Species != nil, lumberDeck, "lumber"}, {"grade", d.Grade != nil, lumberDeck, "lumber"},
		{"spacing_in", d.Spacing != nil, spaced, "purlins or slats"}, {"on_edge", d.OnEdge != nil, spaced, "purlins or slats"},
		{"layup", d.Layup != nil, kind == plankDeck, "planks"}, {"blocked", d.Blocked != nil, kind == panelDeck, "panels"},
	} {
		if x.given && !x.used {
			at.Add(x.name, "given for a deck of kind "+kind, "left out but for a deck of "+x.of)
		}
	}
	if spaced && d.Spacing == nil {
		at.Missing("spacing_in", "how far apart the purlins or slats lie, on center")
	}
	switch covering := in.Cover.Covering; {
	case is(covering, "lattice") && kind != slatDeck && kind != anotherDeck:
		at.Add("kind", shown(kind), "slats or other below a covering that is open lattice")
	case is(covering, "solid") && kind == slatDeck:
		at.Add("kind", shown(kind), "panel, plank, purlins or other below a solid covering")
	}
	if lumberDeck {
		in.checkDeckWood(f)
	}
}

// deckKinds are the words of deck.kind.
var deckKinds = []string{panelDeck, plankDeck, purlinDeck, slatDeck, anotherDeck}

// checkDeckWood checks the wood of a deck of lumber, which is that of the rafters where
// nothing else is said.
func (in Input) checkDeckWood(f *calc.Fields) {
	d := in.Deck
	species, grade := d.Species, d.Grade
	if species == nil {
		species = in.Rafters.Species
	}
	if grade == nil {
		grade = in.Rafters.Grade
	}
	if d.Size != nil {
		s, err := lumber.SectionNamed(*d.Size)
		switch {
		case err != nil:
		case s.Class != lumber.Dimension:
			f.Add("deck.size", strconv.Quote(*d.Size),
				"a size of 2 to 4 in. nominal thickness: boards have no design values, timbers are no deck")
			return
		case *d.Kind != plankDeck && d.Spacing != nil && gap(s, d) <= 0:
			f.Add("deck.spacing_in", calc.Number(*d.Spacing)+" in", "wider than the "+s.Name+", as it lies: they would have no gap")
			return
		}
	}
	sizes := deckSizes(d)
	if len(sizes) == 0 {
		f.Add("deck.spacing_in", calc.Number(*d.Spacing)+" in", "wider than the narrowest purlin, as it lies")
		return
	}
	if d.Species == nil && (species == nil || !slices.Contains(lumber.Species(), *species)) {
		return // the fault is that of the rafters
	}
	checkWood("deck", species, grade, d.Size, sizes, f)
}
