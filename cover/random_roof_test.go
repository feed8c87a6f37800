package cover_test

import (
	"strconv"

	"pgregory.net/rapid"

	"patiocover/cover"
)

// randomOldRoof draws an existing roof behind some covers, with joints of every kind of
// evidence, known well or by half.
func randomOldRoof(t *rapid.T, in *cover.Input) {
	if !rapid.Bool().Draw(t, "old roof") {
		return
	}
	h := &in.House
	h.RafterSpan = new(tenth(t, 8, 40, "old span"))
	h.RafterSpacing = new(rapid.SampledFrom([]float64{16, 24, 48, 72}).Draw(t, "old spacing"))
	h.RafterOverhang, h.RafterHeight = new(tenth(t, 0, 4, "old overhang")), maybe(t, "old height", tenth(t, 8, 20, "old height"))
	h.RafterSlope = new(rapid.SampledFrom([]float64{0, 0.5, 1, 3, 6, 12}).Draw(t, "old slope"))
	o := &h.OldRoof
	if rapid.Bool().Draw(t, "inner line") {
		o.Lines = []float64{*h.RafterSpan / 2}
	}
	o.RunsOn = maybe(t, "runs on", rapid.Bool().Draw(t, "runs on"))
	o.TieWind = maybe(t, "tie wind", word(t, "tie wind", "larger", "main_system"))
	o.Length = maybe(t, "wall length", tenth(t, 20, 80, "wall length"))
	o.TailSize, o.TailSpecies, o.TailGrade = maybe(t, "tail", "2x6"), new("Douglas Fir-Larch"), new("No.2")
	o.TailCut, o.TailSound = maybe(t, "cut", tenth(t, 0, 2, "cut")), maybe(t, "sound", rapid.Bool().Draw(t, "sound"))
	for i := range rapid.IntRange(0, 3).Draw(t, "layers of the old roof") {
		name := word(t, "old layer "+strconv.Itoa(i), "deck", "felt", "gravel")
		o.Layers = append(o.Layers, cover.OldLayer{
			Name: &name, Weight: new(tenth(t, 0.5, 6, "old weight "+strconv.Itoa(i))),
			State: maybe(t, "state", word(t, "state", "present", "removed", "to_remove", "planned")),
			Fixed: maybe(t, "fixed", name != "gravel"),
		})
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "joints") {
		h.Joints = append(h.Joints, randomJoint(t, i, len(o.Lines) > 0))
	}
}

// randomJoint draws the record of one joint.
func randomJoint(t *rapid.T, i int, inner bool) cover.Joint {
	n := strconv.Itoa(i)
	places := []string{"eave", "far_wall"}
	if inner {
		places = append(places, "interior", "ridge")
	}
	return cover.Joint{
		Mark: new("J" + n), Place: maybe(t, "place "+n, word(t, "place "+n, places...)),
		Zone: maybe(t, "zone "+n, word(t, "zone "+n, "corner", "edge", "field")), End: maybe(t, "end "+n, tenth(t, 0, 9, "end "+n)),
		Evidence:  maybe(t, "evidence "+n, word(t, "evidence "+n, "strap", "toenails", "none_seen", "unknown")),
		Condition: maybe(t, "condition "+n, word(t, "condition "+n, "sound", "sound", "sound", "rust", "gap")),
		Rating:    maybe(t, "rating "+n, tenth(t, 100, 1500, "rating "+n)), Species: maybe(t, "species "+n, "Douglas Fir-Larch"),
		Fastener: maybe(t, "fastener "+n, word(t, "fastener "+n, "16d common", "8d box")), Count: maybe(t, "count "+n, 3),
		First: new(i*10 + 1), Last: new(i*10 + rapid.IntRange(1, 9).Draw(t, "last "+n)),
	}
}
