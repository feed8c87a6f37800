package cover

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/loads"
)

// Assume returns the input with everything filled that the program may assume,
// and each assumption with its reason, in the order of the fields. Sizes, which
// the program chooses, stay open. The input must be valid.
func (in Input) Assume() (Input, []Assumption) {
	out := in.clone()
	var list []Assumption
	note := func(path, value, why string) {
		d, _ := FieldOf(path)
		list = append(list, Assumption{
			Path: path, Label: d.Label, Value: value, Unit: d.Unit,
			Why: why, Source: d.Source, Status: d.Status,
		})
	}
	if out.Site.RoofLive == nil && yes(out.Site.PatioAppendix) {
		out.Site.RoofLive = new(loads.AppendixLive / calc.PSF)
		note("site.roof_live_psf", calc.Number(*out.Site.RoofLive), "The patio cover appendix is adopted")
	}
	out.assumeSoil(note)
	if o, ok := openingsOf(out.House.OldRoof); ok && out.House.Enclosure == nil {
		out.House.Enclosure = new(string(o.Class))
		note("house.enclosure", string(o.Class), "By the openings of the walls (ASCE 7-16 26.2)")
	}
	visit(reflect.ValueOf(&out).Elem(), "", func(path string, v reflect.Value) {
		d, ok := FieldOf(path)
		if ok && d.Need == NeedAssumed && v.Kind() == reflect.Pointer && v.IsNil() {
			fill(v, d)
			if in.concerns(path) {
				note(path, d.Default, d.Why)
			}
		}
	})
	out.assumeService(note)
	out.assumeDeck(note)
	if len(out.Beams.Lines) == 0 {
		out.Beams.Lines = out.defaultLines()
		note("beams.lines_ft", numbers(out.Beams.Lines), "The outer line stands at projection less overhang")
	}
	out.assumeBraces(note)
	if len(out.Market.StockLengths) == 0 {
		out.Market.StockLengths = evenLengths(*out.Beams.Stock)
		note("market.stock_lengths_ft", numbers(out.Market.StockLengths), "Yards keep the even lengths up to the longest beam stock")
	}
	return out, inOrder(list)
}

// inOrder sorts assumptions by their fields.
func inOrder(list []Assumption) []Assumption {
	slices.SortStableFunc(list, func(a, b Assumption) int { return place(a.Path) - place(b.Path) })
	return list
}

// assumeDeck fills what a deck that was described has from the rafters: its wood and its
// exposure.
func (in *Input) assumeDeck(note func(path, value, why string)) {
	d := &in.Deck
	if d.Kind == nil || *d.Kind == anotherDeck {
		return
	}
	fill := func(path string, at **string, from string) {
		if *at == nil && *d.Kind != panelDeck {
			*at = new(from)
			note(path, from, "The wood of the rafters")
		}
	}
	fill("deck.species", &d.Species, *in.Rafters.Species)
	fill("deck.grade", &d.Grade, *in.Rafters.Grade)
	if d.Wet == nil {
		d.Wet = new(*in.Rafters.Wet)
		note("deck.wet", strconv.FormatBool(*d.Wet), "As the rafters below it")
	}
	if d.Incised == nil && *d.Kind != panelDeck {
		d.Incised = new(*d.Wet && incisedSpecies(*d.Species))
		note("deck.incised", strconv.FormatBool(*d.Incised), "Wood in the rain is treated, and most species are incised for it")
	}
}

// deckPlays lists the kinds of deck that an assumed field of it plays a part in.
var deckPlays = map[string][]string{
	"deck.on_edge": {purlinDeck, slatDeck}, "deck.edges_held": {panelDeck, plankDeck, slatDeck}, "deck.layup": {plankDeck},
	"deck.blocked": {panelDeck}, "deck.workers": {plankDeck, purlinDeck, slatDeck}, "deck.green": {plankDeck, purlinDeck, slatDeck},
}

