package cover

import (
	"math"
	"slices"

	"patiocover/calc"
	"patiocover/loads"
)

// movers are the quantities in the order of the report.
func movers(in Input) []mover {
	number := func(path, what string, at func(*Input) **float64, step float64) mover {
		f, _ := FieldOf(path)
		return mover{
			path: path, what: what, far: f.High, step: step,
			now: func(in *Input) float64 { return **at(in) },
			set: func(in *Input, x float64) { *at(in) = &x },
		}
	}
	return []mover{
		{
			path: "cover.projection_ft", far: 40, step: 0.1,
			what: "projection, with the overhang kept and the beam lines moved in proportion",
			now:  func(in *Input) float64 { return *in.Cover.Projection }, set: stretch,
		},
		{
			path: "cover.width_ft", far: 100, step: 0.1, what: widening(in),
			now: func(in *Input) float64 { return *in.Cover.Width }, set: widen, peak: fullWidth,
		},
		spacingMover(number("rafters.spacing_in", "rafter spacing", func(in *Input) **float64 { return &in.Rafters.Spacing }, 0.1)),
		number("site.wind_speed_mph", "wind speed", func(in *Input) **float64 { return &in.Site.WindSpeed }, 1),
		number("site.roof_live_psf", "roof live load", func(in *Input) **float64 { return &in.Site.RoofLive }, 0.5),
		snowMover(in),
		{
			path: "cover.layers[].psf", what: "dead load added to the roof layers", far: 100, step: 0.5,
			now: func(*Input) float64 { return 0 }, set: addLayer,
		},
	}
}

// stretch moves the roof edge, with the overhang as it is and the beam lines in
// proportion to what is left.
func stretch(in *Input, projection float64) {
	before, after := *in.Cover.Projection-*in.Cover.Overhang, projection-*in.Cover.Overhang
	in.Beams.Lines = slices.Clone(in.Beams.Lines)
	for i := range in.Beams.Lines {
		in.Beams.Lines[i] = min(after, in.Beams.Lines[i]*after/before) // rounding moves none past the end
	}
	in.Cover.Projection = &projection
}

// widening says what becomes of the posts when the cover gets wider.
func widening(in Input) string {
	if in.Posts.Positions != nil {
		return "width, with the posts moved in proportion and the bays made longer"
	}
	return "width, with the number of posts kept and the bays made longer"
}

// widen moves the right edge, with listed posts in proportion.
func widen(in *Input, width float64) {
	f := width / *in.Cover.Width
	in.Posts.Positions = slices.Clone(in.Posts.Positions)
	for i := range in.Posts.Positions {
		in.Posts.Positions[i] = min(width, in.Posts.Positions[i]*f) // rounding moves none past the end
	}
	in.Cover.Width = &width
}

// spacingMover adds the peaks of the spacing to its mover.
func spacingMover(m mover) mover {
	m.peak = fullSpacing
	return m
}

// sliver is the part of a spacing that the last bay has where one rafter more has just come
// in: the rafter before the last has a full strip beside it and stands in the side strip of
// the wind all the same. A little wider, where there is no such bay, all carry less.
const sliver = 2 * leastBay

// fullSpacing is the widest spacing above low and up to high, in, whose last bay is a sliver;
// low where there is none.
func fullSpacing(in *Input, low, high float64) float64 {
	width := *in.Cover.Width * (calc.Ft / calc.In)
	return max(low, width/(math.Ceil(width/high)+sliver))
}

// fullWidth is the widest cover above low and up to high, ft, whose last bay is a sliver; low
// where there is none.
func fullWidth(in *Input, low, high float64) float64 {
	bay := *in.Rafters.Spacing * (calc.In / calc.Ft)
	at := bay * (math.Floor(high/bay) + sliver)
	if at > high {
		at -= bay
	}
	return max(low, at)
}

// snowMover moves the snow load that was given: that of the ground where there is one, with
// that of the roof in proportion where both are given.
func snowMover(in Input) mover {
	if in.Site.GroundSnow == nil {
		return mover{
			path: "site.roof_snow_psf", what: "snow on the roof", far: 300, step: 1,
			now: func(in *Input) float64 { return *in.Site.RoofSnow },
			set: func(in *Input, psf float64) {
				in.Site.RoofSnow = &psf
				in.sayRoofSnow()
			},
		}
	}
	return mover{
		path: "site.ground_snow_psf", what: "snow on the ground, with that of the roof in proportion", far: 300, step: 1,
		now: func(in *Input) float64 { return *in.Site.GroundSnow },
		set: func(in *Input, psf float64) {
			if before := *in.Site.GroundSnow; in.Site.RoofSnow != nil && before > 0 {
				in.Site.RoofSnow = new(*in.Site.RoofSnow * psf / before)
				in.sayRoofSnow()
			}
			in.Site.GroundSnow = &psf
			if in.Site.GroundSnowBasis == nil {
				in.Site.GroundSnowBasis = new(in.loadStandard())
			}
		},
	}
}

// sayRoofSnow gives snow on the roof the level of the load standard, where none is said
// because there was no snow.
func (in *Input) sayRoofSnow() {
	if in.Site.RoofSnowBasis == nil && in.loadStandard() == loads.ASCE722.String() {
		in.Site.RoofSnowBasis = new("strength")
	}
}

// loadStandard is the edition that was said, or the one that is then taken.
func (in *Input) loadStandard() string {
	if in.Site.Standard != nil {
		return *in.Site.Standard
	}
	return loads.ASCE716.String()
}

// addLayer adds a layer that does not resist uplift.
func addLayer(in *Input, psf float64) {
	name, certain := "added dead load", false
	layers := append([]Layer(nil), in.Cover.Layers...)
	in.Cover.Layers = append(layers, Layer{Name: &name, Weight: &psf, Certain: &certain})
}
