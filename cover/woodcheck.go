package cover

import (
	"slices"
	"strconv"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// checkLumber checks that each species, grade and size is one that the tables
// know together, and that what is made up of them can be made.
func (in Input) checkLumber(f *calc.Fields) {
	r, b, p := in.Rafters, in.Beams, in.Posts
	in.checkMakeup("rafters", r.makeup(), r.Species, r.Grade, r.Size, f)
	in.checkMakeup("beams", b.makeup(), b.Species, b.Grade, b.Size, f)
	in.checkMakeup("posts", p.makeup(), p.Species, p.Grade, p.Size, f)
	in.checkBraceWood(f)
	_, product := productNamed(in.Products, r.Species)
	sawn := r.Species != nil && !lumber.Laminated(*r.Species) && !product
	if d := in.Deck; d.Kind != nil && *d.Kind != panelDeck && *d.Kind != anotherDeck && d.Species == nil && !sawn {
		f.Missing("deck.species", "the species of the deck, where the rafters are not of sawn lumber")
	}
}

// checkBraceWood wants posts of a wood that knee braces can be cut of.
func (in Input) checkBraceWood(f *calc.Fields) {
	species, grade := in.Posts.Species, in.Posts.Grade
	if !in.Lateral.kneed() || species == nil || grade == nil {
		return
	}
	_, product := productNamed(in.Products, species)
	if product || lumber.Laminated(*species) {
		f.Add("posts.species", shown(*species), "sawn lumber, of which the knee braces are cut, or another lateral system")
		return
	}
	if !slices.Contains(lumber.Species(), *species) {
		return // has a fault of its own
	}
	for _, name := range braceSizes {
		s, _ := lumber.SectionNamed(name)
		if _, err := lumber.Find(*species, *grade, s); err == nil {
			return
		}
	}
	f.Add("posts.grade", shown(*grade), "a grade that knee braces, "+strings.Join(braceSizes, ", ")+", have as well")
}

// listed are the sizes that are tried for each kind of member.
var listed = map[string][]string{"rafters": rafterSizes, "beams": beamSizes, "posts": postSizes}

// checkMakeup checks one kind of member: its wood, its plies, its measured sides.
func (in Input) checkMakeup(group string, up makeup, species, grade, size *string, f *calc.Fields) {
	at := f.In(group)
	checkPlies(at, up, size)
	checkMeasured(at, up, size)
	if p, ok := productNamed(in.Products, species); ok {
		checkProduct(at, p, grade, size)
		in.checkPole(group, size, f)
		return
	}
	switch {
	case species != nil && lumber.Laminated(*species):
		checkLaminated(at, *species, grade, size)
	case up.plies != nil && *up.plies > 1:
		checkWood(group, species, grade, size, plySizes, f)
	default:
		checkWood(group, species, grade, size, listed[group], f)
	}
}

// checkPlies wants plies that are said once, of a size that builds up.
func checkPlies(at *calc.Fields, up makeup, size *string) {
	n := 0
	if up.plies != nil {
		n = *up.plies
	}
	if size != nil {
		s, err := lumber.SectionNamed(*size)
		switch _, fits := s.Times(n); {
		case err != nil:
		case s.Plies > 1 && n > 0 && s.Plies != n:
			at.Add("plies", strconv.Itoa(n)+" of "+*size, "the plies of the size, or left out")
		case s.Plies == 0 && n > 1 && !fits:
			at.Add("plies", strconv.Itoa(n)+" of "+*size, "pieces 1-1/2 in. thick or more, up to 5 of them")
		}
		n = max(n, s.Plies)
	}
	if up.fastening != nil && *up.fastening != "unfastened" && n < 2 {
		at.Add("ply_fastening", shown(*up.fastening), "left out where there are no plies")
	}
}

// checkMeasured wants both sides of a rough or old piece, with its nominal size.
func checkMeasured(at *calc.Fields, up makeup, size *string) {
	if up.breadth == nil && up.depth == nil {
		return
	}
	if !given(up.breadth, up.depth) || size == nil {
		at.Missing("measured_depth_in", "measured_breadth_in, measured_depth_in and the nominal size together")
		return
	}
	s, err := lumber.SectionNamed(*size)
	if err != nil {
		return // has a fault of its own
	}
	if s.Plies > 1 || up.plies != nil && *up.plies > 1 || s.Class == lumber.Manufactured || s.Round {
		at.Add("measured_depth_in", calc.Number(*up.depth)+" in", "left out but for one piece of sawn lumber")
		return
	}
	if _, err := lumber.Measured(s.NominalThickness, s.NominalWidth, *up.breadth, *up.depth); err != nil {
		at.Add("measured_depth_in", calc.Number(*up.breadth)+" by "+calc.Number(*up.depth)+" in",
			"the sides of a "+s.Name+", the small one first: "+err.Error())
	}
}

// checkProduct wants a member of a given product with a size and the grade that says so.
func checkProduct(at *calc.Fields, p Product, grade, size *string) {
	if grade != nil && *grade != givenGrade {
		at.Add("grade", shown(*grade), shown(givenGrade)+" for a product whose values you give")
	}
	if size == nil {
		at.Missing("size", "the size of "+shown(*p.Name)+": sizes of given products are not chosen")
		return
	}
	if _, err := lumber.SectionNamed(*size); err != nil {
		at.Add("size", strconv.Quote(*size), "a size such as 1-3/4x9-1/2 or 2x8")
	}
}

// checkPole lets poles be posts whose beam sits on top of them and whose foot stands on a
// base: what a round side holds, in the ground or at a bolted beam, is not known here.
func (in Input) checkPole(group string, size *string, f *calc.Fields) {
	if size == nil {
		return
	}
	s, err := lumber.SectionNamed(*size)
	if err != nil || !s.Round {
		return
	}
	switch {
	case group != "posts":
		f.Add(group+".size", shown(*size), "a rectangular size: poles stand as posts alone")
	case is(in.Foundation.Kind, "embedded"):
		f.Add(group+".size", shown(*size), "a rectangular size for posts in the ground")
	case in.Beams.OnPost != nil && !is(in.Beams.OnPost, "seated"):
		f.Add(group+".size", shown(*size), "a rectangular size where the beam is notched in or bolted to the side")
	}
}

// checkLaminated checks the combination and the size of glued laminated timber.
func checkLaminated(at *calc.Fields, species string, grade, size *string) {
	if grade == nil {
		return
	}
	if !slices.Contains(lumber.LaminatedSpecies(), species) {
		at.OneOf("species", species, lumber.LaminatedSpecies()...)
		return
	}
	name := laminatedSizes(species)[0]
	if size != nil {
		name = *size
	}
	s, err := lumber.SectionNamed(name)
	if err != nil {
		at.Add("size", strconv.Quote(name), "a size of glued laminated timber such as "+laminatedSizes(species)[0])
		return
	}
	if _, err := lumber.Find(species, *grade, s); err != nil {
		at.Add("grade", shown(*grade), "a combination and size of "+species+": "+err.Error())
	}
}

// checkProductUse refuses given values in a use that they hold no factor for. The input
// must have no other fault.
func (in Input) checkProductUse(f *calc.Fields) {
	if f.Any() || len(in.Products) == 0 {
		return
	}
	full, _ := in.Assume()
	r, b, p := full.Rafters, full.Beams, full.Posts
	for _, m := range []struct {
		group string
		up    stock
	}{
		{"rafters", newStock(r.Species, r.Grade, r.Size, *r.Wet, *r.Incised, *r.Hot).made(r.makeup(), in.Products)},
		{"beams", newStock(b.Species, b.Grade, b.Size, *b.Wet, *b.Incised, *b.Hot).made(b.makeup(), in.Products)},
		{"posts", newStock(p.Species, p.Grade, p.Size, *p.Wet, *p.Incised, *p.Hot).made(p.makeup(), in.Products)},
	} {
		if m.up.product == nil {
			continue
		}
		s, err := m.up.section(m.up.size)
		if err != nil {
			f.Add(m.group+".size", strconv.Quote(m.up.size), "a size that can be made up so")
			continue
		}
		lacks := m.up.product.Missing(s, m.up.use)
		if m.group == "posts" && m.up.product.Flatwise == 0 {
			lacks = append(lacks, "fb_flat_psi, because posts bend both ways")
		}
		if len(lacks) > 0 {
			f.Add(m.group+".species", shown(m.up.species),
				"values that hold in this use: they lack "+strings.Join(lacks, " and "))
		}
	}
}

// knownSpecies lists what a kind of member may be made of: decks of sawn lumber alone.
func knownSpecies(group string) []string {
	if _, ok := listed[group]; !ok {
		return lumber.Species()
	}
	return append(lumber.Species(), lumber.LaminatedSpecies()...)
}

// checkWood checks the wood of one kind of member; sizes are those to try where none is
// given.
func checkWood(group string, species, grade, size *string, sizes []string, f *calc.Fields) {
	at := f.In(group)
	if species == nil || grade == nil {
		return
	}
	if !slices.Contains(lumber.Species(), *species) {
		at.OneOf("species", *species, knownSpecies(group)...)
		return
	}
	if size != nil {
		s, err := lumber.SectionNamed(*size)
		if err != nil {
			at.Add("size", strconv.Quote(*size), "a nominal size such as "+sizes[0])
			return
		}
		sizes = []string{s.Name}
	}
	var published []string
	for _, name := range sizes {
		s, _ := lumber.SectionNamed(name)
		if _, err := lumber.Find(*species, *grade, s); err == nil {
			return
		}
		for _, g := range lumber.Graded(*species, s) {
			if !slices.Contains(published, g) {
				published = append(published, g)
			}
		}
	}
	of := " of " + *species
	if size != nil {
		of += " " + sizes[0]
	}
	if len(published) == 0 {
		at.Add("grade", shown(*grade), "a grade with published values: there is none"+of)
		return
	}
	at.Add("grade", shown(*grade), "a grade"+of+": "+strings.Join(published, ", "))
}