// concerns reports whether a field plays a part in this cover, so that an assumption
// about it is worth reading.
func (in Input) concerns(path string) bool {
	switch path {
	case "deck.on_edge", "deck.edges_held", "deck.blocked", "deck.layup", "deck.workers", "deck.green":
		return in.Deck.Kind != nil && slices.Contains(deckPlays[path], *in.Deck.Kind)
	case "connections.strap_gauge", "connections.strap_width_in":
		return is(in.Connections.Tie, "straps")
	case "connections.hanger", "connections.ledger", "connections.wall_blocked", "connections.wall_framing":
		return !is(in.Cover.Attachment, "freestanding")
	case "house.wall":
		return !is(in.Cover.Attachment, "freestanding")
	case "foundation.slab_rule":
		return is(in.Foundation.Kind, "slab")
	case "foundation.held_by_slab", "foundation.loose_top_in":
		return is(in.Foundation.Kind, "embedded")
	case "foundation.one_size":
		return !is(in.Foundation.Kind, "slab") && !given(in.Foundation.Width, in.Foundation.Depth)
	case "foundation.soil_over_pad":
		return in.Foundation.Neck != nil
	case "foundation.frost_exemption":
		frozen := in.Site.FrostDepth != nil && *in.Site.FrostDepth > 0
		return frozen && is(in.Cover.Attachment, "freestanding") && !is(in.Foundation.Kind, "slab")
	case "site.ground_water_ft", "site.soil_lateral_pcf":
		return !is(in.Foundation.Kind, "slab")
	case "site.topographic_factor":
		return in.Site.HillShape == nil
	case "site.sheltering", "house.slippery", "house.gap_ft", "site.risk_category":
		return snowy(in.Site)
	case "house.enclosure", "house.old_roof.tie_wind":
		return in.House.RafterSpan != nil
	case "lateral.brace_angle_deg":
		return in.Lateral.kneed()
	case "house.old_roof.rafters_run_on":
		return len(in.House.OldRoof.Lines) > 0
	case "posts.end_inset_ft":
		return in.Posts.Count != nil
	case "beams.ply_fastening":
		return built(in.Beams.Plies, in.Beams.Size)
	case "posts.ply_fastening":
		return built(in.Posts.Plies, in.Posts.Size)
	case "rafters.green":
		return in.Rafters.Species == nil || !lumber.Laminated(*in.Rafters.Species)
	case "beams.green":
		return in.Beams.Species == nil || !lumber.Laminated(*in.Beams.Species)
	}
	return true
}

// built reports whether a member is of plies.
func built(plies *int, size *string) bool {
	if size != nil {
		if s, err := lumber.SectionNamed(*size); err == nil && s.Plies > 1 {
			return true
		}
	}
	return plies != nil && *plies > 1
}

// snowy reports whether any snow is given.
func snowy(s Site) bool {
	return (s.RoofSnow != nil && *s.RoofSnow > 0) || (s.GroundSnow != nil && *s.GroundSnow > 0)
}

// assumeService fills wet service and incising, which depend on the roof, the
// climate and the wood.
func (in *Input) assumeService(note func(path, value, why string)) {
	wet, why := true, "Open lattice lets the rain through"
	if *in.Cover.Covering == "solid" {
		wet, why = *in.Site.Climate != "dry", "Under a solid roof in a dry climate"
		if wet {
			why = "Humid climate: wind-blown rain and slow drying"
		}
	}
	for _, m := range []struct {
		path string
		flag **bool
	}{
		{"rafters.wet", &in.Rafters.Wet}, {"beams.wet", &in.Beams.Wet}, {"posts.wet", &in.Posts.Wet},
	} {
		if m.path == "posts.wet" && *in.Foundation.Kind == "embedded" {
			wet, why = true, "Posts in the ground are wet where they bend and bear most"
		}
		if m.path == "posts.wet" && *in.Site.Sprinklers && !wet {
			wet, why = true, "Sprinklers wet the posts again and again"
		}
		if *m.flag == nil {
			*m.flag = new(wet)
			note(m.path, strconv.FormatBool(wet), why)
		}
	}
	ground := *in.Foundation.Kind == "embedded"
	for _, m := range []struct {
		path    string
		flag    **bool
		species string
		exposed bool
	}{
		{"rafters.incised", &in.Rafters.Incised, *in.Rafters.Species, *in.Rafters.Wet},
		{"beams.incised", &in.Beams.Incised, *in.Beams.Species, *in.Beams.Wet},
		{"posts.incised", &in.Posts.Incised, *in.Posts.Species, *in.Posts.Wet || ground},
	} {
		if *m.flag != nil {
			continue
		}
		_, product := productNamed(in.Products, &m.species)
		incised := incisedSpecies(m.species) && m.exposed && !product
		*m.flag = new(incised)
		why := "Dry, off the ground, or a species treated without incising"
		if incised {
			why = "Wood exposed to rain or ground is treated, and this species is incised for it"
		}
		note(m.path, strconv.FormatBool(incised), why)
	}
}

