package cover

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/loads"
)

// MaxList is the most elements of a list in an input, a limit of this program.
const MaxList = 60

// Validate lists every fault of the input at once, as a [*calc.InputError]:
// first each field against its row of fields.csv, then the fields against each
// other. It returns nil for an input that Size can answer.
func (in Input) Validate() error {
	var f calc.Fields
	visit(reflect.ValueOf(in), "", func(path string, v reflect.Value) { checkField(path, v, &f) })
	in.checkSources(&f)
	in.checkSite(&f)
	in.checkSnow(&f)
	in.checkCover(&f)
	in.checkBeamLines(&f)
	in.checkFlush(&f)
	in.checkPosts(&f)
	in.checkLumber(&f)
	in.checkHold(&f)
	return f.Err()
}

// checkField checks one value against its row of fields.csv.
func checkField(path string, v reflect.Value, f *calc.Fields) {
	d, ok := FieldOf(path)
	if !ok {
		return // a map or a list of structs, checked by its own rule
	}
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			if d.Need == NeedRequired {
				f.Missing(path, d.Allowed())
			}
			return
		}
		v = v.Elem()
	}
	switch v.Kind() {
	case reflect.Float64:
		f.Within(path, v.Float(), d.Low, d.High, d.Unit)
	case reflect.Int:
		f.Within(path, float64(v.Int()), d.Low, d.High, d.Unit)
	case reflect.String:
		checkText(path, v.String(), d, f)
	case reflect.Slice:
		checkNumbers(path, v, d, f)
	}
}

func checkText(path, text string, d Field, f *calc.Fields) {
	if d.Kind == KindChoice {
		f.OneOf(path, text, d.Choices...)
		return
	}
	control := func(r rune) bool { return unicode.IsControl(r) && r != '\n' }
	n := utf8.RuneCountInString(text)
	if n < 1 || n > maxText || !utf8.ValidString(text) || strings.ContainsFunc(text, control) {
		f.Add(path, shown(text), anyText+" without control characters")
	}
}

func checkNumbers(path string, v reflect.Value, d Field, f *calc.Fields) {
	if v.Len() > MaxList {
		f.Add(path, strconv.Itoa(v.Len())+" numbers", fmt.Sprintf("up to %d numbers", MaxList))
		return
	}
	for i := range v.Len() {
		f.Within(path+"["+strconv.Itoa(i)+"]", v.Index(i).Float(), d.Low, d.High, d.Unit)
	}
	list := v.Interface().([]float64)
	if !slices.IsSortedFunc(list, strictly) {
		f.Add(path, shown(list), "a list that rises from each number to the next")
	}
}

// strictly orders equal numbers as out of order.
func strictly(a, b float64) int {
	if a < b {
		return -1
	}
	return 1
}

// checkSources lets the user cite only keys of the site.
func (in Input) checkSources(f *calc.Fields) {
	for _, name := range slices.Sorted(maps.Keys(in.Site.Sources)) {
		path := "site.sources." + name
		if _, ok := fieldAt["site."+name]; !ok {
			f.Add(path, "an unknown key", "a key of site")
			continue
		}
		checkText(path, in.Site.Sources[name], Field{Kind: KindText}, f)
	}
}

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

// leastLowEdge is the lowest roof edge that is still a patio cover, in.
const leastLowEdge = 5 * calc.Ft

// sameLine is how far a beam line may stand from where another field puts it, ft: an
// eighth of an inch, no more than a rounding to hundredths.
const sameLine = 0.01

func (in Input) checkBeamLines(f *calc.Fields) {
	c, lines := in.Cover, in.Beams.Lines
	if len(lines) == 0 {
		in.checkDefaultLines(f)
		return
	}
	least := 1
	if is(c.Attachment, "freestanding") {
		least = 2
	}
	at := f.In("beams")
	if len(lines) < least || len(lines) > maxLines {
		at.Add("lines_ft", strconv.Itoa(len(lines))+" lines", fmt.Sprintf("%d to %d beam lines", least, maxLines))
	}
	if least == 1 && lines[0] < 1 {
		at.Add("lines_ft", calc.Number(lines[0])+" ft", "1 ft or more from the wall")
	}
	last := lines[len(lines)-1]
	if given(c.Projection, c.Overhang) && !(math.Abs(last-(*c.Projection-*c.Overhang)) <= sameLine) {
		at.Add("lines_ft", "last line at "+calc.Number(last)+" ft",
			fmt.Sprintf("ending at projection less overhang, %s ft", calc.Number(*c.Projection-*c.Overhang)))
	}
	for i := 1; i < len(lines); i++ {
		if !(lines[i]-lines[i-1] >= 1) {
			at.Add("lines_ft", shown(lines), "beam lines 1 ft or more apart")
			break
		}
	}
}

