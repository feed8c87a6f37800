package cover_test

import (
	"math"

	"pgregory.net/rapid"

	"patiocover/cover"
)

// woods are species and grades with values in every kind of size.
var woods = [][2]string{
	{"Douglas Fir-Larch", "No.2"}, {"Douglas Fir-Larch", "No.1"}, {"Hem-Fir", "No.2"}, {"Spruce-Pine-Fir", "No.2"},
	{"Southern Pine", "No.2"},
}

// tenth draws a number in steps of a tenth, so that a failing case can be read.
func tenth(t *rapid.T, low, high float64, name string) float64 {
	return float64(rapid.IntRange(int(math.Round(low*10)), int(math.Round(high*10))).Draw(t, name)) / 10
}

// word draws one of the words.
func word(t *rapid.T, name string, words ...string) string {
	return rapid.SampledFrom(words).Draw(t, name)
}

// maybe leaves a value out at times.
func maybe[T any](t *rapid.T, name string, x T) *T {
	if rapid.Bool().Draw(t, "say "+name) {
		return &x
	}
	return nil
}

// randomCover draws a valid cover of any kind.
func randomCover(t *rapid.T) cover.Input {
	in := cover.Input{Schema: cover.SchemaVersion, Site: randomSite(t), Cover: randomRoof(t)}
	rafters, beams, posts := randomWood(t, "rafters"), randomWood(t, "beams"), randomWood(t, "posts")
	in.Rafters = cover.Rafters{
		Species: &rafters[0], Grade: &rafters[1], Spacing: new(rapid.SampledFrom([]float64{12, 16, 19.2, 24, 32}).Draw(t, "spacing")),
		Size:    maybe(t, "rafter size", word(t, "rafter size", "2x4", "2x6", "2x8", "2x10", "2x12")),
		SeatCut: maybe(t, "seat cut", tenth(t, 0, 2, "seat cut")),
		Brace:   maybe(t, "brace", tenth(t, 2, 8, "brace")), Green: maybe(t, "green", rapid.Bool().Draw(t, "green")),
		Wet: maybe(t, "wet", rapid.Bool().Draw(t, "wet")), Incised: maybe(t, "incised", rapid.Bool().Draw(t, "incised")),
	}
	in.Beams = cover.Beams{
		Species: &beams[0], Grade: &beams[1], Position: new(word(t, "position", "dropped", "flush")),
		Size:    maybe(t, "beam size", word(t, "beam size", "4x6", "4x8", "4x10", "6x10", "6x12")),
		OnPost:  maybe(t, "on post", word(t, "on post", "seated", "notched", "side_bolted")),
		Notch:   maybe(t, "notch", tenth(t, 0, 2, "notch")),
		Splices: new(word(t, "splices", "by_stock", "every_post", "none")), Stock: maybe(t, "stock", tenth(t, 12, 30, "stock")),
	}
	in.Posts = randomPosts(t, *in.Cover.Width)
	in.Posts.Species, in.Posts.Grade = &posts[0], &posts[1]
	in.Posts.Size = maybe(t, "post size", word(t, "post size", "4x4", "4x6", "6x6"))
	randomGround(t, &in)
	randomLines(t, &in)
	randomDeck(t, &in)
	randomOldRoof(t, &in)
	if *in.Beams.Position == "flush" { // rafters end there
		in.Cover.Overhang, in.Beams.Lines = new(0.0), nil
	}
	if in.Validate() != nil {
		t.Skip("drawn values contradict each other")
	}
	return in
}

func randomWood(t *rapid.T, name string) [2]string { return rapid.SampledFrom(woods).Draw(t, name) }

func randomSite(t *rapid.T) cover.Site {
	s := cover.Site{
		WindSpeed: new(tenth(t, 85, 180, "wind")), Exposure: new(word(t, "exposure", "B", "C", "D")),
		RoofSnow: new(0.0), FrostDepth: new(0.0), RoofLive: maybe(t, "live", tenth(t, 20, 40, "live")),
		RoofLiveReducible: maybe(t, "reducible", true), Climate: maybe(t, "climate", word(t, "climate", "dry", "humid")),
		Standard: maybe(t, "standard", word(t, "standard", "ASCE 7-16", "ASCE 7-22")),
	}
	if rapid.Bool().Draw(t, "snowy") {
		s.RoofSnow, s.FrostDepth = new(tenth(t, 5, 80, "snow")), new(tenth(t, 0, 48, "frost"))
		if s.Standard != nil && *s.Standard == "ASCE 7-22" {
			s.RoofSnowBasis = new("strength")
		}
	}
	return s
}

func randomRoof(t *rapid.T) cover.Cover {
	projection := tenth(t, 6, 24, "projection")
	c := cover.Cover{
		Attachment: new(word(t, "attachment", "ledger", "rafter_tails", "freestanding")), Projection: &projection,
		Width: new(tenth(t, 8, 40, "width")), Overhang: new(tenth(t, 0, min(3, projection/4), "overhang")),
		Slope:    new(rapid.SampledFrom([]float64{0.125, 0.25, 0.5, 1, 1.2, 1.4, 1.6, 2, 3, 4, 6}).Draw(t, "slope")),
		Flow:     maybe(t, "flow", word(t, "flow", "enveloped", "clear", "obstructed")),
		Covering: new(word(t, "covering", "solid", "lattice")),
		Ceiling:  maybe(t, "ceiling", word(t, "ceiling", "none", "board", "plaster")), SlabFall: maybe(t, "fall", 0.125),
	}
	c.HighEdge = new(min(20, math.Ceil(6.5+projection**c.Slope/12)))
	for range rapid.IntRange(1, 3).Draw(t, "layers") {
		c.Layers = append(c.Layers, cover.Layer{
			Name: new("layer"), Weight: new(tenth(t, 0, 8, "weight")), Certain: maybe(t, "certain", rapid.Bool().Draw(t, "certain")),
		})
	}
	return c
}