// incisedSpecies reports whether the species takes treatment only when incised:
// all but Southern Pine and the naturally durable ones.
func incisedSpecies(species string) bool {
	for _, other := range []string{"Southern Pine", "Redwood", "Cedar", "SP/SP", "AC/AC"} {
		if strings.Contains(species, other) {
			return false
		}
	}
	return true
}

// defaultLines puts the outer beam line at projection less overhang, and for a
// freestanding cover an inner one at the same overhang from the high edge.
func (in Input) defaultLines() []float64 {
	outer := *in.Cover.Projection - *in.Cover.Overhang
	if *in.Cover.Attachment == "freestanding" {
		return []float64{*in.Cover.Overhang, outer}
	}
	return []float64{outer}
}

// evenLengths are the even lengths from 8 ft to the longest, ft, and the longest.
func evenLengths(longest float64) []float64 {
	var out []float64
	for ft := 8.0; ft < longest; ft += 2 {
		out = append(out, ft)
	}
	return append(out, longest)
}

// fill sets the nil pointer v to the default of its field.
func fill(v reflect.Value, d Field) {
	p := reflect.New(v.Type().Elem())
	switch e := p.Elem(); e.Kind() {
	case reflect.Float64:
		e.SetFloat(must(strconv.ParseFloat(d.Default, 64)))
	case reflect.Int:
		e.SetInt(int64(must(strconv.Atoi(d.Default))))
	case reflect.Bool:
		e.SetBool(must(strconv.ParseBool(d.Default)))
	default:
		e.SetString(d.Default)
	}
	v.Set(p)
}

// must returns x. A malformed default in fields.csv is a mistake of ours.
func must[T any](x T, err error) T {
	if err != nil {
		panic("cover: fields.csv: " + err.Error())
	}
	return x
}

// clone copies the input so that filling one leaves the other as it was.
func (in Input) clone() Input {
	in.Products = slices.Clone(in.Products)
	in.Cover.Layers = slices.Clone(in.Cover.Layers)
	in.House.Joints = slices.Clone(in.House.Joints)
	in.House.OldRoof.Lines = slices.Clone(in.House.OldRoof.Lines)
	in.House.OldRoof.Layers = slices.Clone(in.House.OldRoof.Layers)
	in.House.OldRoof.Below = slices.Clone(in.House.OldRoof.Below)
	in.House.OldRoof.Openings = slices.Clone(in.House.OldRoof.Openings)
	in.Beams.Lines = slices.Clone(in.Beams.Lines)
	in.Posts.Positions = slices.Clone(in.Posts.Positions)
	in.Market.StockLengths = slices.Clone(in.Market.StockLengths)
	in.Market.Prices = slices.Clone(in.Market.Prices)
	return in
}

// place is the position of a path among the fields, -1 for none.
func place(path string) int {
	if i, ok := fieldAt[withoutNumbers(path)]; ok {
		return i
	}
	return -1
}

func numbers(list []float64) string {
	all := make([]string, len(list))
	for i, x := range list {
		all[i] = calc.Number(x)
	}
	return strings.Join(all, ", ")
}
