package cover_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/cover"
)

// Values that contradict each other are refused before anything is computed.
func TestContradictions(t *testing.T) {
	cases := []struct {
		name   string
		change func(*cover.Input)
		want   string
	}{
		{
			"no room between two lines", func(in *cover.Input) {
				*in = standing()
				in.Cover.Overhang = new(7.0)
			}, "cover.overhang_ft: 7 ft is not small",
		},
		{
			"half a foot between two lines", func(in *cover.Input) {
				*in = standing()
				in.Cover.Overhang = new(6.75)
			}, "cover.overhang_ft: 6.75 ft",
		},
		{
			"more overhang than span", func(in *cover.Input) {
				in.Cover.Overhang = new(5.5)
			}, "cover.overhang_ft: 5.5 ft is not at most half",
		},
		{
			"a hill without its size", func(in *cover.Input) {
				in.Site.Topography, in.Site.HillShape = new("hill"), new("ridge")
			}, "site.hill_height_ft: missing",
		},
		{
			"a hill without a number", func(in *cover.Input) {
				in.Site.Topography = new("hill")
			}, "site.topographic_factor: missing",
		},
		{
			"count and positions", func(in *cover.Input) {
				in.Posts.Positions = []float64{0, 20}
			}, "posts.count: given together",
		},
		{
			"posts beyond the roof", func(in *cover.Input) {
				in.Posts.Count, in.Posts.Positions = nil, []float64{0, 21}
			}, "posts.positions_ft[1]: 21 ft",
		},
		{
			"posts in one place", func(in *cover.Input) {
				in.Posts.Count, in.Posts.Positions = nil, []float64{3, 3.5}
			}, "posts.positions_ft[1]: 3.5 ft",
		},
		{
			"a low edge too low", func(in *cover.Input) {
				in.Cover.Slope = new(6.0)
			}, "cover.high_edge_ft: 9 ft",
		},
		{
			"a slab without its thickness", func(in *cover.Input) {
				in.Foundation.Kind = new("slab")
			}, "foundation.slab_thickness_in: missing",
		},
		{
			"the house holds what stands free", func(in *cover.Input) {
				in.Cover.Attachment = new("freestanding")
			}, "lateral.along_house: house_diaphragm",
		},
		{
			"snow of the newer level", func(in *cover.Input) {
				in.Site.RoofSnow, in.Site.RoofSnowBasis = new(20.0), new("strength")
			}, "site.roof_snow_basis",
		},
		{
			"a grade that the size has not", func(in *cover.Input) {
				in.Rafters.Grade = new("Construction")
				in.Rafters.Size = new("2x8")
			}, "rafters.grade",
		},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			in := simple()
			c.change(&in)
			_, err := cover.Size(in)
			assert.ErrorContains(t, err, c.want)
		})
	}
	in := simple()
	in.Site.RoofSnowBasis = new("strength")
	size(t, in) // no snow has no level
}

// Trap: rafters that hang in the face of a beam end there. As one continuous stick they
// would carry an overhang that nothing holds, and a middle span at three quarters of its
// moment.
func TestTrapFlushBeamsCutTheRafters(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*cover.Input)
		want   string
	}{
		{"an overhang", func(in *cover.Input) { *in = overhung() }, "cover.overhang_ft: 2 ft beyond a flush beam"},
		{"a line between", func(in *cover.Input) { in.Beams.Lines = []float64{5, 10} }, "beams.lines_ft: "},
		{"an overhang at the high edge", func(in *cover.Input) {
			*in = standing()
			in.Cover.Overhang, in.Cover.Projection, in.Beams.Lines = new(0.0), new(10.0), []float64{1, 10}
		}, "beams.lines_ft: "},
	} {
		in := simple()
		c.change(&in)
		size(t, in) // stands with dropped beams
		in.Beams.Position = new("flush")
		_, err := cover.Size(in)
		assert.ErrorContains(t, err, c.want, c.name)
	}
	attached := simple()
	attached.Beams.Position = new("flush")
	size(t, attached)
	free := standing()
	free.Cover.Overhang, free.Cover.Projection, free.Beams.Position = new(0.0), new(10.0), new("flush")
	size(t, free)
}

// Cuts and bolts are refused where the members do not meet that way.
func TestContradictoryCuts(t *testing.T) {
	cases := []struct {
		name   string
		change func(*cover.Input)
		want   string
	}{
		{"a seat cut of rafters that hang", func(in *cover.Input) {
			in.Beams.Position, in.Rafters.SeatCut = new("flush"), new(1.0)
		}, "rafters.seat_cut_in: 1 in with flush beams"},
		{"a notch over posts that the beam passes", func(in *cover.Input) {
			in.Beams.OnPost, in.Beams.Notch = new("side_bolted"), new(1.0)
		}, "beams.notch_in: 1 in in beams at the side"},
		{"bolts in a beam that sits", func(in *cover.Input) {
			in.Beams.BoltLow = new(2.0)
		}, "beams.bolt_low_in: 2 in is not left out"},
		{"bolts upside down", func(in *cover.Input) {
			in.Beams.OnPost, in.Beams.BoltLow, in.Beams.BoltHigh = new("side_bolted"), new(9.0), new(3.0)
		}, "beams.bolt_high_in: 3 in is not at least"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			in := simple()
			c.change(&in)
			assert.ErrorContains(t, in.Validate(), c.want)
		})
	}
}