func randomPosts(t *rapid.T, width float64) cover.Posts {
	if rapid.Bool().Draw(t, "equal bays") {
		return cover.Posts{
			Count:    new(rapid.IntRange(2, max(2, int(width/5))).Draw(t, "posts")),
			EndInset: maybe(t, "inset", tenth(t, 0, min(3, width/6), "inset")),
		}
	}
	at := []float64{tenth(t, 0, 2, "first post")}
	for len(at) < 6 {
		next := math.Round((at[len(at)-1]+tenth(t, 4, 10, "bay"))*10) / 10
		if next > width {
			break
		}
		at = append(at, next)
	}
	return cover.Posts{Positions: at}
}

func randomGround(t *rapid.T, in *cover.Input) {
	in.Foundation = cover.Foundation{
		Kind: new(word(t, "foundation", "slab", "footing", "pier", "embedded")), SlabThickness: new(tenth(t, 3, 6, "slab")),
		SlabRule: maybe(t, "rule", word(t, "rule", "live_and_dead", "all_loads")),
	}
	randomFooting(t, in)
	systems := []string{"knee_braces", "embedded_posts", "none", "house_diaphragm"}
	if *in.Cover.Attachment == "freestanding" {
		systems = systems[:3]
	}
	in.Lateral = cover.Lateral{Along: new(word(t, "along", systems...)), Out: new(word(t, "out", systems...))}
	in.House = cover.House{
		Wall: maybe(t, "wall", word(t, "wall", "studs", "rim", "stucco_on_studs", "masonry", "brick_veneer", "stone_veneer", "unknown")),
	}
}

// randomFooting gives at times what is known of the soil, the footings and the anchors.
func randomFooting(t *rapid.T, in *cover.Input) {
	soils := []string{"unknown", "bedrock", "gravel", "sand", "clay", "fill", "expansive"}
	in.Site.SoilClass = maybe(t, "soil", word(t, "soil", soils...))
	in.Site.GroundWater = maybe(t, "water", tenth(t, 0, 10, "water"))
	f := &in.Foundation
	f.Width, f.Depth = maybe(t, "width given", tenth(t, 8, 60, "footing")), maybe(t, "depth given", tenth(t, 6, 72, "bottom"))
	f.SlabEdge, f.SlabAcross = maybe(t, "edge given", tenth(t, 0, 60, "edge")), maybe(t, "across given", tenth(t, 0, 60, "across"))
	if k := *f.Kind; k == "footing" || k == "pier" {
		f.Neck = maybe(t, "neck given", tenth(t, 6, 20, "neck"))
		if f.Neck != nil && f.Width != nil && *f.Neck >= *f.Width {
			f.Neck = nil
		}
		if f.Neck != nil {
			f.PadThickness = maybe(t, "pad given", tenth(t, 6, 20, "pad"))
			f.SoilOver = maybe(t, "soil over", rapid.Bool().Draw(t, "soil over"))
		}
	}
	f.HeldBySlab = maybe(t, "held", rapid.Bool().Draw(t, "held"))
	f.FrostExempt = maybe(t, "exempt", rapid.Bool().Draw(t, "exempt"))
	f.AnchorKind = maybe(t, "anchor given", word(t, "anchor", "headed", "hooked", "drilled", "embedded_base"))
	if f.AnchorKind != nil {
		f.AnchorDiameter = new(rapid.SampledFrom([]float64{0.375, 0.5, 0.75}).Draw(t, "bolt"))
		f.AnchorEmbedment = new(tenth(t, 1, 12, "hef"))
	}
}

// randomDeck describes the deck at times, as one that fits the covering.
func randomDeck(t *rapid.T, in *cover.Input) {
	kinds := []string{"", "panel", "plank", "purlins", "other"}
	if *in.Cover.Covering == "lattice" {
		kinds = []string{"", "slats", "other"}
	}
	kind := word(t, "deck", kinds...)
	if kind == "" {
		return
	}
	d := cover.Deck{Kind: &kind, Wet: maybe(t, "deck wet", rapid.Bool().Draw(t, "deck wet"))}
	if kind != "other" {
		d.Held = maybe(t, "edges", rapid.Bool().Draw(t, "edges"))
	}
	switch kind {
	case "panel":
		d.Rating = maybe(t, "rating", word(t, "rating", "24/0", "32/16", "48/24", "24 oc"))
	case "plank":
		d.Layup = maybe(t, "layup", word(t, "layup", "simple_span", "two_spans", "controlled_random"))
	case "purlins", "slats":
		d.Spacing, d.OnEdge = new(tenth(t, 2, 48, "deck spacing")), maybe(t, "on edge", rapid.Bool().Draw(t, "on edge"))
		d.Size = maybe(t, "deck size", word(t, "deck size", "2x2", "2x4", "2x6", "4x4"))
		d.Workers = maybe(t, "workers", rapid.Bool().Draw(t, "workers"))
	}
	in.Deck = d
}

// randomLines adds an inner beam line at times.
func randomLines(t *rapid.T, in *cover.Input) {
	outer := *in.Cover.Projection - *in.Cover.Overhang
	if outer < 8 || !rapid.Bool().Draw(t, "more lines") {
		return
	}
	inner := math.Round(outer * 5)
	in.Beams.Lines = []float64{inner / 10, outer}
	if *in.Cover.Attachment == "freestanding" {
		in.Beams.Lines = []float64{1, inner / 10, outer}
	}
}
