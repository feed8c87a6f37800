package cover

import (
	"fmt"
	"slices"
	"strconv"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/loads"
)

// checkOldRoof checks what is said of the existing roof against itself.
func (in Input) checkOldRoof(f *calc.Fields) {
	h, o := in.House, in.House.OldRoof
	at := f.In("house").In("old_roof")
	for _, list := range []struct {
		name string
		n    int
	}{{"layers", len(o.Layers)}, {"below", len(o.Below)}, {"openings", len(o.Openings)}} {
		if list.n > MaxList {
			at.Add(list.name, strconv.Itoa(list.n)+" "+list.name, fmt.Sprintf("at most %d", MaxList))
		}
	}
	if h.Dead != nil && len(o.Layers) > 0 {
		f.Add("house.dead_psf", calc.Number(*h.Dead)+" psf beside house.old_roof.layers", "one of the two")
	}
	for i := range o.Layers {
		o.Layers[i].check(at.At("layers", i))
	}
	if n := len(o.Lines); n > 0 && h.RafterSpan != nil && n <= MaxList && !(o.Lines[n-1] <= *h.RafterSpan-1) {
		at.Add("interior_lines_ft", calc.Number(o.Lines[n-1])+" ft",
			"supports between the walls, 1 ft or more before the far wall at "+calc.Number(*h.RafterSpan)+" ft")
	}
	areas := []*float64{o.WallOpen, o.Wall, o.RestOpen, o.Rest}
	if some := slices.ContainsFunc(areas, func(p *float64) bool { return p != nil }); some && !given(areas...) {
		at.Missing("wall_openings_ft2", "all four areas: the openings of one wall and of the rest, and the gross area of both")
	}
	if given(o.TailReach, h.RafterOverhang) && !(*o.TailReach <= *h.RafterOverhang) {
		at.Add("tail_reach_ft", calc.Number(*o.TailReach)+" ft", "within the overhang, "+calc.Number(*h.RafterOverhang)+" ft")
	}
	if o.TailSize != nil || o.TailSpecies != nil || o.TailGrade != nil {
		in.checkTails(at)
	}
	names := in.checkBelow(at)
	for i := range min(len(in.House.Joints), MaxList) {
		in.checkJoint(i, names, f.In("house").At("joints", i))
	}
}

// checkBelow wants a name of its own for every line below the joints, and returns them.
func (in Input) checkBelow(at *calc.Fields) map[string]bool {
	names := map[string]bool{}
	for i, b := range in.House.OldRoof.Below {
		if b.Line == nil {
			continue // has a fault of its own
		}
		if names[*b.Line] {
			at.At("below", i).Add("line", shown(*b.Line)+" given twice", "a name of its own for every line")
		}
		names[*b.Line] = true
	}
	return names
}

// check checks one layer of the old roof.
func (l *OldLayer) check(at *calc.Fields) {
	if l.Name == nil {
		return // has a fault of its own
	}
	if l.Weight == nil {
		if _, ok := loads.LayerNamed(*l.Name); !ok {
			at.Missing("psf", "the weight of the layer, or a name from the table of weights")
		}
	}
	if yes(l.Fixed) && isLoose(*l.Name) {
		at.Add("fixed", "true for "+shown(*l.Name), "false: gravel and ballast never resist uplift")
	}
}

// checkTails wants the tails of a species, grade and size that the tables know together.
func (in Input) checkTails(at *calc.Fields) {
	o := in.House.OldRoof
	if o.TailSize != nil {
		s, err := lumber.SectionNamed(*o.TailSize)
		switch {
		case err != nil:
			at.Add("tail_size", shown(*o.TailSize), "a nominal size such as 2x6")
		case o.TailCut != nil && !(*o.TailCut*calc.In < s.Depth):
			at.Add("tail_cut_in", calc.Number(*o.TailCut)+" in", "less than the depth of the tail, "+calc.Number(s.Depth/calc.In)+" in")
		}
	}
	if o.TailSpecies != nil {
		at.OneOf("tail_species", *o.TailSpecies, lumber.Species()...)
	}
	if o.TailSpecies == nil || o.TailGrade == nil || o.TailSize == nil {
		return
	}
	s, err := lumber.SectionNamed(*o.TailSize)
	if err != nil || !slices.Contains(lumber.Species(), *o.TailSpecies) {
		return // has a fault of its own
	}
	if _, err := lumber.Find(*o.TailSpecies, *o.TailGrade, s); err != nil {
		at.OneOf("tail_grade", *o.TailGrade, lumber.Graded(*o.TailSpecies, s)...)
	}
}

// checkJoint checks one joint; lines are the names of what stands below.
func (in Input) checkJoint(i int, lines map[string]bool, at *calc.Fields) {
	j := &in.House.Joints[i]
	switch {
	case (j.First == nil) != (j.Last == nil):
		at.Missing("last", "first and last together: the numbers of the rafters of a run")
	case j.First != nil && *j.Last < *j.First:
		at.Add("last", strconv.Itoa(*j.Last), "not less than first, "+strconv.Itoa(*j.First))
	}
	if j.Species != nil {
		at.OneOf("species", *j.Species, lumber.Species()...)
	}
	if j.RatedFor != nil {
		at.OneOf("rated_for", *j.RatedFor, lumber.Species()...)
	}
	if j.Fastener != nil {
		if _, ok := fastenerNamed(*j.Fastener, evidenceOf(j.Evidence)); !ok {
			at.Add("fastener", shown(*j.Fastener), "a nail such as 16d common or 8d box, or of bolts a diameter such as 1/2")
		}
	}
	if inner := is(j.Place, atInterior) || is(j.Place, atRidge); inner && len(in.House.OldRoof.Lines) == 0 {
		at.Add("place", shown(*j.Place), "eave or far_wall where house.old_roof.interior_lines_ft is not given")
	}
	if j.Line != nil && !lines[*j.Line] {
		at.Add("line", shown(*j.Line), "the name of a line of house.old_roof.below")
	}
	if l := in.House.OldRoof.Length; l != nil && j.End != nil && !(*j.End <= *l/2) {
		at.Add("end_ft", calc.Number(*j.End)+" ft", "at most half of the house along the wall: the nearest gable end counts")
	}
	if j.Asked != nil && j.There != nil && !is(j.Evidence, "strap") {
		at.Add("nails_there", "nails of a strap where none was seen", "left out, or evidence strap")
	}
}