// checkDefaultLines refuses an overhang that leaves no room between the two lines of a
// freestanding cover, or before the one of an attached cover.
func (in Input) checkDefaultLines(f *calc.Fields) {
	c := in.Cover
	if c.Attachment == nil || !given(c.Projection, c.Overhang) || !(*c.Overhang <= *c.Projection/2) {
		return // has a fault of its own
	}
	lines := in.defaultLines()
	from := 0.0
	if len(lines) > 1 {
		from = lines[0]
	}
	if !(lines[len(lines)-1]-from >= 1) {
		f.Add("cover.overhang_ft", calc.Number(*c.Overhang)+" ft",
			"small enough that 1 ft or more lies between the supports of the rafters")
	}
}

// checkFlush refuses rafters that would have to pass through a beam: those that hang in
// its face end there, so that they cannot reach beyond it nor span on over it.
func (in Input) checkFlush(f *calc.Fields) {
	if !is(in.Beams.Position, "flush") {
		return
	}
	if o := in.Cover.Overhang; o != nil && *o > 0 {
		f.Add("cover.overhang_ft", calc.Number(*o)+" ft beyond a flush beam",
			"0 ft, or dropped beams that the rafters run over: in the face of a beam they end")
	}
	ends := 1
	if is(in.Cover.Attachment, "freestanding") {
		ends = 2
	}
	if n := len(in.Beams.Lines); n > ends || n == 2 && ends == 2 && in.Beams.Lines[0] > 0 {
		f.Add("beams.lines_ft", shown(in.Beams.Lines)+" with flush beams",
			"no line but those at the ends of the rafters, or dropped beams that the rafters run over")
	}
}

// maxLines is the most beam lines of a cover.
const maxLines = 6

func (in Input) checkPosts(f *calc.Fields) {
	p, width := in.Posts, in.Cover.Width
	at := f.In("posts")
	switch {
	case p.Count == nil && len(p.Positions) == 0:
		at.Missing("count", "posts per beam line, or posts.positions_ft instead")
	case p.Count != nil && len(p.Positions) > 0:
		at.Add("count", "given together with positions_ft", "one of the two")
	case len(p.Positions) == 1:
		at.Add("positions_ft", "1 post", "2 posts or more")
	}
	if width == nil || len(p.Positions) > MaxList {
		return
	}
	for i, x := range p.Positions {
		if !(x <= *width) {
			at.Add(fmt.Sprintf("positions_ft[%d]", i), calc.Number(x)+" ft", "within the width, 0 to "+calc.Number(*width)+" ft")
		}
		if i > 0 && !(x-p.Positions[i-1] >= 1) {
			at.Add(fmt.Sprintf("positions_ft[%d]", i), calc.Number(x)+" ft", "1 ft or more from the post before")
		}
	}
	if p.EndInset != nil && !(*p.EndInset <= *width/3) {
		at.Add("end_inset_ft", calc.Number(*p.EndInset)+" ft", "at most a third of the width")
	}
}

// checkLumber checks that each species, grade and size is one that the tables
// know together.
func (in Input) checkLumber(f *calc.Fields) {
	checkWood("rafters", in.Rafters.Species, in.Rafters.Grade, in.Rafters.Size, rafterSizes, f)
	checkWood("beams", in.Beams.Species, in.Beams.Grade, in.Beams.Size, beamSizes, f)
	checkWood("posts", in.Posts.Species, in.Posts.Grade, in.Posts.Size, postSizes, f)
}

func checkWood(group string, species, grade, size *string, sizes []string, f *calc.Fields) {
	at := f.In(group)
	if species == nil || grade == nil {
		return
	}
	if !slices.Contains(lumber.Species(), *species) {
		at.OneOf("species", *species, lumber.Species()...)
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

func (in Input) checkHold(f *calc.Fields) {
	c := in.Cover
	if n := len(in.House.Joints); n > MaxList {
		f.Add("house.joints", strconv.Itoa(n)+" joints", fmt.Sprintf("at most %d joints", MaxList))
	}
	if is(in.Foundation.Kind, "slab") && in.Foundation.SlabThickness == nil {
		f.Missing("foundation.slab_thickness_in", "the thickness of the slab that the posts stand on")
	}
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

func is(p *string, word string) bool { return p != nil && *p == word }

func yes(p *bool) bool { return p != nil && *p }

func given(all ...*float64) bool { return !slices.Contains(all, nil) }
